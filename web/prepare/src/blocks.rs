//! The blocks of a lesson: prediction, live figure, worked example, problem with a step missing, problem
//! alone, the way to the reader's own joint.
//!
//! ```text
//! ::predict What does the bolt feel?
//! - The whole load. :: Why that is tempting, and what happens.
//! * Nothing, until it slides. :: The right one.
//! ::end
//!
//! ::worked The grip of one bolt
//! Markdown with slots, {clamp}, that follow the figure; with a state before the title, `clamp=5000lbf,24kN | The
//! grip`, they stay at that state: for a figure at whose start nothing has happened yet. What has other units in
//! the other system is given twice, US customary units first, in sizes that a shop of either has.
//! ::end
//!
//! ::faded clamp=5000lbf,24kN | The same with a step missing
//! Markdown with one answer, {?grips}, all for that state.
//! hint: Which step it is.
//! near: all-of-it :: What to say to whoever answers with that value.
//! ::end
//!
//! ::solo clamp=8000lbf,36kN | One for you
//! ... as above, and
//! answer: The answer in full, with slots.
//! ::end
//!
//! ::trailer Where this is on your trailer.
//! ```

use std::fmt::Write as _;

use calc_core::link::encode;
use calc_core::quantity::UnitSystem;
use drawing::lesson::{Control, ControlKind, Model, Range, State, link, read_words};

use crate::lesson::Body;
use crate::problem::Problem;
use crate::register::escape;
use crate::slots::Slots;

/// Kinds that run to a line `::end`.
pub(crate) const LONG: [&str; 4] = ["::predict", "::worked", "::faded", "::solo"];

/// Units of the still page: those the page starts with.
const UNITS: UnitSystem = UnitSystem::Us;

/// A block as it stands in the file.
#[derive(Clone, Copy)]
pub(crate) struct Block<'a> {
    /// Kind with its colons.
    pub kind: &'a str,
    /// What follows the kind on its line.
    pub head: &'a str,
    /// Byte at which the block begins.
    pub at: usize,
    /// Bytes from and to which its lines run.
    pub inner: (usize, usize),
}

/// A line of a block that is not Markdown.
struct Extra<'a> {
    kind: &'static str,
    /// What follows the colon, and the byte at which it stands.
    text: &'a str,
    at: usize,
}

impl Body<'_> {
    /// Writes a block; `model` is the lesson's figure.
    pub(crate) fn block(
        &self,
        model: &'static dyn Model,
        block: Block<'_>,
        out: &mut String,
        problems: &mut Vec<Problem>,
    ) {
        match block.kind {
            "::predict" => self.predict(block, out, problems),
            "::worked" => self.worked(model, block, out, problems),
            _ => self.problem(model, block, out, problems),
        }
    }

    fn predict(&self, block: Block<'_>, out: &mut String, problems: &mut Vec<Problem>) {
        let id = self.id;
        let mut options = String::new();
        let (mut right, mut count) = (0, 0);
        for (at, line) in self.lines(block.inner) {
            let Some((sign, rest)) = line
                .split_at_checked(2)
                .filter(|(s, _)| matches!(*s, "- " | "* "))
            else {
                self.fault(
                    at,
                    String::from("an option begins with `- ` or, the right one, `* `"),
                    problems,
                );
                continue;
            };
            let Some((option, why)) = rest.split_once("::") else {
                self.fault(
                    at,
                    String::from("an option has its reply after `::`"),
                    problems,
                );
                continue;
            };
            let start = at + 2;
            let option_html = self.inline((start, start + option.trim_end().len()), None, problems);
            let why_at = at + 2 + option.len() + 2;
            let lead = why.len() - why.trim_start().len();
            let why_html = self.inline((why_at + lead, why_at + why.len()), None, problems);
            right += usize::from(sign == "* ");
            let mark = if sign == "* " { " data-right" } else { "" };
            let _ = writeln!(
                options,
                "<div class=\"option\"{mark}><label><input type=\"radio\" name=\"{id}-predict\" value=\"{count}\">\
                 <span>{option_html}</span></label><p class=\"reply\">{why_html}</p></div>"
            );
            count += 1;
        }
        if right != 1 || !(2..=5).contains(&count) {
            self.fault(
                block.at,
                format!("a prediction has two to five options and one right one; this has {count} and {right}"),
                problems,
            );
        }
        let question = self.inline(self.head_span(block, block.head), None, problems);
        let _ = write!(
            out,
            "<form class=\"predict step\" data-step=\"guess\"><fieldset><legend>{question}</legend>\n{options}</fieldset>\n\
             <p class=\"because\"><label for=\"{id}-because\">because</label>\
             <input type=\"text\" id=\"{id}-because\" autocomplete=\"off\" maxlength=\"200\"></p>\n\
             <p class=\"actions\"><button type=\"button\" class=\"main\" data-act=\"commit\" disabled>Lock in my guess</button>\
             <button type=\"button\" data-act=\"skip\" disabled>Skip (Esc)</button></p>\n\
             <p class=\"outcome\" role=\"status\"></p></form>\n"
        );
    }

    /// The live figure in its first state.
    pub(crate) fn live_figure(&self, model: &'static dyn Model, caption: &str) -> Option<String> {
        let id = model.id();
        let state = State::start(model.controls(), UNITS);
        let outcome = model.outcome(&state)?;
        let (drawing_id, plot_id) = (format!("{id}-drawing"), format!("{id}-plot"));
        let words = read_words(id).ok()?;
        let picture = model.told(&words, &state, &outcome, &state.look(&drawing_id))?;
        let mut html = format!(
            "<figure class=\"sheet live-figure step\" id=\"fig-{id}\">\n<div class=\"pair\">\
             <div class=\"drawn\" data-at=\"drawing\" data-step=\"drawing\">{}</div>",
            picture.drawing.to_svg()
        );
        // Among others the drawing is enough; the lesson has the plot.
        let plot = picture.plot.as_ref().filter(|_| self.first);
        if let Some(plot) = plot {
            let _ = writeln!(
                html,
                "<div class=\"drawn\" data-at=\"plot\" data-step=\"plot\">{}</div>",
                plot.scene(&plot_id).to_svg()
            );
        }
        html.push_str("</div>\n<fieldset class=\"controls\" disabled><legend class=\"visually-hidden\">What you can change</legend>");
        for control in model.controls() {
            html.push_str(&control_html(id, control));
        }
        let _ = writeln!(
            html,
            "<p class=\"actions\"><button type=\"button\" data-act=\"reset\">back to the start</button></p></fieldset>\n\
             <p class=\"said result\" data-at=\"said\">{}</p><p class=\"said guess\" data-at=\"guess\" hidden></p>\
             <p class=\"visually-hidden\" role=\"status\" data-at=\"told\"></p>",
            escape(&model.sentence(&words, &state, &outcome))
        );
        if let Some(plot) = plot {
            let _ = write!(
                html,
                "<details class=\"facts\"><summary>Key points as a table</summary><table>\
                 <caption>{}</caption><thead><tr><td></td><th scope=\"col\" class=\"n\">{}</th><th scope=\"col\" class=\"n\">{}</th></tr></thead>\
                 <tbody data-at=\"points\">",
                escape(&plot.title),
                escape(plot.x.name),
                escape(plot.y.name)
            );
            for point in &plot.points {
                let [x, y] = plot.amounts(point);
                let _ = writeln!(
                    html,
                    "<tr><th scope=\"row\">{}</th><td class=\"n\">{x}</td><td class=\"n\">{y}</td></tr>",
                    escape(&point.name)
                );
            }
            html.push_str("</tbody></table></details>");
        }
        // Not for reading: what the program says of the other states.
        let _ = writeln!(
            html,
            "<figcaption>{caption}</figcaption><template data-at=\"words\">{}</template></figure>",
            escape(&words)
        );
        Some(html)
    }

    fn worked(
        &self,
        model: &'static dyn Model,
        block: Block<'_>,
        out: &mut String,
        problems: &mut Vec<Problem>,
    ) {
        let (state_text, title) = block.head.split_once('|').unwrap_or(("", block.head));
        let state = match State::both(model.controls(), state_text) {
            Ok(both) => *both.of(UNITS),
            Err(what) => return self.fault(block.at, what.to_string(), problems),
        };
        let slots = Slots::new(model, state, None);
        let title = self.inline(self.head_span(block, title.trim_start()), None, problems);
        let mut inner = String::new();
        self.markdown(block.inner, Some(&slots), &mut inner, problems);
        // A state of its own holds it there; without one it follows the figure.
        let held = if state_text.trim().is_empty() {
            String::new()
        } else {
            format!(" data-state=\"{}\"", held(state_text))
        };
        let level = self.part_heading();
        let _ = write!(
            out,
            "<div class=\"worked step\" data-step=\"worked\"{held}><{level}>{title}</{level}>\n{inner}</div>\n"
        );
    }

    fn problem(
        &self,
        model: &'static dyn Model,
        block: Block<'_>,
        out: &mut String,
        problems: &mut Vec<Problem>,
    ) {
        let kind = block.kind.trim_start_matches(':');
        let (state_text, title) = block.head.split_once('|').unwrap_or(("", block.head));
        let state = match State::both(model.controls(), state_text) {
            Ok(both) => *both.of(UNITS),
            Err(what) => return self.fault(block.at, what.to_string(), problems),
        };
        let answer_id = format!("{}-{kind}", self.id);
        let slots = Slots::new(model, state, Some(&answer_id));
        let (text_end, extras) = self.extras(block.inner);
        let title = self.inline(self.head_span(block, title.trim_start()), None, problems);
        let mut inner = String::new();
        self.markdown(
            (block.inner.0, text_end),
            Some(&slots),
            &mut inner,
            problems,
        );
        let Some(asked) = slots.asked() else {
            return self.fault(
                block.at,
                format!("{kind} has no answer `{{?name}}`, or more than one"),
                problems,
            );
        };
        let mut hints = String::new();
        let mut nears = String::new();
        let mut solution = None;
        for extra in &extras {
            let whole = (extra.at, extra.at + extra.text.len());
            match extra.kind {
                "hint" => {
                    let hint = self.inline(whole, Some(&slots), problems);
                    let _ = writeln!(
                        hints,
                        "<details class=\"hint\"><summary>Hint</summary><p>{hint}</p></details>"
                    );
                }
                "near" => {
                    let Some((name, words)) = extra.text.split_once("::") else {
                        self.fault(extra.at, String::from("`near: name :: words`"), problems);
                        continue;
                    };
                    let lead = name.len() + 2 + words.len() - words.trim_start().len();
                    if slots.text(name.trim()).is_none() {
                        self.fault(
                            extra.at,
                            format!("no value is called `{}`", name.trim()),
                            problems,
                        );
                    }
                    let words = self.inline((extra.at + lead, whole.1), Some(&slots), problems);
                    let _ = write!(
                        nears,
                        "<span data-near=\"{}\">{words}</span>",
                        escape(name.trim())
                    );
                }
                _ => solution = Some(self.inline(whole, Some(&slots), problems)),
            }
        }
        if hints.is_empty() {
            self.fault(block.at, format!("{kind} has no hint"), problems);
        }
        let solution = solution.unwrap_or_else(|| format!("It is {}.", slots.span(&asked)));
        let level = self.part_heading();
        let _ = writeln!(
            out,
            "<div class=\"problem {kind} step\" data-step=\"{kind}\" data-state=\"{}\"><{level}>{title}</{level}>\n{inner}\
             <p class=\"actions\"><button type=\"button\" data-act=\"check\" disabled>Check my answer</button></p>\n\
             <p class=\"reply\" role=\"status\"></p><div class=\"nears\" hidden>{nears}</div>\n{hints}\
             <details class=\"solution\"><summary>Answer</summary><p>{solution}</p></details></div>",
            held(state_text)
        );
    }

    /// The way to the calculator with the lesson's joint in it.
    pub(crate) fn trailer(&self, model: &'static dyn Model, words: &str) -> Option<String> {
        let outcome = model.outcome(&State::start(model.controls(), UNITS))?;
        Some(format!(
            "<div class=\"to-trailer step\" data-step=\"own\"><p>{words}</p><p class=\"actions\">\
             <a class=\"button\" data-at=\"joint\" href=\"#{}\">Check this joint</a>\
             <button type=\"button\" data-act=\"present\" disabled>Show this lesson step by step</button>\
             <button type=\"button\" data-act=\"print-lesson\" disabled>Print this lesson</button></p></div>\n",
            encode(&link(&outcome.joint, UNITS))
        ))
    }

    /// Bytes of a part of a block's head, which stands at its end.
    fn head_span(&self, block: Block<'_>, part: &str) -> (usize, usize) {
        let line_end = self.line_end(block.at);
        let text = self.text.get(block.at..line_end).unwrap_or_default();
        let end = block.at + text.trim_end().len();
        (end.saturating_sub(part.trim_end().len()), end)
    }

    fn line_end(&self, at: usize) -> usize {
        let rest = self.text.get(at..).unwrap_or_default();
        at + rest.find('\n').unwrap_or(rest.len())
    }

    /// Lines that say something, with their bytes.
    fn lines(&self, (from, to): (usize, usize)) -> Vec<(usize, &str)> {
        let mut at = from;
        let mut out = Vec::new();
        for line in self
            .text
            .get(from..to)
            .unwrap_or_default()
            .split_inclusive('\n')
        {
            let text = line.trim_end();
            if !text.trim().is_empty() {
                out.push((at, text));
            }
            at += line.len();
        }
        out
    }

    /// Where the Markdown of a block ends, and what stands after it.
    fn extras(&self, inner: (usize, usize)) -> (usize, Vec<Extra<'_>>) {
        let mut extras = Vec::new();
        let mut end = inner.1;
        for (at, line) in self.lines(inner) {
            for kind in ["hint", "near", "answer"] {
                let Some(rest) = line.strip_prefix(kind).and_then(|r| r.strip_prefix(':')) else {
                    continue;
                };
                end = end.min(at);
                let text = rest.trim_start();
                extras.push(Extra {
                    kind,
                    text,
                    at: at + line.len() - text.len(),
                });
            }
        }
        (end, extras)
    }
}

/// A state as the page keeps it, for both systems of units.
fn held(state: &str) -> String {
    let parts: Vec<&str> = state.split_whitespace().collect();
    escape(&parts.join(" "))
}

fn control_html(id: &str, control: &Control) -> String {
    let Control { key, label, kind } = control;
    let (name, label) = (format!("{id}-{key}"), escape(label));
    match kind {
        ControlKind::Number { range, .. } => {
            let Range {
                min,
                max,
                step,
                start,
            } = range.of(UNITS);
            let shown = control.shown(*start, UNITS);
            format!(
                "<div class=\"turn\"><label for=\"{name}\">{label}</label>\
                 <input type=\"range\" id=\"{name}\" data-control=\"{key}\" min=\"{min}\" max=\"{max}\" step=\"{step}\" value=\"{start}\" aria-valuetext=\"{shown}\">\
                 <input type=\"text\" id=\"{name}-exact\" data-exact=\"{key}\" aria-label=\"{label}, exact\" autocomplete=\"off\" spellcheck=\"false\" value=\"{shown}\">\
                 <p class=\"error\" id=\"{name}-fault\" role=\"alert\" hidden></p></div>\n"
            )
        }
        ControlKind::Choices { of, start } => {
            let mut html =
                format!("<fieldset class=\"stands\"><legend>{label}</legend><div class=\"kinds\">");
            for (i, choice) in of.iter().enumerate() {
                let checked = if i == *start { " checked" } else { "" };
                let shown = escape(choice.name.of(UNITS));
                // What is called otherwise in the other system, the program calls anew.
                let shown = if choice.name.us == choice.name.metric {
                    shown
                } else {
                    format!("<span>{shown}</span>")
                };
                let _ = writeln!(
                    html,
                    "<label><input type=\"radio\" name=\"{name}\" data-control=\"{key}\" value=\"{i}\"{checked}>{shown}</label>"
                );
            }
            html.push_str("</div></fieldset>");
            html
        }
    }
}

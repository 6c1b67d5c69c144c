//! One content file: front matter, then Markdown.
//!
//! ```text
//! ---
//! title: The bolt is a spring       required; the heading of the section
//! id: spring                        optional; else the file name without number and ending
//! order: 20                         optional; else the number the file name starts with
//! part: lesson                      optional; becomes data-part; `front` is a section below the front page's opening, each
//!                                   other part begins a page and takes its h1
//! nav: bolt as a spring             optional; shorter words for the contents
//! description: What a bolt does …   what a search shows below the title; needed where a page begins
//! number: 1                         optional; a lesson's number, shown before the title
//! ---
//! Text with a source [asme-b1-1] and a term [preload].
//!
//! ::figure tighten What the figure shows, in one sentence.
//! ::live calculator What stands here while the page's program is not running.
//! ::later short-check Begin :: What it is. The button loads the program of the joint, which fills the box.
//! ::door joint.html Words on the way to another page; the paragraph below them says what is there.
//! ::lessons, ::signs, ::sources, ::words   lists out of other files
//! ::speaker, ::plan, ::skills              notes for whoever shows the lessons, the plan of a class, what lessons serve
//! ::checks outside What the calculation is compared with; the overview opens below these words.
//! ```
//!
//! A reference in square brackets that is neither a source, a term nor a link is a fault; a bracket
//! that is meant as one is written `\[`.

use std::cell::RefCell;
use std::fmt::Write as _;

use pulldown_cmark::{
    BrokenLink, CowStr, Event, HeadingLevel, LinkType, Options, Parser, Tag, TagEnd, html,
};

use drawing::lesson::{Model, lesson};

use crate::blocks::{Block, LONG};
use crate::checks;
use crate::doors;
use crate::figures::statics;
use crate::gate;
use crate::problem::{Problem, line_of};
use crate::register::{Register, escape, slug};
use crate::slots::Slots;

/// The part of a section of the front page below its opening.
pub const FRONT: &str = "front";

/// Lines that stand for a list out of other files.
const LISTS: [&str; 7] = [
    "::lessons",
    "::signs",
    "::sources",
    "::words",
    "::speaker",
    "::plan",
    "::skills",
];

/// What stands in a section's HTML where a list is to be put in.
#[must_use]
pub fn list_mark(kind: &str, which: &str) -> String {
    format!("<!--{kind} {which}-->")
}

/// A section of a page.
#[derive(Debug)]
pub struct Lesson {
    /// Id of the section, the target of links.
    pub id: String,
    /// Heading.
    pub title: String,
    /// Words in the contents list.
    pub nav: String,
    /// Place in the page.
    pub order: u32,
    /// Kind of section.
    pub part: String,
    /// What a search shows below the title of its page.
    pub description: String,
    /// Number of a lesson.
    pub number: Option<u32>,
    /// The section as HTML.
    pub html: String,
}

/// Reads one content file.
///
/// # Errors
/// Every fault found, with its line: missing title, unknown key, figure, source or term, a heading
/// that skips the section's own, HTML that the page's content policy would refuse.
pub fn read(file: &str, text: &str, register: &Register) -> Result<Lesson, Vec<Problem>> {
    let mut problems = Vec::new();
    let front = Front::read(file, text, &mut problems);
    let stem = file.rsplit('/').next().unwrap_or(file);
    let stem = stem.strip_suffix(".md").unwrap_or(stem);
    let (number, name) = match stem.split_once('-') {
        Some((number, name)) if number.parse::<u32>().is_ok() => (number.parse().ok(), name),
        _ => (None, stem),
    };
    let id = front.id.unwrap_or_else(|| slug(name));
    let part = front.part.unwrap_or_else(|| String::from("lesson"));
    let first = part != FRONT;
    let body = Body {
        file,
        text,
        id: &id,
        first,
        register,
    };
    let inner = body.html(front.end, &mut problems);
    if !problems.is_empty() {
        return Err(problems);
    }
    let title = front.title.unwrap_or_default();
    let level = if first { "h1" } else { "h2" };
    let figure = body.model().map_or_else(String::new, |model| {
        format!(" data-lesson=\"{}\"", model.id())
    });
    let shown_number = front.number.map_or_else(String::new, |number| {
        format!("<span class=\"no\">{number}</span> ")
    });
    let html = format!(
        "<section id=\"{id}\" data-part=\"{part}\"{figure} aria-labelledby=\"{id}-heading\">\n\
         <{level} id=\"{id}-heading\">{shown_number}{}</{level}>\n{inner}</section>\n",
        escape(&title)
    );
    Ok(Lesson {
        nav: front.nav.unwrap_or_else(|| title.clone()),
        order: front.order.or(number).unwrap_or(u32::MAX),
        id,
        title,
        part,
        description: front.description.unwrap_or_default(),
        number: front.number,
        html,
    })
}

#[derive(Default)]
struct Front {
    title: Option<String>,
    id: Option<String>,
    nav: Option<String>,
    part: Option<String>,
    description: Option<String>,
    order: Option<u32>,
    number: Option<u32>,
    /// Byte at which the Markdown begins.
    end: usize,
}

impl Front {
    fn read(file: &str, text: &str, problems: &mut Vec<Problem>) -> Self {
        let mut front = Self::default();
        let mut closed = false;
        let mut offset = 0;
        for (index, line) in text.split_inclusive('\n').enumerate() {
            offset += line.len();
            let line_number = index + 1;
            let line = line.trim();
            match (index, line) {
                (0, "---") => continue,
                (0, _) => break,
                (_, "---") => {
                    closed = true;
                    break;
                }
                (_, "") => continue,
                _ => {}
            }
            let (key, value) = match line.split_once(':') {
                Some((key, value)) => (key.trim(), value.trim().trim_matches('"')),
                None => (line, ""),
            };
            let value_text = Some(value.to_owned()).filter(|value| !value.is_empty());
            match key {
                "title" => front.title = value_text,
                "id" if slug(value) == value => front.id = value_text,
                "nav" => front.nav = value_text,
                "description" => front.description = value_text,
                "part" if slug(value) == value => front.part = value_text,
                "order" if value.parse::<u32>().is_ok() => front.order = value.parse().ok(),
                "number" if value.parse::<u32>().is_ok() => front.number = value.parse().ok(),
                _ => problems.push(Problem::new(
                    file,
                    line_number,
                    format!("front matter `{line}` is not understood"),
                )),
            }
        }
        if !closed {
            problems.push(Problem::new(
                file,
                1,
                "no front matter between two lines `---`",
            ));
        } else if front.title.is_none() {
            problems.push(Problem::new(file, 1, "front matter has no title"));
        }
        front.end = offset;
        front
    }
}

/// The Markdown of a content file, while it is turned into HTML.
pub(crate) struct Body<'a> {
    pub(crate) file: &'a str,
    pub(crate) text: &'a str,
    pub(crate) id: &'a str,
    /// Whether its title is the page's.
    pub(crate) first: bool,
    register: &'a Register,
}

impl Body<'_> {
    /// Directives are whole lines, so the Markdown between two of them is rendered by itself.
    fn html(&self, start: usize, problems: &mut Vec<Problem>) -> String {
        let mut out = String::new();
        let (mut from, mut at) = (start, start);
        let mut fenced = false;
        let mut open: Option<Block<'_>> = None;
        for line in self
            .text
            .get(start..)
            .unwrap_or_default()
            .split_inclusive('\n')
        {
            if line.starts_with("```") {
                fenced = !fenced;
            }
            if !fenced && line.starts_with("::") {
                let line_end = at + line.len();
                match (open.take(), split(line)) {
                    (Some(mut block), ("::end", _)) => {
                        block.inner.1 = at;
                        self.long(block, &mut out, problems);
                    }
                    (Some(block), _) => self.fault(
                        block.at,
                        format!("`{}` has no `::end`", block.kind),
                        problems,
                    ),
                    (None, (kind, head)) => {
                        self.text_between((from, at), &mut out, problems);
                        if LONG.contains(&kind) {
                            let inner = (line_end, line_end);
                            open = Some(Block {
                                kind,
                                head,
                                at,
                                inner,
                            });
                        } else {
                            self.directive(line.trim(), at, &mut out, problems);
                        }
                    }
                }
                from = line_end;
            }
            at += line.len();
        }
        if let Some(block) = open {
            self.fault(
                block.at,
                format!("`{}` has no `::end`", block.kind),
                problems,
            );
        }
        self.text_between((from, at), &mut out, problems);
        out
    }

    /// Text between directives. In a lesson it is a step of its own: the story before the first block, the reasons after
    /// the figure, what to look for after the problems. Only the line of sources at the end is none.
    fn text_between(&self, span: (usize, usize), out: &mut String, problems: &mut Vec<Problem>) {
        let mut html = String::new();
        self.markdown(span, None, &mut html, problems);
        let ended = out.contains("data-step=\"own\"");
        if self.first && self.model().is_some() && !html.trim().is_empty() && !ended {
            let (class, step) = if out.is_empty() {
                ("hook", "hook")
            } else if out.contains("data-step=\"worked\"") {
                ("why", "also")
            } else {
                ("why", "why")
            };
            html = format!("<div class=\"{class} step\" data-step=\"{step}\">\n{html}</div>\n");
        }
        out.push_str(&html);
    }

    fn long(&self, block: Block<'_>, out: &mut String, problems: &mut Vec<Problem>) {
        let Some(model) = self.model() else {
            let what = format!("`{}` needs a lesson with the id `{}`", block.kind, self.id);
            return self.fault(block.at, what, problems);
        };
        if block.head.is_empty() {
            self.fault(
                block.at,
                format!("`{}` has no words after it", block.kind),
                problems,
            );
            return;
        }
        self.block(model, block, out, problems);
    }

    /// The figure of the lesson, if this is one; the front page shows some of them too.
    fn model(&self) -> Option<&'static dyn Model> {
        lesson(self.id.strip_prefix("front-").unwrap_or(self.id))
    }

    /// The heading of a part of the section.
    pub(crate) const fn part_heading(&self) -> &'static str {
        if self.first { "h2" } else { "h3" }
    }

    pub(crate) fn fault(&self, at: usize, what: String, problems: &mut Vec<Problem>) {
        problems.push(Problem::new(self.file, self.line(at), what));
    }

    fn directive(&self, line: &str, at: usize, out: &mut String, problems: &mut Vec<Problem>) {
        let (kind, rest) = split(line);
        if kind == "::trailer" {
            let words_at = at + line.find(rest).unwrap_or_default();
            let words = self.inline((words_at, words_at + rest.len()), None, problems);
            match self.model().and_then(|model| self.trailer(model, &words)) {
                Some(html) if !words.is_empty() => out.push_str(&html),
                _ => self.fault(at, format!("`{line}` needs a lesson and words"), problems),
            }
            return;
        }
        if LISTS.contains(&kind) {
            // Known only once every file has been read.
            let _ = writeln!(out, "{}", list_mark(kind, rest));
            return;
        }
        let (name, caption) = rest.split_once(char::is_whitespace).unwrap_or((rest, ""));
        let caption = caption.trim();
        let mut fault = |what: String| problems.push(Problem::new(self.file, self.line(at), what));
        if caption.is_empty() {
            fault(format!("`{kind} {name}` has no words after it"));
            return;
        }
        match kind {
            "::figure" => {
                let caption_at = at + line.find(caption).unwrap_or_default();
                let span = (caption_at, caption_at + caption.len());
                let caption = self.inline(span, None, problems);
                let live = self.model().filter(|model| model.id() == name);
                let live = live.and_then(|model| self.live_figure(model, &caption));
                if let Some(html) = live {
                    out.push_str(&html);
                } else if let Some(drawing) = statics(name) {
                    let _ = writeln!(
                        out,
                        "<figure class=\"sheet\" data-figure=\"{name}\" id=\"fig-{name}\">{drawing}\
                         <figcaption>{caption}</figcaption></figure>"
                    );
                } else {
                    self.fault(at, format!("unknown figure `{name}`"), problems);
                }
            }
            "::later" if slug(name) == name => {
                let (button, words) = caption.split_once(" :: ").unwrap_or((caption, ""));
                let _ = writeln!(
                    out,
                    "<div class=\"live\" id=\"{name}\" data-later data-js=\"{{{{dot}}}}{{{{joint.js}}}}\" data-wasm=\"{{{{dot}}}}{{{{joint.wasm}}}}\"><p>{}</p>\
                     <p class=\"actions\"><button type=\"button\" class=\"main\" disabled>{}</button></p></div>",
                    escape(words),
                    escape(button)
                );
            }
            "::door" => out.push_str(&doors::door(name, caption)),
            "::checks" if name == "outside" => out.push_str(&checks::overview(caption)),
            "::live" if !name.is_empty() && slug(name) == name => {
                let _ = writeln!(
                    out,
                    "<div class=\"live\" id=\"{name}\"><p>{}</p></div>",
                    escape(caption)
                );
            }
            _ => fault(format!("`{kind} {name}` is not understood")),
        }
    }

    /// Markdown of one line without the paragraph around it.
    pub(crate) fn inline(
        &self,
        span: (usize, usize),
        slots: Option<&Slots<'_>>,
        problems: &mut Vec<Problem>,
    ) -> String {
        let mut out = String::new();
        self.markdown(span, slots, &mut out, problems);
        let out = out.trim();
        let out = out.strip_prefix("<p>").unwrap_or(out);
        out.strip_suffix("</p>").unwrap_or(out).to_owned()
    }

    pub(crate) fn markdown(
        &self,
        (from, to): (usize, usize),
        slots: Option<&Slots<'_>>,
        out: &mut String,
        problems: &mut Vec<Problem>,
    ) {
        let Some(chunk) = self.text.get(from..to) else {
            return;
        };
        let unknown = RefCell::new(Vec::new());
        let mut resolve = |link: BrokenLink<'_>| {
            let target = self.register.target(&link.reference);
            if target.is_none() {
                unknown.borrow_mut().push(Problem::new(
                    self.file,
                    self.line(from + link.span.start),
                    format!("unknown source or term `{}`", link.reference),
                ));
            }
            target.map(|target| (target.href.into(), target.title.into()))
        };
        let options = Options::ENABLE_TABLES
            | Options::ENABLE_SUBSCRIPT
            | Options::ENABLE_SUPERSCRIPT
            | Options::ENABLE_MATH;
        let parser = Parser::new_with_broken_link_callback(chunk, options, Some(&mut resolve));
        let mut events = Vec::new();
        let mut number = None;
        for (mut event, span) in parser.into_offset_iter() {
            let line = self.line(from + span.start);
            match &mut event {
                Event::Start(Tag::Link {
                    link_type: LinkType::ShortcutUnknown,
                    id,
                    ..
                }) => number = self.register.target(id).and_then(|target| target.text),
                Event::Text(text) => {
                    if let Some(number) = number.take() {
                        *text = number.into();
                    } else if let Some(slots) = slots {
                        match slots.html(text) {
                            Ok(html) => event = Event::InlineHtml(html.into()),
                            Err(what) => problems.push(Problem::new(self.file, line, what)),
                        }
                    }
                }
                Event::InlineMath(formula) | Event::DisplayMath(formula) => match mathml(formula) {
                    Ok(html) => event = Event::InlineHtml(html.into()),
                    Err(what) => problems.push(Problem::new(self.file, line, what)),
                },
                Event::Start(Tag::Heading {
                    level: HeadingLevel::H1,
                    ..
                }) => problems.push(Problem::new(
                    self.file,
                    line,
                    "`#` is the section's own title; use `##`",
                )),
                Event::Html(raw) | Event::InlineHtml(raw) => problems
                    .extend(gate::refused(raw).map(|what| Problem::new(self.file, line, what))),
                _ => {}
            }
            events.push(event);
        }
        problems.append(&mut unknown.borrow_mut());
        html::push_html(out, self.under_section(events).into_iter());
    }

    /// One level down where the page's title stands above the section's.
    const fn below_title(&self, level: HeadingLevel) -> HeadingLevel {
        if self.first { level } else { lower(level) }
    }

    /// Headings stand below the section's title; ids from the words.
    fn under_section<'e>(&self, mut events: Vec<Event<'e>>) -> Vec<Event<'e>> {
        let mut words: Option<String> = None;
        let mut ids = Vec::new();
        for event in &events {
            match event {
                Event::Start(Tag::Heading { .. }) => words = Some(String::new()),
                Event::Text(text) | Event::Code(text) => {
                    if let Some(words) = &mut words {
                        words.push_str(text);
                    }
                }
                Event::End(TagEnd::Heading(_)) => ids.extend(words.take().map(|w| slug(&w))),
                _ => {}
            }
        }
        let mut ids = ids.into_iter();
        for event in &mut events {
            match event {
                Event::Start(Tag::Heading { level, id, .. }) => {
                    *level = self.below_title(*level);
                    *id = ids
                        .next()
                        .map(|slug| CowStr::from(format!("{}-{slug}", self.id)));
                }
                Event::End(TagEnd::Heading(level)) => *level = self.below_title(*level),
                _ => {}
            }
        }
        events
    }

    pub(crate) fn line(&self, offset: usize) -> usize {
        line_of(self.text, offset)
    }
}

const fn lower(level: HeadingLevel) -> HeadingLevel {
    match level {
        HeadingLevel::H1 => HeadingLevel::H2,
        HeadingLevel::H2 => HeadingLevel::H3,
        HeadingLevel::H3 => HeadingLevel::H4,
        HeadingLevel::H4 => HeadingLevel::H5,
        HeadingLevel::H5 | HeadingLevel::H6 => HeadingLevel::H6,
    }
}

/// First word of a directive, and the rest.
fn split(line: &str) -> (&str, &str) {
    let line = line.trim();
    let (kind, rest) = line.split_once(char::is_whitespace).unwrap_or((line, ""));
    (kind, rest.trim_start())
}

/// A formula in LaTeX's notation as MathML.
fn mathml(formula: &str) -> Result<String, String> {
    let storage = pulldown_latex::Storage::new();
    let events: Result<Vec<_>, _> = pulldown_latex::Parser::new(formula, &storage).collect();
    let events = events.map_err(|error| format!("formula `{formula}`: {error}"))?;
    let mut out = String::new();
    let config = pulldown_latex::RenderConfig {
        math_style: pulldown_latex::config::MathStyle::ISO,
        ..Default::default()
    };
    let events = events.into_iter().map(Ok::<_, pulldown_latex::ParserError>);
    pulldown_latex::push_mathml(&mut out, events, config)
        .map_err(|error| format!("formula `{formula}`: {error}"))?;
    Ok(out)
}

//! The verdict, and every check as a row with its working.

use std::collections::HashSet;

use calc_core::cite::Cite;
use calc_core::evaluate::deciding;
use calc_core::quantity::{Dimension, UnitSystem};
use calc_core::report::{Amount, Check, CheckId, Found, Report, Step, Verdict, WouldHelp};
use calc_core::scenario::unknown::Settled;
use drawing::face::{FaceState, face_view};
use drawing::member::{MemberState, member_section};
use drawing::parts::marked_rule;
use drawing::section::{Layout, SectionState, section};
use leptos::prelude::*;
use leptos::wasm_bindgen::JsValue;

use super::controls::{go_to, is_open};
use super::desk::Desk;
use super::examples::source_title;
use super::words::{self, Words};
use crate::el::{El, classed, el};
use crate::paint::drawing;

/// The checks whose working is open.
type Open = RwSignal<HashSet<CheckId>>;

/// A verdict in words, with its sign from the style sheet.
pub(super) fn verdict_word(verdict: Verdict) -> El {
    classed("span", "verdict")
        .attr("data-verdict", verdict.key())
        .text(words::label(verdict))
}

/// The sheet with the verdict and the checks.
pub(super) fn verdict(desk: Desk) -> El {
    let open = Open::new(HashSet::new());
    let of_report = move |build: fn(&Report, UnitSystem) -> Vec<El>| {
        move || {
            let units = desk.units();
            desk.shown
                .read()
                .answer
                .as_ref()
                .map_or_else(Vec::new, |(_, report)| build(report, units))
        }
    };
    let checks = move || {
        let units = desk.units();
        let shown = desk.shown.read();
        shown.answer.as_ref().map_or_else(Vec::new, |(_, report)| {
            report
                .checks
                .iter()
                .map(|check| row(check, units, open))
                .collect()
        })
    };
    let notes = of_report(|report, units| {
        report
            .notes
            .iter()
            .chain(&report.fatigue.said)
            .map(|note| el("li").text(words::said(note, units)))
            .collect()
    });
    classed("section", "result")
        .attr("aria-labelledby", "verdict-title")
        .flag("data-stale", move || !desk.shown.read().current)
        .child(el("h2").attr("id", "verdict-title").text("Does it hold?"))
        .child(faults(desk))
        .child(
            classed("div", "sheet answer")
                .child(
                    classed("div", "words")
                        .child(el("div").live_children(of_report(headline)))
                        .child(el("div").live_children(beside(desk))),
                )
                .child(own_section(desk)),
        )
        .child(classed("p", "soft").text(words::message("stop.towing")))
        .child(
            classed("p", "visually-hidden")
                .attr("role", "status")
                .live_text(spoken(desk)),
        )
        .child(
            el("h3")
                .attr("id", "checks-title")
                .text("Every check, weakest first"),
        )
        .child(
            classed("ol", "checks")
                .attr("aria-labelledby", "checks-title")
                .live_children(checks),
        )
        .child(classed("ul", "notes").live_children(notes))
}

/// The answer in one line, which stays in sight while the form is filled in.
pub(super) fn stuck(desk: Desk) -> El {
    let line = move || {
        let shown = desk.shown.read();
        let Some((_, report)) = &shown.answer else {
            return Vec::new();
        };
        let used = words::used(report);
        let stale = if shown.current { "" } else { " (not current)" };
        vec![
            verdict_word(report.verdict),
            el("span").text(used.unwrap_or_default()).text(stale),
            classed("span", "soft").text(words::label(report.weakest)),
        ]
    };
    classed("p", "stuck screen-only")
        .child(el("a").attr("href", "#verdict-title").live_children(line))
}

/// The reader's joint in section, as the wrench leaves it, and along the bolts where a part has no room.
fn own_section(desk: Desk) -> El {
    let face = Memo::new(move |_| {
        let units = desk.units();
        let shown = desk.shown.read();
        let (scenario, report) = shown.answer.as_ref()?;
        let example = desk.form.read().example().is_some();
        let state = FaceState::from_core("own-face", scenario, report, units);
        (!state.clashes.is_empty()).then(|| face_view(&FaceState { example, ..state }))
    });
    let scene = Memo::new(move |_| {
        let units = desk.units();
        let shown = desk.shown.read();
        let (scenario, _) = shown.answer.as_ref()?;
        // Of all that it may be the one that decides.
        let scenario = &*deciding(scenario);
        let example = desk.form.read().example().is_some();
        if let Some(state) = MemberState::from_core("own-section", scenario, units) {
            return Some(member_section(&MemberState { example, ..state }));
        }
        let curve = calc_core::torque_turn(scenario);
        let at = curve.at_wanted.or(curve.points.last().copied())?;
        let state = SectionState::from_core(
            "own-section",
            scenario,
            &curve,
            at.turn_deg,
            units,
            Layout::Narrow,
        );
        Some(section(&SectionState {
            name: String::from("section through the bolt"),
            example,
            ..state
        }))
    });
    classed("div", "own-section").live_children(move || {
        [scene.get(), face.get()]
            .into_iter()
            .flatten()
            .map(|scene| el("div").child(drawing(Signal::stored(scene))))
            .collect()
    })
}

/// What must be put right before the answer is that of the form.
fn faults(desk: Desk) -> El {
    let list = move || {
        desk.faults
            .get()
            .into_iter()
            .map(|fault| {
                let line = el("li").text(fault.sentence);
                match fault.field {
                    Some(field) => line.text(" ").child(
                        el("button")
                            .attr("type", "button")
                            .text("go there")
                            .on("click", move |_| go_to(field)),
                    ),
                    None => line,
                }
            })
            .collect()
    };
    classed("div", "remark faults")
        .flag("hidden", move || desk.faults.read().is_empty())
        .child(
            el("p").text(
                "Not current: what is below still answers the last numbers that could be read.",
            ),
        )
        .child(el("ul").live_children(list))
}

fn headline(report: &Report, units: UnitSystem) -> Vec<El> {
    let Some(weakest) = report.checks.first() else {
        return Vec::new();
    };
    let mut verdict = classed("p", "says").child(verdict_word(report.verdict));
    if let Some(used) = words::used(report) {
        verdict = verdict
            .text(" ")
            .child(classed("span", "used").text("{0} of its capacity is used".with(&[&used])));
    }
    let reason = el("p")
        .child(el("b").text(words::label(report.weakest)))
        .text(" ")
        .text(words::said(&weakest.reason, units));
    let mut lines = vec![verdict, reason];
    if !report.would_help.is_empty() {
        let helps = report
            .would_help
            .iter()
            .map(|help| settles(report, help, units));
        lines.push(classed("p", "soft").text(words::message("settle.title")));
        lines.push(classed("ul", "settle").children(helps));
    }
    lines
}

/// What one measurement would bring: "Metal of the tube: holds if it is …; does not hold if it is …", and how to find
/// out.
fn settles(report: &Report, help: &WouldHelp, units: UnitSystem) -> El {
    let name = |found: &Found| match found.value {
        Settled::Name(name) => words::choice(help.field, name),
        Settled::Wall(mm) => words::amount(mm * 1e-3, Dimension::Length, units),
    };
    let brings: Vec<String> = Verdict::ALL
        .iter()
        .filter_map(|&verdict| {
            let found = help.found.iter().filter(|found| found.verdict == verdict);
            let names: Vec<String> = found.map(name).collect();
            let names = names.join(words::message("settle.or"));
            (!names.is_empty())
                .then(|| words::message("settle.if").with(&[words::label(verdict), &names]))
        })
        .collect();
    el("li")
        .child(el("b").text(words::label_in(&report.input, help.field)))
        .text(format!(
            ": {}. {}",
            brings.join("; "),
            words::label(help.how)
        ))
}

/// What is known beside the verdict: a torque that is better, the strength usually found.
fn beside(desk: Desk) -> impl Fn() -> Vec<El> + Send + 'static {
    move || {
        let units = desk.units();
        let outlook = desk.outlook.read();
        let Some(outlook) = outlook.as_ref() else {
            return Vec::new();
        };
        // Where no torque is enough, what is short at the best one.
        let short = outlook
            .wrench
            .best
            .filter(|best| best.verdict == Verdict::DoesNotHold)
            .map(|best| classed("span", "soft").text(words::label(best.weakest)));
        let mut told: Vec<El> = outlook
            .said
            .iter()
            .map(|said| classed("p", "beside").text(words::said(said, units)))
            .collect();
        if let Some(short) = short {
            let first = (!told.is_empty()).then(|| told.remove(0));
            told.splice(0..0, first.map(|p| p.text(" ").child(short)));
        }
        told
    }
}

/// The answer in one sentence for a reader's software, said when the form rests.
fn spoken(desk: Desk) -> impl Fn() -> String + Send + 'static {
    move || {
        // The repairs are computed when the form rests; their arrival is the sign that it does.
        desk.repairs.track();
        let shown = desk.shown.read_untracked();
        shown
            .answer
            .as_ref()
            .map_or_else(String::new, |(_, report)| {
                let used = words::used(report);
                "The joint {0}. {1} {2}".with(&[
                    words::label(report.verdict),
                    words::label(report.weakest),
                    &used.unwrap_or_default(),
                ])
            })
    }
}

fn row(check: &Check, units: UnitSystem, open: Open) -> El {
    let id = check.id;
    let key = id.key();
    let number = |a: Amount| words::amount(a.si, a.dimension, units);
    let factor = ((check.factor * 100.0).round() / 100.0).to_string();
    let mut needs = number(check.demand);
    if (check.factor - 1.0).abs() > 1e-9 {
        needs = "{0} × {1}".with(&[&needs, &factor]);
    }
    // What was not checked has no number to be held against.
    let unchecked = check.verdict == Verdict::NotChecked;
    let scene = marked_rule(&format!("share-{key}"), check.utilisation, check.verdict);
    // What holds needs no explanation unless somebody asks; the page is long enough.
    let why = classed("p", "why").text(words::said(&check.reason, units));
    let (told, inside) = match check.verdict {
        Verdict::Holds => (None, Some(why)),
        _ => (Some(why), None),
    };
    let soft = |text: &'static str| classed("span", "soft").text(text);
    let working = el("details")
        .prop("open", move || {
            JsValue::from_bool(open.read().contains(&id))
        })
        .on("toggle", move |event| {
            if is_open(&event) != open.read_untracked().contains(&id) {
                open.update(|set| {
                    if !set.remove(&id) {
                        set.insert(id);
                    }
                });
            }
        })
        .child(el("summary").text("Working"))
        .children(inside)
        .child(classed("dl", "working").children(check.steps.iter().flat_map(|s| step(s, units))))
        .child(
            classed("p", "cite")
                .text("Factor {0}: {1}.".with(&[&factor, words::label(check.factor_is)])),
        );
    classed("li", "check")
        .attr("data-check", key)
        .child(classed("p", "question").text(words::label(check.id)))
        .child(
            classed("p", "needs")
                .flag("hidden", move || unchecked)
                .child(soft("needs "))
                .text(needs)
                .text(" → ")
                .child(soft("has "))
                .text(number(check.capacity)),
        )
        .child(classed("div", "ruled").child(drawing(Signal::stored(scene))))
        .child(
            classed("p", "outcome")
                .child(verdict_word(check.verdict))
                .text(" ")
                .text(words::share(check.utilisation).unwrap_or_default()),
        )
        .children(told)
        .child(working)
}

/// A source by its title, with the place in it and how it is held.
pub(super) fn cited(cite: &Cite) -> El {
    classed("span", "cite")
        .child(
            el("a")
                .attr(
                    "href",
                    &format!("sources.html#source-{}", cite.source.key()),
                )
                .text(source_title(cite.source.key())),
        )
        .text(format!(", {} ({})", cite.place, cite.flag.words()))
}

fn step(step: &Step, units: UnitSystem) -> [El; 2] {
    let put_in: Vec<String> = step
        .inputs
        .iter()
        .map(|term| {
            "{0} = {1}".with(&[
                term.symbol,
                &words::amount(term.amount.si, term.amount.dimension, units),
            ])
        })
        .collect();
    let result = words::amount(step.result.si, step.result.dimension, units);
    let told = el("dd")
        .child(
            classed("span", "formula")
                .child(el("var").text(step.symbol))
                .text(format!(" = {}", step.formula)),
        )
        .child(classed("span", "put-in").text(put_in.join(", ")))
        .child(
            classed("span", "came-out")
                .child(el("var").text(step.symbol))
                .text(" = ")
                .child(el("b").text(result)),
        )
        .child(cited(&step.cite));
    [el("dt").text(step.what), told]
}

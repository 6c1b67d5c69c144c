//! The verdict: one line, one reason, one drawing, one next step.

use calc_core::quantity::{Dimension, UnitSystem};
use calc_core::report::{Found, Report, Verdict, WouldHelp};
use calc_core::scenario::unknown::Settled;
use calc_core::scenario::{FOUND, Field, Seen};
use drawing::face::{FaceState, face_view};
use drawing::words::key;
use leptos::prelude::*;

use super::controls::go_to;
use super::desk::Desk;
use super::measures;
use super::picture::picture;
use super::questions::questions;
use super::repairs;
use super::steps;
use super::words::{self, Words, message, message_at};
use crate::el::{El, classed, el};
use crate::paint::drawing;

/// A verdict in words, with its sign from the style sheet.
pub(crate) fn verdict_word(verdict: Verdict) -> El {
    classed("span", "verdict")
        .attr("data-verdict", verdict.key())
        .text(words::label(verdict))
}

/// The answer: one line, one reason, one drawing, one next step; then the questions in groups.
pub(super) fn verdict(desk: Desk) -> El {
    let none = move || desk.shown.read().answer.is_none();
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
    let notes = of_report(|report, units| {
        report
            .notes
            .iter()
            .chain(&report.fatigue.said)
            .map(|note| el("li").text(words::said(note, units)))
            .collect()
    });
    classed("div", "result")
        .flag("data-stale", move || !desk.shown.read().current)
        .child(faults(desk))
        .child(
            el("div")
                .flag("hidden", move || !none())
                .live_children(move || to_go(desk)),
        )
        .child(
            classed("div", "sheet answer")
                .flag("hidden", none)
                .child(
                    classed("div", "words")
                        .child(
                            classed("p", "remark")
                                .flag("hidden", move || desk.form.read().example().is_none())
                                .live_text(move || {
                                    let form = desk.form.read();
                                    message(key::STEP_EXAMPLE)
                                        .with(&[form.example().unwrap_or_default()])
                                }),
                        )
                        .child(el("div").live_children(of_report(headline)))
                        .child(el("div").live_children(move || next(desk))),
                )
                .child(own_section(desk))
                .child(
                    classed("div", "words rests-on")
                        .child(
                            classed("p", "remark")
                                .flag("hidden", move || !unlooked(desk))
                                .text(message(key::STEP_UNLOOKED)),
                        )
                        .child(el("div").live_children(beside(desk)))
                        .child(
                            classed("p", "taken")
                                .live_text(move || measures::taken(&desk.form.read())),
                        ),
                ),
        )
        .child(
            classed("p", "visually-hidden")
                .attr("role", "status")
                .live_text(spoken(desk)),
        )
        .child(
            el("div")
                .flag("hidden", none)
                .child(
                    el("h3")
                        .attr("id", "checks-title")
                        .text(message(key::CHECKS_TITLE)),
                )
                .child(questions(desk))
                .child(
                    classed("details", "notes-fold")
                        .child(el("summary").text(message(key::CHECKS_NOTES)))
                        .child(el("p").text(message(key::STOP_TOWING)))
                        .child(classed("ul", "notes").live_children(notes)),
                ),
        )
}

/// Whether there is something to look for that nobody has looked for.
fn unlooked(desk: Desk) -> bool {
    let form = desk.form.read();
    FOUND
        .iter()
        .any(|field| form.choice(*field) == Seen::NotLooked.name())
}

/// What is still to be measured before anything can be said.
fn to_go(desk: Desk) -> Vec<El> {
    let form = desk.form.read();
    let missing = form.missing();
    if missing.is_empty() {
        return Vec::new();
    }
    let list = missing.into_iter().map(|field| {
        el("li").child(
            el("button")
                .attr("type", "button")
                .text(words::label_in(form.input(), field))
                .on("click", move |_| go_to(desk, field)),
        )
    });
    vec![
        el("p").text(message(key::STEP_MISSING)),
        classed("ul", "to-go").children(list),
    ]
}

/// One next step.
fn next(desk: Desk) -> Vec<El> {
    let shown = desk.shown.read();
    let Some((_, report)) = shown.answer.as_ref().filter(|_| shown.current) else {
        return Vec::new();
    };
    let button = |text: String, then: fn(Desk)| {
        vec![
            classed("p", "actions screen-only").child(
                classed("button", "main")
                    .attr("type", "button")
                    .text(text)
                    .on("click", move |_| then(desk)),
            ),
        ]
    };
    if let Some(help) = report.would_help.first() {
        let field = help.field;
        let label = words::label_in(&report.input, field);
        return vec![
            classed("p", "actions screen-only").child(
                classed("button", "main")
                    .attr("type", "button")
                    .text(message(key::NEXT_MEASURE).with(&[label]))
                    .on("click", move |_| go_to(desk, field)),
            ),
        ];
    }
    if report.verdict == Verdict::Holds {
        return button(message(key::NEXT_KEEP).into(), |desk| {
            if let Some(place) = document().get_element_by_id("share-title") {
                steps::show(desk, &place);
            }
        });
    }
    if repairs::no_load(desk) {
        return button(message(key::NEXT_LOAD).into(), |desk| {
            go_to(desk, Field::FreeAlong)
        });
    }
    let found = desk.repairs.read();
    let Some(found) = found.as_ref().filter(|_| !desk.repairs_late.get()) else {
        return Vec::new();
    };
    let holds = found
        .list
        .iter()
        .filter(|repair| repair.verdict == Verdict::Holds && !repair.changed.is_empty())
        .count();
    let text = match holds {
        0 => message(key::NEXT_NONE).into(),
        1 => message(key::NEXT_ONE).into(),
        many => message(key::NEXT_MANY).with(&[&many.to_string()]),
    };
    button(text, |desk| steps::go(desk, steps::STEPS))
}

/// How much of what the road asks a joint can do, in words: "about a tenth".
fn can_do(used: f64) -> &'static str {
    // The share in twelfths, so that thirds and quarters are there.
    let share = 1.0 / used;
    let key = match share {
        s if s < 0.07 => "less",
        s if s < 0.15 => "tenth",
        s if s < 0.22 => "fifth",
        s if s < 0.29 => "quarter",
        s if s < 0.41 => "third",
        s if s < 0.58 => "half",
        s if s < 0.71 => "two-thirds",
        s if s < 0.83 => "three-quarters",
        _ => "nearly",
    };
    message_at(&["can", key])
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
        let example = desk.form.read().example().is_some();
        picture("own-section", scenario, units, example)
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
                            .text(message(key::PAGE_GO_THERE))
                            .on("click", move |_| go_to(desk, field)),
                    ),
                    None => line,
                }
            })
            .collect()
    };
    classed("div", "remark faults")
        .flag("hidden", move || desk.faults.read().is_empty())
        .child(
            el("p")
                .flag("hidden", move || desk.shown.read().answer.is_none())
                .text(message(key::PAGE_NOT_CURRENT_WHAT_IS_BELOW_STILL)),
        )
        .child(el("ul").live_children(list))
}

fn headline(report: &Report, units: UnitSystem) -> Vec<El> {
    let Some(weakest) = report.checks.first() else {
        return Vec::new();
    };
    let mut verdict = classed("p", "says").child(verdict_word(report.verdict));
    if report.verdict == Verdict::DoesNotHold {
        verdict = verdict
            .text(" ")
            .child(el("b").text(message(key::STEP_PARK)));
    }
    let used = weakest
        .utilisation
        .filter(|_| report.verdict != Verdict::NotChecked);
    let told = used.map(|used| {
        let plain = match report.verdict {
            Verdict::DoesNotHold => message(key::SAYS_DOES_NOT_HOLD).with(&[can_do(used)]),
            other => message_at(&["says", other.key()]).into(),
        };
        let percent = words::share(Some(used)).unwrap_or_default();
        el("p")
            .text(plain)
            .text(" ")
            .child(classed("span", "used soft").text(message(key::SAYS_USED).with(&[&percent])))
    });
    let reason = el("p")
        .child(el("b").text(words::label(report.weakest)))
        .text(" ")
        .text(words::said(&weakest.reason, units));
    let mut lines = vec![verdict];
    lines.extend(told);
    lines.push(reason);
    if !report.would_help.is_empty() {
        let helps = report
            .would_help
            .iter()
            .map(|help| settles(report, help, units));
        lines.push(classed("p", "soft").text(words::message(key::SETTLE_TITLE)));
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
            let names = names.join(words::message(key::SETTLE_OR));
            (!names.is_empty())
                .then(|| words::message(key::SETTLE_IF).with(&[words::label(verdict), &names]))
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
                message(key::PAGE_THE_JOINT).with(&[
                    words::label(report.verdict),
                    words::label(report.weakest),
                    &used.unwrap_or_default(),
                ])
            })
    }
}

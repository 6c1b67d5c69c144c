//! Step 2: what an old joint tells of itself. A crack, a dent, an oval hole, a nut that never gets tight.

use calc_core::inspection::{dent, oval, torque_stop};
use calc_core::quantity::{
    Dimension, InUnits, Length, ReadError, Torque, UnitSystem, read, unit_for,
};
use calc_core::report::Said;
use calc_core::scenario::{FOUND, Field, Scenario, Seen};
use drawing::words::key;
use leptos::prelude::*;
use leptos::wasm_bindgen::JsValue;

use super::controls::radio;
use super::desk::Desk;
use super::state::Form;
use super::steps;
use super::words::{self, Words, message, message_at};
use crate::el::{El, classed, el, follow, value_of};
use crate::kept::Kept;

/// Something that can be measured on a joint that has been used.
#[derive(Clone, Copy)]
struct Trace {
    /// Id of its field; also the key of its words.
    id: &'static str,
    /// What it belongs to.
    of: Field,
    dimension: Dimension,
    /// Least and most that is taken, SI.
    range: (f64, f64),
}

static TRACES: [Trace; 4] = [
    Trace {
        id: "trace-dent",
        of: Field::FoundHollow,
        dimension: Dimension::Length,
        range: (0.0, 0.0508),
    },
    Trace {
        id: "trace-long",
        of: Field::FoundOval,
        dimension: Dimension::Length,
        range: (3.175e-3, 0.1016),
    },
    Trace {
        id: "trace-short",
        of: Field::FoundOval,
        dimension: Dimension::Length,
        range: (3.175e-3, 0.1016),
    },
    Trace {
        id: "trace-stop",
        of: Field::FoundSpin,
        dimension: Dimension::Torque,
        range: (1.356, 2034.0),
    },
];

/// What was typed, and the units that a bare number counted in then.
#[derive(Clone, Debug, Default, PartialEq)]
struct Typed {
    text: String,
    units: UnitSystem,
}

impl Trace {
    fn label(&self) -> &'static str {
        message(self.id)
    }

    /// The number in SI; `None` while nothing is typed. The error is a sentence for the reader.
    fn number(&self, typed: &Typed) -> Result<Option<f64>, String> {
        let units = typed.units;
        let shown = |si| words::amount(si, self.dimension, units);
        let (min, max) = (shown(self.range.0), shown(self.range.1));
        match read(&typed.text, self.dimension, unit_for(self.dimension, units)) {
            Ok(found) if (self.range.0..=self.range.1).contains(&found.si) => Ok(Some(found.si)),
            Ok(found) => Err(message(key::FAULT_OUT_OF_RANGE).with(&[
                self.label(),
                &shown(found.si),
                &min,
                &max,
            ])),
            Err(ReadError::Empty) => Ok(None),
            Err(error) => Err(message(key::PAGE_IT_CAN_BE_TO).with(&[
                self.label(),
                &error.to_string(),
                &min,
                &max,
            ])),
        }
    }
}

/// The step: what was found decides whatever the numbers say, and is part of the joint, of its link and its sheet. What
/// is measured of it says what happened; the long way of an oval hole counts as the hole.
pub(super) fn look(desk: Desk) -> El {
    let typed = TRACES.map(|_| RwSignal::new(Typed::default()));
    follow(move || {
        desk.again.track();
        for (typed, kept) in typed.into_iter().zip(kept()) {
            typed.set(kept);
        }
    });
    let written = Memo::new(move |_| typed.map(|typed| typed.get()));
    Effect::new(move |before: Option<()>| {
        let written = written.get();
        if before.is_some() {
            keep(&written);
            hole_of(desk, &written);
        }
    });
    let told = move || {
        let numbers = numbers(&written.read());
        let form = desk.form.read();
        as_drilled(&form).map_or_else(Vec::new, |s| tell(&s, numbers, form.units()))
    };
    let rows = FOUND.into_iter().map(|found| {
        let measured = TRACES
            .iter()
            .zip(typed)
            .filter(|(trace, _)| trace.of == found);
        let fields: Vec<El> = measured
            .map(|(trace, typed)| {
                let open =
                    move || is(desk, found, Seen::Yes) || !typed.read().text.trim().is_empty();
                field(desk, trace, typed).flag("hidden", move || !open())
            })
            .collect();
        row(desk, found).children(fields)
    });
    let none = el("button")
        .attr("type", "button")
        .text(message(key::LOOK_NONE))
        .on("click", move |_| {
            desk.form.update(|form| {
                for found in FOUND {
                    if form.choice(found) != Seen::Yes.name() {
                        form.choose(found, Seen::No.name());
                    }
                }
            });
            steps::go(desk, 3);
        });
    steps::step(desk, 2)
        .child(el("p").text(message(key::LOOK_HOW)))
        .child(
            classed("div", "traces")
                .children(rows)
                .child(el("div").attr("aria-live", "polite").live_children(told)),
        )
        .child(classed("p", "actions screen-only").child(none))
}

fn is(desk: Desk, found: Field, seen: Seen) -> bool {
    desk.form.read().choice(found) == seen.name()
}

/// A question with yes and no, and what it means where it is yes.
fn row(desk: Desk, found: Field) -> El {
    let answer = |seen: Seen| {
        radio(
            found.name(),
            words::message_at(&["choice", found.name(), seen.name()]),
            move || is(desk, found, seen),
            move || desk.choose(found, seen.name()),
        )
    };
    classed("fieldset", "asked")
        .attr("data-field", found.name())
        .child(
            el("legend")
                .text(words::label(found))
                .child(classed("span", "soft").text(words::help(found))),
        )
        .child(classed("div", "kinds").children([Seen::Yes, Seen::No].map(answer)))
}

/// The numbers that can be read.
fn numbers(written: &[Typed; 4]) -> [Option<f64>; 4] {
    let mut numbers = [None; 4];
    for ((number, trace), typed) in numbers.iter_mut().zip(&TRACES).zip(written) {
        *number = trace.number(typed).ok().flatten();
    }
    numbers
}

/// The long way of an oval hole counts as the hole; a hole that is longer one way has slipped.
fn hole_of(desk: Desk, written: &[Typed; 4]) {
    let [_, long, short, _] = numbers(written);
    let [_, typed, ..] = written;
    let Some(long) = long else { return };
    desk.form.update(|form| {
        let unit = unit_for(Dimension::Length, typed.units);
        form.type_as(Field::Hole, &typed.text, unit);
        if let (Some(s), Some(short)) = (as_drilled(form), short)
            && oval(&s, Length::of_si(long), Length::of_si(short)).slipped
        {
            form.choose(Field::FoundOval, Seen::Yes.name());
        }
    });
}

/// The joint before it was damaged.
fn as_drilled(form: &Form) -> Option<Scenario> {
    Scenario::new(&form.input().undamaged()).ok()
}

/// Keeps what was typed: a line each, the units first.
fn keep(typed: &[Typed; 4]) {
    if typed.iter().all(|typed| typed.text.is_empty()) {
        return Kept::Traces.forget();
    }
    let lines = typed.each_ref().map(|typed| {
        let units = if typed.units == UnitSystem::Us {
            "us"
        } else {
            "metric"
        };
        format!("{units} {}", typed.text.replace('\n', " "))
    });
    Kept::Traces.write(&lines.join("\n"));
}

/// What was kept.
fn kept() -> [Typed; 4] {
    let text = Kept::Traces.read().unwrap_or_default();
    let mut lines = text.lines();
    TRACES.map(|_| {
        let (units, text) = lines
            .next()
            .and_then(|line| line.split_once(' '))
            .unwrap_or_default();
        let units = if units == "metric" {
            UnitSystem::Metric
        } else {
            UnitSystem::Us
        };
        Typed {
            text: text.into(),
            units,
        }
    })
}

fn field(desk: Desk, trace: &'static Trace, typed: RwSignal<Typed>) -> El {
    let fault = Memo::new(move |_| trace.number(&typed.read()).err());
    let (hint, error) = (format!("{}-hint", trace.id), format!("{}-error", trace.id));
    // An empty field counts in the units that the page is in.
    let units = move || {
        let typed = typed.read();
        if typed.text.trim().is_empty() {
            desk.units()
        } else {
            typed.units
        }
    };
    let entry = el("input")
        .attr("type", "text")
        .attr("id", trace.id)
        .attr("autocomplete", "off")
        .attr("spellcheck", "false")
        .attr("aria-describedby", &format!("{hint} {error}"))
        .live_attr("aria-invalid", move || {
            Some(fault.read().is_some().to_string())
        })
        .prop("value", move || JsValue::from_str(&typed.read().text))
        .on("input", move |event| {
            let text = value_of(&event);
            let units = units();
            // What is no longer measured is no longer the hole.
            if trace.id == "trace-long" && text.trim().is_empty() {
                desk.type_in(Field::Hole, "");
            }
            typed.set(Typed { text, units });
        });
    classed("div", "field")
        .child(el("label").attr("for", trace.id).text(trace.label()))
        .child(entry)
        .child(
            classed("span", "unit")
                .live_text(move || unit_for(trace.dimension, units()).symbol().into()),
        )
        .child(
            classed("p", "hint")
                .attr("id", &hint)
                .text(message_at(&[trace.id, "help"])),
        )
        .child(
            classed("p", "error")
                .attr("id", &error)
                .flag("hidden", move || fault.read().is_none())
                .live_text(move || fault.get().unwrap_or_default()),
        )
}

fn tell(s: &Scenario, numbers: [Option<f64>; 4], units: UnitSystem) -> Vec<El> {
    let [narrower, long, short, stop] = numbers;
    let mut told: Vec<Said> = Vec::new();
    if let Some(narrower) = narrower {
        told.extend(dent(s, Length::of_si(narrower)).said);
    }
    if let (Some(long), Some(short)) = (long, short) {
        told.extend(oval(s, Length::of_si(long), Length::of_si(short)).said);
    }
    if let Some(stop) = stop {
        told.extend(torque_stop(s, Torque::of_si(stop)).said);
    }
    let mut lines: Vec<String> = told.iter().map(|said| words::said(said, units)).collect();
    if long.is_some() != short.is_some() {
        lines.push(message(key::TRACES_BOTH).into());
    }
    let lines: Vec<El> = lines.into_iter().map(|line| el("li").text(line)).collect();
    if lines.is_empty() {
        Vec::new()
    } else {
        vec![classed("ul", "outcomes").children(lines)]
    }
}

//! What an old joint tells of itself: a dent, an oval hole, a wrench that stopped before it clicked.

use calc_core::inspection::{dent, oval, torque_stop};
use calc_core::quantity::{
    Dimension, InUnits, Length, ReadError, Torque, UnitSystem, read, unit_for,
};
use calc_core::report::Said;
use calc_core::scenario::Scenario;
use leptos::prelude::*;
use leptos::wasm_bindgen::JsValue;

use super::desk::Desk;
use super::words::{self, Words, message, message_at};
use crate::el::{El, classed, el, follow, value_of};
use crate::kept::Kept;

/// Something that can be measured on a joint that has been used.
#[derive(Clone, Copy)]
struct Trace {
    /// Id of its field; also the key of its words.
    id: &'static str,
    dimension: Dimension,
    /// Least and most that is taken, SI.
    range: (f64, f64),
}

static TRACES: [Trace; 4] = [
    Trace {
        id: "trace-dent",
        dimension: Dimension::Length,
        range: (0.0, 0.0508),
    },
    Trace {
        id: "trace-long",
        dimension: Dimension::Length,
        range: (3.175e-3, 0.1016),
    },
    Trace {
        id: "trace-short",
        dimension: Dimension::Length,
        range: (3.175e-3, 0.1016),
    },
    Trace {
        id: "trace-stop",
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
            Ok(found) => Err(message("fault.out-of-range").with(&[
                self.label(),
                &shown(found.si),
                &min,
                &max,
            ])),
            Err(ReadError::Empty) => Ok(None),
            Err(error) => Err("{0}: {1}. It can be {2} to {3}.".with(&[
                self.label(),
                &error.to_string(),
                &min,
                &max,
            ])),
        }
    }
}

/// The section. What is typed here is no part of the joint: no link and no verdict holds it.
pub(super) fn inspection(desk: Desk) -> El {
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
        }
    });
    let told = move || {
        let numbers = [0, 1, 2, 3].map(|i| {
            let (trace, typed) = (TRACES.get(i)?, typed.get(i)?);
            trace.number(&typed.read()).ok().flatten()
        });
        let shown = desk.shown.read();
        let scenario = shown.answer.as_ref().map(|(scenario, _)| scenario);
        scenario.map_or_else(Vec::new, |s| tell(s, numbers, desk.units()))
    };
    let fields = TRACES
        .iter()
        .zip(typed)
        .map(|(trace, typed)| field(desk, trace, typed));
    classed("section", "traces")
        .attr("aria-labelledby", "traces-title")
        .child(
            el("h2")
                .attr("id", "traces-title")
                .text("What has it been through?"),
        )
        .child(el("p").text(message("traces.how")))
        .child(classed("div", "metal").children(fields))
        .child(
            el("div")
                .attr("aria-live", "polite")
                .flag("data-stale", move || !desk.shown.read().current)
                .live_children(told),
        )
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
        lines.push(message("traces.both").into());
    }
    let lines: Vec<El> = lines.into_iter().map(|line| el("li").text(line)).collect();
    if lines.is_empty() {
        Vec::new()
    } else {
        vec![classed("ul", "outcomes").children(lines)]
    }
}

//! Two repairs side by side, their differences marked.

use calc_core::quantity::{Dimension, UnitSystem};
use calc_core::repair::{Repair, Repairs};
use calc_core::scenario::Scenario;
use leptos::prelude::*;

use super::picture::picture;
use super::repairs::{all_changes, cost, jobs, used};
use super::words::{self, message_at};
use crate::el::{El, classed, el};
use crate::paint::drawing;

/// What is compared, by key of its name, and how a repair says it.
type Line = (&'static str, fn(&Repair, UnitSystem) -> String);

const LINES: [Line; 8] = [
    ("change", |r, units| all_changes(r, units).join("; ")),
    ("then", |r, _| {
        format!("{} {}", words::label(r.verdict), used(r))
    }),
    ("weakest", |r, _| words::label(r.weakest).into()),
    ("reserve", |r, _| {
        words::share(Some((1.0 - r.most_used).max(0.0))).unwrap_or_default()
    }),
    ("torque", |r, units| {
        words::amount(r.torque_nm, Dimension::Torque, units)
    }),
    ("work", |r, _| jobs(&r.work)),
    ("adds", |r, units| {
        words::amount(r.work.mass_kg, Dimension::Mass, units)
    }),
    ("needs", |r, _| words::needs(r.needs).unwrap_or_default()),
];

/// The two that were picked; nothing while there are fewer.
pub(super) fn compared(found: &Repairs, picked: &[String], units: UnitSystem) -> Vec<El> {
    let two: Vec<&Repair> = picked
        .iter()
        .filter_map(|place| found.list.get(place.parse::<usize>().ok()?))
        .collect();
    let [a, b] = two[..] else {
        return Vec::new();
    };
    let both = [a, b];
    let head = |repair: &Repair| {
        el("th")
            .attr("scope", "col")
            .text(words::label(repair.kind))
    };
    let drawn = both.into_iter().enumerate().map(|(index, repair)| {
        let scene = Scenario::new(&repair.input)
            .ok()
            .and_then(|s| picture(&format!("compared-{index}"), &s, units, false));
        el("td").children(scene.map(|scene| drawing(Signal::stored(scene))))
    });
    let name = |key: &str| {
        el("th")
            .attr("scope", "row")
            .text(message_at(&["compare", key]))
    };
    let lines = LINES
        .into_iter()
        .map(|(key, says)| (key, both.map(|repair| says(repair, units))))
        .chain([("cost", both.map(|repair| cost(repair, &found.money)))])
        .map(|(key, said)| {
            let [a, b] = &said;
            let differs = a != b;
            el("tr")
                .flag("data-differs", move || differs)
                .child(name(key))
                .children(said.map(|text| el("td").text(text)))
        });
    vec![
        classed("table", "compared-two")
            .child(el("caption").text(message_at(&["compare", "title"])))
            .child(el("thead").child(el("tr").child(el("td")).children(both.map(head))))
            .child(
                el("tbody")
                    .child(el("tr").child(name("section")).children(drawn))
                    .children(lines),
            ),
    ]
}

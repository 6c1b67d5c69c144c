//! What the clamp stands on, with both strengths kept apart, and what the road asks.

use calc_core::quantity::{Dimension, UnitSystem};
use calc_core::report::{CheckId, Report, SupportNumbers, SupportReport, Verdict};
use calc_core::scenario::Scenario;
use drawing::group::{GroupState, group};
use drawing::words::key;
use leptos::prelude::*;

use super::desk::Desk;
use super::words::{self, Words};
use crate::el::{El, classed, el};
use crate::paint::drawing;

/// Both tables and the drawing of the bolts.
pub(super) fn standing(desk: Desk) -> El {
    let tables = move || {
        let units = desk.units();
        let shown = desk.shown.read();
        shown
            .answer
            .as_ref()
            .map_or_else(Vec::new, |(_, report)| tables(report, units))
    };
    let bolts = move || {
        let units = desk.units();
        let example = desk.form.read().example().is_some();
        let shown = desk.shown.read();
        shown
            .answer
            .as_ref()
            .map(|(scenario, report)| bolts(scenario, report, units, example))
            .into_iter()
            .collect()
    };
    classed("details", "fold stands")
        .flag("data-stale", move || !desk.shown.read().current)
        .child(
            el("summary")
                .attr("id", "stands-title")
                .text("What backs up the faces"),
        )
        .child(
            classed("div", "halves")
                .child(el("div").live_children(tables))
                .child(el("div").live_children(bolts)),
        )
}

/// A line of the table: what, with least strength, with likely strength.
fn line(what: &str, least: &str, likely: &str) -> El {
    el("tr")
        .child(el("th").attr("scope", "row").text(what))
        .child(classed("td", "n").attr("data-name", "least").text(least))
        .child(
            classed("td", "n end")
                .attr("data-name", "likely")
                .text(likely),
        )
}

fn limits(s: &SupportReport, units: UnitSystem) -> El {
    let both = |what, pick: fn(&SupportNumbers) -> f64| {
        let force = |n| words::amount(pick(n), Dimension::Force, units);
        line(what, &force(&s.least), &force(&s.likely))
    };
    let head = el("tr")
        .child(el("th").attr("scope", "col").text("clamp"))
        .child(classed("th", "n").attr("scope", "col").text("least"))
        .child(classed("th", "n").attr("scope", "col").text("likely"));
    let (least, likely) = (
        words::label(s.least.gives_way),
        words::label(s.likely.gives_way),
    );
    classed("table", "restack")
        .child(el("caption").text("With least and with likely strength"))
        .child(el("thead").child(head))
        .child(
            el("tbody")
                .child(both("A lasting dent begins at", |n| n.lasting_dent_from_n))
                .child(both("Faces are pushed in by 1 % of their width at", |n| {
                    n.load_at_1pct_of_width_n
                }))
                .child(both("Faces are pushed in by 3 % of their width at", |n| {
                    n.load_at_3pct_of_width_n
                }))
                .child(both("Limit that the check uses", |n| n.limit_n))
                .child(both("Clamp load that is reached", |n| n.clamp_reached_n))
                .child(line("Gives way first", least, likely)),
        )
}

/// Whether nobody knows what the clamp is: then no table of it is shown.
fn is_unchecked(report: &Report) -> bool {
    report
        .checks
        .iter()
        .any(|check| check.id == CheckId::Clamp && check.verdict == Verdict::NotChecked)
}

fn tables(report: &Report, units: UnitSystem) -> Vec<El> {
    let force = |n: f64| words::amount(n, Dimension::Force, units);
    let torque = |nm: f64| words::amount(nm, Dimension::Torque, units);
    let depth = |mm: f64| words::amount(mm * 1e-3, Dimension::Length, units);
    let s = &report.support;
    let wanted = "The wrench is set to {0}. On something solid that gives {1} of clamp load, and between {2} and {3} from one bolt to the next."
        .with(&[
            &torque(report.tightening.torque_nm),
            &force(report.tightening.clamp_nominal_n),
            &force(report.tightening.clamp_min_n),
            &force(report.tightening.clamp_max_n),
        ]);
    if is_unchecked(report) {
        let unchecked = words::message(key::UNCHECKED_SUPPORT);
        return vec![el("p").text(wanted), el("p").text(unchecked)];
    }
    let clicks = s.clicks_up_to_nm.map_or_else(
        || String::from("What is between head and nut takes more than the bolt: the wrench clicks at any torque that the bolt can take."),
        |most| {
            "With likely strength the wrench clicks up to {0}. Set higher, it does not click as far as this was checked: the nut keeps turning while the tube gives way."
                .with(&[&torque(most)])
        },
    );
    let dents = match (s.dent_at_wanted_clamp_mm, s.dent_left_mm) {
        (Some(during), Some(left)) => {
            "At the target clamp load each face is pushed in by {0}; {1} of it stays when the nut is loosened."
                .with(&[&depth(during), &depth(left)])
        }
        _ if s.faces.is_empty() => String::from("No hollow face is pushed in."),
        _ if s.clicks_up_to_nm.is_some_and(|most| report.tightening.torque_nm > most) => String::from("The target clamp load is not reached before each face is pushed in by 6 % of its width, which is as far as this was checked: the dent would be larger."),
        _ => String::from("The faces are not loaded."),
    };
    let compared = s.faces.first().map(|face| {
        "For comparison, the bare face under this washer with likely strength: {0} when it is pushed in by 3 % of its width, by this page's curve; {1} (round patch) or {2} (square patch) by the published yield-line formula for a tube face."
            .with(&[
                &force(face.likely.load_at_3pct_of_width_n),
                &force(face.yield_line_circular_patch_n),
                &force(face.yield_line_square_patch_n),
            ])
    });
    let l = &report.losses;
    let left = "After the first days and with heat and cold, at least {0} of clamp load is left (settling takes {1}, flattening of rough faces {2}, temperature up to {3})."
        .with(&[&force(l.left_min_n), &force(l.relaxation_n), &force(l.embedding_n), &force(l.temperature_n)]);
    let small = |text: String| classed("p", "small").text(text);
    let mut all = vec![
        el("p").text(wanted),
        limits(s, units),
        small(String::from(
            "Least: the strength that the metal must have, the thinnest wall, welded where welded; verdicts use it. Likely: what is usually found, as on a test bench.",
        )),
        el("p").text(clicks),
        el("p").text(dents),
        el("p").text(left),
    ];
    all.extend(compared.map(small));
    all
}

fn bolts(scenario: &Scenario, report: &Report, units: UnitSystem, example: bool) -> El {
    let case =
        "Governing case: {0}. {4}: {1} along the tube, {2} vertically, {3} sideways.".with(&[
            words::label(report.loads.case),
            &words::amount(report.loads.longitudinal_n.abs(), Dimension::Force, units),
            &words::amount(report.loads.vertical_n.abs(), Dimension::Force, units),
            &words::amount(report.loads.transverse_n.abs(), Dimension::Force, units),
            words::message_at(&["load-at", &report.input.joint]),
        ]);
    let scene = group(&GroupState {
        example,
        ..GroupState::from_core("own-group", scenario, report, units)
    });
    classed("figure", "sheet single")
        .child(drawing(Signal::stored(scene)))
        .child(el("figcaption").text(case))
}

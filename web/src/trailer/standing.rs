//! What the clamp stands on, with both strengths kept apart, and what the road asks.

use calc_core::quantity::{Dimension, UnitSystem};
use calc_core::report::{CheckId, Report, SupportNumbers, SupportReport, Verdict};
use calc_core::scenario::Scenario;
use drawing::group::{GroupState, group};
use drawing::words::key;
use leptos::prelude::*;

use super::desk::Desk;
use super::words::{self, Words, message};
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
                .text(message(key::PAGE_WHAT_BACKS_UP_THE_FACES)),
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
        .child(el("caption").text(message(key::PAGE_WITH_LEAST_AND_WITH_LIKELY_STRENGTH)))
        .child(el("thead").child(head))
        .child(
            el("tbody")
                .child(both(message(key::PAGE_A_LASTING_DENT_BEGINS_AT), |n| {
                    n.lasting_dent_from_n
                }))
                .child(both(message(key::PAGE_FACES_ARE_PUSHED_IN_BY_OF), |n| {
                    n.load_at_1pct_of_width_n
                }))
                .child(both(message(key::PAGE_FACES_ARE_PUSHED_IN_BY_OF_2), |n| {
                    n.load_at_3pct_of_width_n
                }))
                .child(both(message(key::PAGE_LIMIT_THAT_THE_CHECK_USES), |n| {
                    n.limit_n
                }))
                .child(both(message(key::PAGE_CLAMP_LOAD_THAT_IS_REACHED), |n| {
                    n.clamp_reached_n
                }))
                .child(line(message(key::PAGE_GIVES_WAY_FIRST), least, likely)),
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
    let wanted = message(key::PAGE_THE_WRENCH_IS_SET_TO_ON).with(&[
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
        || String::from(message(key::PAGE_WHAT_IS_BETWEEN_HEAD_AND_NUT)),
        |most| message(key::PAGE_WITH_LIKELY_STRENGTH_THE_WRENCH_CLICKS).with(&[&torque(most)]),
    );
    let dents = match (s.dent_at_wanted_clamp_mm, s.dent_left_mm) {
        (Some(during), Some(left)) => {
            message(key::PAGE_AT_THE_TARGET_CLAMP_LOAD_EACH).with(&[&depth(during), &depth(left)])
        }
        _ if s.faces.is_empty() => String::from(message(key::PAGE_NO_HOLLOW_FACE_IS_PUSHED_IN)),
        _ if s
            .clicks_up_to_nm
            .is_some_and(|most| report.tightening.torque_nm > most) =>
        {
            String::from(message(key::PAGE_THE_TARGET_CLAMP_LOAD_IS_NOT))
        }
        _ => String::from(message(key::PAGE_THE_FACES_ARE_NOT_LOADED)),
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
    let left = message(key::PAGE_AFTER_THE_FIRST_DAYS_AND_WITH).with(&[
        &force(l.left_min_n),
        &force(l.relaxation_n),
        &force(l.embedding_n),
        &force(l.temperature_n),
    ]);
    let small = |text: String| classed("p", "small").text(text);
    let mut all = vec![
        el("p").text(wanted),
        limits(s, units),
        small(String::from(message(
            key::PAGE_LEAST_THE_STRENGTH_THAT_THE_METAL,
        ))),
        el("p").text(clicks),
        el("p").text(dents),
        el("p").text(left),
    ];
    all.extend(compared.map(small));
    all
}

fn bolts(scenario: &Scenario, report: &Report, units: UnitSystem, example: bool) -> El {
    let case = message(key::PAGE_GOVERNING_CASE_ALONG_THE_TUBE_VERTICALLY).with(&[
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

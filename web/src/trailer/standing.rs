//! What the clamp stands on, with both strengths kept apart, and what the road asks.

use calc_core::quantity::{Dimension, UnitSystem};
use calc_core::report::{Report, SupportNumbers};
use calc_core::scenario::Scenario;
use drawing::group::{GroupState, group};
use leptos::prelude::*;

use super::desk::Desk;
use super::words::{self, Words};
use crate::paint::Drawing;

/// Both tables and the drawing of the bolts.
pub(super) fn standing(desk: Desk) -> AnyView {
    let tables = move || {
        let units = desk.units();
        let shown = desk.shown.read();
        shown
            .answer
            .as_ref()
            .map(|(_, report)| tables(report, units))
    };
    let bolts = move || {
        let units = desk.units();
        let example = desk.form.read().example().is_some();
        let shown = desk.shown.read();
        shown
            .answer
            .as_ref()
            .map(|(scenario, report)| bolts(scenario, report, units, example))
    };
    view! {
        <section class="stands" aria-labelledby="stands-title"
            data-stale=move || (!desk.shown.read().current).to_string()>
            <h3 id="stands-title">"What the clamp stands on"</h3>
            <div class="halves">
                <div>{tables}</div>
                <div>{bolts}</div>
            </div>
        </section>
    }
    .into_any()
}

/// A line of the table: what, with least strength, with likely strength.
fn line(what: &'static str, least: String, likely: String) -> AnyView {
    view! {
        <tr><th scope="row">{what}</th><td class="n" data-name="least">{least}</td><td class="n end" data-name="likely">{likely}</td></tr>
    }
    .into_any()
}

fn tables(report: &Report, units: UnitSystem) -> AnyView {
    let force = |n: f64| words::amount(n, Dimension::Force, units);
    let torque = |nm: f64| words::amount(nm, Dimension::Torque, units);
    let depth = |mm: f64| words::amount(mm * 1e-3, Dimension::Length, units);
    let s = &report.support;
    let both = |what, pick: fn(&SupportNumbers) -> f64| line(what, force(pick(&s.least)), force(pick(&s.likely)));
    let wanted = "The wrench is set to {0}. On something solid that gives {1} of clamp, and between {2} and {3} from one bolt to the next."
        .with(&[
            &torque(report.tightening.torque_nm),
            &force(report.tightening.clamp_nominal_n),
            &force(report.tightening.clamp_min_n),
            &force(report.tightening.clamp_max_n),
        ]);
    let clicks = s.clicks_up_to_nm.map_or_else(
        || String::from("What is between head and nut takes more than the bolt: the wrench clicks at any torque that the bolt stands."),
        |most| {
            "With likely strength the wrench clicks up to {0}. Set higher, it does not click as far as this was checked: the nut goes on turning while the tube gives way."
                .with(&[&torque(most)])
        },
    );
    let dents = match (s.dent_at_wanted_clamp_mm, s.dent_left_mm) {
        (Some(during), Some(left)) => {
            "At the wanted clamp each face is pressed in by {0}; {1} of it stays when the nut is loosened."
                .with(&[&depth(during), &depth(left)])
        }
        _ if s.faces.is_empty() => String::from("No hollow face is pressed in."),
        _ if s.clicks_up_to_nm.is_some_and(|most| report.tightening.torque_nm > most) => String::from("The wanted clamp is not reached before each face is in by 6 % of its width, which is as far as this was checked: the dent would be larger."),
        _ => String::from("The faces are not loaded."),
    };
    let compared = s.faces.first().map(|face| {
        view! {
            <p class="small">{"For comparison, the bare face under this washer with likely strength: {0} when it is in by 3 % of its width, by this page's curve; {1} (round patch) or {2} (square patch) by the published yield-line formula for a tube face."
                .with(&[
                    &force(face.likely.load_at_3pct_of_width_n),
                    &force(face.yield_line_circular_patch_n),
                    &force(face.yield_line_square_patch_n),
                ])}</p>
        }
    });
    let l = &report.losses;
    let left = "After the first days and with heat and cold, at least {0} of clamp is left (settling takes {1}, flattening of rough faces {2}, temperature up to {3})."
        .with(&[&force(l.left_min_n), &force(l.relaxation_n), &force(l.embedding_n), &force(l.temperature_n)]);
    view! {
        <p>{wanted}</p>
        <table class="restack">
            <caption>"Clamp that it takes"</caption>
            <thead><tr><th scope="col">"clamp at which"</th><th scope="col" class="n">"least"</th><th scope="col" class="n">"likely"</th></tr></thead>
            <tbody>
                {both("a lasting dent begins", |n| n.lasting_dent_from_n)}
                {both("faces are in by 1 % of their width", |n| n.load_at_1pct_of_width_n)}
                {both("faces are in by 3 % of their width", |n| n.load_at_3pct_of_width_n)}
                {both("it is trusted up to", |n| n.limit_n)}
                {both("clamp that is reached", |n| n.clamp_reached_n)}
                {line("gives way first", words::part(s.least.gives_way).into(), words::part(s.likely.gives_way).into())}
            </tbody>
        </table>
        <p class="small">"Least: the strength that the metal must have, thinnest wall, welded where welded; verdicts use it. Likely: what is usually found, as on a test bench."</p>
        <p>{clicks}</p>
        <p>{dents}</p>
        <p>{left}</p>
        {compared}
    }
    .into_any()
}

fn bolts(scenario: &Scenario, report: &Report, units: UnitSystem, example: bool) -> AnyView {
    let case = "Governing case: {0}. At the ball: {1} along the tube, {2} upright, {3} sideways.".with(&[
        words::message(&format!("case.{}", report.loads.case)),
        &words::amount(report.loads.longitudinal_n.abs(), Dimension::Force, units),
        &words::amount(report.loads.vertical_n.abs(), Dimension::Force, units),
        &words::amount(report.loads.transverse_n.abs(), Dimension::Force, units),
    ]);
    let scene = group(&GroupState {
        example,
        ..GroupState::from_core("own-group", scenario, report, units)
    });
    view! {
        <figure class="sheet single">
            <Drawing scene=Signal::stored(scene) />
            <figcaption>{case}</figcaption>
        </figure>
    }
    .into_any()
}

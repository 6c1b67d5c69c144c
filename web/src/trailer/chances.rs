//! How sure: what comes out of many joints like the reader's, each with its own wall, friction and load.

use calc_core::chance::{Chance, Distribution, DistributionKind, InputDistribution, Sensitivity};
use calc_core::quantity::{Dimension, UnitSystem};
use calc_core::report::Said;
use drawing::chances::clamp_chart;
use drawing::words::key;
use leptos::prelude::*;

use super::desk::Desk;
use super::questions::cited;
use super::words::{self, Words, message};
use crate::el::{El, classed, el};
use crate::paint::drawing;

/// Inputs that a ranking names; the rest hardly matters.
const RANKED: usize = 3;

/// The section; empty until enough joints are drawn.
pub(super) fn chances(desk: Desk) -> El {
    let told = move || {
        let units = desk.units();
        let chance = desk.chance.read();
        let shown = desk.shown.read();
        match (&*chance, &shown.answer) {
            (Some(chance), Some((_, report))) => {
                all(chance, report.tightening.clamp_nominal_n, units)
            }
            _ => vec![el("p").text(message(key::PAGE_NOTHING_CAN_BE_SAID_BEFORE_THE))],
        }
    };
    classed("details", "fold chances")
        .flag("data-stale", move || desk.chance_late.get())
        .child(
            el("summary")
                .attr("id", "chances-title")
                .text(message(key::PAGE_HOW_SURE_IS_THAT)),
        )
        .child(el("div").live_children(told))
}

fn all(chance: &Chance, wanted_n: f64, units: UnitSystem) -> Vec<El> {
    #[allow(clippy::cast_precision_loss, reason = "thousands of joints")]
    let count = words::amount(chance.drawn as f64, Dimension::Count, units);
    // What the owner asks first stands first.
    let (owner, shares): (Vec<_>, Vec<_>) = chance
        .said
        .iter()
        .partition(|said| said.code.key().starts_with("chance-owner"));
    let told = |tag: &'static str| move |said: &Said| el(tag).text(words::said(said, units));
    let said = shares.into_iter().map(told("li"));
    let owner = owner.into_iter().map(|said| el("p").child(told("b")(said)));
    let mut all: Vec<El> = owner.collect();
    all.extend([
        el("p").text(
            "{0} joints like yours, each drawn at random with a wall, strengths, friction, tightening and load of its own, at likely strength. This is what would be seen on many such trailers. The verdict does not come from it."
                .with(&[&count]),
        ),
        classed("ul", "outcomes").children(said),
    ]);
    // Where nobody knows how much clamp is reached, there is nothing to draw.
    if chance.unknown.is_none() {
        let chart = clamp_chart(chance, wanted_n, units).map(|chart| {
            classed("figure", "sheet single")
                .child(drawing(Signal::stored(chart.scene("own-chances"))))
                .child(el("figcaption").text(message(key::PAGE_SHARE_OF_THE_JOINTS_BY_THE)))
        });
        all.push(
            classed("div", "halves").children(chart).child(
                el("div")
                    .child(between(chance, units))
                    .child(matters(chance, units)),
            ),
        );
        all.push(spreads(chance, units));
    }
    all
}

/// Whether any load counts on friction; a safety chain does not.
fn rubs(chance: &Chance) -> bool {
    chance.slip_use.to > 0.0
}

/// Nine joints in ten, and the middle one.
fn between(chance: &Chance, units: UnitSystem) -> El {
    let heads = [
        message(key::PAGE_IN_BELOW),
        message(key::PAGE_HALF_BELOW),
        message(key::PAGE_IN_ABOVE),
    ];
    let row = |what: &str, d: &Distribution| {
        let [low, _, middle, _, high] = d.quantiles;
        let cells = heads.iter().zip([low, middle, high]).map(|(head, si)| {
            classed("td", "n")
                .attr("data-name", head)
                .text(words::amount(si, d.dimension, units))
        });
        el("tr")
            .child(el("th").attr("scope", "row").text(what))
            .children(cells)
    };
    let head = el("tr").child(el("td")).children(
        heads
            .iter()
            .map(|head| classed("th", "n").attr("scope", "col").text(*head)),
    );
    classed("table", "restack")
        .child(el("caption").text(message(key::PAGE_NINE_JOINTS_IN_TEN_LIE_BETWEEN)))
        .child(el("thead").child(head))
        .child(
            el("tbody")
                .child(row(message(key::PAGE_CLAMP_LOAD_REACHED), &chance.clamp))
                .child(row(message(key::PAGE_DENT_THAT_STAYS), &chance.dent_left))
                .children(rubs(chance).then(|| {
                    row(
                        message(key::PAGE_FRICTION_USED_BY_THE_LOAD_NO),
                        &chance.slip_use,
                    )
                })),
        )
}

/// What would have to be known better to be surer.
fn matters(chance: &Chance, units: UnitSystem) -> El {
    let row = |what: &str, matters: &[Sensitivity]| {
        let named: Vec<String> = matters
            .iter()
            .take(RANKED)
            .filter(|matter| matter.share >= 0.01)
            .map(|matter| {
                "{0} {1}".with(&[
                    words::message(matter.variable.key()),
                    // Whole percent: ranks tell no more.
                    &words::amount(
                        (matter.share * 100.0).round() / 100.0,
                        Dimension::Share,
                        units,
                    ),
                ])
            })
            .collect();
        let named = if named.is_empty() {
            String::from(message(key::PAGE_NOTHING_STANDS_OUT))
        } else {
            named.join(", ")
        };
        el("tr")
            .child(el("th").attr("scope", "row").text(what))
            .child(el("td").text(named))
    };
    classed("table", "matters")
        .child(el("caption").text(message(key::PAGE_WHAT_MAKES_THE_DIFFERENCE_FROM_JOINT)))
        .child(
            el("tbody")
                .child(row("clamp", &chance.matters_for_clamp))
                .child(row("dent", &chance.matters_for_dent))
                .children(rubs(chance).then(|| row("friction", &chance.matters_for_slip))),
        )
}

/// Whether an input differs from joint to joint.
fn scatters(spread: &&InputDistribution) -> bool {
    spread.form != DistributionKind::Fixed
}

/// Where the spreads come from.
fn spreads(chance: &Chance, units: UnitSystem) -> El {
    let row = |spread: &InputDistribution| {
        let amount = |si| words::amount(si, spread.middle.dimension, units);
        let (low, high) = spread.limits();
        el("li")
            .text(message(key::PAGE_FROM_TO).with(&[
                words::message(spread.variable.key()),
                &amount(spread.middle.si),
                &amount(low),
                &amount(high),
                words::label(spread.because),
            ]))
            .child(cited(&spread.cite))
    };
    el("details")
        .child(el("summary").text(message(key::PAGE_WHAT_WAS_DRAWN_AND_WHERE_THE)))
        .child(el("p").text(
            message(key::PAGE_THE_SAME_JOINTS_ARE_DRAWN_EVERY).with(&[&chance.seed.to_string()]),
        ))
        .child(el("ul").children(chance.distributions.iter().filter(scatters).map(row)))
}

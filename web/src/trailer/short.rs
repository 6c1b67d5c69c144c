//! The short check on the front page: five measurements and the metal, one line of verdict, and the way to the rest
//! of it. It is the reader's own joint and is kept as such.

use calc_core::link::encode;
use calc_core::quantity::UnitSystem;
use calc_core::scenario::Field;
use drawing::words::key;
use leptos::prelude::*;

use super::controls::control;
use super::desk::Desk;
use super::keeping;
use super::measures::five;
use super::same_units;
use super::steps::none_yet;
use super::verdict::verdict_word;
use super::words::{self, Words, message};
use crate::el::{El, classed, el};

/// The page that holds the rest.
const PAGE: &str = "joint.html";

/// Five measurements, one answer.
#[must_use]
pub fn short_check(units: RwSignal<UnitSystem>) -> El {
    let desk = Desk::quick();
    keeping::restore(desk);
    keeping::follow(desk);
    same_units(desk, units);
    let link = move || {
        let form = desk.form.read();
        Some(if form.untouched() {
            PAGE.into()
        } else {
            format!("{PAGE}#{}", encode(&form.sheet()))
        })
    };
    classed("div", "measure")
        .child(el("p").text(message(key::PAGE_WRITE_THEM_AS_YOU_READ_THEM)))
        .child(five(desk))
        .child(classed("div", "metal").child(control(desk, Field::TubeMaterial)))
        .child(
            classed("div", "sheet short")
                .attr("role", "status")
                .flag("data-stale", move || !desk.shown.read().current)
                .live_children(move || answer(desk)),
        )
        .child(
            classed("p", "actions").child(
                classed("a", "button main")
                    .live_attr("href", link)
                    .text(message(key::PAGE_ALL_OF_IT_WHY_HOW_SURE)),
            ),
        )
}

fn answer(desk: Desk) -> Vec<El> {
    let form = desk.form.read();
    let faults = desk.faults.read();
    if !faults.is_empty() {
        return faults
            .iter()
            .map(|fault| classed("p", "error").text(fault.sentence.clone()))
            .collect();
    }
    let shown = desk.shown.read();
    let Some((_, report)) = &shown.answer else {
        return vec![el("p").text(none_yet(&form))];
    };
    let used = words::used(report).map_or_else(String::new, |used| {
        message(key::PAGE_OF_WHAT_IT_HAS_IS_ASKED).with(&[&used])
    });
    let value = |field| form.value(field);
    vec![
        classed("p", "line")
            .child(verdict_word(report.verdict))
            .child(el("b").text(words::label(report.weakest)))
            .text(used),
        classed("p", "small").text(message(key::PAGE_TAKEN_FOR_THE_REST_BOLTED_ON).with(&[
            &value(Field::Member),
            &value(Field::Mount),
            &value(Field::Joint),
            &value(Field::Support),
        ])),
    ]
}

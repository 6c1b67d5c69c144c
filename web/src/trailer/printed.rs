//! What was put in, for paper: every value with its unit, and the link in clear.

use calc_core::link::encode;
use calc_core::scenario::Field;
use drawing::words::key;
use leptos::prelude::*;

use super::address::full;
use super::desk::Desk;
use super::state::value_of;
use super::words::{self, message};
use crate::el::{El, classed, el};

/// The list; only paper shows it.
pub(super) fn inputs(desk: Desk) -> El {
    let list = move || {
        let form = desk.form.read();
        let shown = desk.shown.read();
        let Some((scenario, report)) = &shown.answer else {
            return Vec::new();
        };
        let input = &scenario.input;
        Field::ALL
            .iter()
            .copied()
            .filter(|field| field.applies(input))
            .map(|field| {
                let derived = report.derived.iter().find(|(f, _)| *f == field);
                let value = match (input.number(field), derived) {
                    (None, Some((_, value))) => form.written(field, *value),
                    _ => value_of(input, field, form.units()),
                };
                let start = if !form.given(field) {
                    message(key::PAGE_ASSUMED)
                } else {
                    ""
                };
                el("div")
                    .child(el("dt").text(words::label_in(input, field)))
                    .child(el("dd").text(value).text(start))
            })
            .collect()
    };
    classed("section", "print-only put")
        .attr("aria-labelledby", "put-title")
        .child(
            el("h2")
                .attr("id", "put-title")
                .text(message(key::PAGE_WHAT_WAS_PUT_IN)),
        )
        .child(classed("dl", "inputs").live_children(list))
        .child(
            el("p").text(message(key::PAGE_THIS_JOINT_AGAIN)).child(
                classed("span", "clear-link")
                    .live_text(move || full(&encode(&desk.form.read().sheet()))),
            ),
        )
}

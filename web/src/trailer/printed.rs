//! What was put in, for paper: every value with its unit, and the link in clear.

use calc_core::link::encode;
use calc_core::scenario::Field;
use leptos::prelude::*;

use super::address::full;
use super::desk::Desk;
use super::state::{used, value_of};
use super::words;

/// The list; only paper shows it.
pub(super) fn inputs(desk: Desk) -> AnyView {
    let list = move || {
        let form = desk.form.read();
        let shown = desk.shown.read();
        shown.answer.as_ref().map(|(scenario, report)| {
            let input = &scenario.input;
            Field::ALL
                .iter()
                .copied()
                .filter(|&field| used(input, field))
                .map(|field| {
                    let derived = report.derived.iter().find(|(f, _)| *f == field);
                    let value = match (input.number(field), derived) {
                        (None, Some((_, value))) => form.written(field, *value),
                        _ => value_of(input, field, form.units()),
                    };
                    let start = input.is_default(field).then_some(" (default)");
                    view! { <div><dt>{words::label(field)}</dt><dd>{value}{start}</dd></div> }
                })
                .collect_view()
        })
    };
    view! {
        <section class="print-only put" aria-labelledby="put-title">
            <h3 id="put-title">"What was put in"</h3>
            <dl class="inputs">{list}</dl>
            <p>"This joint again: "<span class="clear-link">{move || full(&encode(&desk.form.read().sheet()))}</span></p>
        </section>
    }
    .into_any()
}

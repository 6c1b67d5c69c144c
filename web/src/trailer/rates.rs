//! The reader's own rates for work and material: typed, kept on the device.

use calc_core::quantity::parse_number;
use calc_core::repair::Rates;
use leptos::prelude::*;
use leptos::wasm_bindgen::JsValue;

use super::desk::Desk;
use crate::el::{El, classed, el, value_of as typed_in};
use crate::kept::Kept;

/// Name of a rate, what it counts, and its place.
type Rate = (&'static str, Counts, fn(&mut Rates) -> &mut f64);

/// What a rate counts.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Counts {
    /// Whose money it is once it was changed, only the reader knows.
    Money,
    Minutes,
}

const RATES: [Rate; 15] = [
    ("an hour of work", Counts::Money, |r| &mut r.hour),
    ("a kilogram of steel", Counts::Money, |r| &mut r.steel_kg),
    ("a kilogram of aluminum", Counts::Money, |r| {
        &mut r.aluminium_kg
    }),
    ("a kilogram of stainless steel", Counts::Money, |r| {
        &mut r.stainless_kg
    }),
    ("a bolt with nut and washers", Counts::Money, |r| {
        &mut r.bolt
    }),
    ("a tapered washer", Counts::Money, |r| &mut r.tapered_washer),
    ("minutes to lay out a bolt", Counts::Minutes, |r| {
        &mut r.minutes_layout
    }),
    ("minutes for a hole", Counts::Minutes, |r| {
        &mut r.minutes_hole
    }),
    ("minutes for a cut", Counts::Minutes, |r| &mut r.minutes_cut),
    (
        "minutes to measure a place and file a piece to it",
        Counts::Minutes,
        |r| &mut r.minutes_file,
    ),
    (
        "minutes to set up and machine a face",
        Counts::Minutes,
        |r| &mut r.minutes_machine,
    ),
    ("minutes to hollow a saddle", Counts::Minutes, |r| {
        &mut r.minutes_saddle
    }),
    (
        "minutes for a weld around a sleeve end",
        Counts::Minutes,
        |r| &mut r.minutes_weld,
    ),
    (
        "minutes to loosen and tighten a bolt",
        Counts::Minutes,
        |r| &mut r.minutes_bolt,
    ),
    ("minutes to clean one contact face", Counts::Minutes, |r| {
        &mut r.minutes_surface
    }),
];

/// The fields of the reader's own rates.
pub(super) fn rates(desk: Desk) -> El {
    classed("details", "rates screen-only")
        .child(el("summary").text("Your own rates"))
        .child(
            classed("p", "soft")
                .text("Costs are in your own money. The figures to start with are assumptions."),
        )
        .child(el("div").live_children(move || {
            desk.again.track();
            desk.rates.set(kept_rates());
            RATES
                .into_iter()
                .enumerate()
                .map(|(index, rate)| rate_field(desk, index, rate))
                .collect()
        }))
}

/// The reader's rates as they were left: a number each, in the order of the fields.
pub(crate) fn kept_rates() -> Rates {
    let mut rates = Rates::default();
    let kept = Kept::Rates.read().unwrap_or_default();
    for ((_, counts, place), number) in RATES.into_iter().zip(kept.split(' ')) {
        let number = parse_number(number).filter(|number| (0.0..=1e6).contains(number));
        if let Some(number) = number {
            put(&mut rates, (counts, place), number);
        }
    }
    rates
}

/// Puts a rate in. With a price of the reader's own all are in money of the reader's own.
fn put(rates: &mut Rates, (counts, place): (Counts, fn(&mut Rates) -> &mut f64), value: f64) {
    let place = place(rates);
    let changed = place.to_bits() != value.to_bits();
    *place = value;
    if changed && counts == Counts::Money {
        rates.currency.clear();
    }
}

fn keep_rates(mut rates: Rates) {
    let numbers = RATES.map(|(_, _, place)| place(&mut rates).to_string());
    Kept::Rates.write(&numbers.join(" "));
}

fn rate_field(desk: Desk, index: usize, (name, counts, place): Rate) -> El {
    let id = format!("rate-{index}");
    let error_id = format!("{id}-error");
    let start = place(&mut desk.rates.get_untracked()).to_string();
    let wrong = RwSignal::new(false);
    let input = el("input")
        .attr("id", &id)
        .attr("type", "text")
        .attr("inputmode", "decimal")
        .attr("autocomplete", "off")
        .attr("aria-describedby", &error_id)
        .live_attr("aria-invalid", move || Some(wrong.get().to_string()))
        .prop("value", move || JsValue::from_str(&start))
        .on("input", move |event| {
            let typed = parse_number(&typed_in(&event).trim().replace(',', "."));
            let value = typed.filter(|value| (0.0..=1e6).contains(value));
            wrong.set(value.is_none());
            if let Some(value) = value {
                desk.rates
                    .update(|rates| put(rates, (counts, place), value));
                keep_rates(desk.rates.get_untracked());
            }
        });
    classed("div", "field")
        .child(el("label").attr("for", &id).text(name))
        .child(input)
        .child(
            classed("p", "error")
                .attr("id", &error_id)
                .flag("hidden", move || !wrong.get())
                .text(format!("{name}: write a number from 0 to 1,000,000. The last one that could be read still counts.")),
        )
}

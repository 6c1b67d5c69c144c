//! The reader's own rates for work and material: typed, kept on the device.

use super::words::{Words, message};
use calc_core::quantity::{Unit, UnitSystem, parse_number};
use calc_core::repair::Rates;
use drawing::words::key;
use leptos::prelude::*;
use leptos::wasm_bindgen::JsValue;

use super::desk::Desk;
use crate::el::{El, classed, el, value_of as typed_in};
use crate::kept::Kept;

/// Keys of the name of a rate in metric and in US units, what it counts, and its place.
type Rate = ([&'static str; 2], Counts, fn(&mut Rates) -> &mut f64);

/// What a rate counts.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Counts {
    /// Whose money it is once it was changed, only the reader knows.
    Money,
    /// Money for a kilogram, typed for a pound where the reader's units are those. Kept for a kilogram.
    MoneyByWeight,
    Minutes,
}

impl Counts {
    /// How much of what is kept the reader types.
    fn shown(self, units: UnitSystem) -> f64 {
        match (self, units) {
            (Self::MoneyByWeight, UnitSystem::Us) => Unit::Pound.to_si(1.0),
            _ => 1.0,
        }
    }
}

const RATES: [Rate; 16] = [
    ([key::PAGE_AN_HOUR_OF_WORK; 2], Counts::Money, |r| {
        &mut r.hour
    }),
    (
        [key::PAGE_A_KILOGRAM_OF_STEEL, key::PAGE_A_POUND_OF_STEEL],
        Counts::MoneyByWeight,
        |r| &mut r.steel_kg,
    ),
    (
        [
            key::PAGE_A_KILOGRAM_OF_ALUMINUM,
            key::PAGE_A_POUND_OF_ALUMINUM,
        ],
        Counts::MoneyByWeight,
        |r| &mut r.aluminium_kg,
    ),
    (
        [
            key::PAGE_A_KILOGRAM_OF_STAINLESS_STEEL,
            key::PAGE_A_POUND_OF_STAINLESS_STEEL,
        ],
        Counts::MoneyByWeight,
        |r| &mut r.stainless_kg,
    ),
    (
        [key::PAGE_A_BOLT_WITH_NUT_AND_WASHERS; 2],
        Counts::Money,
        |r| &mut r.bolt,
    ),
    ([key::PAGE_A_TAPERED_WASHER; 2], Counts::Money, |r| {
        &mut r.tapered_washer
    }),
    ([key::PAGE_A_NEW_OR_WIDER_BRACKET; 2], Counts::Money, |r| {
        &mut r.bracket
    }),
    (
        [key::PAGE_MINUTES_TO_LAY_OUT_A_BOLT; 2],
        Counts::Minutes,
        |r| &mut r.minutes_layout,
    ),
    ([key::PAGE_MINUTES_FOR_A_HOLE; 2], Counts::Minutes, |r| {
        &mut r.minutes_hole
    }),
    ([key::PAGE_MINUTES_FOR_A_CUT; 2], Counts::Minutes, |r| {
        &mut r.minutes_cut
    }),
    (
        [key::PAGE_MINUTES_TO_MEASURE_A_PLACE_AND; 2],
        Counts::Minutes,
        |r| &mut r.minutes_file,
    ),
    (
        [key::PAGE_MINUTES_TO_SET_UP_AND_MACHINE; 2],
        Counts::Minutes,
        |r| &mut r.minutes_machine,
    ),
    (
        [key::PAGE_MINUTES_TO_HOLLOW_A_SADDLE; 2],
        Counts::Minutes,
        |r| &mut r.minutes_saddle,
    ),
    (
        [key::PAGE_MINUTES_FOR_A_WELD_AROUND_A; 2],
        Counts::Minutes,
        |r| &mut r.minutes_weld,
    ),
    (
        [key::PAGE_MINUTES_TO_LOOSEN_AND_TIGHTEN_A; 2],
        Counts::Minutes,
        |r| &mut r.minutes_bolt,
    ),
    (
        [key::PAGE_MINUTES_TO_CLEAN_ONE_CONTACT_FACE; 2],
        Counts::Minutes,
        |r| &mut r.minutes_surface,
    ),
];

/// The fields of the reader's own rates.
pub(super) fn rates(desk: Desk) -> El {
    let units = Memo::new(move |_| desk.units());
    classed("details", "rates screen-only")
        .child(el("summary").text(message(key::PAGE_YOUR_OWN_RATES)))
        .child(classed("p", "soft").text(message(key::PAGE_COSTS_ARE_IN_YOUR_OWN_MONEY)))
        .child(el("div").live_children(move || {
            desk.again.track();
            let units = units.get();
            desk.rates.set(kept_rates());
            RATES
                .into_iter()
                .enumerate()
                .map(|(index, rate)| rate_field(desk, index, rate, units))
                .collect()
        }))
}

/// The reader's rates as they were left: a number each, in the order of the fields.
pub(crate) fn kept_rates() -> Rates {
    let mut rates = Rates::default();
    let kept = Kept::Rates.read().unwrap_or_default();
    for ((_, counts, place), number) in RATES.into_iter().zip(kept.split(' ')) {
        // The most that can be typed for a pound, for a kilogram.
        let number = parse_number(number).filter(|number| (0.0..=2.3e6).contains(number));
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
    if changed && counts != Counts::Minutes {
        rates.currency.clear();
    }
}

fn keep_rates(mut rates: Rates) {
    let numbers = RATES.map(|(_, _, place)| place(&mut rates).to_string());
    Kept::Rates.write(&numbers.join(" "));
}

fn rate_field(desk: Desk, index: usize, (names, counts, place): Rate, units: UnitSystem) -> El {
    let id = format!("rate-{index}");
    let [metric, us] = names;
    let name = message(if units == UnitSystem::Us { us } else { metric });
    let part = counts.shown(units);
    let error_id = format!("{id}-error");
    let kept = *place(&mut desk.rates.get_untracked());
    // What is kept for a kilogram and was typed for a pound is no round number.
    let start = if counts == Counts::MoneyByWeight {
        (kept * part * 100.0).round() / 100.0
    } else {
        kept
    }
    .to_string();
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
                    .update(|rates| put(rates, (counts, place), value / part));
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
                .text(message(key::PAGE_RATE_WRONG).with(&[name])),
        )
}

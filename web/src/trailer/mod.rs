//! The reader's own joint: measurements in, verdict, working and repairs out.

mod address;
mod chances;
mod compare;
mod controls;
mod desk;
mod examples;
mod keeping;
mod look;
mod measures;
mod picture;
mod printed;
mod questions;
mod rates;
mod repairs;
mod share;
mod short;
mod standing;
mod state;
mod steps;
mod verdict;
mod what;
pub(crate) mod words;

use crate::el::{El, classed, el, follow};
use crate::turns::Turns;
use calc_core::quantity::UnitSystem;
use leptos::prelude::*;

pub use desk::Desk;
pub use examples::{EXAMPLES, Example, joint};
pub(crate) use picture::picture;
pub(crate) use rates::kept_rates;
pub(crate) use share::summary;
pub use short::short_check;
pub use state::{Fault, Form};
pub(crate) use verdict::verdict_word;

/// Everything of the reader's own joint, part by part. The units chosen here are those of the whole page.
#[must_use]
pub fn trailer(units: RwSignal<UnitSystem>, turns: Turns) -> El {
    let desk = Desk::new(turns);
    address::follow(desk);
    keeping::follow(desk);
    same_units(desk, units);
    classed("div", "joint")
        .live_attr("data-step", move || Some(desk.step.get().to_string()))
        .child(steps::bar(desk))
        .child(
            el("div")
                .child(address::opened(desk))
                .child(keeping::other_tab(desk)),
        )
        .child(
            classed("div", "left")
                .child(what::what(desk))
                .in_turn(turns, move || vec![look::look(desk)])
                .in_turn(turns, move || vec![measures::measures(desk)]),
        )
        .child(
            steps::step(desk, steps::ANSWER)
                .in_turn(turns, move || vec![verdict::verdict(desk)])
                .child(
                    classed("div", "more")
                        .flag("hidden", move || desk.shown.read().answer.is_none())
                        .in_turn(turns, move || vec![standing::standing(desk)])
                        .in_turn(turns, move || vec![chances::chances(desk)]),
                ),
        )
        .child(steps::walk(desk))
        .child(
            steps::step(desk, steps::STEPS)
                .in_turn(turns, move || vec![repairs::repairs_table(desk)])
                .in_turn(turns, move || vec![share::share(desk)]),
        )
        .in_turn(turns, move || vec![printed::inputs(desk)])
        .child(
            classed("div", "foot screen-only")
                .child(controls::bench(desk))
                .child(keeping::note(desk)),
        )
}

/// The units are those of the whole page, wherever they are chosen.
fn same_units(desk: Desk, units: RwSignal<UnitSystem>) {
    follow(move || units.set(desk.units()));
    follow(move || {
        let units = units.get();
        if desk.form.read_untracked().units() != units {
            desk.form.update(|form| form.set_units(units));
        }
    });
}

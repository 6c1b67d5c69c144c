//! The reader's own joint: measurements in, verdict, working and repairs out.

mod address;
mod chances;
mod controls;
mod desk;
mod examples;
mod inspection;
mod keeping;
mod measures;
mod printed;
mod repairs;
mod share;
mod short;
mod standing;
mod state;
mod verdict;
mod words;
mod worksheet;

use crate::el::{self, El};
use calc_core::quantity::UnitSystem;
use leptos::prelude::*;

pub use desk::Desk;
pub use examples::{EXAMPLES, Example, joint};
pub use short::short_check;
pub use state::{Fault, Form};

/// Everything of the reader's own joint. The units chosen here are those of the whole page.
#[must_use]
pub fn trailer(units: RwSignal<UnitSystem>) -> El {
    let desk = Desk::new();
    address::follow(desk);
    keeping::follow(desk);
    same_units(desk, units);
    el::el("div")
        .child(address::opened(desk))
        .child(controls::bench(desk))
        .child(keeping::note(desk))
        .child(measures::examples(desk))
        .child(measures::measures(desk))
        .child(
            el::classed("div", "work")
                .child(verdict::verdict(desk))
                .child(controls::groups(desk)),
        )
        .child(standing::standing(desk))
        .child(chances::chances(desk))
        .child(inspection::inspection(desk))
        .child(repairs::repairs_table(desk))
        .child(share::share(desk))
        .child(printed::inputs(desk))
        .child(verdict::stuck(desk))
}

/// The units are those of the whole page, wherever they are chosen.
fn same_units(desk: Desk, units: RwSignal<UnitSystem>) {
    el::follow(move || units.set(desk.units()));
    el::follow(move || {
        let units = units.get();
        if desk.form.read_untracked().units() != units {
            desk.form.update(|form| form.set_units(units));
        }
    });
}

//! The reader's own joint: measurements in, verdict, working and repairs out.

mod address;
mod chances;
mod controls;
mod desk;
mod examples;
mod inspection;
mod measures;
mod printed;
mod repairs;
mod share;
mod standing;
mod state;

mod verdict;
mod words;
mod worksheet;

use crate::el;
use calc_core::quantity::UnitSystem;
use leptos::prelude::*;

pub use desk::Desk;
pub use examples::{EXAMPLES, Example, joint};
pub use state::{Fault, Form};

/// Everything of the reader's own joint. The units chosen here are those of the whole page.
#[component]
pub fn Trailer(
    /// Units of the page.
    units: RwSignal<UnitSystem>,
) -> impl IntoView {
    let desk = Desk::new();
    // The units are those of the whole page, wherever they are chosen.
    el::follow(move || units.set(desk.units()));
    el::follow(move || {
        let units = units.get();
        if desk.form.read_untracked().units() != units {
            desk.form.update(|form| form.set_units(units));
        }
    });
    address::follow(desk);
    el::el("div")
        .kid(address::opened(desk))
        .kid(controls::bench(desk))
        .kid(measures::examples(desk))
        .kid(measures::measures(desk))
        .kid(
            el::classed("div", "work")
                .kid(verdict::verdict(desk))
                .kid(controls::groups(desk)),
        )
        .kid(standing::standing(desk))
        .kid(chances::chances(desk))
        .kid(inspection::inspection(desk))
        .kid(repairs::repairs_table(desk))
        .kid(share::share(desk))
        .kid(printed::inputs(desk))
        .kid(verdict::stuck(desk))
        .view()
}

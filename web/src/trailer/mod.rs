//! The reader's own joint: measurements in, verdict, working and repairs out.

mod address;
mod controls;
mod desk;
mod examples;
mod measures;
mod printed;
mod repairs;
mod share;
mod standing;
mod state;
mod verdict;
mod words;

use leptos::prelude::*;

pub use desk::Desk;
pub use examples::{EXAMPLES, Example, joint};
pub use state::{Fault, Form};

/// Everything of the reader's own joint.
#[component]
pub fn Trailer() -> impl IntoView {
    let desk = Desk::new();
    address::follow(desk);
    view! {
        {address::opened(desk)}
        {controls::bench(desk)}
        {measures::measures(desk)}
        <div class="work">
            {verdict::verdict(desk)}
            {controls::groups(desk)}
        </div>
        {standing::standing(desk)}
        {repairs::repairs_table(desk)}
        {share::share(desk)}
        {printed::inputs(desk)}
    }
}

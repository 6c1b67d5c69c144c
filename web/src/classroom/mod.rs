//! What an instructor hands out, marks, and does on the bench.

mod answers;
mod bench;
mod check;
mod form;
mod quiz;
mod readings;
mod results;
mod sheets;
mod typed;

pub use bench::bench;
pub use form::handouts;

use classroom::words::message;

use crate::el::{El, el};

fn button(key: &str) -> El {
    el("button").attr("type", "button").text(message(key))
}

/// Prints the page.
fn print() {
    if let Some(window) = leptos::web_sys::window() {
        window.print().ok();
    }
}

/// Head cells of a table.
fn heads(keys: &[&str]) -> El {
    let cells = keys
        .iter()
        .map(|key| el("th").attr("scope", "col").text(message(key)));
    el("thead").child(el("tr").children(cells))
}

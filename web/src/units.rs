//! The units that the page shows numbers in.

use calc_core::quantity::UnitSystem;
use leptos::web_sys;

/// The system that readers of the browser's language mostly measure in.
#[must_use]
pub fn of_browser() -> UnitSystem {
    let language = web_sys::window().and_then(|window| window.navigator().language());
    match language.as_deref() {
        None | Some("en" | "en-US" | "es-US") => UnitSystem::Us,
        Some(_) => UnitSystem::Metric,
    }
}

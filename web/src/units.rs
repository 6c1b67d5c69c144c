//! The units that the page shows numbers in.

use calc_core::quantity::UnitSystem;
use leptos::web_sys;

use crate::kept::Kept;

const METRIC: &str = "metric";
const US: &str = "us";

/// The system that the reader chose on any page, or else the one that readers of the browser's language
/// mostly measure in.
#[must_use]
pub fn chosen() -> UnitSystem {
    match Kept::Units.read().as_deref() {
        Some(METRIC) => UnitSystem::Metric,
        Some(US) => UnitSystem::Us,
        _ => of_browser(),
    }
}

/// Keeps the reader's choice for the other pages.
pub fn choose(units: UnitSystem) {
    Kept::Units.write(match units {
        UnitSystem::Us => US,
        UnitSystem::Metric => METRIC,
    });
}

fn of_browser() -> UnitSystem {
    let language = web_sys::window().and_then(|window| window.navigator().language());
    match language.as_deref() {
        None | Some("en" | "en-US" | "es-US") => UnitSystem::Us,
        Some(_) => UnitSystem::Metric,
    }
}

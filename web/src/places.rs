//! The boxes in the HTML that a live view may take over.

use leptos::mount::mount_to;
use leptos::prelude::*;
use leptos::wasm_bindgen::JsCast;
use leptos::web_sys::HtmlElement;

use crate::el::{El, fragment};
use crate::figures::opening;
use crate::lessons;
use crate::trailer::trailer;
use crate::units;

/// Id of the box that holds the form for the reader's own joint.
pub const TRAILER: &str = "own-joint";

/// The box in the opening figure that holds its still drawings.
pub const OPENING: &str = "#fig-opening > .stage";

/// Puts the live views into the boxes that the page has for them.
pub fn upgrade() {
    let units = RwSignal::new(units::of_browser());
    if let Some(place) = found(OPENING) {
        fill(&place, move || opening(units.into()));
    }
    if let Some(place) = by_id(TRAILER) {
        fill(&place, move || vec![trailer(units)]);
    }
    lessons::upgrade(units);
}

/// Replaces what a box shows by a live view and marks the box with `data-live`.
///
/// What the box showed before stays until the moment of the swap: a page whose live part never
/// starts keeps its still picture.
pub fn fill(place: &HtmlElement, view: impl FnOnce() -> Vec<El> + 'static) {
    place.replace_children_with_node_0();
    // Dropping the handle would take the view out again; the page keeps it for good.
    mount_to(place.clone(), move || fragment(view())).forget();
    place.toggle_attribute("data-live").ok();
}

fn found(selector: &str) -> Option<HtmlElement> {
    let element = document().query_selector(selector).ok().flatten()?;
    element.dyn_into().ok()
}

fn by_id(id: &str) -> Option<HtmlElement> {
    document()
        .get_element_by_id(id)
        .and_then(|element| element.dyn_into().ok())
}

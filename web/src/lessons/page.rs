//! Small errands on the page's elements.

use calc_core::quantity::UnitSystem;
use leptos::prelude::document;
use leptos::wasm_bindgen::JsCast;
use leptos::wasm_bindgen::closure::Closure;
use leptos::web_sys::{self, Element, HtmlElement, HtmlInputElement};

/// An attribute, empty where there is none.
pub(super) fn attribute(element: &Element, name: &str) -> String {
    element.get_attribute(name).unwrap_or_default()
}

/// The element itself or the nearest around it that a selector fits.
pub(super) fn closest(element: &Element, selector: &str) -> Option<Element> {
    element.closest(selector).ok().flatten()
}

/// The first element inside that a selector fits.
pub(super) fn first(inside: &Element, selector: &str) -> Option<Element> {
    inside.query_selector(selector).ok().flatten()
}

/// All elements inside that a selector fits.
pub(super) fn all(inside: &Element, selector: &str) -> Vec<Element> {
    let Ok(list) = inside.query_selector_all(selector) else {
        return Vec::new();
    };
    (0..list.length())
        .filter_map(|i| list.get(i)?.dyn_into().ok())
        .collect()
}

/// Writes words into an element; nothing happens where they stand there already.
pub(super) fn write_into(element: &Element, words: &str) {
    if element.text_content().as_deref() != Some(words) {
        element.set_text_content(Some(words));
    }
}

/// Shows or hides an element.
pub(super) fn show(element: &Element, shown: bool) {
    element.toggle_attribute_with_force("hidden", !shown).ok();
}

/// What stands in a field.
pub(super) fn field(element: &Element) -> Option<&HtmlInputElement> {
    element.dyn_ref()
}

/// Puts the cursor into an element, if it takes one.
pub(super) fn focus(element: &Element) {
    if let Some(element) = element.dyn_ref::<HtmlElement>() {
        element.focus().ok();
    }
}

/// What needs the program can be used now.
pub(super) fn unlock(inside: &Element) {
    for element in all(inside, "button[data-act][disabled], .answer[disabled]") {
        element.remove_attribute("disabled").ok();
    }
}

/// Marks the units that the page shows.
pub(super) fn mark_units(units: UnitSystem) {
    for (act, system) in [
        ("units-us", UnitSystem::Us),
        ("units-metric", UnitSystem::Metric),
    ] {
        if let Some(button) = first_of_page(&format!("[data-act={act}]")) {
            let pressed = if units == system { "true" } else { "false" };
            button.set_attribute("aria-pressed", pressed).ok();
        }
    }
}

fn first_of_page(selector: &str) -> Option<Element> {
    document().query_selector(selector).ok().flatten()
}

/// Prints one lesson alone.
pub(super) fn print(section: &Element) {
    let (Some(root), Some(window)) = (document().document_element(), web_sys::window()) else {
        return;
    };
    root.set_attribute("data-print", "lesson").ok();
    section.set_attribute("data-now", "").ok();
    let cleared = section.clone();
    let after = Closure::once_into_js(move || {
        cleared.remove_attribute("data-now").ok();
        if let Some(root) = document().document_element() {
            root.remove_attribute("data-print").ok();
        }
    });
    // Some browsers go on while the dialogue is open, so the page is put back when they say so.
    window.set_onafterprint(after.dyn_ref());
    window.print().ok();
}

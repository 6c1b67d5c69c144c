//! One step at a time, for a projector and a remote: Page Down and Page Up go through the steps of the
//! lesson and on to the next one's page, Escape leaves. A figure's drawing and its plot are steps of their own, because side by side
//! their lettering would be too small for the last row.

use std::cell::Cell;

use leptos::prelude::document;
use leptos::wasm_bindgen::JsValue;
use leptos::web_sys::{Document, Element};

use super::page::{all, attribute, closest, first, focus, show, write_into};

/// The end of an address that opens a lesson one step at a time, at its first step and at its last.
const FIRST: &str = "#present";
const LAST: &str = "#present-last";

/// What is shown alone.
pub(super) struct Show {
    steps: Vec<Element>,
    now: Cell<Option<usize>>,
}

impl Show {
    /// The steps that the page holds, in order.
    pub(super) fn new(document: &Document) -> Self {
        let main = document.get_element_by_id("main");
        Self {
            steps: main.map_or_else(Vec::new, |main| all(&main, "[data-step]")),
            now: Cell::new(None),
        }
    }

    /// Begins with the first step.
    pub(super) fn begin(&self) {
        self.go(Some(0));
    }

    /// Begins where the page's address asks for it.
    pub(super) fn asked(&self) {
        let hash = super::window().and_then(|window| window.location().hash().ok());
        match hash.as_deref() {
            Some(FIRST) => self.begin(),
            Some(LAST) => self.go(self.steps.len().checked_sub(1)),
            _ => {}
        }
    }

    /// Steps on or back, at the ends to the lesson that comes next or came before.
    pub(super) fn step(&self, way: i32) {
        let Some(now) = self.now.get() else {
            return;
        };
        let to = if way > 0 {
            now.checked_add(1)
        } else {
            now.checked_sub(1)
        };
        match to {
            Some(to) if to < self.steps.len() => self.go(Some(to)),
            _ if way > 0 => leave_for("next", FIRST),
            _ => leave_for("prev", LAST),
        }
    }

    /// Shows the whole page again.
    pub(super) fn leave(&self) {
        let was = self.now.get().and_then(|now| self.steps.get(now).cloned());
        self.go(None);
        // Or the page would begin again when it is loaded again.
        let window = super::window();
        if let Some(history) = window.and_then(|window| window.history().ok()) {
            history
                .replace_state_with_url(&JsValue::NULL, "", Some("#main"))
                .ok();
        }
        if let Some(step) = was {
            step.scroll_into_view();
        }
    }

    /// Whether a key was for the show.
    pub(super) fn key(&self, key: &str) -> bool {
        if self.now.get().is_none() {
            return false;
        }
        match key {
            "PageDown" => self.step(1),
            "PageUp" => self.step(-1),
            "Escape" => self.leave(),
            _ => return false,
        }
        true
    }

    fn go(&self, to: Option<usize>) {
        for marked in self.marked() {
            marked.remove_attribute("data-now").ok();
        }
        self.now.set(to);
        let step = to.and_then(|to| self.steps.get(to));
        if let Some(root) = document().document_element() {
            root.toggle_attribute_with_force("data-present", step.is_some())
                .ok();
        }
        let Some(main) = document().get_element_by_id("main") else {
            return;
        };
        if let Some(bar) = first(&main, ".present-bar") {
            show(&bar, step.is_some());
            if let (Some(place), Some(to)) = (first(&bar, ".place"), to) {
                write_into(&place, &format!("{} of {}", to + 1, self.steps.len()));
            }
        }
        if let Some(step) = step {
            for shown in around(step) {
                shown.set_attribute("data-now", "").ok();
                // A class guesses aloud: whoever shows the figure has heard it.
                if shown.matches(".live-figure").unwrap_or(false)
                    && let Some(controls) = first(&shown, ".controls[disabled]")
                {
                    controls.remove_attribute("disabled").ok();
                }
            }
            // The main part takes the keys that a remote sends.
            focus(&main);
            if let Some(window) = super::window() {
                window.scroll_to_with_x_and_y(0.0, 0.0);
            }
        }
    }

    fn marked(&self) -> Vec<Element> {
        self.steps
            .iter()
            .filter(|step| step.has_attribute("data-now"))
            .flat_map(around)
            .collect()
    }
}

/// Goes to the lesson before or after this one, if there is one.
fn leave_for(which: &str, at: &str) {
    let link = document()
        .query_selector(&format!("a[rel={which}]"))
        .ok()
        .flatten();
    if let (Some(link), Some(window)) = (link, super::window()) {
        let page = attribute(&link, "href");
        window.location().set_href(&format!("{page}{at}")).ok();
    }
}

/// A step with all that has to be shown for it to be seen.
fn around(step: &Element) -> impl Iterator<Item = Element> {
    let outer = [".pair", ".live-figure", "section"].map(|selector| closest(step, selector));
    std::iter::once(step.clone()).chain(outer.into_iter().flatten())
}

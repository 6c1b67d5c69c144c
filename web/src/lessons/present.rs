//! One step at a time, for a projector and a remote: Page Down and Page Up go through the steps of the
//! lessons, Escape leaves. A figure's drawing and its plot are steps of their own, because side by side
//! their lettering would be too small for the last row.

use std::cell::Cell;

use leptos::prelude::document;
use leptos::web_sys::{Document, Element};

use super::page::{all, closest, first, focus, show, write_into};

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

    /// Begins with a lesson's first step, or with the first of all.
    pub(super) fn begin(&self, lesson: Option<&Element>) {
        let first = lesson.and_then(|lesson| {
            self.steps
                .iter()
                .position(|step| lesson.contains(Some(step)))
        });
        self.go(Some(first.unwrap_or(0)));
    }

    /// Steps on or back; stays at the ends.
    pub(super) fn step(&self, way: i32) {
        let Some(now) = self.now.get() else {
            return;
        };
        let last = self.steps.len().saturating_sub(1);
        let next = if way > 0 {
            now + 1
        } else {
            now.saturating_sub(1)
        };
        self.go(Some(next.min(last)));
    }

    /// Shows the whole page again.
    pub(super) fn leave(&self) {
        let was = self.now.get().and_then(|now| self.steps.get(now).cloned());
        self.go(None);
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

/// A step with all that has to be shown for it to be seen.
fn around(step: &Element) -> impl Iterator<Item = Element> {
    let outer = [".pair", ".live-figure", "section"].map(|selector| closest(step, selector));
    std::iter::once(step.clone()).chain(outer.into_iter().flatten())
}

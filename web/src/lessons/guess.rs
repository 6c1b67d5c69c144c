//! The prediction: committed before the figure can be moved, shown beside what came out.

use drawing::words::key;
use drawing::words::message;

use super::page::{all, closest, field, first, focus, show, write_into};
use super::stage::Stage;

impl Stage {
    /// Keeps the guess and hands over the figure; asks for one where none is made.
    pub(super) fn commit(&self) {
        let Some(form) = first(self.section(), "form.predict") else {
            return;
        };
        let options = all(&form, "input[type=radio]");
        let chosen = options
            .iter()
            .find(|o| field(o).is_some_and(|o| o.checked()));
        let Some(chosen) = chosen else {
            self.tell_guess(key::GUESS_NONE);
            if let Some(option) = options.first() {
                focus(option);
            }
            return;
        };
        if let Some(option) = closest(chosen, ".option") {
            option.set_attribute("data-mine", "").ok();
        }
        self.tell_guess(key::GUESS_KEPT);
        self.hand_over();
    }

    /// Hands over the figure without a guess.
    pub(super) fn skip(&self) {
        if !self.handed_over() {
            self.tell_guess(key::GUESS_SKIPPED);
            self.hand_over();
        }
    }

    fn tell_guess(&self, key: &str) {
        if let Some(outcome) = first(self.section(), "form.predict .outcome") {
            write_into(&outcome, message(key).unwrap_or_default());
        }
    }

    fn handed_over(&self) -> bool {
        first(self.section(), "form.predict[data-done]").is_some()
    }

    /// Hands over the figure where nothing is asked before.
    pub(super) fn offer(&self) {
        let section = self.section();
        if first(section, "form.predict").is_none()
            && let Some(controls) = first(section, ".controls")
        {
            controls.remove_attribute("disabled").ok();
        }
    }

    fn hand_over(&self) {
        let section = self.section();
        if let Some(form) = first(section, "form.predict") {
            form.set_attribute("data-done", "").ok();
            for element in all(&form, "input, button") {
                element.set_attribute("disabled", "").ok();
            }
        }
        if let Some(controls) = first(section, ".controls") {
            controls.remove_attribute("disabled").ok();
            if let Some(control) = first(&controls, "input") {
                focus(&control);
            }
        }
    }

    /// Once the figure was moved: what was guessed, beside what came out.
    pub(super) fn reveal(&self) {
        let section = self.section();
        let (Some(place), Some(mine)) = (
            first(section, "[data-at=guess]"),
            first(section, "form.predict .option[data-mine]"),
        ) else {
            return;
        };
        if !place.has_attribute("hidden") {
            return;
        }
        let words = |selector| {
            first(&mine, selector)
                .and_then(|e| e.text_content())
                .unwrap_or_default()
        };
        let because = first(section, ".because input")
            .and_then(|input| field(&input).map(|input| input.value()))
            .filter(|reason| !reason.trim().is_empty())
            .map_or_else(String::new, |reason| {
                format!(
                    " {} {}.",
                    message(key::GUESS_BECAUSE).unwrap_or_default(),
                    reason.trim().trim_end_matches('.')
                )
            });
        let right = if mine.has_attribute("data-right") {
            key::GUESS_RIGHT
        } else {
            key::GUESS_OTHER
        };
        let text = format!(
            "{} “{}”{because} {} {}",
            message(key::GUESS_YOURS).unwrap_or_default(),
            words("label").trim(),
            message(right).unwrap_or_default(),
            words(".reply").trim()
        );
        write_into(&place, &text);
        show(&place, true);
    }
}

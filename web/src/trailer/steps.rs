//! The five steps: one at a time on a phone, side by side where there is room; the answer so far above, the way on
//! below.

use drawing::words::key;
use std::time::Duration;

use calc_core::report::{Report, Verdict};
use calc_core::scenario::{Field, Scenario};
use leptos::prelude::*;
use leptos::wasm_bindgen::JsCast;
use leptos::web_sys::{Element, HtmlElement};

use super::address;
use super::desk::Desk;
use super::state::Form;
use super::verdict::verdict_word;
use super::words::{self, Words, message, message_at};
use crate::el::{El, classed, el};
use crate::figures::frames::later;

/// How many there are.
pub(super) const STEPS: u32 = 5;
/// The one with the answer.
pub(super) const ANSWER: u32 = 4;

/// Ids of the headings; the steps' names in the words go by them too.
const HEADS: [&str; 5] = ["what", "look", "measure", "verdict", "repairs"];

fn head(step: u32) -> &'static str {
    HEADS.get(step as usize - 1).copied().unwrap_or("what")
}

/// A step with its heading.
pub(super) fn step(desk: Desk, number: u32) -> El {
    let id = format!("{}-title", head(number));
    classed("section", "step")
        .attr("data-n", &number.to_string())
        .attr("aria-labelledby", &id)
        .flag("data-now", move || desk.step.get() == number)
        .child(
            el("h2")
                .attr("id", &id)
                .text(message_at(&["step", head(number)])),
        )
}

/// Goes to a step: a new entry of the history, so that Back comes back.
pub(super) fn go(desk: Desk, number: u32) {
    if desk.step.get_untracked() != number {
        address::write(desk);
        desk.step.set(number);
        desk.just_taken.set(false);
        address::push(desk);
    }
    let id = format!("{}-title", head(number));
    // Once the step is there to be scrolled to.
    later(Duration::ZERO, move || {
        if let Some(title) = document().get_element_by_id(&id) {
            arrive(&title);
        }
    });
}

/// Shows a place of the page, in whatever step it is.
pub(super) fn show(desk: Desk, place: &Element) {
    let step = place.closest("[data-n]").ok().flatten();
    let number = step.and_then(|step| step.get_attribute("data-n")?.parse().ok());
    if let Some(number) = number.filter(|n| (1..=STEPS).contains(n)) {
        desk.step.set(number);
    }
    let place = place.clone();
    later(Duration::ZERO, move || arrive(&place));
}

fn arrive(place: &Element) {
    place.scroll_into_view();
    if let Some(place) = place.dyn_ref::<HtmlElement>() {
        if place.tab_index() < 0 {
            place.set_tab_index(-1);
        }
        place.focus().ok();
    }
}

/// Where one is, which joint it is, the answer so far, and the way back from a repair.
pub(super) fn bar(desk: Desk) -> El {
    let place = move || {
        let form = desk.form.read();
        let step = desk.step.get().to_string();
        message(key::STEP_PLACE).with(&[
            &step,
            &form.value(Field::Joint),
            &form.value(Field::Member),
        ])
    };
    classed("div", "stuck screen-only")
        .child(classed("p", "soft place").live_text(place))
        .child(
            classed("p", "so-far").child(
                el("a")
                    .attr("href", "#verdict-title")
                    .live_children(move || so_far(desk)),
            ),
        )
        .child(was_and_now(desk))
}

/// Why there is no answer yet.
pub(super) fn none_yet(form: &Form) -> String {
    match form.missing().len() {
        0 => message(key::STEP_WRONG).into(),
        left => message(key::STEP_NONE_YET).with(&[&left.to_string()]),
    }
}

fn so_far(desk: Desk) -> Vec<El> {
    let shown = desk.shown.read();
    let Some((_, report)) = &shown.answer else {
        return vec![el("span").text(none_yet(&desk.form.read()))];
    };
    let mut line = vec![verdict_word(report.verdict)];
    if report.verdict == Verdict::DoesNotHold {
        line.push(el("b").text(message(key::STEP_PARK)));
    }
    line.push(
        classed("span", "soft")
            .text(words::label(report.weakest))
            .text(" ")
            .text(words::used(report).unwrap_or_default()),
    );
    if !shown.current {
        line.push(el("b").text(message(key::STEP_STALE)));
    }
    line
}

/// "was … → now …", for as long as a repair stands in the form as it was put in.
fn was_and_now(desk: Desk) -> El {
    let line = move || {
        let (form, shown) = (desk.form.read(), desk.shown.read());
        let before = form.repaired().and_then(|input| Scenario::new(input).ok());
        let (Some(before), Some((_, now))) = (before, &shown.answer) else {
            return Vec::new();
        };
        let was = calc_core::evaluate(&before);
        let told = |report: &Report| {
            [
                verdict_word(report.verdict),
                el("span").text(words::used(report).unwrap_or_default()),
            ]
        };
        vec![
            classed("p", "was-now")
                .attr("id", "was-now")
                .attr("tabindex", "-1")
                .child(el("span").text(message(key::REPAIR_WAS)))
                .children(told(&was))
                .child(el("span").text(message(key::REPAIR_NOW)))
                .children(told(now))
                .child(
                    el("button")
                        .attr("type", "button")
                        .text(message(key::REPAIR_UNDO))
                        .on("click", move |_| undo(desk)),
                ),
        ]
    };
    el("div").attr("role", "status").live_children(line)
}

/// Takes a repair back: as Back does, where Back leads to the joint before it.
fn undo(desk: Desk) {
    if desk.just_taken.get_untracked() {
        address::back();
    } else {
        desk.undo();
        desk.taken.update(|taken| *taken = taken.saturating_sub(1));
        address::write(desk);
    }
}

/// Takes a repair: the page stays where it is, and says what was and what is now.
pub(super) fn took(desk: Desk, input: calc_core::Input) {
    desk.put_repair(input);
    later(Duration::ZERO, || {
        let line = document().get_element_by_id("was-now");
        if let Some(line) = line.and_then(|line| line.dyn_into::<HtmlElement>().ok()) {
            line.focus().ok();
        }
    });
}

/// Back and Next.
pub(super) fn walk(desk: Desk) -> El {
    let button = |class: &'static str, label: fn(u32) -> String, to: fn(u32) -> u32, ends: u32| {
        classed("button", class)
            .attr("type", "button")
            .flag("hidden", move || desk.step.get() == ends)
            .live_text(move || label(desk.step.get()))
            .on("click", move |_| {
                go(desk, to(desk.step.get_untracked()).clamp(1, STEPS));
            })
    };
    classed("nav", "walk screen-only")
        .attr("aria-label", message(key::STEP_NAV))
        .child(button(
            "back",
            |_| message(key::STEP_BACK).into(),
            |step| step - 1,
            1,
        ))
        .child(button(
            "main",
            |step| message_at(&["step", "next", head((step + 1).min(STEPS))]).into(),
            |step| step + 1,
            STEPS,
        ))
}

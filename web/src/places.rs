//! The boxes in the HTML that a live view may take over, by kind of page.

use std::cell::RefCell;
use std::rc::Rc;

use calc_core::quantity::UnitSystem;
use drawing::lesson::{FRONT, LESSONS};
use drawing::opening::Bench;
use leptos::mount::mount_to;
use leptos::prelude::*;
use leptos::wasm_bindgen::JsCast;
use leptos::web_sys::HtmlElement;

use crate::Slice;
use crate::classroom;
use crate::el::{El, fragment};
use crate::figures::opening;
use crate::lessons;
use crate::paper;
use crate::trailer::{short_check, trailer};
use crate::turns::Turns;
use crate::units;

/// Id of the box that holds the form for the reader's own joint.
pub const TRAILER: &str = "own-joint";

/// Id of the box that holds what a joint leaves on paper.
pub const PAPERS: &str = "papers";

/// Id of the box that holds hand-outs and quiz.
pub const HANDOUTS: &str = "handouts";

/// Id of the box that holds the readings from the bench.
pub const BENCH: &str = "bench-day";

/// Id of the box that holds the short check of five measurements.
pub const SHORT: &str = "short-check";

/// The box in the opening figure that holds its still drawings.
pub const OPENING: &str = "#fig-opening > .stage";

/// The front page: its three figures, each in a slice of its own.
#[must_use]
pub fn front() -> Vec<Slice> {
    let units = chosen_units();
    // The curves, and then what shows them: each by itself is short enough.
    let bench = Rc::new(RefCell::new(None));
    let curves = bench.clone();
    let computed: Slice = Box::new(move || *curves.borrow_mut() = Bench::new());
    let shown: Slice = Box::new(move || {
        if let Some((place, bench)) = found(OPENING).zip(bench.take()) {
            fill(&place, move || opening(bench, units.into()));
        }
    });
    let rest = FRONT.iter().map(|model| -> Slice {
        let models = std::slice::from_ref(model);
        Box::new(move || lessons::upgrade(models, units))
    });
    [computed, shown].into_iter().chain(rest).collect()
}

/// A lesson's page.
#[must_use]
pub fn lessons() -> Vec<Slice> {
    vec![Box::new(|| {
        if let Some(main) = by_id("main") {
            // There is nothing to mount; but mounting starts what runs effects.
            mount_to(main, || ()).forget();
        }
        lessons::upgrade(LESSONS, chosen_units());
    })]
}

/// The page of the reader's own joint; and the short check on the front page, which loads this program once it is
/// asked for. Its parts come one by one.
pub fn joint() -> impl Iterator<Item = Slice> {
    let turns = Turns::one_by_one();
    let first: Slice = Box::new(move || {
        let units = chosen_units();
        if let Some(place) = by_id(SHORT) {
            fill(&place, move || vec![short_check(units)]);
        }
        if let Some(place) = by_id(TRAILER) {
            fill(&place, move || vec![trailer(units, turns)]);
        }
    });
    let next = move || turns.go_on().then(|| Box::new(|| ()) as Slice);
    std::iter::once(first).chain(std::iter::from_fn(next))
}

/// The page of work sheet, owner's page, record and picture.
#[must_use]
pub fn papers() -> Vec<Slice> {
    vec![Box::new(|| {
        drawing::words::all::open_papers();
        let units = chosen_units();
        if let Some(place) = by_id(PAPERS) {
            fill(&place, move || vec![paper::papers(units)]);
        }
    })]
}

/// The pages of hand-outs and of bench day.
#[must_use]
pub fn classroom() -> Vec<Slice> {
    vec![Box::new(|| {
        let units = chosen_units();
        if let Some(place) = by_id(HANDOUTS) {
            fill(&place, move || vec![classroom::handouts(units)]);
        }
        if let Some(place) = by_id(BENCH) {
            fill(&place, move || vec![classroom::bench(units)]);
        }
    })]
}

fn chosen_units() -> RwSignal<UnitSystem> {
    RwSignal::new(units::chosen())
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

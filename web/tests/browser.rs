//! The live parts in a real browser.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may fail by a panic, and so may what it calls"
)]
#![cfg(target_arch = "wasm32")]

use calc_core::chance::Sampler;
use calc_core::quantity::UnitSystem;
use calc_core::{Input, Scenario, evaluate};
use clampwright_web::{el::el, places, trailer::trailer, trouble, turns::Turns};
use js_sys::Reflect;
use leptos::prelude::*;
use leptos::wasm_bindgen::prelude::wasm_bindgen;
use leptos::wasm_bindgen::{self, JsCast, JsValue};
use leptos::web_sys::{Event, HtmlElement, HtmlInputElement, HtmlSelectElement};
use std::hint::black_box;
use wasm_bindgen_test::{console_log, wasm_bindgen_test, wasm_bindgen_test_configure};

#[path = "../src/api/mod.rs"]
mod api;

wasm_bindgen_test_configure!(run_in_browser);

fn place(html: &str) -> HtmlElement {
    let place: HtmlElement = document().create_element("div").unwrap().unchecked_into();
    place.set_inner_html(html);
    document().body().unwrap().append_child(&place).unwrap();
    place
}

/// Effects that set signals are followed by further effects.
async fn settle() {
    for _ in 0..4 {
        leptos::task::tick().await;
    }
}

#[wasm_bindgen_test]
fn a_live_view_takes_the_place_of_the_still_one() {
    let place = place("<p>still</p>");
    places::fill(&place, || vec![el("p").text("live")]);
    assert_eq!(place.text_content().as_deref(), Some("live"));
    assert!(place.has_attribute("data-live"));
}

#[wasm_bindgen_test]
async fn the_verdict_follows_what_is_typed() {
    let place = place("");
    let units = RwSignal::new(UnitSystem::Us);
    places::fill(&place, move || vec![trailer(units, Turns::at_once())]);
    leptos::task::tick().await;
    let verdict = || {
        let clamp = "[data-check=\"clamp\"] .verdict";
        let word = place.query_selector(clamp).unwrap().unwrap();
        word.get_attribute("data-verdict").unwrap()
    };
    let set = |id: &str, value: &str, event: &str| {
        let element = place.query_selector(id).unwrap().unwrap();
        Reflect::set(&element, &"value".into(), &value.into()).unwrap();
        element.dispatch_event(&Event::new(event).unwrap()).unwrap();
    };
    let clamp = "[data-check=\"clamp\"]";
    assert!(
        place.query_selector(clamp).unwrap().is_none(),
        "nothing was measured"
    );
    for (id, value) in [
        ("#tube_width_mm", "2"),
        ("#tube_depth_mm", "3"),
        ("#tube_wall_mm", "1/8"),
    ] {
        set(id, value, "input");
    }
    set("#bolt", "unc-1.2", "change");
    set("#bolt_grade", "sae-5", "change");
    settle().await;
    assert_eq!(verdict(), "does-not-hold");
    // A solid bar of the same size leaves nothing to bend.
    let support: HtmlSelectElement = place
        .query_selector("#support")
        .unwrap()
        .unwrap()
        .unchecked_into();
    support.set_value("solid");
    support
        .dispatch_event(&Event::new("change").unwrap())
        .unwrap();
    settle().await;
    assert_eq!(verdict(), "holds");
    let input: HtmlInputElement = place
        .query_selector("#tube_width_mm")
        .unwrap()
        .unwrap()
        .unchecked_into();
    input.set_value("nothing");
    input.dispatch_event(&Event::new("input").unwrap()).unwrap();
    settle().await;
    assert_eq!(input.get_attribute("aria-invalid").as_deref(), Some("true"));
    assert_eq!(input.value(), "nothing");
    assert!(
        place
            .query_selector("[data-stale] .answer")
            .unwrap()
            .is_some()
    );
}

#[wasm_bindgen_test]
fn another_page_gets_a_report_or_named_errors() {
    let report = api::evaluate(js_sys::Object::new().into()).unwrap();
    let get = |from: &JsValue, name: &str| Reflect::get(from, &JsValue::from_str(name)).unwrap();
    assert_eq!(
        get(&report, "verdict").as_string().unwrap(),
        "does-not-hold"
    );
    let joint = api::defaults().unwrap();
    Reflect::set(&joint, &"tube_wall_mm".into(), &900.0.into()).unwrap();
    let error = api::evaluate(joint).unwrap_err();
    assert_eq!(get(&error, "name").as_string().unwrap(), "CalculationError");
    let first = get(&get(&error, "errors"), "0");
    assert_eq!(get(&first, "code").as_string().unwrap(), "out-of-range");
    assert_eq!(get(&first, "field").as_string().unwrap(), "tube_wall_mm");
    let typed = api::read_quantity("2 1/2 in".into(), "tube_width_mm".into()).unwrap();
    assert_eq!(get(&typed, "si").as_f64(), Some(0.0635));
    let error = api::read_quantity("75 lb".into(), "torque_nm".into()).unwrap_err();
    let first = get(&get(&error, "errors"), "0");
    assert_eq!(get(&first, "code").as_string().unwrap(), "wrong-dimension");
}

#[wasm_bindgen_test]
fn the_notice_is_shown_and_the_page_is_marked() {
    let place = place("<div id=\"trouble\" hidden></div>");
    trouble::show(trouble::STOPPED);
    let notice = place.query_selector("#trouble").unwrap().unwrap();
    assert!(!notice.has_attribute("hidden"));
    assert_eq!(notice.text_content().as_deref(), Some(trouble::STOPPED));
    let root = document().document_element().unwrap();
    assert_eq!(root.get_attribute("data-dead").as_deref(), Some("panic"));
    root.remove_attribute("data-dead").unwrap();
}

#[wasm_bindgen]
extern "C" {
    /// Milliseconds since the page began, with fractions.
    #[wasm_bindgen(js_namespace = performance)]
    fn now() -> f64;
}

/// Milliseconds that something takes: the middle of many turns. A turn is to be so short that most of them
/// fall between two interruptions, however busy the machine is.
fn milliseconds(turns: usize, mut work: impl FnMut()) -> f64 {
    let mut times: Vec<f64> = (0..turns)
        .map(|_| {
            let begin = now();
            work();
            now() - begin
        })
        .collect();
    times.sort_by(f64::total_cmp);
    times[turns / 2]
}

/// The calculation alone, without views: what every key press waits for.
///
/// The limits are far above what was measured (`DEVELOPERS.md`), because this build checks its arithmetic.
#[wasm_bindgen_test]
fn the_calculation_keeps_up_with_typing() {
    let scenario = Scenario::new(&Input::default()).unwrap();
    let twenty = || (0..20).for_each(|_| drop(black_box(evaluate(black_box(&scenario)))));
    // The engine compiles again what runs often: a first lot does not count.
    milliseconds(50, twenty);
    let report = milliseconds(350, twenty) * 1e3 / 20.0;
    let mut sampler = Sampler::new(&scenario, 1, 100_000);
    let joints = 200.0
        * milliseconds(200, || {
            sampler.step(500);
        });
    assert!(sampler.step(1).finished());
    black_box(sampler.result());
    console_log!("a report in {report:.0} µs, 100,000 joints in {joints:.0} ms");
    assert!(report < 300.0, "{report} µs");
    assert!(joints < 1_500.0, "{joints} ms");
}

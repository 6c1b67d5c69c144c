//! The live parts in a real browser.
#![cfg(target_arch = "wasm32")]

use clampwright_web::{calculator::Calculator, places, trouble};
use leptos::prelude::*;
use leptos::wasm_bindgen::JsCast;
use leptos::web_sys::{Event, HtmlElement, HtmlInputElement};
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

wasm_bindgen_test_configure!(run_in_browser);

fn place(html: &str) -> HtmlElement {
    let place: HtmlElement = document().create_element("div").unwrap().unchecked_into();
    place.set_inner_html(html);
    document().body().unwrap().append_child(&place).unwrap();
    place
}

#[wasm_bindgen_test]
fn a_live_view_takes_the_place_of_the_still_one() {
    let place = place("<p>still</p>");
    places::fill(&place, || view! { <p>"live"</p> });
    assert_eq!(place.text_content().as_deref(), Some("live"));
    assert!(place.has_attribute("data-live"));
}

#[wasm_bindgen_test]
async fn the_answer_follows_what_is_typed() {
    let place = place("");
    places::fill(&place, || view! { <Calculator /> });
    let input: HtmlInputElement = place
        .query_selector("input")
        .unwrap()
        .unwrap()
        .unchecked_into();
    input.set_value("10");
    input.dispatch_event(&Event::new("input").unwrap()).unwrap();
    leptos::task::tick().await;
    // 10 lbf·ft = 13.558 N·m from the exact definitions of inch, pound and standard gravity.
    let text = place.text_content().unwrap();
    assert!(text.contains("13.6"), "{text}");
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

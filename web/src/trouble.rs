//! What the reader is told when the calculation stops.
//!
//! A panic leaves the module unusable while the page still looks alive. The hook says so in the
//! notice that the HTML already holds, through plain document calls that need nothing of the
//! module's own state, and marks the page so that the style sheet can grey what is no longer true.

use std::panic::PanicHookInfo;

use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::wasm_bindgen;

/// Id of the notice in the HTML.
pub const NOTICE: &str = "trouble";

/// The sentence a reader sees after a panic.
pub const STOPPED: &str = "The calculation has stopped because of a fault in this page. \
     Numbers shown may be out of date. Your settings are in the link: reload the page to go on.";

/// Installs the panic hook.
pub fn install() {
    std::panic::set_hook(Box::new(report));
}

fn report(info: &PanicHookInfo<'_>) {
    web_sys::console::error_1(&JsValue::from_str(&info.to_string()));
    show(STOPPED);
}

/// Writes a sentence into the notice, shows it, and marks the page with `data-dead`.
pub fn show(sentence: &str) {
    let Some(document) = web_sys::window().and_then(|window| window.document()) else {
        return;
    };
    if let Some(root) = document.document_element() {
        root.set_attribute("data-dead", "panic").ok();
    }
    if let Some(notice) = document.get_element_by_id(NOTICE) {
        notice.set_text_content(Some(sentence));
        notice.remove_attribute("hidden").ok();
    }
}

/// Panics on purpose, so that a check can see the notice on the real page. Nothing on the page
/// calls it.
#[wasm_bindgen(js_name = stopForCheck)]
#[allow(clippy::panic, reason = "its only purpose is to panic")]
pub fn stop_for_check() {
    panic!("stopped for a check");
}

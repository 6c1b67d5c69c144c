//! The page: Leptos views over calc-core, compiled to WebAssembly.
//!
//! The text and the still drawings are already in the HTML when this code starts; it only upgrades
//! the boxes that are marked for it, and leaves every other box as it is.

pub mod classroom;
pub mod el;
pub mod figures;
mod grade;
pub mod kept;
pub mod lessons;
pub mod paint;
pub mod paper;
pub mod places;
pub mod trailer;
pub mod trouble;
pub mod turns;
pub mod units;

use std::time::Duration;

// What is tested beside the code is tested where it runs.
#[cfg(all(test, target_arch = "wasm32"))]
wasm_bindgen_test::wasm_bindgen_test_configure!(run_in_browser);

use leptos::prelude::document;
use leptos::web_sys::Event;

use crate::figures::frames::later;

/// What a page says of itself once all of its views are live; `boot.js` waits for it.
pub const LIVE: &str = "clampwright-live";

/// A part of the start: between two of them the browser draws and answers the reader.
pub type Slice = Box<dyn FnOnce()>;

/// Installs the notice for a stopped calculation and puts the live views of one kind of page into it, slice by slice.
///
/// Called once by each binary, with one of [`places`].
pub fn start(views: impl IntoIterator<Item = Slice> + 'static) {
    trouble::install();
    go_on(Box::new(views.into_iter()));
}

/// The next slice as a task of its own, and so on; at the end the page is live.
fn go_on(mut rest: Box<dyn Iterator<Item = Slice>>) {
    let then: Slice = Box::new(move || match rest.next() {
        Some(slice) => {
            slice();
            go_on(rest);
        }
        None => {
            if let Ok(event) = Event::new(LIVE) {
                document().dispatch_event(&event).ok();
            }
        }
    });
    later(Duration::ZERO, then);
}

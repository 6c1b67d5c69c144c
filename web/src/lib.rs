//! The page: Leptos views over calc-core, compiled to WebAssembly.
//!
//! The text and the still drawings are already in the HTML when this code starts; it only upgrades
//! the boxes that are marked for it, and leaves every other box as it is.

pub mod el;
pub mod figures;
pub mod kept;
pub mod lessons;
pub mod paint;
pub mod places;
pub mod trailer;
pub mod trouble;
pub mod units;

/// Installs the notice for a stopped calculation and puts the live views of one kind of page into it.
///
/// Called once by each binary, with one of [`places`]. On a page without any marked box it does nothing
/// but install the notice, so another page can load the same module for its exported functions alone.
pub fn start(views: fn()) {
    trouble::install();
    views();
}

//! The calculation for other pages, without anything of these pages. `web/api/clampwright.js` loads it.

#[path = "../api/mod.rs"]
mod api;

fn main() {}

//! The program of the reader's own joint, which other pages may load for its calculation. Everything else is in
//! the library, where tests can reach it.

#[path = "../api/mod.rs"]
mod api;

fn main() {
    clampwright_web::start(clampwright_web::places::joint);
}

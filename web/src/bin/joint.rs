//! The program of the reader's own joint. Everything is in the library, where tests can reach it.

fn main() {
    clampwright_web::start(clampwright_web::places::joint());
}

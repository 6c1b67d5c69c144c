//! Starts the page. Everything else is in the library, where tests can reach it.

fn main() {
    clampwright_web::start();
}

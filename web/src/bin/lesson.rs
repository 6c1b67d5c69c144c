//! The program of every lesson's page. Everything is in the library, where tests can reach it.

fn main() {
    clampwright_web::start(clampwright_web::places::lessons());
}

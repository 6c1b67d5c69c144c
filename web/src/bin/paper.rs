//! The program of what a joint leaves on paper and as a file. Everything is in the library, where tests can reach it.

fn main() {
    clampwright_web::start(clampwright_web::places::papers());
}

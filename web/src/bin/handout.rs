//! The program of hand-outs, quiz and bench day. Everything is in the library, where tests can reach it.

fn main() {
    clampwright_web::start(clampwright_web::places::classroom());
}

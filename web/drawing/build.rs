//! Puts the page's sentences beside the program without the comments that are only for whoever writes
//! them.

#![allow(
    clippy::expect_used,
    clippy::panic,
    reason = "a build that cannot go on says why and stops"
)]

use std::path::Path;
use std::{env, fs};

/// Keys of what figures and lessons say. A program without a form holds no others.
const OF_FIGURES: [&str; 6] = ["answer", "facts", "guess", "knee", "opening", "verdict"];

fn main() {
    let from = format!("{}/../../content/messages.toml", env!("CARGO_MANIFEST_DIR"));
    let to = env::var_os("OUT_DIR").expect("cargo sets OUT_DIR");
    println!("cargo:rerun-if-changed={from}");
    let text = fs::read_to_string(&from).unwrap_or_else(|e| panic!("{from}: {e}"));
    let said = text
        .lines()
        .filter(|line| !line.is_empty() && !line.starts_with('#'));
    let (figures, others): (Vec<&str>, Vec<&str>) = said.partition(|line| {
        let topic = line.split(['.', ' ', '=']).next();
        topic.is_some_and(|topic| OF_FIGURES.contains(&topic))
    });
    for (name, lines) in [("figures.toml", figures), ("others.toml", others)] {
        let lines: String = lines.into_iter().flat_map(|line| [line, "\n"]).collect();
        fs::write(Path::new(&to).join(name), lines).expect("OUT_DIR takes files");
    }
}

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

/// How the heading of a part begins that only papers say: the program of the form leaves it out.
const ON_PAPER: &str = "# On paper";

fn main() {
    let from = format!("{}/../../content/messages.toml", env!("CARGO_MANIFEST_DIR"));
    let to = env::var_os("OUT_DIR").expect("cargo sets OUT_DIR");
    println!("cargo:rerun-if-changed={from}");
    let text = fs::read_to_string(&from).unwrap_or_else(|e| panic!("{from}: {e}"));
    let (mut figures, mut others, mut papers) = (Vec::new(), Vec::new(), Vec::new());
    let mut on_paper = false;
    for line in text.lines().filter(|line| !line.is_empty()) {
        if line.starts_with('#') {
            on_paper = line.starts_with(ON_PAPER);
            continue;
        }
        let topic = line.split(['.', ' ', '=']).next();
        if topic.is_some_and(|topic| OF_FIGURES.contains(&topic)) {
            figures.push(line);
        } else if on_paper {
            papers.push(line);
        } else {
            others.push(line);
        }
    }
    let tables = [
        ("figures.toml", figures),
        ("others.toml", others),
        ("papers.toml", papers),
    ];
    let keys: String = tables
        .iter()
        .flat_map(|(_, lines)| lines)
        .filter_map(|line| line.split_once('='))
        .map(|(key, _)| constant(key.trim()))
        .collect();
    fs::write(Path::new(&to).join("keys.rs"), keys).expect("OUT_DIR takes files");
    for (name, lines) in tables {
        let lines: String = lines.into_iter().flat_map(|line| [line, "\n"]).collect();
        fs::write(Path::new(&to).join(name), lines).expect("OUT_DIR takes files");
    }
}

/// A constant for a key, so that the compiler finds one that is misspelt or gone: `repair.none` is `REPAIR_NONE`.
fn constant(key: &str) -> String {
    let name: String = key
        .chars()
        .map(|c| match c {
            'a'..='z' | '0'..='9' => c.to_ascii_uppercase(),
            _ => '_',
        })
        .collect();
    format!("/// `{key}`\npub const {name}: &str = {key:?};\n")
}

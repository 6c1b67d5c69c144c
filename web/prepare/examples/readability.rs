//! Prints how easy every content file reads, as a grade of a school in the United States by two formulas:
//! `cargo run -p prepare --example readability`, or with a folder that has another `content` in it.

#![allow(clippy::print_stdout, reason = "a program that prints")]

use std::path::{Path, PathBuf};

use prepare::readability::{Counts, markdown, sentences};
use prepare::register::Register;

fn main() -> std::io::Result<()> {
    let root = std::env::args_os().nth(1).map_or_else(
        || Path::new(env!("CARGO_MANIFEST_DIR")).join("../.."),
        PathBuf::from,
    );
    let register = Register::read(&root).unwrap_or_default();
    let mut files: Vec<_> = std::fs::read_dir(root.join("content"))?
        .filter_map(|entry| Some(entry.ok()?.path()))
        .filter(|path| path.extension().is_some_and(|e| e == "md"))
        .collect();
    files.sort();
    println!(
        "{:<22} {:>5} {:>9} {:>7} {:>14} {:>5}",
        "file", "words", "sentences", "longest", "Flesch-Kincaid", "ARI"
    );
    for path in files {
        let mut counts: Counts = markdown(&std::fs::read_to_string(&path)?, &register);
        let said = path.with_extension("toml");
        if said.exists() {
            counts += sentences(&std::fs::read_to_string(said)?, &register);
        }
        let name = path.file_stem().unwrap_or_default().to_string_lossy();
        println!(
            "{name:<22} {:>5} {:>9} {:>7} {:>14.1} {:>5.1}",
            counts.words,
            counts.sentences,
            counts.longest,
            counts.flesch_kincaid_grade(),
            counts.automated_readability_index()
        );
    }
    Ok(())
}

//! Writes the site from `content/`.
//!
//! ```text
//! prepare                       only says what is wrong with the content, as file:line: what
//! prepare PROGRAMS SITE         writes the site, with the programs that trunk left in PROGRAMS
//! ```
//!
//! All text and every still drawing is in the pages, so they read without their programs.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "runs around the build and stops it where it cannot go on"
)]

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use prepare::page::Assets;
use prepare::{assemble, site};

fn main() -> ExitCode {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    let given: Vec<PathBuf> = std::env::args_os().skip(1).map(PathBuf::from).collect();
    let done = match given.as_slice() {
        [] => site::files(&root, &Assets::unbuilt()).map(|_| ()),
        [programs, to] => assemble::assemble(&root, programs, to),
        _ => {
            eprintln!("prepare [PROGRAMS SITE]");
            return ExitCode::FAILURE;
        }
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(problems) => {
            for problem in &problems {
                eprintln!("{problem}");
            }
            eprintln!("{} problem(s); nothing written", problems.len());
            ExitCode::FAILURE
        }
    }
}

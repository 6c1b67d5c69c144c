//! Writes `web/index.html` from `content/` and `web/page.html`, and `web/checks.html` beside it, before
//! the page is built.
//!
//! All text and every still drawing is in that file, so the page reads without its program. What
//! is wrong with the content is listed as `file:line: what`, and then nothing is written.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "runs before the build and stops it where it cannot go on"
)]

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use prepare::{page, problem::Problem};

fn main() -> ExitCode {
    let root = std::env::args_os().nth(1).map_or_else(
        || Path::new(env!("CARGO_MANIFEST_DIR")).join("../.."),
        PathBuf::from,
    );
    match write(&root) {
        Ok(()) => ExitCode::SUCCESS,
        Err(problems) => {
            for problem in &problems {
                eprintln!("{problem}");
            }
            eprintln!(
                "{} problem(s) in the content; nothing written",
                problems.len()
            );
            ExitCode::FAILURE
        }
    }
}

/// Leaves an unchanged file alone, so that a watching build does not start over for nothing.
fn write(root: &Path) -> Result<(), Vec<Problem>> {
    for (name, html) in page::files(root)? {
        let target = root.join("web").join(name);
        if std::fs::read_to_string(&target).is_ok_and(|old| old == html) {
            continue;
        }
        std::fs::write(&target, html)
            .map_err(|error| vec![Problem::new(name, 1, error.to_string())])?;
    }
    Ok(())
}

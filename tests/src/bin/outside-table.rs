//! Writes every comparison into one JSON file:
//! `cargo run -p outside-checks --bin outside-table -- <file>`.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a tool of the workshop: it stops where it cannot go on"
)]

use std::process::ExitCode;

fn main() -> ExitCode {
    let Some(path) = std::env::args_os().nth(1) else {
        eprintln!("outside-table: name the file to write");
        return ExitCode::FAILURE;
    };
    let written = serde_json::to_string_pretty(&outside_checks::table::tables())
        .map_err(std::io::Error::from)
        .and_then(|text| std::fs::write(&path, text + "\n"));
    match written {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("outside-table: {}: {error}", path.display());
            ExitCode::FAILURE
        }
    }
}

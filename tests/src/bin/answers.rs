//! Writes everything that calc-core answers for thousands of joints, and its digest:
//! `cargo run --release -p outside-checks --bin answers -- write FILE DIGEST`, or prints which numbers moved
//! between two such files: `answers -- moved BEFORE AFTER`. `scripts/answers` does both.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a tool of the workshop: it stops where it cannot go on"
)]

use std::fs::File;
use std::io::{BufRead, BufReader, BufWriter, Write};
use std::process::ExitCode;

use outside_checks::answers::{BLOCK, BLOCKS, digest, joints, platform};
use outside_checks::moved::Moves;

type Failed = Box<dyn std::error::Error>;

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let arguments: Vec<&str> = arguments.iter().map(String::as_str).collect();
    let done = match arguments.as_slice() {
        ["write", answers, digest] => write(answers, digest),
        ["moved", before, after] => moved(before, after),
        _ => Err("answers write FILE DIGEST, or answers moved BEFORE AFTER".into()),
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("answers: {error}");
            ExitCode::FAILURE
        }
    }
}

fn write(answers: &str, lines: &str) -> Result<(), Failed> {
    let mut out = BufWriter::new(File::create(answers)?);
    let mut table = csv::Writer::from_path(lines)?;
    table.serialize(platform())?;
    let mut broken = None;
    for (index, block) in joints(BLOCK * BLOCKS).chunks(BLOCK).enumerate() {
        let line = digest(&index.to_string(), block, true, |answers| {
            let slow = answers.slow.as_deref().unwrap_or("null");
            let written = writeln!(out, "{}\n{slow}", answers.quick);
            broken = broken.take().or(written.err());
        });
        table.serialize(line)?;
    }
    if let Some(error) = broken {
        return Err(error.into());
    }
    out.flush()?;
    table.flush()?;
    Ok(())
}

fn moved(before: &str, after: &str) -> Result<(), Failed> {
    let lines = |path: &str| -> Result<_, Failed> { Ok(BufReader::new(File::open(path)?).lines()) };
    let mut moves = Moves::default();
    for (then, now) in lines(before)?.zip(lines(after)?) {
        let (then, now) = (then?, now?);
        if then != now {
            moves.compare(&serde_json::from_str(&then)?, &serde_json::from_str(&now)?);
        }
    }
    write!(std::io::stdout(), "{moves}")?;
    Ok(())
}

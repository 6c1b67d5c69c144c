//! Tries joints drawn anywhere in the ranges of their fields:
//! `cargo run --release -p outside-checks --bin many-joints -- <valid joints> [seed]`.
//!
//! Stops at the first joint of which something does not hold, and writes it.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a tool of the workshop: it stops where it cannot go on"
)]

use std::process::ExitCode;
use std::sync::Mutex;
use std::time::Instant;

use calc_core::Input;
use outside_checks::joints::{Joints, Tally};

/// The joint being tried, for the message of a panic.
static TRIED: Mutex<Option<Input>> = Mutex::new(None);

fn json(input: &Input) -> String {
    serde_json::to_string(input).unwrap_or_else(|error| error.to_string())
}

fn main() -> ExitCode {
    let mut numbers = std::env::args().skip(1).map(|text| text.parse::<u64>());
    let (wanted, seed) = match (numbers.next(), numbers.next()) {
        (Some(Ok(wanted)), None) => (wanted, 1),
        (Some(Ok(wanted)), Some(Ok(seed))) => (wanted, seed),
        _ => {
            eprintln!("many-joints: say how many, and perhaps a seed");
            return ExitCode::FAILURE;
        }
    };
    let usual = std::panic::take_hook();
    std::panic::set_hook(Box::new(move |info| {
        usual(info);
        if let Ok(tried) = TRIED.lock() {
            eprintln!(
                "while trying {}",
                tried.as_ref().map_or_else(String::new, json)
            );
        }
    }));
    let (mut joints, mut tally) = (Joints::new(seed), Tally::default());
    let begin = Instant::now();
    while tally.valid() < wanted {
        let input = joints.input();
        if let Ok(mut tried) = TRIED.lock() {
            *tried = Some(input.clone());
        }
        if let Err(what) = tally.take(&input) {
            eprintln!("{what}\n{}", json(&input));
            return ExitCode::FAILURE;
        }
    }
    let [holds, close, fails, open] = tally.verdicts;
    eprintln!(
        "{} valid joints in {:.0} s, seed {seed}: {holds} hold, {close} close, {fails} do not hold, {open} \
         not checked; {} refused; repairs, chances and readings of {}",
        tally.valid(),
        begin.elapsed().as_secs_f64(),
        tally.refused,
        tally.slow,
    );
    ExitCode::SUCCESS
}

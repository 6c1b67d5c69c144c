//! Does one thing of the calculation a number of times, for counting the instructions of one of them:
//! `scripts/count` runs it with two numbers and takes the difference.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a tool of the workshop: it stops where it cannot go on"
)]

use calc_core::chance::Sampler;
use calc_core::link::{Sheet, decode, encode};
use calc_core::quantity::{Unit, UnitSystem};
use calc_core::repair::{Rates, repairs};
use calc_core::scenario::Field;
use calc_core::{Input, Scenario, evaluate, torque_turn};
use std::hint::black_box;
use std::process::ExitCode;

fn sheet() -> Option<Sheet> {
    let mut sheet = Sheet::new(UnitSystem::Us);
    for (field, number, unit) in [
        (Field::TubeWidth, 2.5, Unit::Inch),
        (Field::TubeWall, 0.1875, Unit::Inch),
        (Field::Torque, 90.0, Unit::PoundForceFoot),
        (Field::TrailerMass, 1800.0, Unit::Pound),
    ] {
        sheet.set(field, number, unit).ok()?;
    }
    Some(sheet)
}

fn run(what: &str, times: u32) -> Option<()> {
    let input = Input::default();
    let scenario = Scenario::new(&input).ok()?;
    let (sheet, rates) = (sheet()?, Rates::default());
    let text = encode(&sheet);
    for _ in 0..times {
        match what {
            "scenario" => drop(black_box(Scenario::new(black_box(&input)))),
            "report" => drop(black_box(evaluate(black_box(&scenario)))),
            "curve" => drop(black_box(torque_turn(black_box(&scenario)))),
            "repairs" => drop(black_box(repairs(black_box(&scenario), &rates))),
            "link" => drop(black_box(decode(&encode(black_box(&sheet))))),
            "link-read" => drop(black_box(decode(black_box(&text)))),
            "thousand-joints" => {
                let mut sampler = Sampler::new(black_box(&scenario), 1, 1000);
                sampler.step(1000);
                drop(black_box(sampler.result()));
            }
            _ => return None,
        }
    }
    Some(())
}

fn main() -> ExitCode {
    let mut words = std::env::args().skip(1);
    let what = words.next().unwrap_or_default();
    let times = words.next().and_then(|text| text.parse().ok());
    match times.and_then(|times| run(&what, times)) {
        Some(()) => ExitCode::SUCCESS,
        None => {
            eprintln!(
                "count: scenario, report, curve, repairs, link, link-read or thousand-joints, and how often"
            );
            ExitCode::FAILURE
        }
    }
}

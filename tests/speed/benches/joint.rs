//! Time of what the page computes at every key press.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a tool of the workshop: it stops where it cannot go on"
)]
#![allow(
    missing_docs,
    reason = "the macros of the bench harness write functions"
)]

use calc_core::link::{Sheet, decode, encode};
use calc_core::quantity::{Unit, UnitSystem};
use calc_core::repair::{Rates, repairs};
use calc_core::scenario::Field;
use calc_core::{Input, Scenario, evaluate, torque_turn};
use criterion::{Criterion, criterion_group, criterion_main};
use std::hint::black_box;

fn joint(c: &mut Criterion) {
    let input = Input::default();
    let scenario = Scenario::new(&input).expect("the default joint is valid");
    c.bench_function("scenario", |b| b.iter(|| Scenario::new(black_box(&input))));
    c.bench_function("report", |b| b.iter(|| evaluate(black_box(&scenario))));
    for support in ["loose-sleeve", "through-sleeve", "spreader", "solid-insert"] {
        let input = Input {
            support: String::from(support),
            ..Input::default()
        };
        let scenario = Scenario::new(&input).expect("the joint is valid");
        c.bench_function(&format!("report, {support}"), |b| {
            b.iter(|| evaluate(black_box(&scenario)));
        });
    }
    c.bench_function("curve", |b| b.iter(|| torque_turn(black_box(&scenario))));
    let rates = Rates::default();
    let hopeless = Input {
        trailer_mass_kg: 4500.0,
        ..Input::default()
    };
    let not_known = Input {
        tube_material: String::from("unknown-aluminum"),
        ..Input::default()
    };
    for (name, input) in [
        ("repairs", Input::default()),
        ("repairs, nothing holds", hopeless),
        ("repairs, metal not known", not_known),
    ] {
        let scenario = Scenario::new(&input).expect("the joint is valid");
        c.bench_function(name, |b| b.iter(|| repairs(black_box(&scenario), &rates)));
    }
}

fn link(c: &mut Criterion) {
    let mut sheet = Sheet::new(UnitSystem::Us);
    for (field, number, unit) in [
        (Field::TubeWidth, 2.5, Unit::Inch),
        (Field::TubeWall, 0.1875, Unit::Inch),
        (Field::Torque, 90.0, Unit::PoundForceFoot),
        (Field::TrailerMass, 1800.0, Unit::Pound),
    ] {
        sheet.set(field, number, unit).expect("the unit fits");
    }
    let text = encode(&sheet);
    c.bench_function("link written", |b| b.iter(|| encode(black_box(&sheet))));
    c.bench_function("link read", |b| b.iter(|| decode(black_box(&text))));
}

criterion_group!(benches, joint, link);
criterion_main!(benches);

//! The form offers what counts, and no choice that is refused: asked of joints drawn by lot.

use calc_core::chance::Sampler;
use calc_core::inspection::{dent, oval, torque_stop};
use calc_core::quantity::{mm, newton_metre};
use calc_core::scenario::{Field, MemberKind, SupportKind, offered, options};
use calc_core::{Input, InputError, Scenario, evaluate, torque_turn};
use outside_checks::joints::Joints;

/// Joints that are tried; each with every field moved.
const JOINTS: usize = 700;

/// How often a field is moved in one joint.
const MOVES: usize = 2;

/// Whether two joints are answered differently, apart from what only repeats the input.
fn differ(one: &Scenario, other: &Scenario) -> bool {
    let report = |s: &Scenario| {
        let mut report = evaluate(s);
        report.input = Input::default();
        report.derived.clear();
        report
    };
    report(one) != report(other) || torque_turn(one) != torque_turn(other)
}

/// The same of what is drawn by lot and of what is worked back from a used joint.
fn readings_differ(one: &Scenario, other: &Scenario) -> bool {
    let readings = |s: &Scenario| {
        let mut sampler = Sampler::new(s, 3, 20);
        sampler.step(20);
        (
            sampler.result(),
            dent(s, mm(0.4)),
            oval(s, mm(16.0), mm(14.0)),
            torque_stop(s, newton_metre(40.0)),
        )
    };
    readings(one) != readings(other)
}

/// How often a field applied, and how often moving it changed an answer.
#[derive(Clone, Copy, Default)]
struct Seen {
    applied: usize,
    changed: usize,
}

#[test]
fn what_changes_an_answer_is_offered_and_what_is_offered_can_change_one() {
    let mut joints = Joints::new(7);
    let mut seen = vec![Seen::default(); Field::ALL.len()];
    let mut hidden = Vec::new();
    let mut done = 0;
    while done < JOINTS {
        let input = joints.input();
        let Ok(scenario) = Scenario::new(&input) else {
            continue;
        };
        done += 1;
        for (&field, seen) in Field::ALL.iter().zip(&mut seen) {
            let applies = field.applies(&input);
            seen.applied += usize::from(applies);
            let mut changes = false;
            for _ in 0..MOVES {
                let mut moved = input.clone();
                joints.one().put(&mut moved, field);
                let Ok(other) = Scenario::new(&moved) else {
                    continue;
                };
                changes = changes
                    || differ(&scenario, &other)
                    || (!applies || done % 10 == 0) && readings_differ(&scenario, &other);
            }
            seen.changed += usize::from(changes);
            if changes && !applies {
                hidden.push((field.name(), serde_json::to_string(&input).unwrap()));
            }
        }
    }
    if std::env::var("WHAT_COUNTS").is_ok() {
        for (field, seen) in Field::ALL.iter().zip(&seen) {
            eprintln!(
                "{:28} {:5} {:5} {:.2}",
                field.name(),
                seen.applied,
                seen.changed,
                seen.changed as f64 / seen.applied as f64
            );
        }
        let mut names: Vec<_> = hidden.iter().map(|(n, _)| *n).collect();
        names.sort_unstable();
        names.dedup();
        eprintln!("{names:?}");
    }
    assert!(
        hidden.is_empty(),
        "counts, and is not offered: {:#?}",
        hidden.first()
    );
    let idle: Vec<_> = Field::ALL
        .iter()
        .zip(&seen)
        .filter(|(_, seen)| seen.applied == 0 || seen.changed == 0)
        .map(|(field, _)| field.name())
        .collect();
    assert!(idle.is_empty(), "offered, and never counts: {idle:?}");
}

#[test]
fn what_is_offered_is_not_refused_and_what_is_not_refused_is_offered() {
    let mut joints = Joints::new(8);
    let mut turned_down = 0;
    for _ in 0..JOINTS {
        let input = joints.input();
        for &field in Field::ALL {
            let offered = offered(field, &input);
            let all = options(field);
            let refused = |name: &str| {
                let mut chosen = input.clone();
                chosen.set_choice(field, name);
                Scenario::new(&chosen).is_err_and(|errors| {
                    errors.iter().any(|e| {
                        e.field() == Some(field) && matches!(e, InputError::Contradiction { .. })
                    })
                })
            };
            // Where no name is taken, what is wrong is another field.
            if all.iter().all(|name| refused(name)) {
                assert_eq!(offered, all);
                continue;
            }
            for name in all {
                let is_offered = offered.contains(&name);
                turned_down += usize::from(!is_offered);
                let unknown = field == Field::Support
                    && input.member == MemberKind::RoundTube.name()
                    && [
                        SupportKind::Spreader,
                        SupportKind::LooseSleeve,
                        SupportKind::Solid,
                    ]
                    .map(SupportKind::name)
                    .contains(&name);
                assert_eq!(
                    is_offered,
                    !refused(name) && !unknown,
                    "{} {name}: {}",
                    field.name(),
                    serde_json::to_string(&input).unwrap()
                );
            }
        }
    }
    assert!(turned_down > JOINTS, "{turned_down}");
}

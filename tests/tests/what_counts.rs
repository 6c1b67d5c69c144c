//! The form offers what counts, and no choice that is refused: asked of joints drawn by lot.

use calc_core::chance::{Chance, Sampler};
use calc_core::evaluate::TorqueTurn;
use calc_core::inspection::{DentReading, OvalReading, StopReading, dent, oval, torque_stop};
use calc_core::quantity::{mm, newton_metre};
use calc_core::report::Report;
use calc_core::scenario::{Field, MemberKind, SleeveWelded, SupportKind, YesNo, offered, options};
use calc_core::{Input, InputError, Scenario, evaluate, torque_turn};
use outside_checks::joints::Joints;

/// Joints that are tried; each with every field moved.
const JOINTS: usize = 300;

/// Every how many joints the readings are asked too.
const READINGS_EVERY: usize = 10;

/// How often a field is moved in one joint.
const MOVES: usize = 2;

/// Report and curve, without what only repeats the input.
fn answers(s: &Scenario) -> (Report, TorqueTurn) {
    let mut report = evaluate(s);
    report.input = Input::default();
    report.derived.clear();
    (report, torque_turn(s))
}

/// What is drawn by lot and what is worked back from a used joint.
fn readings(s: &Scenario) -> (Chance, DentReading, OvalReading, StopReading) {
    let mut sampler = Sampler::new(s, 3, 20);
    sampler.step(20);
    (
        sampler.result(),
        dent(s, mm(0.4)),
        oval(s, mm(16.0), mm(14.0)),
        torque_stop(s, newton_metre(40.0)),
    )
}

/// How often a field applied, and how often moving it changed an answer.
#[derive(Clone, Copy, Default)]
struct Seen {
    applied: usize,
    changed: usize,
}

/// Joints that the lot seldom brings: heavy trailers under a rule with a vertical value or one that compares
/// masses, open sections with room for the bolt, sleeves that can be welded, loads of the reader's own.
fn seldom() -> Vec<Input> {
    let heavy = Input {
        load_rule: "un-r55".into(),
        trailer_mass_kg: 4200.0,
        towing_mass_kg: 3900.0,
        bed_length_mm: Some(5200.0),
        ball_to_axle_mm: Some(4800.0),
        ..Input::default()
    };
    let open = |member: &str| Input {
        member: member.into(),
        joint: "spring-hanger".into(),
        mount: "from-top".into(),
        tube_width_mm: 250.0,
        tube_depth_mm: 250.0,
        ..Input::default()
    };
    let sleeved = Input {
        support: "through-sleeve".into(),
        sleeve_material: "6061-t6".into(),
        sleeve: "nps-1.2-40".into(),
        ..Input::default()
    };
    let mut steel = heavy.clone();
    steel.tow_springs = "air".into();
    let own = Input {
        joint: "free".into(),
        mount: "from-top".into(),
        free_up_n: 2000.0,
        ..Input::default()
    };
    let mut all = vec![heavy.clone(), steel, heavy, own.clone(), own];
    // Most gauges and walls that are tried leave no room for the hole.
    all.extend(
        [open("angle"), open("channel")]
            .into_iter()
            .cycle()
            .take(16),
    );
    let mut welded = sleeved.clone();
    welded.choose(SleeveWelded(YesNo::Yes));
    all.extend([sleeved, welded].into_iter().cycle().take(6));
    all
}

#[test]
fn what_changes_an_answer_is_offered_and_what_is_offered_can_change_one() {
    let mut joints = Joints::new(7);
    let mut seen = vec![Seen::default(); Field::ALL.len()];
    let mut hidden = Vec::new();
    let mut done = 0;
    let mut seldom = seldom();
    while done < JOINTS {
        let input = seldom.pop().unwrap_or_else(|| joints.input());
        let Ok(scenario) = Scenario::new(&input) else {
            continue;
        };
        done += 1;
        let (said, read) = (answers(&scenario), readings(&scenario));
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
                    || answers(&other) != said
                    || done % READINGS_EVERY == 0 && readings(&other) != read;
            }
            seen.changed += usize::from(changes);
            if changes && !applies {
                hidden.push((field.name(), serde_json::to_string(&input).unwrap()));
            }
        }
    }
    let names: std::collections::BTreeSet<_> = hidden.iter().map(|(name, _)| *name).collect();
    assert!(
        hidden.is_empty(),
        "count, and are not offered: {names:?}, such as {:#?}",
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

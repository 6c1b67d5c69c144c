//! Of what is not known: the worst counts, what would settle it is said, and everything that takes a joint takes it too.

use calc_core::chance::Sampler;
use calc_core::evaluate::deciding;
use calc_core::inspection::{dent, torque_stop};
use calc_core::link::{Decoded, Sheet, decode, encode};
use calc_core::quantity::{UnitSystem, mm, newton_metre};
use calc_core::repair::{Rates, repairs};
use calc_core::report::{Message, Report, Verdict};
use calc_core::scenario::unknown::{Settled, is_unknown, may_be, stands_for};
use calc_core::scenario::{Field, options};
use calc_core::{Input, Scenario, evaluate, torque_turn};

/// A heavy tongue of aluminium on loose sleeves: enough for the stronger alloys.
fn tongue(metal: &str) -> Input {
    Input {
        tube_material: metal.into(),
        tube_width_mm: 76.2,
        tube_depth_mm: 76.2,
        tube_wall_mm: 6.35,
        support: "loose-sleeve".into(),
        sleeve: "rt-1.000x0.250".into(),
        sleeve_short_mm: 0.1,
        trailer_mass_kg: 200.0,
        // What the ends of the sleeve press on takes heat as well.
        preload_share: 0.7,
        ..Input::default()
    }
}

fn report(input: &Input) -> Report {
    evaluate(&Scenario::new(input).unwrap())
}

fn settled(input: &Input, field: Field) -> Vec<(Settled, Input)> {
    stands_for(field, input)
        .into_iter()
        .map(|value| {
            let mut known = input.clone();
            value.put(&mut known, field);
            (value, known)
        })
        .collect()
}

#[test]
fn the_alloy_decides_and_is_named() {
    let unknown = report(&tongue("unknown-aluminum"));
    assert_eq!(unknown.verdict, Verdict::DoesNotHold);
    let [help] = &unknown.would_help[..] else {
        panic!("{:?}", unknown.would_help);
    };
    assert_eq!(help.field, Field::TubeMaterial);
    assert_eq!(help.how.key(), "find-out-alloy");
    let verdict = |name| {
        let mut found = help.found.iter();
        found
            .find(|f| f.value == Settled::Name(name))
            .unwrap()
            .verdict
    };
    assert_eq!(verdict("6061-t6"), Verdict::Holds);
    assert_eq!(verdict("6063-t5"), Verdict::DoesNotHold);
    let [counted] = &unknown.not_known[..] else {
        panic!("{:?}", unknown.not_known);
    };
    assert_eq!(counted.counted, Settled::Name("6063-t5"));
    assert_eq!(counted.stands_for.len(), 4);
    assert!(
        unknown
            .notes
            .iter()
            .any(|n| n.code == Message::NoteNotKnown)
    );
}

/// Whatever is said to help, the joint with it has the verdict that was promised.
#[test]
fn what_would_help_keeps_its_promise() {
    let mut promised = 0;
    for metal in ["unknown-aluminum", "unknown-steel", "unknown"] {
        for (grade, surface, wall, lubrication) in [
            ("unknown", "bare-clean", "measured", "zinc"),
            ("sae-5", "unknown", "measured", "unknown"),
            ("sae-5", "bare-clean", "unknown", "unknown"),
            ("unknown", "unknown", "unknown", "zinc"),
        ] {
            for mass in [100.0, 300.0] {
                let input = Input {
                    bolt_grade: grade.into(),
                    faying_surface: surface.into(),
                    wall_basis: wall.into(),
                    lubrication: lubrication.into(),
                    trailer_mass_kg: mass,
                    ..tongue(metal)
                };
                for help in report(&input).would_help {
                    for found in help.found {
                        let mut known = input.clone();
                        found.value.put(&mut known, help.field);
                        assert_eq!(report(&known).verdict, found.verdict, "{found:?}");
                        promised += 1;
                    }
                }
            }
        }
    }
    assert!(promised > 20, "{promised}");
}

#[test]
fn where_all_is_known_nothing_is_said_of_it() {
    let known = report(&tongue("6061-t6"));
    assert!(known.not_known.is_empty() && known.would_help.is_empty());
    let json = serde_json::to_string(&known).unwrap();
    assert!(!json.contains("not_known") && !json.contains("would_help"));
    // What holds needs no measurement.
    let sound = Input {
        tube_material: "unknown-steel".into(),
        ..outside_checks::joints::sound()
    };
    let sound = report(&sound);
    assert_eq!(sound.verdict, Verdict::Holds, "{:?}", sound.weakest);
    assert_eq!(sound.not_known.len(), 1);
    assert!(sound.would_help.is_empty());
}

/// A repair holds whatever the tube turns out to be.
#[test]
fn a_repair_holds_for_all_that_the_joint_may_be() {
    let mut listed = 0;
    for joint in [
        tongue("unknown-aluminum"),
        Input {
            wall_basis: "unknown".into(),
            ..tongue("6061-t6")
        },
    ] {
        let field = Scenario::new(&joint).unwrap().not_known[0];
        let found = repairs(&Scenario::new(&joint).unwrap(), &Rates::default());
        for repair in &found.list {
            listed += 1;
            assert_eq!(report(&repair.input).verdict, repair.verdict);
            for (value, known) in settled(&repair.input, field) {
                let verdict = report(&known).verdict;
                assert!(verdict <= repair.verdict, "{value:?} {:?}", repair.kind);
            }
        }
    }
    assert!(listed > 3, "{listed}");
}

/// Bolts without marks are left in with little torque, or known ones are put in.
#[test]
fn a_repair_may_bring_known_bolts() {
    let joint = Input {
        bolt_grade: "unknown".into(),
        ..outside_checks::joints::sleeved()
    };
    let s = Scenario::new(&joint).unwrap();
    // A307 is not to be tightened to a stated clamp.
    let before = evaluate(&s);
    assert_eq!(before.verdict, Verdict::DoesNotHold);
    let found = repairs(&s, &Rates::default());
    assert!(!found.list.is_empty());
    for repair in &found.list {
        assert!(!is_unknown(&repair.input.bolt_grade));
        assert!(repair.changed.contains(&Field::Grade));
        assert!(repair.torque_nm > before.tightening.torque_nm);
    }
}

#[test]
fn links_carry_not_knowing() {
    let mut carried = 0;
    for &field in Field::ALL {
        for name in options(field).into_iter().filter(|name| is_unknown(name)) {
            let mut input = Input::default();
            input.set_choice(field, name);
            let (sheet, errors) = Sheet::from_input(&input, UnitSystem::Us);
            assert!(errors.is_empty());
            let Decoded::Intact(reading) = decode(&encode(&sheet)) else {
                panic!("{}", encode(&sheet));
            };
            assert_eq!(reading.sheet.input(), input);
            let json = serde_json::to_string(&input).unwrap();
            assert_eq!(serde_json::from_str::<Input>(&json).unwrap(), input);
            assert!(may_be(field, &input).len() > 1);
            carried += 1;
        }
    }
    assert_eq!(carried, 10);
}

#[test]
fn the_curve_is_that_of_the_joint_that_decides() {
    let s = Scenario::new(&tongue("unknown-aluminum")).unwrap();
    let worst = deciding(&s);
    assert_eq!(worst.tube.material.id(), "6063-t5");
    let curve = torque_turn(&s);
    assert_eq!(
        curve,
        torque_turn(&Scenario::new(&tongue("6063-t5")).unwrap())
    );
}

/// Each alloy is drawn as often as any other.
#[test]
fn alloys_that_are_not_known_are_drawn_evenly() {
    let drawn = |input: &Input| {
        let mut sampler = Sampler::new(&Scenario::new(input).unwrap(), 5, 8000);
        sampler.step(8000);
        sampler.result()
    };
    let joint = |metal: &str| Input {
        support: "bare".into(),
        tube_wall_mm: 9.0,
        ..tongue(metal)
    };
    let unknown = drawn(&joint("unknown-aluminum"));
    let each: Vec<f64> = settled(&joint("unknown-aluminum"), Field::TubeMaterial)
        .iter()
        .map(|(_, known)| drawn(known).slips)
        .collect();
    let mean = each.iter().sum::<f64>() / each.len() as f64;
    assert!(
        each.iter().any(|slips| (slips - mean).abs() > 0.03),
        "{each:?}"
    );
    assert!(
        (unknown.slips - mean).abs() < 0.02,
        "{} {each:?}",
        unknown.slips
    );
    assert!(
        unknown
            .said
            .iter()
            .any(|s| s.code == Message::ChanceNotKnown)
    );
}

/// The band of a reading reaches over all that the joint may be.
#[test]
fn readings_reach_over_all_that_it_may_be() {
    let joint = |metal: &str| Input {
        support: "bare".into(),
        ..tongue(metal)
    };
    let unknown = Scenario::new(&joint("unknown-aluminum")).unwrap();
    let band = dent(&unknown, mm(1.2)).clamp.unwrap();
    let stop = torque_stop(&unknown, newton_metre(30.0));
    for (_, known) in settled(&joint("unknown-aluminum"), Field::TubeMaterial) {
        let known = Scenario::new(&known).unwrap();
        let one = dent(&known, mm(1.2)).clamp.unwrap();
        assert!(band.low.si <= one.low.si && one.high.si <= band.high.si);
        let [low, high] = torque_stop(&known, newton_metre(30.0)).support_range;
        let [least, most] = stop.support_range;
        assert!(least.si <= low.si && high.si <= most.si);
    }
}

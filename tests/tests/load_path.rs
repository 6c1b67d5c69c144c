//! How the load gets from the fitting into the tube: through friction, a weld, the rim of a hole, a face.

use crate::drawn::{inputs, scenario};
use calc_core::mechanics::face::{FaceCurve, LOWER_BOUND};
use calc_core::quantity::InUnits;
use calc_core::report::{Check, CheckId, Message, Report, Strength, Verdict};
use calc_core::scenario::{Field, Mount, SupportKind};
use calc_core::{Input, Scenario, evaluate};
use outside_checks::joints::sleeved;
use outside_checks::reference::folder;
use proptest::prelude::*;

fn every_joint(
    make: impl Fn(&mut Input),
    holds: impl Fn(&Scenario, &Report) -> Result<(), TestCaseError>,
) {
    let mut runner = crate::runner::runner(200);
    let outcome = runner.run(&inputs(), |mut input| {
        make(&mut input);
        let s = scenario(&input)?;
        holds(&s, &evaluate(&s))
    });
    if let Err(error) = outcome {
        panic!("{error}");
    }
}

/// A joint with a hollow, from what was drawn.
fn on(input: &mut Input, support: &str) {
    if !matches!(input.member.as_str(), "rectangular-tube" | "round-tube") {
        input.member = String::from("rectangular-tube");
    }
    input.support = String::from(support);
}

fn through(input: &mut Input, welded: &str) {
    on(input, "through-sleeve");
    input.sleeve_welded = String::from(welded);
}

fn report(input: &Input) -> Report {
    evaluate(&Scenario::new(input).unwrap())
}

fn find(r: &Report, id: CheckId) -> &Check {
    r.check(id).unwrap()
}

const JOINTS: [&str; 3] = ["coupler", "spring-hanger", "chain-bracket"];

/// Whatever it is made of, whatever pulls at it: the clamp goes from cheek to cheek and presses no wall.
#[test]
fn an_unwelded_through_sleeve_never_grips() {
    every_joint(
        |input| {
            through(input, "no");
            input.fitting_gap_mm = None;
        },
        |_, r| {
            let slip = find(r, CheckId::Slip);
            if slip.reason.code != Message::SlipNoLoad {
                prop_assert_eq!(slip.verdict, Verdict::DoesNotHold);
                prop_assert_eq!(slip.reason.code, Message::SlipSleeveNotWelded);
            }
            prop_assert!(!matches!(r.verdict, Verdict::Holds | Verdict::Close));
            prop_assert!(r.fatigue.life.is_none());
            Ok(())
        },
    );
}

/// Whatever carries nothing else, what the weld hands on is asked in every joint under any load.
#[test]
fn what_is_welded_never_loses_its_weld_check() {
    every_joint(
        |input| through(input, "yes"),
        |_, r| {
            let loaded = r.loads.cases.iter().any(|case| {
                let bolts = &case.bolts;
                bolts
                    .iter()
                    .any(|b| b.force_along_n.hypot(b.force_across_n) > 0.0 || b.pull_n > 0.0)
            });
            prop_assert_eq!(r.check(CheckId::SleeveWeld).is_some(), loaded);
            if let Some(weld) = r.check(CheckId::SleeveWeld) {
                prop_assert!(weld.verdict <= r.verdict);
                prop_assert!(weld.utilisation.is_some_and(|u| u.is_finite() && u > 0.0));
            }
            Ok(())
        },
    );
}

/// A sleeve or a block that forces the walls apart holds nothing, whatever else is in order.
#[test]
fn a_part_that_cannot_be_pushed_in_never_holds() {
    for support in ["loose-sleeve", "solid-insert"] {
        every_joint(
            |input| {
                on(input, support);
                input.sleeve_short_mm = -input.sleeve_short_mm.abs().max(0.101);
                input.sleeve_short_mm = input.sleeve_short_mm.max(-3.0);
            },
            |_, r| {
                let length = find(r, CheckId::SleeveLength);
                prop_assert_eq!(length.verdict, Verdict::DoesNotHold);
                prop_assert_eq!(r.verdict, Verdict::DoesNotHold);
                Ok(())
            },
        );
    }
}

/// One hollow face that is pulled at is judged in every joint, or the joint is not said to hold.
#[test]
fn a_pull_on_one_hollow_face_is_always_asked() {
    every_joint(
        |input| {
            if !matches!(input.member.as_str(), "rectangular-tube" | "round-tube") {
                input.member = String::from("rectangular-tube");
            }
            input.mount = String::from("from-top");
        },
        |s, r| {
            let pulled = r.loads.cases.iter().any(|case| {
                let bolts = &case.bolts;
                bolts.iter().any(|b| b.pull_n > 0.0)
            });
            let hollow = s.support != SupportKind::Solid;
            let nothing = s.support == SupportKind::ThroughSleeve && !s.sleeve.welded;
            let asked = r.check(CheckId::FacePull).is_some();
            prop_assert_eq!(s.bolting.mount, Mount::FromTop);
            prop_assert!(asked || !hollow || !pulled);
            prop_assert!(!asked || hollow && (pulled || nothing));
            Ok(())
        },
    );
}

/// Share used from which a law looks at it: a quarter of what gives a verdict.
const MATTERS: f64 = 0.2;

/// Of two joints the worse one uses at least as much, where both are judged.
fn never_eases(make: impl Fn(&mut Input), worsen: impl Fn(&mut Input), ids: &[CheckId]) {
    every_joint(
        |input| make(input),
        |s, before| {
            let mut input = s.input.clone();
            input.tube_corner_radius_mm = Some(s.tube.corner_radius.si() * 1e3);
            worsen(&mut input);
            let Ok(worse) = Scenario::new(&input) else {
                return Err(TestCaseError::reject("refused"));
            };
            let mut input = s.input.clone();
            input.tube_corner_radius_mm = Some(s.tube.corner_radius.si() * 1e3);
            let Ok(same) = Scenario::new(&input) else {
                return Err(TestCaseError::reject("refused"));
            };
            let (before, after) = (
                if same == *s {
                    before.clone()
                } else {
                    evaluate(&same)
                },
                evaluate(&worse),
            );
            for id in ids {
                let used = |r: &Report| r.check(*id).and_then(|check| check.utilisation);
                // Where ten times too much is asked, the share is only a large number: it stays above that. Far below what
                // there is, the clamp is next to nothing, and how bolt and parts share the pull moves it either way.
                if let Some((a, b)) = used(&before)
                    .zip(used(&after))
                    .filter(|(a, _)| *a > MATTERS)
                {
                    prop_assert!(b >= a.min(10.0) * (1.0 - 1e-3), "{id:?}: {a} to {b}");
                }
            }
            Ok(())
        },
    );
}

/// A thinner wall never eases the weld of a sleeve or the face that a pull hangs on.
#[test]
fn a_thinner_wall_is_never_better() {
    let ids = [CheckId::SleeveWeld, CheckId::FacePull];
    let thinner = |input: &mut Input| input.tube_wall_mm *= 0.9;
    let make = |support: &'static str| {
        move |input: &mut Input| {
            on(input, support);
            input.mount = String::from("from-top");
            let welded = support == "through-sleeve";
            input.sleeve_welded = String::from(if welded { "yes" } else { "no" });
            input.sleeve_short_mm = 0.2;
            if support == "loose-sleeve" {
                // The faces rest on the sleeve: before that, a thinner one comes to it sooner.
                input.preload_share = input.preload_share.max(0.6);
                input.torque_nm = None;
            }
        }
    };
    for support in ["bare", "loose-sleeve", "through-sleeve"] {
        never_eases(make(support), thinner, &ids);
    }
}

/// More mass never eases them either.
#[test]
fn more_mass_is_never_better() {
    let ids = [CheckId::SleeveWeld, CheckId::FacePull, CheckId::WallBearing];
    let heavier =
        |input: &mut Input| input.trailer_mass_kg = (input.trailer_mass_kg * 1.3).min(4500.0);
    for welded in ["no", "yes"] {
        never_eases(|input| through(input, welded), heavier, &ids);
    }
}

#[test]
fn the_tongue_holds_on_its_loose_sleeve_and_on_a_welded_one_and_not_on_a_free_one() {
    for mount in ["through-sides", "from-top"] {
        for joint in JOINTS {
            let of = |support: &str, welded: &str| {
                report(&Input {
                    mount: mount.into(),
                    joint: joint.into(),
                    support: support.into(),
                    sleeve_welded: welded.into(),
                    // From the top a thinner one is asked how far its upright part is.
                    fitting_thickness_mm: 12.0,
                    ..sleeved()
                })
            };
            let what = format!("{mount} {joint}");
            // What else is missing is asked for elsewhere; nothing of the way into the tube may fail.
            let ids = [CheckId::Slip, CheckId::FacePull, CheckId::SleeveWeld];
            for held in [of("loose-sleeve", "no"), of("through-sleeve", "yes")] {
                assert_ne!(held.verdict, Verdict::DoesNotHold, "{what}");
                let asked = held.checks.iter().filter(|c| ids.contains(&c.id));
                assert!(asked.clone().all(|c| c.verdict == Verdict::Holds), "{what}");
            }
            let free = of("through-sleeve", "no");
            assert_eq!(free.verdict, Verdict::DoesNotHold, "{what}");
            // From the top nothing reaches past the sleeve: all of it lifts out.
            let lifts = free.check(CheckId::FacePull).map(|c| c.reason.code)
                == Some(Message::FacePullNothingHolds);
            assert_eq!(lifts, mount == "from-top", "{what}");
        }
    }
}

/// A 32 mm aluminium sleeve under a 27 mm washer lifts out with fitting and bolt.
#[test]
fn a_wide_aluminium_sleeve_does_not_hold_from_the_top() {
    for joint in JOINTS {
        let r = report(&Input {
            mount: "from-top".into(),
            joint: joint.into(),
            support: "through-sleeve".into(),
            sleeve_outer_mm: Some(32.0),
            sleeve_wall_mm: Some(8.0),
            sleeve_material: "6061-t6".into(),
            ..sleeved()
        });
        assert_eq!(r.verdict, Verdict::DoesNotHold, "{joint}");
    }
}

/// A washer that reaches well past the sleeve holds the face below, but the clamp still presses no wall.
#[test]
fn a_wide_washer_over_a_free_sleeve_is_judged_by_the_face() {
    let r = report(&Input {
        mount: "from-top".into(),
        support: "through-sleeve".into(),
        sleeve: "rt-0.750x0.120".into(),
        washer_outer_mm: Some(45.0),
        washer_thickness_mm: Some(12.0),
        tube_width_mm: 101.6,
        tube_depth_mm: 101.6,
        ..sleeved()
    });
    let pull = find(&r, CheckId::FacePull);
    assert!(pull.utilisation.is_some(), "{pull:?}");
    assert_eq!(find(&r, CheckId::Slip).verdict, Verdict::DoesNotHold);
}

/// By hand, from the page of the curve: the load at 1 % and 3 % of one bare face under the nut, with 0.90.
#[test]
fn a_pull_on_a_bare_face_is_held_against_its_curve() {
    for (kind, share) in [("service", 0.01), ("ultimate", 0.03)] {
        let s = Scenario::new(&Input {
            joint: "free".into(),
            free_kind: kind.into(),
            free_up_n: 6000.0,
            ball_ahead_mm: 0.0,
            ball_below_mm: 0.0,
            mount: "from-top".into(),
            support: "bare".into(),
            // Hardly any clamp, so that the pull alone decides.
            torque_nm: Some(0.5),
            // Thick enough not to dish.
            washer_thickness_mm: Some(15.0),
            end_distance_mm: 500.0,
            // Far enough from each other that every bolt has the face to itself.
            spacing_along_mm: 400.0,
            ..sleeved()
        })
        .unwrap();
        let washer = s.bolting.washer.outer;
        let curve = FaceCurve::new(&s.tube.face(Strength::Least), washer, LOWER_BOUND);
        let r = evaluate(&s);
        let pull = find(&r, CheckId::FacePull);
        assert!((pull.demand.si - 3000.0).abs() < 1.0);
        let strength = curve.force_at_share(0.03).si();
        assert!((pull.capacity.si / strength - 1.0).abs() < 1e-6);
        let allowed = curve.force_at_share(share).si();
        let allowed = if kind == "service" {
            allowed.min(strength / 1.5)
        } else {
            allowed
        };
        let used = pull.utilisation.unwrap();
        assert!((used / (3000.0 / allowed) - 1.0).abs() < 1e-6, "{kind}");
    }
}

/// The clamp presses on the face under the nut already: what the bolt has of the pull comes on top.
#[test]
fn clamp_and_pull_press_on_the_face_together() {
    let of = |up: f64, torque: f64| {
        report(&Input {
            joint: "free".into(),
            free_up_n: up,
            ball_ahead_mm: 0.0,
            ball_below_mm: 0.0,
            mount: "from-top".into(),
            support: "bare".into(),
            torque_nm: Some(torque),
            end_distance_mm: 500.0,
            ..sleeved()
        })
    };
    let r = of(6000.0, 34.0);
    let pull = find(&r, CheckId::FacePull);
    assert_eq!(pull.reason.code, Message::FacePressedGives);
    let clamp = r.tightening.clamp_nominal_n;
    // Of 3000 N at a bolt some part, and not more than all.
    assert!(pull.demand.si > clamp + 500.0 && pull.demand.si <= clamp + 3000.0);
    assert!((pull.capacity.si / r.support.least.limit_n - 1.0).abs() < 1e-9);
    let used = |r: &Report| find(r, CheckId::FacePull).utilisation.unwrap();
    assert!(used(&of(3000.0, 34.0)) < used(&r) && used(&of(6000.0, 10.0)) < used(&r));
}

/// Where the curve was not checked the pull is not judged, and where the wall is round nothing is known.
#[test]
fn a_face_outside_the_range_is_not_judged() {
    let verdict = |input: Input| find(&report(&input), CheckId::FacePull).verdict;
    let from_top = || Input {
        mount: "from-top".into(),
        support: "bare".into(),
        ..sleeved()
    };
    let thin = Input {
        tube_wall_mm: 1.2,
        ..from_top()
    };
    assert_eq!(verdict(thin), Verdict::NotChecked);
    let round = Input {
        member: "round-tube".into(),
        bolt_rows: 1.0,
        support: "through-sleeve".into(),
        sleeve_welded: "yes".into(),
        ..from_top()
    };
    assert_eq!(verdict(round), Verdict::NotChecked);
}

/// A sleeve between the walls cannot be welded in: what an old link says of it does not count.
#[test]
fn a_loose_sleeve_is_never_welded() {
    let refused = Scenario::new(&Input {
        sleeve_welded: "yes".into(),
        ..sleeved()
    })
    .unwrap_err();
    let fields: Vec<_> = refused.iter().map(|error| error.field()).collect();
    assert_eq!(fields, [Some(Field::SleeveWelded)]);
}

/// The hole in the wall is the sleeve's, also for fatigue.
#[test]
fn a_wider_sleeve_raises_the_stress_at_its_hole() {
    for member in ["rectangular-tube", "round-tube"] {
        let range = |sleeve: &str| {
            let r = report(&Input {
                member: member.into(),
                support: "through-sleeve".into(),
                sleeve_welded: "yes".into(),
                sleeve: sleeve.into(),
                ..sleeved()
            });
            r.fatigue.hole_range.si
        };
        assert!(range("rt-1.000x0.188") > 1.01 * range("rt-0.750x0.120"));
    }
}

#[test]
fn a_slightly_long_sleeve_is_pushed_in_by_hand() {
    let of = |short: f64| {
        report(&Input {
            sleeve_short_mm: short,
            ..sleeved()
        })
    };
    assert_eq!(
        find(&of(0.0), CheckId::SleeveLength).verdict,
        Verdict::Holds
    );
    let longest = find(&of(-0.01), CheckId::SleeveLength).capacity.si * 1e3;
    assert!(longest > 0.03 && longest <= 0.1, "{longest}");
    assert_eq!(of(-0.99 * longest).verdict, Verdict::Holds);
    let long = of(-1.01 * longest);
    assert_eq!(long.verdict, Verdict::DoesNotHold);
    let slip = find(&long, CheckId::Slip);
    assert_eq!(slip.reason.code, Message::SlipSleeveTooLong);
}

/// 66.68 mm between the walls of 76.2 mm by 4.76: aluminum shrinks by 23.6e-6·60·66.68 = 0.0944 mm, steel by 0.0468. Each
/// wall comes in by half of the difference.
#[test]
fn a_block_of_another_metal_comes_short_in_the_cold() {
    let comes = |metal: &str, swing: f64| {
        let r = report(&Input {
            tube_material: "a500-b".into(),
            tube_width_mm: 76.2,
            tube_depth_mm: 76.2,
            tube_wall_mm: 4.76,
            support: "solid-insert".into(),
            insert_material: metal.into(),
            sleeve_short_mm: 0.1,
            temperature_swing_k: swing,
            ..Input::default()
        });
        find(&r, CheckId::SleeveLength).demand.si * 1e3
    };
    let more = comes("6061-t6", 60.0) - comes("6061-t6", 0.0);
    assert!((more - 0.0238).abs() < 2e-4, "{more}");
    assert!((comes("a36", 60.0) - comes("a36", 0.0)).abs() < 1e-9);
}

/// The seat is asked for the heat that is reported, on top of the largest clamp.
#[test]
fn heat_presses_on_the_seat() {
    let of = |swing: f64| {
        report(&Input {
            member: "solid-bar".into(),
            temperature_swing_k: swing,
            fitting_material: "6061-t6".into(),
            ..Input::default()
        })
    };
    let (cold, hot) = (of(0.0), of(40.0));
    let told = |r: &Report| r.notes.iter().any(|n| n.code == Message::NoteHeatOnSeat);
    assert!(!told(&cold));
    let used = |r: &Report| find(r, CheckId::Clamp).utilisation.unwrap();
    let seat = cold.tightening.clamp_max_n / used(&cold);
    let more = (used(&hot) - used(&cold)) * seat;
    assert!(more > 1e3 && (more / hot.losses.temperature_n - 1.0).abs() < 1e-6);
}

/// Each of the three alone, and by its name.
#[test]
fn one_factor_of_a_parked_trailer_is_told() {
    let road = |change: fn(&mut Input)| {
        let mut input = sleeved();
        change(&mut input);
        let r = report(&input);
        let slip = find(&r, CheckId::Slip);
        (slip.verdict, slip.reason.code)
    };
    let close = |code| (Verdict::Close, code);
    assert_eq!(road(|_| {}).0, Verdict::Holds);
    assert_eq!(
        road(|i| i.vertical_factor = 1.5),
        close(Message::SlipFewBumps)
    );
    assert_eq!(
        road(|i| i.braking_g = 0.15),
        close(Message::SlipHardlyBrakes)
    );
    assert_eq!(road(|i| i.side_g = 0.1), close(Message::SlipHardlyTurns));
    assert_eq!(road(|i| i.vertical_factor = 1.51).0, Verdict::Holds);
}

/// With a tenth on the ball as with nothing, and only of the second it is said.
#[test]
fn a_light_ball_is_told() {
    let of = |share: f64| {
        report(&Input {
            tongue_share: share,
            ..sleeved()
        })
    };
    let told = |r: &Report| r.notes.iter().any(|n| n.code == Message::NoteLightTongue);
    assert!(told(&of(0.0)) && told(&of(0.09)) && !told(&of(0.1)));
    let used = |share| find(&of(share), CheckId::Slip).utilisation;
    assert_eq!(used(0.0), used(0.1));
    assert!(used(0.1) < used(0.11));
}

#[test]
fn runs_of_pulled_faces_flanges_and_of_sleeves_can_be_made_again() {
    for name in [
        "fe_pull/run_pull.py",
        "fe_pull/README.md",
        "fe_sleeve/run_sleeve.py",
        "fe_sleeve/README.md",
        "fe_flange/run_flange.py",
        "fe_flange/README.md",
    ] {
        assert!(folder().join(name).exists(), "{name}");
    }
}

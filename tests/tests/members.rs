//! Channels, angles and round tubes: what must hold for every such joint. Values from outside stand in
//! `compare/members.rs`.

use calc_core::quantity::{InUnits, mm};
use calc_core::report::{Check as Answer, CheckId, Message, Report, Verdict};
use calc_core::scenario::Field;
use calc_core::{Input, Scenario, evaluate};

fn input(member: &str, mount: &str) -> Input {
    Input {
        member: member.into(),
        mount: mount.into(),
        tube_material: "a36".into(),
        tube_width_mm: 76.2,
        tube_depth_mm: 101.6,
        tube_wall_mm: 7.0,
        flange_slope: Some(0.0),
        ..Input::default()
    }
}

fn report(input: &Input) -> Report {
    evaluate(&Scenario::new(input).unwrap_or_else(|errors| panic!("{errors:?}")))
}

fn answer(report: &Report, id: CheckId) -> Option<&Answer> {
    report.check(id)
}

fn verdict(input: &Input, id: CheckId) -> Option<Verdict> {
    answer(&report(input), id).map(|check| check.verdict)
}

#[test]
fn a_slope_without_a_tapered_washer_does_not_hold_and_with_one_it_does() {
    let slope = |slope, washer: &str| Input {
        flange_slope: slope,
        shaped_washer: washer.into(),
        ..input("channel", "from-top")
    };
    for given in [None, Some(1.0 / 6.0), Some(0.08)] {
        let without = report(&slope(given, "no"));
        let seat = answer(&without, CheckId::WasherSeat).unwrap();
        assert_eq!(seat.verdict, Verdict::DoesNotHold, "{given:?}");
        assert_eq!(seat.reason.code, Message::SeatSlopes);
        assert_eq!(without.verdict, Verdict::DoesNotHold);
        for id in [CheckId::Clamp, CheckId::Slip, CheckId::Loosening] {
            assert_eq!(
                answer(&without, id).unwrap().verdict,
                Verdict::NotChecked,
                "{id:?}"
            );
        }
        let with = slope(given, "yes");
        assert_eq!(verdict(&with, CheckId::WasherSeat), Some(Verdict::Holds));
        assert_ne!(verdict(&with, CheckId::Clamp), Some(Verdict::NotChecked));
    }
    // The steepest that a nut may bear on, and parallel faces.
    for given in [Some(0.05), Some(0.0)] {
        let flat = slope(given, "no");
        assert_eq!(verdict(&flat, CheckId::WasherSeat), Some(Verdict::Holds));
        assert_eq!(verdict(&flat, CheckId::Clamp), Some(Verdict::Holds));
    }
    // A web and the legs of an angle do not slope.
    for (member, mount) in [("channel", "through-sides"), ("angle", "from-top")] {
        let flat = Input {
            flange_slope: None,
            ..input(member, mount)
        };
        assert_eq!(verdict(&flat, CheckId::WasherSeat), Some(Verdict::Holds));
    }
}

#[test]
fn the_bare_wall_of_a_round_tube_is_never_judged() {
    for mount in ["from-top", "through-sides"] {
        for support in ["bare", "spreader", "loose-sleeve"] {
            for washer in ["no", "yes"] {
                let report = report(&Input {
                    support: support.into(),
                    shaped_washer: washer.into(),
                    sleeve_material: "a513-1020".into(),
                    ..input("round-tube", mount)
                });
                assert!(report.verdict >= Verdict::NotChecked);
                for id in [
                    CheckId::Clamp,
                    CheckId::Slip,
                    CheckId::Opening,
                    CheckId::Loosening,
                    CheckId::BoltFatigue,
                ] {
                    let Some(check) = answer(&report, id) else {
                        continue;
                    };
                    assert_eq!(check.verdict, Verdict::NotChecked, "{support} {id:?}");
                    assert_eq!(check.utilisation, None, "{support} {id:?}");
                }
                assert_eq!(report.fatigue.life, None);
                let seat = answer(&report, CheckId::WasherSeat).unwrap();
                // A washer on the wall goes wrong for certain; what a flat cheek does was not checked.
                let expected = match (washer, mount) {
                    ("yes", _) => Verdict::Holds,
                    (_, "from-top") => Verdict::DoesNotHold,
                    _ => Verdict::NotChecked,
                };
                assert_eq!(seat.verdict, expected);
                assert_eq!(report.support.unknown, Some(Message::ClampRoundWall));
            }
        }
    }
}

#[test]
fn nothing_is_read_back_from_a_wall_that_nobody_knows() {
    use calc_core::chance::Sampler;
    use calc_core::inspection::{dent, torque_stop};
    use calc_core::quantity::newton_metre;
    let s = Scenario::new(&input("round-tube", "from-top")).unwrap();
    let codes = |said: &[calc_core::report::Said]| said.iter().map(|s| s.code).collect::<Vec<_>>();
    assert_eq!(codes(&dent(&s, mm(0.8)).said), [Message::CaliperRoundWall]);
    assert_eq!(
        codes(&torque_stop(&s, newton_metre(40.0)).said),
        [Message::StopSupportUnknown]
    );
    let mut sampler = Sampler::new(&s, 7, 200);
    sampler.step(200);
    assert_eq!(codes(&sampler.result().said), [Message::ClampRoundWall]);
}

/// A sleeve or a plug carries from washer to washer, whatever the wall round it looks like.
#[test]
fn a_sleeve_carries_the_same_in_a_round_tube_as_in_a_square_one() {
    for (support, washer) in [("through-sleeve", "no"), ("solid-insert", "yes")] {
        let of = |member: &str| {
            report(&Input {
                support: support.into(),
                shaped_washer: washer.into(),
                sleeve: "rt-1.000x0.188".into(),
                sleeve_short_mm: 0.0,
                tube_depth_mm: 76.2,
                tube_wall_mm: 3.0,
                ..input(member, "through-sides")
            })
        };
        let (round, square) = (of("round-tube"), of("rectangular-tube"));
        let clamp = |r: &Report| answer(r, CheckId::Clamp).unwrap().clone();
        assert_ne!(clamp(&round).verdict, Verdict::NotChecked);
        let (a, b) = (clamp(&round).capacity.si, clamp(&square).capacity.si);
        // The faces of a square tube carry a little beside a plug.
        assert!(a <= b * 1.001 && a > 0.7 * b, "{support}: {a} {b}");
    }
}

#[test]
fn one_ply_has_one_slip_plane_and_nothing_to_crush() {
    for (member, mount) in [
        ("channel", "from-top"),
        ("channel", "through-sides"),
        ("angle", "from-top"),
        ("angle", "through-sides"),
    ] {
        let scenario = Scenario::new(&input(member, mount)).unwrap();
        assert_eq!(scenario.bolting.slip_planes(), 1.0);
        assert!((scenario.clamped().si() - 7e-3).abs() < 1e-12);
        let report = evaluate(&scenario);
        assert!(report.support.faces.is_empty());
        assert_eq!(report.support.dent_at_wanted_clamp_mm, None);
        // Pressed together, no bolt bends between the plies.
        assert_eq!(answer(&report, CheckId::BoltBending), None);
        let packed = Input {
            fitting_gap_mm: Some(3.0),
            ..input(member, mount)
        };
        assert!(verdict(&packed, CheckId::BoltBending).is_some());
        // A free edge is asked for where there is one.
        let free = mount == "from-top" || member == "angle";
        assert_eq!(answer(&report, CheckId::MemberEdge).is_some(), free);
    }
}

/// Bearing by hand: 2.4·d·t·F_u of one ply, A36.
#[test]
fn a_flange_bears_as_a_firm_ply() {
    let report = report(&input("channel", "from-top"));
    let bearing = answer(&report, CheckId::WallBearing).unwrap();
    let step = bearing.steps.iter().find(|s| s.symbol == "R").unwrap();
    let fu = 58.0 * 6.894_757_293_168; // ksi in MPa
    let by_hand = 2.4 * 12.7 * 7.0 * fu;
    assert!(
        (step.result.si / by_hand - 1.0).abs() < 1e-3,
        "{} {by_hand}",
        step.result.si
    );
}

fn not_worse(what: &str, before: &Input, after: &Input, ids: &[CheckId]) {
    let (a, b) = (report(before), report(after));
    for &id in ids {
        let (Some(x), Some(y)) = (answer(&a, id), answer(&b, id)) else {
            continue;
        };
        assert!(
            y.verdict <= x.verdict,
            "{what} {id:?}: {:?} → {:?}",
            x.verdict,
            y.verdict
        );
        if let (Some(u), Some(v)) = (x.utilisation, y.utilisation) {
            assert!(v <= u * (1.0 + 1e-9), "{what} {id:?}: {u} → {v}");
        }
    }
}

const OF_THE_PLY: [CheckId; 7] = [
    CheckId::MemberFlange,
    CheckId::WallBearing,
    CheckId::TubeTearOut,
    CheckId::BlockShear,
    CheckId::NetSection,
    CheckId::PullThrough,
    CheckId::MemberEdge,
];

#[test]
fn thicker_is_never_worse() {
    for (member, mount) in [
        ("channel", "from-top"),
        ("channel", "through-sides"),
        ("angle", "from-top"),
        ("angle", "through-sides"),
    ] {
        for rows in [1.0, 2.0] {
            for material in ["a36", "6061-t6"] {
                let at = |wall: f64| Input {
                    tube_wall_mm: wall,
                    upright_wall_mm: Some(6.0),
                    bolt_rows: rows,
                    spacing_across_mm: 30.0,
                    tube_width_mm: 120.0,
                    tube_material: material.into(),
                    ..input(member, mount)
                };
                for pair in [3.0, 4.0, 5.0, 7.0, 9.0, 12.0].windows(2) {
                    not_worse(member, &at(pair[0]), &at(pair[1]), &OF_THE_PLY);
                }
            }
        }
    }
}

#[test]
fn closer_to_the_upright_part_never_bends_more() {
    for member in ["channel", "angle"] {
        for pull in [false, true] {
            let at = |gauge: f64| Input {
                bolt_gauge_mm: Some(gauge),
                // A load that pulls at the bolts.
                joint: if pull { "free" } else { "coupler" }.into(),
                free_up_n: 6000.0,
                free_kind: "proof".into(),
                ..input(member, "from-top")
            };
            for pair in [55.0, 48.0, 40.0, 33.0, 27.0].windows(2) {
                not_worse(
                    member,
                    &at(pair[0]),
                    &at(pair[1]),
                    &[
                        CheckId::MemberFlange,
                        CheckId::MemberEdge,
                        CheckId::TubeTearOut,
                    ],
                );
            }
        }
    }
}

#[test]
fn what_a_member_has_no_room_for_is_refused_by_name() {
    let refused = |input: &Input, field: Field| {
        let errors = Scenario::new(input).unwrap_err();
        assert!(
            errors.iter().any(|error| error.field() == Some(field)),
            "{errors:?}"
        );
    };
    for member in ["channel", "angle"] {
        for support in ["loose-sleeve", "through-sleeve", "solid-insert", "solid"] {
            refused(
                &Input {
                    support: support.into(),
                    ..input(member, "from-top")
                },
                Field::Support,
            );
        }
        for gauge in [8.0, 75.0] {
            refused(
                &Input {
                    bolt_gauge_mm: Some(gauge),
                    ..input(member, "from-top")
                },
                Field::BoltGauge,
            );
        }
    }
    refused(
        &Input {
            bolt_rows: 2.0,
            ..input("round-tube", "from-top")
        },
        Field::BoltRows,
    );
    refused(
        &Input {
            bolt_rows: 2.0,
            spacing_across_mm: 70.0,
            ..input("channel", "through-sides")
        },
        Field::SpacingAcross,
    );
}

#[test]
fn a_bar_is_the_solid_that_stood_in_a_tubes_place() {
    let bar = report(&Input {
        member: "solid-bar".into(),
        ..Input::default()
    });
    let solid = report(&Input {
        support: "solid".into(),
        ..Input::default()
    });
    assert_eq!(bar.checks, solid.checks);
    assert_eq!(bar.support, solid.support);
    assert_eq!(bar.notes, solid.notes);
}

/// Sleeves and blocks are no repair where there is no hollow; a washer that fits belongs to every one
/// that needs it.
#[test]
fn repairs_suit_the_member() {
    use calc_core::repair::{Rates, repairs};
    let sloping = Input {
        flange_slope: None,
        trailer_mass_kg: 250.0,
        bolts_along: 3.0,
        ..input("channel", "from-top")
    };
    let found = repairs(&Scenario::new(&sloping).unwrap(), &Rates::default());
    assert!(found.tried > 20, "{}", found.tried);
    assert!(!found.list.is_empty());
    for repair in &found.list {
        assert_eq!(repair.input.shaped_washer, "yes");
        assert!(matches!(repair.input.support.as_str(), "bare" | "spreader"));
    }
    let round = Input {
        trailer_mass_kg: 250.0,
        tube_depth_mm: 76.2,
        tube_wall_mm: 4.0,
        bolts_along: 3.0,
        ..input("round-tube", "through-sides")
    };
    let found = repairs(&Scenario::new(&round).unwrap(), &Rates::default());
    assert!(!found.list.is_empty());
    for repair in &found.list {
        let support = repair.input.support.as_str();
        assert!(
            support == "through-sleeve"
                || support == "solid-insert" && repair.input.shaped_washer == "yes",
            "{support}"
        );
    }
}

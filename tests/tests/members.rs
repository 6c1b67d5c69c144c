//! Channels, angles and round tubes: formulas against printed values and other ways to the same value, and
//! what must hold for every such joint.

use calc_core::mechanics::flange::{self, Held};
use calc_core::mechanics::net_section::Block;
use calc_core::mechanics::open_section::{OpenSection, Rectangle, shear_lag};
use calc_core::mechanics::ring::Ring;
use calc_core::quantity::{InUnits, Length, inch, mm, mpa, newton};
use calc_core::report::{Check as Answer, CheckId, Report, Verdict};
use calc_core::scenario::Field;
use calc_core::{Input, Scenario, evaluate};
use outside_checks::check::Check;
use outside_checks::reference::{Row, rows};

fn rectangles(text: &str, unit: impl Fn(f64) -> Length) -> Vec<Rectangle> {
    text.split(';')
        .filter(|part| !part.trim().is_empty())
        .map(|part| {
            let n: Vec<f64> = part.split(',').map(|x| x.trim().parse().unwrap()).collect();
            let [up, across, high, wide] = n[..] else {
                panic!("four numbers: {part}");
            };
            let [up, across, high, wide] = [up, across, high, wide].map(&unit);
            Rectangle {
                up,
                across,
                high,
                wide,
            }
        })
        .collect()
}

/// Root moment of our strip for each unit of pull.
fn counted(arm: Length) -> f64 {
    let width = flange::tributary(arm, None, mm(1e4));
    flange::lever(&[arm], Held::OnOneSide).si() / width.si()
}

fn values(row: &Row) -> Option<Vec<(&'static str, f64)>> {
    let n = |name: &str| row.number(name);
    Some(match row.text("case") {
        "root-moment" => vec![("moment_per_pull", counted(mm(n("arm_mm"))))],
        "web-lever" => {
            let places: Vec<Length> = (0..6)
                .filter_map(|i| row.maybe_number(&format!("row_{i}_mm")))
                .map(mm)
                .collect();
            let lever = flange::lever(&places, Held::OnBothSides(mm(n("span_mm"))));
            vec![("lever_mm", lever.si() * 1e3)]
        }
        "ring-coefficients" => {
            // A ring of unit radius and unit stiffness.
            let unit = Ring {
                diameter: mm(2.1),
                wall: mm(0.1),
                length: mm(12e3),
            };
            let k = unit.stiffness(mpa(1.0)).si() * 1e-3;
            let yields = unit.first_yield(mpa(1.0)).si();
            vec![("closing", 1.0 / k), ("moment", 12e3 * 0.01 / 6.0 / yields)]
        }
        "ring" => {
            let ring = Ring {
                diameter: mm(n("diameter_mm")),
                wall: mm(n("wall_mm")),
                length: mm(n("length_mm")),
            };
            vec![
                (
                    "stiffness_n_mm",
                    ring.stiffness(mpa(n("e_mpa"))).si() * 1e-3,
                ),
                ("first_yield_n", ring.first_yield(mpa(n("fy_mpa"))).si()),
            ]
        }
        "section" => {
            let (parts, holes) = (
                rectangles(row.text("parts"), mm),
                rectangles(row.text("holes"), mm),
            );
            let gross = OpenSection::new(&parts, &[]);
            let net = OpenSection::new(&parts, &holes);
            let stress = |s: &OpenSection| {
                let most = s.stress(
                    newton(n("pull_n")),
                    n("up_nmm") * 1e-3,
                    n("side_nmm") * 1e-3,
                );
                most.unwrap().si() * 1e-6
            };
            let [up, across] = gross.middle().map(|x| x.si() * 1e3);
            let [i1, i2, _] = gross.second_moments().map(|i| i * 1e12);
            vec![
                ("area_mm2", gross.area().si() * 1e6),
                ("up_mm", up),
                ("across_mm", across),
                ("i1_mm4", i1),
                ("i2_mm4", i2),
                ("gross_mpa", stress(&gross)),
                ("net_mpa", stress(&net)),
            ]
        }
        "shape" => {
            let s = OpenSection::new(&rectangles(row.text("parts"), inch), &[]);
            let one = inch(1.0).si();
            vec![
                ("area_in2", s.area().si() / one.powi(2)),
                ("from_back_in", s.middle()[1].si() / one),
                ("i_in4", s.second_moments()[0] / one.powi(4)),
            ]
        }
        "joint-moduli" => {
            // Bent by itself behind the bolts, a channel shows its section moduli.
            let one = inch(1.0).si() * 1e3;
            let bent = |up: f64, side: f64| {
                let s = Scenario::new(&Input {
                    member: "channel".into(),
                    mount: row.text("mount").into(),
                    tube_material: "a36".into(),
                    tube_width_mm: n("width_in") * one,
                    tube_depth_mm: n("depth_in") * one,
                    tube_wall_mm: n("wall_in") * one,
                    upright_wall_mm: Some(n("upright_in") * one),
                    bolt_gauge_mm: row.maybe_number("gauge_in").map(|g| g * one),
                    joint: "free".into(),
                    free_about_side_nm: up,
                    free_about_up_nm: side,
                    ..Input::default()
                });
                let report = evaluate(&s.unwrap());
                let check = answer(&report, CheckId::NetSection).unwrap();
                let step = check.steps.iter().find(|s| s.symbol == "σ_g").unwrap();
                1000.0 / step.result.si / inch(1.0).si().powi(3)
            };
            vec![("sx_in3", bent(1000.0, 0.0)), ("sy_in3", bent(0.0, 1000.0))]
        }
        "round-modulus" | "round-net" => {
            let size = |name: &str| {
                row.maybe_number(&format!("{name}_mm"))
                    .or_else(|| row.maybe_number(&format!("{name}_in")).map(|x| x * 25.4))
            };
            let net = row.text("case") == "round-net";
            let of = |name: &str| if net { n(name) } else { 0.0 };
            let s = Scenario::new(&Input {
                member: "round-tube".into(),
                support: "solid-insert".into(),
                tube_material: "a36".into(),
                tube_width_mm: size("diameter").unwrap(),
                tube_wall_mm: size("wall").unwrap(),
                hole_mm: size("hole"),
                ball_ahead_mm: 0.0,
                ball_below_mm: 0.0,
                joint: "free".into(),
                free_along_n: of("pull_n"),
                free_about_side_nm: if net { n("up_nm") } else { 600.0 },
                // The same moment as a sum of two: a round tube does not care about its way.
                free_about_up_nm: if net { n("side_nm") } else { 800.0 },
                ..Input::default()
            });
            let report = evaluate(&s.unwrap());
            let check = answer(&report, CheckId::NetSection).unwrap();
            let of_step = |symbol: &str| {
                let step = check.steps.iter().find(|s| s.symbol == symbol);
                step.unwrap().result.si
            };
            if net {
                vec![("net_mpa", of_step("σ_n") * 1e-6)]
            } else {
                let modulus = 1000.0 / of_step("σ_g") / inch(1.0).si().powi(3);
                vec![("s_in3", modulus)]
            }
        }
        "shear-lag" => vec![(
            "u",
            shear_lag(inch(n("off_in")), inch(n("length_in")), n("connected")),
        )],
        "block" => {
            #[allow(
                clippy::cast_possible_truncation,
                clippy::cast_sign_loss,
                reason = "whole numbers of bolts"
            )]
            let count = |name: &str| n(name) as usize;
            let block = Block::to_edge(
                (count("along"), count("rows")),
                mm(n("end_mm")),
                (mm(n("pitch_mm")), mm(n("gauge_mm"))),
                mm(n("edge_mm")),
                mm(n("hole_mm")),
                mm(n("t_mm")),
            );
            let square = inch(1.0).si().powi(2);
            vec![
                ("gross_in2", block.shear_gross.si() / square),
                ("net_in2", block.shear_net.si() / square),
                ("tension_in2", block.tension_net.si() / square),
            ]
        }
        _ => return None,
    })
}

#[test]
fn members() {
    let mut check = Check::new("members");
    for row in rows("members.toml") {
        if let Some(values) = values(&row) {
            check.row(&row, &values);
        }
    }
    check.finish();
}

/// With its factor of safety our strip stays below the first yield of an elastic plate.
#[test]
fn a_flange_that_holds_stays_elastic_as_a_plate() {
    let mut seen = 0;
    for row in rows("members.toml") {
        let ours = match row.text("case") {
            "root-moment-at-most" => counted(mm(row.number("arm_mm"))),
            "web-moment-at-most" => {
                let span = mm(row.number("span_mm"));
                let middle = span * 0.5;
                let lever = flange::lever(&[middle], Held::OnBothSides(span));
                let width = flange::tributary(middle, None, mm(1e4)) - mm(row.number("hole_mm"));
                lever.si() / width.si()
            }
            _ => continue,
        };
        let plate = row.expect["moment_per_pull"];
        let allowed = ours * flange::OMEGA / flange::SHAPE;
        assert!(plate <= allowed, "{}: {plate} against {allowed}", row.id);
        // Nor is it so safe that it says nothing.
        assert!(plate > 0.5 * ours, "{}: {plate} against {ours}", row.id);
        seen += 1;
    }
    assert!(seen >= 7, "{seen}");
}

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
    report.checks.iter().find(|check| check.id == id)
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
        assert_eq!(seat.reason.code, "seat-slopes");
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
                assert_eq!(report.support.unknown, Some("clamp-round-wall"));
            }
        }
    }
}

#[test]
fn nothing_is_read_back_from_a_wall_that_nobody_knows() {
    use calc_core::caliper::{dent, torque_stop};
    use calc_core::chance::Sampler;
    use calc_core::quantity::newton_metre;
    let s = Scenario::new(&input("round-tube", "from-top")).unwrap();
    let codes = |said: &[calc_core::report::Said]| said.iter().map(|s| s.code).collect::<Vec<_>>();
    assert_eq!(codes(&dent(&s, mm(0.8)).said), ["caliper-round-wall"]);
    assert_eq!(
        codes(&torque_stop(&s, newton_metre(40.0)).said),
        ["stop-support-unknown"]
    );
    let mut sampler = Sampler::new(&s, 7, 200);
    sampler.step(200);
    assert_eq!(codes(&sampler.result().said), ["clamp-round-wall"]);
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

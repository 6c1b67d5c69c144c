//! Loads of the joint and their share per bolt against values from elsewhere, and what must hold for
//! every group.

use calc_core::catalog::CaseName;
use calc_core::report::{CaseReport, CheckId, Message, Report, Verdict};
use std::f64::consts::TAU;

use calc_core::catalog::{LoadKind, Trailer, load_rules};
use calc_core::mechanics::bolt_group::{GroupLoad, Place, elastic, pattern};
use calc_core::mechanics::instantaneous_centre::{InPlane, multiple_of_load};
use calc_core::quantity::kilogram;
use calc_core::{Input, Scenario, evaluate};
use proptest::prelude::*;

fn report(input: &Input) -> Report {
    evaluate(&Scenario::new(input).unwrap())
}

fn in_plane(load: &GroupLoad) -> InPlane {
    InPlane {
        along: load.along,
        across: load.across,
        twist: load.twist,
    }
}

/// The bolt's force in service is its largest clamp, what heat or cold adds, and its share of the pull, which is
/// below the proof load or the check says so.
#[test]
fn bolt_in_service() {
    for (up, swing, code) in [
        (2e3, 0.0, Message::BoltServiceBelowProof),
        (2e3, 35.0, Message::BoltServiceOverProof),
        (60e3, 0.0, Message::BoltServiceOverYield),
    ] {
        let report = report(&Input {
            free_up_n: up,
            temperature_swing_k: swing,
            ..joint("free", "from-top", "road-service")
        });
        let check = report.check(CheckId::BoltService).unwrap();
        let step = check.steps.iter().find(|s| s.symbol == "F_b").unwrap();
        let substituted = |symbol: &str| {
            let term = step.inputs.iter().find(|t| t.symbol == symbol).unwrap();
            term.amount.si
        };
        assert_eq!(check.reason.code, code, "{}", check.demand.si);
        assert_eq!(substituted("F_max"), report.tightening.clamp_max_n);
        assert!(substituted("C_b") > 0.0 && substituted("C_b") < 1.0);
        assert_eq!(substituted("F_T"), report.losses.temperature_n);
        let sum = substituted("F_max") + substituted("F_T") + substituted("C_b") * substituted("N");
        assert!((check.demand.si - sum.max(substituted("N"))).abs() < 1e-6);
        let most = report
            .loads
            .bolts
            .iter()
            .map(|b| b.pull_n)
            .fold(0.0, f64::max);
        assert_eq!(substituted("N"), most);
    }
}

/// A thin flange pries: more pull on the bolt, and a check of its own.
#[test]
fn a_thin_flange_pries() {
    let with = |arm: Option<f64>| {
        report(&Input {
            flange_arm_mm: arm,
            fitting_thickness_mm: 6.0,
            free_up_n: 30e3,
            ..joint("free", "from-top", "road-service")
        })
    };
    let demand = |report: &Report| {
        let check = report.check(CheckId::BoltCombined);
        // The pull is the second amount of its sentence.
        check.unwrap().reason.amounts[1].si
    };
    let (stiff, bending) = (with(None), with(Some(45.0)));
    assert!(demand(&bending) > 1.05 * demand(&stiff));
    let flange = |report: &Report| report.check(CheckId::FittingFlange).unwrap().verdict;
    assert_eq!(flange(&bending), Verdict::DoesNotHold);
    // Nobody said how far its upright part is: it is asked for.
    assert_eq!(flange(&stiff), Verdict::NotChecked);
}

/// The joint that the page opens with must not change under the reader.
#[test]
fn default_joint_is_as_before() {
    let report = report(&Input::default());
    assert_eq!(report.weakest, CheckId::Clamp);
    assert_eq!(report.loads.case, CaseName::PullingInABend);
    let slip = report.check(CheckId::Slip).unwrap();
    assert!(
        (slip.demand.si - 6945.25).abs() < 0.01,
        "{}",
        slip.demand.si
    );
    assert_eq!(slip.factor, 1.5);
}

/// The centre-axle value is never above the one that is used.
#[test]
fn the_larger_reference_force_is_used() {
    for tongue_share in [0.0, 0.1, 0.5] {
        let trailer = Trailer {
            mass: kilogram(1500.0),
            towing: kilogram(2200.0),
            tongue_share,
            bed_over_arm: 1.0,
            tow_on_air: false,
        };
        assert!(trailer.reference_force() >= trailer.reference_force_centre_axle());
    }
}

fn joint(name: &str, mount: &str, rule: &str) -> Input {
    Input {
        joint: name.into(),
        mount: mount.into(),
        load_rule: rule.into(),
        bolt_rows: 2.0,
        tube_width_mm: 101.6,
        support: "through-sleeve".into(),
        sleeve_welded: "yes".into(),
        sleeve_material: "6061-t6".into(),
        free_up_n: 2000.0,
        ..Input::default()
    }
}

/// Every check that a load enters names a case of the report, and a kind that it may rest on.
#[test]
fn checks_name_their_case_and_kinds_are_not_mixed() {
    for name in ["coupler", "spring-hanger", "chain-bracket", "free"] {
        for mount in ["through-sides", "from-top"] {
            for rule in load_rules() {
                let report = report(&joint(name, mount, rule.id()));
                let find = |case: CaseName| {
                    let cases: Vec<&CaseReport> = report
                        .loads
                        .cases
                        .iter()
                        .filter(|c| c.case == case)
                        .collect();
                    assert_eq!(cases.len(), 1, "{case:?}");
                    cases[0].kind
                };
                for check in &report.checks {
                    let Some(governing) = check.case else {
                        continue;
                    };
                    assert_eq!(find(governing.case), governing.kind);
                    let clamped = matches!(
                        check.id,
                        CheckId::Slip | CheckId::Opening | CheckId::BoltService
                    );
                    assert!(
                        !(clamped && governing.kind == LoadKind::Ultimate),
                        "{name} {mount} {}: {:?} counts on friction",
                        rule.id(),
                        check.id
                    );
                    if governing.kind == LoadKind::Ultimate {
                        assert_eq!(check.factor, 1.0);
                    }
                }
                // Only the Australian rule asks a chain's attachment to take its load without harm.
                assert_eq!(
                    report.check(CheckId::Slip).is_some(),
                    name != "chain-bracket" || rule.id() == "adr-62"
                );
            }
        }
    }
}

/// A published rule is checked on top of the road: no use of any check falls.
#[test]
fn a_rule_only_adds() {
    for mount in ["through-sides", "from-top"] {
        let road = report(&joint("coupler", mount, "road-service"));
        for rule in load_rules() {
            let with = report(&joint("coupler", mount, rule.id()));
            for check in &road.checks {
                let other = with.checks.iter().find(|c| c.id == check.id).unwrap();
                // Where a rule makes the joint slip, nobody can say how long the bolt lasts any more.
                let open = other.verdict == Verdict::NotChecked && other.utilisation.is_none();
                assert!(
                    open || other.utilisation >= check.utilisation,
                    "{:?}",
                    check.id
                );
            }
        }
    }
}

/// In every case the bolts together carry in the plane what is put on the group.
#[test]
fn forces_in_the_plane_add_up() {
    for name in ["coupler", "spring-hanger", "chain-bracket", "free"] {
        for rule in load_rules() {
            let report = report(&joint(name, "from-top", rule.id()));
            for case in &report.loads.cases {
                let sum = |f: &dyn Fn(&calc_core::report::BoltShare) -> f64| {
                    case.bolts.iter().map(f).sum::<f64>()
                };
                let scale = case.longitudinal_n.abs() + case.transverse_n.abs() + 1.0;
                let along = sum(&|b| b.force_along_n) - case.longitudinal_n;
                let across = sum(&|b| b.force_across_n) - case.transverse_n;
                let twist = sum(&|b| {
                    (b.along_mm * b.force_across_n - b.across_mm * b.force_along_n) * 1e-3
                }) - case.twist_nm;
                assert!(along.abs() < 1e-9 * scale && across.abs() < 1e-9 * scale);
                assert!(twist.abs() < 1e-6 * (case.twist_nm.abs() + 1.0));
            }
        }
    }
}

/// A hanger under the tube is pressed on by its wheel and opened by what turns it; by hand.
#[test]
fn hanger_by_hand() {
    let input = Input {
        bolt_rows: 2.0,
        trailer_mass_kg: 1000.0,
        tongue_share: 0.1,
        axles: 2.0,
        ..joint("spring-hanger", "from-top", "road-service")
    };
    let report = report(&input);
    let case = |name: CaseName| {
        report
            .loads
            .cases
            .iter()
            .find(|c| c.case == name)
            .unwrap()
            .clone()
    };
    // 900 kg on four wheels, half of a spring, three times in a bump.
    let bump = 900.0 / 4.0 * 9.806_65 * 0.5 * 3.0;
    assert!((case(CaseName::WheelOverABump).vertical_n - bump).abs() < 1e-6);
    assert!(
        case(CaseName::WheelOverABump)
            .bolts
            .iter()
            .all(|b| b.pull_n < 0.0)
    );
    // 0.5 g of 1000 kg on four wheels; 330 mm down, over 650 mm of spring.
    let brake = 1000.0 * 0.5 * 9.806_65 / 4.0;
    let rear = case(CaseName::BrakingRearEye);
    assert!((rear.longitudinal_n + brake).abs() < 1e-6);
    assert!((rear.vertical_n - bump - brake * 330.0 / 650.0).abs() < 1e-6);
    // Side force at the ground, 430 mm under the bolts.
    let side = 900.0 / 4.0 * 0.3 * 9.806_65 * 0.5;
    let left = case(CaseName::CorneringLeft);
    assert!((left.transverse_n - side).abs() < 1e-6);
    assert!((left.roll_nm.abs() - side * 0.430).abs() < 1e-6);
    assert!(
        case(CaseName::CorneringUnloaded)
            .bolts
            .iter()
            .any(|b| b.pull_n > 0.0)
    );
}

/// A chain bracket asks only for strength, and pulls at its angle.
#[test]
fn chain_by_hand() {
    let input = Input {
        trailer_mass_kg: 1000.0,
        chain_angle_deg: 40.0,
        ..joint("chain-bracket", "from-top", "road-service")
    };
    let report = report(&input);
    let weight = 1000.0 * 9.806_65;
    for case in &report.loads.cases {
        assert_eq!(case.kind, LoadKind::Ultimate);
        let across = case.vertical_n.hypot(case.transverse_n);
        assert!((case.longitudinal_n.hypot(across) - weight).abs() < 1e-6);
        assert!((across / case.longitudinal_n - (TAU / 9.0).tan()).abs() < 1e-9);
    }
}

/// Nothing to judge is not "holds".
#[test]
fn a_free_load_left_empty_is_not_checked() {
    for kind in ["service", "proof", "ultimate"] {
        let input = Input {
            free_up_n: 0.0,
            free_kind: kind.into(),
            ..joint("free", "from-top", "road-service")
        };
        let report = report(&input);
        let slip = report.check(CheckId::Slip).unwrap();
        assert_eq!(slip.verdict, Verdict::NotChecked);
    }
}

fn any_group() -> impl Strategy<Value = (Vec<Place>, GroupLoad)> {
    let spacing = || 0.02..0.2_f64;
    let force = || -2e4..2e4_f64;
    (
        1..=6_usize,
        1..=3_usize,
        spacing(),
        spacing(),
        force(),
        force(),
        -3e3..3e3_f64,
    )
        .prop_map(|(na, nr, px, py, along, across, twist)| {
            let places = pattern(na, nr, px, py);
            let load = GroupLoad {
                along,
                across,
                twist: if na * nr > 1 { twist } else { 0.0 },
                ..GroupLoad::default()
            };
            (places, load)
        })
}

fn turned(place: Place, angle: f64) -> Place {
    let (sin, cos) = angle.sin_cos();
    Place {
        x: place.x * cos - place.y * sin,
        y: place.x * sin + place.y * cos,
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    /// Turning pattern and load together turns the forces.
    #[test]
    fn turning_the_group_turns_the_forces((places, load) in any_group(), angle in 0.0..TAU) {
        let around: Vec<Place> = places.iter().map(|&p| turned(p, angle)).collect();
        let force = turned(Place { x: load.along, y: load.across }, angle);
        let other = GroupLoad { along: force.x, across: force.y, ..load };
        let (before, _) = elastic(&places, &load);
        let (after, _) = elastic(&around, &other);
        let scale = load.along.hypot(load.across) + load.twist.abs() / 0.02 + 1.0;
        for (b, a) in before.iter().zip(&after) {
            let want = turned(Place { x: b.along, y: b.across }, angle);
            prop_assert!((want.x - a.along).abs() < 1e-9 * scale);
            prop_assert!((want.y - a.across).abs() < 1e-9 * scale);
        }
        let centre = |places: &[Place], load: &GroupLoad| {
            multiple_of_load(places, &in_plane(load), 5e4).unwrap()
        };
        let (b, a) = (centre(&places, &load), centre(&around, &other));
        prop_assert!((a / b - 1.0).abs() < 1e-6, "{b} {a}");
    }

    /// Twice the load, twice the forces and half the multiple.
    #[test]
    fn forces_are_in_proportion((places, load) in any_group(), times in 0.01..100.0_f64) {
        let other = GroupLoad {
            along: load.along * times,
            across: load.across * times,
            twist: load.twist * times,
            ..load
        };
        let (before, _) = elastic(&places, &load);
        let (after, _) = elastic(&places, &other);
        let scale = load.along.hypot(load.across) + load.twist.abs() / 0.02 + 1.0;
        for (b, a) in before.iter().zip(&after) {
            prop_assert!((b.along * times - a.along).abs() < 1e-9 * scale * times);
            prop_assert!((b.across * times - a.across).abs() < 1e-9 * scale * times);
        }
        let centre = |load: &GroupLoad| multiple_of_load(&places, &in_plane(load), 5e4).unwrap();
        prop_assert!((centre(&load) / centre(&other) / times - 1.0).abs() < 1e-6);
    }

    /// The vectors are the safer of the two methods.
    #[test]
    fn vectors_are_safer_than_the_centre((places, load) in any_group()) {
        let largest = elastic(&places, &load).0.iter().map(|s| s.in_plane()).fold(0.0, f64::max);
        let multiple = multiple_of_load(&places, &in_plane(&load), 5e4).unwrap();
        prop_assert!(multiple * largest >= 5e4 * (1.0 - 1e-6), "{}", multiple * largest / 5e4);
    }

    /// Without twist all bolts share equally.
    #[test]
    fn a_force_through_the_middle_is_shared_equally((places, load) in any_group()) {
        let through = GroupLoad { twist: 0.0, ..load };
        for share in elastic(&places, &through).0 {
            prop_assert!((share.along * places.len() as f64 - load.along).abs() < 1e-6);
            prop_assert!((share.across * places.len() as f64 - load.across).abs() < 1e-6);
        }
    }
}

/// What bends a tube at a hanger depends on the frame: only what is certain is judged, and that is said.
#[test]
fn a_hanger_judges_of_the_rail_what_is_certain() {
    let report = report(&joint("spring-hanger", "through-sides", "road-service"));
    let section = report.check(CheckId::NetSection).unwrap();
    assert_eq!(section.reason.code, Message::RailFineSoFar);
    assert!(
        report
            .notes
            .iter()
            .any(|n| n.code == Message::NoteTubeBendingNotAsked)
    );
    assert_eq!(report.fatigue.life, None);
    assert_eq!(
        report.fatigue.said[0].code,
        Message::FatigueTubeBendingUnknown
    );
}

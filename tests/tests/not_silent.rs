//! Joints that must not pass in silence: what is not known is asked for, what cannot hold does not.

use calc_core::catalog::{CaseName, LoadKind};
use calc_core::repair::{Rates, repairs};
use calc_core::report::{CaseReport, Check, CheckId, Message, Report, Verdict};
use calc_core::{Input, Scenario, evaluate};
use outside_checks::joints::sleeved;

fn report(input: &Input) -> Report {
    evaluate(&Scenario::new(input).unwrap_or_else(|errors| panic!("{errors:?}")))
}

fn check(input: &Input, id: CheckId) -> Check {
    report(input).check(id).unwrap().clone()
}

fn case(report: &Report, name: CaseName) -> CaseReport {
    let found = report.loads.cases.iter().find(|c| c.case == name);
    found.unwrap_or_else(|| panic!("{name:?}")).clone()
}

/// A spring hanger beside the web of a 100 mm channel, four bolts.
fn hanger(offset: Option<f64>) -> Input {
    Input {
        member: "channel".into(),
        tube_material: "a36".into(),
        tube_width_mm: 100.0,
        tube_depth_mm: 50.0,
        tube_wall_mm: 8.0,
        upright_wall_mm: Some(8.5),
        flange_slope: Some(0.0),
        joint: "spring-hanger".into(),
        bolt_rows: 2.0,
        spacing_along_mm: 120.0,
        spacing_across_mm: 38.0,
        bolt_grade: "sae-8".into(),
        faying_surface: "en-b".into(),
        end_distance_mm: 300.0,
        fitting_thickness_mm: 12.0,
        hanger_height_mm: 80.0,
        trailer_mass_kg: 650.0,
        load_offset_mm: offset,
        ..Input::default()
    }
}

/// In line with the web it holds, with the spring beside it it does not; where nobody measured, nobody
/// knows.
#[test]
fn a_spring_beside_a_web_pulls_at_its_bolts() {
    let in_line = report(&hanger(Some(0.0)));
    assert_eq!(in_line.verdict, Verdict::Holds, "{:?}", in_line.weakest);
    let used = |offset| {
        let flange = check(&hanger(Some(offset)), CheckId::MemberFlange);
        flange.utilisation.unwrap()
    };
    assert!((0.70..0.80).contains(&used(0.0)), "{}", used(0.0));
    assert!(used(20.0) > 1.05);
    assert_eq!(report(&hanger(Some(20.0))).verdict, Verdict::DoesNotHold);
    let unknown = report(&hanger(None));
    assert_eq!(unknown.verdict, Verdict::NotChecked);
    let asked = unknown.check(CheckId::LoadOffset).unwrap();
    assert_eq!(asked.reason.code, Message::OffsetUnknown);
    assert!(in_line.check(CheckId::LoadOffset).is_none());
}

/// Four bolts in two rows 38 mm apart, clamped all over: `N = F·c·y/Σy²`.
#[test]
fn the_pull_of_an_offset_by_hand() {
    let report = report(&hanger(Some(30.0)));
    let bump = case(&report, CaseName::WheelOverABump);
    let want = bump.vertical_n * 0.030 * 0.019 / (4.0 * 0.019 * 0.019);
    let most = bump.bolts.iter().map(|b| b.pull_n).fold(0.0, f64::max);
    assert!((most / want - 1.0).abs() < 1e-9, "{most} {want}");
    // The load pushes up beside the web, on whichever side: the lower row is pulled most.
    for bolt in &bump.bolts {
        assert_eq!((bolt.pull_n - want).abs() < 1e-6, bolt.across_mm < 0.0);
    }
}

/// Along the tube an offset turns the fitting off at one end of the group, and bends the member aside.
#[test]
fn an_offset_counts_along_the_tube_too() {
    let coupler = |offset| Input {
        joint: "coupler".into(),
        side_g: 0.0,
        ..hanger(Some(offset))
    };
    let [straight, beside] = [0.0, 25.0].map(|offset| report(&coupler(offset)));
    let pulled = |report: &Report| {
        let case = case(report, CaseName::PullingOverABump);
        case.bolts.iter().map(|b| b.pull_n).fold(0.0, f64::max)
    };
    assert_eq!(pulled(&straight), 0.0);
    assert!(pulled(&beside) > 1e3);
    let section = |report: &Report| report.check(CheckId::NetSection).unwrap().utilisation;
    assert!(section(&beside) > section(&straight));
}

/// From the top an offset turns the fitting about the line of its bolts, whichever side it is on; cheeks on
/// both sides have none.
#[test]
fn an_offset_from_the_top_and_between_cheeks() {
    let top = |offset| Input {
        mount: "from-top".into(),
        load_offset_mm: offset,
        ..sleeved()
    };
    let opening = |offset| check(&top(offset), CheckId::Opening).utilisation.unwrap();
    assert_eq!(opening(None), opening(Some(0.0)));
    assert!(opening(Some(40.0)) > 1.2 * opening(None));
    let cheeks = |offset| {
        let mut report = report(&Input {
            load_offset_mm: offset,
            ..sleeved()
        });
        report.input = Input::default();
        report
    };
    assert_eq!(cheeks(None), cheeks(Some(200.0)));
}

/// Thin fittings from the top are asked how far their upright part is; thick ones are not, and who has said
/// it is not asked again.
#[test]
fn a_thin_fitting_is_not_passed_over() {
    let top = |thickness, arm| Input {
        mount: "from-top".into(),
        fitting_thickness_mm: thickness,
        flange_arm_mm: arm,
        ..sleeved()
    };
    for thickness in [0.0, 1.0, 3.0, 5.0] {
        let report = report(&top(thickness, None));
        assert!(report.verdict >= Verdict::NotChecked, "{thickness}");
        let flange = report.check(CheckId::FittingFlange).unwrap();
        assert_eq!(flange.verdict, Verdict::NotChecked, "{thickness}");
        assert_eq!(flange.reason.code, Message::FlangeArmMissing);
        assert!(report.check(CheckId::FittingFlange).is_some());
    }
    assert_eq!(report(&top(10.0, None)).verdict, Verdict::Holds);
    assert_eq!(report(&top(8.0, Some(25.0))).verdict, Verdict::Holds);
    for thickness in [1.0, 3.0] {
        let given = report(&top(thickness, Some(25.0)));
        assert_eq!(given.verdict, Verdict::DoesNotHold, "{thickness}");
    }
}

/// Stiff with any arm is never more than what holds with each arm that there is room for.
#[test]
fn stiff_with_any_arm_holds_with_each() {
    for thickness in [6.0, 7.0, 8.0, 9.0, 10.0, 12.0] {
        for (rows, apart) in [(1.0, 40.0), (2.0, 40.0)] {
            let with = |arm| Input {
                mount: "from-top".into(),
                fitting_thickness_mm: thickness,
                flange_arm_mm: arm,
                bolt_rows: rows,
                spacing_across_mm: apart,
                ..sleeved()
            };
            let any = check(&with(None), CheckId::FittingFlange);
            if any.verdict > Verdict::Close {
                continue;
            }
            let combined = check(&with(None), CheckId::BoltCombined).utilisation;
            for arm in [10.0, 20.0, 30.0, 38.0, 45.0] {
                let one = check(&with(Some(arm)), CheckId::FittingFlange);
                assert!(one.verdict <= any.verdict, "{thickness} {arm}");
                assert_eq!(
                    check(&with(Some(arm)), CheckId::BoltCombined).utilisation,
                    combined
                );
            }
        }
    }
}

/// Cheeks that press on both sides of a tube need not bend, but thinner than plates are they are close at best, and
/// nobody judges them where sheet ends.
#[test]
fn thin_cheeks_never_hold() {
    let with = |thickness| {
        let input = Input {
            fitting_thickness_mm: thickness,
            ..sleeved()
        };
        report(&input)
    };
    for (thickness, best) in [
        (0.0, Verdict::NotChecked),
        (0.5, Verdict::NotChecked),
        (1.4, Verdict::NotChecked),
        (1.6, Verdict::Close),
        (2.9, Verdict::Close),
    ] {
        let report = with(thickness);
        assert!(report.verdict >= best, "{thickness}");
        assert!(report.check(CheckId::FittingBearing).is_some());
    }
    assert_eq!(with(2.0).verdict, Verdict::Close);
    assert_eq!(with(3.0).verdict, Verdict::Holds);
    assert!(with(5.0).check(CheckId::FittingFlange).is_none());
}

/// A flange counts 45° to either side of a bolt and no farther than there is metal.
#[test]
fn a_flange_does_not_count_without_end() {
    let bar = |spacing| Input {
        member: "solid-bar".into(),
        mount: "from-top".into(),
        tube_material: "a36".into(),
        tube_width_mm: 80.0,
        tube_depth_mm: 60.0,
        fitting_thickness_mm: 6.0,
        flange_arm_mm: Some(40.0),
        spacing_along_mm: spacing,
        bolt: "unc-3.4".into(),
        bolt_grade: "sae-8".into(),
        joint: "free".into(),
        free_up_n: 22e3,
        ball_ahead_mm: 0.0,
        ball_below_mm: 0.0,
        ..Input::default()
    };
    let flange = check(&bar(300.0), CheckId::FittingFlange);
    assert_eq!(flange.verdict, Verdict::DoesNotHold);
    let capacity = |spacing| check(&bar(spacing), CheckId::FittingFlange).capacity.si;
    // 40 mm towards the other bolt, 25 mm to the edge.
    assert_eq!(capacity(300.0), capacity(80.0));
    assert!(capacity(60.0) < capacity(80.0));
}

/// One bolt is a hinge, in every mount and for everything that a trailer hangs on it.
#[test]
fn one_bolt_alone_never_holds() {
    for joint in ["coupler", "spring-hanger", "chain-bracket"] {
        for mount in ["through-sides", "from-top"] {
            for rule in ["road-service", "adr-62"] {
                // In line with the load, too.
                for below in [0.0, 30.0] {
                    let one = report(&Input {
                        bolts_along: 1.0,
                        joint: joint.into(),
                        mount: mount.into(),
                        load_rule: rule.into(),
                        trailer_mass_kg: 100.0,
                        ball_ahead_mm: 0.0,
                        ball_below_mm: below,
                        fitting_thickness_mm: 12.0,
                        ..sleeved()
                    });
                    let turning = one.check(CheckId::Turning).unwrap();
                    // The bracket of a chain that is shackled at the bolt swings, and its nut has to be locked.
                    let swings = joint == "chain-bracket" && below == 0.0;
                    let best = if swings {
                        Verdict::Close
                    } else {
                        Verdict::NotChecked
                    };
                    assert!(turning.verdict >= best, "{joint} {mount}");
                }
            }
        }
    }
    let own = |side, about| Input {
        bolts_along: 1.0,
        joint: "free".into(),
        mount: "from-top".into(),
        free_side_n: side,
        free_about_up_nm: about,
        fitting_thickness_mm: 12.0,
        ball_below_mm: 0.0,
        ..sleeved()
    };
    assert!(report(&own(0.0, 0.0)).check(CheckId::Turning).is_none());
    let turned = |about| check(&own(0.0, about), CheckId::Turning).verdict;
    assert_eq!(turned(5.0), Verdict::NotChecked);
    assert_eq!(turned(5e3), Verdict::DoesNotHold);
    assert!(report(&sleeved()).check(CheckId::Turning).is_none());
}

/// From the top up and down are not the same: both are asked.
#[test]
fn a_coupler_from_the_top_is_pressed_and_pulled() {
    let top = report(&Input {
        mount: "from-top".into(),
        ..sleeved()
    });
    for (name, sign) in [
        (CaseName::BrakingOverABump, 1.0),
        (CaseName::PullingOverABump, 1.0),
        (CaseName::BrakingAfterABump, -1.0),
        (CaseName::PullingAfterABump, -1.0),
    ] {
        let one = case(&top, name);
        assert_eq!(one.kind, LoadKind::Service);
        assert!(one.vertical_n * sign > 0.0, "{name:?}");
    }
}

/// A chain that pulls at nothing day by day still needs a tight nut, and no repair leaves it loose.
#[test]
fn a_chain_bracket_is_not_repaired_by_a_loose_nut() {
    let bracket = |torque| Input {
        joint: "chain-bracket".into(),
        torque_nm: torque,
        ..Input::default()
    };
    let loose = check(&bracket(Some(7.0)), CheckId::LeastClamp);
    assert_eq!(loose.verdict, Verdict::DoesNotHold);
    assert_eq!(loose.reason.code, Message::LeastClampLoose);
    let found = repairs(&Scenario::new(&bracket(None)).unwrap(), &Rates::default());
    assert!(!found.list.is_empty());
    for repair in &found.list {
        let clamp = check(&repair.input, CheckId::LeastClamp);
        assert!(clamp.verdict <= Verdict::Close, "{:?}", clamp.reason);
    }
    assert_eq!(
        check(&sleeved(), CheckId::LeastClamp).verdict,
        Verdict::Holds
    );
}

/// Least clamp by hand: 15 % of the proof load.
#[test]
fn least_clamp_by_hand() {
    let sound = report(&sleeved());
    let clamp = sound.check(CheckId::LeastClamp).unwrap();
    let used = 0.15 * sound.tightening.proof_load_n / sound.losses.left_min_n;
    assert!((clamp.utilisation.unwrap() - used).abs() < 1e-12);
}

fn chain(rule: &str, mass: f64, share: f64) -> Report {
    report(&Input {
        joint: "chain-bracket".into(),
        load_rule: rule.into(),
        trailer_mass_kg: mass,
        chain_share: share,
        ..sleeved()
    })
}

/// Along and upright apart, without lasting harm, and each chain for the whole; beside it what the road asks of any chain.
#[test]
fn the_australian_chain_by_hand() {
    for mass in [1000.0, 3000.0] {
        let report = chain("adr-62", mass, 0.5);
        let weight = mass * 9.806_65;
        assert_eq!(report.loads.cases.len(), 6);
        let road = chain("road-service", mass, 1.0);
        for name in [
            CaseName::ChainPullsUp,
            CaseName::ChainPullsDown,
            CaseName::ChainPullsAside,
        ] {
            assert_eq!(case(&report, name).kind, LoadKind::Ultimate);
            let forces = |r| {
                let case = case(r, name);
                [case.longitudinal_n, case.vertical_n, case.transverse_n]
            };
            assert_eq!(forces(&report), forces(&road));
        }
        let forces = |name| {
            let case = case(&report, name);
            assert_eq!(case.kind, LoadKind::Proof);
            [case.longitudinal_n, case.vertical_n, case.transverse_n]
        };
        assert_eq!(forces(CaseName::ChainPullsAlong), [weight, 0.0, 0.0]);
        let half = 0.5 * weight;
        assert_eq!(forces(CaseName::ChainPullsStraightUp), [0.0, half, 0.0]);
        assert_eq!(forces(CaseName::ChainPullsStraightDown), [0.0, -half, 0.0]);
        assert!(report.check(CheckId::Slip).is_some());
    }
}

/// Where texts are in conflict about one chain or all, one has to have the whole, and the other reading is
/// shown; where the text combines them, they share.
#[test]
fn chains_share_only_where_no_text_says_each() {
    let along = |rule, share| {
        let report = chain(rule, 1000.0, share);
        let pull = case(&report, CaseName::ChainPullsUp);
        (pull.longitudinal_n, pull.other_reading_n)
    };
    for rule in ["road-service", "hitch-test", "un-r55"] {
        let (whole, none) = along(rule, 1.0);
        let (each, other) = along(rule, 0.5);
        assert_eq!(whole, each, "{rule}");
        assert_eq!((none, other), (None, Some(0.5 * each)), "{rule}");
    }
    let (each, other) = along("coupler-classes", 0.5);
    assert_eq!((each, other), (along("coupler-classes", 1.0).0, None));
    let (shared, _) = along("us-tow-bar", 0.5);
    assert_eq!(shared, 0.5 * along("us-tow-bar", 1.0).0);
}

#[test]
fn a_chain_is_told_of_bolts_of_its_own() {
    let says = |report: &Report| {
        let mut notes = report.notes.iter();
        notes.any(|n| n.code == Message::NoteChainOwnBolts)
    };
    assert!(says(&chain("road-service", 1000.0, 1.0)));
    assert!(!says(&report(&sleeved())));
}

/// Above 3.5 t D and V act at once, whichever way both point.
#[test]
fn a_heavy_trailer_has_both_values_at_once() {
    let heavy = report(&Input {
        load_rule: "un-r55".into(),
        trailer_mass_kg: 4000.0,
        ..sleeved()
    });
    let d = case(&heavy, CaseName::DValuePulled).longitudinal_n;
    let rest = 4000.0 * 9.806_65 * 0.125;
    let v = 2.4 * 4000.0 * 0.875;
    for (name, along, up) in [
        (CaseName::VValuePressedUp, d, rest + v),
        (CaseName::VValuePulledDown, d, rest - v),
        (CaseName::VValuePressedUpPushed, -d, rest + v),
        (CaseName::VValuePulledDownPushed, -d, rest - v),
        (CaseName::VTestPressedUp, 0.6 * d, rest + 0.6 * v),
        (CaseName::VTestPulledDownPushed, -0.6 * d, rest - 0.6 * v),
    ] {
        let one = case(&heavy, name);
        assert!((one.longitudinal_n - along).abs() < 1e-6, "{name:?}");
        assert!((one.vertical_n - up).abs() < 1e-6, "{name:?}");
    }
    // A line 15° down to the rear.
    let line = case(&heavy, CaseName::DLinePushed);
    let slope = line.vertical_n / line.longitudinal_n;
    assert!(
        (slope - 15.0_f64.to_radians().tan()).abs() < 1e-5,
        "{slope}"
    );
    assert!((line.vertical_n.hypot(line.longitudinal_n) / d - 0.6).abs() < 1e-5);
    assert!(line.vertical_n < 0.0 && line.longitudinal_n < 0.0);
}

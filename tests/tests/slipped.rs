//! Joints that have slipped: whole joints worked by hand, and what must hold for them.

use calc_core::mechanics::{interaction, pin};
use calc_core::quantity::{InUnits, ksi, mm, mpa};
use calc_core::report::{CheckId, Message, Report, Verdict};
use calc_core::{Input, Scenario, evaluate};

/// What lies between the two published forms must agree at their common points.
#[test]
fn interaction_of_shear_and_tension_is_the_published_condition_turned_round() {
    let (fnt, fnv) = (ksi(90.0), ksi(54.0));
    for (frv, tension) in [(5.0, 20.0), (13.5, 28.5), (24.0, 15.0), (26.0, 40.0)] {
        let left = interaction::tension_left(fnt, fnv, ksi(frv), 2.0);
        let holds = 2.0 * ksi(tension).si() <= left.si() * (1.0 + 1e-12);
        let used = interaction::aisc(2.0 * frv / 54.0, 2.0 * tension / 90.0);
        assert_eq!(holds, used <= 1.0 + 1e-12, "{frv} {tension} {used}");
    }
}

#[test]
fn a_bolt_that_may_bend_as_much_as_allowed_stays_elastic() {
    let (fy, d) = (mpa(634.0), mm(10.6));
    let allowed = pin::strength(fy, d).si() / pin::OMEGA;
    assert!(allowed < pin::first_yield(fy, d).si());
    assert!(pin::strength(fy, d) < pin::plastic(fy, d));
}

/// A joint whose forces can be worked out in the head: one bolt, half of 1000 kg straight along the tube.
fn plain_joint() -> Input {
    Input {
        bolts_along: 1.0,
        joint: "free".to_owned(),
        free_along_n: 1000.0 * 9.80665 * 0.5,
        ball_ahead_mm: 0.0,
        ball_below_mm: 0.0,
        ..Input::default()
    }
}

fn report(input: &Input) -> Report {
    evaluate(&Scenario::new(input).unwrap())
}

fn find(report: &Report, id: CheckId) -> &calc_core::report::Check {
    report.check(id).unwrap()
}

#[test]
fn a_plain_joint_gets_the_forces_worked_out_by_hand() {
    let r = report(&plain_joint());
    let near = |got: f64, want: f64| assert!((got / want - 1.0).abs() < 1e-4, "{got} {want}");
    // 1000 kg × 9.80665 × 0.5 on one bolt, half of it in each plane.
    near(find(&r, CheckId::BoltShear).demand.si, 4903.325);
    near(find(&r, CheckId::FittingBearing).demand.si, 2451.66);
    // Of the plies as much as bearing needs: 2·2451.66 N over 1.8·12.7 mm times 248.2 and 240 MPa, 0.864 and 0.894 mm.
    near(find(&r, CheckId::BoltBending).demand.si, 2.15488);
    // 2 × 1.8 × 240 MPa × 12.7 × 3.175 mm.
    near(find(&r, CheckId::WallBearing).capacity.si, 34_837.7);
    // Two planes, threads in them: 0.5 × 827.4 MPa × 91.55 mm² × 2/1.25, by the European column.
    let shear = find(&r, CheckId::BoltShear);
    assert!((shear.capacity.si / 60_590.0 - 1.0).abs() < 2e-3);
    assert_eq!(shear.factor, 1.5);
}

#[test]
fn bolts_from_the_top_lean_on_the_near_wall_alone() {
    let mut input = plain_joint();
    input.mount = "from-top".to_owned();
    let r = report(&input);
    let wall = find(&r, CheckId::WallBearing);
    // V·(1 + a/L), a = 4.0875 mm, L = 76.2 − 3.175 mm.
    assert!((wall.demand.si / (4903.325 * (1.0 + 4.0875 / 73.025)) - 1.0).abs() < 1e-4);
    assert!((wall.capacity.si / 17_418.9 - 1.0).abs() < 1e-4);
}

#[test]
fn distances_to_the_edges_decide_whether_the_bolt_tears_out() {
    let tears = |end: f64, edge: f64| {
        let mut input = plain_joint();
        input.free_along_n *= 3.0;
        input.end_distance_mm = end;
        input.fitting_edge_mm = edge;
        let r = report(&input);
        [
            CheckId::TubeTearOut,
            CheckId::EndDistance,
            CheckId::FittingTearOut,
            CheckId::FittingEdge,
        ]
        .map(|id| find(&r, id).verdict)
    };
    assert_eq!(tears(60.0, 25.0), [Verdict::Holds; 4]);
    // 7.355 kN on one wall of 3.175 mm, F_u = 262 MPa: Ω·V = 1.2·l_c·t·F_u at l_c = 14.74 mm, 21.88 mm
    // from the middle of the 14.2875 mm hole.
    assert_eq!(tears(21.8, 25.0)[0], Verdict::DoesNotHold);
    assert_eq!(tears(22.0, 25.0)[0], Verdict::Close);
    // 1.5 d = 19.05 mm.
    // Below the table down to one diameter it stands on tear-out, which is a check of its own.
    assert_eq!(tears(19.0, 19.0)[1], Verdict::Close);
    assert_eq!(tears(60.0, 19.0)[3], Verdict::Close);
    assert_eq!(tears(12.6, 19.0)[1], Verdict::DoesNotHold);
    assert_eq!(tears(60.0, 12.6)[3], Verdict::DoesNotHold);
    assert_eq!(tears(60.0, 19.1)[3], Verdict::Holds);
}

#[test]
fn a_distance_that_nobody_gave_is_said_to_be_assumed() {
    let notes = |change: &dyn Fn(&mut Input)| {
        let mut input = Input::default();
        change(&mut input);
        report(&input)
            .notes
            .into_iter()
            .find(|n| n.code == Message::NoteEndDistanceAssumed)
    };
    let assumed = notes(&|_| ()).unwrap();
    assert!((assumed.amounts[0].si - 0.060).abs() < 1e-12);
    assert_eq!(notes(&|i| i.end_distance_mm = 61.0), None);
    assert_eq!(notes(&|i| i.tube_end = "capped".to_owned()), None);
    assert_eq!(notes(&|i| i.support = "solid".to_owned()), None);
}

/// A load that comes once may use the strength, one that must do no harm only what does not yield; what
/// comes again and again keeps its factor.
#[test]
fn each_kind_of_load_uses_its_own_part_of_the_strength() {
    let used = |kind: &str, along: f64| {
        let r = report(&Input {
            joint: "free".to_owned(),
            free_kind: kind.to_owned(),
            free_along_n: along,
            free_side_n: 500.0,
            ..Input::default()
        });
        let used = |id| find(&r, id).utilisation.unwrap();
        [
            CheckId::BoltShear,
            CheckId::WallBearing,
            CheckId::FittingBearing,
            CheckId::BoltBending,
            CheckId::BoltCombined,
            CheckId::TubeTearOut,
            CheckId::FittingTearOut,
            CheckId::PullThrough,
            CheckId::NetSection,
        ]
        .map(used)
    };
    let [service, proof, ultimate] = ["service", "proof", "ultimate"].map(|kind| used(kind, 20e3));
    for i in 0..service.len() {
        assert!(proof[i] < service[i], "{i}: {} {}", proof[i], service[i]);
        assert!(ultimate[i] <= proof[i], "{i}: {} {}", ultimate[i], proof[i]);
    }
    // Bearing of the wall: 2.00, 1.8 and nothing.
    assert!((service[1] / ultimate[1] - 2.0).abs() < 1e-12);
    assert!((proof[1] / ultimate[1] - 1.8).abs() < 1e-12);
    // Bending, where the plies bear all over: 1.67, 1.5 and nothing.
    let [service, proof, ultimate] = ["service", "proof", "ultimate"].map(|kind| used(kind, 400e3));
    assert!((service[3] / ultimate[3] - 1.67).abs() < 1e-12);
    assert!((proof[3] / ultimate[3] - 1.5).abs() < 1e-12);
}

/// A chain bracket counts on no friction, but everything that could break is asked.
#[test]
fn a_chain_bracket_is_asked_for_all_its_strengths() {
    for (mount, ids) in [
        ("through-sides", &[CheckId::BoltBending][..]),
        ("from-top", &[CheckId::PullThrough, CheckId::BoltBending]),
    ] {
        let r = report(&Input {
            joint: "chain-bracket".to_owned(),
            mount: mount.to_owned(),
            ..Input::default()
        });
        let always = [
            CheckId::BoltShear,
            CheckId::WallBearing,
            CheckId::FittingBearing,
            CheckId::BoltCombined,
            CheckId::TubeTearOut,
            CheckId::FittingTearOut,
            CheckId::NetSection,
        ];
        for &id in always.iter().chain(ids) {
            let check = find(&r, id);
            assert!(check.utilisation.unwrap() > 0.0 && check.demand.si > 0.0);
            assert_eq!(check.case.unwrap().kind.name(), "ultimate");
        }
        let absent = [CheckId::Slip, CheckId::Loosening, CheckId::BoltFatigue];
        assert!(r.checks.iter().all(|c| !absent.contains(&c.id)));
        assert_eq!(r.fatigue.life, None);
        assert_eq!(r.fatigue.said[0].code, Message::FatigueNothingRepeats);
    }
}

#[test]
fn holes_that_overlap_tear_out_whatever_was_measured() {
    let mut input = plain_joint();
    input.bolts_along = 2.0;
    input.spacing_along_mm = 14.0;
    let r = report(&input);
    for id in [
        CheckId::TubeTearOut,
        CheckId::FittingTearOut,
        CheckId::Spacing,
    ] {
        assert_eq!(find(&r, id).verdict, Verdict::DoesNotHold, "{id:?}");
    }
}

#[test]
fn worn_holes_are_told_from_oversize_ones() {
    let hole = |mm: f64| {
        let r = report(&Input {
            hole_mm: Some(mm),
            ..Input::default()
        });
        let check = find(&r, CheckId::HoleSize);
        (check.verdict, find(&r, CheckId::Slip).factor)
    };
    assert_eq!(hole(14.2875), (Verdict::Holds, 1.50));
    assert_eq!(hole(15.0), (Verdict::Close, 1.76));
    assert_eq!(hole(17.0), (Verdict::DoesNotHold, 1.76));
}

#[test]
fn play_in_the_holes_is_how_far_it_slips() {
    let r = report(&Input {
        hole_mm: Some(14.7),
        fitting_hole_mm: Some(13.7),
        ..Input::default()
    });
    let note = r
        .notes
        .iter()
        .find(|n| n.code == Message::NoteSlipTravel)
        .unwrap();
    // 2.0 mm in the tube, 1.0 mm in the fitting.
    assert!((note.amounts[0].si * 1e3 - 3.0).abs() < 1e-9);
}

#[test]
fn who_is_eaten_follows_the_metals_and_the_salt() {
    let codes = |change: &dyn Fn(&mut Input)| -> Vec<Message> {
        let mut input = Input::default();
        change(&mut input);
        report(&input)
            .notes
            .iter()
            .map(|n| n.code)
            .filter(|code| code.key().starts_with("note-galvanic"))
            .collect()
    };
    let eats = Message::NoteGalvanicSteelEatsAluminium;
    assert!(codes(&|_| ()).contains(&eats));
    assert!(codes(&|_| ()).contains(&Message::NoteGalvanicZincSparesAluminium));
    // 30 to 180 mV: over the harsh limit of 150 only.
    assert!(!codes(&|i| i.exposure = "wet".to_owned()).contains(&eats));
    assert!(codes(&|i| i.exposure = "dry".to_owned()).is_empty());
    let stainless = codes(&|i| i.bolt_finish = "stainless".to_owned());
    assert!(stainless.contains(&Message::NoteGalvanicStainlessEatsAluminium));
    let all_steel = codes(&|i| {
        i.tube_material = "a500-b".to_owned();
        i.bolt_finish = "plain".to_owned();
    });
    assert!(all_steel.is_empty(), "{all_steel:?}");
}

#[test]
fn a_sleeve_is_tight_good_or_loose_on_its_bolt() {
    let fit = |outer: f64| {
        let r = report(&Input {
            support: "loose-sleeve".to_owned(),
            sleeve_outer_mm: Some(outer),
            sleeve_wall_mm: Some(3.0),
            ..Input::default()
        });
        let check = find(&r, CheckId::SleeveFit);
        (check.verdict, check.reason.code)
    };
    assert_eq!(fit(19.0), (Verdict::Holds, Message::SleeveFitTight));
    assert_eq!(fit(20.0), (Verdict::Holds, Message::SleeveFitGood));
    assert_eq!(fit(22.5), (Verdict::Close, Message::SleeveFitLoose));
}

//! Three facts of the trade, common practice without a source: what a dry bolt is tightened to, that a
//! bare tube cannot take it, and that a welded sleeve can. Each with its two answers, for the least strength and for the
//! usual one, and with the property that decides between them.

use calc_core::mechanics::thread::load_at;
use calc_core::mechanics::tightening::torque_for;
use calc_core::outlook::{Metal, Outlook, outlook};
use calc_core::quantity::{InUnits, inch, pound_force_foot};
use calc_core::report::{CheckId, Message, Verdict};
use calc_core::{Input, Report, Scenario, catalog, evaluate, torque_turn};
use outside_checks::repairs36::{MASSES, best, found};

const HALF_TORQUE_LBF_FT: f64 = 50.0;
const FULL_TORQUE_LBF_FT: [f64; 2] = [107.0, 109.0];

/// Face width and depth along the bolt of the 2 × 6 in tube, both ways round.
const ORIENTATIONS: [(f64, f64); 2] = [(50.8, 152.4), (152.4, 50.8)];

fn joint((width, depth): (f64, f64), torque_lbf_ft: f64) -> Input {
    Input {
        tube_width_mm: width,
        tube_depth_mm: depth,
        tube_wall_mm: 3.175,
        tube_material: "6061-t6".into(),
        bolt: "unc-1.2".into(),
        bolt_grade: "sae-8".into(),
        lubrication: "dry".into(),
        torque_nm: Some(pound_force_foot(torque_lbf_ft).si()),
        // The trade speaks of bolts away from an open end.
        end_distance_mm: 300.0,
        // And of one bolt at a time: with the faces to itself.
        spacing_along_mm: 300.0,
        ..Input::default()
    }
}

fn with_sleeve(mut input: Input, welded: &str) -> Input {
    input.support = "through-sleeve".into();
    input.sleeve = "nps-1.2-40".into();
    input.sleeve_material = "6061-t6".into();
    input.sleeve_welded = welded.into();
    input
}

fn report(input: &Input) -> Report {
    evaluate(&Scenario::new(input).unwrap())
}

fn lbf_ft(newton_metres: f64) -> f64 {
    newton_metres / pound_force_foot(1.0).si()
}

/// (a) A dry 1/2-13 Grade 8 bolt is tightened to about 107 lb-ft.
#[test]
fn dry_half_inch_grade_8() {
    let thread = catalog::thread("unc-1.2").unwrap();
    let proof = catalog::bolt_grade("sae-8")
        .unwrap()
        .strength(thread, inch(2.0))
        .unwrap()
        .proof
        .unwrap();
    let torque = torque_for(
        0.20,
        thread.major(),
        load_at(proof, thread.stress_area()) * 0.75,
    );
    let ratio = torque.si() / pound_force_foot(107.0).si();
    assert!(
        (ratio - 1.0).abs() < 0.02,
        "75 % of proof at K 0.20: {ratio:.3} of 107 lb-ft"
    );
}

/// (b) In a bare 6061-T6 tube, 1/8 in wall, 2 × 6 in, a wrench set to 50 lb-ft does not click, either
/// way round. Ours: the curve ends, each face in by 6 % of its width, before that torque.
#[test]
fn bare_tube_does_not_let_the_wrench_click() {
    for way in ORIENTATIONS {
        let input = joint(way, HALF_TORQUE_LBF_FT);
        let curve = torque_turn(&Scenario::new(&input).unwrap());
        let last = curve.points.last().unwrap();
        assert!(curve.at_wanted.is_none(), "{way:?}: clicks");
        assert!(
            lbf_ft(last.torque_nm) < HALF_TORQUE_LBF_FT,
            "{way:?}: {:.1} lb-ft with each face in by {:.1} mm",
            lbf_ft(last.torque_nm),
            last.dent_mm,
        );
        let ends = report(&input).support.clicks_up_to_nm.unwrap();
        assert!(
            (ends / last.torque_nm - 1.0).abs() < 1e-6,
            "{way:?}: {ends} against {last:?}"
        );
    }
}

/// (c) With a 1/2 in schedule 40 aluminium sleeve through the tube, welded at both ends, 50 lb-ft shows
/// nothing to the eye and 107–109 lb-ft is reached with the sleeve just yielding.
///
/// The model does not give this with the strength of a welded sleeve: minimum and typical values for
/// metal next to a weld (15 and 20 ksi) stop short of 50 lb-ft in the shallow tube. It does give it
/// with the strength that the sleeve had before welding, together with what the faces carry beside it.
/// So the assumption that differs is the heat-affected strength: the published values are for metal
/// that was fully softened, which the sleeve of the trade's experience evidently was not. Nothing was
/// adjusted for it; verdicts keep the welded minimum, which is the safe side.
#[test]
fn welded_aluminium_sleeve() {
    for way in ORIENTATIONS {
        let welded = report(&with_sleeve(joint(way, FULL_TORQUE_LBF_FT[0]), "yes")).support;
        let as_welded = lbf_ft(welded.clicks_up_to_nm.unwrap());
        assert!(
            as_welded < 60.0,
            "{way:?}: welded strength alone reaches {as_welded:.0} lb-ft"
        );

        let unsoftened = with_sleeve(joint(way, FULL_TORQUE_LBF_FT[0]), "no");
        let support = report(&unsoftened).support;
        let reached = lbf_ft(support.clicks_up_to_nm.unwrap());
        let [low, high] = FULL_TORQUE_LBF_FT;
        assert!(
            (0.95 * low..1.10 * high).contains(&reached),
            "{way:?}: unsoftened sleeve with the faces reaches {reached:.0} lb-ft",
        );
        assert!(support.likely.limit_n < support.likely.load_at_3pct_of_width_n);

        let half = report(&with_sleeve(joint(way, HALF_TORQUE_LBF_FT), "no"));
        assert!(
            half.tightening.clamp_nominal_n < half.support.least.lasting_dent_from_n,
            "{way:?}: something shows at 50 lb-ft",
        );
    }
}

fn looked(input: &Input) -> Outlook {
    outlook(&Scenario::new(input).unwrap())
}

/// Torque that makes a clamp, with the nut factor of dry threads.
fn torque_lbf_ft(clamp_n: f64) -> f64 {
    lbf_ft(0.20 * 12.7e-3 * clamp_n)
}

fn says(outlook: &Outlook, code: Message) -> bool {
    outlook.said.iter().any(|said| said.code == code)
}

/// (a) The bolt keeps its specified strength in both answers: both want the same torque, and on something solid it is
/// reached with either.
#[test]
fn both_answers_want_the_same_torque() {
    let solid = |torque: f64| Input {
        member: "solid-bar".into(),
        support: "solid".into(),
        tube_material: "a36".into(),
        washer: "wide".into(),
        ..joint(ORIENTATIONS[0], torque)
    };
    let [low, high] = FULL_TORQUE_LBF_FT;
    for torque in [low, high] {
        let outlook = looked(&solid(torque));
        for setting in [outlook.wrench.now, outlook.wrench_usual.now] {
            assert!((lbf_ft(setting.torque_nm) - torque).abs() < 1e-6);
        }
        let wanted = report(&solid(torque)).tightening.clamp_nominal_n;
        assert!(outlook.usual.least_limit_n > wanted);
        assert!(outlook.usual.usual_limit_n > outlook.usual.least_limit_n);
        // What the nut presses on first.
        assert_eq!(outlook.usual.limit_decided_by, Some(Metal::Fitting));
    }
}

/// (b) Bare, neither the least nor the usual strength of the tube stands half the torque. On the narrow face the tube's
/// metal decides how far below; the wide one bends before it yields, and no metal decides: its wall is too thin.
#[test]
fn neither_answer_lets_a_bare_tube_take_half_the_torque() {
    let decides = [Some(Metal::Member), None];
    for (way, metal) in ORIENTATIONS.into_iter().zip(decides) {
        let outlook = looked(&joint(way, HALF_TORQUE_LBF_FT));
        let usual = &outlook.usual;
        assert_eq!(
            [usual.least, usual.usual],
            [Verdict::DoesNotHold; 2],
            "{way:?}"
        );
        let [least, more] = [usual.least_limit_n, usual.usual_limit_n].map(torque_lbf_ft);
        assert!(
            0.0 < least && least < more && more < HALF_TORQUE_LBF_FT,
            "{way:?}: {least:.1} and {more:.1} lb-ft"
        );
        assert_eq!(usual.limit_decided_by, metal, "{way:?}");
        let report = report(&joint(way, HALF_TORQUE_LBF_FT));
        let clamp = report.check(CheckId::Clamp).unwrap();
        let gives = [Message::LimitFace1pct, Message::LimitWasherDishes];
        assert!(gives.contains(&clamp.reason.code), "{way:?}: {clamp:?}");
        assert_eq!(usual.unsoftened_reaches_n, None);
    }
}

/// (c) The welded sleeve: with the least and with the usual strength of softened metal it stops short of the torque,
/// had the weld softened nothing it would take what the trade sees. The ring at its ends decides, and that is said.
#[test]
fn the_softened_ends_decide_what_a_welded_sleeve_takes() {
    for way in ORIENTATIONS {
        let input = with_sleeve(joint(way, FULL_TORQUE_LBF_FT[0]), "yes");
        let outlook = looked(&input);
        let usual = &outlook.usual;
        assert_eq!(usual.least, Verdict::DoesNotHold, "{way:?}");
        let limits = [
            usual.least_limit_n,
            usual.usual_limit_n,
            usual.unsoftened_reaches_n.unwrap(),
        ];
        let [least, more, unsoftened] = limits.map(torque_lbf_ft);
        let told = format!("{way:?}: {least:.1}, {more:.1}, {unsoftened:.1} lb-ft");
        assert!(least < more && more < HALF_TORQUE_LBF_FT, "{told}");
        let [low, high] = FULL_TORQUE_LBF_FT;
        // Of the wide face, outside what was checked, nothing counts here; the runs in `reference/fe_sleeve` give 87 to 94.
        assert!((0.75 * low..1.1 * high).contains(&unsoftened), "{told}");
        assert_eq!(usual.limit_decided_by, Some(Metal::SoftenedPart), "{told}");
        assert!(says(&outlook, Message::UsualSoftened), "{:?}", outlook.said);
        assert!(says(&outlook, Message::DecidesSoftenedPart));
    }
}

/// The trade's own joint is not left without an answer: a repair that holds when it is judged again, or the one that
/// comes nearest with what still stands against it.
#[test]
fn the_trades_joint_gets_an_answer_at_every_mass() {
    for mass in MASSES {
        let input = Input {
            trailer_mass_kg: mass,
            torque_nm: None,
            spacing_along_mm: 90.0,
            ..joint(ORIENTATIONS[0], FULL_TORQUE_LBF_FT[0])
        };
        let found = found(&input);
        match (best(&found), &found.nearest) {
            (Some(repair), _) => {
                assert_eq!(report(&repair.input).verdict, repair.verdict, "{mass}");
            }
            (None, Some(near)) => {
                let again = report(&near.input);
                assert_eq!(again.verdict, near.verdict, "{mass}");
                assert_eq!(again.weakest, near.check, "{mass}");
            }
            (None, None) => panic!("{mass}: no answer"),
        }
    }
}

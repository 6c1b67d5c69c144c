//! Three facts of the trade, common practice without a source: what a dry bolt is tightened to, that a
//! bare tube cannot take it, and that a welded sleeve can.

use calc_core::mechanics::thread::load_at;
use calc_core::mechanics::tightening::torque_for;
use calc_core::quantity::{InUnits, inch, pound_force_foot};
use calc_core::{Input, Report, Scenario, catalog, evaluate, torque_turn};

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

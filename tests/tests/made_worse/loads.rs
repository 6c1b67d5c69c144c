//! Worse loads and conditions: heavier, longer arms, gaps, scatter, heat, threads that nobody knows, welds.

use super::*;
use calc_core::catalog::load_rules;

#[test]
fn more_mass() {
    law(
        nothing,
        |input, _, times| {
            input.trailer_mass_kg *= times;
            input.trailer_mass_kg <= 4500.0
        },
        |before, after| never_better(before, after, &[]),
    );
}

/// Forces along and upright that come with one sign each may cancel about the bolts: those of the hitch test, and
/// of a chain, which pulls forward only, with its eye above.
fn both_ways(input: &Input) -> bool {
    match input.joint.as_str() {
        "coupler" => input.load_rule != "hitch-test",
        "chain-bracket" => input.ball_below_mm >= 0.0,
        _ => false,
    }
}

/// The checks that braking or pulling in a bend does not decide: of its two pushes one can turn the bolts against the other, and
/// a longer arm then asks less of them.
fn apart_from_bends(report: &Report) -> Report {
    let mut report = report.clone();
    report.checks.retain(|check| {
        let case = check.case.map(|governing| governing.case);
        !matches!(
            case,
            Some(
                CaseName::BrakingInABend
                    | CaseName::BrakingInABendAfterABump
                    | CaseName::PullingInABend
                    | CaseName::PullingInABendAfterABump
            )
        )
    });
    report
}

#[test]
fn a_longer_arm() {
    law(
        nothing,
        |input, _, times| {
            input.ball_ahead_mm *= times;
            input.ball_ahead_mm <= 1500.0 && both_ways(input)
        },
        |before, after| never_better(&apart_from_bends(before), after, &[]),
    );
}

/// With the load in the plane of the faces or where nobody said how far beside them, so that nothing cancels.
#[test]
fn a_ball_farther_below_or_above() {
    law(
        |input| input.load_offset_mm = None,
        |input, _, times| {
            input.ball_below_mm *= times;
            // From the top the middle of the member lies below the faces: what comes down to it comes nearer.
            let nearer = input.mount == "from-top" && input.ball_below_mm > 0.0;
            input.ball_below_mm.abs() <= 500.0 && !nearer && both_ways(input)
        },
        |before, after| never_better(&apart_from_bends(before), after, &[]),
    );
}

/// With the eye under the middle of the bolts and in the plane of the faces, so that nothing cancels.
#[test]
fn a_longer_hanger() {
    law(
        |input| {
            input.joint = "spring-hanger".into();
            input.load_offset_mm = None;
            input.hanger_offset_mm = 0.0;
        },
        |input, _, times| {
            input.hanger_height_mm *= times;
            input.hanger_height_mm <= 600.0
        },
        |before, after| never_better(&apart_from_bends(before), after, &[]),
    );
}

#[test]
fn more_gap() {
    law(
        // The strength of a Grade 2 bolt depends on its length, and what is asked of it by its share of that.
        |input| {
            if input.bolt_grade == "sae-2" {
                input.bolt_grade = "sae-5".into();
            }
        },
        |input, s, times| {
            input.fitting_gap_mm = Some(millimetres(s.fitting.gap) + 5.0 * (times - 1.0));
            true
        },
        // A longer bolt is springier: it takes less of pull and heat.
        |before, after| never_better(before, after, &[CheckId::BoltService]),
    );
}

#[test]
fn air_in_place_of_packing() {
    law(
        |input| {
            input.gap_filling = "packing".into();
            input.fitting_gap_mm = Some(input.fitting_gap_mm.unwrap_or(3.0));
        },
        |input, _, _| {
            input.gap_filling = "air".into();
            true
        },
        |before, after| never_better(before, after, &[]),
    );
}

/// Alone, so that nothing cancels.
#[test]
fn more_force_to_the_side() {
    law(
        |input| {
            input.joint = "free".into();
            input.free_side_n = input.free_side_n.abs().max(100.0);
            input.free_along_n = 0.0;
            input.free_up_n = 0.0;
            input.free_about_along_nm = 0.0;
            input.free_about_side_nm = 0.0;
            input.free_about_up_nm = 0.0;
        },
        |input, _, times| {
            input.free_side_n *= times;
            true
        },
        |before, after| never_better(before, after, &[]),
    );
}

#[test]
fn more_scatter() {
    law(
        nothing,
        |input, s, times| {
            input.scatter_share = Some((s.tightening.scatter * times).min(0.6));
            true
        },
        |before, after| never_better(before, after, &[]),
    );
}

#[test]
fn more_heat_and_cold() {
    law(
        nothing,
        |input, _, times| {
            input.temperature_swing_k *= times;
            input.temperature_swing_k <= 100.0
        },
        |before, after| never_better(before, after, &[]),
    );
}

/// The same torque on threads that nobody knows.
#[test]
fn unknown_threads() {
    law(
        |input| input.nut_factor = None,
        |input, s, _| {
            input.torque_nm = Some(evaluate(s).tightening.torque_nm);
            input.lubrication = "unknown".into();
            true
        },
        |before, after| never_better(before, after, &[]),
    );
}

/// Left out: what a softer stack loses less of.
#[test]
fn a_weld_near() {
    law(
        |input| input.weld_near = "no".into(),
        |input, _, _| {
            input.weld_near = "yes".into();
            true
        },
        // A softened leg or fitting yields sooner, and then hands less prying on: its own check has it.
        |before, after| {
            let except = [
                &LESS_IS_LOST[..],
                &[
                    CheckId::BoltCombined,
                    CheckId::BoltFatigue,
                    CheckId::FacePull,
                    CheckId::PullThrough,
                ],
            ]
            .concat();
            never_better(before, after, &except)
        },
    );
}

/// Below the least share that is counted less on the ball is no relief.
#[test]
fn less_on_the_ball() {
    law(
        |input| {
            input.joint = "coupler".into();
            input.tongue_share *= 0.2;
            // Above 3.5 t the rule's vertical value stands on what rests there as typed.
            if input.load_rule == "un-r55" {
                input.trailer_mass_kg = input.trailer_mass_kg.min(3500.0);
            }
        },
        |input, _, times| {
            input.tongue_share /= times;
            true
        },
        |before, after| never_better(before, after, &[]),
    );
}

/// A published rule is asked beside the road's own, whatever the joint.
#[test]
fn any_published_rule() {
    let rules = load_rules();
    law(
        |input| input.load_rule = "road-service".into(),
        |input, _, times| {
            let at = usize::try_from(times.to_bits() >> 8).unwrap_or(0) % rules.len();
            input.load_rule = rules[at].id().into();
            input.load_rule != "road-service"
        },
        |before, after| never_better(before, after, &[]),
    );
}

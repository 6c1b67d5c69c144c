//! What makes a joint worse never makes an answer better.
//!
//! Ten thousand joints by default; `PROPTEST_CASES` sets another number.

use crate::law::{check, compare, compare_made, not_worse};
use crate::made_worse::moves;
use calc_core::Scenario;
use calc_core::report::{Check, CheckId, Report, Verdict};
use calc_core::scenario::{JointKind, SupportKind};
use proptest::prelude::*;

/// No verdict is better, of these checks or of the joint; what falls away counts as it stood.
fn no_better(before: &Report, after: &Report, ids: &[CheckId]) -> Result<(), TestCaseError> {
    for &id in ids {
        let (Some(then), Some(now)) = (check(before, id), check(after, id)) else {
            continue;
        };
        prop_assert!(
            now.verdict >= then.verdict,
            "{id:?}: {:?} → {:?}",
            then.verdict,
            now.verdict
        );
    }
    Ok(())
}

/// Share used of a joint that slips so surely that no digit of it matters.
const SLIPS_BY_FAR: f64 = 5.0;

#[test]
fn a_load_farther_beside_the_faces_is_never_better() {
    compare_made(
        |input, times| input.load_offset_mm = Some(30.0 * (times - 1.0)),
        |input, _, times| {
            input.load_offset_mm = Some(30.0 * (times - 1.0) + 40.0 * (times - 1.0));
            true
        },
        |before, after, _| {
            let pulled = [
                CheckId::Slip,
                CheckId::Loosening,
                CheckId::Opening,
                CheckId::BoltService,
                CheckId::BoltCombined,
                CheckId::NetSection,
                CheckId::PullThrough,
                CheckId::FittingFlange,
                CheckId::MemberFlange,
            ];
            // What turns the bracket presses at one end what it takes at the other: of a joint that slips several times
            // over, the last digits move either way.
            let slips = |c: &Check| c.utilisation.is_none_or(|used| used > SLIPS_BY_FAR);
            let by_far = check(before, CheckId::Slip).is_some_and(slips);
            let held = if by_far { &pulled[2..] } else { &pulled };
            not_worse(after, before, held)?;
            no_better(before, after, &pulled)?;
            prop_assert!(after.verdict >= before.verdict);
            Ok(())
        },
    );
}

#[test]
fn a_thinner_fitting_is_never_better() {
    compare(
        |input, _, times| {
            input.fitting_thickness_mm /= times;
            input.fitting_thickness_mm > 0.0
        },
        |before, after| {
            let ids = [
                CheckId::FittingFlange,
                CheckId::FittingBearing,
                CheckId::FittingTearOut,
                CheckId::BlockShear,
            ];
            no_better(before, after, &ids)
        },
    );
}

#[test]
fn a_bolt_less_along_is_never_better() {
    compare(
        // Bolts that share a face, and holes that all but meet, leave so little to each that one less leaves the
        // others more than it took.
        |input, s, _| {
            input.bolts_along -= 1.0;
            let b = &s.bolting;
            let on_face = matches!(s.support, SupportKind::Bare | SupportKind::Spreader);
            let apart = !on_face || b.spacing_along >= s.tube.width;
            input.bolts_along >= 1.0 && b.spacing_along > b.hole * 2.5 && apart
        },
        |before, after| {
            let ids = [
                CheckId::Slip,
                CheckId::Loosening,
                CheckId::Opening,
                CheckId::BoltService,
                CheckId::BoltShear,
                CheckId::WallBearing,
            ];
            // A single one along has no lever about the middle and that of the fitting's edge, however far.
            if after.input.bolts_along > 1.0 {
                return not_worse(after, before, &ids);
            }
            if after.loads.bolts.len() > 1 {
                return Ok(());
            }
            // What turns one bolt is taken by nothing, and asks for no force.
            let best = match after.loads.joint {
                JointKind::Free => Verdict::Holds,
                // Shackled at its bolt a chain turns nothing; its nut has to be locked.
                JointKind::ChainBracket => Verdict::Close,
                _ => Verdict::NotChecked,
            };
            prop_assert!(after.verdict >= best);
            Ok(())
        },
    );
}

/// Of a bolt that crosses a hollow: neither its share nor its verdict, where both plies bear, and as many threads bend.
fn bends_no_sooner(before: &Report, after: &Report) -> Result<(), TestCaseError> {
    let bears =
        |id| check(before, id).is_none_or(|c| c.utilisation.is_some_and(|used| used <= 1.0));
    let of = |report| check(report, CheckId::BoltBending).map(|c| c.capacity.si);
    if of(before) != of(after) || !bears(CheckId::FittingBearing) || !bears(CheckId::WallBearing) {
        return Ok(());
    }
    not_worse(before, after, &[CheckId::BoltBending]).map_err(|what| {
        let text = [before, after].map(|r| moves(&r.input)).join("\n");
        TestCaseError::fail(format!("{what}\n{text}"))
    })
}

/// Two cheeks on a tube in which a bolt can bend. A sleeve through the walls bears otherwise than they.
fn in_a_hollow(input: &mut calc_core::Input) {
    input.member = "rectangular-tube".into();
    input.mount = "through-sides".into();
    if !["bare", "loose-sleeve"].contains(&input.support.as_str()) {
        input.support = "loose-sleeve".into();
    }
    input.gap_filling = "packing".into();
}

#[test]
fn thicker_cheeks_never_bend_the_bolt() {
    compare_made(
        |input, _| in_a_hollow(input),
        |input, _, times| {
            input.fitting_thickness_mm *= times;
            input.fitting_thickness_mm > 0.0
        },
        |before, after, _| bends_no_sooner(before, after),
    );
}

#[test]
fn a_thicker_wall_never_bends_the_bolt() {
    compare_made(
        |input, _| in_a_hollow(input),
        |input, s, times| {
            input.tube_wall_mm *= times;
            // The walls of one fitting are nearer for it: by a thousandth more for the near one.
            s.bolting.two_cheeks
        },
        |before, after, _| bends_no_sooner(before, after),
    );
}

/// Beside a bar, a block or a hollow: across packing nothing holds the bolt straight. What is farther apart asks more of
/// it, and leaves less of its strength in shear; that it bends is asked wherever it is sheared.
#[test]
fn thicker_packing_is_never_better() {
    compare_made(
        |input, times| {
            input.gap_filling = "packing".into();
            input.fitting_gap_mm = Some(40.0 * (times - 1.0));
        },
        |input, s, times| {
            input.fitting_gap_mm = Some(40.0 * (times - 1.0) + 20.0 * (times - 1.0));
            s.fitting.apart
        },
        |before, after, times| {
            let Some(shear) = check(after, CheckId::BoltShear) else {
                return Ok(());
            };
            let lever = 60e-3 * (times - 1.0);
            let bends = check(after, CheckId::BoltBending);
            // A single force in a plane, bent over no less than the packing.
            let planes = Scenario::new(&after.input).map_or(2.0, |s| s.bolting.slip_planes());
            prop_assert!(
                bends.is_some_and(|c| c.case != shear.case
                    || c.demand.si >= shear.demand.si / planes * lever * 0.999),
                "not asked: {}",
                moves(&after.input)
            );
            no_better(
                before,
                after,
                &[
                    CheckId::BoltShear,
                    CheckId::BoltBending,
                    CheckId::BoltCombined,
                ],
            )
        },
    );
}

/// A bar has an edge beside its bolts, and less metal across.
#[test]
fn a_narrower_bar_is_never_better() {
    compare_made(
        |input, _| input.member = "solid-bar".into(),
        |input, _, times| {
            input.tube_width_mm /= times;
            true
        },
        |before, after, _| {
            let ids = [
                CheckId::TubeTearOut,
                CheckId::MemberEdge,
                CheckId::NetSection,
            ];
            no_better(before, after, &ids)?;
            not_worse(after, before, &ids)
        },
    );
}

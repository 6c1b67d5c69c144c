//! What makes a joint worse never makes an answer better.
//!
//! Ten thousand joints by default; `PROPTEST_CASES` sets another number.

use crate::law::{check, compare, compare_made, not_worse};
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

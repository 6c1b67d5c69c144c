//! What changes beside the repair itself, and what that asks for.

use super::{TighteningPlan, said};
use crate::inspection::flatness;
use crate::quantity::InUnits;
use crate::repair::work::Jobs;
use crate::report::{Said, say};
use crate::scenario::unknown::is_unknown;
use crate::scenario::{Field, JointKind, Scenario};
use crate::support;

pub(super) fn list(
    before: &Scenario,
    after: &Scenario,
    jobs: &Jobs,
    tightening: &TighteningPlan,
    takes_fitting_hole: bool,
) -> Vec<Said> {
    let mut all = first(before, jobs);
    let (was, is) = (&before.bolting, &after.bolting);
    if is.along > was.along {
        all.push(said(say::CautionFittingReaches, [is.spacing_along.si()]));
        let moved = |from: f64, to: f64, sentence| {
            ((from - to).abs() > 1e-6).then(|| said(sentence, [to, from]))
        };
        let (from, to) = (&before.input, &after.input);
        all.extend(match after.loads.joint {
            JointKind::SpringHanger => moved(
                from.hanger_offset_mm * 1e-3,
                to.hanger_offset_mm * 1e-3,
                say::EffectHangerOffset,
            ),
            _ => moved(
                from.ball_ahead_mm * 1e-3,
                to.ball_ahead_mm * 1e-3,
                say::EffectBallAhead,
            ),
        });
    }
    if is.rows > was.rows {
        all.push(said(say::CautionFittingWide, [is.spacing_across.si()]));
    }
    if jobs.new_bolts > jobs.added {
        let unknown = |s: &Scenario| is_unknown(s.tightening.lubrication.id());
        let why = if jobs.damage.has(Field::FoundSpin) {
            say::EffectSpunBolts
        } else if jobs.damage.has(Field::FoundOval) {
            say::EffectWornBolts
        } else if unknown(before) && !unknown(after) {
            say::EffectKnownThreads
        } else if jobs.damage.stretched() {
            say::EffectStretchedBolts
        } else {
            say::EffectNewBolts
        };
        all.push(said(why, [tightening.bolt_stock.si]));
    }
    if takes_fitting_hole {
        all.push(said(
            say::EffectFittingHoleTaken,
            [before.fitting.hole.si()],
        ));
    }
    if jobs.in_fitting.opened > 0 {
        let holes = [before, after].map(|s| s.fitting.hole.si());
        all.push(said(say::EffectFittingHole, holes));
    }
    // Plates lie between fitting and face.
    let plates = support::of(after).grip(after).thickness.si();
    let had = support::of(before).grip(before).thickness.si();
    if after.fitting.thickness.si() > 0.0 && plates > had + 1e-6 {
        let more = plates - had;
        all.push(if after.member.is_open() {
            said(say::EffectPlateUnderNut, [more])
        } else if is.two_cheeks {
            said(say::EffectCheeksApart, [more])
        } else {
            said(say::EffectFittingOut, [after.spreader.thickness.si()])
        });
        let under_hanger = !is.two_cheeks && !after.member.is_open();
        if after.loads.joint == JointKind::SpringHanger && under_hanger {
            all.push(said(
                say::EffectHangerPacking,
                [after.spreader.thickness.si()],
            ));
        }
    }
    if let Some(seats) = jobs.seats.as_ref().filter(|seats| !seats.is_bought())
        && after.fitting.thickness.si() > 0.0
    {
        all.push(said(say::EffectSaddlesOut, [seats.middle]));
    }
    all
}

/// What the damage, and what is there already, ask for before anything else.
fn first(before: &Scenario, jobs: &Jobs) -> Vec<Said> {
    let mut all = Vec::new();
    if jobs.sleeves_out > 0 {
        all.push(said(say::EffectSleevesOut, []));
    }
    if jobs.dished > 0 {
        let flat = flatness(before.tube.width.si());
        all.push(said(say::EffectFaceFlat, [flat]));
    }
    if jobs.damage.has_slid() {
        all.push(said(say::EffectFretted, []));
    }
    all
}

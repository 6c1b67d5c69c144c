//! What to take care of.

use super::said;
use crate::catalog::{Family, Treatment};
use crate::repair::work::Jobs;
use crate::report::{Said, say};
use crate::scenario::{BoltFinish, JointKind, Mount, Scenario};
use crate::support;

/// Always some: nobody works under a trailer that can move, and no page replaces a trained eye.
pub(super) fn list(before: &Scenario, after: &Scenario, jobs: &Jobs) -> Vec<Said> {
    let mut all = vec![said(say::CautionSupportTrailer, [])];
    if after.loads.joint == JointKind::SpringHanger {
        all.push(said(say::CautionSpringLoad, []));
        all.push(said(say::CautionHangerLine, []));
        let in_face = jobs.in_tube.all() > 0 || jobs.welds > 0;
        if in_face && after.bolting.mount == Mount::FromTop {
            all.push(said(say::CautionHangerFace, []));
        }
    }
    if jobs.welds > 0 {
        all.push(said(say::CautionQualifiedWelder, []));
        all.push(said(say::CautionZincFumes, []));
        all.push(said(say::CautionFire, []));
        all.push(said(say::CautionBattery, []));
        if after.tube.material.family() == Family::Aluminium {
            all.push(said(say::CautionAluminiumWeld, []));
        }
    }
    if jobs.surfaces > 0 {
        all.push(said(say::CautionBareFaces, []));
        if jobs.blasted {
            all.push(said(say::CautionBlasting, []));
        }
    }
    // Faces that are cleaned or have slid, with what is on them.
    let dusty = before.bolting.finish == BoltFinish::Zinc
        || before.tightening.surface.treatment() == Treatment::Coated;
    if jobs.surfaces + jobs.fretted > 0 && dusty {
        all.push(said(say::CautionDust, []));
    }
    if jobs.new_bolts > 0 {
        all.push(said(say::CautionBoltMarks, []));
    }
    if jobs.seats.is_some() {
        all.push(said(say::CautionFittedWasher, []));
    }
    let support = support::of(after);
    let other_metal =
        |part: support::PartMetal| part.material.family() != after.tube.material.family();
    if support.metal(after).is_some_and(other_metal) {
        all.push(said(say::CautionTwoMetals, []));
    }
    let aluminum = |family| family == Family::Aluminium;
    let members = [after.tube.material, after.fitting.material];
    if members.iter().any(|m| aluminum(m.family())) {
        all.push(said(say::CautionSteelOnAluminum, []));
    }
    let rusts = |part: support::PartMetal| part.material.family() == Family::Steel;
    let inside = support.holds_water() && support.metal(after).is_some_and(rusts);
    let bared =
        inside || jobs.holes() > 0 || jobs.welds > 0 || jobs.dished > 0 || jobs.sleeves_out > 0;
    if bared && (inside || members.iter().any(|m| m.family() == Family::Steel)) {
        all.push(said(say::CautionPaintAgain, []));
    }
    if support.holds_water() {
        all.push(said(say::CautionDrain, []));
    }
    if !after.not_known.is_empty() {
        all.push(said(say::CautionNotKnown, []));
    }
    all.push(said(say::CautionEyes, []));
    all.push(said(say::CautionCracks, []));
    all.push(said(say::CautionLocalCodes, []));
    all
}

//! What to take care of.

use super::said;
use crate::catalog::Family;
use crate::quantity::InUnits;
use crate::repair::work::Jobs;
use crate::report::{Said, say};
use crate::scenario::{BoltFinish, JointKind, Scenario, SupportKind};

/// Always some: nobody works under a trailer that can move, and no page replaces a trained eye.
pub(super) fn list(before: &Scenario, after: &Scenario, jobs: &Jobs) -> Vec<Said> {
    let mut all = vec![said(say::CautionSupportTrailer, [])];
    if after.loads.joint == JointKind::SpringHanger {
        all.push(said(say::CautionSpringLoad, []));
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
        if before.bolting.finish == BoltFinish::Zinc {
            all.push(said(say::CautionDust, []));
        }
    }
    if jobs.new_bolts > 0 {
        all.push(said(say::CautionBoltMarks, []));
    }
    if after.bolting.along > before.bolting.along {
        let behind = after.bolting.spacing_along.si();
        all.push(said(say::CautionFittingReaches, [behind]));
    }
    if after.bolting.rows > before.bolting.rows {
        let beside = after.bolting.spacing_across.si();
        all.push(said(say::CautionFittingWide, [beside]));
    }
    if after.member.shaped_washer && !before.member.shaped_washer {
        all.push(said(say::CautionFittedWasher, []));
    }
    let inside = match after.support {
        SupportKind::LooseSleeve | SupportKind::ThroughSleeve => Some(after.sleeve.material),
        SupportKind::SolidInsert => Some(after.insert_material),
        SupportKind::Spreader => Some(after.spreader.material),
        SupportKind::Bare | SupportKind::Solid => None,
    };
    if inside.is_some_and(|m| m.family() != after.tube.material.family()) {
        all.push(said(say::CautionTwoMetals, []));
    }
    if inside.is_some() && after.support != SupportKind::Spreader {
        all.push(said(say::CautionDrain, []));
    }
    all.push(said(say::CautionEyes, []));
    all.push(said(say::CautionCracks, []));
    all.push(said(say::CautionLocalCodes, []));
    all
}

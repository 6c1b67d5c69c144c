//! What to take care of.

use super::said;
use crate::catalog::Family;
use crate::quantity::InUnits;
use crate::repair::work::Jobs;
use crate::report::Said;
use crate::scenario::{BoltFinish, JointKind, Scenario};
use crate::support;

/// Always some: nobody works under a trailer that can move, and no page replaces a trained eye.
pub(super) fn list(before: &Scenario, after: &Scenario, jobs: &Jobs) -> Vec<Said> {
    let mut all = vec![said("caution-support-trailer", &[])];
    if after.loads.joint == JointKind::SpringHanger {
        all.push(said("caution-spring-load", &[]));
    }
    if jobs.welds > 0 {
        all.push(said("caution-qualified-welder", &[]));
        all.push(said("caution-zinc-fumes", &[]));
        all.push(said("caution-fire", &[]));
        all.push(said("caution-battery", &[]));
        if after.tube.material.family() == Family::Aluminium {
            all.push(said("caution-aluminium-weld", &[]));
        }
    }
    if jobs.surfaces > 0 {
        all.push(said("caution-bare-faces", &[]));
        if before.bolting.finish == BoltFinish::Zinc {
            all.push(said("caution-dust", &[]));
        }
    }
    if jobs.new_bolts > 0 {
        all.push(said("caution-bolt-marks", &[]));
    }
    if after.bolting.along > before.bolting.along {
        let behind = after.bolting.spacing_along.si();
        all.push(said("caution-fitting-reaches", &[behind]));
    }
    if after.bolting.rows > before.bolting.rows {
        let beside = after.bolting.spacing_across.si();
        all.push(said("caution-fitting-wide", &[beside]));
    }
    if after.member.shaped_washer && !before.member.shaped_washer {
        all.push(said("caution-fitted-washer", &[]));
    }
    let support = support::of(after);
    let other_metal =
        |part: support::PartMetal| part.material.family() != after.tube.material.family();
    if support.metal(after).is_some_and(other_metal) {
        all.push(said("caution-two-metals", &[]));
    }
    if support.holds_water() {
        all.push(said("caution-drain", &[]));
    }
    all.push(said("caution-eyes", &[]));
    all.push(said("caution-cracks", &[]));
    all.push(said("caution-local-codes", &[]));
    all
}

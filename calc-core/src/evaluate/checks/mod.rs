//! The checks: demand against capacity, the verdict, the reason and the working. One file a question.

mod bolt;
mod clamp;
mod fatigue;
mod geometry;
mod loosening;
mod pin;
mod ply;
mod section;
mod slip;
mod slipped;

use super::grip::Grip;
use super::loads::Service;
use super::support::Stands;
use super::tighten::Tight;
use super::working::Working;
use crate::mechanics::bearing::GAMMA_Q;
use crate::quantity::Dimension;
use crate::report::{Amount, Check, CheckId, Said, Verdict};
use crate::scenario::Scenario;

/// Factor on separation of the faces. An assumption: as for slip.
const OMEGA_OPENING: f64 = 1.50;

/// Everything a check needs.
struct Joint<'a> {
    s: &'a Scenario,
    tight: &'a Tight,
    stands: &'a Stands,
    grip: &'a Grip,
    service: &'a Service,
    working: bool,
}

pub(crate) fn all(
    s: &Scenario,
    tight: &Tight,
    stands: &Stands,
    grip: &Grip,
    service: &Service,
    working: bool,
) -> Vec<Check> {
    let joint = Joint {
        s,
        tight,
        stands,
        grip,
        service,
        working,
    };
    let mut checks = Vec::with_capacity(22);
    checks.push(joint.clamp());
    checks.push(joint.bolt_tightening());
    checks.extend(joint.grade());
    checks.push(joint.slip());
    checks.extend(joint.opening());
    let gripping = holds_so_far(&checks);
    checks.extend(joint.bolt_fatigue(gripping));
    checks.push(joint.bolt_shear());
    checks.extend(joint.wall_bearing());
    checks.extend(joint.fitting_bearing());
    checks.extend(joint.bolt_bending());
    checks.extend(joint.bolt_combined());
    checks.push(joint.tube_tear_out());
    checks.extend(joint.fitting_tear_out());
    checks.extend(joint.block_shear());
    checks.push(joint.net_section());
    checks.extend(joint.pull_through());
    checks.push(joint.loosening());
    checks.extend(joint.end_distance());
    checks.extend(joint.fitting_edge());
    checks.extend(joint.spacing());
    checks.extend(joint.hole_size());
    checks.push(joint.washer_cover());
    checks.extend(joint.sleeve_fit());
    checks
}

/// Whether the joint grips and stays shut, so that fatigue can be spoken of at all.
pub(super) fn holds_so_far(checks: &[Check]) -> bool {
    checks
        .iter()
        .filter(|check| matches!(check.id, CheckId::Slip | CheckId::Opening))
        .all(|check| matches!(check.verdict, Verdict::Holds | Verdict::Close))
}

const fn amount(si: f64, dimension: Dimension) -> Amount {
    Amount::new(si, dimension)
}

/// One published way to a strength, with the factor that goes with it.
#[derive(Clone, Copy)]
struct Way {
    /// Strength in the unit of the check.
    capacity: f64,
    factor: f64,
    factor_is: &'static str,
}

impl Way {
    /// Allowable strength: a factor of safety on a nominal strength.
    const fn allowable(capacity: f64, omega: f64) -> Self {
        Self {
            capacity,
            factor: omega,
            factor_is: "factor-strength",
        }
    }

    /// Design resistance: a factor on the service load.
    const fn design(capacity: f64) -> Self {
        Self {
            capacity,
            factor: GAMMA_Q,
            factor_is: "factor-load",
        }
    }

    /// The one that allows less.
    fn safer(self, other: Self) -> Self {
        if other.capacity / other.factor < self.capacity / self.factor {
            other
        } else {
            self
        }
    }
}

/// A check of forces with the usual words for its verdict.
fn of_forces(
    id: CheckId,
    (demand, capacity): (f64, f64),
    (factor, factor_is): (f64, &'static str),
    reason: Said,
    working: Working,
) -> Check {
    let utilisation = factor * demand / capacity.max(1e-9);
    Check {
        id,
        verdict: Verdict::of(utilisation),
        demand: amount(demand, Dimension::Force),
        capacity: amount(capacity, Dimension::Force),
        factor,
        factor_is,
        utilisation: Some(utilisation),
        reason,
        steps: working.finish(),
    }
}

fn said(code: &'static str, amounts: &[(f64, Dimension)]) -> Said {
    Said {
        code,
        amounts: amounts.iter().map(|&(si, d)| amount(si, d)).collect(),
    }
}

impl Joint<'_> {
    fn sheet(&self) -> Working {
        Working::new(self.working)
    }
}

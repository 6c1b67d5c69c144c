//! The checks: demand against capacity, the verdict, the reason and the working. One file a question.

mod bolt;
mod clamp;
mod demand;
mod geometry;
mod pull;
mod slip;
mod slipped;

use super::grip::Grip;
use super::loads::{Cases, Service};
use super::support::Stands;
use super::tighten::Tight;
use super::working::Working;
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
    cases: &'a Cases,
    /// The case that slips first; `None` where no case counts on friction.
    service: Option<&'a Service>,
    working: bool,
}

pub(crate) fn all(
    s: &Scenario,
    (tight, stands, grip): (&Tight, &Stands, &Grip),
    (cases, service): (&Cases, Option<&Service>),
    working: bool,
) -> Vec<Check> {
    let joint = Joint {
        s,
        tight,
        stands,
        grip,
        cases,
        service,
        working,
    };
    let mut checks = Vec::with_capacity(12);
    checks.push(joint.clamp());
    checks.push(joint.bolt_tightening());
    checks.extend(joint.grade());
    checks.extend(joint.slip());
    checks.extend(joint.opening());
    checks.extend(joint.bolt_service());
    checks.extend(joint.bolt_shear());
    checks.extend(joint.bolt_pull());
    checks.extend(joint.fitting_flange());
    checks.extend(joint.wall_bearing());
    checks.extend(joint.end_distance());
    checks
}

const fn amount(si: f64, dimension: Dimension) -> Amount {
    Amount::new(si, dimension)
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
        case: None,
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

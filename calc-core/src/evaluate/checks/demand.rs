//! Which load case decides a question, and with which factor.

use super::{Joint, OMEGA_OPENING, said};
use crate::catalog::LoadKind;
use crate::evaluate::loads::{Spread, friction_factor};
use crate::mechanics::prying::{Flange, Pried, t_stub};
use crate::quantity::Dimension::Moment;
use crate::quantity::{Force, InUnits, newton};
use crate::report::{Check, Verdict};

/// The governing demand of a question.
#[derive(Clone, Copy)]
pub(super) struct Demand<'a> {
    pub(super) spread: &'a Spread,
    /// Demand on the hardest used bolt, N.
    pub(super) force: f64,
    pub(super) factor: f64,
    pub(super) factor_is: &'static str,
}

impl Demand<'_> {
    /// A check with this case's name.
    pub(super) fn name(&self, check: Check) -> Check {
        check.in_case(self.spread.case.case, self.spread.case.kind)
    }
}

impl<'a> Joint<'a> {
    /// Demand on a strength, over the cases of all kinds. A service case has the factor of allowable
    /// strength, a proof case the factor that brings the strength down to yield, an ultimate case 1.
    ///
    /// `None` where no case asks for anything.
    pub(super) fn strength(
        &self,
        (service, proof): (f64, f64),
        measure: impl Fn(&Spread) -> f64,
    ) -> Option<Demand<'a>> {
        let factor = |kind| match kind {
            LoadKind::Service => (service, "factor-strength"),
            LoadKind::Proof => (proof.max(1.0), "factor-yield"),
            LoadKind::Ultimate => (1.0, "factor-breaking"),
        };
        let (spread, _) = self.cases.governing(|spread| {
            let force = measure(spread);
            (force > 0.0).then(|| factor(spread.case.kind).0 * force)
        })?;
        let (factor, factor_is) = factor(spread.case.kind);
        Some(Demand {
            spread,
            force: measure(spread),
            factor,
            factor_is,
        })
    }

    /// Demand on the clamp, over the cases that count on it.
    pub(super) fn clamped(&self, measure: impl Fn(&Spread) -> f64) -> Option<Demand<'a>> {
        let (spread, _) = self.cases.governing(|spread| {
            let force = measure(spread);
            friction_factor(spread.case.kind)
                .filter(|_| force > 0.0)
                .map(|factor| factor * force)
        })?;
        let (factor, factor_is) = match spread.case.kind {
            LoadKind::Service => (OMEGA_OPENING, "factor-own"),
            LoadKind::Proof | LoadKind::Ultimate => (1.0, "factor-proof"),
        };
        Some(Demand {
            spread,
            force: measure(spread),
            factor,
            factor_is,
        })
    }

    /// Largest moment that no bolt has a lever for, over the cases of the kinds asked for, N·m.
    pub(super) fn untaken(&self, counts: impl Fn(LoadKind) -> bool) -> f64 {
        self.cases
            .all
            .iter()
            .filter(|spread| counts(spread.case.kind))
            .flat_map(|spread| {
                let missing = spread.not_taken;
                [missing.twist, missing.pitch, missing.roll]
            })
            .fold(0.0, |most, moment| most.max(moment.abs()))
    }

    /// The check, not checked where a moment is left that no bolt takes.
    pub(super) fn with_lever(mut check: Check, untaken: f64) -> Check {
        if untaken > 1.0 && check.verdict != Verdict::DoesNotHold {
            check.verdict = Verdict::NotChecked;
            check.utilisation = None;
            check.reason = said("slip-no-lever", &[(untaken, Moment)]);
        }
        check
    }

    /// What the fitting's flange adds to a pull; `None` where the fitting is taken as stiff.
    pub(super) fn pried(&self, pull: f64, bolt: Force) -> Option<Pried> {
        let (s, b) = (self.s, &self.s.bolting);
        let arm = s.fitting.flange_arm?;
        let tributary = if b.along > 1 {
            b.spacing_along
        } else {
            s.fitting.edge * 2.0
        };
        let flange = Flange {
            thickness: s.fitting.thickness,
            arm,
            edge: s.fitting.edge,
            tributary,
            bolt: b.thread.major(),
            hole: b.hole,
            tensile: s.fitting.material.least().ultimate_strength(),
        };
        Some(t_stub(&flange, newton(pull), bolt))
    }

    /// A pull with what the flange adds, N.
    pub(super) fn pull_on_bolt(&self, pull: f64, bolt: Force) -> f64 {
        self.pried(pull, bolt)
            .map_or(pull, |pried| pried.bolt_pull.si())
    }
}

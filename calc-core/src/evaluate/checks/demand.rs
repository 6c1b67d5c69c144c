//! Which load case decides a question, and with which factor.

use super::{Joint, OMEGA_OPENING, Way, said};
use crate::catalog::LoadKind;
use crate::evaluate::loads::Spread;
use crate::evaluate::pried::{pried, pull_on_bolt};
use crate::mechanics::prying::Pried;
use crate::quantity::Dimension::Moment;
use crate::quantity::Force;
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
    /// Share of a capacity that is used.
    pub(super) fn used(&self, capacity: f64) -> f64 {
        self.factor * self.force / capacity.max(1e-9)
    }

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
        measure: &dyn Fn(&Spread) -> f64,
    ) -> Option<Demand<'a>> {
        let factor = |kind| match kind {
            LoadKind::Service => (service, "factor-strength"),
            LoadKind::Proof => (proof.max(1.0), "factor-yield"),
            LoadKind::Ultimate => (1.0, "factor-breaking"),
        };
        let (spread, _) = self.cases.governing(&|spread| {
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

    /// Of several published ways to one strength the one that is used most, with the demand on it: which
    /// one that is depends on the kind of case, as the ways share their safety out differently between
    /// strength and load.
    ///
    /// `None` where no case asks for anything.
    pub(super) fn asked(
        &self,
        ways: &[Way],
        measure: &dyn Fn(&Spread) -> f64,
    ) -> Option<(Way, Demand<'a>)> {
        let used = |(way, asked): &(Way, Demand<'_>)| asked.used(way.capacity);
        ways.iter()
            .filter_map(|way| {
                let mut asked = self.strength((way.factor, way.to_yield()), measure)?;
                if asked.spread.case.kind == LoadKind::Service {
                    asked.factor_is = way.factor_is;
                }
                Some((*way, asked))
            })
            .reduce(|most, next| {
                if used(&next) > used(&most) {
                    next
                } else {
                    most
                }
            })
    }

    /// Demand on the clamp, over the cases that count on it.
    pub(super) fn clamped(&self, measure: &dyn Fn(&Spread) -> f64) -> Option<Demand<'a>> {
        let factor = |kind| match kind {
            LoadKind::Service => Some((OMEGA_OPENING, "factor-own")),
            LoadKind::Proof => Some((1.0, "factor-proof")),
            LoadKind::Ultimate => None,
        };
        let (spread, _) = self.cases.governing(&|spread| {
            let force = measure(spread);
            factor(spread.case.kind)
                .filter(|_| force > 0.0)
                .map(|(factor, _)| factor * force)
        })?;
        let (factor, factor_is) = factor(spread.case.kind)?;
        Some(Demand {
            spread,
            force: measure(spread),
            factor,
            factor_is,
        })
    }

    /// Largest moment that no bolt has a lever for, over the cases of the kinds asked for, N·m.
    pub(super) fn untaken(&self, counts: &dyn Fn(LoadKind) -> bool) -> f64 {
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
        pried(self.s, pull, bolt)
    }

    /// A pull with what the flange adds, N.
    pub(super) fn pull_on_bolt(&self, pull: f64, bolt: Force) -> f64 {
        pull_on_bolt(self.s, pull, bolt)
    }
}

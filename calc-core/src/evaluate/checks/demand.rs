//! Which load case decides a question, and with which factor.

use super::judged::Judged;
use super::{OMEGA_OPENING, Resistance, said};
use crate::catalog::LoadKind;
use crate::evaluate::analysis::Analysis;
use crate::evaluate::loads::BoltLoads;
use crate::evaluate::pried::{pried, pull_on_bolt};
use crate::mechanics::prying::Pried;
use crate::quantity::{Force, Measured, Moment};
use crate::report::{Check, CheckId, Factor, Verdict, say};

/// The governing demand of a question.
#[derive(Clone, Copy)]
pub(super) struct Demand<'a> {
    pub(super) loads: &'a BoltLoads,
    /// Demand on the hardest used bolt, N.
    pub(super) force: f64,
    pub(super) factor: f64,
    pub(super) factor_is: Factor,
}

impl Demand<'_> {
    /// Share of a capacity that is used.
    pub(super) fn used(&self, capacity: f64) -> f64 {
        self.factor * self.force / capacity.max(1e-9)
    }

    /// This demand against a capacity, with its factor and its case.
    pub(super) fn against<Q: Measured>(&self, id: CheckId, capacity: f64) -> Judged {
        Check::of(id, Q::of_si(self.force), Q::of_si(capacity))
            .factor(self.factor, self.factor_is)
            .in_case(self.loads.case.case, self.loads.case.kind)
    }
}

impl Analysis<'_> {
    /// Demand on a strength, over the cases of all kinds. A service case has the factor of allowable
    /// strength, a proof case the factor that brings the strength down to yield, an ultimate case 1.
    ///
    /// `None` where no case asks for anything.
    pub(super) fn strength(
        &self,
        (service, proof): (f64, f64),
        measure: &dyn Fn(&BoltLoads) -> f64,
    ) -> Option<Demand<'_>> {
        let factor = |kind| match kind {
            LoadKind::Service => (service, Factor::Strength),
            LoadKind::Proof => (proof.max(1.0), Factor::Yield),
            LoadKind::Ultimate => (1.0, Factor::Breaking),
        };
        let (loads, _) = self.cases().governing(&|loads| {
            let force = measure(loads);
            (force > 0.0).then(|| factor(loads.case.kind).0 * force)
        })?;
        let (factor, factor_is) = factor(loads.case.kind);
        Some(Demand {
            loads,
            force: measure(loads),
            factor,
            factor_is,
        })
    }

    /// Of several published ways to one strength the one that is used most, with the demand on it: which
    /// one that is depends on the kind of case, as the ways share their safety out differently between
    /// strength and load.
    ///
    /// `None` where no case asks for anything.
    pub(super) fn governing_demand(
        &self,
        resistances: &[Resistance],
        measure: &dyn Fn(&BoltLoads) -> f64,
    ) -> Option<(Resistance, Demand<'_>)> {
        let used =
            |(resistance, demand): &(Resistance, Demand<'_>)| demand.used(resistance.capacity);
        resistances
            .iter()
            .filter_map(|resistance| {
                let mut demand =
                    self.strength((resistance.factor, resistance.to_yield()), measure)?;
                if demand.loads.case.kind == LoadKind::Service {
                    demand.factor_is = resistance.factor_is;
                }
                Some((*resistance, demand))
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
    pub(super) fn clamped(&self, measure: &dyn Fn(&BoltLoads) -> f64) -> Option<Demand<'_>> {
        let factor = |kind| match kind {
            LoadKind::Service => Some((OMEGA_OPENING, Factor::Own)),
            LoadKind::Proof => Some((1.0, Factor::Proof)),
            LoadKind::Ultimate => None,
        };
        let (loads, _) = self.cases().governing(&|loads| {
            let force = measure(loads);
            factor(loads.case.kind)
                .filter(|_| force > 0.0)
                .map(|(factor, _)| factor * force)
        })?;
        let (factor, factor_is) = factor(loads.case.kind)?;
        Some(Demand {
            loads,
            force: measure(loads),
            factor,
            factor_is,
        })
    }

    /// Largest moment that no bolt has a lever for, over the cases of the kinds asked for, N·m.
    pub(super) fn untaken(&self, counts: &dyn Fn(LoadKind) -> bool) -> f64 {
        self.cases()
            .all
            .iter()
            .filter(|loads| counts(loads.case.kind))
            .flat_map(|loads| {
                let missing = loads.not_taken;
                [missing.twist, missing.pitch, missing.roll]
            })
            .fold(0.0, |most, moment| most.max(moment.abs()))
    }

    /// The check, not checked where a moment is left that no bolt takes.
    pub(super) fn with_lever(check: Check, untaken: f64) -> Check {
        if untaken > 1.0 && check.verdict != Verdict::DoesNotHold {
            check.undecided(said(say::SlipNoLever, (Moment(untaken),)))
        } else {
            check
        }
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

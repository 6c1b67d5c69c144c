//! From demand and capacity to a check: what is used of it and how it stands, worked out in one place.

use super::Working;
use crate::catalog::{CaseName, LoadKind};
use crate::quantity::Measured;
use crate::report::{Amount, Check, CheckId, Factor, Governing, Said, Sentence, Verdict};

/// A question that has its demand and its capacity and still lacks the reason in words.
#[derive(Clone, Copy)]
pub(super) struct Judged {
    id: CheckId,
    verdict: Verdict,
    demand: Amount,
    capacity: Amount,
    factor: f64,
    factor_is: Factor,
    utilisation: Option<f64>,
    case: Option<Governing>,
}

impl Check {
    /// What is asked and what there is, of one kind, without a factor unless one is named.
    #[inline]
    pub(super) fn of<Q: Measured>(id: CheckId, demand: Q, capacity: Q) -> Judged {
        Judged {
            id,
            verdict: Verdict::NotChecked,
            demand: Amount::of(demand),
            capacity: Amount::of(capacity),
            factor: 1.0,
            factor_is: Factor::None,
            utilisation: None,
            case: None,
        }
        .factor(1.0, Factor::None)
    }

    /// The check with its working.
    #[must_use]
    pub(super) fn working(mut self, working: Working) -> Self {
        self.steps = working.finish();
        self
    }

    /// The check, not checked for a reason.
    #[must_use]
    pub(super) fn undecided(mut self, reason: Said) -> Self {
        self.verdict = Verdict::NotChecked;
        self.utilisation = None;
        self.reason = reason;
        self
    }
}

impl Judged {
    /// With a factor on the demand, and what the factor is.
    pub(super) fn factor(mut self, factor: f64, factor_is: Factor) -> Self {
        self.factor = factor;
        self.factor_is = factor_is;
        self.used(factor * self.demand.si / self.capacity.si.max(1e-9))
    }

    /// With a share used that is not demand over capacity.
    pub(super) fn used(mut self, utilisation: f64) -> Self {
        self.verdict = Verdict::of(utilisation);
        self.utilisation = Some(utilisation);
        self
    }

    /// With a verdict that does not follow from the share used.
    pub(super) const fn stands(mut self, verdict: Verdict) -> Self {
        self.verdict = verdict;
        self
    }

    /// Without a share used: a fit must not stand before checks of strength.
    pub(super) const fn without_share(mut self) -> Self {
        self.utilisation = None;
        self
    }

    /// Decided by a load case.
    pub(super) const fn in_case(mut self, case: CaseName, kind: LoadKind) -> Self {
        self.case = Some(Governing { case, kind });
        self
    }

    /// What is used of it so far.
    pub(super) fn used_so_far(&self) -> f64 {
        self.utilisation.unwrap_or(0.0)
    }

    /// How it stands so far.
    pub(super) const fn verdict(&self) -> Verdict {
        self.verdict
    }

    /// Whether more is asked than there is.
    pub(super) fn exceeds(&self) -> bool {
        self.utilisation.is_some_and(|used| used > 1.0)
    }

    /// One of two sentences, for too much and for enough, on demand and capacity.
    pub(super) fn says(self, [too_much, enough]: [Sentence<2>; 2]) -> Check {
        let code = if self.exceeds() { too_much } else { enough };
        self.says_of_both(code)
    }

    /// A sentence on demand and capacity.
    pub(super) fn says_of_both(self, code: Sentence<2>) -> Check {
        self.reason(Said::of(code, [self.demand, self.capacity]))
    }

    /// The check, with its reason.
    pub(super) fn reason(self, reason: Said) -> Check {
        let Self {
            id,
            verdict,
            demand,
            capacity,
            factor,
            factor_is,
            utilisation,
            case,
        } = self;
        Check {
            id,
            verdict,
            demand,
            capacity,
            factor,
            factor_is,
            utilisation,
            case,
            reason,
            steps: Vec::new(),
        }
    }
}

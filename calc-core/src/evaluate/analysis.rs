//! One joint with everything that is asked of it in common: its preload, what the clamp stands on, what is
//! left of the clamp, its load cases.

use super::loads::{Cases, Service};
use super::preload::Preload;
use super::residual_clamp::ResidualClamp;
use super::support::Support;
use crate::scenario::Scenario;
use std::cell::OnceCell;

/// A scenario with the chain that every question about it rests on, assembled here and nowhere else:
///
/// ```text
/// scenario → preload → support → residual clamp → load cases → the case that slips first
/// ```
///
/// Checks, fatigue, the curve of torque against turn, repairs, joints by lot and readings take it. Loads are
/// spread over the bolts when somebody first asks for them: the curve and the readings never do.
pub(crate) struct Analysis<'a> {
    pub(crate) s: &'a Scenario,
    pub(crate) preload: Preload,
    pub(crate) support: Support,
    pub(crate) residual: ResidualClamp,
    /// Whether checks keep their working; where thousands of joints are compared, nobody reads it.
    pub(crate) working: bool,
    cases: OnceCell<Cases>,
    service: OnceCell<Option<Service>>,
}

impl<'a> Analysis<'a> {
    /// Of a scenario, with the working of its checks.
    pub(crate) fn new(s: &'a Scenario) -> Self {
        let preload = Preload::new(s);
        let support = Support::new(s, &preload);
        let residual = ResidualClamp::new(s, &preload, &support);
        Self {
            s,
            preload,
            support,
            residual,
            working: true,
            cases: OnceCell::new(),
            service: OnceCell::new(),
        }
    }

    /// Of a scenario, for its verdicts alone.
    pub(crate) fn without_working(s: &'a Scenario) -> Self {
        Self {
            working: false,
            ..Self::new(s)
        }
    }

    /// Load cases with what each asks of every bolt.
    pub(crate) fn cases(&self) -> &Cases {
        self.cases.get_or_init(|| Cases::new(self.s))
    }

    /// The case that slips first; `None` where no case counts on friction.
    pub(crate) fn service(&self) -> Option<&Service> {
        self.service
            .get_or_init(|| self.cases().service(self.s, &self.residual))
            .as_ref()
    }
}

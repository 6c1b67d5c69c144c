//! One thing that has to fit: how much room it takes and how much there is.

use crate::quantity::{InUnits, Length};
use crate::report::Sentence;

/// Room that a part takes, room that there is, and what is said where it is too little.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Fit {
    pub(crate) needed: Length,
    pub(crate) there: Length,
    /// On what is needed and what is there, where it does not fit.
    pub(crate) clash: Sentence<2>,
}

impl Fit {
    pub(super) const fn new(needed: Length, there: Length, clash: Sentence<2>) -> Self {
        Self {
            needed,
            there,
            clash,
        }
    }

    /// Whether it fits, but for what typing rounds.
    pub(crate) fn fits(&self) -> bool {
        self.needed.si() <= self.there.si() * (1.0 + 1e-9) + 1e-12
    }

    /// How much of the room it takes: more than 1 where it does not fit.
    fn used(&self) -> f64 {
        self.needed.si() / self.there.si().max(1e-9)
    }

    /// The tightest of several.
    pub(super) fn tightest(of: impl IntoIterator<Item = Self>) -> Option<Self> {
        of.into_iter().max_by(|a, b| a.used().total_cmp(&b.used()))
    }
}

//! One thing for each system of units: a reader who measures in inches gets inch stock, not metric stock
//! converted.

use calc_core::quantity::UnitSystem;

/// The same of both systems.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Both<T> {
    /// For readers of US customary units.
    pub us: T,
    /// For readers of metric units.
    pub metric: T,
}

impl<T> Both<T> {
    /// That of a system.
    #[must_use]
    pub const fn of(&self, units: UnitSystem) -> &T {
        match units {
            UnitSystem::Us => &self.us,
            UnitSystem::Metric => &self.metric,
        }
    }
}

impl<T: Copy> Both<T> {
    /// What does not depend on the system.
    #[must_use]
    pub const fn alike(both: T) -> Self {
        Self {
            us: both,
            metric: both,
        }
    }
}

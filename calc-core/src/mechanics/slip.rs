//! Friction in the faying planes.

use crate::quantity::{Force, InUnits, newton};

/// Factor of safety on slip for standard holes.
///
/// # Sources
/// AISC 360-22 J3.9 (Ω 1.50).
pub const OMEGA: f64 = 1.50;

/// Factor of safety on slip where a hole is larger than the standard one.
///
/// # Sources
/// AISC 360-22 J3.9 (Ω 1.76, oversized holes).
pub const OMEGA_OVERSIZE: f64 = 1.76;

/// Load at which one bolt's planes slip.
///
/// ```text
/// R = m·μ·(F − (1 − C)·N)
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `planes` | slip planes `m` | 1 |
/// | `mu` | friction coefficient | 1 |
/// | `clamp` | clamp left in service `F` | N |
/// | `pull` | outside pull along the bolt `N`, opening positive | N |
/// | `load_factor` | load factor `C` | 1 |
///
/// Never below zero. Says nothing about the bolt once the joint has slipped.
///
/// # Sources
/// Dry friction; AISC 360-22 J3.9 and J3.10 have the same form for pretensioned bolts.
#[must_use]
pub fn resistance(planes: f64, mu: f64, clamp: Force, pull: Force, load_factor: f64) -> Force {
    let left = clamp.si() - (1.0 - load_factor) * pull.si().max(0.0);
    newton((planes * mu * left).max(0.0))
}

/// Bolts that friction needs for a load.
///
/// ```text
/// n = ⌈Ω·P/R⌉
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `load` | load along the faces `P`, the same on every bolt | N |
/// | `each` | load at which one bolt's planes slip `R`, see [`resistance`] | N |
/// | `omega` | factor of safety `Ω` | 1 |
///
/// A load that turns the joint needs more: it is not the same on every bolt.
#[must_use]
pub fn bolts_for(load: Force, each: Force, omega: f64) -> f64 {
    (omega * load.si() / each.si()).ceil()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_bolt_too_few_would_slip() {
        let (load, each) = (newton(10_000.0), newton(2_400.0));
        assert_eq!(bolts_for(load, each, 1.0), 5.0);
        assert_eq!(bolts_for(load, each, OMEGA), 7.0);
    }
}

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

//! When the faces part.

use crate::quantity::{Force, InUnits, newton};

/// Outside pull at which the clamped faces part.
///
/// ```text
/// N_0 = F/(1 − C)
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `clamp` | clamp force `F` | N |
/// | `bolt_share` | load factor `C` | 1 |
///
/// Infinite where the bolt takes everything (`C = 1`). A soft support has a large `C`: the faces part
/// late, but the bolt works all the time.
///
/// # Sources
/// Shigley 9e Eq. 8-30.
#[must_use]
pub fn separation_load(clamp: Force, bolt_share: f64) -> Force {
    newton(clamp.si() / (1.0 - bolt_share).max(0.0))
}

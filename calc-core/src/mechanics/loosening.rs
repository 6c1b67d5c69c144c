//! Whether a joint can shake its nut loose.

use crate::quantity::{Force, InUnits, newton};

/// Transverse force in one faying plane below which a bolt cannot be shaken loose.
///
/// ```text
/// F_Q = μ·F_K,   F_K = F_left − (1 − C)·N
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `mu` | friction coefficient of the faying face | 1 |
/// | `clamp` | least clamp left `F_left` | N |
/// | `pull` | outside pull on this bolt `N`, opening positive | N |
/// | `load_factor` | load factor `C` | 1 |
///
/// A nut turns back when the faces slide on each other to and fro; below the force no such sliding
/// happens. A locking element keeps a nut on; it does not stop the sliding, the wear and the oval holes.
///
/// # Sources
/// Junker's criterion, published abstract; [`slip`](super::slip) without its factor.
#[must_use]
pub fn transverse_limit(mu: f64, clamp: Force, pull: Force, load_factor: f64) -> Force {
    let left = clamp.si() - (1.0 - load_factor) * pull.si().max(0.0);
    newton((mu * left).max(0.0))
}

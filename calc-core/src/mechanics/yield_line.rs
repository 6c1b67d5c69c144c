//! Published chord-face yield-line loads, shown beside the computed face.

use crate::quantity::{Force, InUnits, Length, Stress, newton};

/// How a round washer is read as the patch of the formula.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Patch {
    /// Square as wide as the washer: `b₁ = h₁ = d_w`.
    Square,
    /// Circular: the square result × π/4.
    Circular,
}

/// Load at which a chord face yields under a rigid patch.
///
/// ```text
/// N = f_y·t²/(1 − β)·(2η + 4·√(1 − β)),   β = b₁/b₀, η = h₁/b₀;  circular patch: × π/4
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `fy` | yield strength | Pa |
/// | `t` | wall | m |
/// | `width` | outside width `b₀` of the face | m |
/// | `washer` | patch size `b₁ = h₁` | m |
///
/// Published for β ≤ 0.85. Against finite elements at 3 % of the width the circular form lies at
/// 0.84–1.04 for b/t ≤ 30 and is unsafe by up to 40 % on slender faces with small washers; the square
/// form is unsafe throughout (0.49–0.89). That a washer is a rigid patch is our reading, not the
/// standard's. Infinite where β ≥ 1 has no meaning: callers keep β below 1.
///
/// # Sources
/// EN 1993-1-8 Table 7.10/7.11 (chord face failure), partial factor 1.
#[must_use]
pub fn chord_face(fy: Stress, t: Length, width: Length, washer: Length, patch: Patch) -> Force {
    let beta = (washer.si() / width.si()).min(0.999);
    let square = fy.si() * t.si().powi(2) / (1.0 - beta) * (2.0 * beta + 4.0 * (1.0 - beta).sqrt());
    newton(match patch {
        Patch::Square => square,
        Patch::Circular => square * std::f64::consts::FRAC_PI_4,
    })
}

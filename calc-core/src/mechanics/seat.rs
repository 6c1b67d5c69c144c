//! A head or a nut on a surface that is not square to the bolt.

use crate::quantity::{InUnits, Length, Stress, mpa};

/// Steepest surface, against the plane square to the bolt, that head and nut may bear on.
///
/// # Sources
/// RCSC specification 6.1.1 (1:20), second-hand from the AISC's answers to frequent questions.
pub const STEEPEST: f64 = 1.0 / 20.0;

/// Slope of a round surface under the rim of a washer that lies across its crown.
///
/// ```text
/// s = d_w/D
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `d_w` | outside diameter of the washer | m |
/// | `D` | outside diameter of the tube | m |
///
/// The sine of the angle there; a flat washer touches along a line and bends down at both sides of it.
///
/// # Sources
/// Geometry.
#[must_use]
pub fn round_slope(washer: Length, diameter: Length) -> f64 {
    washer.si() / diameter.si().max(1e-9)
}

/// Bending stress in a bolt whose nut is pulled down flat on a slope.
///
/// ```text
/// σ = E·d·s/(2·l)
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `s` | slope between the bearing faces of head and nut | 1 |
/// | `d`, `l` | bolt diameter, clamped length | m |
///
/// Elastic, the bolt bent evenly over its clamped length; beyond yield it says only that the bolt stays
/// bent.
///
/// # Sources
/// Elementary: curvature `s/l`.
#[must_use]
pub fn bolt_bending(modulus: Stress, d: Length, slope: f64, grip: Length) -> Stress {
    mpa(modulus.si() * d.si() * slope / (2.0 * grip.si().max(1e-9)) * 1e-6)
}

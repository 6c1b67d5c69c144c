//! Geometry of ISO and Unified 60° threads.

use crate::quantity::{Area, Force, InUnits, Length, Stress, mm2, newton};

/// Tensile stress area of an inch thread.
///
/// ```text
/// A_t = (π/4)·(d − 0.9743·p)²
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `d` | nominal diameter | m |
/// | `p` | pitch, 1 / threads per length | m |
///
/// Holds for Unified 60° threads.
///
/// # Sources
/// ASME B1.1; AISC 360-22 Eq. A-3-7; printed values in Shigley 9e Table 8-2.
#[must_use]
pub fn stress_area_inch(d: Length, p: Length) -> Area {
    let d_t = d.si() - 0.9743 * p.si();
    mm2(std::f64::consts::FRAC_PI_4 * d_t * d_t * 1e6)
}

/// Tensile stress area of a metric thread.
///
/// ```text
/// A_s = (π/4)·((d₂ + d₃)/2)²,  d₂ = d − 0.649519·P,  d₃ = d − 1.226869·P
/// ```
///
/// # Sources
/// ISO 898-1; AISC 360-22 Eq. A-3-7M.
#[must_use]
pub fn stress_area_metric(d: Length, p: Length) -> Area {
    let d_s = d.si() - 0.5 * (0.649_519 + 1.226_869) * p.si();
    mm2(std::f64::consts::FRAC_PI_4 * d_s * d_s * 1e6)
}

/// Diameter of the circle with a given area.
#[must_use]
pub fn equivalent_diameter(area: Area) -> Length {
    Length::of_si((4.0 * area.si() / std::f64::consts::PI).sqrt())
}

/// Load at a stress over an area: proof load, yield load, breaking load.
///
/// ```text
/// F = S·A
/// ```
#[must_use]
pub fn load_at(stress: Stress, area: Area) -> Force {
    newton(stress.si() * area.si())
}

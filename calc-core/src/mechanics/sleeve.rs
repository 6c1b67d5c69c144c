//! A sleeve round the bolt that carries the clamp from washer to washer.

use crate::quantity::{Area, Force, InUnits, Length, Stiffness, Stress, mm2, newton};
use std::f64::consts::{FRAC_PI_4, PI};

/// Cross-section of a round sleeve.
#[must_use]
pub fn area(outer: Length, inner: Length) -> Area {
    mm2(FRAC_PI_4 * (outer.si().powi(2) - inner.si().powi(2)) * 1e6)
}

/// Area of the sleeve's end that a washer covers.
#[must_use]
pub fn covered_end(
    outer: Length,
    inner: Length,
    washer_outer: Length,
    washer_bore: Length,
) -> Area {
    let out = outer.si().min(washer_outer.si());
    let inn = inner.si().max(washer_bore.si()).min(out);
    mm2(FRAC_PI_4 * (out * out - inn * inn) * 1e6)
}

/// Strength of a sleeve in compression.
///
/// ```text
/// L/r ≤ 25:   R = f_y·A
/// otherwise:  R = f_cr·A,  f_cr = 0.658^(f_y/F_e)·f_y  (f_y/F_e ≤ 2.25),  0.877·F_e beyond
///             F_e = π²·E/(L/r)²,  r = √(D² + d²)/4,  ends taken as hinged
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `L` | length of the sleeve | m |
/// | `D`, `d` | outside and inside diameter | m |
///
/// # Sources
/// AISC 360-22 J4.4 and E3, Ω 1.67; for aluminium our reading.
#[must_use]
pub fn strength(
    fy: Stress,
    modulus: Stress,
    outer: Length,
    inner: Length,
    length: Length,
) -> Force {
    let squash = fy.si() * area(outer, inner).si();
    let radius = (outer.si().powi(2) + inner.si().powi(2)).sqrt() / 4.0;
    let slenderness = length.si() / radius;
    if slenderness <= 25.0 {
        return newton(squash);
    }
    let euler = PI * PI * modulus.si() / (slenderness * slenderness);
    let ratio = fy.si() / euler;
    newton(if ratio <= 2.25 {
        squash * 0.658_f64.powf(ratio)
    } else {
        squash * 0.877 / ratio
    })
}

/// Largest diameter-to-wall ratio at which a round sleeve does not wrinkle before it yields.
///
/// ```text
/// D/t ≤ 0.11·E/f_y
/// ```
///
/// # Sources
/// AISC 360-22 Table B4.1a (round HSS in compression); for aluminium our reading.
#[must_use]
pub fn wall_ratio_limit(fy: Stress, modulus: Stress) -> f64 {
    0.11 * modulus.si() / fy.si()
}

/// Elastic–plastic sleeve: stiff up to its strength, then constant.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SleeveCurve {
    stiffness: f64,
    strength: f64,
    gap: f64,
}

impl SleeveCurve {
    /// A sleeve that touches after the washers have approached by `gap`.
    #[must_use]
    pub fn new(stiffness: Stiffness, strength: Force, gap: Length) -> Self {
        Self {
            stiffness: stiffness.si(),
            strength: strength.si(),
            gap: gap.si().max(0.0),
        }
    }

    /// A curve from stiffness, strength and gap, all in SI.
    pub(crate) const fn of_si(stiffness: f64, strength: f64, gap: f64) -> Self {
        Self {
            stiffness,
            strength,
            gap,
        }
    }

    /// Stiffness, strength and gap, in SI.
    pub(crate) const fn parts_si(&self) -> [f64; 3] {
        [self.stiffness, self.strength, self.gap]
    }

    /// Force at an approach of the washers.
    #[must_use]
    pub fn force(&self, approach: Length) -> Force {
        newton(self.force_si(approach.si()))
    }

    /// Force at an approach of the washers, in SI.
    pub(crate) fn force_si(&self, approach: f64) -> f64 {
        (self.stiffness * (approach - self.gap)).clamp(0.0, self.strength)
    }

    /// Approach at which it reaches its strength, in SI.
    pub(crate) fn yields_at_si(&self) -> f64 {
        self.gap + self.strength / self.stiffness
    }

    /// Stiffness against small changes once it touches, N/m; zero before.
    pub(crate) fn spring_rate_si(&self, approach: f64) -> f64 {
        if approach >= self.gap {
            self.stiffness
        } else {
            0.0
        }
    }

    /// Strength in SI.
    pub(crate) const fn strength_si(&self) -> f64 {
        self.strength
    }
}

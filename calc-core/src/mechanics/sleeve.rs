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

/// Length of a sleeve that stands between the walls of a tube, cut short by `short`.
///
/// ```text
/// l = h − 2·t − s
/// ```
///
/// What is cut too long is short by less than nothing. The other way around, with `s` the length of a sleeve, it is the
/// gap that both faces together have to close.
#[must_use]
pub fn between_walls(depth: Length, wall: Length, short: Length) -> Length {
    Length::of_si(depth.si() - 2.0 * wall.si() - short.si())
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

/// How far from its axis a ring may be pressed before its far side lifts.
///
/// ```text
/// k = (D² + d²)/(8·D)
/// ```
///
/// # Sources
/// Core of a section: elementary.
#[must_use]
pub fn kern(outer: Length, inner: Length) -> Length {
    let (out, inn) = (outer.si(), inner.si());
    Length::of_si((out * out + inn * inn) / (8.0 * out.max(1e-9)))
}

/// Strength of a sleeve that is pressed beside its axis.
///
/// ```text
/// R/R_c + R·e/(k·f_y·A·(1 − R/P_e)) = 1,   P_e = π²·E·A/(L/r)²
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `R_c` | its strength in the middle, see [`strength`] | N |
/// | `e` | distance of the force from the axis | m |
/// | `k` | see [`kern`] | m |
///
/// Up to first yield of the nearer side, with what the sleeve bends between its ends. Beyond `k` the far side lifts
/// and the formula no longer holds.
///
/// # Sources
/// AISC 360-22 H1, taken as a straight line and with the plastic moment left out, and C1 for the amplification: form
/// from memory.
#[must_use]
pub fn off_center_strength(
    fy: Stress,
    modulus: Stress,
    [outer, inner]: [Length; 2],
    length: Length,
    off: Length,
) -> Force {
    let squash = fy.si() * area(outer, inner).si();
    let radius_2 = (outer.si().powi(2) + inner.si().powi(2)) / 16.0;
    let a = 1.0 / strength(fy, modulus, outer, inner, length).si();
    let b = off.si().max(0.0) / (kern(outer, inner).si() * squash);
    let c = length.si().powi(2) * fy.si() / (PI * PI * modulus.si() * radius_2 * squash);
    let sum = a + b + c;
    newton(2.0 / (sum + (sum * sum - 4.0 * a * c).max(0.0).sqrt()))
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{mm, mpa};

    fn kilonewtons(length: f64, off: f64) -> f64 {
        let ring = [mm(38.1), mm(25.4)];
        off_center_strength(mpa(300.0), mpa(200e3), ring, mm(length), mm(off)).si() * 1e-3
    }

    /// 633 mm² at 300 MPa are 190 kN; 6.35 mm beside the axis of a ring with a core of 6.88 mm leave
    /// 190/(1 + 6.35/6.88).
    #[test]
    fn a_short_one_off_center() {
        assert!((kern(mm(38.1), mm(25.4)).si() * 1e3 - 6.879).abs() < 1e-3);
        assert!((kilonewtons(1.0, 0.0) - 190.0).abs() < 0.1);
        assert!((kilonewtons(1.0, 6.35) - 98.8).abs() < 0.1);
    }

    /// In the middle it is the column; farther out and longer it takes less.
    #[test]
    fn a_long_one_bends_too() {
        let column = strength(mpa(300.0), mpa(200e3), mm(38.1), mm(25.4), mm(900.0));
        assert!((kilonewtons(900.0, 0.0) - column.si() * 1e-3).abs() < 1e-6);
        let stiff = kilonewtons(900.0, 0.0) / (1.0 + 3.0 / 6.879);
        assert!(kilonewtons(900.0, 3.0) < stiff);
        assert!(kilonewtons(900.0, 4.0) < kilonewtons(900.0, 3.0));
    }
}

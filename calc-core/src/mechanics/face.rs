//! The face of a rectangular tube under a washer that can only push.
//!
//! Fitted to finite-element runs (`tests/reference/fe`), because published yield-line loads say
//! neither how far the face goes in nor what happens on slender faces.

use super::range::{CheckedRatio, OutOfRange};
use super::solve::find_root;
use crate::quantity::{Force, InUnits, Length, Stiffness, Stress, newton};
use std::f64::consts::PI;

/// Section and material of the tube as the face sees them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FaceTube {
    /// Outside width of the face, across the bolt.
    pub width: Length,
    /// Outside depth of the tube, along the bolt.
    pub depth: Length,
    /// Wall.
    pub wall: Length,
    /// Outside corner radius.
    pub corner_radius: Length,
    /// Modulus of elasticity.
    pub modulus: Stress,
    /// Poisson's ratio.
    pub poisson: f64,
    /// Yield strength.
    pub yield_strength: Stress,
}

/// Lower bound of the fitted curve: no finite-element case, open, kept back or run afterwards, lies
/// below 0.90 of it at 1 % and 3 % of the width.
pub const LOWER_BOUND: f64 = 0.90;

/// Largest indentation that was checked, as a share of the outside width.
pub const CHECKED_TO: f64 = 0.06;

/// Largest yield strength over modulus that was checked.
pub(crate) const STRONGEST: f64 = 0.0041;

/// Coefficients for a washer that can only push (`ring` runs).
mod fit {
    pub(super) const A: f64 = 0.2505;
    pub(super) const M: f64 = 1.81;
    pub(super) const K: f64 = 1.441;
    pub(super) const S: f64 = 1.49;
    pub(super) const N: f64 = 1.867;
    pub(super) const C_Y: f64 = 0.764;
    pub(super) const C1: f64 = 0.184;
    pub(super) const C2: f64 = 0.143;
}

/// Clamp force against indentation of one face.
///
/// ```text
/// F(δ) = s·{ [k_e·δ·(1 + c₁·z²)]^(−n) + [F_p·(1 + c₂·z)]^(−n) }^(−1/n),   z = δ/t
/// k_e  = E·t / [ A·(1−β)^m·(1−ν²)·(b₀/t)²·(1 + k·(h/(b+h) − ½)) + s_k·(1−β) ]
/// F_p  = [ (c_Y·Y)^(−2) + V^(−2) ]^(−½)
/// Y    = f_y·t²/(1 − a/b₀)·(2a/b₀ + 4·√(1 − a/b₀)),  a = 0.886·d_w      (yield line)
/// V    = π·d_w·t·f_y/√3                                               (punching)
/// β    = d_w/b₀,  b₀ = b − t
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `δ` | indentation of this face against mid-depth | m |
/// | `d_w` | outside diameter of the washer, taken as rigid | m |
/// | `b`, `h`, `t` | outside width, depth along the bolt, wall | m |
/// | `f_y`, `E`, `ν` | yield strength, modulus, Poisson's ratio | Pa, Pa, 1 |
/// | `s` | factor on the force: 1, [`LOWER_BOUND`], half near an open end | 1 |
///
/// Holds for b/t 8–48, h/b 0.33–3, d_w/b 0.157–0.75 with the washer on the flat, f_y/E 0.0009–0.0041,
/// δ ≤ 6 % of b. Against the runs: 0.91–1.10 at 1 % and 3 % of b.
///
/// # Sources
/// Own finite-element runs, `tests/reference/fe`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FaceCurve {
    elastic: f64,
    plastic: f64,
    wall: f64,
    width: f64,
    factor: f64,
}

impl FaceCurve {
    /// The curve for a tube and a washer, with a factor on the force.
    #[must_use]
    pub fn new(tube: &FaceTube, washer: Length, factor: f64) -> Self {
        let (b, h, t) = (tube.width.si(), tube.depth.si(), tube.wall.si());
        let (e, fy, nu) = (tube.modulus.si(), tube.yield_strength.si(), tube.poisson);
        let dw = washer.si();
        let b0 = b - t;
        // Outside the checked range (a washer wider than the face) the ratio is held below 1, so
        // that the numbers stay finite; `out_of_range` says that they do not count.
        let beta = (dw / b0).min(0.98);
        let a = (0.886 * dw / b0).min(0.98);
        let yield_line = fy * t * t / (1.0 - a) * (2.0 * a + 4.0 * (1.0 - a).sqrt());
        let punching = PI * dw * t * fy / 3f64.sqrt();
        let plastic = 1.0 / (1.0 / (fit::C_Y * yield_line).powi(2) + 1.0 / punching.powi(2)).sqrt();
        let bending = fit::A
            * (1.0 - beta).powf(fit::M)
            * (1.0 - nu * nu)
            * (b0 / t).powi(2)
            * (1.0 + fit::K * (h / (b + h) - 0.5));
        let elastic = e * t / (bending + fit::S * (1.0 - beta));
        Self {
            elastic,
            plastic,
            wall: t,
            width: b,
            factor,
        }
    }

    /// Initial stiffness `s·k_e`.
    #[must_use]
    pub fn stiffness(&self) -> Stiffness {
        Stiffness::of_si(self.factor * self.elastic)
    }

    /// Fit constant `s·F_p`: not a limit load by itself.
    #[must_use]
    pub fn plastic_term(&self) -> Force {
        newton(self.factor * self.plastic)
    }

    /// Force on the way up, without plasticity: `s·k_e·δ·(1 + c₁·z²)`.
    fn elastic_force(&self, delta: f64) -> f64 {
        let z = delta / self.wall;
        self.factor * self.elastic * delta * (1.0 + fit::C1 * z * z)
    }

    /// Clamp force at an indentation, in SI.
    pub(crate) fn force_si(&self, delta: f64) -> f64 {
        if delta <= 0.0 {
            return 0.0;
        }
        let rise = self.elastic_force(delta);
        let flat = self.factor * self.plastic * (1.0 + fit::C2 * delta / self.wall);
        // rise·(1 + (rise/flat)^n)^(−1/n): the same as the formula above with one power less. Powers
        // by logarithms, because in a browser a `powf` takes as long as four of them, and most of the
        // time of a report goes in here.
        let power = (fit::N * (rise / flat).ln()).exp();
        rise * (-(1.0 + power).ln() / fit::N).exp()
    }

    /// Clamp force at an indentation.
    #[must_use]
    pub fn force(&self, indentation: Length) -> Force {
        newton(self.force_si(indentation.si()))
    }

    /// Indentation in SI at a clamp force, up to `limit`.
    #[cfg(test)]
    fn indentation_si(&self, force: f64, limit: f64) -> f64 {
        find_root(0.0, limit, 1e-9, |d| self.force_si(d) - force)
    }

    /// Clamp force at a share of the outside width.
    #[must_use]
    pub fn force_at_share(&self, share: f64) -> Force {
        newton(self.force_si(share * self.width))
    }

    /// Indentation that stays when the clamp of an indentation is taken off again.
    ///
    /// Unloading follows the elastic line `k_e·δ·(1 + c₁·z²)`, so what stays is what lies beyond it.
    /// Against finite-element runs that were unloaded: off by at most 10 % of the dent under load, the
    /// most on a slender face, where a sixth more stays than here.
    #[must_use]
    pub fn left_after(&self, indentation: Length) -> Length {
        let delta = indentation.si();
        let force = self.force_si(delta);
        let sprung = find_root(0.0, delta, 1e-7, |d| self.elastic_force(d) - force);
        Length::of_si((delta - sprung).max(0.0))
    }

    /// Slope of the elastic line where the clamp of an indentation is taken off: the stiffness against
    /// small changes, N/m.
    pub(crate) fn spring_rate_si(&self, delta: f64) -> f64 {
        let sprung = delta - self.left_after(Length::of_si(delta)).si();
        let z = sprung / self.wall;
        self.factor * self.elastic * (1.0 + 3.0 * fit::C1 * z * z)
    }

    /// Indentation in SI after whose clamp an indentation of `visible` stays, at most `end`.
    ///
    /// Where the elastic line at `δ − visible` has come up to the curve at `δ`.
    pub(crate) fn lasting_at_si(&self, visible: f64, end: f64) -> f64 {
        find_root(visible, end, 1e-7, |d| {
            self.elastic_force(d - visible) - self.force_si(d)
        })
    }

    /// Clamp force after which an indentation of `visible` stays; the force at the end of the checked
    /// range where none stays before.
    #[must_use]
    pub fn lasting_from(&self, visible: Length) -> Force {
        newton(self.force_si(self.lasting_at_si(visible.si(), CHECKED_TO * self.width)))
    }
}

/// What of a tube and washer lies outside the range that the runs cover.
#[must_use]
pub fn out_of_range(tube: &FaceTube, washer: Length) -> Vec<OutOfRange> {
    let (b, h, t) = (tube.width.si(), tube.depth.si(), tube.wall.si());
    let flat = b - 2.0 * tube.corner_radius.si();
    [
        OutOfRange::note(CheckedRatio::WidthToWall, b / t, 8.0, 48.0),
        OutOfRange::note(CheckedRatio::HeightToWidth, h / b, 0.33, 3.0),
        OutOfRange::note(CheckedRatio::WasherToWidth, washer.si() / b, 0.157, 0.75),
        OutOfRange::note(CheckedRatio::WasherToFlat, washer.si() / flat, 0.0, 0.92),
        OutOfRange::note(
            CheckedRatio::YieldToModulus,
            tube.yield_strength.si() / tube.modulus.si(),
            0.0009,
            STRONGEST,
        ),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// Whether a bolt is so near an open end that the face has half its strength.
///
/// ```text
/// l_end < b·√(1 − β),  β = d_w/b,  l_end from the near side of the washer
/// ```
///
/// # Sources
/// AISC 360-22 K1.4 (end distance of chords), applied to a washer.
#[must_use]
pub fn near_open_end(end_distance: Length, width: Length, washer: Length) -> bool {
    let beta = (washer.si() / width.si()).min(1.0);
    end_distance.si() - 0.5 * washer.si() < width.si() * (1.0 - beta).sqrt()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{mm, mpa};

    fn tube() -> FaceTube {
        FaceTube {
            width: mm(50.8),
            depth: mm(50.8),
            wall: mm(3.175),
            corner_radius: mm(4.7625),
            modulus: mpa(68_900.0),
            poisson: 0.33,
            yield_strength: mpa(241.0),
        }
    }

    #[test]
    fn unloading_leaves_nothing_early_and_most_of_it_late() {
        let curve = FaceCurve::new(&tube(), mm(20.0), 1.0);
        assert!(curve.left_after(mm(0.02)).si() < 2e-6);
        let late = curve.left_after(mm(3.0)).si();
        assert!(late > 1.5e-3 && late < 3.0e-3, "{late}");
    }

    #[test]
    fn indentation_inverts_force() {
        let curve = FaceCurve::new(&tube(), mm(20.0), 0.9);
        for delta in [1e-5, 3e-4, 1.5e-3, 3e-3] {
            let back = curve.indentation_si(curve.force_si(delta), 0.01);
            assert!((back / delta - 1.0).abs() < 1e-5, "{delta}: {back}");
        }
    }
}

//! Fatigue of bolts and of holes: amplitudes, allowed amplitudes, curves of stress range against
//! cycles, and the summing of damage.

use crate::quantity::{Area, Force, InUnits, Length, Stress, ksi, mpa};

/// Exponent of the steel code's curves: `F_SR = 1000·(C_f/N)^0.333`.
const AISC_EXPONENT: f64 = 0.333;

/// Cycles at which categories are named.
pub const TWO_MILLION: f64 = 2e6;

/// Stress amplitude in a bolt under a pull that comes and goes.
///
/// ```text
/// σ_a = C·ΔN/(2·A_t)
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `range` | `ΔN`, outside pull from its least to its largest | N |
/// | `share` | `C`, part of it that the bolt feels; 1 where no relief is credited | 1 |
/// | `area` | `A_t`, tensile stress area | m² |
///
/// Holds while the faces stay together. Bending of the bolt is not in it.
///
/// # Sources
/// Shigley 9e section 8-11.
#[must_use]
pub fn bolt_amplitude(range: Force, share: f64, area: Area) -> Stress {
    mpa(share * range.si() / (2.0 * area.si()) * 1e-6)
}

/// Amplitude that a bolt with preload endures, straight line between endurance and tensile strength.
///
/// ```text
/// S_a = S_e·(S_ut − σ_i)/(S_ut + S_e)
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `endurance` | `S_e`, fully corrected, repeated axial load | Pa |
/// | `tensile` | `S_ut` | Pa |
/// | `preload` | `σ_i = F_i/A_t` | Pa |
///
/// Holds for a pull that returns to zero. Zero where the preload uses up the strength.
///
/// # Sources
/// Shigley 9e Eq. 8-45 (Goodman), with a factor of one.
#[must_use]
pub fn goodman(endurance: Stress, tensile: Stress, preload: Stress) -> Stress {
    let (se, sut, si) = (endurance.si(), tensile.si(), preload.si());
    mpa((se * (sut - si) / (sut + se)).max(0.0) * 1e-6)
}

/// The same by Gerber's parabola.
///
/// ```text
/// S_a = [S_ut·√(S_ut² + 4·S_e·(S_e + σ_i)) − S_ut² − 2·σ_i·S_e] / (2·S_e)
/// ```
///
/// # Sources
/// Shigley 9e Eq. 8-46 (Gerber), with a factor of one.
#[must_use]
pub fn gerber(endurance: Stress, tensile: Stress, preload: Stress) -> Stress {
    let (se, sut, si) = (endurance.si(), tensile.si(), preload.si());
    let root = (sut * sut + 4.0 * se * (se + si)).sqrt();
    mpa(((sut * root - sut * sut - 2.0 * si * se) / (2.0 * se)).max(0.0) * 1e-6)
}

/// Amplitude that a bolt endures whose thread was rolled before heat treatment.
///
/// ```text
/// σ_ASV = 0.85·(150/d + 45)   in MPa, d in mm
/// ```
///
/// Holds for M8 to M39, two million cycles and more, 1 % failures; the preload has no say.
///
/// # Sources
/// VDI 2230 (from memory).
#[must_use]
pub fn vdi_amplitude(d: Length) -> Stress {
    mpa(0.85 * (150.0 / (d.si() * 1e3) + 45.0))
}

/// Stress range against cycles: a straight line on double logarithmic paper.
///
/// ```text
/// S(N) = S_2M·(2·10⁶/N)^(1/m)
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `S_2M` | range at two million cycles, on the sloping line | Pa |
/// | `m` | slope | 1 |
/// | `threshold` | range below which cycles of one height do no harm | Pa |
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Curve {
    at_two_million: f64,
    slope: f64,
    threshold: f64,
}

impl Curve {
    /// The steel code's form.
    ///
    /// ```text
    /// F_SR = 1000·(C_f/N)^0.333 ≥ F_TH   in ksi
    /// ```
    ///
    /// # Sources
    /// AISC 360-22 Eq. A-3-1.
    #[must_use]
    pub fn aisc(constant: f64, threshold: Stress) -> Self {
        Self {
            at_two_million: ksi(1000.0 * (constant / TWO_MILLION).powf(AISC_EXPONENT)).si(),
            slope: 1.0 / AISC_EXPONENT,
            threshold: threshold.si(),
        }
    }

    /// A category named by its range at two million cycles; no threshold.
    ///
    /// # Sources
    /// IIW recommendations and EN 1999-1-3 (form).
    #[must_use]
    pub fn named(at_two_million: Stress, slope: f64) -> Self {
        Self {
            at_two_million: at_two_million.si(),
            slope,
            threshold: 0.0,
        }
    }

    /// The same curve for a weaker metal: all stresses times a factor.
    #[must_use]
    pub fn scaled(&self, factor: f64) -> Self {
        Self {
            at_two_million: self.at_two_million * factor,
            slope: self.slope,
            threshold: self.threshold * factor,
        }
    }

    /// Range on the sloping line at a number of cycles.
    #[must_use]
    pub fn range_at(&self, cycles: f64) -> Stress {
        mpa(self.at_two_million * (TWO_MILLION / cycles).powf(1.0 / self.slope) * 1e-6)
    }

    /// Range below which cycles of one height do no harm; zero where none is published.
    #[must_use]
    pub fn threshold(&self) -> Stress {
        Stress::of_si(self.threshold)
    }

    /// Cycles to failure on the sloping line.
    #[must_use]
    pub fn cycles_at(&self, range: Stress) -> f64 {
        TWO_MILLION * (self.at_two_million / range.si()).powf(self.slope)
    }
}

/// Cycles of one height.
#[derive(Clone, Copy, Debug, PartialEq, serde::Serialize)]
pub struct Block {
    /// Height as a share of the largest range.
    pub share: f64,
    /// How many come on each unit of way (mile).
    pub per_mile: f64,
}

/// Damage on each mile by summing shares of life.
///
/// ```text
/// D = Σ n_i/N_i,   failure at D = 1
/// ```
///
/// Cycles below the threshold count on the sloping line as soon as any cycle lies above it; if none
/// does, nothing counts.
///
/// # Sources
/// Palmgren–Miner; AISC 360-22 Appendix 3 gives the curves.
#[must_use]
pub fn damage_per_mile(curve: &Curve, full_range: Stress, blocks: &[Block]) -> f64 {
    let harmless = blocks
        .iter()
        .all(|block| block.share * full_range.si() <= curve.threshold);
    if harmless {
        return 0.0;
    }
    blocks
        .iter()
        .filter(|block| block.share > 0.0)
        .map(|block| block.per_mile / curve.cycles_at(full_range * block.share))
        .sum()
}

/// Height of two million equal cycles that do the same damage, as a share of the largest range.
///
/// ```text
/// r = (Σ n_i·s_i^m·L / 2·10⁶)^(1/m)
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `s`, `n` | height as a share of the largest, cycles on each mile | 1, 1/mile |
/// | `miles` | `L`, way to be covered | mile |
/// | `slope` | `m` | 1 |
///
/// # Sources
/// Palmgren–Miner, solved for the height.
#[must_use]
pub fn equivalent_share(blocks: &[Block], miles: f64, slope: f64) -> f64 {
    let sum: f64 = blocks
        .iter()
        .map(|block| block.per_mile * block.share.powf(slope))
        .sum();
    (sum * miles / TWO_MILLION).powf(1.0 / slope)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn cycles_invert_ranges() {
        let curve = Curve::aisc(4.4, ksi(10.0));
        for n in [1e4, 3e5, 2e6, 7e7] {
            assert!((curve.cycles_at(curve.range_at(n)) / n - 1.0).abs() < 1e-9);
        }
    }

    #[test]
    fn below_the_threshold_nothing_counts_unless_something_lies_above() {
        let curve = Curve::aisc(4.4, ksi(10.0));
        let small = Block {
            share: 0.5,
            per_mile: 100.0,
        };
        let large = Block {
            share: 1.0,
            per_mile: 1.0,
        };
        assert_eq!(damage_per_mile(&curve, ksi(19.9), &[small]), 0.0);
        assert_eq!(damage_per_mile(&curve, ksi(9.9), &[small, large]), 0.0);
        let both = damage_per_mile(&curve, ksi(15.0), &[small, large]);
        let one = damage_per_mile(&curve, ksi(15.0), &[large]);
        assert!(both > 5.0 * one, "{both} {one}");
    }

    /// Two million cycles of the equivalent height do what the blocks do over the way.
    #[test]
    fn the_equivalent_height_does_the_same_damage() {
        let blocks = [
            Block {
                share: 1.0,
                per_mile: 0.02,
            },
            Block {
                share: 0.4,
                per_mile: 8.0,
            },
        ];
        let curve = Curve::named(mpa(60.0), 3.0);
        let miles = 40_000.0;
        let share = equivalent_share(&blocks, miles, 3.0);
        let full = mpa(90.0);
        let by_blocks = damage_per_mile(&curve, full, &blocks) * miles;
        let by_one = TWO_MILLION / curve.cycles_at(full * share);
        assert!((by_blocks / by_one - 1.0).abs() < 1e-9);
    }

    #[test]
    fn the_parabola_allows_more_than_the_line() {
        let (se, sut, si) = (ksi(18.6), ksi(120.0), ksi(63.75));
        assert!(gerber(se, sut, si) > goodman(se, sut, si));
        assert_eq!(goodman(se, sut, ksi(130.0)).si(), 0.0);
    }
}

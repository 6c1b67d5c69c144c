//! How lengths, forces, torques and angles are lettered on a drawing.

/// Which units the reader sees.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum UnitSystem {
    /// mm, kN, N·m.
    #[default]
    Si,
    /// in, lbf, lbf·ft.
    Us,
}

/// Newtons in a pound-force, exact.
pub(crate) const LBF_N: f64 = 4.448_221_615_260_5;
/// Newton metres in a pound-force foot, exact.
pub(crate) const LBF_FT_NM: f64 = 1.355_817_948_331_400_4;

/// Number and unit with a non-breaking space, digits after the point as said.
fn join(value: f64, digits: usize, unit: &str) -> String {
    // A hair more, so that 3.175 does not print as 3.17 for being 3.174999… in binary.
    let value = if value.is_finite() {
        value * (1.0 + 1e-12)
    } else {
        0.0
    };
    format!("{value:.digits$}\u{a0}{unit}")
}

/// Digits after the point that leave about three significant ones.
fn digits(value: f64) -> usize {
    match value.abs() {
        v if v >= 100.0 => 0,
        v if v >= 10.0 => 1,
        _ => 2,
    }
}

impl UnitSystem {
    /// A length given in mm.
    #[must_use]
    pub fn length(self, mm: f64) -> String {
        match self {
            Self::Si => join(mm, if mm.abs() >= 10.0 { 1 } else { 2 }, "mm"),
            Self::Us => join(mm / 25.4, if mm.abs() >= 25.4 { 2 } else { 3 }, "in"),
        }
    }

    /// A force given in N.
    #[must_use]
    pub fn force(self, n: f64) -> String {
        match self {
            Self::Si => join(n / 1e3, digits(n / 1e3).min(1), "kN"),
            Self::Us => join((n / LBF_N / 10.0).round() * 10.0, 0, "lbf"),
        }
    }

    /// A torque given in N·m.
    #[must_use]
    pub fn torque(self, nm: f64) -> String {
        match self {
            Self::Si => join(nm, 0, "N·m"),
            Self::Us => join(nm / LBF_FT_NM, 0, "lbf·ft"),
        }
    }

    /// N·m in one unit of the torque axis.
    #[must_use]
    pub const fn torque_step_nm(self) -> f64 {
        match self {
            Self::Si => 1.0,
            Self::Us => LBF_FT_NM,
        }
    }

    /// Symbol of the torque axis.
    #[must_use]
    pub const fn torque_symbol(self) -> &'static str {
        match self {
            Self::Si => "N·m",
            Self::Us => "lbf·ft",
        }
    }

    /// N in one unit that force scales are stepped in (kN, lbf).
    #[must_use]
    pub(crate) const fn force_step_n(self) -> f64 {
        match self {
            Self::Si => 1e3,
            Self::Us => LBF_N,
        }
    }

    /// Symbol of the force scale.
    #[must_use]
    pub(crate) const fn force_symbol(self) -> &'static str {
        match self {
            Self::Si => "kN",
            Self::Us => "lbf",
        }
    }
}

/// The smallest of 1, 2, 5 × 10ⁿ that is not less than `value`; 1 for what is not a positive number.
#[must_use]
pub fn step_up(value: f64) -> f64 {
    if !(value.is_finite() && value > 0.0) {
        return 1.0;
    }
    let decade = 10_f64.powf(value.log10().floor());
    [1.0, 2.0, 5.0, 10.0]
        .into_iter()
        .map(|m| m * decade)
        .find(|s| *s >= value * (1.0 - 1e-9))
        .unwrap_or(10.0 * decade)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_carry_their_unit_and_no_more_digits_than_they_deserve() {
        assert_eq!(UnitSystem::Si.length(50.8), "50.8\u{a0}mm");
        assert_eq!(UnitSystem::Us.length(50.8), "2.00\u{a0}in");
        assert_eq!(UnitSystem::Us.length(3.175), "0.125\u{a0}in");
        assert_eq!(UnitSystem::Si.force(11_420.0), "11.4\u{a0}kN");
        assert_eq!(UnitSystem::Us.force(11_420.0), "2570\u{a0}lbf");
        assert_eq!(UnitSystem::Si.length(f64::NAN), "0.00\u{a0}mm");
    }

    #[test]
    fn steps_are_one_two_or_five() {
        for (value, step) in [
            (0.3, 0.5),
            (1.0, 1.0),
            (1.1, 2.0),
            (4.0, 5.0),
            (51.0, 100.0),
            (f64::NAN, 1.0),
        ] {
            assert!((step_up(value) - step).abs() < 1e-9 * step, "{value}");
        }
    }
}

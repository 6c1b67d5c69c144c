//! The exact definitions of the customary units, and everything that follows from them.
//!
//! Each factor is a fraction of whole numbers, so that pound-force, psi and pound-force foot follow
//! from inch, pound and standard gravity without a rounding on the way, and no factor is written
//! down twice. Definitions: NIST SP 811 (2008), appendix B; standard gravity: 3rd CGPM, 1901.
//!
//! `uom` 0.38 rounds its customary units to seven figures (its pound-force is 4.448222 N) and carries
//! two psi that differ, so a value would not survive the way to SI and back in all its digits. The
//! units that are needed as `uom` types are therefore defined again at the foot of this file.

/// How many coherent SI units one unit holds, as a reduced fraction of whole numbers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Factor {
    numerator: u128,
    denominator: u128,
}

impl Factor {
    /// `numerator`/`denominator`, reduced. Only evaluated at compile time: a zero denominator and a part
    /// that `f64` does not hold exactly fail the build.
    const fn new(numerator: u128, denominator: u128) -> Self {
        let (mut a, mut b) = (numerator, denominator);
        while b != 0 {
            (a, b) = (b, a % b);
        }
        let (numerator, denominator) = (numerator / a, denominator / a);
        assert!(f64_holds(numerator) && f64_holds(denominator));
        Self {
            numerator,
            denominator,
        }
    }

    /// `count` of this unit: a foot is `INCH.times(12)`.
    pub(super) const fn times(self, count: u128) -> Self {
        Self::new(self.numerator * count, self.denominator)
    }

    /// One `parts`-th of this unit.
    pub(super) const fn part(self, parts: u128) -> Self {
        Self::new(self.numerator, self.denominator * parts)
    }

    /// Product of two units: a pound-force foot is `POUND_FORCE.by(FOOT)`.
    pub(super) const fn by(self, other: Self) -> Self {
        Self::new(
            self.numerator * other.numerator,
            self.denominator * other.denominator,
        )
    }

    /// Quotient of two units: a psi is `POUND_FORCE.per(INCH.by(INCH))`.
    pub(super) const fn per(self, other: Self) -> Self {
        Self::new(
            self.numerator * other.denominator,
            self.denominator * other.numerator,
        )
    }

    /// Numerator, exact.
    #[must_use]
    pub const fn numerator(self) -> f64 {
        self.numerator as f64
    }

    /// Denominator, exact.
    #[must_use]
    pub const fn denominator(self) -> f64 {
        self.denominator as f64
    }

    /// The factor as the nearest `f64`.
    #[must_use]
    pub const fn value(self) -> f64 {
        self.numerator() / self.denominator()
    }
}

/// Whether the significant bits fit the 53 of an `f64`.
const fn f64_holds(whole: u128) -> bool {
    whole.leading_zeros() + whole.trailing_zeros() >= u128::BITS - f64::MANTISSA_DIGITS
}

/// The coherent SI unit itself.
pub const ONE: Factor = Factor::new(1, 1);
/// Inch: 25.4 mm.
pub const INCH: Factor = Factor::new(254, 10_000);
/// Pound: 0.453 592 37 kg.
pub const POUND: Factor = Factor::new(45_359_237, 100_000_000);
/// Standard gravity: 9.806 65 m/s².
pub const GRAVITY: Factor = Factor::new(980_665, 100_000);

/// Thousandth: milli.
pub const MILLI: Factor = ONE.part(1_000);
/// Hundredth: centi, percent.
pub const CENTI: Factor = ONE.part(100);
/// Thousand: kilo.
pub const KILO: Factor = ONE.times(1_000);
/// Million: mega.
pub const MEGA: Factor = KILO.by(KILO);
/// Thousand million: giga.
pub const GIGA: Factor = MEGA.by(KILO);
/// Minute: 60 s.
pub const MINUTE: Factor = ONE.times(60);
/// Foot: 12 in.
pub const FOOT: Factor = INCH.times(12);
/// Pound-force: weight of one pound at standard gravity.
pub const POUND_FORCE: Factor = POUND.by(GRAVITY);
/// Kip: 1000 lbf.
pub const KIP: Factor = POUND_FORCE.times(1_000);
/// Pound-force per square inch.
pub const PSI: Factor = POUND_FORCE.per(INCH.by(INCH));
/// 1000 psi.
pub const KSI: Factor = PSI.times(1_000);
/// Pound-force foot.
pub const POUND_FORCE_FOOT: Factor = POUND_FORCE.by(FOOT);
/// Pound-force inch.
pub const POUND_FORCE_INCH: Factor = POUND_FORCE.by(INCH);
/// A step of one degree Fahrenheit: 5/9 K.
pub const FAHRENHEIT_STEP: Factor = Factor::new(5, 9);

/// Force.
pub mod force {
    unit! {
        system: uom::si;
        quantity: uom::si::force;

        /// Pound-force.
        @pound_force: crate::quantity::exact::POUND_FORCE.value(); "lbf", "pound-force", "pounds-force";
        /// 1000 lbf.
        @kip: crate::quantity::exact::KIP.value(); "kip", "kip", "kips";
    }
}

/// Stress.
pub mod pressure {
    unit! {
        system: uom::si;
        quantity: uom::si::pressure;

        /// Pound-force per square inch.
        @psi: crate::quantity::exact::PSI.value(); "psi", "pound-force per square inch", "pounds-force per square inch";
        /// 1000 psi.
        @ksi: crate::quantity::exact::KSI.value(); "ksi", "kip per square inch", "kips per square inch";
    }
}

/// Torque.
pub mod torque {
    unit! {
        system: uom::si;
        quantity: uom::si::torque;

        /// Pound-force foot.
        @pound_force_foot: crate::quantity::exact::POUND_FORCE_FOOT.value(); "lbf·ft", "pound-force foot", "pound-force feet";
        /// Pound-force inch.
        @pound_force_inch: crate::quantity::exact::POUND_FORCE_INCH.value(); "lbf·in", "pound-force inch", "pound-force inches";
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// NIST SP 811 (2008), appendix B.8, prints the exact factors in full or to seven figures.
    #[test]
    fn derived_factors_match_the_printed_ones() {
        for (name, factor, printed, half_last_digit) in [
            ("foot", FOOT, 0.3048, 0.0),
            ("pound-force", POUND_FORCE, 4.448_221_615_260_5, 0.0),
            ("pound-force foot", POUND_FORCE_FOOT, 1.355_818, 5e-7),
            ("pound-force inch", POUND_FORCE_INCH, 0.112_984_8, 5e-8),
            ("psi", PSI, 6_894.757, 5e-4),
            ("ksi", KSI, 6_894_757.0, 0.5),
            ("lbf/in", POUND_FORCE.per(INCH), 175.126_8, 5e-5),
        ] {
            let got = factor.value();
            assert!(
                (got - printed).abs() <= half_last_digit,
                "{name}: {got}, printed {printed}"
            );
        }
    }

    #[test]
    fn uom_units_carry_the_same_factors() {
        let lbf = uom::si::f64::Force::new::<force::pound_force>(1.0).value;
        let psi = uom::si::f64::Pressure::new::<pressure::psi>(1.0).value;
        let foot_pound = uom::si::f64::Torque::new::<torque::pound_force_foot>(1.0).value;
        assert_eq!(lbf, POUND_FORCE.value(), "pound-force");
        assert_eq!(psi, PSI.value(), "psi");
        assert_eq!(foot_pound, POUND_FORCE_FOOT.value(), "pound-force foot");
    }
}

//! How lengths, forces, torques and angles are lettered on a drawing: as everywhere on the page, by
//! `calc_core::quantity`, from the plain mm, N and N·m that reports hold.

use calc_core::quantity::{
    Dimension, InUnits, UnitSystem, as_fraction_inches, mm, pound_force, pound_force_foot, write,
    write_parts,
};

/// Lettering in a reader's units.
pub trait Lettering {
    /// A length given in mm.
    fn length(self, mm: f64) -> String;
    /// A size as stock has it or a tape shows it, given in mm: in US customary units a fraction, if it is one.
    fn stock(self, mm: f64) -> String;
    /// A length given in mm, its unit left to the title strip.
    fn size(self, mm: f64) -> String;
    /// A force given in N.
    fn force(self, n: f64) -> String;
    /// A torque given in N·m.
    fn torque(self, nm: f64) -> String;
    /// N·m in one unit of the torque axis, and its symbol.
    fn torque_axis(self) -> (f64, &'static str);
    /// N in one unit that force scales are stepped in, and its symbol.
    fn force_scale(self) -> (f64, &'static str);
    /// The piece of paper that stands for so much force: its length in drawing units, one of which is a CSS
    /// pixel, and in words.
    fn paper(self) -> (f64, &'static str);
}

/// A length that is so many sixty-fourths of an inch, for a reader who counts in them.
fn fraction(length: f64, units: UnitSystem) -> Option<String> {
    let parts = 64.0 * length / 25.4;
    // A thousandth of such a part is the noise of conversions; anything else is a measured length.
    let exact = units == UnitSystem::Us && (parts - parts.round()).abs() < 1e-3;
    exact.then(|| as_fraction_inches(mm(length).si())).flatten()
}

impl Lettering for UnitSystem {
    fn length(self, length: f64) -> String {
        write(mm(length).si(), Dimension::Length, self)
    }

    fn stock(self, length: f64) -> String {
        fraction(length, self).unwrap_or_else(|| self.length(length))
    }

    fn size(self, length: f64) -> String {
        match fraction(length, self) {
            Some(text) => text.trim_end_matches("\u{a0}in").into(),
            None => write_parts(mm(length).si(), Dimension::Length, self).0,
        }
    }

    fn force(self, n: f64) -> String {
        write(n, Dimension::Force, self)
    }

    fn torque(self, nm: f64) -> String {
        write(nm, Dimension::Torque, self)
    }

    fn torque_axis(self) -> (f64, &'static str) {
        match self {
            Self::Metric => (1.0, "N·m"),
            Self::Us => (pound_force_foot(1.0).si(), "lb-ft"),
        }
    }

    fn force_scale(self) -> (f64, &'static str) {
        match self {
            Self::Metric => (1e3, "kN"),
            Self::Us => (pound_force(1.0).si(), "lbf"),
        }
    }

    fn paper(self) -> (f64, &'static str) {
        // 96 CSS pixels are an inch.
        match self {
            Self::Metric => (96.0 / 2.54, "10\u{a0}mm"),
            Self::Us => (48.0, "1/2\u{a0}in"),
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
    fn axis_symbols_are_those_of_the_numbers() {
        for units in [UnitSystem::Metric, UnitSystem::Us] {
            assert!(units.torque(30.0).ends_with(units.torque_axis().1));
            assert!(units.force(3e3).ends_with(units.force_scale().1));
        }
        assert_eq!(UnitSystem::Metric.size(3.175), "3.18");
        assert_eq!(UnitSystem::Us.size(3.175), "1/8");
        assert_eq!(UnitSystem::Us.size(3.048), "0.12");
        for (mm, us, metric) in [
            (12.7, "1/2\u{a0}in", "12.7\u{a0}mm"),
            (38.1, "1\u{a0}1/2\u{a0}in", "38.1\u{a0}mm"),
            (12.0, "0.472\u{a0}in", "12\u{a0}mm"),
        ] {
            assert_eq!(UnitSystem::Us.stock(mm), us);
            assert_eq!(UnitSystem::Metric.stock(mm), metric);
        }
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

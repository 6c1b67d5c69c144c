//! Writing results: as many digits as the result warrants, in the units of the reader's system.
//!
//! Form after NIST SP 811 (2008), chapter 7: no-break space between number and unit symbol, also before
//! %, none before the ° of an angle; five and more digits in groups of three set apart by a narrow
//! no-break space, in US customary units by a comma, as its readers write them; minus as U+2212.

use super::dimension::{Dimension, UnitSystem};
use super::parse::parse_number;
use super::unit::Unit;

/// What stands in place of a number that is not finite.
pub const NOT_DEFINED: &str = "not defined";

const NO_BREAK_SPACE: char = '\u{a0}';
const NARROW_NO_BREAK_SPACE: char = '\u{202f}';

/// More significant digits than this would show the noise of the last bits.
const MOST_DIGITS: usize = 14;

/// From here on a number is written with a power of ten (`1.23e15`): no quantity of a joint gets here.
const PLAIN_BELOW: f64 = 1e15;

/// The unit results of a dimension are shown in.
#[must_use]
pub const fn unit_for(dimension: Dimension, system: UnitSystem) -> Unit {
    use UnitSystem::{Metric, Us};
    match (dimension, system) {
        (Dimension::Length, Metric) => Unit::Millimetre,
        (Dimension::Length, Us) => Unit::Inch,
        (Dimension::Area, Metric) => Unit::SquareMillimetre,
        (Dimension::Area, Us) => Unit::SquareInch,
        (Dimension::Force, Metric) => Unit::Kilonewton,
        (Dimension::Force, Us) => Unit::PoundForce,
        (Dimension::Stress, Metric) => Unit::Megapascal,
        (Dimension::Stress, Us) => Unit::Ksi,
        (Dimension::Torque | Dimension::Moment, Metric) => Unit::NewtonMetre,
        (Dimension::Torque | Dimension::Moment | Dimension::Energy, Us) => Unit::PoundForceFoot,
        (Dimension::Energy, Metric) => Unit::Joule,
        (Dimension::Mass, Metric) => Unit::Kilogram,
        (Dimension::Mass, Us) => Unit::Pound,
        (Dimension::Temperature, Metric) => Unit::Celsius,
        (Dimension::Temperature, Us) => Unit::Fahrenheit,
        (Dimension::TemperatureStep, Metric) => Unit::CelsiusStep,
        (Dimension::TemperatureStep, Us) => Unit::FahrenheitStep,
        (Dimension::Stiffness, Metric) => Unit::KilonewtonPerMillimetre,
        (Dimension::Stiffness, Us) => Unit::PoundForcePerInch,
        (Dimension::Angle, _) => Unit::Degree,
        (Dimension::Acceleration, _) => Unit::Gravity,
        (Dimension::Time, _) => Unit::Minute,
        (Dimension::Share, _) => Unit::Percent,
        (Dimension::Ratio | Dimension::Count, _) => Unit::One,
    }
}

/// A result for the screen: `36.7 kN`, `8250 lbf`, `0.043 in`, `190°`, `12 %`.
///
/// Three significant digits. A length is given to 0.1 mm or 0.001 in (0.01 mm below 10 mm), a temperature to
/// 0.1°, an angle to 0.1° and from 100° on to 1°, with no whole digit rounded away, and with two significant
/// digits when it is smaller than that step. Zeros that end a decimal are left out.
///
/// ```
/// use calc_core::quantity::{Dimension, UnitSystem, write};
/// assert_eq!(write(0.0011, Dimension::Length, UnitSystem::Metric), "1.1\u{a0}mm");
/// assert_eq!(write(f64::NAN, Dimension::Force, UnitSystem::Us), "not defined");
/// ```
#[must_use]
pub fn write(si: f64, dimension: Dimension, system: UnitSystem) -> String {
    let unit = unit_for(dimension, system);
    let value = unit.from_si(si);
    if value.is_finite() {
        join(
            &on_screen(rounded_for(value, dimension, unit), system),
            unit,
        )
    } else {
        NOT_DEFINED.to_owned()
    }
}

/// [`write()`] in two parts: the number and the symbol of its unit. The number is [`NOT_DEFINED`] and the
/// symbol empty when the value is not finite.
#[must_use]
pub fn write_parts(si: f64, dimension: Dimension, system: UnitSystem) -> (String, &'static str) {
    let unit = unit_for(dimension, system);
    let value = unit.from_si(si);
    if value.is_finite() {
        (
            on_screen(rounded_for(value, dimension, unit), system),
            unit.symbol(),
        )
    } else {
        (NOT_DEFINED.to_owned(), "")
    }
}

/// A value in a given unit with at most `digits` significant digits (1 to 14).
#[must_use]
pub fn write_in(si: f64, unit: Unit, digits: usize) -> String {
    let value = unit.from_si(si);
    if value.is_finite() {
        let system = if unit.is_us_customary() {
            UnitSystem::Us
        } else {
            UnitSystem::Metric
        };
        join(&on_screen(significant(value, digits), system), unit)
    } else {
        NOT_DEFINED.to_owned()
    }
}

/// [`write()`] to be read aloud, for `aria-valuetext`: `75 pound-force feet`, `minus 40 degrees Celsius`.
#[must_use]
pub fn spoken(si: f64, dimension: Dimension, system: UnitSystem) -> String {
    let unit = unit_for(dimension, system);
    let value = unit.from_si(si);
    if !value.is_finite() {
        return NOT_DEFINED.to_owned();
    }
    let value = rounded_for(value, dimension, unit);
    let sign = if value < 0.0 { "minus " } else { "" };
    let number = plain(value.abs());
    let name = unit.spoken(value.abs() == 1.0);
    let gap = if name.is_empty() { "" } else { " " };
    format!("{sign}{number}{gap}{name}")
}

/// A length as inches and the nearest sixty-fourth, in lowest terms: `2 1/2 in`.
///
/// `None` when that is further from the length than 0.002 in and than 0.1 % of it, when the length is
/// not finite, and from a million inches on.
#[must_use]
pub fn as_fraction_inches(si: f64) -> Option<String> {
    const PARTS: f64 = 64.0;
    let inches = Unit::Inch.from_si(si);
    let size = inches.abs();
    if !size.is_finite() || size >= 1e6 {
        return None;
    }
    let parts = (size * PARTS).round();
    if (parts / PARTS - size).abs() > (0.001 * size).max(0.002) {
        return None;
    }
    let whole = (parts / PARTS).floor();
    let (mut numerator, mut denominator) = (parts - whole * PARTS, PARTS);
    while numerator > 0.0 && numerator % 2.0 == 0.0 {
        (numerator, denominator) = (numerator / 2.0, denominator / 2.0);
    }
    let number = match (whole > 0.0, numerator > 0.0) {
        (_, false) => format!("{whole}"),
        (false, true) => format!("{numerator}/{denominator}"),
        (true, true) => format!("{whole}{NO_BREAK_SPACE}{numerator}/{denominator}"),
    };
    let sign = if inches < 0.0 && parts > 0.0 {
        "−"
    } else {
        ""
    };
    Some(join(&format!("{sign}{number}"), Unit::Inch))
}

/// The value rounded to what its dimension warrants on screen.
fn rounded_for(value: f64, dimension: Dimension, unit: Unit) -> f64 {
    let decimals = match dimension {
        Dimension::Count => return decimal_places(value, 0),
        Dimension::Length if unit == Unit::Inch => 3,
        Dimension::Length if value.abs() < 10.0 => 2,
        // Nobody reads a tenth of a degree off a wrench.
        Dimension::Angle if value.abs() >= 100.0 => 0,
        Dimension::Length
        | Dimension::Angle
        | Dimension::Temperature
        | Dimension::TemperatureStep => 1,
        _ => return significant(value, 3),
    };
    let coarse = decimal_places(value, decimals);
    let fine = significant(value, 2);
    // Two digits of a small length say more than its last place does.
    if value.abs() * 10_f64.powi(i32::from(decimals)) < 10.0 {
        fine
    } else {
        coarse
    }
}

fn decimal_places(value: f64, places: u8) -> f64 {
    reparsed(format!("{:.1$}", nudged(value), usize::from(places)), value)
}

fn significant(value: f64, digits: usize) -> f64 {
    let decimals = digits.clamp(1, MOST_DIGITS) - 1;
    reparsed(format!("{:.1$e}", nudged(value), decimals), value)
}

/// Away from zero by a little more than conversions lose, so that 1/8 in = 3.175 mm, whose nearest `f64`
/// lies below, rounds to 3.18 mm as it does on paper.
fn nudged(value: f64) -> f64 {
    value * (1.0 + 4.0 * f64::EPSILON)
}

/// Rounding by printing is correct in decimal, which multiplying and dividing by powers of ten is not.
/// Next to the largest `f64` the rounded text overflows; there the value stays as it is.
fn reparsed(printed: String, value: f64) -> f64 {
    parse_number(&printed)
        .filter(|rounded| rounded.is_finite())
        .unwrap_or(value)
}

fn plain(value: f64) -> String {
    if value < PLAIN_BELOW {
        format!("{value}")
    } else {
        format!("{value:e}")
    }
}

/// The shortest decimal, with the minus sign and the groups of the screen.
fn on_screen(value: f64, system: UnitSystem) -> String {
    let mark = match system {
        UnitSystem::Us => ',',
        UnitSystem::Metric => NARROW_NO_BREAK_SPACE,
    };
    let number = plain(value.abs());
    let whole = number
        .find(|c: char| !c.is_ascii_digit())
        .unwrap_or(number.len());
    let mut out = String::with_capacity(number.len() + 8);
    if value < 0.0 {
        out.push('−');
    }
    for (at, c) in number.char_indices() {
        if whole >= 5 && at > 0 && at < whole && (whole - at) % 3 == 0 {
            out.push(mark);
        }
        out.push(c);
    }
    out
}

fn join(number: &str, unit: Unit) -> String {
    match unit {
        Unit::One => number.to_owned(),
        Unit::Degree => format!("{number}{}", unit.symbol()),
        _ => format!("{number}{NO_BREAK_SPACE}{}", unit.symbol()),
    }
}

#[cfg(test)]
mod tests {
    use super::super::read::read;
    use super::UnitSystem::{Metric, Us};
    use super::*;
    use proptest::prelude::*;

    fn shown(text: &str) -> String {
        text.replace(' ', "\u{a0}").replace('_', "\u{202f}")
    }

    /// In the expected text ` ` stands for the no-break space and `_` for the narrow one.
    #[test]
    fn results_on_screen() {
        use Dimension::*;
        for (si, dimension, system, text) in [
            (0.0011, Length, Metric, "1.1 mm"),
            (0.0762, Length, Metric, "76.2 mm"),
            (0.003_175, Length, Metric, "3.18 mm"),
            (2.4384, Length, Metric, "2438.4 mm"),
            (0.000_003_26, Length, Metric, "0.0033 mm"),
            (0.0011, Length, Us, "0.043 in"),
            (0.1524, Length, Us, "6 in"),
            (0.000_01, Length, Us, "0.00039 in"),
            (36_700.0, Force, Metric, "36.7 kN"),
            (36_700.0, Force, Us, "8250 lbf"),
            (-36_700.0, Force, Us, "−8250 lbf"),
            (150_000.0, Force, Us, "33,700 lbf"),
            (101.7, Torque, Us, "75 lb-ft"),
            (101.7, Torque, Metric, "102 N·m"),
            (250e6, Stress, Metric, "250 MPa"),
            (250e6, Stress, Us, "36.3 ksi"),
            (12.34e6, Stiffness, Metric, "12.3 kN/mm"),
            (12.34e6, Stiffness, Us, "70,500 lbf/in"),
            (1_587.573, Mass, Metric, "1590 kg"),
            (1_587.573, Mass, Us, "3500 lb"),
            (0.12, Share, Us, "12 %"),
            (0.001_234, Share, Us, "0.123 %"),
            (std::f64::consts::PI * 190.0 / 180.0, Angle, Us, "190°"),
            (std::f64::consts::PI * 6.0, Angle, Us, "1080°"),
            (293.15, Temperature, Metric, "20 °C"),
            (293.15, Temperature, Us, "68 °F"),
            (233.15, Temperature, Metric, "−40 °C"),
            (30.0, TemperatureStep, Us, "54 °F"),
            (9.806_65, Acceleration, Metric, "1 g"),
            (90.0, Time, Us, "1.5 min"),
            (0.15, Ratio, Us, "0.15"),
            (2.0 / 3.0, Ratio, Us, "0.667"),
            (9.996, Ratio, Us, "10"),
            (4.0, Count, Us, "4"),
            (123_456.0, Count, Us, "123,456"),
            (150_000_000.0, Force, Metric, "150_000 kN"),
            (std::f64::consts::PI * 482.7 / 180.0, Angle, Us, "483°"),
            (std::f64::consts::PI * 35.64 / 180.0, Angle, Us, "35.6°"),
            (0.0, Force, Metric, "0 kN"),
            (-0.0, Force, Metric, "0 kN"),
            (1.234e20, Ratio, Us, "1.23e20"),
            (f64::NAN, Force, Us, "not defined"),
            (f64::NEG_INFINITY, Length, Us, "not defined"),
        ] {
            let expected = match text {
                NOT_DEFINED => text.to_owned(),
                _ => shown(text),
            };
            assert_eq!(write(si, dimension, system), expected);
        }
    }

    #[test]
    fn parts_and_given_unit() {
        assert_eq!(
            write_parts(150_000.0, Dimension::Force, Us),
            ("33,700".to_owned(), "lbf")
        );
        assert_eq!(
            write_parts(f64::NAN, Dimension::Force, Us),
            (NOT_DEFINED.to_owned(), "")
        );
        assert_eq!(write_in(12_345.0, Unit::Newton, 4), shown("12_350 N"));
        assert_eq!(write_in(0.0, Unit::Newton, 0), shown("0 N"));
        assert_eq!(write_in(f64::INFINITY, Unit::Newton, 3), NOT_DEFINED);
    }

    #[test]
    fn read_aloud() {
        for (si, dimension, system, text) in [
            (101.7, Dimension::Torque, Us, "75 pound-force feet"),
            (0.0254, Dimension::Length, Us, "1 inch"),
            (0.0508, Dimension::Length, Us, "2 inches"),
            (0.12, Dimension::Share, Us, "12 percent"),
            (
                233.15,
                Dimension::Temperature,
                Metric,
                "minus 40 degrees Celsius",
            ),
            (150_000.0, Dimension::Force, Us, "33700 pounds-force"),
            (0.15, Dimension::Ratio, Us, "0.15"),
            (f64::NAN, Dimension::Ratio, Us, "not defined"),
        ] {
            assert_eq!(spoken(si, dimension, system), text);
        }
    }

    #[test]
    fn inches_as_fractions() {
        for (inches, text) in [
            (2.5, Some("2 1/2 in")),
            (0.125, Some("1/8 in")),
            (0.1265, Some("1/8 in")),
            (63.0 / 64.0, Some("63/64 in")),
            (0.999, Some("1 in")),
            (3.0, Some("3 in")),
            (0.0, Some("0 in")),
            (-0.001, Some("0 in")),
            (-2.5, Some("−2 1/2 in")),
            (12.0 / 25.4, None),
            (1e7, None),
            (f64::NAN, None),
        ] {
            assert_eq!(
                as_fraction_inches(Unit::Inch.to_si(inches)),
                text.map(shown),
                "{inches}"
            );
        }
    }

    proptest! {
        #[test]
        fn written_then_read_differs_by_half_a_unit_of_the_last_digit(
            index in 0..Unit::ALL.len(),
            mantissa in -9.999_999..9.999_999_f64,
            exponent in -6..9_i32,
            digits in 1..10_usize,
        ) {
            let unit = Unit::ALL[index];
            let dimension = unit.dimension();
            let si = unit.to_si(mantissa * 10_f64.powi(exponent));
            let value = unit.from_si(si);
            let text = write_in(si, unit, digits);
            // A unit without symbol is read back as a bare number.
            let typed = read(&text, dimension, Unit::One)
                .map_err(|error| TestCaseError::fail(format!("{text}: {error}")))?;
            let printed = format!("{value:.0$e}", digits - 1);
            let exponent: i32 = printed.split_once('e').unwrap().1.parse().unwrap();
            let last_digit = 10_f64.powi(exponent + 1 - i32::try_from(digits).unwrap());
            let noise = 8.0 * f64::EPSILON * value.abs();
            prop_assert_eq!(typed.unit, unit);
            prop_assert!((typed.value - value).abs() <= 0.5 * last_digit + noise, "{value} → {text}");
        }

        #[test]
        fn every_result_is_written(si in prop_oneof![
            9 => any::<f64>(),
            1 => prop::sample::select(vec![f64::MAX, f64::MIN, f64::MIN_POSITIVE, 5e-324, -0.0]),
        ]) {
            for dimension in Dimension::ALL {
                for system in [Us, Metric] {
                    let text = write(si, dimension, system);
                    prop_assert!(!text.contains("NaN") && !text.contains("inf"), "{text}");
                    prop_assert!(!text.starts_with("-"), "{text}");
                    let (number, unit) = write_parts(si, dimension, system);
                    prop_assert!(text.starts_with(&number) && text.ends_with(unit));
                    let _ = (spoken(si, dimension, system), as_fraction_inches(si));
                }
            }
        }
    }
}

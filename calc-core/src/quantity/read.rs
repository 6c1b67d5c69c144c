//! Reading what a person types into a field.

use super::dimension::Dimension;
use super::number::{Leading, leading_number, normalise, without_thousands_commas};
use super::read_error::ReadError;
use super::unit::Unit;
use serde::Serialize;

/// Longest text looked at, in characters.
const LONGEST_TEXT: usize = 80;

/// Longest piece quoted back in an error, in characters.
const LONGEST_PIECE: usize = 24;

/// How something was taken that could have been meant otherwise; worth saying beside the field.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
#[non_exhaustive]
pub enum Note {
    /// Pounds in a field for a force were taken as pounds-force.
    PoundAsForce,
}

/// A value as typed and as understood.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Typed {
    /// The text as typed.
    pub text: String,
    /// The number in `unit`; feet and inches together are inches.
    pub value: f64,
    /// The unit typed, or the field's own when none was.
    pub unit: Unit,
    /// The value in the coherent SI unit; finite.
    pub si: f64,
    /// How the text was taken, when that is worth saying.
    pub note: Option<Note>,
}

impl Typed {
    /// A value that was set, not typed; its text is the number and the symbol of the unit.
    ///
    /// `None` when the number is not finite or too large for SI.
    ///
    /// ```
    /// use calc_core::quantity::{Typed, Unit};
    /// assert_eq!(Typed::set(12.0, Unit::Millimetre).unwrap().text, "12 mm");
    /// ```
    #[must_use]
    pub fn set(value: f64, unit: Unit) -> Option<Self> {
        let si = unit.to_si(value);
        let gap = match unit {
            Unit::Degree | Unit::One => "",
            _ => " ",
        };
        (value.is_finite() && si.is_finite()).then(|| Self {
            text: format!("{value}{gap}{}", unit.symbol()),
            value,
            unit,
            si,
            note: None,
        })
    }
}

/// Reads a number with or without a unit: `1/2`, `2-1/2"`, `12 mm`, `75 ft-lb`, `3' 6"`, `20 °C`.
///
/// A number alone is one of `bare`. A unit has to measure `dimension`: nothing is guessed, except
/// that pounds in a field for a force are pounds-force, which the result then says in
/// [`Typed::note`]. Decimal point and decimal comma are both read; a comma before exactly three digits
/// sets thousands apart in US customary units, typed or `bare`, and is refused elsewhere, because it could
/// be either.
///
/// # Errors
/// [`ReadError`] for any text that does not say one finite value of that dimension; there is no text
/// for which this function panics.
///
/// # Examples
/// ```
/// use calc_core::quantity::{Dimension, Unit, read};
///
/// let wall = read("1/8", Dimension::Length, Unit::Inch).unwrap();
/// assert_eq!((wall.value, wall.unit, wall.si), (0.125, Unit::Inch, 0.003175));
///
/// let refused = read("75 lb", Dimension::Torque, Unit::PoundForceFoot).unwrap_err();
/// assert_eq!(refused.code(), "wrong-dimension");
/// ```
pub fn read(text: &str, dimension: Dimension, bare: Unit) -> Result<Typed, ReadError> {
    if text.chars().nth(LONGEST_TEXT).is_some() {
        return match text.trim() {
            "" => Err(ReadError::Empty),
            _ => Err(ReadError::TooLong),
        };
    }
    let plain = normalise(text);
    if plain.is_empty() {
        return Err(ReadError::Empty);
    }
    in_thousands(&plain, dimension, bare)
        .map_or_else(|| understand(&plain, dimension, bare), Ok)
        .map(|(value, unit, si, note)| Typed {
            text: text.to_owned(),
            value,
            unit,
            si,
            note,
        })
        .map_err(shorten)
}

type Understood = (f64, Unit, f64, Option<Note>);

/// `5,630 lbf`, `12,500.5`: commas between groups of three, where the unit is one whose readers write them so.
fn in_thousands(text: &str, dimension: Dimension, bare: Unit) -> Option<Understood> {
    let without = without_thousands_commas(text)?;
    let found = understand(&without, dimension, bare).ok()?;
    found.1.is_us_customary().then_some(found)
}

fn understand(text: &str, dimension: Dimension, bare: Unit) -> Result<Understood, ReadError> {
    let number = leading_number(text)?;
    let (value, unit, note) = with_unit(number, text, dimension, bare)?;
    let si = unit.to_si(value);
    if !(value.is_finite() && si.is_finite()) {
        return Err(ReadError::TooLarge {
            piece: text.to_owned(),
        });
    }
    if dimension == Dimension::Count && value.fract() != 0.0 {
        return Err(ReadError::NotWhole {
            piece: text.to_owned(),
        });
    }
    Ok((value, unit, si, note))
}

fn with_unit(
    number: Leading<'_>,
    text: &str,
    dimension: Dimension,
    bare: Unit,
) -> Result<(f64, Unit, Option<Note>), ReadError> {
    let value = number.value;
    let typed = unit_text(number.rest);
    if typed.is_empty() {
        return if bare.fits(dimension) {
            Ok((value, bare, None))
        } else {
            Err(ReadError::WrongDimension {
                piece: bare.symbol().to_owned(),
                found: bare.dimension(),
                wanted: dimension,
            })
        };
    }
    if let Some(unit) = Unit::spelled_in(typed, dimension) {
        return Ok((value, unit, None));
    }
    if dimension == Dimension::Length
        && let Some(inches) = inches_after_feet(number, typed)
    {
        return if (0.0..12.0).contains(&inches) {
            let feet_and_inches = value.abs() * 12.0 + inches;
            let value = feet_and_inches.copysign(value);
            Ok((value, Unit::Inch, None))
        } else {
            Err(ReadError::PartTooLarge {
                piece: text.to_owned(),
            })
        };
    }
    let piece = typed.to_owned();
    if Unit::is_ambiguous(typed) {
        return Err(ReadError::AmbiguousUnit {
            piece,
            wanted: dimension,
        });
    }
    match Unit::spelled(typed) {
        Some(Unit::Pound) if dimension == Dimension::Force => {
            Ok((value, Unit::PoundForce, Some(Note::PoundAsForce)))
        }
        Some(unit) => Err(ReadError::WrongDimension {
            piece,
            found: unit.dimension(),
            wanted: dimension,
        }),
        None if typed.starts_with(char::is_alphabetic) => Err(ReadError::UnknownUnit {
            piece,
            wanted: dimension,
        }),
        None => Err(ReadError::NotUnderstood { piece }),
    }
}

/// What stands after the number, without the hyphen of `1/2-in`.
fn unit_text(rest: &str) -> &str {
    let rest = rest.trim();
    match rest.strip_prefix('-') {
        Some(after) if after.starts_with(char::is_alphabetic) => after,
        _ => rest,
    }
}

/// The inches of `3' 6"`, `5 ft 6 in`, `5'-6 1/2"`, when whole feet and then inches are written.
fn inches_after_feet(feet: Leading<'_>, typed: &str) -> Option<f64> {
    let end = typed.find(|c: char| c.is_ascii_digit())?;
    let (mark, second) = typed.split_at_checked(end)?;
    let mark = mark.trim_end_matches([' ', '-']);
    if !feet.plain || Unit::spelled_in(mark, Dimension::Length) != Some(Unit::Foot) {
        return None;
    }
    let inches = leading_number(second).ok()?;
    let mark = unit_text(inches.rest);
    let in_inches =
        mark.is_empty() || Unit::spelled_in(mark, Dimension::Length) == Some(Unit::Inch);
    in_inches.then_some(inches.value)
}

/// Cuts the quoted piece to a length that fits a message.
fn shorten(mut error: ReadError) -> ReadError {
    if let Some(piece) = error.piece_mut()
        && let Some((end, _)) = piece.char_indices().nth(LONGEST_PIECE)
    {
        piece.truncate(end);
        piece.push('…');
    }
    error
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn bare(dimension: Dimension) -> Unit {
        Unit::of(dimension).next().unwrap()
    }

    #[test]
    fn understood() {
        use Dimension::*;
        use Unit::{
            Celsius, CelsiusStep, Degree, Fahrenheit, Foot, Gravity, Hour, Inch, Joule, Kilogram,
            Kilonewton, KilonewtonMetre, Kip, Ksi, Megapascal, Metre, Millimetre, Newton,
            NewtonMetre, NewtonPerMillimetre, NewtonPerSquareMillimetre, One, Percent, Pound,
            PoundForce, PoundForceFoot, PoundForceInch, PoundForcePerInch, Psi, SquareInch, Tonne,
            Turn,
        };
        for (text, dimension, value, unit) in [
            ("1/2", Length, 0.5, Millimetre),
            ("2 1/2 in", Length, 2.5, Inch),
            ("2-1/2\"", Length, 2.5, Inch),
            ("1/2-in", Length, 0.5, Inch),
            ("2½\"", Length, 2.5, Inch),
            ("½ in", Length, 0.5, Inch),
            ("1⁄2 in.", Length, 0.5, Inch),
            ("\u{a0}12\u{202f}mm ", Length, 12.0, Millimetre),
            ("12mm", Length, 12.0, Millimetre),
            ("12 Mm", Length, 12.0, Millimetre),
            ("12 m", Length, 12.0, Metre),
            ("0,5", Length, 0.5, Millimetre),
            ("12 millimeters", Length, 12.0, Millimetre),
            ("3' 6\"", Length, 42.0, Inch),
            ("3’6”", Length, 42.0, Inch),
            ("3′ 6″", Length, 42.0, Inch),
            ("3'6''", Length, 42.0, Inch),
            ("3' 6", Length, 42.0, Inch),
            ("-3' 6\"", Length, -42.0, Inch),
            ("5 ft 6 in", Length, 66.0, Inch),
            ("5ft. 6 in.", Length, 66.0, Inch),
            ("5'-6 1/2\"", Length, 66.5, Inch),
            ("5 1/2'", Length, 5.5, Foot),
            ("3 feet", Length, 3.0, Foot),
            ("0.25 sq. in.", Area, 0.25, SquareInch),
            ("0.25 in^2", Area, 0.25, SquareInch),
            ("12 500 N", Force, 12_500.0, Newton),
            ("12.5 kn", Force, 12.5, Kilonewton),
            ("1000 lbf", Force, 1000.0, PoundForce),
            ("1000 pounds-force", Force, 1000.0, PoundForce),
            ("4 kips", Force, 4.0, Kip),
            ("250 N / mm2", Stress, 250.0, NewtonPerSquareMillimetre),
            ("250 mpa", Stress, 250.0, Megapascal),
            ("36 ksi", Stress, 36.0, Ksi),
            ("36000 lb/in²", Stress, 36_000.0, Psi),
            ("36000 pounds per square inch", Stress, 36_000.0, Psi),
            ("75 ft lb", Torque, 75.0, PoundForceFoot),
            ("75 ft-lb", Torque, 75.0, PoundForceFoot),
            ("75 ft. lbs.", Torque, 75.0, PoundForceFoot),
            ("75 lb-ft", Torque, 75.0, PoundForceFoot),
            ("75 lb ft", Torque, 75.0, PoundForceFoot),
            ("75 lbf·ft", Torque, 75.0, PoundForceFoot),
            ("75lbf⋅ft", Torque, 75.0, PoundForceFoot),
            ("75 lbft", Torque, 75.0, PoundForceFoot),
            ("75 foot-pounds", Torque, 75.0, PoundForceFoot),
            ("900 in-lbs", Torque, 900.0, PoundForceInch),
            ("100 N·m", Torque, 100.0, NewtonMetre),
            ("100 Nm", Torque, 100.0, NewtonMetre),
            ("100 N m", Torque, 100.0, NewtonMetre),
            ("100 N*m", Torque, 100.0, NewtonMetre),
            ("100 newton metres", Torque, 100.0, NewtonMetre),
            ("100 Newton-meters", Torque, 100.0, NewtonMetre),
            ("1.5 kNm", Moment, 1.5, KilonewtonMetre),
            ("1.2e3", Mass, 1200.0, Kilogram),
            ("3500 lbs", Mass, 3500.0, Pound),
            ("3500#", Mass, 3500.0, Pound),
            ("1,5 t", Mass, 1.5, Tonne),
            ("40 deg", Angle, 40.0, Degree),
            ("40°", Angle, 40.0, Degree),
            ("1/4 turn", Angle, 0.25, Turn),
            ("20 °C", Temperature, 20.0, Celsius),
            ("20 ° C", Temperature, 20.0, Celsius),
            ("−40C", Temperature, -40.0, Celsius),
            ("68 F", Temperature, 68.0, Fahrenheit),
            ("30 K", TemperatureStep, 30.0, CelsiusStep),
            ("500 lbs/in", Stiffness, 500.0, PoundForcePerInch),
            ("90 N per mm", Stiffness, 90.0, NewtonPerMillimetre),
            ("2 g", Acceleration, 2.0, Gravity),
            ("1.5 hr", Time, 1.5, Hour),
            ("60 J", Energy, 60.0, Joule),
            ("12 %", Share, 12.0, Percent),
            ("12%", Share, 12.0, Percent),
            ("0.12", Share, 0.12, One),
            ("0.15", Ratio, 0.15, One),
            ("4", Count, 4.0, One),
        ] {
            let typed = read(text, dimension, bare(dimension)).unwrap();
            assert_eq!((typed.value, typed.unit), (value, unit), "{text}");
            assert_eq!(typed.si, unit.to_si(value), "{text}");
            assert_eq!(typed.text, text);
            assert_eq!(typed.note, None, "{text}");
        }
    }

    /// In US customary units a comma before three digits sets thousands apart, typed or as the unit of the field.
    #[test]
    fn commas_set_thousands_apart_in_us_units() {
        use Dimension::*;
        use Unit::*;
        for (text, dimension, bare, value, unit) in [
            ("5,630", Force, PoundForce, 5630.0, PoundForce),
            ("5,630 lbf", Force, Newton, 5630.0, PoundForce),
            ("-1,234,567.5 lb", Mass, Kilogram, -1_234_567.5, Pound),
            ("29,000", Stress, Ksi, 29_000.0, Ksi),
            ("0,125", Length, Inch, 0.125, Inch),
            ("2,5 in", Length, Inch, 2.5, Inch),
            ("2,5000 in", Length, Inch, 2.5, Inch),
        ] {
            let typed = read(text, dimension, bare).unwrap();
            assert_eq!((typed.value, typed.unit), (value, unit), "{text}");
        }
        // Another unit than the field's own: the field's readers do not write it so.
        let error = read("5,630 N", Force, PoundForce).unwrap_err();
        assert_eq!(error.code(), "ambiguous-comma");
    }

    #[test]
    fn pounds_in_a_force_field_are_noted() {
        for text in ["1000 lb", "1000 lbs", "1000 pounds", "1000#"] {
            let typed = read(text, Dimension::Force, Unit::Newton).unwrap();
            assert_eq!(
                (typed.unit, typed.note),
                (Unit::PoundForce, Some(Note::PoundAsForce)),
                "{text}"
            );
        }
    }

    #[test]
    fn refused() {
        use Dimension::*;
        for (text, dimension, code, piece) in [
            ("", Length, "empty", ""),
            (" \u{a0}\u{200b}", Length, "empty", ""),
            ("-", Length, "no-number", "-"),
            ("abc", Length, "no-number", "abc"),
            ("NaN", Length, "no-number", "NaN"),
            ("∞", Length, "no-number", "∞"),
            ("１２ mm", Length, "no-number", "１２ mm"),
            ("M12", Length, "no-number", "M12"),
            ("11 ga", Length, "unknown-unit", "ga"),
            ("2x6", Length, "unknown-unit", "x6"),
            ("1/2-13", Length, "not-understood", "-13"),
            ("1/2/3", Length, "not-understood", "/3"),
            ("12 13", Length, "not-understood", "13"),
            ("3 lbf", Length, "wrong-dimension", "lbf"),
            ("5 ft lb", Length, "wrong-dimension", "ft lb"),
            ("75 lb", Torque, "wrong-dimension", "lb"),
            ("75 ft", Torque, "wrong-dimension", "ft"),
            ("75 J", Torque, "wrong-dimension", "J"),
            ("75 kg", Force, "wrong-dimension", "kg"),
            ("75 lbf", Mass, "wrong-dimension", "lbf"),
            ("20 °", Temperature, "wrong-dimension", "°"),
            ("2 tons", Mass, "ambiguous-unit", "tons"),
            ("5 mil", Length, "ambiguous-unit", "mil"),
            ("1,000 kg", Mass, "ambiguous-comma", "1,000"),
            ("1,000", Mass, "ambiguous-comma", "1,000"),
            ("12,500.5 N", Force, "mixed-separators", "12,500.5"),
            ("1.250,5", Mass, "mixed-separators", "1.250,5"),
            ("3' 14\"", Length, "part-too-large", "3' 14\""),
            ("2 3/2", Length, "part-too-large", "2 3/2"),
            ("3 1/0", Length, "zero-denominator", "3 1/0"),
            ("3.5", Count, "not-whole", "3.5"),
            ("4 bolts", Count, "unknown-unit", "bolts"),
            ("1e999", Length, "too-large", "1e999"),
            ("1e305 ksi", Stress, "too-large", "1e305 ksi"),
        ] {
            let error = read(text, dimension, bare(dimension)).unwrap_err();
            assert_eq!((error.code(), error.piece()), (code, piece), "{text}");
            assert!(error.to_string().contains(piece), "{error}");
        }
        let long = "9".repeat(LONGEST_TEXT + 1);
        assert_eq!(
            read(&long, Length, Unit::Inch).unwrap_err(),
            ReadError::TooLong
        );
        assert_eq!(
            read(&" ".repeat(500), Length, Unit::Inch).unwrap_err(),
            ReadError::Empty
        );
    }

    #[test]
    fn messages_say_what_to_write() {
        let message = |text, dimension| {
            read(text, dimension, bare(dimension))
                .unwrap_err()
                .to_string()
        };
        assert_eq!(
            message("75 lb", Dimension::Torque),
            "“lb” measures a mass, but a torque is needed: write N·m, kN·m, lb-ft or lb-in"
        );
        assert_eq!(
            message("1,000", Dimension::Mass),
            "“1,000” can be read as 1000 or as 1.000: write it without the comma"
        );
        assert_eq!(
            message("12 mm", Dimension::Count),
            "“mm” measures a length, but a count is needed: write the number alone"
        );
    }

    #[test]
    fn a_bare_unit_of_another_dimension_is_refused() {
        let error = read("5", Dimension::Torque, Unit::Inch).unwrap_err();
        assert_eq!(error.code(), "wrong-dimension");
    }

    fn never_worse_than_an_error(text: &str) -> Result<(), TestCaseError> {
        for dimension in Dimension::ALL {
            for bare in [bare(dimension), Unit::Inch] {
                match read(text, dimension, bare) {
                    Ok(typed) => {
                        prop_assert!(typed.value.is_finite() && typed.si.is_finite(), "{text}");
                        prop_assert!(typed.unit.fits(dimension), "{text}");
                    }
                    Err(error) => {
                        prop_assert!(error.piece().chars().count() <= LONGEST_PIECE + 1);
                        prop_assert!(!error.to_string().is_empty());
                    }
                }
            }
        }
        Ok(())
    }

    proptest! {
        #[test]
        fn any_text_is_read_or_refused(text in any::<String>()) {
            never_worse_than_an_error(&text)?;
        }

        /// Text made of the pieces that mean something, so that the deeper branches are reached.
        #[test]
        fn any_mixture_of_meaningful_pieces_is_read_or_refused(
            pieces in prop::collection::vec(prop::sample::select(vec![
                "0", "1", "12", "500", "999", "/", "⁄", "½", "⅞", ".", ",", "-", "−", "+", "e", "E", "e308",
                " ", "\u{a0}", "\u{202f}", "\u{200b}", "'", "\"", "″", "ft", "in", "lb", "lbf", "N", "m", "mm", "kN",
                "·", "°", "C", "F", "%", "²", "^2", "per", "deg", "ton", "é", "１", "𝟙", "\u{0301}", "İ",
            ]), 0..12)
        ) {
            never_worse_than_an_error(&pieces.concat())?;
        }
    }
}

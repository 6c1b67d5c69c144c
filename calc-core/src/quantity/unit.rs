//! The units people type: factor, symbol, link token and accepted spellings, in one table.

use super::dimension::Dimension;
use super::exact::{self, Factor};
use serde::{Deserialize, Serialize};
use std::f64::consts::PI;

/// The straight line from a number in a unit to SI: (number + origin) · numerator / denominator.
///
/// Multiplying by a whole numerator before dividing rounds less often than one rounded factor would:
/// 12 mm and 1/2 in come out as the nearest `f64` to their exact value.
#[derive(Clone, Copy, Debug)]
struct Scale {
    origin: f64,
    numerator: f64,
    denominator: f64,
}

const fn exactly(factor: Factor) -> Scale {
    Scale {
        origin: 0.0,
        numerator: factor.numerator(),
        denominator: factor.denominator(),
    }
}

/// `origin` is the zero of the scale above absolute zero, in steps of the scale.
const fn from_origin(origin: f64, step: Factor) -> Scale {
    Scale {
        origin,
        numerator: step.numerator(),
        denominator: step.denominator(),
    }
}

/// `numerator`·π/`denominator`, rad.
const fn parts_of_pi(numerator: f64, denominator: f64) -> Scale {
    Scale {
        origin: 0.0,
        numerator: numerator * PI,
        denominator,
    }
}

struct Row {
    dimensions: &'static [Dimension],
    scale: Scale,
    symbol: &'static str,
    token: &'static str,
    spoken: (&'static str, &'static str),
    spellings: &'static [&'static str],
}

macro_rules! units {
    ($($(#[$doc:meta])+ $name:ident: [$($dimension:ident)+], $scale:expr, $symbol:literal, $token:literal,
       $one:literal | $many:literal, [$($spelling:literal)*];)+) => {
        /// A unit that can be typed or shown.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
        #[serde(rename_all = "kebab-case")]
        #[non_exhaustive]
        pub enum Unit {
            $($(#[$doc])+ $name,)+
        }

        impl Unit {
            /// Every unit; of two that read the same in a dimension, the usual one first.
            pub const ALL: &'static [Self] = &[$(Self::$name),+];

            const fn row(self) -> &'static Row {
                match self {
                    $(Self::$name => {
                        const ROW: Row = Row {
                            dimensions: &[$(Dimension::$dimension),+],
                            scale: $scale,
                            symbol: $symbol,
                            token: $token,
                            spoken: ($one, $many),
                            spellings: &[$($spelling),*],
                        };
                        &ROW
                    })+
                }
            }
        }
    };
}

// Columns: dimensions, scale, symbol on screen, link token, spoken name (one | many), further
// spellings. Symbol and spoken names are accepted spellings too; how typed text is compared with
// them say `canonical` and `is_spelled`.
units! {
    /// Millimetre.
    Millimetre: [Length], exactly(exact::MILLI), "mm", "mm", "millimeter" | "millimeters", ["mms"];
    /// Centimetre.
    Centimetre: [Length], exactly(exact::CENTI), "cm", "cm", "centimeter" | "centimeters", ["cms"];
    /// Metre.
    Metre: [Length], exactly(exact::ONE), "m", "m", "meter" | "meters", [];
    /// Inch, 25.4 mm.
    Inch: [Length], exactly(exact::INCH), "in", "in", "inch" | "inches", ["\"" "ins"];
    /// Foot, 12 in.
    Foot: [Length], exactly(exact::FOOT), "ft", "ft", "foot" | "feet", ["'"];

    /// Square millimetre.
    SquareMillimetre: [Area], exactly(exact::MILLI.by(exact::MILLI)), "mm²", "mmsq",
        "square millimeter" | "square millimeters", ["sq mm"];
    /// Square centimetre.
    SquareCentimetre: [Area], exactly(exact::CENTI.by(exact::CENTI)), "cm²", "cmsq",
        "square centimeter" | "square centimeters", ["sq cm"];
    /// Square metre.
    SquareMetre: [Area], exactly(exact::ONE), "m²", "msq", "square meter" | "square meters", ["sq m"];
    /// Square inch.
    SquareInch: [Area], exactly(exact::INCH.by(exact::INCH)), "in²", "insq",
        "square inch" | "square inches", ["sq in"];

    /// Newton.
    Newton: [Force], exactly(exact::ONE), "N", "n", "newton" | "newtons", [];
    /// Kilonewton.
    Kilonewton: [Force], exactly(exact::KILO), "kN", "kn", "kilonewton" | "kilonewtons", [];
    /// Pound-force.
    PoundForce: [Force], exactly(exact::POUND_FORCE), "lbf", "lbf", "pound-force" | "pounds-force",
        ["lbsf" "pound of force" "pounds of force"];
    /// 1000 lbf.
    Kip: [Force], exactly(exact::KIP), "kip", "kip", "kip" | "kips", [];

    /// Pascal.
    Pascal: [Stress], exactly(exact::ONE), "Pa", "pa", "pascal" | "pascals", ["N/m²"];
    /// Megapascal.
    Megapascal: [Stress], exactly(exact::MEGA), "MPa", "mpa", "megapascal" | "megapascals", [];
    /// Newton per square millimetre: the same as a megapascal, kept because people type it.
    NewtonPerSquareMillimetre: [Stress], exactly(exact::ONE.per(exact::MILLI.by(exact::MILLI))), "N/mm²", "npmmsq",
        "newton per square millimeter" | "newtons per square millimeter", [];
    /// Gigapascal.
    Gigapascal: [Stress], exactly(exact::GIGA), "GPa", "gpa", "gigapascal" | "gigapascals", [];
    /// Pound-force per square inch.
    Psi: [Stress], exactly(exact::PSI), "psi", "psi",
        "pound-force per square inch" | "pounds-force per square inch",
        ["lbf/in²" "lb/in²" "lbs/in²" "pound per square inch" "pounds per square inch"];
    /// 1000 psi.
    Ksi: [Stress], exactly(exact::KSI), "ksi", "ksi", "kip per square inch" | "kips per square inch", ["kip/in²" "kips/in²"];

    /// Newton metre.
    NewtonMetre: [Torque Moment Energy], exactly(exact::ONE), "N·m", "nm", "newton meter" | "newton meters", ["newtons meters"];
    /// Kilonewton metre.
    KilonewtonMetre: [Torque Moment], exactly(exact::KILO), "kN·m", "knm", "kilonewton meter" | "kilonewton meters", [];
    /// Pound-force foot.
    PoundForceFoot: [Torque Moment Energy], exactly(exact::POUND_FORCE_FOOT), "lb-ft", "lbfft",
        "pound-force foot" | "pound-force feet",
        ["lbf·ft" "ft·lbf" "ft·lb" "ft·lbs" "lbs·ft" "foot·pound" "foot·pounds" "foot·pound·force" "foot·pounds·force"
         "feet·pounds" "pound·foot" "pound·feet" "pounds·feet"];
    /// Pound-force inch.
    PoundForceInch: [Torque Moment], exactly(exact::POUND_FORCE_INCH), "lb-in", "lbfin",
        "pound-force inch" | "pound-force inches",
        ["lbf·in" "in·lbf" "in·lb" "in·lbs" "lbs·in" "inch·pound" "inch·pounds" "inch·pound·force" "inch·pounds·force"
         "pound·inch" "pound·inches"];

    /// Kilogram.
    Kilogram: [Mass], exactly(exact::ONE), "kg", "kg", "kilogram" | "kilograms", ["kgs" "kilo" "kilos"];
    /// Tonne, 1000 kg.
    Tonne: [Mass], exactly(exact::KILO), "t", "t", "tonne" | "tonnes", ["metric ton" "metric tons"];
    /// Pound.
    Pound: [Mass], exactly(exact::POUND), "lb", "lb", "pound" | "pounds", ["lbs" "lbm" "#"];

    /// Degree of angle.
    Degree: [Angle], parts_of_pi(1.0, 180.0), "°", "deg", "degree" | "degrees", ["deg" "degs"];
    /// Full turn.
    Turn: [Angle], parts_of_pi(2.0, 1.0), "turn", "turn", "turn" | "turns", ["rev" "revs" "revolution" "revolutions"];
    /// Radian.
    Radian: [Angle], exactly(exact::ONE), "rad", "rad", "radian" | "radians", ["rads"];

    /// Degree Celsius, as a temperature.
    Celsius: [Temperature], from_origin(273.15, exact::ONE), "°C", "c", "degree Celsius" | "degrees Celsius",
        ["° C" "C" "deg C" "celsius" "centigrade"];
    /// Degree Fahrenheit, as a temperature.
    Fahrenheit: [Temperature], from_origin(459.67, exact::FAHRENHEIT_STEP), "°F", "f",
        "degree Fahrenheit" | "degrees Fahrenheit", ["° F" "F" "deg F" "fahrenheit"];
    /// Kelvin, as a temperature.
    Kelvin: [Temperature], exactly(exact::ONE), "K", "k", "kelvin" | "kelvins", [];
    /// Degree Celsius, as a difference of temperatures.
    CelsiusStep: [TemperatureStep], exactly(exact::ONE), "°C", "c", "degree Celsius" | "degrees Celsius",
        ["° C" "C" "deg C" "celsius" "centigrade" "K" "kelvin" "kelvins"];
    /// Degree Fahrenheit, as a difference of temperatures.
    FahrenheitStep: [TemperatureStep], exactly(exact::FAHRENHEIT_STEP), "°F", "f",
        "degree Fahrenheit" | "degrees Fahrenheit", ["° F" "F" "deg F" "fahrenheit"];

    /// Kilonewton per millimetre.
    KilonewtonPerMillimetre: [Stiffness], exactly(exact::KILO.per(exact::MILLI)), "kN/mm", "knpmm",
        "kilonewton per millimeter" | "kilonewtons per millimeter", [];
    /// Newton per millimetre.
    NewtonPerMillimetre: [Stiffness], exactly(exact::ONE.per(exact::MILLI)), "N/mm", "npmm",
        "newton per millimeter" | "newtons per millimeter", [];
    /// Pound-force per inch.
    PoundForcePerInch: [Stiffness], exactly(exact::POUND_FORCE.per(exact::INCH)), "lbf/in", "lbfpin",
        "pound-force per inch" | "pounds-force per inch",
        ["lb/in" "lbs/in" "pound per inch" "pounds per inch"];

    /// Standard gravity, 9.806 65 m/s².
    Gravity: [Acceleration], exactly(exact::GRAVITY), "g", "g", "times gravity" | "times gravity", ["gs"];
    /// Metre per second squared.
    MetrePerSecondSquared: [Acceleration], exactly(exact::ONE), "m/s²", "mpss",
        "meter per second squared" | "meters per second squared", [];

    /// Second.
    Second: [Time], exactly(exact::ONE), "s", "s", "second" | "seconds", ["sec" "secs"];
    /// Minute.
    Minute: [Time], exactly(exact::MINUTE), "min", "min", "minute" | "minutes", ["mins"];
    /// Hour.
    Hour: [Time], exactly(exact::MINUTE.times(60)), "h", "h", "hour" | "hours", ["hr" "hrs"];

    /// Joule.
    Joule: [Energy], exactly(exact::ONE), "J", "j", "joule" | "joules", [];

    /// No unit: a plain number, a share as a fraction of one, a count.
    One: [Ratio Share Count], exactly(exact::ONE), "", "", "" | "", [];
    /// Hundredth.
    Percent: [Share Ratio], exactly(exact::CENTI), "%", "pc", "percent" | "percent", ["per cent" "pct"];
}

/// Spellings that stand for more than one unit in the trade; never guessed.
const AMBIGUOUS: [&str; 4] = ["ton", "tons", "mil", "mils"];

impl Unit {
    /// Whether the unit measures `dimension`.
    #[must_use]
    pub fn fits(self, dimension: Dimension) -> bool {
        self.row().dimensions.contains(&dimension)
    }

    /// What the unit measures; where it measures several, the most usual one.
    #[must_use]
    pub fn dimension(self) -> Dimension {
        self.row()
            .dimensions
            .first()
            .copied()
            .unwrap_or(Dimension::Ratio)
    }

    /// Units that measure `dimension`.
    pub fn of(dimension: Dimension) -> impl Iterator<Item = Self> {
        Self::ALL
            .iter()
            .copied()
            .filter(move |unit| unit.fits(dimension))
    }

    /// Whether the unit belongs to those customary in the United States and to no other system: there a comma
    /// sets thousands apart.
    #[must_use]
    pub const fn is_us_customary(self) -> bool {
        matches!(
            self,
            Self::Inch
                | Self::Foot
                | Self::SquareInch
                | Self::PoundForce
                | Self::Kip
                | Self::Psi
                | Self::Ksi
                | Self::PoundForceFoot
                | Self::PoundForceInch
                | Self::Pound
                | Self::Fahrenheit
                | Self::FahrenheitStep
                | Self::PoundForcePerInch
        )
    }

    /// Symbol for the screen: roman, ISO 80000 and NIST SP 811 form, but lb-ft as the shop writes it. Empty
    /// for a plain number.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        self.row().symbol
    }

    /// Short form for links: letters a–z only, unique within a dimension. Empty for a plain number.
    #[must_use]
    pub const fn token(self) -> &'static str {
        self.row().token
    }

    /// The unit of `dimension` that a link token stands for.
    #[must_use]
    pub fn from_token(token: &str, dimension: Dimension) -> Option<Self> {
        Self::of(dimension).find(|unit| unit.token() == token)
    }

    /// Name to be read aloud after the number: "inch" after exactly one, else "inches".
    #[must_use]
    pub const fn spoken(self, one: bool) -> &'static str {
        let (singular, plural) = self.row().spoken;
        if one { singular } else { plural }
    }

    /// Value in the coherent SI unit of a number of this unit.
    #[must_use]
    pub fn to_si(self, number: f64) -> f64 {
        let Scale {
            origin,
            numerator,
            denominator,
        } = self.row().scale;
        (number + origin) * numerator / denominator
    }

    /// Number of this unit that a value in the coherent SI unit makes.
    #[must_use]
    pub fn from_si(self, si: f64) -> f64 {
        let Scale {
            origin,
            numerator,
            denominator,
        } = self.row().scale;
        si * denominator / numerator - origin
    }

    /// The unit of `dimension` that `typed` spells.
    pub(super) fn spelled_in(typed: &str, dimension: Dimension) -> Option<Self> {
        let typed = canonical(typed);
        Self::of(dimension).find(|unit| unit.spells(&typed))
    }

    /// The unit of any dimension that `typed` spells.
    pub(super) fn spelled(typed: &str) -> Option<Self> {
        let typed = canonical(typed);
        Self::ALL.iter().copied().find(|unit| unit.spells(&typed))
    }

    /// Whether `typed` is a spelling that stands for several units.
    pub(super) fn is_ambiguous(typed: &str) -> bool {
        let typed = canonical(typed);
        AMBIGUOUS.iter().any(|entry| is_spelled(entry, &typed))
    }

    fn spells(self, canonical: &str) -> bool {
        let row = self.row();
        !row.symbol.is_empty()
            && [row.symbol, row.spoken.0, row.spoken.1]
                .iter()
                .chain(row.spellings)
                .any(|entry| is_spelled(entry, canonical))
    }
}

/// Typed text without what does not tell units apart: letter case, a closing full stop, the form of a
/// square, "per" for a stroke, "metre" for "meter".
fn canonical(typed: &str) -> String {
    let plain = typed
        .trim()
        .to_ascii_lowercase()
        // The sign for kelvin, which looks like a K.
        .replace('\u{212a}', "k")
        .replace('²', "2")
        .replace('^', "")
        .replace(" per ", "/")
        .replace("metre", "meter");
    plain.strip_suffix('.').map(str::to_owned).unwrap_or(plain)
}

/// Whether canonical text is `entry`, whatever stands between the factors of a product (`ft lb`,
/// `ft-lb`, `ft·lb`, `ftlb`) and around a stroke.
fn is_spelled(entry: &str, canonical: &str) -> bool {
    let separates = |c: &char| matches!(c, ' ' | '·' | '-' | '.' | '*');
    let entry = entry.replace(" per ", "/").replace('²', "2");
    let mut rest = canonical.chars().peekable();
    for wanted in entry.chars() {
        if separates(&wanted) {
            while rest.next_if(separates).is_some() {}
            continue;
        }
        if wanted == '/' {
            while rest.next_if_eq(&' ').is_some() {}
        }
        if rest.next() != Some(wanted.to_ascii_lowercase()) {
            return false;
        }
        if wanted == '/' {
            while rest.next_if_eq(&' ').is_some() {}
        }
    }
    rest.next().is_none()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn one_of_each_in_si() {
        for (unit, number, si) in [
            (Unit::Millimetre, 12.0, 0.012),
            (Unit::Inch, 0.5, 0.0127),
            (Unit::Foot, 1.0, 0.3048),
            (Unit::SquareInch, 1.0, 645.16e-6),
            (Unit::PoundForce, 1.0, 4.448_221_615_260_5),
            (Unit::NewtonPerSquareMillimetre, 250.0, 250e6),
            (Unit::Pound, 100.0, 45.359_237),
            (Unit::Turn, 0.5, PI),
            (Unit::Degree, 180.0, PI),
            (Unit::Celsius, 20.0, 293.15),
            (Unit::Fahrenheit, 32.0, 273.15),
            (Unit::FahrenheitStep, 9.0, 5.0),
            (Unit::Gravity, 2.0, 19.6133),
            (Unit::Hour, 1.5, 5400.0),
            (Unit::Percent, 12.0, 0.12),
        ] {
            assert_eq!(unit.to_si(number), si, "{number} {unit:?}");
        }
    }

    #[test]
    fn tokens_are_letters_and_unique_in_a_dimension() {
        for dimension in Dimension::ALL {
            let mut seen = std::collections::HashSet::new();
            for unit in Unit::of(dimension) {
                let token = unit.token();
                assert!(token.chars().all(|c| c.is_ascii_lowercase()), "{unit:?}");
                assert!(seen.insert(token), "{token} twice in {dimension:?}");
                assert_eq!(Unit::from_token(token, dimension), Some(unit));
            }
            assert!(!seen.is_empty(), "{dimension:?} has no unit");
        }
    }

    #[test]
    fn no_spelling_stands_for_two_units_of_a_dimension() {
        for dimension in Dimension::ALL {
            for unit in Unit::of(dimension).filter(|unit| !unit.symbol().is_empty()) {
                let row = unit.row();
                for spelling in [row.symbol, row.spoken.0, row.spoken.1]
                    .iter()
                    .chain(row.spellings)
                {
                    assert_eq!(
                        Unit::spelled_in(spelling, dimension),
                        Some(unit),
                        "{spelling}"
                    );
                    assert!(!Unit::is_ambiguous(spelling), "{spelling}");
                }
            }
        }
    }

    proptest! {
        #[test]
        fn to_si_and_back_is_the_same_number(index in 0..Unit::ALL.len(), number in -1e9..1e9_f64) {
            let unit = Unit::ALL[index];
            let back = unit.from_si(unit.to_si(number));
            // Each of four roundings costs half an ULP; a scale with an origin loses that of the origin.
            let size = number.abs() + unit.row().scale.origin;
            prop_assert!((back - number).abs() <= 2.0 * f64::EPSILON * size, "{unit:?}: {number} → {back}");
        }
    }
}

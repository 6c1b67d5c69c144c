//! The nearest `f64` to a decimal text.
//!
//! Rust's own `str::parse` gives the same value; with it come 13 kB of tables of powers of five that do
//! not compress. The compact form of this library does without, and a page that is loaded over a bad
//! connection reads only a few numbers.

use lexical_parse_float::FromLexical;

/// Reads `-12.5e3`: a sign, digits with a point among them, a power of ten; sign, point and power may be
/// left out. `None` for anything else; infinite beyond the largest `f64`.
///
/// ```
/// use calc_core::quantity::parse_number;
/// assert_eq!(parse_number("-0.15"), Some(-0.15));
/// assert_eq!(parse_number("1e23"), Some(1e23));
/// assert_eq!(parse_number("tight"), None);
/// ```
#[must_use]
#[inline(never)]
pub fn parse_number(text: &str) -> Option<f64> {
    // The library would also read "inf" and "nan".
    let number = text
        .bytes()
        .all(|b| b.is_ascii_digit() || matches!(b, b'+' | b'-' | b'.' | b'e' | b'E'));
    number
        .then(|| f64::from_lexical(text.as_bytes()).ok())
        .flatten()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn words_are_no_numbers() {
        for text in [
            "", "inf", "NaN", "infinity", "tight", "1x", "--1", "1e", ".", "1,5",
        ] {
            assert_eq!(parse_number(text), None, "{text}");
        }
    }

    proptest! {
        #[test]
        fn gives_what_the_standard_library_gives(
            text in "-?[0-9]{1,20}(\\.[0-9]{0,20})?(e-?[0-9]{1,3})?"
        ) {
            prop_assert_eq!(parse_number(&text).map(f64::to_bits), text.parse().ok().map(f64::to_bits));
        }

        #[test]
        fn reads_back_every_number(value in prop::num::f64::NORMAL | prop::num::f64::SUBNORMAL) {
            prop_assert_eq!(parse_number(&format!("{value:e}")), Some(value));
            prop_assert_eq!(parse_number(&format!("{value}")), Some(value));
        }
    }
}

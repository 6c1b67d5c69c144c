//! Numbers in links: digits, a point, and `m` for minus.

use super::parse::parse_number;

/// The shortest decimal that reads back as exactly `value`, written with `0`–`9`, `.` and a leading `m`
/// for minus; never with an exponent. Minus zero is written `0`; a value that is not finite as nothing.
///
/// ```
/// use calc_core::quantity::link_number;
/// assert_eq!(link_number(-0.15), "m0.15");
/// assert_eq!(link_number(12.0), "12");
/// ```
#[must_use]
pub fn link_number(value: f64) -> String {
    if !value.is_finite() {
        return String::new();
    }
    let sign = if value < 0.0 { "m" } else { "" };
    format!("{sign}{}", value.abs())
}

/// Reads what [`link_number`] writes: optional `m`, digits, and optionally a point with digits.
/// `None` for anything else and for numbers too large to be finite.
#[must_use]
pub fn read_link_number(text: &str) -> Option<f64> {
    let (sign, unsigned) = match text.strip_prefix('m') {
        Some(rest) => (-1.0, rest),
        None => (1.0, text),
    };
    let all_digits = |part: &str| !part.is_empty() && part.bytes().all(|b| b.is_ascii_digit());
    let well_formed = match unsigned.split_once('.') {
        Some((whole, decimals)) => all_digits(whole) && all_digits(decimals),
        None => all_digits(unsigned),
    };
    let value = sign * parse_number(unsigned).filter(|_| well_formed)?;
    value.is_finite().then_some(value)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn written() {
        for (value, text) in [
            (0.0, "0"),
            (-0.0, "0"),
            (0.1, "0.1"),
            (1e21, "1000000000000000000000"),
            (1e-7, "0.0000001"),
            (-20.0, "m20"),
            (f64::NAN, ""),
            (f64::INFINITY, ""),
        ] {
            assert_eq!(link_number(value), text);
        }
    }

    #[test]
    fn refused() {
        for text in [
            "", "m", ".", ".5", "5.", "1.2.3", "-1", "+1", "1e3", "inf", "nan", "mm1", "1m", " 1",
            "１",
        ] {
            assert_eq!(read_link_number(text), None, "{text}");
        }
        assert_eq!(read_link_number(&"9".repeat(400)), None);
    }

    proptest! {
        #[test]
        fn every_finite_number_reads_back_exactly(value in any::<f64>().prop_filter("finite", |v| v.is_finite())) {
            let text = link_number(value);
            prop_assert!(text.bytes().all(|b| matches!(b, b'0'..=b'9' | b'.' | b'm')));
            prop_assert_eq!(read_link_number(&text), Some(value));
        }

        #[test]
        fn any_text_is_read_or_refused(text in any::<String>()) {
            if let Some(value) = read_link_number(&text) {
                prop_assert!(value.is_finite());
            }
        }
    }
}

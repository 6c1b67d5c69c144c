//! The nearest `f64` to a decimal text.
//!
//! Rust's own `str::parse` gives the same value, faster for long texts, and with it come 13 kB of tables
//! of powers of five that do not compress: a page that is loaded over a bad connection reads its few
//! numbers without.

/// Whole numbers below it are exact in an `f64`.
const EXACT: u64 = 1 << 53;
/// The lowest exponent of two that an `f64` has for its last bit.
const LOWEST: i32 = -1074;
/// Powers of ten that are exact.
const TENS: [f64; 23] = [
    1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16,
    1e17, 1e18, 1e19, 1e20, 1e21, 1e22,
];

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
    let (sign, unsigned) = match text.strip_prefix('-') {
        Some(rest) => (-1.0, rest),
        None => (1.0, text.strip_prefix('+').unwrap_or(text)),
    };
    let (number, power) = match unsigned.split_once(['e', 'E']) {
        Some((number, power)) => (number, exponent(power)?),
        None => (unsigned, 0),
    };
    let (whole, part) = number.split_once('.').unwrap_or((number, ""));
    let mut digits: Vec<u8> = Vec::new();
    for byte in whole.bytes().chain(part.bytes()) {
        digits.push(byte.is_ascii_digit().then(|| byte - b'0')?);
    }
    if digits.is_empty() {
        return None;
    }
    let point = i32::try_from(whole.len()).ok()?.saturating_add(power);
    Some(sign * Decimal { digits, point }.trimmed().nearest())
}

/// A power of ten; one that no number reaches stands for all beyond it.
fn exponent(text: &str) -> Option<i32> {
    let (negative, digits) = match text.strip_prefix('-') {
        Some(rest) => (true, rest),
        None => (false, text.strip_prefix('+').unwrap_or(text)),
    };
    if digits.is_empty() {
        return None;
    }
    let mut power = 0_i32;
    for byte in digits.bytes() {
        let digit = byte.is_ascii_digit().then(|| byte - b'0')?;
        power = power.saturating_mul(10).saturating_add(i32::from(digit));
    }
    Some(if negative { -power } else { power })
}

/// The number 0.d₁d₂d₃… · 10^point.
struct Decimal {
    digits: Vec<u8>,
    point: i32,
}

impl Decimal {
    /// Without zeros at either end.
    fn trimmed(mut self) -> Self {
        while self.digits.last() == Some(&0) {
            self.digits.pop();
        }
        let zeros = self.digits.iter().take_while(|d| **d == 0).count();
        self.digits.drain(..zeros);
        self.point = self
            .point
            .saturating_sub(i32::try_from(zeros).unwrap_or(i32::MAX));
        self
    }

    /// Digits before the point; `None` if there are more than 16, which is above any [`EXACT`].
    fn whole(&self) -> Option<u64> {
        if self.point > 16 {
            return None;
        }
        let places = usize::try_from(self.point).unwrap_or(0);
        let digits = self.digits.iter().copied().chain(std::iter::repeat(0));
        Some(digits.take(places).fold(0, |n, d| n * 10 + u64::from(d)))
    }

    /// Doubled, digit by digit from the last.
    fn double(&mut self) {
        let mut carry = 0;
        for digit in self.digits.iter_mut().rev() {
            let twice = *digit * 2 + carry;
            (*digit, carry) = (twice % 10, twice / 10);
        }
        if carry > 0 {
            self.digits.insert(0, carry);
            self.point += 1;
        }
        while self.digits.last() == Some(&0) {
            self.digits.pop();
        }
    }

    /// Halved, digit by digit from the first.
    fn halve(&mut self) {
        let mut carry = 0;
        for digit in &mut self.digits {
            let now = *digit + carry * 10;
            (*digit, carry) = (now / 2, now % 2);
        }
        if carry > 0 {
            self.digits.push(5);
        }
        if self.digits.first() == Some(&0) {
            self.digits.remove(0);
            self.point -= 1;
        }
    }

    /// The nearest `f64`, of two equally near the even one.
    fn nearest(mut self) -> f64 {
        if self.digits.is_empty() || self.point < -330 {
            return 0.0;
        }
        if self.point > 310 {
            return f64::INFINITY;
        }
        // Both exact, so their product or quotient is rounded once (W. D. Clinger, 1990).
        if let Some(short) = self.short() {
            return short;
        }
        // Shifted until the digits before the point are the 53 bits.
        let mut power = 0;
        while self.whole().is_none_or(|n| n >= EXACT) {
            self.halve();
            power += 1;
        }
        while self.whole().is_some_and(|n| n < EXACT / 2) && power > LOWEST {
            self.double();
            power -= 1;
        }
        let whole = self.whole().unwrap_or(0);
        let up = match usize::try_from(self.point).map(|places| self.digits.get(places..)) {
            Ok(Some([5])) => whole % 2 == 1,
            Ok(Some([first, ..])) => *first >= 5,
            _ => false,
        };
        let bits = exact(whole + u64::from(up));
        // In two steps, because 2^-1074 alone is the smallest that there is.
        let half = power / 2;
        bits * two_to(half) * two_to(power - half)
    }

    fn short(&self) -> Option<f64> {
        let count = i32::try_from(self.digits.len()).ok()?;
        if count > 15 {
            return None;
        }
        let number = self.digits.iter().fold(0, |n, d| n * 10 + u64::from(*d));
        let power = self.point - count;
        let ten = *TENS.get(usize::try_from(power.unsigned_abs()).ok()?)?;
        let number = exact(number);
        Some(if power < 0 {
            number / ten
        } else {
            number * ten
        })
    }
}

#[allow(clippy::cast_precision_loss, reason = "at most 2^53, which is exact")]
const fn exact(number: u64) -> f64 {
    number as f64
}

/// A power of two from its bits; the power is half of one that an `f64` can have.
fn two_to(power: i32) -> f64 {
    f64::from_bits(u64::from((power + 1023).unsigned_abs()) << 52)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn hard_cases_as_the_standard_library_has_them() {
        for text in [
            "0",
            "0.0",
            "5",
            ".5",
            "5.",
            "00012.500",
            "1e22",
            "1e23",
            "9007199254740993",
            "9007199254740992",
            "9007199254740991.5",
            "2.2250738585072011e-308",
            "5e-324",
            "2.4703282292062327e-324",
            "2.4703282292062328e-324",
            "1.7976931348623157e308",
            "1.7976931348623159e308",
            "1e309",
            "1e-400",
            "1e99999999999",
            "-1e-99999999999",
            "0e99999999999",
            "123456789012345678901234567890",
            "0.1000000000000000055511151231257827021181583404541015625",
            "+7",
            "-0",
            "1E5",
            "1e+5",
        ] {
            let ours = parse_number(text).map(f64::to_bits);
            assert_eq!(ours, text.parse().ok().map(f64::to_bits), "{text}");
        }
        for text in [
            "", ".", "-", "e5", "1e", "1e+", "1.2.3", "1 2", "x", "--1", "inf", "nan", "1e5x",
        ] {
            assert_eq!(parse_number(text), None, "{text}");
        }
    }

    proptest! {
        #[test]
        fn every_number_reads_back(bits: u64) {
            let number = f64::from_bits(bits);
            prop_assume!(number.is_finite());
            for text in [format!("{number}"), format!("{number:e}"), format!("{number:.30e}")] {
                prop_assert_eq!(parse_number(&text).map(f64::to_bits), Some(bits), "{}", text);
            }
        }

        #[test]
        fn any_digits_are_read_as_the_standard_library_reads_them(
            text in "-?[0-9]{0,25}\\.[0-9]{1,25}(e-?[0-9]{1,3})?"
        ) {
            prop_assert_eq!(parse_number(&text), text.parse().ok());
        }
    }
}

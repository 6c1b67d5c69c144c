//! The number at the beginning of typed text: decimal, fraction or mixed number.

use super::parse::parse_number;
use super::read_error::ReadError;

/// A number and what follows it.
#[derive(Clone, Copy, Debug)]
pub(super) struct Leading<'a> {
    /// Value; may be infinite when the digits say so.
    pub(super) value: f64,
    /// Written with digits only, so that inches may follow feet.
    pub(super) plain: bool,
    /// Text after the number, as it stands.
    pub(super) rest: &'a str,
}

/// Brings the many characters that look alike to one each, and drops invisible ones.
///
/// Blanks of all widths → space, minus and hyphens → `-`, primes and quotation marks → `'` and `"`,
/// fraction slashes → `/`, `½` → `1/2`, multiplication dots → `·`, ring-like signs → `°`.
pub(super) fn normalise(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '\u{200B}'..='\u{200F}'
            | '\u{202A}'..='\u{202E}'
            | '\u{2060}'..='\u{2069}'
            | '\u{FEFF}' => {}
            c if c.is_whitespace() => out.push(' '),
            '−' | '–' | '‐' | '‑' => out.push('-'),
            '’' | '‘' | '′' | 'ʹ' | '´' => out.push('\''),
            '”' | '“' | '″' | 'ʺ' => out.push('"'),
            '⁄' | '∕' => out.push('/'),
            '⋅' | '∙' | '•' | '×' => out.push('·'),
            'º' | '˚' => out.push('°'),
            c => match vulgar_fraction(c) {
                Some(fraction) => {
                    if out.ends_with(|before: char| before.is_ascii_digit()) {
                        out.push(' ');
                    }
                    out.push_str(fraction);
                    out.push(' ');
                }
                None => out.push(c),
            },
        }
    }
    out.replace("''", "\"").trim().to_owned()
}

fn vulgar_fraction(c: char) -> Option<&'static str> {
    Some(match c {
        '½' => "1/2",
        '⅓' => "1/3",
        '⅔' => "2/3",
        '¼' => "1/4",
        '¾' => "3/4",
        '⅕' => "1/5",
        '⅖' => "2/5",
        '⅗' => "3/5",
        '⅘' => "4/5",
        '⅙' => "1/6",
        '⅚' => "5/6",
        '⅐' => "1/7",
        '⅛' => "1/8",
        '⅜' => "3/8",
        '⅝' => "5/8",
        '⅞' => "7/8",
        '⅑' => "1/9",
        '⅒' => "1/10",
        _ => return None,
    })
}

/// The text without the commas between groups of three digits, if the number at its beginning has any:
/// `12,500.5 lbf` → `12500.5 lbf`. The first group has one to three digits and does not begin with 0.
pub(super) fn without_thousands_commas(text: &str) -> Option<String> {
    let unsigned = text.trim_start_matches(['-', '+', ' ']);
    let (first, mut rest) = digits(unsigned);
    if !(1..=3).contains(&first.len()) || first.starts_with('0') {
        return None;
    }
    let mut whole = first.to_owned();
    while let Some(after) = rest.strip_prefix(',') {
        let (group, after) = digits(after);
        if group.len() != 3 {
            return None;
        }
        whole.push_str(group);
        rest = after;
    }
    (whole.len() > first.len()).then(|| format!("{}{whole}{rest}", before(text, unsigned)))
}

/// Reads the number that normalised text begins with.
///
/// # Errors
/// [`ReadError`] when there is no number or it can be read in two ways.
pub(super) fn leading_number(text: &str) -> Result<Leading<'_>, ReadError> {
    let (sign, unsigned) = match text.strip_prefix('-') {
        Some(rest) => (-1.0, rest),
        None => (1.0, text.strip_prefix('+').unwrap_or(text)),
    };
    let unsigned = unsigned.trim_start();
    let found = match fraction_or_mixed(unsigned)? {
        Some(found) => found,
        None => decimal(unsigned).map_err(|error| match error {
            ReadError::NoNumber { .. } => ReadError::NoNumber {
                piece: text.to_owned(),
            },
            other => other,
        })?,
    };
    Ok(Leading {
        value: sign * found.value,
        ..found
    })
}

fn digits(text: &str) -> (&str, &str) {
    let end = text
        .find(|c: char| !c.is_ascii_digit())
        .unwrap_or(text.len());
    text.split_at(end)
}

/// The part of `text` that stands before `rest`, its own tail.
fn before<'a>(text: &'a str, rest: &str) -> &'a str {
    text.get(..text.len() - rest.len()).unwrap_or(text)
}

/// `9/16`, with or without blanks around the stroke.
fn fraction(text: &str) -> Option<(f64, f64, &str)> {
    let (numerator, rest) = digits(text);
    let (denominator, rest) = digits(rest.trim_start().strip_prefix('/')?.trim_start());
    Some((parse_number(numerator)?, parse_number(denominator)?, rest))
}

fn fraction_or_mixed(text: &str) -> Result<Option<Leading<'_>>, ReadError> {
    let (whole, after_whole) = digits(text);
    let (whole, parts) = match fraction(text) {
        Some(parts) => (None, Some(parts)),
        None => {
            let joined = after_whole.strip_prefix('-');
            let second = joined.unwrap_or_else(|| after_whole.trim_start());
            // "21/2" is 10.5, never 2 1/2: something has to stand between.
            let parts = (second.len() < after_whole.len())
                .then(|| fraction(second))
                .flatten();
            (parse_number(whole), parts)
        }
    };
    let Some((numerator, denominator, rest)) = parts else {
        return Ok(None);
    };
    let piece = || before(text, rest).trim_end().to_owned();
    if denominator == 0.0 {
        return Err(ReadError::ZeroDenominator { piece: piece() });
    }
    if whole.is_some() && numerator >= denominator {
        return Err(ReadError::PartTooLarge { piece: piece() });
    }
    Ok(Some(Leading {
        value: whole.unwrap_or(0.0) + numerator / denominator,
        plain: false,
        rest,
    }))
}

/// `12`, `12.5`, `0,5`, `.5`, `12 500`, `1.2e3`.
fn decimal(text: &str) -> Result<Leading<'_>, ReadError> {
    let (first, mut rest) = digits(text);
    let mut whole = first.to_owned();
    if (1..=3).contains(&first.len()) {
        while let Some((group, after)) = group_of_three(rest) {
            whole.push_str(group);
            rest = after;
        }
    }
    let mut decimals = "";
    if let Some((mark, found, after)) = marked_digits(rest) {
        let grouped = first.len() <= 3 && !first.starts_with('0') && !first.is_empty();
        if let Some((_, _, mut tail)) = marked_digits(after) {
            while let Some((_, _, further)) = marked_digits(tail) {
                tail = further;
            }
            let piece = before(text, tail).to_owned();
            return Err(ReadError::MixedSeparators { piece });
        }
        if mark == ',' && found.len() == 3 && grouped {
            let piece = before(text, after).to_owned();
            return Err(ReadError::AmbiguousComma { piece });
        }
        decimals = found;
        rest = after;
    } else if !whole.is_empty() {
        // "5. in": a point that ends the number.
        rest = rest.strip_prefix('.').unwrap_or(rest);
    }
    if whole.is_empty() && decimals.is_empty() {
        return Err(ReadError::NoNumber {
            piece: text.to_owned(),
        });
    }
    let (exponent, after) = exponent(rest);
    let plain = decimals.is_empty() && exponent == "0";
    let value = parse_number(&format!("0{whole}.{decimals}e{exponent}")).ok_or_else(|| {
        ReadError::NoNumber {
            piece: text.to_owned(),
        }
    })?;
    Ok(Leading {
        value,
        plain,
        rest: after,
    })
}

/// A blank and exactly three digits, the thousands groups of ISO 80000-1.
fn group_of_three(text: &str) -> Option<(&str, &str)> {
    let (group, rest) = digits(text.strip_prefix(' ')?);
    (group.len() == 3).then_some((group, rest))
}

/// A comma or point with digits after it.
fn marked_digits(text: &str) -> Option<(char, &str, &str)> {
    let mark = text.chars().next().filter(|c| matches!(c, ',' | '.'))?;
    let (found, rest) = digits(text.strip_prefix(mark)?);
    (!found.is_empty()).then_some((mark, found, rest))
}

fn exponent(text: &str) -> (&str, &str) {
    let Some(after) = text.strip_prefix(['e', 'E']) else {
        return ("0", text);
    };
    let unsigned = after.strip_prefix(['+', '-']).unwrap_or(after);
    let (found, rest) = digits(unsigned);
    if found.is_empty() {
        return ("0", text);
    }
    (before(after, rest), rest)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_and_what_follows() {
        for (text, value, rest) in [
            ("12", 12.0, ""),
            ("12mm", 12.0, "mm"),
            ("12 mm", 12.0, " mm"),
            ("0,5", 0.5, ""),
            (",5", 0.5, ""),
            (".500", 0.5, ""),
            ("0,125", 0.125, ""),
            ("1234,567", 1234.567, ""),
            ("1.250", 1.25, ""),
            ("5. in", 5.0, " in"),
            ("12 500 lbf", 12_500.0, " lbf"),
            ("1 250,5", 1250.5, ""),
            ("1.2e3", 1200.0, ""),
            ("1.2E-3m", 0.0012, "m"),
            ("2e", 2.0, "e"),
            ("1/2", 0.5, ""),
            ("1 / 2 in", 0.5, " in"),
            ("9/16\"", 0.5625, "\""),
            ("2 1/2", 2.5, ""),
            ("2-1/2\"", 2.5, "\""),
            ("21/2", 10.5, ""),
            ("2½", 2.5, ""),
            ("-2 ½ in", -2.5, "  in"),
            ("½in", 0.5, " in"),
            ("−1⁄4", -0.25, ""),
            ("+3", 3.0, ""),
            ("10-32", 10.0, "-32"),
            ("1e999", f64::INFINITY, ""),
            ("1e99999999999999999999", f64::INFINITY, ""),
            ("1e-99999999999999999999", 0.0, ""),
        ] {
            let text = normalise(text);
            let found = leading_number(&text).unwrap();
            assert_eq!((found.value, found.rest), (value, rest), "{text}");
        }
    }

    #[test]
    fn numbers_refused() {
        for (text, code, piece) in [
            ("mm", "no-number", "mm"),
            ("nan", "no-number", "nan"),
            ("inf", "no-number", "inf"),
            ("-", "no-number", "-"),
            ("- mm", "no-number", "- mm"),
            ("１２", "no-number", "１２"),
            ("1,000 lb", "ambiguous-comma", "1,000"),
            ("12,500", "ambiguous-comma", "12,500"),
            ("1.250,5", "mixed-separators", "1.250,5"),
            ("1,250.5", "mixed-separators", "1,250.5"),
            ("1,000,000 N", "mixed-separators", "1,000,000"),
            ("2 3/2 in", "part-too-large", "2 3/2"),
            ("1/0", "zero-denominator", "1/0"),
        ] {
            let error = leading_number(&normalise(text)).unwrap_err();
            assert_eq!((error.code(), error.piece()), (code, piece), "{text}");
        }
    }
}

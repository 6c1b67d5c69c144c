//! How an answer that was typed compares with the amount that is asked for: right, or in which way not.

use calc_core::quantity::{Dimension, Unit, read};
use calc_core::report::Amount;

/// How far an answer may be off: rounding on the way, not a wrong step.
const TOLERANCE: f64 = 0.03;

/// How an answer compares with the amount that is asked for.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Grade<N> {
    /// Within the tolerance.
    Right,
    /// The number is right in this unit, but it was typed without one.
    OtherUnit(Unit),
    /// It is the amount that a known wrong idea gives.
    Near(N),
    /// Too large.
    Large,
    /// Too small.
    Small,
    /// Not understood; what to say.
    Unread(String),
}

/// Within the tolerance of an amount.
pub(crate) fn close(a: f64, b: f64) -> bool {
    (a - b).abs() <= TOLERANCE * b.abs().max(1e-12)
}

pub(crate) fn grade<N: Clone>(
    text: &str,
    asked: Amount,
    near: &[(N, Amount)],
    bare: Unit,
    close: impl Fn(f64, f64) -> bool,
) -> Grade<N> {
    let typed = match read(text, asked.dimension, bare) {
        Ok(typed) => typed,
        Err(error) => return Grade::Unread(error.to_string()),
    };
    if close(typed.si, asked.si) {
        return Grade::Right;
    }
    let without_unit = !text
        .chars()
        .any(|c| c.is_alphabetic() || "\"'°%".contains(c));
    if without_unit && let Some(unit) = other_unit(typed.value, asked, bare) {
        return Grade::OtherUnit(unit);
    }
    for (name, amount) in near {
        if amount.dimension == asked.dimension && close(typed.si, amount.si) {
            return Grade::Near(name.clone());
        }
    }
    if typed.si > asked.si {
        Grade::Large
    } else {
        Grade::Small
    }
}

/// The unit in which a number typed without one would be right.
fn other_unit(number: f64, asked: Amount, bare: Unit) -> Option<Unit> {
    if matches!(asked.dimension, Dimension::Ratio | Dimension::Count) {
        return None;
    }
    Unit::of(asked.dimension).find(|unit| *unit != bare && close(unit.to_si(number), asked.si))
}

#[cfg(test)]
mod tests {
    use super::*;
    use wasm_bindgen_test::wasm_bindgen_test;

    const ASKED: Amount = Amount::new(4_800.0, Dimension::Force);

    fn graded(text: &str) -> Grade<String> {
        let near = [("clamp".to_owned(), Amount::new(24_000.0, Dimension::Force))];
        grade(text, ASKED, &near, Unit::Kilonewton, close)
    }

    #[wasm_bindgen_test(unsupported = test)]
    fn answers_are_right_in_any_unit_within_three_percent() {
        for text in ["4.8", "4.8 kN", "4800 N", "1080 lbf", "4.9 kN"] {
            assert_eq!(graded(text), Grade::Right, "{text}");
        }
        assert_eq!(graded("5.0 kN"), Grade::Large);
        assert_eq!(graded("4 kN"), Grade::Small);
    }

    #[wasm_bindgen_test(unsupported = test)]
    fn a_number_without_its_unit_and_a_wrong_idea_are_told_apart() {
        assert_eq!(graded("4800"), Grade::OtherUnit(Unit::Newton));
        assert_eq!(graded("1079"), Grade::OtherUnit(Unit::PoundForce));
        assert_eq!(graded("24"), Grade::Near("clamp".into()));
        assert_eq!(graded("4800 kN"), Grade::Large);
        for text in ["", "much", "3 mm"] {
            assert!(matches!(graded(text), Grade::Unread(_)), "{text}");
        }
    }
}

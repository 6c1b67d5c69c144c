//! Problems: reads an answer with its unit and says whether it is right, and if not, in which way.

use calc_core::quantity::{Dimension, Unit, UnitSystem, read, unit_for};
use calc_core::report::Amount;
use drawing::words::message;
use leptos::web_sys::Element;

use super::page::{all, attribute, closest, field, first, focus, write_into};
use super::stage::Stage;

/// How far an answer may be off: rounding on the way, not a wrong step.
const TOLERANCE: f64 = 0.03;

/// How an answer compares with the amount that is asked for.
#[derive(Clone, Debug, PartialEq)]
enum Grade {
    /// Within the tolerance.
    Right,
    /// The number is right in this unit, but it was typed without one.
    OtherUnit(Unit),
    /// It is the amount that a known wrong idea gives.
    Near(String),
    /// Too large.
    Large,
    /// Too small.
    Small,
    /// Not understood; what to say.
    Unread(String),
}

fn close(a: f64, b: f64) -> bool {
    (a - b).abs() <= TOLERANCE * b.abs().max(1e-12)
}

fn grade(text: &str, asked: Amount, near: &[(String, Amount)], units: UnitSystem) -> Grade {
    let bare = unit_for(asked.dimension, units);
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

impl Stage {
    /// Checks the answer of the problem around an element.
    pub(super) fn check(&self, element: &Element) {
        let Some(problem) = closest(element, ".problem") else {
            return;
        };
        let (Some(answer), Some(reply)) = (first(&problem, ".answer"), first(&problem, ".reply"))
        else {
            return;
        };
        let values = self.values_of(&problem);
        let of = |name: String| values.iter().find(|value| value.name == name);
        let Some(value) = of(attribute(&answer, "data-answer")) else {
            return;
        };
        let asked = value.amount;
        let nears = all(&problem, "[data-near]");
        let near: Vec<_> = nears
            .iter()
            .filter_map(|element| {
                let value = of(attribute(element, "data-near"))?;
                Some((value.name.into(), value.amount))
            })
            .collect();
        let text = field(&answer)
            .map(|input| input.value())
            .unwrap_or_default();
        let units = self.units();
        let grade = grade(&text, asked, &near, units);
        let right = grade == Grade::Right;
        answer
            .set_attribute("aria-invalid", if right { "false" } else { "true" })
            .ok();
        problem
            .toggle_attribute_with_force("data-solved", right)
            .ok();
        match &grade {
            Grade::Near(name) => {
                let words = nears.iter().find(|e| attribute(e, "data-near") == *name);
                reply.set_text_content(None);
                if let Some(words) = words.and_then(|e| e.clone_node_with_deep(true).ok()) {
                    reply.append_child(&words).ok();
                }
            }
            Grade::Unread(error) => write_into(&reply, error),
            other => {
                let key = match other {
                    Grade::Right => "answer.right",
                    Grade::OtherUnit(_) => "answer.unit",
                    Grade::Large => "answer.large",
                    _ => "answer.small",
                };
                let template = message(key).unwrap_or_default();
                let words = template.replace("{asked}", &value.written(units));
                let words = match other {
                    Grade::OtherUnit(unit) => words
                        .replace("[meant]", unit.symbol())
                        .replace("[read]", unit_for(asked.dimension, units).symbol()),
                    _ => words,
                };
                write_into(&reply, &words);
            }
        }
        if !right {
            focus(&answer);
        }
    }

    /// What was said of the answers is of other numbers now; what was typed stays.
    pub(super) fn doubt_answers(&self) {
        for answer in all(self.section(), ".answer[aria-invalid]") {
            answer.remove_attribute("aria-invalid").ok();
            let problem = closest(&answer, ".problem");
            if let Some(reply) = problem.as_ref().and_then(|p| first(p, ".reply")) {
                write_into(&reply, "");
            }
            if let Some(problem) = problem {
                problem.remove_attribute("data-solved").ok();
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const ASKED: Amount = Amount::new(4_800.0, Dimension::Force);

    fn graded(text: &str) -> Grade {
        let near = [("clamp".to_owned(), Amount::new(24_000.0, Dimension::Force))];
        grade(text, ASKED, &near, UnitSystem::Metric)
    }

    #[test]
    fn answers_are_right_in_any_unit_within_three_percent() {
        for text in ["4.8", "4.8 kN", "4800 N", "1080 lbf", "4.9 kN"] {
            assert_eq!(graded(text), Grade::Right, "{text}");
        }
        assert_eq!(graded("5.0 kN"), Grade::Large);
        assert_eq!(graded("4 kN"), Grade::Small);
    }

    #[test]
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

//! Problems: reads an answer with its unit and says whether it is right, and if not, in which way.

use calc_core::quantity::unit_for;
use drawing::words::key;
use drawing::words::message;
use leptos::web_sys::Element;

use super::page::{all, attribute, closest, field, first, focus, write_into};
use super::stage::Stage;
use crate::grade::{Grade, close, grade};

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
        let near: Vec<(String, _)> = nears
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
        let bare = unit_for(asked.dimension, units);
        let grade = grade(&text, asked, &near, bare, close);
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
                    Grade::Right => key::ANSWER_RIGHT,
                    Grade::OtherUnit(_) => key::ANSWER_UNIT,
                    Grade::Large => key::ANSWER_LARGE,
                    _ => key::ANSWER_SMALL,
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

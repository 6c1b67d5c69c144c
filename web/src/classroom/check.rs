//! A student checks answers by the number of the sheet: right, which usual mistake it looks like, or not yet. The
//! answer itself is not told.

use calc_core::quantity::Unit;
use calc_core::report::Amount;
use classroom::words::{filled, message};
use classroom::{Class, Problem};
use leptos::prelude::*;

use super::button;
use super::form::place;
use super::sheets::name;
use super::typed::Typed;
use crate::el::{El, classed, el, value_of};
use crate::grade::{Grade, grade};

/// The unit that an answer is asked in; empty for a plain number.
pub(super) fn unit_of(problem: &Problem) -> String {
    match problem.unit() {
        // “in in” reads badly.
        Unit::Inch => Unit::Inch.spoken(false).into(),
        unit => unit.symbol().into(),
    }
}

/// What to say of an answer as it was typed.
fn reply(problem: &Problem, text: &str) -> (bool, String) {
    let near: Vec<_> = problem
        .wrong
        .iter()
        .map(|(wrong, si)| (*wrong, Amount::new(*si, problem.answer.dimension)))
        .collect();
    let same = |a: f64, b: f64| problem.same(a, b);
    match grade(text, problem.answer, &near, problem.unit(), same) {
        Grade::Right => (true, message("check.right").into()),
        Grade::Near(wrong) => {
            let why = message(&format!("wrong.{}", wrong.key()));
            (false, filled("check.near", &[("why", why)]))
        }
        Grade::OtherUnit(unit) if !unit.symbol().is_empty() => {
            (false, filled("check.unit", &[("meant", unit.symbol())]))
        }
        Grade::Unread(why) => (false, filled("check.unread", &[("why", &why)])),
        _ => (false, message("check.no").into()),
    }
}

pub(super) fn page(class: &Class, number: usize, kept: Typed) -> El {
    let problems = class.sheet(number).into_iter().enumerate();
    let sheet = place(class, number);
    let fields = problems.map(|(index, problem)| {
        let at = format!("{sheet}/{}", index + 1);
        one(problem.clone(), index + 1, kept, at)
    });
    el("div")
        .child(el("p").text(message("check.intro")))
        .children(fields)
}

fn one(problem: Problem, index: usize, kept: Typed, at: String) -> El {
    let typed = RwSignal::new(kept.get(&at));
    let said = RwSignal::new((false, String::new()));
    let id = format!("answer-{index}");
    let unit = unit_of(&problem);
    let key = if unit.is_empty() {
        "check.field-bare"
    } else {
        "check.field"
    };
    let label = filled(key, &[("n", &index.to_string()), ("unit", &unit)]);
    let (title, asked) = (name(&problem, index), problem.asked());
    classed("form", "checked")
        .on("submit", move |event| {
            event.prevent_default();
            said.set(reply(&problem, &typed.get_untracked()));
        })
        .child(el("h2").text(title))
        .child(el("p").text(asked))
        .child(el("label").attr("for", &id).text(label))
        .child(
            classed("p", "actions")
                .child(
                    el("input")
                        .attr("type", "text")
                        .attr("id", &id)
                        .attr("autocomplete", "off")
                        .prop("value", move || typed.get().into())
                        .on("input", move |event| {
                            let text = value_of(&event);
                            kept.put(&at, &text);
                            typed.set(text);
                            said.set((false, String::new()));
                        }),
                )
                .child(button("check.press").attr("type", "submit")),
        )
        .child(
            classed("p", "reply")
                .attr("role", "status")
                .flag("data-right", move || said.get().0)
                .live_text(move || said.get().1),
        )
}

#[cfg(test)]
mod tests {
    use super::*;
    use calc_core::quantity::UnitSystem;
    use classroom::Level;
    use wasm_bindgen_test::wasm_bindgen_test;

    /// Every usual mistake of every problem is known again from what a student would type, and none is taken as right.
    #[wasm_bindgen_test(unsupported = test)]
    fn answers_and_mistakes_are_told_apart_as_they_are_typed() {
        for units in [UnitSystem::Us, UnitSystem::Metric] {
            for level in Level::ALL {
                let class = Class::new("told apart", *level, units).unwrap();
                for problem in (1..=40).flat_map(|student| class.sheet(student)) {
                    let told = problem.told();
                    assert!(reply(problem, &problem.answered()).0, "{told}");
                    for (wrong, si) in &problem.wrong {
                        let (right, said) = reply(problem, &problem.written(*si));
                        let why = message(&format!("wrong.{}", wrong.key()));
                        assert!(!right && said.contains(why), "{told}: {wrong:?}: {said}");
                    }
                    assert!(!said_answer(problem), "{told}");
                }
            }
        }
    }

    /// Whether a reply to a wrong answer tells the right one.
    fn said_answer(problem: &Problem) -> bool {
        ["0.000001", "", "x", "999999999"]
            .iter()
            .any(|text| reply(problem, text).1.contains(&problem.answered()))
    }
}

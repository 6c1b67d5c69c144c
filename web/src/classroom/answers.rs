//! The answer sheet: what each student was given, what comes out, and what the usual wrong answers tell.

use classroom::Class;
use classroom::words::{filled, message};

use super::heads;
use super::sheets::{level_name, name, units_name};
use crate::el::{El, classed, el};

pub(super) fn all(class: &Class, students: usize) -> Vec<El> {
    let title = filled(
        "answers.title",
        &[
            ("word", &class.word),
            ("level", level_name(class.level)),
            ("units", units_name(class.units)),
        ],
    );
    let mut all = vec![el("h2").text(title), el("p").text(message("answers.head"))];
    all.extend((1..=students).map(|number| of_student(class, number)));
    all
}

fn of_student(class: &Class, number: usize) -> El {
    let rows = class
        .sheet(number)
        .into_iter()
        .enumerate()
        .map(|(index, problem)| {
            let given: Vec<String> = problem
                .values
                .iter()
                .filter(|value| value.si.is_some())
                .map(|value| format!("{} {}", value.name, value.text))
                .collect();
            let [low, high] = problem.accepted().map(|si| problem.written(si));
            // The unit once.
            let low = low.split('\u{a0}').next().unwrap_or_default();
            let wrong = problem.wrong.iter().map(|(wrong, si)| {
                let why = message(&format!("wrong.{}", wrong.key()));
                el("li").text(format!("{}: {why}", problem.written(*si)))
            });
            let cell = |key, text: String| el("td").attr("data-name", message(key)).text(text);
            el("tr")
                .child(el("th").attr("scope", "row").text(name(problem, index + 1)))
                .child(cell("answers.given", given.join(", ")))
                .child(cell("answers.right", problem.answered()))
                .child(cell("answers.accept", format!("{low} … {high}")))
                .child(
                    el("td")
                        .attr("data-name", message("answers.wrong"))
                        .child(el("ul").children(wrong)),
                )
        });
    let caption = filled("answers.sheet", &[("number", &number.to_string())]);
    classed("table", "restack answers")
        .child(el("caption").text(caption))
        .child(heads(&[
            "answers.problem",
            "answers.given",
            "answers.right",
            "answers.accept",
            "answers.wrong",
        ]))
        .child(el("tbody").children(rows))
}

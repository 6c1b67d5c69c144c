//! The sheets of a class: two sides at most for each student.

use calc_core::quantity::UnitSystem;
use classroom::words::{filled, message};
use classroom::{Class, Level, Problem};
use leptos::prelude::*;

use super::check::unit_of;
use super::form::place;
use crate::el::{El, classed, el};
use crate::paint::drawing;
use crate::paper::beside;

pub(super) fn all(class: &Class, students: usize) -> Vec<El> {
    (1..=students).map(|number| sheet(class, number)).collect()
}

pub(super) fn units_name(units: UnitSystem) -> &'static str {
    message(match units {
        UnitSystem::Us => "form.units-us",
        UnitSystem::Metric => "form.units-metric",
    })
}

pub(super) fn level_name(level: Level) -> &'static str {
    message(&format!("level.{}", level.key()))
}

fn sheet(class: &Class, number: usize) -> El {
    let number_ = number.to_string();
    let head = filled(
        "sheet.head",
        &[
            ("word", &class.word),
            ("number", &number_),
            ("level", level_name(class.level)),
            ("units", units_name(class.units)),
        ],
    );
    let blank = |key| classed("span", "blank").text(message(key));
    let address = beside("handout.html", &format!("check/{}", place(class, number)));
    let problems = class.sheet(number);
    let mut formulas: Vec<&str> = Vec::new();
    if class.level == Level::Middle {
        for problem in &problems {
            let formula = formula(problem);
            if !formulas.contains(&formula) {
                formulas.push(formula);
            }
        }
    }
    let formulas = (!formulas.is_empty()).then(|| {
        let all = formulas.join("; ");
        classed("p", "small").text(filled("sheet.formulas", &[("formulas", &all)]))
    });
    let units = message(match class.units {
        UnitSystem::Us => "sheet.us",
        UnitSystem::Metric => "sheet.metric",
    });
    classed("article", "student")
        .child(el("h2").text(head))
        .child(
            classed("p", "name")
                .child(blank("sheet.name"))
                .child(blank("sheet.date")),
        )
        .child(classed("p", "small").text(units))
        .children(formulas)
        .children(
            problems
                .into_iter()
                .enumerate()
                .map(|(index, problem)| one(problem, (number, index + 1))),
        )
        .child(classed("p", "small").text(filled("sheet.back", &[("address", &address)])))
}

fn formula(problem: &Problem) -> &'static str {
    message(&format!("formula.{}", problem.kind.key()))
}

/// Its number and what it is about.
pub(super) fn name(problem: &Problem, index: usize) -> String {
    format!(
        "{index} {}",
        message(&format!("kind.{}", problem.kind.key()))
    )
}

fn one(problem: &Problem, (number, index): (usize, usize)) -> El {
    let easy = problem.level == Level::Easy;
    let formula = easy.then(|| classed("p", "formula").text(formula(problem)));
    let unit = unit_of(problem);
    let answer = if unit.is_empty() {
        String::from(message("sheet.answer-bare"))
    } else {
        filled("sheet.answer", &[("unit", &unit)])
    };
    classed("section", "set")
        .child(el("h3").text(name(problem, index)))
        .child(
            classed("div", "given")
                .child(el("p").text(problem.asked()))
                .children(formula)
                .children(table(problem)),
        )
        .child(picture(problem, &format!("s{number}-{index}")))
        .child(classed("div", "room"))
        .child(
            classed("p", "name")
                .child(classed("span", "blank").text(answer))
                .child(classed("span", "blank").text(message("sheet.because"))),
        )
}

/// The table that a problem needs.
pub(super) fn table(problem: &Problem) -> Option<El> {
    if problem.table.is_empty() {
        return None;
    }
    let kind = problem.kind.key();
    let heads = ["what", "amount"].map(|column| {
        let key = format!("table.{kind}.{column}");
        el("th").attr("scope", "col").text(message(&key))
    });
    let rows = problem.table.iter().map(|[what, amount]| {
        el("tr")
            .child(el("th").attr("scope", "row").text(what.as_str()))
            .child(el("td").text(amount.as_str()))
    });
    Some(
        classed("table", "small")
            .child(el("thead").child(el("tr").children(heads)))
            .child(el("tbody").children(rows)),
    )
}

/// The picture of a problem.
pub(super) fn picture(problem: &Problem, id: &str) -> El {
    let title = filled(
        "sheet.picture",
        &[("kind", message(&format!("kind.{}", problem.kind.key())))],
    );
    let scene = problem.shape.scene(id, &title, &problem.asked());
    drawing(Signal::stored(scene))
}

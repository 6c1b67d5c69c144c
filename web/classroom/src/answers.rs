//! The answers as a table to keep: one line a problem, as other programs read it.

use std::borrow::Cow;

use crate::sheet::Class;
use crate::words::message;

/// A cell as RFC 4180 wants it.
#[must_use]
pub fn cell(text: &str) -> Cow<'_, str> {
    if text.contains([',', '"', '\n', '\r']) {
        Cow::Owned(format!("\"{}\"", text.replace('"', "\"\"")))
    } else {
        Cow::Borrowed(text)
    }
}

/// A line of cells.
#[must_use]
pub fn line<S: AsRef<str>>(cells: &[S]) -> String {
    let cells: Vec<_> = cells.iter().map(|text| cell(text.as_ref())).collect();
    cells.join(",") + "\r\n"
}

/// All answers of the first students of a class.
#[must_use]
pub fn csv(class: &Class, students: usize) -> String {
    let mut out = line(&[
        "word",
        "level",
        "student",
        "problem",
        "topic",
        "given",
        "answer",
        "from",
        "to",
        "wrong answers",
    ]);
    for student in 1..=students {
        for (index, problem) in class.sheet(student).into_iter().enumerate() {
            let [from, to] = problem.accepted().map(|si| problem.written(si));
            let given: Vec<String> = problem
                .values
                .iter()
                .map(|value| format!("{} {}", value.name, value.text))
                .collect();
            let wrong: Vec<String> = problem
                .wrong
                .iter()
                .map(|(wrong, si)| {
                    let why = message(&format!("wrong.{}", wrong.key()));
                    format!("{}: {why}", problem.written(*si))
                })
                .collect();
            out += &line(&[
                class.word.as_str(),
                class.level.key(),
                &student.to_string(),
                &(index + 1).to_string(),
                problem.kind.key(),
                &given.join("; "),
                &problem.answered(),
                &from,
                &to,
                &wrong.join("; "),
            ]);
        }
    }
    out
}

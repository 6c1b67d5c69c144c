//! Every sentence of the lessons with its numbers, as a reader gets it, kept in `said.txt`: what changes
//! there was meant to change. Written anew by `UPDATE_SAID=1 cargo test -p drawing said`.

use super::every::{UNITS, states};
use super::{LESSONS, Model, read_words};
use std::collections::BTreeSet;
use std::fmt::Write;

const KEPT: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/src/lesson/said.txt");

/// The first state of each sentence and of each description, in both unit systems.
fn all(model: &'static dyn Model) -> String {
    let words = read_words(model.id()).unwrap();
    let (mut out, mut seen) = (format!("# {}\n", model.id()), BTreeSet::new());
    for state in states(model) {
        let outcome = model.outcome(&state).unwrap();
        if !seen.insert((outcome.said, outcome.seen)) {
            continue;
        }
        writeln!(out, "\n{}", state.written(model.controls())).unwrap();
        for units in UNITS {
            let said = model.sentence(&words, &state, &outcome, units);
            let look = super::Look { id: "x", units };
            let picture = model.told(&words, &state, &outcome, &look).unwrap();
            writeln!(out, "- {said}\n  ({})", picture.drawing.description).unwrap();
        }
    }
    out
}

#[test]
fn what_is_said_is_what_was_read_through() {
    let now: Vec<String> = LESSONS.iter().map(|model| all(*model)).collect();
    let now = now.join("\n");
    if std::env::var_os("UPDATE_SAID").is_some() {
        std::fs::write(KEPT, &now).unwrap();
    }
    let kept = std::fs::read_to_string(KEPT).unwrap_or_default();
    for (line, (was, is)) in kept.lines().zip(now.lines()).enumerate() {
        assert_eq!(was, is, "line {} of said.txt", line + 1);
    }
    assert_eq!(
        kept.lines().count(),
        now.lines().count(),
        "lines of said.txt"
    );
}

//! Every sentence of the lessons with its numbers, as a reader gets it, kept in `said.txt`: what changes
//! there was meant to change. Written anew by `UPDATE_SAID=1 cargo test -p drawing said`.

use super::every::{UNITS, states_on_steps};
use super::{LESSONS, Model, read_words};
use calc_core::quantity::UnitSystem;
use std::collections::BTreeSet;
use std::fmt::Write;

const KEPT: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/src/lesson/said.txt");

/// The first state of each sentence and of each description in either system of units.
fn all(model: &'static dyn Model) -> String {
    let words = read_words(model.id()).unwrap();
    let (mut out, mut seen) = (format!("# {}\n", model.id()), BTreeSet::new());
    for units in UNITS {
        let name = match units {
            UnitSystem::Us => "us",
            UnitSystem::Metric => "metric",
        };
        for state in states_on_steps(model, units) {
            let outcome = model.outcome(&state).unwrap();
            if !seen.insert((name, outcome.said, outcome.seen)) {
                continue;
            }
            writeln!(out, "\n{name} {}", state.written(model.controls())).unwrap();
            let said = model.sentence(&words, &state, &outcome);
            let picture = model.told(&words, &state, &outcome, &state.look("x"));
            let told = picture.unwrap().drawing.description;
            writeln!(out, "- {said}\n  ({told})").unwrap();
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

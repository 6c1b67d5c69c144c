//! What holds for every lesson: walked over a grid of its states.

use super::{ControlKind, LESSONS, MOST_CONTROLS, Model, Range, State, read_words};
use crate::scene::{Mark, Scene};
use calc_core::Scenario;
use calc_core::quantity::UnitSystem;
use std::collections::BTreeSet;

pub(super) const UNITS: [UnitSystem; 2] = [UnitSystem::Us, UnitSystem::Metric];

/// Values of a control that are worth a look: ends, start, and some between.
fn values(model: &dyn Model, control: usize, units: UnitSystem, on_steps: bool) -> Vec<f64> {
    match model.controls().get(control).map(|c| c.kind) {
        None => vec![0.0],
        Some(ControlKind::Choices { of, .. }) => (0..of.len()).map(|i| i as f64).collect(),
        Some(ControlKind::Number { range, .. }) => {
            let range = range.of(units);
            let Range {
                min, max, start, ..
            } = *range;
            let mut all: Vec<_> = (0..=12)
                .map(|i| min + (max - min) * f64::from(i) / 12.0)
                .map(|at| if on_steps { range.nearest(at) } else { at })
                .collect();
            all.push(start);
            all
        }
    }
}

/// A grid of states in both systems of units.
pub(super) fn states(model: &dyn Model) -> Vec<State> {
    UNITS
        .into_iter()
        .flat_map(|units| states_in(model, units))
        .collect()
}

/// The same in one system.
fn states_in(model: &dyn Model, units: UnitSystem) -> Vec<State> {
    grid(model, units, false)
}

/// A grid of states to which a slider can be brought.
pub(super) fn states_on_steps(model: &dyn Model, units: UnitSystem) -> Vec<State> {
    grid(model, units, true)
}

fn grid(model: &dyn Model, units: UnitSystem, on_steps: bool) -> Vec<State> {
    let mut all = vec![[0.0; MOST_CONTROLS]];
    for control in 0..MOST_CONTROLS {
        all = all
            .into_iter()
            .flat_map(|at| {
                values(model, control, units, on_steps)
                    .into_iter()
                    .map(move |v| {
                        let mut at = at;
                        at[control] = v;
                        at
                    })
            })
            .collect();
    }
    all.into_iter().map(|at| State::new(at, units)).collect()
}

/// A state in words for a test that fails.
pub(super) fn at(model: &dyn Model, state: &State) -> String {
    let written = state.written(model.controls());
    format!("{} {:?} {written}", model.id(), state.units())
}

fn texts(marks: &[Mark]) -> Vec<&str> {
    marks
        .iter()
        .flat_map(|mark| match mark {
            Mark::Text { text, .. } => vec![text.as_str()],
            Mark::Group { marks, .. } => texts(marks),
            _ => Vec::new(),
        })
        .collect()
}

fn sound(scene: &Scene, at: &str) {
    let svg = scene.to_svg();
    for bad in ["NaN", "inf", "not defined", "style="] {
        assert!(!svg.contains(bad), "{at}: {bad}");
    }
    assert!(
        !scene.title.is_empty() && scene.description.len() > 20,
        "{at}: {scene:?}"
    );
    let told = &scene.description;
    assert!(told.ends_with('.') && !told.contains('{'), "{at}: {told}");
    assert!(!told.contains("  ") && told == told.trim(), "{at}: {told}");
    assert!(
        texts(&scene.marks).iter().all(|t| !t.is_empty()),
        "{at}: empty lettering"
    );
}

/// Where the title strip begins: the line above it.
fn strip(marks: &[Mark]) -> Option<(f64, f64)> {
    marks.iter().find_map(|mark| match mark {
        Mark::Line { from, class, .. } if *class == "frame" => Some(*from),
        _ => None,
    })
}

/// Units of the other system, and what its stock is called, have no place in what a reader is told.
fn one_system(text: &str, units: UnitSystem, at: &str) {
    let foreign: &[&str] = match units {
        UnitSystem::Us => &["mm", "kN", "N·m", "MPa", "°C", "M10", "M12", "M16", "class"],
        UnitSystem::Metric => &["in", "lbf", "lb-ft", "ksi", "°F", "lbf/in", "grade"],
    };
    // "in" is a unit after a number only.
    let mut before = "";
    for word in text.split([' ', '\u{a0}']) {
        let word = word.trim_end_matches(['.', ',', ':', ';', ')']);
        let after_number = before.ends_with(|c: char| c.is_ascii_digit());
        let unit = foreign.contains(&word) && (word != "in" || after_number);
        assert!(!unit, "{at}: {text}");
        before = word;
    }
}

#[test]
fn what_stands_in_the_other_system_at_the_same_steps_can_be_had_back() {
    for model in LESSONS {
        let controls = model.controls();
        for (from, to) in [(UNITS[0], UNITS[1]), (UNITS[1], UNITS[0])] {
            let start = State::start(controls, from);
            assert_eq!(start.answering(controls, to), State::start(controls, to));
            for state in states_in(*model, from) {
                let other = state.answering(controls, to);
                let at = at(*model, &other);
                for (i, control) in controls.iter().enumerate() {
                    let there = other.number(i);
                    assert_eq!(control.within(there, to), there, "{at}");
                    if let (Some(here), Some(range)) = (control.range(from), control.range(to)) {
                        // Ends answer to ends, and everything else to a step between them.
                        let ends = [(here.min, range.min), (here.max, range.max)];
                        for (end, other_end) in ends {
                            assert!(state.number(i) != end || there == other_end, "{at}");
                        }
                        let kept = there == range.start || range.nearest(there) == there;
                        assert!(kept || here == range, "{at}");
                    } else {
                        assert_eq!(state.choice(i), other.choice(i), "{at}");
                    }
                }
            }
        }
    }
}

#[test]
fn nothing_changes_beyond_the_end_of_a_slider() {
    let mut ends = 0;
    for model in LESSONS {
        let controls = model.controls();
        for state in states(*model) {
            let outcome = model.outcome(&state).unwrap();
            if let Some((control, end)) = outcome.end {
                ends += 1;
                let at = at(*model, &state);
                let range = controls[control].range(state.units()).unwrap();
                let far = outcome.farthest(range, control);
                assert!(end > 0.0 && far >= end.min(range.max), "{at}");
                let there = |value| model.outcome(&state.with(controls, control, value));
                assert_eq!(there(far), there(range.max), "{at}");
                assert_ne!(there(0.9 * end.min(range.max)), there(far), "{at}");
            }
        }
    }
    assert!(ends > 100, "{ends}");
}

#[test]
fn sliders_go_in_whole_steps_from_end_to_end() {
    for model in LESSONS {
        for control in model.controls() {
            for range in UNITS.iter().filter_map(|units| control.range(*units)) {
                let at = format!("{} {}: {range:?}", model.id(), control.key);
                for end in [range.max, range.start] {
                    let steps = (end - range.min) / range.step;
                    assert!((steps - steps.round()).abs() < 1e-6, "{at}");
                }
            }
        }
    }
}

#[test]
fn controls_are_few_named_and_start_in_range() {
    let mut ids = BTreeSet::new();
    for model in LESSONS {
        assert!(ids.insert(model.id()), "{} twice", model.id());
        let controls = model.controls();
        assert!(
            (1..=MOST_CONTROLS).contains(&controls.len()),
            "{}",
            model.id()
        );
        let mut keys = BTreeSet::new();
        for control in controls {
            assert!(keys.insert(control.key), "{}: {}", model.id(), control.key);
            assert!(!control.label.is_empty());
            for units in UNITS {
                let start = control.start(units);
                assert_eq!(control.within(start, units), start);
            }
            if let ControlKind::Choices { of, .. } = control.kind {
                assert!(
                    (2..=5).contains(&of.len()),
                    "{}: {}",
                    model.id(),
                    control.key
                );
            }
        }
    }
}

#[test]
fn every_state_is_computed_said_and_drawn() {
    for model in LESSONS {
        let words = read_words(model.id()).unwrap();
        let mut sentences = BTreeSet::new();
        for state in states(*model) {
            let at = at(*model, &state);
            let outcome = model
                .outcome(&state)
                .unwrap_or_else(|| panic!("{at}: refused"));
            assert!(Scenario::new(&outcome.joint).is_ok(), "{at}: joint");
            let values = model.values(&state, &outcome);
            let names: BTreeSet<_> = values.iter().map(|v| v.name).collect();
            assert_eq!(names.len(), values.len(), "{at}: a name comes twice");
            for value in &values {
                assert!(value.amount.si.is_finite(), "{at}: {}", value.name);
            }
            sentences.insert(outcome.said);
            let said = model.sentence(&words, &state, &outcome);
            assert!(
                said.len() > 20 && !said.contains('{'),
                "{at}: {} → {said:?}",
                outcome.said
            );
            let ends = said.matches(". ").count() + said.matches("? ").count() + 1;
            assert!(ends <= 3 && said.ends_with('.'), "{at}: {said}");
            one_system(&said, state.units(), &at);
        }
        assert!(sentences.len() >= 3, "{}: only {sentences:?}", model.id());
    }
}

#[test]
fn every_picture_is_sound_and_keeps_its_size() {
    for model in LESSONS {
        let words = read_words(model.id()).unwrap();
        let mut size = None;
        for state in states(*model).into_iter().step_by(7) {
            let look = state.look("x");
            let at = at(*model, &state);
            let outcome = model.outcome(&state).unwrap();
            let picture = model
                .told(&words, &state, &outcome, &look)
                .unwrap_or_else(|| panic!("{at}"));
            sound(&picture.drawing, &at);
            for text in texts(&picture.drawing.marks) {
                one_system(text, state.units(), &at);
            }
            assert!(
                (picture.drawing.width - super::DRAWING_WIDTH).abs() < 1e-9,
                "{at}"
            );
            let now = (picture.drawing.view_box(), strip(&picture.drawing.marks));
            assert_eq!(
                *size.get_or_insert(now.clone()),
                now,
                "{at}: the sheet or its strip changes its size"
            );
            for handle in &picture.handles {
                assert!(handle.control < model.controls().len());
                let (x, y) = handle.at;
                assert!(
                    (0.0..=340.0).contains(&x) && (0.0..=picture.drawing.height).contains(&y),
                    "{at}"
                );
                assert!(handle.along.0.hypot(handle.along.1) > 0.0, "{at}");
            }
            if let Some(chart) = &picture.plot {
                let scene = chart.scene("y");
                sound(&scene, &at);
                for text in texts(&scene.marks) {
                    one_system(text, state.units(), &at);
                }
                assert!(
                    chart.points.iter().any(|p| p.here),
                    "{at}: the plot does not say where it is"
                );
            }
        }
    }
}

//! What holds for every lesson: walked over a grid of its states.

use super::{ControlKind, LESSONS, Look, MOST_CONTROLS, Model, State, read_words};
use crate::scene::{Mark, Scene};
use calc_core::Scenario;
use calc_core::quantity::UnitSystem;
use std::collections::BTreeSet;

pub(super) const UNITS: [UnitSystem; 2] = [UnitSystem::Us, UnitSystem::Metric];

/// Values of a control that are worth a look: ends, start, and some between.
fn values(model: &dyn Model, control: usize) -> Vec<f64> {
    match model.controls().get(control).map(|c| c.kind) {
        None => vec![0.0],
        Some(ControlKind::Choices { of, .. }) => (0..of.len()).map(|i| i as f64).collect(),
        Some(ControlKind::Number {
            min, max, start, ..
        }) => {
            let mut all: Vec<_> = (0..=12)
                .map(|i| min + (max - min) * f64::from(i) / 12.0)
                .collect();
            all.push(start);
            all
        }
    }
}

pub(super) fn states(model: &dyn Model) -> Vec<State> {
    let mut all = vec![State([0.0; MOST_CONTROLS])];
    for control in 0..MOST_CONTROLS {
        all = all
            .into_iter()
            .flat_map(|state| {
                values(model, control).into_iter().map(move |v| {
                    let mut state = state;
                    state.0[control] = v;
                    state
                })
            })
            .collect();
    }
    all
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
            assert_eq!(control.within(control.start()), control.start());
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
            let at = format!("{} {}", model.id(), state.written(model.controls()));
            let outcome = model
                .outcome(&state)
                .unwrap_or_else(|| panic!("{at}: refused"));
            assert!(Scenario::new(&outcome.joint).is_ok(), "{at}: joint");
            let values = model.values(&state, &outcome);
            let names: BTreeSet<_> = values.iter().map(|(name, _)| name).collect();
            assert_eq!(names.len(), values.len(), "{at}: a name comes twice");
            for (name, amount) in &values {
                assert!(amount.si.is_finite(), "{at}: {name}");
            }
            sentences.insert(outcome.said);
            for units in UNITS {
                let said = model.sentence(&words, &state, &outcome, units);
                assert!(
                    said.len() > 20 && !said.contains('{'),
                    "{at}: {} → {said:?}",
                    outcome.said
                );
                let ends = said.matches(". ").count() + said.matches("? ").count() + 1;
                assert!(ends <= 3 && said.ends_with('.'), "{at}: {said}");
            }
        }
        assert!(sentences.len() >= 3, "{}: only {sentences:?}", model.id());
    }
}

#[test]
fn every_picture_is_sound_and_keeps_its_size() {
    for model in LESSONS {
        let words = read_words(model.id()).unwrap();
        let mut size = None;
        for (i, state) in states(*model)
            .into_iter()
            .enumerate()
            .filter(|(i, _)| i % 7 == 0)
        {
            let look = Look {
                id: "x",
                units: UNITS[i % 2],
            };
            let at = format!("{} {}", model.id(), state.written(model.controls()));
            let outcome = model.outcome(&state).unwrap();
            let picture = model
                .told(&words, &state, &outcome, &look)
                .unwrap_or_else(|| panic!("{at}"));
            sound(&picture.drawing, &at);
            assert!(
                (picture.drawing.width - super::DRAWING_WIDTH).abs() < 1e-9,
                "{at}"
            );
            let now = picture.drawing.view_box();
            assert_eq!(
                *size.get_or_insert(now.clone()),
                now,
                "{at}: the sheet changes its size"
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
                sound(&chart.scene("y"), &at);
                assert!(
                    chart.points.iter().any(|p| p.here),
                    "{at}: the plot does not say where it is"
                );
            }
        }
    }
}

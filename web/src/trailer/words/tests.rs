//! Every sentence that the page can need is there.

use super::*;
use calc_core::scenario::{Input, Kind, Scenario, options};
use wasm_bindgen_test::wasm_bindgen_test;

#[wasm_bindgen_test(unsupported = test)]
fn everything_that_the_calculation_names_has_its_words() {
    use calc_core::report::{CheckId, Factor, Label, Message, Part, Verdict};
    // The work sheet says some of them alone.
    drawing::words::all::open_papers();
    fn all<W: Worded + Copy + std::fmt::Debug>(names: &[W]) {
        assert!(!names.is_empty());
        for name in names {
            assert_ne!(label(*name), "?", "{name:?}");
        }
    }
    all(Message::ALL);
    all(Label::ALL);
    all(Factor::ALL);
    all(CheckId::ALL);
    all(Verdict::ALL);
    all(Part::ALL);
    all(calc_core::catalog::CaseName::ALL);
    all(calc_core::repair::RepairKind::ALL);
    all(Field::ALL);
}

#[wasm_bindgen_test(unsupported = test)]
fn every_input_that_scatters_has_its_name() {
    for variable in calc_core::chance::Variable::ALL {
        let key = variable.key();
        assert!(drawing::words::all::message(key).is_some(), "{key}");
    }
}

#[wasm_bindgen_test(unsupported = test)]
fn every_field_and_choice_has_its_words() {
    for &field in Field::ALL {
        assert_ne!(help(field), "?", "{}", field.name());
        if let Kind::Number { default: None, .. } = field.kind() {
            assert_ne!(left_out(field), "?", "{}", field.name());
        }
        for name in options(field) {
            let listed = choice(field, name);
            let key = ["choice", field.name(), name];
            assert!(
                listed != name || drawing::words::all::message_at(&key).is_some(),
                "{key:?}"
            );
        }
    }
}

#[wasm_bindgen_test(unsupported = test)]
fn every_place_of_every_sentence_is_filled() {
    let mut inputs = vec![Input::default()];
    for field in [
        Field::Support,
        Field::Mount,
        Field::Grade,
        Field::Surface,
        Field::WeldNear,
    ] {
        for name in options(field) {
            let mut input = Input::default();
            input.set_choice(field, name);
            inputs.push(input);
        }
    }
    inputs.push(Input {
        tube_width_mm: 300.0,
        end_distance_mm: 15.0,
        ..Input::default()
    });
    for input in inputs {
        let Ok(scenario) = Scenario::new(&input) else {
            continue;
        };
        let report = calc_core::evaluate(&scenario);
        let all = report
            .checks
            .iter()
            .map(|c| &c.reason)
            .chain(&report.notes)
            .chain(&report.fatigue.said);
        for sentence in all {
            for units in [UnitSystem::Us, UnitSystem::Metric] {
                let text = said(sentence, units);
                assert!(
                    !text.contains('{') && text.len() > 10,
                    "{}: {text}",
                    sentence.code.key()
                );
            }
        }
        for check in &report.checks {
            assert!(label(check.id).len() > 10, "{:?}", check.id);
            assert!(label(check.factor_is) != "?");
        }
        assert!(label(report.support.least.gives_way) != "?");
    }
}

#[wasm_bindgen_test(unsupported = test)]
fn places_are_filled_in_any_order_and_texts_are_not_read_again() {
    assert_eq!("{1} of {0}, {2}".with(&["a", "{0}"]), "{0} of a, {2}");
    assert_eq!("{".with(&["a"]), "{");
}

#[wasm_bindgen_test(unsupported = test)]
fn inches_of_a_tape_are_fractions_and_others_are_not() {
    let length = |si| amount(si, Dimension::Length, UnitSystem::Us);
    assert_eq!(length(0.0635), "2\u{a0}1/2\u{a0}in");
    assert_eq!(length(0.001), "0.039\u{a0}in");
    assert_eq!(
        amount(0.0635, Dimension::Length, UnitSystem::Metric),
        "63.5\u{a0}mm"
    );
}

#[wasm_bindgen_test(unsupported = test)]
fn every_source_that_is_cited_has_a_title() {
    let scenario = Scenario::new(&Input::default()).unwrap();
    for check in calc_core::evaluate(&scenario).checks {
        for step in check.steps {
            let title = crate::trailer::examples::source_title(step.cite.source.key());
            assert_ne!(title, "source not registered", "{}", step.cite.source.key());
        }
    }
}

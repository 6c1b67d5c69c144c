use super::*;
use calc_core::scenario::{Input, Kind, Scenario, options};

/// Every code that stands in the source of the calculation, so that a new one cannot lack its words.
fn codes() -> Vec<String> {
    fn walk(folder: &std::path::Path, found: &mut Vec<String>) {
        for entry in std::fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                walk(&path, found);
            } else if path.extension().is_some_and(|e| e == "rs") {
                let text = std::fs::read_to_string(&path).unwrap();
                // Every other piece between quotation marks is inside them.
                found.extend(text.split('"').skip(1).step_by(2).map(String::from));
            }
        }
    }
    let mut found = Vec::new();
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../calc-core/src/evaluate");
    walk(std::path::Path::new(folder), &mut found);
    let kinds = [
        "limit-",
        "bolt-",
        "slip-",
        "opening-",
        "shear-",
        "bearing-",
        "end-",
        "grade-",
        "range-",
        "note-",
        "factor-",
        "fatigue-",
        "tear-out-",
        "fitting-",
        "loosening-",
        "section-",
        "hole-",
    ];
    found.retain(|code| {
        kinds.iter().any(|kind| code.starts_with(kind))
            && code
                .chars()
                .all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-')
    });
    found
}

#[test]
fn every_code_of_the_calculation_has_its_words() {
    let codes = codes();
    assert!(codes.len() > 30, "codes were looked for in the wrong place");
    let missing: Vec<_> = codes
        .iter()
        .filter(|code| drawing::words::message(code).is_none())
        .collect();
    assert!(missing.is_empty(), "{missing:?}");
}

#[test]
fn every_input_that_scatters_has_its_name() {
    for variable in calc_core::chance::Variable::ALL {
        let key = variable.key();
        assert!(drawing::words::message(key).is_some(), "{key}");
    }
}

#[test]
fn every_field_and_choice_has_its_words() {
    for &field in Field::ALL {
        for kind in ["field", "help"] {
            let key = format!("{kind}.{}", field.name());
            assert!(drawing::words::message(&key).is_some(), "{key}");
        }
        if let Kind::Number { default: None, .. } = field.kind() {
            let key = format!("empty.{}", field.name());
            assert!(drawing::words::message(&key).is_some(), "{key}");
        }
        for name in options(field) {
            let listed = choice(field, name);
            let key = format!("choice.{}.{name}", field.name());
            assert!(
                listed != name || drawing::words::message(&key).is_some(),
                "{key}"
            );
        }
    }
}

#[test]
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
                    sentence.code
                );
            }
        }
        for check in &report.checks {
            assert!(question(check.id).len() > 10, "{:?}", check.id);
            assert!(message(check.factor_is) != "?");
        }
        assert!(part(report.support.least.gives_way) != "?");
    }
}

#[test]
fn places_are_filled_in_any_order_and_texts_are_not_read_again() {
    assert_eq!("{1} of {0}, {2}".with(&["a", "{0}"]), "{0} of a, {2}");
    assert_eq!("{".with(&["a"]), "{");
}

#[test]
fn inches_of_a_tape_are_fractions_and_others_are_not() {
    let length = |si| amount(si, Dimension::Length, UnitSystem::Us);
    assert_eq!(length(0.0635), "2\u{a0}1/2\u{a0}in");
    assert_eq!(length(0.001), "0.039\u{a0}in");
    assert_eq!(
        amount(0.0635, Dimension::Length, UnitSystem::Metric),
        "63.5\u{a0}mm"
    );
}

#[test]
fn every_source_that_is_cited_has_a_title() {
    let scenario = Scenario::new(&Input::default()).unwrap();
    for check in calc_core::evaluate(&scenario).checks {
        for step in check.steps {
            let title = crate::trailer::examples::source_title(step.cite.source);
            assert_ne!(title, "source not registered", "{}", step.cite.source);
        }
    }
}

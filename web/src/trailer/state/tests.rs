//! What is typed, what it is read as, and which fields are shown.

use super::*;
use calc_core::link::{Decoded, decode, encode};
use wasm_bindgen_test::wasm_bindgen_test;

fn us() -> Form {
    Form::new(UnitSystem::Us)
}

fn faults(form: &Form) -> Vec<Fault> {
    form.checked().err().unwrap_or_default()
}

#[wasm_bindgen_test(unsupported = test)]
fn what_people_type_is_read_in_the_unit_shown() {
    for (text, system, mm) in [
        ("2 1/2", UnitSystem::Us, 63.5),
        ("2-1/2\"", UnitSystem::Metric, 63.5),
        ("60 mm", UnitSystem::Us, 60.0),
        ("60", UnitSystem::Metric, 60.0),
        ("0,5 in", UnitSystem::Metric, 12.7),
    ] {
        let mut form = Form::new(system);
        form.type_in(Field::TubeWidth, text);
        assert_eq!(form.input().number(Field::TubeWidth), Some(mm), "{text}");
        assert_eq!(form.text(Field::TubeWidth), text);
    }
}

#[wasm_bindgen_test(unsupported = test)]
fn switching_units_changes_no_value_and_no_meaning() {
    let mut form = us();
    form.type_in(Field::TubeWall, "3/16");
    form.type_in(Field::TubeDepth, "60 mm");
    let before = form.input().clone();
    form.set_units(UnitSystem::Metric);
    assert_eq!(form.input(), &before);
    // The bare number says its unit now; what had one stays as typed.
    assert_eq!(form.text(Field::TubeWall), "3/16 in");
    assert_eq!(form.text(Field::TubeDepth), "60 mm");
    assert_eq!(
        form.in_other_words(Field::TubeWall).as_deref(),
        Some("4.76\u{a0}mm")
    );
    form.set_units(UnitSystem::Us);
    assert_eq!(form.text(Field::TubeWall), "3/16");
    assert_eq!(form.input(), &before);
}

#[wasm_bindgen_test(unsupported = test)]
fn a_text_typed_over_a_converted_one_is_read_anew() {
    let mut form = us();
    form.type_in(Field::TubeWidth, "2");
    form.set_units(UnitSystem::Metric);
    form.type_in(Field::TubeWidth, "60");
    assert_eq!(form.input().number(Field::TubeWidth), Some(60.0));
    assert_eq!(form.text(Field::TubeWidth), "60");
}

#[wasm_bindgen_test(unsupported = test)]
fn a_text_that_cannot_be_read_is_kept_and_named_and_the_last_value_stays() {
    let mut form = us();
    form.type_in(Field::TubeWidth, "2.5");
    form.type_in(Field::TubeWidth, "wide");
    assert_eq!(form.text(Field::TubeWidth), "wide");
    assert_eq!(form.input().number(Field::TubeWidth), Some(63.5));
    let [fault] = &faults(&form)[..] else {
        panic!("one fault expected");
    };
    assert_eq!(fault.field, Some(Field::TubeWidth));
    for part in ["Width of the face", "“wide”", "0.591", "15.7"] {
        assert!(fault.sentence.contains(part), "{part}: {}", fault.sentence);
    }
    form.type_in(Field::TubeWidth, "3");
    assert!(form.checked().is_ok());
}

#[wasm_bindgen_test(unsupported = test)]
fn a_value_outside_the_range_names_field_value_and_range_in_the_readers_units() {
    let mut form = Form::new(UnitSystem::Metric);
    form.type_in(Field::TubeWall, "3 in");
    let fault = &faults(&form)[0];
    assert_eq!(fault.field, Some(Field::TubeWall));
    for part in [
        "Wall thickness",
        "76.2\u{a0}mm",
        "0.8\u{a0}mm",
        "25\u{a0}mm",
    ] {
        assert!(fault.sentence.contains(part), "{part}: {}", fault.sentence);
    }
}

#[wasm_bindgen_test(unsupported = test)]
fn an_emptied_field_goes_back_to_its_default() {
    let mut form = us();
    form.type_in(Field::Torque, "90 lbf ft");
    assert!(form.input().torque_nm.is_some());
    form.type_in(Field::Torque, "  ");
    assert_eq!(form.input().torque_nm, None);
    form.type_in(Field::TubeWidth, "4");
    form.type_in(Field::TubeWidth, "");
    assert_eq!(form.input(), Form::new(UnitSystem::Us).input());
    assert!(form.checked().is_ok());
}

#[wasm_bindgen_test(unsupported = test)]
fn a_grade_that_is_not_made_in_the_size_is_a_fault_of_the_grade() {
    let mut form = us();
    form.choose(Field::Bolt, "m12");
    assert_eq!(faults(&form)[0].field, Some(Field::Grade));
    assert!(!offered(Field::Grade, form.input()).contains(&"sae-5"));
    form.choose(Field::Grade, "iso-8.8");
    assert!(form.checked().is_ok());
}

#[wasm_bindgen_test(unsupported = test)]
fn what_differs_from_the_start_is_told_without_what_the_joint_does_not_use() {
    let mut form = us();
    form.type_in(Field::SpreaderThickness, "1/2");
    form.type_in(Field::TubeWidth, "4");
    assert_eq!(form.changed(), [Field::TubeWidth]);
    form.choose(Field::Support, "spreader");
    assert_eq!(
        form.changed(),
        [Field::TubeWidth, Field::SpreaderThickness, Field::Support]
    );
}

#[wasm_bindgen_test(unsupported = test)]
fn the_tensile_strength_counts_and_is_told_in_the_readers_units() {
    let mut form = us();
    let before = calc_core::evaluate(&form.checked().unwrap());
    form.type_in(Field::TubeUltimate, "36");
    assert_eq!(form.changed(), [Field::TubeUltimate]);
    assert_eq!(form.value(Field::TubeUltimate), "36\u{a0}ksi");
    form.set_units(UnitSystem::Metric);
    assert_eq!(form.value(Field::TubeUltimate), "248\u{a0}MPa");
    let after = calc_core::evaluate(&form.checked().unwrap());
    assert_ne!(before.checks, after.checks);
}

#[wasm_bindgen_test(unsupported = test)]
fn what_another_member_has_no_room_for_goes_back_to_its_default() {
    let mut form = us();
    form.choose(Field::Support, "loose-sleeve");
    form.type_in(Field::BoltRows, "2");
    form.choose(Field::Member, "round-tube");
    assert_eq!(form.choice(Field::Support), "bare");
    assert_eq!(form.input().bolt_rows, 1.0);
    assert!(form.checked().is_ok());
}

#[wasm_bindgen_test(unsupported = test)]
fn a_link_brings_back_the_same_joint_as_typed() {
    let mut form = us();
    form.type_in(Field::TubeWidth, "2 1/2");
    form.type_in(Field::TubeDepth, "60 mm");
    form.type_in(Field::Torque, "90 lbf ft");
    form.choose(Field::TubeMaterial, "s235");
    form.set_units(UnitSystem::Metric);
    let Decoded::Intact(reading) = decode(&encode(&form.sheet())) else {
        panic!("the link is whole");
    };
    let mut other = us();
    other.load_sheet(&reading.sheet);
    assert_eq!(other.input(), form.input());
    assert_eq!(other.units(), UnitSystem::Metric);
    assert_eq!(other.text(Field::TubeWidth), "2.5 in");
    assert_eq!(other.text(Field::TubeDepth), "60");
    assert_eq!(other.sheet(), form.sheet());
}

#[wasm_bindgen_test(unsupported = test)]
fn every_joint_that_the_form_can_hold_computes_to_something_or_names_why() {
    // Each choice of each field, and both ends of each range, one at a time.
    for &field in Field::ALL {
        let mut values: Vec<String> = Vec::new();
        if let Some((min, max)) = field.range() {
            values = [min, max].map(|v| v.to_string()).to_vec();
        }
        for value in values {
            let mut form = Form::new(UnitSystem::Metric);
            form.type_in(field, &format!("{value} {}", field.unit().symbol()));
            assert!(
                form.checked().is_ok() || !faults(&form).is_empty(),
                "{} {value}",
                field.name()
            );
        }
        for name in calc_core::scenario::options(field) {
            let mut form = us();
            form.choose(field, name);
            match form.checked() {
                Ok(scenario) => {
                    let report = calc_core::evaluate(&scenario);
                    assert!(!report.checks.is_empty());
                }
                Err(faults) => assert!(!faults.is_empty(), "{} {name}", field.name()),
            }
        }
    }
}

#[wasm_bindgen_test(unsupported = test)]
fn the_examples_are_read_whole_and_come_out_differently() {
    use crate::trailer::{EXAMPLES, joint};
    let verdicts: Vec<_> = EXAMPLES
        .iter()
        .map(|example| {
            let scenario = Scenario::new(&joint(example).unwrap()).unwrap();
            calc_core::evaluate(&scenario).verdict
        })
        .collect();
    use calc_core::report::Verdict::{Close, DoesNotHold, Holds};
    assert_eq!(verdicts, [DoesNotHold, Close, Holds]);
}

#[wasm_bindgen_test(unsupported = test)]
fn a_repair_is_known_until_something_is_changed() {
    let mut form = Form::new(UnitSystem::Us);
    form.type_in(Field::TubeWall, "3/16");
    let before = form.input().clone();
    let mut repaired = before.clone();
    repaired.support = String::from("spreader");
    form.load_repair(repaired);
    assert_eq!(form.repaired(), Some(&before));
    form.type_in(Field::TubeWall, "1/4");
    assert_eq!(form.repaired(), None);
}

#[wasm_bindgen_test(unsupported = test)]
fn what_was_typed_is_kept_to_the_letter() {
    let mut form = Form::new(UnitSystem::Us);
    form.choose(Field::TubeMaterial, "a500-b");
    form.type_in(Field::TubeWidth, "2 1/2");
    form.type_in(Field::TubeDepth, "60 mm");
    form.type_in(Field::TubeWall, "3\tlb");
    let again = Form::restored(&form.kept()).unwrap();
    assert_eq!(again.text(Field::TubeWidth), "2 1/2");
    assert_eq!(again.text(Field::TubeDepth), "60 mm");
    assert_eq!(
        again.text(Field::TubeWall),
        "3 lb",
        "a tab parts what is kept"
    );
    assert_eq!(again.input(), form.input());
    assert_eq!(again.checked().unwrap_err().len(), 1);
    // A number alone still counts in the unit in which it was typed.
    let mut metric = again.clone();
    metric.set_units(UnitSystem::Metric);
    let metric = Form::restored(&metric.kept()).unwrap();
    assert_eq!(metric.text(Field::TubeWidth), "2 1/2 in");
    assert!(metric.same_joint(&again));
}

#[wasm_bindgen_test(unsupported = test)]
fn what_is_no_kept_joint_restores_nothing() {
    for text in [
        "",
        "\n",
        "tube_width_mm\tin\t3",
        "v1/coupler/u-us/b-3in/k-zzzz",
    ] {
        assert_eq!(Form::restored(text), None, "{text}");
    }
    // Lines that are not understood are left out.
    let kept = Form::new(UnitSystem::Us).kept();
    let form = Form::restored(&format!("{kept}\nnothing\tin\t3\nbolt\t\tm12\nrest")).unwrap();
    assert!(form.untouched());
}

#[wasm_bindgen_test(unsupported = test)]
fn there_is_no_joint_before_the_five_are_given() {
    let mut form = Form::new(UnitSystem::Us);
    assert_eq!(form.missing().len(), 5);
    form.type_in(Field::TubeWidth, "2");
    form.type_in(Field::TubeDepth, "3");
    form.choose(Field::WallBasis, "unknown");
    form.choose(Field::Bolt, "unc-1.2");
    assert_eq!(
        form.missing(),
        [Field::Grade],
        "a wall that nobody knows counts"
    );
    // What stood there already counts once it is chosen, and after it was kept.
    form.choose(Field::Grade, "sae-5");
    assert!(form.missing().is_empty());
    let again = Form::restored(&form.kept()).unwrap();
    assert!(again.missing().is_empty());
    form.type_in(Field::TubeWidth, "");
    assert_eq!(form.missing(), [Field::TubeWidth]);
    // A link is a joint, whatever it leaves out.
    let mut linked = Form::new(UnitSystem::Us);
    linked.load_sheet(&Form::new(UnitSystem::Us).sheet());
    assert!(linked.missing().is_empty());
}

#[wasm_bindgen_test(unsupported = test)]
fn us_readers_start_from_us_sizes_and_others_from_theirs() {
    let mut form = Form::new(UnitSystem::Us);
    for &field in Field::ALL {
        let text = form.text(field);
        let typical = text.is_empty()
            || text.contains('/')
                && text
                    .rsplit('/')
                    .next()
                    .and_then(|n| n.parse::<u32>().ok())
                    .is_some_and(|n| n <= 16)
            || !text.contains('.')
            || text.split('.').nth(1).is_some_and(|d| d.len() <= 3);
        assert!(typical, "{}: {text}", field.name());
    }
    assert!(form.changed().is_empty());
    form.set_units(UnitSystem::Metric);
    assert_eq!(form.input(), &Input::default());
}

#[wasm_bindgen_test(unsupported = test)]
fn a_repair_is_still_known_as_one_when_the_page_comes_back() {
    let mut form = Form::new(UnitSystem::Us);
    form.type_in(Field::TubeWall, "3/16");
    let mut repaired = form.input().clone();
    repaired.support = String::from("spreader");
    form.load_repair(repaired);
    let again = Form::restored(&form.kept()).unwrap();
    assert_eq!(again.repaired(), form.repaired());
    assert_eq!(again.input(), form.input());
}

#[wasm_bindgen_test(unsupported = test)]
fn a_gauge_follows_its_metal() {
    let mut form = us();
    form.choose(Field::TubeMaterial, "a500-b");
    form.type_in(Field::TubeWall, "11 ga");
    let steel = form.input().tube_wall_mm;
    form.choose(Field::TubeMaterial, "6061-t6");
    assert!(form.input().tube_wall_mm < steel);
    assert_eq!(form.text(Field::TubeWall), "11 ga");
}

#[wasm_bindgen_test(unsupported = test)]
fn a_wall_that_is_typed_is_known() {
    let mut form = us();
    form.choose(Field::WallBasis, "unknown");
    form.type_in(Field::TubeWall, "1/4");
    assert_eq!(form.choice(Field::WallBasis), "measured");
    assert_eq!(form.input().tube_wall_mm, 6.35);
    // Who wrote one and does not trust it says so afterwards; what is kept says the same.
    form.choose(Field::WallBasis, "unknown");
    let mut again = Form::restored(&form.kept()).unwrap();
    assert_eq!(again.choice(Field::WallBasis), "unknown");
    assert_eq!(again.text(Field::TubeWall), "1/4");
    again.type_in(Field::TubeWall, "");
    assert_eq!(again.choice(Field::WallBasis), "unknown");
    again.type_in(Field::TubeWall, "thick");
    assert_eq!(faults(&again)[0].field, Some(Field::TubeWall));
}

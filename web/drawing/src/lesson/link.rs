//! The way from a lesson's joint to the reader's own.

use calc_core::Input;
use calc_core::link::Sheet;
use calc_core::quantity::{UnitSystem, unit_for};
use calc_core::scenario::{Field, Kind};

/// A lesson's joint as a link takes it: its sizes in the units in which its reader would type them.
#[must_use]
pub fn link(joint: &Input, units: UnitSystem) -> Sheet {
    let (mut sheet, _) = Sheet::from_input(joint, units);
    let usual = Input::default();
    for &field in Field::ALL {
        if let (Some(number), Kind::Number { dimension, .. }) = (joint.number(field), field.kind())
            && Some(number) != usual.number(field)
        {
            let unit = unit_for(dimension, units);
            // To the millionth: 1.5 in were 38.1 mm on the way.
            let shown = (unit.from_si(field.unit().to_si(number)) * 1e6).round() / 1e6;
            // What cannot be typed in this unit stays in the calculator's own.
            sheet.set(field, shown, unit).ok();
        }
    }
    sheet
}

#[cfg(test)]
mod tests {
    use super::super::every::{UNITS, at, states};
    use super::super::{LESSONS, State};
    use super::*;
    use calc_core::link::encode;

    #[test]
    fn a_link_holds_the_joint_of_the_lesson() {
        for model in LESSONS {
            for state in states(*model).into_iter().step_by(11) {
                let joint = model.outcome(&state).unwrap().joint;
                let there = link(&joint, state.units()).input();
                for &field in Field::ALL {
                    let at = || format!("{}: {field:?}", at(*model, &state));
                    match (joint.number(field), there.number(field)) {
                        (Some(a), Some(b)) => {
                            assert!((a - b).abs() <= 1e-5 * a.abs().max(1e-3), "{}", at());
                        }
                        (a, b) => assert_eq!(a, b, "{}", at()),
                    }
                    assert_eq!(joint.choice(field), there.choice(field), "{}", at());
                }
            }
        }
    }

    #[test]
    fn a_link_says_sizes_as_its_reader_would() {
        for (units, words) in UNITS.into_iter().zip(["in", "mm"]) {
            let model = LESSONS[5];
            let state = State::start(model.controls(), units);
            let text = encode(&link(&model.outcome(&state).unwrap().joint, units));
            let other = if words == "in" { "mm" } else { "in" };
            assert!(!text.contains(&format!("70{other}")), "{text}");
        }
    }
}

//! What a reader can do to the figure: turn the nut, put it back, change what the clamp stands on.

use calc_core::quantity::{Dimension, Unit, UnitSystem, parse_number, read, write};
use drawing::opening::{STEP, Stand};
use leptos::prelude::*;

use super::{Setting, Shared};
use crate::el::{El, classed, el, value_of};
use crate::figures::frames::per_frame;

/// A turn as the exact field shows it.
fn shown(turn: f64) -> String {
    write(
        Unit::Degree.to_si(turn),
        Dimension::Angle,
        UnitSystem::Metric,
    )
}

/// Reads `190`, `190°`, `1/2 turn` as degrees in the range that the joint goes to.
///
/// # Errors
/// What to say beside the field.
fn turn_of(text: &str, most: f64) -> Result<f64, String> {
    let typed = read(text, Dimension::Angle, Unit::Degree).map_err(|error| error.to_string())?;
    let turn = Unit::Degree.from_si(typed.si);
    // Half a turn in radians and back may miss 180° by the last digit.
    let turn = (turn * 1e6).round() / 1e6;
    if (0.0..=most).contains(&turn) {
        Ok(turn)
    } else {
        Err(format!("This figure goes from 0° to {}.", shown(most)))
    }
}

/// Slider, exact field, back to hand-tight.
pub(super) fn control(shared: Shared) -> El {
    let Shared { bench, setting, .. } = shared;
    let most = Memo::new(move |_| {
        let stand = setting.read().stand;
        bench.with_value(|bench| bench.case(stand).most())
    });
    // What stands in the field: as typed while it is typed, else the turn.
    let typed = RwSignal::new(None::<String>);
    let fault = RwSignal::new(None::<String>);
    let turn_to = move |turn: f64| {
        typed.set(None);
        fault.set(None);
        setting.update(|setting| setting.turn = turn);
    };
    let slide = per_frame(turn_to);
    let take = move |text: String, finished: bool| match turn_of(&text, most.get_untracked()) {
        Ok(turn) => {
            turn_to(turn);
            if !finished {
                typed.set(Some(text));
            }
        }
        Err(error) => {
            typed.set(Some(text));
            if finished {
                fault.set(Some(error));
            }
        }
    };
    let if_wrong = move |text: &str| fault.read().is_some().then(|| text.to_owned());
    let text = move || typed.get().unwrap_or_else(|| shown(setting.read().turn));
    let slider = el("input")
        .attr("id", "opening-turn")
        .attr("type", "range")
        .attr("min", "0")
        .attr("step", &STEP.to_string())
        .live_attr("max", move || Some(most.get().to_string()))
        .prop("value", move || {
            // The browser cuts the value off at its limit, which therefore has to stand first.
            most.track();
            setting.read().turn.to_string().into()
        })
        .live_attr("aria-valuetext", move || Some(shared.spoken()))
        .on("input", move |event| {
            if let Some(turn) = parse_number(&value_of(&event)) {
                slide(turn);
            }
        });
    let exact = el("input")
        .attr("type", "text")
        .attr("inputmode", "text")
        .attr("autocomplete", "off")
        .attr("spellcheck", "false")
        .attr("id", "opening-exact")
        .attr("aria-label", "turn of the nut, exact")
        .live_attr("aria-invalid", move || if_wrong("true"))
        .live_attr("aria-describedby", move || if_wrong("opening-fault"))
        .prop("value", move || text().into())
        .on("input", move |event| take(value_of(&event), false))
        .on("change", move |event| take(value_of(&event), true));
    classed("div", "turn")
        .child(el("label").attr("for", "opening-turn").text("turn the nut"))
        .child(slider)
        .child(exact)
        .child(
            el("button")
                .attr("type", "button")
                .text("hand-tight")
                .on("click", move |_| turn_to(0.0)),
        )
        .child(
            classed("p", "error")
                .attr("id", "opening-fault")
                .attr("role", "alert")
                .flag("hidden", move || fault.read().is_none())
                .live_text(move || fault.get().unwrap_or_default()),
        )
}

/// The switch between the three stands.
pub(super) fn stands(shared: Shared) -> El {
    let Shared { bench, setting, .. } = shared;
    let put = move |stand: Stand| {
        setting.update(|now| {
            let turn = bench.with_value(|bench| bench.case(stand).brought(now.turn));
            *now = Setting { stand, turn };
        });
    };
    let choices = Stand::ALL.into_iter().map(|stand| {
        let input = el("input")
            .attr("type", "radio")
            .attr("name", "opening-stand")
            .attr("value", stand.key())
            .prop("checked", move || (setting.read().stand == stand).into())
            .on("change", move |_| put(stand));
        el("label").child(input).text(stand.name())
    });
    classed("fieldset", "stands")
        .child(el("legend").text("Same bolt, same wrench: what backs up the faces?"))
        .child(classed("div", "kinds").children(choices))
}

#[cfg(test)]
mod tests {
    use super::*;
    use wasm_bindgen_test::wasm_bindgen_test;

    #[wasm_bindgen_test(unsupported = test)]
    fn turns_are_read_as_people_type_them() {
        for (text, turn) in [
            ("190", 190.0),
            ("190°", 190.0),
            ("1/2 turn", 180.0),
            ("1/4 turn", 90.0),
            ("0", 0.0),
            ("540", 540.0),
        ] {
            assert_eq!(turn_of(text, 540.0), Ok(turn), "{text}");
        }
    }

    #[wasm_bindgen_test(unsupported = test)]
    fn what_is_no_turn_or_out_of_reach_is_refused_in_words() {
        for text in ["", "tight", "12 mm", "-3", "541", "2 turns"] {
            let error = turn_of(text, 540.0).unwrap_err();
            assert!(error.len() > 10, "{text}: {error}");
        }
        assert!(turn_of("2 turns", 540.0).unwrap_err().contains("540°"));
    }

    #[wasm_bindgen_test(unsupported = test)]
    fn a_turn_as_shown_is_read_again() {
        for turn in [0.0, 0.5, 46.5, 390.0, 540.0] {
            assert_eq!(turn_of(&shown(turn), 540.0), Ok(turn));
        }
    }
}

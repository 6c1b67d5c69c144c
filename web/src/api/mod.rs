//! The calculation for other pages: the same names and values as in JSON.
//!
//! What is exported, no program that has it could leave out: so this is a module of a binary of its own, which holds
//! nothing of the pages, and the tests take it in by its path. `web/api/clampwright.js` is what other pages import.
//!
//! Errors are JavaScript `Error` objects with `name` `"CalculationError"` and a list `errors`, each entry
//! with a stable `code`, the `field` it belongs to and a `message` for developers.

#![allow(
    unreachable_pub,
    reason = "what is exported to other pages has to be public, in a binary too"
)]

mod given;
pub mod links;
mod refusal;

use calc_core::chance::Sampler;
use calc_core::quantity::{Dimension, Unit, read};
use calc_core::scenario::{Field, Input, Kind};
use serde::Serialize;
use serde_wasm_bindgen::Serializer;
use wasm_bindgen::prelude::{JsValue, wasm_bindgen};

use self::given::{draws, rates, scenario};
use self::refusal::refusal;

/// Objects, not maps; null, not undefined: what JSON would give.
fn plain<T: Serialize + ?Sized>(value: &T) -> Result<JsValue, JsValue> {
    value
        .serialize(&Serializer::json_compatible())
        .map_err(JsValue::from)
}

/// The report of a joint.
///
/// # Errors
/// A `CalculationError` that names every refused field.
#[wasm_bindgen(skip_typescript)]
pub fn evaluate(input: JsValue) -> Result<JsValue, JsValue> {
    plain(&calc_core::evaluate(&scenario(&input)?))
}

/// What is known beside the verdict: a better torque, and the answer with the strength usually found.
///
/// # Errors
/// A `CalculationError` that names every refused field.
#[wasm_bindgen(skip_typescript)]
pub fn outlook(input: JsValue) -> Result<JsValue, JsValue> {
    plain(&calc_core::outlook::outlook(&scenario(&input)?))
}

/// Torque against turn of the nut, with the strength usually found.
///
/// # Errors
/// A `CalculationError` that names every refused field.
#[wasm_bindgen(js_name = torqueTurn, skip_typescript)]
pub fn torque_turn(input: JsValue) -> Result<JsValue, JsValue> {
    plain(&calc_core::torque_turn(&scenario(&input)?))
}

/// Many joints drawn from how far each input may be off.
///
/// # Errors
/// A `CalculationError` that names every refused field, of the joint or of the settings.
#[wasm_bindgen(skip_typescript)]
pub fn sample(input: JsValue, settings: JsValue) -> Result<JsValue, JsValue> {
    let scenario = scenario(&input)?;
    let draws = draws(&settings)?;
    let mut sampler = Sampler::new(&scenario, draws.seed, draws.joints);
    sampler.step(draws.joints);
    plain(&sampler.result())
}

/// The repairs of a joint.
///
/// # Errors
/// A `CalculationError` that names every refused field, of the joint or of the rates.
#[wasm_bindgen(skip_typescript)]
pub fn repairs(input: JsValue, own: JsValue) -> Result<JsValue, JsValue> {
    plain(&calc_core::repair::repairs(
        &scenario(&input)?,
        &rates(&own)?,
    ))
}

/// The work sheet that leads from a joint to a repaired one.
///
/// # Errors
/// A `CalculationError` that names every refused field, of the joints or of the rates.
#[wasm_bindgen(js_name = workSheet, skip_typescript)]
pub fn work_sheet(before: JsValue, after: JsValue, own: JsValue) -> Result<JsValue, JsValue> {
    let (before, after) = (scenario(&before)?, scenario(&after)?);
    plain(&calc_core::repair::sheet::work_sheet(
        &before,
        &after,
        &rates(&own)?,
    ))
}

/// Every field with its default.
///
/// # Errors
/// None that is known; the type says what serialising could raise.
#[wasm_bindgen(skip_typescript)]
pub fn defaults() -> Result<JsValue, JsValue> {
    plain(&Input::default())
}

/// Reads what a person types into a field.
///
/// # Errors
/// A `CalculationError`: no text was given, the field is not one for numbers, or the text says no value of its
/// dimension.
#[wasm_bindgen(js_name = readQuantity, skip_typescript)]
pub fn read_quantity(text: JsValue, field: JsValue) -> Result<JsValue, JsValue> {
    let Some(name) = field.as_string() else {
        let what = "the second argument has to be the name of a field";
        return Err(refusal("unknown-field", None, what));
    };
    let known = Field::by_name(&name);
    let Some((field, dimension, unit)) = known.and_then(|field| match field.kind() {
        Kind::Number {
            dimension, unit, ..
        } => Some((field, dimension, unit)),
        Kind::Choice { .. } => None,
    }) else {
        let what = format!("\"{name}\" is not a field for a number");
        return Err(refusal("unknown-field", Some(&name), &what));
    };
    let Some(text) = text.as_string() else {
        let what = format!("{name}: the first argument has to be a text, as typed");
        return Err(refusal("not-a-text", Some(&name), &what));
    };
    read_as(&text, field, dimension, unit)
}

fn read_as(text: &str, field: Field, dimension: Dimension, unit: Unit) -> Result<JsValue, JsValue> {
    let typed = read(text, dimension, unit)
        .map_err(|error| refusal(error.code(), Some(field.name()), &error.to_string()))?;
    plain(&typed)
}

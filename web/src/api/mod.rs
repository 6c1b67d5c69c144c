//! The calculation for other pages: the same names and values as in JSON.
//!
//! What is exported, no program that has it could leave out: so this is a module of the binary that other pages
//! load and not of the library, and the tests take it in by its path.
//!
//! Errors are JavaScript `Error` objects with `name` `"CalculationError"` and a list `errors`, each entry
//! with a stable `code`, the `field` it belongs to and a `message` for developers.

#![allow(
    unreachable_pub,
    reason = "what is exported to other pages has to be public, in a binary too"
)]

use calc_core::quantity::{Dimension, read};
use calc_core::scenario::{Field, Input, Kind, Scenario};
use serde::Serialize;
use serde_wasm_bindgen::Serializer;
use wasm_bindgen::prelude::{JsValue, wasm_bindgen};

#[wasm_bindgen(typescript_custom_section)]
const TYPES: &str = concat!(
    include_str!("joint.d.ts"),
    include_str!("answer.d.ts"),
    include_str!("functions.d.ts"),
);

#[wasm_bindgen]
extern "C" {
    #[wasm_bindgen(js_name = Error)]
    type CalculationError;
    #[wasm_bindgen(constructor, js_class = "Error")]
    fn new(message: &str) -> CalculationError;
    #[wasm_bindgen(method, setter)]
    fn set_name(this: &CalculationError, name: &str);
    #[wasm_bindgen(method, setter, structural)]
    fn set_errors(this: &CalculationError, errors: JsValue);
}

/// One reason, as JavaScript sees it.
#[derive(Serialize)]
struct Reason {
    code: String,
    field: Option<&'static str>,
    message: String,
}

fn refuse(reasons: &[Reason]) -> JsValue {
    let message: Vec<&str> = reasons.iter().map(|r| r.message.as_str()).collect();
    let error = CalculationError::new(&message.join("; "));
    error.set_name("CalculationError");
    error.set_errors(plain(reasons).unwrap_or(JsValue::NULL));
    error.into()
}

/// Objects, not maps; null, not undefined: what JSON would give.
fn plain<T: Serialize + ?Sized>(value: &T) -> Result<JsValue, serde_wasm_bindgen::Error> {
    value.serialize(&Serializer::json_compatible())
}

fn reason(code: &str, field: Option<Field>, message: String) -> JsValue {
    refuse(&[Reason {
        code: code.into(),
        field: field.map(Field::name),
        message,
    }])
}

/// The report of a joint.
///
/// # Errors
/// A `CalculationError` that names every refused field.
#[wasm_bindgen(skip_typescript)]
pub fn evaluate(input: JsValue) -> Result<JsValue, JsValue> {
    plain(&calc_core::evaluate(&scenario(input)?)).map_err(JsValue::from)
}

/// What is known beside the verdict: a better torque, and the answer with the strength usually found.
///
/// # Errors
/// A `CalculationError` that names every refused field.
#[wasm_bindgen(skip_typescript)]
pub fn outlook(input: JsValue) -> Result<JsValue, JsValue> {
    plain(&calc_core::outlook::outlook(&scenario(input)?)).map_err(JsValue::from)
}

/// The repairs of a joint.
///
/// # Errors
/// A `CalculationError` that names every refused field.
#[wasm_bindgen(skip_typescript)]
pub fn repairs(input: JsValue, rates: JsValue) -> Result<JsValue, JsValue> {
    let found = calc_core::repair::repairs(&scenario(input)?, &given(rates, "not-rates")?);
    plain(&found).map_err(JsValue::from)
}

/// The work sheet that leads from a joint to a repaired one.
///
/// # Errors
/// A `CalculationError` that names every refused field.
#[wasm_bindgen(js_name = workSheet, skip_typescript)]
pub fn work_sheet(before: JsValue, after: JsValue, rates: JsValue) -> Result<JsValue, JsValue> {
    let (before, after) = (scenario(before)?, scenario(after)?);
    let rates = given(rates, "not-rates")?;
    plain(&calc_core::repair::sheet::work_sheet(
        &before, &after, &rates,
    ))
    .map_err(JsValue::from)
}

/// A value of another page, or its default where there is none.
fn given<T: Default + serde::de::DeserializeOwned>(
    value: JsValue,
    code: &str,
) -> Result<T, JsValue> {
    if value.is_undefined() || value.is_null() {
        return Ok(T::default());
    }
    serde_wasm_bindgen::from_value(value).map_err(|error| reason(code, None, error.to_string()))
}

/// The checked joint.
fn scenario(input: JsValue) -> Result<Scenario, JsValue> {
    let input: Input = given(input, "not-a-scenario")?;
    Scenario::new(&input).map_err(|errors| {
        let reasons: Vec<Reason> = errors
            .iter()
            .map(|error| Reason {
                code: error.code().into(),
                field: error.field().map(Field::name),
                message: error.to_string(),
            })
            .collect();
        refuse(&reasons)
    })
}

/// Every field with its default.
///
/// # Errors
/// None that is known; the type says what serialising could raise.
#[wasm_bindgen(skip_typescript)]
pub fn defaults() -> Result<JsValue, JsValue> {
    plain(&Input::default()).map_err(JsValue::from)
}

/// Reads what a person types into a field.
///
/// # Errors
/// A `CalculationError`: the field is not one for numbers, or the text says no value of its dimension.
#[wasm_bindgen(js_name = readQuantity, skip_typescript)]
pub fn read_quantity(text: &str, field: &str) -> Result<JsValue, JsValue> {
    let known = Field::by_name(field);
    let Some((field, dimension, unit)) = known.and_then(|field| match field.kind() {
        Kind::Number {
            dimension, unit, ..
        } => Some((field, dimension, unit)),
        Kind::Choice { .. } => None,
    }) else {
        let what = format!("\"{field}\" is not a field for a number");
        return Err(reason("unknown-field", known, what));
    };
    read_as(text, field, dimension, unit)
}

fn read_as(
    text: &str,
    field: Field,
    dimension: Dimension,
    unit: calc_core::quantity::Unit,
) -> Result<JsValue, JsValue> {
    let typed = read(text, dimension, unit)
        .map_err(|error| reason(error.code(), Some(field), error.to_string()))?;
    plain(&typed).map_err(JsValue::from)
}

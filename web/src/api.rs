//! The calculation for other pages: the same names and values as in JSON.
//!
//! Errors are JavaScript `Error` objects with `name` `"CalculationError"` and a list `errors`, each entry
//! with a stable `code`, the `field` it belongs to and a `message` for developers.

use calc_core::quantity::{Dimension, read};
use calc_core::scenario::{Field, Input, Kind, Scenario};
use serde::Serialize;
use serde_wasm_bindgen::Serializer;
use wasm_bindgen::prelude::{JsValue, wasm_bindgen};

#[wasm_bindgen(typescript_custom_section)]
const TYPES: &str = r#"
/** What a joint is made of; every field may be left out and then takes its default. */
export type JointInput = { version?: number } & { [field: string]: number | string };
/** A number with its SI unit. */
export interface Amount { value: number; unit: string }
export type Verdict = "holds" | "close" | "not-checked" | "does-not-hold";
export interface Said { code: string; amounts: Amount[] }
export interface Step {
  symbol: string; what: string; formula: string;
  inputs: Array<{ symbol: string } & Amount>; result: Amount;
  source: string; place: string; flag: string;
}
export interface Check {
  id: string; verdict: Verdict; demand: Amount; capacity: Amount; factor: number; factor_is: string;
  utilisation: number | null; reason: Said; steps: Step[];
}
export interface Report {
  version: number; input: JointInput; verdict: Verdict; weakest: string; checks: Check[]; notes: Said[];
  tightening: object; support: object; losses: object; loads: object; derived: Array<[string, number]>;
}
/** A text as it was understood; `value` is in `unit`, `si` in the coherent SI unit. */
export interface Typed { text: string; value: number; unit: string; si: number; note: string | null }
/** Thrown by every function here. */
export interface CalculationError extends Error {
  name: "CalculationError";
  errors: Array<{ code: string; field: string | null; message: string }>;
}
/** The report of a joint. Throws a CalculationError that names every refused field. */
export function evaluate(input: JointInput): Report;
/** Every field with its default; fields that are derived when left out are not in it. */
export function defaults(): JointInput;
/** Reads what a person types into a field, such as `2 1/2 in`; a bare number is in the unit of the field's name. */
export function readQuantity(text: string, field: string): Typed;
"#;

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
    let input = if input.is_undefined() || input.is_null() {
        Input::default()
    } else {
        serde_wasm_bindgen::from_value(input)
            .map_err(|error| reason("not-a-scenario", None, error.to_string()))?
    };
    let scenario = Scenario::new(&input).map_err(|errors| {
        let reasons: Vec<Reason> = errors
            .iter()
            .map(|error| Reason {
                code: error.code().into(),
                field: error.field().map(Field::name),
                message: error.to_string(),
            })
            .collect();
        refuse(&reasons)
    })?;
    plain(&calc_core::evaluate(&scenario)).map_err(JsValue::from)
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

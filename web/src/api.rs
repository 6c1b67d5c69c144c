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
/** Your own rates; what is left out takes its default. Money in your own currency. */
export interface Rates {
  hour?: number; steel_kg?: number; aluminium_kg?: number; stainless_kg?: number; bolt?: number;
  minutes_hole?: number; minutes_cut?: number; minutes_weld?: number; minutes_bolt?: number;
  minutes_surface?: number;
}
export interface Work {
  holes: number; cuts: number; welds: number; surfaces: number; minutes: number; mass_kg: number; cost: number;
}
export interface Repair {
  kind: string; input: JointInput; changed: string[]; verdict: Verdict; weakest: string;
  utilisation: number | null; most_used: number; torque_nm: number; clamp_reached_n: number; work: Work;
}
/** The repairs that no other beats; the three picks are places in `list`. */
export interface Repairs {
  tried: number; held: number; undecided: number; list: Repair[];
  cheapest: number | null; strongest: number | null; without_welding: number | null;
}
export interface Sourced { source: string; place: string; flag: string }
export interface Cut {
  what: string; stock: string; material: string; count: number;
  length: Amount; plus: Amount; minus: Amount; width: Amount | null; thickness: Amount | null;
  outer: Amount | null; inner: Amount | null; stock_length: Amount; notes: Said[];
}
export type DrillSize = Sourced & { diameter: Amount };
export interface Hole {
  place: string; count: number; from: Amount | null; to: Amount;
  drill_inch: DrillSize | null; drill_metric: DrillSize | null; tool: string; pilot: Amount | null;
  class: (Sourced & { fit: "close" | "normal" | "loose" | "structural" }) | null;
  distances: Array<{ what: string; needed: Amount; given: Amount; verdict: Verdict }>; notes: Said[];
}
export type Filler = Sourced & { id: string; label: string; shear_strength: Amount };
export interface Weld {
  joint: string; count: number; length: Amount; groove_angle: Amount; depth: Amount; root_face: Amount;
  root_gap: Amount; throat: Amount; least_throat: Amount; throat_needed: Amount;
  filler: Filler; other_filler: Filler | null; demand: Amount; capacity: Amount; factor: number;
  utilisation: number; verdict: Verdict; case: { case: string; kind: string } | null;
  fillet: { least_leg: Amount; largest_leg: Amount; proud: Amount; throat: Amount; notes: Said[] } | null;
  steps: Step[]; notes: Said[];
}
export type TighteningPlan = Sourced & {
  torque: Amount; clamp: Amount; reached: Amount; method: string; lubrication: string; bolt_length: Amount;
  bolts: Array<{ number: number; along: Amount; across: Amount }>; order: number[];
  passes: Array<Sourced & { what: string; torque: Amount | null }>;
  first_loss: Amount; first_loss_share: Amount; look_again: Said[]; notes: Said[];
};
export interface WorkSheet {
  kind: string; input: JointInput; cuts: Cut[]; holes: Hole[]; weld: Weld | null; tightening: TighteningPlan;
  materials: Array<{ what: string; stock: string; material: string; count: number; mass: Amount; cost: number }>;
  operations: Array<{ what: string; count: number; minutes: number; cost: number }>;
  work: Work; cautions: Said[];
}
/** Thrown by every function here. */
export interface CalculationError extends Error {
  name: "CalculationError";
  errors: Array<{ code: string; field: string | null; message: string }>;
}
/** The report of a joint. Throws a CalculationError that names every refused field. */
export function evaluate(input: JointInput): Report;
/** The repairs of a joint. Throws a CalculationError that names every refused field. */
export function repairs(input: JointInput, rates?: Rates): Repairs;
/** What to cut, drill, weld and tighten to get from a joint to a repaired one (the `input` of a repair). */
export function workSheet(before: JointInput, after: JointInput, rates?: Rates): WorkSheet;
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
    plain(&calc_core::evaluate(&scenario(input)?)).map_err(JsValue::from)
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

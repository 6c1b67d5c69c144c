//! Joints as links that open on the page of the reader's own joint.

use calc_core::link::{Decoded, Notice, Reading, Sheet, SheetError, decode, encode};
use calc_core::quantity::UnitSystem;
use calc_core::scenario::{Field, Input};
use serde::Serialize;
use wasm_bindgen::prelude::{JsValue, wasm_bindgen};

use super::given::input;
use super::plain;
use super::refusal::{Reason, refusal, refuse};

/// A link as JavaScript sees it.
#[derive(Serialize)]
#[serde(rename_all = "kebab-case", tag = "kind")]
enum Said {
    NotALink,
    TooLong,
    Foreign {
        of: String,
    },
    Damaged {
        units: UnitSystem,
        input: Input,
        notices: Vec<Reason>,
    },
    Intact {
        units: UnitSystem,
        input: Input,
        notices: Vec<Reason>,
    },
}

/// The text of the link of a joint, to be put behind `joint.html#`.
///
/// # Errors
/// A `CalculationError` that names every field that no link can hold, or units that are not known.
#[wasm_bindgen(js_name = encodeLink, skip_typescript)]
pub fn encode_link(joint: JsValue, units: JsValue) -> Result<JsValue, JsValue> {
    let units = match units.as_string().as_deref() {
        None if units.is_undefined() => UnitSystem::Us,
        Some("us") => UnitSystem::Us,
        Some("metric") => UnitSystem::Metric,
        _ => {
            let message = "units have to be \"us\" or \"metric\"";
            return Err(refusal("unknown-units", None, message));
        }
    };
    let (sheet, errors) = Sheet::from_input(&input(&joint)?, units);
    if errors.is_empty() {
        return Ok(JsValue::from_str(&encode(&sheet)));
    }
    let reasons: Vec<Reason> = errors.iter().map(refused).collect();
    Err(refuse(&reasons))
}

fn refused(error: &SheetError) -> Reason {
    let name = error.field().name();
    let (code, what) = match error {
        SheetError::UnknownChoice { got, .. } => {
            ("unknown-choice", format!("\"{got}\" is not known"))
        }
        _ => ("not-a-number", "no link can hold this number".into()),
    };
    Reason::new(code, Some(name), &format!("{name}: {what}"))
}

/// What a link says: its text, with `#` or without, or a whole address.
///
/// # Errors
/// A `CalculationError`: no text was given.
#[wasm_bindgen(js_name = decodeLink, skip_typescript)]
pub fn decode_link(text: JsValue) -> Result<JsValue, JsValue> {
    let Some(text) = text.as_string() else {
        let message = "a link has to be given as a text";
        return Err(refusal("not-a-text", None, message));
    };
    plain(&match decode(&text) {
        Decoded::NotALink => Said::NotALink,
        Decoded::TooLong => Said::TooLong,
        Decoded::Foreign { kind } => Said::Foreign { of: kind },
        Decoded::Damaged(Reading { sheet, notices }) => Said::Damaged {
            units: sheet.units,
            input: sheet.input(),
            notices: reasons(&notices),
        },
        Decoded::Intact(Reading { sheet, notices }) => Said::Intact {
            units: sheet.units,
            input: sheet.input(),
            notices: reasons(&notices),
        },
    })
}

fn reasons(notices: &[Notice]) -> Vec<Reason> {
    notices
        .iter()
        .map(|notice| {
            let field = notice.field().map(Field::name);
            Reason::new(notice.code(), field, &notice.to_string())
        })
        .collect()
}

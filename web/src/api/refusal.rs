//! Why something was not taken, as JavaScript sees it.

use serde::Serialize;
use wasm_bindgen::prelude::{JsValue, wasm_bindgen};

use super::plain;

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

/// One reason.
#[derive(Serialize)]
pub(super) struct Reason {
    /// Stable key.
    pub(super) code: String,
    /// The field, under the name that the caller gave it.
    pub(super) field: Option<String>,
    /// For developers.
    pub(super) message: String,
}

impl Reason {
    pub(super) fn new(code: &str, field: Option<&str>, message: &str) -> Self {
        Self {
            code: code.into(),
            field: field.map(String::from),
            message: message.into(),
        }
    }
}

/// The error to throw for all of the reasons.
pub(super) fn refuse(reasons: &[Reason]) -> JsValue {
    let message: Vec<&str> = reasons.iter().map(|r| r.message.as_str()).collect();
    let error = CalculationError::new(&message.join("; "));
    error.set_name("CalculationError");
    error.set_errors(plain(reasons).unwrap_or(JsValue::NULL));
    error.into()
}

/// The error to throw for one reason.
pub(super) fn refusal(code: &str, field: Option<&str>, message: &str) -> JsValue {
    refuse(&[Reason::new(code, field, message)])
}

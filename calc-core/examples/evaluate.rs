//! Reads a scenario (JSON) from standard input and writes its report (JSON) to standard output.
//!
//! ```sh
//! cargo run -q -p calc-core --example evaluate < scenario.json > report.json
//! ```
//!
//! Beside the report: the outlook (strength usually found, torque to stop at), the curve of torque against turn, the repairs, and the work sheet of the cheapest of
//! them (null where none holds).
//!
//! What is left out takes its default; `{}` is the default joint. Bad input: exit code 2 and a JSON
//! object with `errors`, each naming its field.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a tool of the workshop: it stops where it cannot go on"
)]

use calc_core::outlook::outlook;
use calc_core::{Input, InputError, Scenario, evaluate, repair, torque_turn};
use serde_json::{Value, json};
use std::io::{Read, Write};
use std::process::ExitCode;

fn main() -> ExitCode {
    let mut text = String::new();
    if let Err(error) = std::io::stdin().read_to_string(&mut text) {
        return refuse(&[
            json!({ "code": "unreadable", "field": null, "message": error.to_string() }),
        ]);
    }
    // An array would be taken for the fields in their order, which nobody means.
    if text.trim_start().starts_with('[') {
        return refuse(&[json!({
            "code": "not-a-scenario", "field": null, "message": "an object is expected, not an array",
        })]);
    }
    let input: Input = match serde_json::from_str(&text) {
        Ok(input) => input,
        Err(error) => return refuse(&[not_a_scenario(&text, &error)]),
    };
    match Scenario::new(&input) {
        Ok(scenario) => {
            let rates = repair::Rates::default();
            let repairs = repair::repairs(&scenario, &rates);
            let sheet = repairs
                .cheapest
                .and_then(|index| repairs.list.get(index))
                .and_then(|cheapest| Scenario::new(&cheapest.input).ok())
                .map(|repaired| repair::sheet::work_sheet(&scenario, &repaired, &rates));
            write(&json!({
                "report": evaluate(&scenario),
                "outlook": outlook(&scenario),
                "torque_turn": torque_turn(&scenario),
                "repairs": repairs,
                "work_sheet": sheet,
            }))
        }
        Err(errors) => refuse(&errors.iter().map(explain).collect::<Vec<_>>()),
    }
}

/// An error as JSON: code, field, message.
fn explain(error: &InputError) -> Value {
    json!({
        "code": error.code(),
        "field": error.field().map(calc_core::scenario::Field::name),
        "message": error.to_string(),
    })
}

/// Which field made the text unreadable: the unknown one that serde names, or the first whose value
/// is of the wrong kind.
fn not_a_scenario(text: &str, error: &serde_json::Error) -> Value {
    let message = error.to_string();
    let named = message
        .split('`')
        .nth(1)
        .filter(|_| message.starts_with("unknown field"));
    let field = named.map(String::from).or_else(|| {
        let whole: serde_json::Map<String, Value> = serde_json::from_str(text).ok()?;
        whole
            .into_iter()
            .find(|(name, value)| {
                serde_json::from_value::<Input>(json!({ name.as_str(): value })).is_err()
            })
            .map(|(name, _)| name)
    });
    json!({ "code": "not-a-scenario", "field": field, "message": message })
}

fn refuse(errors: &[Value]) -> ExitCode {
    write(&json!({ "errors": errors }));
    ExitCode::from(2)
}

fn write(value: &Value) -> ExitCode {
    let done = serde_json::to_string_pretty(value)
        .map_err(std::io::Error::from)
        .and_then(|text| writeln!(std::io::stdout(), "{text}"));
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(_) => ExitCode::FAILURE,
    }
}

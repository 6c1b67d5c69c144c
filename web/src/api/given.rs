//! What another page gives, looked at entry by entry: whatever is not known by its name is refused. Passed over, a
//! misspelled field would leave its default, and the verdict of another joint.

use calc_core::repair::Rates;
use calc_core::scenario::{Field, Input, Kind, Scenario};
use js_sys::{Object, Reflect};
use wasm_bindgen::JsCast as _;
use wasm_bindgen::prelude::JsValue;

use super::plain;
use super::refusal::{Reason, refusal, refuse};

const NO_JOINT: &str = "not-a-scenario";
const NO_RATES: &str = "not-rates";
const NO_SETTINGS: &str = "not-settings";

/// Joints that are drawn when nobody says how many, and the most that fit into a page's memory with ease.
const DRAWN: f64 = 10_000.0;
const MOST_DRAWN: f64 = 1_000_000.0;
/// Whole numbers up to here are whole numbers in JavaScript too.
const LARGEST_SEED: f64 = 9_007_199_254_740_991.0;

/// The entries of a plain object; an array, a map, a promise or an instance of a class has none that could be meant.
fn entries(value: &JsValue, code: &str, what: &str) -> Result<Vec<(String, JsValue)>, JsValue> {
    let refused = || refusal(code, None, &format!("{what} has to be a plain object"));
    if !value.is_object() {
        return Err(refused());
    }
    let above = Object::get_prototype_of(value);
    if !above.is_null() && !Object::get_prototype_of(&above).is_null() {
        return Err(refused());
    }
    Object::keys(value.unchecked_ref::<Object>())
        .iter()
        .map(|key| {
            let name = key.as_string().unwrap_or_default();
            Ok((name, Reflect::get(value, &key)?))
        })
        .collect()
}

/// The joint as it was given.
pub(super) fn input(value: &JsValue) -> Result<Input, JsValue> {
    let mut input = Input::default();
    let mut reasons = Vec::new();
    for (name, value) in entries(value, NO_JOINT, "a joint")? {
        if let Err(what) = take(&mut input, &name, &value) {
            let message = format!("{name}: {what}");
            reasons.push(Reason::new(NO_JOINT, Some(&name), &message));
        }
    }
    if reasons.is_empty() {
        Ok(input)
    } else {
        Err(refuse(&reasons))
    }
}

fn take(input: &mut Input, name: &str, value: &JsValue) -> Result<(), &'static str> {
    if name == "version" {
        let version = whole(value, f64::from(u32::MAX)).ok_or("a whole number is expected")?;
        #[allow(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "whole and within the range of the type"
        )]
        let version = version as u32;
        input.version = version;
        return Ok(());
    }
    let field = Field::by_name(name).ok_or("there is no field of this name")?;
    match field.kind() {
        // Only what is derived may be there without a value.
        Kind::Number { default: None, .. } if value.is_null() => {}
        Kind::Number { .. } => {
            let number = value.as_f64().ok_or("a number is expected")?;
            input.set_number(field, Some(number));
        }
        Kind::Choice { .. } => {
            let choice = value.as_string().ok_or("a name is expected, as a text")?;
            input.set_choice(field, &choice);
        }
    }
    Ok(())
}

/// A whole number from nothing up.
fn whole(value: &JsValue, most: f64) -> Option<f64> {
    let number = value.as_f64()?;
    (number >= 0.0 && number <= most && number.fract() == 0.0).then_some(number)
}

/// The checked joint.
pub(super) fn scenario(value: &JsValue) -> Result<Scenario, JsValue> {
    Scenario::new(&input(value)?).map_err(|errors| {
        let reasons: Vec<Reason> = errors
            .iter()
            .map(|error| {
                let field = error.field().map(Field::name);
                Reason::new(error.code(), field, &error.to_string())
            })
            .collect();
        refuse(&reasons)
    })
}

/// The rates of another page; the usual ones where there are none.
pub(super) fn rates(value: &JsValue) -> Result<Rates, JsValue> {
    if value.is_undefined() {
        return Ok(Rates::default());
    }
    // What a rate is called and whether it is a number, the usual ones show.
    let usual = plain(&Rates::default())?;
    let mut reasons = Vec::new();
    for (name, given) in entries(value, NO_RATES, "what is given as rates")? {
        let known = Reflect::get(&usual, &JsValue::from_str(&name))?;
        let fault = if known.is_undefined() {
            Some("there is no rate of this name")
        } else if known.as_f64().is_some() {
            let number = given.as_f64().filter(|n| n.is_finite() && *n >= 0.0);
            number.is_none().then_some("a number from 0 up is expected")
        } else if name == "currency" {
            let text = given.as_string().filter(|text| is_currency(text));
            text.is_none()
                .then_some("a code of three capital letters is expected, or an empty text")
        } else {
            let text = given.as_string().filter(|text| is_month(text));
            text.is_none()
                .then_some("year and month are expected, such as 2026-11, or an empty text")
        };
        if let Some(what) = fault {
            let message = format!("{name}: {what}");
            reasons.push(Reason::new(NO_RATES, Some(&name), &message));
        }
    }
    if !reasons.is_empty() {
        return Err(refuse(&reasons));
    }
    serde_wasm_bindgen::from_value(value.clone())
        .map_err(|error| refusal(NO_RATES, None, &error.to_string()))
}

fn is_currency(text: &str) -> bool {
    text.is_empty() || (text.len() == 3 && text.bytes().all(|b| b.is_ascii_uppercase()))
}

fn is_month(text: &str) -> bool {
    let digits =
        |part: &str, len: usize| part.len() == len && part.bytes().all(|b| b.is_ascii_digit());
    text.is_empty()
        || text.split_once('-').is_some_and(|(year, month)| {
            digits(year, 4) && digits(month, 2) && ("01"..="12").contains(&month)
        })
}

/// How many joints to draw, and from which seed.
pub(super) struct Draws {
    pub(super) joints: usize,
    pub(super) seed: u64,
}

pub(super) fn draws(value: &JsValue) -> Result<Draws, JsValue> {
    let (mut joints, mut seed) = (DRAWN, 1.0);
    if !value.is_undefined() {
        for (name, given) in entries(value, NO_SETTINGS, "what is given as settings")? {
            let (place, least, most) = match name.as_str() {
                "joints" => (&mut joints, 1.0, MOST_DRAWN),
                "seed" => (&mut seed, 0.0, LARGEST_SEED),
                _ => {
                    let message = format!("{name}: there is no setting of this name");
                    return Err(refusal(NO_SETTINGS, Some(&name), &message));
                }
            };
            *place = whole(&given, most).filter(|n| *n >= least).ok_or_else(|| {
                let message = format!("{name}: a whole number from {least} to {most} is expected");
                refusal(NO_SETTINGS, Some(&name), &message)
            })?;
        }
    }
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "whole, from nothing up, and within the range of the type"
    )]
    let draws = Draws {
        joints: joints as usize,
        seed: seed as u64,
    };
    Ok(draws)
}

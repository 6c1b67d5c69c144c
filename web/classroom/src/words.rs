//! The words of hand-outs, quiz and bench: a table of their own, so that no other program carries them.

use drawing::lesson::{Slot, slots};

/// `key = "text"` lines.
const TABLE: &str = include_str!("../../../content/class.toml");

/// The text of a key; `?` for one without a text, which the tests find.
#[must_use]
pub fn message(key: &str) -> &'static str {
    find(key).unwrap_or("?")
}

/// The text of a key, if there is one.
#[must_use]
pub fn find(key: &str) -> Option<&'static str> {
    drawing::words::find(TABLE, key)
}

/// A text with its slots `{name}` filled; one without a value stays as it is.
#[must_use]
pub fn fill(text: &str, value: impl Fn(&str) -> Option<String>) -> String {
    let mut out = String::with_capacity(text.len() + 24);
    for slot in slots(text) {
        match slot {
            Slot::Words(words) => out.push_str(words),
            Slot::Value(name) | Slot::Answer(name) => match value(name) {
                Some(value) => out.push_str(&value),
                None => {
                    out.push('{');
                    out.push_str(name);
                    out.push('}');
                }
            },
        }
    }
    out
}

/// The text of a key with its slots filled.
#[must_use]
pub fn filled(key: &str, values: &[(&str, &str)]) -> String {
    fill(message(key), |name| {
        let found = values.iter().find(|(known, _)| *known == name);
        found.map(|(_, value)| String::from(*value))
    })
}

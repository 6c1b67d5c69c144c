//! Slots in the text: `{clamp}` becomes the amount of that name.

use super::model::Value;
use calc_core::quantity::UnitSystem;

/// The sentences of a lesson, `key = "text"` lines, from `content/`: for the build, which puts them into
/// the page, for tests and examples. The program itself reads them from the page.
///
/// # Errors
/// If there is no such file or it cannot be read.
#[cfg(not(target_arch = "wasm32"))]
pub fn read_words(id: &str) -> std::io::Result<String> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../content");
    for entry in std::fs::read_dir(folder)? {
        let path = entry?.path();
        let name = path.file_name().and_then(std::ffi::OsStr::to_str);
        let (number, rest) = name
            .and_then(|name| name.split_once('-'))
            .unwrap_or_default();
        let numbered = !number.is_empty() && number.bytes().all(|b| b.is_ascii_digit());
        if numbered && rest.strip_suffix(".toml") == Some(id) {
            let text = std::fs::read_to_string(path)?;
            let said = text
                .lines()
                .filter(|line| !line.is_empty() && !line.starts_with('#'));
            return Ok(said.flat_map(|line| [line, "\n"]).collect());
        }
    }
    Err(std::io::ErrorKind::NotFound.into())
}

/// A slot that names nothing.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SlotFault(pub String);

/// A piece of text with slots.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Slot<'a> {
    /// Words as they are.
    Words(&'a str),
    /// The amount of a name.
    Value(&'a str),
    /// A field in which the reader answers with the amount of a name: `{?clamp}`.
    Answer(&'a str),
}

/// Cuts a text at its slots. A brace that holds no name (lower-case letters, digits, hyphens) is text.
#[must_use]
pub fn slots(text: &str) -> Vec<Slot<'_>> {
    let mut out = Vec::new();
    let (mut begin, mut from) = (0, 0);
    while let Some(open) = text
        .get(from..)
        .and_then(|rest| rest.find('{'))
        .map(|i| from + i)
    {
        let close = text
            .get(open..)
            .and_then(|rest| rest.find('}'))
            .map(|i| open + i);
        let inner = close
            .and_then(|close| text.get(open + 1..close))
            .unwrap_or_default();
        let name = inner.strip_prefix('?').unwrap_or(inner);
        let named = !name.is_empty()
            && name
                .bytes()
                .all(|b| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'-');
        if let (true, Some(close)) = (named, close) {
            if begin < open {
                out.extend(text.get(begin..open).map(Slot::Words));
            }
            out.push(if name == inner {
                Slot::Value(name)
            } else {
                Slot::Answer(name)
            });
            begin = close + 1;
            from = begin;
        } else {
            from = open + 1;
        }
    }
    out.extend(
        text.get(begin..)
            .filter(|rest| !rest.is_empty())
            .map(Slot::Words),
    );
    out
}

/// A text with its slots filled.
///
/// # Errors
/// The first slot whose name no value has.
pub fn fill_named(text: &str, values: &[Value], units: UnitSystem) -> Result<String, SlotFault> {
    let mut out = String::with_capacity(text.len() + 24);
    for slot in slots(text) {
        match slot {
            Slot::Words(words) => out.push_str(words),
            Slot::Value(name) | Slot::Answer(name) => {
                let value = values
                    .iter()
                    .find(|value| value.name == name)
                    .ok_or_else(|| SlotFault(name.into()))?;
                out.push_str(&value.written(units));
            }
        }
    }
    Ok(out)
}

#[cfg(test)]
mod tests {
    use super::*;
    use calc_core::quantity::Dimension;
    use calc_core::report::Amount;

    #[test]
    fn slots_are_filled_and_other_braces_are_text() {
        let value = |name, si, dimension, size| Value {
            name,
            amount: Amount::new(si, dimension),
            size,
        };
        let values = [
            value("clamp", 12_000.0, Dimension::Force, false),
            value("bolt", 0.0127, Dimension::Length, true),
            value("dent", 0.0127, Dimension::Length, false),
        ];
        let filled = fill_named("{clamp} {} {x y} { {clamp}", &values, UnitSystem::Metric);
        assert_eq!(filled.unwrap(), "12\u{a0}kN {} {x y} { 12\u{a0}kN");
        let filled = fill_named("{bolt} is {dent}", &values, UnitSystem::Us);
        assert_eq!(filled.unwrap(), "1/2\u{a0}in is 0.5\u{a0}in");
        let missing = fill_named("a {turn}", &values, UnitSystem::Metric);
        assert_eq!(missing, Err(SlotFault("turn".into())));
    }

    #[test]
    fn answers_are_told_from_values() {
        assert_eq!(
            slots("so {?clamp} and {a-1}."),
            [
                Slot::Words("so "),
                Slot::Answer("clamp"),
                Slot::Words(" and "),
                Slot::Value("a-1"),
                Slot::Words("."),
            ]
        );
    }
}

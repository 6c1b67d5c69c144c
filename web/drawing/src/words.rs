//! The page's sentences by key, and how amounts are put into them.

use calc_core::catalog::{CaseName, HoleFit, LoadKind};
use calc_core::quantity::{UnitSystem, write};
use calc_core::repair::{Need, RepairKind};
use calc_core::report::{Amount, CheckId, Factor, Label, Message, Part, Verdict};
use calc_core::scenario::Field;

/// Flat `key = "text"` lines: what figures and lessons say, what only papers say, and what everything else says. A
/// program that never asks for a table is smaller by it.
const FIGURES: &str = include_str!(concat!(env!("OUT_DIR"), "/figures.toml"));
const OTHERS: &str = include_str!(concat!(env!("OUT_DIR"), "/others.toml"));
const PAPERS: &str = include_str!(concat!(env!("OUT_DIR"), "/papers.toml"));

/// The keys of the table by name.
pub mod key {
    include!(concat!(env!("OUT_DIR"), "/keys.rs"));
}

/// The text of a key of figures and lessons; `None` where there is none.
#[must_use]
pub fn message(code: &str) -> Option<&'static str> {
    find(FIGURES, code)
}

/// The text of a key in a table of flat `key = "text"` lines.
#[must_use]
pub fn find<'a>(table: &'a str, code: &str) -> Option<&'a str> {
    entries(table)
        .find(|(key, _)| *key == code)
        .map(|(_, text)| text)
}

/// Key and text of every entry, in order.
fn entries(table: &str) -> impl Iterator<Item = (&str, &str)> {
    table.lines().filter_map(|line| {
        let (key, text) = line.split_once('=')?;
        let text = text.trim().strip_prefix('"')?.strip_suffix('"')?;
        let key = key.trim();
        (!key.starts_with('#')).then_some((key, text))
    })
}

/// The text of a key of several parts, `topic.name` or `topic.name.name`, among those of figures and lessons.
#[must_use]
pub fn message_at(path: &[&str]) -> Option<&'static str> {
    find_at(FIGURES, path)
}

fn find_at<'a>(table: &'a str, path: &[&str]) -> Option<&'a str> {
    entries(table)
        .find(|(key, _)| key.split('.').eq(path.iter().copied()))
        .map(|(_, text)| text)
}

/// Something that the calculation names, with its words in the table.
pub trait Worded {
    /// What stands before its name in the table; empty where the name is the whole key.
    const TOPIC: &'static str;

    /// Its name, as in JSON.
    fn name(self) -> &'static str;
}

macro_rules! worded {
    ($($named:ty: $topic:literal, $name:path;)+) => { $(impl Worded for $named {
        const TOPIC: &'static str = $topic;

        fn name(self) -> &'static str {
            $name(self)
        }
    })+ };
}
worded! {
    Message: "", Message::key;
    Label: "", Label::key;
    Factor: "", Factor::key;
    CheckId: "check", CheckId::key;
    Verdict: "verdict", Verdict::key;
    Part: "part", Part::key;
    CaseName: "case", CaseName::key;
    LoadKind: "kind", LoadKind::name;
    Need: "need", Need::key;
    HoleFit: "hole-fit", HoleFit::id;
    RepairKind: "repair", RepairKind::key;
    Field: "field", Field::name;
}

/// Everything that the pages say.
pub mod all {
    use std::cell::Cell;

    use super::{FIGURES, OTHERS, PAPERS, Worded, find, find_at};

    thread_local! {
        /// What only papers say, once it was asked for: the table is named where it is asked for and nowhere else, so
        /// that other programs are built without it.
        static ON_PAPER: Cell<&'static str> = const {
            Cell::new(if cfg!(target_arch = "wasm32") { "" } else { PAPERS })
        };
    }

    /// From now on what only papers say is found too. The program that shows papers calls it when it starts.
    pub fn open_papers() {
        ON_PAPER.set(PAPERS);
    }

    /// The tables, those that are asked most often first.
    fn tables() -> impl Iterator<Item = &'static str> {
        [OTHERS, FIGURES, ON_PAPER.get()].into_iter()
    }

    /// The text of a key; `None` where there is none.
    #[must_use]
    pub fn message(code: &str) -> Option<&'static str> {
        tables().find_map(|table| find(table, code))
    }

    /// The text of a key of several parts, `topic.name` or `topic.name.name`.
    #[must_use]
    pub fn message_at(path: &[&str]) -> Option<&'static str> {
        tables().find_map(|table| find_at(table, path))
    }

    /// The words for something that the calculation names; `None` where the table lacks them, which the tests
    /// find.
    #[must_use]
    pub fn label<W: Worded>(of: W) -> Option<&'static str> {
        match W::TOPIC {
            "" => message(of.name()),
            topic => message_at(&[topic, of.name()]),
        }
    }
}

/// A sentence with `{0}`, `{1}` … filled with texts. A place without a text stays as it is, so that the
/// tests of the page see it; what was put in is never read again.
#[must_use]
pub fn filled(template: &str, texts: &[impl AsRef<str>]) -> String {
    let mut out = String::with_capacity(template.len() + 24);
    let mut rest = template;
    while let Some((before, after)) = rest.split_once('{') {
        out.push_str(before);
        let text = after
            .split_once('}')
            .and_then(|(place, tail)| Some((texts.get(place.parse::<usize>().ok()?)?, tail)));
        match text {
            Some((text, tail)) => {
                out.push_str(text.as_ref());
                rest = tail;
            }
            None => {
                out.push('{');
                rest = after;
            }
        }
    }
    out.push_str(rest);
    out
}

/// A sentence filled with amounts in the reader's units.
#[must_use]
pub fn fill(template: &str, amounts: &[Amount], units: UnitSystem) -> String {
    let texts: Vec<String> = amounts
        .iter()
        .map(|amount| write(amount.si, amount.dimension, units))
        .collect();
    filled(template, &texts)
}

#[cfg(test)]
mod tests {
    use super::*;
    use calc_core::quantity::Dimension;
    use std::collections::BTreeSet;

    #[test]
    fn every_line_of_the_table_is_read_and_no_key_comes_twice() {
        let tables = [FIGURES, OTHERS, PAPERS];
        let all = || tables.into_iter().flat_map(entries);
        let lines = tables.into_iter().flat_map(str::lines).count();
        let keys: BTreeSet<_> = all().map(|(k, _)| k).collect();
        assert_eq!(lines, keys.len());
        assert!(all().all(|(_, text)| !text.is_empty() && !text.contains('\\')));
    }

    #[test]
    fn places_are_filled_in_any_order_and_the_rest_is_left_alone() {
        let amounts = [
            Amount::new(30.0, Dimension::Torque),
            Amount::new(11_400.0, Dimension::Force),
        ];
        assert_eq!(
            fill("{1} at {0}, {2}, {x}, {", &amounts, UnitSystem::Metric),
            "11.4\u{a0}kN at 30\u{a0}N·m, {2}, {x}, {"
        );
        // What was put in is never read again.
        assert_eq!(
            fill("{0}", &[Amount::new(7.0, Dimension::Count)], UnitSystem::Us),
            "7"
        );
    }

    #[test]
    fn a_key_is_found_whole() {
        assert_eq!(find("a.b = \"x\"\na = \"y\"\n# c = \"z\"", "a"), Some("y"));
        assert_eq!(find("# c = \"z\"", "c"), None);
        assert_eq!(find("# c = \"z\"", "# c"), None);
    }
}

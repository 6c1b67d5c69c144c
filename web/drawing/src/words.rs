//! The page's sentences by key, and how amounts are put into them.

use calc_core::quantity::{UnitSystem, write};
use calc_core::report::Amount;

/// Flat `key = "text"` lines.
const MESSAGES: &str = include_str!(concat!(env!("OUT_DIR"), "/messages.toml"));

/// The text of a key; `None` where there is none.
#[must_use]
pub fn message(code: &str) -> Option<&'static str> {
    find(MESSAGES, code)
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

/// A sentence with `{0}`, `{1}` … filled. A place without an amount stays as it is, so that the tests
/// of the page see it.
#[must_use]
pub fn fill(template: &str, amounts: &[Amount], units: UnitSystem) -> String {
    let mut out = String::with_capacity(template.len() + 16);
    let mut rest = template;
    while let Some((before, after)) = rest.split_once('{') {
        out.push_str(before);
        let filled = after.split_once('}').and_then(|(index, tail)| {
            let amount = amounts.get(index.parse::<usize>().ok()?)?;
            Some((write(amount.si, amount.dimension, units), tail))
        });
        if let Some((text, tail)) = filled {
            out.push_str(&text);
            rest = tail;
        } else {
            out.push('{');
            rest = after;
        }
    }
    out.push_str(rest);
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use calc_core::quantity::Dimension;
    use std::collections::BTreeSet;

    #[test]
    fn every_line_of_the_table_is_read_and_no_key_comes_twice() {
        let lines = MESSAGES
            .lines()
            .filter(|l| !l.trim().is_empty() && !l.starts_with('#'))
            .count();
        let keys: BTreeSet<_> = entries(MESSAGES).map(|(k, _)| k).collect();
        assert_eq!(lines, keys.len());
        assert!(entries(MESSAGES).all(|(_, text)| !text.is_empty() && !text.contains('\\')));
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

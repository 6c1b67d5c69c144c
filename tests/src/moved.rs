//! Which numbers moved between two answers, and by how much.

use std::collections::BTreeMap;
use std::fmt;

use serde_json::Value;

/// What happened at one place, over all answers.
#[derive(Clone, Debug, Default, PartialEq)]
struct Move {
    times: usize,
    /// Largest relative change of a number.
    largest: f64,
    /// The first change: before, after.
    example: (String, String),
}

/// All moves, by place; items of a list share one place.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Moves {
    by_place: BTreeMap<String, Move>,
}

impl Moves {
    /// Adds what moved between two answers.
    pub fn compare(&mut self, before: &Value, after: &Value) {
        self.walk("", before, after);
    }

    /// Whether nothing moved.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.by_place.is_empty()
    }

    fn walk(&mut self, place: &str, before: &Value, after: &Value) {
        match (before, after) {
            (Value::Object(then), Value::Object(now)) => {
                let names: std::collections::BTreeSet<_> = then.keys().chain(now.keys()).collect();
                for name in names {
                    let at = format!("{place}.{name}");
                    let of = |map: &serde_json::Map<String, Value>| {
                        map.get(name).cloned().unwrap_or(Value::Null)
                    };
                    self.walk(&at, &of(then), &of(now));
                }
            }
            (Value::Array(then), Value::Array(now)) if then.len() == now.len() => {
                for (then, now) in then.iter().zip(now) {
                    // Checks and steps are told apart by what they are, not by their place in the list.
                    let name = ["id", "symbol", "code", "field"]
                        .iter()
                        .find_map(|key| then.get(key)?.as_str())
                        .unwrap_or("");
                    self.walk(&format!("{place}[{name}]"), then, now);
                }
            }
            _ if before == after => {}
            _ => self.note(place, before, after),
        }
    }

    fn note(&mut self, place: &str, before: &Value, after: &Value) {
        let change = match (before.as_f64(), after.as_f64()) {
            (Some(then), Some(now)) => (now - then).abs() / then.abs().max(f64::MIN_POSITIVE),
            _ => f64::INFINITY,
        };
        let short = |value: &Value| value.to_string().chars().take(60).collect::<String>();
        let entry = self.by_place.entry(String::from(place)).or_default();
        if entry.times == 0 {
            entry.example = (short(before), short(after));
        }
        entry.times += 1;
        entry.largest = entry.largest.max(change);
    }
}

impl fmt::Display for Moves {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.is_empty() {
            return writeln!(out, "Nothing moved.");
        }
        for (place, found) in &self.by_place {
            let (then, now) = &found.example;
            let by = if found.largest.is_finite() {
                format!("by up to {:.1e}", found.largest)
            } else {
                String::from("to something else")
            };
            writeln!(
                out,
                "{place}: {} times {by}, first {then} → {now}",
                found.times
            )?;
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    fn moves(before: &Value, after: &Value) -> Moves {
        let mut moves = Moves::default();
        moves.compare(before, after);
        moves
    }

    #[test]
    fn says_where_and_by_how_much() {
        let joint = |used: f64| json!({ "checks": [{ "id": "slip", "used": used }], "n": 3 });
        assert!(moves(&joint(0.5), &joint(0.5)).is_empty());
        let text = moves(&joint(0.5), &joint(0.75)).to_string();
        assert_eq!(
            text,
            ".checks[slip].used: 1 times by up to 5.0e-1, first 0.5 → 0.75\n"
        );
    }

    #[test]
    fn tells_what_came_and_what_went() {
        let text = moves(&json!({ "a": 1 }), &json!({ "b": [1] })).to_string();
        assert_eq!(
            text,
            ".a: 1 times to something else, first 1 → null\n\
             .b: 1 times to something else, first null → [1]\n"
        );
        assert!(
            moves(&json!([1]), &json!([1, 2]))
                .to_string()
                .contains("to something else")
        );
    }
}

//! What students typed and picked, kept on the device by the sheet that it belongs to.

use leptos::prelude::*;

use crate::kept::Kept;

/// Entries that are kept; of more the oldest go.
const MOST: usize = 400;

/// Place and text of every entry, the oldest first.
#[derive(Clone, Copy)]
pub(super) struct Typed(StoredValue<Vec<(String, String)>>);

impl Typed {
    /// As they were left on this device.
    pub(super) fn kept() -> Self {
        let lines = Kept::Answers.read().unwrap_or_default();
        let split = |line: &str| {
            let (place, text) = line.split_once('\t')?;
            Some((place.into(), text.into()))
        };
        Self(StoredValue::new(lines.lines().filter_map(split).collect()))
    }

    pub(super) fn get(self, place: &str) -> String {
        self.0.with_value(|all| {
            let found = all.iter().find(|(known, _)| known == place);
            found.map_or_else(String::new, |(_, text)| text.clone())
        })
    }

    /// Keeps a text in place of what was there; an empty one is forgotten.
    pub(super) fn put(self, place: &str, text: &str) {
        self.0.update_value(|all| {
            all.retain(|(known, _)| known != place);
            if !text.is_empty() {
                all.push((place.into(), text.replace(['\n', '\t'], " ")));
            }
            let more = all.len().saturating_sub(MOST);
            all.drain(..more);
            let lines = all.iter().map(|(place, text)| format!("{place}\t{text}\n"));
            Kept::Answers.write(&lines.collect::<String>());
        });
    }
}

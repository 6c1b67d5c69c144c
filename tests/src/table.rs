//! What was compared, by topic, with what is worth saying about it.

use serde::Serialize;

use crate::check::Record;
use crate::compare::TOPICS;
use crate::reference::Origin;

/// Comparisons of one topic.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Table {
    /// Short name, in lower case with hyphens.
    pub id: &'static str,
    /// For people.
    pub title: &'static str,
    /// All comparisons.
    pub records: Vec<Record>,
}

impl Table {
    /// How many values were printed by their source; the others were worked out another way.
    #[must_use]
    pub fn printed(&self) -> usize {
        let printed = |record: &&Record| record.origin == Origin::Published;
        self.records.iter().filter(printed).count()
    }

    /// The comparison that lies farthest apart, as a share of the value.
    #[must_use]
    pub fn farthest(&self) -> Option<&Record> {
        self.records
            .iter()
            .max_by(|a, b| a.difference().abs().total_cmp(&b.difference().abs()))
    }
}

/// Compares everything. The same every time.
///
/// # Panics
///
/// If a reference file cannot be read or asks for what is not compared.
#[must_use]
pub fn tables() -> Vec<Table> {
    TOPICS
        .iter()
        .map(|topic| Table {
            id: topic.id,
            title: topic.title,
            records: topic
                .checks
                .iter()
                .flat_map(|check| check().records())
                .collect(),
        })
        .collect()
}

//! Comparing, and keeping what was compared.

use calc_core::cite::Flag;
use serde::Serialize;

use crate::reference::{Origin, Row};

/// One comparison.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Record {
    /// Row and value: `area-unc-1.2 stress_area_in2`.
    pub value: String,
    /// What the source says.
    pub published: f64,
    /// What calc-core gives.
    pub ours: f64,
    /// How far ours may lie below and above.
    pub allowed: [f64; 2],
    /// Id in `content/sources.toml`.
    pub source: String,
    /// Place in that source.
    pub place: String,
    /// How the value is held.
    pub flag: Flag,
    /// Who made the value.
    pub origin: Origin,
}

impl Record {
    /// Whether the difference is allowed. Never so for a value that is not a number.
    #[must_use]
    pub fn agrees(&self) -> bool {
        let [below, above] = self.allowed;
        self.ours >= self.published - below && self.ours <= self.published + above
    }

    /// Our value against the published one, as a share of it; the bare difference from zero.
    #[must_use]
    pub fn difference(&self) -> f64 {
        if self.published == 0.0 {
            self.ours
        } else {
            self.ours / self.published - 1.0
        }
    }
}

/// Comparisons of one kind.
#[derive(Clone, Debug, Default)]
pub struct Check {
    records: Vec<Record>,
}

impl Check {
    /// Nothing compared yet.
    #[must_use]
    pub const fn new() -> Self {
        Self {
            records: Vec::new(),
        }
    }

    /// Compares a row with our values. Each expected value must be given, under its name.
    ///
    /// # Panics
    ///
    /// If the names given are not those that the row expects.
    pub fn row(&mut self, row: &Row, ours: &[(&str, f64)]) {
        let mut given: Vec<_> = ours.iter().map(|(name, _)| *name).collect();
        given.sort_unstable();
        let expected: Vec<_> = row.expect.keys().map(String::as_str).collect();
        assert_eq!(given, expected, "{}: values given and expected", row.id);
        for (name, ours) in ours {
            self.records.push(Record {
                value: format!("{} {name}", row.id),
                published: row.expect.get(*name).copied().unwrap_or(f64::NAN),
                ours: *ours,
                allowed: [row.allowed(name); 2],
                source: row.source.clone(),
                place: row.place.clone(),
                flag: row.flag,
                origin: row.origin,
            });
        }
    }

    /// Adds a comparison that no row of a file holds.
    pub fn push(&mut self, record: Record) {
        self.records.push(record);
    }

    /// What was compared, in the order in which it was.
    #[must_use]
    pub fn records(self) -> Vec<Record> {
        self.records
    }
}

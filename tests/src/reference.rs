//! Reference rows: what some other source says, as data.

use std::collections::BTreeMap;
use std::path::PathBuf;

use calc_core::cite::Flag;
use serde::{Deserialize, Serialize};

/// Who made a reference value.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Origin {
    /// Printed by the source.
    Published,
    /// Worked out for this project by another way than calc-core's.
    Own,
    /// Common practice.
    Practice,
}

/// One reference row.
///
/// The names in `expect` end in their unit (`force_kip`). The largest allowed difference of each is
/// `half_unit` (absolute: half a unit of the last figure printed) or `rel` (a share of the value).
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Row {
    /// Name of the row, unique in its file.
    pub id: String,
    /// Id in `content/sources.toml`.
    pub source: String,
    /// Place in that source.
    pub place: String,
    /// How the value is held.
    pub flag: Flag,
    /// Who made the value.
    pub origin: Origin,
    /// What goes in.
    pub input: toml::Table,
    /// What must come out.
    pub expect: BTreeMap<String, f64>,
    /// Largest allowed absolute difference, by name.
    #[serde(default)]
    pub half_unit: BTreeMap<String, f64>,
    /// Largest allowed relative difference of every value without a `half_unit`.
    pub rel: Option<f64>,
}

impl Row {
    /// The input of this name, a text.
    ///
    /// # Panics
    ///
    /// If there is none.
    #[must_use]
    pub fn text(&self, name: &str) -> &str {
        self.input
            .get(name)
            .and_then(toml::Value::as_str)
            .unwrap_or_else(|| panic!("{}: no text {name}", self.id))
    }

    /// The input of this name, a number, if it is there.
    #[must_use]
    pub fn maybe_number(&self, name: &str) -> Option<f64> {
        let value = self.input.get(name)?;
        #[allow(
            clippy::cast_precision_loss,
            reason = "inputs are small whole numbers where they are whole"
        )]
        value
            .as_float()
            .or_else(|| value.as_integer().map(|whole| whole as f64))
    }

    /// The input of this name, a number.
    ///
    /// # Panics
    ///
    /// If there is none.
    #[must_use]
    pub fn number(&self, name: &str) -> f64 {
        self.maybe_number(name)
            .unwrap_or_else(|| panic!("{}: no number {name}", self.id))
    }

    /// Largest allowed absolute difference of the expected value of this name.
    ///
    /// # Panics
    ///
    /// If the row gives neither `half_unit` nor `rel` for it.
    #[must_use]
    pub fn allowed(&self, name: &str) -> f64 {
        let expected = self.expect.get(name).copied().unwrap_or(f64::NAN).abs();
        match (self.half_unit.get(name), self.rel) {
            (Some(half_unit), _) => half_unit + crate::tolerance::ROUND_OFF * expected,
            (None, Some(rel)) => rel * expected,
            (None, None) => panic!("{}: no tolerance for {name}", self.id),
        }
    }
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    row: Vec<Row>,
}

/// Folder of the reference files.
#[must_use]
pub fn folder() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("reference")
}

/// What `reference/<file>` holds.
///
/// # Panics
///
/// If the file cannot be read or is not of this form.
#[must_use]
pub fn read<T: serde::de::DeserializeOwned>(file: &str) -> T {
    let path = folder().join(file);
    let text = std::fs::read_to_string(&path)
        .unwrap_or_else(|error| panic!("{}: {error}", path.display()));
    toml::from_str(&text).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

/// Rows of `reference/<file>`.
///
/// # Panics
///
/// If the file cannot be read, is not of this form, has no row, or has two rows of one id.
#[must_use]
pub fn rows(file: &str) -> Vec<Row> {
    let rows = read::<File>(file).row;
    assert!(!rows.is_empty(), "{file}: no rows");
    let mut ids: Vec<_> = rows.iter().map(|row| row.id.as_str()).collect();
    ids.sort_unstable();
    ids.dedup();
    assert_eq!(ids.len(), rows.len(), "{file}: two rows of one id");
    rows
}

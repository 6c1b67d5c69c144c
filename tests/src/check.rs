//! Comparing, and writing down what was compared.

use std::path::PathBuf;

use calc_core::cite::Flag;
use serde::{Deserialize, Serialize};

use crate::reference::{Origin, Row};

/// One comparison, as the page shows it.
#[derive(Clone, Debug, Serialize, Deserialize)]
pub struct Record {
    /// Check that it belongs to.
    pub check: String,
    /// Row and value: `area-unc-1.2 stress_area_in2`.
    pub value: String,
    /// What the source says.
    pub published: f64,
    /// What calc-core gives.
    pub ours: f64,
    /// Largest allowed difference.
    pub allowed: f64,
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
        (self.ours - self.published).abs() <= self.allowed
    }

    /// Our value against the published one, as a share of it.
    #[must_use]
    pub fn difference(&self) -> f64 {
        self.ours / self.published - 1.0
    }
}

/// A named check: collects comparisons, then [`finish`](Self::finish)es.
#[derive(Debug)]
pub struct Check {
    name: &'static str,
    records: Vec<Record>,
    finished: bool,
}

impl Check {
    /// A check of this name; the name becomes a file name, so it must be unique and kebab-case.
    #[must_use]
    pub fn new(name: &'static str) -> Self {
        Self {
            name,
            records: Vec::new(),
            finished: false,
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
                check: self.name.to_owned(),
                value: format!("{} {name}", row.id),
                published: row.expect.get(*name).copied().unwrap_or(f64::NAN),
                ours: *ours,
                allowed: row.allowed(name),
                source: row.source.clone(),
                place: row.place.clone(),
                flag: row.flag,
                origin: row.origin,
            });
        }
    }

    /// Writes `outside-checks/<name>.json` into the target folder, then fails on any misfit.
    ///
    /// # Panics
    ///
    /// If a value lies outside its tolerance, if nothing was compared, or if the file cannot be written.
    pub fn finish(mut self) {
        self.finished = true;
        assert!(!self.records.is_empty(), "{}: nothing compared", self.name);
        let folder = output_folder();
        std::fs::create_dir_all(&folder)
            .unwrap_or_else(|error| panic!("{}: {error}", folder.display()));
        let path = folder.join(format!("{}.json", self.name));
        let text = serde_json::to_string_pretty(&self.records)
            .unwrap_or_else(|error| panic!("{}: {error}", self.name));
        std::fs::write(&path, text).unwrap_or_else(|error| panic!("{}: {error}", path.display()));
        let misfits: Vec<_> = self
            .records
            .iter()
            .filter(|record| !record.agrees())
            .map(|record| {
                format!(
                    "{}: published {}, ours {}, allowed ±{} ({:+.3} %)",
                    record.value,
                    record.published,
                    record.ours,
                    record.allowed,
                    100.0 * record.difference(),
                )
            })
            .collect();
        assert!(
            misfits.is_empty(),
            "{}: {} of {} values\n{}",
            self.name,
            misfits.len(),
            self.records.len(),
            misfits.join("\n"),
        );
    }
}

impl Drop for Check {
    fn drop(&mut self) {
        // A check that compares and then judges nothing would pass whatever the values are.
        assert!(
            self.finished || std::thread::panicking(),
            "{}: not finished",
            self.name
        );
    }
}

/// `outside-checks` in the target folder, next to `debug`. The records of each check are a file in it.
///
/// # Panics
///
/// If the running program has no path.
#[must_use]
pub fn output_folder() -> PathBuf {
    let program = std::env::current_exe().unwrap_or_else(|error| panic!("own path: {error}"));
    // target/debug/deps/<test> or target/debug/<program>
    let profile = program
        .ancestors()
        .skip(1)
        .find(|folder| !folder.ends_with("deps"));
    profile
        .and_then(std::path::Path::parent)
        .unwrap_or_else(|| panic!("{}: not in a target folder", program.display()))
        .join("outside-checks")
}

/// Records of every check that has run, by check and in the order of their rows.
///
/// # Errors
///
/// If the folder or a file in it cannot be read.
pub fn gather() -> std::io::Result<Vec<Record>> {
    let mut paths = std::fs::read_dir(output_folder())?
        .map(|entry| entry.map(|entry| entry.path()))
        .collect::<std::io::Result<Vec<_>>>()?;
    paths.sort();
    let mut records = Vec::new();
    for path in paths {
        let text = std::fs::read_to_string(&path)?;
        records.extend(serde_json::from_str::<Vec<Record>>(&text)?);
    }
    Ok(records)
}

//! Joints with the verdicts that they may have, worked out by hand: `reference/gauntlet.toml`.
//!
//! Some must hold, as practice and a hand calculation accept them; the others must not, each for a reason that
//! a program may overlook.

use calc_core::report::{CheckId, Verdict};
use calc_core::{Input, Scenario, evaluate};
use serde::{Deserialize, Serialize};

use crate::reference::{Origin, read};

/// File of the joints, in [`folder`](crate::reference::folder).
pub const FILE: &str = "gauntlet.toml";

/// One joint with the verdicts that it may have.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Joint {
    /// Name, unique in the file.
    pub id: String,
    /// What it is about.
    pub topic: String,
    /// In words.
    pub what: String,
    /// JSON, what differs from the default joint.
    pub input: String,
    /// Best verdict it may have.
    #[serde(deserialize_with = "verdict")]
    pub best: Verdict,
    /// Worst verdict it may have.
    #[serde(deserialize_with = "verdict")]
    pub worst: Verdict,
    /// Keys of checks of which at least one must itself stand no better than [`best`](Self::best); any where
    /// empty.
    #[serde(default)]
    pub deciding: Vec<String>,
    /// Names of fields at which it may be turned away as contradictory instead.
    #[serde(default)]
    pub refused: Vec<String>,
    /// Who says so.
    pub origin: Origin,
    /// The source, or the numbers.
    pub why: String,
}

fn verdict<'de, D: serde::Deserializer<'de>>(from: D) -> Result<Verdict, D::Error> {
    let key = String::deserialize(from)?;
    let mut all = Verdict::ALL.iter().copied();
    all.find(|v| v.key() == key)
        .ok_or_else(|| serde::de::Error::custom(format!("no verdict {key}")))
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    joint: Vec<Joint>,
}

/// All joints.
///
/// # Panics
///
/// If the file cannot be read or is not of this form.
#[must_use]
pub fn joints() -> Vec<Joint> {
    read::<File>(FILE).joint
}

/// What the calculation says of a joint.
#[derive(Clone, Debug, Serialize)]
pub enum Outcome {
    /// It was judged.
    Judged {
        /// Verdict of the whole.
        verdict: Verdict,
        /// The check that it rests on.
        weakest: CheckId,
        /// Share used of that.
        used: Option<f64>,
        /// Checks that do not hold clearly, with their shares used.
        others: Vec<(CheckId, Verdict, Option<f64>)>,
    },
    /// It was turned away at these fields, for these reasons.
    Refused(Vec<(String, String)>),
}

impl Joint {
    /// The input.
    ///
    /// # Panics
    ///
    /// If it is not JSON of an input: an unknown name among them.
    #[must_use]
    pub fn read(&self) -> Input {
        serde_json::from_str(&self.input).unwrap_or_else(|error| panic!("{}: {error}", self.id))
    }

    /// Whether practice and a hand calculation accept it.
    #[must_use]
    pub fn must_hold(&self) -> bool {
        self.best == Verdict::Holds && self.worst <= Verdict::Close
    }

    /// Whether it may neither hold nor be close.
    #[must_use]
    pub fn must_not_hold(&self) -> bool {
        self.best >= Verdict::NotChecked
    }

    /// Asks the calculation.
    #[must_use]
    pub fn outcome(&self) -> Outcome {
        let scenario = match Scenario::new(&self.read()) {
            Ok(scenario) => scenario,
            Err(errors) => {
                let name = |e: &calc_core::InputError| {
                    e.field()
                        .map_or("version", calc_core::scenario::Field::name)
                };
                let each = errors
                    .iter()
                    .map(|e| (name(e).to_owned(), e.to_string()))
                    .collect();
                return Outcome::Refused(each);
            }
        };
        let report = evaluate(&scenario);
        let checks = report.checks.iter();
        Outcome::Judged {
            verdict: report.verdict,
            weakest: report.weakest,
            used: report
                .check(report.weakest)
                .and_then(|check| check.utilisation),
            others: checks
                .filter(|check| check.verdict > Verdict::Holds)
                .map(|check| (check.id, check.verdict, check.utilisation))
                .collect(),
        }
    }

    /// What is wrong with an outcome; `None` where it is one that the joint may have.
    #[must_use]
    pub fn fault(&self, outcome: &Outcome) -> Option<String> {
        let (verdict, weakest, used, others) = match outcome {
            Outcome::Refused(errors) => {
                let named = |(field, _): &(String, String)| self.refused.contains(field);
                return if errors.iter().any(named) {
                    None
                } else {
                    Some(format!("turned away: {errors:?}"))
                };
            }
            Outcome::Judged {
                verdict,
                weakest,
                used,
                others,
            } => (*verdict, *weakest, *used, others),
        };
        let share = used.map_or_else(|| "–".to_owned(), |used| format!("{used:.2}"));
        let said = format!("{} by {} at {share}", verdict.key(), weakest.key());
        if verdict < self.best || verdict > self.worst {
            let (best, worst) = (self.best.key(), self.worst.key());
            return Some(format!("{said}, not within {best} … {worst}"));
        }
        let decides = |(id, verdict, _): &(CheckId, Verdict, Option<f64>)| {
            *verdict >= self.best && self.deciding.iter().any(|key| key == id.key())
        };
        if self.deciding.is_empty() || others.iter().any(decides) {
            None
        } else {
            Some(format!("{said}, but none of {:?} stops it", self.deciding))
        }
    }
}

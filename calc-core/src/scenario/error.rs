//! Why an input was refused.

use super::fields::Field;
use serde::Serialize;

/// One refused input: which field, what it was, what is allowed.
///
/// The stable [`code`](Self::code) keys the sentence that a reader sees; [`Display`](std::fmt::Display)
/// is for developers and for the `evaluate` example.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case", tag = "code")]
#[non_exhaustive]
pub enum InputError {
    /// Not a number, or infinite.
    NotFinite {
        /// The field.
        field: Field,
    },
    /// Outside the range that the field takes; numbers in the field's own unit.
    OutOfRange {
        /// The field.
        field: Field,
        /// What was given.
        got: f64,
        /// Lowest value taken.
        min: f64,
        /// Highest value taken.
        max: f64,
    },
    /// A name that is not in the catalogue.
    UnknownChoice {
        /// The field.
        field: Field,
        /// What was given.
        got: String,
        /// What can be chosen.
        allowed: Vec<&'static str>,
    },
    /// Two inputs that cannot both be true.
    Contradiction {
        /// The field to change.
        field: Field,
        /// What does not fit, in plain words.
        why: &'static str,
    },
    /// A scenario written for another version.
    Version {
        /// What was given.
        got: u32,
    },
}

impl InputError {
    /// Stable key for messages and tests; never reworded.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::NotFinite { .. } => "not-finite",
            Self::OutOfRange { .. } => "out-of-range",
            Self::UnknownChoice { .. } => "unknown-choice",
            Self::Contradiction { .. } => "contradiction",
            Self::Version { .. } => "version",
        }
    }

    /// The field to correct, where the error belongs to one.
    #[must_use]
    pub const fn field(&self) -> Option<Field> {
        match self {
            Self::NotFinite { field }
            | Self::OutOfRange { field, .. }
            | Self::UnknownChoice { field, .. }
            | Self::Contradiction { field, .. } => Some(*field),
            Self::Version { .. } => None,
        }
    }
}

impl std::fmt::Display for InputError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::NotFinite { field } => write!(f, "{}: not a number", field.name()),
            Self::OutOfRange {
                field,
                got,
                min,
                max,
            } => {
                write!(f, "{}: {got} is outside {min} to {max}", field.name())
            }
            Self::UnknownChoice {
                field,
                got,
                allowed,
            } => write!(
                f,
                "{}: \"{got}\" is not one of {}",
                field.name(),
                allowed.join(", ")
            ),
            Self::Contradiction { field, why } => write!(f, "{}: {why}", field.name()),
            Self::Version { got } => write!(
                f,
                "version: {got} is not known; this program reads version {}",
                super::VERSION
            ),
        }
    }
}

impl std::error::Error for InputError {}

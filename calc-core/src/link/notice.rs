//! What is to be said about a link that was opened.

use super::sheet::SheetError;
use crate::quantity::Dimension;
use crate::scenario::Field;
use std::fmt;

/// Something in a link that was not taken as it stood, or that has to be said.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum Notice {
    /// A setting that this program does not know; ignored.
    UnknownKey {
        /// The setting as it stands in the link.
        setting: String,
    },
    /// A field that stands twice; the first counts.
    Repeated {
        /// The field.
        field: Field,
    },
    /// A name that the field does not take; its default stands.
    UnknownChoice {
        /// The field.
        field: Field,
        /// The name.
        got: String,
    },
    /// Not a number; the default stands.
    NotANumber {
        /// The field.
        field: Field,
        /// What stands there.
        got: String,
    },
    /// A unit that does not measure what the field takes; the default stands.
    WrongUnit {
        /// The field.
        field: Field,
        /// The unit token.
        unit: String,
        /// What the field takes.
        wanted: Dimension,
    },
    /// Taken, but outside the range: no result until it is changed. In the unit of the field's name.
    OutOfRange {
        /// The field.
        field: Field,
        /// The number.
        got: f64,
        /// Lowest value taken.
        min: f64,
        /// Highest value taken.
        max: f64,
    },
    /// A unit system that this program does not know; ignored.
    UnknownUnits {
        /// What stands there.
        got: String,
    },
    /// Something that belongs to no link stood behind it and was cut off.
    Cut,
}

impl Notice {
    pub(super) fn refused(error: SheetError, text: &str, unit: &str) -> Self {
        match error {
            SheetError::UnknownChoice { field, got } => Self::UnknownChoice { field, got },
            SheetError::WrongUnit {
                field,
                wanted: Some(wanted),
            } => Self::WrongUnit {
                field,
                unit: String::from(unit),
                wanted,
            },
            SheetError::WrongUnit { field, .. } | SheetError::NotANumber { field } => {
                Self::NotANumber {
                    field,
                    got: String::from(text),
                }
            }
        }
    }

    /// Stable key for messages and tests; never reworded.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::UnknownKey { .. } => "unknown-key",
            Self::Repeated { .. } => "repeated",
            Self::UnknownChoice { .. } => "unknown-choice",
            Self::NotANumber { .. } => "not-a-number",
            Self::WrongUnit { .. } => "wrong-unit",
            Self::OutOfRange { .. } => "out-of-range",
            Self::UnknownUnits { .. } => "unknown-units",
            Self::Cut => "cut",
        }
    }

    /// The field that it is about.
    #[must_use]
    pub const fn field(&self) -> Option<Field> {
        match self {
            Self::Repeated { field }
            | Self::UnknownChoice { field, .. }
            | Self::NotANumber { field, .. }
            | Self::WrongUnit { field, .. }
            | Self::OutOfRange { field, .. } => Some(*field),
            Self::UnknownKey { .. } | Self::UnknownUnits { .. } | Self::Cut => None,
        }
    }
}

/// For developers; readers get the sentence of the [`code`](Notice::code).
impl fmt::Display for Notice {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::UnknownKey { setting } => write!(f, "setting \"{setting}\" is not known"),
            Self::Repeated { field } => write!(f, "{} stands twice", field.name()),
            Self::UnknownChoice { field, got } => {
                write!(f, "{}: \"{got}\" is not known", field.name())
            }
            Self::NotANumber { field, got } => {
                write!(f, "{}: \"{got}\" is not a number", field.name())
            }
            Self::WrongUnit {
                field,
                unit,
                wanted,
            } => {
                let (name, wanted) = (field.name(), wanted.name());
                write!(f, "{name}: \"{unit}\" is no unit of {wanted}")
            }
            Self::OutOfRange {
                field,
                got,
                min,
                max,
            } => write!(f, "{}: {got} is outside {min} to {max}", field.name()),
            Self::UnknownUnits { got } => write!(f, "unit system \"{got}\" is not known"),
            Self::Cut => f.write_str("what stood behind the link was cut off"),
        }
    }
}

//! Numbers as their table prints them, with the unit that the table uses.

use crate::quantity::{Length, Stress, inch, ksi, mm, mpa};

/// A length as printed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum PrintedLength {
    /// Inches.
    Inch(f64),
    /// Millimetres.
    Mm(f64),
}

impl PrintedLength {
    /// The typed length.
    pub(super) fn length(self) -> Length {
        match self {
            Self::Inch(value) => inch(value),
            Self::Mm(value) => mm(value),
        }
    }
}

/// A stress as printed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum PrintedStress {
    /// Thousands of pounds-force per square inch.
    Ksi(f64),
    /// Megapascals.
    Mpa(f64),
}

impl PrintedStress {
    /// The typed stress.
    pub(super) fn stress(self) -> Stress {
        match self {
            Self::Ksi(value) => ksi(value),
            Self::Mpa(value) => mpa(value),
        }
    }

    /// The stress times a plain factor, in the same unit.
    pub(super) const fn times(self, factor: f64) -> Self {
        match self {
            Self::Ksi(value) => Self::Ksi(value * factor),
            Self::Mpa(value) => Self::Mpa(value * factor),
        }
    }
}

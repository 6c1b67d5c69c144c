//! Why typed text was refused.

use super::dimension::Dimension;
use super::unit::Unit;
use std::fmt;

/// Why typed text was refused. `piece` is the part that was not understood, shortened when long.
///
/// [`Display`](fmt::Display) says in plain words what is the matter and what to write instead; it does
/// not name the field.
#[derive(Clone, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum ReadError {
    /// Nothing but blanks.
    Empty,
    /// More text than a value needs.
    TooLong,
    /// The text does not begin with a number.
    NoNumber {
        /// What stands there.
        piece: String,
    },
    /// A number is followed by something that is not a unit.
    NotUnderstood {
        /// What follows the number.
        piece: String,
    },
    /// A word stands where a unit is expected, and is none.
    UnknownUnit {
        /// The word.
        piece: String,
        /// What the field takes.
        wanted: Dimension,
    },
    /// A unit of another kind of quantity.
    WrongDimension {
        /// The unit as typed.
        piece: String,
        /// What that unit measures.
        found: Dimension,
        /// What the field takes.
        wanted: Dimension,
    },
    /// A unit word that stands for several units.
    AmbiguousUnit {
        /// The word.
        piece: String,
        /// What the field takes.
        wanted: Dimension,
    },
    /// A comma before exactly three digits: decimal comma or thousands?
    AmbiguousComma {
        /// The number as typed.
        piece: String,
    },
    /// Several commas or points, or both.
    MixedSeparators {
        /// The number as typed.
        piece: String,
    },
    /// The second part of a mixed number is not less than one of the first: `2 3/2`, `3' 14"`.
    PartTooLarge {
        /// The number as typed.
        piece: String,
    },
    /// A fraction over zero.
    ZeroDenominator {
        /// The fraction as typed.
        piece: String,
    },
    /// A count with a fraction.
    NotWhole {
        /// The number as typed.
        piece: String,
    },
    /// Larger than can be computed with.
    TooLarge {
        /// The number as typed.
        piece: String,
    },
}

impl ReadError {
    /// Stable key for messages and tests; never reworded.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Empty => "empty",
            Self::TooLong => "too-long",
            Self::NoNumber { .. } => "no-number",
            Self::NotUnderstood { .. } => "not-understood",
            Self::UnknownUnit { .. } => "unknown-unit",
            Self::WrongDimension { .. } => "wrong-dimension",
            Self::AmbiguousUnit { .. } => "ambiguous-unit",
            Self::AmbiguousComma { .. } => "ambiguous-comma",
            Self::MixedSeparators { .. } => "mixed-separators",
            Self::PartTooLarge { .. } => "part-too-large",
            Self::ZeroDenominator { .. } => "zero-denominator",
            Self::NotWhole { .. } => "not-whole",
            Self::TooLarge { .. } => "too-large",
        }
    }

    /// The part of the text that was not understood; empty when there is none.
    #[must_use]
    pub fn piece(&self) -> &str {
        match self {
            Self::Empty | Self::TooLong => "",
            Self::NoNumber { piece }
            | Self::NotUnderstood { piece }
            | Self::UnknownUnit { piece, .. }
            | Self::WrongDimension { piece, .. }
            | Self::AmbiguousUnit { piece, .. }
            | Self::AmbiguousComma { piece }
            | Self::MixedSeparators { piece }
            | Self::PartTooLarge { piece }
            | Self::ZeroDenominator { piece }
            | Self::NotWhole { piece }
            | Self::TooLarge { piece } => piece,
        }
    }

    /// The quoted piece, to be shortened.
    pub(super) fn piece_mut(&mut self) -> Option<&mut String> {
        match self {
            Self::Empty | Self::TooLong => None,
            Self::NoNumber { piece }
            | Self::NotUnderstood { piece }
            | Self::UnknownUnit { piece, .. }
            | Self::WrongDimension { piece, .. }
            | Self::AmbiguousUnit { piece, .. }
            | Self::AmbiguousComma { piece }
            | Self::MixedSeparators { piece }
            | Self::PartTooLarge { piece }
            | Self::ZeroDenominator { piece }
            | Self::NotWhole { piece }
            | Self::TooLarge { piece } => Some(piece),
        }
    }
}

impl fmt::Display for ReadError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty => write!(f, "nothing is written here: write a number"),
            Self::TooLong => write!(
                f,
                "this is too long for one value: write a number and its unit"
            ),
            Self::NoNumber { piece } => {
                write!(
                    f,
                    "“{piece}” does not begin with a number: write the number first, then its unit"
                )
            }
            Self::NotUnderstood { piece } => {
                write!(
                    f,
                    "“{piece}” after the number is not understood: leave it out or write a unit"
                )
            }
            Self::UnknownUnit { piece, wanted } => {
                write!(f, "“{piece}” is not a unit known here: {}", advice(*wanted))
            }
            Self::WrongDimension {
                piece,
                found,
                wanted,
            } => write!(
                f,
                "“{piece}” measures {}, but {} is needed: {}",
                with_article(*found),
                with_article(*wanted),
                advice(*wanted)
            ),
            Self::AmbiguousUnit { piece, wanted } => {
                write!(
                    f,
                    "“{piece}” stands for more than one unit: {}",
                    advice(*wanted)
                )
            }
            Self::AmbiguousComma { piece } => write!(
                f,
                "“{piece}” can be read as {} or as {}: write it without the comma",
                piece.replace(',', ""),
                piece.replace(',', ".")
            ),
            Self::MixedSeparators { piece } => write!(
                f,
                "“{piece}” has more than one comma or point: write the thousands without a mark and one decimal point"
            ),
            Self::PartTooLarge { piece } => write!(
                f,
                "the second part of “{piece}” is not less than one of the first: write it like 2 1/2 or 3' 6\""
            ),
            Self::ZeroDenominator { piece } => {
                write!(f, "“{piece}” divides by zero: write a fraction like 1/2")
            }
            Self::NotWhole { piece } => {
                write!(f, "“{piece}” is not a whole number: write a whole number")
            }
            Self::TooLarge { piece } => write!(
                f,
                "“{piece}” is too large to compute with: check the digits"
            ),
        }
    }
}

impl std::error::Error for ReadError {}

fn with_article(dimension: Dimension) -> String {
    let name = dimension.name();
    let article = if name.starts_with(['a', 'e', 'i', 'o', 'u']) {
        "an"
    } else {
        "a"
    };
    format!("{article} {name}")
}

fn advice(wanted: Dimension) -> String {
    let symbols: Vec<_> = Unit::of(wanted)
        .map(Unit::symbol)
        .filter(|symbol| !symbol.is_empty())
        .collect();
    match symbols.split_last() {
        None => "write the number alone".to_owned(),
        Some((only, [])) => format!("write {only}"),
        Some((last, others)) => format!("write {} or {last}", others.join(", ")),
    }
}

//! Where a value or a formula comes from, and how it is held.
//!
//! Every row of [`crate::catalog`] and every formula carries a [`Cite`]; its source is described once, in
//! `content/sources.toml`.

/// How a value is held.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Flag {
    /// Seen in the named document or in a copy of it.
    Read,
    /// Seen in a text that reproduces or quotes the named document.
    ReadSecondHand,
    /// Worked out from values that carry their own flag.
    Computed,
    /// Recalled; not found in anything that was read.
    Memory,
    /// Common practice that no document was found for.
    Practice,
    /// Chosen here, because a value was needed and none was found.
    Assumption,
}

impl Flag {
    /// The flag in words that a reader can be shown next to the value.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Read => "seen in a copy",
            Self::ReadSecondHand => "quoted by another text",
            Self::Computed => "computed from other values",
            Self::Memory => "from memory",
            Self::Practice => "common practice, no source",
            Self::Assumption => "assumption",
        }
    }
}

/// Where a value or a formula comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, serde::Serialize)]
pub struct Cite {
    /// Id of the source in `content/sources.toml`.
    pub source: &'static str,
    /// Table, equation, clause or page in that source.
    pub place: &'static str,
    /// How the value is held.
    pub flag: Flag,
}

impl Cite {
    /// A place in a source, and how the value is held.
    #[must_use]
    pub const fn new(source: &'static str, place: &'static str, flag: Flag) -> Self {
        Self {
            source,
            place,
            flag,
        }
    }
}

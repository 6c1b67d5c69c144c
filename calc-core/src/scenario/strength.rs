//! The two strengths that are kept apart everywhere.

use serde::Serialize;

/// Which strength a number was computed with; never mixed in one number.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Strength {
    /// Specified minimum, welded values where welded, design wall, lower bound of the face curve.
    /// Verdicts use this.
    Least,
    /// Typical values and nominal wall: what is seen on the bench.
    Likely,
}

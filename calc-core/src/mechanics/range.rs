//! Ratios outside the range where a formula was checked.

use crate::keys::keys;
use serde::Serialize;

keys! {
    /// A ratio that formulas were checked within.
    pub enum CheckedRatio {
        /// Width of a face over its wall.
        WidthToWall = "b/t",
        /// Height of the side walls over the width of the face.
        HeightToWidth = "h/b",
        /// Diameter of the washer over the width of the face.
        WasherToWidth = "d_w/b",
        /// Diameter of the washer over the flat between the corners.
        WasherToFlat = "d_w/flat",
        /// Yield strength over the modulus.
        YieldToModulus = "f_y/E",
        /// Height of a round tube under the washer over its diameter.
        RiseToDiameter = "d_w/D",
    }
}

/// A ratio that lies outside the range where a formula was checked.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct OutOfRange {
    /// The ratio.
    pub ratio: CheckedRatio,
    /// Its value.
    pub value: f64,
    /// Lowest value that was checked.
    pub min: f64,
    /// Highest value that was checked.
    pub max: f64,
}

impl OutOfRange {
    /// The note, where `value` lies outside `min..=max` (one part in 10⁶ is let pass, so that a ratio
    /// typed at a limit stays inside).
    #[must_use]
    pub fn note(ratio: CheckedRatio, value: f64, min: f64, max: f64) -> Option<Self> {
        let inside = value >= min * (1.0 - 1e-6) && value <= max * (1.0 + 1e-6);
        (!inside).then_some(Self {
            ratio,
            value,
            min,
            max,
        })
    }

    /// The nearest value that was checked.
    #[must_use]
    pub fn nearest(&self) -> f64 {
        self.value.clamp(self.min, self.max)
    }
}

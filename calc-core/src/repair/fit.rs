//! How a piece is brought to its length, and how far that can be trusted.
//!
//! A drawn or extruded tube is not as wide as its figure, so a piece cut to the figure fits nowhere by itself:
//! each is fitted to the place that it goes into.

use crate::catalog::Family;
use crate::keys::keys;
use crate::quantity::InUnits;
use crate::scenario::Scenario;
use crate::support::parts::Shape;

keys! {
    /// How a piece is brought to its length.
    pub enum Fit {
        /// As the saw leaves it.
        Sawn = "sawn",
        /// Sawn long, and filed to the measured place.
        Filed = "filed",
        /// Faced in a lathe to the measured place.
        Faced = "faced",
        /// Left proud and dressed flush in its place.
        Flush = "flush",
        /// Milled to the measured space, and filed until it slides in.
        Milled = "milled",
        /// Turned to the measured space.
        Turned = "turned",
    }
}

/// Shortness below which a file by hand is not enough, m: it takes a lathe, which leaves the measuring of the place with
/// a caliper, 0.1 mm. An assumption. Ends faced in one chucking are parallel within 0.05 mm, from memory.
const FACED_BELOW: f64 = 0.2e-3;

/// How far a band saw misses its mark at most, m, either way (trade pages: ±0.3 to ±0.8 mm, unsourced there).
pub(super) const SAW: f64 = 0.8e-3;

impl Fit {
    /// How the piece of a repair gets its length; `None` where its length does not decide.
    pub(super) fn of(s: &Scenario, shape: &Shape) -> Option<Self> {
        let short = s.sleeve_short.si();
        match shape {
            Shape::Block { .. } if s.member.is_round() => Some(Self::Turned),
            Shape::Block { .. } => Some(Self::Milled),
            Shape::Sleeve { .. } if s.support.passes_walls() => Some(Self::Flush),
            // Sawn to the measured place.
            Shape::Sleeve { .. } if short >= 2.0 * SAW => Some(Self::Sawn),
            Shape::Sleeve { .. } if short < FACED_BELOW => Some(Self::Faced),
            Shape::Sleeve { .. } => Some(Self::Filed),
            Shape::Washer { .. } | Shape::Plate { .. } => None,
        }
    }

    /// Pieces to measure and file, and set-ups and faces in a machine, for one piece.
    pub(super) const fn jobs(self) -> [u32; 2] {
        match self {
            Self::Sawn => [0, 0],
            Self::Filed | Self::Flush => [1, 0],
            Self::Faced => [0, 1],
            // Four sides; the long edges are bevelled by hand.
            Self::Milled => [1, 4],
            // Both ends centered or faced, and the outside.
            Self::Turned => [1, 3],
        }
    }
}

/// How far the outside of a tube may be from its figure, m, either way.
///
/// # Sources
/// Extruded aluminium: ANSI H35.2, tube of alloys other than 5083, 5086 and 5454, width or depth at the corners, as
/// printed by a tube dealer: ±0.018 in up to 2 in, 0.025 up to 4, 0.035 up to 5, 0.045 above. Others: ASTM A500,
/// outside with convexity, as printed by the same: ±0.020 in up to 2.5 in, 0.025 up to 3.5, 0.030 up to 5.5, 1 %
/// above; stainless is taken to be no better.
pub(super) fn outside_varies(s: &Scenario) -> f64 {
    let depth = s.tube.depth.si() / 0.0254;
    let step = |rows: &[(f64, f64)], above: f64| {
        rows.iter()
            .find(|(up_to, _)| depth < *up_to)
            .map_or(above, |(_, inches)| *inches)
    };
    let inches = match s.tube.material.family() {
        Family::Aluminium => step(&[(2.0, 0.018), (4.0, 0.025), (5.0, 0.035)], 0.045),
        _ => step(&[(2.5, 0.020), (3.5, 0.025), (5.5, 0.030)], depth * 0.01),
    };
    inches * 0.0254
}

/// How far the space inside may be from its figure, m, either way: the outside, and 10 % of either wall.
///
/// # Sources
/// Walls ±10 %: ASTM A500 and the Aluminum Association's extruded hollow profiles, both second-hand.
pub(super) fn inside_varies(s: &Scenario) -> f64 {
    outside_varies(s) + 0.2 * s.tube.wall.si()
}

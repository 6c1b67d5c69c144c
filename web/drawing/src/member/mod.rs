//! Members other than the rectangular tube, in section through the bolt: channel, angle, round tube.
//!
//! The bolt stands upright, nut at the top, as in the section of the tube. Nothing here gives way under
//! the clamp in a way that could be computed, so no dent is drawn.

mod draw;
mod from_core;
mod measure;
mod profile;

pub use draw::member_section;
pub use measure::measure_scene;
pub use profile::{Profile, Shape};

use crate::scene::CutMetal;
use crate::section::{Bolt, Washer};
use calc_core::quantity::UnitSystem;

/// What the section shows, in mm. Every number is computed or given elsewhere.
#[derive(Clone, Debug, PartialEq)]
pub struct MemberState {
    /// Prefix of the ids, unique on the page.
    pub id: String,
    /// Name in the title strip.
    pub name: String,
    /// Outline of the member.
    pub profile: Profile,
    /// Metal of the member.
    pub material: CutMetal,
    /// The bolt.
    pub bolt: Bolt,
    /// The washers.
    pub washer: Washer,
    /// Whether a tapered washer or saddle lies where the face is not square to the bolt.
    pub shaped_washer: bool,
    /// Thickness and metal of the fitting; it lies under the nut.
    pub fitting: Option<(f64, CutMetal)>,
    /// Whether a second cheek of it lies under the head.
    pub both_sides: bool,
    /// Line of the load beside the face that the fitting lies on, where it lies on one side.
    pub offset_mm: Option<f64>,
    /// Thickness and metal of a plate under the head.
    pub plate: Option<(f64, CutMetal)>,
    /// What stands inside a round tube: outside and inside diameter, metal; whether it reaches through both
    /// walls.
    pub core: Option<(f64, f64, CutMetal, bool)>,
    /// Units of the lettering.
    pub units: UnitSystem,
    /// Whether the joint is an invented example.
    pub example: bool,
}

#[cfg(test)]
mod tests;

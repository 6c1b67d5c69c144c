//! The opening figure: the tube in section through the bolt, with the wrench in plan.
//!
//! The bolt stands upright, nut at the top. The faces are drawn bent as a strip clamped at the corners:
//! flat under the washer at the dent's depth, then a cubic with no slope at either end. Depth is the
//! computed dent times the exaggeration that the title strip prints.

mod draw;
mod from_core;
mod layout;
mod plan;
mod shape;
mod state;

pub use draw::section;
pub use layout::strip_fields;
pub use plan::wrench_hand;
pub use shape::{Sag, exaggeration};
pub use state::{Bolt, Layout, Ply, SectionState, Support, Tube, Washer};

#[cfg(test)]
pub(crate) mod tests;

//! Parts that every figure is built from.

mod dimension;
mod fastener;
mod force;
mod lines;
mod rule;
mod strip;
mod turned;

pub use dimension::{DimensionLine, leader, short_across};
pub use fastener::{
    HeadMarks, bolt_head, hex_plan, nut, thread_end_view, threaded_shank, washer_cut, wrench,
};
pub use force::{ForceScale, force_arrow};
pub use lines::{arrow_tip, break_line, centre_cross, section_arrows};
pub use rule::marked_rule;
pub use strip::{Strip, StripField, scale_bar};
pub use turned::TurnedWrench;

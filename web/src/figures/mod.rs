//! Live figures: drawings and plots that follow what a reader does.
//!
//! What they show is computed by calc-core and laid out by the drawing crate; here it is only put on
//! the page and kept in step.

pub mod frames;
pub mod opening;
pub mod plot;
pub mod screen;

pub use opening::opening;

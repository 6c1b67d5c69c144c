//! Whether a bolted trailer joint can be held by clamp.
//!
//! Typed text → [`scenario`] → [`evaluate()`] → [`report`]. No input or output, no clock, no global
//! state: the same scenario always gives the same report, on a server, in a test or in a browser.

#[macro_use]
extern crate uom;

pub mod catalog;
pub mod chance;
pub mod cite;
pub mod evaluate;
pub mod inspection;
mod keys;
pub mod layout;
pub mod link;
pub mod mechanics;
mod order;
pub mod outlook;
pub mod quantity;
pub mod repair;
pub mod report;
pub mod scenario;
mod support;

pub use evaluate::{evaluate, torque_turn};
pub use report::Report;
pub use scenario::{Input, InputError, Scenario};

//! Back from what was measured to what happened: a dent, an oval hole, a wrench that stopped.
//!
//! All of it is seen on a real joint, so the likely strength counts; a verdict never comes from here.

mod dent;
mod oval;
mod stop;

pub use dent::{DentReading, Tells, dent};
pub use oval::{OvalReading, oval};
pub use stop::{StopReading, torque_stop};

use crate::report::Amount;
use serde::Serialize;

/// How far a width read with a caliper may be off, in metres. An assumption: a steady hand on a clean
/// tube. Twice this is the least dent that is taken to show.
pub const CALIPER_OFF: f64 = 0.05e-3;

/// Band of the face curve about the finite-element runs it was fitted to, as a share of the force.
pub const CURVE_BAND: f64 = 0.10;

/// A value that was worked back, with its band.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Band {
    /// Low end.
    pub low: Amount,
    /// The likely value.
    pub likely: Amount,
    /// High end.
    pub high: Amount,
}

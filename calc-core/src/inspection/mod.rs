//! Back from what was measured to what happened: a dent, an oval hole, a wrench that stopped.
//!
//! All of it is seen on a real joint, so the likely strength counts; a verdict never comes from here.

mod bench;
mod dent;
mod oval;
mod stop;

pub use bench::{BENCH_SHARE, Bench, Expected, Seen, pressed, stop_torque, with_wall};
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

/// How far a new tube may be hollow or bulged, in metres: the greater of half a millimetre and 0.8 % of the width. No
/// dent smaller than that can be told from the tube.
///
/// # Sources
/// EN 10219-2 (concavity and convexity of cold-formed hollow sections), read second hand; ASTM A500 allows
/// 0.64 mm (0.025 in) on 64 to 89 mm, with it; extruded shapes 0.4 to 0.6 % of the width.
#[must_use]
pub fn flatness(width: f64) -> f64 {
    (0.008 * width).max(0.5e-3)
}

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

//! Whether a socket goes over head or nut.

use super::fit::Fit;
use super::places::nearest;
use crate::quantity::Length;
use crate::report::say;
use crate::scenario::Scenario;

/// Outside diameter of a socket over the width across the flats. Sockets for a bar are 1.35 to 1.45, impact sockets
/// up to 1.6 (common practice, no source); an assumption between them.
pub const SOCKET: f64 = 1.5;

/// A socket against the head next to it, corner towards it, and against the upright part of the fitting.
///
/// ```text
/// to the next bolt    r_s + s/√3        to the upright part    r_s = 1.5·s/2
/// ```
///
/// `s` is the wider of the widths across flats of head and nut. `None` where a bolt stands alone and nobody gave
/// the distance to the upright part.
pub(crate) fn wrench(s: &Scenario) -> Option<Fit> {
    let flats = across_flats(s);
    let socket = flats * (0.5 * SOCKET);
    let corner = flats * (1.0 / 3f64.sqrt());
    let other = nearest(s).map(|pitch| Fit::new(socket + corner, pitch, say::SocketHitsNextHead));
    let arm = s
        .fitting
        .flange_arm
        .map(|arm| Fit::new(socket, arm, say::SocketHitsUpright));
    Fit::tightest(other.into_iter().chain(arm))
}

/// The wider of head and nut.
pub(crate) fn across_flats(s: &Scenario) -> Length {
    let hex = s.bolting.thread.hex();
    hex.width_across_flats().max(hex.nut_width_across_flats())
}

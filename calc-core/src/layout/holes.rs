//! Whether the holes lie in the flat of the face, off corners and side walls.

use super::Face;
use super::fit::Fit;
use crate::report::say;
use crate::scenario::Scenario;
use crate::support;

/// Holes of a rectangular tube: bolt holes, or those of what goes through its walls.
///
/// A hole that cuts the corner or the side wall leaves the face without what holds it up, and everything that is
/// computed of faces, net sections and bearing is of holes in the flat.
pub(crate) fn holes(s: &Scenario) -> Option<Fit> {
    let support = support::of(s);
    if s.member.is_open() || s.member.is_round() || !support.is_hollow() {
        return None;
    }
    let radius = support.hole_in_wall(s) * 0.5;
    Some(Fit::new(
        radius,
        Face::new(s).to_wall(s),
        say::HoleCutsCorner,
    ))
}

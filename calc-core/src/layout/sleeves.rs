//! Whether sleeves find room beside each other and on the flat.

use super::Face;
use super::fit::Fit;
use super::places::nearest;
use crate::report::say;
use crate::scenario::Scenario;

/// Sleeves against each other, against the rounded corner inside the tube and against its end. The bolt runs along
/// the depth, so the sleeve stands between the two side walls that bound the width.
pub(crate) fn sleeves(s: &Scenario) -> Option<Fit> {
    if !s.support.has_sleeve() {
        return None;
    }
    let outer = s.sleeve.outer;
    let radius = outer * 0.5;
    let other = nearest(s).map(|pitch| Fit::new(outer, pitch, say::SleevesOverlap));
    // Between round walls nothing is flat.
    let flat = (!s.member.is_round())
        .then(|| Fit::new(radius, Face::new(s).to_wall(s), say::SleeveInCorner));
    let end = Fit::new(radius, s.tube.end_distance, say::SleevePastEnd);
    Fit::tightest(other.into_iter().chain(flat).chain([end]))
}

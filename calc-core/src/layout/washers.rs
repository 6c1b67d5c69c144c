//! Whether washers lie flat on metal and clear of each other.

use super::Face;
use super::fit::Fit;
use super::places::nearest;
use crate::quantity::{InUnits, Length};
use crate::report::say;
use crate::scenario::Scenario;
use crate::support;

/// Washers against each other, the corners and edges of the face, the end of the member and the upright part of the
/// fitting. Room beside the upright part of the member itself is asked by the check of the seat.
pub(crate) fn washers(s: &Scenario) -> Option<Fit> {
    let outer = s.bolting.washer.outer;
    let radius = outer * 0.5;
    let other = nearest(s).map(|pitch| Fit::new(outer, pitch, say::WashersOverlap));
    let arm = s
        .fitting
        .flange_arm
        .map(|arm| Fit::new(radius, arm, say::WasherAtFittingUpright));
    // Under a plate the washer lies on the plate, which is asked for itself.
    let plate = s.support.has_plates() && !s.member.is_open();
    let on_member = (!plate).then(|| {
        [
            side(s, radius),
            Fit::new(radius, s.tube.end_distance, say::WasherPastEnd),
        ]
    });
    Fit::tightest(
        other
            .into_iter()
            .chain(arm)
            .chain(on_member.into_iter().flatten()),
    )
}

/// A washer against the side of the face that it lies on.
fn side(s: &Scenario, radius: Length) -> Fit {
    let face = Face::new(s);
    if s.member.is_open() {
        // The upright part is the seat's question; here the free edge counts.
        let edge = s.free_edge().unwrap_or(s.tube.width);
        return Fit::new(radius, edge, say::WasherPastEdge);
    }
    if lies_on_face(s) {
        Fit::new(radius, face.to_flat_end(s), say::WasherInCorner)
    } else {
        Fit::new(radius, face.to_edge(s), say::WasherPastEdge)
    }
}

/// Whether at least one of the two washers lies on the face of a hollow tube itself and needs it flat: no cheek
/// between, no sleeve's end under it.
fn lies_on_face(s: &Scenario) -> bool {
    let cheeks = s.bolting.two_cheeks && s.fitting.thickness.si() > 0.0;
    let support = support::of(s);
    support.is_hollow() && !support.passes_wall() && !s.member.is_round() && !cheeks
}

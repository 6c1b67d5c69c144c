//! What head and nut sit on, and whether the clamp that is reached can be known at all.

use crate::mechanics::seat::{STEEPEST, round_slope};
use crate::quantity::InUnits;
use crate::report::{Sentence, say};
use crate::scenario::{Field, JointKind, MemberKind, Mount, Scenario};
use crate::support::of;

/// Slope of the surface under head or nut against the plane square to the bolt; `None` where it is flat
/// by its making.
pub(crate) fn slope(s: &Scenario) -> Option<f64> {
    match s.member.kind {
        MemberKind::Channel if s.bolting.mount == Mount::FromTop => Some(s.member.slope),
        // The end of what goes through the wall is flat.
        MemberKind::RoundTube if !of(s).passes_wall() => {
            Some(round_slope(s.bolting.washer.outer, s.tube.width))
        }
        _ => None,
    }
}

/// Whether head or nut bears on an edge: too steep, and no washer made to fit.
pub(crate) fn on_edge(s: &Scenario) -> bool {
    !s.member.shaped_washer && slope(s).is_some_and(|slope| slope > STEEPEST * (1.0 + 1e-6))
}

/// Whether head and nut sit on flat cheeks, and these on the round wall along a line.
pub(crate) fn on_line(s: &Scenario) -> bool {
    let cheeks = s.bolting.two_cheeks && s.fitting.thickness.si() > 0.0;
    s.member.is_round() && cheeks && on_edge(s)
}

/// Whether the wall of a round tube has to carry the clamp. Nothing published says how much it takes
/// from two washers: the forms for round tubes are for plates and braces that are welded on.
pub(crate) fn round_wall_carries(s: &Scenario) -> bool {
    s.member.is_round() && of(s).leans_on_round_wall(s)
}

/// Why the clamp that is reached cannot be known, by key; `None` where it can.
pub(crate) fn clamp_unknown(s: &Scenario) -> Option<Sentence<0>> {
    if round_wall_carries(s) {
        Some(say::ClampRoundWall)
    } else if on_line(s) {
        Some(say::ClampOnALine)
    } else if on_edge(s) {
        Some(say::ClampOnAnEdge)
    } else {
        None
    }
}

/// Keys of what is to be said about an open section, or about a fitting on one side.
pub(crate) fn notes(s: &Scenario) -> Vec<Sentence<0>> {
    let mut notes = Vec::new();
    if s.bolting.one_sided() {
        notes.push(say::NoteOneSidedFitting);
    }
    if !s.member.is_open() {
        return notes;
    }
    if s.loads.joint != JointKind::SpringHanger {
        notes.push(say::NoteOpenSectionTwist);
    }
    if s.bolting.mount == Mount::FromTop && s.loads.offset.is_none() {
        notes.push(say::NoteLoadInLine);
    }
    if s.member.kind == MemberKind::Channel && !s.is_given(Field::FlangeSlope) {
        notes.push(say::NoteFlangeSlopeAssumed);
    }
    if s.member.gauge.is_some() && !s.is_given(Field::BoltGauge) {
        notes.push(say::NoteGaugeAssumed);
    }
    notes
}

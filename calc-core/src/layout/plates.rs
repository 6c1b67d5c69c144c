//! Whether spreader plates lie on the member, and washers on the plates.

use super::fit::Fit;
use super::places::rows_span;
use crate::quantity::{InUnits, Length};
use crate::report::say;
use crate::scenario::Scenario;

/// A plate lies with its middle under its bolt; plates that would overlap are one (so the cut list makes them). It may
/// reach past the sides of a tube by its own thickness each, so that one of the next stock width is taken; an assumption.
pub(crate) fn plates(s: &Scenario) -> Option<Fit> {
    let (p, b) = (&s.spreader, &s.bolting);
    // Left away, it is no plate.
    if !s.support.has_plates() || p.thickness.si() <= 0.0 {
        return None;
    }
    let washers = rows_span(b) + b.washer.outer;
    Fit::tightest([
        Fit::new(p.length * 0.5, s.tube.end_distance, say::PlatePastEnd),
        Fit::new(p.width, room(s), say::PlateTooWide),
        Fit::new(washers, p.width, say::WasherOffPlate),
        Fit::new(b.washer.outer, p.length, say::WasherOffPlate),
    ])
}

/// A plate that has room on the flange or leg, but lies within the largest fillet that there may be at its root: the
/// fillet is no input, so whether it lies flat is not known.
pub(crate) fn plate_on_fillet(s: &Scenario) -> Option<Fit> {
    let there = s.member.room_off_fillet(s.tube.width, s.tube.wall);
    let fit = Fit::new(s.spreader.width, there, say::PlateOnFillet);
    (s.member.is_open() && s.support.has_plates() && !fit.fits()).then_some(fit)
}

/// Width that there is for a plate.
fn room(s: &Scenario) -> Length {
    let room = s.member.room(s.tube.width);
    if s.member.is_open() {
        room
    } else {
        room + s.spreader.thickness * 2.0
    }
}

//! Which part of the face a washer, a hole or the end of a sleeve may lie on.

use super::places::across;
use crate::quantity::{Length, mm};
use crate::scenario::{MemberKind, Scenario};

/// A face of the member from edge to edge, with the part of it that is flat; all from the same edge as
/// [`Place::across`](super::Place::across).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Face {
    /// Where the flat of the outside begins and ends.
    pub flat: [Length; 2],
    /// Where the flat that lies over the hollow begins and ends: off the corners and off the side walls.
    pub clear: [Length; 2],
    /// Where the metal begins and ends.
    pub metal: [Length; 2],
}

impl Face {
    /// The face of a joint. The outside and the inside of a hollow tube are flat over the same width: the corners
    /// are round about one center.
    #[must_use]
    pub fn new(s: &Scenario) -> Self {
        let width = s.tube.width;
        let upright = s.member.outstanding;
        let metal = [mm(0.0), width];
        let inset = |by: Length| [by, width - by];
        let flat = match (s.member.kind, s.member.gauge) {
            (MemberKind::Channel | MemberKind::Angle, Some(_)) => [upright, width],
            (MemberKind::Channel | MemberKind::Angle, None) => inset(upright),
            // A solid has no corner radius that anybody gave.
            _ if s.support.is_solid() || s.member.is_round() => metal,
            _ => inset(s.tube.corner_radius),
        };
        let hollow = s.member.kind == MemberKind::RectangularTube && !s.support.is_solid();
        let clear = if hollow {
            inset(s.tube.corner_radius.max(s.tube.wall))
        } else {
            flat
        };
        Self { flat, clear, metal }
    }

    /// From the row nearest to it to where the flat over the hollow ends.
    pub(crate) fn to_wall(self, s: &Scenario) -> Length {
        nearest(s, self.clear)
    }

    /// From the row nearest to it to where the flat ends.
    pub(crate) fn to_flat_end(self, s: &Scenario) -> Length {
        nearest(s, self.flat)
    }

    /// From the row nearest to it to the edge of the face.
    pub(crate) fn to_edge(self, s: &Scenario) -> Length {
        nearest(s, self.metal)
    }
}

/// From the row nearest to either of two lines to that line.
fn nearest(s: &Scenario, [from, to]: [Length; 2]) -> Length {
    let first = across(s, 0);
    let last = across(s, s.bolting.rows.saturating_sub(1));
    (first - from).min(to - last)
}

/// Radius of the fillet between the part of a rolled channel or angle that the bolts go through and the upright part
/// beside it: as thick as the thicker of the two; zero for other members.
///
/// Nobody gives it. Lists of rolled angles have fillets of 0.8 to 1.25 times the leg's thickness (from memory); an
/// extruded or folded section has less.
pub(crate) fn root_fillet(s: &Scenario) -> Length {
    if s.member.is_open() {
        s.tube.wall.max(s.member.outstanding)
    } else {
        mm(0.0)
    }
}

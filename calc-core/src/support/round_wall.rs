//! The wall of a round tube by itself: a strip as long as the washer, as a ring up to first yield.

use super::build::Builder;
use super::model::{Limit, SupportModel};
use crate::mechanics::ring::Ring;
use crate::mechanics::sleeve::SleeveCurve;
use crate::quantity::{InUnits, mm};
use crate::report::{Part, say};

/// A stand-in that keeps the numbers finite, far on the soft and weak side; no verdict rests on it, see
/// [`clamp_unknown`](super::seat::clamp_unknown).
pub(super) fn model(b: &Builder<'_>) -> SupportModel {
    let s = b.s;
    let ring = Ring {
        diameter: s.tube.width,
        wall: s.tube.wall_at(b.strength),
        length: s.bolting.washer.outer,
    };
    let load = ring.first_yield(s.tube.yield_strength(b.strength));
    let core = SleeveCurve::new(ring.stiffness(s.tube.modulus), load, mm(0.0));
    let limit = Limit {
        part: Part::Face,
        load: load.si(),
        omega: None,
        code: say::LimitRoundWall,
    };
    b.only(core, vec![limit])
}

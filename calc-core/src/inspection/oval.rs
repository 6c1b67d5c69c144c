//! What an oval hole says.

use super::CALIPER_OFF;
use crate::quantity::Dimension::Length as Len;
use crate::quantity::{InUnits, Length};
use crate::report::{Amount, Said, Verdict, say};
use crate::scenario::Scenario;
use serde::Serialize;

/// What a measured hole says.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct OvalReading {
    /// How far the bolt has worn or pressed the hole long: long minus short diameter.
    pub slipped_by: Amount,
    /// Whether that is more than a caliper is off: the joint has slipped.
    #[serde(skip)]
    pub slipped: bool,
    /// How far the bolt can travel in the hole now: long diameter minus bolt.
    pub play: Amount,
    /// How far the short diameter has grown beyond the hole of the scenario; zero if it has not.
    pub worn_round: Amount,
    /// From the end of the oval to the end of the tube, counted as before from a hole's middle.
    pub edge_left: Amount,
    /// Whether that is enough.
    pub edge: Verdict,
    /// What to say, most important first.
    pub said: Vec<Said>,
}

/// Reads an oval hole.
///
/// ```text
/// slipped = a − b,  play = a − d,  e_left = e − (a − b),  wanted: e_left ≥ 1.5·d
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `long`, `short` | `a`, `b`: largest and smallest diameter of the hole | m |
/// | `d` | bolt | m |
/// | `e` | from the middle of the hole, as drilled, to the tube end | m |
///
/// The hole is taken to have grown towards the end of the tube, which is the unfavourable side. The
/// larger of the two given diameters is taken as the long one.
///
/// # Sources
/// Geometry; 1.5 d from AISC 360-22 Table J3.4 (about).
#[must_use]
pub fn oval(s: &Scenario, long: Length, short: Length) -> OvalReading {
    let (a, b) = (long.si().max(short.si()), long.si().min(short.si()));
    let d = s.bolting.thread.major().si();
    let slipped = a - b;
    let play = a - d;
    let worn = (b - s.bolting.hole.si()).max(0.0);
    let length = |si| Amount::new(si, Len);
    let mut said = Vec::new();
    if b < d - CALIPER_OFF {
        said.push(Said::of(say::OvalSmallerThanBolt, [length(b), length(d)]));
    }
    if slipped < 2.0 * CALIPER_OFF {
        said.push(Said::of(say::OvalRound, [length(2.0 * CALIPER_OFF)]));
    } else {
        said.push(Said::of(
            say::OvalSlipped,
            [length(slipped), length(play.max(0.0))],
        ));
    }
    if worn >= 2.0 * CALIPER_OFF {
        said.push(Said::of(say::OvalWornRound, [length(worn)]));
    }
    let needed = 1.5 * d;
    // Nobody says which way the hole is long: the nearer of end and free edge.
    let to_end = s.tube.end_distance;
    let nearest = s.free_edge().map_or(to_end, |edge| edge.min(to_end));
    let left = nearest.si() - slipped;
    let edge = if left < needed {
        said.push(Said::of(
            say::OvalEdgeTooNear,
            [length(left.max(0.0)), length(needed)],
        ));
        Verdict::DoesNotHold
    } else {
        said.push(Said::of(say::OvalEdgeLeft, [length(left), length(needed)]));
        Verdict::Holds
    };
    OvalReading {
        slipped_by: length(slipped),
        slipped: slipped >= 2.0 * CALIPER_OFF,
        play: length(play.max(0.0)),
        worn_round: length(worn),
        edge_left: length(left.max(0.0)),
        edge,
        said,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{inch, mm};
    use crate::report::Message;
    use crate::scenario::Input;

    fn joint(end_mm: f64) -> Scenario {
        Scenario::new(&Input {
            end_distance_mm: end_mm,
            ..Input::default()
        })
        .unwrap()
    }

    #[test]
    fn an_oval_hole_has_slipped_by_what_it_is_longer() {
        let s = joint(25.0);
        let r = oval(&s, mm(17.3), inch(0.5625));
        assert!((r.slipped_by.si - 3.0125e-3).abs() < 1e-9);
        assert!((r.play.si - 4.6e-3).abs() < 1e-9);
        assert!((r.edge_left.si - 21.9875e-3).abs() < 1e-9);
        assert_eq!(r.edge, Verdict::Holds);
        assert_eq!(r, oval(&s, inch(0.5625), mm(17.3)));
        assert_eq!(r.said[0].code, Message::OvalSlipped);
    }

    #[test]
    fn the_edge_that_is_left_decides() {
        let codes = |s: &Scenario, a, b| {
            oval(s, mm(a), mm(b))
                .said
                .iter()
                .map(|s| s.code)
                .collect::<Vec<_>>()
        };
        assert_eq!(
            codes(&joint(20.0), 16.0, 14.3),
            [Message::OvalSlipped, Message::OvalEdgeTooNear]
        );
        assert_eq!(
            codes(&joint(60.0), 14.32, 14.28),
            [Message::OvalRound, Message::OvalEdgeLeft]
        );
        assert_eq!(
            codes(&joint(40.0), 15.5, 14.8),
            [
                Message::OvalSlipped,
                Message::OvalWornRound,
                Message::OvalEdgeLeft
            ]
        );
        assert_eq!(
            codes(&joint(60.0), 12.0, 11.0)[0],
            Message::OvalSmallerThanBolt
        );
    }
}

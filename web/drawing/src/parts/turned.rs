//! The wrench on a nut from above, and how far it has been turned.

use super::{arrow_tip, centre_cross, thread_end_view, wrench};
use crate::pen::polyline;
use crate::scene::{Draw, Mark, Placed};

/// Turn below which no arrow is drawn: it would be nothing but its tip.
const SHOWN_FROM: f64 = 8.0;
/// Turn up to which the arrow goes; three turns are one spiral that can still be read.
const SHOWN_TO: f64 = 1080.0;

/// A wrench about the origin, in drawing units and degrees.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TurnedWrench {
    /// Across flats of the nut.
    pub flats: f64,
    /// Outside diameter of the thread.
    pub d: f64,
    /// How far the handle reaches.
    pub reach: f64,
    /// Where it starts, clockwise from upright.
    pub from: f64,
    /// How far it has been turned since.
    pub turn: f64,
}

impl TurnedWrench {
    fn at(&self, turn: f64, r: f64) -> (f64, f64) {
        let (sin, cos) = (turn + self.from).to_radians().sin_cos();
        (r * sin, -r * cos)
    }

    /// Where a hand holds it, and how far that point goes for a degree of turn.
    #[must_use]
    pub fn hand(&self) -> ((f64, f64), (f64, f64)) {
        let (x, y) = self.at(self.turn, self.reach - 6.0);
        let degree = 1_f64.to_radians();
        ((x, y), (-y * degree, x * degree))
    }

    /// Nut, wrench, where it started, and the way that the handle's end has gone; a second turn lies
    /// outside the first.
    #[must_use]
    pub fn marks(&self) -> Vec<Mark> {
        let mut marks = vec![Mark::line(
            self.at(0.0, self.flats),
            self.at(0.0, self.reach + 8.0),
            "phantom",
        )];
        let placed = Placed {
            x: 0.0,
            y: 0.0,
            degrees: self.turn + self.from,
        };
        marks.group(placed, "", wrench(self.flats, self.reach));
        marks.all(thread_end_view(self.d));
        marks.all(centre_cross((0.0, 0.0), self.d / 2.0 + 5.0));
        if self.turn >= SHOWN_FROM {
            let shown = self.turn.min(SHOWN_TO);
            let end = |turn: f64| self.at(turn, self.reach + 5.0 + 5.0 * (turn / 360.0).min(3.0));
            let steps = (0..=120_u8).map(|i| end((shown - 5.0) * f64::from(i) / 120.0));
            marks.path(polyline(steps), "turned");
            let (sin, cos) = (shown + self.from).to_radians().sin_cos();
            marks.push(arrow_tip(end(shown), (cos, sin), 10.0, "tip"));
        }
        marks
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_hand_goes_where_the_handle_does() {
        let wrench = |turn| TurnedWrench {
            flats: 27.0,
            d: 18.0,
            reach: 66.0,
            from: -30.0,
            turn,
        };
        let ((x, y), (dx, dy)) = wrench(30.0).hand();
        // Upright: the hand is straight above, and a degree more takes it to the right.
        assert!(x.abs() < 1e-9 && (y + 60.0).abs() < 1e-9);
        assert!((dx - 60.0_f64 * 1_f64.to_radians()).abs() < 1e-9 && dy.abs() < 1e-9);
        let ((then, _), _) = wrench(31.0).hand();
        assert!((then - x - dx).abs() < 1e-3);
        assert!(wrench(2.0).marks().len() < wrench(90.0).marks().len());
    }
}

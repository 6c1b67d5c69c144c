//! From degrees and newton metres to places on the sheet.

use super::TorqueTurnPlot;
use super::range::PlotRange;
use crate::scene::Anchor;
use crate::units::{Lettering, step_up};

/// Room around the field, in CSS px.
const LEFT: f64 = 46.0;
const TOP: f64 = 30.0;
const RIGHT: f64 = 14.0;
const BOTTOM: f64 = 44.0;

/// The words at the knee.
pub(super) struct KneeWords {
    /// The line that leads to them.
    pub line: ((f64, f64), (f64, f64)),
    /// Where they hang.
    pub at: (f64, f64),
    /// And how.
    pub anchor: Anchor,
}

/// The mapping of one plot in one size.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Frame {
    /// Width in CSS px.
    pub width: f64,
    /// Height in CSS px.
    pub height: f64,
    /// Turn in degrees, left to right.
    pub turn: PlotRange,
    /// Torque in N·m, bottom to top.
    pub torque: PlotRange,
}

impl Frame {
    /// A frame for a plot; sizes below what axes need are raised to that.
    #[must_use]
    pub fn new(plot: &TorqueTurnPlot, width: f64, height: f64) -> Self {
        let (turn, torque) = plot.ranges();
        let sane = |v: f64, least: f64| {
            if v.is_finite() {
                v.clamp(least, 8192.0)
            } else {
                least
            }
        };
        Self {
            width: sane(width, 160.0),
            height: sane(height, 140.0),
            turn,
            torque,
        }
    }

    /// Left, top, right and bottom of the field.
    #[must_use]
    pub fn field(&self) -> (f64, f64, f64, f64) {
        (LEFT, TOP, self.width - RIGHT, self.height - BOTTOM)
    }

    /// Where a point lies.
    #[must_use]
    pub fn place(&self, (degrees, nm): (f64, f64)) -> (f64, f64) {
        let (left, top, right, bottom) = self.field();
        (
            left + (right - left) * self.turn.share(degrees),
            bottom - (bottom - top) * self.torque.share(nm),
        )
    }

    /// The line that leads from the knee to its words, and where they hang: below it where there is
    /// room, else above.
    pub(super) fn knee_words(&self, knee: (f64, f64)) -> KneeWords {
        let (_, _, _, bottom) = self.field();
        let (x, y) = self.place(knee);
        if y + 52.0 < bottom {
            KneeWords {
                line: ((x + 4.0, y + 5.0), (x + 18.0, y + 30.0)),
                at: (x + 14.0, y + 44.0),
                anchor: Anchor::Start,
            }
        } else {
            KneeWords {
                line: ((x - 2.0, y - 5.0), (x - 10.0, y - 27.0)),
                at: (x - 10.0, y - 32.0),
                anchor: Anchor::Middle,
            }
        }
    }

    /// A curve in the field: points that are numbers, cut off at the field's edges.
    #[must_use]
    pub fn trace(&self, points: &[(f64, f64)]) -> Vec<(f64, f64)> {
        let mut out: Vec<(f64, f64)> = Vec::with_capacity(points.len());
        let (turn, torque) = (self.turn.to(), self.torque.to());
        let mut before: Option<(f64, f64)> = None;
        for &(x, y) in points.iter().filter(|p| p.0.is_finite() && p.1.is_finite()) {
            let inside = x <= turn && y <= torque;
            if inside {
                out.push(self.place((x, y)));
            } else {
                if let Some((px, py)) = before {
                    // How much of the last piece still lies inside.
                    let part = |from: f64, to: f64, most: f64| {
                        if to > most {
                            (most - from) / (to - from)
                        } else {
                            1.0
                        }
                    };
                    let share = part(px, x, turn).min(part(py, y, torque)).clamp(0.0, 1.0);
                    out.push(self.place((px + share * (x - px), py + share * (y - py))));
                }
                break;
            }
            before = Some((x, y));
        }
        out
    }

    /// Ticks of the turn axis, in degrees.
    #[must_use]
    pub fn turn_ticks(&self) -> Vec<f64> {
        let span = self.turn.to() - self.turn.from();
        let room = (self.width / 70.0).clamp(2.0, 8.0);
        // Parts of a turn that a hand knows.
        let step = [5.0, 10.0, 15.0, 30.0, 45.0, 90.0, 180.0, 360.0, 720.0]
            .into_iter()
            .find(|s| span / s <= room)
            .unwrap_or_else(|| step_up(span / room));
        self.turn.ticks(if span < 5.0 {
            step_up(span / room)
        } else {
            step
        })
    }

    /// Ticks of the torque axis: place in N·m, number as lettered.
    #[must_use]
    pub fn torque_ticks(&self, plot: &TorqueTurnPlot) -> Vec<(f64, f64)> {
        let unit = plot.units.torque_axis().0;
        let step = step_up((self.torque.to() - self.torque.from()) / unit / 5.0);
        self.torque
            .ticks(step * unit)
            .into_iter()
            .map(|nm| (nm, nm / unit))
            .collect()
    }
}

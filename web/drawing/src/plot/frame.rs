//! From degrees and newton metres to places on the sheet.

use super::range::PlotRange;
use super::{CurveKind, TorqueTurnPlot};
use crate::scene::{Anchor, LETTER_SMALL, LETTER_WIDTH, text_width};
use crate::units::{Lettering, step_up};

/// Room around the field, in CSS px.
const LEFT: f64 = 46.0;
const TOP: f64 = 30.0;
const RIGHT: f64 = 14.0;
const BOTTOM: f64 = 44.0;

/// What a label is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LabelKind {
    /// Axis name.
    Axis,
    /// Number at a tick.
    Tick,
    /// Name of a curve, of the knee, of the wanted torque.
    Name,
    /// "You are here": moves.
    Here,
}

/// A text with its place in CSS px from the plot's upper left corner.
#[derive(Clone, Debug, PartialEq)]
pub struct Label {
    /// Base line point.
    pub at: (f64, f64),
    /// The words.
    pub text: String,
    /// How it hangs.
    pub anchor: Anchor,
    /// What it is.
    pub kind: LabelKind,
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

    /// All lettering, for texts over the canvases and for the static picture.
    #[must_use]
    pub fn labels(&self, plot: &TorqueTurnPlot) -> Vec<Label> {
        let (left, top, right, bottom) = self.field();
        let mut labels = Vec::new();
        let mut add = |at, text: String, anchor, kind| {
            labels.push(Label {
                at,
                text,
                anchor,
                kind,
            })
        };
        add(
            (left, top - 12.0),
            format!("torque / {}", plot.units.torque_axis().1),
            Anchor::Start,
            LabelKind::Axis,
        );
        add(
            (right, bottom + 37.0),
            String::from("turn of the nut / °"),
            Anchor::End,
            LabelKind::Axis,
        );
        for tick in self.turn_ticks() {
            let (x, _) = self.place((tick, 0.0));
            add(
                (x, bottom + 18.0),
                number(tick),
                Anchor::Middle,
                LabelKind::Tick,
            );
        }
        for (nm, shown) in self.torque_ticks(plot) {
            let (_, y) = self.place((0.0, nm));
            add(
                (left - 7.0, y + 4.3),
                number(shown),
                Anchor::End,
                LabelKind::Tick,
            );
        }
        if let Some(wanted) = plot.wanted_place() {
            let (_, y) = self.place((0.0, wanted));
            add(
                (right - 2.0, y - 6.0),
                format!("wanted: {}", plot.units.torque(wanted)),
                Anchor::End,
                LabelKind::Name,
            );
        }
        for curve in plot
            .curves
            .iter()
            .filter(|c| c.kind == CurveKind::Comparison)
        {
            // Beside the curve, on its right, at a quarter of the field's height from above or at its end.
            let trace = self.trace(&curve.points);
            let level = top + 0.24 * (bottom - top);
            let crossing = trace.windows(2).find_map(|pair| match pair {
                [a, b] if a.1 >= level && b.1 < level => {
                    Some((a.0 + (b.0 - a.0) * (a.1 - level) / (a.1 - b.1), level))
                }
                _ => None,
            });
            let Some((x, y)) = crossing.or(trace.last().copied()) else {
                continue;
            };
            let wide = text_width(&curve.label, "t s");
            let (x, anchor) = if x + 8.0 + wide <= right {
                (x + 8.0, Anchor::Start)
            } else {
                (right, Anchor::End)
            };
            add(
                (x, y.max(top + LETTER_SMALL)),
                curve.label.clone(),
                anchor,
                LabelKind::Name,
            );
        }
        if let Some(knee) = plot.knee_place().filter(|_| !plot.knee_label.is_empty()) {
            let (x, y) = self.place(knee);
            let wide = text_width(&plot.knee_label, "t s");
            let x = (x + 14.0).min(right - wide).max(left + 4.0);
            add(
                (x, (y + 44.0).min(bottom - 6.0)),
                plot.knee_label.clone(),
                Anchor::Start,
                LabelKind::Name,
            );
        }
        if let Some(here) = plot.here_place() {
            let (x, y) = self.place(here);
            let text = format!("here: {}", plot.units.torque(here.1));
            #[allow(clippy::cast_precision_loss, reason = "texts are short")]
            let half = text.chars().count() as f64 * LETTER_WIDTH * crate::scene::LETTER / 2.0;
            let x = x.clamp(left + half + 4.0, (right - half).max(left + half + 4.0));
            // Over the marker, or under it where that would run into another text or the axis name.
            let hits = |y: f64| {
                labels.iter().any(|other| {
                    let wide = text_width(&other.text, "t s");
                    let from = match other.anchor {
                        Anchor::Start => other.at.0,
                        Anchor::Middle => other.at.0 - wide / 2.0,
                        Anchor::End => other.at.0 - wide,
                    };
                    (other.at.1 - y).abs() < 15.0 && from < x + half && from + wide > x - half
                })
            };
            let places = [y - 14.0, y + 26.0, y - 32.0, y + 42.0];
            let fits = |y: &f64| *y > top + 10.0 && *y < bottom - 4.0;
            let y = places
                .iter()
                .copied()
                .filter(fits)
                .find(|y| !hits(*y))
                .or_else(|| places.iter().copied().find(fits))
                .unwrap_or(top + 14.0);
            labels.push(Label {
                at: (x, y),
                text,
                anchor: Anchor::Middle,
                kind: LabelKind::Here,
            });
        }
        labels
    }
}

/// A tick's number without trailing zeros.
fn number(value: f64) -> String {
    format!("{}", (value * 1e3).round() / 1e3 + 0.0)
}

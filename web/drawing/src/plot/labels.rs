//! The plot's lettering and where it stands.

use super::frame::Frame;
use super::{CurveKind, TorqueTurnPlot};
use crate::scene::{Anchor, text_bounds, text_width};
use crate::units::Lettering;

/// What a label is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LabelKind {
    /// Axis name.
    Axis,
    /// Number at a tick.
    Tick,
    /// Name of a curve, of the knee, of the wanted torque.
    Name,
    /// What comes and goes with the wrench, other than where it is.
    Moving,
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

impl Label {
    /// Left, top, right and bottom of the lettering at most.
    fn bounds(&self) -> (f64, f64, f64, f64) {
        let class = if self.kind == LabelKind::Here {
            "t"
        } else {
            "t s"
        };
        text_bounds(self.at, &self.text, class, self.anchor)
    }

    pub(super) fn hits(&self, other: &Self) -> bool {
        let (a, b) = (self.bounds(), other.bounds());
        a.0 < b.2 && b.0 < a.2 && a.1 < b.3 && b.1 < a.3
    }
}

/// Labels that were set so far, and the field in which the next ones look for room.
struct Setting {
    labels: Vec<Label>,
    field: (f64, f64, f64, f64),
}

impl Setting {
    fn fixed(&mut self, at: (f64, f64), text: String, anchor: Anchor) {
        let kind = LabelKind::Tick;
        self.labels.push(Label {
            at,
            text,
            anchor,
            kind,
        });
    }

    /// Sets a label at the first of its places that lies in the field and hits no other; at the first in
    /// the field where all are taken.
    fn free(&mut self, text: &str, kind: LabelKind, places: &[((f64, f64), Anchor)]) {
        let (left, top, right, bottom) = self.field;
        let tries: Vec<Label> = places
            .iter()
            .map(|(at, anchor)| {
                let mut label = Label {
                    at: *at,
                    text: text.to_owned(),
                    anchor: *anchor,
                    kind,
                };
                // Pushed back into the field sideways; up and down is for the places to vary.
                let (from, _, to, _) = label.bounds();
                label.at.0 +=
                    (left + 3.0 - from).max(0.0).min((right - to).max(0.0)) - (to - right).max(0.0);
                label
            })
            .filter(|label| label.at.1 > top + 10.0 && label.at.1 < bottom - 4.0)
            .collect();
        let chosen = tries
            .iter()
            .find(|label| !self.labels.iter().any(|other| label.hits(other)))
            .or(tries.first());
        self.labels.extend(chosen.cloned());
    }
}

impl Frame {
    /// All lettering, for texts over the canvases and for the static picture.
    #[must_use]
    pub fn labels(&self, plot: &TorqueTurnPlot) -> Vec<Label> {
        use Anchor::{End, Middle, Start};
        let (left, top, right, bottom) = self.field();
        let mut set = Setting {
            labels: Vec::new(),
            field: self.field(),
        };
        for (at, text, anchor) in [
            (
                (left, top - 12.0),
                format!("torque / {}", plot.units.torque_axis().1),
                Start,
            ),
            (
                (right, bottom + 37.0),
                String::from("turn of the nut / °"),
                End,
            ),
        ] {
            set.labels.push(Label {
                at,
                text,
                anchor,
                kind: LabelKind::Axis,
            });
        }
        for tick in self.turn_ticks() {
            set.fixed(
                (self.place((tick, 0.0)).0, bottom + 18.0),
                number(tick),
                Middle,
            );
        }
        for (nm, shown) in self.torque_ticks(plot) {
            set.fixed(
                (left - 7.0, self.place((0.0, nm)).1 + 4.3),
                number(shown),
                End,
            );
        }
        if let Some(knee) = plot.knee_place()
            && !plot.knee_label.is_empty()
        {
            let words = self.knee_words(knee);
            let (x, y) = words.at;
            let places = [y, y - 18.0, y + 18.0].map(|y| ((x, y), words.anchor));
            set.free(&plot.knee_label, LabelKind::Name, &places);
        }
        if let Some(wanted) = plot.wanted_place() {
            let (_, y) = self.place((0.0, wanted));
            let text = format!("wanted: {}", plot.units.torque(wanted));
            let places = [
                ((right - 2.0, y - 6.0), End),
                ((right - 2.0, y + 15.0), End),
                ((left + 5.0, y - 6.0), Start),
                ((left + 5.0, y + 15.0), Start),
            ];
            set.free(&text, LabelKind::Name, &places);
        }
        for curve in plot
            .curves
            .iter()
            .filter(|c| c.kind == CurveKind::Comparison)
        {
            let places = self.beside(&curve.points);
            set.free(&curve.label, LabelKind::Name, &places);
        }
        if let Some((x, y)) = plot.click_place().map(|p| self.place(p)) {
            let places = [
                ((x - 12.0, y - 8.0), End),
                ((x + 12.0, y + 16.0), Start),
                ((x - 12.0, y + 16.0), End),
            ];
            set.free("click", LabelKind::Moving, &places);
        }
        if let Some(here) = plot.here_place() {
            let (x, y) = self.place(here);
            let text = format!("here: {}", plot.units.torque(here.1));
            let half = text_width(&text, "t") / 2.0;
            // First where a rising curve never passes: to the right and below.
            let places = [
                ((x + 12.0, y + 20.0), Start),
                ((x, y - 14.0), Middle),
                ((x, y + 26.0), Middle),
                ((x - 12.0, y - 6.0), End),
                ((x, y - 34.0), Middle),
                ((x + half, y + 44.0), Middle),
                ((x, top + 14.0), Middle),
            ];
            set.free(&text, LabelKind::Here, &places);
        }
        set.labels
    }

    /// Places for the name of a curve: on its right where it rises past a quarter of the field's height,
    /// or over its end.
    fn beside(&self, points: &[(f64, f64)]) -> Vec<((f64, f64), Anchor)> {
        let (_, top, right, bottom) = self.field();
        let trace = self.trace(points);
        let at_level = |share: f64| {
            let level = top + share * (bottom - top);
            trace.windows(2).find_map(|pair| match pair {
                [a, b] if a.1 >= level && b.1 < level => {
                    Some((a.0 + (b.0 - a.0) * (a.1 - level) / (a.1 - b.1), level))
                }
                _ => None,
            })
        };
        let mut places: Vec<((f64, f64), Anchor)> = Vec::new();
        let end = trace.last().copied();
        // A curve that stops in the field is named over its end, where no other passes.
        if let Some((x, y)) = end.filter(|(x, y)| *x < right - 1.0 && *y > top + 1.0) {
            places.push(((x - 4.0, y - 9.0), Anchor::End));
        }
        places.extend(
            [0.24, 0.4, 0.55]
                .into_iter()
                .filter_map(at_level)
                .filter(|(x, _)| *x < right - 60.0)
                .map(|(x, y)| ((x + 8.0, y), Anchor::Start)),
        );
        if let Some((x, y)) = end {
            places.extend([y - 9.0, y + 19.0, y - 26.0].map(|y| ((x - 4.0, y), Anchor::End)));
        }
        places
    }
}

/// A tick's number without trailing zeros.
fn number(value: f64) -> String {
    format!("{}", (value * 1e3).round() / 1e3 + 0.0)
}

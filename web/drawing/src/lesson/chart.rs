//! A plot of one amount against another: curves, levels, a band, points that are named.

use super::control::capital;
use crate::pen::{Pen, polyline};
use crate::scene::{Anchor, Draw, Mark, Scene, text_bounds, text_width};
use crate::units::step_up;
use calc_core::quantity::{Dimension, UnitSystem, unit_for, write, write_parts};
use calc_core::report::Amount;

/// Width of a plot in drawing units.
pub const PLOT_WIDTH: f64 = 340.0;
/// Height of a plot in drawing units.
pub const PLOT_HEIGHT: f64 = 300.0;

/// Room around the field.
const LEFT: f64 = 50.0;
const TOP: f64 = 30.0;
const RIGHT: f64 = 14.0;
const BOTTOM: f64 = 42.0;

/// An axis: what it measures, in SI from end to end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Axis {
    /// What is measured, in a word or two.
    pub name: &'static str,
    /// Its dimension: gives the unit.
    pub dimension: Dimension,
    /// Lower end.
    pub from: f64,
    /// Upper end.
    pub to: f64,
}

impl Axis {
    fn share(&self, value: f64) -> f64 {
        let span = self.to - self.from;
        if span > 0.0 && value.is_finite() {
            ((value - self.from) / span).clamp(-0.2, 1.2)
        } else {
            0.0
        }
    }

    fn holds(&self, value: f64) -> bool {
        let slack = 1e-9 * (self.to - self.from);
        value >= self.from - slack && value <= self.to + slack
    }

    /// Name and unit of the axis.
    fn lettering(&self, units: UnitSystem) -> String {
        let symbol = unit_for(self.dimension, units).symbol();
        if symbol.is_empty() {
            self.name.into()
        } else {
            format!("{} / {symbol}", self.name)
        }
    }

    /// Ticks: place in SI, number as lettered.
    fn ticks(&self, units: UnitSystem, most: f64) -> Vec<(f64, String)> {
        let unit = unit_for(self.dimension, units);
        let (from, to) = (unit.from_si(self.from), unit.from_si(self.to));
        let step = if self.dimension == Dimension::Angle && to - from > 60.0 {
            // Parts of a turn that a hand knows.
            [15.0, 30.0, 45.0, 90.0, 180.0, 360.0]
                .into_iter()
                .find(|s| (to - from) / s <= most)
                .unwrap_or(720.0)
        } else {
            step_up((to - from) / most)
        };
        let mut out = Vec::new();
        let mut n = (from / step - 1e-9).ceil();
        while n * step <= to + 1e-9 * step && out.len() < 12 {
            let at = unit.to_si(n * step);
            out.push((at, write_parts(at, self.dimension, units).0));
            n += 1.0;
        }
        out
    }
}

/// How a curve is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CurveKind {
    /// What the figure shows now: thick and solid.
    This,
    /// For comparison: thinner and dashed.
    Beside,
}

/// A curve in SI.
#[derive(Clone, Debug, PartialEq)]
pub struct Curve {
    /// Points, x rising.
    pub points: Vec<(f64, f64)>,
    /// How it is drawn.
    pub kind: CurveKind,
    /// Name beside it; empty for none.
    pub name: String,
    /// Class that ties it to a part of the drawing, `p-bolt`; empty for none.
    pub part: &'static str,
}

/// A level line across the field, dotted: a limit, a wanted amount.
#[derive(Clone, Debug, PartialEq)]
pub struct Level {
    /// Where on the y axis, SI.
    pub y: f64,
    /// Its name, lettered above it.
    pub name: String,
}

/// What lies between two curves, hatched thinly: a scatter.
#[derive(Clone, Debug, PartialEq)]
pub struct Band {
    /// Lower edge, x rising, SI.
    pub lower: Vec<(f64, f64)>,
    /// Upper edge, x rising, SI.
    pub upper: Vec<(f64, f64)>,
    /// Its name, lettered inside.
    pub name: String,
}

/// A named point: lettered on the plot and a row of the table of key points.
#[derive(Clone, Debug, PartialEq)]
pub struct KeyPoint {
    /// Its name.
    pub name: String,
    /// Where, SI.
    pub x: f64,
    /// Where, SI.
    pub y: f64,
    /// Whether it is where the figure stands now: drawn as a ring, lettered with its amounts.
    pub here: bool,
}

/// A plot.
#[derive(Clone, Debug, PartialEq)]
pub struct Chart {
    /// What it shows, as a name: "Pull of the bolt against its stretch".
    pub title: String,
    /// Level axis.
    pub x: Axis,
    /// Upright axis.
    pub y: Axis,
    /// Band behind the curves.
    pub band: Option<Band>,
    /// Curves.
    pub curves: Vec<Curve>,
    /// Levels.
    pub levels: Vec<Level>,
    /// Named points.
    pub points: Vec<KeyPoint>,
    /// The reader's units.
    pub units: UnitSystem,
}

struct Setter {
    marks: Vec<Mark>,
    taken: Vec<(f64, f64, f64, f64)>,
    curves: Vec<[(f64, f64); 2]>,
    levels: Vec<[(f64, f64); 2]>,
    field: (f64, f64, f64, f64),
}

impl Setter {
    fn fixed(&mut self, at: (f64, f64), text: String, class: &'static str, anchor: Anchor) {
        self.taken.push(text_bounds(at, &text, class, anchor));
        self.marks.text(at, text, class, anchor);
    }

    /// At the first place inside the field that neither lettering nor a curve nor a level takes; failing
    /// that, let a level run through it; failing that, a curve. Where all lettering would stand on other lettering
    /// there is none: the table of key points has it.
    fn free(&mut self, text: &str, class: &'static str, places: &[((f64, f64), Anchor)]) {
        if text.is_empty() {
            return;
        }
        let (left, top, right, bottom) = self.field;
        let inside: Vec<_> = places
            .iter()
            .copied()
            .map(|((x, y), anchor)| {
                // Slid into the field rather than cut off at its edge.
                let b = text_bounds((x, y), text, class, anchor);
                let dx = (left + 3.0 - b.0).max(0.0) - (b.2 - right).max(0.0);
                let dy = (top + 2.0 - b.1).max(0.0) - (b.3 - bottom + 2.0).max(0.0);
                ((x + dx, y + dy), anchor)
            })
            .collect();
        let bounds = |&(at, anchor): &((f64, f64), Anchor)| text_bounds(at, text, class, anchor);
        let clear = |place: &&((f64, f64), Anchor)| {
            let a = bounds(place);
            self.taken
                .iter()
                .all(|b| a.2 < b.0 || b.2 < a.0 || a.3 < b.1 || b.3 < a.1)
        };
        let off = |lines: &[[(f64, f64); 2]], place: &((f64, f64), Anchor)| {
            let a = bounds(place);
            !lines.iter().any(|&[from, to]| crosses(a, from, to))
        };
        let off_curves = |place: &&((f64, f64), Anchor)| clear(place) && off(&self.curves, place);
        let best = inside
            .iter()
            .find(|p| off_curves(p) && off(&self.levels, p))
            .or_else(|| inside.iter().find(off_curves))
            .or_else(|| inside.iter().find(clear));
        if let Some(&(at, anchor)) = best {
            self.fixed(at, text.into(), class, anchor);
        }
    }
}

impl Chart {
    const fn field() -> (f64, f64, f64, f64) {
        (LEFT, TOP, PLOT_WIDTH - RIGHT, PLOT_HEIGHT - BOTTOM)
    }

    /// Where a point lies on the sheet.
    #[must_use]
    pub fn place(&self, (x, y): (f64, f64)) -> (f64, f64) {
        let (left, top, right, bottom) = Self::field();
        (
            left + (right - left) * self.x.share(x),
            bottom - (bottom - top) * self.y.share(y),
        )
    }

    /// The pieces of a curve that lie in the field, cut off at its edges.
    fn trace(&self, points: &[(f64, f64)]) -> Vec<(f64, f64)> {
        let mut out: Vec<(f64, f64)> = Vec::with_capacity(points.len());
        let inside = |p: (f64, f64)| self.x.holds(p.0) && self.y.holds(p.1);
        let mut before: Option<(f64, f64)> = None;
        for &now in points.iter().filter(|p| p.0.is_finite() && p.1.is_finite()) {
            if let Some(before) = before
                && inside(before) != inside(now)
            {
                out.push(self.place(self.crossing(before, now)));
            }
            if inside(now) {
                out.push(self.place(now));
            }
            before = Some(now);
        }
        out
    }

    /// Where the line between two points, one inside and one outside, crosses the field's edge.
    fn crossing(&self, a: (f64, f64), b: (f64, f64)) -> (f64, f64) {
        let (mut inner, mut outer) = if self.x.holds(a.0) && self.y.holds(a.1) {
            (a, b)
        } else {
            (b, a)
        };
        for _ in 0..24 {
            let middle = (
                f64::midpoint(inner.0, outer.0),
                f64::midpoint(inner.1, outer.1),
            );
            if self.x.holds(middle.0) && self.y.holds(middle.1) {
                inner = middle;
            } else {
                outer = middle;
            }
        }
        inner
    }

    /// What a point stands at, in the reader's units.
    #[must_use]
    pub fn amounts(&self, point: &KeyPoint) -> [String; 2] {
        let of = |axis: &Axis, si| {
            let amount = Amount::new(si, axis.dimension);
            write(amount.si, amount.dimension, self.units)
        };
        [of(&self.x, point.x), of(&self.y, point.y)]
    }

    /// The plot as a figure.
    #[must_use]
    pub fn scene(&self, id: &str) -> Scene {
        let (left, top, right, bottom) = Self::field();
        let mut set = Setter {
            marks: Vec::new(),
            taken: Vec::new(),
            curves: Vec::new(),
            levels: Vec::new(),
            field: (left, top, right, bottom),
        };
        self.grid(&mut set);
        if let Some(band) = &self.band {
            let lower = self.trace(&band.lower);
            let upper = self.trace(&band.upper);
            let outline = polyline(lower.iter().copied().chain(upper.iter().rev().copied()));
            set.marks.path(outline + "Z", "band");
        }
        for level in self.levels.iter().filter(|l| self.y.holds(l.y)) {
            let (_, y) = self.place((self.x.from, level.y));
            set.marks.line((left, y), (right, y), "wanted");
            set.levels.push([(left, y), (right, y)]);
        }
        for curve in &self.curves {
            let class = match curve.kind {
                CurveKind::This => "curve",
                CurveKind::Beside => "curve beside",
            };
            let trace = self.trace(&curve.points);
            let pairs = trace.iter().zip(trace.iter().skip(1));
            set.curves.extend(pairs.map(|(a, b)| [*a, *b]));
            let path = Mark::path(polyline(trace), class);
            set.marks
                .group(crate::scene::Placed::default(), curve.part, vec![path]);
        }
        let shown = |p: &&KeyPoint| self.x.holds(p.x) && self.y.holds(p.y);
        for point in self.points.iter().filter(shown) {
            let at = self.place((point.x, point.y));
            let (r, class) = if point.here {
                (6.0, "here")
            } else {
                (3.0, "dot")
            };
            set.marks.circle(at, r, class);
            set.taken.push((at.0 - r, at.1 - r, at.0 + r, at.1 + r));
        }
        self.letter(&mut set);
        Scene {
            id: id.into(),
            width: PLOT_WIDTH,
            height: PLOT_HEIGHT,
            title: self.title.clone(),
            description: self.described(),
            marks: set.marks,
        }
    }

    fn grid(&self, set: &mut Setter) {
        let (left, top, right, bottom) = Self::field();
        let (across, up) = (self.x.ticks(self.units, 5.0), self.y.ticks(self.units, 5.0));
        for (si, _) in &across {
            let (x, _) = self.place((*si, self.y.from));
            set.marks.line((x, top), (x, bottom), "hair");
        }
        for (si, _) in &up {
            let (_, y) = self.place((self.x.from, *si));
            set.marks.line((left, y), (right, y), "hair");
        }
        let frame = Pen::at(left, top - 4.0).to(left, bottom).to(right, bottom);
        set.marks.path(frame.d(), "axis");
        if self.y.from < 0.0 && self.y.to > 0.0 {
            let (_, y) = self.place((self.x.from, 0.0));
            set.marks.line((left, y), (right, y), "thin");
        }
        for (si, text) in across {
            let (x, _) = self.place((si, self.y.from));
            // The last number stays on the sheet.
            let half = text_width(&text, "t s soft") / 2.0;
            let x = x.min(PLOT_WIDTH - 1.0 - half);
            set.fixed((x, bottom + 16.0), text, "t s soft", Anchor::Middle);
        }
        for (si, text) in up {
            let (_, y) = self.place((self.x.from, si));
            set.fixed((left - 6.0, y + 4.0), text, "t s soft", Anchor::End);
        }
        let class = "t s soft";
        let (across, up) = (self.x.lettering(self.units), self.y.lettering(self.units));
        set.fixed((right, PLOT_HEIGHT - 8.0), across, class, Anchor::End);
        set.fixed((6.0, 16.0), up, class, Anchor::Start);
    }

    fn letter(&self, set: &mut Setter) {
        let (left, _, right, _) = Self::field();
        let around = |(x, y): (f64, f64)| {
            [
                ((x + 10.0, y + 18.0), Anchor::Start),
                ((x - 10.0, y - 10.0), Anchor::End),
                ((x + 10.0, y - 8.0), Anchor::Start),
                ((x - 10.0, y + 20.0), Anchor::End),
                ((x, y - 26.0), Anchor::Middle),
                ((x, y + 36.0), Anchor::Middle),
                ((x + 14.0, y + 34.0), Anchor::Start),
                ((x - 14.0, y - 26.0), Anchor::End),
            ]
        };
        // Before anything has happened there is nothing to letter.
        let moved = |p: &&KeyPoint| p.here && p.x.hypot(p.y) > 0.0;
        for point in self.points.iter().filter(moved) {
            let [x, y] = self.amounts(point);
            let at = self.place((point.x, point.y));
            set.free(&format!("{y} at {x}"), "t halo", &around(at));
        }
        for level in self.levels.iter().filter(|l| self.y.holds(l.y)) {
            let (_, y) = self.place((self.x.from, level.y));
            let places = [
                ((left + 6.0, y - 5.0), Anchor::Start),
                ((right - 4.0, y - 5.0), Anchor::End),
                ((left + 6.0, y + 14.0), Anchor::Start),
                ((right - 4.0, y + 14.0), Anchor::End),
            ];
            set.free(&level.name, "t s halo", &places);
        }
        for point in self.points.iter().filter(|p| !p.here) {
            set.free(
                &point.name,
                "t s halo",
                &around(self.place((point.x, point.y))),
            );
        }
        for curve in &self.curves {
            let trace = self.trace(&curve.points);
            // Near its end, where curves lie furthest apart, then further back.
            let places: Vec<_> = [1.0, 0.85, 0.7, 0.5, 0.3, 0.15]
                .into_iter()
                .filter_map(|share| part_way(&trace, share))
                .flat_map(|(x, y)| {
                    [
                        ((x - 6.0, y - 7.0), Anchor::End),
                        ((x + 6.0, y + 15.0), Anchor::Start),
                        ((x - 6.0, y + 17.0), Anchor::End),
                    ]
                })
                .collect();
            set.free(&curve.name, "t s halo", &places);
        }
        if let Some(band) = &self.band {
            let middle = part_way(&self.trace(&band.upper), 0.6);
            let places = middle.map(|(x, y)| ((x - 8.0, y - 6.0), Anchor::End));
            set.free(&band.name, "t s halo", places.as_slice());
        }
    }

    fn described(&self) -> String {
        let mut said = format!("{} against {}.", capital(self.y.name), self.x.name);
        for point in &self.points {
            let [x, y] = self.amounts(point);
            said += &format!(" {}: {y} at {x}.", capital(&point.name));
        }
        for level in &self.levels {
            let at = write(level.y, self.y.dimension, self.units);
            said += &format!(" {}: {at}.", capital(&level.name));
        }
        said
    }
}

/// Whether a straight piece passes through a rectangle (left, top, right, bottom).
fn crosses(rect: (f64, f64, f64, f64), from: (f64, f64), to: (f64, f64)) -> bool {
    // What is left of the piece after each of the four edges has cut off what lies outside it.
    let (mut begin, mut end) = (0.0_f64, 1.0_f64);
    for (start, step, low, high) in [
        (from.0, to.0 - from.0, rect.0, rect.2),
        (from.1, to.1 - from.1, rect.1, rect.3),
    ] {
        if step.abs() < 1e-9 {
            if start < low || start > high {
                return false;
            }
        } else {
            let (a, b) = ((low - start) / step, (high - start) / step);
            begin = begin.max(a.min(b));
            end = end.min(a.max(b));
        }
    }
    begin <= end
}

/// The point a share of the way along a trace, counted by points.
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    clippy::cast_precision_loss,
    reason = "a share of a short list"
)]
fn part_way(trace: &[(f64, f64)], share: f64) -> Option<(f64, f64)> {
    let last = trace.len().checked_sub(1)?;
    trace.get((last as f64 * share).round() as usize).copied()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn chart() -> Chart {
        Chart {
            title: "Pull against stretch".into(),
            x: Axis {
                name: "stretch",
                dimension: Dimension::Length,
                from: 0.0,
                to: 1e-3,
            },
            y: Axis {
                name: "pull",
                dimension: Dimension::Force,
                from: 0.0,
                to: 50e3,
            },
            band: None,
            curves: vec![Curve {
                points: vec![(0.0, 0.0), (0.5e-3, 40e3), (1e-3, 80e3)],
                kind: CurveKind::This,
                name: "bolt".into(),
                part: "p-bolt",
            }],
            levels: vec![Level {
                y: 45e3,
                name: "proof load".into(),
            }],
            points: vec![KeyPoint {
                name: "now".into(),
                x: 0.25e-3,
                y: 20e3,
                here: true,
            }],
            units: UnitSystem::Metric,
        }
    }

    #[test]
    fn a_curve_is_cut_off_at_the_edge_of_its_field() {
        let trace = chart().trace(&[(0.0, 0.0), (0.5e-3, 40e3), (1e-3, 80e3)]);
        assert_eq!(trace.len(), 3);
        let (x, y) = trace[2];
        let edge = chart().place((0.625e-3, 50e3));
        assert!((x - edge.0).abs() < 0.01 && (y - edge.1).abs() < 0.01);
    }

    #[test]
    fn a_piece_of_curve_that_passes_lettering_is_seen() {
        let rect = (10.0, 10.0, 30.0, 20.0);
        assert!(crosses(rect, (0.0, 15.0), (40.0, 15.0)));
        assert!(crosses(rect, (20.0, 0.0), (20.0, 12.0)));
        assert!(crosses(rect, (0.0, 0.0), (40.0, 30.0)));
        assert!(!crosses(rect, (0.0, 25.0), (40.0, 25.0)));
        assert!(!crosses(rect, (0.0, 15.0), (9.0, 15.0)));
        assert!(!crosses(rect, (0.0, 15.0), (15.0, 31.0)));
    }

    #[test]
    fn what_it_shows_is_said() {
        let scene = chart().scene("x");
        assert_eq!(
            scene.description,
            "Pull against stretch. Now: 20\u{a0}kN at 0.25\u{a0}mm. Proof load: 45\u{a0}kN."
        );
        let svg = scene.to_svg();
        assert!(svg.contains("pull / kN") && svg.contains("p-bolt") && !svg.contains("NaN"));
    }

    #[test]
    fn ticks_are_round_in_the_readers_units() {
        let texts = |units| {
            let ticks = chart().y.ticks(units, 5.0);
            ticks.into_iter().map(|t| t.1).collect::<Vec<_>>().join(" ")
        };
        assert_eq!(texts(UnitSystem::Metric), "0 10 20 30 40 50");
        assert_eq!(texts(UnitSystem::Us), "0 5000 10,000");
    }

    #[test]
    fn what_is_no_number_is_not_drawn() {
        let mut chart = chart();
        chart.curves[0].points.push((f64::NAN, f64::INFINITY));
        chart.points[0].x = f64::NAN;
        chart.x.to = f64::NAN;
        assert!(!chart.scene("x").to_svg().contains("NaN"));
    }
}

//! Dimensions: extension lines, dimension line, arrows, text.

use super::lines::arrow_tip;
use crate::scene::{Anchor, Draw, Mark, text_width};

/// Length of a dimension arrow.
const TIP: f64 = 9.0;
/// How far an extension line runs past the dimension line.
const PAST: f64 = 4.0;
/// Gap between the outline and the start of an extension line.
const GAP: f64 = 3.0;

/// A dimension between two points, measured level or upright.
#[derive(Clone, Debug, PartialEq)]
pub struct DimensionLine {
    /// One end on the part.
    pub from: (f64, f64),
    /// The other end on the part.
    pub to: (f64, f64),
    /// Where the dimension line lies: its y for a level one, its x for an upright one.
    pub line: f64,
    /// The text.
    pub text: String,
}

impl DimensionLine {
    /// Measured level, text above the line. Arrows go outside when there is no room between.
    #[must_use]
    pub fn level(&self) -> Vec<Mark> {
        let (a, b) = ordered(self.from, self.to, |p| p.0);
        let y = self.line;
        let mut marks: Vec<Mark> = [a, b]
            .into_iter()
            .map(|p| {
                let way = (y - p.1).signum();
                Mark::line((p.0, p.1 + GAP * way), (p.0, y + PAST * way), "thin")
            })
            .collect();
        let room = b.0 - a.0;
        let wide = text_width(&self.text, "t");
        marks.all(line_and_tips((a.0, y), (b.0, y)));
        let middle = f64::midpoint(a.0, b.0);
        if room >= wide + 6.0 {
            marks.text((middle, y - 4.0), &self.text, "t", Anchor::Middle);
        } else {
            let end = if room < 3.0 * TIP {
                b.0 + 2.0 * TIP
            } else {
                b.0
            };
            marks.text((end + 5.0, y + 4.6), &self.text, "t", Anchor::Start);
        }
        marks
    }

    /// Measured upright, text left of the line and read from the right (ISO 129-1), or level beside it
    /// when it does not fit.
    #[must_use]
    pub fn upright(&self) -> Vec<Mark> {
        let (a, b) = ordered(self.from, self.to, |p| p.1);
        let x = self.line;
        let mut marks: Vec<Mark> = [a, b]
            .into_iter()
            .map(|p| {
                let way = (x - p.0).signum();
                Mark::line((p.0 + GAP * way, p.1), (x + PAST * way, p.1), "thin")
            })
            .collect();
        marks.all(line_and_tips((x, a.1), (x, b.1)));
        let middle = f64::midpoint(a.1, b.1);
        if b.1 - a.1 >= text_width(&self.text, "t") + 6.0 {
            marks.push(Mark::Text {
                at: (x - 4.0, middle),
                text: self.text.clone(),
                class: "t",
                anchor: Anchor::Middle,
                turn: -90.0,
            });
        } else {
            marks.text((x + 7.0, middle + 4.6), &self.text, "t", Anchor::Start);
        }
        marks
    }
}

/// Thickness of a thin upright wall between `left` and `right` at height `y`: arrows from outside, text
/// at the left end.
#[must_use]
pub fn short_across(left: f64, right: f64, y: f64, text: &str) -> Vec<Mark> {
    let tail = left - 2.2 * TIP;
    vec![
        Mark::line((tail, y), (left - TIP + 1.0, y), "thin"),
        arrow_tip((left, y), (1.0, 0.0), TIP, "tip"),
        Mark::line((right + TIP - 1.0, y), (right + 2.0 * TIP, y), "thin"),
        arrow_tip((right, y), (-1.0, 0.0), TIP, "tip"),
        Mark::text((tail - 4.0, y + 4.6), text, "t", Anchor::End),
    ]
}

/// A leader: thin line from the text to the part, ending in a dot inside it.
#[must_use]
pub fn leader(part: (f64, f64), text_at: (f64, f64), text: &str, class: &'static str) -> Vec<Mark> {
    let anchor = if text_at.0 >= part.0 {
        Anchor::Start
    } else {
        Anchor::End
    };
    let way = if text_at.0 >= part.0 { 1.0 } else { -1.0 };
    vec![
        Mark::line(part, (text_at.0 - 4.0 * way, text_at.1 - 4.0), "thin"),
        Mark::circle(part, 1.8, "dot"),
        Mark::text(text_at, text, class, anchor),
    ]
}

fn ordered(a: (f64, f64), b: (f64, f64), key: fn((f64, f64)) -> f64) -> ((f64, f64), (f64, f64)) {
    if key(a) <= key(b) { (a, b) } else { (b, a) }
}

/// The dimension line with its two tips; `a` is left of or above `b`.
fn line_and_tips(a: (f64, f64), b: (f64, f64)) -> Vec<Mark> {
    let (dx, dy) = (b.0 - a.0, b.1 - a.1);
    let length = dx.hypot(dy);
    let (ux, uy) = if dx.abs() >= dy.abs() {
        (1.0, 0.0)
    } else {
        (0.0, 1.0)
    };
    if length >= 3.0 * TIP {
        return vec![
            Mark::line(
                (a.0 + ux * TIP, a.1 + uy * TIP),
                (b.0 - ux * TIP, b.1 - uy * TIP),
                "thin",
            ),
            arrow_tip(a, (-ux, -uy), TIP, "tip"),
            arrow_tip(b, (ux, uy), TIP, "tip"),
        ];
    }
    let out = 2.0 * TIP;
    vec![
        Mark::line(
            (a.0 - ux * out, a.1 - uy * out),
            (a.0 - ux * TIP, a.1 - uy * TIP),
            "thin",
        ),
        Mark::line(a, b, "thin"),
        Mark::line(
            (b.0 + ux * TIP, b.1 + uy * TIP),
            (b.0 + ux * out, b.1 + uy * out),
            "thin",
        ),
        arrow_tip(a, (ux, uy), TIP, "tip"),
        arrow_tip(b, (-ux, -uy), TIP, "tip"),
    ]
}

//! Arrow tips, centre marks, break lines and cutting-plane arrows.

use crate::pen::Pen;
use crate::scene::{Anchor, Draw, Mark};

/// Slender filled tip of a dimension line (ISO 129-1): at `tip`, pointing along `(dx, dy)`.
#[must_use]
pub fn arrow_tip(tip: (f64, f64), direction: (f64, f64), length: f64, class: &'static str) -> Mark {
    let norm = direction.0.hypot(direction.1).max(1e-9);
    let (ux, uy) = (direction.0 / norm, direction.1 / norm);
    let (bx, by) = (tip.0 - ux * length, tip.1 - uy * length);
    let half = length * if class.contains("force") { 0.45 } else { 0.24 };
    let d = Pen::at(tip.0, tip.1)
        .to(bx - uy * half, by + ux * half)
        .to(bx + uy * half, by - ux * half)
        .close()
        .d();
    Mark::path(d, class)
}

/// Two short centre lines that cross.
#[must_use]
pub fn centre_cross(centre: (f64, f64), reach: f64) -> Vec<Mark> {
    let (x, y) = centre;
    vec![
        Mark::line((x - reach, y), (x + reach, y), "centre"),
        Mark::line((x, y - reach), (x, y + reach), "centre"),
    ]
}

/// Thin wavy line where a part is broken off (ISO 128: free-hand line), downwards from a point.
#[must_use]
pub fn break_line(from: (f64, f64), height: f64) -> Mark {
    let (x, y) = from;
    let q = height / 4.0;
    let d = Pen::at(x, y)
        .curve(
            (x + 5.0, y + 0.6 * q),
            (x + 4.0, y + 1.4 * q),
            (x, y + 2.0 * q),
        )
        .curve(
            (x - 4.0, y + 2.6 * q),
            (x - 5.0, y + 3.4 * q),
            (x, y + height),
        )
        .d();
    Mark::path(d, "thin none")
}

/// Cutting plane seen edge-on, upright at `x`: thick ends, arrows that show the way one looks, letters.
#[must_use]
pub fn section_arrows(x: f64, top: f64, bottom: f64, letter: &str, looks_right: bool) -> Vec<Mark> {
    let way = if looks_right { 1.0 } else { -1.0 };
    let mut marks = vec![Mark::line((x, top), (x, bottom), "centre")];
    for (end, inwards) in [(top, 1.0), (bottom, -1.0)] {
        marks.line((x, end), (x, end + 10.0 * inwards), "cutting");
        marks.line((x, end), (x + 14.0 * way, end), "thin");
        marks.push(arrow_tip((x + 18.0 * way, end), (way, 0.0), 10.0, "tip"));
        let anchor = if looks_right {
            Anchor::End
        } else {
            Anchor::Start
        };
        marks.text((x - 4.0 * way, end + 4.8), letter, "t", anchor);
    }
    marks
}

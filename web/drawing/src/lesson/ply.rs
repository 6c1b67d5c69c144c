//! A plate or wall in section, as wide as one likes, broken off where it goes on.

use crate::parts::break_line;
use crate::scene::{Draw, Hatch, Mark};

/// Which ends of a ply are cut off by a free-hand line because the ply goes on.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Broken {
    /// At its left.
    pub left: bool,
    /// At its right.
    pub right: bool,
}

/// A level ply between `left` and `right`, `top` and `bottom`, with a hole between `hole.0` and `hole.1`.
pub(super) fn ply(
    (left, right): (f64, f64),
    (top, bottom): (f64, f64),
    hole: (f64, f64),
    broken: Broken,
    hatch: Hatch,
) -> Vec<Mark> {
    let mut marks = Vec::new();
    for (a, b, is_broken) in [(left, hole.0, broken.left), (hole.1, right, broken.right)] {
        if !is_broken {
            marks.rect((a, top), (b, bottom), "edge", Some(hatch));
            continue;
        }
        // The rim of the hole is the sound end of each half.
        let (rim, end) = if (a - left).abs() < 1e-9 {
            (b, a)
        } else {
            (a, b)
        };
        marks.rect((a, top), (b, bottom), "none", Some(hatch));
        marks.line((end, top), (rim, top), "edge");
        marks.line((end, bottom), (rim, bottom), "edge");
        marks.line((rim, top), (rim, bottom), "edge");
        marks.push(break_line((end, top), bottom - top));
    }
    marks
}

//! Centers of the bolts on the face.

use crate::quantity::Length;
use crate::scenario::{Bolting, Scenario};

/// Center of a bolt on the face of the member.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place {
    /// From the end of the member.
    pub along: Length,
    /// From the edge of the face; from the back of the upright part where a flange or a leg stands free.
    pub across: Length,
}

/// Centers of all bolts, the row nearest the edge first, in each row the one nearest the end first.
///
/// ```text
/// x_i = e + i·p      y_j = (b − (n − 1)·g)/2 + j·g,   or  gauge + j·g  on a flange or a leg
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `e` | end distance | m |
/// | `p`, `g` | distance of bolts along and across | m |
/// | `b`, `n` | width of the face, rows | m, 1 |
#[must_use]
pub fn bolts(s: &Scenario) -> Vec<Place> {
    let b = &s.bolting;
    (0..b.rows)
        .flat_map(|row| {
            let across = across(s, row);
            (0..b.along).map(move |i| Place {
                along: s.tube.end_distance + b.spacing_along * i as f64,
                across,
            })
        })
        .collect()
}

/// Place of a row from the edge of the face.
pub(super) fn across(s: &Scenario, row: usize) -> Length {
    let b = &s.bolting;
    let first = s
        .member
        .gauge
        .unwrap_or_else(|| (s.tube.width - rows_span(b)) * 0.5);
    first + b.spacing_across * row as f64
}

/// From the first row to the last.
pub(super) fn rows_span(b: &Bolting) -> Length {
    b.spacing_across * (b.rows as f64 - 1.0)
}

/// From one bolt to the nearest other; `None` where there is only one.
pub(super) fn nearest(s: &Scenario) -> Option<Length> {
    let b = &s.bolting;
    let along = (b.along > 1).then_some(b.spacing_along);
    let across = (b.rows > 1).then_some(b.spacing_across);
    [along, across].into_iter().flatten().reduce(Length::min)
}

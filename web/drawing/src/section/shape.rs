//! How a face sags and by how much it is exaggerated.

use crate::pen::Pen;

/// Exaggerations to choose from.
const STEPS: [u32; 5] = [1, 2, 5, 10, 20];
/// Share of the depth that the drawn dent aims at.
const AIM: f64 = 0.14;
/// Share of the depth that the drawn dent never passes.
const MOST: f64 = 1.0 / 3.0;

/// The exaggeration at which the largest dent is plain to see but stays a small part of the depth; 1
/// where there is no dent.
#[must_use]
pub fn exaggeration(dent_largest_mm: f64, depth_mm: f64) -> u32 {
    if !(dent_largest_mm > 1e-3 && dent_largest_mm.is_finite()) {
        return 1;
    }
    STEPS
        .into_iter()
        .rev()
        .find(|k| f64::from(*k) * dent_largest_mm <= AIM * depth_mm)
        .unwrap_or(1)
}

/// A dent as drawn, in mm on the part: computed dent times exaggeration, never more than a third of
/// the depth.
pub(super) fn drawn(dent_mm: f64, times: u32, depth_mm: f64) -> f64 {
    let dent = if dent_mm.is_finite() {
        dent_mm.max(0.0)
    } else {
        0.0
    };
    (dent * f64::from(times)).min(MOST * depth_mm)
}

/// Sag of a strip clamped at `end` and held flat at `depth` out to `flat`; both from the middle.
///
/// `y(x) = depth·(1 − 3u² + 2u³)`, `u = (x − flat)/(end − flat)`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sag {
    flat: f64,
    end: f64,
    depth: f64,
}

impl Sag {
    /// A sag; the flat part is kept short of the end.
    #[must_use]
    pub fn new(flat: f64, end: f64, depth: f64) -> Self {
        let end = end.max(1e-6);
        Self {
            flat: flat.clamp(0.0, 0.92 * end),
            end,
            depth,
        }
    }

    /// How deep at a distance from the middle.
    #[must_use]
    pub fn at(self, x: f64) -> f64 {
        let u = ((x.abs() - self.flat) / (self.end - self.flat)).clamp(0.0, 1.0);
        self.depth * (1.0 - u * u * (3.0 - 2.0 * u))
    }

    /// Draws the sag from the middle side (`outwards`) or from the corner side inwards, through `map`,
    /// which takes (distance from the middle, depth).
    pub(super) fn trace(
        self,
        pen: Pen,
        corner: f64,
        outwards: bool,
        map: impl Fn(f64, f64) -> (f64, f64),
    ) -> Pen {
        let third = (corner - self.flat) / 3.0;
        // With evenly spaced x this Bézier curve is the cubic itself.
        let (flat, near) = (
            map(self.flat, self.depth),
            map(self.flat + third, self.depth),
        );
        let (far, end) = (map(corner - third, 0.0), map(corner, 0.0));
        if outwards {
            pen.to(flat.0, flat.1).curve(near, far, end)
        } else {
            pen.to(end.0, end.1).curve(far, near, flat)
        }
    }
}

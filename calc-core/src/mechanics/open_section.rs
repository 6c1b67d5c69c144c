//! A channel or an angle as a section: rectangles, with and without the holes.

use crate::quantity::{Area, Force, InUnits, Length, Stress, mm2, mpa};

/// A rectangle of a section, upright axis first: middle and size.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rectangle {
    /// Middle, upwards.
    pub up: Length,
    /// Middle, across.
    pub across: Length,
    /// Height.
    pub high: Length,
    /// Breadth.
    pub wide: Length,
}

/// Area, centroid and second moments of rectangles less holes.
#[derive(Clone, Debug, PartialEq)]
pub struct OpenSection {
    area: f64,
    /// Centroid, upwards and across.
    middle: [f64; 2],
    /// Second moments about the level and the upright axis through the centroid, and their product, m⁴.
    up: f64,
    side: f64,
    mixed: f64,
    /// Corners from the centroid, upwards and across.
    corners: Vec<[f64; 2]>,
}

impl OpenSection {
    /// Sums rectangles up and takes holes away.
    ///
    /// ```text
    /// A = Σ a,  I_1 = Σ a·(y² + s²/12),  I_2 = Σ a·(x² + b²/12),  I_12 = Σ a·x·y
    /// ```
    ///
    /// Sharp corners: the fillet at the root is left out, which is on the safe side.
    ///
    /// # Sources
    /// Elementary.
    #[must_use]
    pub fn new(parts: &[Rectangle], holes: &[Rectangle]) -> Self {
        let counted = || {
            let plus = parts.iter().map(|part| (1.0, part));
            plus.chain(holes.iter().map(|hole| (-1.0, hole)))
                .map(|(sign, r)| (sign * r.high.si() * r.wide.si(), r))
        };
        let area: f64 = counted().map(|(a, _)| a).sum();
        let over = if area.abs() > 0.0 { 1.0 / area } else { 0.0 };
        let mean = |of: fn(&Rectangle) -> Length| {
            over * counted().map(|(a, r)| a * of(r).si()).sum::<f64>()
        };
        let middle = [mean(|r| r.up), mean(|r| r.across)];
        let (mut up, mut side, mut mixed) = (0.0, 0.0, 0.0);
        for (a, r) in counted() {
            let (y, x) = (r.up.si() - middle[0], r.across.si() - middle[1]);
            up += a * (y * y + r.high.si().powi(2) / 12.0);
            side += a * (x * x + r.wide.si().powi(2) / 12.0);
            mixed += a * x * y;
        }
        let corners = parts
            .iter()
            .flat_map(|r| {
                [(0.5, 0.5), (0.5, -0.5), (-0.5, 0.5), (-0.5, -0.5)].map(|(i, j)| {
                    [
                        r.up.si() + i * r.high.si() - middle[0],
                        r.across.si() + j * r.wide.si() - middle[1],
                    ]
                })
            })
            .collect();
        Self {
            area,
            middle,
            up,
            side,
            mixed,
            corners,
        }
    }

    /// Area.
    #[must_use]
    pub fn area(&self) -> Area {
        mm2(self.area * 1e6)
    }

    /// Centroid, upwards and across.
    #[must_use]
    pub fn middle(&self) -> [Length; 2] {
        self.middle.map(Length::of_si)
    }

    /// Second moments about the level and the upright axis, and their product, m⁴.
    #[must_use]
    pub const fn second_moments(&self) -> [f64; 3] {
        [self.up, self.side, self.mixed]
    }

    /// Largest stress under a pull and bending both ways.
    ///
    /// ```text
    /// σ = N/A + max over corners of |M_1·(I_2·y − I_12·x)/D| + |M_2·(I_1·x − I_12·y)/D|
    /// D = I_1·I_2 − I_12²
    /// ```
    ///
    /// | symbol | meaning | unit |
    /// |---|---|---|
    /// | `pull` | force along the member `N`, either way | N |
    /// | `up`, `side` | moments `M_1` up and down, `M_2` sideways, either way | N·m |
    ///
    /// `None` where the holes have used the section up. Twisting and buckling sideways are not in it.
    ///
    /// # Sources
    /// Elementary: bending of a section without symmetry.
    #[must_use]
    pub fn stress(&self, pull: Force, up: f64, side: f64) -> Option<Stress> {
        let both = self.up * self.side - self.mixed * self.mixed;
        if self.area <= 0.0 || self.up <= 0.0 || self.side <= 0.0 || both <= 0.0 {
            return None;
        }
        let bent = self
            .corners
            .iter()
            .map(|[y, x]| {
                (up * (self.side * y - self.mixed * x) / both).abs()
                    + (side * (self.up * x - self.mixed * y) / both).abs()
            })
            .fold(0.0, f64::max);
        Some(mpa((pull.si().abs() / self.area + bent) * 1e-6))
    }
}

/// Share of the net section that a pull through one of its parts can use.
///
/// ```text
/// U = max(1 − x̄/L, A_c/A)
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `off` | `x̄`, faying face to centroid | m |
/// | `length` | `L`, first bolt to last one in the row | m |
/// | `connected` | `A_c/A`, share of the area that is connected | 1 |
///
/// # Sources
/// AISC 360-22 D3 with Table D3.1, case 2; from memory.
#[must_use]
pub fn shear_lag(off: Length, length: Length, connected: f64) -> f64 {
    let by_length = if length.si() > 0.0 {
        1.0 - off.si() / length.si()
    } else {
        0.0
    };
    by_length.max(connected).clamp(0.05, 1.0)
}

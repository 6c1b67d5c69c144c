//! Shear across a member: which walls take it, and how much of them a thin wall keeps.

use crate::quantity::{Area, Force, InUnits, Length, Stress, mm2};
use std::f64::consts::{FRAC_PI_4, PI};

/// Coefficient of buckling of a wall that two others hold, one at each edge.
///
/// # Sources
/// AISC 360-22 G4 (k_v 5), from memory.
pub const HELD_AT_BOTH_EDGES: f64 = 5.0;

/// The same of a flange or a leg with a free edge.
///
/// # Sources
/// AISC 360-22 G3, G6 (k_v 1.2), from memory.
pub const FREE_EDGE: f64 = 1.2;

/// What of a flat wall counts in shear, for it may buckle before it yields.
///
/// ```text
/// q = √(k_v·E/f_y),  λ = h/t
/// C = 1                     λ ≤ 1.10·q
/// C = 1.10·q/λ              λ ≤ 1.37·q
/// C = 1.51·q²/λ²            beyond
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `h`, `t` | flat width of the wall, its thickness | m |
/// | `k_v` | [`HELD_AT_BOTH_EDGES`] or [`FREE_EDGE`] | 1 |
/// | `E`, `f_y` | modulus and yield strength | Pa |
///
/// The same for aluminum: its own rule gives more to a wall that buckles elastically (Aluminum Design Manual, chapter G).
///
/// # Sources
/// AISC 360-22 G2.2 (C_v2), from memory.
#[must_use]
pub fn wall_share(flat: Length, wall: Length, k_v: f64, (modulus, fy): (Stress, Stress)) -> f64 {
    let slender = flat.si().max(0.0) / wall.si().max(1e-9);
    let limit = (k_v * modulus.si() / fy.si().max(1.0)).sqrt();
    if slender <= 1.10 * limit {
        1.0
    } else if slender <= 1.37 * limit {
        1.10 * limit / slender
    } else {
        1.51 * (limit / slender).powi(2)
    }
}

/// What of a round tube counts in shear.
///
/// ```text
/// C = min(1, 0.78·E/(D/t)^1.5/(0.6·f_y))
/// ```
///
/// # Sources
/// AISC 360-22 G5, long tubes, from memory.
#[must_use]
pub fn round_share(diameter: Length, wall: Length, (modulus, fy): (Stress, Stress)) -> f64 {
    let slender = diameter.si() / wall.si().max(1e-9);
    let critical = 0.78 * modulus.si() / (slender * slender.sqrt());
    (critical / (0.6 * fy.si()).max(1.0)).min(1.0)
}

/// Area of a flat part along its length.
#[must_use]
pub fn part(length: Length, thickness: Length) -> Area {
    mm2(length.si().max(0.0) * thickness.si() * 1e6)
}

/// Areas of a section that take shear, upright and sideways.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShearAreas {
    /// Upright, m².
    up: f64,
    /// Sideways, m².
    side: f64,
    /// Whether the same metal takes both.
    shared: bool,
}

impl ShearAreas {
    /// Other metal upright than sideways: two walls of a tube each way, web and flanges, two legs.
    #[must_use]
    pub fn apart(up: Area, side: Area) -> Self {
        Self {
            up: up.si(),
            side: side.si(),
            shared: false,
        }
    }

    /// The walls of a rectangular tube that stand along the force.
    ///
    /// ```text
    /// A_v = 2·h·t,   h = H − 2·max(r, t)
    /// ```
    ///
    /// | symbol | meaning | unit |
    /// |---|---|---|
    /// | `H` | outside height along the force | m |
    /// | `r`, `t` | outside corner radius, wall | m |
    ///
    /// `H − 3·t` where the corners are round by 1.5 walls.
    ///
    /// # Sources
    /// AISC 360-22 G4, from memory.
    #[must_use]
    pub fn rectangular([height, width]: [Length; 2], wall: Length, corner: Length) -> Self {
        let walls = |along| part(flat(along, wall, corner), wall) * 2.0;
        Self::apart(walls(height), walls(width))
    }

    /// The same walls where they tear, from edge to edge; what holes take of them comes off, see [`Self::without`].
    ///
    /// ```text
    /// A_v = 2·H·t
    /// ```
    ///
    /// # Sources
    /// AISC 360-22 J4.2 (0.60·F_u·A_nv), from memory; that the corners tear with the wall, a common reading.
    #[must_use]
    pub fn torn([height, width]: [Length; 2], wall: Length) -> Self {
        Self::apart(part(height, wall) * 2.0, part(width, wall) * 2.0)
    }

    /// A round tube: half of its area.
    ///
    /// ```text
    /// A_v = A/2
    /// ```
    ///
    /// # Sources
    /// AISC 360-22 G5, from memory; elementary: thin, the largest shear stress is twice the mean.
    #[must_use]
    pub fn round(diameter: Length, wall: Length) -> Self {
        let half = 0.5 * PI * (diameter - wall).si().max(0.0) * wall.si();
        Self {
            up: half,
            side: half,
            shared: true,
        }
    }

    /// A solid bar: all of its area, as it yields.
    ///
    /// # Sources
    /// AISC 360-22 J4.2 (0.60·F_y·A_gv), from memory.
    #[must_use]
    pub fn solid(height: Length, width: Length, round: bool) -> Self {
        let whole = height.si() * width.si() * if round { FRAC_PI_4 } else { 1.0 };
        Self {
            up: whole,
            side: whole,
            shared: true,
        }
    }

    /// With what holes, or buckling, take off.
    #[must_use]
    pub fn without(self, up: Area, side: Area) -> Self {
        Self {
            up: self.up - up.si(),
            side: self.side - side.si(),
            ..self
        }
    }

    /// A share of each.
    #[must_use]
    pub fn times(self, up: f64, side: f64) -> Self {
        Self {
            up: self.up * up,
            side: self.side * side,
            ..self
        }
    }

    /// Upright and sideways.
    #[must_use]
    pub fn areas(&self) -> [Area; 2] {
        [self.up, self.side].map(|m2| mm2(m2 * 1e6))
    }

    /// Largest mean shear stress under forces both ways.
    ///
    /// ```text
    /// τ_V = max(V_1/A_1, V_2/A_2);   one metal for both: √(V_1² + V_2²)/A
    /// ```
    ///
    /// | symbol | meaning | unit |
    /// |---|---|---|
    /// | `V_1`, `V_2` | force upright and sideways | N |
    /// | `A_1`, `A_2` | areas that take them | m² |
    ///
    /// `None` where nothing is left of an area that is asked.
    ///
    /// # Sources
    /// AISC 360-22 G4, G5, J4.2, from memory: mean stress over the area.
    #[must_use]
    pub fn stress(&self, up: Force, side: Force) -> Option<Stress> {
        let over = |force: f64, area: f64| match force {
            0.0 => Some(0.0),
            _ => (area > 0.0).then(|| force / area),
        };
        let (up, side) = (up.si().abs(), side.si().abs());
        let pa = if self.shared {
            over(up.hypot(side), self.up.min(self.side))?
        } else {
            over(up, self.up)?.max(over(side, self.side)?)
        };
        Some(Stress::of_si(pa))
    }
}

/// Flat width of a wall of a rectangular tube between its corners.
#[must_use]
pub fn flat(along: Length, wall: Length, corner: Length) -> Length {
    along - 2.0 * corner.max(wall)
}

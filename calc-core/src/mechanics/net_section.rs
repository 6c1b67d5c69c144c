//! What the holes leave of a section, and the block that a group of bolts can pull out of it.

use super::section::rounded_off;
use crate::quantity::{Area, Force, InUnits, Length, Stress, mm, mm2, newton};
use std::f64::consts::{FRAC_PI_4, PI};

/// Allowance on a hole: the rim that drilling or punching damages.
///
/// # Sources
/// AISC 360-22 B4.3b (1/16 in).
#[must_use]
pub fn effective_hole(hole: Length) -> Length {
    hole + crate::quantity::inch(1.0 / 16.0)
}

/// Factors of safety on yield of the gross section and on rupture of the net one.
///
/// # Sources
/// Steel: AISC 360-22 D2 (1.67, 2.00); aluminium: Aluminum Design Manual 2020 chapter D (1.65, 1.95).
#[must_use]
pub const fn omegas(aluminium: bool) -> (f64, f64) {
    if aluminium {
        (1.65, 1.95)
    } else {
        (1.67, 2.00)
    }
}

/// Areas along which a block tears out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Block {
    /// Gross shear area `A_gv`.
    pub shear_gross: Area,
    /// Net shear area `A_nv`.
    pub shear_net: Area,
    /// Net tension area `A_nt`.
    pub tension_net: Area,
}

impl Block {
    /// The block between the outer rows of a group, pulled towards the end of a ply: sheared along both
    /// outer rows, torn across the first line of holes.
    ///
    /// ```text
    /// L = e + (n − 1)·p
    /// A_gv = 2·L·t,  A_nv = 2·(L − (n − 1/2)·d_h)·t,  A_nt = (m − 1)·(g − d_h)·t
    /// ```
    ///
    /// | symbol | meaning | unit |
    /// |---|---|---|
    /// | `along`, `rows` | bolts in a row `n`, rows `m` | 1 |
    /// | `end` | `e`, last bolt to the end | m |
    /// | `pitch`, `gauge` | `p` along, `g` across | m |
    /// | `hole` | counted hole `d_h`, see [`effective_hole`] | m |
    ///
    /// # Sources
    /// Geometry; AISC 360-22 J4.3.
    #[must_use]
    pub fn between_rows(
        (along, rows): (usize, usize),
        end: Length,
        (pitch, gauge): (Length, Length),
        hole: Length,
        thickness: Length,
    ) -> Self {
        let m = rows.max(1) as f64;
        let (gross, net) = sheared(along, end, pitch, hole, thickness);
        Self {
            shear_gross: 2.0 * gross,
            shear_net: 2.0 * net,
            tension_net: (m - 1.0) * cut(gauge - hole, thickness),
        }
    }

    /// The block between a row of bolts and the free edge beside it, pulled towards the end of a ply:
    /// sheared along the row that is farthest from the edge, torn from there across to the edge.
    ///
    /// ```text
    /// L = e + (n − 1)·p
    /// A_gv = L·t,  A_nv = (L − (n − 1/2)·d_h)·t,  A_nt = (e_2 + (m − 1)·g − (m − 1/2)·d_h)·t
    /// ```
    ///
    /// Symbols as for [`between_rows`](Self::between_rows); `edge` is `e_2`, from the row nearest to it.
    ///
    /// # Sources
    /// Geometry; AISC 360-22 J4.3.
    #[must_use]
    pub fn to_edge(
        (along, rows): (usize, usize),
        end: Length,
        (pitch, gauge): (Length, Length),
        edge: Length,
        hole: Length,
        thickness: Length,
    ) -> Self {
        let m = rows.max(1) as f64;
        let (gross, net) = sheared(along, end, pitch, hole, thickness);
        Self {
            shear_gross: gross,
            shear_net: net,
            tension_net: cut(edge + (m - 1.0) * gauge - (m - 0.5) * hole, thickness),
        }
    }
}

/// Area of a cut through a ply, none where holes take all of it.
fn cut(length: Length, thickness: Length) -> Area {
    mm2(length.max(mm(0.0)).si() * thickness.si() * 1e6)
}

/// Gross and net area along one row of bolts to the end of the ply.
fn sheared(
    along: usize,
    end: Length,
    pitch: Length,
    hole: Length,
    thickness: Length,
) -> (Area, Area) {
    let n = along.max(1) as f64;
    let length = end + (n - 1.0) * pitch;
    (
        cut(length, thickness),
        cut(length - (n - 0.5) * hole, thickness),
    )
}

/// Block shear.
///
/// ```text
/// R = min(0.60·F_u·A_nv, 0.60·F_y·A_gv) + U_bs·F_u·A_nt,   U_bs = 1
/// ```
///
/// # Sources
/// AISC 360-22 J4.3.
#[must_use]
pub fn block_shear(fy: Stress, fu: Stress, block: &Block) -> Force {
    let shear =
        (0.60 * fu.si() * block.shear_net.si()).min(0.60 * fy.si() * block.shear_gross.si());
    newton(shear + fu.si() * block.tension_net.si())
}

/// A tube as a section: area and second moments, with and without holes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TubeSection {
    /// Area, m².
    area: f64,
    /// Second moment about the axis that bending up and down turns about, m⁴.
    second_up: f64,
    /// Second moment about the upright axis, m⁴.
    second_side: f64,
    height: f64,
    width: f64,
    round: bool,
}

impl TubeSection {
    /// A tube with sharp corners, `height` upright and `width` across.
    ///
    /// ```text
    /// A = b·h − b_i·h_i,   I = (b·h³ − b_i·h_i³)/12
    /// ```
    ///
    /// # Sources
    /// Elementary.
    #[must_use]
    pub fn gross(height: Length, width: Length, wall: Length) -> Self {
        let (h, b, t) = (height.si(), width.si(), wall.si());
        let (hi, bi) = ((h - 2.0 * t).max(0.0), (b - 2.0 * t).max(0.0));
        Self {
            area: h * b - hi * bi,
            second_up: (b * h.powi(3) - bi * hi.powi(3)) / 12.0,
            second_side: (h * b.powi(3) - hi * bi.powi(3)) / 12.0,
            height: h,
            width: b,
            round: false,
        }
    }

    /// The same with its corners rounded to an outside radius.
    #[must_use]
    pub fn rounded(mut self, wall: Length, corner: Length) -> Self {
        let (wall, corner) = (
            wall.si(),
            corner.si().min(0.5 * self.width.min(self.height)),
        );
        let (area, up) = rounded_off(self.height, wall, corner);
        let (_, side) = rounded_off(self.width, wall, corner);
        self.area -= area;
        self.second_up -= up;
        self.second_side -= side;
        self
    }

    /// A round tube, or a round bar where the wall is half of its diameter.
    ///
    /// ```text
    /// A = π/4·(D² − d²),   I = π/64·(D⁴ − d⁴)
    /// ```
    ///
    /// # Sources
    /// Elementary.
    #[must_use]
    pub fn round(diameter: Length, wall: Length) -> Self {
        let outer = diameter.si();
        let inner = (outer - 2.0 * wall.si()).max(0.0);
        let second = PI / 64.0 * (outer.powi(4) - inner.powi(4));
        Self {
            area: FRAC_PI_4 * (outer * outer - inner * inner),
            second_up: second,
            second_side: second,
            height: outer,
            width: outer,
            round: true,
        }
    }

    /// Takes away a hole through a wall: its size and the place of its middle, each upright and across.
    ///
    /// ```text
    /// A − a,   I − a·(y² + s²/12)
    /// ```
    ///
    /// # Sources
    /// Elementary.
    #[must_use]
    pub fn without(mut self, size: [Length; 2], place: [Length; 2]) -> Self {
        let ([high, wide], [up, side]) = (size.map(InUnits::si), place.map(InUnits::si));
        let area = high * wide;
        self.area -= area;
        self.second_up -= area * (up * up + high * high / 12.0);
        self.second_side -= area * (side * side + wide * wide / 12.0);
        self
    }

    /// Largest tensile stress under a pull and bending both ways.
    ///
    /// ```text
    /// σ = N/A + M_1·h/(2·I_1) + M_2·b/(2·I_2);   round: N/A + D/2·√((M_1/I_1)² + (M_2/I_2)²)
    /// ```
    ///
    /// | symbol | meaning | unit |
    /// |---|---|---|
    /// | `pull` | force along the tube `N`, either way | N |
    /// | `up`, `side` | moments `M_1` up and down, `M_2` sideways | N·m |
    ///
    /// `None` where the holes have used the section up.
    ///
    /// # Sources
    /// Elementary.
    #[must_use]
    pub fn stress(&self, pull: Force, up: f64, side: f64) -> Option<Stress> {
        if self.area <= 0.0 || self.second_up <= 0.0 || self.second_side <= 0.0 {
            return None;
        }
        let pulled = pull.si().abs() / self.area;
        let up = up.abs() * self.height / (2.0 * self.second_up);
        let side = side.abs() * self.width / (2.0 * self.second_side);
        // No point of a round tube is farthest out both ways.
        let pa = if self.round {
            pulled + up.hypot(side)
        } else {
            pulled + up + side
        };
        Some(Stress::of_si(pa))
    }
}

//! The axle case: a slipped bolt through a hollow tube bends between the cheeks and the walls.

use crate::quantity::{Force, InUnits, Length, Stress, Torque, mm, newton, newton_metre};
use std::f64::consts::PI;

/// Factor of safety on bending of a round bar.
///
/// # Sources
/// AISC 360-22 F1 (Ω 1.67).
pub const OMEGA: f64 = 1.67;

/// Lever between the force of a cheek and the reaction of the wall beside it.
///
/// ```text
/// a = t_c/2 + g + t_w/2
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `cheek` | thickness of the cheek `t_c` | m |
/// | `gap` | gap or packing between cheek and wall `g` | m |
/// | `wall` | thickness of the wall `t_w` | m |
///
/// Each force in the middle of its ply. The same whether the cheeks lie outside the tube or inside.
///
/// # Sources
/// Statics.
#[must_use]
pub fn lever(cheek: Length, gap: Length, wall: Length) -> Length {
    0.5 * cheek + gap + 0.5 * wall
}

/// Largest bending moment in the bolt.
///
/// ```text
/// M = V·a
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `per_plane` | force in one plane between cheek and wall `V` | N |
/// | `lever` | `a` of [`lever`] | m |
///
/// With a cheek on each side the moment is the same all the way between the walls. With one fitting the
/// bolt hangs over the near wall and the far wall holds its end: the same moment, at the near wall. No
/// relief is taken from head and nut.
///
/// # Sources
/// Statics.
#[must_use]
pub fn moment(per_plane: Force, lever: Length) -> Torque {
    newton_metre(per_plane.si() * lever.si())
}

/// Force on the near wall where one fitting pulls on a bolt that both walls hold.
///
/// ```text
/// R = V·(1 + a/L)
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `span` | distance between the middles of the walls `L` | m |
///
/// # Sources
/// Statics of a beam with an overhang.
#[must_use]
pub fn near_wall(per_plane: Force, lever: Length, span: Length) -> Force {
    newton(per_plane.si() * (1.0 + lever.si() / span.si().max(1e-6)))
}

/// Elastic section modulus of a round bar.
///
/// ```text
/// W = π·d³/32
/// ```
///
/// # Sources
/// Elementary.
fn section_modulus(d: Length) -> f64 {
    PI * d.si().powi(3) / 32.0
}

/// Moment at which the surface of the bolt begins to yield.
///
/// ```text
/// M_y = W·f_y,   W = π·d³/32
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `d` | minor diameter where threads bend, else the shank | m |
///
/// # Sources
/// Elementary.
#[must_use]
pub fn first_yield(fy: Stress, d: Length) -> Torque {
    newton_metre(section_modulus(d) * fy.si())
}

/// Full plastic moment of a round bar.
///
/// ```text
/// M_p = Z·f_y,   Z = d³/6
/// ```
///
/// # Sources
/// Elementary; AISC 360-22 F11 has the same limit, from memory.
#[must_use]
pub fn plastic(fy: Stress, d: Length) -> Torque {
    newton_metre(d.si().powi(3) / 6.0 * fy.si())
}

/// Bending strength that is counted on.
///
/// ```text
/// M_R = 1.5·W·f_y
/// ```
///
/// Below the full plastic moment, which is 1.70·W·f_y. With [`OMEGA`] a bolt that holds stays below its
/// first yield.
///
/// # Sources
/// EN 1993-1-8 Table 3.10 for pins, from memory; AISC 360-22 F11 allows 1.6·W·f_y, from memory: the
/// lower stands.
#[must_use]
pub fn strength(fy: Stress, d: Length) -> Torque {
    first_yield(fy, d) * 1.5
}

/// How far the bent bolt lies beside the straight line through the middles of the two walls, with a
/// cheek on each side of the tube.
///
/// ```text
/// 0 ≤ x ≤ L:   y = −V·a·x·(L − x)/(2·E·I)
/// x = −u < 0:  y =  V·a·L·u/(2·E·I) + V·u²·(3a − u)/(6·E·I),  u ≤ a; from there on straight
/// I = π·d⁴/64
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `per_plane` | force of each cheek `V`; `y` counts along it | N |
/// | `lever` | `a` of [`lever`] | m |
/// | `span` | distance between the middles of the walls `L` | m |
/// | `modulus` | `E` of the bolt | Pa |
/// | `d` | diameter of the bolt | m |
/// | `at` | place along the bolt `x`, from the middle of the first wall towards the second | m |
///
/// Small deflections of an elastic beam, walls and cheeks as points; no relief from head and nut.
///
/// # Sources
/// Elastic beam with two equal overhangs, Machinery's Handbook (from memory).
#[must_use]
pub fn bow(
    per_plane: Force,
    (lever, span): (Length, Length),
    (modulus, d): (Stress, Length),
    at: Length,
) -> Length {
    let (a, l, v) = (lever.si(), span.si(), per_plane.si());
    let flexural = modulus.si() * PI * d.si().powi(4) / 64.0;
    let x = at.si();
    let deflection = if (0.0..=l).contains(&x) {
        -v * a * x * (l - x) / (2.0 * flexural)
    } else {
        let out = if x < 0.0 { -x } else { x - l };
        let bent = out.min(a);
        let hanging = v * bent * bent * (3.0 * a - bent) / (6.0 * flexural);
        let beyond = v * a * a / (2.0 * flexural) * (out - bent);
        v * a * l * out / (2.0 * flexural) + hanging + beyond
    };
    Length::of_si(deflection)
}

/// Pressure of the bolt on the rim of a hole.
///
/// ```text
/// p = R/(d·t)
/// ```
///
/// # Sources
/// Elementary.
#[must_use]
pub fn pressure(force: Force, d: Length, thickness: Length) -> Stress {
    let area = (d.si() * thickness.si()).max(1e-12);
    Stress::of_si(force.si() / area)
}

/// Sideways play of a bolt in its holes: how far the joint moves when it slips from one end to the other.
///
/// ```text
/// s = (d_1 − d) + (d_2 − d)
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `d_1`, `d_2` | holes in the two plies | m |
///
/// # Sources
/// Geometry.
#[must_use]
pub fn slip_travel(d: Length, first: Length, second: Length) -> Length {
    (first - d).max(mm(0.0)) + (second - d).max(mm(0.0))
}

//! Stiffness of bolts and of solid stacks.

use crate::quantity::{Area, InUnits, Length, Stiffness, Stress, newton_per_mm};
use std::f64::consts::PI;

/// tan 30°, half angle of the pressure frustum.
const TAN_30: f64 = 0.577_350_269_189_625_8;

/// Stiffness of a bolt: shank and thread in series.
///
/// ```text
/// k_b = A_d·A_t·E / (A_d·l_t + A_t·l_d)
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `shank_area` | `A_d` | m² |
/// | `stress_area` | `A_t` | m² |
/// | `shank_length`, `thread_length` | `l_d`, `l_t` in the grip | m |
///
/// # Sources
/// Shigley 9e Table 8-7.
#[must_use]
pub fn bolt(
    modulus: Stress,
    shank_area: Area,
    stress_area: Area,
    shank_length: Length,
    thread_length: Length,
) -> Stiffness {
    let (ad, at) = (shank_area.si(), stress_area.si());
    newton_per_mm(
        ad * at * modulus.si() / (ad * thread_length.si() + at * shank_length.si()) * 1e-3,
    )
}

/// Stiffness of one conical frustum of 30° in a solid stack.
///
/// ```text
/// k = π·E·d·tan 30° / ln{ [(2t·tan 30° + D − d)(D + d)] / [(2t·tan 30° + D + d)(D − d)] }
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `d` | hole (bolt) diameter | m |
/// | `small_diameter` | diameter `D` at the narrow end | m |
/// | `t` | height of the frustum | m |
///
/// # Sources
/// Shigley 9e Eq. 8-20.
#[must_use]
pub fn frustum(modulus: Stress, d: Length, small_diameter: Length, t: Length) -> Stiffness {
    let (d, big, t) = (d.si(), small_diameter.si(), t.si());
    let cone = 2.0 * TAN_30 * t;
    let ratio = ((cone + big - d) * (big + d)) / ((cone + big + d) * (big - d));
    newton_per_mm(PI * modulus.si() * d * TAN_30 / ratio.ln() * 1e-3)
}

/// Flexibility of a cone of pressure that widens on its way from head or nut through several plies, m/N.
///
/// ```text
/// 1/k = Σ 1/k_i        D_{i+1} = D_i + 2·t_i·tan 30°
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `plies` | thickness and modulus of each ply, from the head or the nut on | m, Pa |
/// | `d` | hole (bolt) diameter | m |
/// | `face` | diameter `D` of the bearing face | m |
/// | `reach` | how far the cone goes | m |
///
/// Softer than cones that begin anew at the washer's rim in each ply: no part of the washer past the bearing face is
/// taken to press. What is not there gives nothing.
///
/// # Sources
/// Shigley 9e section 8-5 and Eq. 8-20.
#[must_use]
pub fn cone(plies: &[(Length, Stress)], d: Length, face: Length, reach: Length) -> f64 {
    let (mut diameter, mut left, mut flexible) = (face, reach, 0.0);
    for (thickness, modulus) in plies {
        let t = thickness.min(left);
        if t.si() > 0.0 {
            flexible += 1.0 / frustum(*modulus, d, diameter, t).si();
        }
        diameter += t * (2.0 * TAN_30);
        left -= t;
    }
    flexible
}

/// Stiffness of a solid stack of one material between equal washers: two frusta.
///
/// ```text
/// k_m = 0.5774·π·E·d / ( 2·ln{ [(0.5774·l + D − d)(D + d)] / [(0.5774·l + D + d)(D − d)] } )
/// ```
///
/// # Sources
/// Shigley 9e Eq. 8-21.
#[must_use]
pub fn solid_stack(modulus: Stress, d: Length, washer: Length, grip: Length) -> Stiffness {
    frustum(modulus, d, washer, grip * 0.5) * 0.5
}

/// Stiffness of a solid stack by the exponential fit.
///
/// ```text
/// k_m = E·d·A·exp(B·d/l)
/// ```
///
/// # Sources
/// Wileman, Choudhury & Green 1991, constants in Shigley 9e Table 8-8.
#[must_use]
pub fn wileman(modulus: Stress, d: Length, grip: Length, a: f64, b: f64) -> Stiffness {
    newton_per_mm(modulus.si() * d.si() * a * (b * d.si() / grip.si()).exp() * 1e-3)
}

/// Stiffness of a prism: `k = E·A/l`.
#[must_use]
pub fn prism(modulus: Stress, area: Area, length: Length) -> Stiffness {
    newton_per_mm(modulus.si() * area.si() / length.si() * 1e-3)
}

/// Springs one after the other: `1/k = Σ 1/k_i`.
#[must_use]
pub fn in_series(springs: &[Stiffness]) -> Stiffness {
    newton_per_mm(1e-3 / springs.iter().map(|k| 1.0 / k.si()).sum::<f64>())
}

/// Share of an outside pull that the bolt feels.
///
/// ```text
/// C = k_b / (k_b + k_m)
/// ```
///
/// # Sources
/// Shigley 9e Eq. 8-24.
#[must_use]
pub fn load_factor(bolt: Stiffness, members: Stiffness) -> f64 {
    bolt.si() / (bolt.si() + members.si())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{mm, mpa};

    /// A cone cut in two is as soft as the whole, and two of them make a solid stack.
    #[test]
    fn plies_of_one_metal_are_one_cone() {
        let (e, d, face) = (mpa(207e3), mm(12.0), mm(18.0));
        let whole = 1.0 / frustum(e, d, face, mm(30.0)).si();
        let cut = cone(&[(mm(7.0), e), (mm(40.0), e)], d, face, mm(30.0));
        assert!((cut / whole - 1.0).abs() < 1e-12);
        let stack = solid_stack(e, d, face, mm(60.0)).si();
        assert!((2.0 * cut * stack - 1.0).abs() < 1e-12);
    }
}

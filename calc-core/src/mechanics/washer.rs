//! When a washer stops being rigid.

use crate::quantity::{Force, InUnits, Length, Stress, newton};
use std::f64::consts::PI;

/// Clamp force at which a washer dishes: pushed by the nut near its bore, held at a circle further out.
///
/// ```text
/// F = 2π·m·(r_w − r_i)/(r − r_n),   m = f_y·t²/4
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `r_w`, `r_i` | outside and bore radius of the washer | m |
/// | `r_n` | radius of the nut's or head's bearing face | m |
/// | `r` | radius at which the face under the washer pushes back | m |
/// | `t` | thickness; the least of the tolerance for verdicts | m |
///
/// Axisymmetric plastic mechanism (a cone). Infinite where the reaction lies under the nut.
///
/// # Sources
/// Elementary plastic plate theory, own derivation.
#[must_use]
pub fn dishing_load(
    fy: Stress,
    thickness: Length,
    outer: Length,
    bore: Length,
    nut_face: Length,
    reaction: Length,
) -> Force {
    let moment = fy.si() * thickness.si().powi(2) / 4.0;
    let arm = 0.5 * (reaction.si() - nut_face.si());
    let body = 0.5 * (outer.si() - bore.si()).max(0.0);
    if arm <= 0.0 {
        return newton(f64::INFINITY);
    }
    newton(2.0 * PI * moment * body / arm)
}

/// How much wider a pressure grows through a ply, to either side, as a share of its thickness.
pub const SPREAD: f64 = 0.8;

/// Diameter of the pressure under a ply that is pressed on a smaller one.
///
/// ```text
/// d' = d + 1.6·t
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `d` | outside diameter of what presses: the bearing face of nut or head, or the pressure above | m |
/// | `t` | thickness of the washer or ply | m |
///
/// A ply that reaches farther dishes and does not press there: as a plate, the moment of a washer of 250 MPa is used up
/// within its thickness past the nut at the pressures of bolted joints. What lies nearer than its thickness is a
/// strut.
///
/// # Sources
/// VDI 2230, under washers, from memory; slope 1:1 through plates in EN 1993-1-5 6.3, from memory too, has 8 to 13 % more
/// area under the narrow washers of the tables.
#[must_use]
pub fn spread(diameter: Length, thickness: Length) -> Length {
    diameter + thickness * (2.0 * SPREAD)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{mm, mpa};

    #[test]
    fn pressure_grows_by_its_thickness_to_either_side() {
        assert!((spread(mm(19.0), mm(2.5)).si() * 1e3 - 23.0).abs() < 1e-9);
    }

    /// At 434 MPa (1.8·f_y of 6061-T6) a washer 2.5 mm thick past a nut of 19 mm carries no farther than its
    /// thickness as a plate: the load on a ring of that width would dish it.
    #[test]
    fn a_washer_carries_no_farther_as_a_plate() {
        let ring = 434.0 * std::f64::consts::FRAC_PI_4 * (24.0f64.powi(2) - 19.0f64.powi(2));
        let dishing = dishing_load(mpa(250.0), mm(2.5), mm(27.0), mm(13.5), mm(19.0), mm(21.5));
        assert!(dishing.si() < ring, "{dishing:?} {ring}");
    }
}

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

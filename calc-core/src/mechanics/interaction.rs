//! Tension, shear and bending in one bolt together.

use crate::quantity::{InUnits, Stress, mpa};

/// Tensile strength that shear leaves to a bolt.
///
/// ```text
/// F'_nt = 1.3·F_nt − (Ω·F_nt/F_nv)·f_rv ≤ F_nt
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `fnt`, `fnv` | nominal strengths in tension and in shear, on the shank area | Pa |
/// | `frv` | shear stress asked for, on the shank area | Pa |
/// | `factor` | Ω, or 1/φ with factored loads | 1 |
///
/// Never below zero. Holds for bearing-type joints, that is for joints that have slipped.
///
/// # Sources
/// AISC 360-22 J3.8.
#[must_use]
pub fn tension_left(fnt: Stress, fnv: Stress, frv: Stress, factor: f64) -> Stress {
    let left = 1.3 * fnt.si() - factor * fnt.si() / fnv.si() * frv.si();
    mpa(left.clamp(0.0, fnt.si()) * 1e-6)
}

/// What a bolt uses of its strength in shear and tension together.
///
/// ```text
/// U = max(u_v, u_t, (u_v + u_t)/1.3)
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `shear`, `tension` | `u_v`, `u_t`: share used of each alone, with its factor | 1 |
///
/// The condition of [`tension_left`], solved for the share used.
///
/// # Sources
/// AISC 360-22 J3.8.
#[must_use]
pub fn aisc(shear: f64, tension: f64) -> f64 {
    shear.max(tension).max((shear + tension) / 1.3)
}

/// The same by the European column.
///
/// ```text
/// U = max(F_t/F_t,Rd, F_v/F_v,Rd + F_t/(1.4·F_t,Rd))
/// ```
///
/// # Sources
/// EN 1993-1-8 Table 3.4.
#[must_use]
pub fn european(shear: f64, tension: f64) -> f64 {
    tension.max(shear + tension / 1.4)
}

/// Bending and shear of a pin.
///
/// ```text
/// U = √((M/M_R)² + (V/V_R)²)
/// ```
///
/// The root, so that the share used grows with the load and not with its square.
///
/// # Sources
/// EN 1993-1-8 Table 3.10, from memory.
#[must_use]
pub fn pin(bending: f64, shear: f64) -> f64 {
    bending.hypot(shear)
}

//! What carries the load when the joint has slipped: the bolt in shear, the wall at its hole.

use crate::quantity::{Area, Force, InUnits, Length, Stress, newton};

/// Factor of safety on bolt shear and on bearing of a through-bolt in a hollow section.
///
/// # Sources
/// AISC 360-22 J3.7 and J7 (Ω 2.00).
pub const OMEGA: f64 = 2.00;

/// Shear strength of a bolt, all planes.
///
/// ```text
/// R = m·c·F_u·A_b,   c = 0.450 threads in the plane, 0.563 not
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `shank_area` | `A_b` from the nominal diameter | m² |
/// | `planes` | shear planes `m` | 1 |
///
/// # Sources
/// AISC 360-22 Table J3.2 (other threaded parts).
#[must_use]
pub fn bolt(tensile: Stress, shank_area: Area, planes: f64, threads_in_plane: bool) -> Force {
    let share = if threads_in_plane { 0.450 } else { 0.563 };
    newton(planes * share * tensile.si() * shank_area.si())
}

/// What is left of the shear strength of a bolt that goes through packing.
///
/// ```text
/// β_p = 9·d/(8·d + 3·t_p)   t_p > d/3, otherwise 1
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `d` | nominal diameter of the bolt | m |
/// | `t_p` | packing in one shear plane: of two sides the thicker | m |
///
/// American practice takes about as much off beyond 1/4 in (AISC 360-22 J5.2: 1 − 0.4·(t_p/25.4 mm − 0.25), up to
/// 3/4 in).
///
/// # Sources
/// EN 1993-1-8, 3.6.1(12) and (13), from memory.
#[must_use]
pub fn packed(d: Length, packing: Length) -> f64 {
    let (d, packing) = (d.si(), packing.si());
    (9.0 * d / (8.0 * d + 3.0 * packing).max(1e-9)).min(1.0)
}

/// Bearing of a through-bolt on the walls of a hollow section.
///
/// ```text
/// R = n·1.8·f_y·d·t
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `walls` | number of walls `n` that bear | 1 |
///
/// Through-bolts do not press the wall flat, so the higher value for plies in firm contact does not
/// count.
///
/// # Sources
/// AISC 360-22 J3.11b and J7; for aluminium our reading.
#[must_use]
pub fn wall_bearing(fy: Stress, d: Length, wall: Length, walls: f64) -> Force {
    newton(walls * 1.8 * fy.si() * d.si() * wall.si())
}

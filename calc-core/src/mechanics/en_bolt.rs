//! One bolt by the European column: shear, tension, punching. Design resistances, to be met by design
//! loads.

use super::bearing::GAMMA_M2;
use crate::catalog::{BoltGrade, ThreadShear};
use crate::quantity::{Area, Force, InUnits, Length, Stress, newton};
use std::f64::consts::PI;

/// Shear resistance of one plane.
///
/// ```text
/// F_v,Rd = α_v·f_ub·A/γ_M2
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `alpha_v` | 0.6 through the shank; through the threads 0.6 for classes 4.6, 5.6, 8.8, else 0.5 | 1 |
/// | `area` | shank, or stress area where threads lie in the plane | m² |
///
/// # Sources
/// EN 1993-1-8 Table 3.4.
#[must_use]
pub fn shear(alpha_v: f64, fub: Stress, area: Area) -> Force {
    newton(alpha_v * fub.si() * area.si() / GAMMA_M2)
}

/// Share `α_v` through the threads: 0.6 for the classes that the table names, otherwise the lower.
///
/// # Sources
/// EN 1993-1-8 Table 3.4; for grades that it does not name the lower value is our choice.
#[must_use]
pub const fn alpha_v_threads(grade: &BoltGrade) -> f64 {
    match grade.thread_shear() {
        ThreadShear::SixTenths => 0.6,
        ThreadShear::OneValue | ThreadShear::Usual => 0.5,
    }
}

/// Tension resistance.
///
/// ```text
/// F_t,Rd = 0.9·f_ub·A_s/γ_M2
/// ```
///
/// # Sources
/// EN 1993-1-8 Table 3.4.
#[must_use]
pub fn tension(fub: Stress, stress_area: Area) -> Force {
    newton(0.9 * fub.si() * stress_area.si() / GAMMA_M2)
}

/// Punching of head or nut through the ply under it.
///
/// ```text
/// B_p,Rd = 0.6·π·d_m·t_p·f_u/γ_M2
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `mean_width` | `d_m`, mean of the widths across flats and corners | m |
/// | `thickness` | ply under head or nut `t_p` | m |
///
/// A stiff washer makes `d_m` larger; that is not counted.
///
/// # Sources
/// EN 1993-1-8 Table 3.4.
#[must_use]
pub fn punching(fu: Stress, mean_width: Length, thickness: Length) -> Force {
    newton(0.6 * PI * mean_width.si() * thickness.si() * fu.si() / GAMMA_M2)
}

/// Mean of the widths of a hexagon across flats and across corners.
///
/// ```text
/// d_m = s·(1 + 2/√3)/2
/// ```
///
/// # Sources
/// Geometry of a hexagon with sharp corners.
#[must_use]
pub fn mean_width(across_flats: Length) -> Length {
    across_flats * (0.5 + 1.0 / 3.0_f64.sqrt())
}

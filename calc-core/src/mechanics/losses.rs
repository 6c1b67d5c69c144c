//! What clamp is lost after the wrench is taken off.

use crate::quantity::{Force, InUnits, Length, Stiffness, TemperatureInterval, newton};

/// Flattening of rough surfaces, turned into lost clamp.
///
/// ```text
/// F_Z = f_Z / (1/k_b + 1/k_m)
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `flattening` | `f_Z`, sum over threads, faces and interfaces | m |
/// | `bolt`, `members` | stiffness of bolt and of what it clamps | N/m |
///
/// # Sources
/// VDI 2230 (from memory).
#[must_use]
pub fn embedding(flattening: Length, bolt: Stiffness, members: Stiffness) -> Force {
    newton(flattening.si() / (1.0 / bolt.si() + 1.0 / members.si()))
}

/// Change of clamp by a temperature step; positive: more clamp.
///
/// ```text
/// ΔF = (α_m − α_b)·ΔT·l / (1/k_b + 1/k_m)
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `alpha_members`, `alpha_bolt` | thermal expansion | 1/K |
/// | `step` | change of temperature since tightening | K |
/// | `grip` | clamped length `l` | m |
///
/// # Sources
/// Elementary thermoelasticity.
#[must_use]
pub fn thermal(
    alpha_members: f64,
    alpha_bolt: f64,
    step: TemperatureInterval,
    grip: Length,
    bolt: Stiffness,
    members: Stiffness,
) -> Force {
    let strain = (alpha_members - alpha_bolt) * step.value;
    newton(strain * grip.si() / (1.0 / bolt.si() + 1.0 / members.si()))
}

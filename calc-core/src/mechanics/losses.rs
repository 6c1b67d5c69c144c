//! What clamp is lost after the wrench is taken off.

use crate::quantity::{Force, InUnits, Length, Stiffness, TemperatureInterval, mm, newton};

/// How much the rough faces of a joint flatten after tightening, all together.
///
/// ```text
/// f_Z = 3 µm + 2·4.5 µm + i·2.5 µm
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `interfaces` | pairs of faces between head and nut `i` | 1 |
///
/// Threads, the faces under head and nut, and each pair of faces between; medium roughness, load across
/// the bolt.
///
/// # Sources
/// VDI 2230 (from memory).
#[must_use]
pub fn flattening(interfaces: f64) -> Length {
    mm((3.0 + 2.0 * 4.5 + interfaces * 2.5) * 1e-3)
}

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

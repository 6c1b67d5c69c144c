//! Torque and clamp: the short form with a nut factor, the friction form, what scatter does and where
//! the work goes.

use crate::quantity::{Area, Force, InUnits, Length, Stress, Torque, mpa, newton, newton_metre};
use std::f64::consts::PI;

/// Thread half angle, 30° for ISO and Unified threads.
const HALF_ANGLE_COS: f64 = 0.866_025_403_784_438_6;

/// Torque for a clamp by the short form.
///
/// ```text
/// T = K·d·F
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `k` | nut factor | 1 |
/// | `d` | nominal diameter | m |
/// | `clamp` | clamp force `F` | N |
///
/// Holds where K was found for that bolt, finish and lubrication; it says nothing about scatter.
///
/// # Examples
/// ```
/// use calc_core::mechanics::tightening::torque_for;
/// use calc_core::quantity::{InUnits, inch, pound_force, pound_force_foot};
/// let torque = torque_for(0.20, inch(0.375), pound_force(4_940.0));
/// assert!((torque.si() / pound_force_foot(30.9).si() - 1.0).abs() < 0.002);
/// ```
///
/// # Sources
/// Shigley 9e Eq. 8-27.
#[must_use]
pub fn torque_for(k: f64, d: Length, clamp: Force) -> Torque {
    newton_metre(k * d.si() * clamp.si())
}

/// Clamp from a torque by the short form, `F = T/(K·d)`.
///
/// # Sources
/// Shigley 9e Eq. 8-27.
#[must_use]
pub fn clamp_from(k: f64, d: Length, torque: Torque) -> Force {
    newton(torque.si() / (k * d.si()))
}

/// Torque per newton of clamp, by what it does; in metres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TorqueParts {
    /// Stretches the bolt: `P/(2π)`.
    pub stretch: f64,
    /// Rubs in the threads: `μ_thread·d₂/(2·cos 30°)`.
    pub thread_friction: f64,
    /// Rubs under the turned face: `μ_face·D_m/2`.
    pub face_friction: f64,
}

impl TorqueParts {
    /// All of it.
    #[must_use]
    pub fn total(&self) -> f64 {
        self.stretch + self.thread_friction + self.face_friction
    }

    /// What goes through the threads and twists the bolt.
    #[must_use]
    pub fn in_thread(&self) -> f64 {
        self.stretch + self.thread_friction
    }
}

/// The friction form of the torque.
///
/// ```text
/// T/F = P/(2π) + μ_t·d₂/(2·cos 30°) + μ_f·D_m/2
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `pitch` | thread pitch `P` | m |
/// | `pitch_diameter` | `d₂` | m |
/// | `face_diameter` | mean friction diameter `D_m` under the turned part | m |
/// | `mu_thread`, `mu_face` | friction coefficients | 1 |
///
/// Holds for small thread lead (all fastening threads).
///
/// # Sources
/// VDI 2230 (`0.16·P + 0.58·d₂·μ_G + D_Km/2·μ_K`, from memory); MIL-HDBK-60 section 100.5.1 has the
/// same three terms.
#[must_use]
pub fn torque_parts(
    pitch: Length,
    pitch_diameter: Length,
    face_diameter: Length,
    mu_thread: f64,
    mu_face: f64,
) -> TorqueParts {
    TorqueParts {
        stretch: pitch.si() / (2.0 * PI),
        thread_friction: mu_thread * pitch_diameter.si() / (2.0 * HALF_ANGLE_COS),
        face_friction: mu_face * face_diameter.si() / 2.0,
    }
}

/// Friction that a nut factor implies when thread and face share one coefficient.
///
/// ```text
/// μ = (K·d − P/(2π)) / (d₂/(2·cos 30°) + D_m/2)
/// ```
///
/// Zero where K is so low that the pitch alone takes more.
#[must_use]
pub fn implied_friction(
    k: f64,
    d: Length,
    pitch: Length,
    pitch_diameter: Length,
    face_diameter: Length,
) -> f64 {
    let one = torque_parts(pitch, pitch_diameter, face_diameter, 1.0, 1.0);
    ((k * d.si() - one.stretch) / (one.thread_friction + one.face_friction)).max(0.0)
}

/// Clamp at the ends of the scatter: `F·(1 − Γ)`, `F·(1 + Γ)`.
///
/// # Sources
/// NASA-STD-5020B (form of the scatter on torque-controlled preload).
#[must_use]
pub fn scattered(nominal: Force, gamma: f64) -> (Force, Force) {
    (nominal * (1.0 - gamma), nominal * (1.0 + gamma))
}

/// Combined stress in the thread while the wrench turns (von Mises at the stress area).
///
/// ```text
/// σ = F/A_t,  τ = 16·T_thread/(π·d_s³),  σ_v = √(σ² + 3·τ²),  d_s = √(4·A_t/π)
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `clamp` | F | N |
/// | `area` | tensile stress area `A_t` | m² |
/// | `thread_torque` | torque that passes through the threads | N·m |
///
/// Elastic; the twist springs back partly when the wrench is taken off.
///
/// # Sources
/// VDI 2230 (from memory); elementary strength of materials.
#[must_use]
pub fn combined_stress(clamp: Force, area: Area, thread_torque: Torque) -> Stress {
    let a = area.si();
    let d_s = (4.0 * a / PI).sqrt();
    let sigma = clamp.si() / a;
    let tau = 16.0 * thread_torque.si() / (PI * d_s.powi(3));
    mpa((sigma * sigma + 3.0 * tau * tau).sqrt() * 1e-6)
}

/// Combined stress in the thread while the wrench turns, with the twist spread as in a thread that yields all over.
///
/// ```text
/// τ = 12·T_thread/(π·d_s³)     otherwise as combined_stress
/// ```
///
/// At the yield strength the whole thread gives way under pull and twist; the elastic form tells when its outermost
/// fiber begins to.
///
/// # Sources
/// VDI 2230 (from memory): polar section modulus of the fully plastic thread.
#[must_use]
pub fn combined_plastic(clamp: Force, area: Area, thread_torque: Torque) -> Stress {
    combined_stress(clamp, area, thread_torque * 0.75)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::inch;

    /// Friction 0.15 on 1/2-13 gives K ≈ 0.196 with the split 12 / 40 / 48 %.
    #[test]
    fn friction_form_gives_the_split_of_the_handbook_terms() {
        let (d, p) = (inch(0.5), inch(1.0 / 13.0));
        let d2 = inch(0.5 - 0.649_519 / 13.0);
        let parts = torque_parts(p, d2, inch(0.625), 0.15, 0.15);
        let k = parts.total() / d.si();
        assert!((k - 0.1962).abs() < 0.002, "K = {k}");
        assert!((parts.stretch / parts.total() - 0.125).abs() < 0.005);
        assert!((implied_friction(k, d, p, d2, inch(0.625)) - 0.15).abs() < 1e-12);
    }
}

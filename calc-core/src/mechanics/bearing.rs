//! The bolt against the edge of its hole: crushing of the ply, and tearing out towards an edge.

use crate::quantity::{Force, InUnits, Length, Stress, mm, newton};

/// Factor of safety on bearing and tear-out of aluminium plies.
///
/// # Sources
/// Aluminum Design Manual, chapter J (Ω 1.95), from memory.
pub const OMEGA_ALUMINIUM: f64 = 1.95;

/// Partial factor on bolts and on plies at bolts.
///
/// # Sources
/// EN 1993-1-8 Table 2.1 (γ_M2 1.25).
pub const GAMMA_M2: f64 = 1.25;

/// Load factor that turns a service load into a Eurocode design load.
///
/// # Sources
/// EN 1990 Table A1.2(B), variable action (γ_Q 1.5), from memory.
pub const GAMMA_Q: f64 = 1.5;

/// Bearing of a bolt on a ply in firm contact with its neighbour.
///
/// ```text
/// R = 2.4·d·t·F_u
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `fu` | tensile strength of the ply | Pa |
/// | `d` | nominal diameter of the bolt | m |
/// | `thickness` | thickness of the ply `t` | m |
///
/// Holds where the plies are clamped together, so that the rim of the hole cannot dish. Beyond it the
/// hole grows by more than 1/4 in. For the wall of a hollow section take
/// [`wall_bearing`](super::shear::wall_bearing).
///
/// # Sources
/// AISC 360-22 J3.11a and its commentary.
#[must_use]
pub fn firm_ply(fu: Stress, d: Length, thickness: Length) -> Force {
    newton(2.4 * d.si() * thickness.si() * fu.si())
}

/// Tear-out of the metal between a hole and the edge, or the next hole.
///
/// ```text
/// R = 1.2·l_c·t·F_u
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `clear` | clear distance `l_c` from the rim of the hole, in the direction of the force | m |
///
/// Two shear planes at 0.60·F_u. Holds for plies in firm contact and for the walls of a hollow section
/// alike.
///
/// # Sources
/// AISC 360-22 J3.11a, J3.11b.
#[must_use]
pub fn tear_out(fu: Stress, clear: Length, thickness: Length) -> Force {
    newton(1.2 * clear.si().max(0.0) * thickness.si() * fu.si())
}

/// Clear distance from the rim of a hole to an edge, from the distance of its middle.
#[must_use]
pub fn clear_to_edge(distance: Length, hole: Length) -> Length {
    (distance - 0.5 * hole).max(mm(0.0))
}

/// Clear distance between two holes, from the distance of their middles.
#[must_use]
pub fn clear_between(distance: Length, hole: Length) -> Length {
    (distance - hole).max(mm(0.0))
}

/// Bearing and tear-out of an aluminium ply in one.
///
/// ```text
/// R = min(d_e, 2·d)·t·F_tu
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `edge` | distance `d_e` from the middle of the hole to the edge; `None`: far from any | m |
///
/// # Sources
/// Aluminum Design Manual, chapter J, from memory.
#[must_use]
pub fn aluminium_ply(ftu: Stress, d: Length, thickness: Length, edge: Option<Length>) -> Force {
    let counted = edge.map_or(2.0 * d, |edge| edge.min(2.0 * d));
    newton(counted.si() * thickness.si() * ftu.si())
}

/// Factor of safety on bearing and tear-out of sheet.
///
/// # Sources
/// AISI S100, bolted connections (Ω 2.22), from memory.
pub const OMEGA_SHEET: f64 = 2.22;

/// Bearing of a bolt on sheet.
///
/// ```text
/// R = (4.64·t/25.4 mm + 1.53)·d·t·F_u
/// ```
///
/// Of cold-formed steel up to 3/16 in (4.76 mm) thick, at a hole that grows by no more than 1/4 in, as a thin ply
/// curls up beside the bolt. Taken for sheet of other metals too: our assumption.
///
/// # Sources
/// AISI specification of 2001, E3.3.2, as a letter to a list of engineers quotes it.
#[must_use]
pub fn sheet_ply(fu: Stress, d: Length, thickness: Length) -> Force {
    let inches = thickness.si() / mm(25.4).si();
    newton((4.64 * inches + 1.53) * d.si() * thickness.si() * fu.si())
}

/// Where a hole lies, as far as the Eurocode rule asks. `None`: no such edge or neighbour counts.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct HolePlace {
    /// `e_1`, to the edge in the direction of the force.
    pub end: Option<Length>,
    /// `p_1`, to the next hole in the direction of the force.
    pub pitch: Option<Length>,
    /// `e_2`, to the edge beside it.
    pub edge: Option<Length>,
    /// `p_2`, to the next hole beside it.
    pub gauge: Option<Length>,
}

impl HolePlace {
    /// `α_b = min(e_1/(3·d_0), p_1/(3·d_0) − 1/4, f_ub/f_u, 1)`.
    ///
    /// # Sources
    /// EN 1993-1-8 Table 3.4.
    #[must_use]
    pub fn alpha_b(&self, hole: Length, bolt_over_ply: f64) -> f64 {
        let over = |distance: Length| distance.si() / (3.0 * hole.si());
        bolt_over_ply
            .min(1.0)
            .min(self.end.map_or(1.0, over))
            .min(self.pitch.map_or(1.0, |pitch| over(pitch) - 0.25))
            .max(0.0)
    }

    /// `k_1 = min(2.8·e_2/d_0 − 1.7, 1.4·p_2/d_0 − 1.7, 2.5)`.
    ///
    /// # Sources
    /// EN 1993-1-8 Table 3.4.
    #[must_use]
    pub fn k_1(&self, hole: Length) -> f64 {
        let over = |distance: Length| distance.si() / hole.si();
        2.5_f64
            .min(self.edge.map_or(2.5, |edge| 2.8 * over(edge) - 1.7))
            .min(self.gauge.map_or(2.5, |gauge| 1.4 * over(gauge) - 1.7))
            .max(0.0)
    }
}

/// Design bearing resistance of a ply.
///
/// ```text
/// F_b,Rd = k_1·α_b·f_u·d·t/γ_M2
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `fub` | tensile strength of the bolt | Pa |
/// | `hole` | diameter of the hole `d_0` | m |
///
/// Against a design load, which is [`GAMMA_Q`] times the service load. Oversize holes count 0.8 of it.
///
/// # Sources
/// EN 1993-1-8 Table 3.4.
#[must_use]
pub fn en_ply(
    (fu, fub): (Stress, Stress),
    (d, hole): (Length, Length),
    thickness: Length,
    place: &HolePlace,
) -> Force {
    let alpha_b = place.alpha_b(hole, fub.si() / fu.si());
    newton(place.k_1(hole) * alpha_b * fu.si() * d.si() * thickness.si() / GAMMA_M2)
}

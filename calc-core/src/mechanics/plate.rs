//! A plate on the face that carries the bolt's load to the side walls.
//!
//! The plate spans as a beam between two reaction lines near the side walls and spreads along the
//! tube as a beam on the elastic foundation that the tube's frame gives.

use super::face::{FaceCurve, FaceTube, STRONGEST, out_of_range};
use super::side_wall;
use crate::quantity::{Force, InUnits, Length, Stiffness, Stress, newton};

/// Share of the bare face's curve that helps beside a plate; fitted to finite-element runs
/// (`tests/reference/fe`).
const FACE: f64 = 0.7;

/// A spreader plate.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Plate {
    /// Thickness.
    pub thickness: Length,
    /// Length along the tube.
    pub length: Length,
    /// Width across the face.
    pub width: Length,
    /// Modulus of elasticity.
    pub modulus: Stress,
    /// Yield strength.
    pub yield_strength: Stress,
}

/// What limits a plate on a tube; the least of them governs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlateLimits {
    /// The plate bends, `2·m_p·l_eff/a`, and the face beside it has its strength, 0.7 of its load at 3 %.
    pub plate: Force,
    /// The corner between face and side wall folds, `4·m_t·l_c/e`, with the face as before.
    pub corner: Force,
    /// Both side walls yield.
    pub wall_yielding: Force,
    /// Both side walls cripple.
    pub wall_crippling: Force,
    /// Both side walls buckle.
    pub wall_buckling: Force,
}

/// Clamp force against indentation of one face with a plate on it.
///
/// ```text
/// F(δ)   = (F_l^(−4) + F_w^(−4))^(−¼),   F_w = least of the limits of the side walls
/// F_l(δ) = [ (K·δ)^(−2) + F_p^(−2) ]^(−½) + 0.7·F_face(δ),   F_p = lesser of plate and corner
/// plate   F = 2·m_p·l_eff/a,   m_p = f_yp·t_p²/4,  l_eff = min(l_p, d_w + 4a),  a = c − d_w/2
/// corner  F = 4·m_t·l_c/e,     m_t = f_y·t²/4,     l_c = min(l_p, 3/λ)
/// K       = (2k/λ)·(sinh λl + sin λl)/(2 + cosh λl + cos λl),   λ⁴ = k/(4·E_p·w_p·t_p³/12)
/// 2/k     = e³(2L−3e)/(6·D·L) + θ·e(1−e/L) + h/(2·E·t) + a³/(3·E_p·t_p³/12)
/// θ       = e(L−e)/L / [2·D·(1/L + 1/H)],  L = b−t, H = h−t, D = E·t³/(12(1−ν²))
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `c` | distance of the reaction line from the bolt: the plate's edge or where the flat ends | m |
/// | `e` | distance of the reaction line from the side wall's middle | m |
/// | `l_p`, `w_p`, `t_p` | length, width, thickness of the plate | m |
///
/// | `F_face` | curve of the bare face under the washer, [`FaceCurve`]; nothing where that was not checked | N |
///
/// Finite-element run / formula at 1 % and 3 % of the width: 0.97–1.13, and up to 1.8 where side walls
/// buckle. With the factor 0.90 of verdicts it lies on the safe side of every run. Seven tenths of the face
/// were fitted to these runs: under the plate it takes part with its middle alone.
///
/// # Sources
/// Elementary beam and frame statics; beam of finite length on an elastic foundation (Hetényi, from
/// memory); `l_eff` in the manner of the T-stub of EN 1993-1-8 (our reading); side walls AISC 360-22
/// J10; compared with own finite-element runs, `tests/reference/fe`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlateCurve {
    stiffness: f64,
    /// Lesser of plate and corner, without the face.
    plastic: f64,
    /// Least of the side walls.
    walls: f64,
    face: Option<FaceCurve>,
    limits: PlateLimits,
}

impl PlateLimits {
    /// The loads with the factor that guards each under a service load.
    ///
    /// # Sources
    /// AISC 360-22 J10: yielding 1.50, crippling 2.00, buckling 1.67; for plate and corner own choice, 1.50.
    #[must_use]
    pub const fn guarded(&self) -> [(Force, f64); 5] {
        [
            (self.plate, 1.50),
            (self.corner, 1.50),
            (self.wall_yielding, 1.50),
            (self.wall_crippling, 2.00),
            (self.wall_buckling, 1.67),
        ]
    }
}

impl PlateCurve {
    /// The curve for a tube, a plate and a washer, with a factor on the force. The face helps a bolt that is `alone` on it;
    /// in the runs of one plate under a row of bolts it did not.
    #[must_use]
    pub fn new(tube: &FaceTube, plate: &Plate, washer: Length, factor: f64, alone: bool) -> Self {
        let (b, h, t) = (tube.width.si(), tube.depth.si(), tube.wall.si());
        let (tp, lp) = (plate.thickness.si(), plate.length.si());
        let flat_end = (b / 2.0 - tube.corner_radius.si()).max(0.1 * b);
        let reaction_at = (plate.width.si() / 2.0).min(flat_end);
        // A corner radius of nearly nothing puts the reaction over the wall; a quarter of the wall
        // keeps the frame's lever from vanishing.
        let e = ((b - t) / 2.0 - reaction_at).max(t / 4.0);
        let arm = (reaction_at - washer.si() / 2.0).max(tp / 2.0);

        let frame = tube.modulus.si() * t.powi(3) / (12.0 * (1.0 - tube.poisson.powi(2)));
        let (span, rise) = (b - t, h - t);
        let turn = e * (span - e) / span / (2.0 * frame * (1.0 / span + 1.0 / rise));
        let plate_strip = plate.modulus.si() * tp.powi(3) / 12.0;
        let give = e.powi(3) * (2.0 * span - 3.0 * e).max(0.0) / (6.0 * frame * span)
            + turn * e * (1.0 - e / span)
            + h / (2.0 * tube.modulus.si() * t)
            + arm.powi(3) / (3.0 * plate_strip);
        let k = 2.0 / give;
        let lambda = (k / (4.0 * plate_strip * plate.width.si())).sqrt().sqrt();
        // Beyond λl = 12 the finite beam is the infinite one to seven digits, and cosh would grow
        // without use.
        let x = (lambda * lp).min(12.0);
        let stiffness = 2.0 * k / lambda * (x.sinh() + x.sin()) / (2.0 + x.cosh() + x.cos());

        // Stronger metal than was checked counts as the strongest that was.
        let checked = FaceTube {
            yield_strength: tube.yield_strength.min(tube.modulus * (0.999 * STRONGEST)),
            ..*tube
        };
        let face = (alone && out_of_range(&checked, washer).is_empty())
            .then(|| FaceCurve::new(&checked, washer, factor * FACE));
        let beside = face.map_or(0.0, |face| face.force_at_share(0.03).si());

        let plate_moment = plate.yield_strength.si() * tp * tp / 4.0;
        let wall_moment = tube.yield_strength.si() * t * t / 4.0;
        let bends = factor * 2.0 * plate_moment * lp.min(washer.si() + 4.0 * arm) / arm;
        let folds = factor * 4.0 * wall_moment * lp.min(3.0 / lambda) / e;
        let limits = PlateLimits {
            plate: newton(bends + beside),
            corner: newton(folds + beside),
            wall_yielding: side_wall::yielding(
                tube.yield_strength,
                tube.wall,
                tube.corner_radius,
                plate.length,
            ) * factor,
            wall_crippling: side_wall::crippling(
                tube.yield_strength,
                tube.modulus,
                tube.wall,
                tube.depth,
                plate.length,
            ) * factor,
            wall_buckling: side_wall::buckling(
                tube.yield_strength,
                tube.modulus,
                tube.wall,
                tube.depth,
            ) * factor,
        };
        let walls = [
            limits.wall_yielding,
            limits.wall_crippling,
            limits.wall_buckling,
        ]
        .into_iter()
        .map(InUnits::si)
        .fold(f64::INFINITY, f64::min);
        Self {
            stiffness: factor * stiffness,
            plastic: bends.min(folds),
            walls,
            face,
            limits,
        }
    }

    /// What limits the plate.
    #[must_use]
    pub const fn limits(&self) -> &PlateLimits {
        &self.limits
    }

    /// Initial stiffness, with that of the face.
    #[must_use]
    pub fn stiffness(&self) -> Stiffness {
        Stiffness::of_si(self.elastic_si(1.0))
    }

    /// Clamp force at an indentation, in SI.
    pub(crate) fn force_si(&self, delta: f64) -> f64 {
        if delta <= 0.0 {
            return 0.0;
        }
        let rise = self.stiffness * delta;
        let plate = rise / (1.0 + (rise / self.plastic).powi(2)).sqrt();
        let local = plate + self.face.map_or(0.0, |face| face.force_si(delta));
        local / (1.0 + (local / self.walls).powi(4)).sqrt().sqrt()
    }

    /// Clamp force at an indentation.
    #[must_use]
    pub fn force(&self, indentation: Length) -> Force {
        newton(self.force_si(indentation.si()))
    }

    /// Elastic force at an indentation, in SI: the way back when the clamp is taken off.
    pub(crate) fn elastic_si(&self, delta: f64) -> f64 {
        (self.stiffness + self.face.map_or(0.0, |face| face.stiffness().si())) * delta
    }
}

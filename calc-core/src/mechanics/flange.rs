//! The flange of a channel or the leg of an angle that a bolt pulls away from its web.

use crate::quantity::{Force, InUnits, Length, Stress, newton};

/// Factor of safety on bending of the flange.
///
/// # Sources
/// AISC 360-22 F1 (Ω 1.67).
pub const OMEGA: f64 = 1.67;

/// Plastic over elastic moment of a plate: what lies between first yield and the strength of a strip.
pub const SHAPE: f64 = 1.5;

/// How the strip that a bolt pulls on is held.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Held {
    /// On one side: a flange beside a web, a leg beside the other one. Distances are counted from the
    /// face of the upright part.
    OnOneSide,
    /// On both sides, hinged: a web between two flanges, so far apart. Distances are counted from the
    /// face of one of them.
    OnBothSides(Length),
}

/// Lever of the largest moment in a strip that every bolt of one line pulls on equally.
///
/// ```text
/// one side:    c = Σ a_i
/// both sides:  c = max_k [ x_k·Σ(1 − x_i/L) − Σ_{x_i < x_k}(x_k − x_i) ]
/// M = T·c
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `rows` | distance of each row of bolts from where the strip is held, `a_i` or `x_i` | m |
/// | `L` | width between the two flanges | m |
/// | `T` | pull of one bolt | N |
///
/// Hinged ends and bolt centres: both on the safe side.
///
/// # Sources
/// Statics.
#[must_use]
pub fn lever(rows: &[Length], held: Held) -> Length {
    let at = |row: &Length| row.si().max(0.0);
    let metres = match held {
        Held::OnOneSide => rows.iter().map(at).sum(),
        Held::OnBothSides(span) => {
            let span = span.si().max(1e-9);
            let reaction: f64 = rows.iter().map(|row| 1.0 - at(row) / span).sum();
            let moment = |x: f64| {
                let before: f64 = rows.iter().map(|row| (x - at(row)).max(0.0)).sum();
                reaction * x - before
            };
            rows.iter().map(|row| moment(at(row))).fold(0.0, f64::max)
        }
    };
    Length::of_si(metres)
}

/// Length of flange that is counted with one bolt.
///
/// ```text
/// w = a + min(a, e),   a = min(a_far, p/2)
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `far` | distance `a_far` of the farthest bolt from where the strip is held | m |
/// | `pitch` | `p` to the next bolt along; `None`: there is none | m |
/// | `end` | `e` from the last bolt to the end of the member | m |
///
/// A spread of 45° to either side of the bolt. A clamped elastic plate with a force at its free edge has a
/// peak root moment of 0.509 of the force, which is that of a strip 1.96·a wide, so that the plastic
/// strip divided by [`OMEGA`] stays elastic. Yield lines (EN 1993-1-8 Table 6.4, `4m + 1.25e`) carry more
/// than twice as much.
///
/// # Sources
/// AISC Steel Construction Manual, Part 9 (tributary length at most twice the arm, and the spacing), from
/// memory; long clamped plate with a force at its edge: Timoshenko, from memory, and own finite elements
/// in `tests/reference/members`.
#[must_use]
pub fn tributary(far: Length, pitch: Option<Length>, end: Length) -> Length {
    let one = pitch.map_or(far, |p| far.min(p * 0.5));
    one + one.min(end)
}

/// Pull on each bolt at which the strip is plastic.
///
/// ```text
/// T = w·t²·f_y/(4·c)
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `w` | counted length of flange, see [`tributary`]; less the hole where the moment is largest at the bolt | m |
/// | `t` | thickness of the flange at the bolt | m |
/// | `c` | lever, see [`lever`] | m |
///
/// Holds for a flange of even thickness; a flange that grows thicker towards the web has more. Nothing is
/// counted on from the free edge leaning on the fitting, which adds to the bolt and not to this. Infinite
/// where there is no lever.
///
/// # Sources
/// Plastic bending of a plate strip; the form of the AISC Manual's no-prying thickness with `f_y` in
/// place of `F_u` and the full arm, from memory.
#[must_use]
pub fn strip(fy: Stress, thickness: Length, width: Length, lever: Length) -> Force {
    if lever.si() <= 0.0 {
        return newton(f64::INFINITY);
    }
    newton(width.si().max(0.0) * thickness.si().powi(2) * fy.si() / (4.0 * lever.si()))
}

/// Share of the gauge by which a flange may move in service at its farthest bolt, as a face by its width.
pub const SERVICE_SHARE: f64 = 0.01;

/// A free flange or leg and the part that it turns with.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Turning {
    /// Elastic modulus.
    pub modulus: Stress,
    /// Counted length of flange, see [`tributary`].
    pub width: Length,
    /// Thickness of the flange, and of the upright part.
    pub thickness: [Length; 2],
    /// Height of the upright part.
    pub upright: Length,
    /// Farthest bolt from the face of the upright part.
    pub arm: Length,
    /// Lever of all bolts of one line, see [`lever`].
    pub lever: Length,
    /// Back of the upright part to the farthest bolt.
    pub gauge: Length,
}

/// Pull on each bolt at which a free flange has moved by 1 % of the gauge at its farthest bolt.
///
/// ```text
/// T = 0.01·g·E·w/(4·a·c·(a/t³ + H/t_u³))
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `g` | gauge of the farthest bolt | m |
/// | `w` | counted length, of flange and upright part alike | m |
/// | `a`, `c` | arm of the farthest bolt, lever of all | m |
/// | `t`, `t_u`, `H` | thickness of flange and upright part, height of the latter | m |
///
/// Elastic strips, the upright part hinged where it ends: an angle that is held at its far edge alone gives way more in
/// its upright leg than in the one that is pulled.
///
/// # Sources
/// Elementary beams: `T·a³/(3·E·I) + T·c·a·H/(3·E·I_u)`. Own finite elements in `tests/reference/fe_flange`: run over formula
/// 1.7 where the upright leg is held at its far edge. Close to a stiff root shear counts and the formula is up to 1.7 times
/// too stiff, at loads far above those of the strip.
#[must_use]
pub fn at_service_limit(f: &Turning) -> Force {
    let [flange, upright] = f.thickness.map(|t| t.si().powi(3));
    let gives = f.arm.si() / flange + f.upright.si() / upright;
    let per_pull = 4.0 * f.arm.si() * f.lever.si() * gives / (f.modulus.si() * f.width.si());
    if per_pull > 0.0 {
        newton(SERVICE_SHARE * f.gauge.si() / per_pull)
    } else {
        newton(f64::INFINITY)
    }
}

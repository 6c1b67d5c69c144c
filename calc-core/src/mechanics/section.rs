//! Nominal stress in a rectangular tube weakened by bolt holes.

use crate::quantity::{Force, InUnits, Length, Stress, Torque, mpa};

/// A rectangular tube with the holes of one cross-section.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HoledTube {
    /// Outside height, in the plane of bending.
    pub height: Length,
    /// Outside breadth.
    pub breadth: Length,
    /// Wall; half the lesser of height and breadth for a solid bar.
    pub wall: Length,
    /// Outside corner radius.
    pub corner: Length,
    /// Hole diameter.
    pub hole: Length,
    /// Holes side by side in each pierced wall.
    pub holes: usize,
    /// Distance between them.
    pub spacing: Length,
    /// Whether the bolts pierce the two walls that bending pulls and presses (top and bottom), or the
    /// two side walls.
    pub through_flanges: bool,
}

/// Nominal stress at the rim of the worst hole, on what the holes leave.
///
/// ```text
/// σ = N/A_n + M·y/I_n,   I = [B·H³ − (B − 2t)·(H − 2t)³]/12 − Σ holes
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `N`, `M` | force along the tube, moment in the plane of the height | N, N·m |
/// | `y` | from mid-height to the far rim of the hole, or to the outer face where that is pierced | m |
///
/// Round corners are taken off (`rounded_off`). The bending of a
/// pressed face and the pressing of a bolt on its hole are not in it.
///
/// # Sources
/// Elementary beam theory.
#[must_use]
pub fn hole_stress(tube: &HoledTube, axial: Force, moment: Torque) -> Stress {
    let (h, b, t) = (tube.height.si(), tube.breadth.si(), tube.wall.si());
    let (hole, n) = (tube.hole.si(), tube.holes as f64);
    let (hi, bi) = ((h - 2.0 * t).max(0.0), (b - 2.0 * t).max(0.0));
    let (gone, gone_inertia) = rounded_off(h, t, tube.corner.si());
    let gross_area = b * h - bi * hi - gone;
    let gross_inertia = (b * h.powi(3) - bi * hi.powi(3)) / 12.0 - gone_inertia;
    let area = gross_area - 2.0 * n * hole * t;
    let (lost, rim) = if tube.through_flanges {
        (2.0 * n * hole * t * ((h - t) / 2.0).powi(2), h / 2.0)
    } else {
        let spread: f64 = (0..tube.holes)
            .map(|i| ((i as f64 - (n - 1.0) / 2.0) * tube.spacing.si()).powi(2))
            .sum();
        (
            2.0 * t * (n * hole.powi(3) / 12.0 + hole * spread),
            ((n - 1.0) * tube.spacing.si() + hole).min(h) / 2.0,
        )
    };
    // A pattern of holes that eats the section leaves a sliver, not a negative area.
    let area = area.max(0.05 * gross_area);
    let inertia = (gross_inertia - lost).max(0.05 * gross_inertia);
    mpa((axial.si().abs() / area + moment.si().abs() * rim / inertia) * 1e-6)
}

/// What round corners take from the area of a tube with sharp ones, and from its second moment of area about the middle
/// of its height, SI.
///
/// ```text
/// ΔA = 4·(1 − π/4)·(r_o² − r_i²),   ΔI = 4·(1 − π/4)·[r_o²·(H/2 − c·r_o)² − r_i²·(H/2 − t − c·r_i)²]
/// r_i = max(r_o − t, 0),   c = (10 − 3π)/(12 − 3π) = 0.223
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `r_o`, `r_i` | outside and inside corner radius | m |
/// | `c·r` | from the sharp corner to the middle of what lies outside its quarter circle | m |
///
/// Their second moments about their own middles are left out: less than a thousandth of the section's.
///
/// # Sources
/// Elementary geometry.
pub(crate) fn rounded_off(height: f64, wall: f64, corner: f64) -> (f64, f64) {
    const SPANDREL: f64 = 1.0 - std::f64::consts::FRAC_PI_4;
    const MIDDLE: f64 = 0.2234;
    let outer = corner.clamp(0.0, 0.5 * height);
    let inner = (outer - wall).max(0.0);
    let second = |r: f64, edge: f64| r * r * (edge - MIDDLE * r).powi(2);
    let area = 4.0 * SPANDREL * (outer * outer - inner * inner);
    let inertia = 4.0
        * SPANDREL
        * (second(outer, 0.5 * height) - second(inner, (0.5 * height - wall).max(0.0)));
    (area, inertia)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{mm, newton, newton_metre};

    fn tube(through_flanges: bool) -> HoledTube {
        HoledTube {
            height: mm(60.0),
            breadth: mm(40.0),
            wall: mm(3.0),
            corner: mm(0.0),
            hole: mm(12.0),
            holes: 1,
            spacing: mm(0.0),
            through_flanges,
        }
    }

    /// 40 × 40 × 4 mm with outside corners of 8 mm: the table of EN 10219-2 has 5.35 cm² and 11.1 cm⁴ (from memory); sharp
    /// it would be 5.76 cm² and 12.6 cm⁴.
    #[test]
    fn round_corners_give_the_tables_section() {
        let (area, inertia) = rounded_off(0.04, 0.004, 0.008);
        let sharp = (
            0.04_f64.powi(2) - 0.032_f64.powi(2),
            (0.04_f64.powi(4) - 0.032_f64.powi(4)) / 12.0,
        );
        assert!(
            ((sharp.0 - area) * 1e4 - 5.35).abs() < 0.02,
            "{}",
            (sharp.0 - area) * 1e4
        );
        assert!(
            ((sharp.1 - inertia) * 1e8 - 11.1).abs() < 0.06,
            "{}",
            (sharp.1 - inertia) * 1e8
        );
    }

    /// By hand: I = (40·60³ − 34·54³)/12 = 273 852 mm⁴; holes in the flanges take 2·12·3·28.5² = 58 482;
    /// in the webs 2·3·12³/12 = 864. A = 564 − 72 = 492 mm².
    #[test]
    fn agrees_with_a_sum_by_hand() {
        let moment = newton_metre(500.0);
        let none = newton(0.0);
        let flange = hole_stress(&tube(true), none, moment).si() * 1e-6;
        assert!(
            (flange - 500e3 * 30.0 / (273_852.0 - 58_482.0)).abs() < 1e-6,
            "{flange}"
        );
        let web = hole_stress(&tube(false), none, moment).si() * 1e-6;
        assert!(
            (web - 500e3 * 6.0 / (273_852.0 - 864.0)).abs() < 1e-6,
            "{web}"
        );
        let pull = hole_stress(&tube(false), newton(-4920.0), newton_metre(0.0)).si() * 1e-6;
        assert!((pull - 10.0).abs() < 1e-9, "{pull}");
    }
}

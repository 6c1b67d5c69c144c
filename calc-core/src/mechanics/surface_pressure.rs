//! Pressure that a surface takes under head, nut or washer.

use crate::catalog::Family;
use crate::quantity::Stress;

/// Limiting pressure on the surface of a ply, against the largest clamp of the scatter.
///
/// ```text
/// steel, stainless    p = 1.8·f_y
/// aluminium           p = 0.9·f_u, at most 1.8·f_y
/// ```
///
/// Beyond it the surface flows and the clamp settles away; nothing breaks.
///
/// # Sources
/// Steel: AISC 360-22 J7, nominal strength of flat contact faces. It lies under the limiting surface pressures of VDI 2230
/// (2003, second-hand: 490 MPa for S235, 760 for S355, 460 for 316).
///
/// The edition of 1986 had 260 MPa for St 37 and 210 for 304 (second-hand), which would be the safer. They are not taken,
/// as structural bolts at the pretension of the steel code on a hardened washer and A36 would then fail, against all
/// practice: A490 of 1/2 in, 66.7 kN with ±15 % by turn, through a washer of 2.5 mm on 252 mm² of metal: 304 MPa; of 1 in,
/// 285 kN on 851 mm²: 385 MPa; A325 of 1 in, 227 kN: 307 MPa. The later edition raised its table for that. How far the
/// pressure spreads under the washer is taken by the safer of two sources instead ([`spread`](super::washer::spread)).
///
/// Aluminium: the same table, 260 MPa for 6082 with `f_u` of 290, marked there as not yet checked against newer tests; other alloys by the same ratio, own assumption.
#[must_use]
pub fn limit(family: Family, fy: Stress, fu: Stress) -> Stress {
    match family {
        Family::Aluminium => (0.9 * fu).min(1.8 * fy),
        Family::Steel | Family::Stainless => 1.8 * fy,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{InUnits, mpa};

    fn limit_mpa(family: Family, fy: f64, fu: f64) -> f64 {
        limit(family, mpa(fy), mpa(fu)).si() * 1e-6
    }

    #[test]
    fn never_above_the_published_limits() {
        for (family, fy, fu, published) in [
            (Family::Steel, 235.0, 340.0, 490.0),
            (Family::Steel, 355.0, 510.0, 760.0),
            (Family::Stainless, 205.0, 515.0, 460.0),
            (Family::Aluminium, 250.0, 290.0, 261.0),
        ] {
            let ours = limit_mpa(family, fy, fu);
            assert!(ours <= published + 1e-6, "{published}: {ours}");
            assert!(ours >= 0.75 * published, "{published}: {ours}");
        }
    }
}

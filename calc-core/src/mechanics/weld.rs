//! Fillet and partial-penetration groove welds: sizes and strength.

use crate::quantity::{Force, InUnits, Length, Stress, mm, newton};

/// Factor on the strength of weld and steel beside it under a service load.
///
/// # Sources
/// AISC 360-22 Table J2.5 and J4.2, Ω 2.00.
pub const OMEGA_STEEL: f64 = 2.00;

/// Factor on the strength of weld and aluminium beside it under a service load.
///
/// # Sources
/// Aluminum Design Manual 2020, Ω 1.95.
pub const OMEGA_ALUMINIUM: f64 = 1.95;

/// Throat of a fillet weld with equal legs.
///
/// ```text
/// a = w/√2
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `w` | leg | m |
///
/// # Sources
/// AISC 360-22 J2.2a; geometry.
#[must_use]
pub fn fillet_throat(leg: Length) -> Length {
    leg / std::f64::consts::SQRT_2
}

/// Throat of a groove weld in one bevelled edge against a square one.
///
/// ```text
/// E = S                 α ≥ 60°
/// E = S − 3 mm (1/8 in) 45° ≤ α < 60°
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `S` | depth of the groove | m |
/// | `α` | angle between the bevel and the square edge | ° |
///
/// Holds for every position and process listed there; metal–inert-gas welding laid flat or horizontal
/// may count the whole depth at 45° as well, which is not made use of. Below 45° nothing is counted.
///
/// # Sources
/// AISC 360-22 Table J2.1.
#[must_use]
pub fn groove_throat(depth: Length, angle_deg: f64) -> Length {
    if angle_deg >= 60.0 {
        depth
    } else if angle_deg >= 45.0 {
        (depth - mm(3.175)).max(mm(0.0))
    } else {
        mm(0.0)
    }
}

/// Least throat of a partial-penetration groove weld on the thinner of two parts.
///
/// # Sources
/// AISC 360-22 Table J2.3: 1/8 in to 1/4 in thick, 3/16 to 1/2, 1/4 to 3/4, 5/16 to 1-1/2 in.
#[must_use]
pub fn least_groove_throat(thinner: Length) -> Length {
    step(thinner)
}

/// Least leg of a fillet weld on the thinner of two parts.
///
/// # Sources
/// AISC 360-22 Table J2.4: 1/8 in to 1/4 in thick, 3/16 to 1/2, 1/4 to 3/4, 5/16 in above.
#[must_use]
pub fn least_fillet(thinner: Length) -> Length {
    step(thinner)
}

/// Both tables have the same steps as far as a trailer's walls go.
fn step(thinner: Length) -> Length {
    const SIXTEENTH: f64 = 1.5875;
    // A wall of 1/4 in measured with a caliper is still one of 1/4 in.
    let t = thinner.si() * 1e3 - 0.05;
    let sixteenths = if t <= 4.0 * SIXTEENTH {
        2.0
    } else if t <= 8.0 * SIXTEENTH {
        3.0
    } else if t <= 12.0 * SIXTEENTH {
        4.0
    } else {
        5.0
    };
    mm(sixteenths * SIXTEENTH)
}

/// Largest leg of a fillet weld along an edge.
///
/// ```text
/// w = t            t < 1/4 in
/// w = t − 1/16 in  otherwise
/// ```
///
/// # Sources
/// AISC 360-22 J2.2b.
#[must_use]
pub fn largest_fillet(edge: Length) -> Length {
    if edge < mm(6.35) {
        edge
    } else {
        edge - mm(1.5875)
    }
}

/// Shear strength of a weld on its throat.
///
/// ```text
/// R = f_w·E·L
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `f_w` | shear strength of the weld metal, loaded along the weld | Pa |
/// | `E` | throat | m |
/// | `L` | length of the weld | m |
///
/// Holds for loads in any direction: the strength along a weld is the lowest.
///
/// # Sources
/// AISC 360-22 J2.4 (`f_w` = 0.60·F_EXX); Aluminum Design Manual 2020, welds.
#[must_use]
pub fn throat_strength(shear: Stress, throat: Length, length: Length) -> Force {
    newton(shear.si() * throat.si() * length.si())
}

/// Shear strength of the metal beside a weld.
///
/// ```text
/// R = 0.60·f_u·t·L
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `f_u` | tensile strength; next to a weld that of the weakened metal | Pa |
/// | `t` | thickness that the weld holds on to | m |
/// | `L` | length of the weld | m |
///
/// # Sources
/// AISC 360-22 J4.2; Aluminum Design Manual 2020 (shear strength 0.6 of tensile).
#[must_use]
pub fn beside_weld(ultimate: Stress, thickness: Length, length: Length) -> Force {
    newton(0.60 * ultimate.si() * thickness.si() * length.si())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::inch;

    #[test]
    fn a_steep_bevel_counts_less() {
        let depth = inch(0.25);
        assert_eq!(groove_throat(depth, 60.0), depth);
        assert!((groove_throat(depth, 45.0) - inch(0.125)).si().abs() < 1e-12);
        assert_eq!(groove_throat(inch(0.1), 45.0), mm(0.0));
        assert_eq!(groove_throat(depth, 30.0), mm(0.0));
    }

    #[test]
    fn the_largest_fillet_leaves_the_edge() {
        assert_eq!(largest_fillet(inch(0.125)), inch(0.125));
        assert!((largest_fillet(inch(0.25)) - inch(0.1875)).si().abs() < 1e-12);
    }
}

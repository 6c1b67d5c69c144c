//! Side walls of a rectangular tube squeezed between two plates.

use crate::quantity::{Force, InUnits, Length, Stress, newton};

/// Yielding of both side walls under a load of length `bearing`.
///
/// ```text
/// R = 2·f_y·t·(5k + l_b)
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `k` | outside corner radius, `corner` | m |
/// | `l_b` | length of the plate along the tube, `bearing` | m |
///
/// # Sources
/// AISC 360-22 J10.2 with the dimensions of the K1 commentary; Ω 1.50. For aluminium our reading.
#[must_use]
pub fn yielding(fy: Stress, wall: Length, corner: Length, bearing: Length) -> Force {
    newton(2.0 * fy.si() * wall.si() * (5.0 * corner.si() + bearing.si()))
}

/// Crippling of both side walls.
///
/// ```text
/// R = 2·0.80·t²·[1 + 3·l_b/(h − 3t)]·√(E·f_y)
/// ```
///
/// Not safe by itself on tall thin walls that are loaded from both sides: [`buckling`] governs there
/// (finite elements: by a factor of 3).
///
/// # Sources
/// AISC 360-22 J10.3; Ω 2.00. For aluminium our reading.
#[must_use]
pub fn crippling(
    fy: Stress,
    modulus: Stress,
    wall: Length,
    depth: Length,
    bearing: Length,
) -> Force {
    let t = wall.si();
    let flat = flat_depth(depth, wall);
    newton(1.6 * t * t * (1.0 + 3.0 * bearing.si() / flat) * (modulus.si() * fy.si()).sqrt())
}

/// Buckling of both side walls in compression, both faces loaded.
///
/// ```text
/// R = 2·24·t³·√(E·f_y)/(h − 3t)
/// ```
///
/// On the safe side of finite elements by 1.2 to 1.8 on walls of h/t 48 to 73.
///
/// # Sources
/// AISC 360-22 J10.5; Ω 1.67. For aluminium our reading.
#[must_use]
pub fn buckling(fy: Stress, modulus: Stress, wall: Length, depth: Length) -> Force {
    let t = wall.si();
    newton(48.0 * t.powi(3) * (modulus.si() * fy.si()).sqrt() / flat_depth(depth, wall))
}

/// Flat depth `h − 3t`, held above one wall so that a tube of nearly solid section stays finite.
fn flat_depth(depth: Length, wall: Length) -> f64 {
    (depth.si() - 3.0 * wall.si()).max(wall.si())
}

//! What a bolt group takes at most in its plane: the instantaneous-centre method.

use super::bolt_group::Place;

/// Slip of the farthest bolt when the group is at its end, m (0.34 in).
pub const GREATEST_DEFORMATION: f64 = 0.34 * 0.0254;

/// Rate in the load–deformation law, 1/m (10 per inch).
const RATE: f64 = 10.0 / 0.0254;

/// Exponent in the load–deformation law.
const EXPONENT: f64 = 0.55;

/// Largest share of the load by which force and moment may miss each other.
const ACCEPTED: f64 = 1e-9;

/// Most rounds of the iteration; a usual group needs some forty.
const ROUNDS: usize = 400;

/// Share of a bolt's strength at a deformation.
///
/// ```text
/// R/R_ult = (1 − e^(−10·Δ))^0.55      Δ in inches
/// ```
///
/// # Sources
/// Load–deformation law of the instantaneous-centre method as the AISC Steel Construction Manual,
/// Part 7, uses it (Crawford and Kulak 1971). From memory.
#[must_use]
pub fn share_of_strength(deformation: f64) -> f64 {
    (-(-RATE * deformation.max(0.0)).exp_m1()).powf(EXPONENT)
}

/// Load in the plane, about the middle of the group.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct InPlane {
    /// Along, N.
    pub along: f64,
    /// Across, N.
    pub across: f64,
    /// Turning `along` towards `across`, N·m.
    pub twist: f64,
}

/// Largest load of this direction and line of action, as a multiple of `load`, where every bolt has
/// the strength `strength` (N).
///
/// The group turns rigidly about a centre; each bolt pulls against its own motion with the force of
/// [`share_of_strength`], the farthest deformed by [`GREATEST_DEFORMATION`] and then at its strength: the
/// law, which comes to 0.98 there, is scaled to 1, so that a force through the middle is shared equally at
/// full strength. The centre is where force and moment of the bolts are in the ratio of the load's.
///
/// ```text
/// K·q = λ·f,   K = Σ (R_i/Δ_i)·B_iᵀ·B_i,   max Δ_i = 0.34 in,   R(0.34 in) = strength
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `q` | two shifts and the turn of the group | m, rad |
/// | `f` | force and moment of the load | N, N·m |
/// | `B_i` | motion of bolt `i` for `q` | – |
/// | `λ` | multiple of the load | 1 |
///
/// Solved by secant stiffness: the elastic solution first, then `R_i/Δ_i` of the last motion until
/// force and moment fit to one part in 10⁹. `None` where there is no load, a single bolt is twisted, or
/// the iteration does not settle: use the elastic vector method then.
///
/// # Sources
/// Method: AISC Steel Construction Manual, Part 7, from memory; solution derived here.
#[must_use]
pub fn multiple_of_load(places: &[Place], load: &InPlane, strength: f64) -> Option<f64> {
    let reach = places.iter().map(|p| p.x.hypot(p.y)).fold(0.0, f64::max);
    let arm = if reach > 0.0 { reach } else { 1.0 };
    // The turn is measured by its motion at the reach, so that all three unknowns are lengths.
    let f = [load.along, load.across, load.twist / arm];
    let size = f.iter().map(|c| c.abs()).fold(0.0, f64::max);
    let sound = size.is_finite() && size > 0.0 && strength.is_finite() && strength > 0.0;
    if !sound || places.is_empty() || (reach <= 0.0 && f[2] != 0.0) {
        return None;
    }
    let f = f.map(|c| c / size);
    let motion = |q: [f64; 3], p: &Place| [q[0] - q[2] * p.y / arm, q[1] + q[2] * p.x / arm];
    let stiffness = |weight: &dyn Fn(&Place) -> f64| {
        let mut k = [[0.0; 3]; 3];
        for p in places {
            let w = weight(p);
            let (x, y) = (p.x / arm, p.y / arm);
            k[0][0] += w;
            k[1][1] += w;
            k[0][2] -= w * y;
            k[1][2] += w * x;
            k[2][2] += w * (x * x + y * y);
        }
        k[2][0] = k[0][2];
        k[2][1] = k[1][2];
        if reach <= 0.0 {
            k[2][2] = 1.0;
        }
        k
    };
    let full = share_of_strength(GREATEST_DEFORMATION);
    let mut q = solve(stiffness(&|_| 1.0), f)?;
    for _ in 0..ROUNDS {
        let largest = places
            .iter()
            .map(|p| {
                let [u, v] = motion(q, p);
                u.hypot(v)
            })
            .fold(0.0, f64::max);
        if !(largest.is_finite() && largest > 0.0) {
            return None;
        }
        q = q.map(|c| c * GREATEST_DEFORMATION / largest);
        let secant = |p: &Place| {
            let [u, v] = motion(q, p);
            // A bolt in the centre itself does not move: its force is zero whatever its stiffness.
            let moved = u.hypot(v).max(1e-9 * GREATEST_DEFORMATION);
            share_of_strength(moved) / (full * moved)
        };
        let k = stiffness(&secant);
        let got = times(k, q);
        let multiple = dot(got, f) / dot(f, f);
        let miss = got
            .iter()
            .zip(&f)
            .map(|(g, f)| (g - multiple * f).abs())
            .fold(0.0, f64::max);
        if miss <= ACCEPTED * multiple {
            return Some(multiple * strength / size);
        }
        q = solve(k, f)?;
    }
    None
}

fn dot(a: [f64; 3], b: [f64; 3]) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

fn times(k: [[f64; 3]; 3], q: [f64; 3]) -> [f64; 3] {
    k.map(|row| dot(row, q))
}

/// Solves three symmetric positive equations by Cramer's rule; `None` where they are singular.
fn solve(k: [[f64; 3]; 3], f: [f64; 3]) -> Option<[f64; 3]> {
    let [a, b, c] = k;
    let cross = |u: [f64; 3], v: [f64; 3]| {
        [
            u[1] * v[2] - u[2] * v[1],
            u[2] * v[0] - u[0] * v[2],
            u[0] * v[1] - u[1] * v[0],
        ]
    };
    let (bc, ca, ab) = (cross(b, c), cross(c, a), cross(a, b));
    let determinant = dot(a, bc);
    let scale = a[0].abs() * b[1].abs() * c[2].abs();
    if determinant.is_nan() || determinant.abs() <= 1e-14 * scale {
        return None;
    }
    let column = |i: usize| {
        let pick = |v: [f64; 3]| v.get(i).copied().unwrap_or(0.0);
        (f[0] * pick(bc) + f[1] * pick(ca) + f[2] * pick(ab)) / determinant
    };
    Some([column(0), column(1), column(2)])
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::mechanics::bolt_group::pattern;

    #[test]
    fn a_force_through_the_middle_is_shared_equally() {
        let load = InPlane {
            along: 3.0,
            across: 4.0,
            twist: 0.0,
        };
        let got = multiple_of_load(&pattern(3, 2, 0.08, 0.05), &load, 1000.0).unwrap();
        let want = 6.0 * 1000.0 / 5.0;
        assert!((got / want - 1.0).abs() < 1e-9, "{got} against {want}");
    }

    #[test]
    fn a_single_bolt_takes_force_and_no_twist() {
        let one = pattern(1, 1, 0.1, 0.1);
        let load = |twist| InPlane {
            along: 1.0,
            across: 0.0,
            twist,
        };
        assert!(multiple_of_load(&one, &load(0.0), 1.0).is_some());
        assert_eq!(multiple_of_load(&one, &load(1.0), 1.0), None);
        let none = InPlane {
            along: 0.0,
            across: 0.0,
            twist: 0.0,
        };
        assert_eq!(multiple_of_load(&one, &none, 1.0), None);
        assert_eq!(multiple_of_load(&[], &load(0.0), 1.0), None);
    }
}

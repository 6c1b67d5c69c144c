//! What an outside pull along the bolt does to bolt and faces, and when the faces part.

use crate::quantity::{Force, InUnits, Length, Stiffness, newton};

/// Outside pull at which the clamped faces part.
///
/// ```text
/// N_0 = F/(1 − C)
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `clamp` | clamp force `F` | N |
/// | `load_factor` | load factor `C` | 1 |
///
/// Infinite where the bolt takes everything (`C = 1`). A soft support has a large `C`: the faces part
/// late, but the bolt works all the time.
///
/// # Sources
/// Shigley 9e Eq. 8-30.
#[must_use]
pub fn separation_load(clamp: Force, load_factor: f64) -> Force {
    newton(clamp.si() / (1.0 - load_factor).max(0.0))
}

/// Pull in the bolt while an outside pull is on.
///
/// ```text
/// F_b = F + C·N   while the faces touch,   F_b = N   afterwards
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `clamp` | clamp force `F` before the pull | N |
/// | `load_factor` | load factor `C` | 1 |
/// | `pull` | outside pull `N` along the bolt, on the parts under head and nut | N |
///
/// Elastic; without prying.
///
/// # Sources
/// Shigley 9e Eq. 8-24.
#[must_use]
pub fn bolt_pull(clamp: Force, load_factor: f64, pull: Force) -> Force {
    newton((clamp.si() + load_factor * pull.si()).max(pull.si()))
}

/// Force with which the faces still press while an outside pull is on, `F_m = F − (1 − C)·N`, zero once
/// they have parted. Symbols as in [`bolt_pull`].
///
/// # Sources
/// Shigley 9e Eq. 8-25.
#[must_use]
pub fn clamp_left(clamp: Force, load_factor: f64, pull: Force) -> Force {
    newton((clamp.si() - (1.0 - load_factor) * pull.si()).max(0.0))
}

/// Gap between the faces once they have parted: what the bolt has stretched since.
///
/// ```text
/// g = (N − N_0)/k_b
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `pull` | outside pull `N` | N |
/// | `parts_at` | pull `N_0` at which the faces part, see [`separation_load`] | N |
/// | `bolt` | stiffness of the bolt `k_b` | N/m |
///
/// Elastic; zero while the faces touch.
///
/// # Sources
/// Elementary.
#[must_use]
pub fn gap(pull: Force, parts_at: Force, bolt: Stiffness) -> Length {
    Length::of_si((pull.si() - parts_at.si()).max(0.0) / bolt.si())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::mm;
    use crate::quantity::newton_per_mm;

    /// Until the faces part, bolt and faces share; from there on the bolt has all. No jump at the knee.
    #[test]
    fn bolt_and_faces_balance_the_pull() {
        let (clamp, share) = (newton(12e3), 0.25);
        let parts = separation_load(clamp, share);
        assert!((parts.si() - 16e3).abs() < 1e-6);
        for pull in [0.0, 4e3, 15.9e3, 16e3, 20e3].map(newton) {
            let (bolt, faces) = (
                bolt_pull(clamp, share, pull),
                clamp_left(clamp, share, pull),
            );
            assert!((bolt.si() - faces.si() - pull.si()).abs() < 1e-6);
        }
        assert_eq!(bolt_pull(newton(0.0), share, newton(5e3)), newton(5e3));
        let open = gap(newton(20e3), parts, newton_per_mm(400e3));
        assert!((open.si() - 0.01e-3).abs() < 1e-12);
        assert_eq!(gap(newton(10e3), parts, newton_per_mm(400e3)), mm(0.0));
    }
}

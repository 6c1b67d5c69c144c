//! Prying: what a bending flange adds to the pull on its bolts.

use crate::quantity::{Force, InUnits, Length, Stress, newton};

/// Flange of a fitting beside its bolts, as half of a T-stub.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Flange {
    /// Thickness.
    pub thickness: Length,
    /// Bolt centre to the face of the upright part, `b`.
    pub arm: Length,
    /// Bolt centre to the free edge, `a`.
    pub edge: Length,
    /// Length of flange that belongs to one bolt, `p`.
    pub tributary: Length,
    /// Bolt diameter.
    pub bolt: Length,
    /// Hole along the flange.
    pub hole: Length,
    /// Tensile strength of the flange.
    pub tensile: Stress,
}

/// What the flange does to one bolt.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pried {
    /// Pull on the bolt with prying.
    pub bolt_pull: Force,
    /// Outside pull that flange and bolt take together.
    pub capacity: Force,
    /// Thickness without prying at the bolt's own strength.
    pub thick_enough: Length,
}

/// Prying by the T-stub model.
///
/// ```text
/// b' = b − d/2,  a' = min(a, 1.25·b) + d/2,  ρ = b'/a',  δ = 1 − d_h/p
/// t_c = √(4·B·b'/(p·F_u))
/// α  = ((T/B)·(t_c/t)² − 1)/δ in 0..1,   q = B·δ·α·ρ·(t/t_c)²
/// α' = ((t_c/t)² − 1)/(δ·(1 + ρ)),       T_max = B·min(1, (t/t_c)²·(1 + δ·min(1, α')))
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `pull` | outside pull on one bolt `T` | N |
/// | `bolt` | strength of the bolt `B` | N |
/// | `t_c` | thickness at which nothing is added at `B` | m |
/// | `q` | added pull | N |
///
/// Strengths are the published ones without factor: the caller puts its factor on `pull`. Where
/// `p` is not longer than the hole the flange counts as unable to bend back (`δ` = 0), and a capacity of
/// zero is given where `b'` is not above zero only as no bending: the flange then takes what the bolt
/// takes.
///
/// # Sources
/// Form of the AISC Steel Construction Manual, Part 9, prying action. From memory. For aluminium
/// flanges, and under an allowance for cracks, not checked.
#[must_use]
pub fn t_stub(flange: &Flange, pull: Force, bolt: Force) -> Pried {
    let (d, t) = (flange.bolt.si(), flange.thickness.si().max(1e-9));
    let (pull, bolt) = (pull.si().max(0.0), bolt.si().max(1e-9));
    let b = (flange.arm.si() - d / 2.0).max(0.0);
    let a = flange.edge.si().min(1.25 * flange.arm.si()) + d / 2.0;
    let (rho, p) = (b / a.max(1e-9), flange.tributary.si().max(1e-9));
    let delta = (1.0 - flange.hole.si() / p).max(0.0);
    let thick = (4.0 * bolt * b / (p * flange.tensile.si().max(1.0))).sqrt();
    let ratio = (t / thick.max(1e-9)).powi(2);
    let bent = if delta > 0.0 {
        ((pull / bolt / ratio - 1.0) / delta).clamp(0.0, 1.0)
    } else {
        0.0
    };
    let added = bolt * delta * bent * rho * ratio;
    let balance = if delta > 0.0 {
        ((1.0 / ratio - 1.0) / (delta * (1.0 + rho))).clamp(0.0, 1.0)
    } else {
        0.0
    };
    Pried {
        bolt_pull: newton(pull + added),
        capacity: newton(bolt * (ratio * (1.0 + delta * balance)).min(1.0)),
        thick_enough: Length::of_si(thick),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{mm, mpa};

    fn flange(thickness: f64) -> Flange {
        Flange {
            thickness: mm(thickness),
            arm: mm(40.0),
            edge: mm(35.0),
            tributary: mm(80.0),
            bolt: mm(16.0),
            hole: mm(18.0),
            tensile: mpa(400.0),
        }
    }

    #[test]
    fn a_thick_flange_adds_nothing_and_a_thin_one_gives_way() {
        let bolt = newton(90e3);
        let thick = t_stub(&flange(40.0), newton(60e3), bolt);
        assert_eq!(thick.bolt_pull.si(), 60e3);
        assert_eq!(thick.capacity.si(), 90e3);
        let thin = t_stub(&flange(8.0), newton(20e3), bolt);
        assert!(thin.bolt_pull.si() > 20e3);
        assert!(thin.capacity.si() < 40e3, "{thin:?}");
    }

    /// At the capacity of a flange between the two ends, bolt and flange are at their ends together.
    #[test]
    fn at_the_capacity_the_bolt_is_at_its_strength() {
        let bolt = newton(90e3);
        for thickness in [16.0, 18.0, 20.0, 22.0] {
            let flange = flange(thickness);
            let capacity = t_stub(&flange, newton(0.0), bolt).capacity;
            let at = t_stub(&flange, capacity, bolt).bolt_pull.si();
            assert!((at - 90e3).abs() < 1.0, "{thickness}: {at}");
        }
    }
}

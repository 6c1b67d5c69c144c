//! What a flange adds to a pull on its bolt: that of the fitting, that of the member.

use crate::mechanics::prying::{Flange, Pried, t_stub};
use crate::quantity::{Force, InUnits, Length, newton};
use crate::scenario::Scenario;

/// Flange of the fitting beside its bolts, for an upright part so far from them.
fn flange_of_fitting(s: &Scenario, arm: Length) -> Flange {
    Flange {
        thickness: s.fitting.thickness,
        arm,
        edge: s.fitting.edge,
        tributary: tributary(s, arm),
        bolt: s.bolting.thread.major(),
        hole: s.fitting.hole,
        tensile: s.fitting.ultimate_least,
    }
}

/// Length of the fitting's flange that counts with one bolt.
///
/// ```text
/// one bolt:   p = 2·min(b, e)
/// two:        p = min(b, s/2) + min(b, e)
/// more:       p = min(b, s/2) + min(b, e, s/2)
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `b` | bolt to the upright part | m |
/// | `s` | spacing of the bolts along | m |
/// | `e` | middle of the bolt to the nearest edge of the fitting | m |
///
/// A spread of 45° to either side, as for a flange of the member ([`tributary`](crate::mechanics::flange::tributary)), and
/// no farther than there is metal. A bolt between two others has half of the spacing on both sides: the
/// worse of the outer and the inner bolt counts.
///
/// # Sources
/// As there.
fn tributary(s: &Scenario, arm: Length) -> Length {
    let b = &s.bolting;
    let to_edge = arm.min(s.fitting.edge);
    if b.along < 2 {
        return to_edge * 2.0;
    }
    let half = arm.min(b.spacing_along * 0.5);
    let outer = if b.along > 2 {
        to_edge.min(half)
    } else {
        to_edge
    };
    half + outer
}

/// Pull and capacity with the flange of the fitting; `None` where nobody said how far its upright part is
/// from the bolts.
pub(crate) fn pried(s: &Scenario, pull: f64, bolt: Force) -> Option<Pried> {
    let flange = flange_of_fitting(s, s.fitting.flange_arm?);
    Some(t_stub(&flange, newton(pull), bolt))
}

/// Farthest that the upright part of a fitting may be from its bolts: it stands on the face of the member,
/// so no farther than the far edge of that face; where it stands crosswise, no farther than the middle of
/// the group or the edge of the fitting.
///
/// # Sources
/// Geometry, and our assumption on where upright parts stand.
fn longest_arm(s: &Scenario) -> Length {
    let b = &s.bolting;
    let half_group = |count: usize, apart: Length| apart * (0.5 * (count as f64 - 1.0));
    let across = match (s.member.gauge, s.farthest_gauge()) {
        (Some(near), Some(far)) => far.max(s.tube.width - near),
        _ => s.tube.width * 0.5 + half_group(b.rows, b.spacing_across),
    };
    across
        .max(half_group(b.along, b.spacing_along))
        .max(s.fitting.edge)
}

/// What holds for the fitting's flange wherever its upright part stands.
#[derive(Clone, Copy, Debug)]
pub(crate) struct AnyArm {
    /// Longest arm that there is room for.
    pub(crate) arm: Length,
    /// Pull up to which the flange adds nothing to its bolt.
    pub(crate) adds_nothing: Force,
    /// Pull that flange and bolt hold together.
    pub(crate) capacity: Force,
}

/// Both limits with the longest arm: a shorter one has more of either.
///
/// ```text
/// T_0 = p·t²·F_u/(4·b'),   b' = b − d/2
/// ```
///
/// with the arm `b` of [`longest_arm`] and its length `p`.
///
/// # Sources
/// As for [`t_stub`]: `α = 0` there, whatever the strength of the bolt.
pub(crate) fn any_arm(s: &Scenario, bolt: Force) -> AnyArm {
    let flange = flange_of_fitting(s, longest_arm(s));
    let b = (flange.arm - flange.bolt * 0.5).si().max(1e-6);
    let t = flange.thickness.si();
    AnyArm {
        arm: flange.arm,
        adds_nothing: newton(flange.tributary.si() * t * t * flange.tensile.si() / (4.0 * b)),
        capacity: t_stub(&flange, newton(0.0), bolt).capacity,
    }
}

/// A pull with what a free flange or leg of the member adds, as it leans on the fitting with its edge.
fn by_member(s: &Scenario, pull: f64, bolt: Force) -> Option<Force> {
    let (far, edge) = s.farthest_gauge().zip(s.free_edge())?;
    let flange = Flange {
        thickness: s.tube.design_wall,
        arm: far - s.member.outstanding,
        edge,
        tributary: s.flange_width(),
        bolt: s.bolting.thread.major(),
        hole: s.bolting.hole,
        tensile: s.tube.ultimate_least,
    };
    Some(t_stub(&flange, newton(pull), bolt).bolt_pull)
}

/// A pull with what flanges add, N: of two that lie on each other the one that adds more, as the edges
/// press on each other with one force.
pub(crate) fn pull_on_bolt(s: &Scenario, pull: f64, bolt: Force) -> f64 {
    let fitting = pried(s, pull, bolt).map_or(pull, |pried| pried.bolt_pull.si());
    by_member(s, pull, bolt).map_or(fitting, |member| fitting.max(member.si()))
}

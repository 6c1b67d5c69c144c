//! What a flange adds to a pull on its bolt: that of the fitting, that of the member.

use crate::mechanics::prying::{Flange, Pried, t_stub};
use crate::quantity::{Force, InUnits, newton};
use crate::scenario::Scenario;

/// Pull and capacity with the flange of the fitting; `None` where the fitting is taken as stiff.
pub(crate) fn pried(s: &Scenario, pull: f64, bolt: Force) -> Option<Pried> {
    let b = &s.bolting;
    let arm = s.fitting.flange_arm?;
    let tributary = if b.along > 1 {
        b.spacing_along
    } else {
        s.fitting.edge * 2.0
    };
    let flange = Flange {
        thickness: s.fitting.thickness,
        arm,
        edge: s.fitting.edge,
        tributary,
        bolt: b.thread.major(),
        hole: b.hole,
        tensile: s.fitting.ultimate_least,
    };
    Some(t_stub(&flange, newton(pull), bolt))
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

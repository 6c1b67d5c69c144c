//! What the flange of the fitting adds to a pull on the bolt.

use crate::mechanics::prying::{Flange, Pried, t_stub};
use crate::quantity::{Force, InUnits, newton};
use crate::scenario::Scenario;

/// Pull and capacity with the flange; `None` where the fitting is taken as stiff.
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

/// A pull with what the flange adds, N.
pub(crate) fn pull_on_bolt(s: &Scenario, pull: f64, bolt: Force) -> f64 {
    pried(s, pull, bolt).map_or(pull, |pried| pried.bolt_pull.si())
}

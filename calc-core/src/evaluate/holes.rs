//! Holes that the bolt passes, and whether they are larger than they should be.

use crate::catalog::{HoleFit, clearance_hole};
use crate::mechanics::slip;
use crate::quantity::{InUnits, Length};
use crate::scenario::Scenario;
use crate::support;

/// The largest clearance hole that the bolt itself passes. What goes through the walls takes the place of the
/// holes in the tube.
pub(crate) fn largest_clearance(s: &Scenario) -> Length {
    if support::of(s).passes_wall() {
        s.fitting.hole
    } else {
        s.bolting.hole.max(s.fitting.hole)
    }
}

/// Larger than the normal clearance hole, beyond what a caliper reads.
pub(crate) fn is_oversize(s: &Scenario, hole: Length) -> bool {
    let thread = s.bolting.thread;
    [HoleFit::Normal, HoleFit::Structural]
        .into_iter()
        .filter_map(|fit| clearance_hole(thread, fit))
        .map(|listed| listed.diameter)
        .reduce(Length::max)
        // A size without a listed hole: one tenth more than the bolt.
        .map_or(1.1 * thread.major().si(), InUnits::si)
        + 0.05e-3
        < hole.si()
}

/// Factor on slip under a service load: more where a hole is oversize.
pub(crate) fn slip_omega(s: &Scenario) -> f64 {
    if is_oversize(s, largest_clearance(s)) {
        slip::OMEGA_OVERSIZE
    } else {
        slip::OMEGA
    }
}

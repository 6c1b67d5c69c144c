//! One ply of a channel or an angle between fitting and washer: nothing to crush.

use super::build::{Builder, stack_pressed};
use super::model::{Limit, SupportModel};
use super::{lines, of};
use crate::mechanics::sleeve::SleeveCurve;
use crate::mechanics::stiffness;
use crate::quantity::{InUnits, mm, newton};
use crate::report::working::Working;
use crate::scenario::Scenario;

/// A washer made to fit makes the grip longer; not counted, so that the bolt is a little too stiff and loses
/// a little more.
pub(super) fn model(b: &Builder<'_>) -> SupportModel {
    let s = b.s;
    let member = s.tube.yield_strength(b.strength);
    // Under each washer lies the fitting, the member or a plate on it.
    let mut softer = of(s)
        .metal(s)
        .map_or(member, |plate| b.yield_of(plate.material, plate.welded));
    softer = softer.min(if s.fitting.thickness.si() > 0.0 {
        b.yield_of(s.fitting.material, s.tube.weld_near)
    } else {
        member
    });
    let load = b.pressed(softer);
    let core = SleeveCurve::new(
        stiffness::solid_stack(
            s.tube.modulus,
            s.bolting.thread.major(),
            s.bolting.washer.outer,
            s.clamped(),
        ),
        newton(load),
        mm(0.0),
    );
    b.only(core, vec![stack_pressed(load)])
}

pub(super) fn working(w: &mut Working, s: &Scenario, governs: &Limit) {
    lines::pressed(w, s, governs);
}

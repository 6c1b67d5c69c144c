//! One ply of a channel or an angle between fitting and washer: nothing to crush.

use super::build::{Builder, stack_pressed};
use super::lines;
use super::model::{Limit, SupportModel};
use crate::mechanics::sleeve::SleeveCurve;
use crate::mechanics::stiffness;
use crate::quantity::{mm, newton};
use crate::report::working::Working;
use crate::scenario::Scenario;

/// A washer made to fit makes the grip longer; not counted, so that the bolt is a little too stiff and loses
/// a little more.
pub(super) fn model(b: &Builder<'_>) -> SupportModel {
    let s = b.s;
    // Under each washer lies the fitting, the member or a plate on it.
    let pressed = b.pressed(None);
    let core = SleeveCurve::new(
        stiffness::solid_stack(
            s.tube.modulus,
            s.bolting.thread.major(),
            s.bolting.washer.outer,
            s.clamped(),
        ),
        newton(pressed.load),
        mm(0.0),
    );
    b.only(core, vec![stack_pressed(&pressed)])
}

pub(super) fn working(w: &mut Working, s: &Scenario, governs: &Limit) {
    lines::pressed(w, s, governs, false);
}

//! No hollow: a bar, or a stack of plates as thick as the member is deep.

use super::build::{Builder, stack_pressed};
use super::model::{Limit, SupportModel};
use super::{ClampSupport, lines};
use crate::mechanics::sleeve::SleeveCurve;
use crate::mechanics::stiffness;
use crate::quantity::{mm, newton};
use crate::report::working::Working;
use crate::scenario::Scenario;

pub(super) struct Solid;

impl ClampSupport for Solid {
    fn model(&self, b: &Builder<'_>) -> SupportModel {
        let s = b.s;
        let pressed = b.pressed(None);
        let core = SleeveCurve::new(
            stiffness::solid_stack(
                s.tube.modulus,
                s.bolting.thread.major(),
                s.bolting.washer.outer,
                s.tube.depth,
            ),
            newton(pressed.load),
            mm(0.0),
        );
        b.only(core, vec![stack_pressed(&pressed)])
    }

    fn leaves_gap(&self) -> bool {
        false
    }

    fn working(&self, w: &mut Working, s: &Scenario, _model: &SupportModel, governs: &Limit) {
        lines::pressed(w, s, governs, false);
    }

    fn is_hollow(&self) -> bool {
        false
    }

    fn leans_on_round_wall(&self, _s: &Scenario) -> bool {
        false
    }
}

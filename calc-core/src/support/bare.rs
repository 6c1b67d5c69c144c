//! The two faces of the tube, nothing else.

use super::build::Builder;
use super::model::{Limit, SupportModel};
use super::{ClampSupport, lines};
use crate::report::working::Working;
use crate::scenario::Scenario;

pub(super) struct Bare;

impl ClampSupport for Bare {
    fn model(&self, b: &Builder<'_>) -> SupportModel {
        let tube = b.s.tube.face(b.strength);
        let effective = b.effective_washer(&tube);
        b.on_faces(b.sides(&tube, effective), effective)
    }

    fn is_firm(&self) -> bool {
        false
    }

    fn working(&self, w: &mut Working, s: &Scenario, model: &SupportModel, _governs: &Limit) {
        lines::faces(w, s, model);
    }
}

//! The checks: demand against capacity, the verdict, the reason and the working. One file a question.

mod across;
mod bolt;
mod clamp;
mod combined;
mod demand;
mod face_pull;
mod fatigue;
pub(super) mod found;
mod geometry;
mod judged;
mod layout;
mod loosening;
mod member;
mod offset;
mod pin;
mod ply;
mod pull;
mod resistance;
mod section;
mod sleeve_weld;
mod slip;
mod slipped;
mod turning;

use crate::report::{Check, CheckId, Said, Sentence, Verdict};
use resistance::Resistance;

use super::analysis::Analysis;
use crate::quantity::Measures;
use crate::report::working::Working;

/// Factor on separation of the faces. An assumption: as for slip.
const OMEGA_OPENING: f64 = 1.50;

/// All checks that apply, in the order that a fabricator would ask.
pub(crate) fn all(joint: &Analysis<'_>) -> Vec<Check> {
    let mut checks = Vec::with_capacity(42);
    checks.extend(joint.found());
    checks.push(joint.clamp());
    checks.push(joint.bolt_tightening());
    checks.extend(joint.grade());
    checks.extend(joint.slip());
    checks.extend(joint.opening());
    checks.extend(joint.sleeve_weld());
    checks.extend(joint.turning());
    checks.extend(joint.load_offset());
    let gripping = holds_so_far(&checks);
    checks.extend(joint.bolt_service());
    checks.extend(joint.bolt_fatigue(gripping));
    checks.extend(joint.bolt_shear());
    checks.extend(joint.wall_bearing());
    checks.extend(joint.fitting_bearing());
    checks.extend(joint.bolt_bending());
    checks.extend(joint.bolt_combined());
    checks.extend(joint.tube_tear_out());
    checks.extend(joint.fitting_tear_out());
    checks.extend(joint.block_shear());
    checks.extend(joint.net_section());
    checks.extend(joint.pull_through());
    checks.extend(joint.face_pull());
    checks.extend(joint.fitting_flange());
    checks.extend(joint.member_flange());
    checks.push(joint.least_clamp());
    checks.extend(joint.loosening());
    checks.push(joint.end_distance());
    checks.extend(joint.fitting_edge());
    checks.extend(joint.member_edge());
    checks.extend(joint.spacing());
    checks.extend(joint.hole_size());
    checks.push(joint.washer_cover());
    checks.extend(joint.washer_seat());
    checks.extend(joint.sleeve_fit());
    checks.extend(joint.sleeve_length());
    checks.extend(joint.places());
    checks
}

/// Whether the joint grips and stays shut, so that fatigue can be spoken of at all. Where no load counts
/// on friction nobody knows.
pub(super) fn holds_so_far(checks: &[Check]) -> bool {
    checks.iter().any(|check| check.id == CheckId::Slip)
        && checks
            .iter()
            .filter(|check| matches!(check.id, CheckId::Slip | CheckId::Opening))
            .all(|check| matches!(check.verdict, Verdict::Holds | Verdict::Close))
}

fn said<Q: Measures<N>, const N: usize>(sentence: Sentence<N>, quantities: Q) -> Said {
    Said::new(sentence, quantities)
}

impl Analysis<'_> {
    fn sheet(&self) -> Working {
        Working::new(self.working)
    }

    /// A sheet with the lines that `explain` writes, if anybody will read them.
    fn explained(&self, explain: impl FnOnce(&mut Working)) -> Working {
        let mut sheet = self.sheet();
        if self.working {
            explain(&mut sheet);
        }
        sheet
    }
}

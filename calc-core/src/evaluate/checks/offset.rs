//! How far beside the faying plane the load acts: asked for where a fitting lies on one side.

use super::said;
use crate::evaluate::analysis::Analysis;
use crate::quantity::newton;
use crate::report::{Check, CheckId, Verdict, say};

impl Analysis<'_> {
    /// A spring beside a web pulls at the bolts by its distance from it. With that distance its moment is in
    /// the loads of the bolts and nothing is left to ask; without it nobody knows what they bear.
    pub(super) fn load_offset(&self) -> Option<Check> {
        if !self.s.offset_unknown() {
            return None;
        }
        let loaded = |loads: &crate::evaluate::loads::BoltLoads| {
            let case = &loads.case;
            case.along.hypot(case.up)
        };
        let most = self.cases().all.iter().map(loaded).fold(0.0, f64::max);
        if most <= 0.0 {
            return None;
        }
        let judged = Check::of(CheckId::LoadOffset, newton(most), newton(0.0))
            .stands(Verdict::NotChecked)
            .without_share();
        Some(judged.reason(said(say::OffsetUnknown, (newton(most),))))
    }
}

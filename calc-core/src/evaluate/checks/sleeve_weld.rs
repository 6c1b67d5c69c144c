//! Does the weld of a through sleeve carry what the fitting hands on?

use super::said;
use crate::evaluate::analysis::Analysis;
use crate::evaluate::sleeve_weld::SleeveWeld;
use crate::quantity::newton;
use crate::report::{Check, CheckId, say};
use crate::support;

impl Analysis<'_> {
    /// In every joint with a welded through sleeve, for loads of all kinds: the clamp presses fitting on
    /// sleeve, and all that this hands on goes into the tube through the weld.
    ///
    /// The weld is taken to be as deep as the wall; of the fillers that suit, the weakest.
    pub(super) fn sleeve_weld(&self) -> Option<Check> {
        let s = self.s;
        if !support::is_welded(s) {
            return None;
        }
        let Some(weld) = SleeveWeld::of_any_filler(s) else {
            let check = Check::of(CheckId::SleeveWeld, newton(0.0), newton(0.0))
                .reason(said(say::SleeveWeldUnknown, ()));
            return Some(check.undecided(said(say::SleeveWeldUnknown, ())));
        };
        let demand = weld.demand(self)?;
        let check = Check::of(
            CheckId::SleeveWeld,
            newton(demand.force()),
            newton(weld.strength()),
        )
        .factor(demand.factor, demand.factor_is())
        .in_case(demand.loads.case.case, demand.loads.case.kind)
        .says([say::SleeveWeldTears, say::SleeveWeldHolds]);
        Some(check.working(self.explained(|w| weld.lines(w, s, Some(&demand)))))
    }
}

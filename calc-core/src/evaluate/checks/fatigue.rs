//! Does the bolt endure a pull that comes and goes?

use super::{amount, said};
use crate::cite::{Cite, Flag};
use crate::evaluate::analysis::Analysis;
use crate::evaluate::fatigue::{BoltViews, governing, repeated_pull, road};
use crate::quantity::Dimension::{Area, Force, Length, Ratio, Stress};
use crate::quantity::InUnits;
use crate::report::{Check, CheckId, Verdict, substituted};

impl Analysis<'_> {
    /// The view that asks most governs. A full pull below what is endured for good holds. Above it, the
    /// road decides, and the road is an assumption: the best that is left is "close".
    pub(super) fn bolt_fatigue(&self, gripping: bool) -> Option<Check> {
        let (loads, pull) = repeated_pull(self)?;
        let road = road(self.s);
        let views = BoltViews::new(self, pull, &road);
        let view = governing(views.all())?;
        let (demand, capacity, used) = if view.used_at_full <= 1.0 {
            (view.amplitude.si, view.endured.si, view.used_at_full)
        } else {
            let equal = view.used_on_the_road * view.endured_two_million.si;
            (equal, view.endured_two_million.si, view.used_on_the_road)
        };
        let (verdict, code) = if self.clamp_unknown().is_some() {
            (Verdict::NotChecked, "bolt-fatigue-clamp-unknown")
        } else if !gripping {
            (Verdict::NotChecked, "bolt-fatigue-clamp-lost")
        } else if view.used_at_full <= 1.0 {
            (Verdict::of(used), "bolt-fatigue-below")
        } else if used <= 1.0 {
            (Verdict::Close, "bolt-fatigue-road")
        } else {
            (Verdict::of(used), "bolt-fatigue-over")
        };
        let mut w = self.sheet();
        w.step(
            &("σ_a", "stress amplitude at the full pull", "C·ΔN/(2·A_t)"),
            substituted![
                ("C", view.load_factor, Ratio),
                ("ΔN", pull, Force),
                ("A_t", self.s.bolting.thread.stress_area().si(), Area),
            ],
            (view.amplitude.si, Stress),
            Cite::new("shigley-9e", "section 8-11", Flag::Read),
        );
        w.step(
            &(
                "σ_e",
                "lowest of the published amplitudes that a bolt endures",
                "least capacity for its demand",
            ),
            substituted![("d", self.s.bolting.thread.major().si(), Length)],
            (view.endured.si, Stress),
            view.cite,
        );
        w.step(
            &(
                "r·σ_a",
                "amplitude of two million cycles that do what the road does",
                "(Σ n·s³·L/2·10⁶)^(1/3)·σ_a",
            ),
            substituted![("σ_a", view.amplitude.si, Stress)],
            (view.used_on_the_road * view.endured_two_million.si, Stress),
            road.cite,
        );
        let check = Check {
            id: CheckId::BoltFatigue,
            verdict,
            demand: amount(demand, Stress),
            capacity: amount(capacity, Stress),
            factor: 1.0,
            factor_is: "factor-none",
            utilisation: gripping.then_some(used),
            case: None,
            reason: said(code, &[(demand, Stress), (capacity, Stress)]),
            steps: w.finish(),
        };
        Some(check.in_case(loads.case.case, loads.case.kind))
    }
}

//! Does the bolt endure a pull that comes and goes?

use crate::cite::{Cite, Flag, Source};
use crate::evaluate::analysis::Analysis;
use crate::evaluate::fatigue::{BoltViews, governing, no_road, repeated_pull, road};
use crate::quantity::{InUnits, Ratio, Stress, newton};
use crate::report::working::Line;
use crate::report::{Check, CheckId, Verdict, say, substituted};

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
            (Verdict::NotChecked, say::BoltFatigueClampUnknown)
        } else if !gripping {
            (Verdict::NotChecked, say::BoltFatigueClampLost)
        } else if no_road(&road) {
            (Verdict::NotChecked, say::BoltFatigueNoRoad)
        } else if view.used_at_full <= 1.0 {
            (Verdict::of(used), say::BoltFatigueBelow)
        } else if used <= 1.0 {
            (Verdict::Close, say::BoltFatigueRoad)
        } else {
            (Verdict::of(used), say::BoltFatigueOver)
        };
        let mut w = self.sheet();
        w.line(
            &Line {
                symbol: "σ_a",
                what: "stress amplitude at the full pull",
                formula: "C_b·ΔN/(2·A_t)",
            },
            substituted![
                ("C_b", Ratio(view.load_factor)),
                ("ΔN", newton(pull)),
                ("A_t", self.s.bolting.thread.stress_area())
            ],
            Stress::of_si(view.amplitude.si),
            Cite::new(Source::Shigley9e, "section 8-11", Flag::Read),
        );
        w.line(
            &Line {
                symbol: "σ_e",
                what: "lowest of the published amplitudes that a bolt endures",
                formula: "least capacity for its demand",
            },
            substituted![("d", self.s.bolting.thread.major())],
            Stress::of_si(view.endured.si),
            view.cite,
        );
        w.line(
            &Line {
                symbol: "r·σ_a",
                what: "amplitude of two million cycles that do what the road does",
                formula: "(Σ n·s³·L/2·10⁶)^(1/3)·σ_a",
            },
            substituted![("σ_a", Stress::of_si(view.amplitude.si))],
            Stress::of_si(view.used_on_the_road * view.endured_two_million.si),
            road.cite,
        );
        let judged = Check::of(
            CheckId::BoltFatigue,
            Stress::of_si(demand),
            Stress::of_si(capacity),
        )
        .used(used)
        .stands(verdict)
        .in_case(loads.case.case, loads.case.kind);
        let judged = if gripping && !no_road(&road) {
            judged
        } else {
            judged.without_share()
        };
        Some(judged.says_of_both(code).working(w))
    }
}

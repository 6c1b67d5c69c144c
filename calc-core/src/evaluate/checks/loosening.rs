//! Is the nut tight, and can it shake loose?

use super::said;
use crate::catalog::LoadKind;
use crate::cite::{Cite, Flag, Source};
use crate::evaluate::analysis::Analysis;
use crate::evaluate::loads::BoltLoads;
use crate::mechanics::bolt_group::Share;
use crate::mechanics::loosening;
use crate::quantity::{InUnits, Ratio, newton};
use crate::report::working::Line;
use crate::report::{Check, CheckId, Verdict, say, substituted};

/// Share of the proof load that has to be left for a joint to count as tight.
///
/// No published share was found; ours. Tightened to 75 % of proof with a torque wrench (±35 %) some 40 to
/// 48 % are left between firm plies, and 15 % where a third of the proof load was aimed at. What is left of
/// less is as much as flattening and a cold night take.
///
/// # Sources
/// Own assumption.
const TIGHT_FROM: f64 = 0.15;

impl Analysis<'_> {
    /// Asked of every joint, also where no load comes again and again and nothing asks for friction: a nut
    /// that was only run down falls off. No way to lock a nut is counted on.
    ///
    /// ```text
    /// F_left ≥ 0.15·F_p
    /// ```
    pub(super) fn least_clamp(&self) -> Check {
        let (needed, left) = (
            self.preload.proof * TIGHT_FROM,
            newton(self.residual.left_min),
        );
        let mut w = self.sheet();
        w.line(
            &Line {
                symbol: "F_tight",
                what: "clamp below which a bolt counts as loose",
                formula: "0.15·F_p",
            },
            substituted![("F_p", self.preload.proof)],
            needed,
            Cite::new(
                Source::OwnAssumption,
                "least clamp of a tight joint",
                Flag::Assumption,
            ),
        );
        let check = Check::of(CheckId::LeastClamp, needed, left)
            .says([say::LeastClampLoose, say::LeastClampTight])
            .working(w);
        let unknown = self.clamp_unknown().is_some();
        if unknown || check.verdict != Verdict::DoesNotHold && self.outside_range() {
            return check.undecided(said(say::LeastClampUnknown, ()));
        }
        check
    }

    /// Over the cases that come again and again: a nut is not shaken loose at one go.
    pub(super) fn loosening(&self) -> Option<Check> {
        let (s, g) = (self.s, self.residual);
        let limit = |share: &Share| {
            loosening::transverse_limit(
                s.tightening.faying_friction,
                newton(g.left_min),
                newton(share.pull),
                g.load_factor,
            )
            .si()
        };
        let plane = |share: &Share| share.in_plane() / s.bolting.slip_planes();
        let worst = |loads: &BoltLoads| {
            let used = |share: &Share| plane(share) / limit(share).max(1e-9);
            loads
                .shares
                .iter()
                .copied()
                .map(|share| (used(&share), share))
                .reduce(|most, next| if next.0 > most.0 { next } else { most })
        };
        let (loads, _) = self.cases().governing(&|loads| {
            worst(loads)
                .filter(|_| loads.case.kind == LoadKind::Service)
                .map(|(used, _)| used)
        })?;
        let (_, share) = worst(loads)?;
        let (demand, capacity) = (plane(&share), limit(&share));
        if !s.fitting.touches {
            let judged = Check::of(CheckId::Loosening, newton(demand), newton(0.0))
                .in_case(loads.case.case, loads.case.kind)
                .stands(Verdict::DoesNotHold)
                .without_share();
            return Some(judged.reason(said(say::LooseningAirGap, ())));
        }
        let mut w = self.sheet();
        w.line(
            &Line {
                symbol: "F_Q",
                what: "transverse force that cannot shake the nut loose, one plane",
                formula: "μ·(F_left − (1 − C)·N)",
            },
            substituted![
                ("μ", Ratio(s.tightening.faying_friction)),
                ("F_left", newton(g.left_min)),
                ("C", Ratio(g.load_factor)),
                ("N", newton(share.pull.max(0.0)))
            ],
            newton(capacity),
            Cite::new(Source::Junker, "criterion", Flag::Read),
        );
        let judged = Check::of(CheckId::Loosening, newton(demand), newton(capacity))
            .in_case(loads.case.case, loads.case.kind);
        let check = judged
            .says([say::LooseningSlides, say::LooseningStays])
            .working(w);
        let untaken = self.untaken(&|kind| kind == LoadKind::Service) > 1.0;
        let unknown = self.clamp_unknown().is_some();
        if unknown || check.verdict != Verdict::DoesNotHold && (untaken || self.outside_range()) {
            return Some(check.undecided(said(say::LooseningClampUnknown, ())));
        }
        Some(check)
    }
}

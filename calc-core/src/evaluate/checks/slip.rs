//! Does the clamp grip the road loads, and do the faces stay together?

use super::{of_forces, said};
use crate::catalog::LoadKind;
use crate::cite::{Cite, Flag};
use crate::evaluate::analysis::Analysis;
use crate::evaluate::loads::BoltLoads;
use crate::mechanics::bolt_group::NotTaken;
use crate::mechanics::opening;
use crate::quantity::Dimension::{Count, Force, Length, Ratio, Stiffness, TemperatureStep};
use crate::quantity::{InUnits, newton};
use crate::report::{Check, CheckId, Verdict, substituted};
use crate::support::seat;

impl Analysis<'_> {
    pub(super) fn slip(&self) -> Option<Check> {
        let (s, g) = (self.s, self.residual);
        if self.unloaded() {
            return Some(self.no_load());
        }
        let service = self.service()?;
        let share = service.worst_share();
        let mut w = self.sheet();
        let limit = self.support.least.limit();
        w.step(
            &(
                "F_0",
                "least clamp right after tightening",
                "min(F·(1 − Γ), limit of the support)",
            ),
            substituted![
                ("F·(1 − Γ)", self.preload.min.si(), Force),
                ("limit", limit, Force),
            ],
            (g.fresh_min, Force),
            Cite::new(
                "nasa-std-5020b",
                "form of the torque scatter",
                Flag::ReadSecondHand,
            ),
        );
        w.step(
            &(
                "F_R",
                "what goes by itself in the first days",
                "0.025·F_0 bare, 0.065·F_0 coated",
            ),
            substituted![("F_0", g.fresh_min, Force)],
            (g.relaxation, Force),
            Cite::new("rcsc", "commentary, citing Munse 1967", Flag::Read),
        );
        w.step(
            &("F_Z", "flattening of rough faces", "f_Z/(1/k_b + 1/k_m)"),
            substituted![
                ("k_b", g.bolt.si(), Stiffness),
                ("k_m", g.members.si(), Stiffness),
            ],
            (g.embedding, Force),
            Cite::new("vdi-2230", "Table 5", Flag::Memory),
        );
        w.step(
            &("F_T", "cold or heat", "|α_m − α_b|·ΔT·l/(1/k_b + 1/k_m)"),
            substituted![
                ("ΔT", s.loads.temperature_swing, TemperatureStep),
                ("l", g.length.si(), Length),
            ],
            (g.temperature, Force),
            Cite::new("elementary", "thermal strain", Flag::Computed),
        );
        w.step(
            &("F_left", "least clamp left", "F_0 − F_R − F_Z − F_T"),
            substituted![("F_0", g.fresh_min, Force)],
            (g.left_min, Force),
            Cite::new("elementary", "sum", Flag::Computed),
        );
        w.step(
            &(
                "V",
                "largest force in the faying plane on one bolt",
                "elastic vector method",
            ),
            substituted![
                ("along", service.ball.along, Force),
                ("up", service.ball.up, Force),
                ("side", service.ball.side, Force),
            ],
            (share.in_plane(), Force),
            Cite::new("shigley-9e", "section 8-12", Flag::Read),
        );
        w.step(
            &(
                "R",
                "slip resistance of that bolt",
                "m·μ·(F_left − (1 − C)·N)",
            ),
            substituted![
                ("m", s.bolting.slip_planes(), Count),
                ("μ", s.tightening.faying_friction, Ratio),
                ("F_left", g.left_min, Force),
                ("C", g.load_factor, Ratio),
                ("N", share.pull.max(0.0), Force),
            ],
            (service.resistance, Force),
            Cite::new("aisc-360-22", "J3.9, J3.10", Flag::Read),
        );
        let reason = said(
            if service.factor * share.in_plane() > service.resistance {
                "slip-slides"
            } else {
                "slip-grips"
            },
            &[
                (share.in_plane(), Force),
                (service.resistance, Force),
                (g.left_min, Force),
            ],
        );
        let mut check = of_forces(
            CheckId::Slip,
            (share.in_plane(), service.resistance),
            (
                service.factor,
                if service.ball.kind == LoadKind::Service {
                    "factor-slip"
                } else {
                    "factor-proof"
                },
            ),
            reason,
            w,
        );
        check = check.in_case(service.ball.case, service.ball.kind);
        let untaken = self.untaken(&|kind| kind != LoadKind::Ultimate);
        if self.clamp_unknown().is_some() {
            check = Self::undecided(check, "slip-clamp-unknown");
        } else if untaken > 1.0 {
            check = Self::with_lever(check, untaken);
        } else if self.outside_range() && check.verdict != Verdict::DoesNotHold {
            check = Self::undecided(check, "slip-clamp-unknown");
        }
        Some(check)
    }

    /// Whether no case asks for anything: a free load that was not filled in.
    fn unloaded(&self) -> bool {
        let still = |loads: &BoltLoads| {
            loads.largest_in_plane <= 0.0
                && loads.largest_pull <= 0.0
                && loads.shares.iter().all(|share| share.pull == 0.0)
                && loads.not_taken == NotTaken::default()
        };
        self.cases().all.iter().all(still)
    }

    /// A joint that nothing pulls at is not judged.
    fn no_load(&self) -> Check {
        let mut check = of_forces(
            CheckId::Slip,
            (0.0, 0.0),
            (1.0, "factor-none"),
            said("slip-no-load", &[]),
            self.sheet(),
        );
        check.verdict = Verdict::NotChecked;
        check.utilisation = None;
        check
    }

    /// Why the clamp that is reached cannot be known, by key. Where it is so, the numbers that rest on it
    /// prove nothing either resistance.
    pub(super) fn clamp_unknown(&self) -> Option<&'static str> {
        seat::clamp_unknown(self.s)
    }

    /// The check, not checked for a reason.
    pub(super) fn undecided(mut check: Check, code: &'static str) -> Check {
        check.verdict = Verdict::NotChecked;
        check.utilisation = None;
        check.reason = said(code, &[]);
        check
    }

    pub(super) fn outside_range(&self) -> bool {
        !self.support.out_of_range(self.s).is_empty()
    }

    pub(super) fn opening(&self) -> Option<Check> {
        let pulled = self.clamped(&|loads| loads.largest_pull)?;
        let pull = self.pull_on_bolt(pulled.force, self.preload.proof);
        let g = self.residual;
        let opens_at = opening::separation_load(newton(g.left_min), g.load_factor).si();
        let mut w = self.sheet();
        w.step(
            &(
                "C",
                "share of an outside pull that the bolt feels",
                "k_b/(k_b + k_m)",
            ),
            substituted![
                ("k_b", g.bolt.si(), Stiffness),
                ("k_m", g.members.si(), Stiffness),
            ],
            (g.load_factor, Ratio),
            Cite::new("shigley-9e", "Eq. 8-24", Flag::Read),
        );
        w.step(
            &("N_0", "pull at which the faces part", "F_left/(1 − C)"),
            substituted![("F_left", g.left_min, Force), ("C", g.load_factor, Ratio)],
            (opens_at, Force),
            Cite::new("shigley-9e", "Eq. 8-30", Flag::Read),
        );
        // A soft support hands nearly all of the pull to the bolt: the faces part late, but the bolt
        // works. The faces are only counted on up to the clamp itself.
        let counted = opens_at.min(g.left_min);
        let mut check = of_forces(
            CheckId::Opening,
            (pull, counted),
            (pulled.factor, pulled.factor_is),
            said(
                if pulled.factor * pull > counted {
                    "opening-parts"
                } else {
                    "opening-shut"
                },
                &[(pull, Force), (counted, Force)],
            ),
            w,
        );
        if self.clamp_unknown().is_some() {
            check = Self::undecided(check, "opening-clamp-unknown");
        }
        Some(pulled.name(check))
    }
}

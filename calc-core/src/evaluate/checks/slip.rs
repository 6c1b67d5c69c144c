//! Does the clamp grip the road loads, and do the faces stay together?

use super::{Joint, OMEGA_OPENING, of_forces, said};
use crate::cite::{Cite, Flag};
use crate::mechanics::opening;
use crate::quantity::Dimension::{Count, Force, Length, Moment, Ratio, Stiffness, TemperatureStep};
use crate::quantity::{InUnits, newton};
use crate::report::{Check, CheckId, Verdict};

impl Joint<'_> {
    pub(super) fn slip(&self) -> Check {
        let (s, g) = (self.s, self.grip);
        let share = self.service.worst_share();
        let mut w = self.sheet();
        let limit = self.stands.least.limit();
        w.step(
            (
                "F_0",
                "least clamp right after tightening",
                "min(F·(1 − Γ), limit of the support)",
            ),
            &[
                ("F·(1 − Γ)", self.tight.min.si(), Force),
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
            (
                "F_R",
                "what goes by itself in the first days",
                "0.025·F_0 bare, 0.065·F_0 coated",
            ),
            &[("F_0", g.fresh_min, Force)],
            (g.relaxation, Force),
            Cite::new("rcsc", "commentary, citing Munse 1967", Flag::Read),
        );
        w.step(
            ("F_Z", "flattening of rough faces", "f_Z/(1/k_b + 1/k_m)"),
            &[
                ("k_b", g.bolt.si(), Stiffness),
                ("k_m", g.members.si(), Stiffness),
            ],
            (g.embedding, Force),
            Cite::new("vdi-2230", "Table 5", Flag::Memory),
        );
        w.step(
            ("F_T", "cold or heat", "|α_m − α_b|·ΔT·l/(1/k_b + 1/k_m)"),
            &[
                ("ΔT", s.loads.temperature_swing, TemperatureStep),
                ("l", g.length.si(), Length),
            ],
            (g.temperature, Force),
            Cite::new("elementary", "thermal strain", Flag::Computed),
        );
        w.step(
            ("F_left", "least clamp left", "F_0 − F_R − F_Z − F_T"),
            &[("F_0", g.fresh_min, Force)],
            (g.left_min, Force),
            Cite::new("elementary", "sum", Flag::Computed),
        );
        w.step(
            (
                "V",
                "largest force in the faying plane on one bolt",
                "elastic vector method",
            ),
            &[
                ("along", self.service.ball.along, Force),
                ("up", self.service.ball.up, Force),
                ("side", self.service.ball.side, Force),
            ],
            (share.in_plane(), Force),
            Cite::new("shigley-9e", "section 8-12", Flag::Read),
        );
        w.step(
            (
                "R",
                "slip resistance of that bolt",
                "m·μ·(F_left − (1 − C)·N)",
            ),
            &[
                ("m", s.bolting.slip_planes(), Count),
                ("μ", s.tightening.faying_friction, Ratio),
                ("F_left", g.left_min, Force),
                ("C", g.bolt_share, Ratio),
                ("N", share.pull.max(0.0), Force),
            ],
            (self.service.resistance, Force),
            Cite::new("aisc-360-22", "J3.9, J3.10", Flag::Read),
        );
        let reason = said(
            if self.slip_omega() * share.in_plane() > self.service.resistance {
                "slip-slides"
            } else {
                "slip-grips"
            },
            &[
                (share.in_plane(), Force),
                (self.service.resistance, Force),
                (g.left_min, Force),
            ],
        );
        let mut check = of_forces(
            CheckId::Slip,
            (share.in_plane(), self.service.resistance),
            (self.slip_omega(), "factor-slip"),
            reason,
            w,
        );
        let missing = self.service.not_taken;
        let untaken = missing
            .twist
            .abs()
            .max(missing.pitch.abs())
            .max(missing.roll.abs());
        if untaken > 1.0 && check.verdict != Verdict::DoesNotHold {
            check.verdict = Verdict::NotChecked;
            check.utilisation = None;
            check.reason = said("slip-no-lever", &[(untaken, Moment)]);
        } else if self.outside_range() && check.verdict != Verdict::DoesNotHold {
            check.verdict = Verdict::NotChecked;
            check.utilisation = None;
            check.reason = said("slip-clamp-unknown", &[]);
        }
        check
    }

    pub(super) fn outside_range(&self) -> bool {
        !self.stands.out_of_range(self.s).is_empty()
    }

    pub(super) fn opening(&self) -> Option<Check> {
        let pull = self.service.largest_pull;
        if pull <= 0.0 {
            return None;
        }
        let g = self.grip;
        let opens_at = opening::separation_load(newton(g.left_min), g.bolt_share).si();
        let mut w = self.sheet();
        w.step(
            (
                "C",
                "share of an outside pull that the bolt feels",
                "k_b/(k_b + k_m)",
            ),
            &[
                ("k_b", g.bolt.si(), Stiffness),
                ("k_m", g.members.si(), Stiffness),
            ],
            (g.bolt_share, Ratio),
            Cite::new("shigley-9e", "Eq. 8-24", Flag::Read),
        );
        w.step(
            ("N_0", "pull at which the faces part", "F_left/(1 − C)"),
            &[("F_left", g.left_min, Force), ("C", g.bolt_share, Ratio)],
            (opens_at, Force),
            Cite::new("shigley-9e", "Eq. 8-30", Flag::Read),
        );
        // A soft support hands nearly all of the pull to the bolt: the faces part late, but the bolt
        // works. The faces are only counted on up to the clamp itself.
        let counted = opens_at.min(g.left_min);
        Some(of_forces(
            CheckId::Opening,
            (pull, counted),
            (OMEGA_OPENING, "factor-own"),
            said(
                if OMEGA_OPENING * pull > counted {
                    "opening-parts"
                } else {
                    "opening-shut"
                },
                &[(pull, Force), (counted, Force)],
            ),
            w,
        ))
    }
}

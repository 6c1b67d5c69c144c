//! Can the nut shake loose?

use super::{Joint, of_forces, said};
use crate::cite::{Cite, Flag};
use crate::mechanics::loosening;
use crate::quantity::Dimension::{Force, Ratio};
use crate::quantity::{InUnits, newton};
use crate::report::{Check, CheckId, Verdict};

impl Joint<'_> {
    pub(super) fn loosening(&self) -> Check {
        let (s, g) = (self.s, self.grip);
        let share = self.service.worst_share();
        let demand = share.in_plane() / s.bolting.slip_planes();
        let capacity = loosening::transverse_limit(
            s.tightening.faying_friction,
            newton(g.left_min),
            newton(share.pull),
            g.bolt_share,
        )
        .si();
        let mut w = self.sheet();
        w.step(
            (
                "F_Q",
                "transverse force that cannot shake the nut loose, one plane",
                "μ·(F_left − (1 − C)·N)",
            ),
            &[
                ("μ", s.tightening.faying_friction, Ratio),
                ("F_left", g.left_min, Force),
                ("C", g.bolt_share, Ratio),
                ("N", share.pull.max(0.0), Force),
            ],
            (capacity, Force),
            Cite::new("junker", "criterion", Flag::Read),
        );
        let mut check = of_forces(
            CheckId::Loosening,
            (demand, capacity),
            (1.0, "factor-none"),
            said(
                if demand > capacity {
                    "loosening-slides"
                } else {
                    "loosening-stays"
                },
                &[(demand, Force), (capacity, Force)],
            ),
            w,
        );
        let missing = self.service.not_taken;
        let untaken = [missing.twist, missing.pitch, missing.roll]
            .iter()
            .any(|moment| moment.abs() > 1.0);
        if check.verdict != Verdict::DoesNotHold && (untaken || self.outside_range()) {
            check.verdict = Verdict::NotChecked;
            check.utilisation = None;
            check.reason = said("loosening-clamp-unknown", &[]);
        }
        check
    }
}

//! Can what lies between head and nut take the wanted clamp?

use super::{of_forces, said};
use crate::cite::{Cite, Flag};
use crate::evaluate::analysis::Analysis;
use crate::evaluate::working::Working;
use crate::quantity::Dimension::{Area, Force, Length, Ratio, Share, Stress, Torque};
use crate::quantity::InUnits;
use crate::report::{Check, CheckId, Verdict, substituted};
use crate::support::{self, Limit};

impl Analysis<'_> {
    /// Lines that lead from the torque to the nominal clamp.
    pub(super) fn tightening_lines(&self, w: &mut Working) {
        let s = self.s;
        let (k, d) = (s.tightening.nut_factor, s.bolting.thread.major().si());
        let area = s.bolting.thread.stress_area().si();
        w.step(
            &(
                "A_t",
                "tensile stress area",
                if s.bolting.thread.system() == crate::catalog::System::Inch {
                    "(π/4)·(d − 0.9743·p)²"
                } else {
                    "(π/4)·((d₂ + d₃)/2)²"
                },
            ),
            substituted![
                ("d", d, Length),
                ("p", s.bolting.thread.pitch().si(), Length),
            ],
            (area, Area),
            s.bolting.thread.cite(),
        );
        w.step(
            &("F_p", "proof load", "S_p·A_t"),
            substituted![
                ("S_p", s.bolting.proof_strength().si(), Stress),
                ("A_t", area, Area),
            ],
            (self.preload.proof.si(), Force),
            s.bolting.strength.cite,
        );
        if s.tightening.torque.is_none() {
            w.step(
                &("T", "torque for the wanted clamp", "K·d·(share·F_p)"),
                substituted![
                    ("K", k, Ratio),
                    ("d", d, Length),
                    ("share", s.tightening.preload_share, Share),
                    ("F_p", self.preload.proof.si(), Force),
                ],
                (self.preload.torque.si(), Torque),
                Cite::new("shigley-9e", "Eq. 8-27, 8-31", Flag::Read),
            );
        }
        w.step(
            &(
                "F",
                "clamp that this torque would give on something solid",
                "T/(K·d)",
            ),
            substituted![
                ("T", self.preload.torque.si(), Torque),
                ("K", k, Ratio),
                ("d", d, Length),
            ],
            (self.preload.nominal.si(), Force),
            Cite::new("shigley-9e", "Eq. 8-27", Flag::Read),
        );
    }

    pub(super) fn scatter_line(&self, w: &mut Working) {
        w.step(
            &("F_max", "largest clamp of the scatter", "F·(1 + Γ)"),
            substituted![
                ("F", self.preload.nominal.si(), Force),
                ("Γ", self.s.tightening.scatter, Share),
            ],
            (self.preload.max.si(), Force),
            Cite::new(
                "nasa-std-5020b",
                "form of the torque scatter",
                Flag::ReadSecondHand,
            ),
        );
    }

    pub(super) fn clamp(&self) -> Check {
        let governs: Limit = self.support.governs;
        let mut w = self.sheet();
        self.tightening_lines(&mut w);
        support::working(&mut w, self.s, &self.support.least, &governs);
        let (factor, factor_is) = match governs.omega {
            Some(omega) => (omega, "factor-strength"),
            None => {
                self.scatter_line(&mut w);
                (1.0 + self.s.tightening.scatter, "factor-scatter")
            }
        };
        let reason = said(
            governs.code,
            &[(governs.load, Force), (self.preload.nominal.si(), Force)],
        );
        let mut check = of_forces(
            CheckId::Clamp,
            (self.preload.nominal.si(), governs.load),
            (factor, factor_is),
            reason,
            w,
        );
        if let Some(unknown) = self.clamp_unknown() {
            check.verdict = Verdict::NotChecked;
            check.utilisation = None;
            check.reason = said(unknown, &[]);
        } else if let Some(outside) = self.support.out_of_range(self.s).first() {
            check.verdict = Verdict::NotChecked;
            check.utilisation = None;
            check.reason = said(
                match outside.ratio {
                    "b/t" => "range-b-t",
                    "h/b" => "range-h-b",
                    "d_w/b" => "range-dw-b",
                    "d_w/flat" => "range-dw-flat",
                    _ => "range-fy-e",
                },
                &[(outside.value, Ratio), (outside.nearest(), Ratio)],
            );
        }
        check
    }
}

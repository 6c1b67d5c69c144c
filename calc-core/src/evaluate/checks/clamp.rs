//! Can what lies between head and nut take the wanted clamp?

use super::{of_forces, said};
use crate::cite::{Cite, Flag};
use crate::evaluate::analysis::Analysis;
use crate::evaluate::working::Working;
use crate::quantity::Dimension::{Area, Force, Length, Ratio, Share, Stress, Torque};
use crate::quantity::InUnits;
use crate::report::{Check, CheckId, Verdict, substituted};
use crate::scenario::SupportKind;
use crate::support::seat;
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
        self.support_lines(&mut w, &governs);
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

    /// Lines of what the clamp stands on, for the limit that governs.
    pub(super) fn support_lines(&self, w: &mut Working, governs: &Limit) {
        let s = self.s;
        let tube = &s.tube;
        if seat::round_wall_carries(s) {
            return;
        }
        if s.member.is_open() {
            self.pressed_line(w, governs);
            return;
        }
        let own = Cite::new("fe-tube-face", "fitted face curve", Flag::Computed);
        if self.support.least.sides().is_some() && s.support != SupportKind::Spreader {
            w.step(
                &(
                    "d_w",
                    "washer diameter that counts (a thin washer dishes)",
                    "from washer and face together",
                ),
                substituted![
                    ("outside", s.bolting.washer.outer.si(), Length),
                    ("thickness", s.bolting.washer.thickness_min.si(), Length),
                ],
                (self.support.least.effective_washer.si(), Length),
                Cite::new("own-derivation", "dishing of a washer", Flag::Computed),
            );
            w.step(
                &(
                    "F_1%",
                    "clamp at which each face is in by 1 % of its width",
                    "0.90·F(δ = 0.01·b)",
                ),
                substituted![
                    ("b", tube.width.si(), Length),
                    ("h", tube.depth.si(), Length),
                    ("t", tube.design_wall.si(), Length),
                    ("d_w", self.support.least.effective_washer.si(), Length),
                    ("f_y", tube.yield_least.si(), Stress),
                    ("E", tube.modulus.si(), Stress),
                ],
                (
                    self.support.least.force_at_share(support::SERVICE_SHARE),
                    Force,
                ),
                own,
            );
        }
        match s.support {
            SupportKind::LooseSleeve | SupportKind::ThroughSleeve => {
                let area = crate::mechanics::sleeve::area(s.sleeve.outer, s.sleeve.inner);
                w.step(
                    &("A", "section of the sleeve", "(π/4)·(D² − d²)"),
                    substituted![
                        ("D", s.sleeve.outer.si(), Length),
                        ("d", s.sleeve.inner.si(), Length),
                    ],
                    (area.si(), Area),
                    Cite::new("elementary", "circle ring", Flag::Computed),
                );
                w.step(
                    &(
                        "R",
                        "what sleeve and faces carry when the sleeve is squashed",
                        "f_y·A (+ faces)",
                    ),
                    substituted![("f_y", self.sleeve_yield(), Stress), ("A", area.si(), Area)],
                    (governs.load, Force),
                    Cite::new("aisc-360-22", "J4.4", Flag::Read),
                );
            }
            SupportKind::Spreader => w.step(
                &(
                    "R",
                    "least of plate, corner and side walls, or the 1 % limit",
                    "see the method page",
                ),
                substituted![
                    ("t_p", s.spreader.thickness.si(), Length),
                    ("l_p", s.spreader.length.si(), Length),
                    (
                        "f_yp",
                        s.spreader.material.least().yield_strength().si(),
                        Stress,
                    ),
                    ("t", tube.design_wall.si(), Length),
                ],
                (governs.load, Force),
                Cite::new(
                    "aisc-360-22",
                    "J10 with K1; plate by beam theory",
                    Flag::Read,
                ),
            ),
            SupportKind::SolidInsert | SupportKind::Solid => self.pressed_line(w, governs),
            SupportKind::Bare => {}
        }
    }

    fn pressed_line(&self, w: &mut Working, governs: &Limit) {
        let s = self.s;
        w.step(
            &("R", "pressure under the washer", "1.8·f_y·A_w"),
            substituted![
                ("d_w", s.washer_on_metal().si(), Length),
                ("d_h", s.bolting.hole.si(), Length),
            ],
            (governs.load, Force),
            Cite::new("aisc-360-22", "J7", Flag::Read),
        );
    }

    pub(super) fn sleeve_yield(&self) -> f64 {
        let material = self.s.sleeve.material;
        match material.welded() {
            Some(both) if self.s.sleeve.welded => both.least.compressive_yield_strength().si(),
            _ => material.least().compressive_yield_strength().si(),
        }
    }
}

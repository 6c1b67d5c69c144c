//! Can what lies between head and nut take the wanted clamp?

use super::said;
use crate::cite::{Cite, Flag};
use crate::evaluate::analysis::Analysis;
use crate::evaluate::working::{Line, Working};
use crate::quantity::{Ratio, Share, Stress, newton};
use crate::report::{Check, CheckId, Factor, say, substituted};
use crate::scenario::SupportKind;
use crate::support::seat;
use crate::support::{self, Limit};

impl Analysis<'_> {
    /// Lines that lead from the torque to the nominal clamp.
    pub(super) fn tightening_lines(&self, w: &mut Working) {
        let s = self.s;
        let (k, d) = (s.tightening.nut_factor, s.bolting.thread.major());
        let area = s.bolting.thread.stress_area();
        w.line(
            &Line {
                symbol: "A_t",
                what: "tensile stress area",
                formula: if s.bolting.thread.system() == crate::catalog::System::Inch {
                    "(π/4)·(d − 0.9743·p)²"
                } else {
                    "(π/4)·((d₂ + d₃)/2)²"
                },
            },
            substituted![("d", d), ("p", s.bolting.thread.pitch())],
            area,
            s.bolting.thread.cite(),
        );
        w.line(
            &Line {
                symbol: "F_p",
                what: "proof load",
                formula: "S_p·A_t",
            },
            substituted![("S_p", s.bolting.proof_strength()), ("A_t", area)],
            self.preload.proof,
            s.bolting.strength.cite,
        );
        if s.tightening.torque.is_none() {
            w.line(
                &Line {
                    symbol: "T",
                    what: "torque for the wanted clamp",
                    formula: "K·d·(share·F_p)",
                },
                substituted![
                    ("K", Ratio(k)),
                    ("d", d),
                    ("share", Share(s.tightening.preload_share)),
                    ("F_p", self.preload.proof)
                ],
                self.preload.torque,
                Cite::new("shigley-9e", "Eq. 8-27, 8-31", Flag::Read),
            );
        }
        w.line(
            &Line {
                symbol: "F",
                what: "clamp that this torque would give on something solid",
                formula: "T/(K·d)",
            },
            substituted![("T", self.preload.torque), ("K", Ratio(k)), ("d", d)],
            self.preload.nominal,
            Cite::new("shigley-9e", "Eq. 8-27", Flag::Read),
        );
    }

    pub(super) fn scatter_line(&self, w: &mut Working) {
        w.line(
            &Line {
                symbol: "F_max",
                what: "largest clamp of the scatter",
                formula: "F·(1 + Γ)",
            },
            substituted![
                ("F", self.preload.nominal),
                ("Γ", Share(self.s.tightening.scatter))
            ],
            self.preload.max,
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
            Some(omega) => (omega, Factor::Strength),
            None => {
                self.scatter_line(&mut w);
                (1.0 + self.s.tightening.scatter, Factor::Scatter)
            }
        };
        let check = Check::of(CheckId::Clamp, self.preload.nominal, newton(governs.load))
            .factor(factor, factor_is)
            .reason(said(
                governs.code,
                (newton(governs.load), self.preload.nominal),
            ))
            .working(w);
        if let Some(unknown) = self.clamp_unknown() {
            return check.undecided(said(unknown, ()));
        }
        let Some(outside) = self.support.out_of_range(self.s).into_iter().next() else {
            return check;
        };
        let code = match outside.ratio {
            "b/t" => say::RangeBT,
            "h/b" => say::RangeHB,
            "d_w/b" => say::RangeDwB,
            "d_w/flat" => say::RangeDwFlat,
            _ => say::RangeFyE,
        };
        check.undecided(said(code, (Ratio(outside.value), Ratio(outside.nearest()))))
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
            w.line(
                &Line {
                    symbol: "d_w",
                    what: "washer diameter that counts (a thin washer dishes)",
                    formula: "from washer and face together",
                },
                substituted![
                    ("outside", s.bolting.washer.outer),
                    ("thickness", s.bolting.washer.thickness_min)
                ],
                self.support.least.effective_washer,
                Cite::new("own-derivation", "dishing of a washer", Flag::Computed),
            );
            w.line(
                &Line {
                    symbol: "F_1%",
                    what: "clamp at which each face is in by 1 % of its width",
                    formula: "0.90·F(δ = 0.01·b)",
                },
                substituted![
                    ("b", tube.width),
                    ("h", tube.depth),
                    ("t", tube.design_wall),
                    ("d_w", self.support.least.effective_washer),
                    ("f_y", tube.yield_least),
                    ("E", tube.modulus)
                ],
                newton(self.support.least.force_at_share(support::SERVICE_SHARE)),
                own,
            );
        }
        match s.support {
            SupportKind::LooseSleeve | SupportKind::ThroughSleeve => {
                let area = crate::mechanics::sleeve::area(s.sleeve.outer, s.sleeve.inner);
                w.line(
                    &Line {
                        symbol: "A",
                        what: "section of the sleeve",
                        formula: "(π/4)·(D² − d²)",
                    },
                    substituted![("D", s.sleeve.outer), ("d", s.sleeve.inner)],
                    area,
                    Cite::new("elementary", "circle ring", Flag::Computed),
                );
                w.line(
                    &Line {
                        symbol: "R",
                        what: "what sleeve and faces carry when the sleeve is squashed",
                        formula: "f_y·A (+ faces)",
                    },
                    substituted![("f_y", self.sleeve_yield()), ("A", area)],
                    newton(governs.load),
                    Cite::new("aisc-360-22", "J4.4", Flag::Read),
                );
            }
            SupportKind::Spreader => w.line(
                &Line {
                    symbol: "R",
                    what: "least of plate, corner and side walls, or the 1 % limit",
                    formula: "see the method page",
                },
                substituted![
                    ("t_p", s.spreader.thickness),
                    ("l_p", s.spreader.length),
                    ("f_yp", s.spreader.material.least().yield_strength()),
                    ("t", tube.design_wall)
                ],
                newton(governs.load),
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
        w.line(
            &Line {
                symbol: "R",
                what: "pressure under the washer",
                formula: "1.8·f_y·A_w",
            },
            substituted![("d_w", s.washer_on_metal()), ("d_h", s.bolting.hole)],
            newton(governs.load),
            Cite::new("aisc-360-22", "J7", Flag::Read),
        );
    }

    pub(super) fn sleeve_yield(&self) -> Stress {
        let material = self.s.sleeve.material;
        match material.welded() {
            Some(both) if self.s.sleeve.welded => both.least.compressive_yield_strength(),
            _ => material.least().compressive_yield_strength(),
        }
    }
}

//! Can what lies between head and nut take the wanted clamp?

use super::said;
use crate::cite::{Cite, Flag, Source};
use crate::evaluate::analysis::Analysis;
use crate::mechanics::range::CheckedRatio;
use crate::quantity::{Force, InUnits, Ratio, Share, newton};
use crate::report::working::{Line, Working};
use crate::report::{Check, CheckId, Factor, Verdict, say, substituted};
use crate::support::{self, Limit};

/// The clamp on what takes it least.
struct Seat {
    governs: Limit,
    /// Clamp at the lowest nut factor that counts, with heat or cold.
    wanted: Force,
    /// The same with the scatter of tightening, as a factor on it.
    scattered: f64,
}

impl Seat {
    /// Share used of the limit.
    fn used(&self) -> f64 {
        let factor = self.governs.omega.unwrap_or(self.scattered);
        factor * self.wanted.si() / self.governs.load.max(1e-9)
    }
}

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
                Cite::new(Source::Shigley9e, "Eq. 8-27, 8-31", Flag::Read),
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
            Cite::new(Source::Shigley9e, "Eq. 8-27", Flag::Read),
        );
        let [low, high] = s.tightening.nut_factor_band;
        if low < high {
            w.line(
                &Line {
                    symbol: "F",
                    what: "clamp if the threads are as slick as they may be",
                    formula: "T/(K_low·d)",
                },
                substituted![("T", self.preload.torque), ("K_low", Ratio(low)), ("d", d)],
                self.preload.slick,
                s.tightening.lubrication.cite_range(),
            );
        }
    }

    pub(super) fn scatter_line(&self, w: &mut Working) {
        w.line(
            &Line {
                symbol: "F_max",
                what: "largest clamp of the scatter",
                formula: "F·(1 + Γ)",
            },
            substituted![
                ("F", self.preload.slick),
                ("Γ", Share(self.s.tightening.scatter))
            ],
            self.preload.max,
            Cite::new(
                Source::NasaStd5020b,
                "form of the torque scatter",
                Flag::ReadSecondHand,
            ),
        );
    }

    /// What heat or cold adds to the clamp at the end of the temperatures that tightens, N; the lines on it. What would
    /// flow there is missing at the other end.
    ///
    /// # Sources
    /// VDI 2230: the surface pressure under the largest clamp and what comes on top in service, from memory.
    fn heat_line(&self, w: &mut Working) {
        let heat = self.residual.temperature;
        if heat > 0.0 {
            w.line(
                &Line {
                    symbol: "F_hot",
                    what: "largest clamp with the heat or cold that tightens it",
                    formula: "F_max + F_T",
                },
                substituted![("F_max", self.preload.max), ("F_T", newton(heat))],
                newton(self.preload.max.si() + heat),
                Cite::new(
                    Source::Vdi2230,
                    "surface pressure under the largest clamp in service",
                    Flag::Memory,
                ),
            );
        }
    }

    /// The end of a sleeve that presses harder than a milled face may, and less than its surface flows at, is close,
    /// whatever else governs.
    ///
    /// # Sources
    /// AISC 360-22 J7 with Ω 2.00 on the clamp that is wanted, against the limiting surface pressure on the largest.
    fn graded_ends(&self, check: Check) -> Check {
        let wanted = newton(self.preload.slick.si() + self.residual.temperature);
        let mut ends = self.support.least.limits.iter();
        match ends.find(|l| l.code == say::LimitSleeveBites && 2.0 * wanted.si() > l.load) {
            Some(end) if check.verdict == Verdict::Holds => Check {
                verdict: Verdict::Close,
                reason: said(end.code, (newton(end.load), wanted)),
                ..check
            },
            _ => check,
        }
    }

    /// The clamp with so much heat on top, N, and the limit that it comes nearest to.
    fn seat(&self, heat: f64) -> Seat {
        let wanted = newton(self.preload.slick.si() + heat);
        let scattered = (self.preload.max.si() + heat) / wanted.si().max(1e-9);
        let governs = if heat > 0.0 {
            self.support.least.governing(scattered - 1.0)
        } else {
            self.support.governs
        };
        Seat {
            governs,
            wanted,
            scattered,
        }
    }

    /// What heat or cold adds to the clamp, where the seat would hold without it and does not hold with it.
    pub(in crate::evaluate) fn heat_on_seat(&self) -> Option<Force> {
        let heat = self.residual.temperature;
        let holds = |heat| Verdict::of(self.seat(heat).used()) == Verdict::Holds;
        (heat > 0.0 && holds(0.0) && !holds(heat)).then(|| newton(heat))
    }

    pub(in crate::evaluate) fn clamp(&self) -> Check {
        // At the end of the temperatures at which it is greatest.
        let Seat {
            governs,
            wanted,
            scattered,
        } = self.seat(self.residual.temperature);
        let mut w = self.sheet();
        self.tightening_lines(&mut w);
        // Its lines take another look at the curve: only where somebody reads them.
        if self.working {
            support::working(&mut w, self.s, &self.support.least, &governs);
        }
        let (factor, factor_is) = match governs.omega {
            Some(omega) => (omega, Factor::Strength),
            None => {
                self.scatter_line(&mut w);
                (scattered, Factor::Scatter)
            }
        };
        self.heat_line(&mut w);
        let check = Check::of(CheckId::Clamp, wanted, newton(governs.load))
            .factor(factor, factor_is)
            .reason(said(governs.code, (newton(governs.load), wanted)))
            .working(w);
        let check = self.graded_ends(check);
        if let Some(unknown) = self.clamp_unknown() {
            return check.undecided(said(unknown, ()));
        }
        let Some(outside) = self.support.out_of_range(self.s).into_iter().next() else {
            return check;
        };
        let code = match outside.ratio {
            CheckedRatio::WidthToWall => say::RangeBT,
            CheckedRatio::HeightToWidth => say::RangeHB,
            CheckedRatio::WasherToWidth => say::RangeDwB,
            CheckedRatio::WasherToFlat => say::RangeDwFlat,
            CheckedRatio::YieldToModulus | CheckedRatio::RiseToDiameter => say::RangeFyE,
        };
        check.undecided(said(code, (Ratio(outside.value), Ratio(outside.nearest()))))
    }
}

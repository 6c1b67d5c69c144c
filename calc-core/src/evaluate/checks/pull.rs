//! The outside pull along the bolt: with the clamp in service, and on the flange of the fitting.

use super::demand::Demand;
use super::said;
use crate::cite::{Cite, Flag, Source};
use crate::evaluate::analysis::Analysis;
use crate::mechanics::{opening, shear};
use crate::quantity::{Force, InUnits, Ratio, newton};
use crate::report::working::Line;
use crate::report::{Check, CheckId, Sentence, Verdict, say, substituted};

/// Share of the shank area that a threaded part counts with against pull.
///
/// # Sources
/// AISC 360-22 Table J3.2.
const THREADED: f64 = 0.75;

impl Analysis<'_> {
    /// The scatter of tightening is in the demand, so this check holds up to the proof load and is close
    /// up to the yield load, as the one for tightening.
    ///
    /// Where bolt and members do not grow alike, what the clamp loses at one end of the temperatures the bolt gains
    /// at the other: it counts here whichever way the metals pair, and also where nothing pulls.
    pub(super) fn bolt_service(&self) -> Option<Check> {
        let (g, preload) = (self.residual, self.preload);
        let pulled = self.clamped(&|loads| loads.largest_pull);
        if pulled.is_none() && g.temperature <= 0.0 {
            return None;
        }
        let pull = pulled.map_or(0.0, |pulled| self.pull_on_bolt(pulled.force, preload.proof));
        let clamp = preload.max.si() + g.temperature;
        let demand = opening::bolt_pull(newton(clamp), g.load_factor, newton(pull)).si();
        let mut w = self.sheet();
        if let Some(pulled) = &pulled {
            self.case_line(&mut w, pulled);
            self.pried_line(&mut w, pulled.force, pull);
        }
        w.line(
            &Line {
                symbol: "F_b",
                what: "largest bolt force in service, with the heat or cold that pulls at it",
                formula: "max(F_max + F_T + C·N, N)",
            },
            substituted![
                ("F_max", preload.max),
                ("F_T", newton(g.temperature)),
                ("C", Ratio(g.load_factor)),
                ("N", newton(pull))
            ],
            newton(demand),
            Cite::new(Source::Shigley9e, "Eq. 8-24", Flag::Read),
        );
        let (proof, yields) = (preload.proof.si(), preload.yields.si());
        let code = if demand > yields {
            say::BoltServiceOverYield
        } else if demand > proof {
            say::BoltServiceOverProof
        } else {
            say::BoltServiceBelowProof
        };
        let mut judged = Check::of(CheckId::BoltService, newton(demand), newton(yields));
        if let Some(pulled) = pulled {
            judged = judged.in_case(pulled.loads.case.case, pulled.loads.case.kind);
        }
        let verdict = if demand <= proof {
            Verdict::Holds
        } else {
            judged.verdict().max(Verdict::Close)
        };
        let reason = said(code, (newton(demand), newton(proof), newton(yields)));
        Some(judged.stands(verdict).reason(reason).working(w))
    }

    /// Strength of one bolt against pull, N. A coarse thread in a small bolt has less area than the
    /// published share of the shank, and an ultimate case has no factor to cover that.
    pub(in crate::evaluate) fn pull_strength(&self) -> f64 {
        let b = &self.s.bolting;
        let area = THREADED * b.thread.shank_area().si();
        b.strength.tensile.si() * area.min(b.thread.stress_area().si())
    }

    /// Only where the reader says how far the bolts stand from the upright part of the fitting.
    pub(super) fn fitting_flange(&self) -> Option<Check> {
        let s = self.s;
        let bolt = newton(self.pull_strength());
        let pried = self.pried(0.0, bolt)?;
        let to_yield = s.fitting.ultimate_least.si() / s.fitting.yield_least.si().max(1.0);
        let pulled = self.strength((shear::OMEGA, to_yield), &|loads| loads.largest_pull)?;
        let capacity = pried.capacity.si();
        let mut w = self.sheet();
        self.case_line(&mut w, &pulled);
        w.line(
            &Line {
                symbol: "t_c",
                what: "thickness at which the flange adds nothing",
                formula: "√(4·B·b'/(p·F_u))",
            },
            substituted![("B", bolt), ("t", s.fitting.thickness)],
            pried.thick_enough,
            Cite::new(Source::AiscManual, "Part 9, prying action", Flag::Memory),
        );
        w.line(
            &Line {
                symbol: "T_max",
                what: "pull that flange and bolt hold together",
                formula: "B·min(1, (t/t_c)²·(1 + δ·α'))",
            },
            substituted![("B", bolt)],
            newton(capacity),
            Cite::new(Source::AiscManual, "Part 9, prying action", Flag::Memory),
        );
        let words = [say::FlangeBends, say::FlangeHolds];
        Some(bending(CheckId::FittingFlange, &pulled, capacity, words, w))
    }

    /// The forces of the case that decides.
    pub(super) fn case_line(&self, w: &mut super::Working, demand: &Demand<'_>) {
        let case = &demand.loads.case;
        w.line(
            &Line {
                symbol: "V, N",
                what: "most that the case asks of one bolt, here",
                formula: "elastic vector method; pull about middle or edge, the larger",
            },
            substituted![
                ("along", newton(case.along)),
                ("up", newton(case.up)),
                ("side", newton(case.side))
            ],
            newton(demand.force),
            case.cite,
        );
    }

    pub(super) fn pried_line(&self, w: &mut super::Working, pull: f64, with: f64) {
        if self.s.fitting.flange_arm.is_some() || self.s.free_edge().is_some() {
            w.line(
                &Line {
                    symbol: "N",
                    what: "pull on the bolt with prying",
                    formula: "T + q",
                },
                substituted![("T", newton(pull))],
                newton(with),
                Cite::new(Source::AiscManual, "Part 9, prying action", Flag::Memory),
            );
        }
    }
}

/// Whether what bends under the pull of one bolt can take it; what to say if not, and if so.
pub(super) fn bending(
    id: CheckId,
    pulled: &Demand<'_>,
    capacity: f64,
    words: [Sentence<2>; 2],
    w: super::Working,
) -> Check {
    pulled.against::<Force>(id, capacity).says(words).working(w)
}

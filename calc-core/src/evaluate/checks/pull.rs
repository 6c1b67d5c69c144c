//! The outside pull along the bolt: with the clamp in service, and on the flange of the fitting.

use super::demand::Demand;
use super::said;
use crate::catalog::LoadKind;
use crate::cite::{Cite, Flag, Source};
use crate::evaluate::analysis::Analysis;
use crate::evaluate::pried::any_arm;
use crate::mechanics::{opening, shear};
use crate::quantity::{Force, InUnits, Ratio, newton};
use crate::report::working::Line;
use crate::report::{Check, CheckId, Factor, Sentence, Verdict, say, substituted};

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
        // The bolt has the pull itself, without the factor on opening: the largest decides.
        let most = self.cases().governing(&|loads| {
            let counts = loads.case.kind != LoadKind::Ultimate && loads.largest_pull > 0.0;
            counts.then_some(loads.largest_pull)
        });
        let pulled = most.map(|(loads, force)| Demand {
            loads,
            force,
            factor: 1.0,
            factor_is: Factor::None,
        });
        if pulled.is_none() && g.temperature <= 0.0 {
            return None;
        }
        let pull = pulled.map_or(0.0, |pulled| self.pull_on_bolt(pulled.force, preload.proof));
        let clamp = preload.max.si() + g.temperature;
        let demand = opening::bolt_pull(newton(clamp), g.bolt_share, newton(pull)).si();
        let mut w = self.sheet();
        if let Some(pulled) = &pulled {
            self.case_line(&mut w, pulled);
            self.pried_line(&mut w, pulled.force, pull);
        }
        w.line(
            &Line {
                symbol: "C_b",
                what: "share of an outside pull that the bolt feels, at the most: softest grip",
                formula: "k_b/(k_b + k_soft)",
            },
            substituted![("k_b", g.bolt), ("k_soft", g.soft)],
            Ratio(g.bolt_share),
            Cite::new(
                Source::Shigley9e,
                "Eq. 8-24, cones of section 8-5",
                Flag::Read,
            ),
        );
        w.line(
            &Line {
                symbol: "F_b",
                what: "largest bolt force in service, with the heat or cold that pulls on it",
                formula: "max(F_max + F_T + C_b·N, N)",
            },
            substituted![
                ("F_max", preload.max),
                ("F_T", newton(g.temperature)),
                ("C_b", Ratio(g.bolt_share)),
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
        // Pretension takes nothing of a bolt's tensile strength, where it is stretched once: AISC 360-22 J3.7. The pull
        // itself is asked of that strength.
        let stretched = self.stretched_once() && pull * shear::OMEGA <= self.pull_strength();
        let verdict = if demand <= proof {
            Verdict::Holds
        } else if stretched {
            Verdict::Close
        } else {
            judged.verdict().max(Verdict::Close)
        };
        let reason = if stretched && demand > yields {
            said(say::BoltStretchedOnce, (newton(demand), newton(proof)))
        } else {
            said(code, (newton(demand), newton(proof), newton(yields)))
        };
        Some(judged.stands(verdict).reason(reason).working(w))
    }

    /// Strength of one bolt against pull, N. A coarse thread in a small bolt has less area than the
    /// published share of the shank, and an ultimate case has no factor to cover that.
    pub(in crate::evaluate) fn pull_strength(&self) -> f64 {
        let b = &self.s.bolting;
        let area = THREADED * b.thread.shank_area().si();
        b.strength.tensile.si() * area.min(b.thread.stress_area().si())
    }

    /// Where the bolts pull at the fitting, it bends between them and its upright part. How far that is the
    /// reader says; where nobody did, the fitting counts as stiff only if it is so for any arm that there is
    /// room for, and is not judged otherwise. Two cheeks on a tube are not asked for the arm: what pulls one
    /// cheek off presses the other one on, and nothing has to bend.
    pub(super) fn fitting_flange(&self) -> Option<Check> {
        let s = self.s;
        let to_yield = s.fitting.ultimate_least.si() / s.fitting.yield_least.si().max(1.0);
        let pulled = self.strength((shear::OMEGA, to_yield), &|loads| loads.largest_pull)?;
        let bolt = newton(self.pull_strength());
        let Some(pried) = self.pried(0.0, bolt) else {
            let cheeks = s.bolting.slip_planes() > 1.0;
            return (!cheeks).then(|| self.flange_of_any_arm(&pulled, bolt));
        };
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

    /// The fitting's flange with the longest arm that there is room for: it counts as stiff where it holds
    /// the pull with its factor and adds nothing to the pull itself.
    fn flange_of_any_arm(&self, pulled: &Demand<'_>, bolt: Force) -> Check {
        let s = self.s;
        let any = any_arm(s, bolt);
        let largest = self.cases().all.iter().map(|loads| loads.largest_pull);
        let largest = largest.fold(0.0, f64::max);
        let mut w = self.sheet();
        self.case_line(&mut w, pulled);
        w.line(
            &Line {
                symbol: "b",
                what: "longest arm that there is room for",
                formula: "to the far edge of the face, the middle of the group or the bracket's edge",
            },
            substituted![("B", s.tube.width), ("e", s.fitting.edge)],
            any.arm,
            Cite::new(
                Source::OwnAssumption,
                "the upright part stands on the member's face",
                Flag::Assumption,
            ),
        );
        let prying = Cite::new(Source::AiscManual, "Part 9, prying action", Flag::Memory);
        w.line(
            &Line {
                symbol: "T_0",
                what: "pull up to which a bracket with that arm adds nothing",
                formula: "p·t²·F_u/(4·b')",
            },
            substituted![
                ("t", s.fitting.thickness),
                ("F_u", s.fitting.ultimate_least)
            ],
            any.adds_nothing,
            prying,
        );
        w.line(
            &Line {
                symbol: "T_max",
                what: "pull that flange and bolt hold together with that arm",
                formula: "B·min(1, (t/t_c)²·(1 + δ·α'))",
            },
            substituted![("B", bolt)],
            any.capacity,
            prying,
        );
        let capacity = any.capacity.si();
        let used = pulled
            .used(capacity)
            .max(largest / any.adds_nothing.si().max(1e-9));
        let check = pulled
            .against::<Force>(CheckId::FittingFlange, capacity)
            .used(used)
            .says_of_both(say::FlangeStiff);
        if used > 1.0 {
            let reason = said(
                say::FlangeArmMissing,
                (newton(pulled.force), s.fitting.thickness, any.arm),
            );
            check.undecided(reason)
        } else {
            check
        }
        .working(w)
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

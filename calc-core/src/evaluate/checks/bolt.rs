//! The bolt while it is tightened, and whether its grade may be.

use super::said;
use crate::catalog::{BoltGrade, ZincCoat};
use crate::cite::{Cite, Flag, Source};
use crate::evaluate::analysis::Analysis;
use crate::quantity::{Count, Ratio, newton};
use crate::report::working::Line;
use crate::report::{Check, CheckId, Factor, Verdict, say, substituted};
use crate::scenario::BoltFinish;

impl Analysis<'_> {
    /// The wrench is controlled and its scatter is in the demand, so this check holds up to the proof
    /// load and is close up to the yield load; the 80 % of other checks would ask for a looser bolt.
    pub(super) fn bolt_tightening(&self) -> Check {
        let s = self.s;
        let mut w = self.sheet();
        self.tightening_lines(&mut w);
        self.scatter_line(&mut w);
        w.line(
            &Line {
                symbol: "F_y",
                what: "yield load",
                formula: "S_y·A_t",
            },
            substituted![
                ("S_y", s.bolting.yield_strength()),
                ("A_t", s.bolting.thread.stress_area())
            ],
            self.preload.yields,
            s.bolting.strength.cite,
        );
        let combined = Cite::new(
            Source::Vdi2230,
            "combined stress while tightening",
            Flag::Memory,
        );
        w.line(
            &Line {
                symbol: "σ_v",
                what: "combined stress at the nominal clamp",
                formula: "√(σ² + 3·τ²)",
            },
            substituted![
                ("F", self.preload.nominal),
                ("μ", Ratio(self.preload.friction))
            ],
            self.preload.combined_nominal(s),
            combined,
        );
        w.line(
            &Line {
                symbol: "σ_v,pl",
                what: "the same with the twist as in a thread that yields all over",
                formula: "√(σ² + 3·(¾·τ)²)",
            },
            substituted![
                ("F", self.preload.nominal),
                ("μ", Ratio(self.preload.friction))
            ],
            self.preload.combined_yielding(s),
            combined,
        );
        w.line(
            &Line {
                symbol: "σ_v,max",
                what: "combined stress at the largest clamp, slippery threads",
                formula: "√(σ² + 3·τ²)",
            },
            substituted![("F_max", self.preload.max)],
            self.preload.combined_max(s),
            combined,
        );
        let over_proof = self.preload.max > self.preload.proof;
        let code = if self.preload.max > self.preload.yields {
            say::BoltOverYield
        } else if over_proof {
            say::BoltOverProof
        } else {
            say::BoltBelowProof
        };
        let mut reason = said(
            code,
            (self.preload.max, self.preload.proof, self.preload.yields),
        );
        let mut judged = Check::of(
            CheckId::BoltTightening,
            self.preload.slick,
            self.preload.yields,
        )
        .factor(1.0 + s.tightening.scatter, Factor::Scatter);
        // Where friction eats the torque, the thread gives way to pull and twist before the clamp is there.
        let twisted = self.preload.combined_yielding(s) / s.bolting.yield_strength();
        let used = twisted.value;
        if used > 1.0 && judged.used_so_far() < used {
            judged = judged.used(used);
            reason = said(
                say::BoltTwistedOverYield,
                (
                    self.preload.combined_yielding(s),
                    s.bolting.yield_strength(),
                ),
            );
        }
        let verdict = match judged.verdict() {
            Verdict::Close if !over_proof => Verdict::Holds,
            Verdict::DoesNotHold if self.stretched_once() => {
                reason = said(
                    say::BoltStretchedOnce,
                    (self.preload.max, self.preload.proof),
                );
                Verdict::Close
            }
            other => other,
        };
        judged.stands(verdict).reason(reason).working(w)
    }

    /// Structural bolts that are tightened past their yield by turn or washer, as their standard has it: once. What pulls at
    /// them from outside is asked apart.
    pub(crate) fn stretched_once(&self) -> bool {
        let s = self.s;
        s.bolting.grade.pretension_group().is_some()
            && !s.tightening.method.by_torque()
            && s.tightening.torque.is_none()
            && self.preload.nominal <= self.preload.proof * (1.0 + 1e-9)
    }

    /// Grades that a standard does not let be clamped with, as such or with zinc on them.
    pub(super) fn grade(&self) -> Option<Check> {
        let b = &self.s.bolting;
        let zinc = b.finish == BoltFinish::Zinc;
        let (verdict, why, cite) = match b.grade.zinc_coat() {
            _ if !b.grade.may_be_pretensioned() => (
                Verdict::DoesNotHold,
                say::GradeNotForClamping,
                BoltGrade::PRETENSION_CITE,
            ),
            ZincCoat::Never if zinc => (
                Verdict::DoesNotHold,
                say::GradeNeverZinc,
                Cite::new(
                    Source::AstmF3125,
                    "grade A490: A490, 5.4",
                    Flag::ReadSecondHand,
                ),
            ),
            ZincCoat::Baked if zinc => (
                Verdict::NotChecked,
                say::GradeZincBaked,
                Cite::new(Source::Iso4042, "baking above 390 HV", Flag::ReadSecondHand),
            ),
            _ => return None,
        };
        let mut w = self.sheet();
        w.line(
            &Line {
                symbol: "–",
                what: "grade that may be tightened to a stated clamp",
                formula: "not allowed for this grade",
            },
            substituted![],
            Count(0.0),
            cite,
        );
        let judged = Check::of(CheckId::Grade, self.preload.nominal, newton(0.0))
            .stands(verdict)
            .without_share();
        Some(judged.reason(said(why, ())).working(w))
    }
}

//! The bolt while it is tightened, and whether its grade may be.

use super::{amount, of_forces, said};
use crate::catalog::BoltGrade;
use crate::cite::{Cite, Flag};
use crate::evaluate::analysis::Analysis;
use crate::quantity::Dimension::{Area, Count, Force, Ratio, Stress};
use crate::quantity::InUnits;
use crate::report::{Check, CheckId, Verdict, substituted};

impl Analysis<'_> {
    /// The wrench is controlled and its scatter is in the demand, so this check holds up to the proof
    /// load and is close up to the yield load; the 80 % of other checks would ask for a looser bolt.
    pub(super) fn bolt_tightening(&self) -> Check {
        let s = self.s;
        let mut w = self.sheet();
        self.tightening_lines(&mut w);
        self.scatter_line(&mut w);
        w.step(
            &("F_y", "yield load", "S_y·A_t"),
            substituted![
                ("S_y", s.bolting.yield_strength().si(), Stress),
                ("A_t", s.bolting.thread.stress_area().si(), Area),
            ],
            (self.preload.yields.si(), Force),
            s.bolting.strength.cite,
        );
        let combined = Cite::new("vdi-2230", "combined stress while tightening", Flag::Memory);
        w.step(
            &(
                "σ_v",
                "combined stress at the nominal clamp",
                "√(σ² + 3·τ²)",
            ),
            substituted![
                ("F", self.preload.nominal.si(), Force),
                ("μ", self.preload.friction, Ratio),
            ],
            (self.preload.combined_nominal(s).si(), Stress),
            combined,
        );
        w.step(
            &(
                "σ_v,max",
                "combined stress at the largest clamp, slippery threads",
                "√(σ² + 3·τ²)",
            ),
            substituted![("F_max", self.preload.max.si(), Force)],
            (self.preload.combined_max(s).si(), Stress),
            combined,
        );
        let over_proof = self.preload.max > self.preload.proof;
        let code = if self.preload.max > self.preload.yields {
            "bolt-over-yield"
        } else if over_proof {
            "bolt-over-proof"
        } else {
            "bolt-below-proof"
        };
        let reason = said(
            code,
            &[
                (self.preload.max.si(), Force),
                (self.preload.proof.si(), Force),
                (self.preload.yields.si(), Force),
            ],
        );
        let mut check = of_forces(
            CheckId::BoltTightening,
            (self.preload.nominal.si(), self.preload.yields.si()),
            (1.0 + s.tightening.scatter, "factor-scatter"),
            reason,
            w,
        );
        if check.verdict == Verdict::Close && !over_proof {
            check.verdict = Verdict::Holds;
        }
        check
    }

    pub(super) fn grade(&self) -> Option<Check> {
        if self.s.bolting.grade.may_be_pretensioned() {
            return None;
        }
        let mut w = self.sheet();
        w.step(
            &(
                "–",
                "grade that may be tightened to a stated clamp",
                "not allowed for this grade",
            ),
            substituted![],
            (0.0, Count),
            BoltGrade::PRETENSION_CITE,
        );
        Some(Check {
            id: CheckId::Grade,
            verdict: Verdict::DoesNotHold,
            demand: amount(self.preload.nominal.si(), Force),
            capacity: amount(0.0, Force),
            factor: 1.0,
            factor_is: "factor-none",
            utilisation: None,
            case: None,
            reason: said("grade-not-for-clamping", &[]),
            steps: w.finish(),
        })
    }
}

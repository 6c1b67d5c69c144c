//! Does the hollow face stay in place that a pull hangs on, or that a cheek is pushed against?

use super::{Resistance, Working, said};
use crate::catalog::LoadKind;
use crate::cite::{Cite, Flag, Source};
use crate::evaluate::analysis::Analysis;
use crate::mechanics::opening;
use crate::mechanics::yield_line::{Patch, chord_face};
use crate::quantity::{Count, Ratio, newton};
use crate::report::working::Line;
use crate::report::{Check, CheckId, Sentence, Verdict, say, substituted};
use crate::support::{Pulled, PulledFaces, pulled};

impl Analysis<'_> {
    /// Where the fitting sits on one face of a tube: under a service load the face moves by no more than
    /// 1 % of its width, under one that must do no harm no dent stays either, under one that must break
    /// nothing it moves by no more than 3 %. Punching is asked apart. Of two cheeks the one that is pushed against its wall.
    pub(super) fn face_pull(&self) -> Option<Check> {
        let faces = match pulled(self.s, &self.support.least) {
            Pulled::Elsewhere => return None,
            // Whatever pulls: the weight of the fitting is enough.
            Pulled::Nothing => return Some(self.nothing_holds()),
            Pulled::Unknown(why) => return self.unknown_pull(why),
            Pulled::Faces(faces) => faces,
        };
        let bolt = newton(self.pull_strength());
        let yields = faces.service.min(faces.lasting);
        let omega = faces.ultimate / faces.allowed.max(1e-9);
        let resistance = Resistance::allowable(faces.ultimate, omega, yields);
        let (resistance, demand) = self.governing_demand(&[resistance], &|loads| {
            if loads.largest_pull > 0.0 {
                self.pull_on_bolt(loads.largest_pull, bolt)
            } else {
                0.0
            }
        })?;
        let w = self.explained(|w| {
            self.case_line(w, &demand);
            self.pried_line(w, demand.loads.largest_pull, demand.force);
            self.face_pull_lines(w, &faces, yields);
        });
        let alone = Self::of_resistance(
            CheckId::FacePull,
            (&resistance, &demand),
            if self.s.bolting.two_cheeks {
                [say::CheekPushGives, say::CheekPushHolds]
            } else {
                [say::FacePullGives, say::FacePullHolds]
            },
            w,
        );
        Some(match self.pressed_and_pulled() {
            Some(both) if both.utilisation > alone.utilisation => both,
            _ => alone,
        })
    }

    /// The face under the nut bears the clamp already when the pull comes: what the bolt has of both presses
    /// on it. Over the cases that count on the clamp; a face that comes in farther then has lost its clamp
    /// afterwards. Of two cheeks that are pushed one way each wall has half of it, the near one more and the far one less;
    /// with something between the walls both move together, and the clamp stays as it was.
    fn pressed_and_pulled(&self) -> Option<Check> {
        let cheeks = self.s.bolting.two_cheeks;
        if cheeks && self.support.least.core().is_some() {
            return None;
        }
        let limit = self.support.least.limit_of_use()?;
        let (loads, pull) = self.cases().governing(&|loads| {
            let counts = loads.case.kind != LoadKind::Ultimate && loads.largest_pull > 0.0;
            counts.then_some(loads.largest_pull)
        })?;
        let pull = newton(self.pull_on_bolt(pull, self.preload.proof));
        let clamp = self.preload.slick;
        let share = if cheeks {
            0.5
        } else {
            self.residual.bolt_share
        };
        let pressed = opening::bolt_pull(clamp, share, pull);
        let check = Check::of(CheckId::FacePull, pressed, newton(limit))
            .in_case(loads.case.case, loads.case.kind)
            .says([say::FacePressedGives, say::FacePressedHolds]);
        Some(check.working(self.explained(|w| {
            w.line(
                &Line {
                    symbol: "F_b",
                    what: "clamp and share of the pull, which press on the face under the nut",
                    formula: "max(F + C_b·N, N)",
                },
                substituted![("F", clamp), ("C_b", Ratio(share)), ("N", pull)],
                pressed,
                Cite::new(Source::Shigley9e, "Eq. 8-24", Flag::Read),
            );
            w.line(
                &Line {
                    symbol: "F_1%",
                    what: "force at which the faces come in by 1 % of their width",
                    formula: "as in the check of the clamp",
                },
                substituted![("b", self.s.tube.width)],
                newton(limit),
                Cite::new(Source::FeTubeFace, "fitted face curve", Flag::Computed),
            );
        })))
    }

    fn nothing_holds(&self) -> Check {
        let pull = self.largest_pull();
        Check::of(CheckId::FacePull, newton(pull), newton(0.0))
            .stands(Verdict::DoesNotHold)
            .without_share()
            .reason(said(say::FacePullNothingHolds, ()))
    }

    fn unknown_pull(&self, why: Sentence<0>) -> Option<Check> {
        let pull = self.largest_pull();
        let check = || {
            Check::of(CheckId::FacePull, newton(pull), newton(0.0))
                .reason(said(why, ()))
                .undecided(said(why, ()))
        };
        (pull > 0.0).then(check)
    }

    fn largest_pull(&self) -> f64 {
        let all = self.cases().all.iter();
        all.map(|loads| loads.largest_pull).fold(0.0, f64::max)
    }

    fn face_pull_lines(&self, w: &mut Working, faces: &PulledFaces, yields: f64) {
        let t = &self.s.tube;
        let curve = Cite::new(
            Source::FeTubeFace,
            "fitted face curve; faces pulled out: 0.95 to 1.19 of it",
            Flag::Computed,
        );
        w.line(
            &Line {
                symbol: "F_1%",
                what: "pull at which the face moves by 1 % of its width",
                formula: "0.90·F(δ = 0.01·b), summed over the faces that hold",
            },
            substituted![
                ("b", t.width),
                ("t", t.design_wall),
                ("d", faces.patch),
                ("n", Count(faces.faces))
            ],
            newton(faces.service),
            curve,
        );
        w.line(
            &Line {
                symbol: "F_3%",
                what: "pull at which the face moves by 3 % of its width: its strength",
                formula: "0.90·F(δ = 0.03·b), summed over the faces that hold",
            },
            substituted![
                ("b", t.width),
                ("t", t.design_wall),
                ("d", faces.patch),
                ("n", Count(faces.faces))
            ],
            newton(faces.ultimate),
            curve,
        );
        w.line(
            &Line {
                symbol: "F_y",
                what: "pull after which a dent stays, and never more than at 1 %",
                formula: "min(F_1%, 0.90·F(dent 0.1 mm))",
            },
            substituted![("F_1%", newton(faces.service))],
            newton(yields),
            curve,
        );
        w.line(
            &Line {
                symbol: "F_a",
                what: "what a service load may use",
                formula: "min(F_1%, F_3%/1.50, parts under a plate with their factors)",
            },
            substituted![
                ("F_1%", newton(faces.service)),
                ("F_3%", newton(faces.ultimate))
            ],
            newton(faces.allowed),
            Cite::new(Source::Aisc360_22, "chapter K, Ω 1.50", Flag::Memory),
        );
        w.line(
            &Line {
                symbol: "N_yl",
                what: "published yield line of one face, for comparison: too high, not used",
                formula: "(π/4)·f_y·t²/(1 − β)·(2η + 4·√(1 − β))",
            },
            substituted![("f_y", t.yield_least), ("t", t.design_wall), ("b", t.width)],
            chord_face(
                t.yield_least,
                t.design_wall,
                t.width,
                faces.patch,
                Patch::Circular,
            ),
            Cite::new(Source::En1993_1_8, "Table 7.10, 7.11", Flag::Read),
        );
    }
}

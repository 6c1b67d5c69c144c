//! The bolt under shear, pull and bending at once.

use super::{Resistance, said};
use crate::catalog::LoadKind;
use crate::cite::{Cite, Flag, Source};
use crate::evaluate::analysis::Analysis;
use crate::evaluate::loads::BoltLoads;
use crate::mechanics::bearing::GAMMA_Q;
use crate::mechanics::{en_bolt, interaction, shear};
use crate::quantity::{InUnits, Ratio, newton};
use crate::report::working::Line;
use crate::report::{Check, CheckId, Factor, say, substituted};

/// Strengths of the bolt.
struct Strengths {
    /// Shear, American and European.
    shear: [Resistance; 2],
    /// Pull, American and European; both yield at the proof load.
    pull: [Resistance; 2],
    /// Bending, where the bolt has room for it.
    bending: Option<Resistance>,
}

/// Shares used by one case.
struct Together {
    /// Pull with what a flange adds, N.
    pull: f64,
    shear_shares: [f64; 2],
    pull_shares: [f64; 2],
    /// By the American rule, the European one, and as a pin.
    american: f64,
    european: f64,
    pin: f64,
    /// Onset of yield; zero where that is not asked for.
    yields: f64,
}

impl Together {
    const fn most(&self) -> f64 {
        self.american
            .max(self.european)
            .max(self.pin)
            .max(self.yields)
    }
}

impl Analysis<'_> {
    fn bolt_strengths(&self) -> Strengths {
        let b = &self.s.bolting;
        let proof = self.preload.proof.si();
        let eu = en_bolt::tension(b.strength.tensile, b.thread.stress_area()).si();
        Strengths {
            shear: self.shear_resistances(),
            pull: [
                Resistance::allowable(self.pull_strength(), shear::OMEGA, proof),
                Resistance::design(eu, proof),
            ],
            bending: self.bending_resistance(),
        }
    }

    /// The largest of each in one case taken together, whichever bolt it falls on. A service case has its
    /// factors inside the shares; a case that may break nothing has none; one that may do no lasting harm
    /// is held against the onset of yield as well,
    /// `√((N/N_y + M/M_y)² + (V/V_y)²)`, by distortion energy.
    fn together(&self, loads: &BoltLoads, strengths: &Strengths) -> Together {
        let kind = loads.case.kind;
        let factor = |resistance: &Resistance| {
            if kind == LoadKind::Service {
                resistance.factor
            } else {
                1.0
            }
        };
        let in_plane = loads.largest_in_plane;
        let pull = loads.largest_pull.max(0.0);
        let pull = if pull > 0.0 {
            self.pull_on_bolt(pull, newton(self.pull_strength()))
        } else {
            0.0
        };
        let used = |force: f64, resistance: &Resistance| {
            factor(resistance) * force / resistance.capacity.max(1e-9)
        };
        let shear_shares = strengths
            .shear
            .each_ref()
            .map(|resistance| used(in_plane, resistance));
        let pull_shares = strengths
            .pull
            .each_ref()
            .map(|resistance| used(pull, resistance));
        let [shear_us, shear_eu] = shear_shares;
        let [pull_us, pull_eu] = pull_shares;
        let moment = self.moment(loads);
        let [sheared, ..] = &strengths.shear;
        let [pulled, ..] = &strengths.pull;
        let yields = if kind == LoadKind::Proof {
            let bent = strengths
                .bending
                .map_or(0.0, |resistance| moment / resistance.yields.max(1e-9));
            (pull / pulled.yields.max(1e-9) + bent).hypot(in_plane / sheared.yields.max(1e-9))
        } else {
            0.0
        };
        Together {
            pull,
            shear_shares,
            pull_shares,
            american: interaction::aisc(shear_us, pull_us),
            european: interaction::european(shear_eu, pull_eu),
            pin: strengths.bending.map_or(0.0, |resistance| {
                interaction::pin(used(moment, &resistance), shear_us.max(shear_eu))
            }),
            yields,
        }
    }

    pub(super) fn bolt_combined(&self) -> Option<Check> {
        let b = &self.s.bolting;
        let strengths = self.bolt_strengths();
        let pulled = self.cases().all.iter().any(|x| x.largest_pull > 0.0);
        if !pulled && strengths.bending.is_none() {
            return None;
        }
        let (loads, utilisation) = self.cases().governing(&|loads| {
            let used = self.together(loads, &strengths).most();
            (used > 0.0).then_some(used)
        })?;
        let all = self.together(loads, &strengths);
        let ([shear_us, shear_eu], [pull_us, pull_eu]) = (all.shear_shares, all.pull_shares);
        let [us, eu] = strengths
            .pull
            .each_ref()
            .map(|resistance| resistance.capacity);
        let mut w = self.sheet();
        self.pried_line(&mut w, loads.largest_pull.max(0.0), all.pull);
        w.line(
            &Line {
                symbol: "R_t",
                what: "strength of the bolt in tension",
                formula: "F_u·min(0.75·A_b, A_t)",
            },
            substituted![
                ("F_u", b.strength.tensile),
                ("A_b", b.thread.shank_area()),
                ("A_t", b.thread.stress_area())
            ],
            newton(us),
            Cite::new(Source::Aisc360_22, "Table J3.2", Flag::Read),
        );
        w.line(
            &Line {
                symbol: "U_1",
                what: "shear and pull",
                formula: "max(u_v, u_t, (u_v + u_t)/1.3)",
            },
            substituted![("u_v", Ratio(shear_us)), ("u_t", Ratio(pull_us))],
            Ratio(all.american),
            Cite::new(Source::Aisc360_22, "J3.8", Flag::Read),
        );
        w.line(
            &Line {
                symbol: "F_t,Rd",
                what: "tension by the European column",
                formula: "0.9·f_ub·A_s/γ_M2",
            },
            substituted![
                ("f_ub", b.strength.tensile),
                ("A_s", b.thread.stress_area()),
                ("γ_Q", Ratio(GAMMA_Q))
            ],
            newton(eu),
            Cite::new(Source::En1993_1_8, "Table 3.4", Flag::Read),
        );
        w.line(
            &Line {
                symbol: "U_2",
                what: "shear and pull by the European column",
                formula: "max(u_t, u_v + u_t/1.4)",
            },
            substituted![("u_v", Ratio(shear_eu)), ("u_t", Ratio(pull_eu))],
            Ratio(all.european),
            Cite::new(Source::En1993_1_8, "Table 3.4", Flag::Read),
        );
        if strengths.bending.is_some() {
            w.line(
                &Line {
                    symbol: "U_3",
                    what: "bending and shear as a pin",
                    formula: "√(u_M² + u_v²)",
                },
                substituted![("u_v", Ratio(shear_us.max(shear_eu)))],
                Ratio(all.pin),
                Cite::new(Source::En1993_1_8, "Table 3.10, pins", Flag::Memory),
            );
        }
        if loads.case.kind == LoadKind::Proof {
            w.line(
                &Line {
                    symbol: "U_y",
                    what: "onset of yield",
                    formula: "√((N/N_y + M/M_y)² + (V/V_y)²)",
                },
                substituted![
                    ("N", newton(all.pull)),
                    ("V", newton(loads.largest_in_plane))
                ],
                Ratio(all.yields),
                Cite::new(Source::Elementary, "distortion energy", Flag::Computed),
            );
        }
        let judged = Check::of(CheckId::BoltCombined, Ratio(utilisation), Ratio(1.0))
            .factor(1.0, Factor::Inside)
            .in_case(loads.case.case, loads.case.kind);
        let code = if judged.exceeds() {
            say::CombinedTooMuch
        } else {
            say::CombinedFine
        };
        let reason = said(code, (newton(loads.largest_in_plane), newton(all.pull)));
        Some(judged.reason(reason).working(w))
    }
}

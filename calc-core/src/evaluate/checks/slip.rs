//! Does the clamp grip the road loads, and do the faces stay together?

use super::{Working, said};
use crate::catalog::LoadKind;
use crate::cite::{Cite, Flag, Source};
use crate::evaluate::analysis::Analysis;
use crate::evaluate::loads::{BoltLoads, Service};
use crate::mechanics::bolt_group::NotTaken;
use crate::mechanics::opening;
use crate::quantity::{
    Acceleration, Count, InUnits, Ratio, STANDARD_GRAVITY, TemperatureStep, newton,
};
use crate::report::working::Line;
use crate::report::{Check, CheckId, Factor, Said, Sentence, Verdict, say, substituted};
use crate::scenario::JointKind;
use crate::support::{self, seat};

/// Bump factor, and braking and cornering in g, at or below which a trailer hardly moves. Half of what is still told as
/// light, own assumption.
const PARKED: [f64; 3] = [1.5, 0.15, 0.1];

/// What is so light: bumps, braking, cornering.
const PARKED_SAYS: [Sentence<2>; 3] = [
    say::SlipFewBumps,
    say::SlipHardlyBrakes,
    say::SlipHardlyTurns,
];

impl Analysis<'_> {
    /// Where the clamp goes past the wall there is no grip at all, whatever it is asked for: not by a load
    /// that counts on none either, as nothing but play holds the fitting between one load and the next.
    pub(super) fn slip(&self) -> Option<Check> {
        if self.unloaded() {
            return Some(self.no_load(say::SlipNoLoad));
        }
        let parked = self.parked();
        if parked.iter().all(|light| *light) {
            return Some(self.no_load(say::SlipLevelRoad));
        }
        let fitting = &self.s.fitting;
        let no_grip = if fitting.touches {
            support::passes_by(self.s).map(|why| said(why, ()))
        } else {
            Some(said(say::SlipAirGap, (fitting.gap,)))
        };
        if let Some(why) = no_grip {
            return Some(self.no_grip(why));
        }
        let service = self.service()?;
        let (demand, resistance) = (service.worst_share().in_plane(), service.resistance);
        let (case, kind) = (service.ball.case, service.ball.kind);
        let factor_is = if kind == LoadKind::Service {
            Factor::Slip
        } else {
            Factor::Proof
        };
        let judged = Check::of(CheckId::Slip, newton(demand), newton(resistance))
            .factor(service.factor, factor_is)
            .in_case(case, kind);
        let code = if judged.exceeds() {
            say::SlipSlides
        } else {
            say::SlipGrips
        };
        let left = newton(self.residual.left_min);
        let check = judged
            .reason(said(code, (newton(demand), newton(resistance), left)))
            .working(self.explained(|w| {
                self.residual_lines(w);
                self.slip_lines(w, service);
            }));
        let untaken = self.untaken(&|kind| kind != LoadKind::Ultimate);
        let outside = self.outside_range() && check.verdict != Verdict::DoesNotHold;
        Some(if self.clamp_unknown().is_some() {
            check.undecided(said(say::SlipClampUnknown, ()))
        } else if untaken > 1.0 {
            Self::with_lever(check, untaken)
        } else if outside {
            check.undecided(said(say::SlipClampUnknown, ()))
        } else {
            self.on_no_road(check, parked)
        })
    }

    /// A grip that holds on a road of which one thing is that of a parked trailer: close, and which thing it is.
    fn on_no_road(&self, check: Check, parked: [bool; 3]) -> Check {
        let mut light = PARKED_SAYS.into_iter().zip(parked);
        let Some((sentence, _)) = light.find(|(_, light)| *light) else {
            return check;
        };
        if check.verdict != Verdict::Holds {
            return check;
        }
        let l = &self.s.loads;
        let [bump, braking, side] = PARKED;
        let g = |times: f64| Acceleration::of_si(times * STANDARD_GRAVITY);
        let reason = if sentence == say::SlipFewBumps {
            said(sentence, (Ratio(l.vertical_factor), Ratio(bump)))
        } else if sentence == say::SlipHardlyBrakes {
            said(sentence, (l.braking, g(braking)))
        } else {
            said(sentence, (l.side, g(side)))
        };
        Check {
            verdict: Verdict::Close,
            reason,
            ..check
        }
    }

    /// What is asked of a grip that there is none of.
    fn no_grip(&self, why: Said) -> Check {
        let demand = self
            .service()
            .map_or(0.0, |service| service.worst_share().in_plane());
        let judged = Check::of(CheckId::Slip, newton(demand), newton(0.0))
            .stands(Verdict::DoesNotHold)
            .without_share();
        let judged = match self.service() {
            Some(service) => judged.in_case(service.ball.case, service.ball.kind),
            None => judged,
        };
        judged.reason(why)
    }

    /// Lines from the clamp right after tightening to what is left of it.
    fn residual_lines(&self, w: &mut Working) {
        let (s, g) = (self.s, &self.residual);
        let fresh = newton(g.fresh_min);
        w.line(
            &Line {
                symbol: "F_0",
                what: "least clamp right after tightening",
                formula: "min(F·(1 − Γ), limit of the support)",
            },
            substituted![
                ("F·(1 − Γ)", self.preload.min),
                ("limit", newton(self.support.least.limit()))
            ],
            fresh,
            Cite::new(
                Source::NasaStd5020b,
                "form of the torque scatter",
                Flag::ReadSecondHand,
            ),
        );
        w.line(
            &Line {
                symbol: "F_R",
                what: "what goes by itself in the first days",
                formula: "0.025·F_0 bare, 0.065·F_0 coated",
            },
            substituted![("F_0", fresh)],
            newton(g.relaxation),
            Cite::new(Source::Rcsc, "commentary, citing Munse 1967", Flag::Read),
        );
        w.line(
            &Line {
                symbol: "F_Z",
                what: "flattening of rough faces",
                formula: "f_Z/(1/k_b + 1/k_m)",
            },
            substituted![("k_b", g.bolt), ("k_m", g.members)],
            newton(g.embedding),
            Cite::new(Source::Vdi2230, "Table 5", Flag::Memory),
        );
        w.line(
            &Line {
                symbol: "F_T",
                what: "cold or heat",
                formula: "|α_m − α_b|·ΔT·l/(1/k_b + 1/k_m)",
            },
            substituted![
                ("ΔT", TemperatureStep(s.loads.temperature_swing)),
                ("l", g.length)
            ],
            newton(g.temperature),
            Cite::new(Source::Elementary, "thermal strain", Flag::Computed),
        );
        if g.set > 0.0 {
            w.line(
                &Line {
                    symbol: "F_S",
                    what: "lost for good where heat or cold pulls the bolt past its yield load, or what it presses on past its limit",
                    formula: "F + F_T − min(A_t·f_y, limit), of the loosest or the tightest bolt",
                },
                substituted![
                    ("A_t·f_y", self.preload.yields),
                    ("limit", newton(self.support.least.limit()))
                ],
                newton(g.set),
                Cite::new(Source::Elementary, "elastic, then plastic", Flag::Computed),
            );
        }
        w.line(
            &Line {
                symbol: "F_left",
                what: "least clamp left",
                formula: "F_0 − F_R − F_Z − F_T − F_S",
            },
            substituted![("F_0", fresh)],
            newton(g.left_min),
            Cite::new(Source::Elementary, "sum", Flag::Computed),
        );
    }

    /// Lines on the bolt that slips first.
    fn slip_lines(&self, w: &mut Working, service: &Service) {
        let (s, g, share) = (self.s, &self.residual, service.worst_share());
        w.line(
            &Line {
                symbol: "V",
                what: "largest force in the faying plane on one bolt",
                formula: "elastic vector method",
            },
            substituted![
                ("along", newton(service.ball.along)),
                ("up", newton(service.ball.up)),
                ("side", newton(service.ball.side))
            ],
            newton(share.in_plane()),
            Cite::new(Source::Shigley9e, "section 8-12", Flag::Read),
        );
        w.line(
            &Line {
                symbol: "R",
                what: "slip resistance of that bolt",
                formula: "m·μ·(F_left − (1 − C)·N)",
            },
            substituted![
                ("m", Count(s.bolting.slip_planes())),
                ("μ", Ratio(s.tightening.faying_friction)),
                ("F_left", newton(g.left_min)),
                ("C", Ratio(g.load_factor)),
                ("N", newton(share.pull.max(0.0)))
            ],
            newton(service.resistance),
            Cite::new(Source::Aisc360_22, "J3.9, J3.10", Flag::Read),
        );
    }

    /// Whether no case asks for anything: a free load that was not filled in.
    fn unloaded(&self) -> bool {
        let still = |loads: &BoltLoads| {
            loads.largest_in_plane <= 0.0
                && loads.largest_pull <= 0.0
                && loads.shares.iter().all(|share| share.pull == 0.0)
                && loads.not_taken == NotTaken::default()
        };
        self.cases().all.iter().all(still)
    }

    /// Of a coupler or a hanger, whether there are hardly any bumps, hardly any braking, hardly any turns. With all three
    /// it is no road at all.
    fn parked(&self) -> [bool; 3] {
        let l = &self.s.loads;
        let on_road = matches!(l.joint, JointKind::Coupler | JointKind::SpringHanger);
        let in_g = |a: Acceleration| a.si() / STANDARD_GRAVITY;
        let typed = [l.vertical_factor, in_g(l.braking), in_g(l.side)];
        let mut limits = PARKED.into_iter();
        typed.map(|typed| on_road && limits.next().is_some_and(|limit| typed <= limit + 1e-9))
    }

    /// A joint that nothing pulls at is not judged.
    fn no_load(&self, why: Sentence<0>) -> Check {
        Check::of(CheckId::Slip, newton(0.0), newton(0.0))
            .stands(Verdict::NotChecked)
            .without_share()
            .reason(said(why, ()))
    }

    /// Why the clamp that is reached cannot be known, by key. Where it is so, the numbers that rest on it
    /// prove nothing either way.
    pub(super) fn clamp_unknown(&self) -> Option<Sentence<0>> {
        seat::clamp_unknown(self.s)
    }

    pub(super) fn outside_range(&self) -> bool {
        !self.support.out_of_range(self.s).is_empty()
    }

    pub(super) fn opening(&self) -> Option<Check> {
        // With what flanges add, which does not grow in proportion: it decides between the cases too.
        let pulled = self.clamped(&|loads| match loads.largest_pull {
            pull if pull > 0.0 => self.pull_on_bolt(pull, self.preload.proof),
            pull => pull,
        })?;
        let pull = pulled.force;
        let g = self.residual;
        let opens_at = opening::separation_load(newton(g.left_min), g.load_factor).si();
        let mut w = self.sheet();
        w.line(
            &Line {
                symbol: "C",
                what: "share of an outside pull that the bolt feels, at the least",
                formula: "k_b/(k_b + k_m)",
            },
            substituted![("k_b", g.bolt), ("k_m", g.members)],
            Ratio(g.load_factor),
            Cite::new(Source::Shigley9e, "Eq. 8-24", Flag::Read),
        );
        w.line(
            &Line {
                symbol: "N_0",
                what: "pull at which the faces part",
                formula: "F_left/(1 − C)",
            },
            substituted![("F_left", newton(g.left_min)), ("C", Ratio(g.load_factor))],
            newton(opens_at),
            Cite::new(Source::Shigley9e, "Eq. 8-30", Flag::Read),
        );
        // A soft support hands nearly all of the pull to the bolt: the faces part late, but the bolt
        // works. The faces are only counted on up to the clamp itself.
        let counted = opens_at.min(g.left_min);
        if let Some(why) = support::passes_by(self.s) {
            return Some(
                Check::of(CheckId::Opening, newton(pull), newton(0.0))
                    .stands(Verdict::DoesNotHold)
                    .without_share()
                    .in_case(pulled.loads.case.case, pulled.loads.case.kind)
                    .reason(said(why, ())),
            );
        }
        let check = Check::of(CheckId::Opening, newton(pull), newton(counted))
            .factor(pulled.factor, pulled.factor_is)
            .in_case(pulled.loads.case.case, pulled.loads.case.kind)
            .says([say::OpeningParts, say::OpeningShut]);
        Some(
            if self.clamp_unknown().is_some() {
                check.undecided(said(say::OpeningClampUnknown, ()))
            } else {
                check
            }
            .working(w),
        )
    }
}

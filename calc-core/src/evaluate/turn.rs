//! Torque against turn: what the hand on the wrench feels.

use super::analysis::Analysis;
use crate::mechanics::solve::find_root;
use crate::quantity::InUnits;
use crate::report::Strength;
use crate::scenario::Scenario;
use crate::support::SupportModel;
use serde::Serialize;

/// Points along the curve.
const POINTS: usize = 96;

/// Slope of the bolt beyond yield, as a share of its elastic one. An assumption: nearly flat.
const AFTER_YIELD: f64 = 0.02;

/// Turn after the bolt yields up to which the curve is drawn, as stretch in units of the elastic one.
const STRETCH_SHOWN: f64 = 2.0;

/// One state on the way.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct TurnPoint {
    /// Turn of the nut from hand-tight, degrees.
    pub turn_deg: f64,
    /// Torque on the wrench.
    pub torque_nm: f64,
    /// Clamp force.
    pub clamp_n: f64,
    /// Approach of the two washers from the support.
    pub approach_mm: f64,
    /// Mean dent of the two faces under load.
    pub dent_mm: f64,
    /// Mean dent that would stay after loosening.
    pub dent_left_mm: f64,
    /// Stretch of the bolt.
    pub stretch_mm: f64,
}

/// Where the curve bends: the steepest rise has fallen to half.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Knee {
    /// Turn at the knee, degrees.
    pub turn_deg: f64,
    /// Torque at the knee.
    pub torque_nm: f64,
    /// What gives way there: the face, the sleeve, the bolt …
    pub part: crate::report::Part,
}

/// Why the curve stops.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Ends {
    /// Each face is in by 6 % of its width: nobody checked further.
    DentChecked,
    /// The bolt has yielded.
    BoltYields,
    /// The sleeve, insert or stack is squashed.
    SupportSquashed,
}

/// Torque against turn with likely strength.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct TorqueTurn {
    /// States, turn rising.
    pub points: Vec<TurnPoint>,
    /// Where it bends, if it does.
    pub knee: Option<Knee>,
    /// Wanted torque.
    pub wanted_torque_nm: f64,
    /// State at the wanted torque; `None`: the wrench does not click in the checked range.
    pub at_wanted: Option<TurnPoint>,
    /// Why it stops.
    pub ends: Ends,
}

/// Computes the curve with likely strength.
///
/// ```text
/// turn/360°·P = F/k_b (elastic–plastic bolt) + Δ(F) (support) + F/k_plies
/// T = K·d·F
/// ```
///
/// Starts hand-tight, all parts touching. K is held constant along the way. Of a joint of which something is not known
/// the one that [decides](super::deciding).
#[must_use]
pub fn torque_turn(s: &Scenario) -> TorqueTurn {
    known_torque_turn(&super::deciding(s))
}

/// The same of a joint of which everything is known: a program that asks for no checks holds none.
#[must_use]
pub fn known_torque_turn(s: &Scenario) -> TorqueTurn {
    Curve {
        joint: Analysis::new(s),
        model: SupportModel::new(s, Strength::Likely),
    }
    .trace()
}

struct Curve<'a> {
    joint: Analysis<'a>,
    model: SupportModel,
}

impl Curve<'_> {
    /// Stretch of the bolt at a clamp force; beyond yield it hardly stiffens any more.
    fn stretch(&self, force: f64) -> f64 {
        let (k, yields) = (
            self.joint.residual.bolt.si(),
            self.joint.preload.yields.si(),
        );
        force.min(yields) / k + (force - yields).max(0.0) / (AFTER_YIELD * k)
    }

    fn state(&self, approach: f64) -> TurnPoint {
        let force = self.model.force(approach);
        let stretch = self.stretch(force);
        let travel = stretch + approach + force / self.joint.residual.plies.si();
        let thread = self.joint.s.bolting.thread;
        let split = self.model.split(approach);
        let left = self.model.sides().map_or(0.0, |[a, b]| {
            if a == b {
                a.left_after(split[0])
            } else {
                0.5 * (a.left_after(split[0]) + b.left_after(split[1]))
            }
        });
        let dents = if self.model.sides().is_some() {
            0.5 * (split[0] + split[1])
        } else {
            0.0
        };
        TurnPoint {
            turn_deg: travel / thread.pitch().si() * 360.0,
            torque_nm: self.joint.s.tightening.nut_factor * thread.major().si() * force,
            clamp_n: force,
            approach_mm: approach * 1e3,
            dent_mm: dents * 1e3,
            dent_left_mm: left * 1e3,
            stretch_mm: stretch * 1e3,
        }
    }

    fn trace(&self) -> TorqueTurn {
        let end = self.model.approach_end();
        let yields = self.joint.preload.yields.si();
        let most = yields * (1.0 + AFTER_YIELD * STRETCH_SHOWN);
        let bolt_first = self.model.force(end) >= most;
        let last = if bolt_first {
            find_root(0.0, end, 1e-8, |x| self.model.force(x) - most)
        } else {
            end
        };
        let at_yield = if self.model.force(last) > yields {
            find_root(0.0, last, 1e-8, |x| self.model.force(x) - yields)
        } else {
            last
        };
        // Dense near the start, where the face still rises; one point exactly where the bolt yields.
        let mut points: Vec<TurnPoint> = (0..=POINTS)
            .map(|i| {
                let share = i as f64 / POINTS as f64;
                self.state(at_yield * share * share)
            })
            .collect();
        if last > at_yield {
            points.push(self.state(last));
        }
        let wanted = self.joint.preload.torque.si();
        let at_wanted = self.at_torque(wanted, last);
        TorqueTurn {
            knee: self.knee(&points, bolt_first),
            at_wanted,
            wanted_torque_nm: wanted,
            ends: if bolt_first {
                Ends::BoltYields
            } else if self.model.sides().is_some() {
                Ends::DentChecked
            } else {
                Ends::SupportSquashed
            },
            points,
        }
    }

    fn at_torque(&self, torque: f64, last: f64) -> Option<TurnPoint> {
        let clamp = torque
            / (self.joint.s.tightening.nut_factor * self.joint.s.bolting.thread.major().si());
        (self.model.force(last) >= clamp)
            .then(|| self.state(find_root(0.0, last, 1e-9, |x| self.model.force(x) - clamp)))
    }

    /// First point after the steepest rise where the slope is below half of it.
    fn knee(&self, points: &[TurnPoint], bolt_first: bool) -> Option<Knee> {
        let slope = |pair: &[TurnPoint]| match pair {
            [a, b] if b.turn_deg > a.turn_deg => {
                (b.torque_nm - a.torque_nm) / (b.turn_deg - a.turn_deg)
            }
            _ => 0.0,
        };
        let mut steepest = 0.0_f64;
        for pair in points.windows(2) {
            let now = slope(pair);
            steepest = steepest.max(now);
            if let [at, _] = pair
                && now < 0.5 * steepest
            {
                let bolt = bolt_first && at.clamp_n >= 0.98 * self.joint.preload.yields.si();
                let part = if bolt {
                    crate::report::Part::Bolt
                } else {
                    self.model.governing(self.joint.s.tightening.scatter).part
                };
                return Some(Knee {
                    turn_deg: at.turn_deg,
                    torque_nm: at.torque_nm,
                    part,
                });
            }
        }
        None
    }
}

impl TorqueTurn {
    /// The state after a turn, between the points by straight lines; the last state beyond them.
    #[must_use]
    pub fn at_turn(&self, turn_deg: f64) -> Option<TurnPoint> {
        let after = self.points.partition_point(|p| p.turn_deg < turn_deg);
        let right = self.points.get(after).or(self.points.last())?;
        let left = self.points.get(after.saturating_sub(1)).unwrap_or(right);
        let width = right.turn_deg - left.turn_deg;
        let share = if width > 0.0 {
            ((turn_deg - left.turn_deg) / width).clamp(0.0, 1.0)
        } else {
            0.0
        };
        let mix = |f: fn(&TurnPoint) -> f64| f(left) + share * (f(right) - f(left));
        Some(TurnPoint {
            turn_deg: mix(|p| p.turn_deg),
            torque_nm: mix(|p| p.torque_nm),
            clamp_n: mix(|p| p.clamp_n),
            approach_mm: mix(|p| p.approach_mm),
            dent_mm: mix(|p| p.dent_mm),
            dent_left_mm: mix(|p| p.dent_left_mm),
            stretch_mm: mix(|p| p.stretch_mm),
        })
    }
}

//! A bolt and what it clamps as two springs, read off the curve that the calculator gives for the joint.

use calc_core::catalog::Thread;
use calc_core::evaluate::known_torque_turn;
use calc_core::evaluate::{TorqueTurn, TurnPoint};
use calc_core::mechanics::losses::embedding;
use calc_core::quantity::{InUnits, Length, Stiffness, newton_per_mm};
use calc_core::{Input, Scenario};

/// A joint, its curve and its two springs.
pub(super) struct Sprung {
    pub(super) scenario: Scenario,
    pub(super) curve: TorqueTurn,
    /// Stiffness of the bolt.
    pub(super) bolt: Stiffness,
    /// Stiffness of all that it clamps.
    pub(super) members: Stiffness,
    /// Where the bolt yields, if the curve goes that far; else its last state but one.
    pub(super) yields: TurnPoint,
}

impl Sprung {
    pub(super) fn new(input: &Input) -> Option<Self> {
        let scenario = Scenario::new(input).ok()?;
        let curve = known_torque_turn(&scenario);
        let yields = *curve.points.iter().rev().nth(1)?;
        // Early on everything springs.
        let early = curve.points.get(2)?;
        Some(Self {
            bolt: newton_per_mm(early.clamp_n / early.stretch_mm),
            members: newton_per_mm(early.clamp_n / squeeze(&scenario, early)),
            scenario,
            curve,
            yields,
        })
    }

    pub(super) fn thread(&self) -> &'static Thread {
        self.scenario.bolting.thread
    }
}

/// Way of the nut along the thread, mm.
pub(super) fn travel(scenario: &Scenario, turn_deg: f64) -> f64 {
    scenario.bolting.thread.pitch().si() * 1e3 * turn_deg / 360.0
}

/// What of the nut's way the bolt has not taken, mm.
pub(super) fn squeeze(scenario: &Scenario, point: &TurnPoint) -> f64 {
    (travel(scenario, point.turn_deg) - point.stretch_mm).max(0.0)
}

/// Pull that a way of the nut would give, or a settling take, if the stack gave nothing.
pub(super) fn rigid(way: Length, bolt: Stiffness) -> f64 {
    embedding(way, bolt, newton_per_mm(f64::INFINITY)).si()
}

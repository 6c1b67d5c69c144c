//! A tube with a bolt through it and a wrench on the nut: what two lessons have in common.

use super::model::Look;
use crate::scene::Scene;
use crate::section::{Layout, SectionState, section};
use calc_core::evaluate::{TorqueTurn, TurnPoint};
use calc_core::mechanics::tightening::clamp_from;
use calc_core::quantity::{InUnits, newton_metre};
use calc_core::{Input, Scenario, torque_turn};

/// A joint with its curve.
#[derive(Clone, Debug)]
pub(super) struct Joint {
    pub(super) scenario: Scenario,
    pub(super) curve: TorqueTurn,
}

impl Joint {
    /// `None` where the joint is refused.
    pub(super) fn new(input: &Input) -> Option<Self> {
        let scenario = Scenario::new(input).ok()?;
        let curve = torque_turn(&scenario);
        Some(Self { scenario, curve })
    }

    /// Travel of the nut on the thread in mm: turn times pitch.
    pub(super) fn travel_mm(&self, turn_deg: f64) -> f64 {
        turn_deg / 360.0 * self.scenario.bolting.thread.pitch().si() * 1e3
    }

    /// Clamp that the set torque gives on something that takes it, N.
    pub(super) fn wanted_n(&self) -> f64 {
        clamp_from(
            self.scenario.tightening.nut_factor,
            self.scenario.bolting.thread.major(),
            newton_metre(self.curve.wanted_torque_nm),
        )
        .si()
    }

    /// The state in which each face is in by a dent, between the curve's points by straight lines.
    pub(super) fn at_dent(&self, dent_mm: f64) -> Option<TurnPoint> {
        let points = &self.curve.points;
        let after = points.partition_point(|p| p.dent_mm < dent_mm);
        let (left, right) = (points.get(after.checked_sub(1)?)?, points.get(after)?);
        let share = (dent_mm - left.dent_mm) / (right.dent_mm - left.dent_mm);
        let turn = left.turn_deg + share * (right.turn_deg - left.turn_deg);
        self.curve.at_turn(turn)
    }

    /// The state after a turn; a torque wrench goes no further than its click.
    pub(super) fn after(&self, turn_deg: f64) -> Option<TurnPoint> {
        let click = self.curve.at_wanted.filter(|p| p.turn_deg <= turn_deg);
        click.or_else(|| self.curve.at_turn(turn_deg))
    }

    /// The tube in section in a state. The wanted clamp and the largest dent of all states fix the
    /// scales, so that states can be compared.
    pub(super) fn section(&self, now: &TurnPoint, dent_largest_mm: f64, look: &Look<'_>) -> Scene {
        let wanted = self.wanted_n();
        section(&SectionState {
            clamp_largest_n: wanted,
            clamp_wanted_n: Some(wanted),
            dent_largest_mm,
            // Not what lies between two points of the curve: where a sleeve is reached it has a kink.
            clamp_n: now.clamp_n,
            dent_each_mm: now.dent_mm,
            dent_left_mm: Some(now.dent_left_mm),
            ..SectionState::from_core(
                look.id,
                &self.scenario,
                &self.curve,
                now.turn_deg,
                look.units,
                Layout::Low,
            )
        })
    }
}

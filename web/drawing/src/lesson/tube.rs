//! A tube with a bolt through it and a wrench on the nut: what two lessons have in common.

use super::both::Both;
use super::control::{Control, Range};
use super::model::{Handle, Look};
use crate::scene::{Draw, Scene};
use crate::section::{Layout, SectionState, section, wrench_hand};
use calc_core::evaluate::known_torque_turn;
use calc_core::evaluate::{TorqueTurn, TurnPoint};
use calc_core::mechanics::tightening::clamp_from;
use calc_core::quantity::{Dimension, InUnits, newton_metre};
use calc_core::{Input, Scenario};

/// The wrench. `most` is where the last of a lesson's curves ends, in degrees.
pub(super) const fn turn(most: f64) -> Control {
    Control::number(
        "turn",
        "turn of the nut",
        Dimension::Angle,
        Both::alike(Range::new([0.0, most], 5.0, 0.0)),
    )
}

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
        let curve = known_torque_turn(&scenario);
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

    /// The tube in section in a state, and the wrench to drag. The wanted clamp and the largest dent of
    /// all states fix the scales, so that states can be compared.
    pub(super) fn section(
        &self,
        now: &TurnPoint,
        dent_largest_mm: f64,
        look: &Look<'_>,
        control: usize,
    ) -> (Scene, Handle) {
        let wanted = self.wanted_n();
        let state = SectionState {
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
        };
        let mut scene = section(&state);
        let (at, along) = wrench_hand(&state);
        scene.marks.circle(at, 11.0, "grip");
        (scene, Handle { control, at, along })
    }
}

#[cfg(test)]
mod tests {
    use super::super::{ControlKind, State, lesson};
    use super::*;
    use crate::scene::{Anchor, Mark, Placed, text_width};
    use calc_core::quantity::UnitSystem;

    /// All marks of groups that stand where they are; those that are moved hold turned parts.
    fn standing(marks: &[Mark]) -> Vec<&Mark> {
        let mut found = Vec::new();
        for mark in marks {
            match mark {
                Mark::Group { placed, marks, .. } if *placed == Placed::default() => {
                    found.extend(standing(marks));
                }
                other => found.push(other),
            }
        }
        found
    }

    /// Left, top, right, bottom of every lettering, with its words.
    fn boxes(scene: &Scene) -> Vec<([f64; 4], &str)> {
        standing(&scene.marks)
            .into_iter()
            .filter_map(|mark| {
                let Mark::Text {
                    at,
                    text,
                    class,
                    anchor,
                    turn,
                } = mark
                else {
                    return None;
                };
                // Letters take less than they may at most.
                let wide = 0.9 * text_width(text, class);
                let before = match anchor {
                    Anchor::Start => 0.0,
                    Anchor::Middle => wide / 2.0,
                    Anchor::End => wide,
                };
                let (x, y) = *at;
                let found = if *turn == 0.0 {
                    [x - before, y - 10.0, x - before + wide, y + 2.0]
                } else {
                    [x - 10.0, y - before, x + 2.0, y - before + wide]
                };
                Some((found, text.as_str()))
            })
            .collect()
    }

    #[test]
    fn lettering_stays_on_the_sheet_and_off_other_lettering() {
        for id in ["spring", "torque", "share", "hollow", "stand", "look"] {
            let model = lesson(id).unwrap();
            let controls = model.controls();
            let values = |control: usize, units| match controls[control].kind {
                ControlKind::Choices { of, .. } => (0..of.len()).map(|i| i as f64).collect(),
                ControlKind::Number { range, .. } => {
                    let Range { min, max, .. } = *range.of(units);
                    (0..=6)
                        .map(|i| min + (max - min) * f64::from(i) / 6.0)
                        .collect::<Vec<_>>()
                }
            };
            for units in [UnitSystem::Us, UnitSystem::Metric] {
                for a in values(0, units) {
                    for b in values(1, units) {
                        for c in values(2, units) {
                            let state = State::new([a, b, c], units);
                            let scene = model.picture(&state, &state.look("x")).unwrap().drawing;
                            let all = boxes(&scene);
                            for (i, (p, words)) in all.iter().enumerate() {
                                let at = format!("{id} {}: {words}", state.written(controls));
                                assert!(p[0] >= 0.0 && p[2] <= scene.width, "{at} {p:?}");
                                assert!(p[1] >= 0.0 && p[3] <= scene.height, "{at} {p:?}");
                                for (q, others) in all.iter().skip(i + 1) {
                                    let apart =
                                        p[2] < q[0] || q[2] < p[0] || p[3] < q[1] || q[3] < p[1];
                                    assert!(apart, "{at} over {others}");
                                }
                            }
                        }
                    }
                }
            }
        }
    }
}

//! The opening figure: one bolt and one wrench on three things to stand on.
//!
//! All three are drawn to one force scale, one exaggeration and one pair of axes, because the reader
//! compares them.

use crate::plot::TorqueTurnPlot;
use crate::section::{Layout, SectionState};
use crate::words::key;
use crate::words::{fill, message, message_at};
use calc_core::evaluate::known_torque_turn;
use calc_core::evaluate::{Ends, TorqueTurn, TurnPoint};
use calc_core::quantity::{Dimension, Unit, UnitSystem};
use calc_core::report::Amount;
use calc_core::scenario::SupportKind;
use calc_core::{Input, Scenario};

/// Turn at which the figure stands before anybody touches it: the tube has given way.
pub const OPENING_TURN: f64 = 390.0;

/// Turn up to which the figure goes: one and a half. Bare tube could be crushed further.
pub const FARTHEST: f64 = 540.0;

/// Finest step of the control, in degrees.
pub const STEP: f64 = 0.5;

/// Turn around the knee that counts as "here", in degrees.
const ABOUT: f64 = 12.0;

/// What the clamp stands on.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Stand {
    /// The two faces of the tube.
    #[default]
    Bare,
    /// Plates that reach over the side walls.
    Spreader,
    /// A sleeve round the bolt between the walls, cut to fit.
    Sleeve,
}

impl Stand {
    /// All, in the order shown.
    pub const ALL: [Self; 3] = [Self::Bare, Self::Spreader, Self::Sleeve];

    /// Its part of message keys and of element ids.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Bare => "bare",
            Self::Spreader => "spreader",
            Self::Sleeve => "sleeve",
        }
    }

    /// Its name for the reader.
    #[must_use]
    pub fn name(self) -> &'static str {
        message(match self {
            Self::Bare => key::OPENING_BARE,
            Self::Spreader => key::OPENING_SPREADER,
            Self::Sleeve => key::OPENING_SLEEVE,
        })
        .unwrap_or_default()
    }

    /// Its name beside its curve: short, because three curves share a phone's width.
    fn curve_name(self) -> &'static str {
        message(match self {
            Self::Bare => key::OPENING_CURVE_BARE,
            Self::Spreader => key::OPENING_CURVE_SPREADER,
            Self::Sleeve => key::OPENING_CURVE_SLEEVE,
        })
        .unwrap_or_default()
    }

    /// The default joint standing on this.
    fn input(self) -> Input {
        let mut input = Input::default();
        let support = match self {
            Self::Bare => SupportKind::Bare,
            Self::Spreader => {
                // 3/8 in steel, as long as one and a half widths of the tube.
                input.spreader_thickness_mm = 9.525;
                input.spreader_length_mm = 1.5 * input.tube_width_mm;
                SupportKind::Spreader
            }
            Self::Sleeve => {
                input.sleeve = String::from("rt-1.000x0.188");
                input.sleeve_short_mm = 0.0;
                SupportKind::LooseSleeve
            }
        };
        input.support = String::from(support.name());
        input
    }
}

/// How far tightening has come.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Stage {
    /// Hand-tight.
    Start,
    /// The torque rises with the turn.
    Rising,
    /// The support lets go about here.
    Knee,
    /// The support has let go.
    Beyond,
    /// The wrench has clicked.
    Click,
    /// The bolt has yielded.
    Yields,
}

impl Stage {
    /// Its part of message keys.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Start => "start",
            Self::Rising => "rising",
            Self::Knee => "knee",
            Self::Beyond => "beyond",
            Self::Click => "click",
            Self::Yields => "yields",
        }
    }
}

/// The joint on one of its stands, computed once.
#[derive(Clone, Debug, PartialEq)]
pub struct Case {
    /// What the clamp stands on.
    pub stand: Stand,
    /// The joint.
    pub scenario: Scenario,
    /// Its curve as far as the figure goes.
    pub curve: TorqueTurn,
}

impl Case {
    fn new(stand: Stand) -> Option<Self> {
        let scenario = Scenario::new(&stand.input()).ok()?;
        let mut curve = known_torque_turn(&scenario);
        if curve.points.last()?.turn_deg > FARTHEST {
            let end = curve.at_turn(FARTHEST)?;
            curve.points.retain(|p| p.turn_deg < FARTHEST);
            curve.points.push(end);
        }
        Some(Self {
            stand,
            scenario,
            curve,
        })
    }

    /// Turn that this joint's figure goes to, a whole number of steps.
    #[must_use]
    pub fn most(&self) -> f64 {
        let last = self.curve.points.last().map_or(0.0, |p| p.turn_deg);
        (last / STEP).floor() * STEP
    }

    /// Turn at which the wrench clicks.
    #[must_use]
    pub fn clicks_at(&self) -> Option<f64> {
        self.curve.at_wanted.map(|point| point.turn_deg)
    }

    /// Where the wrench stands when it comes here from another stand: it never goes past its click.
    #[must_use]
    pub fn brought(&self, turn_deg: f64) -> f64 {
        turn_deg.min(self.clicks_at().unwrap_or(self.most()))
    }

    /// Turn at which the bolt yields.
    fn yields_at(&self) -> Option<f64> {
        // The curve has one point exactly there, and the last one lies beyond it.
        let yielded = self.curve.points.iter().rev().nth(1)?;
        (self.curve.ends == Ends::BoltYields).then_some(yielded.turn_deg)
    }

    /// How far tightening has come at a turn.
    #[must_use]
    pub fn stage(&self, turn_deg: f64) -> Stage {
        let past = |turn: Option<f64>| turn.is_some_and(|t| turn_deg >= t);
        let knee = self.curve.knee.map(|k| k.turn_deg);
        if turn_deg <= 0.0 {
            Stage::Start
        } else if past(self.yields_at()) {
            Stage::Yields
        } else if past(self.clicks_at()) {
            Stage::Click
        } else if past(knee.map(|k| k + ABOUT)) {
            Stage::Beyond
        } else if past(knee.map(|k| k - ABOUT)) {
            Stage::Knee
        } else {
            Stage::Rising
        }
    }

    /// What is happening, in one or two sentences.
    #[must_use]
    pub fn sentence(&self, turn_deg: f64, units: UnitSystem) -> String {
        let stage = self.stage(turn_deg).key();
        let template = message_at(&["opening", self.stand.key(), stage]).unwrap_or_default();
        fill(template, &self.amounts(turn_deg), units)
    }

    /// What the sentences are filled with, in the order that `content/messages.toml` says.
    fn amounts(&self, turn_deg: f64) -> [Amount; 11] {
        let curve = &self.curve;
        let angle = |deg: f64| Amount::new(Unit::Degree.to_si(deg), Dimension::Angle);
        let torque = |nm: f64| Amount::new(nm, Dimension::Torque);
        let force = |n: f64| Amount::new(n, Dimension::Force);
        let length = |mm: f64| Amount::new(mm * 1e-3, Dimension::Length);
        let of = |point: Option<TurnPoint>, pick: fn(&TurnPoint) -> f64| {
            point.as_ref().map_or(f64::NAN, pick)
        };
        let (now, click) = (curve.at_turn(turn_deg), curve.at_wanted);
        let (knee_deg, knee_nm) = curve
            .knee
            .map_or((f64::NAN, f64::NAN), |k| (k.turn_deg, k.torque_nm));
        [
            torque(of(now, |p| p.torque_nm)),
            force(of(now, |p| p.clamp_n)),
            length(of(now, |p| p.dent_mm)),
            length(of(now, |p| p.stretch_mm)),
            angle(knee_deg),
            torque(knee_nm),
            torque(curve.wanted_torque_nm),
            angle(of(click, |p| p.turn_deg)),
            force(of(click, |p| p.clamp_n)),
            length(of(click, |p| p.dent_mm)),
            length(of(click, |p| p.dent_left_mm)),
        ]
    }
}

/// The three cases.
#[derive(Clone, Debug, PartialEq)]
pub struct Bench {
    bare: Case,
    spreader: Case,
    sleeve: Case,
}

impl Bench {
    /// Computes the three curves; `None` only if the default joint were refused.
    #[must_use]
    pub fn new() -> Option<Self> {
        Some(Self {
            bare: Case::new(Stand::Bare)?,
            spreader: Case::new(Stand::Spreader)?,
            sleeve: Case::new(Stand::Sleeve)?,
        })
    }

    /// The joint on a stand.
    #[must_use]
    pub const fn case(&self, stand: Stand) -> &Case {
        match stand {
            Stand::Bare => &self.bare,
            Stand::Spreader => &self.spreader,
            Stand::Sleeve => &self.sleeve,
        }
    }

    /// The largest that any of the three curves has of something.
    fn most(&self, of: fn(&TurnPoint) -> f64) -> f64 {
        Stand::ALL
            .into_iter()
            .flat_map(|stand| self.case(stand).curve.points.iter().map(of))
            .fold(0.0, f64::max)
    }

    /// The tube in section after a turn.
    #[must_use]
    pub fn section(
        &self,
        id: &str,
        stand: Stand,
        turn_deg: f64,
        units: UnitSystem,
        layout: Layout,
    ) -> SectionState {
        let case = self.case(stand);
        SectionState {
            name: String::from("1 · section through the bolt; torque against turn"),
            clamp_largest_n: self.most(|p| p.clamp_n),
            dent_largest_mm: self.most(|p| p.dent_mm),
            ..SectionState::from_core(id, &case.scenario, &case.curve, turn_deg, units, layout)
        }
    }

    /// Torque against turn, with the other stands beside it.
    #[must_use]
    pub fn plot(&self, stand: Stand, turn_deg: f64, units: UnitSystem) -> TorqueTurnPlot {
        let beside: Vec<_> = Stand::ALL
            .into_iter()
            .filter(|other| *other != stand)
            .map(|other| (&self.case(other).curve, other.curve_name()))
            .collect();
        TorqueTurnPlot {
            reach: Some((FARTHEST, self.most(|p| p.torque_nm))),
            ..TorqueTurnPlot::from_core(&self.case(stand).curve, turn_deg, &beside, units)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use calc_core::report::Part;

    fn bench() -> Bench {
        Bench::new().unwrap()
    }

    #[test]
    fn every_turn_of_every_stand_has_a_sentence_without_gaps() {
        let bench = bench();
        for stand in Stand::ALL {
            assert!(!stand.name().is_empty() && !stand.curve_name().is_empty());
            let case = bench.case(stand);
            let mut turn = 0.0;
            while turn <= case.most() {
                for units in [UnitSystem::Us, UnitSystem::Metric] {
                    let said = case.sentence(turn, units);
                    let gap = ["{", "}", "not defined", "NaN"]
                        .iter()
                        .any(|g| said.contains(g));
                    assert!(said.len() > 20 && !gap, "{stand:?} {turn}: {said:?}");
                }
                turn += STEP;
            }
        }
    }

    #[test]
    fn the_bare_tube_gives_way_and_the_others_let_the_wrench_click() {
        let bench = bench();
        let bare = bench.case(Stand::Bare);
        // What its sentences say: the washer dishes, the face bends, the wrench does not click.
        assert_eq!(bare.curve.knee.unwrap().part, Part::Washer);
        assert_eq!(known_torque_turn(&bare.scenario).at_wanted, None);
        assert_eq!(bare.stage(OPENING_TURN), Stage::Beyond);
        for stand in [Stand::Spreader, Stand::Sleeve] {
            let case = bench.case(stand);
            let click = case.clicks_at().unwrap();
            assert_eq!(case.brought(OPENING_TURN), click);
            assert_eq!(case.stage(click), Stage::Click);
            assert_eq!(case.stage(click - 2.0 * STEP), Stage::Rising);
            assert_eq!(case.stage(case.most()), Stage::Yields);
        }
    }

    #[test]
    fn the_bolt_yields_where_the_report_says() {
        let bench = bench();
        let case = bench.case(Stand::Sleeve);
        let at = case.curve.at_turn(case.yields_at().unwrap()).unwrap();
        let yields = calc_core::evaluate(&case.scenario).tightening.yield_load_n;
        assert!((at.clamp_n / yields - 1.0).abs() < 1e-3, "{at:?} {yields}");
    }

    #[test]
    fn past_the_knee_the_clamp_hardly_grows_while_the_dent_does() {
        let bench = bench();
        let curve = &bench.case(Stand::Bare).curve;
        let knee = curve.at_turn(curve.knee.unwrap().turn_deg).unwrap();
        let end = curve.points.last().unwrap();
        assert!(end.clamp_n < 1.5 * knee.clamp_n && end.dent_mm > 1.5 * knee.dent_mm);
    }

    #[test]
    fn all_stands_share_axes_force_scale_and_exaggeration() {
        let bench = bench();
        let of = |stand| {
            let plot = bench.plot(stand, 40.0, UnitSystem::Metric);
            let state = bench.section("x", stand, 40.0, UnitSystem::Metric, Layout::Wide);
            let strip: Vec<_> = crate::section::strip_fields(&state)
                .into_iter()
                .map(|f| f.text)
                .collect();
            (plot.ranges(), strip)
        };
        assert_eq!(of(Stand::Bare), of(Stand::Spreader));
        assert_eq!(of(Stand::Bare), of(Stand::Sleeve));
    }
}

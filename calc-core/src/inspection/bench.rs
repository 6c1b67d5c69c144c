//! What is to be read on a bench: the torque that goes with a turn of the nut or a dent, at trial values of what is not
//! known, the friction and the strength of the wall.

use crate::evaluate::{TorqueTurn, TurnPoint, known_torque_turn};
use crate::mechanics::tightening::{clamp_from, torque_for};
use crate::quantity::{Angle, Force, InUnits, Length, Stress, Torque, newton};
use crate::scenario::Scenario;

/// Share of the proof load beyond which nobody turns a bolt on a bench, with the lowest nut factor that is published.
///
/// # Sources
/// Shigley 9e, Eq. 8-31, for joints that are taken apart again.
pub const BENCH_SHARE: f64 = 0.75;

/// What was read beside the torque.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Seen {
    /// Turn of the nut from snug.
    Turn(Angle),
    /// Mean dent of the two faces under load.
    Dent(Length),
}

/// A clamp force, and whether it lies on the curve: beyond its end it is that of the end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Expected {
    /// The clamp force.
    pub clamp: Force,
    /// Whether the curve goes as far as what was read.
    pub on_curve: bool,
}

/// A joint on a bench with a trial strength of the wall.
#[derive(Clone, Debug)]
pub struct Bench {
    curve: TorqueTurn,
    diameter: Length,
}

impl Bench {
    /// The curve of a joint with a yield strength of the tube in place of its own.
    #[must_use]
    pub fn new(s: &Scenario, wall: Stress) -> Self {
        Self {
            curve: known_torque_turn(&with_wall(s, wall)),
            diameter: s.bolting.thread.major(),
        }
    }

    /// Clamp force at a reading, between the points of the curve by straight lines.
    #[must_use]
    pub fn expected(&self, seen: Seen) -> Option<Expected> {
        let (value, of): (f64, fn(&TurnPoint) -> f64) = match seen {
            Seen::Turn(turn) => (turn.si().to_degrees(), |p| p.turn_deg),
            Seen::Dent(dent) => (dent.si() * 1e3, |p| p.dent_mm),
        };
        let points = &self.curve.points;
        let last = points.last()?;
        // What has no face has no dent to be read.
        if of(last) <= 0.0 || !value.is_finite() {
            return None;
        }
        let after = points.partition_point(|p| of(p) < value);
        let right = points.get(after).unwrap_or(last);
        let left = points.get(after.saturating_sub(1)).unwrap_or(right);
        let width = of(right) - of(left);
        let share = if width > 0.0 {
            ((value - of(left)) / width).clamp(0.0, 1.0)
        } else {
            0.0
        };
        Some(Expected {
            clamp: newton(left.clamp_n + share * (right.clamp_n - left.clamp_n)),
            on_curve: value <= of(last),
        })
    }

    /// Torque that a wrench shows at a clamp force.
    ///
    /// ```text
    /// T = K·d·F
    /// ```
    #[must_use]
    pub fn torque(&self, nut_factor: f64, clamp: Force) -> Torque {
        torque_for(nut_factor, self.diameter, clamp)
    }

    /// The curve, at the nut factor of the scenario.
    #[must_use]
    pub const fn curve(&self) -> &TorqueTurn {
        &self.curve
    }
}

/// A joint with another yield strength of the tube, at both strengths: what a reader is believed of a tube in use
/// ([`Scenario::new`]) is no limit to what a bench finds.
#[must_use]
pub fn with_wall(s: &Scenario, wall: Stress) -> Scenario {
    let mut trial = s.clone();
    trial.tube.yield_least = wall;
    trial.tube.yield_likely = wall;
    trial
}

/// Force that presses a pair of faces together, all pairs added up, at a torque: what a slip load is divided by.
///
/// ```text
/// m·F = m·T/(K·d),   μ = S/(m·F)
/// ```
#[must_use]
pub fn pressed(s: &Scenario, nut_factor: f64, planes: f64, torque: Torque) -> Force {
    clamp_from(nut_factor, s.bolting.thread.major(), torque) * planes
}

/// Torque at which to stop: [`BENCH_SHARE`] of the proof load if the nut factor is as low as given.
#[must_use]
pub fn stop_torque(s: &Scenario, lowest_nut_factor: f64) -> Torque {
    let b = &s.bolting;
    let proof = crate::mechanics::thread::load_at(b.proof_strength(), b.thread.stress_area());
    torque_for(lowest_nut_factor, b.thread.major(), proof * BENCH_SHARE)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Input;
    use crate::quantity::{mm, mpa};

    fn bench(wall: f64) -> Bench {
        Bench::new(&Scenario::new(&Input::default()).unwrap(), mpa(wall))
    }

    #[test]
    fn a_point_of_the_curve_is_read_back() {
        let bench = bench(300.0);
        for point in bench.curve().points.iter().skip(3).step_by(17) {
            let turn = Angle::of_si(point.turn_deg.to_radians());
            for seen in [Seen::Turn(turn), Seen::Dent(mm(point.dent_mm))] {
                let read = bench.expected(seen).unwrap();
                assert!(read.on_curve);
                assert!(
                    (read.clamp.si() / point.clamp_n - 1.0).abs() < 1e-6,
                    "{seen:?}"
                );
            }
        }
    }

    #[test]
    fn a_stronger_wall_takes_more_at_the_same_dent_and_the_end_is_said() {
        let at = |wall, dent| bench(wall).expected(Seen::Dent(mm(dent))).unwrap();
        assert!(at(350.0, 1.0).clamp > at(250.0, 1.0).clamp * 1.1);
        assert!(!at(300.0, 40.0).on_curve);
    }

    #[test]
    fn the_torque_to_stop_at_does_not_reach_the_proof_load() {
        let s = Scenario::new(&Input::default()).unwrap();
        let stop = stop_torque(&s, 0.1);
        let b = &s.bolting;
        let proof = b.proof_strength().si() * b.thread.stress_area().si();
        assert!((pressed(&s, 0.1, 2.0, stop).si() / (2.0 * 0.75 * proof) - 1.0).abs() < 1e-9);
    }
}

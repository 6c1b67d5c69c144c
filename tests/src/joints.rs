//! Joints drawn anywhere in the ranges of their fields, and what must hold for every one of them.

use calc_core::chance::Sampler;
use calc_core::inspection::{dent, oval, torque_stop};
use calc_core::quantity::{Dimension, mm, newton_metre};
use calc_core::repair::{Rates, repairs};
use calc_core::report::{Report, Verdict};
use calc_core::scenario::{Field, Kind, options};
use calc_core::{Input, Scenario, evaluate, torque_turn};
use rand_pcg::Pcg64;
use rand_pcg::rand_core::{RngCore, SeedableRng};

/// Most fields that are moved away from their default in one joint.
const MOVED: u64 = 16;

/// Every how many joints the slow parts are asked too.
const SLOW_EVERY: u64 = 1000;

/// A source of joints; the same seed gives the same joints.
#[derive(Debug)]
pub struct Joints {
    rng: Pcg64,
}

impl Joints {
    /// Starts a source.
    #[must_use]
    pub fn new(seed: u64) -> Self {
        Self {
            rng: Pcg64::seed_from_u64(seed),
        }
    }

    fn below(&mut self, n: u64) -> u64 {
        // The tiny excess of the low numbers does not matter here.
        self.rng.next_u64() % n.max(1)
    }

    fn share(&mut self) -> f64 {
        match self.below(5) {
            0 => 0.0,
            1 => 1.0,
            _ => (self.rng.next_u64() >> 11) as f64 / (1_u64 << 53) as f64,
        }
    }

    /// One field moved to somewhere.
    pub fn one(&mut self) -> Move {
        let at = self.below(Field::ALL.len() as u64);
        let share = self.share();
        let lot = self.rng.next_u64();
        Move { at, share, lot }
    }

    /// A joint with some fields moved. Every other one starts from a joint that holds, so that not all fail.
    pub fn input(&mut self) -> Input {
        let start = if self.below(2) == 0 {
            Input::default()
        } else {
            sound()
        };
        let count = self.below(MOVED + 1);
        let moves: Vec<Move> = (0..count).map(|_| self.one()).collect();
        moved(start, &moves)
    }
}

/// One field moved away from where it stands: near its default, anywhere, or to an end of its range; a
/// choice to any of its names.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Move {
    /// Place of the field among all; counts on from the beginning where it is too large.
    pub at: u64,
    /// Where a number goes, from one end to the other.
    pub share: f64,
    /// Even: a number stays within half and one and a half times its default. Says which name a choice takes.
    pub lot: u64,
}

impl Move {
    /// The field.
    #[must_use]
    pub fn field(&self) -> Option<Field> {
        nth(Field::ALL, self.at).copied()
    }

    /// Moves a field, whichever [`field`](Self::field) is.
    pub fn put(&self, input: &mut Input, field: Field) {
        match field.kind() {
            Kind::Number {
                dimension,
                min,
                max,
                default,
                ..
            } => {
                let near = self.lot.is_multiple_of(2);
                let value = match default {
                    Some(default) if near => (default * (0.5 + self.share)).clamp(min, max),
                    _ => min + self.share * (max - min),
                };
                let whole = dimension == Dimension::Count;
                input.set_number(field, Some(if whole { value.round() } else { value }));
            }
            Kind::Choice { .. } => {
                if let Some(name) = nth(&options(field), self.lot) {
                    input.set_choice(field, name);
                }
            }
        }
    }
}

/// A joint with its fields moved one after the other: what every source of random joints goes through.
#[must_use]
pub fn moved(mut input: Input, moves: &[Move]) -> Input {
    for one in moves {
        if let Some(field) = one.field() {
            one.put(&mut input, field);
        }
    }
    input
}

/// The tiny excess of the low places does not matter here.
fn nth<T>(list: &[T], lot: u64) -> Option<&T> {
    let place = lot.checked_rem(list.len() as u64)?;
    list.get(usize::try_from(place).ok()?)
}

/// Tongue on close sleeves between thick walls, bolted through the sides, which holds.
#[must_use]
pub fn sleeved() -> Input {
    Input {
        tube_material: "a500-b".into(),
        tube_width_mm: 76.2,
        tube_depth_mm: 76.2,
        tube_wall_mm: 4.76,
        support: "loose-sleeve".into(),
        sleeve: "rt-1.000x0.250".into(),
        sleeve_short_mm: 0.1,
        faying_surface: "en-c".into(),
        bolt_grade: "sae-5".into(),
        ..Input::default()
    }
}

/// A joint that holds: a light trailer on a solid steel tongue.
#[must_use]
pub fn sound() -> Input {
    Input {
        support: "solid".into(),
        tube_material: "a500-b".into(),
        mount: "from-top".into(),
        tube_width_mm: 101.6,
        tube_depth_mm: 101.6,
        bolts_along: 3.0,
        spacing_along_mm: 120.0,
        bolt_rows: 2.0,
        trailer_mass_kg: 300.0,
        fitting_thickness_mm: 8.0,
        faying_friction: Some(0.3),
        ..Input::default()
    }
}

/// How many joints came to what.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Tally {
    /// Valid joints, by the verdict of the whole: holds, close, does not hold, not checked.
    pub verdicts: [u64; 4],
    /// Inputs that contradict themselves.
    pub refused: u64,
    /// Joints of which repairs, readings and chances were asked too.
    pub slow: u64,
}

impl Tally {
    /// Valid joints.
    #[must_use]
    pub fn valid(&self) -> u64 {
        self.verdicts.iter().sum()
    }

    /// Tries one input and counts it.
    ///
    /// # Errors
    /// What does not hold, in words.
    pub fn take(&mut self, input: &Input) -> Result<(), String> {
        let scenario = match Scenario::new(input) {
            Ok(scenario) => scenario,
            Err(errors) => {
                self.refused += 1;
                let plain = errors.iter().all(|e| e.code() == "contradiction");
                let named = !errors.is_empty() && errors.iter().all(|e| e.field().is_some());
                return if plain && named {
                    Ok(())
                } else {
                    Err(format!("refused for another reason: {errors:?}"))
                };
            }
        };
        let report = evaluate(&scenario);
        whole(&report)?;
        let curve = torque_turn(&scenario);
        finite("turn", &curve)?;
        if !curve.points.is_sorted_by(|a, b| a.turn_deg <= b.turn_deg) {
            return Err(String::from("the turn falls"));
        }
        let at = match report.verdict {
            Verdict::Holds => 0,
            Verdict::Close => 1,
            Verdict::DoesNotHold => 2,
            Verdict::NotChecked => 3,
        };
        if let Some(count) = self.verdicts.get_mut(at) {
            *count += 1;
        }
        if self.valid() % SLOW_EVERY == 1 {
            self.slow += 1;
            slow(&scenario)?;
        }
        Ok(())
    }
}

/// What must hold for every report.
fn whole(report: &Report) -> Result<(), String> {
    finite("report", report)?;
    let weakest = report
        .check(report.weakest)
        .ok_or("the weakest check is not among the checks")?;
    if weakest.verdict != report.verdict {
        return Err(format!("verdict {:?} of {weakest:?}", report.verdict));
    }
    for check in &report.checks {
        let used = check.utilisation.unwrap_or(0.0);
        if used < 0.0 || (check.verdict == Verdict::Holds && used > 1.0 + 1e-9) {
            return Err(format!("{:?} {:?} at {used}", check.id, check.verdict));
        }
        if check.verdict == Verdict::DoesNotHold && report.verdict == Verdict::Holds {
            return Err(format!("{:?} does not hold, the joint does", check.id));
        }
    }
    Ok(())
}

fn slow(scenario: &Scenario) -> Result<(), String> {
    let found = repairs(scenario, &Rates::default());
    finite("repairs", &found)?;
    for repair in &found.list {
        if Scenario::new(&repair.input).is_err() {
            return Err(format!("a repair that is refused: {repair:?}"));
        }
    }
    let mut sampler = Sampler::new(scenario, 1, 200);
    sampler.step(200);
    finite("chance", &sampler.result())?;
    finite("dent", &dent(scenario, mm(1.0)))?;
    finite("oval", &oval(scenario, mm(18.0), mm(15.0)))?;
    finite("stop", &torque_stop(scenario, newton_metre(40.0)))
}

/// JSON writes what is not finite as `null`, which a reader takes for "not given": TOML does not.
fn finite(what: &str, value: &impl serde::Serialize) -> Result<(), String> {
    fn walk(what: &str, value: &toml::Value) -> Result<(), String> {
        match value {
            toml::Value::Float(number) if !number.is_finite() => Err(format!("{what}: {number}")),
            toml::Value::Array(items) => items.iter().try_for_each(|item| walk(what, item)),
            toml::Value::Table(table) => table
                .iter()
                .try_for_each(|(key, item)| walk(&format!("{what}.{key}"), item)),
            _ => Ok(()),
        }
    }
    let value = toml::Value::try_from(value).map_err(|error| format!("{what}: {error}"))?;
    walk(what, &value)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_same_seed_gives_the_same_joints() {
        let draw = |seed| -> Vec<Input> {
            let mut joints = Joints::new(seed);
            (0..50).map(|_| joints.input()).collect()
        };
        assert_eq!(draw(3), draw(3));
        assert_ne!(draw(3), draw(4));
    }

    #[test]
    fn the_sound_joint_holds() {
        let report = evaluate(&Scenario::new(&sound()).unwrap());
        assert_eq!(report.verdict, Verdict::Holds, "{:?}", report.weakest);
    }

    #[test]
    fn a_thousand_joints() {
        let mut joints = Joints::new(1);
        let mut tally = Tally::default();
        while tally.valid() < 1_000 {
            let input = joints.input();
            if let Err(what) = tally.take(&input) {
                panic!("{what}\n{}", serde_json::to_string(&input).unwrap());
            }
        }
        // Every verdict comes up.
        assert!(tally.verdicts.iter().all(|n| *n > 0), "{tally:?}");
    }

    #[test]
    fn what_is_not_finite_is_found() {
        assert!(finite("x", &[1.0, f64::NAN]).is_err());
        assert!(
            finite(
                "x",
                &std::collections::BTreeMap::from([("a", f64::INFINITY)])
            )
            .is_err()
        );
        assert!(finite("x", &[1.0, 2.0]).is_ok());
    }
}

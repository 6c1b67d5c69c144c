//! The clamp that left a dent.

use super::{Band, CURVE_BAND, flatness};
use crate::evaluate::{Analysis, round_wall_carries};
use crate::mechanics::solve::find_root;
use crate::quantity::Dimension::{Force, Length as Len, Torque};
use crate::quantity::{InUnits, Length};
use crate::report::{Amount, Said, Strength, say};
use crate::scenario::Scenario;
use crate::support::SupportModel;
use serde::Serialize;

/// What a measured dent says.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct DentReading {
    /// The lasting dents of both faces together, as measured.
    pub measured: Amount,
    /// Clamp that was reached once; `None` where the dent says only "less than" or "more than".
    pub clamp: Option<Band>,
    /// Torque that such a clamp takes at the nut factor of the scenario.
    pub torque: Option<Band>,
    /// Clamp that the least strength would read from the same dent; shown beside, never mixed in.
    pub clamp_at_least_strength: Option<Amount>,
    /// What it tells of the clamp.
    #[serde(skip)]
    pub tells: Tells,
    /// Whether measurement and calculation cannot both be right, or nobody checked this far.
    #[serde(skip)]
    pub doubtful: bool,
    /// What to say, most important first.
    pub said: Vec<Said>,
}

/// What a dent tells of the clamp that was reached once.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Tells {
    /// Nothing: no face can be dented, or nobody knows how this one is.
    Nothing,
    /// No more than this: the dent is smaller than a caliper sees.
    AtMost(Amount),
    /// No less than this: the dent is deeper than any that was checked.
    AtLeast(Amount),
    /// A value with its band, in [`DentReading::clamp`].
    About,
}

/// Lasting dents of both faces together after the clamp of an approach was taken off, in metres.
fn left(model: &SupportModel, approach: f64) -> f64 {
    model.sides().map_or(0.0, |[a, b]| {
        let split = model.split(approach);
        a.left_after(split[0]) + b.left_after(split[1])
    })
}

/// Clamp force after which a total dent stays; `None` beyond the checked range.
fn clamp_for(model: &SupportModel, total: f64) -> Option<f64> {
    let end = model.approach_end();
    (left(model, end) >= total)
        .then(|| model.force(find_root(0.0, end, 1e-7, |x| left(model, x) - total)))
}

/// The support of a tube as far above its likely yield strength as the least lies below it.
fn hardest(s: &Scenario) -> SupportModel {
    let mut hard = s.clone();
    let over = hard.tube.yield_likely.si() / hard.tube.yield_least.si();
    hard.tube.yield_likely *= over.clamp(1.10, 1.40);
    SupportModel::new(&hard, Strength::Likely)
}

/// Works back from a dent measured with a caliper to the clamp that was reached.
///
/// ```text
/// w = Σ faces (δ − δ_spring)      solved for δ on the likely curve, F = F(δ)
/// band: F·(1 ± 0.10) with w ∓ f, the high end on the highest yield strength
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `narrower` | `w`: width across the tube away from the bolt minus width at the bolt, bolt taken out | m |
/// | `δ` | indentation of a face under load | m |
/// | `f` | flatness that the tube is sold with ([`flatness`]) | m |
/// | `δ_spring` | part of it that springs back, along the elastic line | m |
///
/// Holds where a hollow face carries and the dent came from the clamp alone. Below the flatness of a new tube
/// nobody can tell a dent from the tube: the answer is then only "less than", and that rests on curve, yield
/// strength and flatness together. As far above the likely strength as the least lies below it is taken for the
/// highest. Beyond 6 % of the width on each face nobody
/// checked: "more than".
///
/// # Sources
/// Inverse of the face curve (own finite-element runs, `tests/reference/fe`); the spread of the
/// yield strength is an assumption.
///
/// Where something is not known the band reaches over all joints that it may be, and the words are those of the joint
/// that says least: of several values the widest band, of "less than" the highest.
#[must_use]
pub fn dent(s: &Scenario, narrower: Length) -> DentReading {
    let first = of_one(s, narrower);
    s.members()
        .skip(1)
        .map(|member| of_one(&member, narrower))
        .fold(first, DentReading::or)
}

impl DentReading {
    /// What is known where one of two readings is right.
    fn or(mut self, other: Self) -> Self {
        let least = |a: Amount, b: Amount| if b.si < a.si { b } else { a };
        let most = |a: Amount, b: Amount| if b.si > a.si { b } else { a };
        let both = |a: Band, b: Band| Band {
            low: least(a.low, b.low),
            likely: a.likely,
            high: most(a.high, b.high),
        };
        match (self.tells, other.tells) {
            (Tells::About, Tells::About) => {
                self.doubtful |= other.doubtful;
                self.clamp = self.clamp.zip(other.clamp).map(|(a, b)| both(a, b));
                self.torque = self.torque.zip(other.torque).map(|(a, b)| both(a, b));
                let lower = self
                    .clamp_at_least_strength
                    .zip(other.clamp_at_least_strength);
                self.clamp_at_least_strength = lower.map(|(a, b)| least(a, b));
                if let (Some(band), Some(said)) = (self.clamp, self.said.first_mut()) {
                    let amounts = [self.measured, band.likely, band.low, band.high];
                    *said = Said::of(say::CaliperDentClamp, amounts);
                }
                self
            }
            (Tells::AtMost(a), Tells::AtMost(b)) if b.si > a.si => other,
            (Tells::AtLeast(_), _) => self.beyond(&other),
            (_, Tells::AtLeast(_)) => other.beyond(&self),
            _ => self,
        }
    }

    /// More than was checked on one of two joints: the lower end of both.
    fn beyond(mut self, other: &Self) -> Self {
        let from = match (other.tells, other.clamp) {
            (Tells::AtLeast(from), _) => Some(from),
            (_, band) => band.map(|band| band.low),
        };
        if let (Tells::AtLeast(own), Some(from)) = (self.tells, from)
            && from.si < own.si
        {
            self.tells = Tells::AtLeast(from);
            if let Some(last) = self
                .said
                .first_mut()
                .and_then(|said| said.amounts.last_mut())
            {
                *last = from;
            }
        }
        self
    }
}

/// Of a joint of which all is known.
fn of_one(s: &Scenario, narrower: Length) -> DentReading {
    let Analysis {
        preload, support, ..
    } = Analysis::new(s);
    let model = SupportModel::new(s, Strength::Likely);
    let hard = hardest(s);
    let uneven = flatness(s.tube.width.si());
    let total = narrower.si();
    let mut reading = DentReading {
        measured: Amount::new(total, Len),
        clamp: None,
        torque: None,
        clamp_at_least_strength: None,
        tells: Tells::Nothing,
        doubtful: false,
        said: Vec::new(),
    };
    if model.sides().is_none() {
        let code = if round_wall_carries(s) {
            say::CaliperRoundWall
        } else {
            say::CaliperNoFace
        };
        reading.said.push(Said::new(code, ()));
        return reading;
    }
    let measured = Amount::new(total, Len);
    let end = model.approach_end();
    let most = left(&model, end);
    if total < uneven {
        // As much as the tube may bulge, and as much again that may hide in it.
        let below =
            clamp_for(&hard, total + uneven).unwrap_or_else(|| hard.force(hard.approach_end()));
        let most = Amount::new(below * (1.0 + CURVE_BAND), Force);
        reading.tells = Tells::AtMost(most);
        reading.said.push(Said::of(
            say::CaliperDentBelow,
            [Amount::new(uneven, Len), most],
        ));
        return reading;
    }
    let Some(likely) = clamp_for(&model, total) else {
        let least = Amount::new(model.force(end) * (1.0 - CURVE_BAND), Force);
        reading.tells = Tells::AtLeast(least);
        reading.doubtful = true;
        reading.said.push(Said::of(
            say::CaliperDentBeyond,
            [measured, Amount::new(most, Len), least],
        ));
        return reading;
    };
    let low = clamp_for(&model, total - uneven).unwrap_or(likely) * (1.0 - CURVE_BAND);
    // What stands beside the faces may carry less of it on a harder tube.
    let high = clamp_for(&hard, total + uneven)
        .unwrap_or_else(|| hard.force(hard.approach_end()))
        .max(likely)
        * (1.0 + CURVE_BAND);
    let force = |si| Amount::new(si, Force);
    reading.tells = Tells::About;
    reading.said.push(Said::of(
        say::CaliperDentClamp,
        [measured, force(likely), force(low), force(high)],
    ));
    if !support.out_of_range(s).is_empty() {
        reading.doubtful = true;
        reading.said.push(Said::new(say::CaliperOutsideChecked, ()));
    }
    if low > preload.yields.si() {
        reading.doubtful = true;
        reading.said.push(Said::of(
            say::CaliperMoreThanBolt,
            [force(low), force(preload.yields.si())],
        ));
    }
    let per_clamp = s.tightening.nut_factor * s.bolting.thread.major().si();
    let torque = |si: f64| Amount::new(per_clamp * si, Torque);
    reading.clamp = Some(Band {
        low: force(low),
        likely: force(likely),
        high: force(high),
    });
    reading.torque = Some(Band {
        low: torque(low),
        likely: torque(likely),
        high: torque(high),
    });
    reading.clamp_at_least_strength = clamp_for(&support.least, total).map(force);
    reading
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::mm;
    use crate::report::Message;
    use crate::scenario::Input;
    use crate::torque_turn;

    fn joint(change: impl FnOnce(&mut Input)) -> Scenario {
        let mut input = Input::default();
        change(&mut input);
        Scenario::new(&input).unwrap()
    }

    /// The dent that tightening leaves at a clamp gives that clamp back.
    #[test]
    fn a_dent_leads_back_to_its_clamp() {
        let joints = [
            joint(|_| {}),
            joint(|i| i.mount = "from-top".into()),
            joint(|i| {
                i.mount = "from-top".into();
                i.fitting_spreads = "yes".into();
            }),
            joint(|i| {
                i.tube_material = "a500-b".into();
                i.tube_wall_mm = 3.0;
            }),
        ];
        let mut compared = 0;
        for s in &joints {
            for point in &torque_turn(s).points {
                let total = 2.0 * point.dent_left_mm;
                if total < 0.15 || total < 0.8e-2 * s.tube.width.si() * 1e3 {
                    continue;
                }
                let Some(band) = dent(s, mm(total)).clamp else {
                    continue;
                };
                let back = band.likely.si / point.clamp_n;
                assert!((back - 1.0).abs() < 0.02, "{total} mm: {back}");
                assert!(band.low.si < point.clamp_n && point.clamp_n < band.high.si);
                compared += 1;
            }
        }
        assert!(compared > 60, "{compared}");
    }

    #[test]
    fn says_when_the_dent_says_little() {
        let s = joint(|_| {});
        let code = |mm_| {
            let reading = dent(&s, mm(mm_));
            (reading.said[0].code, reading.clamp.is_some())
        };
        assert_eq!(code(0.05), (Message::CaliperDentBelow, false));
        assert_eq!(code(1.0), (Message::CaliperDentClamp, true));
        assert_eq!(code(9.0), (Message::CaliperDentBeyond, false));
        let solid = joint(|i| i.support = "solid".into());
        assert_eq!(dent(&solid, mm(1.0)).said[0].code, Message::CaliperNoFace);
        // A narrow, far too thick wall: the number comes with the warning.
        let thick = joint(|i| i.tube_wall_mm = 9.0);
        let codes: Vec<_> = dent(&thick, mm(0.7)).said.iter().map(|s| s.code).collect();
        assert!(codes.contains(&Message::CaliperOutsideChecked), "{codes:?}");
    }

    #[test]
    fn a_deeper_dent_means_more_clamp_and_a_weaker_tube_less() {
        let s = joint(|_| {});
        let clamp = |s: &Scenario, d| dent(s, mm(d)).clamp.unwrap().likely.si;
        let rising: Vec<f64> = [0.7, 1.0, 1.5, 2.0].map(|d| clamp(&s, d)).to_vec();
        assert!(rising.windows(2).all(|w| w[0] < w[1]), "{rising:?}");
        let reading = dent(&s, mm(1.0));
        assert!(reading.clamp_at_least_strength.unwrap().si < reading.clamp.unwrap().likely.si);
    }
}

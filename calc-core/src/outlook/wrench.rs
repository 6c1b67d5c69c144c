//! The torque at which the wrench should stop: enough clamp for the road, no more than the support stands.

use super::said;
use crate::evaluate::{Analysis, checks_in_order, weakest};
use crate::quantity::{InUnits, Share, Torque, newton_metre};
use crate::report::{CheckId, Said, Verdict, say};
use crate::scenario::Scenario;
use serde::Serialize;

/// Steps that are tried between none and the proof load.
const STEPS: u32 = 50;

/// Narrowest band, as a share of its middle, that a wrench can be set to: what a torque wrench is off by.
///
/// ISO 6789-1 allows ±4 % from 20 % of its range (from memory).
const SETTABLE: f64 = 0.08;

/// How a joint stands at a torque.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Setting {
    /// The torque.
    pub torque_nm: f64,
    /// The verdict at it.
    pub verdict: Verdict,
    /// The check that decides.
    pub weakest: CheckId,
    /// Share used of what that check has.
    pub utilisation: Option<f64>,
}

/// What the wrench can be set to.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct WrenchSetting {
    /// As it is set.
    pub now: Setting,
    /// The torque at which the joint stands best; `None` where no torque was better than the one that is set.
    pub best: Option<Setting>,
    /// Lowest and highest torque at which it stands as well as there, where a wrench can be set to that.
    pub band_nm: Option<[f64; 2]>,
}

fn at(s: &mut Scenario, torque: Torque) -> Setting {
    s.tightening.torque = Some(torque);
    stands(s)
}

fn stands(s: &Scenario) -> Setting {
    Setting::of(&Analysis::without_working(s))
}

impl Setting {
    /// How a joint stands as it is tightened.
    pub(super) fn of(analysis: &Analysis<'_>) -> Self {
        let checks = checks_in_order(analysis);
        let (first, verdict) = weakest(&checks);
        // Of the checks that stand no better the one that uses most: a clamp that is not reached is shown first elsewhere.
        let (weakest, utilisation) = checks
            .iter()
            .filter(|check| check.verdict == verdict)
            .filter_map(|check| check.utilisation.map(|used| (check.id, used)))
            .reduce(|a, b| if b.1 > a.1 { b } else { a })
            .map_or((first, None), |(id, used)| (id, Some(used)));
        Self {
            torque_nm: analysis.preload.torque.si(),
            verdict,
            weakest,
            utilisation,
        }
    }
}

/// Whether something fails at a setting that has no share: a face that does not touch, damage that was found.
fn fails_outright(s: &Scenario, setting: Setting) -> bool {
    let mut s = s.clone();
    s.tightening.torque = Some(newton_metre(setting.torque_nm));
    let checks = checks_in_order(&Analysis::without_working(&s));
    let mut failed = checks.iter().filter(|c| c.verdict == Verdict::DoesNotHold);
    failed.any(|check| check.utilisation.is_none())
}

/// Better verdict, or as good and less used.
fn better(one: &Setting, other: &Setting) -> bool {
    let used = |setting: &Setting| setting.utilisation.unwrap_or(f64::INFINITY);
    one.verdict < other.verdict || one.verdict == other.verdict && used(one) < used(other)
}

fn better_of(a: Setting, b: Setting) -> Setting {
    if better(&b, &a) { b } else { a }
}

/// What grows with the torque and what shrinks with it cross between two of the steps: halves the steps about the best
/// until they are finer than any wrench.
fn refined(trial: &mut Scenario, from: Setting, step: f64) -> Setting {
    let (mut best, mut step) = (from, step);
    for _ in 0..6 {
        step *= 0.5;
        for torque in [best.torque_nm - step, best.torque_nm + step] {
            if torque > 0.0 {
                best = better_of(best, at(trial, newton_metre(torque)));
            }
        }
    }
    best
}

/// The joint as it is judged once a torque is entered: what turning by angle, a washer or stretch reaches a wrench does
/// not. `None` where it would be refused.
fn by_wrench(s: &Scenario) -> Option<Scenario> {
    if s.tightening.torque.is_some() || s.tightening.method.by_torque() {
        return Some(s.clone());
    }
    let mut input = s.input.clone();
    input.torque_nm = Some(Analysis::without_working(s).preload.torque.si());
    let entered = Scenario::new(&input).ok()?;
    Some(Scenario {
        tightening: entered.tightening,
        ..s.clone()
    })
}

/// Tries torques up to the one that stretches the bolt to its proof load.
///
/// ```text
/// T_i = K·d·F_p·i/n,  i = 1 … n
/// ```
pub(super) fn setting(s: &Scenario) -> WrenchSetting {
    let now = stands(s);
    let none = WrenchSetting {
        now,
        best: None,
        band_nm: None,
    };
    // What holds needs no other torque; what is not known at this one is not known at another.
    if matches!(now.verdict, Verdict::Holds | Verdict::NotChecked) {
        return none;
    }
    let Some(mut trial) = by_wrench(s) else {
        return none;
    };
    let proof = Analysis::without_working(s).preload.proof.si();
    let highest = s.tightening.nut_factor * s.bolting.thread.major().si() * proof;
    let tried: Vec<Setting> = (1..=STEPS)
        .map(|i| {
            at(
                &mut trial,
                newton_metre(highest * f64::from(i) / f64::from(STEPS)),
            )
        })
        .collect();
    let Some(best) = tried.iter().copied().reduce(better_of) else {
        return none;
    };
    let best = refined(&mut trial, best, highest / f64::from(STEPS));
    // What fails without a share of anything is mended by no torque: none is the best then.
    let hopeless = best.verdict == Verdict::DoesNotHold && fails_outright(&trial, best);
    if hopeless || !better(&best, &now) {
        return none;
    }
    let accepted = matches!(best.verdict, Verdict::Holds | Verdict::Close);
    let band_nm = accepted.then(|| band(&mut trial, &tried, &best)).flatten();
    WrenchSetting {
        now,
        best: Some(best),
        band_nm,
    }
}

/// From the lowest to the highest torque about the best one with its verdict, each found to a hundredth of a step;
/// `None` where a wrench cannot be set so closely.
fn band(trial: &mut Scenario, tried: &[Setting], best: &Setting) -> Option<[f64; 2]> {
    let step = tried.first()?.torque_nm;
    let as_good = |t: &Setting| t.verdict == best.verdict;
    let (under, over): (Vec<&Setting>, Vec<&Setting>) =
        tried.iter().partition(|t| t.torque_nm < best.torque_nm);
    let below = under.into_iter().rev().take_while(|t| as_good(t));
    let above = over.into_iter().take_while(|t| as_good(t));
    let lowest = below.last().unwrap_or(best).torque_nm;
    let highest = above.last().unwrap_or(best).torque_nm;
    let mut edge = |inside: f64, outside: f64| {
        let (mut inside, mut outside) = (inside, outside);
        for _ in 0..7 {
            let middle = f64::midpoint(inside, outside);
            if as_good(&at(trial, newton_metre(middle))) {
                inside = middle;
            } else {
                outside = middle;
            }
        }
        inside
    };
    let low = edge(lowest, (lowest - step).max(0.0));
    let is_last = tried.last().is_some_and(|t| t.torque_nm == highest);
    let high = if is_last {
        highest
    } else {
        edge(highest, highest + step)
    };
    let middle = f64::midpoint(low, high);
    // What is told to be set is tried, not concluded.
    (high - low >= SETTABLE * middle && as_good(&at(trial, newton_metre(middle))))
        .then_some([low, high])
}

impl WrenchSetting {
    /// The middle of the band, which leaves as much room for the wrench on either side.
    #[must_use]
    pub fn set_to_nm(&self) -> Option<f64> {
        self.band_nm.map(|[low, high]| f64::midpoint(low, high))
    }

    pub(super) fn said(&self) -> Vec<Said> {
        let Some(best) = self.best else {
            return match self.now.verdict {
                Verdict::DoesNotHold => vec![said(say::TorqueNoOther, [])],
                _ => Vec::new(),
            };
        };
        let torque = newton_metre(best.torque_nm);
        let told = match (best.verdict, self.band_nm, self.set_to_nm()) {
            (Verdict::Holds, Some([low, high]), Some(middle)) => Said::new(
                say::TorqueThatHolds,
                (newton_metre(middle), newton_metre(low), newton_metre(high)),
            ),
            // Close already, and no torque makes it more.
            (Verdict::Close, ..) if self.now.verdict == Verdict::Close => return Vec::new(),
            (Verdict::Close, Some([low, high]), Some(middle)) => Said::new(
                say::TorqueComesClose,
                (newton_metre(middle), newton_metre(low), newton_metre(high)),
            ),
            (Verdict::Holds | Verdict::Close, ..) => Said::new(say::TorqueTooNarrow, (torque,)),
            _ => Said::new(
                say::TorqueNone,
                (
                    torque,
                    Share(best.utilisation.unwrap_or(f64::INFINITY).min(99.0)),
                ),
            ),
        };
        vec![told]
    }
}

//! Torque, order of the bolts, and when to look again.

use super::said;
use crate::catalog::{System, Thread};
use crate::cite::{Cite, Flag, Source};
use crate::evaluate::Analysis;
use crate::mechanics::bolt_group::Place;
use crate::order::sorted;
use crate::quantity::{Dimension, InUnits};
use crate::repair::fit::Fit;
use crate::repair::work::Jobs;
use crate::report::{Amount, Label, Said, say};
use serde::Serialize;

/// Rounds of the wrench after all bolts are snug, as shares of the torque; the last goes round until no
/// nut turns any more. Common practice, no source.
const ROUNDS: [f64; 3] = [0.5, 1.0, 1.0];

/// Height of a lock nut in diameters of its bolt.
const LOCK_NUT: f64 = 1.25;

/// Share of the wanted clamp below which the torque was lowered for the support's sake.
const EASED_BELOW: f64 = 0.99;

/// A bolt by number, from the front, left before right.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct BoltPlace {
    /// Number, from 1.
    pub number: usize,
    /// Along the tube from the middle of the group, forward positive.
    pub along: Amount,
    /// Across from the middle of the group.
    pub across: Amount,
}

/// One round of the wrench over all bolts.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Pass {
    /// Which, by code.
    pub what: Label,
    /// Torque; none where the bolts are only brought snug.
    pub torque: Option<Amount>,
    /// Where it comes from.
    #[serde(flatten)]
    pub cite: Cite,
}

/// How to tighten and when to look again.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct TighteningPlan {
    /// Torque to set.
    pub torque: Amount,
    /// Clamp that it gives by itself.
    pub clamp: Amount,
    /// Clamp that is reached on this support.
    pub reached: Amount,
    /// Id of the way of tightening.
    pub method: String,
    /// Id of the state of threads and faces that the torque holds for.
    pub lubrication: String,
    /// Shortest bolt: grip with saddles or tapered washers, room for a lock nut and two pitches.
    pub bolt_length: Amount,
    /// The next length that bolts are sold in.
    pub bolt_stock: Amount,
    /// The bolts.
    pub bolts: Vec<BoltPlace>,
    /// Their numbers in the order of tightening: from the middle outward, each time on the other side.
    pub order: Vec<usize>,
    /// Source of the order.
    #[serde(flatten)]
    pub cite: Cite,
    /// The rounds.
    pub passes: Vec<Pass>,
    /// Clamp lost by initial relaxation.
    pub first_loss: Amount,
    /// The same as a share of the clamp right after tightening.
    pub first_loss_share: Amount,
    /// When to look again and what to do then.
    pub look_again: Vec<Said>,
    /// How to tighten.
    pub notes: Vec<Said>,
}

const RCSC: Cite = Cite::new(
    Source::Rcsc,
    "8.2: snug first, from the most rigid part outward, in cycles",
    Flag::ReadSecondHand,
);
const ROUNDS_CITE: Cite = Cite::new(
    Source::TradePractice,
    "rounds of the wrench",
    Flag::Practice,
);

/// The next length that bolts are sold in, m: quarter inches to 6 in and half inches above (ASME B18.2.1); 5 mm steps to
/// 70 mm, 10 mm to 160 mm, 20 mm above (ISO 4014). Both from memory.
fn sold(length: f64, system: System) -> f64 {
    let step = match system {
        System::Inch if length <= 0.1524 => 6.35e-3,
        System::Inch => 12.7e-3,
        System::Metric if length <= 70e-3 => 5e-3,
        System::Metric if length <= 160e-3 => 10e-3,
        System::Metric => 20e-3,
    };
    // A length that is just met needs no longer bolt.
    (length / step - 1e-6).ceil() * step
}

/// How much higher than a plain nut a lock nut is, m: those with a ring of nylon come to one and a quarter diameters
/// (ASME B18.16.6, ISO 7040, from memory), so that either goes on.
fn for_lock_nut(thread: &Thread) -> f64 {
    (LOCK_NUT * thread.major().si() - thread.nut_height().si()).max(0.0)
}

pub(super) fn plan(analysis: &Analysis<'_>, jobs: &Jobs) -> TighteningPlan {
    let s = analysis.s;
    let torque = analysis.preload.torque.si();
    let residual = &analysis.residual;
    let loss = residual.relaxation + residual.embedding;
    let share = loss / residual.fresh_min.max(1e-9);
    let thread = s.bolting.thread;
    let bolt = s.bolt_length().si() + for_lock_nut(thread);
    let of = |si, dimension| Amount::new(si, dimension);
    let mut passes = vec![Pass {
        what: Label::TightenSnug,
        torque: None,
        cite: RCSC,
    }];
    let last = ROUNDS.len() - 1;
    passes.extend(ROUNDS.iter().enumerate().map(|(i, share)| Pass {
        what: if i == last {
            Label::TightenUntilStill
        } else {
            Label::TightenRound
        },
        torque: Some(of(torque * share, Dimension::Torque)),
        cite: ROUNDS_CITE,
    }));
    let mut notes = vec![
        said(say::TightenNut, []),
        said(say::TightenClean, []),
        said(say::TightenSmooth, []),
    ];
    if analysis.preload.nominal.si()
        < EASED_BELOW * s.tightening.preload_share * analysis.preload.proof.si()
    {
        notes.push(Said::of(say::TightenEased, [of(torque, Dimension::Torque)]));
    }
    // What fitted its place lets the faces come in no further than it is short.
    if matches!(jobs.fit, Some(Fit::Filed | Fit::Faced | Fit::Milled)) && s.sleeve_short.si() > 0.0
    {
        notes.push(said(say::TightenMeasureFaces, [s.sleeve_short.si()]));
    }
    notes.push(said(say::TightenMark, []));
    let places = &analysis.cases().places;
    TighteningPlan {
        torque: of(torque, Dimension::Torque),
        clamp: of(analysis.preload.nominal.si(), Dimension::Force),
        reached: of(analysis.support.reached, Dimension::Force),
        method: String::from(s.tightening.method.id()),
        lubrication: String::from(s.tightening.lubrication.id()),
        bolt_length: of(bolt, Dimension::Length),
        bolt_stock: of(sold(bolt, thread.system()), Dimension::Length),
        bolts: numbered(places)
            .into_iter()
            .enumerate()
            .map(|(i, place)| BoltPlace {
                number: i + 1,
                along: of(place.x, Dimension::Length),
                across: of(place.y, Dimension::Length),
            })
            .collect(),
        order: order(&numbered(places)),
        cite: RCSC,
        passes,
        first_loss: of(loss, Dimension::Force),
        first_loss_share: of(share, Dimension::Share),
        look_again: if analysis.stretched_once() {
            vec![
                said(say::TightenLookOnly, []),
                said(say::TightenEachSeason, []),
            ]
        } else {
            vec![
                said(say::TightenFirstLook, []),
                said(say::TightenEachSeason, []),
                said(say::TightenFoundLoose, []),
            ]
        },
        notes,
    }
}

/// From the front backwards, left before right.
fn numbered(places: &[Place]) -> Vec<Place> {
    sorted(places.to_vec(), &|a, b| {
        b.x.total_cmp(&a.x).then(b.y.total_cmp(&a.y))
    })
}

/// Numbers from 1, the nearest to the middle first; of those equally far the one farthest from the last.
fn order(places: &[Place]) -> Vec<usize> {
    let far = |p: &Place| p.x.hypot(p.y);
    let mut left: Vec<(usize, Place)> = places.iter().copied().enumerate().collect();
    let mut order = Vec::with_capacity(left.len());
    let mut last: Option<Place> = None;
    while let Some(nearest) = left.iter().map(|(_, p)| far(p)).reduce(f64::min) {
        let from_last = |p: &Place| last.map_or(0.0, |l| (p.x - l.x).hypot(p.y - l.y));
        let next = left
            .iter()
            .enumerate()
            .filter(|(_, (_, p))| far(p) < nearest + 1e-6)
            .reduce(|best, next| {
                if from_last(&next.1.1) > from_last(&best.1.1) + 1e-9 {
                    next
                } else {
                    best
                }
            })
            .map(|(at, _)| at);
        let Some(next) = next else {
            break;
        };
        let (number, place) = left.remove(next);
        order.push(number + 1);
        last = Some(place);
    }
    order
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::mechanics::bolt_group::pattern;

    #[test]
    fn bolts_are_bought_in_the_next_length() {
        let inches = |length: f64| sold(length * 0.0254, System::Inch) / 0.0254;
        assert!((inches(4.01) - 4.25).abs() < 1e-9 && (inches(4.25) - 4.25).abs() < 1e-9);
        assert!((inches(6.1) - 6.5).abs() < 1e-9);
        assert!((sold(0.0705, System::Metric) - 0.08).abs() < 1e-9);
        assert!((sold(0.0695, System::Metric) - 0.07).abs() < 1e-9);
    }

    #[test]
    fn the_middle_comes_first_and_then_each_time_the_other_side() {
        let order = |along, rows| order(&numbered(&pattern(along, rows, 0.09, 0.04)));
        assert_eq!(order(1, 1), [1]);
        assert_eq!(order(2, 1), [1, 2]);
        assert_eq!(order(3, 1), [2, 1, 3]);
        assert_eq!(order(5, 1), [3, 2, 4, 1, 5]);
        // Crosswise on a rectangle: front left, rear right, then the other two.
        assert_eq!(order(2, 2), [1, 4, 2, 3]);
        let six = order(3, 2);
        assert_eq!(six[..2], [3, 4]);
        let mut sorted = six;
        sorted.sort_unstable();
        assert_eq!(sorted, [1, 2, 3, 4, 5, 6]);
    }
}

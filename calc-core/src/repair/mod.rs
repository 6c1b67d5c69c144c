//! Repairs: candidates from the catalogue, each evaluated by the same path as the joint itself, those
//! that do not hold dropped, the rest ranked by margin, work and cost.

mod candidates;
mod fit;
mod mends;
mod nearest;
mod needs;
mod rates;
mod seats;
pub mod sheet;
mod work;

pub use crate::support::RepairKind;
pub use fit::Fit;
pub use nearest::Nearest;
pub use needs::{Need, Needs};
pub use rates::{Money, Rates};
pub use work::Operation;

use crate::evaluate::{Analysis, checks_of, weakest};
use crate::order::sorted;
use crate::quantity::{Dimension, InUnits, Torque};
use crate::report::{Check, CheckId, Verdict};
use crate::scenario::{Field, Input, Scenario, Seen};
use crate::support::{self, added_part};
use mends::{Damage, Mends};
use nearest::Near;
use serde::Serialize;
use std::borrow::Cow;

/// Work and material that a repair adds.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Work {
    /// Holes to drill or open up.
    pub holes: u32,
    /// Cuts to make.
    pub cuts: u32,
    /// Welds to lay.
    pub welds: u32,
    /// Faying faces to bring to another state.
    pub surfaces: u32,
    /// Minutes of work by the rates.
    pub minutes: f64,
    /// Added mass.
    pub mass_kg: f64,
    /// Cost by the rates, work and material.
    pub cost: f64,
}

/// One repair.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Repair {
    /// Kind.
    pub kind: RepairKind,
    /// The joint as repaired.
    pub input: Input,
    /// The fields that differ from the joint as it is.
    pub changed: Vec<Field>,
    /// Verdict of the repaired joint.
    pub verdict: Verdict,
    /// Check that decides.
    pub weakest: CheckId,
    /// Its utilisation.
    pub utilisation: Option<f64>,
    /// Largest utilisation of all checks but tightening, which is chosen: what is in hand.
    pub most_used: f64,
    /// Torque to set.
    pub torque_nm: f64,
    /// Clamp that is reached.
    pub clamp_reached_n: f64,
    /// Work, mass and cost.
    pub work: Work,
    /// What it needs that not everybody has.
    pub needs: Needs,
    /// The work step by step, as `operations` in the work sheet: minutes add up to those of `work`.
    pub steps: Vec<Operation>,
}

/// The candidates that hold and that no other beats, and the three that are named.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Repairs {
    /// How many were evaluated.
    pub tried: usize,
    /// How many of them hold or are close.
    pub held: usize,
    /// How many could not be decided, most often because their shape lies outside the checked range.
    pub undecided: usize,
    /// Of those that hold or are close, those that no other beats in margin, work, cost, welds and needs together, and the
    /// cheapest of each kind; those that hold first, then by cost.
    pub list: Vec<Repair>,
    /// Index of the cheapest that holds.
    pub cheapest: Option<usize>,
    /// Index of the one with the most in hand.
    pub strongest: Option<usize>,
    /// Index of the cheapest without a weld.
    pub without_welding: Option<usize>,
    /// Where none holds, the one that comes nearest and what still stands against it; none where one does.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub nearest: Option<Nearest>,
    /// What costs are counted in.
    pub money: Money,
}

/// Difference in margin below which two repairs count as equal. An assumption.
const SAME_MARGIN: f64 = 0.02;

/// Candidates as they are tried.
struct Search<'a> {
    joint: &'a Scenario,
    rates: &'a Rates,
    tried: usize,
    undecided: usize,
    found: Vec<Repair>,
    /// What was found.
    damage: Damage,
    /// What has to change besides it.
    mends: Mends,
    /// As long as none holds.
    near: Near,
    any_holds: bool,
}

/// A joint that was tried, with what decides what to try next.
struct Candidate {
    scenario: Scenario,
    /// Weakest first.
    checks: Vec<Check>,
    torque: Torque,
    /// Share that it uses of its slip resistance, see [`mends::slides`].
    slides: f64,
}

impl Search<'_> {
    /// Tries an input; gives the candidate, unless it is refused.
    fn attempt(&mut self, input: &Input) -> Option<Candidate> {
        let scenario = Scenario::new(input).ok()?;
        // What is put in has to fit whatever the joint turns out to be.
        if scenario.may_not_fit() && !self.joint.may_not_fit() {
            return None;
        }
        let analysis = Analysis::without_working(&scenario);
        let checks = checks_of(&analysis, candidates::never_mended);
        let torque = analysis.preload.torque;
        let slides = mends::slides(&analysis);
        if *input != self.joint.input || self.mends.tries_the_same() {
            self.tried += 1;
            self.keep(&analysis, &checks);
            let puts_in = added_part(self.joint, &scenario).is_some();
            let mends = || self.mends.by(self.joint, &scenario, puts_in);
            let seats = self.mends.seats(&checks);
            if !self.any_holds && seats && self.mends.grips(slides) && mends() {
                self.near.see(input, &checks);
            }
        }
        Some(Candidate {
            checks,
            torque,
            slides,
            scenario,
        })
    }

    /// Tries an input, then the torque that its support can take, then better faces: in place of other bolts, not on
    /// top of them, unless nothing else holds.
    fn follow(&mut self, input: &Input, on_top: bool) {
        let Some(mut candidate) = self.attempt(input) else {
            return;
        };
        if let Some(eased) = candidates::eased(&candidate)
            && let Some(tried) = self.attempt(&eased)
        {
            candidate = tried;
        }
        let (bolting, before) = (&candidate.scenario.bolting, &self.joint.bolting);
        let same_bolts = bolting.count() == before.count() && bolting.thread == before.thread;
        if (same_bolts || on_top)
            && let Some(gripping) = candidates::gripping(&candidate, self.mends.slides_below)
        {
            self.attempt(&gripping);
        }
    }

    /// Keeps a candidate that holds or is close.
    fn keep(&mut self, analysis: &Analysis<'_>, checks: &[Check]) {
        let (weakest, verdict) = weakest(checks);
        match verdict {
            Verdict::Holds | Verdict::Close => {}
            Verdict::NotChecked => {
                self.undecided += 1;
                return;
            }
            Verdict::DoesNotHold => return,
        }
        let candidate = analysis.s;
        let part = added_part(self.joint, candidate);
        if !self.mends.by(self.joint, candidate, part.is_some())
            || !self.mends.seats(checks)
            || !self.mends.surely_grips(candidate)
        {
            return;
        }
        let kind = part.map_or(RepairKind::Tightening, |part| part.kind(candidate));
        // A weld that is nearly used up is none to build on.
        let mut welds = checks.iter().filter(|c| c.id == CheckId::SleeveWeld);
        if welds.any(|weld| weld.verdict != Verdict::Holds) {
            return;
        }
        if part.is_some() && !holds_at_the_long_end(candidate, verdict, self.mends) {
            return;
        }
        let jobs = work::jobs(self.joint, candidate, part, self.damage);
        // Nobody presses a face out from inside a tube that cannot be reached into; a sleeve through it replaces its seat.
        let replaced = candidate.support.passes_walls();
        if jobs.dished > 0 && !(replaced || support::parts::can_be_brought_in(candidate)) {
            return;
        }
        self.any_holds |= verdict == Verdict::Holds;
        self.found.push(Repair {
            kind,
            changed: Vec::new(),
            steps: Vec::new(),
            verdict,
            weakest,
            utilisation: checks.first().and_then(|c| c.utilisation),
            most_used: most_used(checks),
            torque_nm: analysis.preload.torque.si(),
            clamp_reached_n: analysis.support.reached,
            work: jobs.work(self.rates),
            needs: needs::needs(self.joint, candidate, &jobs, analysis.preload.torque),
            input: candidate.input.clone(),
        });
    }
}

/// A piece that is fitted to its place may come out as short as its candidate says, or just as long as the
/// place: whether the joint holds and grips no less with the longest.
fn holds_at_the_long_end(candidate: &Scenario, verdict: Verdict, mends: Mends) -> bool {
    if candidate.sleeve_short.si() <= 0.0
        || support::of(candidate).longest_over(candidate).is_none()
    {
        return true;
    }
    let mut input = candidate.input.clone();
    input.sleeve_short_mm = 0.0;
    let Ok(longest) = Scenario::new(&input) else {
        return false;
    };
    let judged = checks_of(
        &Analysis::without_working(&longest),
        candidates::never_mended,
    );
    weakest(&judged).1 <= verdict && mends.seats(&judged) && mends.surely_grips(&longest)
}

/// Finds the repairs of a joint.
///
/// Damage that was found is not counted in what a repair is tried on, or none would ever hold; but a crack is mended
/// by none of them, and of an oval hole that was not measured nobody knows what mends it: of both there is no repair. What
/// spins, has slid or has given way wants something changed, see `mends.rs`. The oval hole that was measured is the hole; the work is
/// counted from the one that was drilled, because somebody has to drill the oval one round.
#[must_use]
pub fn repairs(s: &Scenario, rates: &Rates) -> Repairs {
    if past_repairs(s) {
        return Repairs::none(rates);
    }
    let (sound, worn) = as_found(s);
    let (damaged, damage) = (s, Damage::of(s).with_stretched(&sound));
    let s = &*worn;
    let mut search = Search {
        joint: &sound,
        rates,
        tried: 0,
        undecided: 0,
        found: Vec::new(),
        damage,
        mends: Mends::of(damage, &sound),
        near: Near::default(),
        any_holds: false,
    };
    for input in candidates::all(s) {
        search.follow(&input, false);
    }
    if !search.any_holds {
        for input in candidates::with_more_bolts(s) {
            search.follow(&input, true);
        }
    }
    let Search {
        tried,
        undecided,
        found,
        near,
        any_holds,
        ..
    } = search;
    let nearest = if any_holds { None } else { near.nearest(s) };
    let held = found.len();
    let mut list = cheapest_of_each(&found);
    for repair in unbeaten(found) {
        if !list.contains(&repair) {
            list.push(repair);
        }
    }
    for repair in &mut list {
        if let Ok(after) = Scenario::new(&repair.input) {
            let part = added_part(&sound, &after);
            repair.steps = work::jobs(&sound, &after, part, damage).steps(rates);
            repair.changed = changed(&repair.input, &damaged.input);
            // Said so that it stays when the oval hole is gone; it is the hole that there was.
            let drilled = after.fitting.hole.si() <= sound.fitting.hole.si();
            if damage.has(Field::FoundOval) && drilled && damaged.input.fitting_hole_mm.is_none() {
                repair.changed.retain(|field| *field != Field::FittingHole);
            }
        }
    }
    let list = sorted(list, &|a, b| {
        a.verdict
            .cmp(&b.verdict)
            .then(a.work.cost.total_cmp(&b.work.cost))
    });
    let best = |keep: &dyn Fn(&Repair) -> bool, score: &dyn Fn(&Repair) -> f64| {
        list.iter()
            .enumerate()
            .filter(|(_, r)| keep(r))
            // A repair that holds comes before any that is only close.
            .min_by(|(_, a), (_, b)| {
                a.verdict
                    .cmp(&b.verdict)
                    .then(score(a).total_cmp(&score(b)))
            })
            .map(|(i, _)| i)
    };
    Repairs {
        tried,
        held,
        undecided,
        cheapest: best(&|_| true, &|r| r.work.cost),
        strongest: best(&|_| true, &|r| r.most_used),
        without_welding: best(&|r| r.work.welds == 0, &|r| r.work.cost),
        nearest,
        money: rates.money(),
        list,
    }
}

/// A crack, or an oval hole that nobody has measured.
fn past_repairs(s: &Scenario) -> bool {
    let seen = |field| s.input.choice(field) == Some(Seen::Yes.name());
    seen(Field::FoundCrack) || (seen(Field::FoundOval) && s.input.hole_mm.is_none())
}

impl Repairs {
    fn none(rates: &Rates) -> Self {
        Self {
            tried: 0,
            held: 0,
            undecided: 0,
            list: Vec::new(),
            cheapest: None,
            strongest: None,
            without_welding: None,
            nearest: None,
            money: rates.money(),
        }
    }
}

/// The joint as it was drilled, which the work starts from, and as it is now but for the damage, which repairs are tried
/// on; both are the joint itself where nothing was found.
pub(crate) fn as_found(s: &Scenario) -> (Cow<'_, Scenario>, Cow<'_, Scenario>) {
    if s.input.found().next().is_none() {
        return (Cow::Borrowed(s), Cow::Borrowed(s));
    }
    let mut worn = s.input.clone();
    worn.without_found();
    let or_itself = |input: &Input| Scenario::new(input).map_or(Cow::Borrowed(s), Cow::Owned);
    let sound = or_itself(&s.input.undamaged());
    // The hole that was measured is the tube's; those of the fitting are as they were drilled until somebody says otherwise.
    if Damage::of(s).has(Field::FoundOval) && worn.fitting_hole_mm.is_none() {
        worn.fitting_hole_mm = Some(sound.fitting.hole.si() * 1e3);
    }
    let worn = or_itself(&worn);
    (sound, worn)
}

/// Largest utilisation of the checks other than tightening. Distances are there or not; a larger one is
/// no strength in hand.
fn most_used(checks: &[Check]) -> f64 {
    checks
        .iter()
        .filter(|c| c.id != CheckId::BoltTightening && c.capacity.dimension != Dimension::Length)
        .filter_map(|c| c.utilisation)
        .fold(0.0, f64::max)
}

/// Fields in which two inputs differ.
fn changed(after: &Input, before: &Input) -> Vec<Field> {
    Field::ALL
        .iter()
        .copied()
        .filter(|&f| after.number(f) != before.number(f) || after.choice(f) != before.choice(f))
        .collect()
}

/// Of each kind the cheapest of the best verdict: what a fabricator wants to see side by side.
fn cheapest_of_each(found: &[Repair]) -> Vec<Repair> {
    let mut best: Vec<Repair> = Vec::new();
    for repair in found {
        let rank = |r: &Repair| (r.verdict, r.work.cost);
        match best.iter_mut().find(|b| b.kind == repair.kind) {
            None => best.push(repair.clone()),
            Some(b) if rank(repair) < rank(b) => *b = repair.clone(),
            Some(_) => {}
        }
    }
    best
}

/// Drops every repair that another one of the same verdict equals or beats in margin, work, cost and
/// number of welds, without a need of its own.
fn unbeaten(found: Vec<Repair>) -> Vec<Repair> {
    // By cost, so that what comes later can only be beaten by what came before.
    let found = sorted(found, &|a, b| {
        a.work
            .cost
            .total_cmp(&b.work.cost)
            .then(a.most_used.total_cmp(&b.most_used))
    });
    let mut kept: Vec<Repair> = Vec::new();
    for repair in found {
        let beaten = kept.iter().any(|k| {
            k.verdict <= repair.verdict
                && k.most_used <= repair.most_used + SAME_MARGIN
                && k.work.minutes <= repair.work.minutes
                && k.work.welds <= repair.work.welds
                && k.needs.within(repair.needs)
        });
        if !beaten {
            kept.push(repair);
        }
    }
    kept
}

#[cfg(test)]
mod tests {
    use super::*;

    fn found() -> Repairs {
        repairs(
            &Scenario::new(&Input::default()).unwrap(),
            &Rates::default(),
        )
    }

    #[test]
    fn what_is_listed_holds_when_evaluated_again() {
        let found = found();
        assert!(!found.list.is_empty());
        for repair in &found.list {
            let report = crate::evaluate(&Scenario::new(&repair.input).unwrap());
            assert_eq!(report.verdict, repair.verdict, "{repair:?}");
            assert!(matches!(report.verdict, Verdict::Holds | Verdict::Close));
        }
    }

    #[test]
    fn every_hollow_tube_has_two_thousand_candidates() {
        let sizes = [
            (38.1, 38.1),
            (50.8, 50.8),
            (50.8, 76.2),
            (76.2, 50.8),
            (60.0, 60.0),
            (101.6, 101.6),
        ];
        let bolts = [
            ("unc-3.8", "sae-5"),
            ("unc-1.2", "sae-5"),
            ("unf-1.2", "sae-8"),
            ("unc-3.4", "sae-5"),
            ("m10", "iso-8.8"),
            ("m12", "iso-8.8"),
            ("m16", "iso-8.8"),
        ];
        for (width, depth) in sizes {
            for (bolt, grade) in bolts {
                for material in ["6061-t6", "a500-b"] {
                    let joint = Scenario::new(&Input {
                        tube_width_mm: width,
                        tube_depth_mm: depth,
                        tube_material: String::from(material),
                        bolt: String::from(bolt),
                        bolt_grade: String::from(grade),
                        ..Input::default()
                    })
                    .unwrap();
                    let tried = repairs(&joint, &Rates::default()).tried;
                    let what = format!("{width} {depth} {bolt} {material}: {tried}");
                    assert!((2000..5000).contains(&tried), "{what}");
                }
            }
        }
    }

    #[test]
    fn faces_that_slip_are_brought_to_better_grip() {
        let joint = Scenario::new(&Input {
            tube_material: String::from("a500-b"),
            faying_surface: String::from("painted"),
            ..Input::default()
        })
        .unwrap();
        let found = repairs(&joint, &Rates::default());
        let cleaned: Vec<_> = found
            .list
            .iter()
            .filter(|r| r.changed.contains(&Field::Surface))
            .collect();
        assert!(!cleaned.is_empty());
        for repair in cleaned {
            // Plates between lie on one pair of faces more at each plane.
            let pairs = if repair.kind == RepairKind::Spreader {
                4
            } else {
                2
            };
            assert!(repair.work.surfaces == 2 * pairs, "{repair:?}");
        }
    }

    #[test]
    fn what_is_beaten_is_dropped() {
        let list = unbeaten(found().list);
        for (i, a) in list.iter().enumerate() {
            for (j, b) in list.iter().enumerate() {
                let beats = a.verdict <= b.verdict
                    && a.most_used < b.most_used - SAME_MARGIN
                    && a.work.cost < b.work.cost
                    && a.work.minutes <= b.work.minutes
                    && a.work.welds <= b.work.welds
                    // What asks for no tool that the other does not.
                    && a.needs.iter().all(|need| b.needs.contains(need));
                assert!(i == j || !beats, "{i} beats {j}");
            }
        }
    }

    #[test]
    fn dearer_hours_never_make_a_cheaper_repair() {
        let s = Scenario::new(&Input::default()).unwrap();
        let cost = |hour: f64| {
            let found = repairs(
                &s,
                &Rates {
                    hour,
                    ..Rates::default()
                },
            );
            found.cheapest.map(|i| found.list[i].work.cost)
        };
        assert!(cost(40.0) < cost(120.0));
    }
}

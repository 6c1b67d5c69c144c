//! Drawing joints, a slice at a time.

use super::input_distribution::{
    CUT, DistributionKind, InputDistribution, Variable, input_distributions,
};
use super::summary::{Distribution, distribution, variance_shares};
use super::surface::{Seen, Surface};
use crate::evaluate::loads::Service;
use crate::evaluate::residual_clamp::ResidualClamp;
use crate::evaluate::{Analysis, clamp_unknown};
use crate::mechanics::range::OutOfRange;
use crate::order::sorted;
use crate::quantity::{Count, Dimension, InUnits, Share};
use crate::report::{Message, Said, Sentence, say};
use crate::scenario::Scenario;
use crate::support::{self, VISIBLE};
use rand_distr::{Distribution as _, StandardUniform, Triangular};
use rand_pcg::Pcg32;
use rand_pcg::rand_core::SeedableRng;
use serde::Serialize;
use std::f64::consts::TAU;

/// Joints whose inputs are kept for ranking what matters; more would not change the order.
const RANKED: usize = 20_000;

/// Largest utilisation that is told apart; a joint without any clamp left has this.
const MOST_USED: f64 = 10.0;

/// Draws below which nothing is said of a hundred joints: a share is then off by more than three of them. An assumption.
const ENOUGH: usize = 1_000;

/// What the owner of one such joint is told: how many of a hundred slip. By chance alone the number is off by less than
/// one of them at ten thousand draws.
fn owner(slips: f64, drawn: usize) -> Said {
    let draws = Count(drawn as f64);
    if slips < 0.005 {
        Said::new(say::ChanceOwnerHardly, (draws,))
    } else if slips > 0.995 {
        Said::new(say::ChanceOwnerNearlyAll, (draws,))
    } else {
        Said::new(say::ChanceOwner, (Count((slips * 100.0).round()),))
    }
}

/// How far the drawing has come.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Progress {
    /// Joints drawn.
    pub drawn: usize,
    /// Joints wanted.
    pub of: usize,
}

impl Progress {
    /// Whether all are drawn.
    #[must_use]
    pub const fn finished(&self) -> bool {
        self.drawn >= self.of
    }
}

/// An input and the part of a result's spread that it makes.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Sensitivity {
    /// Which input.
    pub variable: Variable,
    /// Its part, 0 to 1.
    pub share: f64,
}

/// What came out of the joints drawn so far.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Chance {
    /// Joints that were drawn.
    pub drawn: usize,
    /// Seed: the same seed gives the same joints.
    pub seed: u64,
    /// What was drawn from.
    #[serde(rename = "spreads")]
    pub distributions: [InputDistribution; Variable::COUNT],
    /// Clamp that was reached.
    pub clamp: Distribution,
    /// Approach of the washers from the support under that clamp; where the wrench does not click, at
    /// the end of the checked range.
    pub approach: Distribution,
    /// Dent under load of the face that gives more.
    pub dent: Distribution,
    /// What stays of the worst dent after loosening.
    pub dent_left: Distribution,
    /// Wanted clamp against the clamp that the support is trusted with, without a factor.
    pub clamp_use: Distribution,
    /// Force in the faying plane against slip resistance, without a factor; 10 stands for more, zero
    /// for a load that does not count on friction.
    pub slip_use: Distribution,
    /// Share of the joints in which the wrench clicks: support and bolt take the torque.
    pub reaches: f64,
    /// Share in which the bolt yields before the wrench clicks.
    pub bolt_yields: f64,
    /// Share in which a dent of 0.1 mm or more stays.
    pub dents: f64,
    /// Share that slips under its load.
    pub slips: f64,
    /// What makes the spread of the clamp, most first.
    pub matters_for_clamp: Vec<Sensitivity>,
    /// What makes the spread of the dent, most first.
    pub matters_for_dent: Vec<Sensitivity>,
    /// What makes the spread of the slip utilisation, most first.
    pub matters_for_slip: Vec<Sensitivity>,
    /// Why nobody can say how much clamp is reached, by key; the numbers here then mean nothing.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub unknown: Option<Message>,
    /// What of the joint lies outside the range that was checked: the numbers are then only a hint.
    pub out_of_range: Vec<OutOfRange>,
    /// What to say.
    pub said: Vec<Said>,
}

/// One drawn joint: values in the order of [`Variable::ALL`].
type Drawn = [f64; Variable::COUNT];

/// What does not scatter.
#[derive(Clone, Copy, Debug)]
struct Fixed {
    torque: f64,
    diameter: f64,
    /// Stress area of the bolt.
    area: f64,
    residual: ResidualClamp,
    /// Share of the clamp lost by initial relaxation.
    relaxation: f64,
    /// Travel lost by flattening and temperature, m.
    travel: f64,
    planes: f64,
    /// Whether any load counts on friction; a safety chain does not.
    rubs: bool,
    /// Force in the plane and pull of the worst bolt.
    in_plane: f64,
    pull: f64,
}

/// What one joint comes to.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Outcome {
    clamp: f64,
    approach: f64,
    dent: f64,
    left: f64,
    clamp_use: f64,
    slip_use: f64,
    clicks: bool,
    bolt_yields: bool,
}

impl Fixed {
    fn new(s: &Scenario) -> (Self, Vec<OutOfRange>) {
        let analysis = Analysis::without_working(s);
        let worst = analysis.service().map(Service::worst_share);
        let Analysis {
            preload,
            support,
            residual,
            ..
        } = analysis;
        let fixed = Self {
            torque: preload.torque.si(),
            diameter: s.bolting.thread.major().si(),
            area: s.bolting.thread.stress_area().si(),
            relaxation: residual.relaxation / residual.fresh_min.max(1e-9),
            travel: (residual.embedding + residual.temperature)
                * (1.0 / residual.bolt.si() + 1.0 / residual.members.si()),
            planes: if support::passes_by(s).is_some() {
                0.0
            } else {
                s.bolting.slip_planes()
            },
            rubs: worst.is_some(),
            in_plane: worst.map_or(0.0, |share| share.in_plane()),
            pull: worst.map_or(0.0, |share| share.pull.max(0.0)),
            residual,
        };
        (fixed, support.out_of_range(s))
    }

    /// Clamp that the wrench would give on something solid.
    fn wanted(&self, [finish, tightening, ..]: &Drawn) -> f64 {
        self.torque * tightening / (finish * self.diameter)
    }

    /// Clamp at which the bolt yields.
    fn yields(&self, [_, _, _, _, _, _, bolt, _, _]: &Drawn) -> f64 {
        self.area * bolt
    }

    fn outcome(&self, drawn: &Drawn, wanted: f64, seen: &Seen) -> Outcome {
        let [_, _, mu, _, _, load, ..] = *drawn;
        let yields = self.yields(drawn);
        let kb = self.residual.bolt.si();
        let km = 1.0 / (1.0 / seen.spring + 1.0 / self.residual.plies.si());
        let lost = seen.clamp * self.relaxation + self.travel / (1.0 / kb + 1.0 / km);
        let freed = km / (kb + km) * self.pull * load;
        let resistance = self.planes * mu * (seen.clamp - lost - freed).max(0.0);
        let slip_use = self.in_plane * load / resistance.max(1e-9);
        Outcome {
            clamp: seen.clamp,
            approach: seen.approach,
            dent: seen.dent,
            left: seen.left,
            clamp_use: (wanted / seen.limit).min(MOST_USED),
            slip_use: slip_use.min(MOST_USED),
            clicks: seen.takes_it && wanted <= yields,
            bolt_yields: wanted > yields && seen.clamp >= yields,
        }
    }
}

/// A number with a standard normal distribution.
///
/// ```text
/// z = √(−2·ln(1 − u_1))·cos(2π·u_2),   u even in 0 ≤ u < 1
/// ```
///
/// The usual library draws faster, from tables that take as long to load as all of this module.
///
/// # Sources
/// Box and Muller (1958), "A note on the generation of random normal deviates".
fn bell(rng: &mut Pcg32) -> f64 {
    let (a, b): (f64, f64) = (StandardUniform.sample(rng), StandardUniform.sample(rng));
    (-2.0 * (1.0 - a).ln()).sqrt() * (TAU * b).cos()
}

/// Draws one variable.
#[derive(Clone, Copy, Debug)]
enum Source {
    Fixed(f64),
    Normal(f64, f64),
    LogNormal(f64, f64),
    Triangular(Triangular<f64>),
}

impl Source {
    fn new(spread: &InputDistribution) -> Self {
        let middle = spread.middle.si;
        match spread.form {
            DistributionKind::Fixed => Self::Fixed(middle),
            DistributionKind::Normal { sigma } => Self::Normal(middle, sigma),
            DistributionKind::LogNormal { sigma } => Self::LogNormal(middle, sigma),
            DistributionKind::Triangular { low, high } => {
                Triangular::new(low, high, middle).map_or(Self::Fixed(middle), Self::Triangular)
            }
        }
    }

    fn draw(&self, rng: &mut Pcg32) -> f64 {
        let mut bell = || bell(rng).clamp(-CUT, CUT);
        match self {
            Self::Fixed(value) => *value,
            Self::Normal(middle, sigma) => middle + sigma * bell(),
            Self::LogNormal(middle, sigma) => middle * (sigma * bell()).exp(),
            Self::Triangular(triangle) => triangle.sample(rng),
        }
    }
}

/// One of the joints that a joint may be, ready to be drawn from.
#[derive(Clone, Debug)]
struct Lot {
    distributions: [InputDistribution; Variable::COUNT],
    sources: [Source; Variable::COUNT],
    surface: Surface,
    fixed: Fixed,
    out_of_range: Vec<OutOfRange>,
    /// Why nobody can say how much clamp is reached, by key.
    unknown: Option<Sentence<0>>,
}

impl Lot {
    fn new(s: &Scenario) -> Self {
        let distributions = input_distributions(s);
        let [_, _, _, wall, yield_, _, _, added_part, fit] = &distributions;
        let fit_is_drawn = fit.form != DistributionKind::Fixed;
        let usual = added_part.middle.si;
        let limits = [wall, yield_, added_part].map(InputDistribution::limits);
        let (fixed, out_of_range) = Fixed::new(s);
        Self {
            sources: distributions.each_ref().map(Source::new),
            surface: Surface::new(s, limits, usual, fit_is_drawn),
            distributions,
            fixed,
            out_of_range,
            unknown: clamp_unknown(s),
        }
    }

    fn one(&self, drawn: &Drawn) -> Outcome {
        let [_, _, _, wall, yield_, _, _, added_part, short] = *drawn;
        let wanted = self.fixed.wanted(drawn);
        // A bolt that yields gives no more clamp, however far it is turned.
        let asked = wanted.min(self.fixed.yields(drawn));
        let seen = self.surface.see([wall, yield_, added_part], short, asked);
        self.fixed.outcome(drawn, wanted, &seen)
    }
}

/// Draws joints in slices, so that a page stays alive meanwhile.
///
/// Where something is not known, first one of the joints that it may be is drawn, each as often as any other.
///
/// Not drawn, but taken as entered: the strength of the fitting, all measures but the wall and the fit of a piece
/// between the walls, and which bolt of the group has most to carry.
///
/// The result does not depend on how the slices are cut. Walls and yield strengths, of the tube and of
/// what was put in, between the nodes of a net of support curves are taken by straight lines: within
/// 1 % of the exact curves.
///
/// # Examples
/// ```
/// use calc_core::{Input, Scenario, chance::Sampler};
/// let scenario = Scenario::new(&Input::default()).unwrap();
/// let mut sampler = Sampler::new(&scenario, 1, 10_000);
/// while !sampler.step(2_000).finished() {}
/// let chance = sampler.result();
/// assert!(chance.slips > 0.5, "a bare thin tube does not hold");
/// ```
#[derive(Clone, Debug)]
pub struct Sampler {
    seed: u64,
    of: usize,
    rng: Pcg32,
    /// The joint, then all others that it may be.
    first: Lot,
    others: Vec<Lot>,
    inputs: [Vec<f64>; Variable::COUNT],
    outputs: [Vec<f64>; 6],
    clicks: usize,
    bolt_yields: usize,
}

impl Sampler {
    /// Gets ready to draw `of` joints; computes the net of support curves.
    #[must_use]
    pub fn new(s: &Scenario, seed: u64, of: usize) -> Self {
        Self {
            seed,
            of,
            rng: Pcg32::seed_from_u64(seed),
            first: Lot::new(s),
            others: s
                .members()
                .skip(1)
                .map(|member| Lot::new(&member))
                .collect(),
            inputs: std::array::from_fn(|_| Vec::with_capacity(of.min(RANKED))),
            outputs: std::array::from_fn(|_| Vec::with_capacity(of)),
            clicks: 0,
            bolt_yields: 0,
        }
    }

    /// Draws up to `joints` more.
    pub fn step(&mut self, joints: usize) -> Progress {
        let [.., last] = &self.outputs;
        let before = last.len();
        let upto = self.of.min(before.saturating_add(joints));
        for index in before..upto {
            let (drawn, outcome) = self.draw();
            if index < RANKED {
                for (kept, value) in self.inputs.iter_mut().zip(drawn) {
                    kept.push(value);
                }
            }
            let row = [
                outcome.clamp,
                outcome.approach,
                outcome.dent,
                outcome.left,
                outcome.clamp_use,
                outcome.slip_use,
            ];
            for (kept, value) in self.outputs.iter_mut().zip(row) {
                kept.push(value);
            }
            self.clicks += usize::from(outcome.clicks);
            self.bolt_yields += usize::from(outcome.bolt_yields);
        }
        Progress {
            drawn: upto,
            of: self.of,
        }
    }

    fn draw(&mut self) -> (Drawn, Outcome) {
        let Self {
            first, others, rng, ..
        } = self;
        let lot = if others.is_empty() {
            None
        } else {
            let lot: f64 = StandardUniform.sample(rng);
            #[allow(
                clippy::cast_possible_truncation,
                clippy::cast_sign_loss,
                reason = "0 ≤ lot < 1, and there are few joints"
            )]
            let place = (lot * (others.len() + 1) as f64) as usize;
            place.checked_sub(1).and_then(|place| others.get(place))
        };
        let lot = lot.unwrap_or(first);
        let drawn = lot.sources.each_ref().map(|source| source.draw(rng));
        (drawn, lot.one(&drawn))
    }

    /// What the joints drawn so far come to.
    #[must_use]
    pub fn result(&self) -> Chance {
        let [clamp, approach, dent, left, clamp_use, slip_use] = &self.outputs;
        let drawn = clamp.len();
        let share = |count: usize| count as f64 / drawn.max(1) as f64;
        let dents = share(left.iter().filter(|v| **v >= VISIBLE).count());
        let slips = share(slip_use.iter().filter(|v| **v > 1.0).count());
        let reaches = share(self.clicks);
        let matters = |output: &[f64]| {
            let inputs = self.inputs.each_ref().map(Vec::as_slice);
            let [first, ..] = inputs;
            let ranked = output.get(..first.len()).unwrap_or(output);
            let list: Vec<Sensitivity> = Variable::ALL
                .into_iter()
                .zip(variance_shares(inputs, ranked))
                .map(|(variable, share)| Sensitivity { variable, share })
                .collect();
            sorted(list, &|a, b| b.share.total_cmp(&a.share))
        };
        let lots = || std::iter::once(&self.first).chain(&self.others);
        let unknown = lots().find_map(|lot| lot.unknown);
        let outside = lots().find(|lot| !lot.out_of_range.is_empty());
        let rubs = self.first.fixed.rubs;
        let owner = (rubs && drawn >= ENOUGH).then(|| {
            if self.others.is_empty() && outside.is_none() {
                owner(slips, drawn)
            } else {
                Said::new(say::ChanceOwnerNot, ())
            }
        });
        let shares = [
            (true, say::ChanceReaches, reaches),
            (true, say::ChanceDents, dents),
            (rubs, say::ChanceSlips, slips),
        ];
        let shares = shares.into_iter().filter(|(counts, ..)| *counts);
        let mut said: Vec<Said> = owner
            .into_iter()
            .chain(shares.map(|(_, sentence, share)| Said::new(sentence, (Share(share),))))
            .collect();
        if !self.others.is_empty() {
            let joints = Count((self.others.len() + 1) as f64);
            said.push(Said::new(say::ChanceNotKnown, (joints,)));
        }
        if let Some(unknown) = unknown {
            // Shares of nobody knows what.
            said = vec![Said::new(unknown, ())];
        } else if outside.is_some() {
            said.push(Said::new(say::ChanceOutsideChecked, ()));
        }
        Chance {
            drawn,
            seed: self.seed,
            distributions: self.first.distributions,
            clamp: distribution(clamp, Dimension::Force),
            approach: distribution(approach, Dimension::Length),
            dent: distribution(dent, Dimension::Length),
            dent_left: distribution(left, Dimension::Length),
            clamp_use: distribution(clamp_use, Dimension::Share),
            slip_use: distribution(slip_use, Dimension::Share),
            reaches,
            bolt_yields: share(self.bolt_yields),
            dents,
            slips,
            matters_for_clamp: matters(clamp),
            matters_for_dent: matters(dent),
            matters_for_slip: matters(slip_use),
            unknown: unknown.map(Sentence::message),
            out_of_range: outside.map_or_else(Vec::new, |lot| lot.out_of_range.clone()),
            said,
        }
    }
}

#[cfg(test)]
mod tests;

//! Quantiles, histograms and what matters most.

use crate::order::sorted;
use crate::quantity::Dimension;
use serde::Serialize;

/// Bars of a histogram.
pub const BARS: usize = 24;

/// Quantiles that are given.
pub const QUANTILES: [f64; 5] = [0.05, 0.25, 0.50, 0.75, 0.95];

/// How a result is spread over the drawn joints. Numbers in SI.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Distribution {
    /// What it measures.
    pub dimension: Dimension,
    /// Values that 5, 25, 50, 75 and 95 % of the joints do not exceed.
    pub quantiles: [f64; 5],
    /// Left end of the first bar.
    pub from: f64,
    /// Right end of the last bar. One joint in 200 at either end lies beyond and is counted in the
    /// end bar.
    pub to: f64,
    /// Joints in each bar; a single bar where all joints are alike.
    pub bars: Vec<usize>,
}

/// The distribution of some values. Zero everywhere for none.
#[must_use]
pub fn distribution(values: &[f64], dimension: Dimension) -> Distribution {
    let mut sorted = values.to_vec();
    sorted.sort_unstable_by(f64::total_cmp);
    let (from, to) = (quantile(&sorted, 0.005), quantile(&sorted, 0.995));
    let width = (to - from) / BARS as f64;
    let mut bars = Vec::new();
    if width > 1e-9 * to.abs() {
        let mut before = 0;
        for bar in 1..=BARS {
            let upto = if bar == BARS {
                sorted.len()
            } else {
                let edge = from + width * bar as f64;
                sorted.partition_point(|v| *v < edge)
            };
            bars.push(upto - before);
            before = upto;
        }
    } else {
        bars.push(sorted.len());
    }
    Distribution {
        dimension,
        quantiles: QUANTILES.map(|p| quantile(&sorted, p)),
        from,
        to,
        bars,
    }
}

/// Quantile of sorted values, by straight lines between them.
///
/// ```text
/// place = p·(n − 1)
/// ```
#[must_use]
pub fn quantile(sorted: &[f64], p: f64) -> f64 {
    let Some(last) = sorted.len().checked_sub(1) else {
        return 0.0;
    };
    let place = p * last as f64;
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a share of the length"
    )]
    let below = (place as usize).min(last);
    let at = |i: usize| sorted.get(i.min(last)).copied().unwrap_or(0.0);
    let (a, b) = (at(below), at(below + 1));
    a + (place - below as f64) * (b - a)
}

/// Least `Σ ρ²` that is worth dividing up: by chance alone it comes to the number of inputs over the number
/// of joints, a thousandth for a few thousand joints. An assumption.
pub const EXPLAINED: f64 = 0.01;

/// Ranks of values, equal values sharing their middle rank.
fn ranks(values: &[f64]) -> Vec<f64> {
    let order: Vec<(f64, usize)> = values.iter().copied().zip(0..).collect();
    let order = sorted(order, &|a, b| a.0.total_cmp(&b.0));
    let mut ranks = vec![0.0; values.len()];
    let mut first = 0;
    for run in order.chunk_by(|a, b| a.0 == b.0) {
        let middle = first as f64 + (run.len() as f64 - 1.0) / 2.0;
        for &(_, index) in run {
            if let Some(rank) = ranks.get_mut(index) {
                *rank = middle;
            }
        }
        first += run.len();
    }
    ranks
}

/// Squared correlation of the ranks of `inputs` with those of `output`, each as a share of their sum.
///
/// ```text
/// share_i = ρ_i² / Σ ρ²,   ρ = correlation of ranks
/// ```
///
/// For inputs drawn independently and results that rise or fall with them throughout, about the part
/// of the spread of the result that each input makes. All zero where the result does not vary, and where
/// the inputs together explain less than [`EXPLAINED`] of it: what is left then is chance.
///
/// # Sources
/// Spearman's rank correlation; Saltelli et al. on its use for ranking, from memory.
#[must_use]
pub fn variance_shares<const N: usize>(inputs: [&[f64]; N], output: &[f64]) -> [f64; N] {
    let out = ranks(output);
    let squared = inputs.map(|input| {
        let ranked = ranks(input);
        let n = ranked.len() as f64;
        let middle = (n - 1.0) / 2.0;
        let (mut both, mut one, mut other) = (0.0, 0.0, 0.0);
        for (a, b) in ranked.iter().zip(&out) {
            both += (a - middle) * (b - middle);
            one += (a - middle).powi(2);
            other += (b - middle).powi(2);
        }
        if one > 0.0 && other > 0.0 {
            both * both / (one * other)
        } else {
            0.0
        }
    });
    let sum: f64 = squared.iter().sum();
    squared.map(|square| if sum > EXPLAINED { square / sum } else { 0.0 })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn quantiles_and_bars_of_even_steps() {
        let values: Vec<f64> = (0..=1000).rev().map(f64::from).collect();
        let d = distribution(&values, Dimension::Ratio);
        assert_eq!(d.quantiles, [50.0, 250.0, 500.0, 750.0, 950.0]);
        assert_eq!(d.bars.iter().sum::<usize>(), 1001);
        assert_eq!(d.bars.len(), BARS);
        assert!(d.bars.iter().all(|n| (40..=48).contains(n)), "{:?}", d.bars);
        assert_eq!(distribution(&[2.0; 9], Dimension::Ratio).bars, [9]);
        assert_eq!(distribution(&[], Dimension::Ratio).quantiles, [0.0; 5]);
    }

    #[test]
    fn ties_share_their_rank() {
        assert_eq!(ranks(&[3.0, 1.0, 3.0, 2.0]), [2.5, 0.0, 2.5, 1.0]);
    }

    /// The ranks of a sum of two even distributions, one twice as wide, correlate as 1 to 2.
    #[test]
    fn shares_follow_the_variances() {
        let n = 150;
        let grid = |f: &dyn Fn(f64, f64) -> f64| -> Vec<f64> {
            (0..n * n)
                .map(|i| f(f64::from(i / n) / 149.0, f64::from(i % n) / 149.0))
                .collect()
        };
        let (a, b) = (grid(&|a, _| a), grid(&|_, b| b));
        let still = vec![1.0; a.len()];
        let shares = variance_shares([&a, &b, &still], &grid(&|a, b| 2.0 * a + b));
        assert!((shares[0] - 0.8).abs() < 0.02, "{shares:?}");
        assert!((shares.iter().sum::<f64>() - 1.0).abs() < 1e-12);
        assert_eq!(shares[2], 0.0);
        // A result that has nothing to do with the inputs is not put down to them.
        let noise: Vec<f64> = (0..a.len()).map(|i| (i * 7919 % 104_729) as f64).collect();
        assert_eq!(variance_shares([&a, &b], &noise), [0.0, 0.0]);
    }
}

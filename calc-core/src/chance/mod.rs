//! How sure: many joints drawn from the distributions of their inputs, the same every time for one seed.
//!
//! A joint is judged by its worst-loaded bolt, with likely strength: this says what will be seen on
//! many such trailers, not whether one may be driven. Verdicts never come from here.

mod draw;
mod input_distribution;
mod summary;
mod surface;

pub use draw::{Chance, Progress, Sampler, Sensitivity};
pub use input_distribution::{
    CUT, DistributionKind, InputDistribution, Variable, input_distributions,
};
pub use summary::{
    BARS, Distribution, EXPLAINED, QUANTILES, distribution, quantile, variance_shares,
};

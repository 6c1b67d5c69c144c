//! How sure: many joints drawn from the spreads of their inputs, the same every time for one seed.
//!
//! A joint is judged by its worst-loaded bolt, with likely strength: this says what will be seen on
//! many such trailers, not whether one may be driven. Verdicts never come from here.

mod draw;
mod spread;
mod summary;
mod surface;

pub use draw::{Chance, Matter, Progress, Sampler};
pub use spread::{CUT, Form, Spread, Variable, spreads};
pub use summary::{
    BARS, Distribution, EXPLAINED, QUANTILES, distribution, quantile, variance_shares,
};

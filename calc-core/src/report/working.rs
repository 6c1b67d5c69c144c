//! Collects the working, or not, where only the result is wanted.

use crate::cite::Cite;
use crate::quantity::Dimension;
use crate::report::{Amount, Given, Step, Substituted};

/// Steps of one check; empty-handed when nobody will read them.
pub(crate) struct Working {
    steps: Option<Vec<Step>>,
}

impl Working {
    /// A sheet that keeps its steps only if `wanted`.
    pub(crate) fn new(wanted: bool) -> Self {
        Self {
            // Most checks need a handful of lines.
            steps: if wanted {
                Some(Vec::with_capacity(6))
            } else {
                None
            },
        }
    }

    /// Adds a line.
    pub(crate) fn step(
        &mut self,
        &(symbol, what, formula): &(&'static str, &'static str, &'static str),
        inputs: &Given<'_>,
        (si, dimension): (f64, Dimension),
        cite: Cite,
    ) {
        if let Some(steps) = &mut self.steps {
            steps.push(Step {
                symbol,
                what,
                formula,
                inputs: Substituted::new(inputs),
                result: Amount::new(si, dimension),
                cite,
            });
        }
    }

    /// The lines.
    pub(crate) fn finish(self) -> Vec<Step> {
        self.steps.unwrap_or_default()
    }
}

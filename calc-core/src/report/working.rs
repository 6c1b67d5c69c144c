//! Collects the working, or not, where only the result is wanted.

use crate::cite::Cite;
use crate::quantity::Measured;
use crate::report::{Amount, Given, Step, Substituted};

/// Steps of one check; empty-handed when nobody will read them.
pub(crate) struct Working {
    steps: Option<Vec<Step>>,
}

/// What a line of working says whatever the numbers are.
pub(crate) struct Line {
    /// Symbol of the result.
    pub(crate) symbol: &'static str,
    /// What the result is, in a few words.
    pub(crate) what: &'static str,
    /// The formula, right-hand side.
    pub(crate) formula: &'static str,
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

    /// Adds a line: what was put into its formula, what came out, where the formula comes from.
    #[inline]
    pub(crate) fn line<Q: Measured>(
        &mut self,
        line: &Line,
        inputs: &Given<'_>,
        result: Q,
        cite: Cite,
    ) {
        self.push(line, inputs, Amount::of(result), cite);
    }

    fn push(&mut self, line: &Line, inputs: &Given<'_>, result: Amount, cite: Cite) {
        if let Some(steps) = &mut self.steps {
            steps.push(Step {
                symbol: line.symbol,
                what: line.what,
                formula: line.formula,
                inputs: Substituted::new(inputs),
                result,
                cite,
            });
        }
    }

    /// The lines.
    pub(crate) fn finish(self) -> Vec<Step> {
        self.steps.unwrap_or_default()
    }
}

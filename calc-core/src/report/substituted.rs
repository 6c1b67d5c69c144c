//! What was put into a formula.

use super::Amount;
use crate::quantity::Dimension;
use serde::{Serialize, Serializer};

/// Most numbers that a line of working shows.
const MOST: usize = 6;

/// A symbol with the number that was put in.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Term {
    /// Symbol in the formula.
    pub symbol: &'static str,
    /// The number.
    #[serde(flatten)]
    pub amount: Amount,
}

/// The numbers of a line of working, each with its symbol; serialises as a list of [`Term`]s.
///
/// What does not change from joint to joint stands in the program, so that a report with a hundred lines
/// costs neither a hundred allocations nor the time to write the same symbols again.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Substituted {
    names: &'static [(&'static str, Dimension)],
    si: [f64; MOST],
}

impl Substituted {
    /// Keeps what a line of working was given.
    #[must_use]
    pub(crate) fn new(given: &Given<'_>) -> Self {
        let mut si = [0.0; MOST];
        for (kept, number) in si.iter_mut().zip(given.si) {
            *kept = *number;
        }
        Self {
            names: given.names,
            si,
        }
    }

    /// One after the other.
    pub fn iter(&self) -> impl Iterator<Item = Term> {
        self.names
            .iter()
            .zip(self.si)
            .map(|(&(symbol, dimension), si)| Term {
                symbol,
                amount: Amount::new(si, dimension),
            })
    }
}

impl Serialize for Substituted {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_seq(self.iter())
    }
}

/// What a line of working is given: small enough to make where nobody will read it.
pub(crate) struct Given<'a> {
    names: &'static [(&'static str, Dimension)],
    si: &'a [f64],
}

impl<'a> Given<'a> {
    /// Numbers in SI with their symbols and what they measure. More than six do not compile.
    #[must_use]
    pub(crate) const fn new<const N: usize>(
        names: &'static [(&'static str, Dimension); N],
        si: &'a [f64; N],
    ) -> Self {
        const { assert!(N <= MOST, "a line of working shows six numbers at most") };
        Self { names, si }
    }
}

/// [`Given`] from `(symbol, number in SI, dimension)`, symbol and dimension constant.
macro_rules! substituted {
    ($(($symbol:expr, $si:expr, $dimension:expr $(,)?)),* $(,)?) => {
        &$crate::report::Given::new(&[$(($symbol, $dimension)),*], &[$($si),*])
    };
}
pub(crate) use substituted;

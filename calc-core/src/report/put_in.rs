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
pub struct PutIn {
    names: &'static [(&'static str, Dimension)],
    si: [f64; MOST],
}

impl PutIn {
    /// Numbers in SI with their symbols and what they measure. More than six do not compile.
    #[must_use]
    pub(crate) fn new<const N: usize>(
        names: &'static [(&'static str, Dimension); N],
        numbers: [f64; N],
    ) -> Self {
        const { assert!(N <= MOST, "a line of working shows six numbers at most") };
        let mut si = [0.0; MOST];
        si[..N].copy_from_slice(&numbers);
        Self { names, si }
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

impl Serialize for PutIn {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_seq(self.iter())
    }
}

/// [`PutIn`] from `(symbol, number in SI, dimension)`, symbol and dimension constant.
macro_rules! put_in {
    ($(($symbol:expr, $si:expr, $dimension:expr $(,)?)),* $(,)?) => {
        $crate::report::PutIn::new(&[$(($symbol, $dimension)),*], [$($si),*])
    };
}
pub(crate) use put_in;

//! What was put into a formula.

use super::Amount;
use crate::quantity::{Dimension, Measures};
use serde::{Serialize, Serializer};
use std::marker::PhantomData;

/// Most numbers that a line of working shows.
const MOST: usize = 7;

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
    symbols: &'static [&'static str],
    dimensions: &'static [Dimension],
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
            symbols: given.symbols,
            dimensions: given.dimensions,
            si,
        }
    }

    /// One after the other.
    pub fn iter(&self) -> impl Iterator<Item = Term> {
        let of = self.symbols.iter().zip(self.dimensions);
        of.zip(self.si).map(|((&symbol, &dimension), si)| Term {
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
    symbols: &'static [&'static str],
    dimensions: &'static [Dimension],
    si: &'a [f64],
}

impl<'a> Given<'a> {
    /// Numbers in SI with their symbols; what they measure is that of the quantities they were taken from.
    /// More than six do not compile.
    #[must_use]
    #[inline]
    pub(crate) fn new<Q: Measures<N>, const N: usize>(
        symbols: &'static [&'static str; N],
        numbers: &'a Numbers<Q, N>,
    ) -> Self {
        const { assert!(N <= MOST, "a line of working shows six numbers at most") };
        Self {
            symbols,
            dimensions: Q::DIMENSIONS,
            si: &numbers.si,
        }
    }
}

/// Quantities as numbers in SI that have kept what they measure.
pub(crate) struct Numbers<Q, const N: usize> {
    si: [f64; N],
    of: PhantomData<Q>,
}

impl<Q: Measures<N>, const N: usize> Numbers<Q, N> {
    #[inline]
    pub(crate) fn new(quantities: Q) -> Self {
        Self {
            si: quantities.numbers(),
            of: PhantomData,
        }
    }
}

/// [`Given`] from `(symbol, quantity)`, the symbols constant.
macro_rules! substituted {
    ($(($symbol:expr, $quantity:expr $(,)?)),* $(,)?) => {
        &$crate::report::Given::new(
            &[$($symbol),*],
            &$crate::report::Numbers::new(($($quantity,)*)),
        )
    };
}
pub(crate) use substituted;

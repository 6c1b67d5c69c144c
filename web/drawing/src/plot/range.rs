//! Axis ranges that no plotting code can choke on.

/// Narrowest and widest span that is drawn.
const NARROWEST: f64 = 1e-6;
const WIDEST: f64 = 1e9;

/// Finite ends in order, wide enough to divide by. Plotters hangs on infinite ranges and draws nothing
/// for NaN, so it is only ever given one of these.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlotRange {
    from: f64,
    to: f64,
}

impl PlotRange {
    /// A range, or `None` unless both ends are finite, in order, and between 1e-6 and 1e9 apart.
    #[must_use]
    pub fn new(from: f64, to: f64) -> Option<Self> {
        let fine =
            from.is_finite() && to.is_finite() && (NARROWEST..=WIDEST).contains(&(to - from));
        // Ends far from zero and close together would be equal after rounding.
        let fine = fine && (to - from) > 1e-9 * from.abs().max(to.abs());
        fine.then_some(Self { from, to })
    }

    /// From zero to a value, or to 1 where that makes no range.
    #[must_use]
    pub fn from_zero(to: f64) -> Self {
        Self::new(0.0, to).unwrap_or(Self { from: 0.0, to: 1.0 })
    }

    /// Lower end.
    #[must_use]
    pub const fn from(self) -> f64 {
        self.from
    }

    /// Upper end.
    #[must_use]
    pub const fn to(self) -> f64 {
        self.to
    }

    /// Share of the way from the lower to the upper end.
    #[must_use]
    pub fn share(self, value: f64) -> f64 {
        (value - self.from) / (self.to - self.from)
    }

    /// Multiples of a step inside the range, twenty at most.
    pub(super) fn ticks(self, step: f64) -> Vec<f64> {
        let mut ticks = Vec::new();
        if !(step.is_finite() && step > 0.0) {
            return ticks;
        }
        let mut n = (self.from / step).ceil();
        while n * step <= self.to * (1.0 + 1e-9) && ticks.len() < 20 {
            ticks.push(n * step);
            n += 1.0;
        }
        ticks
    }
}

//! What an hour, a kilogram and each step of the work cost.

use serde::{Deserialize, Serialize};

/// The reader's own rates. The defaults are assumptions, to be changed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Rates {
    /// Currency of all money here, as a code of three letters; empty: the reader's own, not named.
    pub currency: String,
    /// Year and month that the prices are of; empty: not named.
    pub prices_of: String,
    /// Money for an hour of work.
    pub hour: f64,
    /// Money for a kilogram of steel.
    pub steel_kg: f64,
    /// Money for a kilogram of aluminium.
    pub aluminium_kg: f64,
    /// Money for a kilogram of stainless steel.
    pub stainless_kg: f64,
    /// Money for one bolt with nut and washers.
    pub bolt: f64,
    /// Money for one tapered washer.
    pub tapered_washer: f64,
    /// Money for a fitting that is wider, longer or new.
    pub bracket: f64,
    /// Minutes for a hole drilled or opened up, up to 25 mm (1 in) deep.
    pub minutes_hole: f64,
    /// Minutes for a cut squared off, up to 13 cm² (2 sq in) of metal; more takes longer in proportion.
    pub minutes_cut: f64,
    /// Minutes to measure one place and file a piece to it, or to dress it flush.
    pub minutes_file: f64,
    /// Minutes for one set-up and one face in a lathe or mill.
    pub minutes_machine: f64,
    /// Minutes to hollow one saddle to a round tube.
    pub minutes_saddle: f64,
    /// Minutes to lay out one bolt where there was none.
    pub minutes_layout: f64,
    /// Minutes for one weld round a sleeve end, with bevel, fit, grinding flush and a look; half as long again on a round
    /// wall. As long again to grind one away.
    pub minutes_weld: f64,
    /// Minutes to loosen and retighten one bolt.
    pub minutes_bolt: f64,
    /// Minutes to take one faying face to bare or brushed metal; to blast it takes twice as long.
    pub minutes_surface: f64,
}

impl Default for Rates {
    fn default() -> Self {
        Self {
            currency: String::from("USD"),
            prices_of: String::from("2026-11"),
            hour: 90.0,
            steel_kg: 5.0,
            aluminium_kg: 12.0,
            stainless_kg: 15.0,
            bolt: 4.0,
            tapered_washer: 3.0,
            bracket: 100.0,
            minutes_hole: 6.0,
            minutes_cut: 5.0,
            minutes_file: 10.0,
            minutes_machine: 15.0,
            minutes_saddle: 30.0,
            minutes_layout: 5.0,
            minutes_weld: 28.0,
            minutes_bolt: 4.0,
            minutes_surface: 8.0,
        }
    }
}

/// What costs are counted in.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Money {
    /// Code of three letters; empty: the reader's own money.
    pub currency: String,
    /// Year and month of the prices; empty: not named.
    pub prices_of: String,
}

impl Rates {
    /// What costs by these rates are counted in.
    #[must_use]
    pub fn money(&self) -> Money {
        Money {
            currency: self.currency.clone(),
            prices_of: self.prices_of.clone(),
        }
    }
}

//! The order of metals in a wet joint: which one is eaten.

use crate::cite::{Cite, Flag};

/// A metal in the galvanic order.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GalvanicMetal {
    id: &'static str,
    label: &'static str,
    rank: u8,
    seawater_mv: f64,
    flowing_seawater_mv: f64,
    cite_rank: Cite,
    cite_seawater: Cite,
    cite_flowing: Cite,
}

impl GalvanicMetal {
    /// Id: `zinc`, `aluminium`, `steel`, `stainless`.
    #[must_use]
    pub const fn id(&self) -> &'static str {
        self.id
    }

    /// Name for people.
    #[must_use]
    pub const fn label(&self) -> &'static str {
        self.label
    }

    /// Rank in the order list, eaten first to last.
    #[must_use]
    pub const fn rank(&self) -> u8 {
        self.rank
    }

    /// Potential in seawater against silver chloride, millivolt.
    #[must_use]
    pub const fn seawater_mv(&self) -> f64 {
        self.seawater_mv
    }

    /// Potential in flowing seawater against calomel, millivolt: another series, which disagrees.
    #[must_use]
    pub const fn flowing_seawater_mv(&self) -> f64 {
        self.flowing_seawater_mv
    }

    /// Sources: of the rank, of the first and of the second potential.
    #[must_use]
    pub const fn cites(&self) -> [Cite; 3] {
        [self.cite_rank, self.cite_seawater, self.cite_flowing]
    }
}

const ORDER: Cite = Cite::new("mil-std-889", "order list", Flag::ReadSecondHand);
const SEAWATER: Cite = Cite::new("galvanic-series", "silver chloride", Flag::ReadSecondHand);
const FLOWING: Cite = Cite::new(
    "galvanic-series",
    "second series, calomel, flowing",
    Flag::ReadSecondHand,
);

const fn metal(
    id: &'static str,
    label: &'static str,
    rank: u8,
    seawater_mv: f64,
    flowing_seawater_mv: f64,
) -> GalvanicMetal {
    GalvanicMetal {
        id,
        label,
        rank,
        seawater_mv,
        flowing_seawater_mv,
        cite_rank: ORDER,
        cite_seawater: SEAWATER,
        cite_flowing: FLOWING,
    }
}

static METALS: [GalvanicMetal; 4] = [
    metal("zinc", "Zinc, plated or hot dip", 4, -1130.0, -1030.0),
    // The second series gives 3003, the first 5083, 5086 and 6061.
    metal("aluminium", "Aluminium 6061", 19, -820.0, -790.0),
    metal("steel", "Carbon steel", 30, -790.0, -610.0),
    // Active, as under a washer where no air comes; passive stainless lies at -80 mV.
    metal("stainless", "Stainless 304, active", 40, -550.0, -530.0),
];

/// All metals, eaten first to last.
#[must_use]
pub fn galvanic_metals() -> &'static [GalvanicMetal] {
    &METALS
}

/// The metal with this id.
#[must_use]
pub fn galvanic_metal(id: &str) -> Option<&'static GalvanicMetal> {
    METALS.iter().find(|metal| metal.id == id)
}

/// Largest difference of potential that is let pass in surroundings of a kind.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GalvanicLimit {
    /// Surroundings: the short name of the exposure.
    pub exposure: &'static str,
    /// Difference, millivolt.
    pub gap_mv: f64,
    /// Source.
    pub cite: Cite,
}

// Usually credited to a military standard; whether they stand in it was not established.
static LIMITS: [GalvanicLimit; 3] = [
    GalvanicLimit {
        exposure: "dry",
        gap_mv: 500.0,
        cite: Cite::new("anodic-index", "controlled", Flag::ReadSecondHand),
    },
    GalvanicLimit {
        exposure: "wet",
        gap_mv: 250.0,
        cite: Cite::new("anodic-index", "normal", Flag::ReadSecondHand),
    },
    GalvanicLimit {
        exposure: "road-salt",
        gap_mv: 150.0,
        cite: Cite::new("anodic-index", "harsh", Flag::ReadSecondHand),
    },
];

/// Limits by exposure, dry to salty.
#[must_use]
pub fn galvanic_limits() -> &'static [GalvanicLimit] {
    &LIMITS
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_three_lists_agree_on_the_order() {
        for pair in galvanic_metals().windows(2) {
            let [first, then] = pair else { panic!() };
            assert!(first.rank() < then.rank());
            assert!(first.seawater_mv() < then.seawater_mv());
            assert!(first.flowing_seawater_mv() < then.flowing_seawater_mv());
        }
    }

    #[test]
    fn the_two_series_disagree_about_aluminium_on_steel() {
        let gap = |of: fn(&GalvanicMetal) -> f64| {
            of(galvanic_metal("steel").unwrap()) - of(galvanic_metal("aluminium").unwrap())
        };
        assert_eq!(gap(GalvanicMetal::seawater_mv), 30.0);
        assert_eq!(gap(GalvanicMetal::flowing_seawater_mv), 180.0);
    }
}

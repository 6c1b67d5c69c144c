//! The order of metals in a wet joint: which one is eaten.

use crate::cite::{Cite, Flag, Source};

/// The metals of a joint, eaten first to last.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Metal {
    /// Zinc, on a bolt.
    Zinc,
    /// Aluminium.
    Aluminium,
    /// Carbon steel.
    Steel,
    /// Stainless steel.
    Stainless,
}

impl Metal {
    /// Its row.
    #[must_use]
    pub fn row(self) -> &'static GalvanicMetal {
        let [zinc, aluminium, steel, stainless] = &METALS;
        match self {
            Self::Zinc => zinc,
            Self::Aluminium => aluminium,
            Self::Steel => steel,
            Self::Stainless => stainless,
        }
    }
}

/// A metal in the galvanic order.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GalvanicMetal {
    metal: Metal,
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
    /// Which metal.
    #[must_use]
    pub const fn metal(&self) -> Metal {
        self.metal
    }

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

const ORDER: Cite = Cite::new(Source::MilStd889, "order list", Flag::ReadSecondHand);
const SEAWATER: Cite = Cite::new(
    Source::GalvanicSeries,
    "silver chloride",
    Flag::ReadSecondHand,
);
const FLOWING: Cite = Cite::new(
    Source::GalvanicSeries,
    "second series, calomel, flowing",
    Flag::ReadSecondHand,
);

const fn row(
    metal: Metal,
    id: &'static str,
    label: &'static str,
    rank: u8,
    seawater_mv: f64,
    flowing_seawater_mv: f64,
) -> GalvanicMetal {
    GalvanicMetal {
        metal,
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
    row(
        Metal::Zinc,
        "zinc",
        "Zinc, plated or hot dip",
        4,
        -1130.0,
        -1030.0,
    ),
    // The second series gives 3003, the first 5083, 5086 and 6061.
    row(
        Metal::Aluminium,
        "aluminium",
        "Aluminum 6061",
        19,
        -820.0,
        -790.0,
    ),
    row(Metal::Steel, "steel", "Carbon steel", 30, -790.0, -610.0),
    // Active, as under a washer where no air comes; passive stainless lies at -80 mV.
    row(
        Metal::Stainless,
        "stainless",
        "Stainless 304, active",
        40,
        -550.0,
        -530.0,
    ),
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

/// Surroundings that the limits are given for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Surroundings {
    /// Dry and kept so.
    Controlled,
    /// Rain, no salt.
    Normal,
    /// Salt.
    Harsh,
}

/// Largest difference of potential that is let pass in surroundings of a kind.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GalvanicLimit {
    /// Surroundings.
    pub surroundings: Surroundings,
    /// Difference, millivolt.
    pub gap_mv: f64,
    /// Source.
    pub cite: Cite,
}

// Usually credited to a military standard; whether they stand in it was not established.
static LIMITS: [GalvanicLimit; 3] = [
    GalvanicLimit {
        surroundings: Surroundings::Controlled,
        gap_mv: 500.0,
        cite: Cite::new(Source::AnodicIndex, "controlled", Flag::ReadSecondHand),
    },
    GalvanicLimit {
        surroundings: Surroundings::Normal,
        gap_mv: 250.0,
        cite: Cite::new(Source::AnodicIndex, "normal", Flag::ReadSecondHand),
    },
    GalvanicLimit {
        surroundings: Surroundings::Harsh,
        gap_mv: 150.0,
        cite: Cite::new(Source::AnodicIndex, "harsh", Flag::ReadSecondHand),
    },
];

/// Limits by surroundings, dry to salty.
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
    fn every_metal_has_its_row() {
        for (row, metal) in galvanic_metals().iter().zip([
            Metal::Zinc,
            Metal::Aluminium,
            Metal::Steel,
            Metal::Stainless,
        ]) {
            assert_eq!(metal.row(), row);
            assert_eq!(row.metal(), metal);
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

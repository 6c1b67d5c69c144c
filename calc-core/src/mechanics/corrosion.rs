//! Two metals in a wet joint: which one is eaten, and whether by enough to matter.

use crate::catalog::GalvanicMetal;

/// Two metals that touch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Couple {
    /// The one that is eaten.
    pub anode: &'static GalvanicMetal,
    /// The one that is spared.
    pub cathode: &'static GalvanicMetal,
    /// Difference of potential by the two published series, smaller first, millivolt.
    pub gap_mv: [f64; 2],
}

/// The couple of two metals; `None` if they are the same.
///
/// ```text
/// ΔE = E_cathode − E_anode
/// ```
///
/// The lower rank is eaten. Says nothing about how fast: that depends on water, salt, air and the areas.
/// A small anode on a large cathode is eaten fastest.
///
/// # Sources
/// The order and the potentials of [`galvanic_metals`](crate::catalog::galvanic_metals).
#[must_use]
pub fn couple(a: &'static GalvanicMetal, b: &'static GalvanicMetal) -> Option<Couple> {
    if a.metal() == b.metal() {
        return None;
    }
    let (anode, cathode) = if a.rank() <= b.rank() { (a, b) } else { (b, a) };
    let first = cathode.seawater_mv() - anode.seawater_mv();
    let second = cathode.flowing_seawater_mv() - anode.flowing_seawater_mv();
    Some(Couple {
        anode,
        cathode,
        gap_mv: [first.min(second), first.max(second)],
    })
}

impl Couple {
    /// Whether the difference passes a limit, by the larger of the two series.
    #[must_use]
    pub fn exceeds(&self, limit_mv: f64) -> bool {
        self.gap_mv.iter().any(|gap| *gap > limit_mv)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalog::galvanic_metal;

    #[test]
    fn zinc_goes_before_aluminium_and_aluminium_before_steel() {
        let of = |a, b| couple(galvanic_metal(a).unwrap(), galvanic_metal(b).unwrap());
        assert_eq!(of("aluminium", "zinc").unwrap().anode.id(), "zinc");
        assert_eq!(of("steel", "aluminium").unwrap().anode.id(), "aluminium");
        assert_eq!(of("stainless", "steel").unwrap().anode.id(), "steel");
        assert_eq!(of("steel", "steel"), None);
    }

    #[test]
    fn the_larger_series_decides() {
        let pair = couple(
            galvanic_metal("aluminium").unwrap(),
            galvanic_metal("steel").unwrap(),
        )
        .unwrap();
        assert_eq!(pair.gap_mv, [30.0, 180.0]);
        assert!(pair.exceeds(150.0));
        assert!(!pair.exceeds(250.0));
    }
}

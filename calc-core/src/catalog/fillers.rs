//! Filler metals for welding sleeves in.

use super::material::{Family, Material};
use super::printed::PrintedStress::{self, Ksi};
use crate::cite::{Cite, Flag, Source};
use crate::quantity::Stress;

/// A filler metal.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Filler {
    id: &'static str,
    label: &'static str,
    /// Shear strength as printed, or tensile strength with the code's share of it.
    shear: PrintedStress,
    cite: Cite,
}

impl Filler {
    /// Id: `5356`, `er70s-6`.
    #[must_use]
    pub const fn id(&self) -> &'static str {
        self.id
    }

    /// Name for people.
    #[must_use]
    pub const fn label(&self) -> &'static str {
        self.label
    }

    /// Least shear strength of the weld metal on its throat, loaded along the weld.
    #[must_use]
    pub fn shear_strength(&self) -> Stress {
        self.shear.stress()
    }

    /// Source.
    #[must_use]
    pub const fn cite(&self) -> Cite {
        self.cite
    }
}

const ALUMINIUM: Cite = Cite::new(
    Source::Adm2020,
    "shear strength of filler metals, longitudinal fillets",
    Flag::Memory,
);

/// Shear strength of steel weld metal as a share of its tensile strength.
const OF_TENSILE: f64 = 0.60;

static FILLERS: [Filler; 5] = [
    Filler {
        id: "4043",
        label: "4043",
        shear: Ksi(11.5),
        cite: ALUMINIUM,
    },
    Filler {
        id: "5356",
        label: "5356",
        shear: Ksi(17.0),
        cite: ALUMINIUM,
    },
    Filler {
        id: "er70s-6",
        label: "E7018 or ER70S-6",
        shear: Ksi(70.0).times(OF_TENSILE),
        cite: Cite::new(
            Source::Aisc360_22,
            "J2.4, Table J2.5: 0.60 F_EXX",
            Flag::Read,
        ),
    },
    Filler {
        id: "309l",
        label: "E309L or ER309L",
        shear: Ksi(75.0).times(OF_TENSILE),
        cite: Cite::new(Source::AwsA5_9, "309L, 75 ksi tensile", Flag::Memory),
    },
    Filler {
        id: "308l",
        label: "E308L or ER308L",
        shear: Ksi(75.0).times(OF_TENSILE),
        cite: Cite::new(Source::AwsA5_9, "308L, 75 ksi tensile", Flag::Memory),
    },
];

/// All filler metals.
#[must_use]
pub fn fillers() -> &'static [Filler] {
    &FILLERS
}

/// The filler metal with this id.
#[must_use]
pub fn filler(id: &str) -> Option<&'static Filler> {
    FILLERS.iter().find(|row| row.id == id)
}

/// The filler metal that joins two materials; `None` for aluminium to anything else.
///
/// Aluminium takes 5356: it has the higher shear strength and suits 5xxx plate as well. Carbon steel takes
/// the usual 70 ksi metal, stainless to stainless 308L, stainless to carbon steel 309L, which bears the
/// mixing of both.
#[must_use]
pub fn filler_between(a: &Material, b: &Material) -> Option<&'static Filler> {
    filler(match (a.family(), b.family()) {
        (Family::Aluminium, Family::Aluminium) => "5356",
        (Family::Aluminium, _) | (_, Family::Aluminium) => return None,
        (Family::Steel, Family::Steel) => "er70s-6",
        (Family::Stainless, Family::Stainless) => "308l",
        _ => "309l",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalog::materials;

    #[test]
    fn every_pair_of_metals_has_its_filler_or_cannot_be_welded() {
        for a in materials() {
            for b in materials() {
                let mixed = (a.family() == Family::Aluminium) != (b.family() == Family::Aluminium);
                assert_eq!(
                    filler_between(a, b).is_none(),
                    mixed,
                    "{} {}",
                    a.id(),
                    b.id()
                );
                assert_eq!(filler_between(a, b), filler_between(b, a));
            }
        }
    }
}

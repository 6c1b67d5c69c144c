//! A material of members, sleeves, plates and inserts: aluminium alloys and steels in one list.

use uom::si::f64::{MassDensity, TemperatureCoefficient};
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::temperature_coefficient::per_kelvin;

use super::printed::PrintedStress;
use super::{alloys, steels};
use crate::cite::{Cite, Flag, Source};
use crate::quantity::{InUnits, Length, Stress};

/// Kind of material.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, serde::Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Family {
    /// Aluminium alloy.
    Aluminium,
    /// Carbon steel.
    Steel,
    /// Austenitic stainless steel.
    Stainless,
}

/// Form that a material is sold in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, serde::Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum ProductForm {
    /// Square or rectangular tube, channel and angle included where the material is extruded or rolled.
    Section,
    /// Sheet, plate or flat bar.
    Plate,
    /// Round tube.
    RoundTube,
    /// Pipe in nominal sizes.
    Pipe,
}

/// Yield and ultimate strength, each with its source.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Strength {
    yield_: PrintedStress,
    compressive_yield: Option<PrintedStress>,
    ultimate: PrintedStress,
    cite_yield: Cite,
    cite_ultimate: Cite,
}

impl Strength {
    /// Both values from one source.
    pub(super) const fn new(yield_: PrintedStress, ultimate: PrintedStress, cite: Cite) -> Self {
        Self {
            yield_,
            compressive_yield: None,
            ultimate,
            cite_yield: cite,
            cite_ultimate: cite,
        }
    }

    /// The ultimate strength from another source than the yield strength.
    pub(super) const fn with_ultimate(mut self, ultimate: PrintedStress, cite: Cite) -> Self {
        self.ultimate = ultimate;
        self.cite_ultimate = cite;
        self
    }

    /// A compressive yield strength below the tensile one.
    pub(super) const fn with_compressive_yield(mut self, yield_: PrintedStress) -> Self {
        self.compressive_yield = Some(yield_);
        self
    }

    /// 15 % above a specified minimum: what to expect of a material whose usual strength is not
    /// published. An assumption.
    pub(super) const fn assumed_likely(least: Self) -> Self {
        Self::new(
            least.yield_.times(1.15),
            least.ultimate.times(1.15),
            Cite::new(
                Source::OwnAssumption,
                "1.15 × specified minimum",
                Flag::Assumption,
            ),
        )
    }

    /// Tensile yield strength, or 0.2 % proof stress.
    #[must_use]
    pub fn yield_strength(&self) -> Stress {
        self.yield_.stress()
    }

    /// Compressive yield strength; the tensile one where no lower value is published.
    #[must_use]
    pub fn compressive_yield_strength(&self) -> Stress {
        self.compressive_yield.unwrap_or(self.yield_).stress()
    }

    /// Ultimate tensile strength.
    #[must_use]
    pub fn ultimate_strength(&self) -> Stress {
        self.ultimate.stress()
    }

    /// Source of the yield strength.
    #[must_use]
    pub const fn cite_yield(&self) -> Cite {
        self.cite_yield
    }

    /// Source of the ultimate strength.
    #[must_use]
    pub const fn cite_ultimate(&self) -> Cite {
        self.cite_ultimate
    }
}

/// Strength within 25 mm of a weld.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Welded {
    /// For verdicts.
    pub least: Strength,
    /// What is seen on the bench.
    pub likely: Strength,
}

/// What does not depend on temper or grade.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Physical {
    pub(super) modulus: PrintedStress,
    pub(super) poisson: f64,
    pub(super) density_kg_m3: f64,
    pub(super) expansion_per_kelvin: f64,
    pub(super) cite_modulus: Cite,
    pub(super) cite: Cite,
}

/// A material.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Material {
    pub(super) id: &'static str,
    pub(super) label: &'static str,
    pub(super) family: Family,
    pub(super) forms: &'static [ProductForm],
    pub(super) physical: Physical,
    pub(super) least: Strength,
    pub(super) likely: Strength,
    pub(super) welded: Option<Welded>,
    pub(super) design_wall_factor: f64,
    pub(super) note: &'static str,
}

impl Material {
    /// Id: `6061-t6`, `a500-b`.
    #[must_use]
    pub const fn id(&self) -> &'static str {
        self.id
    }

    /// Name for people.
    #[must_use]
    pub const fn label(&self) -> &'static str {
        self.label
    }

    /// Aluminium, steel or stainless.
    #[must_use]
    pub const fn family(&self) -> Family {
        self.family
    }

    /// Series of an aluminium alloy, which the first figure of its designation names; `None` for others.
    #[must_use]
    pub fn aluminium_series(&self) -> Option<u32> {
        let first = self
            .id
            .chars()
            .next()
            .filter(|_| self.family == Family::Aluminium)?;
        first.to_digit(10)
    }

    /// Forms that it is sold in.
    #[must_use]
    pub const fn forms(&self) -> &'static [ProductForm] {
        self.forms
    }

    /// Modulus of elasticity `E`.
    #[must_use]
    pub fn modulus(&self) -> Stress {
        self.physical.modulus.stress()
    }

    /// Source of the modulus.
    #[must_use]
    pub const fn cite_modulus(&self) -> Cite {
        self.physical.cite_modulus
    }

    /// Poisson's ratio `ν`.
    #[must_use]
    pub const fn poisson(&self) -> f64 {
        self.physical.poisson
    }

    /// Density.
    #[must_use]
    pub fn density(&self) -> MassDensity {
        MassDensity::new::<kilogram_per_cubic_meter>(self.physical.density_kg_m3)
    }

    /// Coefficient of linear thermal expansion `α`.
    #[must_use]
    pub fn expansion(&self) -> TemperatureCoefficient {
        TemperatureCoefficient::new::<per_kelvin>(self.physical.expansion_per_kelvin)
    }

    /// Source of Poisson's ratio, density and expansion.
    #[must_use]
    pub const fn cite_physical(&self) -> Cite {
        self.physical.cite
    }

    /// Specified minimum strength, the lower where codes differ: for verdicts.
    #[must_use]
    pub const fn least(&self) -> &Strength {
        &self.least
    }

    /// Usual strength: what is seen on the bench. Never for verdicts.
    #[must_use]
    pub const fn likely(&self) -> &Strength {
        &self.likely
    }

    /// Strength within 25 mm of a weld; `None` where welding takes nothing away.
    #[must_use]
    pub const fn welded(&self) -> Option<&Welded> {
        self.welded.as_ref()
    }

    /// Least strength, beside a weld or away from it.
    #[must_use]
    pub const fn least_beside(&self, weld: bool) -> &Strength {
        match &self.welded {
            Some(welded) if weld => &welded.least,
            _ => &self.least,
        }
    }

    /// Usual strength, beside a weld or away from it.
    #[must_use]
    pub const fn likely_beside(&self, weld: bool) -> &Strength {
        match &self.welded {
            Some(welded) if weld => &welded.likely,
            _ => &self.likely,
        }
    }

    /// The same material with the strength that it usually has in the place of the least, beside welds too.
    ///
    /// For the answer beside the verdict: see [`outlook`](crate::outlook).
    #[must_use]
    pub fn usual(&'static self) -> &'static Self {
        if *self == THICK_6061_T6[0] {
            return &THICK_6061_T6[1];
        }
        let stronger = |row: &&'static Self| row.id == self.id;
        USUAL.iter().find(stronger).unwrap_or(self)
    }

    /// The same material in a part so thick: metal above 3/8 in keeps less beside a weld.
    #[must_use]
    pub fn as_thick_as(&'static self, wall: Length) -> &'static Self {
        let welds_worse = wall.si() > THICK && self.id == THICK_6061_T6[0].id;
        if welds_worse { &THICK_6061_T6[0] } else { self }
    }

    /// The same material as if a weld took nothing away.
    ///
    /// For what a bench may show of parts that were welded cool: never for verdicts.
    #[must_use]
    pub fn unsoftened(&'static self) -> &'static Self {
        let same = |row: &&'static Self| row.id == self.id;
        UNSOFTENED.iter().find(same).unwrap_or(self)
    }

    const fn unwelded(mut self) -> Self {
        self = self.with_usual_for_least();
        self.welded = None;
        self
    }

    const fn with_usual_for_least(mut self) -> Self {
        self.least = self.likely;
        if let Some(welded) = self.welded {
            self.welded = Some(Welded {
                least: welded.likely,
                likely: welded.likely,
            });
        }
        self
    }

    /// Share of the nominal wall to count: 0.93 for A500 tube, otherwise 1.
    #[must_use]
    pub const fn design_wall_factor(&self) -> f64 {
        self.design_wall_factor
    }

    /// Source of the design wall factor.
    pub const DESIGN_WALL_CITE: Cite = Cite::new(Source::Aisc360_22, "B4.2", Flag::Read);

    /// Outside corner radius of a square or rectangular tube, in wall thicknesses, when nobody has
    /// measured it: 1.5 for aluminium, 2 for cold-formed steel. An assumption; extrusions with sharp
    /// corners are common.
    #[must_use]
    pub const fn corner_radius_factor(&self) -> f64 {
        match self.family {
            Family::Aluminium => 1.5,
            Family::Steel | Family::Stainless => 2.0,
        }
    }

    /// Source of the corner radius factor.
    pub const CORNER_RADIUS_CITE: Cite = Cite::new(
        Source::OwnAssumption,
        "outside corner radius in walls",
        Flag::Assumption,
    );

    /// Where sources disagree about the strengths, in words; empty if nowhere.
    #[must_use]
    pub const fn note(&self) -> &'static str {
        self.note
    }
}

const MATERIALS: [Material; 14] = [
    alloys::A6061_T6,
    alloys::A6063_T5,
    alloys::A6063_T6,
    alloys::A6005A_T6,
    alloys::A5052_H32,
    alloys::A5083_H116,
    steels::A36,
    steels::A500_B,
    steels::A500_C,
    steels::A53_B,
    steels::A513_1020,
    steels::S235,
    steels::S355,
    steels::STAINLESS_304,
];

static ROWS: [Material; MATERIALS.len()] = MATERIALS;

/// The same in the same order, each with its usual strength in the place of the least.
static USUAL: [Material; MATERIALS.len()] = each_row(false);

/// The same again, and a weld takes nothing away.
static UNSOFTENED: [Material; MATERIALS.len()] = each_row(true);

const fn each_row(unwelded: bool) -> [Material; MATERIALS.len()] {
    let mut rows = MATERIALS;
    let mut i = 0;
    while i < rows.len() {
        // The length is that of the array: no index of the loop lies outside.
        #[allow(
            clippy::indexing_slicing,
            reason = "checked by the compiler while it computes the constant"
        )]
        {
            rows[i] = if unwelded {
                rows[i].unwelded()
            } else {
                rows[i].with_usual_for_least()
            };
        }
        i += 1;
    }
    rows
}

/// Thickness above which 6061-T6 is counted with less beside a weld, m (3/8 in, and what a rule reads).
///
/// # Sources
/// Aluminum Design Manual, welded strengths of 6061-T6: 15 ksi up to 3/8 in with any filler, 11 ksi above it with 4043;
/// quoted second-hand, the bound from memory.
const THICK: f64 = 9.6e-3;

/// 6061-T6 above that, and the same with its usual strength in the place of the least.
static THICK_6061_T6: [Material; 2] = [
    alloys::A6061_T6_THICK,
    alloys::A6061_T6_THICK.with_usual_for_least(),
];

/// All materials: aluminium, steel, stainless.
#[must_use]
pub fn materials() -> &'static [Material] {
    &ROWS
}

/// The material with this id.
#[must_use]
pub fn material(id: &str) -> Option<&'static Material> {
    ROWS.iter().find(|material| material.id == id)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn likely_is_never_below_least_and_welding_never_helps() {
        for material in materials() {
            let id = material.id();
            let ordered = |low: &Strength, high: &Strength| {
                low.yield_strength() <= high.yield_strength()
                    && low.ultimate_strength() <= high.ultimate_strength()
            };
            assert!(ordered(material.least(), material.likely()), "{id}");
            assert!(
                material.least().compressive_yield_strength() <= material.least().yield_strength()
            );
            assert_eq!(
                material.welded().is_some(),
                material.family() == Family::Aluminium,
                "{id}"
            );
            if let Some(welded) = material.welded() {
                assert!(ordered(&welded.least, &welded.likely), "{id} welded");
                assert!(
                    ordered(&welded.least, material.least()),
                    "{id} welded, least"
                );
                assert!(
                    ordered(&welded.likely, material.likely()),
                    "{id} welded, likely"
                );
            }
        }
    }
}

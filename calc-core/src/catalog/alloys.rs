//! Aluminium alloys, as delivered and within 25 mm of a weld.

use super::material::{Family, Material, Physical, ProductForm, Strength, Welded};
use super::printed::PrintedStress::{Ksi, Mpa};
use crate::cite::{Cite, Flag, Source};

const EN: Cite = Cite::new(Source::En1999_1_1, "Table 3.2b", Flag::Read);
const B221: Cite = Cite::new(Source::AstmB221, "tensile limits", Flag::ReadSecondHand);
const ADM: Cite = Cite::new(Source::Adm2020, "Table 3.3-1M", Flag::Read);
const ADM_WELDED: Cite = Cite::new(
    Source::Adm2020,
    "welded strengths, 2015 table used in a published calculation",
    Flag::ReadSecondHand,
);
const ADM_WELDED_RECALLED: Cite = Cite::new(Source::Adm2020, "welded strengths", Flag::Memory);
const ADM_THICK: Cite = Cite::new(
    Source::Adm2020,
    "Table A3.3, filler 4043 above 3/8 in",
    Flag::ReadSecondHand,
);
const ADM_THICK_LIKELY: Cite = Cite::new(
    Source::HandbookRecalled,
    "thick 6061-T6 as welded, 14 ksi",
    Flag::ReadSecondHand,
);
const MMPDS: Cite = Cite::new(
    Source::Mmpds01,
    "note on welded 6061-T6",
    Flag::ReadSecondHand,
);
const FILLER: Cite = Cite::new(
    Source::FillerGuide,
    "p. 9, typical groove welds",
    Flag::Read,
);
const FILLER_RECALLED: Cite = Cite::new(Source::FillerGuide, "typical groove welds", Flag::Memory);
const TYPICAL: Cite = Cite::new(
    Source::HandbookRecalled,
    "typical tensile properties",
    Flag::Memory,
);

const PHYSICAL: Physical = Physical {
    modulus: Ksi(10_100.0),
    poisson: 0.33,
    density_kg_m3: 2700.0,
    expansion_per_kelvin: 23.6e-6,
    cite_modulus: Cite::new(Source::Adm2020, "E = 10 100 ksi", Flag::ReadSecondHand),
    cite: Cite::new(
        Source::HandbookRecalled,
        "aluminum alloys; expansion 23.2 to 23.6",
        Flag::Memory,
    ),
};

const fn marine(modulus_mpa: f64, density_kg_m3: f64) -> Physical {
    Physical {
        modulus: Mpa(modulus_mpa),
        density_kg_m3,
        cite_modulus: ADM,
        ..PHYSICAL
    }
}

const fn alloy(
    [id, label]: [&'static str; 2],
    forms: &'static [ProductForm],
    physical: Physical,
    least: Strength,
    likely: Strength,
    welded: Welded,
    note: &'static str,
) -> Material {
    Material {
        id,
        label,
        family: Family::Aluminium,
        forms,
        physical,
        least,
        likely,
        welded: Some(welded),
        design_wall_factor: 1.0,
        note,
    }
}

const EXTRUDED: &[ProductForm] = &[ProductForm::Section, ProductForm::RoundTube];

pub(super) const A6061_T6: Material = alloy(
    ["6061-t6", "Aluminum 6061-T6"],
    &[
        ProductForm::Section,
        ProductForm::Plate,
        ProductForm::RoundTube,
        ProductForm::Pipe,
    ],
    PHYSICAL,
    Strength::new(Mpa(240.0), Mpa(260.0), EN),
    Strength::new(Mpa(276.0), Mpa(310.0), TYPICAL),
    Welded {
        least: Strength::new(Ksi(15.0), Ksi(24.0), ADM_WELDED),
        likely: Strength::new(Ksi(20.0), Ksi(24.0), MMPDS),
    },
    "US extrusion limits are 35 ksi yield and 38 ksi ultimate (241 and 262 MPa). Welded: Eurocode 9 gives 115 and 175 MPa, the US manual 15 and 24 ksi (103 and 165 MPa), above 3/8 in 11 ksi (76 MPa) yield.",
);

/// Beside a weld with the filler that leaves the least, in metal above 3/8 in.
pub(super) const A6061_T6_THICK: Material = Material {
    welded: Some(Welded {
        least: Strength::new(Ksi(11.0), Ksi(24.0), ADM_THICK),
        likely: Strength::new(Ksi(14.0), Ksi(24.0), ADM_THICK_LIKELY),
    }),
    ..A6061_T6
};

pub(super) const A6063_T5: Material = alloy(
    ["6063-t5", "Aluminum 6063-T5"],
    EXTRUDED,
    PHYSICAL,
    Strength::new(Mpa(110.0), Mpa(160.0), EN).with_ultimate(Ksi(22.0), B221),
    Strength::new(Mpa(145.0), Mpa(186.0), TYPICAL),
    Welded {
        least: Strength::new(Ksi(8.0), Ksi(17.0), ADM_WELDED_RECALLED)
            .with_ultimate(Mpa(100.0), EN),
        likely: Strength::new(Ksi(12.0), Ksi(20.0), FILLER_RECALLED),
    },
    "Eurocode 9 allows 130 MPa yield up to 3 mm and 110 MPa above; the US limit is 16 ksi (110 MPa). Welded: 60 MPa against 8 ksi (55 MPa).",
);

pub(super) const A6063_T6: Material = alloy(
    ["6063-t6", "Aluminum 6063-T6"],
    EXTRUDED,
    PHYSICAL,
    Strength::new(Mpa(160.0), Mpa(195.0), EN),
    Strength::new(Mpa(214.0), Mpa(241.0), TYPICAL),
    Welded {
        least: Strength::new(Ksi(8.0), Ksi(17.0), ADM_WELDED_RECALLED)
            .with_ultimate(Mpa(110.0), EN),
        likely: Strength::new(Ksi(12.0), Ksi(20.0), FILLER_RECALLED),
    },
    "US limits are 25 ksi yield and 30 ksi ultimate (172 and 207 MPa), above Eurocode 9. Welded: 65 MPa against 8 ksi (55 MPa).",
);

const LEAST_6005A: Strength = Strength::new(Mpa(215.0), Mpa(255.0), EN);

pub(super) const A6005A_T6: Material = alloy(
    ["6005a-t6", "Aluminum 6005A-T6"],
    EXTRUDED,
    PHYSICAL,
    LEAST_6005A,
    Strength::assumed_likely(LEAST_6005A),
    Welded {
        least: Strength::new(Ksi(13.0), Ksi(24.0), ADM_WELDED_RECALLED)
            .with_ultimate(Mpa(165.0), EN),
        likely: Strength::assumed_likely(Strength::new(Mpa(115.0), Mpa(165.0), EN)),
    },
    "Eurocode 9, hollow section; the US limits of T61 are 35 and 38 ksi (241 and 262 MPa). Welded: 115 MPa against 13 ksi (90 MPa).",
);

pub(super) const A5052_H32: Material = alloy(
    ["5052-h32", "Aluminum 5052-H32"],
    &[ProductForm::Plate],
    marine(70_300.0, 2680.0),
    Strength::new(Mpa(160.0), Mpa(215.0), ADM).with_compressive_yield(Mpa(145.0)),
    Strength::new(Mpa(193.0), Mpa(228.0), TYPICAL),
    Welded {
        least: Strength::new(Ksi(9.5), Ksi(25.0), ADM_WELDED_RECALLED),
        likely: Strength::new(Ksi(14.0), Ksi(28.0), FILLER),
    },
    "",
);

pub(super) const A5083_H116: Material = alloy(
    ["5083-h116", "Aluminum 5083-H116"],
    &[ProductForm::Plate],
    marine(71_700.0, 2660.0),
    Strength::new(Mpa(215.0), Mpa(305.0), ADM).with_compressive_yield(Mpa(180.0)),
    Strength::new(Mpa(228.0), Mpa(317.0), TYPICAL),
    Welded {
        least: Strength::new(Ksi(17.0), Ksi(39.0), ADM_WELDED_RECALLED),
        likely: Strength::new(Ksi(22.0), Ksi(43.0), FILLER),
    },
    "Welded strengths differ by product: 17 to 21 ksi yield, 39 to 40 ksi ultimate.",
);

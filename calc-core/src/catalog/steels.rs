//! Steels.

use super::material::{Family, Material, Physical, ProductForm, Strength};
use super::printed::PrintedStress::{Ksi, Mpa};
use crate::cite::{Cite, Flag, Source};

const US: Physical = Physical {
    modulus: Ksi(29_000.0),
    poisson: 0.30,
    density_kg_m3: 7850.0,
    expansion_per_kelvin: 11.7e-6,
    cite_modulus: Cite::new(Source::Aisc360_22, "E = 29 000 ksi", Flag::Memory),
    cite: Cite::new(Source::HandbookRecalled, "carbon steel", Flag::Memory),
};

const EN: Physical = Physical {
    modulus: Mpa(210_000.0),
    cite_modulus: Cite::new(Source::En1993_1_1, "3.2.6", Flag::Memory),
    ..US
};

const AUSTENITIC: Physical = Physical {
    modulus: Mpa(193_000.0),
    poisson: 0.30,
    density_kg_m3: 7900.0,
    expansion_per_kelvin: 17.2e-6,
    cite_modulus: Cite::new(
        Source::HandbookRecalled,
        "austenitic stainless, 193 to 200 GPa",
        Flag::Memory,
    ),
    cite: Cite::new(Source::HandbookRecalled, "stainless 304", Flag::Memory),
};

const fn steel(
    id: &'static str,
    label: &'static str,
    forms: &'static [ProductForm],
    physical: Physical,
    least: Strength,
    note: &'static str,
) -> Material {
    Material {
        id,
        label,
        family: Family::Steel,
        forms,
        physical,
        least,
        likely: Strength::assumed_likely(least),
        welded: None,
        design_wall_factor: 1.0,
        note,
    }
}

pub(super) const A36: Material = steel(
    "a36",
    "Steel A36",
    &[ProductForm::Section, ProductForm::Plate],
    US,
    Strength::new(
        Ksi(36.0),
        Ksi(58.0),
        Cite::new(Source::AstmA36, "tensile requirements", Flag::Memory),
    ),
    "",
);

pub(super) const A500_B: Material = Material {
    design_wall_factor: 0.93,
    ..steel(
        "a500-b",
        "Steel tube A500 Grade B",
        &[ProductForm::Section],
        US,
        Strength::new(
            Ksi(46.0),
            Ksi(58.0),
            Cite::new(Source::AstmA500, "shaped, Grade B", Flag::ReadSecondHand),
        ),
        "",
    )
};

pub(super) const A500_C: Material = Material {
    design_wall_factor: 0.93,
    ..steel(
        "a500-c",
        "Steel tube A500 Grade C",
        &[ProductForm::Section],
        US,
        Strength::new(
            Ksi(50.0),
            Ksi(62.0),
            Cite::new(Source::AstmA500, "shaped, Grade C", Flag::Memory),
        ),
        "",
    )
};

pub(super) const A53_B: Material = steel(
    "a53-b",
    "Steel pipe A53 Grade B",
    &[ProductForm::Pipe],
    US,
    Strength::new(
        Ksi(35.0),
        Ksi(60.0),
        Cite::new(Source::AstmA53, "Grade B", Flag::Memory),
    ),
    "",
);

pub(super) const A513_1020: Material = steel(
    "a513-1020",
    "Drawn steel tube 1020 (A513 type 5, DOM)",
    &[ProductForm::RoundTube],
    US,
    Strength::new(
        Ksi(55.0),
        Ksi(65.0),
        Cite::new(
            Source::AstmA513,
            "type 5, 1020, stress-relieved",
            Flag::ReadSecondHand,
        ),
    ),
    "Suppliers print 60 and 70 ksi, trade practice 70 and 80; tensile is guaranteed only when ordered, so the stress-relieved 55 and 65 ksi stand here.",
);

pub(super) const S235: Material = steel(
    "s235",
    "Steel S235",
    &[ProductForm::Section, ProductForm::Plate],
    EN,
    Strength::new(
        Mpa(235.0),
        Mpa(360.0),
        Cite::new(Source::En1993_1_1, "Table 3.1", Flag::ReadSecondHand),
    ),
    "",
);

pub(super) const S355: Material = steel(
    "s355",
    "Steel S355",
    &[ProductForm::Section, ProductForm::Plate],
    EN,
    Strength::new(
        Mpa(355.0),
        Mpa(490.0),
        Cite::new(Source::En1993_1_1, "Table 3.1", Flag::Memory),
    ),
    "The 2005 text prints 510 MPa ultimate; the amended text and the product standard 490 or less.",
);

pub(super) const STAINLESS_304: Material = Material {
    family: Family::Stainless,
    ..steel(
        "stainless-304",
        "Stainless 304",
        &[
            ProductForm::Plate,
            ProductForm::RoundTube,
            ProductForm::Pipe,
        ],
        AUSTENITIC,
        Strength::new(
            Ksi(30.0),
            Ksi(75.0),
            Cite::new(Source::AstmA240, "304, annealed", Flag::Memory),
        ),
        "",
    )
};

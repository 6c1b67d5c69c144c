//! Nut factors, and slip coefficients of the surfaces that are clamped together.

use super::Family;
use crate::cite::{Cite, Flag, Source};

/// Nut factor `K` of `T = K d F` for one condition of thread and bearing face.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NutFactor {
    id: &'static str,
    label: &'static str,
    low_typical_high: [f64; 3],
    cite: Cite,
    cite_range: Cite,
    note: &'static str,
}

impl NutFactor {
    /// Id: `dry`, `zinc`, `unknown`.
    #[must_use]
    pub const fn id(&self) -> &'static str {
        self.id
    }

    /// Condition, for people.
    #[must_use]
    pub const fn label(&self) -> &'static str {
        self.label
    }

    /// Lowest published value.
    #[must_use]
    pub const fn low(&self) -> f64 {
        self.low_typical_high[0]
    }

    /// Value to count.
    #[must_use]
    pub const fn typical(&self) -> f64 {
        self.low_typical_high[1]
    }

    /// Highest published value.
    #[must_use]
    pub const fn high(&self) -> f64 {
        self.low_typical_high[2]
    }

    /// Source of the typical value.
    #[must_use]
    pub const fn cite(&self) -> Cite {
        self.cite
    }

    /// Source of the lowest and the highest value.
    #[must_use]
    pub const fn cite_range(&self) -> Cite {
        self.cite_range
    }

    /// What to know about the figures; empty if nothing.
    #[must_use]
    pub const fn note(&self) -> &'static str {
        self.note
    }
}

const SHIGLEY: Cite = Cite::new(Source::Shigley9e, "Table 8-15", Flag::ReadSecondHand);
const MAKER: Cite = Cite::new(
    Source::FastenerMakerPage,
    "nut factor ranges",
    Flag::ReadSecondHand,
);
const BARE_STEEL: Cite = Cite::new(Source::BoltHandbook, "ch. 2, Table 1", Flag::ReadSecondHand);
const RECALLED: Cite = Cite::new(Source::TradePractice, "nut factor ranges", Flag::Memory);
const MIDDLE: Cite = Cite::new(
    Source::FastenerMakerPage,
    "middle of the range",
    Flag::Computed,
);
const ENVELOPE: Cite = Cite::new(
    Source::FastenerMakerPage,
    "lowest of oil, highest of zinc",
    Flag::Computed,
);

static NUT_FACTORS: [NutFactor; 10] = [
    NutFactor {
        id: "dry",
        label: "Bare steel, clean and dry",
        low_typical_high: [0.18, 0.20, 0.27],
        cite: BARE_STEEL,
        cite_range: MAKER,
        note: "",
    },
    NutFactor {
        id: "oiled",
        label: "Oiled steel",
        low_typical_high: [0.10, 0.18, 0.26],
        cite: SHIGLEY,
        cite_range: MAKER,
        note: "A teaching rule says 0.15 for any lubricant; with the same torque that promises more clamp load than 0.18 does.",
    },
    NutFactor {
        id: "zinc",
        label: "Zinc plated, dry",
        low_typical_high: [0.17, 0.20, 0.35],
        cite: SHIGLEY,
        cite_range: MAKER,
        note: "The sources disagree: another handbook gives dry zinc 0.295. Look at both ends of the range.",
    },
    NutFactor {
        id: "waxed-zinc",
        label: "Zinc plated, waxed",
        low_typical_high: [0.10, 0.12, 0.16],
        cite: RECALLED,
        cite_range: RECALLED,
        note: "",
    },
    NutFactor {
        id: "moly",
        label: "Moly paste (molybdenum disulfide)",
        low_typical_high: [0.09, 0.11, 0.14],
        cite: RECALLED,
        cite_range: RECALLED,
        note: "",
    },
    NutFactor {
        id: "anti-seize",
        label: "Anti-seize paste",
        low_typical_high: [0.11, 0.12, 0.16],
        cite: SHIGLEY,
        cite_range: RECALLED,
        note: "",
    },
    NutFactor {
        id: "cadmium",
        label: "Cadmium plated, dry",
        low_typical_high: [0.105, 0.16, 0.19],
        cite: SHIGLEY,
        cite_range: Cite::new(
            Source::Ac43_13_1b,
            "Table 7-1, implied at 90 ksi; highest from a maker's page",
            Flag::Computed,
        ),
        note: "",
    },
    NutFactor {
        id: "black",
        label: "Black oxide or mill finish, unplated",
        low_typical_high: [0.18, 0.30, 0.30],
        cite: SHIGLEY,
        cite_range: Cite::new(
            Source::FastenerMakerPage,
            "lowest of dry steel; highest as the typical value",
            Flag::Computed,
        ),
        note: "Shigley's table puts black above zinc; other tables put it below.",
    },
    NutFactor {
        id: "stainless-dry",
        label: "Stainless on stainless, dry",
        low_typical_high: [0.30, 0.40, 0.50],
        cite: MIDDLE,
        cite_range: MAKER,
        note: "Dry stainless threads may seize.",
    },
    NutFactor {
        id: "unknown",
        label: "Not known",
        low_typical_high: [0.10, 0.20, 0.35],
        cite: SHIGLEY,
        cite_range: ENVELOPE,
        note: "",
    },
];

/// All nut factors.
#[must_use]
pub fn nut_factors() -> &'static [NutFactor] {
    &NUT_FACTORS
}

/// The nut factor for the condition with this id.
#[must_use]
pub fn nut_factor(id: &str) -> Option<&'static NutFactor> {
    NUT_FACTORS.iter().find(|row| row.id == id)
}

const STAINLESS_CLASSES: Cite = Cite::new(
    Source::Vdi2230,
    "friction classes of austenitic steel, K = 0.023 + 1.18 μ",
    Flag::ReadSecondHand,
);
const STAINLESS_MIDDLE: Cite = Cite::new(
    Source::Vdi2230,
    "middle of the friction classes of austenitic steel",
    Flag::Computed,
);

const fn stainless(
    id: &'static str,
    label: &'static str,
    low_typical_high: [f64; 3],
    note: &'static str,
) -> NutFactor {
    NutFactor {
        id,
        label,
        low_typical_high,
        cite: STAINLESS_MIDDLE,
        cite_range: STAINLESS_CLASSES,
        note,
    }
}

/// The conditions of the list on stainless threads, where they give another nut factor than on steel.
static ON_STAINLESS: [NutFactor; 5] = [
    stainless(
        "oiled",
        "Stainless, oiled",
        [0.26, 0.35, 0.44],
        "Oil does little for stainless threads: they may still seize.",
    ),
    stainless("waxed-zinc", "Stainless, waxed", [0.12, 0.20, 0.31], ""),
    stainless(
        "moly",
        "Stainless, moly paste (molybdenum disulfide)",
        [0.12, 0.20, 0.31],
        "",
    ),
    stainless(
        "anti-seize",
        "Stainless, anti-seize paste",
        [0.12, 0.20, 0.31],
        "",
    ),
    stainless("unknown", "Stainless, not known", [0.12, 0.30, 0.50], ""),
];

/// The nut factor of a condition on threads of this metal: what is dry on stainless is
/// [`stainless-dry`](nut_factor), whatever its plating would be on steel, and a stainless condition on a steel bolt
/// is plain dry steel.
///
/// # Sources
/// Friction classes of VDI 2230-1 for austenitic steel, read second hand: paste or wax 0.08 to 0.24, oil 0.20 to
/// 0.35, nothing 0.30 and more.
#[must_use]
pub fn nut_factor_on(id: &str, stainless_bolt: bool) -> Option<&'static NutFactor> {
    if !stainless_bolt {
        return nut_factor(if id == "stainless-dry" { "dry" } else { id });
    }
    ON_STAINLESS
        .iter()
        .find(|row| row.id == id)
        .or_else(|| nut_factor(id).and_then(|_| nut_factor("stainless-dry")))
}

/// What was done to a pair of clamped surfaces, as far as it counts beyond their slip coefficient.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Treatment {
    /// Bare metal, at most brushed.
    Bare,
    /// Painted or otherwise coated: a soft layer that creeps under the clamp.
    Coated,
    /// Blast-cleaned.
    Blasted,
}

/// Slip coefficient `μ` that a design document allows for a pair of clamped surfaces.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SlipSurface {
    id: &'static str,
    label: &'static str,
    mu: f64,
    treatment: Treatment,
    cite: Cite,
}

impl SlipSurface {
    /// Id: `bare-clean`, `painted`, `steel-blasted`.
    #[must_use]
    pub const fn id(&self) -> &'static str {
        self.id
    }

    /// Surfaces, for people.
    #[must_use]
    pub const fn label(&self) -> &'static str {
        self.label
    }

    /// Slip coefficient `μ`.
    #[must_use]
    pub const fn mu(&self) -> f64 {
        self.mu
    }

    /// What was done to the surfaces.
    #[must_use]
    pub const fn treatment(&self) -> Treatment {
        self.treatment
    }

    /// Source.
    #[must_use]
    pub const fn cite(&self) -> Cite {
        self.cite
    }
}

const fn surface(id: &'static str, label: &'static str, mu: f64, cite: Cite) -> SlipSurface {
    SlipSurface {
        id,
        label,
        mu,
        treatment: Treatment::Bare,
        cite,
    }
}

impl SlipSurface {
    const fn treated(mut self, treatment: Treatment) -> Self {
        self.treatment = treatment;
        self
    }
}

const NASA: Cite = Cite::new(Source::NasaStd5020b, "TFSR 14", Flag::ReadSecondHand);
const AISC_A: Cite = Cite::new(Source::Aisc360_22, "J3.9, Class A", Flag::Read);
const AISC_B: Cite = Cite::new(Source::Aisc360_22, "J3.9, Class B", Flag::Read);
const EN_1090: Cite = Cite::new(Source::En1090_2, "Table 18", Flag::Read);
const EN_1999: Cite = Cite::new(Source::En1999_1_1, "Table 8.6", Flag::Memory);

static SLIP_SURFACES: [SlipSurface; 12] = [
    surface("bare-clean", "Bare metal, clean and dry", 0.20, NASA),
    surface(
        "painted",
        "Paint, anodizing, grease, anything else",
        0.10,
        NASA,
    )
    .treated(Treatment::Coated),
    surface(
        "steel-mill-scale",
        "Steel on steel, clean mill scale or as galvanized",
        0.30,
        AISC_A,
    ),
    surface(
        "steel-blasted",
        "Steel on steel, blast-cleaned",
        0.50,
        AISC_B,
    )
    .treated(Treatment::Blasted),
    surface(
        "en-a",
        "Steel, blasted, loose rust removed (class A)",
        0.50,
        EN_1090,
    )
    .treated(Treatment::Blasted),
    surface(
        "en-b",
        "Steel, blasted and metallized or alkali-zinc silicate (class B)",
        0.40,
        EN_1090,
    )
    .treated(Treatment::Blasted),
    surface(
        "en-c",
        "Steel, wire-brushed or flame-cleaned (class C)",
        0.30,
        EN_1090,
    ),
    surface("en-d", "Steel, as rolled (class D)", 0.20, EN_1090),
    surface(
        "al-blasted-12",
        "Aluminum, light blast, joint 0.47 to 0.71 in (12 to 18 mm) thick",
        0.27,
        EN_1999,
    )
    .treated(Treatment::Blasted),
    surface(
        "al-blasted-18",
        "Aluminum, light blast, joint 0.71 to 0.94 in (18 to 24 mm) thick",
        0.33,
        EN_1999,
    )
    .treated(Treatment::Blasted),
    surface(
        "al-blasted-24",
        "Aluminum, light blast, joint 0.94 to 1.18 in (24 to 30 mm) thick",
        0.37,
        EN_1999,
    )
    .treated(Treatment::Blasted),
    surface(
        "al-blasted-30",
        "Aluminum, light blast, joint 1.18 in (30 mm) or thicker",
        0.40,
        EN_1999,
    )
    .treated(Treatment::Blasted),
];

/// All slip surfaces.
#[must_use]
pub fn slip_surfaces() -> &'static [SlipSurface] {
    &SLIP_SURFACES
}

/// The slip surface with this id.
#[must_use]
pub fn slip_surface(id: &str) -> Option<&'static SlipSurface> {
    SLIP_SURFACES.iter().find(|row| row.id == id)
}

/// Bare aluminium on anything.
static ALUMINIUM_BARE: SlipSurface = surface(
    "bare-clean",
    "Bare aluminum, clean and dry",
    0.10,
    Cite::new(
        Source::NasaStd5020b,
        "TFSR 14, as surfaces that were not tested; a clamping table gives degreased aluminum 0.08 to 0.15",
        Flag::ReadSecondHand,
    ),
);

/// The row of a surface between faces of these metals, the worst pair: what was found for steel does not carry over to aluminium, nor
/// the classes of carbon steel to stainless.
#[must_use]
pub fn slip_surface_between(id: &str, metals: &[Family]) -> Option<&'static SlipSurface> {
    let row = slip_surface(id)?;
    let of_steel = id.starts_with("steel-") || id.starts_with("en-");
    let any = |family| metals.contains(&family);
    // Found between plies of aluminium, every one of them.
    let elsewhere = id.starts_with("al-") && metals.iter().any(|m| *m != Family::Aluminium);
    Some(
        if any(Family::Aluminium) && (of_steel || elsewhere || id == "bare-clean") {
            &ALUMINIUM_BARE
        } else if elsewhere || (any(Family::Stainless) && of_steel) {
            slip_surface("bare-clean").unwrap_or(row)
        } else {
            row
        },
    )
}

/// The class of blasted aluminium by the thickness of the joint, mm: no better than the thickness gives, bare below the
/// thinnest. Every other surface as [`slip_surface_between`] has it.
///
/// # Sources
/// EN 1999-1-1 Table 8.6.
#[must_use]
pub fn slip_surface_of(
    id: &str,
    metals: &[Family],
    thickness_mm: f64,
) -> Option<&'static SlipSurface> {
    let chosen = slip_surface_between(id, metals)?;
    let Some(class) = thickness_class(chosen.id) else {
        return Some(chosen);
    };
    let reached = SLIP_SURFACES
        .iter()
        .filter_map(|row| Some((thickness_class(row.id)?, row)))
        .filter(|(least, _)| *least <= class.min(thickness_mm + 1e-9))
        .reduce(|a, b| if b.0 > a.0 { b } else { a });
    Some(reached.map_or(&ALUMINIUM_BARE, |(_, row)| row))
}

/// Least thickness of a joint that a class of blasted aluminium is for, mm.
fn thickness_class(id: &str) -> Option<f64> {
    // A whole number: reading any other brings tables of 13 kB into every program.
    id.strip_prefix("al-blasted-")?
        .parse::<u8>()
        .ok()
        .map(f64::from)
}

/// The surface to assume when nothing was tested: `bare-clean`, or `painted` with any coating.
#[must_use]
pub fn default_slip_surface(coated: bool) -> &'static SlipSurface {
    let [bare_clean, painted, ..] = &SLIP_SURFACES;
    if coated { painted } else { bare_clean }
}

/// A friction coefficient that must not be designed with, kept to explain why.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LaboratoryFriction {
    /// Surfaces, for people.
    pub label: &'static str,
    /// Coefficient of friction.
    pub mu: f64,
    /// Source.
    pub cite: Cite,
}

const LABORATORY: Cite = Cite::new(
    Source::FrictionTables,
    "static, clean and dry",
    Flag::ReadSecondHand,
);
const LABORATORY_PAGE: Cite = Cite::new(
    Source::FrictionTables,
    "laboratory page",
    Flag::ReadSecondHand,
);

static NOT_FOR_DESIGN: [LaboratoryFriction; 7] = [
    LaboratoryFriction {
        label: "Aluminum on mild steel, laboratory clean",
        mu: 0.61,
        cite: LABORATORY,
    },
    LaboratoryFriction {
        label: "Aluminum on aluminum, laboratory clean",
        mu: 1.05,
        cite: LABORATORY,
    },
    LaboratoryFriction {
        label: "Aluminum on aluminum, greasy",
        mu: 0.30,
        cite: LABORATORY,
    },
    LaboratoryFriction {
        label: "Mild steel on mild steel, laboratory clean",
        mu: 0.74,
        cite: LABORATORY,
    },
    LaboratoryFriction {
        label: "Steel on steel, thick oxide film",
        mu: 0.27,
        cite: LABORATORY_PAGE,
    },
    LaboratoryFriction {
        label: "Steel on steel, dry, low end of a handbook range",
        mu: 0.15,
        cite: LABORATORY_PAGE,
    },
    LaboratoryFriction {
        label: "Aluminum blasted to a deep profile, tested as a steel class B surface",
        mu: 0.50,
        cite: Cite::new(
            Source::Adm2020,
            "slip coefficient of blasted aluminum",
            Flag::Memory,
        ),
    },
];

/// Friction coefficients from clean laboratory surfaces and the like. Never for a verdict.
#[must_use]
pub fn not_for_design() -> &'static [LaboratoryFriction] {
    &NOT_FOR_DESIGN
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ranges_are_in_order() {
        for row in nut_factors() {
            assert!(
                row.low() <= row.typical() && row.typical() <= row.high(),
                "{}",
                row.id()
            );
        }
    }

    #[test]
    fn untested_surfaces_get_the_low_coefficients() {
        assert_eq!(default_slip_surface(false).id(), "bare-clean");
        assert_eq!(default_slip_surface(true).id(), "painted");
        for row in slip_surfaces() {
            assert!(row.mu() >= default_slip_surface(true).mu(), "{}", row.id());
            assert!(row.mu() <= 0.50, "{}", row.id());
        }
    }
}

//! Bolt grades and property classes.

use uom::si::f64::TemperatureCoefficient;
use uom::si::temperature_coefficient::per_kelvin;

use super::pretension::PretensionGroup;
use super::printed::PrintedStress::{self, Ksi, Mpa};
use super::threads::{System, Thread};
use super::zinc_coat::ZincCoat;
use crate::cite::{Cite, Flag, Source};
use crate::quantity::{InUnits, Length, Stress, mpa};

/// Strengths of a grade at one size.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BoltStrength {
    /// Proof strength. `None` where the standard gives none (A307). For stainless bolts, whose
    /// standards give none either, the 0.2 % proof stress stands in for it.
    pub proof: Option<Stress>,
    /// Yield strength or 0.2 % proof stress; `None` where the standard gives none (A307).
    pub yield_: Option<Stress>,
    /// Tensile strength.
    pub tensile: Stress,
    /// Source.
    pub cite: Cite,
}

/// Strengths over a range of sizes, as printed.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Range {
    /// Least and greatest major diameter, in the unit of the grade's system.
    sizes: [f64; 2],
    /// Greatest length under the head, in the same unit.
    longest: f64,
    proof: Option<PrintedStress>,
    yield_: Option<PrintedStress>,
    tensile: PrintedStress,
    cite: Cite,
}

/// What a bolt is made of, as far as stiffness and temperature go.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Body {
    modulus_gpa: f64,
    expansion_per_kelvin: f64,
    cite_modulus: Cite,
    cite_expansion: Cite,
}

/// How the tables count shear through the threads of a grade.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ThreadShear {
    /// Less than through the shank, by the usual share.
    Usual,
    /// One value, whether threads lie in the shear plane or not: A307, AISC 360-22 Table J3.2.
    OneValue,
    /// 0.6 of the tensile strength: the classes that EN 1993-1-8 Table 3.4 names.
    SixTenths,
}

/// A bolt grade (inch) or property class (metric).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BoltGrade {
    id: &'static str,
    label: &'static str,
    head_mark: &'static str,
    system: System,
    /// Structural bolts are made in a few coarse sizes only.
    structural: Option<PretensionGroup>,
    thread_shear: ThreadShear,
    zinc: ZincCoat,
    ranges: &'static [Range],
    body: Body,
    note: &'static str,
}

impl BoltGrade {
    /// Id: `sae-5`, `a325`, `iso-8.8`, `a2-70`.
    #[must_use]
    pub const fn id(&self) -> &'static str {
        self.id
    }

    /// Name for people.
    #[must_use]
    pub const fn label(&self) -> &'static str {
        self.label
    }

    /// What is stamped on the head, in words.
    #[must_use]
    pub const fn head_mark(&self) -> &'static str {
        self.head_mark
    }

    /// Inch or metric.
    #[must_use]
    pub const fn system(&self) -> System {
        self.system
    }

    /// What to know about the figures; empty if nothing.
    #[must_use]
    pub const fn note(&self) -> &'static str {
        self.note
    }

    /// Strengths of this grade in this thread and this length under the head; `None` if the grade is not made in it.
    #[must_use]
    pub fn strength(&self, thread: &Thread, length: Length) -> Option<BoltStrength> {
        if thread.system() != self.system || (self.structural.is_some() && !structural_size(thread))
        {
            return None;
        }
        let [size, length] = [thread.major(), length].map(|l| l.si() / unit_of(self.system));
        self.ranges
            .iter()
            .find(|range| {
                let [least, greatest] = range.sizes;
                (least - 1e-6..=greatest + 1e-6).contains(&size) && length <= range.longest + 1e-6
            })
            .map(|range| BoltStrength {
                proof: range.proof.map(PrintedStress::stress),
                yield_: range.yield_.map(PrintedStress::stress),
                tensile: range.tensile.stress(),
                cite: range.cite,
            })
    }

    /// Whether the grade is made in this thread.
    #[must_use]
    pub fn fits(&self, thread: &Thread) -> bool {
        self.strength(thread, Length::default()).is_some()
    }

    /// Whether its bolts may be zinc plated or galvanized.
    #[must_use]
    pub const fn zinc_coat(&self) -> ZincCoat {
        self.zinc
    }

    /// Whether the grade may be tightened to a stated preload. A307 may not: AISC 360-22 J3.1.
    #[must_use]
    pub fn may_be_pretensioned(&self) -> bool {
        self.ranges.iter().all(|range| range.proof.is_some())
    }

    /// Source of [`may_be_pretensioned`](Self::may_be_pretensioned).
    pub const PRETENSION_CITE: Cite = Cite::new(Source::Aisc360_22, "J3.1", Flag::Read);

    /// Group of AISC 360-22 Table J3.1 that the grade belongs to.
    #[must_use]
    pub const fn pretension_group(&self) -> Option<PretensionGroup> {
        self.structural
    }

    /// How shear through its threads is counted.
    #[must_use]
    pub const fn thread_shear(&self) -> ThreadShear {
        self.thread_shear
    }

    const fn with_zinc_coat(mut self, zinc: ZincCoat) -> Self {
        self.zinc = zinc;
        self
    }

    const fn with_thread_shear(mut self, thread_shear: ThreadShear) -> Self {
        self.thread_shear = thread_shear;
        self
    }

    /// Whether it is made of austenitic stainless steel.
    #[must_use]
    pub fn stainless(&self) -> bool {
        self.body.modulus_gpa < 200.0
    }

    /// Modulus of elasticity `E`.
    #[must_use]
    pub fn modulus(&self) -> Stress {
        mpa(self.body.modulus_gpa * 1e3)
    }

    /// Source of the modulus.
    #[must_use]
    pub const fn cite_modulus(&self) -> Cite {
        self.body.cite_modulus
    }

    /// Coefficient of linear thermal expansion `α`.
    #[must_use]
    pub fn expansion(&self) -> TemperatureCoefficient {
        TemperatureCoefficient::new::<per_kelvin>(self.body.expansion_per_kelvin)
    }

    /// Source of the expansion coefficient.
    #[must_use]
    pub const fn cite_expansion(&self) -> Cite {
        self.body.cite_expansion
    }
}

fn unit_of(system: System) -> f64 {
    match system {
        System::Inch => 0.0254,
        System::Metric => 1e-3,
    }
}

/// Sizes that structural bolts are made in (from memory; the strength table gives the range only).
const STRUCTURAL_SIZES: [&str; 5] = ["1.2", "5.8", "3.4", "7.8", "1"];

/// Structural bolts have coarse threads.
fn structural_size(thread: &Thread) -> bool {
    !thread.fine() && STRUCTURAL_SIZES.contains(&thread.size())
}

const STEEL: Body = Body {
    modulus_gpa: 207.0,
    expansion_per_kelvin: 11.7e-6,
    cite_modulus: Cite::new(Source::Shigley9e, "Table 8-8", Flag::Read),
    cite_expansion: Cite::new(
        Source::HandbookRecalled,
        "carbon steel, 11.7 to 12",
        Flag::Memory,
    ),
};
const STAINLESS_304: Body = Body {
    modulus_gpa: 193.0,
    expansion_per_kelvin: 17.2e-6,
    cite_modulus: Cite::new(
        Source::HandbookRecalled,
        "austenitic stainless, 193 to 200 GPa",
        Flag::Memory,
    ),
    cite_expansion: Cite::new(Source::HandbookRecalled, "stainless 304", Flag::Memory),
};
const STAINLESS_316: Body = Body {
    expansion_per_kelvin: 16.0e-6,
    cite_expansion: Cite::new(Source::HandbookRecalled, "stainless 316", Flag::Memory),
    ..STAINLESS_304
};

const SAE: Cite = Cite::new(Source::SaeJ429, "strength table", Flag::Read);
const SAE_LONG: Cite = Cite::new(
    Source::SaeJ429,
    "strength table; grade 1 also for grade 2 longer than 6 in",
    Flag::ReadSecondHand,
);
const A307: Cite = Cite::new(Source::AstmA307, "Grade A", Flag::Read);
const F3125: Cite = Cite::new(Source::AstmF3125, "strength table", Flag::Read);
const F593: Cite = Cite::new(Source::AstmF593, "CW1 and CW2", Flag::Memory);
const ISO: Cite = Cite::new(Source::Iso898_1, "Table 3", Flag::ReadSecondHand);
const STAINLESS: Cite = Cite::new(Source::Iso3506_1, "strength table", Flag::ReadSecondHand);

/// Where a table has no limit of length.
const ANY_LENGTH: f64 = f64::MAX;

impl Range {
    const fn up_to(mut self, longest: f64) -> Self {
        self.longest = longest;
        self
    }
}

const fn ksi_range(sizes: [f64; 2], proof: f64, yield_: f64, tensile: f64, cite: Cite) -> Range {
    Range {
        sizes,
        longest: ANY_LENGTH,
        proof: Some(Ksi(proof)),
        yield_: Some(Ksi(yield_)),
        tensile: Ksi(tensile),
        cite,
    }
}

const fn mpa_range(sizes: [f64; 2], proof: f64, yield_: f64, tensile: f64, cite: Cite) -> Range {
    Range {
        sizes,
        longest: ANY_LENGTH,
        proof: Some(Mpa(proof)),
        yield_: Some(Mpa(yield_)),
        tensile: Mpa(tensile),
        cite,
    }
}

const fn inch_grade(
    id: &'static str,
    label: &'static str,
    head_mark: &'static str,
    ranges: &'static [Range],
    note: &'static str,
) -> BoltGrade {
    BoltGrade {
        id,
        label,
        head_mark,
        system: System::Inch,
        structural: None,
        thread_shear: ThreadShear::Usual,
        zinc: ZincCoat::Usual,
        ranges,
        body: STEEL,
        note,
    }
}

const fn structural(
    id: &'static str,
    label: &'static str,
    head_mark: &'static str,
    ranges: &'static [Range],
    group: PretensionGroup,
) -> BoltGrade {
    let mut grade = inch_grade(id, label, head_mark, ranges, STRUCTURAL_NOTE);
    grade.structural = Some(group);
    grade
}

const fn class(
    id: &'static str,
    label: &'static str,
    head_mark: &'static str,
    ranges: &'static [Range],
    body: Body,
    note: &'static str,
) -> BoltGrade {
    BoltGrade {
        id,
        label,
        head_mark,
        system: System::Metric,
        structural: None,
        thread_shear: ThreadShear::Usual,
        zinc: ZincCoat::Usual,
        ranges,
        body,
        note,
    }
}

const STRUCTURAL_NOTE: &str = "Heavy hex head, larger than the hexagon listed with the thread.";
const STAINLESS_NOTE: &str = "No proof strength in the standard: its 0.2 % proof stress is used. Above M20 older editions allow less, so the grade is listed to M20 only; they also stop at a length of eight diameters (from memory).";

static BOLT_GRADES: [BoltGrade; 20] = [
    inch_grade(
        "sae-2",
        "SAE Grade 2",
        "no mark",
        &[
            ksi_range([0.25, 0.75], 55.0, 57.0, 74.0, SAE).up_to(6.0),
            ksi_range([0.25, 1.5], 33.0, 36.0, 60.0, SAE_LONG),
        ],
        "The higher row, up to 3/4 in, is for bolts up to 6 in long; longer ones have the strength of Grade 1.",
    ),
    inch_grade(
        "sae-5",
        "SAE Grade 5",
        "3 radial lines",
        &[
            ksi_range([0.25, 1.0], 85.0, 92.0, 120.0, SAE),
            ksi_range([1.0, 1.5], 74.0, 81.0, 105.0, SAE),
        ],
        "",
    ),
    inch_grade(
        "sae-8",
        "SAE Grade 8",
        "6 radial lines",
        &[ksi_range([0.25, 1.5], 120.0, 130.0, 150.0, SAE)],
        "",
    )
    .with_zinc_coat(ZincCoat::WithCare),
    inch_grade(
        "a307",
        "ASTM A307 Grade A",
        "307A",
        &[Range {
            sizes: [0.25, 4.0],
            longest: ANY_LENGTH,
            proof: None,
            yield_: None,
            tensile: Ksi(60.0),
            cite: A307,
        }],
        "Must not be used where a preload is specified.",
    )
    .with_thread_shear(ThreadShear::OneValue),
    structural(
        "a325",
        "ASTM F3125 Grade A325",
        "A325",
        &[ksi_range([0.5, 1.0], 85.0, 92.0, 120.0, F3125)],
        PretensionGroup::Group120,
    ),
    structural(
        "a490",
        "ASTM F3125 Grade A490",
        "A490",
        &[ksi_range([0.5, 1.5], 120.0, 130.0, 150.0, F3125)],
        PretensionGroup::Group150,
    )
    .with_zinc_coat(ZincCoat::Never),
    class(
        "iso-4.6",
        "Class 4.6",
        "4.6",
        &[mpa_range([1.6, 39.0], 225.0, 240.0, 400.0, ISO)],
        STEEL,
        "",
    )
    .with_thread_shear(ThreadShear::SixTenths),
    class(
        "iso-4.8",
        "Class 4.8",
        "4.8",
        &[mpa_range([1.6, 16.0], 310.0, 340.0, 420.0, ISO)],
        STEEL,
        "",
    ),
    class(
        "iso-5.6",
        "Class 5.6",
        "5.6",
        &[mpa_range([1.6, 39.0], 280.0, 300.0, 500.0, ISO)],
        STEEL,
        "",
    )
    .with_thread_shear(ThreadShear::SixTenths),
    class(
        "iso-5.8",
        "Class 5.8",
        "5.8",
        &[mpa_range([1.6, 39.0], 380.0, 420.0, 520.0, ISO)],
        STEEL,
        "A supplier lists its yield as 400 MPa, the nominal value; the standard's least is 420.",
    ),
    class(
        "iso-6.8",
        "Class 6.8",
        "6.8",
        &[mpa_range([1.6, 39.0], 440.0, 480.0, 600.0, ISO)],
        STEEL,
        "",
    ),
    class(
        "iso-8.8",
        "Class 8.8",
        "8.8",
        &[
            mpa_range([1.6, 16.0], 580.0, 640.0, 800.0, ISO),
            mpa_range([16.0, 39.0], 600.0, 660.0, 830.0, ISO),
        ],
        STEEL,
        "",
    )
    .with_thread_shear(ThreadShear::SixTenths),
    class(
        "iso-9.8",
        "Class 9.8",
        "9.8",
        &[mpa_range([1.6, 16.0], 650.0, 720.0, 900.0, ISO)],
        STEEL,
        "",
    ),
    class(
        "iso-10.9",
        "Class 10.9",
        "10.9",
        &[mpa_range([1.6, 39.0], 830.0, 940.0, 1040.0, ISO)],
        STEEL,
        "",
    )
    .with_zinc_coat(ZincCoat::WithCare),
    class(
        "iso-12.9",
        "Class 12.9",
        "12.9",
        &[mpa_range([1.6, 39.0], 970.0, 1100.0, 1220.0, ISO)],
        STEEL,
        "",
    )
    .with_zinc_coat(ZincCoat::Baked),
    class(
        "a2-70",
        "Stainless A2-70",
        "A2-70",
        &[mpa_range([1.6, 20.0], 450.0, 450.0, 700.0, STAINLESS)],
        STAINLESS_304,
        STAINLESS_NOTE,
    ),
    class(
        "a2-80",
        "Stainless A2-80",
        "A2-80",
        &[mpa_range([1.6, 20.0], 600.0, 600.0, 800.0, STAINLESS)],
        STAINLESS_304,
        STAINLESS_NOTE,
    ),
    class(
        "a4-70",
        "Stainless A4-70",
        "A4-70",
        &[mpa_range([1.6, 20.0], 450.0, 450.0, 700.0, STAINLESS)],
        STAINLESS_316,
        STAINLESS_NOTE,
    ),
    class(
        "a4-80",
        "Stainless A4-80",
        "A4-80",
        &[mpa_range([1.6, 20.0], 600.0, 600.0, 800.0, STAINLESS)],
        STAINLESS_316,
        STAINLESS_NOTE,
    ),
    BoltGrade {
        body: STAINLESS_304,
        ..inch_grade(
            "f593-cw",
            "ASTM F593 stainless, cold worked",
            "F593C or F593G to 5/8 in, F593D or F593H above",
            &[
                ksi_range([0.25, 0.625], 65.0, 65.0, 100.0, F593),
                ksi_range([0.75, 1.5], 45.0, 45.0, 85.0, F593),
            ],
            "No proof strength in the standard: its 0.2 % proof stress is used.",
        )
    },
];

/// All bolt grades: inch, then metric, then stainless.
#[must_use]
pub fn bolt_grades() -> &'static [BoltGrade] {
    &BOLT_GRADES
}

/// The bolt grade with this id.
#[must_use]
pub fn bolt_grade(id: &str) -> Option<&'static BoltGrade> {
    BOLT_GRADES.iter().find(|grade| grade.id == id)
}

#[cfg(test)]
mod tests;

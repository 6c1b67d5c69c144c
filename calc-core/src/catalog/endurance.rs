//! What bolts and details endure under loads that come and go.

use super::bolts::BoltGrade;
use super::material::Family;
use super::printed::PrintedStress::{self, Ksi, Mpa};
use super::threads::{System, Thread};
use crate::cite::{Cite, Flag, Source};
use crate::quantity::{InUnits, Stress, inch, mm};

/// Endurance strength of a bolt grade in a range of sizes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BoltEndurance {
    grade: &'static str,
    system: System,
    sizes: [f64; 2],
    stress: PrintedStress,
}

impl BoltEndurance {
    /// Source of all rows.
    pub const CITE: Cite = Cite::new(Source::Shigley9e, "Table 8-17", Flag::Read);

    /// Id of the bolt grade.
    #[must_use]
    pub const fn grade(&self) -> &'static str {
        self.grade
    }

    /// Fully corrected endurance strength `S_e`, rolled threads, repeated axial load.
    #[must_use]
    pub fn stress(&self) -> Stress {
        self.stress.stress()
    }
}

const fn inch_row(grade: &'static str, sizes: [f64; 2], ksi: f64) -> BoltEndurance {
    BoltEndurance {
        grade,
        system: System::Inch,
        sizes,
        stress: Ksi(ksi),
    }
}

const fn metric_row(grade: &'static str, sizes: [f64; 2], mpa: f64) -> BoltEndurance {
    BoltEndurance {
        grade,
        system: System::Metric,
        sizes,
        stress: Mpa(mpa),
    }
}

// SAE 7 (20.6 ksi) is in the printed table but not among the bolt grades here.
static BOLTS: [BoltEndurance; 7] = [
    inch_row("sae-5", [0.25, 1.0], 18.6),
    inch_row("sae-5", [1.125, 1.5], 16.3),
    inch_row("sae-8", [0.25, 1.5], 23.2),
    metric_row("iso-8.8", [16.0, 36.0], 129.0),
    metric_row("iso-9.8", [1.6, 16.0], 140.0),
    metric_row("iso-10.9", [5.0, 36.0], 162.0),
    metric_row("iso-12.9", [1.6, 36.0], 190.0),
];

/// Endurance strength of a grade in a thread; `None` where the table has none.
#[must_use]
pub fn bolt_endurance(grade: &BoltGrade, thread: &Thread) -> Option<&'static BoltEndurance> {
    BOLTS.iter().find(|row| {
        let unit = match row.system {
            System::Inch => inch(1.0).si(),
            System::Metric => mm(1.0).si(),
        };
        let size = thread.major().si() / unit;
        let [least, greatest] = row.sizes;
        row.grade == grade.id()
            && row.system == thread.system()
            && (least - 1e-6..=greatest + 1e-6).contains(&size)
    })
}

/// What kind of place a fatigue category is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, serde::Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Detail {
    /// Bolt in tension, on its stress area.
    Bolt,
    /// Open hole without a bolt, or with one that does not clamp.
    OpenHole,
    /// Hole with a bolt that clamps.
    ClampedHole,
    /// Lap joint that carries by friction.
    FrictionLap,
    /// Sleeve or other attachment welded on by fillets.
    WeldedAttachment,
    /// The metal itself, away from any hole.
    Plain,
}

/// How a category is printed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Category {
    /// Constant `C_f` and threshold in ksi of `F_SR = 1000·(C_f/N)^0.333`.
    Constant {
        /// `C_f`.
        constant: f64,
        /// Threshold, ksi.
        threshold_ksi: f64,
    },
    /// Range at two million cycles in MPa and slope.
    Named {
        /// Range, MPa.
        mpa: f64,
        /// Slope `m`.
        slope: f64,
    },
}

/// A fatigue category with its source.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FatigueCategory {
    /// Id: `aisc-c`, `al-practice-c`.
    pub id: &'static str,
    /// Where it applies.
    pub detail: Detail,
    /// Metal; bolts count as steel.
    pub family: Family,
    /// As printed.
    pub category: Category,
    /// Factor on all stresses: 1, or what turns a steel category into one for aluminium.
    pub factor: f64,
    /// Source.
    pub cite: Cite,
}

/// Share of a steel category that aluminium endures.
pub const ALUMINIUM_SHARE: f64 = 0.4;

const fn steel(
    id: &'static str,
    detail: Detail,
    [constant, threshold_ksi]: [f64; 2],
    cite: Cite,
) -> FatigueCategory {
    FatigueCategory {
        id,
        detail,
        family: Family::Steel,
        category: Category::Constant {
            constant,
            threshold_ksi,
        },
        factor: 1.0,
        cite,
    }
}

const fn aluminium(id: &'static str, from: FatigueCategory) -> FatigueCategory {
    FatigueCategory {
        id,
        family: Family::Aluminium,
        factor: ALUMINIUM_SHARE,
        cite: Cite::new(
            Source::TradePractice,
            "0.4 of the steel category",
            Flag::Practice,
        ),
        ..from
    }
}

const fn named(
    id: &'static str,
    detail: Detail,
    [mpa, slope]: [f64; 2],
    cite: Cite,
) -> FatigueCategory {
    FatigueCategory {
        id,
        detail,
        family: Family::Aluminium,
        category: Category::Named { mpa, slope },
        factor: 1.0,
        cite,
    }
}

const BOLT: FatigueCategory = steel(
    "aisc-g",
    Detail::Bolt,
    [0.39, 7.0],
    Cite::new(Source::Aisc360_22, "Appendix 3, 8.5", Flag::Read),
);
const OPEN: FatigueCategory = steel(
    "aisc-d",
    Detail::OpenHole,
    [2.2, 7.0],
    Cite::new(
        Source::Aisc360_22,
        "Appendix 3, 1.5 (open hole)",
        Flag::Read,
    ),
);
const CLAMPED: FatigueCategory = steel(
    "aisc-c",
    Detail::ClampedHole,
    [4.4, 10.0],
    Cite::new(
        Source::Aisc360_22,
        "Appendix 3, 1.5 (pretensioned bolt)",
        Flag::Read,
    ),
);
const LAP: FatigueCategory = steel(
    "aisc-b",
    Detail::FrictionLap,
    [12.0, 16.0],
    Cite::new(Source::Aisc360_22, "Appendix 3, 2.1", Flag::Read),
);
const WELDED: FatigueCategory = steel(
    "aisc-e",
    Detail::WeldedAttachment,
    [1.1, 4.5],
    Cite::new(
        Source::HandbookRecalled,
        "category E of welded attachments",
        Flag::Memory,
    ),
);
const PLAIN: FatigueCategory = steel(
    "aisc-a",
    Detail::Plain,
    [25.0, 24.0],
    Cite::new(Source::Aisc360_22, "Appendix 3, 1.1", Flag::Read),
);

static CATEGORIES: [FatigueCategory; 13] = [
    BOLT,
    OPEN,
    CLAMPED,
    LAP,
    WELDED,
    PLAIN,
    aluminium("al-practice-d", OPEN),
    aluminium("al-practice-c", CLAMPED),
    aluminium("al-practice-b", LAP),
    aluminium("al-practice-e", WELDED),
    named(
        "iiw-fat-70",
        Detail::Plain,
        [70.0, 5.0],
        Cite::new(Source::IiwFitnet, "parent 5xxx and 6xxx", Flag::Read),
    ),
    named(
        "en-1999-1-3-56",
        Detail::FrictionLap,
        [56.0, 4.0],
        Cite::new(
            Source::HandbookRecalled,
            "preloaded bolted lap, aluminum, 56-4",
            Flag::Memory,
        ),
    ),
    named(
        "iiw-fat-12",
        Detail::WeldedAttachment,
        [12.0, 3.0],
        Cite::new(
            Source::HandbookRecalled,
            "lowest of FAT 12 to 36, fillet-welded aluminum attachments",
            Flag::Memory,
        ),
    ),
];

/// All fatigue categories: bolt, steel, aluminium.
#[must_use]
pub fn fatigue_categories() -> &'static [FatigueCategory] {
    &CATEGORIES
}

/// The fatigue category with this id.
#[must_use]
pub fn fatigue_category(id: &str) -> Option<&'static FatigueCategory> {
    CATEGORIES.iter().find(|row| row.id == id)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalog::{bolt_grade, thread};

    #[test]
    fn rows_are_for_grades_and_sizes_that_exist() {
        for row in &BOLTS {
            assert!(bolt_grade(row.grade()).is_some(), "{}", row.grade());
        }
        let at = |grade, id| {
            bolt_endurance(bolt_grade(grade).unwrap(), thread(id).unwrap())
                .map(BoltEndurance::stress)
        };
        assert_eq!(at("sae-5", "unc-1.2"), Some(crate::quantity::ksi(18.6)));
        assert_eq!(at("iso-8.8", "m12"), None);
        assert_eq!(at("iso-8.8", "m16"), Some(crate::quantity::mpa(129.0)));
        assert_eq!(at("a307", "unc-1.2"), None);
    }

    #[test]
    fn ids_are_unique() {
        let mut ids: Vec<_> = CATEGORIES.iter().map(|row| row.id).collect();
        ids.sort_unstable();
        ids.dedup();
        assert_eq!(ids.len(), CATEGORIES.len());
    }
}

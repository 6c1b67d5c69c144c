//! Plain washers.

use super::printed::PrintedLength::{self, Inch, Mm};
use super::threads::Thread;
use crate::cite::{Cite, Flag, Source};
use crate::quantity::Length;

/// Series of a plain washer.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum WasherSeries {
    /// Inch Type A series N, sold as SAE; metric ISO 7089.
    Narrow,
    /// Inch Type A series W, sold as USS; metric ISO 7093, sold as fender or mudguard washer.
    Wide,
}

impl WasherSeries {
    /// Both series.
    pub const ALL: [Self; 2] = [Self::Narrow, Self::Wide];

    /// Id: `narrow`, `wide`.
    #[must_use]
    pub const fn id(self) -> &'static str {
        match self {
            Self::Narrow => "narrow",
            Self::Wide => "wide",
        }
    }

    /// The series with this id.
    #[must_use]
    pub fn from_id(id: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|series| series.id() == id)
    }
}

/// A plain washer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Washer {
    id: &'static str,
    label: &'static str,
    size: &'static str,
    series: WasherSeries,
    inner: PrintedLength,
    outer: PrintedLength,
    thickness: PrintedLength,
    thickness_min: PrintedLength,
    cite: Cite,
    cite_thickness_min: Cite,
}

impl Washer {
    /// Id: `1.2-narrow`, `m12-wide`.
    #[must_use]
    pub const fn id(&self) -> &'static str {
        self.id
    }

    /// Name for people.
    #[must_use]
    pub const fn label(&self) -> &'static str {
        self.label
    }

    /// Nominal size of the bolt it goes on, as [`Thread::size`].
    #[must_use]
    pub const fn size(&self) -> &'static str {
        self.size
    }

    /// Narrow or wide.
    #[must_use]
    pub const fn series(&self) -> WasherSeries {
        self.series
    }

    /// Diameter of the hole.
    #[must_use]
    pub fn inner(&self) -> Length {
        self.inner.length()
    }

    /// Outside diameter.
    #[must_use]
    pub fn outer(&self) -> Length {
        self.outer.length()
    }

    /// Nominal thickness.
    #[must_use]
    pub fn thickness_nominal(&self) -> Length {
        self.thickness.length()
    }

    /// Smallest thickness within the tolerance: the one to count when the washer must bend.
    #[must_use]
    pub fn thickness_min(&self) -> Length {
        self.thickness_min.length()
    }

    /// Source of the diameters and the nominal thickness.
    #[must_use]
    pub const fn cite(&self) -> Cite {
        self.cite
    }

    /// Source of the smallest thickness.
    #[must_use]
    pub const fn cite_thickness_min(&self) -> Cite {
        self.cite_thickness_min
    }
}

const HANDBOOK: Cite = Cite::new(
    Source::Machinery31e,
    "p. 1694, Table 1a",
    Flag::ReadSecondHand,
);
const DISTRIBUTOR: Cite = Cite::new(Source::AsmeB18_21_1, "Type A", Flag::ReadSecondHand);
const RECALLED: Cite = Cite::new(Source::AsmeB18_21_1, "Type A", Flag::Memory);
const MIN_READ: Cite = Cite::new(
    Source::Machinery31e,
    "p. 1694, Table 1a, thickness 0.074 to 0.121",
    Flag::ReadSecondHand,
);
const MIN_RECALLED: Cite = Cite::new(Source::AsmeB18_21_1, "Type A, thickness min", Flag::Memory);
const ISO_7089: Cite = Cite::new(
    Source::Iso7089,
    "d1, d2; h nominal from memory",
    Flag::ReadSecondHand,
);
const ISO_7093: Cite = Cite::new(
    Source::Iso7093,
    "d1, d2; h nominal from memory",
    Flag::ReadSecondHand,
);
const MIN_7089: Cite = Cite::new(Source::Iso7089, "2 h − h max", Flag::Computed);
const MIN_7093: Cite = Cite::new(Source::Iso7093, "2 h − h max", Flag::Computed);

const fn narrow(
    id: &'static str,
    label: &'static str,
    size: &'static str,
    diameters_in: [f64; 2],
    thickness_in: [f64; 2],
    cite: Cite,
) -> Washer {
    Washer {
        id,
        label,
        size,
        series: WasherSeries::Narrow,
        inner: Inch(diameters_in[0]),
        outer: Inch(diameters_in[1]),
        thickness: Inch(thickness_in[0]),
        thickness_min: Inch(thickness_in[1]),
        cite,
        cite_thickness_min: MIN_RECALLED,
    }
}

const fn wide(
    id: &'static str,
    label: &'static str,
    size: &'static str,
    diameters_in: [f64; 2],
    thickness_in: [f64; 2],
    cite: Cite,
) -> Washer {
    let mut washer = narrow(id, label, size, diameters_in, thickness_in, cite);
    washer.series = WasherSeries::Wide;
    washer
}

/// The tolerance lies evenly on both sides of the nominal thickness, so `h min = 2 h − h max`.
const fn metric(
    id: &'static str,
    label: &'static str,
    size: &'static str,
    series: WasherSeries,
    diameters_mm: [f64; 2],
    thickness_mm: [f64; 2],
) -> Washer {
    let (cite, cite_thickness_min) = match series {
        WasherSeries::Narrow => (ISO_7089, MIN_7089),
        WasherSeries::Wide => (ISO_7093, MIN_7093),
    };
    Washer {
        id,
        label,
        size,
        series,
        inner: Mm(diameters_mm[0]),
        outer: Mm(diameters_mm[1]),
        thickness: Mm(thickness_mm[0]),
        thickness_min: Mm(2.0 * thickness_mm[0] - thickness_mm[1]),
        cite,
        cite_thickness_min,
    }
}

use WasherSeries::{Narrow, Wide};

// Diameters: hole, outside. Thickness: nominal and least (inch), nominal and greatest (metric).
// The M20 and M24 wide washers have the larger hole of product grade C; grade A has 21 and 25 mm (from
// memory), which leaves more face to bear on.
static WASHERS: [Washer; 36] = [
    narrow(
        "1.4-narrow",
        "1/4 SAE",
        "1.4",
        [0.281, 0.625],
        [0.065, 0.051],
        HANDBOOK,
    ),
    wide(
        "1.4-wide",
        "1/4 USS",
        "1.4",
        [0.312, 0.734],
        [0.065, 0.051],
        HANDBOOK,
    ),
    narrow(
        "5.16-narrow",
        "5/16 SAE",
        "5.16",
        [0.344, 0.688],
        [0.065, 0.051],
        HANDBOOK,
    ),
    wide(
        "5.16-wide",
        "5/16 USS",
        "5.16",
        [0.375, 0.875],
        [0.083, 0.064],
        HANDBOOK,
    ),
    narrow(
        "3.8-narrow",
        "3/8 SAE",
        "3.8",
        [0.406, 0.812],
        [0.065, 0.051],
        HANDBOOK,
    ),
    wide(
        "3.8-wide",
        "3/8 USS",
        "3.8",
        [0.438, 1.0],
        [0.083, 0.064],
        HANDBOOK,
    ),
    narrow(
        "7.16-narrow",
        "7/16 SAE",
        "7.16",
        [0.469, 0.922],
        [0.065, 0.051],
        HANDBOOK,
    ),
    wide(
        "7.16-wide",
        "7/16 USS",
        "7.16",
        [0.5, 1.25],
        [0.083, 0.064],
        HANDBOOK,
    ),
    Washer {
        cite_thickness_min: MIN_READ,
        ..narrow(
            "1.2-narrow",
            "1/2 SAE",
            "1.2",
            [0.531, 1.062],
            [0.095, 0.074],
            HANDBOOK,
        )
    },
    wide(
        "1.2-wide",
        "1/2 USS",
        "1.2",
        [0.562, 1.375],
        [0.109, 0.086],
        HANDBOOK,
    ),
    narrow(
        "9.16-narrow",
        "9/16 SAE",
        "9.16",
        [0.594, 1.156],
        [0.095, 0.074],
        HANDBOOK,
    ),
    wide(
        "9.16-wide",
        "9/16 USS",
        "9.16",
        [0.625, 1.469],
        [0.109, 0.086],
        HANDBOOK,
    ),
    narrow(
        "5.8-narrow",
        "5/8 SAE",
        "5.8",
        [0.656, 1.312],
        [0.095, 0.074],
        HANDBOOK,
    ),
    wide(
        "5.8-wide",
        "5/8 USS",
        "5.8",
        [0.688, 1.75],
        [0.134, 0.108],
        HANDBOOK,
    ),
    narrow(
        "3.4-narrow",
        "3/4 SAE",
        "3.4",
        [0.812, 1.469],
        [0.134, 0.108],
        HANDBOOK,
    ),
    wide(
        "3.4-wide",
        "3/4 USS",
        "3.4",
        [0.812, 2.0],
        [0.148, 0.122],
        DISTRIBUTOR,
    ),
    narrow(
        "7.8-narrow",
        "7/8 SAE",
        "7.8",
        [0.938, 1.75],
        [0.134, 0.108],
        DISTRIBUTOR,
    ),
    wide(
        "7.8-wide",
        "7/8 USS",
        "7.8",
        [0.938, 2.25],
        [0.165, 0.136],
        RECALLED,
    ),
    narrow(
        "1-narrow",
        "1 in SAE",
        "1",
        [1.062, 2.0],
        [0.134, 0.108],
        RECALLED,
    ),
    wide(
        "1-wide",
        "1 in USS",
        "1",
        [1.062, 2.5],
        [0.165, 0.136],
        RECALLED,
    ),
    metric(
        "m6-narrow",
        "M6 ISO 7089",
        "m6",
        Narrow,
        [6.4, 12.0],
        [1.6, 1.8],
    ),
    metric(
        "m6-wide",
        "M6 ISO 7093",
        "m6",
        Wide,
        [6.4, 18.0],
        [1.6, 1.8],
    ),
    metric(
        "m8-narrow",
        "M8 ISO 7089",
        "m8",
        Narrow,
        [8.4, 16.0],
        [1.6, 1.8],
    ),
    metric(
        "m8-wide",
        "M8 ISO 7093",
        "m8",
        Wide,
        [8.4, 24.0],
        [2.0, 2.2],
    ),
    metric(
        "m10-narrow",
        "M10 ISO 7089",
        "m10",
        Narrow,
        [10.5, 20.0],
        [2.0, 2.2],
    ),
    metric(
        "m10-wide",
        "M10 ISO 7093",
        "m10",
        Wide,
        [10.5, 30.0],
        [2.5, 2.7],
    ),
    metric(
        "m12-narrow",
        "M12 ISO 7089",
        "m12",
        Narrow,
        [13.0, 24.0],
        [2.5, 2.7],
    ),
    metric(
        "m12-wide",
        "M12 ISO 7093",
        "m12",
        Wide,
        [13.0, 37.0],
        [3.0, 3.3],
    ),
    metric(
        "m14-narrow",
        "M14 ISO 7089",
        "m14",
        Narrow,
        [15.0, 28.0],
        [2.5, 2.7],
    ),
    metric(
        "m14-wide",
        "M14 ISO 7093",
        "m14",
        Wide,
        [15.0, 44.0],
        [3.0, 3.3],
    ),
    metric(
        "m16-narrow",
        "M16 ISO 7089",
        "m16",
        Narrow,
        [17.0, 30.0],
        [3.0, 3.3],
    ),
    metric(
        "m16-wide",
        "M16 ISO 7093",
        "m16",
        Wide,
        [17.0, 50.0],
        [3.0, 3.3],
    ),
    metric(
        "m20-narrow",
        "M20 ISO 7089",
        "m20",
        Narrow,
        [21.0, 37.0],
        [3.0, 3.3],
    ),
    metric(
        "m20-wide",
        "M20 ISO 7093",
        "m20",
        Wide,
        [22.0, 60.0],
        [4.0, 4.6],
    ),
    metric(
        "m24-narrow",
        "M24 ISO 7089",
        "m24",
        Narrow,
        [25.0, 44.0],
        [4.0, 4.3],
    ),
    metric(
        "m24-wide",
        "M24 ISO 7093",
        "m24",
        Wide,
        [26.0, 72.0],
        [5.0, 6.0],
    ),
];

/// All washers.
#[must_use]
pub fn washers() -> &'static [Washer] {
    &WASHERS
}

/// The washer of this series for this thread; `None` for M18 and M22, which the tables leave out.
#[must_use]
pub fn washer(thread: &Thread, series: WasherSeries) -> Option<&'static Washer> {
    WASHERS
        .iter()
        .find(|washer| washer.size == thread.size() && washer.series == series)
}

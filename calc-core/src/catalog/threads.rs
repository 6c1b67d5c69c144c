//! Screw threads: unified inch and ISO metric coarse.

use core::f64::consts::PI;

use super::hex::{self, Hex};
use crate::cite::{Cite, Flag, Source};
use crate::quantity::{Area, InUnits, Length, inch, mm, mm2};

/// System of units that a thread is made to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, serde::Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum System {
    /// Unified inch thread.
    Inch,
    /// ISO metric thread.
    Metric,
}

/// What the table prints for a thread.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Printed {
    Inch {
        major_in: f64,
        threads_per_inch: f64,
        stress_area_in2: Option<f64>,
    },
    Metric {
        major_mm: f64,
        pitch_mm: f64,
        stress_area_mm2: f64,
    },
}

/// A screw thread with the hexagon head and nut that go with it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Thread {
    id: &'static str,
    label: &'static str,
    size: &'static str,
    fine: bool,
    printed: Printed,
    hex: Hex,
    cite: Cite,
}

impl Thread {
    /// Id: `unc-1.2` (the dot stands for the slash), `unf-1.2`, `m12`.
    #[must_use]
    pub const fn id(&self) -> &'static str {
        self.id
    }

    /// Name for people: `1/2-13 UNC`, `M12`.
    #[must_use]
    pub const fn label(&self) -> &'static str {
        self.label
    }

    /// Nominal size, the same for coarse and fine: `1.2`, `m12`. Washers and holes go by it.
    #[must_use]
    pub const fn size(&self) -> &'static str {
        self.size
    }

    /// Source of the thread dimensions.
    #[must_use]
    pub const fn cite(&self) -> Cite {
        self.cite
    }

    /// Inch or metric.
    #[must_use]
    pub const fn system(&self) -> System {
        match self.printed {
            Printed::Inch { .. } => System::Inch,
            Printed::Metric { .. } => System::Metric,
        }
    }

    /// Whether the pitch is finer than the coarse series of the same size.
    #[must_use]
    pub const fn fine(&self) -> bool {
        self.fine
    }

    /// Head and nut.
    #[must_use]
    pub const fn hex(&self) -> &Hex {
        &self.hex
    }

    /// Major (nominal) diameter `d`.
    #[must_use]
    pub fn major(&self) -> Length {
        match self.printed {
            Printed::Inch { major_in, .. } => inch(major_in),
            Printed::Metric { major_mm, .. } => mm(major_mm),
        }
    }

    /// Pitch `p`.
    #[must_use]
    pub fn pitch(&self) -> Length {
        match self.printed {
            Printed::Inch {
                threads_per_inch, ..
            } => inch(1.0 / threads_per_inch),
            Printed::Metric { pitch_mm, .. } => mm(pitch_mm),
        }
    }

    /// Pitch diameter: `d₂ = d − 0.649 519 p`, basic profile of both systems.
    #[must_use]
    pub fn pitch_diameter(&self) -> Length {
        self.major() - 0.649_519 * self.pitch()
    }

    /// Minor diameter of the bolt thread.
    ///
    /// Inch: `d − 1.299 038 p` (Shigley Table 8-2). Metric: `d₃ = d − 1.226 869 p` (ISO 898-1).
    #[must_use]
    pub fn minor_diameter(&self) -> Length {
        let depth = match self.system() {
            System::Inch => 1.299_038,
            System::Metric => 1.226_869,
        };
        self.major() - depth * self.pitch()
    }

    /// Tensile stress area from its formula.
    ///
    /// Inch (ASME B1.1): `A = π/4 (d − 0.9743 p)²`. Metric (ISO 898-1): `A = π/4 ((d₂ + d₃)/2)²`.
    /// Within one unit of the last figure that the tables print.
    #[must_use]
    pub fn stress_area(&self) -> Area {
        let diameter = match self.system() {
            System::Inch => self.major() - 0.9743 * self.pitch(),
            System::Metric => 0.5 * (self.pitch_diameter() + self.minor_diameter()),
        };
        0.25 * PI * diameter * diameter
    }

    /// Tensile stress area as the table prints it; `None` for 1-14 UNS, which the table leaves out.
    #[must_use]
    pub fn tabulated_stress_area(&self) -> Option<Area> {
        match self.printed {
            Printed::Inch {
                stress_area_in2, ..
            } => stress_area_in2.map(|area| area * inch(1.0) * inch(1.0)),
            Printed::Metric {
                stress_area_mm2, ..
            } => Some(mm2(stress_area_mm2)),
        }
    }

    /// Area across the unthreaded shank, `π d²/4`.
    #[must_use]
    pub fn shank_area(&self) -> Area {
        0.25 * PI * self.major() * self.major()
    }

    /// Threaded length of a standard hexagon bolt of length `bolt`, measured under the head.
    ///
    /// Shigley Table 8-7. Inch: `2d + 1/4 in` up to 6 in, `2d + 1/2 in` beyond. Metric (d ≤ 48 mm):
    /// `2d + 6 mm` up to 125 mm, `2d + 12 mm` up to 200 mm, `2d + 25 mm` beyond. A bolt shorter than
    /// that is threaded over its whole length.
    #[must_use]
    pub fn thread_length(&self, bolt: Length) -> Length {
        // A length typed as 6 in must not fall beyond the limit by a rounding error.
        let up_to = |limit: Length| bolt.si() <= limit.si() * (1.0 + 1e-9);
        let beyond = match self.system() {
            System::Inch if up_to(inch(6.0)) => inch(0.25),
            System::Inch => inch(0.5),
            System::Metric if up_to(mm(125.0)) => mm(6.0),
            System::Metric if up_to(mm(200.0)) => mm(12.0),
            System::Metric => mm(25.0),
        };
        let threaded = 2.0 * self.major() + beyond;
        if threaded < bolt { threaded } else { bolt }
    }

    /// Source of [`thread_length`](Self::thread_length).
    pub const THREAD_LENGTH_CITE: Cite = Cite::new(Source::Shigley9e, "Table 8-7", Flag::Read);

    /// Width across the flats of the head, see [`Hex::width_across_flats`].
    #[must_use]
    pub fn width_across_flats(&self) -> Length {
        self.hex.width_across_flats()
    }

    /// Height of the head, see [`Hex::head_height`].
    #[must_use]
    pub fn head_height(&self) -> Length {
        self.hex.head_height()
    }

    /// Height of the plain nut, see [`Hex::nut_height`].
    #[must_use]
    pub fn nut_height(&self) -> Length {
        self.hex.nut_height()
    }

    /// Diameter of the face that bears, see [`Hex::bearing_diameter`].
    #[must_use]
    pub fn bearing_diameter(&self) -> Length {
        self.hex.bearing_diameter()
    }
}

const INCH_CITE: Cite = Cite::new(Source::Shigley9e, "Table 8-2", Flag::Read);
const UNS_CITE: Cite = Cite::new(Source::AsmeB1_1, "stress area formula", Flag::Computed);
const METRIC_CITE: Cite = Cite::new(
    Source::Iso898_1,
    "nominal stress areas",
    Flag::ReadSecondHand,
);
const METRIC_RECALLED: Cite = Cite::new(Source::Iso898_1, "nominal stress areas", Flag::Memory);

const fn unc(
    id: &'static str,
    label: &'static str,
    size: &'static str,
    major_and_threads: [f64; 2],
    area: f64,
    hex: Hex,
) -> Thread {
    Thread {
        id,
        label,
        size,
        fine: false,
        printed: Printed::Inch {
            major_in: major_and_threads[0],
            threads_per_inch: major_and_threads[1],
            stress_area_in2: Some(area),
        },
        hex,
        cite: INCH_CITE,
    }
}

const fn unf(
    id: &'static str,
    label: &'static str,
    size: &'static str,
    major_and_threads: [f64; 2],
    area: f64,
    hex: Hex,
) -> Thread {
    let mut thread = unc(id, label, size, major_and_threads, area, hex);
    thread.fine = true;
    thread
}

const fn metric(
    id: &'static str,
    label: &'static str,
    major_and_pitch: [f64; 2],
    area: f64,
    hex: Hex,
    cite: Cite,
) -> Thread {
    Thread {
        id,
        label,
        size: id,
        fine: false,
        printed: Printed::Metric {
            major_mm: major_and_pitch[0],
            pitch_mm: major_and_pitch[1],
            stress_area_mm2: area,
        },
        hex,
        cite,
    }
}

// Much hardware sold as "1 inch fine" is 14 threads per inch, which the table does not list.
const UNS_1: Thread = Thread {
    id: "uns-1",
    label: "1-14 UNS",
    size: "1",
    fine: true,
    printed: Printed::Inch {
        major_in: 1.0,
        threads_per_inch: 14.0,
        stress_area_in2: None,
    },
    hex: hex::H1,
    cite: UNS_CITE,
};

static THREADS: [Thread; 31] = [
    unc(
        "unc-1.4",
        "1/4-20 UNC",
        "1.4",
        [0.25, 20.0],
        0.0318,
        hex::H1_4,
    ),
    unc(
        "unc-5.16",
        "5/16-18 UNC",
        "5.16",
        [0.3125, 18.0],
        0.0524,
        hex::H5_16,
    ),
    unc(
        "unc-3.8",
        "3/8-16 UNC",
        "3.8",
        [0.375, 16.0],
        0.0775,
        hex::H3_8,
    ),
    unc(
        "unc-7.16",
        "7/16-14 UNC",
        "7.16",
        [0.4375, 14.0],
        0.1063,
        hex::H7_16,
    ),
    unc(
        "unc-1.2",
        "1/2-13 UNC",
        "1.2",
        [0.5, 13.0],
        0.1419,
        hex::H1_2,
    ),
    unc(
        "unc-9.16",
        "9/16-12 UNC",
        "9.16",
        [0.5625, 12.0],
        0.182,
        hex::H9_16,
    ),
    unc(
        "unc-5.8",
        "5/8-11 UNC",
        "5.8",
        [0.625, 11.0],
        0.226,
        hex::H5_8,
    ),
    unc(
        "unc-3.4",
        "3/4-10 UNC",
        "3.4",
        [0.75, 10.0],
        0.334,
        hex::H3_4,
    ),
    unc(
        "unc-7.8",
        "7/8-9 UNC",
        "7.8",
        [0.875, 9.0],
        0.462,
        hex::H7_8,
    ),
    unc("unc-1", "1-8 UNC", "1", [1.0, 8.0], 0.606, hex::H1),
    unf(
        "unf-1.4",
        "1/4-28 UNF",
        "1.4",
        [0.25, 28.0],
        0.0364,
        hex::H1_4,
    ),
    unf(
        "unf-5.16",
        "5/16-24 UNF",
        "5.16",
        [0.3125, 24.0],
        0.058,
        hex::H5_16,
    ),
    unf(
        "unf-3.8",
        "3/8-24 UNF",
        "3.8",
        [0.375, 24.0],
        0.0878,
        hex::H3_8,
    ),
    unf(
        "unf-7.16",
        "7/16-20 UNF",
        "7.16",
        [0.4375, 20.0],
        0.1187,
        hex::H7_16,
    ),
    unf(
        "unf-1.2",
        "1/2-20 UNF",
        "1.2",
        [0.5, 20.0],
        0.1599,
        hex::H1_2,
    ),
    unf(
        "unf-9.16",
        "9/16-18 UNF",
        "9.16",
        [0.5625, 18.0],
        0.203,
        hex::H9_16,
    ),
    unf(
        "unf-5.8",
        "5/8-18 UNF",
        "5.8",
        [0.625, 18.0],
        0.256,
        hex::H5_8,
    ),
    unf(
        "unf-3.4",
        "3/4-16 UNF",
        "3.4",
        [0.75, 16.0],
        0.373,
        hex::H3_4,
    ),
    unf(
        "unf-7.8",
        "7/8-14 UNF",
        "7.8",
        [0.875, 14.0],
        0.509,
        hex::H7_8,
    ),
    unf("unf-1", "1-12 UNF", "1", [1.0, 12.0], 0.663, hex::H1),
    UNS_1,
    metric("m6", "M6", [6.0, 1.0], 20.1, hex::M6, METRIC_CITE),
    metric("m8", "M8", [8.0, 1.25], 36.6, hex::M8, METRIC_CITE),
    metric("m10", "M10", [10.0, 1.5], 58.0, hex::M10, METRIC_CITE),
    metric("m12", "M12", [12.0, 1.75], 84.3, hex::M12, METRIC_CITE),
    metric("m14", "M14", [14.0, 2.0], 115.0, hex::M14, METRIC_CITE),
    metric("m16", "M16", [16.0, 2.0], 157.0, hex::M16, METRIC_CITE),
    metric("m18", "M18", [18.0, 2.5], 192.0, hex::M18, METRIC_RECALLED),
    metric("m20", "M20", [20.0, 2.5], 245.0, hex::M20, METRIC_CITE),
    metric("m22", "M22", [22.0, 2.5], 303.0, hex::M22, METRIC_RECALLED),
    metric("m24", "M24", [24.0, 3.0], 353.0, hex::M24, METRIC_CITE),
];

/// All threads: unified coarse, unified fine, then ISO metric coarse, each by rising size.
#[must_use]
pub fn threads() -> &'static [Thread] {
    &THREADS
}

/// The thread with this id.
#[must_use]
pub fn thread(id: &str) -> Option<&'static Thread> {
    THREADS.iter().find(|thread| thread.id == id)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn formula_reproduces_every_printed_area() {
        // The standard rounds metric areas to three figures, so the last figure may be half a unit off.
        for thread in threads() {
            let Some(printed) = thread.tabulated_stress_area() else {
                continue;
            };
            let share = thread.stress_area().si() / printed.si() - 1.0;
            assert!(share.abs() < 4e-3, "{}: off by {share:e}", thread.label());
        }
    }

    #[test]
    fn thread_length_follows_the_bolt_length() {
        let half = thread("unc-1.2").unwrap();
        assert!((half.thread_length(inch(4.0)).si() - inch(1.25).si()).abs() < 1e-12);
        assert!((half.thread_length(inch(6.0)).si() - inch(1.25).si()).abs() < 1e-12);
        assert!((half.thread_length(inch(6.5)).si() - inch(1.5).si()).abs() < 1e-12);
        assert!((half.thread_length(inch(1.0)).si() - inch(1.0).si()).abs() < 1e-12);
        let m12 = thread("m12").unwrap();
        assert!((m12.thread_length(mm(125.0)).si() - mm(30.0).si()).abs() < 1e-12);
        assert!((m12.thread_length(mm(150.0)).si() - mm(36.0).si()).abs() < 1e-12);
        assert!((m12.thread_length(mm(220.0)).si() - mm(49.0).si()).abs() < 1e-12);
    }
}

//! Hexagon heads and nuts.

use super::printed::PrintedLength::{self, Inch, Mm};
use crate::cite::{Cite, Flag, Source};
use crate::quantity::Length;

/// Sizes of the hexagon head and of the plain hexagon nut that go with a thread.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hex {
    flats_max: PrintedLength,
    flats_min: Option<PrintedLength>,
    head_max: PrintedLength,
    head_min: Option<PrintedLength>,
    nut: PrintedLength,
    nut_flats: PrintedLength,
    bearing: PrintedLength,
    cite: Cite,
    cite_nut: Cite,
    cite_bearing: Cite,
}

impl Hex {
    /// Width across the flats of the head, as specified (the largest allowed).
    #[must_use]
    pub fn width_across_flats(&self) -> Length {
        self.flats_max.length()
    }

    /// Smallest allowed width across the flats of the head, where the table gives it.
    #[must_use]
    pub fn width_across_flats_min(&self) -> Option<Length> {
        self.flats_min.map(PrintedLength::length)
    }

    /// Height of the head: largest for inch bolts, nominal for metric ones.
    #[must_use]
    pub fn head_height(&self) -> Length {
        self.head_max.length()
    }

    /// Smallest allowed height of the head, where the table gives it.
    #[must_use]
    pub fn head_height_min(&self) -> Option<Length> {
        self.head_min.map(PrintedLength::length)
    }

    /// Height of the plain nut: basic for inch nuts, largest for metric ones.
    #[must_use]
    pub fn nut_height(&self) -> Length {
        self.nut.length()
    }

    /// Width across the flats of the plain nut. Differs from the head at 7/16 and 9/16 in.
    #[must_use]
    pub fn nut_width_across_flats(&self) -> Length {
        self.nut_flats.length()
    }

    /// Diameter of the face that bears on washer or plate.
    ///
    /// Metric: the smallest `d_w` of grade A. Inch: the smallest width across the flats, an
    /// assumption; the washer face of the standard may be 10 % smaller than the largest width across
    /// the flats (from memory).
    #[must_use]
    pub fn bearing_diameter(&self) -> Length {
        self.bearing.length()
    }

    /// Source of the head sizes.
    #[must_use]
    pub const fn cite(&self) -> Cite {
        self.cite
    }

    /// Source of the nut sizes.
    #[must_use]
    pub const fn cite_nut(&self) -> Cite {
        self.cite_nut
    }

    /// Source of the bearing diameter.
    #[must_use]
    pub const fn cite_bearing(&self) -> Cite {
        self.cite_bearing
    }
}

const CAP_SCREW: Cite = Cite::new(
    Source::AsmeB18_2_1,
    "hex cap screws, F and H",
    Flag::ReadSecondHand,
);
const NUT_READ: Cite = Cite::new(
    Source::AsmeB18_2_2,
    "hex nuts, H basic",
    Flag::ReadSecondHand,
);
const NUT_RECALLED: Cite = Cite::new(Source::AsmeB18_2_2, "hex nuts, H basic", Flag::Memory);
const BEARING_INCH: Cite = Cite::new(
    Source::AsmeB18_2_1,
    "bearing face taken as F min",
    Flag::Assumption,
);
const HEAD_METRIC: Cite = Cite::new(Source::Iso4014, "s and k", Flag::ReadSecondHand);
const NUT_METRIC: Cite = Cite::new(Source::Iso4032, "m max", Flag::ReadSecondHand);
const BEARING_METRIC: Cite = Cite::new(Source::Iso4014, "d_w min, grade A", Flag::Memory);

const fn inch_hex(
    flats: [f64; 2],
    head: [f64; 2],
    nut: f64,
    nut_flats: f64,
    nut_cite: Cite,
) -> Hex {
    Hex {
        flats_max: Inch(flats[0]),
        flats_min: Some(Inch(flats[1])),
        head_max: Inch(head[0]),
        head_min: Some(Inch(head[1])),
        nut: Inch(nut),
        nut_flats: Inch(nut_flats),
        bearing: Inch(flats[1]),
        cite: CAP_SCREW,
        cite_nut: nut_cite,
        cite_bearing: BEARING_INCH,
    }
}

const fn metric_hex(flats: f64, head: f64, bearing: f64, nut: f64) -> Hex {
    Hex {
        flats_max: Mm(flats),
        flats_min: None,
        head_max: Mm(head),
        head_min: None,
        nut: Mm(nut),
        nut_flats: Mm(flats),
        bearing: Mm(bearing),
        cite: HEAD_METRIC,
        cite_nut: NUT_METRIC,
        cite_bearing: BEARING_METRIC,
    }
}

// Inches: F max, F min; H max, H min; nut height; nut width across flats.
pub(super) const H1_4: Hex = inch_hex([0.438, 0.428], [0.163, 0.150], 0.2188, 0.438, NUT_RECALLED);
pub(super) const H5_16: Hex = inch_hex([0.500, 0.489], [0.211, 0.195], 0.2656, 0.500, NUT_RECALLED);
pub(super) const H3_8: Hex = inch_hex([0.562, 0.551], [0.243, 0.226], 0.3281, 0.562, NUT_RECALLED);
pub(super) const H7_16: Hex =
    inch_hex([0.625, 0.612], [0.291, 0.272], 0.3750, 0.6875, NUT_RECALLED);
pub(super) const H1_2: Hex = inch_hex([0.750, 0.736], [0.323, 0.302], 0.4375, 0.750, NUT_READ);
pub(super) const H9_16: Hex = inch_hex([0.812, 0.798], [0.371, 0.348], 0.4844, 0.875, NUT_RECALLED);
pub(super) const H5_8: Hex = inch_hex([0.938, 0.922], [0.403, 0.378], 0.5469, 0.938, NUT_READ);
pub(super) const H3_4: Hex = inch_hex([1.125, 1.100], [0.483, 0.455], 0.6406, 1.125, NUT_READ);
pub(super) const H7_8: Hex = inch_hex([1.312, 1.285], [0.563, 0.531], 0.7500, 1.312, NUT_RECALLED);
pub(super) const H1: Hex = inch_hex([1.500, 1.469], [0.627, 0.591], 0.8594, 1.500, NUT_RECALLED);

// Millimetres: s, k, d_w min, m max.
pub(super) const M6: Hex = metric_hex(10.0, 4.0, 8.88, 5.2);
pub(super) const M8: Hex = metric_hex(13.0, 5.3, 11.63, 6.8);
pub(super) const M10: Hex = metric_hex(16.0, 6.4, 14.63, 8.4);
pub(super) const M12: Hex = metric_hex(18.0, 7.5, 16.63, 10.8);
pub(super) const M14: Hex = metric_hex(21.0, 8.8, 19.64, 12.8);
pub(super) const M16: Hex = metric_hex(24.0, 10.0, 22.49, 14.8);
pub(super) const M18: Hex = metric_hex(27.0, 11.5, 25.34, 15.8);
pub(super) const M20: Hex = metric_hex(30.0, 12.5, 28.19, 18.0);
pub(super) const M22: Hex = metric_hex(34.0, 14.0, 31.71, 19.4);
pub(super) const M24: Hex = metric_hex(36.0, 15.0, 33.61, 21.5);

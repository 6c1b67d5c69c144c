//! Clearance holes.

use super::printed::PrintedLength::{self, Inch, Mm};
use super::threads::Thread;
use crate::cite::{Cite, Flag, Source};
use crate::quantity::Length;

/// Fit of a clearance hole.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum HoleFit {
    /// ASME B18.2.8 close, ISO 273 fine.
    Close,
    /// ASME B18.2.8 normal, ISO 273 medium.
    Normal,
    /// ASME B18.2.8 loose, ISO 273 coarse.
    Loose,
    /// Standard hole of AISC 360-22 Tables J3.3 and J3.3M.
    Structural,
}

impl HoleFit {
    /// All fits.
    pub const ALL: [Self; 4] = [Self::Close, Self::Normal, Self::Loose, Self::Structural];

    /// Id: `close`, `normal`, `loose`, `structural`.
    #[must_use]
    pub const fn id(self) -> &'static str {
        match self {
            Self::Close => "close",
            Self::Normal => "normal",
            Self::Loose => "loose",
            Self::Structural => "structural",
        }
    }

    /// The fit with this id.
    #[must_use]
    pub fn from_id(id: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|fit| fit.id() == id)
    }
}

/// A clearance hole.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ClearanceHole {
    /// Diameter.
    pub diameter: Length,
    /// Source.
    pub cite: Cite,
}

type Printed = (PrintedLength, Cite);

struct Row {
    size: &'static str,
    close: Printed,
    normal: Printed,
    loose: Printed,
    structural: Option<Printed>,
}

const B18_2_8: Cite = Cite::new(Source::AsmeB18_2_8, "hole table", Flag::ReadSecondHand);
const B18_2_8_RECALLED: Cite = Cite::new(Source::AsmeB18_2_8, "7/8 in, normal", Flag::Memory);
const ISO_273: Cite = Cite::new(Source::Iso273, "hole table", Flag::ReadSecondHand);
const ISO_273_RECALLED: Cite = Cite::new(Source::Iso273, "hole table", Flag::Memory);
const AISC: Cite = Cite::new(Source::Aisc360_22, "Table J3.3", Flag::Read);
const AISC_METRIC: Cite = Cite::new(Source::Aisc360_22, "Table J3.3M", Flag::Read);

/// Sixty-fourths of an inch.
const fn inch_row(size: &'static str, sixty_fourths: [f64; 3], structural: Option<f64>) -> Row {
    Row {
        size,
        close: (Inch(sixty_fourths[0] / 64.0), B18_2_8),
        normal: (Inch(sixty_fourths[1] / 64.0), B18_2_8),
        loose: (Inch(sixty_fourths[2] / 64.0), B18_2_8),
        structural: match structural {
            Some(value) => Some((Inch(value / 64.0), AISC)),
            None => None,
        },
    }
}

const fn metric_row(size: &'static str, mm: [f64; 3], structural: Option<f64>) -> Row {
    Row {
        size,
        close: (Mm(mm[0]), ISO_273),
        normal: (Mm(mm[1]), ISO_273),
        loose: (Mm(mm[2]), ISO_273),
        structural: match structural {
            Some(value) => Some((Mm(value), AISC_METRIC)),
            None => None,
        },
    }
}

/// A row whose normal and loose holes are not those of the copied table, which differs from ISO 273
/// at M12 to M16 by up to half a millimetre.
const fn recalled(mut row: Row) -> Row {
    row.normal.1 = ISO_273_RECALLED;
    row.loose.1 = ISO_273_RECALLED;
    row
}

// The copied table prints 29/32 in for both the close and the normal hole at 7/8 in.
const ROW_7_8: Row = {
    let mut row = inch_row("7.8", [58.0, 60.0, 66.0], Some(60.0));
    row.normal.1 = B18_2_8_RECALLED;
    row
};

static ROWS: [Row; 19] = [
    inch_row("1.4", [17.0, 18.0, 19.0], None),
    inch_row("5.16", [21.0, 22.0, 23.0], None),
    inch_row("3.8", [25.0, 26.0, 27.0], None),
    inch_row("7.16", [29.0, 30.0, 31.0], None),
    inch_row("1.2", [34.0, 36.0, 39.0], Some(36.0)),
    inch_row("5.8", [42.0, 44.0, 47.0], Some(44.0)),
    inch_row("3.4", [50.0, 52.0, 58.0], Some(52.0)),
    ROW_7_8,
    inch_row("1", [66.0, 70.0, 74.0], Some(72.0)),
    metric_row("m6", [6.4, 6.6, 7.0], None),
    metric_row("m8", [8.4, 9.0, 10.0], None),
    metric_row("m10", [10.5, 11.0, 12.0], None),
    recalled(metric_row("m12", [13.0, 13.5, 14.5], Some(14.0))),
    recalled(metric_row("m14", [15.0, 15.5, 16.5], None)),
    recalled(metric_row("m16", [17.0, 17.5, 18.5], Some(18.0))),
    metric_row("m18", [19.0, 20.0, 21.0], None),
    metric_row("m20", [21.0, 22.0, 24.0], Some(22.0)),
    metric_row("m22", [23.0, 24.0, 26.0], Some(24.0)),
    metric_row("m24", [25.0, 26.0, 28.0], Some(27.0)),
];

/// Clearance hole for this thread; `None` where the table has no such hole (9/16 in; structural holes
/// below 1/2 in and for M14 and M18).
#[must_use]
pub fn clearance_hole(thread: &Thread, fit: HoleFit) -> Option<ClearanceHole> {
    let row = ROWS.iter().find(|row| row.size == thread.size())?;
    let (diameter, cite) = match fit {
        HoleFit::Close => row.close,
        HoleFit::Normal => row.normal,
        HoleFit::Loose => row.loose,
        HoleFit::Structural => row.structural?,
    };
    Some(ClearanceHole {
        diameter: diameter.length(),
        cite,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalog::threads;

    #[test]
    fn holes_clear_the_bolt_and_widen_with_the_fit() {
        for thread in threads() {
            let mut before = thread.major();
            for fit in [HoleFit::Close, HoleFit::Normal, HoleFit::Loose] {
                if let Some(hole) = clearance_hole(thread, fit) {
                    assert!(hole.diameter > before, "{} {}", thread.label(), fit.id());
                    before = hole.diameter;
                }
            }
        }
    }
}

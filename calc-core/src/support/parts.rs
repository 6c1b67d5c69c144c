//! Shapes of the parts that repairs put in, the stock they are cut from, and how they are cut.

use crate::catalog::{self, Family, Material, System};
use crate::mechanics::face::FaceCurve;
use crate::quantity::{Dimension, InUnits, Length};
use crate::report::{Amount, Label, Said, Sentence, say};
use crate::scenario::{Scenario, Strength};
use std::f64::consts::FRAC_PI_4;

/// Thicknesses of plate, mm: 3/16, 1/4, 5/16, 3/8, 1/2, 5/8 in, and those of metric stock. Common stock, no source.
const INCH_PLATES_MM: [f64; 6] = [4.7625, 6.35, 7.9375, 9.525, 12.7, 15.875];
const METRIC_PLATES_MM: [f64; 6] = [6.0, 8.0, 10.0, 12.0, 15.0, 20.0];

/// Thicknesses of plate that go with the bolts: who has metric bolts buys metric plate.
pub(super) fn plates_mm(s: &Scenario) -> [f64; 6] {
    match s.bolting.thread.system() {
        System::Inch => INCH_PLATES_MM,
        System::Metric => METRIC_PLATES_MM,
    }
}

/// What plates and blocks are cut from.
const PLATE_MATERIALS: [&str; 3] = ["a36", "6061-t6", "stainless-304"];

/// What plates and blocks for this joint are cut from.
pub(super) fn plate_materials(s: &Scenario) -> impl Iterator<Item = &'static str> {
    PLATE_MATERIALS
        .into_iter()
        .filter(|id| catalog::material(id).is_some_and(|material| goes_with(s, material)))
}

/// Whether somebody would put this metal into this tube: into a stainless one nothing that rusts in it.
pub(super) fn goes_with(s: &Scenario, material: &Material) -> bool {
    s.tube.material.family() != Family::Stainless || material.family() == Family::Stainless
}

/// How much too short a sleeve or block may come out that is filed or milled to its measured place, mm. An
/// assumption: the general tolerance of ISO 2768-m from 30 to 120 mm (from memory), which has room for measuring
/// inside a tube, 0.1 mm, and for an end that is out of square. It is never too long: it has to slide in by hand.
pub(super) const FITTED_SHORT_MM: f64 = 0.3;

/// Tolerance of a plate's outline, m. Common practice, no source.
const OUTLINE: f64 = 1e-3;

/// The new part that a repair puts in; all pieces of a repair are alike. Lengths in m.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Shape {
    /// Round, with the bolt's hole in the middle.
    Washer { outer: f64, thick: f64, hole: f64 },
    /// Flat, with holes for `bolts` bolts.
    Plate {
        length: f64,
        width: f64,
        thick: f64,
        bolts: u32,
        hole: f64,
    },
    /// Cut from tube or pipe, or bored from bar.
    Sleeve {
        outer: f64,
        inner: f64,
        length: f64,
        bored: bool,
    },
    /// Fills the tube; holes for `bolts` bolts. Of a round tube it is a bar as thick as `depth`.
    Block {
        length: f64,
        width: f64,
        depth: f64,
        bolts: u32,
        hole: f64,
        round: bool,
    },
}

impl Shape {
    /// Volume, m³.
    fn volume(&self) -> f64 {
        let disc = |d: f64| FRAC_PI_4 * d * d;
        match *self {
            Self::Washer { outer, thick, hole } => (disc(outer) - disc(hole)) * thick,
            Self::Plate {
                length,
                width,
                thick,
                bolts,
                hole,
            } => (length * width - f64::from(bolts) * disc(hole)) * thick,
            Self::Sleeve {
                outer,
                inner,
                length,
                ..
            } => (disc(outer) - disc(inner)) * length,
            Self::Block {
                length,
                depth,
                bolts,
                hole,
                ..
            } => self.sawn_area() * length - f64::from(bolts) * disc(hole) * depth,
        }
        .max(0.0)
    }

    /// Code of a piece.
    pub(crate) const fn name(&self) -> Label {
        match self {
            Self::Washer { .. } => Label::PieceWasher,
            Self::Plate { .. } => Label::PiecePlate,
            Self::Sleeve { .. } => Label::PieceSleeve,
            Self::Block { .. } => Label::PieceBlock,
        }
    }

    /// Length to cut; the outside diameter of a round washer.
    pub(crate) const fn length(&self) -> f64 {
        match *self {
            Self::Washer { outer, .. } => outer,
            Self::Plate { length, .. }
            | Self::Sleeve { length, .. }
            | Self::Block { length, .. } => length,
        }
    }

    /// Holes to drill in it.
    pub(crate) const fn holes(&self) -> u32 {
        match *self {
            Self::Washer { .. } => 1,
            Self::Plate { bolts, .. } | Self::Block { bolts, .. } => bolts,
            Self::Sleeve { .. } => 0,
        }
    }

    /// How deep its holes are, m.
    pub(crate) const fn hole_depth(&self) -> f64 {
        match *self {
            Self::Washer { thick, .. } | Self::Plate { thick, .. } => thick,
            Self::Block { depth, .. } => depth,
            Self::Sleeve { .. } => 0.0,
        }
    }

    /// Metal that one cut goes through, m².
    pub(crate) fn sawn_area(&self) -> f64 {
        match *self {
            Self::Washer { outer, thick, .. } => std::f64::consts::PI * outer * thick,
            Self::Plate { width, thick, .. } => width * thick,
            // A bar is sawn before it is bored.
            Self::Sleeve {
                outer, bored: true, ..
            } => FRAC_PI_4 * outer * outer,
            Self::Sleeve { outer, inner, .. } => FRAC_PI_4 * (outer * outer - inner * inner),
            Self::Block {
                depth, round: true, ..
            } => FRAC_PI_4 * depth * depth,
            Self::Block { width, depth, .. } => width * depth,
        }
    }

    /// Cuts to make one.
    pub(crate) const fn cuts(&self) -> u32 {
        match self {
            // Sawn off square at both ends.
            Self::Block { .. } => 2,
            _ => 1,
        }
    }
}

/// Thickness of the bar that is bought for a block, m: 1 mm to take off each side, then the next half inch. An own
/// assumption: large bar is sold in such steps.
fn bar_for(side: f64) -> f64 {
    const STEP: f64 = 12.7e-3;
    ((side + 2e-3) / STEP).ceil() * STEP
}

/// New parts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Pieces {
    pub(crate) count: u32,
    pub(crate) shape: Shape,
    pub(crate) material: &'static Material,
}

impl Pieces {
    /// Mass of all of them, kg.
    pub(crate) fn mass(&self) -> f64 {
        f64::from(self.count) * self.shape.volume() * self.material.density().value
    }

    /// Mass of what is bought for them, kg: of a bar that is bored the whole of it, of a block the bar that it is cut from.
    pub(crate) fn bought(&self) -> f64 {
        match self.shape {
            Shape::Sleeve {
                length,
                bored: true,
                ..
            } => {
                let volume = self.shape.sawn_area() * length;
                f64::from(self.count) * volume * self.material.density().value
            }
            Shape::Block {
                length,
                width,
                depth,
                round,
                ..
            } => {
                let section = if round {
                    FRAC_PI_4 * bar_for(depth).powi(2)
                } else {
                    bar_for(width) * bar_for(depth)
                };
                let volume = section * length;
                f64::from(self.count) * volume * self.material.density().value
            }
            _ => self.mass(),
        }
    }

    /// Whether they are bored from bar.
    pub(crate) const fn bored(&self) -> bool {
        matches!(self.shape, Shape::Sleeve { bored: true, .. })
    }
}

/// How a piece is cut.
pub(crate) struct Cutting {
    /// How much longer it may be, m.
    pub(crate) plus: f64,
    /// How much shorter it may be, m.
    pub(crate) minus: f64,
    /// How to measure and finish it.
    pub(crate) notes: Vec<Said>,
}

impl Cutting {
    /// To the outline of a plate.
    pub(super) const fn outline(notes: Vec<Said>) -> Self {
        Self {
            plus: OUTLINE,
            minus: OUTLINE,
            notes,
        }
    }
}

/// A sentence with lengths.
pub(crate) fn said<const N: usize>(sentence: Sentence<N>, lengths: [f64; N]) -> Said {
    Said::of(
        sentence,
        lengths.map(|si| Amount::new(si, Dimension::Length)),
    )
}

/// A number of things; no joint has as many as would not fit.
pub(crate) fn count(n: usize) -> u32 {
    u32::try_from(n).unwrap_or(u32::MAX)
}

/// Half millimetres: what a saw and a rule give.
pub(super) fn round_half(mm: f64) -> f64 {
    (mm * 2.0).round() / 2.0
}

/// From the first bolt of a row to the last, m.
pub(super) fn row_length(s: &Scenario) -> f64 {
    let b = &s.bolting;
    (b.along.saturating_sub(1)) as f64 * b.spacing_along.si()
}

/// Space between the inside faces and how much shorter a part may be, m: what it is measured by.
pub(super) fn inside_and_short(s: &Scenario) -> [f64; 2] {
    let inside = s.tube.depth.si() - 2.0 * s.tube.wall.si();
    [inside, s.sleeve_short.si().max(0.0)]
}

/// How much longer than the space between the walls a sleeve or block may be, m: what rough faces and a
/// file's stroke make of it. An assumption.
const OVER: f64 = 0.1e-3;

/// Push of a person at a part between the faces, N. An assumption.
pub(crate) const PUSH: f64 = 500.0;

/// Friction of a part that is pushed in between the faces. An assumption: common for dry metals.
pub(crate) const PUSHED_FRICTION: f64 = 0.2;

/// How much longer than the space between the walls a part may be: little enough to be pushed in by hand,
/// and never more than a tenth of a millimetre.
///
/// ```text
/// e = P/(μ·k)        P = 2·μ·(k·e/2)
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `P`, `μ` | push, friction on either face | N, 1 |
/// | `k` | stiffness of a face under the part, `patch` wide | N/m |
///
/// # Sources
/// Elementary; the limits are assumptions.
pub(super) fn longest_over(s: &Scenario, patch: Length) -> Length {
    if s.member.is_round() {
        return Length::of_si(OVER);
    }
    let face = FaceCurve::new(&s.tube.face(Strength::Likely), patch, 1.0);
    Length::of_si(OVER.min(PUSH / (PUSHED_FRICTION * face.stiffness().si())))
}

/// What to say where a part is longer than it may be: it holds the fitting off the faces.
pub(super) fn too_long(s: &Scenario, longest: Option<Length>) -> Option<Sentence<0>> {
    let over = -s.sleeve_short.si();
    longest
        .filter(|longest| over > longest.si() * (1.0 + 1e-9))
        .map(|_| say::SlipSleeveTooLong)
}

/// What is to be said where a part that is cut to length between the faces is too long or too short.
pub(super) fn length_error(s: &Scenario) -> Vec<Said> {
    let short = s.sleeve_short.si();
    if short < 0.0 {
        vec![said(say::NoteSleeveLong, [-short])]
    } else if short > 0.0 {
        vec![said(say::NoteSleeveShort, [short])]
    } else {
        Vec::new()
    }
}

/// How far in from the open end a part is still brought to its hole and held in line there, m. An assumption: an
/// arm's length.
const REACH: f64 = 0.6;

/// Whether what is wider than its hole can be brought to the bolt at all.
pub(crate) fn can_be_brought_in(s: &Scenario) -> bool {
    s.tube.open_end && s.tube.end_distance.si() <= REACH
}

/// Steel tube is mostly rolled and welded, with a bead along the seam inside. Common practice, no source.
pub(super) fn seam(s: &Scenario) -> Option<Said> {
    let rolled = s.tube.material.family() != Family::Aluminium && !s.member.is_open();
    rolled.then(|| said(say::CutSeam, []))
}

/// What is wider than its hole goes in from the end of the tube, if that is open.
pub(super) fn through_the_end(s: &Scenario) -> Said {
    said(
        if s.tube.open_end {
            say::CutInByEnd
        } else {
            say::CutEndClosed
        },
        [s.tube.end_distance.si()],
    )
}

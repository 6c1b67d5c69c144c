//! What the section shows. Every number is computed elsewhere.

use crate::scene::CutMetal;
use calc_core::quantity::UnitSystem;

/// For which width the sheet is laid out.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Layout {
    /// 520 units wide: desk, paper.
    Wide,
    /// 340 units wide: lettering stays readable on a phone; also right for paper.
    #[default]
    Narrow,
    /// As wide as [`Layout::Narrow`] and lower: for a lesson, where a plot and controls follow it.
    Low,
}

/// The tube across the bolt.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tube {
    /// Outside width of the face under the washer.
    pub width_mm: f64,
    /// Outside depth along the bolt.
    pub depth_mm: f64,
    /// Wall.
    pub wall_mm: f64,
    /// Outside corner radius.
    pub corner_radius_mm: f64,
    /// Made of.
    pub material: CutMetal,
}

/// The bolt with its nut.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bolt {
    /// Outside diameter of the thread.
    pub diameter_mm: f64,
    /// Across flats of head and nut.
    pub flats_mm: f64,
    /// Height of the head.
    pub head_mm: f64,
    /// Height of the nut.
    pub nut_mm: f64,
    /// Hole through tube and plies.
    pub hole_mm: f64,
    /// Length of the thread.
    pub thread_mm: f64,
}

/// The washers under head and nut.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Washer {
    /// Outside diameter.
    pub outer_mm: f64,
    /// Thickness.
    pub thickness_mm: f64,
}

/// A plate between washer and tube.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ply {
    /// Thickness.
    pub thickness_mm: f64,
    /// Width across the tube.
    pub width_mm: f64,
    /// Made of.
    pub material: CutMetal,
    /// Under both washers, or only under the upper one, the nut's.
    pub both_sides: bool,
}

/// What the clamp stands on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Support {
    /// The two faces.
    Bare,
    /// Plates on the faces.
    Spreader(Ply),
    /// A tube round the bolt between the inside faces.
    LooseSleeve {
        /// Outside diameter.
        outer_mm: f64,
        /// Wall.
        wall_mm: f64,
        /// Shorter than the space by this; less than 0: longer.
        short_mm: f64,
        /// Made of.
        material: CutMetal,
    },
    /// A tube round the bolt through both faces, ends flush.
    ThroughSleeve {
        /// Outside diameter.
        outer_mm: f64,
        /// Wall.
        wall_mm: f64,
        /// Made of.
        material: CutMetal,
    },
    /// A block that fills the tube.
    SolidInsert {
        /// Shorter than the space by this; less than 0: longer.
        short_mm: f64,
        /// Made of.
        material: CutMetal,
    },
    /// A bar: no hollow.
    Solid,
}

/// The opening figure's state.
#[derive(Clone, Debug, PartialEq)]
pub struct SectionState {
    /// Prefix of the ids, unique on the page.
    pub id: String,
    /// Name in the title strip, e.g. `"1 · section through the bolt"`.
    pub name: String,
    /// The tube.
    pub tube: Tube,
    /// The bolt.
    pub bolt: Bolt,
    /// The washers.
    pub washer: Washer,
    /// The fitting's cheek or flange.
    pub fitting: Option<Ply>,
    /// What the clamp stands on.
    pub support: Support,
    /// How far the nut has been turned from snug.
    pub turn_deg: f64,
    /// Clamp force now.
    pub clamp_n: f64,
    /// Largest clamp force that this figure will be asked to show: fixes the force scale, so that it
    /// does not jump while the wrench turns.
    pub clamp_largest_n: f64,
    /// Clamp that the bolt wants: marked beside the arrow, where it is asked for.
    pub clamp_wanted_n: Option<f64>,
    /// Dent of each face now.
    pub dent_each_mm: f64,
    /// Dent that would stay after loosening, where it is known.
    pub dent_left_mm: Option<f64>,
    /// Largest dent of a face that this figure will be asked to show: fixes the exaggeration.
    pub dent_largest_mm: f64,
    /// Units of the lettering.
    pub units: UnitSystem,
    /// Whether parts carry their names.
    pub labels: bool,
    /// Whether the joint is an invented example; otherwise the reader's own.
    pub example: bool,
    /// For which width.
    pub layout: Layout,
    /// Whether the title strip stands under the drawing; a sheet with two drawings has one strip for
    /// both, made of [`strip_fields`](super::strip_fields).
    pub strip: bool,
}

impl SectionState {
    /// Plies between nut washer and tube (`true`) or head washer and tube, outermost first.
    pub(super) fn plies(&self, nut_side: bool) -> Vec<(Ply, &'static str)> {
        let fitting = self.fitting.map(|p| (p, "bracket"));
        let spreader = match self.support {
            Support::Spreader(ply) => Some((ply, "spreader plate")),
            _ => None,
        };
        [fitting, spreader]
            .into_iter()
            .flatten()
            .filter(|(p, _)| p.thickness_mm > 0.0 && (p.both_sides || nut_side))
            .collect()
    }

    /// Total thickness of the plies on one side.
    pub(super) fn plies_mm(&self, nut_side: bool) -> f64 {
        self.plies(nut_side)
            .iter()
            .map(|(p, _)| p.thickness_mm)
            .sum()
    }

    /// Shortfall of what stands inside the tube, if something does.
    pub(super) fn short_mm(&self) -> Option<f64> {
        match self.support {
            Support::LooseSleeve { short_mm, .. } | Support::SolidInsert { short_mm, .. } => {
                Some(short_mm)
            }
            _ => None,
        }
    }
}

//! The checked scenario: typed values that every formula can take.

use super::choices::{BoltFinish, Exposure, JointKind, MemberKind, Mount, SupportKind, WallBasis};
use super::fields::{Field, Input};
use super::loads::Loads;
use super::strength::Strength;
use crate::catalog::{
    self, BoltGrade, BoltStrength, Family, Material, NutFactor, SlipSurface, Thread,
    TighteningMethod, Treatment,
};
use crate::mechanics::face::FaceTube;
use crate::mechanics::flange::{self, Held};
use crate::quantity::{Length, Stress, Torque};

/// The tube, or the solid that stands in its place.
#[derive(Clone, Debug, PartialEq)]
pub struct Tube {
    /// Outside width of the face under the washer.
    pub width: Length,
    /// Outside depth along the bolt.
    pub depth: Length,
    /// Wall as measured or ordered.
    pub wall: Length,
    /// Which of the two.
    pub wall_basis: WallBasis,
    /// Wall for verdicts: the design wall where only the nominal is known.
    pub design_wall: Length,
    /// Outside corner radius.
    pub corner_radius: Length,
    /// Material.
    pub material: &'static Material,
    /// Modulus of elasticity.
    pub modulus: Stress,
    /// Poisson's ratio.
    pub poisson: f64,
    /// Yield strength, least.
    pub yield_least: Stress,
    /// Yield strength, likely.
    pub yield_likely: Stress,
    /// Tensile strength, least.
    pub ultimate_least: Stress,
    /// Whether a weld lies near the bolt.
    pub weld_near: bool,
    /// From the bolt to the end of the tube.
    pub end_distance: Length,
    /// Whether that end is open.
    pub open_end: bool,
}

impl Tube {
    /// Yield strength at one of the two strengths.
    #[must_use]
    pub const fn yield_strength(&self, strength: Strength) -> Stress {
        match strength {
            Strength::Least => self.yield_least,
            Strength::Likely => self.yield_likely,
        }
    }

    /// Wall at one of the two strengths.
    #[must_use]
    pub const fn wall_at(&self, strength: Strength) -> Length {
        match strength {
            Strength::Least => self.design_wall,
            Strength::Likely => self.wall,
        }
    }

    /// The tube as its face sees it.
    #[must_use]
    pub const fn face(&self, strength: Strength) -> FaceTube {
        FaceTube {
            width: self.width,
            depth: self.depth,
            wall: self.wall_at(strength),
            corner_radius: self.corner_radius,
            modulus: self.modulus,
            poisson: self.poisson,
            yield_strength: self.yield_strength(strength),
        }
    }
}

/// What the bolts go through, besides the measures that every member has in common ([`Tube`]).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Member {
    /// Which kind.
    pub kind: MemberKind,
    /// Thickness of the part of a channel or an angle that the bolts do not go through: the web beside a
    /// flange, the flanges beside a web, the outstanding leg of an angle.
    pub outstanding: Length,
    /// Back of the web or outstanding leg to the nearest row of bolts, where a flange or a leg stands free;
    /// `None`: a tube, a bar, the web of a channel.
    pub gauge: Option<Length>,
    /// Slope of the inside of a channel's flanges; zero where both faces are parallel.
    pub slope: f64,
    /// Whether a washer made to fit lies on a sloping or curved face.
    pub shaped_washer: bool,
}

impl Member {
    /// Whether the bolts go through one ply: no hollow to crush, the fitting on one side.
    #[must_use]
    pub const fn is_open(&self) -> bool {
        matches!(self.kind, MemberKind::Channel | MemberKind::Angle)
    }

    /// Upright parts that stand beside what the bolts go through.
    const fn uprights(&self) -> f64 {
        match self.gauge {
            _ if !self.is_open() => 0.0,
            Some(_) => 1.0,
            None => 2.0,
        }
    }

    /// Width that a plate has beside what the bolts do not go through, of a face `width` wide.
    #[must_use]
    pub fn room(&self, width: Length) -> Length {
        width - self.outstanding * self.uprights()
    }

    /// The same, clear of the fillets at the roots as well: each as thick as the thicker of the two parts that meet there.
    #[must_use]
    pub fn room_off_fillet(&self, width: Length, wall: Length) -> Length {
        self.room(width) - wall.max(self.outstanding) * self.uprights()
    }

    /// Whether it is a round tube.
    #[must_use]
    pub const fn is_round(&self) -> bool {
        matches!(self.kind, MemberKind::RoundTube)
    }
}

/// A washer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Washer {
    /// Outside diameter.
    pub outer: Length,
    /// Bore.
    pub bore: Length,
    /// Nominal thickness.
    pub thickness: Length,
    /// Least thickness of its tolerance.
    pub thickness_min: Length,
}

/// Bolts, their pattern, holes and washers.
#[derive(Clone, Debug, PartialEq)]
pub struct Bolting {
    /// Which way the bolts run.
    pub mount: Mount,
    /// Whether they go through one ply of the member, with the fitting on one side.
    pub single_ply: bool,
    /// Whether they run through the sides of a tube or a bar with a cheek of the fitting on each.
    pub two_cheeks: bool,
    /// Size.
    pub thread: &'static Thread,
    /// Grade.
    pub grade: &'static BoltGrade,
    /// Strengths of that grade in that size and length.
    pub strength: BoltStrength,
    /// Bolts in a row along the tube.
    pub along: usize,
    /// Rows across.
    pub rows: usize,
    /// Distance along.
    pub spacing_along: Length,
    /// Distance across.
    pub spacing_across: Length,
    /// Hole in the tube.
    pub hole: Length,
    /// Washer under head and nut.
    pub washer: Washer,
    /// What it is coated with.
    pub finish: BoltFinish,
}

impl Bolting {
    /// Number of bolts.
    #[must_use]
    pub const fn count(&self) -> usize {
        self.along * self.rows
    }

    /// Proof strength; where the standard gives none (A307), that of SAE J429 grade 1, which has the
    /// same tensile strength. Such bolts never pass for clamping: see the grade check.
    #[must_use]
    pub fn proof_strength(&self) -> Stress {
        proof_of(self.strength)
    }

    /// Yield strength, with the same stand-in.
    #[must_use]
    pub fn yield_strength(&self) -> Stress {
        self.strength
            .yield_
            .unwrap_or_else(|| crate::quantity::ksi(36.0))
    }

    /// Whether they run through the sides with the fitting on one side alone, so that its load lies beside it.
    #[must_use]
    pub fn one_sided(&self) -> bool {
        self.mount == Mount::ThroughSides && !self.two_cheeks
    }

    /// Slip planes that each bolt presses together.
    #[must_use]
    pub const fn slip_planes(&self) -> f64 {
        if self.two_cheeks { 2.0 } else { 1.0 }
    }
}

/// Proof strength, or its stand-in: see [`Bolting::proof_strength`].
pub(super) fn proof_of(strength: BoltStrength) -> Stress {
    strength.proof.unwrap_or_else(|| crate::quantity::ksi(33.0))
}

/// The fitting: coupler cheek or bracket.
#[derive(Clone, Debug, PartialEq)]
pub struct Fitting {
    /// Thickness of one ply.
    pub thickness: Length,
    /// Material.
    pub material: &'static Material,
    /// Whether it lies between washer and tube and reaches over both side walls.
    pub spreads: bool,
    /// Bolt centre to the upright part of a flange that can bend; `None`: not given.
    pub flange_arm: Option<Length>,
    /// Yield strength, least; next to a weld where one lies near the bolt.
    pub yield_least: Stress,
    /// Tensile strength, least; likewise.
    pub ultimate_least: Stress,
    /// Middle of the bolt to the nearest edge.
    pub edge: Length,
    /// Hole.
    pub hole: Length,
    /// Gap between it and the wall of the tube.
    pub gap: Length,
    /// What of the gap no spreader plate fills.
    pub packing: Length,
    /// Whether more lies between it and the member, or its plate, than the clamp draws shut.
    pub apart: bool,
    /// Whether it presses on the member, or on what fills the gap; across air there is no faying face.
    pub touches: bool,
}

/// Spreader plate.
#[derive(Clone, Debug, PartialEq)]
pub struct Spreader {
    /// Thickness.
    pub thickness: Length,
    /// Length along the tube.
    pub length: Length,
    /// Width across the face.
    pub width: Length,
    /// Material.
    pub material: &'static Material,
}

/// Sleeve.
#[derive(Clone, Debug, PartialEq)]
pub struct Sleeve {
    /// Outside diameter.
    pub outer: Length,
    /// Inside diameter.
    pub inner: Length,
    /// Material.
    pub material: &'static Material,
    /// Whether it is welded at both ends.
    pub welded: bool,
}

/// How the nut is tightened.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tightening {
    /// Nut factor.
    pub nut_factor: f64,
    /// Lowest and highest nut factor that verdicts count with, the lowest for the bolt and the highest for the clamp.
    /// Both are the nut factor itself, unless nobody knows what is on the threads, or the reader's own lies outside what
    /// was published for them: then the usual one counts too.
    pub nut_factor_band: [f64; 2],
    /// Scatter of the clamp; never less than the least that was published for the method.
    pub scatter: f64,
    /// Torque, if the reader gave one.
    pub torque: Option<Torque>,
    /// Wanted share of the proof load, used without a torque.
    pub preload_share: f64,
    /// Friction coefficient of the faying faces.
    pub faying_friction: f64,
    /// State of threads and faces.
    pub lubrication: &'static NutFactor,
    /// How the clamp is controlled.
    pub method: &'static TighteningMethod,
    /// State of the faying faces.
    pub surface: &'static SlipSurface,
    /// Metals of the faces that are pressed together there: member, fitting, and the plate between them or the end of
    /// a sleeve beside the member.
    pub metals: [Family; 3],
}

impl Tightening {
    /// Whether the faying faces are painted or otherwise coated.
    #[must_use]
    pub fn coated(&self) -> bool {
        self.surface.treatment() == Treatment::Coated
    }
}

/// A scenario whose every value was checked. Two are equal when they were made from the same input: all
/// else follows from it.
///
/// Where something is [not known](Self::not_known), the values are those of the first joint that it may be, the weakest
/// of each: what is asked of it is asked of all its [`members`](Self::members).
#[derive(Clone, Debug)]
pub struct Scenario {
    /// What it was made from.
    pub input: Input,
    /// Measures of the member: width, depth, wall, metal.
    pub tube: Tube,
    /// What the member is.
    pub member: Member,
    /// Bolts.
    pub bolting: Bolting,
    /// Fitting.
    pub fitting: Fitting,
    /// What the clamp stands on.
    pub support: SupportKind,
    /// Spreader plate, used by that support.
    pub spreader: Spreader,
    /// Sleeve, used by the sleeve supports.
    pub sleeve: Sleeve,
    /// Stock that the sleeve was chosen from; its measures count unless the reader gave others.
    pub sleeve_stock: &'static catalog::Sleeve,
    /// How much too short the loose sleeve or insert is; negative: too long.
    pub sleeve_short: Length,
    /// Material of the insert.
    pub insert_material: &'static Material,
    /// Tightening.
    pub tightening: Tightening,
    /// Road.
    pub loads: Loads,
    /// Wetness and salt.
    pub exposure: Exposure,
    /// Fields that were derived, with their value in the unit of their name.
    pub derived: Vec<(Field, f64)>,
    /// Fields of which the reader does not know what they are.
    pub not_known: Vec<Field>,
}

impl PartialEq for Scenario {
    fn eq(&self, other: &Self) -> bool {
        self.input == other.input
    }
}

impl Scenario {
    /// Whether the reader gave a number for what would otherwise be derived.
    #[must_use]
    pub fn is_given(&self, field: Field) -> bool {
        self.input.number(field).is_some()
    }

    /// Thickness of the member between the two washers: its depth, or one ply of an open section.
    #[must_use]
    pub const fn clamped(&self) -> Length {
        if self.member.is_open() {
            self.tube.wall
        } else {
            self.tube.depth
        }
    }

    /// Plates of a spreader between head and nut, together: one on a flange or a web, one on each face of a tube.
    #[must_use]
    pub fn plates(&self) -> Length {
        let faces = if self.member.is_open() { 1.0 } else { 2.0 };
        match self.support {
            SupportKind::Spreader => self.spreader.thickness * faces,
            _ => Length::default(),
        }
    }

    /// Length under head and nut that is clamped: member, a fitting at every slip plane, washers, plates, and washers
    /// that are made to fit.
    #[must_use]
    pub fn grip(&self) -> Length {
        let b = &self.bolting;
        let fitting = self.fitting.thickness * b.slip_planes();
        let (count, shaped) = self.shaped_washers();
        self.clamped() + fitting + b.washer.thickness * 2.0 + self.plates() + shaped * count
    }

    /// Shortest bolt that does: the grip with what lies in a gap beside the member, the nut, two pitches.
    #[must_use]
    pub fn bolt_length(&self) -> Length {
        let b = &self.bolting;
        let gaps = self.fitting.packing * b.slip_planes();
        self.grip() + gaps + b.thread.nut_height() + b.thread.pitch() * 2.0
    }

    /// Back of the web or outstanding leg to the farthest row of bolts, where a flange or a leg stands free.
    #[must_use]
    pub fn farthest_gauge(&self) -> Option<Length> {
        let b = &self.bolting;
        let rows = b.rows as f64 - 1.0;
        self.member.gauge.map(|g| g + b.spacing_across * rows)
    }

    /// Middle of the bolt to the free edge of the flange or leg, of the row nearest to it.
    #[must_use]
    pub fn free_edge(&self) -> Option<Length> {
        self.farthest_gauge().map(|far| self.tube.width - far)
    }

    /// Where the bolts pull a ply of an open section away from what holds it: places of the rows from the
    /// face of the web or outstanding leg, and how the ply is held. `None`: a tube or a bar.
    #[must_use]
    pub fn strip(&self) -> Option<(Vec<Length>, Held)> {
        if !self.member.is_open() {
            return None;
        }
        let b = &self.bolting;
        let (first, held) = match self.member.gauge {
            Some(gauge) => (gauge - self.member.outstanding, Held::OnOneSide),
            None => {
                let span = self.tube.width - self.member.outstanding * 2.0;
                let group = b.spacing_across * (b.rows as f64 - 1.0);
                ((span - group) * 0.5, Held::OnBothSides(span))
            }
        };
        let rows = (0..b.rows).map(|row| first + b.spacing_across * row as f64);
        Some((rows.collect(), held))
    }

    /// Whether a load beside the faying plane may be there that nobody has measured: one fitting on one side
    /// of a web, a leg or a tube.
    #[must_use]
    pub fn offset_unknown(&self) -> bool {
        self.bolting.one_sided() && self.loads.offset.is_none()
    }

    /// Whether the bolt is a pin: a chain bracket on one bolt swings until the chain pulls in line with it.
    #[must_use]
    pub fn swings(&self) -> bool {
        self.loads.joint == JointKind::ChainBracket && self.bolting.count() == 1
    }

    /// Line of the load beside the faying plane, or from the top beside the bolts' middle, m; none where two
    /// cheeks stand on both sides of it.
    #[must_use]
    pub fn aside(&self) -> f64 {
        self.loads
            .offset
            .filter(|_| !self.bolting.two_cheeks)
            .map_or(0.0, |offset| offset.value)
    }

    /// Length of flange or web that is counted with one bolt; zero for a tube or a bar.
    #[must_use]
    pub fn flange_width(&self) -> Length {
        let Some((rows, held)) = self.strip() else {
            return Length::default();
        };
        let from_side = |row: &Length| match held {
            Held::OnOneSide => *row,
            Held::OnBothSides(span) => row.min(span - *row),
        };
        let far = rows
            .iter()
            .map(from_side)
            .fold(Length::default(), Length::max);
        let b = &self.bolting;
        let pitch = (b.along > 1).then_some(b.spacing_along);
        flange::tributary(far, pitch, self.tube.end_distance)
    }

    /// From the middle of the bolts to where the fitting touches the member last, across.
    #[must_use]
    pub fn reach_across(&self) -> Length {
        let half = self.tube.width * 0.5;
        if self.member.is_round() && self.support.passes_walls() {
            return half.min(self.sleeve.outer * 0.5);
        }
        match (self.member.gauge, self.farthest_gauge()) {
            (Some(near), Some(far)) => {
                let middle = (near + far) * 0.5;
                middle.min(self.tube.width - middle)
            }
            _ => half,
        }
    }
}

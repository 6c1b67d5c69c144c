//! What comes out: verdicts, checks, worked steps. Plain data; the words for its codes stand in
//! `content/`.

mod factor;
pub mod fatigue;
mod label;
mod message;
mod substituted;
pub(crate) mod working;

pub use crate::scenario::Strength;
pub use factor::Factor;
pub use fatigue::{BoltEnduranceView, EnduranceView, FatigueReport, HoleView, Life, RoadSpectrum};
pub use label::Label;
pub use message::{Message, Said};
pub(crate) use message::{Sentence, say};
pub(crate) use substituted::{Given, Numbers, substituted};
pub use substituted::{Substituted, Term};

use crate::catalog::{CaseName, LoadKind};
use crate::cite::Cite;
use crate::keys::keys;
use crate::mechanics::range::OutOfRange;
use crate::quantity::{Dimension, Measured, Measures};
use crate::scenario::unknown::Settled;
use crate::scenario::{Field, Input, JointKind, SupportKind};
use serde::{Serialize, Serializer};

/// A number with what it measures; serialises with its SI unit beside it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Amount {
    /// Value in the coherent SI unit.
    pub si: f64,
    /// What it measures.
    pub dimension: Dimension,
}

impl Amount {
    /// A number with what it measures.
    #[must_use]
    pub const fn new(si: f64, dimension: Dimension) -> Self {
        Self { si, dimension }
    }

    /// A quantity, with what its type measures.
    #[must_use]
    #[inline]
    pub(crate) fn of<Q: Measured>(quantity: Q) -> Self {
        Self::new(quantity.si(), Q::DIMENSION)
    }

    /// Quantities side by side.
    #[must_use]
    pub(crate) fn each<Q: Measures<N>, const N: usize>(quantities: Q) -> Vec<Self> {
        let amounts = quantities.numbers().into_iter().zip(Q::DIMENSIONS);
        amounts
            .map(|(si, &dimension)| Self::new(si, dimension))
            .collect()
    }
}

impl Serialize for Amount {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        use serde::ser::SerializeStruct;
        let mut out = serializer.serialize_struct("Amount", 2)?;
        out.serialize_field("value", &self.si)?;
        out.serialize_field("unit", self.dimension.si_unit())?;
        out.end()
    }
}

keys! {
    /// How a check, or the joint, stands. Ordered from good to bad.
    pub enum Verdict {
        /// At most 80 % used.
        Holds = "holds",
        /// 80 % to 100 % used.
        Close = "close",
        /// Outside the range where the formula was checked, or an input is missing.
        NotChecked = "not-checked",
        /// More than 100 % used.
        DoesNotHold = "does-not-hold",
    }
}

/// Share used up to which a check holds with something in hand.
pub const CLOSE_FROM: f64 = 0.80;

impl Verdict {
    /// The verdict for a share used of what there is; not checked where it is not a number.
    #[must_use]
    pub fn of(utilisation: f64) -> Self {
        match utilisation {
            u if u.is_nan() => Self::NotChecked,
            u if u <= CLOSE_FROM => Self::Holds,
            u if u <= 1.0 => Self::Close,
            _ => Self::DoesNotHold,
        }
    }
}

/// One line of working: what was put into which formula and what came out.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Step {
    /// Symbol of the result.
    pub symbol: &'static str,
    /// What the result is, in a few words.
    pub what: &'static str,
    /// The formula, right-hand side.
    pub formula: &'static str,
    /// What was put in.
    pub inputs: Substituted,
    /// What came out.
    pub result: Amount,
    /// Where the formula comes from.
    #[serde(flatten)]
    pub cite: Cite,
}

keys! {
    /// The question a check answers.
    #[non_exhaustive]
    pub enum CheckId {
        /// Is the joint sound to look at?
        Found = "found",
        /// Can what lies between head and nut take the wanted clamp?
        Clamp = "clamp",
        /// Does the bolt stay below its proof load while it is tightened?
        BoltTightening = "bolt-tightening",
        /// May this grade be tightened to a stated clamp at all?
        Grade = "grade",
        /// Does the clamp grip the road loads by friction?
        Slip = "slip",
        /// Do the faces stay together under the outside tension?
        Opening = "opening",
        /// If it slips: does the bolt shear?
        BoltShear = "bolt-shear",
        /// If it slips: does the wall bear at the hole?
        WallBearing = "wall-bearing",
        /// If it slips: does the fitting bear at the hole?
        FittingBearing = "fitting-bearing",
        /// If it slips: does the bolt bend between cheeks and walls?
        BoltBending = "bolt-bending",
        /// If it slips: does the bolt take shear, pull and bending together?
        BoltCombined = "bolt-combined",
        /// If it slips: does the bolt tear out of the tube, to its end or to the next hole?
        TubeTearOut = "tube-tear-out",
        /// If it slips: does the bolt tear out of the fitting?
        FittingTearOut = "fitting-tear-out",
        /// If it slips: does the group tear a block out of tube or fitting?
        BlockShear = "block-shear",
        /// Does the tube hold with the holes in it?
        NetSection = "net-section",
        /// Does head or nut pull through what it lies on?
        PullThrough = "pull-through",
        /// Can the nut shake loose?
        Loosening = "loosening",
        /// Is the hole far enough from the end of the tube?
        EndDistance = "end-distance",
        /// Does the bolt stay below its proof load with its clamp and its share of the outside pull?
        BoltService = "bolt-service",
        /// Does the flange of the fitting hold the outside pull beside its bolts?
        FittingFlange = "fitting-flange",
        /// Is the hole far enough from the edge of the fitting?
        FittingEdge = "fitting-edge",
        /// Are the bolts far enough from each other?
        Spacing = "spacing",
        /// Is the hole one that a bolt of this size may have?
        HoleSize = "hole-size",
        /// Does the washer cover the hole?
        WasherCover = "washer-cover",
        /// Does the sleeve fit the bolt?
        SleeveFit = "sleeve-fit",
        /// Does the bolt endure a pull that comes and goes?
        BoltFatigue = "bolt-fatigue",
        /// Do head and nut bear flat?
        WasherSeat = "washer-seat",
        /// Is the hole far enough from the free edge of a flange or a leg?
        MemberEdge = "member-edge",
        /// Is enough clamp left to call the joint tight?
        LeastClamp = "least-clamp",
        /// Can the fitting turn about its one bolt?
        Turning = "turning",
        /// Is it known how far beside the faces the load acts?
        LoadOffset = "load-offset",
        /// Does the flange, leg or web of an open section hold the outside pull?
        MemberFlange = "member-flange",
        /// Does the weld carry what the sleeve hands on to the tube?
        SleeveWeld = "sleeve-weld",
        /// Does the face that is pulled at, or that a side plate is pushed against, stay in place?
        FacePull = "face-pull",
        /// Is the sleeve or block as long as the space inside?
        SleeveLength = "sleeve-length",
        /// Do the holes lie in the flat of the face?
        HolePlace = "hole-place",
        /// Do the washers lie flat on metal, clear of each other?
        WasherPlace = "washer-place",
        /// Do the sleeves find room beside each other and between the corners?
        SleevePlace = "sleeve-place",
        /// Do the plates lie on the member, and the washers on the plates?
        PlatePlace = "plate-place",
        /// Does a socket go over every head and nut?
        WrenchRoom = "wrench-room",
    }
}

/// One check: demand against capacity with its factor, the verdict and the way there.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Check {
    /// Which question.
    pub id: CheckId,
    /// How it stands.
    pub verdict: Verdict,
    /// What is asked of it.
    pub demand: Amount,
    /// What it has.
    pub capacity: Amount,
    /// Factor on the demand.
    pub factor: f64,
    /// What the factor is, by key.
    pub factor_is: Factor,
    /// factor × demand / capacity; `None` where not checked. Of next to nothing no share is told in JSON.
    #[serde(serialize_with = "share_told")]
    pub utilisation: Option<f64>,
    /// The load case that decides; `None` where no load enters.
    pub case: Option<Governing>,
    /// Why, in plain words, by key.
    pub reason: Said,
    /// The working.
    pub steps: Vec<Step>,
}

/// Share used beyond which it says only that there is next to nothing.
const BEYOND_TELLING: f64 = 1e6;

#[allow(clippy::ref_option, reason = "serde hands over a reference")]
fn share_told<S: serde::Serializer>(used: &Option<f64>, to: S) -> Result<S::Ok, S::Error> {
    used.filter(|used| *used < BEYOND_TELLING).serialize(to)
}

keys! {
    /// A part that can give way.
    #[non_exhaustive]
    pub enum Part {
        /// A face of the tube bends inwards.
        Face = "face",
        /// The washer dishes.
        Washer = "washer",
        /// The plate on the face bends.
        Plate = "plate",
        /// The corner between face and side wall folds under the plate.
        Corner = "corner",
        /// The side walls yield, cripple or buckle.
        SideWall = "side-wall",
        /// The sleeve is squashed or buckles.
        Sleeve = "sleeve",
        /// The insert is squashed.
        Insert = "insert",
        /// The clamped stack is pressed in under the washer.
        Stack = "stack",
        /// The bolt yields.
        Bolt = "bolt",
    }
}

/// Numbers of one face at one strength.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct FaceNumbers {
    /// Initial stiffness, clamp force per indentation of this face.
    pub stiffness_n_per_mm: f64,
    /// Clamp force at an indentation of 1 % of the outside width.
    pub load_at_1pct_of_width_n: f64,
    /// Clamp force at an indentation of 3 % of the outside width.
    pub load_at_3pct_of_width_n: f64,
    /// Clamp force at the largest indentation that was checked, 6 % of the outside width.
    pub load_at_6pct_of_width_n: f64,
    /// Clamp force at which a lasting dent of 0.1 mm stays.
    pub lasting_dent_from_n: f64,
    /// Which part gives way.
    pub gives_way: Part,
}

/// One face of the tube under its washer or plate.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FaceReport {
    /// `"head"` or `"nut"`.
    pub side: &'static str,
    /// `"washer"`, `"fitting"` or `"spreader"`.
    pub bears_by: &'static str,
    /// Outside diameter of the washer.
    pub washer_outer_mm: f64,
    /// Factor for a near open end: 1 away from it, 0.5 close to it. Already in the numbers of
    /// [`SupportReport`], not in those of `least` and `likely` here.
    pub end_factor: f64,
    /// What of the face one bolt of the group has, near an open end or not: 1 for one bolt away from it. Already in the
    /// numbers of [`SupportReport`], not in those of `least` and `likely` here.
    pub group_factor: f64,
    /// With least strength.
    pub least: FaceNumbers,
    /// With likely strength.
    pub likely: FaceNumbers,
    /// Published chord-face yield-line load, washer as a circular patch, likely strength.
    pub yield_line_circular_patch_n: f64,
    /// The same with a square patch as wide as the washer.
    pub yield_line_square_patch_n: f64,
    /// Whether all of it lies in the range that the finite-element runs cover, and what does not.
    pub out_of_range: Vec<OutOfRange>,
}

/// Limits of the whole support at one strength.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct SupportNumbers {
    /// Clamp force from which a lasting dent stays.
    pub lasting_dent_from_n: f64,
    /// Clamp force at which each face is in by 1 % of its width (or the support's own limit if lower).
    pub load_at_1pct_of_width_n: f64,
    /// Clamp force at which each face is in by 3 % of its width (or the support's own limit if lower).
    pub load_at_3pct_of_width_n: f64,
    /// Clamp force that the support is trusted with: the limit used by the clamp check.
    pub limit_n: f64,
    /// Which part gives way.
    pub gives_way: Part,
    /// Stiffness against small changes at the reached clamp, between the washers.
    pub stiffness_n_per_mm: f64,
    /// The lesser of the clamp that the torque gives and the limit.
    pub clamp_reached_n: f64,
}

/// What the clamp stands on.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SupportReport {
    /// Which kind.
    pub kind: SupportKind,
    /// Why nobody can say how much clamp is reached, by key; the numbers here then mean nothing.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub unknown: Option<Message>,
    /// The two faces; empty where no hollow face is loaded.
    pub faces: Vec<FaceReport>,
    /// With least strength: verdicts.
    pub least: SupportNumbers,
    /// With likely strength: what is seen on the bench.
    pub likely: SupportNumbers,
    /// Approach of head and nut from the support at the wanted clamp, likely strength; `None` if the
    /// clamp is not reached in the checked range.
    pub approach_at_wanted_clamp_mm: Option<f64>,
    /// Dent of each face (average) at the wanted clamp, likely strength.
    pub dent_at_wanted_clamp_mm: Option<f64>,
    /// Dent of each face that stays after loosening, likely strength.
    pub dent_left_mm: Option<f64>,
    /// Torque above which the wrench would not click in the checked range, likely strength; `None` if
    /// the support takes more than the bolt.
    pub clicks_up_to_nm: Option<f64>,
}

/// What tightening does.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct TighteningReport {
    /// Torque on the wrench.
    pub torque_nm: f64,
    /// Nut factor.
    pub nut_factor: f64,
    /// Scatter about the nominal, as a share.
    pub scatter_share: f64,
    /// Least clamp of the scatter, if the support could take it.
    pub clamp_min_n: f64,
    /// Nominal clamp, if the support could take it.
    pub clamp_nominal_n: f64,
    /// Largest clamp of the scatter, if the support could take it.
    pub clamp_max_n: f64,
    /// Tensile stress area.
    pub stress_area_mm2: f64,
    /// Proof load (proof stress × stress area).
    pub proof_load_n: f64,
    /// Yield load.
    pub yield_load_n: f64,
    /// Thread and face friction that the nut factor implies, taken as equal.
    pub implied_friction: f64,
    /// Share of the torque that stretches the bolt.
    pub share_stretch: f64,
    /// Share of the torque that rubs in the threads.
    pub share_thread_friction: f64,
    /// Share of the torque that rubs under the turned face.
    pub share_face_friction: f64,
    /// Combined (von Mises) stress at the nominal clamp while the wrench turns.
    pub combined_stress_nominal_mpa: f64,
    /// Combined stress at the largest clamp of the scatter, with the friction that goes with it.
    pub combined_stress_max_mpa: f64,
}

/// Load on one bolt in the governing case.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct BoltShare {
    /// Position along the tube from the middle of the group, forward positive.
    pub along_mm: f64,
    /// Position across from the middle of the group.
    pub across_mm: f64,
    /// Force in the faying plane along the tube.
    pub force_along_n: f64,
    /// Force in the faying plane across.
    pub force_across_n: f64,
    /// Outside pull along the bolt, opening positive.
    pub pull_n: f64,
}

/// Loads on the joint and what each bolt gets in the case that slips first.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LoadsReport {
    /// Name of the governing case by key.
    pub case: CaseName,
    /// Along the tube, at the ball.
    pub longitudinal_n: f64,
    /// Upward or downward, at the ball.
    pub vertical_n: f64,
    /// Sideways, at the ball.
    pub transverse_n: f64,
    /// Bolt by bolt.
    pub bolts: Vec<BoltShare>,
    /// What is bolted on.
    pub joint: JointKind,
    /// Published loads that are checked on top of the road's, by id.
    pub rule: &'static str,
    /// Every case, bolt by bolt.
    pub cases: Vec<CaseReport>,
}

/// One load case and what each bolt gets.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct CaseReport {
    /// Name by key.
    pub case: CaseName,
    /// What it asks for.
    pub kind: LoadKind,
    /// Along the tube, forward positive.
    pub longitudinal_n: f64,
    /// Upward positive.
    pub vertical_n: f64,
    /// To the left positive.
    pub transverse_n: f64,
    /// Where it acts, ahead of the middle of the group.
    pub point_ahead_mm: f64,
    /// Where it acts, below the middle of the group.
    pub point_below_mm: f64,
    /// Largest component by another reading of the rule, where its text is in conflict.
    pub other_reading_n: Option<f64>,
    /// Moment in the faying plane.
    pub twist_nm: f64,
    /// Moment that pulls the bolts in front.
    pub pitch_nm: f64,
    /// Moment that pulls the bolts on one side.
    pub roll_nm: f64,
    /// Bolt by bolt.
    pub bolts: Vec<BoltShare>,
    /// Where the case comes from.
    #[serde(flatten)]
    pub cite: Cite,
}

/// The load case that decides a check.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Governing {
    /// Name by key.
    pub case: CaseName,
    /// What it asks for.
    pub kind: LoadKind,
}

/// Losses after tightening and what is left.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct LossesReport {
    /// Initial relaxation.
    pub relaxation_n: f64,
    /// Flattening of rough faces.
    pub embedding_n: f64,
    /// Loss from temperature against the unfavourable swing.
    pub temperature_n: f64,
    /// Least clamp that is left in service.
    pub left_min_n: f64,
}

/// The whole answer.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Report {
    /// Version of the scenario's meaning.
    pub version: u32,
    /// What was put in.
    pub input: Input,
    /// Worst verdict of the applicable checks.
    pub verdict: Verdict,
    /// The check that decides, first in `checks`.
    pub weakest: CheckId,
    /// Tightening.
    pub tightening: TighteningReport,
    /// What the clamp stands on.
    pub support: SupportReport,
    /// Losses.
    pub losses: LossesReport,
    /// Loads.
    pub loads: LoadsReport,
    /// Checks, weakest first.
    pub checks: Vec<Check>,
    /// Inputs that were derived because nothing was given: field and value in its own unit.
    pub derived: Vec<(Field, f64)>,
    /// Things to say that are no check.
    pub notes: Vec<Said>,
    /// Fatigue, on the road that is assumed.
    pub fatigue: FatigueReport,
    /// What is not known: each check is then the worst of all joints that it may be. Empty where all is known.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub not_known: Vec<NotKnown>,
    /// Which single measurement would change the verdict, the one that may help most first.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub would_help: Vec<WouldHelp>,
}

/// A field of which nobody knows what it is.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct NotKnown {
    /// Which.
    pub field: Field,
    /// Its value in the joint that decides.
    pub counted: Settled,
    /// All that it may be.
    pub stands_for: Vec<Settled>,
}

/// A measurement that would change the verdict.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct WouldHelp {
    /// Field that it settles.
    pub field: Field,
    /// How it is usually found out, by key.
    pub how: Label,
    /// What may be found, each with the verdict that it brings while all else is as little known as before.
    pub found: Vec<Found>,
}

/// Something that may be found, and what it brings.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Found {
    /// What is found.
    pub value: Settled,
    /// The verdict then.
    pub verdict: Verdict,
}

impl Report {
    /// The check that answers a question; `None` where the joint does not raise it.
    #[must_use]
    pub fn check(&self, id: CheckId) -> Option<&Check> {
        self.checks.iter().find(|check| check.id == id)
    }
}

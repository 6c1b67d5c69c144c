//! What the clamp stands on: one file a support, with everything that is known of it alone.
//!
//! [`of`] finds the support of a joint and [`PARTS`] lists what repairs put in: the two places where a
//! support is registered.

mod bare;
mod build;
mod insert;
mod lines;
mod loose_sleeve;
mod model;
mod one_ply;
pub(crate) mod parts;
mod pressed;
mod pulled;
mod repair_kind;
mod round_wall;
pub(crate) mod seat;
mod sleeves;
mod solid;
mod spreader;
mod through_sleeve;
mod washer;

pub(crate) use build::{group_factor, washer_end_factor};
pub(crate) use model::{Limit, SERVICE_SHARE, Side, SupportModel, VISIBLE};
pub(crate) use pulled::{Pulled, PulledFaces, pulled};
pub use repair_kind::RepairKind;
pub(crate) use repair_kind::added_part;
pub(crate) use sleeves::off_center;

use crate::catalog::Material;
use crate::quantity::{InUnits, Length, Stress, mm};
use crate::report::working::Working;
use crate::report::{Said, Sentence, say};
use crate::scenario::{Input, Scenario, SupportKind};
use build::Builder;
use parts::{Cutting, Pieces};

/// A support: what a report asks of it. What it does not say is so for two bare faces.
pub(crate) trait ClampSupport {
    /// Its curve and its limits.
    fn model(&self, b: &Builder<'_>) -> SupportModel;

    /// Working of the clamp check, for the limit that governs.
    fn working(&self, w: &mut Working, s: &Scenario, model: &SupportModel, governs: &Limit);

    /// Whether there is a hollow between head and nut at all.
    fn is_hollow(&self) -> bool {
        true
    }

    /// Whether fitting and wall are pressed together on something that does not give.
    fn is_firm(&self) -> bool {
        true
    }

    /// Whether a slipped bolt bends in a gap between the walls.
    fn leaves_gap(&self) -> bool {
        true
    }

    /// What a plate on a face is called, where one bears.
    fn plate(&self) -> Option<&'static str> {
        None
    }

    /// Whether verdicts rest on the curve of a bare face, which was checked within a range.
    fn rests_on_face(&self) -> bool {
        true
    }

    /// Whether the wall of a round tube would have to carry the clamp.
    fn leans_on_round_wall(&self, _s: &Scenario) -> bool {
        true
    }

    /// What it adds to the length between head and nut, beside the member.
    fn grip(&self, s: &Scenario) -> Grip {
        Grip {
            thickness: mm(0.0),
            material: s.spreader.material,
            interfaces: 0.0,
        }
    }

    /// What grows with heat between the outside faces of the member.
    fn between(&self, s: &Scenario) -> &'static Material {
        s.tube.material
    }

    /// Metal of the part that was put in: what corrodes with the others, and whose strength scatters.
    fn metal(&self, _s: &Scenario) -> Option<PartMetal> {
        None
    }

    /// Whether that part stands inside, where water stays.
    fn holds_water(&self) -> bool {
        false
    }

    /// Whether a stronger part changes the whole curve, and not only where its core yields.
    fn bends_with_face(&self) -> bool {
        false
    }

    /// Whether it goes through the walls: its ends are flat, and the hole in the wall is not the bolt's.
    fn passes_wall(&self) -> bool {
        false
    }

    /// Why the clamp goes past the wall, or the fitting does not lie on it: no friction holds the tube.
    fn passes_by(&self, _s: &Scenario) -> Option<Sentence<0>> {
        None
    }

    /// What holds a pull along the bolt where the fitting sits on one face of a tube.
    fn pulled(&self, b: &Builder<'_>, least: &SupportModel) -> Pulled {
        pulled::under_the_nut(b, least)
    }

    /// What presses on the rim of the hole in the wall once the joint has slipped: how wide it counts, and
    /// the yield strength of the wall or, if lower, of what presses.
    fn pin_in_wall(&self, s: &Scenario) -> (Length, Stress) {
        (s.bolting.thread.major(), s.tube.yield_least)
    }

    /// Play of it in the walls.
    fn play_in_wall(&self, _s: &Scenario) -> Length {
        mm(0.0)
    }

    /// How much longer than the space between the walls it may be; `None` where it is not cut to that.
    fn longest_over(&self, _s: &Scenario) -> Option<Length> {
        None
    }

    /// Hole in the walls of the member.
    fn hole_in_wall(&self, s: &Scenario) -> Length {
        s.bolting.hole
    }

    /// Hole that the bolt itself passes between the faces.
    fn bore(&self, s: &Scenario) -> Length {
        s.bolting.hole
    }

    /// How a hole in the wall is made that has to fit this support.
    fn hole_fit(&self, _s: &Scenario) -> Option<Said> {
        None
    }

    /// What is to be said about it in the report.
    fn notes(&self, _s: &Scenario) -> Vec<Said> {
        Vec::new()
    }

    /// What a repair puts in to make it.
    fn part(&self) -> Option<&'static dyn AddedPart> {
        None
    }

    /// What stays of it in a joint that is given another support.
    fn leaves_behind(&self, _s: &Scenario, _input: &mut Input) {}
}

/// A part that a repair puts in.
pub(crate) trait AddedPart {
    /// What kind of repair that is.
    fn kind(&self, s: &Scenario) -> RepairKind;

    /// Whether it is another piece than before, under the same kind of support.
    fn differs(&self, before: &Scenario, after: &Scenario) -> bool;

    /// Whether every bolt has one of its own, so that a bolt more gets one too.
    fn one_a_bolt(&self) -> bool {
        true
    }

    /// Whether it makes the grip longer, so that longer bolts are bought.
    fn lengthens_grip(&self) -> bool {
        false
    }

    /// The pieces for so many bolts.
    fn pieces(&self, s: &Scenario, bolts: u32) -> Option<Pieces>;

    /// How they are cut.
    fn cutting(&self, s: &Scenario, pieces: &Pieces) -> Cutting;

    /// Welds for so many bolts.
    fn welds(&self, _s: &Scenario, _bolts: u32) -> u32 {
        0
    }

    /// Adds the joints worth trying with it.
    fn candidates(&self, s: &Scenario, all: &mut Vec<Input>);
}

/// What a support adds to the length between head and nut.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Grip {
    /// All plates together.
    pub(crate) thickness: Length,
    /// What they are of.
    pub(crate) material: &'static Material,
    /// Faces that lie on each other and were not there before.
    pub(crate) interfaces: f64,
}

/// Metal of a part that was put in.
#[derive(Clone, Copy, Debug)]
pub(crate) struct PartMetal {
    pub(crate) material: &'static Material,
    /// Whether it is as soft as next to a weld.
    pub(crate) welded: bool,
}

/// The support of a joint.
pub(crate) fn of(s: &Scenario) -> &'static dyn ClampSupport {
    match s.support {
        SupportKind::Bare => &bare::Bare,
        SupportKind::Spreader => &spreader::SpreaderPlate,
        SupportKind::LooseSleeve => &loose_sleeve::LooseSleeve,
        SupportKind::ThroughSleeve => &through_sleeve::ThroughSleeve,
        SupportKind::SolidInsert => &insert::SolidInsert,
        SupportKind::Solid => &solid::Solid,
    }
}

/// What repairs put in, in the order in which it is tried.
pub(crate) const PARTS: [&dyn AddedPart; 5] = [
    &washer::ThickWasher,
    &spreader::SpreaderPlate,
    &insert::SolidInsert,
    &loose_sleeve::LooseSleeve,
    &through_sleeve::ThroughSleeve,
];

/// Builds the curve of a joint's support. One ply of an open section stands on nothing hollow, whatever
/// lies on it, and a round wall has no curve of its own.
fn model_of(b: &Builder<'_>) -> SupportModel {
    if b.s.member.is_open() {
        one_ply::model(b)
    } else if seat::round_wall_carries(b.s) {
        round_wall::model(b)
    } else {
        of(b.s).model(b)
    }
}

/// Working of the clamp check: from what the clamp stands on to the limit that governs.
pub(crate) fn working(w: &mut Working, s: &Scenario, model: &SupportModel, governs: &Limit) {
    if seat::round_wall_carries(s) {
        // No number to lead to: the check says that it cannot know.
    } else if s.member.is_open() {
        one_ply::working(w, s, governs);
    } else {
        of(s).working(w, s, model, governs);
        if governs.code == say::LimitStackPressed && of(s).is_hollow() {
            lines::pressed(w, s, governs, false);
        }
    }
}

/// Why no friction holds the tube, by key; `None` where the clamp presses fitting and wall together. One ply
/// and what is solid are always in the way of the clamp.
pub(crate) fn passes_by(s: &Scenario) -> Option<Sentence<0>> {
    of(s).passes_by(s)
}

/// Whether it is welded to the member.
pub(crate) fn is_welded(s: &Scenario) -> bool {
    of(s).metal(s).is_some_and(|metal| metal.welded)
}

/// Least and likely yield strength of the part that was put in; `None` where nothing was.
pub(crate) fn part_strengths(s: &Scenario) -> Option<[f64; 2]> {
    let PartMetal { material, welded } = of(s).metal(s)?;
    let rows = [
        material.least_beside(welded),
        material.likely_beside(welded),
    ];
    Some(rows.map(|row| row.compressive_yield_strength().si()))
}

/// The same joint on another support, with what stays of the one that was there.
fn with_support(s: &Scenario, kind: SupportKind) -> Input {
    let mut input = s.input.clone();
    input.choose(kind);
    if s.support != kind {
        of(s).leaves_behind(s, &mut input);
    }
    input
}

#[cfg(test)]
mod tests;

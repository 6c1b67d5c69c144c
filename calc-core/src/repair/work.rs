//! Work, material and cost that a repair adds: what is cut, drilled and welded, how often.

use super::fit::Fit;
use super::mends::Damage;
use super::seats::Seats;
use super::{Rates, Work};
use crate::catalog::{Family, Material, Treatment};
use crate::quantity::InUnits;
use crate::report::Label;
use crate::scenario::unknown::is_unknown;
use crate::scenario::{Field, Scenario};
use crate::support::parts::{Pieces, Shape, count};
use crate::support::{self, AddedPart};
use serde::Serialize;

/// Difference below which two holes are the same, m: what a drill leaves anyway.
const SAME_HOLE: f64 = 0.05e-3;

/// Depth of hole, and section of metal to a cut, that the minutes of the rates are for; more takes longer in
/// proportion. Assumptions: 1 in and 2 sq in.
const HOLE_DEPTH: f64 = 25.4e-3;
const SAWN_AREA: f64 = 1290e-6;

/// Length of a block that is milled or turned in one setting of the minutes, m. An own assumption: 6 in.
const MILLED_LENGTH: f64 = 0.1524;

/// Set-ups in a lathe to bore a piece of bar: drilled and bored halfway from each end. An assumption.
const BORED_SETUPS: u32 = 2;

/// A weld on a round wall, whose edge goes up and down, in welds on a flat one. An assumption.
const ROUND_WELD: f64 = 1.5;

/// Play between bolt and sleeve below which the bore is reamed, m on the diameter (1/32 in): 1/64 in to
/// each side is usual. Common practice, no source.
pub(super) const REAM_BELOW: f64 = 0.794e-3;

/// Play of the bolt in its sleeve, m on the diameter.
pub(super) fn play_in_sleeve(s: &Scenario) -> f64 {
    (s.sleeve.inner - s.bolting.thread.major()).si()
}

/// Money for a kilogram.
pub(super) const fn per_kg(material: &Material, rates: &Rates) -> f64 {
    match material.family() {
        Family::Aluminium => rates.aluminium_kg,
        Family::Steel => rates.steel_kg,
        Family::Stainless => rates.stainless_kg,
    }
}

/// A step of the work.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Operation {
    /// Which, by code.
    pub what: Label,
    /// How often.
    pub count: u32,
    /// Minutes by the rates, all together.
    pub minutes: f64,
    /// Cost by the rates.
    pub cost: f64,
}

/// Holes of one kind in what is there already.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Drilled {
    /// Opened up from the hole that is there.
    pub(super) opened: u32,
    /// Drilled where there is none.
    pub(super) new: u32,
}

impl Drilled {
    pub(super) const fn all(self) -> u32 {
        self.opened + self.new
    }
}

/// Everything that has to be done, counted.
pub(super) struct Jobs {
    /// What every bolt that is new to it gets.
    pub(super) part: Option<&'static dyn AddedPart>,
    pub(super) pieces: Option<Pieces>,
    /// In the walls of the tube.
    pub(super) in_tube: Drilled,
    /// In the fitting.
    pub(super) in_fitting: Drilled,
    pub(super) welds: u32,
    /// Faying faces taken to another state.
    pub(super) surfaces: u32,
    /// Whether they have to be blasted.
    pub(super) blasted: bool,
    /// Bolts to loosen and tighten.
    pub(super) bolts: u32,
    /// Bolts that are added, to be laid out.
    pub(super) added: u32,
    /// Bolts to buy.
    pub(super) new_bolts: u32,
    /// How the pieces get their length.
    pub(super) fit: Option<Fit>,
    /// Saddles or tapered washers that are new.
    pub(super) seats: Option<Seats>,
    /// Holes through a block or through solid metal, and how deep they are, m.
    pub(super) deep_holes: u32,
    deep: f64,
    /// Those of them that go through a block that is there already.
    pub(super) through_block: u32,
    /// Whether the welds lie on a round wall.
    round: bool,
    /// What was found.
    pub(super) damage: Damage,
    /// Sleeves that are welded in and come out first.
    pub(super) sleeves_out: u32,
    /// Dished faces to press flat: under head and nut of each bolt that was there.
    pub(super) dished: u32,
    /// Faces that have slid and are brushed off and looked at, beside those that are taken to another state.
    pub(super) fretted: u32,
    /// Bores of sleeves to ream, and how deep they are, m.
    pub(super) reamed: u32,
    reamed_deep: f64,
    /// Fittings that do not fit any more.
    pub(super) brackets: u32,
}

/// What has to be done on the way from one joint to another with the part that is put in.
pub(super) fn jobs(
    before: &Scenario,
    after: &Scenario,
    added_part: Option<&'static dyn AddedPart>,
    damage: Damage,
) -> Jobs {
    let bolts = count(after.bolting.count());
    let old = count(before.bolting.count()).min(bolts);
    let added = bolts - old;
    // Holes in each wall or ply: opened where the bolt, or the sleeve, needs more room.
    let holes = |from: f64, to: f64, each: u32| Drilled {
        opened: if to > from + SAME_HOLE { old * each } else { 0 },
        new: added * each,
    };
    // Where nothing else changes, a bolt more gets what the others stand on.
    let there = support::of(after);
    let (part, on) = match added_part {
        None => (there.part().filter(|part| part.one_a_bolt()), added),
        part => (part, bolts),
    };
    let planes = if after.bolting.two_cheeks { 2 } else { 1 };
    // A ply of the fitting lies at every plane.
    let plies = if after.fitting.thickness.si() > 0.0 {
        planes
    } else {
        0
    };
    let solid = after.support.is_solid();
    let walls = if after.member.is_open() || solid {
        1
    } else {
        2
    };
    let seats = Seats::added(before, after);
    // Threads of which nothing was known are changed for new ones.
    let other_threads = after.tightening.lubrication.id() != before.tightening.lubrication.id();
    let fastened_anew = damage.spoils_bolts()
        || (other_threads && is_unknown(before.tightening.lubrication.id()))
        || added_part.is_some_and(AddedPart::lengthens_grip)
        || seats.is_some()
        || after.bolting.thread != before.bolting.thread
        || after.bolting.grade != before.bolting.grade;
    let pieces = part
        .and_then(|part| part.pieces(after, on))
        .filter(|p| p.count > 0);
    let in_tube = holes(
        support::of(before).hole_in_wall(before).si(),
        there.hole_in_wall(after).si(),
        walls,
    );
    // Through the block that is made, or through the metal that is there already.
    let block = pieces.filter(|p| matches!(p.shape, Shape::Block { .. }));
    let filled = block.is_none() && after.support.has_block();
    let through_block = if filled { in_tube.all() / walls } else { 0 };
    let (deep_holes, deep) = match block {
        Some(p) => (p.count * p.shape.holes(), p.shape.hole_depth()),
        None if solid => (in_tube.all(), after.tube.depth.si()),
        None => (through_block, after.tube.depth.si()),
    };
    // Each plate between fitting and face makes two pairs of faces of one.
    let pairs = if after.support.has_plates() && !after.member.is_open() {
        2
    } else {
        1
    };
    let faces = 2 * planes * pairs;
    let surfaces = if after.tightening.surface == before.tightening.surface {
        0
    } else {
        faces
    };
    let fretted = if damage.has_slid() && surfaces == 0 {
        2 * planes
    } else {
        0
    };
    // With a larger washer on it, the sleeve stays.
    let stays = after.support == before.support && after.sleeve == before.sleeve;
    let welded_out = added_part.is_some() && support::is_welded(before) && !stays;
    // Bar is bored to fit, and says itself what is left to do.
    let tight = pieces.filter(|p| {
        matches!(p.shape, Shape::Sleeve { bored: false, .. }) && play_in_sleeve(after) < REAM_BELOW
    });
    Jobs {
        damage,
        sleeves_out: if welded_out { old } else { 0 },
        dished: if damage.has(Field::FoundHollow) {
            old * walls
        } else {
            0
        },
        fretted,
        reamed: tight.map_or(0, |p| p.count),
        reamed_deep: tight.map_or(0.0, |p| p.shape.length()),
        brackets: u32::from(needs_bracket(before, after, seats.as_ref())),
        part,
        pieces,
        in_tube,
        in_fitting: holes(before.fitting.hole.si(), after.fitting.hole.si(), plies),
        welds: part.map_or(0, |part| part.welds(after, on)),
        surfaces,
        blasted: after.tightening.surface.treatment() == Treatment::Blasted,
        bolts,
        added,
        // Longer bolts where plates or washers make the grip longer; otherwise what is new.
        new_bolts: if fastened_anew { bolts } else { added },
        fit: pieces.as_ref().and_then(|p| Fit::of(after, &p.shape)),
        seats,
        deep_holes,
        deep,
        through_block,
        round: after.member.is_round(),
    }
}

/// Whether the fitting that is there does not fit any more: plates or saddles come between its side plates and the tube,
/// or it does not reach to the bolts that are added.
fn needs_bracket(before: &Scenario, after: &Scenario, seats: Option<&Seats>) -> bool {
    (after.fitting.thickness.si() > 0.0 && is_pushed_apart(before, after, seats))
        || is_outgrown(before, after)
}

/// Whether plates or saddles come between two side plates and the tube.
pub(super) fn is_pushed_apart(before: &Scenario, after: &Scenario, seats: Option<&Seats>) -> bool {
    let apart = after.plates() > before.plates() && !after.member.is_open();
    let saddles = seats.is_some_and(|seats| !seats.is_bought());
    (apart || saddles) && after.bolting.two_cheeks
}

/// Whether bolts are added where the fitting has none.
pub(super) const fn is_outgrown(before: &Scenario, after: &Scenario) -> bool {
    let (was, is) = (&before.bolting, &after.bolting);
    is.along > was.along || is.rows > was.rows
}

impl Jobs {
    /// Every step of the work in the order of working: what, how often, minutes for one.
    fn tasks(&self, rates: &Rates) -> [(Label, u32, f64); 14] {
        let pieces = self.pieces.as_ref();
        let each = |n: u32| pieces.map_or(0, |p| p.count * n);
        let [filed, machined] = self.fit.map_or([0, 0], Fit::jobs).map(each);
        let bored = pieces.filter(|p| p.bored());
        // A long block takes as many passes more.
        let long = pieces.filter(|p| matches!(p.shape, Shape::Block { .. }));
        let passes = long.map_or(1.0, |p| (p.shape.length() / MILLED_LENGTH).max(1.0));
        let machined = machined + bored.map_or(0, |p| p.count * BORED_SETUPS);
        let deep = rates.minutes_hole * (self.deep / HOLE_DEPTH).max(1.0);
        let sawn = pieces.map_or(1.0, |p| (p.shape.sawn_area() / SAWN_AREA).max(1.0));
        let saddles = self.saddles();
        let weld = if self.round { ROUND_WELD } else { 1.0 };
        let surface = if self.blasted { 2.0 } else { 1.0 };
        let ream = rates.minutes_hole * (self.reamed_deep / HOLE_DEPTH).max(1.0);
        let fastened = if self.new_bolts == self.bolts {
            Label::WorkNewBolts
        } else {
            Label::WorkBolts
        };
        [
            (
                Label::WorkRemoveSleeves,
                self.sleeves_out,
                2.0 * rates.minutes_weld,
            ),
            (Label::WorkFlatten, self.dished, rates.minutes_file),
            (Label::WorkFretted, self.fretted, rates.minutes_surface),
            (Label::WorkLayout, self.added, rates.minutes_layout),
            (
                Label::WorkHoles,
                self.holes() - self.deep_holes,
                rates.minutes_hole,
            ),
            (Label::WorkCuts, self.cuts(), rates.minutes_cut * sawn),
            (Label::WorkMachine, machined, rates.minutes_machine * passes),
            (
                Label::WorkSaddles,
                saddles,
                rates.minutes_saddle + rates.minutes_cut,
            ),
            (Label::WorkFit, filed, rates.minutes_file),
            // With the block in its place.
            (Label::WorkDeepHoles, self.deep_holes, deep),
            (Label::WorkWelds, self.welds, rates.minutes_weld * weld),
            (Label::WorkReam, self.reamed, ream),
            (
                Label::WorkSurfaces,
                self.surfaces,
                rates.minutes_surface * surface,
            ),
            (fastened, self.bolts, rates.minutes_bolt),
        ]
    }

    /// Those that there are, with their cost.
    pub(super) fn steps(&self, rates: &Rates) -> Vec<Operation> {
        self.tasks(rates)
            .into_iter()
            .filter(|(_, count, _)| *count > 0)
            .map(|(what, count, each)| {
                let minutes = f64::from(count) * each;
                Operation {
                    what,
                    count,
                    minutes,
                    cost: minutes / 60.0 * rates.hour,
                }
            })
            .collect()
    }

    /// Saddles to make; tapered washers are bought.
    fn saddles(&self) -> u32 {
        let made = self.seats.as_ref().filter(|seats| !seats.is_bought());
        made.map_or(0, |seats| seats.count)
    }

    /// Cuts of the pieces; those of saddles are counted with them.
    fn cuts(&self) -> u32 {
        self.pieces.as_ref().map_or(0, |p| p.count * p.shape.cuts())
    }

    /// All holes.
    pub(super) fn holes(&self) -> u32 {
        let pieces = self.pieces.as_ref();
        let in_pieces = pieces.map_or(0, |p| p.count * p.shape.holes());
        let drilled = self.in_tube.all() + self.in_fitting.all() + in_pieces;
        drilled + self.through_block + self.saddles()
    }

    /// Counts, minutes, mass and cost by the rates.
    pub(super) fn work(&self, rates: &Rates) -> Work {
        let minutes: f64 = self
            .tasks(rates)
            .iter()
            .map(|(_, count, each)| f64::from(*count) * each)
            .sum();
        let pieces = self.pieces.as_ref();
        let mass = pieces.map_or(0.0, Pieces::mass);
        let mut material = pieces.map_or(0.0, |p| p.bought() * per_kg(p.material, rates));
        let mut seated = 0.0;
        if let Some(seats) = &self.seats {
            seated = seats.mass();
            material += seats.cost(rates);
        }
        Work {
            holes: self.holes(),
            cuts: self.cuts() + self.saddles(),
            welds: self.welds,
            surfaces: self.surfaces,
            minutes,
            mass_kg: mass + seated,
            cost: minutes / 60.0 * rates.hour
                + material
                + f64::from(self.new_bolts) * rates.bolt
                + f64::from(self.brackets) * rates.bracket,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::repair::RepairKind;
    use crate::scenario::Input;
    use crate::support::added_part;

    fn done(change: impl FnOnce(&mut Input), kind: RepairKind) -> Work {
        let before = Input::default();
        let mut after = before.clone();
        change(&mut after);
        let [before, after] = [before, after].map(|input| Scenario::new(&input).unwrap());
        assert_eq!(RepairKind::between(&before, &after), kind);
        jobs(
            &before,
            &after,
            added_part(&before, &after),
            Damage::default(),
        )
        .work(&Rates::default())
    }

    #[test]
    fn counts_are_those_of_a_shop() {
        // Two bolts through both sides of the tube, a cheek on each.
        let sleeves = done(
            |i| {
                i.support = String::from("through-sleeve");
                i.sleeve_welded = String::from("no");
            },
            RepairKind::ThroughSleeve,
        );
        assert_eq!((sleeves.holes, sleeves.cuts, sleeves.welds), (4, 2, 0));
        let larger = done(|i| i.bolt = String::from("unc-5.8"), RepairKind::Tightening);
        // Four in the tube, four in the cheeks.
        assert_eq!((larger.holes, larger.cuts), (8, 0));
        let one_more = done(|i| i.bolts_along = 3.0, RepairKind::Tightening);
        assert_eq!(one_more.holes, 4);
        let block = done(
            |i| i.support = String::from("solid-insert"),
            RepairKind::SolidInsert,
        );
        assert_eq!((block.holes, block.cuts), (2, 2));
        let cleaned = done(
            |i| i.faying_surface = String::from("painted"),
            RepairKind::Tightening,
        );
        assert_eq!((cleaned.surfaces, cleaned.holes), (4, 0));
    }

    #[test]
    fn plates_that_would_overlap_are_one() {
        let plates = |length: f64| {
            done(
                |i| {
                    i.support = String::from("spreader");
                    i.spreader_length_mm = length;
                },
                RepairKind::Spreader,
            )
        };
        // Two bolts 90 mm apart, on two faces.
        assert_eq!(plates(80.0).cuts, 4);
        assert_eq!(plates(100.0).cuts, 2);
        assert_eq!(plates(100.0).holes, plates(80.0).holes);
        assert!(plates(100.0).mass_kg > plates(80.0).mass_kg);
    }
}

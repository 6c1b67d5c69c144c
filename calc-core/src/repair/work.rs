//! Work, material and cost that a repair adds: what is cut, drilled and welded, how often.

use super::{Rates, Work};
use crate::catalog::{Family, Treatment};
use crate::quantity::InUnits;
use crate::scenario::Scenario;
use crate::support::parts::{Pieces, Shape, count};
use crate::support::{self, AddedPart};

/// Difference below which two holes are the same, m: what a drill leaves anyway.
const SAME_HOLE: f64 = 0.05e-3;

impl Pieces {
    /// Money for a kilogram.
    pub(super) const fn per_kg(&self, rates: &Rates) -> f64 {
        match self.material.family() {
            Family::Aluminium => rates.aluminium_kg,
            Family::Steel => rates.steel_kg,
            Family::Stainless => rates.stainless_kg,
        }
    }
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
    const fn all(self) -> u32 {
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
    /// Bolts to buy.
    pub(super) new_bolts: u32,
}

/// What has to be done on the way from one joint to another with the part that is put in.
pub(super) fn jobs(
    before: &Scenario,
    after: &Scenario,
    added_part: Option<&'static dyn AddedPart>,
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
    let walls = if after.member.is_open() { 1 } else { 2 };
    let fastened_anew = added_part.is_some_and(AddedPart::lengthens_grip)
        || after.bolting.thread != before.bolting.thread
        || after.bolting.grade != before.bolting.grade;
    Jobs {
        part,
        pieces: part
            .and_then(|part| part.pieces(after, on))
            .filter(|p| p.count > 0),
        in_tube: holes(
            support::of(before).hole_in_wall(before).si(),
            there.hole_in_wall(after).si(),
            walls,
        ),
        in_fitting: holes(before.fitting.hole.si(), after.fitting.hole.si(), plies),
        welds: part.map_or(0, |part| part.welds(after, on)),
        // Both faces of every plane that slips.
        surfaces: if after.tightening.surface == before.tightening.surface {
            0
        } else {
            2 * planes
        },
        blasted: after.tightening.surface.treatment() == Treatment::Blasted,
        bolts,
        // Longer bolts where plates or washers make the grip longer; otherwise what is new.
        new_bolts: if fastened_anew { bolts } else { added },
    }
}

impl Jobs {
    /// Minutes for one faying face.
    pub(super) fn minutes_surface(&self, rates: &Rates) -> f64 {
        rates.minutes_surface * if self.blasted { 2.0 } else { 1.0 }
    }

    /// Counts, minutes, mass and cost by the rates.
    pub(super) fn work(&self, rates: &Rates) -> Work {
        let in_pieces =
            |each: fn(&Shape) -> u32| self.pieces.as_ref().map_or(0, |p| p.count * each(&p.shape));
        let holes = self.in_tube.all() + self.in_fitting.all() + in_pieces(Shape::holes);
        let cuts = in_pieces(Shape::cuts);
        let minutes = f64::from(holes) * rates.minutes_hole
            + f64::from(cuts) * rates.minutes_cut
            + f64::from(self.welds) * rates.minutes_weld
            + f64::from(self.surfaces) * self.minutes_surface(rates)
            + f64::from(self.bolts) * rates.minutes_bolt;
        let mass = self.pieces.as_ref().map_or(0.0, Pieces::mass);
        let material = mass * self.pieces.as_ref().map_or(0.0, |p| p.per_kg(rates));
        Work {
            holes,
            cuts,
            welds: self.welds,
            surfaces: self.surfaces,
            minutes,
            mass_kg: mass,
            cost: minutes / 60.0 * rates.hour + material + f64::from(self.new_bolts) * rates.bolt,
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
        jobs(&before, &after, added_part(&before, &after)).work(&Rates::default())
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

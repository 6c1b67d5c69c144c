//! Work, material and cost that a repair adds: what is cut, drilled and welded, how often.

use super::{Rates, RepairKind, Work};
use crate::catalog::{self, Family, Material, Treatment};
use crate::quantity::InUnits;
use crate::scenario::{Mount, Scenario, SupportKind};
use std::f64::consts::FRAC_PI_4;

/// Length of an insert past the outermost bolts, both ends together, in widths of the tube: so that it
/// fills the tube under every washer. An assumption.
const INSERT_OVERHANG: f64 = 1.5;

/// Play across an insert, so that it slides in from the end, m. An assumption.
const SLIDES: f64 = 0.5e-3;

/// Difference below which two holes are the same, m: what a drill leaves anyway.
const SAME_HOLE: f64 = 0.05e-3;

/// The new part that a repair puts in; all pieces of a repair are alike. Lengths in m.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Shape {
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
    /// Cut from tube or pipe.
    Sleeve { outer: f64, inner: f64, length: f64 },
    /// Fills the tube; holes for `bolts` bolts.
    Block {
        length: f64,
        width: f64,
        depth: f64,
        bolts: u32,
        hole: f64,
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
            } => (disc(outer) - disc(inner)) * length,
            Self::Block {
                length,
                width,
                depth,
                bolts,
                hole,
            } => (length * width - f64::from(bolts) * disc(hole)) * depth,
        }
        .max(0.0)
    }

    /// Holes to drill in it.
    pub(super) const fn holes(&self) -> u32 {
        match *self {
            Self::Washer { .. } => 1,
            Self::Plate { bolts, .. } | Self::Block { bolts, .. } => bolts,
            Self::Sleeve { .. } => 0,
        }
    }

    /// Cuts to make one.
    const fn cuts(&self) -> u32 {
        match self {
            // Sawn off square at both ends.
            Self::Block { .. } => 2,
            _ => 1,
        }
    }
}

/// New parts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Pieces {
    pub(super) count: u32,
    pub(super) shape: Shape,
    pub(super) material: &'static Material,
}

impl Pieces {
    /// Mass of all of them, kg.
    pub(super) fn mass(&self) -> f64 {
        f64::from(self.count) * self.shape.volume() * self.material.density().value
    }

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
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Jobs {
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

/// A number of things; no joint has as many as would not fit.
fn count(n: usize) -> u32 {
    u32::try_from(n).unwrap_or(u32::MAX)
}

pub(super) fn jobs(before: &Scenario, after: &Scenario, kind: RepairKind) -> Jobs {
    let bolts = count(after.bolting.count());
    let old = count(before.bolting.count()).min(bolts);
    let added = bolts - old;
    // Holes in each wall or ply: opened where the bolt, or the sleeve, needs more room.
    let holes = |from: f64, to: f64, each: u32| Drilled {
        opened: if to > from + SAME_HOLE { old * each } else { 0 },
        new: added * each,
    };
    // Where nothing else changes, a bolt more gets what the others stand on.
    let (part, on) = match kind {
        RepairKind::Tightening => (there(after), added),
        kind => (kind, bolts),
    };
    let planes = match after.bolting.mount {
        Mount::ThroughSides if !after.bolting.single_ply => 2,
        _ => 1,
    };
    // A ply of the fitting lies at every plane.
    let plies = if after.fitting.thickness.si() > 0.0 {
        planes
    } else {
        0
    };
    let walls = if after.member.is_open() { 1 } else { 2 };
    let fastened_anew = matches!(kind, RepairKind::Spreader | RepairKind::ThickWasher)
        || after.bolting.thread != before.bolting.thread
        || after.bolting.grade != before.bolting.grade;
    Jobs {
        pieces: pieces(after, part, on).filter(|p| p.count > 0),
        in_tube: holes(hole_in_wall(before), hole_in_wall(after), walls),
        in_fitting: holes(before.fitting.hole.si(), after.fitting.hole.si(), plies),
        welds: if part == RepairKind::WeldedSleeve {
            2 * on
        } else {
            0
        },
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

/// Hole in the walls of the tube: that of a through sleeve is as wide as the sleeve.
pub(super) fn hole_in_wall(s: &Scenario) -> f64 {
    if s.support == SupportKind::ThroughSleeve {
        s.sleeve.outer.max(s.bolting.hole).si()
    } else {
        s.bolting.hole.si()
    }
}

/// What the bolts of a joint stand on, as a kind of repair.
fn there(s: &Scenario) -> RepairKind {
    match s.support {
        SupportKind::Spreader => RepairKind::Spreader,
        SupportKind::LooseSleeve => RepairKind::LooseSleeve,
        SupportKind::ThroughSleeve if s.sleeve.welded => RepairKind::WeldedSleeve,
        SupportKind::ThroughSleeve => RepairKind::ThroughSleeve,
        _ => RepairKind::Tightening,
    }
}

fn pieces(after: &Scenario, kind: RepairKind, bolts: u32) -> Option<Pieces> {
    let b = &after.bolting;
    let hole = b.hole.si();
    let (depth, wall) = (after.tube.depth.si(), after.tube.wall.si());
    let sleeve = |length: f64| Pieces {
        count: bolts,
        shape: Shape::Sleeve {
            outer: after.sleeve.outer.si(),
            inner: after.sleeve.inner.si(),
            length,
        },
        material: after.sleeve.material,
    };
    // From the first bolt of a row to the last.
    let row = (b.along.saturating_sub(1)) as f64 * b.spacing_along.si();
    match kind {
        RepairKind::Tightening => None,
        RepairKind::ThickWasher => Some(Pieces {
            count: 2 * bolts,
            shape: Shape::Washer {
                outer: b.washer.outer.si(),
                thick: b.washer.thickness.si(),
                hole,
            },
            material: catalog::material("a36")?,
        }),
        RepairKind::Spreader => {
            let p = &after.spreader;
            // Plates that would overlap become one; those of two rows are one anyway.
            let joined = b.along > 1 && p.length > b.spacing_along;
            let on_a_face = if joined {
                bolts.min(1)
            } else {
                bolts.div_ceil(count(b.rows).max(1))
            };
            Some(Pieces {
                // On both faces of a tube, under the nut of a flange.
                count: if after.member.is_open() { 1 } else { 2 } * on_a_face,
                shape: Shape::Plate {
                    length: p.length.si() + if joined { row } else { 0.0 },
                    width: p.width.si(),
                    thick: p.thickness.si(),
                    bolts: bolts / on_a_face.max(1),
                    hole,
                },
                material: p.material,
            })
        }
        RepairKind::LooseSleeve => Some(sleeve(depth - 2.0 * wall - after.sleeve_short.si())),
        RepairKind::ThroughSleeve | RepairKind::WeldedSleeve => Some(sleeve(depth)),
        RepairKind::SolidInsert => Some(Pieces {
            count: 1,
            shape: Shape::Block {
                length: row + INSERT_OVERHANG * after.tube.width.si(),
                width: after.tube.width.si() - 2.0 * wall - SLIDES,
                depth: depth - 2.0 * wall - after.sleeve_short.si(),
                bolts,
                hole,
            },
            material: after.insert_material,
        }),
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
    use crate::scenario::Input;

    fn done(change: impl FnOnce(&mut Input), kind: RepairKind) -> Work {
        let before = Input::default();
        let mut after = before.clone();
        change(&mut after);
        let [before, after] = [before, after].map(|input| Scenario::new(&input).unwrap());
        jobs(&before, &after, kind).work(&Rates::default())
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

//! Work, material and cost that a repair adds.

use super::{Rates, RepairKind, Work};
use crate::catalog::{self, Family};
use crate::quantity::InUnits;
use crate::scenario::Scenario;

pub(super) fn work(before: &Scenario, after: &Scenario, kind: RepairKind, rates: &Rates) -> Work {
    let bolts = u32::try_from(after.bolting.count()).unwrap_or(u32::MAX);
    let faces = 2 * bolts;
    let hole_area =
        crate::mechanics::sleeve::area(after.bolting.hole, crate::quantity::mm(0.0)).si();
    let plate = |t: f64, w: f64, l: f64| (t * w * l - t * hole_area).max(0.0);
    let sleeve_area = crate::mechanics::sleeve::area(after.sleeve.outer, after.sleeve.inner).si();
    let (depth, wall) = (after.tube.depth.si(), after.tube.wall.si());
    let ball = std::f64::consts::FRAC_PI_4 * after.bolting.washer.outer.si().powi(2);
    // A larger bolt opens every hole, one bolt more drills two.
    let opened = if after.input.bolt == before.input.bolt {
        faces
            - 2 * u32::try_from(before.bolting.count())
                .unwrap_or(0)
                .min(bolts)
    } else {
        faces
    };
    let (holes, cuts, welds, volume, material) = match kind {
        RepairKind::Tightening => (opened, 0, 0, 0.0, None),
        RepairKind::ThickWasher => (
            opened,
            0,
            0,
            f64::from(faces) * (ball - hole_area).max(0.0) * after.bolting.washer.thickness.si(),
            catalog::material("a36"),
        ),
        RepairKind::Spreader => {
            let p = &after.spreader;
            let one = plate(p.thickness.si(), p.width.si(), p.length.si());
            (
                faces + opened,
                faces,
                0,
                f64::from(faces) * one,
                Some(p.material),
            )
        }
        RepairKind::LooseSleeve => (
            opened,
            bolts,
            0,
            f64::from(bolts) * sleeve_area * (depth - 2.0 * wall),
            Some(after.sleeve.material),
        ),
        RepairKind::ThroughSleeve => (
            faces,
            bolts,
            0,
            f64::from(bolts) * sleeve_area * depth,
            Some(after.sleeve.material),
        ),
        RepairKind::WeldedSleeve => (
            faces,
            bolts,
            faces,
            f64::from(bolts) * sleeve_area * depth,
            Some(after.sleeve.material),
        ),
        RepairKind::SolidInsert => {
            let inside = (after.tube.width.si() - 2.0 * wall) * (depth - 2.0 * wall);
            let length = 1.5 * after.tube.width.si();
            (bolts, 2, 0, inside * length, Some(after.insert_material))
        }
    };
    let mass = material.map_or(0.0, |m| m.density().value * volume);
    let per_kg = material.map_or(0.0, |m| match m.family() {
        Family::Aluminium => rates.aluminium_kg,
        Family::Steel => rates.steel_kg,
        Family::Stainless => rates.stainless_kg,
    });
    let new_bolts = matches!(kind, RepairKind::Spreader | RepairKind::ThickWasher)
        || after.bolting.count() != before.bolting.count()
        || after.input.bolt != before.input.bolt
        || after.input.bolt_grade != before.input.bolt_grade;
    let minutes = f64::from(holes) * rates.minutes_hole
        + f64::from(cuts) * rates.minutes_cut
        + f64::from(welds) * rates.minutes_weld
        + f64::from(bolts) * rates.minutes_bolt;
    let bolt_cost = if new_bolts {
        f64::from(bolts) * rates.bolt
    } else {
        0.0
    };
    Work {
        holes,
        cuts,
        welds,
        minutes,
        mass_kg: mass,
        cost: minutes / 60.0 * rates.hour + mass * per_kg + bolt_cost,
    }
}

//! Candidates: every bolt worth trying on everything that the clamp could stand on.

use super::RepairKind;
use crate::catalog::{self, Family, Material};
use crate::evaluate::{judge, on_edge};
use crate::quantity::InUnits;
use crate::report::CheckId;
use crate::scenario::{Field, Input, Scenario, SupportKind};

/// Thicknesses of plate, mm (3/16, 1/4, 5/16, 3/8, 1/2 in). Common stock, no source.
const PLATES_MM: [f64; 5] = [4.7625, 6.35, 7.9375, 9.525, 12.7];

/// Length of spreader plates in widths of the tube.
const PLATE_LENGTHS: [f64; 4] = [1.0, 1.5, 2.0, 3.0];

/// Outside diameter of thick washers as a share of the width of the tube.
const WASHER_SHARES: [f64; 3] = [0.45, 0.6, 0.75];

/// Length error of a sleeve cut and filed to fit, mm. An assumption.
const FITTED_SHORT_MM: f64 = 0.1;

/// Share of the clamp limit that less torque aims at, so that the check does not end on the line.
const AIM: f64 = 0.79;

/// Every candidate, each also with the torque that it can take.
pub(super) fn all(s: &Scenario) -> Vec<(RepairKind, Input)> {
    if s.support == SupportKind::Solid {
        return Vec::new();
    }
    let mut all = Vec::new();
    for base in bolts(s) {
        let Ok(base) = Scenario::new(&base) else {
            continue;
        };
        for (kind, input) in stands(&base) {
            let eased = with_less_torque(&input);
            all.push((kind, input));
            all.extend(eased.map(|eased| (kind, eased)));
        }
    }
    seat(s, &mut all);
    all
}

/// The joint with the bolts it has, with a stronger grade, with the next two sizes, and each of them
/// with one bolt more in the row.
fn bolts(s: &Scenario) -> Vec<Input> {
    let stronger = match s.bolting.thread.system() {
        catalog::System::Inch => "sae-8",
        catalog::System::Metric => "iso-10.9",
    };
    let mut sizes: Vec<&catalog::Thread> = catalog::threads()
        .iter()
        .filter(|t| t.system() == s.bolting.thread.system() && t.fine() == s.bolting.thread.fine())
        .filter(|t| t.major() > s.bolting.thread.major() * 1.19)
        .collect();
    sizes.sort_by(|a, b| a.major().si().total_cmp(&b.major().si()));
    sizes.truncate(2);
    sizes.insert(0, s.bolting.thread);
    let mut inputs = vec![s.input.clone()];
    for thread in sizes {
        for grade in [s.bolting.grade.id(), stronger] {
            for more in [0.0, 1.0] {
                let mut input = s.input.clone();
                input.bolts_along += more;
                input.bolt = String::from(thread.id());
                input.bolt_grade = String::from(grade);
                if thread.id() != s.bolting.thread.id() {
                    // Another size brings its own hole and washer.
                    input.hole_mm = None;
                    input.fitting_hole_mm = None;
                    input.washer_outer_mm = None;
                    input.washer_thickness_mm = None;
                }
                if input.bolt != s.input.bolt || input.bolt_grade != s.input.bolt_grade {
                    // Another bolt wants its own torque.
                    input.torque_nm = None;
                }
                if !inputs.contains(&input) {
                    inputs.push(input);
                }
            }
        }
    }
    inputs
}

/// Everything that the clamp of a joint could be made to stand on.
fn stands(s: &Scenario) -> Vec<(RepairKind, Input)> {
    let mut all = vec![(RepairKind::Tightening, s.input.clone())];
    for thick in PLATES_MM {
        for share in WASHER_SHARES {
            let mut input = s.input.clone();
            input.support = String::from(SupportKind::Bare.name());
            input.washer_outer_mm = Some(round_half(share * s.tube.width.si() * 1e3));
            input.washer_thickness_mm = Some(thick);
            all.push((RepairKind::ThickWasher, input));
        }
    }
    for material in ["a36", "6061-t6"] {
        for thick in PLATES_MM {
            for times in PLATE_LENGTHS {
                let mut input = s.input.clone();
                input.support = String::from(SupportKind::Spreader.name());
                input.spreader_material = String::from(material);
                input.spreader_thickness_mm = thick;
                input.spreader_length_mm = round_half(times * s.tube.width.si() * 1e3);
                input.spreader_width_mm = None;
                all.push((RepairKind::Spreader, input));
            }
        }
    }
    for (sleeve, material) in fitting_sleeves(s) {
        let with = |support: SupportKind, welded: &str| {
            let mut input = s.input.clone();
            input.support = String::from(support.name());
            input.sleeve = String::from(sleeve.id());
            input.sleeve_material = String::from(material.id());
            input.sleeve_welded = String::from(welded);
            input.sleeve_outer_mm = None;
            input.sleeve_wall_mm = None;
            input.sleeve_short_mm = FITTED_SHORT_MM;
            input
        };
        all.push((
            RepairKind::LooseSleeve,
            with(SupportKind::LooseSleeve, "no"),
        ));
        all.push((
            RepairKind::ThroughSleeve,
            with(SupportKind::ThroughSleeve, "no"),
        ));
        let weldable = (material.family() == Family::Aluminium)
            == (s.tube.material.family() == Family::Aluminium);
        if weldable {
            all.push((
                RepairKind::WeldedSleeve,
                with(SupportKind::ThroughSleeve, "yes"),
            ));
        }
    }
    for material in ["6061-t6", "a36"] {
        let mut input = s.input.clone();
        input.support = String::from(SupportKind::SolidInsert.name());
        input.insert_material = String::from(material);
        input.sleeve_short_mm = FITTED_SHORT_MM;
        all.push((RepairKind::SolidInsert, input));
    }
    all
}

/// Where head or nut would bear on an edge, a washer made to fit belongs to the repair.
fn seat(s: &Scenario, all: &mut [(RepairKind, Input)]) {
    if !(s.member.is_round() || s.member.is_open()) {
        return;
    }
    for (_, input) in all {
        if Scenario::new(input).is_ok_and(|s| on_edge(&s)) {
            input.shaped_washer = String::from("yes");
        }
    }
}

/// Half millimetres: what a saw and a rule give.
fn round_half(mm: f64) -> f64 {
    (mm * 2.0).round() / 2.0
}

/// The same joint with the torque that its support can take, where that is less than wanted.
fn with_less_torque(input: &Input) -> Option<Input> {
    let scenario = Scenario::new(input).ok()?;
    let judged = judge(&scenario, false);
    let clamp = judged.checks.iter().find(|c| c.id == CheckId::Clamp)?;
    let used = clamp.utilisation?;
    if used <= AIM {
        return None;
    }
    let torque = judged.tight.torque.si() * AIM / used;
    // Whole newton metres, downwards: a wrench is set, not computed.
    let set = torque.floor();
    let (least, _) = Field::Torque.range()?;
    (set >= least).then(|| {
        let mut eased = input.clone();
        eased.torque_nm = Some(set);
        eased
    })
}

/// Sleeves that pass the bolt and are not so wide that it rattles: up to 4 mm of play.
fn fitting_sleeves(s: &Scenario) -> Vec<(&'static catalog::Sleeve, &'static Material)> {
    let d = s.bolting.thread.major().si();
    catalog::sleeves()
        .iter()
        .filter(|row| {
            let play = row.inner_diameter().si() - d;
            (0.0002..=0.004).contains(&play)
        })
        .flat_map(|row| {
            row.materials()
                .iter()
                .filter_map(move |id| catalog::material(id).map(|m| (row, m)))
        })
        .collect()
}

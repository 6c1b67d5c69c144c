//! Candidates: every bolt worth trying on everything that the clamp could stand on; and what to change
//! next in one that does not hold yet.

use super::Candidate;
use super::work::hole_in_wall;
use crate::catalog::{self, Family, HoleFit, Material};
use crate::evaluate::on_edge;
use crate::order::sorted;
use crate::quantity::InUnits;
use crate::report::{CLOSE_FROM, CheckId, Verdict};
use crate::scenario::{
    Field, Input, JointKind, Scenario, ShapedWasher, SleeveMaterial, SleeveWelded, SupportKind,
    YesNo,
};

/// Thicknesses of plate, mm (3/16, 1/4, 5/16, 3/8, 1/2, 5/8 in). Common stock, no source.
const PLATES_MM: [f64; 6] = [4.7625, 6.35, 7.9375, 9.525, 12.7, 15.875];

/// Length of spreader plates in widths of the tube.
const PLATE_LENGTHS: [f64; 4] = [1.0, 1.5, 2.0, 3.0];

/// Outside diameter of thick washers as a share of the width of the tube.
const WASHER_SHARES: [f64; 4] = [0.45, 0.6, 0.75, 0.9];

/// What plates and blocks are cut from.
const PLATE_MATERIALS: [&str; 3] = ["a36", "6061-t6", "stainless-304"];

/// Length error of a sleeve cut and filed to fit, mm. An assumption.
const FITTED_SHORT_MM: f64 = 0.1;

/// Share of the clamp limit that less torque aims at, so that the check does not end on the line.
const AIM: f64 = 0.79;

/// Bolt sizes that are always tried, and candidates below which further ones are.
const SIZES: usize = 3;
const ENOUGH: usize = 2250;

/// A loose sleeve has to be wider than the hole, or it stands in the hole and not on the wall: by 1 mm
/// all round. An assumption.
const SEAT: f64 = 2e-3;

/// Every candidate with the torque that its bolt wants.
///
/// The bolt size that is there and the next ones, until there are enough of them: a small tube or a thick
/// bolt leaves less room for sleeves.
pub(super) fn all(s: &Scenario) -> Vec<Input> {
    if s.support == SupportKind::Solid {
        return Vec::new();
    }
    let mut all = Vec::with_capacity(2 * ENOUGH);
    for (index, thread) in sizes(s).into_iter().enumerate() {
        if index >= SIZES && all.len() >= ENOUGH {
            break;
        }
        for base in bolts(s, thread) {
            if let Ok(base) = Scenario::new(&base) {
                stands(&base, &mut all);
            }
        }
    }
    seat(s, &mut all);
    all
}

/// The bolt size that is there, the larger ones, and then the smaller ones, nearest first; threads of the
/// other fineness last.
fn sizes(s: &Scenario) -> Vec<&'static catalog::Thread> {
    let there = s.bolting.thread;
    let sizes: Vec<_> = catalog::threads()
        .iter()
        .filter(|t| t.system() == there.system())
        // One size in a step that is worth a drill.
        .filter(|t| {
            let step = t.major().si() / there.major().si();
            step > 1.19 || step * 1.19 < 1.0
        })
        .collect();
    let order = |t: &&catalog::Thread| {
        let step = t.major().si() / there.major().si();
        let near = if step > 1.0 { step } else { 1e3 / step };
        near + if t.fine() == there.fine() { 0.0 } else { 1e6 }
    };
    let mut sizes = sorted(sizes, &|a, b| order(a).total_cmp(&order(b)));
    sizes.insert(0, there);
    sizes
}

/// A size in two grades, as many as there are, with one bolt more in each row, or with one row more.
fn bolts(s: &Scenario, thread: &'static catalog::Thread) -> Vec<Input> {
    let stronger = match s.bolting.thread.system() {
        catalog::System::Inch => "sae-8",
        catalog::System::Metric => "iso-10.9",
    };
    let mut inputs = Vec::new();
    for grade in [s.bolting.grade.id(), stronger] {
        for (along, rows) in [(0.0, 0.0), (1.0, 0.0), (0.0, 1.0)] {
            if rows > 0.0 && !row_fits(s, thread) {
                continue;
            }
            let mut input = s.input.clone();
            input.bolts_along += along;
            input.bolt_rows += rows;
            if along > 0.0 {
                behind(s.loads.joint, &mut input);
            }
            if thread != s.bolting.thread {
                input.choose(thread);
                // Another size brings its own washer, and its own hole unless the old one is wider.
                input.washer_outer_mm = None;
                input.washer_thickness_mm = None;
                let own = catalog::clearance_hole(thread, HoleFit::Normal)
                    .map_or(thread.major().si() * 1.1, |hole| hole.diameter.si());
                let wider = |old: f64| (old > own).then_some(old * 1e3);
                input.hole_mm = wider(s.bolting.hole.si());
                input.fitting_hole_mm = wider(s.fitting.hole.si());
            }
            input.bolt_grade = String::from(grade);
            if thread != s.bolting.thread || grade != s.bolting.grade.id() {
                // Another bolt wants its own torque.
                input.torque_nm = None;
            }
            if !inputs.contains(&input) {
                inputs.push(input);
            }
        }
    }
    inputs
}

/// A bolt more in the row goes behind the others, where there is tube: the middle of the group moves
/// back by half a space, and everything that acts in front acts farther from it.
fn behind(joint: JointKind, input: &mut Input) {
    let back = input.spacing_along_mm / 2.0;
    match joint {
        JointKind::SpringHanger => input.hanger_offset_mm += back,
        _ => input.ball_ahead_mm += back,
    }
}

/// Whether one row more still has its washers on the flat of the face.
fn row_fits(s: &Scenario, thread: &'static catalog::Thread) -> bool {
    let b = &s.bolting;
    let flat = s.tube.width - s.tube.corner_radius * 2.0;
    let rows = b.spacing_across * b.rows as f64;
    rows + thread.bearing_diameter().max(thread.major() * 2.0) <= flat
}

/// Everything that the clamp of a joint could be made to stand on.
fn stands(s: &Scenario, all: &mut Vec<Input>) {
    let on = |support: SupportKind| {
        let mut input = s.input.clone();
        if s.support != support {
            input.choose(support);
            keep_hole(s, &mut input);
        }
        input
    };
    all.push(s.input.clone());
    for thick in PLATES_MM {
        for share in WASHER_SHARES {
            let mut input = on(SupportKind::Bare);
            input.washer_outer_mm = Some(round_half(share * s.tube.width.si() * 1e3));
            input.washer_thickness_mm = Some(thick);
            all.push(input);
        }
    }
    for material in PLATE_MATERIALS {
        for thick in PLATES_MM {
            for times in PLATE_LENGTHS {
                let mut input = on(SupportKind::Spreader);
                input.spreader_material = String::from(material);
                input.spreader_thickness_mm = thick;
                input.spreader_length_mm = round_half(times * s.tube.width.si() * 1e3);
                input.spreader_width_mm = None;
                all.push(input);
            }
        }
        let mut input = on(SupportKind::SolidInsert);
        input.insert_material = String::from(material);
        input.sleeve_short_mm = FITTED_SHORT_MM;
        all.push(input);
    }
    sleeves(s, all);
}

/// A hole that was opened for a through sleeve stays as wide when the sleeve goes.
fn keep_hole(s: &Scenario, input: &mut Input) {
    if s.support == SupportKind::ThroughSleeve {
        input.fitting_hole_mm = Some(s.fitting.hole.si() * 1e3);
        input.hole_mm = Some(hole_in_wall(s) * 1e3);
    }
}

/// Sleeves of all stock that passes the bolt.
fn sleeves(s: &Scenario, all: &mut Vec<Input>) {
    let room = s.tube.width - s.tube.wall * 2.0;
    let hole = hole_in_wall(s);
    let rows = s.bolting.spacing_across * (s.bolting.rows as f64 - 1.0);
    let flat = s.tube.width - s.tube.corner_radius * 2.0 - rows;
    for (sleeve, material) in fitting_sleeves(s) {
        let outer = sleeve.outer_diameter();
        if outer > room {
            continue;
        }
        let with = |support: SupportKind, welded: YesNo| {
            let mut input = s.input.clone();
            input.choose(support);
            input.choose(sleeve);
            input.choose(SleeveMaterial(material));
            input.choose(SleeveWelded(welded));
            input.sleeve_outer_mm = None;
            input.sleeve_wall_mm = None;
            input.sleeve_short_mm = FITTED_SHORT_MM;
            input
        };
        if outer.si() >= hole + SEAT {
            let mut loose = with(SupportKind::LooseSleeve, YesNo::No);
            keep_hole(s, &mut loose);
            all.push(loose);
        }
        // It would rattle in the hole that is there, or its end would not lie flush in the rounded corner.
        if outer.si() < hole - 1e-6 || outer > flat {
            continue;
        }
        let through = with(SupportKind::ThroughSleeve, YesNo::No);
        all.push(through);
        let weldable = (material.family() == Family::Aluminium)
            == (s.tube.material.family() == Family::Aluminium);
        if weldable {
            let welded = with(SupportKind::ThroughSleeve, YesNo::Yes);
            all.push(welded);
        }
    }
}

/// Where head or nut would bear on an edge, a washer made to fit belongs to the repair.
fn seat(s: &Scenario, all: &mut [Input]) {
    if !(s.member.is_round() || s.member.is_open()) {
        return;
    }
    for input in all {
        if Scenario::new(input).is_ok_and(|s| on_edge(&s)) {
            input.choose(ShapedWasher(YesNo::Yes));
        }
    }
}

/// Half millimetres: what a saw and a rule give.
fn round_half(mm: f64) -> f64 {
    (mm * 2.0).round() / 2.0
}

/// Share used of a check that does not hold.
fn overused(candidate: &Candidate, id: CheckId) -> Option<f64> {
    let check = candidate.checks.iter().find(|c| c.id == id)?;
    check
        .utilisation
        .filter(|_| check.verdict != Verdict::Holds)
}

/// Whether something fails that neither another torque nor other faying faces can mend.
fn is_past_mending(candidate: &Candidate, mends: impl Fn(CheckId) -> bool) -> bool {
    candidate
        .checks
        .iter()
        .any(|check| !matches!(check.verdict, Verdict::Holds | Verdict::Close) && !mends(check.id))
}

/// What gets better with more residual.
const fn of_slipping(id: CheckId) -> bool {
    matches!(
        id,
        CheckId::Slip | CheckId::Loosening | CheckId::BoltFatigue
    )
}

/// The same joint with the torque that its support can take, where that is less than wanted and where the
/// faces could still grip with it.
pub(super) fn eased(candidate: &Candidate) -> Option<Input> {
    let used = overused(candidate, CheckId::Clamp).filter(|&used| used > AIM)?;
    let of_clamp = |id| {
        of_slipping(id)
            || matches!(
                id,
                CheckId::Clamp
                    | CheckId::BoltTightening
                    | CheckId::BoltService
                    | CheckId::BoltCombined
            )
    };
    if is_past_mending(candidate, of_clamp) || !could_grip(candidate) {
        return None;
    }
    // Whole newton metres, downwards: a wrench is set, not computed.
    let set = (candidate.torque.si() * AIM / used).floor();
    let (least, _) = Field::Torque.range()?;
    (set >= least).then(|| {
        let mut eased = candidate.scenario.input.clone();
        eased.torque_nm = Some(set);
        eased
    })
}

/// Whether the best faces that a shop can make would grip at the clamp that there is. ResidualClamp rises with the
/// coefficient, whatever else is in it, and less torque only takes from it.
fn could_grip(candidate: &Candidate) -> bool {
    let there = candidate.scenario.tightening.faying_friction;
    let best = better_surfaces(&candidate.scenario).fold(there, |best, row| best.max(row.mu()));
    overused(candidate, CheckId::Slip).is_none_or(|used| used * there <= best)
}

/// The same joint with faying faces that grip better, where more grip is all that is wanted: the joint
/// slips, and nothing fails that has another cause. The least work that leaves something in hand, or else
/// the best there is.
pub(super) fn gripping(candidate: &Candidate) -> Option<Input> {
    let used = overused(candidate, CheckId::Slip)?;
    if is_past_mending(candidate, of_slipping) {
        return None;
    }
    let there = candidate.scenario.tightening.faying_friction;
    let then = |row: &&catalog::SlipSurface| used * there / row.mu();
    let enough = better_surfaces(&candidate.scenario).filter(|row| then(row) <= CLOSE_FROM);
    let surface = enough
        .last()
        .or_else(|| better_surfaces(&candidate.scenario).find(|row| then(row) <= 1.0))?;
    let mut input = candidate.scenario.input.clone();
    input.choose(surface);
    input.faying_friction = None;
    Some(input)
}

/// States of the faying faces that a shop can bring them to and that grip better than the one there is,
/// best first.
///
/// Bare metal on any pair. On steel brushing and blasting, which the European classes describe. The
/// values for blasted aluminium start at joints 12 mm thick and both plies of aluminium.
fn better_surfaces(s: &Scenario) -> impl Iterator<Item = &'static catalog::SlipSurface> {
    let families = [s.tube.material.family(), s.fitting.material.family()];
    let thick = (s.tube.wall + s.fitting.thickness).si() * 1e3;
    let reachable: &[&str] = match families {
        [Family::Steel, Family::Steel] => &["en-a", "en-c", "bare-clean"],
        [Family::Aluminium, Family::Aluminium] if thick >= 12.0 => &["al-blasted-12", "bare-clean"],
        _ => &["bare-clean"],
    };
    let there = s.tightening.faying_friction;
    reachable
        .iter()
        .filter_map(|id| catalog::slip_surface(id))
        .filter(move |row| row.mu() > there + 1e-9)
}

/// Sleeves that pass the bolt and are not so wide that it rattles: up to 4 mm of play.
fn fitting_sleeves(
    s: &Scenario,
) -> impl Iterator<Item = (&'static catalog::Sleeve, &'static Material)> {
    let d = s.bolting.thread.major().si();
    catalog::sleeves()
        .iter()
        .filter(move |row| {
            let play = row.inner_diameter().si() - d;
            (0.0002..=0.004).contains(&play)
        })
        .flat_map(|row| {
            row.materials()
                .iter()
                .filter_map(move |id| catalog::material(id).map(|m| (row, m)))
        })
}

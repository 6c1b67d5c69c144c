//! Candidates: every bolt worth trying on everything that the clamp could stand on; and what to change
//! next in one that does not hold yet.

use super::Candidate;
use crate::catalog::{self, Family, HoleFit};
use crate::evaluate::on_edge;
use crate::order::sorted;
use crate::quantity::InUnits;
use crate::report::{CLOSE_FROM, Check, CheckId, Verdict};
use crate::scenario::unknown::UNKNOWN;
use crate::scenario::{
    BoltFinish, Field, Input, JointKind, Scenario, ShapedWasher, SupportKind, YesNo,
};
use crate::support::{self, PARTS};

/// Share of the clamp limit that less torque aims at, so that the check does not end on the line.
const AIM: f64 = 0.79;

/// Bolt sizes that are always tried, and candidates below which further ones are.
const SIZES: usize = 3;
const ENOUGH: usize = 2250;

/// Every candidate with the torque that its bolt wants.
///
/// The bolt size that is there and the next ones, until there are enough of them: a small tube or a thick
/// bolt leaves less room for sleeves.
pub(super) fn all(s: &Scenario) -> Vec<Input> {
    with_bolts(s, &[(0.0, 0.0), (1.0, 0.0), (0.0, 1.0)], ENOUGH)
}

/// The same with still more bolts: two more in each row, or one more and a row more. For joints that nothing else holds.
pub(super) fn with_more_bolts(s: &Scenario) -> Vec<Input> {
    with_bolts(s, &[(2.0, 0.0), (1.0, 1.0)], 0)
}

fn with_bolts(s: &Scenario, added: &[(f64, f64)], enough: usize) -> Vec<Input> {
    // Nothing is put into what is not hollow: other bolts, another torque and better faces remain.
    let parts: &[_] = if support::of(s).is_hollow() {
        &PARTS
    } else {
        &[]
    };
    let mut all = Vec::with_capacity(ENOUGH + enough);
    for (index, thread) in sizes(s).into_iter().enumerate() {
        if index >= SIZES && (all.len() >= enough || parts.is_empty()) {
            break;
        }
        for base in bolts(s, thread, added) {
            let tried = Scenario::new(&base).ok();
            if let Some(base) = &tried {
                all.push(base.input.clone());
            }
            // What does not go through the sleeve or block that is there goes through another.
            let room = tried.or_else(|| Scenario::new(&emptied(base)).ok());
            if let Some(base) = room {
                for part in parts {
                    part.candidates(&base, &mut all);
                }
            }
        }
    }
    seat(s, &mut all);
    all
}

/// The same without anything in the tube.
fn emptied(mut input: Input) -> Input {
    input.choose(SupportKind::Bare);
    input
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

/// A size in two grades, each with so many bolts more in a row and rows more.
fn bolts(s: &Scenario, thread: &'static catalog::Thread, added: &[(f64, f64)]) -> Vec<Input> {
    // A stainless bolt is followed by a stainless one.
    let stronger = match (s.bolting.finish, s.bolting.thread.system()) {
        (BoltFinish::Stainless, catalog::System::Inch) => "f593-cw",
        (BoltFinish::Stainless, catalog::System::Metric) => "a4-80",
        (_, catalog::System::Inch) => "sae-8",
        (_, catalog::System::Metric) => "iso-10.9",
    };
    let mut inputs = Vec::new();
    // New bolts are of a grade that is known.
    let not_known = s.not_known.contains(&Field::Grade);
    let usual = match (not_known, s.bolting.finish, s.bolting.thread.system()) {
        (false, ..) => s.bolting.grade.id(),
        (true, BoltFinish::Stainless, catalog::System::Inch) => "f593-cw",
        (true, BoltFinish::Stainless, catalog::System::Metric) => "a2-70",
        (true, _, catalog::System::Inch) => "sae-5",
        (true, _, catalog::System::Metric) => "iso-8.8",
    };
    let there = (not_known && thread == s.bolting.thread).then_some(UNKNOWN);
    for grade in there.into_iter().chain([usual, stronger]) {
        for &(along, rows) in added {
            if rows > 0.0 && !row_fits(s, thread) {
                continue;
            }
            let mut input = s.input.clone();
            input.bolts_along += along;
            input.bolt_rows += rows;
            if along > 0.0 {
                behind(s.loads.joint, &mut input, along);
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
            let other = thread != s.bolting.thread || *grade != s.input.bolt_grade;
            if other {
                // Another bolt wants its own torque.
                input.torque_nm = None;
            }
            if !other && !inputs.contains(&input) {
                inputs.push(input.clone());
            }
            as_bought(s, &mut input);
            if !inputs.contains(&input) {
                inputs.push(input);
            }
        }
    }
    inputs
}

/// Where nobody knows what is on the threads there are, new bolts are put in: zinc plated ones as they are bought, others
/// cleaned and oiled. Stainless ones stay as they are: theirs is a row of its own.
fn as_bought(s: &Scenario, input: &mut Input) {
    let known = match s.bolting.finish {
        BoltFinish::Stainless => return,
        BoltFinish::Zinc => "zinc",
        _ => "oiled",
    };
    if s.input.lubrication == UNKNOWN && s.input.nut_factor.is_none() && input.bolt_grade != UNKNOWN
    {
        input.lubrication = String::from(known);
        input.torque_nm = None;
    }
}

/// Bolts more in the row go behind the others, where there is tube: the middle of the group moves back by half a space
/// for each, and everything that acts in front acts farther from it.
fn behind(joint: JointKind, input: &mut Input, added: f64) {
    let back = input.spacing_along_mm / 2.0 * added;
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

/// What gets better with more slip resistance.
const fn of_slipping(id: CheckId) -> bool {
    matches!(
        id,
        CheckId::Slip | CheckId::Loosening | CheckId::BoltFatigue
    )
}

/// What gets better with less torque, or may.
const fn of_clamp(id: CheckId) -> bool {
    of_slipping(id)
        || matches!(
            id,
            CheckId::Clamp
                | CheckId::BoltTightening
                | CheckId::BoltService
                | CheckId::BoltCombined
                | CheckId::FacePull
        )
}

/// Whether something fails that neither another torque nor other faying faces can mend, whatever else is the matter.
pub(super) fn never_mended(checks: &[Check]) -> bool {
    checks
        .iter()
        .any(|c| c.verdict == Verdict::DoesNotHold && !of_clamp(c.id))
}

/// The same joint with the torque that its support and its bolts can take, where that is less than is set and where the
/// faces could still grip with it.
pub(super) fn eased(candidate: &Candidate) -> Option<Input> {
    let clamp = overused(candidate, CheckId::Clamp).filter(|&used| used > AIM);
    let bolt = overused(candidate, CheckId::BoltTightening).filter(|&used| used > 1.0);
    let used = clamp.into_iter().chain(bolt).reduce(f64::max)?;
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
///
/// A joint that has slid wants better faces as long as it uses more than `slides_below`, whatever the check says.
pub(super) fn gripping(candidate: &Candidate, slides_below: Option<f64>) -> Option<Input> {
    let slides = |used: &f64| slides_below.is_some_and(|most| used.is_finite() && *used > most);
    let used =
        overused(candidate, CheckId::Slip).or_else(|| Some(candidate.slides).filter(slides))?;
    let aim = slides_below.map_or(CLOSE_FROM, |most| most.min(CLOSE_FROM));
    if is_past_mending(candidate, of_slipping) {
        return None;
    }
    let there = candidate.scenario.tightening.faying_friction;
    let then = |row: &&catalog::SlipSurface| used * there / row.mu();
    let enough = better_surfaces(&candidate.scenario).filter(|row| then(row) <= aim);
    let surface = enough.last().or_else(|| {
        better_surfaces(&candidate.scenario)
            .find(|row| then(row) <= slides_below.map_or(1.0, |most| most.min(1.0)))
    })?;
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
    let families = s.tightening.metals;
    let thick = (s.tube.wall + s.fitting.thickness).si() * 1e3;
    let reachable: &[&str] = match families {
        [Family::Steel, Family::Steel, Family::Steel] => &["en-a", "en-c", "bare-clean"],
        [Family::Aluminium, Family::Aluminium, Family::Aluminium] if thick >= 12.0 => {
            &["al-blasted-12", "bare-clean"]
        }
        _ => &["bare-clean"],
    };
    let there = s.tightening.faying_friction;
    reachable
        .iter()
        .filter_map(move |id| catalog::slip_surface_between(id, &families))
        .filter(move |row| row.mu() > there + 1e-9)
}

//! From a scenario to a report, in the order a fabricator would ask.

pub(crate) mod analysis;
mod basis;
mod checks;
mod fatigue;
mod holes;
pub(crate) mod loads;
mod member_section;
pub(crate) mod preload;
mod pried;
mod remarks;
pub(crate) mod residual_clamp;
pub(crate) mod sleeve_weld;
pub(crate) mod support;
mod turn;
mod unknown;

pub(crate) use seat::{clamp_unknown, on_edge, round_wall_carries};

pub(crate) use analysis::Analysis;
pub use basis::{Basis, basis};
pub use fatigue::road;
pub use turn::{Ends, Knee, TorqueTurn, TurnPoint, known_torque_turn, torque_turn};
pub(crate) use unknown::checks_of;
pub use unknown::deciding;

use crate::order::sorted;
use crate::quantity::InUnits;
use crate::report::{Check, CheckId, FatigueReport, Report, RoadSpectrum, Said, Verdict, say};
use crate::scenario::{Field, Scenario, VERSION};
use crate::support::{of, parts::said, seat};

/// Computes the whole report: of a joint of which something is not known the worst of all that it may be.
#[must_use]
pub fn evaluate(s: &Scenario) -> Report {
    let mut report = if s.not_known.is_empty() {
        of_one(s)
    } else {
        unknown::report(s)
    };
    report.would_help = unknown::would_help(s, report.verdict);
    report
}

/// The report of a joint of which all is known.
fn of_one(s: &Scenario) -> Report {
    let analysis = Analysis::new(s);
    let checks = checks_in_order(&analysis);
    let (weakest, verdict) = weakest(&checks);
    let fatigue = fatigue::report(&analysis, checks::holds_so_far(&checks), road(s));
    Report {
        version: VERSION,
        input: s.input.clone(),
        verdict,
        weakest,
        tightening: analysis.preload.report(s),
        support: analysis.support.report(&analysis),
        losses: analysis.residual.losses(),
        loads: analysis.cases().report(s, analysis.service()),
        notes: notes(&analysis),
        checks,
        derived: s.derived.clone(),
        fatigue,
        not_known: Vec::new(),
        would_help: Vec::new(),
    }
}

/// Fatigue of a joint on another road than its own.
///
/// The check of the bolt in the report stays with [`road`].
#[must_use]
pub fn fatigue(s: &Scenario, road: &RoadSpectrum) -> FatigueReport {
    let s = &*deciding(s);
    let analysis = Analysis::without_working(s);
    let gripping = checks::holds_so_far(&checks_in_order(&analysis));
    fatigue::report(&analysis, gripping, road.clone())
}

/// Whether the torque that is set may have stretched the bolts for good.
pub(crate) fn may_be_stretched(s: &Scenario) -> bool {
    let checks = checks_of(&Analysis::without_working(s), |_| false);
    checks
        .iter()
        .any(|check| check.id == CheckId::BoltTightening && check.verdict == Verdict::DoesNotHold)
}

/// The check that decides, and how it stands: the first of them.
pub(crate) fn weakest(checks: &[Check]) -> (CheckId, Verdict) {
    checks
        .first()
        .map_or((CheckId::Clamp, Verdict::NotChecked), |c| (c.id, c.verdict))
}

/// The checks, weakest first; without their working the others are in no order.
pub(crate) fn checks_in_order(analysis: &Analysis<'_>) -> Vec<Check> {
    let mut checks = checks::all(analysis);
    if analysis.working {
        let follows = most_that_follows(&checks);
        let weight = |check: &Check| weight(check, follows);
        return sorted(checks, &|a, b| weight(b).total_cmp(&weight(a)));
    }
    weakest_first(&mut checks);
    checks
}

/// Brings the weakest check to the front; where thousands of joints are compared, nobody reads the rest.
fn weakest_first(checks: &mut [Check]) {
    let follows = most_that_follows(checks);
    let mut weakest = (0, f64::NEG_INFINITY);
    for (index, check) in checks.iter().enumerate() {
        let weight = weight(check, follows);
        if weight > weakest.1 {
            weakest = (index, weight);
        }
    }
    if !checks.is_empty() {
        checks.swap(0, weakest.0);
    }
}

/// Most that is used of what the clamp alone holds: grip, faces shut, nut in place.
fn most_that_follows(checks: &[Check]) -> f64 {
    checks
        .iter()
        .filter(|check| {
            matches!(
                check.id,
                CheckId::Slip | CheckId::Opening | CheckId::Loosening
            )
        })
        .filter_map(|check| check.utilisation)
        .fold(0.0, f64::max)
}

/// Order of checks: by verdict, then by what is used. A clamp that is not reached comes before what follows from it.
fn weight(check: &Check, follows: f64) -> f64 {
    let rank = match check.verdict {
        Verdict::DoesNotHold => 3.0,
        Verdict::NotChecked => 2.0,
        Verdict::Close => 1.0,
        Verdict::Holds => 0.0,
    };
    let own = check.utilisation.unwrap_or(0.0);
    let used = if check.id == CheckId::Clamp && check.verdict == Verdict::DoesNotHold {
        own.max(follows + 1e-3)
    } else {
        own
    };
    // What was found outweighs what is computed.
    let found = if check.id == CheckId::Found { 1e6 } else { 0.0 };
    rank * 1e6 + used.min(9e5) + found
}

fn notes(analysis: &Analysis<'_>) -> Vec<Said> {
    let s = analysis.s;
    let mut notes: Vec<Said> = checks::found::damage(&s.input).skip(1).collect();
    if analysis.preload.combined_max(s) > s.bolting.yield_strength() {
        notes.push(said(say::NoteBoltMaySet, []));
    }
    if let Some(heat) = analysis.heat_on_seat() {
        notes.push(Said::new(say::NoteHeatOnSeat, (heat,)));
    }
    if s.tightening.coated() {
        notes.push(said(say::NotePaintInJoint, []));
    }
    notes.extend(of(s).notes(s));
    let plain = loads::notes(s).into_iter().chain(seat::notes(s));
    notes.extend(plain.map(|code| said(code, [])));
    if s.input.is_default(Field::EndDistance) {
        let distance = [s.tube.end_distance.si()];
        if s.member.is_open() {
            notes.push(said(say::NoteEndDistanceTaken, distance));
        }
        let faces = analysis.support.least.sides().is_some();
        if s.tube.open_end && faces {
            notes.push(said(say::NoteEndDistanceAssumed, distance));
        }
    }
    notes.extend(remarks::remarks(s, &analysis.preload));
    notes
}

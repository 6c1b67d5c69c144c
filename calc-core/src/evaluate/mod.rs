//! From a scenario to a report, in the order a fabricator would ask.

mod behind;
mod checks;
mod fatigue;
pub(crate) mod grip;
mod holes;
pub(crate) mod loads;
mod pried;
mod remarks;
mod seat;
pub(crate) mod stand;
pub(crate) mod support;
pub(crate) mod tighten;
mod turn;
pub(crate) mod working;

pub(crate) use seat::{clamp_unknown, on_edge, round_wall_carries};

pub use fatigue::{fatigue, road};
pub use turn::{Ends, Knee, TorqueTurn, TurnPoint, torque_turn};

use crate::order::sorted;
use crate::quantity::{Dimension, InUnits};
use crate::report::{Amount, Check, CheckId, Report, Said, Verdict};
use crate::scenario::{Field, Scenario, SupportKind, VERSION};

/// Computes the whole report.
#[must_use]
pub fn evaluate(s: &Scenario) -> Report {
    let judged = judge(s, true);
    let (weakest, verdict) = judged.weakest();
    let Judged {
        tight,
        stands,
        grip,
        cases,
        service,
        checks,
    } = judged;
    let fatigue = fatigue::report(s, &tight, &grip, &cases, (&checks, road(s)));
    Report {
        version: VERSION,
        input: s.input.clone(),
        verdict,
        weakest,
        tightening: tight.report(s),
        support: stands.report(s, &tight),
        losses: grip.losses(),
        loads: cases.report(s, service.as_ref()),
        notes: notes(s, &tight, &stands),
        checks,
        derived: s.derived.clone(),
        fatigue,
    }
}

/// Checks of a scenario with what they rest on; all that is needed to compare many candidates.
pub(crate) struct Judged {
    pub(crate) tight: tighten::Tight,
    pub(crate) stands: support::Stands,
    pub(crate) grip: grip::Grip,
    pub(crate) cases: loads::Cases,
    service: Option<loads::Service>,
    /// Weakest first; without their working the others are in no order.
    pub(crate) checks: Vec<Check>,
}

impl Judged {
    /// The check that decides, and how it stands.
    pub(crate) fn weakest(&self) -> (CheckId, Verdict) {
        self.checks
            .first()
            .map_or((CheckId::Clamp, Verdict::NotChecked), |c| (c.id, c.verdict))
    }
}

/// Runs the checks, with or without their working.
pub(crate) fn judge(s: &Scenario, working: bool) -> Judged {
    let tight = tighten::tighten(s);
    let stands = support::Stands::new(s, &tight);
    let grip = grip::grip(s, &tight, &stands);
    let cases = loads::Cases::new(s);
    let service = cases.service(s, &grip);
    let mut checks = checks::all(
        s,
        (&tight, &stands, &grip),
        (&cases, service.as_ref()),
        working,
    );
    if working {
        checks = sorted(checks, &|a, b| weight(b).total_cmp(&weight(a)));
    } else {
        weakest_first(&mut checks);
    }
    Judged {
        tight,
        stands,
        grip,
        cases,
        service,
        checks,
    }
}

/// Brings the weakest check to the front; where thousands of joints are compared, nobody reads the rest.
fn weakest_first(checks: &mut [Check]) {
    let mut weakest = (0, f64::NEG_INFINITY);
    for (index, check) in checks.iter().enumerate() {
        let weight = weight(check);
        if weight > weakest.1 {
            weakest = (index, weight);
        }
    }
    if !checks.is_empty() {
        checks.swap(0, weakest.0);
    }
}

/// Order of checks: by verdict, then by what is used.
fn weight(check: &Check) -> f64 {
    let rank = match check.verdict {
        Verdict::DoesNotHold => 3.0,
        Verdict::NotChecked => 2.0,
        Verdict::Close => 1.0,
        Verdict::Holds => 0.0,
    };
    rank * 1e6 + check.utilisation.unwrap_or(0.0).min(9e5)
}

fn notes(s: &Scenario, tight: &tighten::Tight, stands: &support::Stands) -> Vec<Said> {
    let mut notes = Vec::new();
    let mut say = |code, amounts| notes.push(Said { code, amounts });
    if tight.combined_max(s) > s.bolting.yield_strength() {
        say("note-bolt-may-set", Vec::new());
    }
    if s.tightening.coated {
        say("note-paint-in-joint", Vec::new());
    }
    if s.support == SupportKind::ThroughSleeve {
        let taken = s.sleeve.outer.si() / s.tube.width.si();
        say(
            "note-sleeve-hole",
            vec![
                Amount::new(s.sleeve.outer.si(), Dimension::Length),
                Amount::new(taken, Dimension::Share),
            ],
        );
    }
    let cut = matches!(
        s.support,
        SupportKind::LooseSleeve | SupportKind::SolidInsert
    );
    if cut && s.sleeve_short.si() < 0.0 {
        say(
            "note-sleeve-long",
            vec![Amount::new(-s.sleeve_short.si(), Dimension::Length)],
        );
    }
    if cut && s.sleeve_short.si() > 0.0 {
        say(
            "note-sleeve-short",
            vec![Amount::new(s.sleeve_short.si(), Dimension::Length)],
        );
    }
    for code in loads::notes(s) {
        say(code, Vec::new());
    }
    for code in seat::notes(s) {
        say(code, Vec::new());
    }
    if s.input.is_default(Field::EndDistance) && s.member.is_open() {
        say(
            "note-end-distance-taken",
            vec![Amount::new(s.tube.end_distance.si(), Dimension::Length)],
        );
    }
    let faces = stands.least.sides().is_some();
    if s.input.is_default(Field::EndDistance) && s.tube.open_end && faces {
        say(
            "note-end-distance-assumed",
            vec![Amount::new(s.tube.end_distance.si(), Dimension::Length)],
        );
    }
    notes.extend(remarks::remarks(s));
    notes
}

//! The candidate that comes nearest, where none holds: what still stands against it, and by how much.

use super::{RepairKind, changed};
use crate::evaluate::{Analysis, checks_of, weakest};
use crate::quantity::InUnits;
use crate::report::{Check, CheckId, Message, Said, Verdict};
use crate::scenario::{Field, Input, Scenario};
use crate::support::added_part;
use serde::Serialize;

/// Candidates that are looked at once more when nothing holds.
const KEPT: usize = 12;

/// Added to the share used of a check that does not hold, so that none that is close comes after it; share of one that
/// has none; and of one that cannot be judged. For the order alone.
const FAILS: f64 = 1e3;
const NO_SHARE: f64 = 1e6;
/// Share of one that waits for a single value of the reader's: nearer than any that fails.
const NOT_GIVEN: f64 = 2.0;
const NOT_JUDGED: f64 = 1e9;

/// The candidate that comes nearest to holding.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Nearest {
    /// Kind.
    pub kind: RepairKind,
    /// The joint as it would be.
    pub input: Input,
    /// The fields that differ from the joint as it is.
    pub changed: Vec<Field>,
    /// Torque to set.
    pub torque_nm: f64,
    /// How it stands.
    pub verdict: Verdict,
    /// The check that still stands against it.
    pub check: CheckId,
    /// Share used of what that check has.
    pub utilisation: Option<f64>,
    /// Its reason.
    pub reason: Said,
    /// The value that is not given and without which it cannot be judged, where that is all that stands against it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub wants: Option<Field>,
}

/// The value that the reason of a check asks for.
const fn wanted(code: Message) -> Option<Field> {
    match code {
        Message::FlangeArmMissing => Some(Field::FlangeArm),
        Message::OffsetUnknown => Some(Field::LoadOffset),
        _ => None,
    }
}

/// The value that is not given and is all that keeps a candidate from being judged.
fn wants(checks: &[Check]) -> Option<Field> {
    let mut open = checks
        .iter()
        .filter(|check| !matches!(check.verdict, Verdict::Holds | Verdict::Close));
    let first = wanted(open.next()?.reason.code)?;
    open.all(|check| wanted(check.reason.code).is_some())
        .then_some(first)
}

/// How far a candidate is from holding: most that is used in any check that fails, or else in any that is close; `None`
/// where all hold. What cannot be judged counts where nothing fails: much of it follows from a joint that slips.
fn shortfall(checks: &[Check]) -> Option<f64> {
    let most = |verdict: Verdict, without: f64| {
        let of = checks.iter().filter(|check| check.verdict == verdict);
        of.map(|check| check.utilisation.unwrap_or(without))
            .reduce(f64::max)
    };
    most(Verdict::DoesNotHold, NO_SHARE)
        .map(|used| FAILS + used)
        .or_else(|| wants(checks).map(|_| NOT_GIVEN))
        .or_else(|| most(Verdict::NotChecked, 0.0).map(|_| NOT_JUDGED))
        .or_else(|| most(Verdict::Close, 1.0))
}

/// Those that have come nearest so far, nearest first.
#[derive(Default)]
pub(super) struct Near(Vec<(f64, Input)>);

impl Near {
    /// Remembers a candidate if it comes nearer than those that are kept.
    pub(super) fn see(&mut self, input: &Input, checks: &[Check]) {
        let Some(short) = shortfall(checks) else {
            return;
        };
        let place = self.0.partition_point(|(other, _)| *other <= short);
        if place < KEPT {
            self.0.insert(place, (short, input.clone()));
            self.0.truncate(KEPT);
        }
    }

    /// The nearest of them, judged in full.
    pub(super) fn nearest(self, joint: &Scenario) -> Option<Nearest> {
        let judged = self.0.into_iter().filter_map(|(_, input)| {
            let s = Scenario::new(&input).ok()?;
            let analysis = Analysis::without_working(&s);
            let torque_nm = analysis.preload.torque.si();
            let checks = checks_of(&analysis, |_| false);
            let short = shortfall(&checks)?;
            let (check, verdict) = weakest(&checks);
            let wants = wants(&checks);
            let decides = checks.into_iter().find(|c| c.id == check)?;
            let part = added_part(joint, &s);
            let nearest = Nearest {
                kind: part.map_or(RepairKind::Tightening, |part| part.kind(&s)),
                changed: changed(&input, &joint.input),
                torque_nm,
                verdict,
                check,
                utilisation: decides.utilisation,
                reason: decides.reason,
                wants,
                input,
            };
            Some((short, nearest))
        });
        judged
            .reduce(|a, b| if b.0 < a.0 { b } else { a })
            .map(|(_, nearest)| nearest)
    }
}

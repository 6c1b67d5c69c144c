//! A joint of which something is not known: every joint that it may be is evaluated, and of each check the worst counts.

use std::borrow::Cow;

use super::{Analysis, checks_in_order, most_that_follows, of_one, weakest, weight};
use crate::order::sorted;
use crate::quantity::{Count, Ratio};
use crate::report::{
    Check, FatigueReport, Found, Label, NotKnown, Report, Said, Verdict, WouldHelp, say,
};
use crate::scenario::unknown::{self, Settled};
use crate::scenario::{Field, Input, Scenario, WallBasis};

/// How much there is to say against a joint: by the check that decides.
fn against(checks: &[Check]) -> f64 {
    checks.first().map_or(0.0, |check| weight(check, 0.0))
}

/// Of each check the worse; one that a joint does not raise holds there.
fn merge(into: &mut Vec<Check>, checks: Vec<Check>) {
    for check in checks {
        match into.iter_mut().find(|there| there.id == check.id) {
            Some(there) if weight(&check, 0.0) > weight(there, 0.0) => *there = check,
            Some(_) => {}
            None => into.push(check),
        }
    }
}

/// The checks of a joint without their working, the weakest first; of each the worst of all that the joint may be, up
/// to the first that is past mending.
pub(crate) fn checks_of(analysis: &Analysis<'_>, stop: impl Fn(&[Check]) -> bool) -> Vec<Check> {
    let mut checks = checks_in_order(analysis);
    // The joint itself is the first of them.
    for member in analysis.s.members().skip(1) {
        if stop(&checks) {
            break;
        }
        merge(
            &mut checks,
            checks_in_order(&Analysis::without_working(&member)),
        );
    }
    super::weakest_first(&mut checks);
    checks
}

/// Verdict of a joint, of all that it may be.
fn verdict(s: &Scenario) -> Verdict {
    let fails = |checks: &[Check]| checks.iter().any(|c| c.verdict == Verdict::DoesNotHold);
    weakest(&checks_of(&Analysis::without_working(s), fails)).1
}

/// Of all that a joint may be the one that decides; the joint itself where all is known.
#[must_use]
pub fn deciding(s: &Scenario) -> Cow<'_, Scenario> {
    let mut worst = (f64::NEG_INFINITY, Cow::Borrowed(s));
    for member in s.members() {
        let against = against(&checks_in_order(&Analysis::without_working(&member)));
        if against > worst.0 {
            worst = (against, Cow::Owned(member));
        }
    }
    worst.1
}

/// The less life: none is the least.
fn shorter(a: &FatigueReport, b: &FatigueReport) -> bool {
    match (&a.life, &b.life) {
        (None, Some(_)) => true,
        (Some(a), Some(b)) => (a.low, a.likely) < (b.low, b.likely),
        _ => false,
    }
}

/// The report of a joint of which something is not known: of each check the worst of all that it may be, everything
/// else of the one that decides, and the shortest life.
pub(super) fn report(s: &Scenario) -> Report {
    let mut worst = of_one(s);
    let mut decides = None;
    let mut checks = Vec::new();
    let mut count = 0.0;
    for member in s.members() {
        let mut report = of_one(&member);
        let own = std::mem::take(&mut report.checks);
        let against = against(&own);
        merge(&mut checks, own);
        count += 1.0;
        if decides.as_ref().is_none_or(|(most, _)| against > *most) {
            if count > 1.0 && shorter(&worst.fatigue, &report.fatigue) {
                std::mem::swap(&mut worst.fatigue, &mut report.fatigue);
            }
            decides = Some((against, member));
            worst = report;
        } else if shorter(&report.fatigue, &worst.fatigue) {
            worst.fatigue = report.fatigue;
        }
    }
    let follows = most_that_follows(&checks);
    let weight = |check: &Check| weight(check, follows);
    worst.checks = sorted(checks, &|a, b| weight(b).total_cmp(&weight(a)));
    (worst.weakest, worst.verdict) = weakest(&worst.checks);
    worst
        .notes
        .insert(0, Said::new(say::NoteNotKnown, (Count(count),)));
    worst.input = s.input.clone();
    let counted = decides.map_or_else(|| s.input.clone(), |(_, member)| member.input);
    worst.not_known = s
        .not_known
        .iter()
        .filter_map(|&field| {
            Some(NotKnown {
                field,
                counted: as_settled(field, &counted)?,
                stands_for: unknown::stands_for(field, &s.input),
            })
        })
        .collect();
    worst
}

/// What stands in a field that was settled.
fn as_settled(field: Field, input: &Input) -> Option<Settled> {
    if field == Field::WallBasis {
        return Some(Settled::Wall(input.tube_wall_mm));
    }
    let name = input.choice(field)?;
    let known = crate::scenario::options(field);
    known.into_iter().find(|id| *id == name).map(Settled::Name)
}

/// The usual way to find out what a field is.
fn how(field: Field, input: &Input) -> Label {
    match field {
        Field::WallBasis => Label::FindOutWall,
        Field::Grade => Label::FindOutMarks,
        Field::Surface => Label::FindOutFaces,
        Field::Lubrication => Label::FindOutThreads,
        _ => match input.choice(field) {
            Some(unknown::UNKNOWN) => Label::FindOutMetal,
            Some(unknown::UNKNOWN_STEEL) => Label::FindOutSteel,
            _ => Label::FindOutAlloy,
        },
    }
}

/// Which single measurement would change the verdict: for each field that is not known the verdict with each value
/// that may be found, all else as little known as before. Where the verdict would be the same whatever is found, the
/// field is not named. First what may bring the best verdict, and of those what brings it most often.
pub(super) fn would_help(s: &Scenario, now: Verdict) -> Vec<WouldHelp> {
    let [low, high] = s.tightening.nut_factor_band;
    let threads = (low < high).then_some(Field::Lubrication);
    if now == Verdict::Holds {
        return Vec::new();
    }
    let helps = s
        .not_known
        .iter()
        .copied()
        .chain(threads)
        .filter_map(|field| {
            let settled = |value: Settled| {
                let mut input = s.input.clone();
                value.put(&mut input, field);
                if field == Field::WallBasis {
                    // It is found by measuring, and entered as that.
                    input.choose(WallBasis::Measured);
                }
                let verdict = verdict(&Scenario::new(&input).ok()?);
                Some(Found { value, verdict })
            };
            let mut found: Vec<Found> = magnet(field, &s.input)
                .into_iter()
                .filter_map(settled)
                .collect();
            if all_same(&found) {
                found = unknown::may_be(field, &s.input)
                    .into_iter()
                    .filter_map(settled)
                    .collect();
            }
            found.iter().any(|f| f.verdict != now).then(|| WouldHelp {
                field,
                how: how(field, &s.input),
                found,
            })
        });
    let best = |help: &WouldHelp| {
        let best = help.found.iter().map(|f| f.verdict).min();
        let often = help
            .found
            .iter()
            .filter(|f| Some(f.verdict) == best)
            .count();
        (best, Ratio(often as f64 / help.found.len().max(1) as f64))
    };
    sorted(helps.collect(), &|a, b| {
        let (a, b) = (best(a), best(b));
        a.0.cmp(&b.0).then(b.1.0.total_cmp(&a.1.0))
    })
}

fn all_same(found: &[Found]) -> bool {
    found
        .windows(2)
        .all(|pair| matches!(pair, [a, b] if a.verdict == b.verdict))
}

/// What a magnet tells where not even the metal is known.
fn magnet(field: Field, input: &Input) -> Vec<Settled> {
    if input.choice(field) != Some(unknown::UNKNOWN)
        || !matches!(field, Field::TubeMaterial | Field::FittingMaterial)
    {
        return Vec::new();
    }
    [unknown::UNKNOWN_ALUMINIUM, unknown::UNKNOWN_STEEL]
        .map(Settled::Name)
        .to_vec()
}

//! A joint against the same joint after one change.

use calc_core::report::{Check, CheckId, Report, Verdict};
use calc_core::scenario::Input;
use calc_core::{Scenario, evaluate};
use proptest::prelude::*;
use proptest::test_runner::TestRunner;

use crate::drawn::{inputs, scenario};

/// Relative slack for what a solver leaves over: a root good to 1e-6 of the travel, times the slope
/// of a sleeve.
const NOISE: f64 = 1e-4;

pub(crate) fn runner() -> TestRunner {
    crate::runner::runner(50)
}

/// Compares a joint with the same joint after one change; passed over where the change is refused.
pub(crate) fn compare(
    change: impl Fn(&mut Input, &Scenario, f64) -> bool,
    holds: impl Fn(&Report, &Report) -> Result<(), TestCaseError>,
) {
    compare_made(|_, _| {}, change, |before, after, _| holds(before, after));
}

/// The same of joints that something is made of first.
pub(crate) fn compare_made(
    make: impl Fn(&mut Input, f64),
    change: impl Fn(&mut Input, &Scenario, f64) -> bool,
    holds: impl Fn(&Report, &Report, f64) -> Result<(), TestCaseError>,
) {
    let outcome = runner().run(&(inputs(), 1.001..2.0_f64), |(mut input, times)| {
        make(&mut input, times);
        let mut before = scenario(&input)?;
        // Numbers of one joint: what is not known is settled. That not knowing is no better is a law of its own.
        let first = before.members().next();
        if let Some(settled) = first {
            input = settled.input;
            before = scenario(&input)?;
        }
        let mut changed = input.clone();
        if !change(&mut changed, &before, times) {
            return Err(TestCaseError::reject("does not apply"));
        }
        let Ok(after) = Scenario::new(&changed) else {
            return Err(TestCaseError::reject("refused"));
        };
        holds(&evaluate(&before), &evaluate(&after), times)
    });
    if let Err(error) = outcome {
        panic!("{error}");
    }
}

pub(crate) fn at_least(what: &str, after: f64, before: f64) -> Result<(), TestCaseError> {
    prop_assert!(
        after >= before * (1.0 - NOISE) - f64::MIN_POSITIVE,
        "{what}: {before} → {after}"
    );
    Ok(())
}

pub(crate) fn check(report: &Report, id: CheckId) -> Option<&Check> {
    report.check(id)
}

/// Neither use nor verdict of a check is worse; what cannot be judged on one side is passed over.
pub(crate) fn not_worse(
    before: &Report,
    after: &Report,
    ids: &[CheckId],
) -> Result<(), TestCaseError> {
    for &id in ids {
        let (Some(then), Some(now)) = (check(before, id), check(after, id)) else {
            continue;
        };
        if [then, now].iter().any(|c| c.verdict == Verdict::NotChecked) {
            continue;
        }
        // Where nothing is left that could carry, the share used is only a large number.
        if let (Some(then), Some(now)) = (then.utilisation, now.utilisation)
            && then < 1e6
        {
            at_least("used", then, now)?;
        }
        prop_assert!(
            now.verdict <= then.verdict || (now.utilisation == then.utilisation),
            "{id:?}: {:?} → {:?}",
            then.verdict,
            now.verdict
        );
    }
    Ok(())
}

//! A law: not knowing something of a joint is never better than knowing it, whatever it turns out to be.

use crate::drawn::scenario;
use crate::made_worse::{better, joints, moves, never_better, runner};
use calc_core::report::Verdict;
use calc_core::scenario::unknown::{MOST, is_unknown, stands_for};
use calc_core::scenario::{Field, options};
use calc_core::{Scenario, evaluate};
use proptest::prelude::*;

/// Of what nobody knows, with up to three things not known at once: no joint is better than with one of them settled,
/// whatever it is settled to, and so none is better than the worst of what it may be. Bolts of which nobody knows the
/// grade get the torque of the weakest, and keep it.
#[test]
fn not_knowing() {
    let one = (any::<prop::sample::Index>(), any::<prop::sample::Index>());
    let drawn = (joints(), prop::collection::vec(one, 1..4));
    let mut offered = Vec::new();
    for &field in Field::ALL {
        let names = options(field).into_iter().filter(|name| is_unknown(name));
        // Threads are another thing: see above.
        offered.extend(
            names
                .filter(|_| field != Field::Lubrication)
                .map(|name| (field, name)),
        );
    }
    assert!(offered.len() >= 9, "{offered:?}");
    let outcome = runner().run(&drawn, |(mut input, unknown)| {
        for (field, _) in &unknown {
            let (field, name) = field.get(&offered);
            input.set_choice(*field, name);
        }
        let Some((field, place)) = unknown.first() else {
            return Err(TestCaseError::reject("all known"));
        };
        let (field, _) = field.get(&offered);
        let s = scenario(&input)?;
        if field == &Field::Grade {
            input.torque_nm = Some(evaluate(&s).tightening.torque_nm);
        }
        if !field.applies(&input) {
            return Err(TestCaseError::reject("does not apply"));
        }
        let mut known = input.clone();
        place
            .get(&stands_for(*field, &input))
            .put(&mut known, *field);
        // What the joint has no room for it is not made of.
        let Ok(before) = Scenario::new(&known) else {
            return Err(TestCaseError::reject("refused"));
        };
        let (before, after) = (evaluate(&before), evaluate(&scenario(&input)?));
        let told = || format!("{}\n{}", moves(&known), moves(&input));
        prop_assert!(!better(after.verdict, before.verdict), "{}", told());
        let sets = s
            .not_known
            .iter()
            .map(|&field| stands_for(field, &input).len());
        if sets.product::<usize>() > MOST {
            // Of too many the ends stand for what lies between: verdicts are theirs, but where one end was not judged
            // the share used is that of another.
            let eased = before.checks.iter().find(|then| {
                let now = after
                    .check(then.id)
                    .map_or(Verdict::Holds, |now| now.verdict);
                better(now, then.verdict)
            });
            prop_assert!(eased.is_none(), "{:?}\n{}", eased.map(|c| c.id), told());
            return Ok(());
        }
        never_better(&before, &after, &[])
            .map_err(|what| TestCaseError::fail(format!("{what}\n{}", told())))
    });
    if let Err(error) = outcome {
        panic!("{error}");
    }
}

//! Twelve joints, three of each kind, at three masses: each has a repair that holds, or is told why there is none.

use std::collections::BTreeMap;

use calc_core::report::Verdict;
use calc_core::{Scenario, evaluate};
use outside_checks::repairs36::{MASSES, best, found, joints, out};

#[test]
fn three_of_each_kind() {
    let mut kinds: BTreeMap<String, usize> = BTreeMap::new();
    for joint in joints() {
        *kinds.entry(joint.kind).or_default() += 1;
    }
    assert_eq!(kinds.len(), 4, "{kinds:?}");
    assert!(kinds.values().all(|n| *n == 3), "{kinds:?}");
}

#[test]
fn each_has_a_repair_that_holds_or_the_reason_why_there_is_none() {
    let mut wrong = Vec::new();
    for joint in joints() {
        for (mass, wanted) in MASSES.into_iter().zip(&joint.out) {
            let what = format!("{} at {mass} kg", joint.id);
            let found = found(&joint.at(mass));
            for repair in &found.list {
                let again = evaluate(&Scenario::new(&repair.input).unwrap());
                assert_eq!(again.verdict, repair.verdict, "{what}");
                // To be built: work, and what it takes.
                assert!(repair.work.minutes > 0.0, "{what}");
                assert!(repair.kind.key() == "tightening" || !repair.steps.is_empty());
            }
            let holds = found.list.iter().any(|r| r.verdict == Verdict::Holds);
            assert_eq!(
                found.nearest.is_none(),
                holds,
                "{what}: {:?}",
                found.nearest
            );
            if let Some(near) = &found.nearest {
                let again = evaluate(&Scenario::new(&near.input).unwrap());
                assert_eq!(again.verdict, near.verdict, "{what}");
                assert_eq!(again.weakest, near.check, "{what}");
                let check = again.check(near.check).unwrap();
                assert_eq!(check.reason, near.reason, "{what}");
                assert_eq!(check.utilisation, near.utilisation, "{what}");
                assert_eq!(best(&found).is_some(), near.verdict == Verdict::Close);
            }
            let out = out(&found);
            if out != *wanted {
                wrong.push(format!("{what}: {out}, the file says {wanted}"));
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

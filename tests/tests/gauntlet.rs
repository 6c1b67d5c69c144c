//! Joints worked out by hand, each with the best and the worst verdict it may have: what must hold does, what must
//! not does not, and for the reason that was given.

use std::collections::BTreeSet;

use calc_core::report::{CheckId, Verdict};
use calc_core::scenario::{Field, options};
use calc_core::{Input, Scenario};
use outside_checks::gauntlet::{Joint, joints};

/// Least number of joints, of those that must hold, and of those that must not.
const AT_LEAST: [usize; 3] = [80, 25, 45];

#[test]
fn every_joint_has_a_verdict_that_it_may_have() {
    let all = joints();
    let faults: Vec<_> = all
        .iter()
        .filter_map(|joint| {
            let fault = joint.fault(&joint.outcome())?;
            Some(format!("{} ({}): {fault}", joint.id, joint.topic))
        })
        .collect();
    assert!(
        faults.is_empty(),
        "{} of {}:\n{}",
        faults.len(),
        all.len(),
        faults.join("\n")
    );
}

#[test]
fn the_joints_are_many_and_different() {
    let all = joints();
    let count = |which: fn(&Joint) -> bool| all.iter().filter(|joint| which(joint)).count();
    let counted = [
        all.len(),
        count(Joint::must_hold),
        count(Joint::must_not_hold),
    ];
    for (got, least) in counted.iter().zip(AT_LEAST) {
        assert!(*got >= least, "{counted:?} of {AT_LEAST:?}");
    }
    let ids: BTreeSet<_> = all.iter().map(|joint| &joint.id).collect();
    assert_eq!(ids.len(), all.len(), "two joints of one id");
    let inputs: Vec<_> = all.iter().map(Joint::read).collect();
    for (at, input) in inputs.iter().enumerate() {
        let again = inputs[..at].iter().position(|other| other == input);
        assert!(again.is_none(), "{}: twice", all[at].id);
    }
}

#[test]
fn every_joint_says_what_and_why() {
    for joint in joints() {
        let Joint { id, best, .. } = &joint;
        assert!(*best <= joint.worst, "{id}: best worse than worst");
        assert!(joint.what.len() > 10 && joint.why.len() > 20, "{id}");
        assert!(
            joint.deciding.is_empty() || joint.must_not_hold(),
            "{id}: nothing decides a joint that may hold"
        );
        assert!(
            joint.refused.is_empty() || joint.worst == Verdict::DoesNotHold,
            "{id}: turned away counts as does-not-hold"
        );
        for field in &joint.refused {
            assert!(Field::by_name(field).is_some(), "{id}: no field {field}");
        }
    }
}

#[test]
fn every_deciding_check_is_a_check() {
    let known = |key: &String| CheckId::ALL.iter().any(|id| id.key() == key);
    let unknown: BTreeSet<_> = joints()
        .into_iter()
        .flat_map(|joint| joint.deciding)
        .filter(|key| !known(key))
        .collect();
    assert!(unknown.is_empty(), "{unknown:?}");
}

/// Member, support and mount, as the joint takes them: a bar is solid whatever is chosen.
fn setting(input: &Input) -> [String; 3] {
    let solid = input.member == "solid-bar";
    let support = if solid { "solid" } else { &input.support };
    [
        input.member.clone(),
        support.to_owned(),
        input.mount.clone(),
    ]
}

#[test]
fn every_member_support_and_mount_comes_up() {
    let there: BTreeSet<_> = joints()
        .iter()
        .map(|joint| setting(&joint.read()))
        .collect();
    let mut missing = Vec::new();
    for member in options(Field::Member) {
        for support in options(Field::Support) {
            for mount in options(Field::Mount) {
                let choices = [
                    (Field::Member, member),
                    (Field::Support, support),
                    (Field::Mount, mount),
                ];
                let input = Input::with(&[], &choices);
                if Scenario::new(&input).is_ok() && !there.contains(&setting(&input)) {
                    missing.push(setting(&input));
                }
            }
        }
    }
    assert!(missing.is_empty(), "{missing:?}");
}

#[test]
fn every_joint_kind_rule_and_kind_of_load_comes_up() {
    let all: Vec<_> = joints().iter().map(Joint::read).collect();
    for field in [Field::Joint, Field::LoadRule, Field::FreeKind] {
        for name in options(field) {
            let there = all.iter().any(|input| input.choice(field) == Some(name));
            assert!(there, "{}: {name} never comes up", field.name());
        }
    }
}

//! Guards changes that may move no number: what calc-core answers has the digest that was kept.

use outside_checks::answers::{BLOCK, BLOCKS, Line, digest, joints, platform};

/// How many blocks are asked for repairs too; `scripts/answers` asks all of them.
const SLOW: usize = 1;

fn kept() -> Vec<Line> {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/reference/answers.csv");
    let mut rows = csv::Reader::from_path(path).unwrap();
    rows.deserialize().map(Result::unwrap).collect()
}

#[test]
fn no_answer_has_moved() {
    let kept = kept();
    assert_eq!(
        kept.len(),
        BLOCKS + 1,
        "a line for the platform, one a block"
    );
    // Elsewhere the last digits differ by themselves, and only verdicts are compared.
    let same_platform = kept[0] == platform();
    if !same_platform {
        eprintln!("This platform rounds otherwise: only verdicts are compared.");
    }
    for (index, block) in joints(BLOCK * BLOCKS).chunks(BLOCK).enumerate() {
        let slow = index < SLOW;
        let now = digest(&index.to_string(), block, slow, |_| {});
        let then = &kept[index + 1];
        let moved = now.verdicts != then.verdicts
            || same_platform && (now.quick != then.quick || slow && now.slow != then.slow);
        assert!(
            !moved,
            "answers of block {index} have moved: scripts/answers prints which and by how much\n{then:?}\n{now:?}"
        );
    }
}

#[test]
fn the_joints_are_of_every_kind() {
    use calc_core::scenario::{Field, options};
    let joints = joints(BLOCK * BLOCKS);
    for field in [
        Field::Member,
        Field::Support,
        Field::Mount,
        Field::Joint,
        Field::LoadRule,
    ] {
        for name in options(field) {
            let count = joints
                .iter()
                .filter(|s| s.input.choice(field) == Some(name))
                .count();
            assert!(count >= 80, "{} {name}: {count}", field.name());
        }
    }
}

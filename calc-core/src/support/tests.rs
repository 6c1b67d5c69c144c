//! What holds for every support and every part that a repair puts in.

use super::*;

fn on(support: &str) -> Scenario {
    let input = Input {
        support: String::from(support),
        ..Input::default()
    };
    Scenario::new(&input).unwrap()
}

/// The candidates of one part that the way in does not refuse.
fn built(part: &dyn AddedPart, joint: &Scenario) -> Vec<Scenario> {
    let mut all = Vec::new();
    part.candidates(joint, &mut all);
    all.iter()
        .filter_map(|input| Scenario::new(input).ok())
        .collect()
}

#[test]
fn every_part_is_known_again_by_its_candidates() {
    let joint = on("bare");
    for part in PARTS {
        let candidates = built(part, &joint);
        assert!(!candidates.is_empty());
        for after in candidates {
            let found = added_part(&joint, &after).map(|found| found.kind(&after));
            assert_eq!(found, Some(part.kind(&after)));
        }
    }
}

#[test]
fn every_support_with_a_part_is_tried() {
    let joint = on("bare");
    for name in SupportKind::NAMES {
        let has_part = of(&on(name)).part().is_some();
        let tried = PARTS
            .iter()
            .flat_map(|part| built(*part, &joint))
            .any(|after| after.support.name() == *name);
        // Nothing is put in under a thick washer: that part belongs to bare faces.
        assert_eq!(tried, has_part || *name == "bare", "{name}");
    }
}

#[test]
fn a_part_has_a_metal_and_the_other_way_round() {
    for name in SupportKind::NAMES {
        let s = on(name);
        assert_eq!(
            of(&s).part().is_some(),
            of(&s).metal(&s).is_some(),
            "{name}"
        );
        assert_eq!(part_strengths(&s).is_some(), of(&s).metal(&s).is_some());
    }
}

#[test]
fn another_support_keeps_the_hole_that_a_through_sleeve_left() {
    let sleeved = on("through-sleeve");
    let input = with_support(&sleeved, SupportKind::Spreader);
    let hole = of(&sleeved).hole_in_wall(&sleeved);
    assert!(hole > sleeved.bolting.hole);
    assert_eq!(input.hole_mm, Some(hole.si() * 1e3));
    let bare = on("bare");
    assert_eq!(with_support(&bare, SupportKind::Bare), bare.input);
}

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

mod pressed {
    use crate::evaluate;
    use crate::quantity::InUnits;
    use crate::report::{CheckId, Message, Report};
    use crate::scenario::{Input, Scenario};

    /// A steel bar under a bolt from the top: the washer under the nut lies on the bar itself.
    fn bar(change: impl FnOnce(&mut Input)) -> Report {
        let mut input = Input {
            member: "solid-bar".into(),
            mount: "from-top".into(),
            tube_material: "a36".into(),
            tube_width_mm: 101.6,
            fitting_thickness_mm: 10.0,
            fitting_edge_mm: 60.0,
            ..Input::default()
        };
        change(&mut input);
        evaluate(&Scenario::new(&input).unwrap())
    }

    fn clamp(report: &Report) -> (f64, Message) {
        let check = report.check(CheckId::Clamp).unwrap();
        (check.utilisation.unwrap(), check.reason.code)
    }

    #[test]
    fn a_wide_thin_washer_presses_no_wider_than_it_spreads() {
        let at = |outer, thick| {
            clamp(&bar(|i| {
                i.washer_outer_mm = Some(outer);
                i.washer_thickness_mm = Some(thick);
            }))
        };
        let (narrow, code) = at(27.0, 2.0);
        assert_eq!(code, Message::LimitStackPressed);
        // 18.7 mm of nut and 2 mm to either side: what lies beyond 22.7 mm does not count.
        let (wide, _) = at(60.0, 2.0);
        assert!((wide / narrow - 1.0).abs() < 1e-9, "{wide} {narrow}");
        let (thick, _) = at(60.0, 6.0);
        assert!(thick < 0.5 * wide, "{thick} {wide}");
    }

    #[test]
    fn a_thinner_washer_is_never_better() {
        let at = |thick| clamp(&bar(|i| i.washer_thickness_mm = Some(thick))).0;
        let mut last = f64::INFINITY;
        for thick in [0.5, 1.0, 2.0, 3.0, 5.0, 8.0] {
            let now = at(thick);
            assert!(now <= last * (1.0 + 1e-9), "{thick}: {now} after {last}");
            last = now;
        }
    }

    #[test]
    fn over_a_hole_wider_than_the_nut_the_washer_bends() {
        let at = |hole| {
            clamp(&bar(|i| {
                i.hole_mm = Some(hole);
                i.fitting_hole_mm = Some(14.3);
                i.washer_outer_mm = Some(40.0);
                i.washer_thickness_mm = Some(2.0);
            }))
        };
        let (over, code) = at(26.0);
        assert_eq!(code, Message::LimitWasherBridges);
        assert!(over > 5.0 * at(14.3).0, "{over}");
    }

    #[test]
    fn the_load_of_the_check_is_the_pressure_on_its_ring() {
        // 1.8·250 MPa on a ring from 14.3 to 18.67 + 2·1.88 (least thickness of the narrow washer).
        let report = bar(|_| ());
        let check = report.check(CheckId::Clamp).unwrap();
        let outer = check.steps.iter().find(|s| s.symbol == "d_p").unwrap();
        let d = outer.result.si;
        assert!(d > 0.021 && d < 0.024, "{d}");
        let hole = Scenario::new(&report.input).unwrap().bolting.hole.si();
        let ring = std::f64::consts::FRAC_PI_4 * (d * d - hole * hole);
        let ours = check.capacity.si;
        let fy = 248.2e6;
        assert!((ours / (1.8 * fy * ring) - 1.0).abs() < 0.01, "{ours}");
    }
}

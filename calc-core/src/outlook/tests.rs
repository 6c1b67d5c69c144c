use super::*;
use crate::report::Verdict;
use crate::{Input, evaluate};

fn joint(change: impl Fn(&mut Input)) -> Scenario {
    let mut input = Input::default();
    change(&mut input);
    Scenario::new(&input).unwrap()
}

#[test]
fn what_holds_is_told_nothing() {
    let s = joint(|input| {
        input.tube_material = "a500-b".into();
        input.tube_width_mm = 76.2;
        input.tube_wall_mm = 4.76;
        input.support = "loose-sleeve".into();
        input.sleeve = "rt-1.000x0.250".into();
        input.sleeve_short_mm = 0.1;
        input.faying_surface = "en-c".into();
        input.bolt_grade = "sae-5".into();
    });
    let outlook = outlook(&s);
    assert_eq!(evaluate(&s).verdict, Verdict::Holds);
    assert_eq!(outlook.said, []);
    assert_eq!(outlook.usual.decided_by, []);
}

#[test]
fn a_support_that_is_weaker_than_the_bolt_is_told_where_to_stop() {
    // A light load on a wall that stands a third of what the bolt could give.
    let s = joint(|input| {
        input.tube_material = "a500-b".into();
        input.tube_width_mm = 50.8;
        input.tube_wall_mm = 4.76;
        input.faying_surface = "steel-blasted".into();
        input.trailer_mass_kg = 300.0;
        input.bolt_grade = "sae-5".into();
    });
    assert_eq!(evaluate(&s).verdict, Verdict::DoesNotHold);
    let setting = outlook(&s).wrench;
    let best = setting.best.unwrap();
    assert!(best.torque_nm < setting.now.torque_nm, "{setting:?}");
    // And what is said comes true when it is typed in.
    if let (Verdict::Holds, Some(torque)) = (best.verdict, setting.set_to_nm()) {
        let mut input = s.input.clone();
        input.torque_nm = Some(torque);
        let again = evaluate(&Scenario::new(&input).unwrap());
        assert_eq!(again.verdict, Verdict::Holds);
    }
}

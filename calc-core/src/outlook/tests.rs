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
fn a_support_that_is_weaker_than_the_bolt_is_told_where_to_stop_and_that_comes_true() {
    // A light load on an aluminum sleeve that stands less than the bolt would give it.
    let s = joint(|input| {
        input.tube_material = "6061-t6".into();
        input.tube_width_mm = 76.2;
        input.tube_wall_mm = 4.76;
        input.support = "through-sleeve".into();
        input.sleeve = "rt-1.000x0.250".into();
        input.sleeve_material = "6061-t6".into();
        input.sleeve_welded = "yes".into();
        input.faying_surface = "al-blasted-12".into();
        input.fitting_material = "6061-t6".into();
        input.fitting_thickness_mm = 8.0;
        input.trailer_mass_kg = 300.0;
        input.bolt_grade = "sae-5".into();
    });
    assert_eq!(evaluate(&s).verdict, Verdict::DoesNotHold);
    let setting = outlook(&s).wrench;
    let torque = setting.set_to_nm().unwrap_or_else(|| panic!("{setting:?}"));
    assert!(torque < setting.now.torque_nm, "{setting:?}");
    let mut input = s.input.clone();
    input.torque_nm = Some(torque);
    let again = evaluate(&Scenario::new(&input).unwrap());
    assert_eq!(again.verdict, setting.best.unwrap().verdict);
}

#[test]
fn what_is_not_judged_is_never_told_to_come_close() {
    // A bare round tube: nobody knows its clamp, however strong it is.
    let s = joint(|input| input.member = "round-tube".into());
    let outlook = outlook(&s);
    assert!(outlook.usual.usual >= Verdict::NotChecked);
    let usual = ["usual-holds", "usual-close"];
    assert!(
        outlook
            .said
            .iter()
            .all(|said| !usual.contains(&said.code.key()))
    );
}

#[test]
fn a_weld_softens_aluminum_and_no_steel() {
    let with = |metal: &str| {
        let s = joint(|input| {
            input.tube_material = metal.into();
            input.support = "through-sleeve".into();
            input.sleeve = "rt-1.000x0.250".into();
            input.sleeve_material = if metal == "a500-b" {
                "a513-1020"
            } else {
                metal
            }
            .into();
            input.sleeve_welded = "yes".into();
        });
        outlook(&s).usual.decided_by
    };
    for metal in ["a500-b", "6061-t6"] {
        let softened = [Metal::SoftenedMember, Metal::SoftenedPart];
        let plain = [Metal::Member, Metal::AddedPart];
        let not = if metal == "a500-b" { softened } else { plain };
        assert!(with(metal).iter().all(|m| !not.contains(m)), "{metal}");
    }
}

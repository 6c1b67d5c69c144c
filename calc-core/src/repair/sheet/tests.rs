//! Work sheets of every kind of repair: counts, lengths, welds, order of the bolts.

use super::*;
use crate::quantity::InUnits;
use crate::repair::{Repairs, repairs};
use crate::report::{Label, Message, Verdict};

fn joint(change: impl FnOnce(&mut Input)) -> Scenario {
    let mut input = Input::default();
    change(&mut input);
    Scenario::new(&input).unwrap()
}

fn sheet(change: impl FnOnce(&mut Input)) -> WorkSheet {
    work_sheet(&joint(|_| {}), &joint(change), &Rates::default())
}

fn near(a: f64, b: f64) {
    assert!((a - b).abs() < 1e-9 * b.abs().max(1e-3), "{a} {b}");
}

fn sleeve(input: &mut Input, support: &str, welded: &str) {
    input.support = String::from(support);
    input.sleeve = String::from("rt-0.750x0.120");
    input.sleeve_material = String::from("6061-t6");
    input.sleeve_welded = String::from(welded);
    input.sleeve_short_mm = 0.1;
}

#[test]
fn a_through_sleeve_is_as_long_as_the_tube_is_deep() {
    let sheet = sheet(|i| sleeve(i, "through-sleeve", "no"));
    let [cut] = &sheet.cuts[..] else {
        panic!("one kind of piece: {:?}", sheet.cuts)
    };
    near(cut.length.si, 0.0762);
    assert_eq!(
        (cut.count, cut.what, cut.minus.si),
        (2, Label::PieceSleeve, 0.0)
    );
    let [wall, bore] = &sheet.holes[..] else {
        panic!("walls, and a bore of 0.510 in: {:?}", sheet.holes)
    };
    assert_eq!((wall.place, wall.count), (Label::PlaceTubeWall, 4));
    near(wall.to.si, 0.01905);
    near(wall.drill_inch.unwrap().diameter.si, 0.01905);
    near(wall.drill_metric.unwrap().diameter.si, 0.01925);
    assert_eq!(bore.place, Label::PlaceSleeveBore);
    assert!(sheet.weld.is_none());
}

#[test]
fn a_loose_sleeve_is_shorter_than_the_space_by_the_wanted_gap() {
    let sheet = sheet(|i| sleeve(i, "loose-sleeve", "no"));
    near(sheet.cuts[0].length.si, 0.0762 - 2.0 * 0.003_175 - 1e-4);
    // From as short as that to exactly as long as the space.
    near(sheet.cuts[0].plus.si, 1e-4);
    assert!(sheet.holes.iter().all(|h| h.place != Label::PlaceTubeWall));
    assert!(
        sheet.cuts[0]
            .notes
            .iter()
            .any(|n| n.code == Message::CutInByEnd)
    );
}

#[test]
fn a_welded_sleeve_has_a_groove_a_filler_and_a_strength() {
    let before = joint(|i| i.tube_material = String::from("a500-b"));
    let welded = |material: &str| {
        let mut input = before.input.clone();
        sleeve(&mut input, "through-sleeve", "yes");
        input.sleeve_material = String::from(material);
        work_sheet(&before, &Scenario::new(&input).unwrap(), &Rates::default())
            .weld
            .unwrap()
    };
    let steel = welded("a513-1020");
    assert_eq!((steel.count, steel.filler.id), (4, "er70s-6"));
    near(steel.throat.si, 0.003_175);
    near(steel.least_throat.si, 0.003_175);
    assert!(steel.throat_needed.si < steel.throat.si || steel.verdict != Verdict::Holds);
    assert_eq!(welded("stainless-304").filler.id, "309l");
    let aluminium = sheet(|i| sleeve(i, "through-sleeve", "yes")).weld.unwrap();
    assert_eq!(aluminium.filler.id, "5356");
    assert_eq!(aluminium.other_filler.as_ref().unwrap().id, "4043");
    // Next to the weld the metal is softer than the weld: 0.6·24 ksi against 17 ksi.
    assert!(aluminium.capacity.si < steel.capacity.si);
    // What was put in gives what came out.
    for plan in [&steel, &aluminium] {
        near(
            plan.utilisation,
            plan.factor * plan.demand.si / plan.capacity.si,
        );
        assert!(plan.steps.len() >= 5);
        assert!(plan.fillet.is_none(), "a cheek lies on both ends");
    }
}

#[test]
fn a_sleeve_from_the_top_may_have_a_fillet_below() {
    let before = joint(|i| i.mount = String::from("from-top"));
    let mut input = before.input.clone();
    sleeve(&mut input, "through-sleeve", "yes");
    let after = Scenario::new(&input).unwrap();
    let plan = work_sheet(&before, &after, &Rates::default()).weld.unwrap();
    let fillet = plan.fillet.unwrap();
    assert!(fillet.least_leg.si <= fillet.largest_leg.si || fillet.proud == fillet.largest_leg);
    near(fillet.throat.si * 2.0_f64.sqrt(), fillet.proud.si);
}

#[test]
fn minutes_mass_and_cost_add_up() {
    let before = joint(|_| {});
    let rates = Rates::default();
    let found: Repairs = repairs(&before, &rates);
    assert!(found.list.len() > 3);
    for repair in &found.list {
        let after = Scenario::new(&repair.input).unwrap();
        let sheet = work_sheet(&before, &after, &rates);
        assert_eq!(sheet.kind, repair.kind, "{:?}", repair.changed);
        assert_eq!(sheet.work, repair.work);
        let minutes: f64 = sheet.operations.iter().map(|o| o.minutes).sum();
        near(minutes, repair.work.minutes);
        let mass: f64 = sheet.materials.iter().map(|m| m.mass.si).sum();
        near(mass, repair.work.mass_kg);
        let cost = sheet.operations.iter().map(|o| o.cost).sum::<f64>()
            + sheet.materials.iter().map(|m| m.cost).sum::<f64>();
        near(cost, repair.work.cost);
        let drilled: u32 = sheet
            .holes
            .iter()
            .filter(|h| h.place != Label::PlaceSleeveBore)
            .map(|h| h.count)
            .sum();
        assert_eq!(drilled, repair.work.holes, "{:?}", sheet.holes);
        assert!(!sheet.cautions.is_empty());
        assert_eq!(sheet.weld.is_some(), repair.work.welds > 0);
        near(sheet.tightening.torque.si, repair.torque_nm);
        for hole in &sheet.holes {
            for drill in [hole.drill_inch, hole.drill_metric].into_iter().flatten() {
                let more = drill.diameter.si - hole.to.si;
                assert!((-1e-7..1e-3).contains(&more), "{hole:?}");
            }
        }
        for cut in &sheet.cuts {
            assert!(cut.stock_length.si > f64::from(cut.count) * cut.length.si);
        }
    }
}

#[test]
fn a_sheet_is_json_with_its_units() {
    let sheet = sheet(|i| sleeve(i, "through-sleeve", "yes"));
    let json = serde_json::to_value(&sheet).unwrap();
    assert_eq!(json["kind"], "welded-sleeve");
    assert_eq!(json["cuts"][0]["length"]["unit"], "m");
    assert_eq!(json["weld"]["filler"]["source"], "adm-2020");
    assert_eq!(
        json["holes"][0]["drill_inch"]["diameter"]["value"],
        crate::quantity::inch(0.75).si()
    );
}

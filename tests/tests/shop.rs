//! What a shop would say of the repairs that are listed: bolts that are spent, metals that belong together, stock that is
//! sold, and what a single missing measurement hides.

use calc_core::repair::sheet::{WorkSheet, work_sheet};
use calc_core::repair::{Need, Rates, Repair, RepairKind, Repairs, repairs};
use calc_core::report::{CheckId, Label, Message, Verdict};
use calc_core::scenario::Field;
use calc_core::{Input, Scenario};

fn joint(change: impl FnOnce(&mut Input)) -> Input {
    let mut input = Input::default();
    change(&mut input);
    input
}

fn scenario(input: &Input) -> Scenario {
    Scenario::new(input).unwrap()
}

fn found(input: &Input) -> Repairs {
    repairs(&scenario(input), &Rates::default())
}

fn sheet(before: &Input, repair: &Repair) -> WorkSheet {
    work_sheet(
        &scenario(before),
        &scenario(&repair.input),
        &Rates::default(),
    )
}

fn says(sheet: &WorkSheet, message: Message) -> bool {
    let cuts = sheet.cuts.iter().flat_map(|cut| &cut.notes);
    let mut all = sheet.effects.iter().chain(&sheet.cautions).chain(cuts);
    all.any(|said| said.code == message)
}

/// A chain bracket across a steel tube.
fn chain(change: impl FnOnce(&mut Input)) -> Input {
    joint(|i| {
        i.joint = "chain-bracket".into();
        i.tube_width_mm = 63.5;
        i.tube_depth_mm = 76.2;
        i.tube_wall_mm = 6.35;
        i.tube_material = "a500-b".into();
        i.trailer_mass_kg = 700.0;
        i.fitting_thickness_mm = 6.35;
        i.fitting_hole_mm = Some(14.3);
        i.end_distance_mm = 150.0;
        change(i);
    })
}

#[test]
fn bolts_tightened_past_yield_are_renewed_whatever_else_is_done() {
    let torn = chain(|i| i.torque_nm = Some(190.0));
    let all = found(&torn);
    assert!(!all.list.is_empty());
    for repair in &all.list {
        let sheet = sheet(&torn, repair);
        let bolts = repair.input.bolts_along * repair.input.bolt_rows;
        let bought = sheet
            .materials
            .iter()
            .filter(|m| matches!(m.what, Label::PieceBolt | Label::PieceBoltNut));
        let bought: u32 = bought.map(|m| m.count).sum();
        assert_eq!(f64::from(bought), bolts, "{:?}", repair.kind);
        assert!(
            says(&sheet, Message::EffectStretchedBolts),
            "{:?}",
            repair.kind
        );
    }
    // At a torque that they stand they stay, where nothing else changes.
    let sound = chain(|i| i.torque_nm = Some(60.0));
    assert!(
        found(&sound)
            .list
            .iter()
            .all(|repair| !says(&sheet(&sound, repair), Message::EffectStretchedBolts))
    );
}

#[test]
fn a_solid_bar_with_stretched_bolts_gets_the_same_bolts_at_less_torque() {
    let torn = joint(|i| {
        i.member = "solid-bar".into();
        i.tube_material = "a36".into();
        i.tube_width_mm = 50.8;
        i.tube_depth_mm = 50.8;
        i.joint = "chain-bracket".into();
        i.trailer_mass_kg = 300.0;
        i.torque_nm = Some(190.0);
        i.bolt_grade = "sae-5".into();
        i.fitting_thickness_mm = 9.5;
    });
    let all = found(&torn);
    let same = |r: &&Repair| {
        r.input.bolt == torn.bolt && r.input.bolt_grade == torn.bolt_grade && r.torque_nm < 100.0
    };
    let repair = all.list.iter().find(same).expect("the shop's own answer");
    assert_eq!(repair.kind, RepairKind::Tightening);
    assert!(says(&sheet(&torn, repair), Message::EffectStretchedBolts));
    let outlook = calc_core::outlook::outlook(&scenario(&torn));
    let told = |code| outlook.said.iter().any(|said| said.code == code);
    assert!(told(Message::TorqueNewBolts), "{:?}", outlook.said);
}

#[test]
fn a_bolt_that_wore_a_hole_oval_is_not_used_again() {
    let oval = chain(|i| {
        i.bolts_along = 3.0;
        i.trailer_mass_kg = 500.0;
        i.end_distance_mm = 250.0;
        i.found_oval = "yes".into();
        i.hole_mm = Some(15.2);
    });
    let all = found(&oval);
    assert!(!all.list.is_empty());
    for repair in &all.list {
        assert!(repair.steps.iter().any(|s| s.what == Label::WorkNewBolts));
        assert!(says(&sheet(&oval, repair), Message::EffectWornBolts));
    }
}

#[test]
fn a_stainless_joint_stays_stainless() {
    let stainless = |grade: &str, bolt: &str| {
        joint(|i| {
            i.tube_material = "stainless-304".into();
            i.fitting_material = "stainless-304".into();
            i.tube_width_mm = 76.2;
            i.tube_depth_mm = 76.2;
            i.tube_wall_mm = 4.76;
            i.bolt = bolt.into();
            i.bolt_grade = grade.into();
            i.bolt_finish = "stainless".into();
            i.lubrication = "anti-seize".into();
            i.trailer_mass_kg = 1500.0;
            i.joint = "chain-bracket".into();
            i.found_spin = "yes".into();
        })
    };
    let mut stronger = 0;
    for (grade, bolt) in [("a2-70", "m12"), ("f593-cw", "unc-1.2")] {
        let all = found(&stainless(grade, bolt));
        assert!(!all.list.is_empty(), "{grade}");
        for r in &all.list {
            assert!(
                !r.input.bolt_grade.starts_with("iso") && !r.input.bolt_grade.starts_with("sae")
            );
            stronger += u32::from(r.input.bolt_grade == "a4-80");
            match r.kind {
                RepairKind::Spreader => assert_eq!(r.input.spreader_material, "stainless-304"),
                RepairKind::SolidInsert => assert_eq!(r.input.insert_material, "stainless-304"),
                RepairKind::LooseSleeve | RepairKind::WeldedSleeve => {
                    assert_eq!(r.input.sleeve_material, "stainless-304");
                }
                _ => {}
            }
        }
    }
    assert!(stronger > 0, "a4-80 was never tried");
}

#[test]
fn one_missing_measurement_is_asked_for_and_is_no_none() {
    let missing = joint(|i| {
        i.joint = "chain-bracket".into();
        i.mount = "from-top".into();
        i.fitting_sides = "one".into();
        i.tube_width_mm = 76.2;
        i.tube_depth_mm = 76.2;
        i.tube_wall_mm = 6.35;
        i.trailer_mass_kg = 900.0;
        i.bolt_grade = "sae-5".into();
        i.fitting_thickness_mm = 6.35;
        i.end_distance_mm = 200.0;
    });
    let none = found(&missing);
    assert!(none.list.is_empty());
    let near = none.nearest.unwrap();
    assert_eq!(near.wants, Some(Field::FlangeArm), "{near:?}");
    assert_eq!(near.check, CheckId::FittingFlange);
    assert_eq!(near.verdict, Verdict::NotChecked);
    let mut given = missing;
    given.flange_arm_mm = Some(25.0);
    assert!(!found(&given).list.is_empty());
}

#[test]
fn a_dished_face_that_nobody_reaches_gets_no_plate() {
    let capped = |end: &str| {
        chain(|i| {
            i.found_hollow = "yes".into();
            i.tube_end = end.into();
            i.tube_wall_mm = 4.76;
            i.fitting_hole_mm = None;
        })
    };
    let closed = found(&capped("capped"));
    for repair in &closed.list {
        let kind = repair.kind;
        assert!(
            matches!(kind, RepairKind::WeldedSleeve | RepairKind::ThroughSleeve),
            "{kind:?}"
        );
    }
    let open = found(&capped("open"));
    let mut plates = open.list.iter().filter(|r| r.kind == RepairKind::Spreader);
    assert!(plates.all(|r| r.needs.contains(Need::OpenEnd)));
    assert!(open.list.len() > closed.list.len());
}

#[test]
fn a_sleeve_that_is_there_does_not_hide_a_larger_bolt() {
    let worn = joint(|i| {
        i.tube_material = "a500-b".into();
        i.tube_width_mm = 76.2;
        i.tube_depth_mm = 76.2;
        i.tube_wall_mm = 4.76;
        i.support = "loose-sleeve".into();
        i.sleeve = "rt-1.000x0.250".into();
        i.sleeve_short_mm = 0.1;
        i.faying_surface = "en-c".into();
        i.bolt_grade = "sae-5".into();
        i.hole_mm = Some(16.0);
    });
    let all = found(&worn);
    assert!(all.list.iter().any(|r| r.input.bolt == "unc-5.8"));
}

#[test]
fn metric_bolts_come_with_metric_plate() {
    let metric = chain(|i| {
        i.bolt = "m12".into();
        i.bolt_grade = "iso-8.8".into();
        i.tube_wall_mm = 5.0;
        i.fitting_hole_mm = None;
    });
    let plates: Vec<f64> = found(&metric)
        .list
        .iter()
        .filter(|r| r.kind == RepairKind::Spreader)
        .map(|r| r.input.spreader_thickness_mm)
        .collect();
    assert!(!plates.is_empty());
    assert!(plates.iter().all(|t| t.fract() == 0.0), "{plates:?}");
}

#[test]
fn what_a_repair_asks_for_is_in_its_needs_and_in_its_price() {
    let joints = [
        chain(|i| i.trailer_mass_kg = 1500.0),
        joint(|_| {}),
        joint(|i| {
            i.tube_material = "a500-b".into();
            i.tube_width_mm = 101.6;
            i.tube_depth_mm = 101.6;
            i.tube_wall_mm = 4.76;
            i.bolt = "unc-3.4".into();
            i.trailer_mass_kg = 1500.0;
        }),
    ];
    let [mut large, mut brackets] = [0, 0];
    for before in &joints {
        for repair in &found(before).list {
            let wrench = repair.needs.contains(Need::LargeWrench);
            assert_eq!(wrench, repair.torque_nm > 339.0);
            large += u32::from(wrench);
            let bracket = [Need::NewBracket, Need::LongerFitting];
            let bracket = bracket.iter().any(|need| repair.needs.contains(*need));
            let priced = sheet(before, repair);
            let mut lines = priced.materials.iter();
            assert_eq!(bracket, lines.any(|m| m.what == Label::PieceBracket));
            brackets += u32::from(bracket);
        }
    }
    assert!(large > 0 && brackets > 0, "{large} {brackets}");
}

#[test]
fn a_rail_under_a_hanger_is_not_weakened_without_a_word() {
    let hanger = joint(|i| {
        i.joint = "spring-hanger".into();
        i.mount = "from-top".into();
        i.tube_material = "a500-b".into();
        i.tube_width_mm = 50.8;
        i.tube_depth_mm = 76.2;
        i.tube_wall_mm = 6.35;
        i.trailer_mass_kg = 400.0;
        i.fitting_thickness_mm = 9.5;
        i.flange_arm_mm = Some(20.0);
        i.end_distance_mm = 300.0;
    });
    let after = |support: &str| {
        let mut input = hanger.clone();
        input.support = support.into();
        input.sleeve = "nps-1.2-80".into();
        input.sleeve_material = "a513-1020".into();
        input.sleeve_welded = "yes".into();
        work_sheet(&scenario(&hanger), &scenario(&input), &Rates::default())
    };
    assert!(says(&after("through-sleeve"), Message::CautionHangerFace));
    let plates = after("spreader");
    assert!(!says(&plates, Message::CautionHangerFace));
    assert!(says(&plates, Message::EffectHangerPacking));
}

#[test]
fn what_goes_into_a_welded_tube_minds_its_seam() {
    let before = joint(|i| i.tube_material = "a500-b".into());
    let after = |material: &str, support: &str| {
        let mut input = before.clone();
        input.tube_material = material.into();
        let old = input.clone();
        input.support = support.into();
        work_sheet(&scenario(&old), &scenario(&input), &Rates::default())
    };
    assert!(says(&after("a500-b", "solid-insert"), Message::CutSeam));
    assert!(says(&after("a500-b", "loose-sleeve"), Message::CutSeam));
    assert!(!says(&after("6061-t6", "solid-insert"), Message::CutSeam));
    assert!(!says(&after("a500-b", "spreader"), Message::CutSeam));
}

//! What a joint with damage is offered: more grip where it has slid, new bolts where a nut spun, and what stands on the
//! work sheet beside it.

use calc_core::quantity::InUnits;
use calc_core::repair::sheet::{WorkSheet, work_sheet};
use calc_core::repair::{Need, Rates, Repair, RepairKind, Repairs, repairs};
use calc_core::report::{CheckId, Label, Message, Verdict};
use calc_core::scenario::{FOUND, Field};
use calc_core::{Input, Scenario, evaluate};

/// Most of the slip resistance that was used before which a joint that has slid may use afterwards.
const SLIDES_LESS: f64 = 0.8;

fn joint(change: impl FnOnce(&mut Input)) -> Input {
    let mut input = Input::default();
    change(&mut input);
    input
}

/// A chain bracket on a heavy tube: holds as drilled, with much to choose from.
fn chain(change: impl FnOnce(&mut Input)) -> Input {
    joint(|i| {
        i.joint = "chain-bracket".into();
        i.tube_width_mm = 76.2;
        i.tube_depth_mm = 76.2;
        i.tube_wall_mm = 6.35;
        i.tube_material = "a500-b".into();
        i.trailer_mass_kg = 900.0;
        i.fitting_thickness_mm = 9.5;
        i.end_distance_mm = 300.0;
        change(i);
    })
}

/// A sleeve welded in through a steel tube, under a bolt that it takes.
fn sleeved(change: impl FnOnce(&mut Input)) -> Input {
    joint(|i| {
        i.tube_width_mm = 76.2;
        i.tube_wall_mm = 4.7625;
        i.end_distance_mm = 80.0;
        i.spacing_along_mm = 120.0;
        i.ball_ahead_mm = 110.0;
        i.tube_material = "a500-b".into();
        i.bolt = "unc-5.8".into();
        i.support = "through-sleeve".into();
        i.sleeve_welded = "yes".into();
        i.sleeve = "rt-1.250x0.250".into();
        change(i);
    })
}

fn channel(change: impl FnOnce(&mut Input)) -> Input {
    joint(|i| {
        i.member = "channel".into();
        i.mount = "from-top".into();
        i.tube_depth_mm = 101.6;
        i.tube_wall_mm = 6.35;
        i.tube_material = "a36".into();
        change(i);
    })
}

fn scenario(input: &Input) -> Scenario {
    Scenario::new(input).unwrap()
}

fn found(input: &Input) -> Repairs {
    repairs(&scenario(input), &Rates::default())
}

fn sheet(before: &Input, after: &Input) -> WorkSheet {
    work_sheet(&scenario(before), &scenario(after), &Rates::default())
}

fn changed(before: &Input, change: impl FnOnce(&mut Input)) -> Input {
    let mut after = before.clone();
    for field in FOUND {
        after.set_choice(field, "no");
    }
    change(&mut after);
    after
}

/// Share used of the slip resistance; of a chain's bracket, which is not asked whether it slips, what 1 kN would use of the
/// friction of two bolts and more by hand.
fn slip_used(input: &Input) -> f64 {
    let report = evaluate(&scenario(input));
    if let Some(slip) = report.check(CheckId::Slip) {
        return slip.utilisation.unwrap();
    }
    let s = scenario(input);
    let planes = if s.bolting.two_cheeks { 2.0 } else { 1.0 };
    // What goes through the walls takes the place of the hole there.
    let hole = match &*input.support {
        "through-sleeve" => s.fitting.hole,
        _ => s.bolting.hole.max(s.fitting.hole),
    };
    let oversize = hole.si() > 1.2 * s.bolting.thread.major().si();
    let omega = if oversize { 1.76 } else { 1.5 };
    let all = planes * s.bolting.count() as f64;
    1e3 * omega / (all * s.tightening.faying_friction * report.losses.left_min_n)
}

fn says(sheet: &WorkSheet, message: Message) -> bool {
    let tightening = sheet.tightening.notes.iter();
    let cuts = sheet.cuts.iter().flat_map(|cut| &cut.notes);
    let holes = sheet.holes.iter().flat_map(|hole| &hole.notes);
    let all = sheet.effects.iter().chain(&sheet.cautions);
    all.chain(tightening)
        .chain(cuts)
        .chain(holes)
        .any(|said| said.code == message)
}

/// How often a step is done, and the minutes of all.
fn step(sheet: &WorkSheet, what: Label) -> Option<(u32, f64)> {
    let of = sheet.operations.iter().find(|step| step.what == what);
    of.map(|step| (step.count, step.minutes))
}

fn bought(sheet: &WorkSheet, what: Label) -> Option<(u32, f64)> {
    let of = sheet.materials.iter().find(|line| line.what == what);
    of.map(|line| (line.count, line.cost))
}

#[test]
fn a_joint_that_has_slid_is_never_mended_by_what_slides_as_easily() {
    let oval = |i: &mut Input| {
        i.found_oval = "yes".into();
        i.hole_mm = Some(16.5);
    };
    assert_eq!(
        evaluate(&scenario(&sleeved(|_| ()))).verdict,
        Verdict::Holds
    );
    for (sound, slid) in [
        (sleeved(|_| ()), sleeved(|i| i.found_trails = "yes".into())),
        (chain(|_| ()), chain(|i| i.found_trails = "yes".into())),
        (chain(|_| ()), chain(oval)),
    ] {
        let before = slip_used(&sound);
        let found = found(&slid);
        assert!(!found.list.is_empty());
        for repair in &found.list {
            let after = slip_used(&repair.input);
            assert!(
                after <= SLIDES_LESS * before + 1e-9,
                "{after} of {before}: {:?} {:?}",
                repair.kind,
                repair.changed
            );
            let something = repair.changed.iter().any(|field| {
                !FOUND.contains(field) && *field != Field::Hole && *field != Field::SleeveShort
            });
            assert!(something, "{:?}", repair.changed);
            let sheet = sheet(&slid, &repair.input);
            assert!(says(&sheet, Message::EffectFretted));
            let looked_at = step(&sheet, Label::WorkFretted).or(step(&sheet, Label::WorkSurfaces));
            assert!(looked_at.unwrap().1 > 0.0);
        }
    }
}

/// On a slope the clamp is not known, and neither is what the joint used of it; cleaner faces grip better all the same.
#[test]
fn a_joint_that_slid_without_a_tapered_washer_is_mended_too() {
    let slid = channel(|i| {
        i.tube_depth_mm = 152.4;
        i.tube_wall_mm = 9.5;
        i.upright_wall_mm = Some(6.0);
        i.bolt_gauge_mm = Some(29.0);
        i.trailer_mass_kg = 900.0;
        i.bolt_grade = "sae-8".into();
        i.bolt_finish = "plain".into();
        i.lubrication = "oiled".into();
        i.faying_surface = "painted".into();
        i.bolts_along = 3.0;
        i.fitting_sides = "one".into();
        i.fitting_thickness_mm = 9.5;
        i.ball_ahead_mm = 80.0;
        i.end_distance_mm = 60.0;
        i.found_trails = "yes".into();
    });
    let found = found(&slid);
    let cleaned = |r: &&Repair| r.input.faying_surface == "bare-clean";
    assert!(found.list.iter().any(|r| cleaned(&r)));
    assert!(
        found
            .list
            .iter()
            .all(|r| r.input.faying_surface != "painted")
    );
}

#[test]
fn less_torque_is_no_mend_of_a_joint_that_has_slid() {
    let slid = sleeved(|i| i.found_trails = "yes".into());
    let before = evaluate(&scenario(&sleeved(|_| ()))).tightening.torque_nm;
    let eased = |r: &&Repair| r.kind == RepairKind::Tightening && r.torque_nm < before;
    let same_faces = |r: &&Repair| !r.changed.contains(&Field::Surface);
    let found = found(&slid);
    assert_eq!(
        found.list.iter().filter(eased).filter(same_faces).count(),
        0
    );
}

#[test]
fn a_nut_that_spun_gets_new_bolts_whatever_else_is_done() {
    for spun in [
        chain(|i| i.found_spin = "yes".into()),
        sleeved(|i| i.found_spin = "yes".into()),
        chain(|i| {
            i.member = "solid-bar".into();
            i.found_spin = "yes".into();
        }),
    ] {
        let found = found(&spun);
        assert!(!found.list.is_empty(), "{spun:?}");
        for repair in &found.list {
            let sheet = sheet(&spun, &repair.input);
            let bolts = u32::try_from(scenario(&repair.input).bolting.count()).unwrap();
            let line = bought(&sheet, Label::PieceBolt).or(bought(&sheet, Label::PieceBoltNut));
            assert_eq!(
                line,
                Some((bolts, f64::from(bolts) * Rates::default().bolt))
            );
            assert!(says(&sheet, Message::EffectSpunBolts));
            assert_eq!(step(&sheet, Label::WorkNewBolts).unwrap().0, bolts);
            assert!(repair.steps.iter().any(|s| s.what == Label::WorkNewBolts));
        }
    }
}

#[test]
fn on_a_sound_sleeve_new_bolts_mend_a_stripped_thread() {
    let renewed = |input: &Input| {
        let kept = |r: &&Repair| r.kind == RepairKind::Tightening;
        found(input).list.iter().filter(kept).count()
    };
    assert!(renewed(&sleeved(|i| i.found_spin = "yes".into())) > 0);
    // One that by the numbers cannot take the torque has given way itself, and a face under a washer has too.
    let crushed = sleeved(|i| {
        i.torque_nm = Some(400.0);
        i.sleeve = "rt-1.000x0.120".into();
        i.found_spin = "yes".into();
    });
    let clamp = evaluate(&scenario(&crushed));
    assert_ne!(clamp.check(CheckId::Clamp).unwrap().verdict, Verdict::Holds);
    assert_eq!(renewed(&crushed), 0);
    assert_eq!(renewed(&chain(|i| i.found_spin = "yes".into())), 0);
}

#[test]
fn the_oval_hole_of_the_tube_is_not_drilled_into_the_bracket() {
    let worn = chain(|i| {
        i.found_oval = "yes".into();
        i.hole_mm = Some(16.5);
    });
    let found = found(&worn);
    let mut same_bolt = 0;
    for repair in &found.list {
        let after = scenario(&repair.input);
        let sheet = sheet(&worn, &repair.input);
        assert!(says(&sheet, Message::EffectFittingHoleTaken));
        if repair.input.bolt == worn.bolt {
            same_bolt += 1;
            assert!((after.fitting.hole.si() - 0.014_287_5).abs() < 1e-9);
            assert!(!repair.changed.contains(&Field::FittingHole));
            assert!(!says(&sheet, Message::EffectFittingHole));
        }
        let opened = sheet.holes.iter().find(|h| h.place == Label::PlaceTubeWall);
        let opened = opened.filter(|h| h.from.is_some()).unwrap();
        assert!(opened.to.si >= 0.0165);
        assert!(opened.notes.iter().any(|n| n.code == Message::HoleOval));
    }
    assert!(same_bolt > 0);
    // The joint itself is judged as it always was: the fitting's hole is the tube's until somebody says otherwise.
    assert!((scenario(&worn).fitting.hole.si() - 0.0165).abs() < 1e-9);
    // A hole of the bracket that was measured is kept.
    let measured = chain(|i| {
        i.found_oval = "yes".into();
        i.hole_mm = Some(16.5);
        i.fitting_hole_mm = Some(15.0);
    });
    for repair in repairs(&scenario(&measured), &Rates::default()).list {
        assert!(scenario(&repair.input).fitting.hole.si() > 0.0149);
    }
}

#[test]
fn a_hole_worn_past_its_washer_is_told_what_mends_it() {
    let wide = chain(|i| {
        i.found_oval = "yes".into();
        i.hole_mm = Some(26.0);
    });
    let refused = Scenario::new(&wide).unwrap_err();
    let [error] = &refused[..] else {
        panic!("{refused:?}")
    };
    let told = error.to_string();
    assert!(
        told.contains("sleeve") && told.contains("replace"),
        "{told}"
    );
}

#[test]
fn a_dished_face_is_pressed_flat_before_anything_is_measured() {
    let dished = chain(|i| i.found_hollow = "yes".into());
    let found = found(&dished);
    assert!(!found.list.is_empty());
    for repair in &found.list {
        let sheet = sheet(&dished, &repair.input);
        assert!(says(&sheet, Message::EffectFaceFlat));
        // Under head and nut of two bolts, ten minutes each.
        assert_eq!(step(&sheet, Label::WorkFlatten), Some((4, 40.0)));
    }
}

#[test]
fn a_seat_that_has_given_way_is_not_replaced_by_a_weaker_one() {
    let clamp = |input: &Input| {
        let report = evaluate(&Scenario::new(input).unwrap());
        report.check(CheckId::Clamp).unwrap().utilisation.unwrap()
    };
    let mut sound = joint(|i| {
        i.tube_width_mm = 76.2;
        i.tube_depth_mm = 76.2;
        i.tube_wall_mm = 4.76;
        i.tube_material = "a500-b".into();
        i.support = "loose-sleeve".into();
        i.sleeve = "rt-1.000x0.250".into();
        i.sleeve_short_mm = 0.1;
        i.faying_surface = "en-c".into();
    });
    let before = clamp(&sound);
    let lighter = |all: &Repairs| {
        let mut sleeves = all.list.iter().map(|repair| clamp(&repair.input));
        sleeves.any(|used| used > before * (1.0 + 1e-9))
    };
    assert!(lighter(&found(&sound)), "nothing to tell apart");
    sound.found_hollow = "yes".into();
    let mended = found(&sound);
    assert!(!mended.list.is_empty());
    assert!(!lighter(&mended));
}

#[test]
fn a_plate_on_a_flange_goes_under_the_nut_and_clears_the_fillet() {
    let before = channel(|_| ());
    let after = changed(&before, |i| {
        i.support = "spreader".into();
        i.shaped_washer = "yes".into();
    });
    let told = sheet(&before, &after);
    assert!(says(&told, Message::EffectPlateUnderNut));
    assert!(!says(&told, Message::EffectFittingOut));
    assert!(says(&told, Message::CutPlateFillet));
    // 50.8 less the web and as much again of fillet.
    assert!((told.cuts[0].width.unwrap().si - 0.0381).abs() < 1e-9);
    let place = |width: Option<f64>| {
        let report = evaluate(&scenario(&changed(&after, |i| i.spreader_width_mm = width)));
        let check = report.check(CheckId::PlatePlace).unwrap().clone();
        (check.verdict, check.reason.code)
    };
    assert_eq!(place(None), (Verdict::Holds, Message::PlateLiesOn));
    assert_eq!(
        place(Some(44.0)),
        (Verdict::NotChecked, Message::PlateOnFillet)
    );
    assert_eq!(
        place(Some(46.0)),
        (Verdict::DoesNotHold, Message::PlateTooWide)
    );
}

#[test]
fn plates_between_make_twice_the_faces_and_a_wider_bracket() {
    let before = joint(|i| {
        i.tube_material = "a500-b".into();
        i.faying_surface = "painted".into();
    });
    let cleaned = |support: &str| {
        let after = changed(&before, |i| {
            i.support = support.into();
            i.faying_surface = "bare-clean".into();
        });
        sheet(&before, &after)
    };
    let (bare, plates) = (cleaned("bare"), cleaned("spreader"));
    assert_eq!((bare.work.surfaces, plates.work.surfaces), (4, 8));
    assert!(says(&plates, Message::CautionDust) && says(&bare, Message::CautionDust));
    assert!(plates.needs.contains(Need::NewBracket) && !bare.needs.contains(Need::NewBracket));
}

#[test]
fn a_plate_is_too_long_by_what_reaches_past_the_last_bolt() {
    let before = joint(|i| i.spacing_along_mm = 90.0);
    let past = |end: f64| {
        let with_end = changed(&before, |i| i.end_distance_mm = end);
        let after = changed(&with_end, |i| {
            i.support = "spreader".into();
            i.spreader_length_mm = 100.0;
        });
        says(&sheet(&with_end, &after), Message::CutPlateOverhang)
    };
    // One plate 190 long under two bolts: 50 reach past the last one.
    assert!(!past(60.0) && past(45.0));
}

#[test]
fn a_sleeve_that_is_welded_in_is_cut_out_first() {
    let before = sleeved(|_| ());
    let after = changed(&before, |i| i.sleeve = "rt-1.500x0.375".into());
    let told = sheet(&before, &after);
    let each = 2.0 * Rates::default().minutes_weld;
    assert_eq!(step(&told, Label::WorkRemoveSleeves), Some((2, 2.0 * each)));
    assert!(says(&told, Message::EffectSleevesOut));
    let same = sheet(
        &before,
        &changed(&before, |i| i.bolt_grade = "sae-8".into()),
    );
    assert_eq!(step(&same, Label::WorkRemoveSleeves), None);
}

#[test]
fn every_hole_has_a_tool_that_makes_it() {
    let before = joint(|_| ());
    let tight = changed(&before, |i| {
        i.support = "loose-sleeve".into();
        i.sleeve = "rt-0.750x0.120".into();
    });
    let told = sheet(&before, &tight);
    let bore = told
        .holes
        .iter()
        .find(|h| h.place == Label::PlaceSleeveBore);
    let bore = bore.unwrap();
    assert_eq!(bore.tool, Label::DrillReamer);
    assert!(bore.notes.iter().all(|n| n.code != Message::HoleOpenGuided));
    assert!(step(&told, Label::WorkReam).unwrap().1 >= 12.0);
    let tools = |before: &Input, after: &Input, place: Label| -> Vec<Label> {
        let told = sheet(before, after);
        let holes = told.holes.iter().filter(|h| h.place == place);
        holes.map(|h| h.tool).collect()
    };
    let plate = |thick: f64| {
        let after = changed(&before, |i| {
            i.support = "spreader".into();
            i.spreader_thickness_mm = thick;
        });
        tools(&before, &after, Label::PlacePlate)
    };
    assert_eq!(plate(9.525), [Label::DrillInPress]);
    assert_eq!(plate(4.7625), [Label::DrillHoleCutter]);
    let heavy = chain(|_| ());
    let larger = changed(&heavy, |i| i.bolt = "unc-5.8".into());
    assert_eq!(
        tools(&heavy, &larger, Label::PlaceTubeWall),
        [Label::DrillAnnular]
    );
    assert_eq!(
        tools(&heavy, &larger, Label::PlaceFitting),
        [Label::DrillInPress]
    );
    let bar = joint(|i| i.member = "solid-bar".into());
    let larger = changed(&bar, |i| i.bolt = "unc-5.8".into());
    assert_eq!(tools(&bar, &larger, Label::PlaceBar), [Label::DrillTwist]);
    assert!(!says(&sheet(&bar, &larger), Message::HoleInLine));
}

#[test]
fn a_larger_washer_is_larger_and_takes_the_place_of_the_other() {
    for width in [38.1, 50.8, 76.2] {
        let before = joint(|i| {
            i.tube_width_mm = width;
            i.tube_wall_mm = 4.7625;
            i.tube_material = "a500-b".into();
            i.trailer_mass_kg = 500.0;
        });
        let washers = found(&before);
        for repair in washers
            .list
            .iter()
            .filter(|r| r.kind == RepairKind::ThickWasher)
        {
            let after = scenario(&repair.input);
            let usual = scenario(&changed(&repair.input, |i| {
                i.washer_outer_mm = None;
                i.washer_thickness_mm = None;
            }));
            assert!(after.bolting.washer.outer >= usual.bolting.washer.outer);
            let told = sheet(&before, &repair.input);
            // With bolts come no washers that would lie beside those that are made.
            assert!(bought(&told, Label::PieceBolt).is_none());
            assert!(bought(&told, Label::PieceBoltNut).is_some());
        }
    }
}

#[test]
fn a_lock_nut_goes_on_and_a_mark_is_made() {
    let before = joint(|_| ());
    let told = sheet(
        &before,
        &changed(&before, |i| i.bolt_grade = "sae-8".into()),
    );
    let after = scenario(&before);
    let plain = after.bolt_length().si() - after.bolting.thread.nut_height().si();
    let room = told.tightening.bolt_length.si - plain;
    assert!((room - 1.25 * 0.0127).abs() < 1e-9, "{room}");
    assert!(says(&told, Message::TightenNut) && says(&told, Message::TightenMark));
}

#[test]
fn what_is_easily_forgotten_is_said() {
    let steel = joint(|i| i.tube_material = "a500-b".into());
    let larger = |i: &mut Input| i.bolt = "unc-5.8".into();
    let told = sheet(&steel, &changed(&steel, larger));
    assert!(says(&told, Message::CautionPaintAgain));
    assert!(!says(&told, Message::CautionSteelOnAluminum));
    let aluminum = joint(|_| ());
    let told = sheet(&aluminum, &changed(&aluminum, larger));
    assert!(says(&told, Message::CautionSteelOnAluminum));
    let hanger = joint(|i| i.joint = "spring-hanger".into());
    let told = sheet(&hanger, &changed(&hanger, larger));
    assert!(says(&told, Message::CautionHangerLine));
    let round = joint(|i| {
        i.member = "round-tube".into();
        i.tube_width_mm = 76.2;
        i.tube_wall_mm = 4.0;
    });
    let told = sheet(&round, &changed(&round, |i| i.shaped_washer = "yes".into()));
    assert!(told.needs.contains(Need::Saddles) && told.needs.contains(Need::NewBracket));
}

#[test]
fn of_new_bolts_it_is_known_what_is_on_their_threads() {
    let before = chain(|i| {
        i.lubrication = "unknown".into();
        i.found_trails = "yes".into();
    });
    let found = found(&before);
    let known = |r: &&Repair| r.input.lubrication == "zinc";
    assert!(found.list.iter().any(|r| known(&r)));
    for repair in found.list.iter().filter(known) {
        let told = sheet(&before, &repair.input);
        assert!(says(&told, Message::EffectKnownThreads));
        let bolts = u32::try_from(scenario(&repair.input).bolting.count()).unwrap();
        assert_eq!(step(&told, Label::WorkNewBolts).unwrap().0, bolts);
    }
}

#[test]
fn the_words_of_two_measures_have_them_in_their_order() {
    let before = joint(|_| ());
    let told = sheet(&before, &changed(&before, |i| i.bolt = "unc-5.8".into()));
    let drilled = |said: &&calc_core::report::Said| said.code == Message::EffectFittingHole;
    let said = told.effects.iter().find(drilled).unwrap();
    assert!(said.amounts[0].si < said.amounts[1].si);
    let words = std::fs::read_to_string(
        outside_checks::reference::folder().join("../../content/messages.toml"),
    )
    .unwrap();
    let line = words
        .lines()
        .find(|l| l.starts_with("effect-fitting-hole ="));
    assert!(line.unwrap().contains("from {0} to {1}"));
}

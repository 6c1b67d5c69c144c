use super::*;
use crate::quantity::InUnits;
use crate::report::{CheckId, Message, Verdict, say};
use crate::scenario::{Field, Input, InputError, Scenario};
use crate::{Report, evaluate};

fn tube(change: impl FnOnce(&mut Input)) -> Scenario {
    Scenario::new(&input(change)).unwrap()
}

/// A 3 in steel tube that everything in the default joint fits on.
fn input(change: impl FnOnce(&mut Input)) -> Input {
    let mut input = Input {
        tube_width_mm: 76.2,
        tube_depth_mm: 76.2,
        tube_wall_mm: 4.76,
        tube_material: "a500-b".into(),
        ..Input::default()
    };
    change(&mut input);
    input
}

fn verdict(report: &Report, id: CheckId) -> Option<(Verdict, Message)> {
    report.check(id).map(|c| (c.verdict, c.reason.code))
}

fn says(s: &Scenario, id: CheckId, verdict_is: Verdict, code: Message) {
    assert_eq!(verdict(&evaluate(s), id), Some((verdict_is, code)));
}

fn fails(s: &Scenario, id: CheckId, code: Message) {
    let report = evaluate(s);
    assert_eq!(verdict(&report, id), Some((Verdict::DoesNotHold, code)));
    assert_eq!(report.verdict, Verdict::DoesNotHold);
}

#[test]
fn bolts_stand_about_the_middle_of_a_face() {
    let s = tube(|i| {
        i.bolt_rows = 2.0;
        i.spacing_across_mm = 30.0;
        i.bolts_along = 2.0;
    });
    let mm: Vec<[f64; 2]> = bolts(&s)
        .iter()
        .map(|p| [p.along, p.across].map(|l| (l.si() * 1e6).round() * 1e-3))
        .collect();
    assert_eq!(
        mm,
        [[60.0, 23.1], [150.0, 23.1], [60.0, 53.1], [150.0, 53.1]]
    );
}

#[test]
fn bolts_of_a_leg_stand_at_their_gauge() {
    let s = tube(|i| {
        i.member = "angle".into();
        i.bolt_gauge_mm = Some(45.0);
        i.bolts_along = 1.0;
    });
    let across: Vec<f64> = bolts(&s).iter().map(|p| p.across.si() * 1e3).collect();
    assert!((across[0] - 45.0).abs() < 1e-9);
}

#[test]
fn an_ordinary_joint_fits() {
    let report = evaluate(&tube(|i| {
        i.support = "loose-sleeve".into();
        i.sleeve = "rt-1.000x0.250".into();
        i.flange_arm_mm = Some(40.0);
    }));
    for id in [
        CheckId::HolePlace,
        CheckId::WasherPlace,
        CheckId::SleevePlace,
        CheckId::WrenchRoom,
    ] {
        assert_eq!(report.check(id).unwrap().verdict, Verdict::Holds, "{id:?}");
    }
    assert!(report.check(CheckId::PlatePlace).is_none());
}

#[test]
fn rows_outside_the_tube_are_refused_by_their_field() {
    let wide = input(|i| {
        i.bolt_rows = 2.0;
        i.spacing_across_mm = 64.0;
    });
    let errors = Scenario::new(&wide).unwrap_err();
    assert_eq!(errors.len(), 1, "{errors:?}");
    assert_eq!(errors[0].field(), Some(Field::SpacingAcross));
    assert!(matches!(errors[0], InputError::Contradiction { .. }));
}

#[test]
fn sleeves_wider_than_the_hollow_are_refused() {
    let wide = input(|i| {
        i.support = "loose-sleeve".into();
        i.bolt_rows = 2.0;
        i.spacing_across_mm = 45.0;
        i.sleeve = "rt-1.000x0.250".into();
    });
    let errors = Scenario::new(&wide).unwrap_err();
    assert_eq!(errors[0].field(), Some(Field::SpacingAcross), "{errors:?}");
}

#[test]
fn holes_in_the_corner_do_not_hold() {
    // Flat 76.2 − 2·9.52: 28.58 to either side of the middle; the hole reaches 25 + 7.1.
    let s = tube(|i| {
        i.bolt_rows = 2.0;
        i.spacing_across_mm = 50.0;
    });
    fails(&s, CheckId::HolePlace, Message::HoleCutsCorner);
    let check = evaluate(&s).check(CheckId::HolePlace).unwrap().clone();
    assert!((check.capacity.si - 3.58e-3).abs() < 1e-6, "{check:?}");
}

#[test]
fn a_solid_has_edges_but_no_flat() {
    let near = tube(|i| {
        i.member = "solid-bar".into();
        i.bolt_rows = 2.0;
        i.spacing_across_mm = 50.0;
    });
    let report = evaluate(&near);
    assert!(report.check(CheckId::HolePlace).is_none());
    fails(&near, CheckId::MemberEdge, Message::MemberEdgeTooNear);
}

#[test]
fn washers_keep_off_each_other_corners_ends_and_uprights() {
    let overlap = tube(|i| i.spacing_along_mm = 26.0);
    fails(&overlap, CheckId::WasherPlace, Message::WashersOverlap);
    let corner = tube(|i| {
        i.mount = "from-top".into();
        i.bolt_rows = 2.0;
        i.spacing_across_mm = 36.0;
        i.bolts_along = 1.0;
    });
    fails(&corner, CheckId::WasherPlace, Message::WasherInCorner);
    let end = tube(|i| {
        i.end_distance_mm = 20.0;
        i.washer_outer_mm = Some(44.0);
    });
    fails(&end, CheckId::WasherPlace, Message::WasherPastEnd);
    let upright = tube(|i| i.flange_arm_mm = Some(12.0));
    fails(
        &upright,
        CheckId::WasherPlace,
        Message::WasherAtFittingUpright,
    );
}

#[test]
fn a_washer_on_a_cheek_may_reach_over_the_corner_but_not_past_the_edge() {
    let at = |outer| {
        tube(|i| {
            i.bolts_along = 1.0;
            i.end_distance_mm = 200.0;
            i.washer_outer_mm = Some(outer);
        })
    };
    says(
        &at(70.0),
        CheckId::WasherPlace,
        Verdict::Holds,
        Message::WasherLiesFlat,
    );
    fails(&at(80.0), CheckId::WasherPlace, Message::WasherPastEdge);
}

#[test]
fn sleeves_keep_off_each_other_and_the_corner() {
    let sleeve = |change: fn(&mut Input)| {
        tube(|i| {
            i.support = "loose-sleeve".into();
            i.sleeve = "rt-1.250x0.188".into();
            change(i);
        })
    };
    let overlap = sleeve(|i| i.spacing_along_mm = 31.0);
    fails(&overlap, CheckId::SleevePlace, Message::SleevesOverlap);
    let corner = sleeve(|i| i.sleeve_outer_mm = Some(60.0));
    fails(&corner, CheckId::SleevePlace, Message::SleeveInCorner);
    let end = sleeve(|i| i.end_distance_mm = 15.0);
    fails(&end, CheckId::SleevePlace, Message::SleevePastEnd);
}

#[test]
fn plates_lie_on_the_member_and_washers_on_them() {
    let plate = |change: fn(&mut Input)| {
        tube(|i| {
            i.support = "spreader".into();
            i.end_distance_mm = 80.0;
            change(i);
        })
    };
    says(
        &plate(|_| ()),
        CheckId::PlatePlace,
        Verdict::Holds,
        Message::PlateLiesOn,
    );
    let end = plate(|i| i.spreader_length_mm = 170.0);
    fails(&end, CheckId::PlatePlace, Message::PlatePastEnd);
    let wide = plate(|i| i.spreader_width_mm = Some(120.0));
    fails(&wide, CheckId::PlatePlace, Message::PlateTooWide);
    let narrow = plate(|i| i.spreader_width_mm = Some(25.0));
    fails(&narrow, CheckId::PlatePlace, Message::WasherOffPlate);
}

#[test]
fn a_socket_needs_its_room() {
    // 3/4 in across the flats: 14.3 to the outside of the socket, 11.0 to the corner of the next head.
    let s = tube(|i| i.spacing_along_mm = 25.0);
    let fit = wrench(&s).unwrap();
    assert!((fit.needed.si() * 1e3 - 25.29).abs() < 0.01, "{fit:?}");
    fails(&s, CheckId::WrenchRoom, Message::SocketHitsNextHead);
    let upright = tube(|i| i.flange_arm_mm = Some(14.0));
    fails(&upright, CheckId::WrenchRoom, Message::SocketHitsUpright);
}

#[test]
fn a_washer_within_the_fillet_is_not_known() {
    let angle = |gauge| {
        tube(|i| {
            i.member = "angle".into();
            i.tube_wall_mm = 6.35;
            i.tube_width_mm = 63.5;
            i.bolt_gauge_mm = Some(gauge);
        })
    };
    // The washer reaches 13.5; the leg is 6.35 thick and the fillet as much.
    let at = |gauge| verdict(&evaluate(&angle(gauge)), CheckId::WasherSeat).unwrap();
    assert_eq!(at(19.0).1, say::SeatNoRoom.message());
    assert_eq!(at(25.0), (Verdict::NotChecked, say::SeatFillet.message()));
    assert_eq!(at(27.0).0, Verdict::Holds);
}

//! The road's lesson: statics of its three joints.

use super::super::every::UNITS;
use super::*;
use crate::scene::{Anchor, Mark, Scene, text_width};

use calc_core::quantity::UnitSystem::{self, Metric, Us};

fn state(text: &str) -> State {
    state_in(text, Metric)
}

fn state_in(text: &str, units: UnitSystem) -> State {
    State::parse(CONTROLS, text, units).unwrap()
}

fn amount(text: &str, name: &str) -> f64 {
    amount_in(text, name, Metric)
}

fn amount_in(text: &str, name: &str, units: UnitSystem) -> f64 {
    let (model, state): (&dyn Model, _) = (&Road, state_in(text, units));
    let outcome = model.outcome(&state).unwrap();
    let mut values = model.values(&state, &outcome).into_iter();
    values.find(|v| v.name == name).unwrap().amount.si
}

fn close(got: f64, want: f64) {
    assert!(
        (got - want).abs() < 1e-9 * want.abs().max(1.0),
        "{got}, {want}"
    );
}

const G: f64 = 9.806_65;

/// Every joint on every road at three distances, in both systems of units.
fn everywhere() -> Vec<State> {
    let mut out: Vec<State> = all().iter().map(|text| state(text)).collect();
    let inch: Vec<State> = out.iter().map(|s| s.answering(CONTROLS, Us)).collect();
    out.extend(inch);
    out
}

fn all() -> Vec<String> {
    let mut out = Vec::new();
    for joint in JOINTS {
        for road in ROADS {
            for distance in [120, 150, 200] {
                out.push(format!(
                    "joint={} road={} distance={distance}",
                    joint.key, road.key
                ));
            }
        }
    }
    out
}

#[test]
fn two_bolts_are_the_supports_of_a_beam_that_overhangs() {
    // Statics by hand: load F at distance a from the middle of two supports s apart. About the rear one
    // R_front·s = F·(a + s/2), about the front one R_rear·s = F·(a − s/2).
    let load = 550.0 * G * 0.12 * 3.0;
    let at = "road=bump distance=180";
    close(amount(at, "load"), load);
    close(amount(at, "hardest"), load * (180.0 + 30.0) / 60.0);
    close(amount(at, "other"), load * (180.0 - 30.0) / 60.0);
    let apart = "joint=apart road=bump distance=180";
    close(amount(apart, "hardest"), load * (180.0 + 60.0) / 120.0);
    close(amount(apart, "with-two-close"), amount(at, "hardest"));
    close(amount(at, "without-bump") * 3.0, amount(at, "hardest"));
    // 1000 lb, 12 % of it on the tongue, three times that over a bump: 360 lbf at 7 in; 2-1/2 in apart.
    let pounds = |name| amount_in("road=bump distance=7", name, Us) / 4.448_221_615;
    for (name, by_hand) in [("load", 360.0), ("pair", 1008.0), ("hardest", 1188.0)] {
        assert!((pounds(name) / by_hand - 1.0).abs() < 1e-6, "{name}");
    }
}

#[test]
fn share_and_pair_make_up_what_each_bolt_gets() {
    for state in everywhere() {
        let n = read(&state).unwrap();
        for ((all, alike), pair) in n.all.iter().zip(&n.alike).zip(&n.pair) {
            close(all.along, alike.along + pair.along);
            close(all.across, alike.across + pair.across);
        }
        close(n.all.iter().map(|s| s.across).sum(), n.up);
        close(n.all.iter().map(|s| s.along).sum(), n.along);
    }
}

#[test]
fn a_third_bolt_between_takes_nothing_of_the_twist() {
    let n = read(&state("joint=third road=worst")).unwrap();
    assert_eq!(n.pair.len(), 3);
    close(n.pair[1].in_plane(), 0.0);
    for at in ["road=bump distance=120", "road=bump distance=200"] {
        let of = |joint: &str| amount(&format!("joint={joint} {at}"), "hardest");
        close(
            amount(&format!("joint=third {at}"), "pair"),
            amount(at, "pair"),
        );
        // Moving the two apart helps several times as much.
        assert!(of("close") - of("apart") > 4.0 * (of("close") - of("third")));
        assert!(of("third") < of("close"));
    }
}

#[test]
fn what_points_along_the_tube_has_no_lever_at_the_coupler_and_all_of_it_at_the_hanger() {
    close(amount("road=worst", "twist"), amount("road=bump", "twist"));
    assert!(amount("road=worst", "share") > amount("road=bump", "share"));
    for distance in [120, 200] {
        let at = format!("joint=hanger road=bump distance={distance}");
        close(amount(&at, "twist"), 0.0);
        close(amount(&at, "hardest"), amount(&at, "load") / 2.0);
        // 550 kg, half a g, two wheels, all of a wheel's on this hanger.
        let braking = format!("joint=hanger road=worst distance={distance}");
        close(
            amount(&braking, "twist"),
            550.0 * 0.5 * G / 2.0 * f64::from(distance) * 1e-3,
        );
    }
}

#[test]
fn the_chain_bears_nothing_until_the_coupler_is_off_then_the_weight() {
    for road in ["off", "still", "bump"] {
        let at = format!("joint=chain road={road}");
        let n = read(&state(&at)).unwrap();
        assert!(n.hardest() == 0.0 && !n.loaded(), "{at}");
    }
    close(amount("joint=chain road=worst", "load"), 550.0 * G);
}

#[test]
fn the_words_say_which_bolt_is_worst() {
    for (at, front) in [
        ("road=bump", true),
        ("joint=apart road=worst", true),
        ("joint=hanger road=worst", false),
        ("joint=chain road=worst", true),
    ] {
        let n = read(&state(at)).unwrap();
        let (rear, ahead) = (n.all[0].in_plane(), n.all.last().unwrap().in_plane());
        assert_eq!(ahead > rear, front, "{at}");
        assert!(amount(at, "hardest") > amount(at, "share"), "{at}");
    }
    // "more than the whole load", "pulled down"
    for distance in [120, 200] {
        let at = format!("road=bump distance={distance}");
        assert!(amount(&at, "hardest") > amount(&at, "load"));
        assert!(read(&state(&at)).unwrap().all[0].across < 0.0);
    }
}

#[test]
fn a_quiet_start_and_then_everything_fits_its_scale() {
    for units in UNITS {
        let start = State::start(CONTROLS, units);
        assert_eq!(read(&start).unwrap().hardest(), 0.0);
        // The worked example then has the numbers of a bump.
        let bump = |text| amount_in(text, "hardest", units);
        assert_eq!(bump(""), bump("road=bump"));
        // The arrows' longest force is on the plot's axis too.
        let stock = STOCK.of(units);
        assert!(stock.most_force < stock.most_on_plot);
    }
    for state in everywhere() {
        let n = read(&state).unwrap();
        let most = n.hardest().max(n.along.abs()).max(n.up.abs());
        assert!(most <= n.stock.most_force, "{state:?}: {most}");
    }
}

/// Lettering with the place of the group that it stands in.
fn letters(marks: &[Mark], by: (f64, f64), out: &mut Vec<(f64, f64, f64, f64, String)>) {
    for mark in marks {
        match mark {
            Mark::Group { placed, marks, .. } => {
                letters(marks, (by.0 + placed.x, by.1 + placed.y), out);
            }
            Mark::Text {
                at,
                text,
                class,
                anchor,
                turn,
            } if *turn == 0.0 => {
                // Real letters are narrower than what room is kept for.
                let wide = 0.9 * text_width(text, class);
                let left = at.0 + by.0
                    - match anchor {
                        Anchor::Start => 0.0,
                        Anchor::Middle => wide / 2.0,
                        Anchor::End => wide,
                    };
                let base = at.1 + by.1;
                out.push((left, base - 10.0, left + wide, base, text.clone()));
            }
            _ => {}
        }
    }
}

fn lettered(scene: &Scene) -> Vec<(f64, f64, f64, f64, String)> {
    let mut out = Vec::new();
    letters(&scene.marks, (0.0, 0.0), &mut out);
    out
}

#[test]
fn lettering_stays_on_the_sheet_and_apart() {
    for state in everywhere() {
        let scene = Road.picture(&state, &state.look("x")).unwrap().drawing;
        let all = lettered(&scene);
        for (i, a) in all.iter().enumerate() {
            assert!(
                a.0 >= 0.0 && a.2 <= scene.width && a.1 >= 0.0 && a.3 <= scene.height,
                "{state:?}: {a:?}"
            );
            for b in &all[i + 1..] {
                let over = a.0 < b.2 && b.0 < a.2 && a.1 < b.3 && b.1 < a.3;
                assert!(!over, "{state:?}: {a:?} on {b:?}");
            }
        }
    }
}

#[test]
fn the_arrows_at_the_bolts_are_drawn_to_the_printed_scale() {
    let at = "joint=chain road=worst";
    let state = state(at);
    let scene = Road.picture(&state, &state.look("x")).unwrap().drawing;
    assert!(scene.to_svg().contains("10\u{a0}mm = 5\u{a0}kN"));
    fn shafts(marks: &[Mark], out: &mut Vec<f64>) {
        for mark in marks {
            match mark {
                Mark::Group { marks, .. } => shafts(marks, out),
                // The tip takes the last 12 units.
                Mark::Line { from, to, class } if *class == "force clamp" => {
                    out.push((to.0 - from.0).hypot(to.1 - from.1) + 12.0);
                }
                _ => {}
            }
        }
    }
    let mut drawn = Vec::new();
    shafts(&scene.marks, &mut drawn);
    let longest = drawn.into_iter().fold(0.0, f64::max);
    let newtons = amount(at, "hardest");
    let want = newtons / 5e3 * 96.0 / 2.54;
    assert!((longest - want).abs() < 0.1, "{longest}, {want}");
}

#[test]
fn the_joint_of_the_lesson_slides_with_the_bolts_close_and_not_with_them_apart() {
    for units in UNITS {
        let slip = |text: &str| {
            let joint = Road.outcome(&state_in(text, units)).unwrap().joint;
            let report = calc_core::evaluate(&Scenario::new(&joint).unwrap());
            let mut checks = report.checks.into_iter();
            let slip = checks.find(|c| c.id == calc_core::report::CheckId::Slip);
            slip.unwrap().utilisation.unwrap()
        };
        assert!(slip("joint=close") > 1.0 && slip("joint=third") > 1.0);
        assert!(slip("joint=apart") < 1.0, "{}", slip("joint=apart"));
    }
}

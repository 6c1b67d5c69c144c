//! Sections of channels, angles and round tubes: to scale, on the sheet, nothing over anything.

use super::*;
use crate::scene::{Mark, Scene, text_bounds};
use calc_core::{Input, Scenario};

fn scenario(change: impl FnOnce(&mut Input)) -> Scenario {
    let mut input = Input {
        tube_material: "a36".into(),
        ..Input::default()
    };
    change(&mut input);
    Scenario::new(&input).unwrap()
}

fn all() -> Vec<Scenario> {
    let mut all = Vec::new();
    for (member, mount) in [
        ("channel", "from-top"),
        ("channel", "through-sides"),
        ("angle", "from-top"),
        ("angle", "through-sides"),
        ("round-tube", "through-sides"),
        ("round-tube", "from-top"),
    ] {
        let supports: &[&str] = if member == "round-tube" {
            &["bare", "through-sleeve", "solid-insert"]
        } else {
            &["bare", "spreader"]
        };
        for support in supports {
            for (washer, width) in [("no", 50.8), ("yes", 101.6)] {
                all.push(scenario(|i| {
                    i.member = member.into();
                    i.mount = mount.into();
                    i.support = (*support).into();
                    i.shaped_washer = washer.into();
                    i.tube_width_mm = width;
                    i.tube_wall_mm = 5.0;
                }));
            }
        }
    }
    // The load beside a web or a leg, near and far.
    for member in ["channel", "angle"] {
        for offset in [0.0, 4.0, 25.0, 70.0, 400.0] {
            all.push(scenario(|i| {
                i.member = member.into();
                i.load_offset_mm = Some(offset);
                i.tube_wall_mm = 5.0;
            }));
        }
    }
    all
}

#[test]
fn the_line_of_the_load_is_drawn_beside_the_face() {
    let with = |offset| {
        let s = scenario(|i| {
            i.member = "channel".into();
            i.load_offset_mm = offset;
        });
        let scene = member_section(&MemberState::from_core("m", &s, UnitSystem::Metric).unwrap());
        let named = texts(&scene).iter().any(|(.., text)| text == "load");
        (named, scene.description.replace('\u{a0}', " "))
    };
    let (drawn, said) = with(Some(30.0));
    assert!(drawn && said.contains("30 mm beside"), "{said}");
    let (drawn, said) = with(None);
    assert!(!drawn && !said.contains("beside the face"), "{said}");
    // Too far for the sheet it is said only.
    let (drawn, said) = with(Some(400.0));
    assert!(!drawn && said.contains("400 mm beside"), "{said}");
}

fn texts(scene: &Scene) -> Vec<(f64, f64, f64, String)> {
    scene
        .marks
        .iter()
        .filter_map(|mark| match mark {
            Mark::Text {
                at,
                text,
                class,
                anchor,
                turn,
            } if *turn == 0.0 => {
                let (left, _, right, _) = text_bounds(*at, text, class, *anchor);
                Some((left, right, at.1, text.clone()))
            }
            _ => None,
        })
        .collect()
}

#[test]
fn lettering_stays_on_the_sheet_and_clear_of_itself() {
    for units in [UnitSystem::Metric, UnitSystem::Us] {
        for s in all() {
            let scene = member_section(&MemberState::from_core("m", &s, units).unwrap());
            let found = texts(&scene);
            for (i, (left, right, y, text)) in found.iter().enumerate() {
                assert!(
                    *left >= -0.5 && *right <= scene.width + 0.5 && *y <= scene.height,
                    "{text}: {left} {right} {y}"
                );
                for (l, r, h, other) in &found[i + 1..] {
                    let apart = right <= l || r <= left || (y - h).abs() > 10.0;
                    assert!(apart, "{text} lies on {other}");
                }
            }
        }
    }
}

#[test]
fn each_member_is_told_by_its_own_words_and_drawn_with_numbers() {
    for s in all() {
        let scene = member_section(&MemberState::from_core("m", &s, UnitSystem::Metric).unwrap());
        let svg = scene.to_svg();
        assert!(!svg.contains("NaN") && !svg.contains("inf"), "{svg}");
        let word = match s.member.kind {
            calc_core::scenario::MemberKind::Channel => "Channel",
            calc_core::scenario::MemberKind::Angle => "Angle",
            _ => "Round tube",
        };
        assert!(scene.description.starts_with(word), "{}", scene.description);
    }
}

#[test]
fn each_measure_is_drawn_on_each_member_within_its_sheet() {
    for shape in [
        None,
        Some(Shape::ChannelFlange),
        Some(Shape::ChannelWeb),
        Some(Shape::Angle),
        Some(Shape::Round),
    ] {
        for measure in crate::measure::Measure::ALL {
            let scene = measure_scene(measure, shape, "m");
            for (left, right, y, text) in texts(&scene) {
                assert!(
                    left >= 0.0 && right <= scene.width && y <= scene.height,
                    "{shape:?} {measure:?} {text}"
                );
            }
        }
    }
}

#[test]
fn a_rectangular_tube_and_a_bar_have_their_own_section() {
    for member in ["rectangular-tube", "solid-bar"] {
        let s = scenario(|i| i.member = member.into());
        assert_eq!(MemberState::from_core("m", &s, UnitSystem::Metric), None);
    }
}

/// A tapered washer fills the wedge between flange and washer; without it the washer lies on its edge.
#[test]
fn the_slope_of_a_flange_is_drawn() {
    let p = Profile {
        shape: Shape::ChannelFlange,
        width_mm: 50.0,
        depth_mm: 100.0,
        wall_mm: 8.0,
        upright_mm: 5.0,
        gauge_mm: 30.0,
        slope: 1.0 / 6.0,
    };
    assert!((p.thickness(-12.0) - 10.0).abs() < 1e-9);
    assert!((p.thickness(12.0) - 6.0).abs() < 1e-9);
}

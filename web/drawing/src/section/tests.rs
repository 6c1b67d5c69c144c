//! The section: to scale, on the sheet, lettering clear of the lines.

use super::*;
use crate::scene::{Anchor, CutMetal, LETTER, LETTER_SMALL, Mark, Placed, Scene, text_width};
use crate::units::Lettering;
use calc_core::quantity::UnitSystem;
use proptest::prelude::*;

/// Invented: not a joint that anybody has measured.
pub(crate) fn invented(layout: Layout) -> SectionState {
    SectionState {
        id: "fig".into(),
        name: "1 · section through the bolt".into(),
        tube: Tube {
            width_mm: 60.0,
            depth_mm: 80.0,
            wall_mm: 3.0,
            corner_radius_mm: 5.0,
            material: CutMetal::Steel,
        },
        bolt: Bolt {
            diameter_mm: 12.0,
            flats_mm: 18.0,
            head_mm: 7.5,
            nut_mm: 10.8,
            hole_mm: 13.5,
            thread_mm: 30.0,
        },
        washer: Washer {
            outer_mm: 24.0,
            thickness_mm: 2.5,
        },
        fitting: None,
        support: Support::Bare,
        turn_deg: 120.0,
        clamp_n: 9_000.0,
        clamp_largest_n: 20_000.0,
        clamp_wanted_n: None,
        dent_each_mm: 0.6,
        dent_left_mm: Some(0.2),
        dent_largest_mm: 1.5,
        units: UnitSystem::Metric,
        labels: true,
        example: true,
        layout,
        strip: true,
    }
}

/// Every mark with the chain of groups that it stands in.
fn walk<'a>(
    marks: &'a [Mark],
    placed: &mut Vec<Placed>,
    see: &mut impl FnMut(&'a Mark, &[Placed]),
) {
    for mark in marks {
        see(mark, placed);
        if let Mark::Group {
            placed: here,
            marks,
            ..
        } = mark
        {
            placed.push(*here);
            walk(marks, placed, see);
            placed.pop();
        }
    }
}

/// The four corners of each text on the sheet, with the text.
fn texts(scene: &Scene) -> Vec<(String, Vec<(f64, f64)>)> {
    let mut found = Vec::new();
    walk(&scene.marks, &mut Vec::new(), &mut |mark, chain| {
        if let Mark::Text {
            at,
            text,
            class,
            anchor,
            turn,
        } = mark
        {
            let (wide, tall) = (text_width(text, class), Mark::letter_size(class));
            let left = match anchor {
                Anchor::Start => 0.0,
                Anchor::Middle => -wide / 2.0,
                Anchor::End => -wide,
            };
            let here = Placed {
                x: at.0,
                y: at.1,
                degrees: *turn,
            };
            let corners = [
                (left, 0.25 * tall),
                (left + wide, 0.25 * tall),
                (left, -0.75 * tall),
                (left + wide, -0.75 * tall),
            ]
            .map(|c| chain.iter().rev().fold(here.apply(c), |p, g| g.apply(p)));
            found.push((text.clone(), corners.to_vec()));
        }
    });
    found
}

fn lines<'a>(scene: &'a Scene, class: &str) -> Vec<((f64, f64), (f64, f64))> {
    let mut found = Vec::new();
    walk(&scene.marks, &mut Vec::new(), &mut |mark: &'a Mark, _| {
        if let Mark::Line { from, to, class: c } = mark
            && *c == class
        {
            found.push((*from, *to));
        }
    });
    found
}

/// How far the upper face's flat part lies below its corner, read back from the drawn path.
fn drawn_dent(scene: &Scene) -> f64 {
    let mut first = None;
    walk(&scene.marks, &mut Vec::new(), &mut |m, _| {
        if let Mark::Path {
            d,
            class: "edge",
            hatch: Some(_),
        } = m
        {
            first.get_or_insert_with(|| d.clone());
        }
    });
    let d = first.unwrap();
    // M hole,dent L flat,dent C … corner,face A …
    let numbers: Vec<f64> = d
        .split(|c: char| c.is_ascii_alphabetic() || c == ' ')
        .filter_map(|n| n.parse().ok())
        .take(10)
        .collect();
    numbers[1] - numbers[9]
}

#[test]
fn the_style_sheet_letters_in_the_sizes_that_the_layout_counts_on() {
    let css = include_str!("../../../style/20-sheet.css");
    assert!(css.contains(&format!("font-size: {LETTER}px")));
    assert!(css.contains(&format!(".drawing text.s {{ font-size: {LETTER_SMALL}px")));
}

#[test]
fn lettering_is_at_least_11_px_on_a_360_px_screen() {
    let width = section(&invented(Layout::Narrow)).width;
    // Page margins of 12 px and the sheet's borders of 1.5 px on either side.
    let zoom = (360.0 - 2.0 * 12.0 - 2.0 * 1.5) / width;
    assert!(LETTER_SMALL * zoom >= 11.0, "{}", LETTER_SMALL * zoom);
}

#[test]
fn the_clamp_arrow_is_as_long_as_the_title_strip_says() {
    let state = invented(Layout::Wide);
    let scene = section(&state);
    let (kn, _) = texts(&scene)
        .iter()
        .find_map(|(t, _)| t.strip_prefix("10\u{a0}mm = ").map(str::to_owned))
        .and_then(|t| {
            t.split_once('\u{a0}')
                .map(|(n, u)| (n.parse::<f64>().unwrap(), u.to_owned()))
        })
        .unwrap();
    let expected = state.clamp_n / 1e3 / kn * state.units.paper().0;
    // Tip: the first point of the arrow's head.
    let tips: Vec<f64> = scene
        .marks
        .iter()
        .filter_map(|m| match m {
            Mark::Path {
                d,
                class: "force-tip clamp",
                ..
            } => d.split(['M', 'L', ' ']).nth(2).and_then(|y| y.parse().ok()),
            _ => None,
        })
        .collect();
    let tails = lines(&scene, "force clamp");
    assert_eq!((tips.len(), tails.len()), (2, 2));
    for (tip, (tail, _)) in tips.iter().zip(tails) {
        let drawn = (tip - tail.1).abs();
        // Paths are written to tenths, so each end may be half of one off.
        assert!((drawn - expected).abs() < 0.051, "{drawn} for {expected}");
    }
}

#[test]
fn the_dent_is_drawn_times_the_exaggeration_that_is_printed() {
    let mut state = invented(Layout::Narrow);
    state.dent_each_mm = 0.0;
    assert!(drawn_dent(&section(&state)).abs() < 1e-9);
    state.dent_each_mm = 1.2;
    let scene = section(&state);
    let times = exaggeration(state.dent_largest_mm, state.tube.depth_mm);
    assert!(
        texts(&scene)
            .iter()
            .any(|(t, _)| *t == format!("drawn ×\u{a0}{times}"))
    );
    // The scale, read from the drawing itself: the tube's depth is an upright dimension of 80 mm.
    let sheet = layout::Sheet::new(&state);
    assert!((drawn_dent(&scene) - 1.2 * f64::from(times) * sheet.scale).abs() < 0.101);
}

#[test]
fn two_figures_on_a_page_share_no_id() {
    let ids = |id: &str| -> Vec<String> {
        let mut state = invented(Layout::Narrow);
        state.id = id.into();
        let svg = section(&state).to_svg();
        svg.split(" id=\"")
            .skip(1)
            .map(|s| s.split('"').next().unwrap().to_owned())
            .collect()
    };
    let mut all = ids("a");
    all.extend(ids("b"));
    let count = all.len();
    assert!(count >= 8);
    all.sort();
    all.dedup();
    assert_eq!(all.len(), count);
}

#[test]
fn a_loose_sleeve_s_gap_closes_as_the_faces_come_in() {
    let mut state = invented(Layout::Narrow);
    state.support = Support::LooseSleeve {
        outer_mm: 20.0,
        wall_mm: 2.5,
        short_mm: 0.5,
        material: CutMetal::Steel,
    };
    state.dent_largest_mm = 0.4;
    let mut height = |dent: f64| {
        state.dent_each_mm = dent;
        let scene = section(&state);
        let mut found = None;
        walk(&scene.marks, &mut Vec::new(), &mut |m, _| {
            // The sleeve is the only tall upright hatched rectangle.
            if let Mark::Rect {
                height,
                hatch: Some(_),
                ..
            } = m
                && *height > 60.0
            {
                found.get_or_insert(*height);
            }
        });
        found.unwrap()
    };
    let (open, half, closed) = (height(0.0), height(0.1), height(0.25));
    assert!(
        (open - half).abs() < 0.02 && (half - closed).abs() < 0.02,
        "a sleeve does not shrink before it is reached"
    );
    assert!(height(0.35) < closed - 1.0);
}

fn any_support() -> impl Strategy<Value = Support> {
    let material = prop_oneof![Just(CutMetal::Steel), Just(CutMetal::Aluminium)];
    (
        0..6_u8,
        15.0..40.0_f64,
        1.0..5.0_f64,
        -1.0..3.0_f64,
        material,
    )
        .prop_map(|(kind, outer_mm, wall_mm, short_mm, material)| match kind {
            0 => Support::Bare,
            1 => Support::Spreader(Ply {
                thickness_mm: wall_mm * 2.0,
                width_mm: outer_mm * 2.0,
                material,
                both_sides: true,
            }),
            2 => Support::LooseSleeve {
                outer_mm,
                wall_mm,
                short_mm,
                material,
            },
            3 => Support::ThroughSleeve {
                outer_mm,
                wall_mm,
                material,
            },
            4 => Support::SolidInsert { short_mm, material },
            _ => Support::Solid,
        })
}

prop_compose! {
    fn any_state()(
        support in any_support(),
        width_mm in 25.0..200.0_f64,
        depth_mm in 25.0..200.0_f64,
        wall_mm in 0.8..12.0_f64,
        diameter_mm in 6.0..24.0_f64,
        turn_deg in 0.0..1500.0_f64,
        clamp_n in 0.0..200_000.0_f64,
        dent in 0.0..12.0_f64,
        share in 0.0..=1.0_f64,
        fitting in prop::option::of((0.5..12.0_f64, any::<bool>())),
        us: bool,
        wide: bool,
        strip: bool,
    ) -> SectionState {
        let mut state = invented(if wide { Layout::Wide } else { Layout::Narrow });
        state.tube = Tube { width_mm, depth_mm, wall_mm, corner_radius_mm: 1.5 * wall_mm, material: CutMetal::Aluminium };
        state.bolt = Bolt { diameter_mm, flats_mm: 1.5 * diameter_mm, head_mm: 0.65 * diameter_mm, nut_mm: 0.9 * diameter_mm, hole_mm: diameter_mm + 1.5, thread_mm: 2.0 * diameter_mm + 6.0 };
        state.washer = Washer { outer_mm: 2.0 * diameter_mm, thickness_mm: 0.2 * diameter_mm };
        state.support = support;
        state.fitting = fitting.map(|(thickness_mm, both_sides)| Ply { thickness_mm, width_mm: 0.9 * width_mm, material: CutMetal::Steel, both_sides });
        state.turn_deg = turn_deg;
        state.clamp_n = clamp_n * share;
        state.clamp_largest_n = clamp_n;
        state.dent_each_mm = dent * share;
        state.dent_largest_mm = dent;
        state.dent_left_mm = Some(dent * share * 0.5);
        state.units = if us { UnitSystem::Us } else { UnitSystem::Metric };
        state.strip = strip;
        state
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn lettering_stays_on_the_sheet(state in any_state()) {
        let scene = section(&state);
        for (text, corners) in texts(&scene) {
            for (x, y) in corners {
                prop_assert!((-0.5..=scene.width + 0.5).contains(&x) && (-0.5..=scene.height + 0.5).contains(&y), "{text:?} at {x}, {y} of {} × {}", scene.width, scene.height);
            }
        }
    }

    #[test]
    fn every_line_is_drawn_with_numbers_and_on_the_sheet(state in any_state()) {
        let scene = section(&state);
        let svg = scene.to_svg();
        prop_assert!(!svg.contains("NaN") && !svg.contains("inf"));
        let mut bad = None;
        walk(&scene.marks, &mut Vec::new(), &mut |mark, chain| {
            if let (Mark::Line { from, to, .. }, true) = (mark, chain.is_empty()) {
                for (x, y) in [*from, *to] {
                    if !((-1.0..=scene.width + 1.0).contains(&x) && (-1.0..=scene.height + 1.0).contains(&y)) {
                        bad = Some(mark.clone());
                    }
                }
            }
        });
        prop_assert!(bad.is_none(), "{bad:?} on {} × {}", scene.width, scene.height);
    }

    #[test]
    fn a_deeper_dent_is_drawn_deeper_but_never_past_a_third(mut state in any_state(), a in 0.0..1.0_f64, b in 0.0..1.0_f64) {
        if state.support == Support::Solid { state.support = Support::Bare; }
        let (less, more) = (a.min(b) * state.dent_largest_mm, a.max(b) * state.dent_largest_mm);
        state.dent_each_mm = less;
        let shallow = drawn_dent(&section(&state));
        state.dent_each_mm = more;
        let scene = section(&state);
        let deep = drawn_dent(&scene);
        // Paths are written to tenths, so each end may be half of one off.
        prop_assert!(shallow <= deep + 0.101);
        let sheet = layout::Sheet::new(&state);
        prop_assert!(deep <= state.tube.depth_mm * sheet.scale / 3.0 + 0.101);
    }

    #[test]
    fn what_is_no_number_breaks_nothing(which in 0..6_u8, value in prop_oneof![Just(f64::NAN), Just(f64::INFINITY), Just(-1.0)]) {
        let mut state = invented(Layout::Narrow);
        match which {
            0 => state.turn_deg = value,
            1 => state.clamp_n = value,
            2 => state.dent_each_mm = value,
            3 => state.dent_left_mm = Some(value),
            4 => state.clamp_largest_n = value,
            _ => state.dent_largest_mm = value,
        }
        let svg = section(&state).to_svg();
        prop_assert!(!svg.contains("NaN") && !svg.contains("inf"));
    }

    #[test]
    fn the_sag_is_flat_at_both_ends_and_falls_between(flat in 1.0..20.0_f64, more in 2.0..40.0_f64, depth in 0.1..10.0_f64) {
        let end = flat + more;
        let sag = Sag::new(flat, end, depth);
        prop_assert!((sag.at(0.0) - depth).abs() < 1e-12 && sag.at(end).abs() < 1e-12);
        let h = 1e-4 * more;
        // No slope at the ends: the drop over a small step is of second order.
        prop_assert!(depth - sag.at(flat.min(0.92 * end) + h) < depth * 1e-6);
        prop_assert!(sag.at(end - h) < depth * 1e-6);
        for i in 0..20 {
            let x = end * f64::from(i) / 20.0;
            prop_assert!(sag.at(x) >= sag.at(x + end / 20.0) - 1e-12);
        }
    }
}

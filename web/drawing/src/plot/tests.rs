//! The plot: ticks, labels that stay clear, any range.

use super::*;
use crate::scene::{Anchor, Mark, text_width};
use proptest::prelude::*;

/// Invented curves with a knee.
pub(crate) fn invented() -> TorqueTurnPlot {
    let this = (0..=120_u16)
        .map(|i| {
            let turn = f64::from(i) * 3.0;
            (turn, 46.0 * (1.0 - (-turn / 62.0).exp()) + 0.018 * turn)
        })
        .collect();
    let beside = vec![(0.0, 0.0), (20.0, 6.0), (150.0, 92.0)];
    TorqueTurnPlot {
        curves: vec![
            Curve {
                points: this,
                kind: CurveKind::This,
                label: "bare tube".into(),
            },
            Curve {
                points: beside,
                kind: CurveKind::Comparison,
                label: "same bolt, sleeve in the tube".into(),
            },
        ],
        knee: Some((84.0, 35.6)),
        knee_label: "the face lets go".into(),
        here: Some((190.0, 47.3)),
        wanted_nm: Some(80.0),
        click: None,
        reach: None,
        units: UnitSystem::Metric,
    }
}

#[test]
fn a_range_refuses_what_makes_plotting_hang_or_fail() {
    for (from, to) in [
        (0.0, f64::INFINITY),
        (f64::NEG_INFINITY, f64::INFINITY),
        (-1e308, 1e308),
        (f64::NAN, 1.0),
        (0.0, f64::NAN),
        (1.0, 0.0),
        (1.0, 1.0),
        (0.0, 1e-310),
        (1e9, 1e9 + 1e-6),
    ] {
        assert_eq!(PlotRange::new(from, to), None, "{from} … {to}");
    }
    assert!(PlotRange::new(0.0, 360.0).is_some());
}

#[test]
fn plotters_and_the_scene_put_a_straight_curve_in_the_same_place() {
    let mut plot = invented();
    plot.curves = vec![Curve {
        points: vec![(0.0, 0.0), (360.0, 90.0)],
        kind: CurveKind::This,
        label: String::new(),
    }];
    let frame = Frame::new(&plot, 440.0, 360.0);
    let svg = svg_picture(&plot, &frame).unwrap();
    let (x, y) = frame.place((360.0, 90.0));
    let (x0, y0) = frame.place((0.0, 0.0));
    let drawn = format!("{:.0},{:.0} {:.0},{:.0}", x0, y0, x, y);
    assert!(svg.contains(&drawn), "{drawn} not in {svg}");
    let scene = torque_turn_scene("p", &plot, 440.0, 360.0);
    let expected = crate::pen::polyline([(x0, y0), (x, y)]);
    assert!(
        scene
            .marks
            .iter()
            .any(|m| matches!(m, Mark::Path { d, class: "curve", .. } if *d == expected))
    );
}

#[test]
fn a_curve_beside_is_cut_at_the_top_of_the_field() {
    let mut plot = invented();
    plot.curves[1].points = vec![(0.0, 0.0), (100.0, 1000.0)];
    let frame = Frame::new(&plot, 440.0, 360.0);
    let trace = frame.trace(&plot.curves[1].points);
    let (_, top, ..) = frame.field();
    let last = trace.last().unwrap();
    assert!((last.1 - top).abs() < 1e-9);
    let slope = |p: &(f64, f64)| frame.torque.to() * (1.0 - (p.1 - top) / (frame.height - 74.0));
    assert!((slope(last) - frame.torque.to()).abs() < 1e-9);
}

#[test]
fn no_numbers_no_panic() {
    let mut plot = invented();
    plot.curves[0].points = vec![(f64::NAN, 1.0), (1.0, f64::INFINITY)];
    plot.knee = Some((f64::NAN, f64::NAN));
    plot.here = Some((f64::INFINITY, 3.0));
    plot.wanted_nm = Some(f64::NAN);
    let frame = Frame::new(&plot, f64::NAN, -5.0);
    assert!(svg_picture(&plot, &frame).is_ok());
    assert!(
        !torque_turn_scene("p", &plot, 300.0, 200.0)
            .to_svg()
            .contains("NaN")
    );
}

#[test]
fn names_never_run_into_each_other_while_the_wrench_turns() {
    let mut plot = invented();
    for width in [340.0, 440.0] {
        for turn in (0..=120).map(|i| f64::from(i) * 3.0) {
            plot.here = plot.curves[0].points.iter().copied().find(|p| p.0 >= turn);
            let labels = Frame::new(&plot, width, 300.0).labels(&plot);
            for (i, a) in labels.iter().enumerate() {
                for b in labels.iter().skip(i + 1) {
                    assert!(!a.hits(b), "{a:?} and {b:?}");
                }
            }
        }
    }
}

proptest! {
    #[test]
    fn labels_stay_on_the_sheet(turn in 20.0..2000.0_f64, torque in 1.0..3000.0_f64, at in 0.0..1.0_f64, us: bool, narrow: bool) {
        let mut plot = invented();
        plot.units = if us { UnitSystem::Us } else { UnitSystem::Metric };
        plot.curves[0].points = (0..=40).map(|i| {
            let s = f64::from(i) / 40.0;
            (turn * s, torque * s.sqrt())
        }).collect();
        plot.here = Some((turn * at, torque * at.sqrt()));
        plot.knee = Some((turn * 0.2, torque * 0.2_f64.sqrt()));
        plot.wanted_nm = Some(torque * 1.4);
        let (width, height) = if narrow { (340.0, 300.0) } else { (440.0, 400.0) };
        let frame = Frame::new(&plot, width, height);
        for label in frame.labels(&plot) {
            let class = if label.kind == LabelKind::Here { "t" } else { "t s" };
            let wide = text_width(&label.text, class);
            let left = match label.anchor { Anchor::Start => label.at.0, Anchor::Middle => label.at.0 - wide / 2.0, Anchor::End => label.at.0 - wide };
            prop_assert!(left >= 0.0 && left + wide <= width + 0.5, "{:?}", label);
            prop_assert!(label.at.1 >= 10.0 && label.at.1 <= height - 2.0, "{:?}", label);
        }
    }
}

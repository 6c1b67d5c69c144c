//! The wrench on the nut from above, with the angle turned so far.

use super::layout::{SWEEP, Sheet};
use super::state::SectionState;
use crate::parts::{arrow_tip, centre_cross, thread_end_view, wrench};
use crate::pen::polyline;
use crate::scene::{Anchor, Mark, Placed};

/// Degrees as lettered: whole turns apart once there are any.
pub(super) fn turned(degrees: f64) -> String {
    let degrees = if degrees.is_finite() {
        degrees.max(0.0).round()
    } else {
        0.0
    };
    let turns = (degrees / 360.0).floor();
    if turns < 1.0 {
        return format!("{degrees:.0}°");
    }
    let rest = degrees - 360.0 * turns;
    let word = if turns > 1.5 { "turns" } else { "turn" };
    if rest < 0.5 {
        format!("{turns:.0} {word}")
    } else {
        format!("{turns:.0} {word} + {rest:.0}°")
    }
}

/// The marks.
pub(super) fn plan(state: &SectionState, sheet: &Sheet) -> Vec<Mark> {
    let degrees = if state.turn_deg.is_finite() {
        state.turn_deg.clamp(0.0, 7200.0)
    } else {
        0.0
    };
    let flats = (state.bolt.flats_mm * sheet.scale).clamp(24.0, 40.0);
    let d = flats * (state.bolt.diameter_mm / state.bolt.flats_mm.max(0.1)).clamp(0.2, 0.9);
    let mut inside = vec![Mark::line((0.0, -flats), (0.0, -SWEEP - 6.0), "phantom")];
    inside.push(Mark::group(
        Placed {
            x: 0.0,
            y: 0.0,
            degrees,
        },
        "",
        wrench(flats, SWEEP - 4.0),
    ));
    inside.extend(thread_end_view(d));
    inside.extend(centre_cross((0.0, 0.0), d / 2.0 + 5.0));
    // The way the handle's end has gone; a second turn lies outside the first.
    let radius = |at: f64| SWEEP - 12.0 + 5.0 * (at / 360.0).min(3.0);
    let point = |at: f64| {
        let (sin, cos) = at.to_radians().sin_cos();
        (radius(at) * sin, -radius(at) * cos)
    };
    if degrees >= 12.0 {
        let shown = degrees.min(1080.0);
        let steps = (0..=120_u8).map(|i| point((shown - 6.0) * f64::from(i) / 120.0));
        inside.push(Mark::path(polyline(steps), "turned"));
        let (sin, cos) = shown.to_radians().sin_cos();
        inside.push(arrow_tip(point(shown), (cos, sin), 10.0, "tip"));
    }
    let (x, y) = sheet.plan;
    vec![
        Mark::group(Placed::at(x, y), "plan", inside),
        Mark::text(
            (x, y + SWEEP + 18.0),
            format!("nut turned {}", turned(state.turn_deg)),
            "t s",
            Anchor::Middle,
        ),
    ]
}

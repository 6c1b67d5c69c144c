//! The wrench on the nut from above, with the angle turned so far.

use super::layout::{SWEEP, Sheet};
use super::state::SectionState;
use crate::parts::{arrow_tip, centre_cross, thread_end_view, wrench};
use crate::pen::polyline;
use crate::scene::{Anchor, Draw, Mark, Placed, text_width};

/// Degrees as lettered, to a tenth; whole turns go on counting, as the exact field does.
pub(super) fn turned(degrees: f64) -> String {
    let degrees = if degrees.is_finite() {
        degrees.max(0.0)
    } else {
        0.0
    };
    format!("{}°", (degrees * 10.0).round() / 10.0)
}

/// Where a hand holds the wrench, and how far that point goes for a degree of turn.
#[must_use]
pub fn wrench_hand(state: &SectionState) -> ((f64, f64), (f64, f64)) {
    let (x, y) = Sheet::new(state).plan;
    let reach = SWEEP - 14.0;
    let (sin, cos) = state.turn_deg.to_radians().sin_cos();
    let degree = reach * 1_f64.to_radians();
    (
        (x + reach * sin, y - reach * cos),
        (degree * cos, degree * sin),
    )
}

/// The marks.
pub(super) fn plan(state: &SectionState, sheet: &Sheet) -> Vec<Mark> {
    let degrees = if state.turn_deg.is_finite() {
        state.turn_deg.clamp(0.0, 7200.0)
    } else {
        0.0
    };
    let flats = (state.bolt.flats_mm * sheet.scale).clamp(20.0, 32.0);
    let d = flats * (state.bolt.diameter_mm / state.bolt.flats_mm.max(0.1)).clamp(0.2, 0.9);
    let mut inside = vec![Mark::line((0.0, -flats), (0.0, -SWEEP - 8.0), "phantom")];
    inside.group(
        Placed {
            x: 0.0,
            y: 0.0,
            degrees,
        },
        "",
        wrench(flats, SWEEP - 8.0),
    );
    inside.all(thread_end_view(d));
    inside.all(centre_cross((0.0, 0.0), d / 2.0 + 5.0));
    // The way the handle's end has gone; a second turn lies outside the first.
    let radius = |at: f64| SWEEP - 3.0 + 5.0 * (at / 360.0).min(3.0);
    let point = |at: f64| {
        let (sin, cos) = at.to_radians().sin_cos();
        (radius(at) * sin, -radius(at) * cos)
    };
    if degrees >= 12.0 {
        let shown = degrees.min(1080.0);
        let steps = (0..=120_u8).map(|i| point((shown - 6.0) * f64::from(i) / 120.0));
        inside.path(polyline(steps), "turned");
        let (sin, cos) = shown.to_radians().sin_cos();
        inside.push(arrow_tip(point(shown), (cos, sin), 10.0, "tip"));
    }
    let (x, y) = sheet.plan;
    let words = format!("nut turned {}", turned(state.turn_deg));
    let half = text_width(&words, "t s") / 2.0 + 3.0;
    vec![
        Mark::group(Placed::at(x, y), "plan", inside),
        Mark::text(
            (x.min(sheet.width - half), y + SWEEP + 26.0),
            words,
            "t s",
            Anchor::Middle,
        ),
    ]
}

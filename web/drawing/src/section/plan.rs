//! The wrench on the nut from above, with the angle turned so far.

use super::layout::{SWEEP, Sheet};
use super::state::SectionState;
use crate::parts::TurnedWrench;
use crate::scene::{Anchor, Mark, Placed, text_width};
use calc_core::quantity::{Dimension, UnitSystem, write};

/// Degrees as lettered; whole turns go on counting, as the exact field does.
pub(super) fn turned(degrees: f64) -> String {
    let degrees = if degrees.is_finite() {
        degrees.max(0.0)
    } else {
        0.0
    };
    // An angle is written alike in both systems.
    write(degrees.to_radians(), Dimension::Angle, UnitSystem::Us)
}

/// Where a hand holds the wrench, and how far that point goes for a degree of turn.
#[must_use]
pub fn wrench_hand(state: &SectionState) -> ((f64, f64), (f64, f64)) {
    let sheet = Sheet::new(state);
    let ((x, y), along) = on_nut(state, &sheet).hand();
    ((sheet.plan.0 + x, sheet.plan.1 + y), along)
}

fn on_nut(state: &SectionState, sheet: &Sheet) -> TurnedWrench {
    let flats = (state.bolt.flats_mm * sheet.scale).clamp(20.0, 32.0);
    TurnedWrench {
        flats,
        d: flats * (state.bolt.diameter_mm / state.bolt.flats_mm.max(0.1)).clamp(0.2, 0.9),
        reach: SWEEP - 8.0,
        from: 0.0,
        turn: if state.turn_deg.is_finite() {
            state.turn_deg.clamp(0.0, 7200.0)
        } else {
            0.0
        },
    }
}

/// The marks.
pub(super) fn plan(state: &SectionState, sheet: &Sheet) -> Vec<Mark> {
    let (x, y) = sheet.plan;
    let words = format!("nut turned {}", turned(state.turn_deg));
    let half = text_width(&words, "t s") / 2.0 + 3.0;
    vec![
        Mark::group(Placed::at(x, y), "plan", on_nut(state, sheet).marks()),
        Mark::text(
            (x.min(sheet.width - half), y + SWEEP + 26.0),
            words,
            "t s",
            Anchor::Middle,
        ),
    ]
}

//! Where things stand on the sheet.

use super::shape::{drawn, exaggeration};
use super::state::{Layout, SectionState, Support};
use crate::parts::{ForceScale, Strip, StripField};
use crate::scene::text_width;
use crate::units::Lettering;
use calc_core::quantity::UnitSystem;

/// Longest clamp arrow.
const fn arrow(layout: Layout) -> f64 {
    match layout {
        Layout::Wide | Layout::Narrow => 50.0,
        // A lesson compares the clamp with the one that is wanted: that takes longer arrows.
        Layout::Low => 72.0,
    }
}
/// Room for the width dimension under the lower arrow.
const WIDTH_DIMENSION: f64 = 24.0;
/// Radius that the wrench sweeps in the plan.
pub(super) const SWEEP: f64 = 56.0;

/// The sheet, worked out once for a state.
#[derive(Clone, Debug)]
pub(super) struct Sheet {
    pub width: f64,
    pub height: f64,
    /// Drawing units per mm of the part.
    pub scale: f64,
    /// Middle of the bolt.
    pub axis: f64,
    /// Height of the undented upper face.
    pub face: f64,
    /// Middle of the wrench plan.
    pub plan: (f64, f64),
    pub force: ForceScale,
    pub times: u32,
    /// Drawn dent in mm on the part.
    pub dent: f64,
    /// Height of the width dimension.
    pub width_line: f64,
    pub strip: Strip,
    pub strip_top: f64,
}

/// Thread that stands out beyond the nut before any tightening, in mm.
pub(super) fn stand_out(state: &SectionState) -> f64 {
    0.35 * state.bolt.diameter_mm
}

impl Sheet {
    pub(super) fn new(state: &SectionState) -> Self {
        let (width, drawing) = match state.layout {
            Layout::Wide => (520.0, 436.0),
            Layout::Narrow => (340.0, 410.0),
            Layout::Low => (340.0, 352.0),
        };
        let arrow = arrow(state.layout);
        // Room above and below the section for an arrow with its gap.
        let arrow_room = arrow + 8.0;
        let depth = state.tube.depth_mm;
        let largest = state.dent_largest_mm.max(state.dent_each_mm);
        // A sleeve's shortfall is drawn with the same exaggeration as the dent: half of it per face.
        let shown = largest.max(state.short_mm().unwrap_or(0.0) / 2.0);
        let times = exaggeration(shown, depth);
        let dent = drawn(state.dent_each_mm, times, depth);
        let rises = drawn(largest, times, depth);

        let over = stand_out(state)
            + state.bolt.nut_mm
            + state.washer.thickness_mm
            + state.plies_mm(true)
            + rises;
        let under = state.plies_mm(false) + state.washer.thickness_mm + state.bolt.head_mm;
        let tall = over + depth + under;
        let broad = half_width(state) * 2.0;

        // Left of the tube: depth dimension, wall, arrows.
        let left = 54.0 + text_width(&state.units.size(state.tube.wall_mm), "t");
        let high = drawing - 2.0 * arrow_room - WIDTH_DIMENSION;
        // Right of the tube: the dent's dimension; beside the plan also that.
        // The longest texts that come up, so that the sheet holds still while the numbers change.
        let for_dent =
            34.0 + text_width("dent 0.0000 mm", "t").max(text_width("0.00000 mm stays", "t s"));
        let for_plan: f64 = match state.layout {
            Layout::Wide => 170.0,
            Layout::Narrow | Layout::Low => 138.0,
        };
        let right = for_plan.max(for_dent);
        let beside = ((width - left - right) / broad).min(high / tall);
        // The plan above the section, when the tube is broad.
        let above_room = 2.0 * SWEEP + 34.0;
        let above =
            ((width - left - for_dent) / broad).min((high - above_room + arrow_room) / tall);
        let (scale, plan_above) = if above > beside {
            (above, true)
        } else {
            (beside, false)
        };

        let field = (width - left - if plan_above { for_dent } else { right }).max(1.0);
        let axis = left
            + field.min(broad * scale + 0.5 * (field - broad * scale)) / 2.0
            + (field - field.min(broad * scale + 0.5 * (field - broad * scale))) / 4.0;
        let free = (high
            - tall * scale
            - if plan_above {
                above_room - arrow_room
            } else {
                0.0
            })
        .max(0.0)
            / 2.0;
        let top = free + if plan_above { above_room } else { arrow_room } + 4.0;
        let plan = if plan_above {
            (width - SWEEP - 30.0, SWEEP + 12.0)
        } else {
            let from = axis + broad * scale / 2.0;
            ((from + width) / 2.0, SWEEP + 14.0)
        };
        let plan = (plan.0.clamp(SWEEP + 8.0, width - SWEEP - 8.0), plan.1);

        let force =
            ForceScale::fitting(state.clamp_largest_n.max(state.clamp_n), arrow, state.units);
        let strip = strip(state, times, force);
        let strip_top = drawing;
        Self {
            width,
            height: drawing
                + if state.strip {
                    strip.height(width)
                } else {
                    0.0
                },
            scale,
            axis,
            face: top + over * scale,
            plan,
            force,
            times,
            dent,
            width_line: (top + tall * scale + arrow_room + 14.0).min(drawing - 10.0),
            strip,
            strip_top,
        }
    }
}

/// Half of the broadest part, in mm.
fn half_width(state: &SectionState) -> f64 {
    let mut half = state.tube.width_mm / 2.0;
    if let Some(ply) = state.fitting {
        half = half.max(ply.width_mm / 2.0);
    }
    if let Support::Spreader(ply) = state.support {
        half = half.max(ply.width_mm / 2.0);
    }
    half.max(state.washer.outer_mm / 2.0).max(1.0)
}

/// What the title strip says.
fn strip(state: &SectionState, times: u32, force: ForceScale) -> Strip {
    let sizes = match state.units {
        UnitSystem::Metric => "mm",
        UnitSystem::Us => "inches",
    };
    let dent = match (times, state.layout) {
        // A lesson has no room for more words beside the force scale.
        (_, Layout::Low) => format!("×\u{a0}{times}"),
        (1, _) => String::from("true size"),
        _ => format!("drawn ×\u{a0}{times}"),
    };
    let mut fields = vec![StripField::new("drawing", state.name.clone())];
    if state.layout == Layout::Low {
        // The lesson's caption names the drawing.
        fields.clear();
    }
    fields.extend([
        StripField::new("sizes", sizes),
        StripField::new("dent", dent),
        StripField::scale(force),
        StripField::new("joint", if state.example { "made up" } else { "yours" }),
    ]);
    Strip { fields }
}

/// The fields of the title strip, for a sheet that makes it itself.
#[must_use]
pub fn strip_fields(state: &SectionState) -> Vec<StripField> {
    Sheet::new(state).strip.fields
}

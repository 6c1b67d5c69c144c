//! The coupler's end from the side: bolts, ball, and the forces at both to one scale.

use crate::parts::{
    Dimension, ForceScale, Strip, StripField, break_line, centre_cross, force_arrow, hex_plan,
    section_arrows,
};
use crate::pen::Pen;
use crate::scene::{Anchor, Mark, Placed, Scene, text_width};
use crate::units::UnitSystem;

/// A bolt of the group with what it carries; forward and upward positive.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GroupBolt {
    /// Place along the tube from the middle of the group.
    pub along_mm: f64,
    /// Place upwards from the middle of the group.
    pub up_mm: f64,
    /// Force on the bolt along the tube.
    pub force_along_n: f64,
    /// Force on the bolt upwards.
    pub force_up_n: f64,
}

/// What the side view shows. Every number is computed elsewhere.
#[derive(Clone, Debug, PartialEq)]
pub struct GroupState {
    /// Prefix of the ids, unique on the page.
    pub id: String,
    /// Name in the title strip.
    pub name: String,
    /// Height of the tube in this view.
    pub tube_height_mm: f64,
    /// Across flats of the bolt heads.
    pub flats_mm: f64,
    /// Outside diameter of the washers.
    pub washer_mm: f64,
    /// The bolts.
    pub bolts: Vec<GroupBolt>,
    /// Ball centre ahead of the middle of the group.
    pub ball_ahead_mm: f64,
    /// Ball centre below the middle of the group; negative: above.
    pub ball_below_mm: f64,
    /// Force at the ball along the tube.
    pub ball_along_n: f64,
    /// Force at the ball upwards.
    pub ball_up_n: f64,
    /// Units of the lettering.
    pub units: UnitSystem,
    /// Whether the joint is an invented example.
    pub example: bool,
}

const WIDTH: f64 = 340.0;
/// Height that the drawing takes at most.
const MOST: f64 = 260.0;
/// Longest force arrow.
const ARROW: f64 = 58.0;
/// Room left of the group.
const LEFT: f64 = 66.0;
/// Room right of the ball for its arrows and their numbers.
const RIGHT: f64 = 84.0;

/// The side view.
#[must_use]
pub fn group(state: &GroupState) -> Scene {
    let reach = |pick: fn(&GroupBolt) -> f64, least: f64| {
        state
            .bolts
            .iter()
            .map(pick)
            .filter(|v| v.is_finite())
            .fold(least, f64::max)
    };
    let behind = reach(|b| -b.along_mm, 0.0) + state.washer_mm;
    let ahead = state
        .ball_ahead_mm
        .max(reach(|b| b.along_mm, 0.0) + state.washer_mm);
    let half = state.tube_height_mm / 2.0;
    let (below, above) = (
        state.ball_below_mm.max(0.0),
        (-state.ball_below_mm).max(0.0),
    );
    let tall = half.max(above + 25.0) + half.max(below + 25.0);
    let scale =
        ((WIDTH - LEFT - RIGHT) / (behind + ahead).max(1.0)).min((MOST - 118.0) / tall.max(1.0));
    let origin = (LEFT + behind * scale, 56.0 + half.max(above + 25.0) * scale);
    // Under the lowest part: arrow, then the dimension.
    let drawing = origin.1 + half.max(below + 25.0) * scale + 62.0;
    let at = |along: f64, up: f64| (origin.0 + along * scale, origin.1 - up * scale);

    let largest = state
        .bolts
        .iter()
        .map(|b| b.force_along_n.hypot(b.force_up_n))
        .chain([state.ball_along_n.abs(), state.ball_up_n.abs()])
        .filter(|f| f.is_finite())
        .fold(0.0, f64::max);
    let force = ForceScale::fitting(largest, ARROW, state.units);

    let mut marks = tube_and_coupler(state, scale, &at);
    for bolt in &state.bolts {
        let (x, y) = at(bolt.along_mm, bolt.up_mm);
        let mut head = vec![Mark::circle(
            (0.0, 0.0),
            state.washer_mm / 2.0 * scale,
            "edge part",
        )];
        head.extend(hex_plan(state.flats_mm * scale));
        head.extend(centre_cross(
            (0.0, 0.0),
            state.washer_mm / 2.0 * scale + 5.0,
        ));
        marks.push(Mark::group(Placed::at(x, y), "", head));
    }
    if let Some(first) = state.bolts.first() {
        let (x, _) = at(first.along_mm, 0.0);
        let (top, bottom) = (at(0.0, half).1 - 14.0, at(0.0, -half).1 + 14.0);
        marks.extend(section_arrows(x, top, bottom, "A", false));
    }
    let mut hardest = state
        .bolts
        .iter()
        .map(|b| b.force_along_n.hypot(b.force_up_n))
        .filter(|f| f.is_finite())
        .fold(0.0, f64::max);
    // Arrows last: they are what the figure is about.
    for bolt in &state.bolts {
        let from = at(bolt.along_mm, bolt.up_mm);
        let newtons = bolt.force_along_n.hypot(bolt.force_up_n).max(1e-9);
        let length = force.length(newtons);
        let tip = (
            from.0 + bolt.force_along_n / newtons * length,
            from.1 - bolt.force_up_n / newtons * length,
        );
        marks.extend(force_arrow(from, tip, "clamp"));
        // One number is enough: that of the hardest loaded bolt.
        if newtons >= hardest && hardest > 0.0 {
            hardest = f64::INFINITY;
            let text = state.units.force(newtons);
            let right = tip.0 >= from.0;
            let (x, anchor) = if right {
                (tip.0 + 7.0, Anchor::Start)
            } else {
                (tip.0 - 7.0, Anchor::End)
            };
            marks.push(Mark::text(
                (x, tip.1 + if tip.1 > from.1 { 8.0 } else { 2.0 }),
                text,
                "t clamp halo",
                anchor,
            ));
        }
    }
    marks.extend(ball_forces(
        state,
        force,
        at(state.ball_ahead_mm, -state.ball_below_mm),
    ));
    let ball = at(state.ball_ahead_mm, -state.ball_below_mm);
    marks.extend(
        Dimension {
            from: (origin.0, at(0.0, -half).1.max(ball.1) + 6.0),
            to: (ball.0, ball.1 + 14.0),
            line: drawing - 10.0,
            text: state.units.length(state.ball_ahead_mm),
        }
        .level(),
    );
    let strip = Strip {
        fields: vec![
            StripField::new("drawing", state.name.clone()),
            StripField::scale(force.text()),
            StripField::new("joint", if state.example { "invented" } else { "yours" }),
        ],
    };
    marks.extend(strip.marks(WIDTH, drawing));
    Scene {
        id: state.id.clone(),
        width: WIDTH,
        height: drawing + strip.height(WIDTH),
        title: String::from("Forces at the ball and on each bolt, from the side"),
        description: describe(state),
        marks,
    }
}

fn tube_and_coupler(
    state: &GroupState,
    scale: f64,
    at: &impl Fn(f64, f64) -> (f64, f64),
) -> Vec<Mark> {
    let half = state.tube_height_mm / 2.0;
    let front = state.bolts.iter().map(|b| b.along_mm).fold(0.0, f64::max) + state.washer_mm;
    let (end, top) = at(front, half);
    let (_, bottom) = at(front, -half);
    let left = 26.0;
    let tube = Pen::at(left, top)
        .to(end, top)
        .to(end, bottom)
        .to(left, bottom)
        .d();
    // A coupler of no make: cheek over the bolts, neck, socket over the ball.
    let (ball_x, ball_y) = at(state.ball_ahead_mm, -state.ball_below_mm);
    let r = (24.0 * scale).clamp(8.0, 22.0);
    let (rear, _) = at(
        state.bolts.iter().map(|b| b.along_mm).fold(0.0, f64::min) - 0.9 * state.washer_mm,
        0.0,
    );
    let (cheek_top, cheek_bottom) = (at(0.0, half * 0.86).1, at(0.0, -half * 0.86).1);
    let coupler = Pen::at(rear, cheek_top)
        .to(end, cheek_top)
        .curve(
            (end + 0.4 * (ball_x - end), cheek_top),
            (ball_x - 1.6 * r, ball_y - 1.5 * r),
            (ball_x, ball_y - 1.5 * r),
        )
        .arc(1.5 * r, true, ball_x + 1.5 * r, ball_y)
        .to(ball_x + 1.5 * r, ball_y + 0.5 * r)
        .to(ball_x - 1.5 * r, ball_y + 0.5 * r)
        .curve(
            (ball_x - 1.7 * r, ball_y),
            (end + 0.3 * (ball_x - end), cheek_bottom),
            (end, cheek_bottom),
        )
        .to(rear, cheek_bottom)
        .close()
        .d();
    let mut marks = vec![
        Mark::path(tube, "edge none"),
        break_line((left, top), bottom - top),
        Mark::line(
            (left - 8.0, f64::midpoint(top, bottom)),
            (end + 6.0, f64::midpoint(top, bottom)),
            "centre",
        ),
        Mark::path(coupler, "edge glass"),
        Mark::line((end, cheek_top), (end, cheek_bottom), "hidden"),
        Mark::circle((ball_x, ball_y), r, "hidden none"),
    ];
    marks.extend(centre_cross((ball_x, ball_y), r + 5.0));
    marks
}

fn ball_forces(state: &GroupState, force: ForceScale, ball: (f64, f64)) -> Vec<Mark> {
    let mut marks = Vec::new();
    let along = force.length(state.ball_along_n) * state.ball_along_n.signum();
    marks.extend(force_arrow(ball, (ball.0 + along, ball.1), "load"));
    let up = force.length(state.ball_up_n) * state.ball_up_n.signum();
    marks.extend(force_arrow(ball, (ball.0, ball.1 - up), "load"));
    let mut letter = |newtons: f64, at: (f64, f64)| {
        if force.length(newtons) >= 0.5 {
            let text = state.units.force(newtons.abs());
            let x = at.0.min(WIDTH - text_width(&text, "t") - 2.0);
            marks.push(Mark::text((x, at.1), text, "t load halo", Anchor::Start));
        }
    };
    letter(
        state.ball_along_n,
        (ball.0 + along.max(24.0) + 4.0, ball.1 - 8.0),
    );
    let tip = ball.1 - up;
    letter(
        state.ball_up_n,
        (ball.0 + 9.0, if up > 0.0 { tip.max(14.0) } else { tip }),
    );
    marks
}

fn describe(state: &GroupState) -> String {
    let units = state.units;
    let most = state
        .bolts
        .iter()
        .map(|b| b.force_along_n.hypot(b.force_up_n))
        .fold(0.0, f64::max);
    format!(
        "At the ball {} along the tube and {} upright; {} bolts, the hardest loaded carries {}.",
        units.force(state.ball_along_n.abs()),
        units.force(state.ball_up_n.abs()),
        state.bolts.len(),
        units.force(most),
    )
}

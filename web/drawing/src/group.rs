//! The coupler's end, seen along the bolts: bolts, ball, and the forces at both to one scale.

use crate::parts::{
    DimensionLine, ForceScale, Strip, StripField, break_line, centre_cross, force_arrow, hex_plan,
    section_arrows,
};
use crate::pen::Pen;
use crate::scene::{Anchor, Draw, Mark, Placed, Scene, text_width};
use crate::units::Lettering;
use calc_core::quantity::{InUnits, Length, UnitSystem};
use calc_core::scenario::Mount;
use calc_core::{Report, Scenario};

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

/// What the view along the bolts shows. Every number is computed elsewhere.
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

impl GroupState {
    /// The governing load case of a report. Seen from the side where the bolts run through the sides, from
    /// above where they run down; "up" is then across the tube.
    #[must_use]
    pub fn from_core(id: &str, scenario: &Scenario, report: &Report, units: UnitSystem) -> Self {
        let from_side = scenario.bolting.mount == Mount::ThroughSides;
        let mm = |length: Length| length.si() * 1e3;
        let loads = &report.loads;
        Self {
            id: id.into(),
            name: String::from(if from_side {
                "bolts from the side"
            } else {
                "bolts from above"
            }),
            tube_height_mm: mm(scenario.tube.width),
            flats_mm: mm(scenario.bolting.thread.width_across_flats()),
            washer_mm: mm(scenario.bolting.washer.outer),
            bolts: loads
                .bolts
                .iter()
                .map(|b| GroupBolt {
                    along_mm: b.along_mm,
                    up_mm: b.across_mm,
                    force_along_n: b.force_along_n,
                    force_up_n: b.force_across_n,
                })
                .collect(),
            ball_ahead_mm: mm(scenario.loads.ball_ahead),
            ball_below_mm: if from_side {
                mm(scenario.loads.ball_below)
            } else {
                0.0
            },
            ball_along_n: loads.longitudinal_n,
            ball_up_n: if from_side {
                loads.vertical_n
            } else {
                loads.transverse_n
            },
            units,
            example: true,
        }
    }
}

const WIDTH: f64 = 340.0;
/// Height that the drawing takes at most.
const MOST: f64 = 260.0;
/// Longest force arrow.
const ARROW: f64 = 64.0;
/// Room left of the group.
const LEFT: f64 = 66.0;
/// Room right of the ball for its arrows and their numbers.
const RIGHT: f64 = 84.0;

/// The view along the bolts.
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
        head.all(hex_plan(state.flats_mm * scale));
        head.all(centre_cross(
            (0.0, 0.0),
            state.washer_mm / 2.0 * scale + 5.0,
        ));
        marks.group(Placed::at(x, y), "", head);
    }
    if let Some(first) = state.bolts.first() {
        let (x, _) = at(first.along_mm, 0.0);
        let (top, bottom) = (at(0.0, half).1 - 14.0, at(0.0, -half).1 + 14.0);
        marks.all(section_arrows(x, top, bottom, "A", false));
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
        marks.all(force_arrow(from, tip, "clamp"));
        // One number is enough: that of the hardest loaded bolt.
        if newtons >= hardest && hardest > 0.0 {
            hardest = f64::INFINITY;
            let text = state.units.force(newtons);
            let wide = text_width(&text, "t");
            let x = if tip.0 >= from.0 {
                tip.0 + 7.0
            } else {
                tip.0 - 7.0 - wide
            };
            let y = tip.1 + if tip.1 > from.1 { 8.0 } else { 2.0 };
            let at = (
                x.clamp(2.0, WIDTH - wide - 2.0),
                y.clamp(14.0, drawing - 30.0),
            );
            marks.text(at, text, "t clamp halo", Anchor::Start);
        }
    }
    marks.all(ball_forces(
        state,
        force,
        at(state.ball_ahead_mm, -state.ball_below_mm),
    ));
    let ball = at(state.ball_ahead_mm, -state.ball_below_mm);
    marks.all(
        DimensionLine {
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
            StripField::scale(force),
            StripField::new("joint", if state.example { "made up" } else { "yours" }),
        ],
    };
    marks.all(strip.marks(WIDTH, drawing));
    Scene {
        id: state.id.clone(),
        width: WIDTH,
        height: drawing + strip.height(WIDTH),
        title: String::from("Forces at the ball and on each bolt"),
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
    marks.all(centre_cross((ball_x, ball_y), r + 5.0));
    marks
}

fn ball_forces(state: &GroupState, force: ForceScale, ball: (f64, f64)) -> Vec<Mark> {
    let mut marks = Vec::new();
    let along = force.length(state.ball_along_n) * state.ball_along_n.signum();
    marks.all(force_arrow(ball, (ball.0 + along, ball.1), "load"));
    let up = force.length(state.ball_up_n) * state.ball_up_n.signum();
    marks.all(force_arrow(ball, (ball.0, ball.1 - up), "load"));
    let mut letter = |newtons: f64, at: (f64, f64)| {
        if force.length(newtons) >= 0.5 {
            let text = state.units.force(newtons.abs());
            let x = at.0.clamp(2.0, WIDTH - text_width(&text, "t") - 2.0);
            marks.text((x, at.1.max(14.0)), text, "t load halo", Anchor::Start);
        }
    };
    // The two numbers stand on opposite sides of the level arrow.
    let below = up >= 0.0;
    let wide = text_width(&state.units.force(state.ball_along_n.abs()), "t");
    let x = if along >= 0.0 {
        along.max(20.0) + 2.0
    } else {
        along.min(-20.0) - wide - 2.0
    };
    letter(
        state.ball_along_n,
        (ball.0 + x, ball.1 + if below { 17.0 } else { -8.0 }),
    );
    let y = if below {
        -up.max(26.0) + 4.0
    } else {
        (-up).max(26.0) + 4.0
    };
    letter(state.ball_up_n, (ball.0 + 9.0, ball.1 + y));
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
        "At the ball {} along the tube and {} across it; {} bolts, the most heavily loaded carries {}.",
        units.force(state.ball_along_n.abs()),
        units.force(state.ball_up_n.abs()),
        state.bolts.len(),
        units.force(most),
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use calc_core::quantity::UnitSystem;
    use calc_core::{Input, evaluate};
    use proptest::prelude::*;

    fn of(input: &Input) -> GroupState {
        let scenario = Scenario::new(input).unwrap();
        GroupState::from_core("g", &scenario, &evaluate(&scenario), UnitSystem::Metric)
    }

    fn arrows(scene: &Scene, wanted: &str) -> Vec<((f64, f64), (f64, f64))> {
        let find = |m: &Mark| match m {
            Mark::Line { from, to, class } if *class == wanted => Some((*from, *to)),
            _ => None,
        };
        scene.marks.iter().filter_map(find).collect()
    }

    #[test]
    fn arrows_at_bolts_and_ball_point_as_the_report_says() {
        let state = of(&Input::default());
        let scene = group(&state);
        let drawn = arrows(&scene, "force clamp");
        assert_eq!(drawn.len(), state.bolts.len());
        for (bolt, (from, to)) in state.bolts.iter().zip(drawn) {
            // Parallel, and the same way round; the sheet's y runs down.
            let (dx, dy) = (to.0 - from.0, from.1 - to.1);
            let (fx, fy) = (bolt.force_along_n, bolt.force_up_n);
            assert!((dx * fy - dy * fx).abs() <= 1e-6 * fx.hypot(fy) * dx.hypot(dy));
            assert!(dx * fx + dy * fy > 0.0);
        }
        assert!(!arrows(&scene, "force load").is_empty());
    }

    proptest! {
        #[test]
        fn lettering_and_arrows_stay_on_the_sheet(
            ahead in 0.0..1500.0_f64,
            below in -500.0..500.0_f64,
            along in 1..=6_u8,
            rows in 1..=3_u8,
            spacing in 10.0..600.0_f64,
            braking in 0.0..2.0_f64,
            top: bool,
            us: bool,
        ) {
            let input = Input {
                ball_ahead_mm: ahead,
                ball_below_mm: below,
                bolts_along: f64::from(along),
                bolt_rows: f64::from(rows),
                spacing_along_mm: spacing,
                braking_g: braking,
                mount: String::from(if top { "from-top" } else { "through-sides" }),
                ..Input::default()
            };
            // Some combinations are refused; they are the scenario's business.
            if Scenario::new(&input).is_ok() {
                let mut state = of(&input);
                state.units = if us { UnitSystem::Us } else { UnitSystem::Metric };
                let scene = group(&state);
                prop_assert!(!scene.to_svg().contains("NaN"));
                let inside = |(x, y): (f64, f64)| (-1.0..=scene.width + 1.0).contains(&x) && (-1.0..=scene.height + 1.0).contains(&y);
                for mark in &scene.marks {
                    match mark {
                        Mark::Text { at, text, class, anchor, .. } => {
                            let wide = text_width(text, class);
                            let left = match anchor {
                                Anchor::Start => at.0,
                                Anchor::Middle => at.0 - wide / 2.0,
                                Anchor::End => at.0 - wide,
                            };
                            prop_assert!(inside((left, at.1 - 9.0)) && inside((left + wide, at.1)), "{mark:?} on {}", scene.height);
                        }
                        Mark::Line { from, to, .. } => prop_assert!(inside(*from) && inside(*to), "{mark:?} on {}", scene.height),
                        _ => {}
                    }
                }
            }
        }
    }
}

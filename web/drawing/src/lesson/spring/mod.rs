//! The bolt is a spring: turning the nut stretches the bolt and squeezes what it clamps.

use super::both::Both;
use super::chart::{Axis, Chart, Curve, CurveKind, KeyPoint, Level};
use super::control::{Choice, Control, Range};
use super::model::{Handle, Look, Model, Outcome, Picture, named, with_strip};
use super::sprung::{Sprung, rigid, squeeze, travel};
use super::state::State;
use crate::parts::{
    ForceScale, StripField, TurnedWrench, arrow_tip, bolt_head, force_arrow, nut, threaded_shank,
    washer_cut,
};
use crate::scene::{Anchor, CutMetal, Draw, Hatch, Lean, Mark, Placed, Scene};
use crate::units::Lettering;
use calc_core::Input;
use calc_core::evaluate::TurnPoint;
use calc_core::mechanics::losses::embedding;
use calc_core::mechanics::thread::load_at;
use calc_core::mechanics::tightening::torque_for;
use calc_core::quantity::{Dimension, InUnits, Length, mm, newton};
use calc_core::scenario::Field;

/// The lesson.
pub(super) struct Spring;

const TURN: usize = 0;
const STACK: usize = 1;
const BOLT: usize = 2;

const fn bolt(key: &'static str, us: &'static str, metric: &'static str) -> Choice {
    Choice {
        key,
        name: Both { us, metric },
    }
}

const BOLTS: &[Choice] = &[
    bolt("usual", "1/2 in, grade 5", "M12, class 8.8"),
    bolt(
        "hard",
        "1/2 in, grade 8: stronger steel",
        "M12, class 10.9: stronger steel",
    ),
    bolt(
        "slim",
        "3/8 in, grade 5: slimmer",
        "M10, class 8.8: slimmer",
    ),
    bolt(
        "thick",
        "5/8 in, grade 5: thicker",
        "M16, class 8.8: thicker",
    ),
];

/// What the figure is made of.
struct Stock {
    /// Thread and grade of each choice.
    bolts: [(&'static str, &'static str); 4],
    /// Width of the bar, its metal, and thickness of the plate on top of it, mm.
    bar: f64,
    metal: &'static str,
    plate: f64,
    /// What the parts settle by: paint and roughness, a fraction of a hair.
    settles: f64,
    /// Stretch up to which the plot goes, mm.
    most_stretch: f64,
}

/// Invented.
static STOCK: Both<Stock> = Both {
    us: Stock {
        bolts: [
            ("unc-1.2", "sae-5"),
            ("unc-1.2", "sae-8"),
            ("unc-3.8", "sae-5"),
            ("unc-5.8", "sae-5"),
        ],
        // 2-1/2 in and 3/8 in; a thousandth of an inch.
        bar: 63.5,
        metal: "a36",
        plate: 9.525,
        settles: 0.0254,
        // 0.016 in.
        most_stretch: 0.4064,
    },
    metric: Stock {
        bolts: [
            ("m12", "iso-8.8"),
            ("m12", "iso-10.9"),
            ("m10", "iso-8.8"),
            ("m16", "iso-8.8"),
        ],
        bar: 64.0,
        metal: "s235",
        plate: 10.0,
        settles: 0.025,
        most_stretch: 0.4,
    },
};

/// Thinnest and thickest stack. Up to 60° no bolt leaves its curve in any of them.
const STACKS: Both<Range> = Both {
    us: Range::new([1.75, 4.75], 0.25, 1.75),
    metric: Range::new([40.0, 120.0], 5.0, 40.0),
};

const CONTROLS: &[Control] = &[
    Control::number(
        "turn",
        "turn of the nut past snug",
        Dimension::Angle,
        Both::alike(Range::new([0.0, 60.0], 1.0, 0.0)),
    ),
    Control::number("stack", "thickness of the stack", Dimension::Length, STACKS),
    Control::choices("bolt", "Which bolt?", BOLTS, 0),
];

/// The state with the stack that this one is compared with: the thinnest for a thick one and the other way
/// round.
fn beside(state: &State) -> State {
    let Range { min, max, .. } = *STACKS.of(state.units());
    let thick = state.number(STACK) > f64::midpoint(min, max);
    state.with(CONTROLS, STACK, if thick { min } else { max })
}

/// What is bolted: a plate on a bar, both steel, one bolt upright through them.
fn input(state: &State) -> Input {
    let s = STOCK.of(state.units());
    let (bolt, grade) = (s.bolts.get(state.choice(BOLT))).map_or(("", ""), |b| *b);
    Input::with(
        &[
            (Field::TubeWidth, s.bar),
            (Field::TubeDepth, state.mm(STACK) - s.plate),
            (Field::TubeWall, 6.0),
            (Field::FittingThickness, s.plate),
        ],
        &[
            (Field::Mount, "from-top"),
            (Field::Support, "solid"),
            (Field::TubeMaterial, s.metal),
            (Field::Bolt, bolt),
            (Field::Grade, grade),
        ],
    )
}

struct Numbers {
    this: Sprung,
    now: TurnPoint,
    /// Thickness of the stack, of its plate, and of the other stack, mm.
    stack: f64,
    plate: f64,
    other_stack: f64,
    squeeze: f64,
    proof: f64,
    /// Lost when the parts settle.
    settles: Length,
    lost: f64,
    other: Sprung,
    other_now: TurnPoint,
    /// The same from the other bolt, if it pulls hard enough.
    other_lost: f64,
}

fn numbers(state: &State) -> Option<Numbers> {
    let turn = state.number(TURN);
    let this = Sprung::new(&input(state))?;
    let other_state = beside(state);
    let other = Sprung::new(&input(&other_state))?;
    let now = this.curve.at_turn(turn)?;
    let bolting = &this.scenario.bolting;
    let stock = STOCK.of(state.units());
    let settles = mm(stock.settles);
    let lost = |s: &Sprung| embedding(settles, s.bolt, s.members).si();
    let other_now = other.curve.at_turn(turn)?;
    Some(Numbers {
        now,
        stack: state.mm(STACK),
        plate: stock.plate,
        other_stack: other_state.mm(STACK),
        squeeze: squeeze(&this.scenario, &now),
        proof: load_at(bolting.proof_strength(), bolting.thread.stress_area()).si(),
        settles,
        lost: lost(&this).min(now.clamp_n),
        other_lost: lost(&other),
        other_now,
        other,
        this,
    })
}

impl Model for Spring {
    fn id(&self) -> &'static str {
        "spring"
    }

    fn controls(&self) -> &'static [Control] {
        CONTROLS
    }

    fn sizes(&self) -> &'static [&'static str] {
        &["other"]
    }

    fn outcome(&self, state: &State) -> Option<Outcome> {
        use Dimension::{Force, Length, Stiffness};
        let n = numbers(state)?;
        let turn = state.number(TURN);
        let said = if turn == 0.0 {
            "start"
        } else if turn >= n.this.yields.turn_deg {
            "yields"
        } else if n.now.clamp_n > n.proof {
            "past-proof"
        } else if n.now.clamp_n < 0.4 * n.proof {
            "little"
        } else {
            "springs"
        };
        let thread = n.this.thread();
        let way = travel(&n.this.scenario, turn);
        let bolt = n.this.bolt.si();
        let k = n.this.scenario.tightening.nut_factor;
        Some(Outcome {
            said,
            seen: ["seen", "", ""],
            end: None,
            values: named![
                ("clamp", n.now.clamp_n, Force),
                ("stretch", n.now.stretch_mm * 1e-3, Length),
                ("squeeze", n.squeeze * 1e-3, Length),
                ("travel", way * 1e-3, Length),
                ("pitch", thread.pitch().si(), Length),
                ("bolt-stiffness", bolt, Stiffness),
                ("stack-stiffness", n.this.members.si(), Stiffness),
                ("proof", n.proof, Force),
                ("yield", n.this.yields.clamp_n, Force),
                ("settles", n.settles.si(), Length),
                ("lost", n.lost, Force),
                ("left", n.now.clamp_n - n.lost, Force),
                ("other", n.other_stack * 1e-3, Length),
                ("other-clamp", n.other_now.clamp_n, Force),
                ("other-lost", n.other_lost, Force),
                // The wrong ideas that an answer may come from: that the stack gives nothing.
                ("rigid-stack", rigid(mm(way), n.this.bolt), Force),
                (
                    "left-rigid",
                    n.now.clamp_n - rigid(n.settles, n.this.bolt),
                    Force
                ),
            ],
            joint: Input {
                // The torque that gives this clamp; before any, the usual share of the proof load.
                torque_nm: (n.now.clamp_n > 0.0).then(|| {
                    torque_for(k, thread.major(), newton(n.now.clamp_n))
                        .si()
                        .max(0.5)
                }),
                ..input(state)
            },
        })
    }

    fn picture(&self, state: &State, look: &Look<'_>) -> Option<Picture> {
        let n = numbers(state)?;
        let turn = state.number(TURN);
        let ((x, y), along) = on_nut(&n, turn).hand();
        Some(Picture {
            drawing: drawing(&n, turn, look),
            plot: Some(plot(&n, turn, look)),
            handles: vec![Handle {
                control: TURN,
                at: (PLAN.0 + x, PLAN.1 + y),
                along,
            }],
        })
    }
}

/// Middle of the bolt on the sheet, and middle of the stack at rest.
const AXIS: f64 = 135.0;
const MIDDLE: f64 = 184.0;
/// Drawing units in a millimetre.
const PER_MM: f64 = 1.5;
/// How much stretch and squeeze are exaggerated.
const TIMES: f64 = 100.0;
/// Half of the stack's width, units.
const HALF: f64 = 48.0;
/// The wrench from above: its middle, how far it reaches, where it starts in degrees from upright.
const PLAN: (f64, f64) = (266.0, 258.0);
const REACH: f64 = 66.0;
const FROM: f64 = -30.0;
const HEIGHT: f64 = 392.0;

fn on_nut(n: &Numbers, turn: f64) -> TurnedWrench {
    let thread = n.this.thread();
    let millimetres = |l: Length| l.si() * 1e3;
    let flats = (millimetres(thread.width_across_flats()) * PER_MM).min(30.0);
    TurnedWrench {
        flats,
        d: flats * thread.major().si() / thread.width_across_flats().si(),
        reach: REACH,
        from: FROM,
        turn,
    }
}

fn drawing(n: &Numbers, turn: f64, look: &Look<'_>) -> Scene {
    let most = 100.5e3;
    let scale = ForceScale::fitting(most, 86.0, look.units);
    let bolting = &n.this.scenario.bolting;
    let millimetres = |l: Length| l.si() * 1e3;
    let thick = millimetres(bolting.washer.thickness) * PER_MM;
    // Heights at rest: head on the lower washer, stack, washer, nut, two threads beyond it.
    let bottom = MIDDLE + n.stack / 2.0 * PER_MM;
    let top = MIDDLE - n.stack / 2.0 * PER_MM;
    let head = bottom + thick;
    let nut_height = millimetres(bolting.thread.nut_height()) * PER_MM;
    let rest = top - thick - nut_height - 2.0 * millimetres(bolting.thread.pitch()) * PER_MM;
    // And now.
    let (stretch, squeeze) = (
        n.now.stretch_mm * TIMES * PER_MM,
        n.squeeze * TIMES * PER_MM,
    );
    let (now, end) = (top + squeeze, rest - stretch);

    let mut marks = Vec::new();
    let hole = millimetres(bolting.hole) * PER_MM / 2.0;
    let seam = now + n.plate / n.stack * (bottom - now);
    let mut stack = Vec::new();
    for (upper, lower, lean) in [(now, seam, Lean::Left), (seam, bottom, Lean::Right)] {
        for side in [-1.0, 1.0] {
            stack.rect(
                (AXIS + side * hole, upper),
                (AXIS + side * HALF, lower),
                "edge",
                Some(Hatch::new(CutMetal::Steel, lean)),
            );
        }
    }
    marks.group(Placed::default(), "p-plate", stack);
    marks.group(Placed::default(), "p-bolt", bolt_marks(n, (head, end), now));
    marks.line((AXIS, end - 7.0), (AXIS, head + 24.0), "centre");
    marks.all(thickness((top, bottom), &look.units.stock(n.stack)));
    if stretch >= 1.0 {
        marks.all(grown(
            (AXIS + 5.0, 178.0),
            (end, rest),
            &format!("stretch {}", look.units.length(n.now.stretch_mm)),
        ));
        let text = format!("squeeze {}", look.units.length(n.squeeze));
        marks.all(grown((AXIS + HALF + 3.0, 198.0), (top, now), &text));
        marks.line((AXIS - HALF, top), (AXIS + HALF, top), "phantom");
    }
    marks.all(clamp(n, (now, bottom), scale, look));
    marks.all(plan(n, turn, look));
    let strip = vec![
        StripField::new("drawing", "bolt and stack"),
        StripField::new("changes", format!("×\u{a0}{TIMES}")),
        StripField::scale(scale),
    ];
    with_strip(look, HEIGHT, marks, strip)
}

/// Bolt, nut and washers: `head` is the plane under the head, `end` the bolt's end, `seat` the plane
/// under the nut's washer.
fn bolt_marks(n: &Numbers, (head, end): (f64, f64), seat: f64) -> Vec<Mark> {
    let bolting = &n.this.scenario.bolting;
    let units = |l: Length| l.si() * 1e3 * PER_MM;
    let thread = bolting.thread;
    let (d, flats) = (units(thread.major()), units(thread.width_across_flats()));
    let (outer, thick) = (units(bolting.washer.outer), units(bolting.washer.thickness));
    let bore = units(bolting.hole);
    let length =
        bolting.washer.thickness * 2.0 + mm(n.stack) + thread.nut_height() + thread.pitch() * 2.0;
    let threaded = units(thread.thread_length(length)) * (head - end) / units(length);
    let mut marks = washer_cut(AXIS, outer, bore, seat - thick, seat, Lean::Right);
    marks.all(washer_cut(
        AXIS,
        outer,
        bore,
        head - thick,
        head,
        Lean::Left,
    ));
    marks.all(threaded_shank(AXIS, d, head, end, threaded));
    marks.all(bolt_head(
        AXIS,
        head,
        flats,
        units(thread.head_height()),
        false,
    ));
    marks.all(nut(
        AXIS,
        seat - thick,
        flats,
        units(thread.nut_height()),
        true,
    ));
    marks
}

/// The stack's thickness at rest, lettered level, because a short stack has no room along the line.
fn thickness((top, bottom): (f64, f64), text: &str) -> Vec<Mark> {
    let (x, tip) = (AXIS - HALF - 12.0, 9.0);
    let edge = AXIS - HALF - 3.0;
    vec![
        Mark::line((edge, top), (x - 4.0, top), "thin"),
        Mark::line((edge, bottom), (x - 4.0, bottom), "thin"),
        Mark::line((x, top + tip), (x, bottom - tip), "thin"),
        arrow_tip((x, top), (0.0, -1.0), tip, "tip"),
        arrow_tip((x, bottom), (0.0, 1.0), tip, "tip"),
        Mark::text((x - 6.0, MIDDLE + 4.6), text, "t", Anchor::End),
    ]
}

/// How far an edge has moved between two heights, with its amount: a thin line at either height from
/// the part to the arrows, which stand outside, so that they never hide how small it is.
fn grown((from, at): (f64, f64), (upper, lower): (f64, f64), text: &str) -> Vec<Mark> {
    vec![
        Mark::line((from, upper), (at + 4.0, upper), "thin"),
        Mark::line((from, lower), (at + 4.0, lower), "thin"),
        Mark::line((at, upper - 16.0), (at, upper - 7.0), "thin"),
        arrow_tip((at, upper), (0.0, 1.0), 8.0, "tip"),
        Mark::line((at, lower + 16.0), (at, lower + 7.0), "thin"),
        arrow_tip((at, lower), (0.0, -1.0), 8.0, "tip"),
        Mark::text(
            (at + 8.0, f64::midpoint(upper, lower) + 4.0),
            text,
            "t s halo",
            Anchor::Start,
        ),
    ]
}

/// What the bolt's pull does: nut and head press on the stack.
fn clamp(n: &Numbers, (top, bottom): (f64, f64), scale: ForceScale, look: &Look<'_>) -> Vec<Mark> {
    let x = AXIS - 36.0;
    let length = scale.length(n.now.clamp_n);
    let mut marks = force_arrow((x, top - length), (x, top), "clamp");
    marks.all(force_arrow((x, bottom + length), (x, bottom), "clamp"));
    let (first, second) = if n.now.clamp_n > 0.0 {
        (String::from("clamp"), look.units.force(n.now.clamp_n))
    } else {
        (String::from("no clamp"), String::from("yet"))
    };
    // Beside the upper arrow, on two lines, because there is not more room left of the stack.
    let y = (top - (length / 2.0).max(26.0) - 2.0).max(16.0);
    for (line, text) in [(0.0, first), (16.0, second)] {
        marks.text((x - 9.0, y + line), text, "t clamp halo", Anchor::End);
    }
    vec![Mark::group(Placed::default(), "p-clamp", marks)]
}

/// The wrench on the nut from above.
fn plan(n: &Numbers, turn: f64, look: &Look<'_>) -> Vec<Mark> {
    let nut = on_nut(n, turn);
    let mut inside = nut.marks();
    inside.circle(nut.hand().0, 11.0, "grip");
    let words = format!(
        "nut turned {}",
        calc_core::quantity::write(turn.to_radians(), Dimension::Angle, look.units)
    );
    vec![
        Mark::group(Placed::at(PLAN.0, PLAN.1), "plan", inside),
        Mark::text((PLAN.0, PLAN.1 + 44.0), words, "t s", Anchor::Middle),
    ]
}

/// Pull of the bolt against its stretch: a straight line while it springs.
fn plot(n: &Numbers, turn: f64, look: &Look<'_>) -> Chart {
    let line = |s: &Sprung| {
        s.curve
            .points
            .iter()
            // The line is straight to the yield: its ends say all.
            .filter(|p| p.turn_deg <= 0.0 || p.turn_deg >= s.yields.turn_deg)
            .map(|p| (p.stretch_mm * 1e-3, p.clamp_n))
            .collect::<Vec<_>>()
    };
    let mut curves = vec![Curve {
        points: line(&n.this),
        kind: CurveKind::This,
        name: String::new(),
        part: "p-bolt",
    }];
    let mut points = vec![KeyPoint {
        name: String::from("now"),
        x: n.now.stretch_mm * 1e-3,
        y: n.now.clamp_n,
        here: true,
    }];
    // At rest the plot gives nothing away.
    if turn > 0.0 {
        curves.push(Curve {
            points: line(&n.other),
            kind: CurveKind::Beside,
            name: format!("{} stack", look.units.stock(n.other_stack)),
            part: "",
        });
        // Close to where the figure stands it would only hide it.
        if n.now.clamp_n < 0.8 * n.this.yields.clamp_n {
            points.push(KeyPoint {
                name: String::from("it yields"),
                x: n.this.yields.stretch_mm * 1e-3,
                y: n.this.yields.clamp_n,
                here: false,
            });
        }
        points.push(KeyPoint {
            name: String::from("same turn"),
            x: n.other_now.stretch_mm * 1e-3,
            y: n.other_now.clamp_n,
            here: false,
        });
    }
    Chart {
        title: String::from("Tension in the bolt against its stretch"),
        x: Axis {
            name: "stretch of the bolt",
            dimension: Dimension::Length,
            from: 0.0,
            to: STOCK.of(look.units).most_stretch * 1e-3,
        },
        y: Axis {
            name: "tension = clamp load",
            dimension: Dimension::Force,
            from: 0.0,
            to: 1.45 * n.this.yields.clamp_n,
        },
        band: None,
        curves,
        levels: vec![Level {
            y: n.proof,
            name: String::from("proof load"),
        }],
        points,
        units: look.units,
    }
}

#[cfg(test)]
mod tests;

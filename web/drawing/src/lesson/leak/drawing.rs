//! The joint with its layers, and under it the clamp step by step, each step an arrow to scale.

use super::{AGAIN, FRESH, Numbers, PAINTED, STOCK};
use crate::lesson::model::with_strip;
use crate::lesson::{DRAWING_WIDTH, Handle, Look};
use crate::parts::{
    DimensionLine, ForceScale, StripField, bolt_head, force_arrow, nut, threaded_shank,
};
use crate::scene::{Anchor, CutMetal, Draw, Hatch, Lean, Mark, Placed, Scene};
use crate::units::Lettering;
use calc_core::quantity::{Dimension, write};

/// Drawing units in a millimetre.
const PER_MM: f64 = 2.25;
/// Face of the head, middle of the bolt.
const FACE: f64 = 46.0;
const AXIS: f64 = 80.0;
/// Half the height of cheeks and bar as drawn.
const CHEEK_HALF: f64 = 48.0;
const BAR_HALF: f64 = 42.0;
/// The rows under the joint: height of the first, distance, where arrows and where words begin.
const FIRST: f64 = 181.0;
const PITCH: f64 = 31.0;
const FROM: f64 = 14.0;
const WORDS: f64 = 216.0;
const HEIGHT: f64 = 394.0;
fn scale(look: &Look<'_>) -> ForceScale {
    ForceScale::fitting(STOCK.of(look.units).most_clamp, 200.0, look.units)
}

/// The clamped length is dragged at the nut.
pub(super) fn handle(n: &Numbers, look: &Look<'_>) -> Handle {
    Handle {
        control: super::GRIP,
        at: (nut_end(n), AXIS),
        along: (PER_MM * look.one(Dimension::Length) * 1e3, 0.0),
    }
}

fn nut_end(n: &Numbers) -> f64 {
    FACE + (n.grip + 0.9 * n.d) * PER_MM + 10.0
}

pub(super) fn drawing(n: &Numbers, look: &Look<'_>) -> Scene {
    let mut marks = layers(n);
    marks.group(Placed::default(), "p-bolt", bolt(n));
    marks.all(named(n, look));
    marks.group(Placed::default(), "p-clamp", steps(n, look));
    let strip = vec![
        StripField::new("drawing", format!("{} bolt in section", n.stock.called)),
        StripField::scale(scale(look)),
    ];
    with_strip(look, HEIGHT, marks, strip)
}

/// The change of temperature in words.
fn temperature(n: &Numbers, look: &Look<'_>) -> String {
    if n.step == 0.0 {
        return String::from("same as at tightening");
    }
    let by = write(n.step.abs(), Dimension::TemperatureStep, look.units);
    let how = if n.step < 0.0 { "colder" } else { "hotter" };
    format!("{by} {how}")
}

/// Where the layers begin and end, left to right: washer, cheek, bar, cheek, washer.
fn ends(n: &Numbers) -> [f64; 6] {
    let w = n.stock.washer.1 * PER_MM;
    let c = n.stock.cheek * PER_MM;
    let last = FACE + n.grip * PER_MM;
    [FACE, FACE + w, FACE + w + c, last - w - c, last - w, last]
}

/// Half the width of a washer as drawn.
fn washer_half(n: &Numbers) -> f64 {
    n.stock.washer.0 / 2.0 * PER_MM
}

/// Half the width of the holes as drawn.
fn hole_half(n: &Numbers) -> f64 {
    n.d * 1.125 / 2.0 * PER_MM
}

fn layers(n: &Numbers) -> Vec<Mark> {
    let [a, b, c, d, e, f] = ends(n);
    let steel = |lean| Hatch::new(CutMetal::Steel, lean);
    let aluminium = Hatch::new(CutMetal::Aluminium, Lean::Right);
    let washer = washer_half(n);
    let mut marks = Vec::new();
    for (left, right, half, hatch) in [
        (a, b, washer, steel(Lean::Left)),
        (b, c, CHEEK_HALF, steel(Lean::Right)),
        (c, d, BAR_HALF, aluminium),
        (d, e, CHEEK_HALF, steel(Lean::Left)),
        (e, f, washer, steel(Lean::Right)),
    ] {
        for side in [-1.0, 1.0] {
            let (rim, out) = (AXIS + side * hole_half(n), AXIS + side * half);
            marks.rect((left, rim), (right, out), "edge", Some(hatch));
        }
    }
    if n.event >= PAINTED {
        for x in [c, d] {
            for side in [-1.0, 1.0] {
                let ends = ((x, AXIS + side * hole_half(n)), (x, AXIS + side * BAR_HALF));
                marks.line(ends.0, ends.1, "force load");
            }
        }
    }
    marks
}

fn bolt(n: &Numbers) -> Vec<Mark> {
    // Nut and head in proportion to the bolt, as they are for M12 and 1/2 in alike.
    let d = n.d * PER_MM;
    let flats = 1.5 * d;
    let grip = n.grip * PER_MM;
    let end = -(grip + 0.9 * d + 7.0);
    // Upright, then laid on its side: what is up there is right here.
    let mut marks = threaded_shank(0.0, d, 0.0, end, 30.0 * PER_MM);
    marks.all(nut(0.0, -grip, flats, 0.9 * d, true));
    marks.all(bolt_head(0.0, 0.0, flats, 0.63 * d, false));
    marks.line((0.0, 22.0), (0.0, end - 7.0), "centre");
    let laid = Placed {
        x: FACE,
        y: AXIS,
        degrees: 90.0,
    };
    vec![
        Mark::group(laid, "", marks),
        Mark::circle((nut_end(n), AXIS), 12.0, "grip"),
    ]
}

/// Names of the layers, the clamped length, and which faces have bedded in.
fn named(n: &Numbers, look: &Look<'_>) -> Vec<Mark> {
    let all @ [first, .., c, d, _, last] = ends(n);
    let mut marks = DimensionLine {
        from: (first, AXIS + washer_half(n)),
        to: (last, AXIS + washer_half(n)),
        line: AXIS + 68.0,
        text: look.units.stock(n.grip),
    }
    .level();
    let soft = "t s soft";
    marks.text(
        (f64::midpoint(c, d), AXIS - CHEEK_HALF - 6.0),
        "aluminum",
        soft,
        Anchor::Middle,
    );
    if n.event != FRESH {
        for x in all {
            let half = if x == c || x == d {
                BAR_HALF
            } else {
                washer_half(n)
            };
            marks.circle((x, AXIS - half + 5.0), 2.6, "force-tip load");
        }
    }
    if n.event >= PAINTED {
        let at = (first - 4.0, AXIS + CHEEK_HALF + 15.0);
        marks.line((c, AXIS + BAR_HALF), (at.0 + 3.0, at.1 - 4.0), "thin");
        marks.text(at, "paint", soft, Anchor::End);
    }
    marks
}

/// How the place of a loss is marked on the joint, and its row with it.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Sign {
    None,
    /// A dot on each pair of faces.
    Dot,
    /// A thick line along the paint.
    Line,
}

fn dot(at: (f64, f64)) -> Mark {
    Mark::circle(at, 2.6, "force-tip load")
}

/// One step of the clamp.
struct Row {
    name: String,
    /// What it adds or takes, N; `None`: it has not happened.
    change: Option<f64>,
    /// What to say then.
    before: &'static str,
    /// What marks it on the joint.
    sign: Sign,
}

fn steps(n: &Numbers, look: &Look<'_>) -> Vec<Mark> {
    let settled = n.event != FRESH;
    let rows = [
        Row {
            name: String::from("faces bed in"),
            change: settled.then_some(-n.bed),
            before: "not yet",
            sign: Sign::Dot,
        },
        Row {
            name: String::from(if n.event >= PAINTED {
                "paint creeps"
            } else {
                "first days"
            }),
            change: settled.then_some(-n.creep),
            before: "not yet",
            sign: if n.event >= PAINTED {
                Sign::Line
            } else {
                Sign::Dot
            },
        },
        Row {
            name: String::from("tightened again"),
            change: (n.event == AGAIN).then_some(n.bed + n.creep),
            before: "not yet",
            sign: Sign::None,
        },
        Row {
            name: if n.step == 0.0 {
                String::from("temperature")
            } else {
                temperature(n, look)
            },
            change: (n.step != 0.0).then_some(n.heat),
            before: "as it was",
            sign: Sign::None,
        },
    ];
    let scale = scale(look);
    let at = |force: f64| FROM + scale.length(force);
    let mut marks = whole((FIRST, n.fresh), "from the wrench", scale, look);
    let mut now = n.fresh;
    let mut y = FIRST;
    for row in rows {
        marks.line((at(now), y + 3.0), (at(now), y + PITCH - 3.0), "thin");
        y += PITCH;
        marks.push(between(y));
        marks.text((WORDS, y - 3.0), row.name, "t s", Anchor::Start);
        let Some(change) = row.change else {
            marks.text((WORDS, y + 12.0), row.before, "t s soft", Anchor::Start);
            marks.line((at(now), y - 3.0), (at(now), y + 3.0), "thin");
            continue;
        };
        match row.sign {
            Sign::None => {}
            Sign::Dot => marks.push(dot((WORDS - 9.0, y - 7.0))),
            Sign::Line => {
                let x = WORDS - 9.0;
                marks.line((x, y - 13.0), (x, y - 2.0), "force load");
            }
        }
        let class = if change < 0.0 { "load" } else { "clamp" };
        marks.all(force_arrow((at(now), y), (at(now + change), y), class));
        let (sign, words) = if change < 0.0 {
            ("−", "t load")
        } else {
            ("+", "t clamp")
        };
        let text = format!("{sign}{}", look.units.force(change.abs()));
        marks.text((WORDS, y + 12.0), text, words, Anchor::Start);
        now += change;
    }
    marks.line((at(now), y + 3.0), (at(now), y + PITCH - 3.0), "thin");
    marks.push(between(y + PITCH));
    let share = write(n.left / n.fresh, Dimension::Share, look.units);
    marks.all(whole(
        (y + PITCH, n.left),
        &format!("left: {share}"),
        scale,
        look,
    ));
    // Where every clamp begins.
    marks.line((FROM, FIRST - 8.0), (FROM, y + PITCH + 8.0), "axis");
    marks
}

/// A hairline above the words of a row.
fn between(y: f64) -> Mark {
    let y = y - PITCH / 2.0 + 0.5;
    Mark::line((WORDS - 14.0, y), (DRAWING_WIDTH - 8.0, y), "hair")
}

/// A clamp from nothing to what it is.
fn whole((y, clamp): (f64, f64), name: &str, scale: ForceScale, look: &Look<'_>) -> Vec<Mark> {
    let mut marks = force_arrow((FROM, y), (FROM + scale.length(clamp), y), "clamp");
    marks.text((WORDS, y - 3.0), name, "t s", Anchor::Start);
    marks.text(
        (WORDS, y + 12.0),
        look.units.force(clamp),
        "t clamp",
        Anchor::Start,
    );
    marks
}

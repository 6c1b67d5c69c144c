//! The figure: two sections under a caliper, the hole from outside, and the clamp against the dent.

use super::super::DRAWING_WIDTH;
use super::super::chart::{Axis, Band, Chart, Curve, CurveKind, KeyPoint, Level};
use super::super::model::{Handle, Look, with_strip};
use super::super::stand::verdict_words;
use super::{DENTS, Numbers, OVAL};
use crate::measure::caliper;
use crate::parts::{DimensionLine, StripField, centre_cross, nut};
use crate::pen::{Pen, polyline};
use crate::scene::{Anchor, CutMetal, Draw, Hatch, Lean, Mark, Placed, Scene};
use crate::section::Sag;
use crate::units::Lettering;
use calc_core::inspection::dent;
use calc_core::quantity::{Dimension, InUnits, mm, write_parts};

/// Drawing units in a millimetre of the tube, and how much larger the dent is drawn.
const SCALE: f64 = 1.22;
const TIMES: f64 = 3.0;
/// Middle height of both tubes; middles of the two.
const MIDDLE: f64 = 112.0;
const AT: f64 = 88.0;
const BESIDE: f64 = 258.0;
/// Middle of the hole as drilled, and its scale.
const HOLE: (f64, f64) = (60.0, 288.0);
const HOLE_SCALE: f64 = 3.2;
/// How far beside the hole's edge the grip lies.
const GRIP: f64 = 15.0;
const HEIGHT: f64 = 394.0;

pub(super) fn drawing(n: &Numbers, look: &Look<'_>) -> Scene {
    let units = look.units;
    let mut marks = Vec::new();
    for (x, name, dent) in [
        (AT, "at the bolt", n.narrower),
        (BESIDE, "a hand away", 0.0),
    ] {
        marks.text((x, 16.0), name, "t", Anchor::Middle);
        marks.all(measured(n, x, dent, &units.length(n.away() - dent)));
    }
    marks.line((0.0, 226.0), (DRAWING_WIDTH, 226.0), "hair");
    marks.all(hole(n, look));
    let [low, likely, high] = n.clamp();
    let below = n.too_small_to_see();
    let fits = !n.doubtful();
    let words = match n.dent.clamp {
        Some(_) if !fits => String::from("does not fit"),
        Some(_) => units.force(likely),
        None if below => format!("at most {}", units.force(likely)),
        None => format!("at least {}", units.force(likely)),
    };
    let verdict = verdict_words(n.verdict());
    let mut letter = |y, text: String, class| {
        marks.text((332.0, y), text, class, Anchor::End);
    };
    letter(247.0, "clamp that was reached".into(), "t s soft");
    letter(265.0, words, "t clamp");
    if fits && n.dent.clamp.is_some() {
        let (low, _) = write_parts(low, Dimension::Force, units);
        let text = format!("{low} to {}", units.force(high));
        letter(282.0, text, "t s");
    }
    let hole = if n.slipped() {
        format!("slipped by {}", units.length(n.long - n.short))
    } else {
        "hole still round".into()
    };
    letter(306.0, hole, "t s");
    letter(328.0, "verdict".into(), "t s soft");
    letter(345.0, verdict.into(), "t stamped");
    let strip = vec![
        StripField::new("tube, cut", "a nut on each face"),
        StripField::new("dent", format!("drawn ×\u{a0}{TIMES}")),
        StripField::new("joint", "made up"),
    ];
    with_strip(look, HEIGHT, marks, strip)
}

/// The tube in section with a washer on each face and a caliper over both. `dent` is that of both
/// faces, mm.
fn measured(n: &Numbers, x: f64, dent: f64, reads: &str) -> Vec<Mark> {
    let drawn = dent / 2.0 * TIMES;
    let half = n.stock.depth / 2.0 * SCALE;
    let (top, bottom) = (MIDDLE - half, MIDDLE + half);
    let mut marks = Vec::new();
    if dent > 0.0 {
        for y in [top, bottom] {
            let reach = n.stock.width / 2.0 * SCALE - 6.0;
            marks.line((x - reach, y), (x + reach, y), "phantom");
        }
    }
    let tube = [-1.0, 1.0].map(|side| {
        Mark::cut(
            half_tube(n, x, side, drawn),
            Hatch::new(CutMetal::Steel, Lean::Right),
        )
    });
    marks.group(Placed::default(), "p-face", tube.to_vec());
    // Bare jaws would rest on the corners; a nut on each face lifts them clear.
    let (tall, flats) = (
        n.nut() * SCALE,
        n.scenario.bolting.thread.width_across_flats().si() * 1e3 * SCALE,
    );
    let (upper, lower) = (top + drawn * SCALE, bottom - drawn * SCALE);
    marks.all(nut(x, upper, flats, tall, true));
    marks.all(nut(x, lower, flats, tall, false));
    let (from, to) = (upper - tall, lower + tall);
    marks.group(
        Placed {
            x: x + 54.0,
            y: from,
            degrees: 90.0,
        },
        "",
        caliper(to - from, 66.0, to - from + 43.0),
    );
    let left = x - n.stock.width / 2.0 * SCALE;
    marks.all(
        DimensionLine {
            from: (left, from),
            to: (left, to),
            line: left - 18.0,
            text: reads.into(),
        }
        .upright(),
    );
    marks
}

/// One half of the cut tube, its faces in by `drawn` mm beside the hole.
fn half_tube(n: &Numbers, x: f64, side: f64, drawn: f64) -> String {
    let tube = &n.scenario.tube;
    let (wall, radius) = (tube.wall.si() * 1e3, tube.corner_radius.si() * 1e3);
    let (half, deep, hole) = (n.stock.width / 2.0, n.stock.depth / 2.0, n.short / 2.0);
    let inner = (radius - wall).max(0.0);
    let sag = Sag::new(n.stock.pressed / 2.0, half - radius, drawn);
    let at = |mm: f64, up: f64| (x + side * mm * SCALE, MIDDLE - up * SCALE);
    // From the hole along a face to its corner; `level` is the height of the flat face.
    let face = |level: f64, sign: f64, end: f64| {
        (0..=14_u8).map(move |i| {
            let mm = hole + (end - hole) * f64::from(i) / 14.0;
            (mm, sign * (level - sag.at(mm)))
        })
    };
    let back = |level, sign, end| face(level, sign, end).collect::<Vec<_>>().into_iter().rev();
    let mut outline = Vec::new();
    outline.extend(face(deep, 1.0, half - radius));
    outline.extend(corner(half - radius, deep - radius, radius, 1.0, false));
    outline.extend(corner(half - radius, deep - radius, radius, -1.0, true));
    outline.extend(back(deep, -1.0, half - radius));
    outline.extend(face(deep - wall, -1.0, half - radius));
    outline.extend(corner(
        half - radius,
        deep - radius,
        inner.max(radius - wall),
        -1.0,
        false,
    ));
    outline.extend(corner(
        half - radius,
        deep - radius,
        inner.max(radius - wall),
        1.0,
        true,
    ));
    outline.extend(back(deep - wall, 1.0, half - radius));
    polyline(outline.into_iter().map(|(mm, up)| at(mm, up))) + "Z"
}

/// Points round a corner about its centre, from the face to the side wall, or back.
fn corner(x: f64, y: f64, r: f64, sign: f64, back: bool) -> impl Iterator<Item = (f64, f64)> {
    (0..=4_u8).map(move |i| {
        let share = f64::from(if back { 4 - i } else { i }) / 4.0;
        let (sin, cos) = (share * std::f64::consts::FRAC_PI_2).sin_cos();
        (x + r * sin, sign * (y + r * cos))
    })
}

/// Where the worn end of the hole is dragged.
pub(super) fn hole_grip(n: &Numbers, look: &Look<'_>) -> Handle {
    Handle {
        control: OVAL,
        at: (
            HOLE.0 + (n.long - n.short / 2.0) * HOLE_SCALE + GRIP,
            HOLE.1,
        ),
        along: (HOLE_SCALE * look.one(Dimension::Length) * 1e3, 0.0),
    }
}

/// The hole from outside: as drilled on the left, worn to the right.
fn hole(n: &Numbers, look: &Look<'_>) -> Vec<Mark> {
    let (x, y) = HOLE;
    let r = n.short / 2.0 * HOLE_SCALE;
    let far = x + (n.long - n.short) * HOLE_SCALE;
    let outline = Pen::at(x, y - r)
        .to(far, y - r)
        .arc(r, true, far, y + r)
        .to(x, y + r)
        .arc(r, true, x, y - r)
        .close();
    let bolt = n.scenario.bolting.thread.major().si() * 1e3 / 2.0 * HOLE_SCALE;
    let mut marks = vec![
        Mark::text(
            (10.0, 247.0),
            "hole, with the bolt",
            "t s soft",
            Anchor::Start,
        ),
        Mark::path(outline.d(), "edge none"),
        Mark::circle((x, y), bolt, "hidden none"),
    ];
    marks.all(centre_cross((x, y), r + 6.0));
    let dimension = |from, to, line, mm| DimensionLine {
        from,
        to,
        line,
        text: look.units.length(mm),
    };
    marks.all(dimension((x - r, y), (far + r, y), y + r + 26.0, n.long).level());
    marks.all(dimension((far, y - r), (far, y + r), far + r + 36.0, n.short).upright());
    marks.circle((far + r + GRIP, y), 13.0, "grip");
    marks
}

/// Clamp that a dent stands for, with its band.
pub(super) fn plot(n: &Numbers, look: &Look<'_>) -> Chart {
    let most_dent = DENTS.of(look.units).max * look.one(Dimension::Length) * 1e3;
    let readings: Vec<_> = (0..=16_u8)
        .filter_map(|i| {
            let share = f64::from(i) / 16.0;
            let at = 0.1 + (most_dent - 0.1) * share * share;
            Some((at * 1e-3, dent(&n.scenario, mm(at)).clamp?))
        })
        .collect();
    let points = |of: fn(&calc_core::inspection::Band) -> f64| -> Vec<_> {
        readings.iter().map(|(x, band)| (*x, of(band))).collect()
    };
    let [_, likely, _] = n.clamp();
    let name = match n.dent.clamp {
        Some(_) => "about",
        None if n.too_small_to_see() => "at most",
        None => "at least",
    };
    let tight = &n.report.tightening;
    let most = readings.iter().map(|(_, b)| b.high.si);
    let most = most.fold(1.1 * tight.clamp_nominal_n, f64::max);
    let top = n.stock.tops.into_iter().find(|t| *t >= most);
    let top = top.unwrap_or(most);
    Chart {
        title: String::from("Clamp load that was reached against the dent that stayed"),
        x: Axis {
            name: "dent of both faces",
            dimension: Dimension::Length,
            from: 0.0,
            to: most_dent * 1e-3,
        },
        y: Axis {
            name: "clamp load that was reached",
            dimension: Dimension::Force,
            from: 0.0,
            to: top,
        },
        band: Some(Band {
            lower: points(|b| b.low.si),
            upper: points(|b| b.high.si),
            name: String::new(),
        }),
        curves: vec![Curve {
            points: points(|b| b.likely.si),
            kind: CurveKind::This,
            name: String::new(),
            part: "p-face",
        }],
        levels: vec![
            Level {
                y: tight.clamp_nominal_n,
                name: String::from("the bolt needs this"),
            },
            Level {
                y: tight.yield_load_n,
                name: String::from("the bolt yields"),
            },
        ],
        points: vec![KeyPoint {
            name: name.into(),
            x: n.narrower * 1e-3,
            y: likely,
            here: true,
        }],
        units: look.units,
    }
}

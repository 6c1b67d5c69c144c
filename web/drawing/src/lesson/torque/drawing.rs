//! The bolt with its nut cut open, the bar that shows where the torque goes, and the wrench from above.

use super::super::model::{Handle, Look, with_strip};
use super::{Numbers, STOCK, TORQUE};
use crate::parts::{
    ForceScale, StripField, TurnedWrench, bolt_head, force_arrow, threaded_shank, washer_cut,
};
use crate::pen::{Pen, polyline};
use crate::scene::{Anchor, CutMetal, Draw, Hatch, Lean, Mark, Placed, Scene};
use crate::units::Lettering;
use calc_core::quantity::{Dimension, InUnits, Length, write, write_parts};

/// Middle of the bolt, drawing units in a millimetre, heights of the section's planes.
const AXIS: f64 = 88.0;
const PER_MM: f64 = 2.9;
const SEAT: f64 = 92.0;
const PLIES: f64 = 26.0;
const HALF: f64 = 58.0;
/// The bar that shows where the torque goes.
const BAR: (f64, f64) = (188.0, 209.0);
const BAR_TOP: f64 = 34.0;
const BAR_FOOT: f64 = 188.0;
/// The wrench from above: middle, reach, where it starts in degrees from upright.
const PLAN: (f64, f64) = (88.0, 284.0);
const REACH: f64 = 66.0;
const FROM: f64 = -52.0;
const HEIGHT: f64 = 360.0;

pub(super) fn drawing(n: &Numbers, look: &Look<'_>) -> Scene {
    let units = look.units;
    let scale = ForceScale::fitting(n.report.yield_load_n, 64.0, units);
    let mut marks = section(n);
    marks.all(clamp_arrows(n, scale, look));
    marks.all(bar(n, look));
    marks.all(plan(n));
    let torque = write(n.torque, Dimension::Torque, units);
    let on_wrench = if n.torque > 0.0 {
        format!("torque {torque}")
    } else {
        String::from("no torque yet")
    };
    let x = PLAN.0 + 64.0;
    marks.text((x, 238.0), on_wrench, "t load", Anchor::Start);
    if n.torque > 0.0 {
        let low = write_parts(n.low, Dimension::Force, units).0;
        let lines = if n.yields() {
            [
                String::from("the bolt yields:"),
                String::from("no click, no more load"),
            ]
        } else {
            [
                String::from("clamp load may be"),
                format!("{low} to {}", units.force(n.high)),
            ]
        };
        for (y, text) in [260.0, 279.0].into_iter().zip(lines) {
            marks.text((x, y), text, "t clamp", Anchor::Start);
        }
    }
    let strip = vec![
        StripField::new(
            "drawing",
            format!("{} bolt, nut cut", STOCK.of(units).called),
        ),
        StripField::scale(scale),
    ];
    with_strip(look, HEIGHT, marks, strip)
}

fn units(length: Length) -> f64 {
    length.si() * 1e3 * PER_MM
}

/// Two plates, the bolt, its nut cut open, and where it rubs.
fn section(n: &Numbers) -> Vec<Mark> {
    let bolting = &n.scenario.bolting;
    let thread = n.thread();
    let (d, flats) = (units(thread.major()), units(thread.width_across_flats()));
    let (outer, thick, bore) = (
        units(bolting.washer.outer),
        units(bolting.washer.thickness),
        units(bolting.hole),
    );
    let (top, seam, bottom) = (
        SEAT + thick,
        SEAT + thick + PLIES,
        SEAT + thick + 2.0 * PLIES,
    );
    let mut stack = Vec::new();
    for (upper, lower, lean) in [(top, seam, Lean::Left), (seam, bottom, Lean::Right)] {
        for side in [-1.0, 1.0] {
            stack.rect(
                (AXIS + side * bore / 2.0, upper),
                (AXIS + side * HALF, lower),
                "edge",
                Some(Hatch::new(CutMetal::Steel, lean)),
            );
        }
    }
    let mut marks = vec![Mark::group(Placed::default(), "p-plate", stack)];
    let nut = units(thread.nut_height());
    let end = SEAT - nut - 2.0 * units(thread.pitch());
    let head = bottom + thick;
    let mut bolt = washer_cut(AXIS, outer, bore, SEAT, top, Lean::Right);
    bolt.all(washer_cut(AXIS, outer, bore, bottom, head, Lean::Left));
    bolt.all(threaded_shank(AXIS, d, head, end, SEAT + 30.0 - end));
    bolt.all(bolt_head(
        AXIS,
        head,
        flats,
        units(thread.head_height()),
        false,
    ));
    // The nut cut open, so that the thread inside is seen; bevelled like the whole one.
    let (near, far, bevel) = (d / 2.0, flats * 0.577, flats * 0.045);
    for side in [-1.0, 1.0] {
        let at = |x: f64, y: f64| (AXIS + side * x, y);
        let corner = far - 2.0 * bevel;
        let outline = [
            at(near, SEAT),
            at(corner, SEAT),
            at(far, SEAT - bevel),
            at(far, SEAT - nut + bevel),
            at(corner, SEAT - nut),
            at(near, SEAT - nut),
        ];
        bolt.cut(
            polyline(outline) + "Z",
            Hatch::new(
                CutMetal::Steel,
                if side > 0.0 { Lean::Left } else { Lean::Right },
            ),
        );
        if n.torque > 0.0 {
            // Rubbing: zigzag along the thread, a bar under the face.
            bolt.path(flanks(AXIS + side * near, nut), "force load");
            bolt.line(at(near + 2.0, SEAT), at(corner, SEAT), "force load");
        }
    }
    marks.group(Placed::default(), "p-bolt", bolt);
    let foot = head + units(thread.head_height());
    marks.line((AXIS, end - 7.0), (AXIS, foot + 7.0), "centre");
    marks
}

/// The thread inside the nut as a zigzag.
fn flanks(x: f64, nut: f64) -> String {
    let mut pen = Pen::at(x, SEAT - 1.0);
    for i in 1..=8_u8 {
        let way = if i % 2 == 0 { -1.5 } else { 1.5 };
        pen = pen.to(x + way, SEAT - 1.0 - (nut - 2.0) * f64::from(i) / 8.0);
    }
    pen.d()
}

/// What comes out: the squeeze, with its scatter as a thin line across the arrow's tail.
fn clamp_arrows(n: &Numbers, scale: ForceScale, look: &Look<'_>) -> Vec<Mark> {
    let x = AXIS - 46.0;
    let bolting = &n.scenario.bolting;
    let thick = units(bolting.washer.thickness);
    let (top, bottom) = (SEAT + thick, SEAT + thick + 2.0 * PLIES);
    let length = scale.length(n.clamp);
    let mut marks = force_arrow((x, top - length), (x, top), "clamp");
    marks.all(force_arrow((x, bottom + length), (x, bottom), "clamp"));
    if n.clamp > 0.0 {
        let (low, high) = (scale.length(n.low), scale.length(n.high));
        let beside = x - 11.0;
        for end in [low, high] {
            marks.line((beside - 5.0, top - end), (x + 5.0, top - end), "thin");
        }
        marks.line((beside, top - low), (beside, top - high), "thin");
        marks.text(
            (8.0, 24.0),
            format!("clamp {}", look.units.force(n.clamp)),
            "t clamp halo",
            Anchor::Start,
        );
    }
    vec![Mark::group(Placed::default(), "p-clamp", marks)]
}

/// The torque as a bar, cut where it goes; leaders to the places.
fn bar(n: &Numbers, look: &Look<'_>) -> Vec<Mark> {
    let (left, right) = BAR;
    let mut marks = Vec::new();
    if n.torque <= 0.0 {
        marks.rect((left, BAR_TOP), (right, BAR_FOOT), "edge", None);
        let x = right + 10.0;
        let middle = f64::midpoint(BAR_TOP, BAR_FOOT);
        for (y, text) in [
            (-4.0, "the torque:"),
            (14.0, "where does it"),
            (32.0, "go?"),
        ] {
            marks.text((x, middle + y), text, "t", Anchor::Start);
        }
        return marks;
    }
    let r = &n.report;
    let high = BAR_FOOT - BAR_TOP;
    let thread = BAR_TOP + high * r.share_thread_friction;
    let face = thread + high * r.share_face_friction;
    let nut = units(n.thread().nut_height());
    let d = units(n.thread().major());
    let steel = |lean| Some(Hatch::new(CutMetal::Aluminium, lean));
    let shown = [
        (
            (BAR_TOP, thread),
            "in the thread",
            r.share_thread_friction,
            (AXIS + d / 2.0, SEAT - nut * 0.6),
        ),
        (
            (thread, face),
            "under the nut",
            r.share_face_friction,
            (AXIS + d * 0.65, SEAT),
        ),
        (
            (face, BAR_FOOT),
            "into stretch",
            r.share_stretch,
            (AXIS + d * 0.25, SEAT + PLIES * 1.75),
        ),
    ];
    for (i, ((from, to), name, share, place)) in shown.into_iter().enumerate() {
        let middle = f64::midpoint(from, to);
        marks.line(place, (left, middle), "thin");
        marks.circle(place, 2.4, "dot");
        let (class, hatch) = match i {
            0 => ("edge", steel(Lean::Left)),
            1 => ("edge", steel(Lean::Right)),
            _ => ("force-tip clamp", None),
        };
        marks.rect((left, from), (right, to), class, hatch);
        let text = if i == 2 { "t clamp" } else { "t" };
        // The small piece at the foot has its two lines about it, the others about their middle.
        let y = if i == 2 { to - 12.0 } else { middle - 2.0 };
        marks.text((right + 8.0, y), name, text, Anchor::Start);
        let amount = format!(
            "{}, {}",
            write(n.torque * share, Dimension::Torque, look.units),
            write(rounded(share), Dimension::Share, look.units)
        );
        marks.text((right + 8.0, y + 15.0), amount, "t s", Anchor::Start);
    }
    marks.rect((left, BAR_TOP), (right, BAR_FOOT), "edge", None);
    marks.text(
        (left, BAR_TOP - 8.0),
        "where it goes",
        "t s soft",
        Anchor::Start,
    );
    marks
}

/// Whole percent: more digits than the friction is known to would only be noise.
fn rounded(share: f64) -> f64 {
    (share * 100.0).round() / 100.0
}

/// The wrench from above, turned as far as this torque takes the nut.
fn wrench(n: &Numbers) -> TurnedWrench {
    let flats = 27.0;
    TurnedWrench {
        flats,
        d: flats * n.thread().major().si() / n.thread().width_across_flats().si(),
        reach: REACH,
        from: FROM,
        turn: n.turn_deg,
    }
}

fn plan(n: &Numbers) -> Vec<Mark> {
    let nut = wrench(n);
    let mut marks = nut.marks();
    marks.circle(nut.hand().0, 11.0, "grip");
    vec![Mark::group(Placed::at(PLAN.0, PLAN.1), "plan", marks)]
}

/// The wrench is pulled at its handle.
pub(super) fn handle(n: &Numbers, look: &Look<'_>) -> Handle {
    let ((x, y), along) = wrench(n).hand();
    let turn = n.deg_per_nm * look.one(Dimension::Torque);
    Handle {
        control: TORQUE,
        at: (PLAN.0 + x, PLAN.1 + y),
        along: (along.0 * turn, along.1 * turn),
    }
}

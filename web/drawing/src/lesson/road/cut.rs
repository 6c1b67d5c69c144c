//! One of the bolts cut across the tube: what squeezes the joint as long as nothing loads it.

use super::{Jolt, Numbers, input};
use crate::lesson::ply::{Broken, ply};
use crate::parts::{bolt_head, leader, nut, threaded_shank, washer_cut};
use crate::scene::{CutMetal, Draw, Hatch, Lean, Mark, Placed};
use calc_core::Scenario;
use calc_core::quantity::{InUnits, Length, mm};

/// Drawing units in a millimetre.
const PER_MM: f64 = 1.5;
fn units(length: Length) -> f64 {
    length.si() * 1e3 * PER_MM
}

/// The section with its middle at a place on the sheet and half of what is shown of the tube; parts are named to the
/// right of it.
pub(super) fn cut(n: &Numbers, (x, y): (f64, f64), half: f64) -> Option<Vec<Mark>> {
    let s = Scenario::new(&input(n.stock, n.kind, Jolt::Worst, n.distance_mm)).ok()?;
    let (thread, washer) = (s.bolting.thread, &s.bolting.washer);
    let (depth, wall) = (units(s.tube.depth), units(s.tube.wall));
    let (plate, thick) = (units(s.fitting.thickness), units(washer.thickness));
    let (d, flats) = (units(thread.major()), units(thread.width_across_flats()));
    let sleeve = [units(s.sleeve.inner) / 2.0, units(s.sleeve.outer) / 2.0];
    let bore = units(s.bolting.hole) / 2.0;
    let steel = |lean| Hatch::new(CutMetal::Steel, lean);
    let on = Broken {
        left: true,
        right: true,
    };
    let (left, right) = (x - half, x + half);
    let (top, bottom) = (y - depth / 2.0, y + depth / 2.0);
    let mut marks = Vec::new();
    // Walls and sleeve, then the side plates on them.
    for (from, to) in [(top, top + wall), (bottom - wall, bottom)] {
        let hole = (x - sleeve[1], x + sleeve[1]);
        marks.all(ply((left, right), (from, to), hole, on, steel(Lean::Right)));
    }
    for side in [-1.0, 1.0] {
        let [inner, outer] = sleeve.map(|r| x + side * r);
        marks.rect(
            (inner, top),
            (outer, bottom),
            "edge",
            Some(steel(Lean::Left)),
        );
    }
    for (from, to) in [(top - plate, top), (bottom, bottom + plate)] {
        let hole = (x - bore, x + bore);
        marks.all(ply((left, right), (from, to), hole, on, steel(Lean::Left)));
    }
    let (under_nut, under_head) = (top - plate, bottom + plate);
    let (nut_base, head_base) = (under_nut - thick, under_head + thick);
    let end = nut_base - units(thread.nut_height()) - 2.0 * units(thread.pitch());
    let length = mm((head_base - end) / PER_MM);
    let outer = units(washer.outer);
    let mut bolt = washer_cut(x, outer, 2.0 * bore, nut_base, under_nut, Lean::Right);
    bolt.all(washer_cut(
        x,
        outer,
        2.0 * bore,
        under_head,
        head_base,
        Lean::Right,
    ));
    let threaded = units(thread.thread_length(length));
    bolt.all(threaded_shank(x, d, head_base, end, threaded));
    bolt.all(bolt_head(
        x,
        head_base,
        flats,
        units(thread.head_height()),
        false,
    ));
    bolt.all(nut(x, nut_base, flats, units(thread.nut_height()), true));
    let foot = head_base + units(thread.head_height());
    bolt.line((x, end - 6.0), (x, foot + 6.0), "centre");
    marks.group(Placed::default(), "p-bolt", bolt);
    let words = right + 12.0;
    for (part, height, text) in [
        ((right - 8.0, top - plate / 2.0), top - 6.0, "plate"),
        ((right - 8.0, top + wall / 2.0), top + 14.0, "tube"),
        ((x + (sleeve[0] + sleeve[1]) / 2.0, y), y + 4.0, "sleeve"),
    ] {
        marks.all(leader(part, (words, height), text, "t s soft"));
    }
    Some(marks)
}

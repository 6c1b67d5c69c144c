//! The joint cut along the bolt, seen from above, and the hole in its wall seen along the bolt.

use super::{LOADS, Numbers};
use crate::lesson::model::with_strip;
use crate::lesson::ply::{Broken, ply};
use crate::lesson::{DRAWING_WIDTH, Handle, Look};
use crate::parts::{
    ForceScale, StripField, arrow_tip, bolt_head, centre_cross, force_arrow, nut, washer_cut,
};
use crate::pen::{Pen, polyline};
use crate::scene::{Anchor, CutMetal, Draw, Hatch, Lean, Mark, Placed, Scene};
use crate::units::Lettering;
use calc_core::mechanics::pin;
use calc_core::quantity::{Dimension, InUnits, mm, newton, write};

/// Drawing units in a millimetre: holes, play and plies are in true proportion.
const PER_MM: f64 = 3.0;
/// How much larger than it is the bolt's bending is drawn.
const TIMES: f64 = 20.0;
/// Middle of the bolt and of the tube.
const AXIS: f64 = 150.0;
const MIDDLE: f64 = 166.0;
/// Where the tube is broken off and where it ends; the same of the cheeks.
const TUBE: (f64, f64) = (44.0, 222.0);
const CHEEK: (f64, f64) = (96.0, 274.0);
/// Middle of the view along the bolt.
const VIEW: (f64, f64) = (284.0, MIDDLE + 2.0);
const HEIGHT: f64 = 354.0;
/// Width and thickness of a washer, across flats, nut and head in diameters of the bolt: as for M12 and 1/2 in.
const WASHER: (f64, f64) = (2.0, 0.21);
const FLATS: f64 = 1.5;
const NUT: f64 = 0.9;
const HEAD: f64 = 0.63;

/// One cheek takes half of the load.
fn scale(look: &Look<'_>) -> ForceScale {
    let most = LOADS.of(look.units).max * look.one(Dimension::Force);
    ForceScale::fitting(most / 2.0, 48.0, look.units)
}

/// Where things lie on the sheet in a state.
struct Place<'a> {
    n: &'a Numbers,
    /// 1 pulls, −1 pushes, 0 rests.
    way: f64,
    radius: f64,
    wall: f64,
    gap: f64,
    cheek: f64,
    /// How far walls and cheeks have gone to the right of where they stand in mid-hole.
    wall_shift: f64,
    cheek_shift: f64,
}

impl<'a> Place<'a> {
    fn new(n: &'a Numbers) -> Self {
        let units = |length: calc_core::quantity::Length| length.si() * 1e3 * PER_MM;
        let way = if n.load == 0.0 { 0.0 } else { n.load.signum() };
        let mut place = Self {
            n,
            way,
            radius: units(n.d) / 2.0,
            wall: units(n.wall),
            gap: units(n.gap),
            cheek: n.stock.cheek * PER_MM,
            wall_shift: -way * units(n.hole - n.d) / 2.0,
            cheek_shift: way * units(n.cheek_hole - n.d) / 2.0,
        };
        let (top, bottom) = place.cheek(-1.0);
        place.cheek_shift += place.bow(f64::midpoint(top, bottom));
        place
    }

    /// Outer and inner face of a wall, top first; `side` −1 is the upper one.
    fn wall(&self, side: f64) -> (f64, f64) {
        let outer = MIDDLE + side * self.n.stock.tube / 2.0 * PER_MM;
        let inner = outer - side * self.wall;
        (outer.min(inner), outer.max(inner))
    }

    fn packing(&self, side: f64) -> (f64, f64) {
        let inner = MIDDLE + side * self.n.stock.tube / 2.0 * PER_MM;
        let outer = inner + side * self.gap;
        (outer.min(inner), outer.max(inner))
    }

    fn cheek(&self, side: f64) -> (f64, f64) {
        let inner = MIDDLE + side * (self.n.stock.tube / 2.0 * PER_MM + self.gap);
        let outer = inner + side * self.cheek;
        (outer.min(inner), outer.max(inner))
    }

    /// How far to the right the bolt's middle lies at a height on the sheet, as drawn.
    fn bow(&self, y: f64) -> f64 {
        let n = self.n;
        let (top, bottom) = self.wall(-1.0);
        let at = mm((y - f64::midpoint(top, bottom)) / PER_MM);
        let bow = pin::bow(newton(n.each), (n.lever, n.span), (n.modulus, n.d), at);
        self.way * bow.si() * 1e3 * PER_MM * TIMES
    }
}

/// The load is dragged at the free end of its upper arrow.
pub(super) fn handle(n: &Numbers, look: &Look<'_>) -> Handle {
    let place = Place::new(n);
    Handle {
        control: super::LOAD,
        at: load_end(&place, look),
        along: (scale(look).length(look.one(Dimension::Force) / 2.0), 0.0),
    }
}

fn load_end(place: &Place<'_>, look: &Look<'_>) -> (f64, f64) {
    let (top, bottom) = place.cheek(-1.0);
    let long = scale(look).length(place.n.each) * place.way;
    (
        CHEEK.1 + place.cheek_shift + long,
        f64::midpoint(top, bottom),
    )
}

pub(super) fn drawing(n: &Numbers, look: &Look<'_>) -> Scene {
    let place = Place::new(n);
    let mut marks = tube(&place);
    marks.all(cheeks(&place));
    marks.group(Placed::default(), "p-bolt", bolt(&place));
    marks.group(Placed::default(), "p-wall", contacts(&place));
    marks.group(Placed::default(), "p-load", loads(&place, look));
    marks.group(Placed::default(), "p-wall", view(&place, look));
    marks.all(letters(&place, look));
    let strip = vec![
        StripField::new("from above, cut", format!("{} bolt, tube", n.stock.called)),
        StripField::new("bend", format!("×\u{a0}{TIMES}")),
        StripField::scale(scale(look)),
    ];
    with_strip(look, HEIGHT, marks, strip)
}

fn tube(place: &Place<'_>) -> Vec<Mark> {
    let (shift, r) = (place.wall_shift, place.n.hole.si() * 1e3 * PER_MM / 2.0);
    let middle = AXIS + shift;
    let mut marks = Vec::new();
    for (side, lean) in [(-1.0, Lean::Right), (1.0, Lean::Left)] {
        marks.all(ply(
            (TUBE.0 + shift, TUBE.1 + shift),
            place.wall(side),
            (middle - r, middle + r),
            Broken {
                left: true,
                right: false,
            },
            Hatch::new(CutMetal::Steel, lean),
        ));
    }
    // The open end of the tube, seen beyond the cut.
    let (upper, lower) = (place.wall(-1.0).1, place.wall(1.0).0);
    let end = TUBE.1 + shift;
    marks.line((end, upper), (end, lower), "edge");
    marks
}

fn cheeks(place: &Place<'_>) -> Vec<Mark> {
    let (shift, r) = (
        place.cheek_shift,
        place.n.cheek_hole.si() * 1e3 * PER_MM / 2.0,
    );
    let middle = AXIS + shift;
    let hole = (middle - r, middle + r);
    let mut marks = Vec::new();
    for (side, lean) in [(-1.0, Lean::Left), (1.0, Lean::Right)] {
        let hatch = Hatch::new(CutMetal::Steel, lean);
        marks.all(ply(
            (CHEEK.0 + shift, CHEEK.1 + shift),
            place.cheek(side),
            hole,
            Broken {
                left: false,
                right: true,
            },
            hatch,
        ));
        if place.gap > 0.0 {
            let half = WASHER.0 * place.radius;
            marks.all(ply(
                (middle - half, middle + half),
                place.packing(side),
                hole,
                Broken::default(),
                Hatch::new(CutMetal::Steel, Lean::Right),
            ));
        }
    }
    marks
}

fn bolt(place: &Place<'_>) -> Vec<Mark> {
    let nut_base = place.cheek(-1.0).0;
    let head_base = place.cheek(1.0).1;
    let (r, d) = (place.radius, 2.0 * place.radius);
    let under_nut = nut_base - WASHER.1 * d;
    let under_head = head_base + WASHER.1 * d;
    let end = under_nut - NUT * d - 6.0;
    let steps = 28;
    let along = |from: f64, to: f64, beside: f64| -> Vec<(f64, f64)> {
        (0..=steps)
            .map(|i| from + (to - from) * f64::from(i) / f64::from(steps))
            .map(|y| (AXIS + place.bow(y) + beside, y))
            .collect()
    };
    let (chamfer, root) = (0.16 * r, 0.84 * r);
    let tip = AXIS + place.bow(end);
    let outline = along(under_head, end + chamfer, -r)
        .into_iter()
        .chain([(tip - root, end), (tip + root, end)])
        .chain(along(end + chamfer, under_head, r));
    let mut marks = vec![Mark::path(polyline(outline) + "Z", "edge part")];
    // The thread's root, from the point down to where the thread runs out.
    let long = (under_head - end) / PER_MM;
    let threaded = place.n.thread.thread_length(mm(long)).si() * 1e3;
    let runs_out = (end + threaded * PER_MM).min(under_head);
    for beside in [-root, root] {
        let line = polyline(along(end, runs_out, beside));
        marks.path(line, "thin none");
    }
    let at = AXIS + place.bow(runs_out);
    marks.line((at - r, runs_out), (at + r, runs_out), "thin");
    let centre = polyline(along(under_head + HEAD * d + 6.0, end - 6.0, 0.0));
    marks.push(turned(place, nut_base, |marks| {
        marks.all(nut_and_washer(d));
    }));
    marks.push(turned(place, head_base, |marks| {
        marks.all(head_and_washer(d));
    }));
    marks.path(centre, "centre none");
    marks
}

/// Nut or head on its face at height `base`, turned with the bolt; one edge of its washer touches.
fn turned(place: &Place<'_>, base: f64, fill: impl Fn(&mut Vec<Mark>)) -> Mark {
    let slope = (place.bow(base + 0.5) - place.bow(base - 0.5)).atan();
    let lift = WASHER.0 * place.radius * slope.sin().abs();
    let away = if base < MIDDLE { -lift } else { lift };
    let mut marks = Vec::new();
    fill(&mut marks);
    let placed = Placed {
        x: AXIS + place.bow(base),
        y: base + away,
        degrees: -slope.to_degrees(),
    };
    Mark::group(placed, "", marks)
}

fn nut_and_washer(d: f64) -> Vec<Mark> {
    let thick = WASHER.1 * d;
    let mut marks = washer_cut(0.0, WASHER.0 * d, d, -thick, 0.0, Lean::Right);
    marks.all(nut(0.0, -thick, FLATS * d, NUT * d, true));
    marks
}

fn head_and_washer(d: f64) -> Vec<Mark> {
    let thick = WASHER.1 * d;
    let mut marks = washer_cut(0.0, WASHER.0 * d, d, 0.0, thick, Lean::Left);
    marks.all(bolt_head(0.0, thick, FLATS * d, HEAD * d, false));
    marks
}

/// Where bolt and rims press on each other.
fn contacts(place: &Place<'_>) -> Vec<Mark> {
    if place.way == 0.0 {
        return Vec::new();
    }
    let mut marks = Vec::new();
    for side in [-1.0, 1.0] {
        for ((top, bottom), way) in [(place.wall(side), 1.0), (place.cheek(side), -1.0)] {
            let x = AXIS + place.bow(f64::midpoint(top, bottom)) + way * place.way * place.radius;
            marks.line((x, top), (x, bottom), "force load");
        }
    }
    marks
}

/// What pulls or pushes: half of it on each cheek, and each wall holds back its half.
fn loads(place: &Place<'_>, look: &Look<'_>) -> Vec<Mark> {
    let long = scale(look).length(place.n.each);
    let (end, _) = load_end(place, look);
    let from = CHEEK.1 + place.cheek_shift;
    let tube = TUBE.0 + place.wall_shift;
    let mut marks = Vec::new();
    for side in [-1.0, 1.0] {
        let (top, bottom) = place.cheek(side);
        let y = f64::midpoint(top, bottom);
        if place.way < 0.0 {
            let (a, b) = ((end - 2.0, y - 6.5), (from + 2.0, y + 6.5));
            marks.rect(a, b, "part", None);
        }
        marks.all(force_arrow((from, y), (end, y), "load"));
        let (top, bottom) = place.wall(side);
        let y = f64::midpoint(top, bottom);
        let (tail, tip) = if place.way < 0.0 {
            (tube - long, tube)
        } else {
            (tube, tube - long)
        };
        marks.all(force_arrow((tail, y), (tip, y), "load"));
    }
    marks.circle(load_end(place, look), 12.0, "grip");
    marks
}

/// The hole in the wall, looking along the bolt: what it leaves the bolt to travel.
fn view(place: &Place<'_>, look: &Look<'_>) -> Vec<Mark> {
    let (x, y) = VIEW;
    let n = place.n;
    let long = n.hole.si() * 1e3 * PER_MM / 2.0;
    let tall = n.cheek_hole.si() * 1e3 * PER_MM / 2.0;
    let flat = long - tall;
    let r = place.radius;
    let slot = Pen::at(x - flat, y - tall)
        .to(x + flat, y - tall)
        .arc(tall, true, x + flat, y + tall)
        .to(x - flat, y + tall)
        .arc(tall, true, x - flat, y - tall)
        .close()
        .d();
    let at = x + place.way * (long - r);
    let mut marks = vec![Mark::path(slot, "edge none")];
    if place.way != 0.0 {
        let other = (x - place.way * (long - r), y);
        marks.circle(other, r, "phantom");
    }
    marks.circle((at, y), r, "edge part");
    marks.all(centre_cross((at, y), r + 4.0));
    if place.way != 0.0 {
        // The arc on which it rests, half a right angle to each side.
        let (dx, dy) = (place.way * r * 0.71, r * 0.71);
        let arc = Pen::at(at + dx, y - dy)
            .arc(r, place.way > 0.0, at + dx, y + dy)
            .d();
        marks.path(arc, "force load none");
    }
    marks.text(
        (x, y - 40.0),
        "hole in the wall",
        "t s soft",
        Anchor::Middle,
    );
    // From where the bolt is to where it may go.
    let (a, b) = if place.way == 0.0 {
        (at + r, x + long)
    } else {
        (at - place.way * r, x - place.way * long)
    };
    let line = y + tall + 11.0;
    let (a, b) = (a.min(b), a.max(b));
    for (end, way) in [(a, 1.0), (b, -1.0)] {
        marks.line((end, y + 6.0), (end, line + 4.0), "thin");
        marks.line((end - 15.0 * way, line), (end - 8.0 * way, line), "thin");
        marks.push(arrow_tip((end, line), (way, 0.0), 9.0, "tip"));
    }
    let play = if place.way == 0.0 { 0.5 } else { 1.0 } * (n.hole - n.d).si() * 1e3;
    marks.text(
        (x, line + 19.0),
        format!("free {}", look.units.stock(play)),
        "t",
        Anchor::Middle,
    );
    marks
}

fn letters(place: &Place<'_>, look: &Look<'_>) -> Vec<Mark> {
    let n = place.n;
    let units = look.units;
    let of = |si: f64, dimension| write(si, dimension, units);
    let stress = |si| of(si, Dimension::Stress);
    let moment = |si| of(si, Dimension::Moment);
    let class = |share: f64| if share > 1.0 { "t load" } else { "t" };
    let (wall, bend) = (class(n.wall_share()), class(n.bending_share()));
    let mut marks = vec![
        Mark::text((6.0, 22.0), "wall pressed", wall, Anchor::Start),
        Mark::text((6.0, 39.0), stress(n.pressure), wall, Anchor::Start),
        Mark::text(
            (6.0, 55.0),
            format!("of {}", stress(n.pressure_allowed)),
            "t s soft",
            Anchor::Start,
        ),
        Mark::text((8.0, MIDDLE - 12.0), "bolt bent", bend, Anchor::Start),
        Mark::text((8.0, MIDDLE + 5.0), moment(n.moment), bend, Anchor::Start),
        Mark::text(
            (8.0, MIDDLE + 21.0),
            format!("of {}", moment(n.moment_allowed)),
            "t s soft",
            Anchor::Start,
        ),
        Mark::text(
            (DRAWING_WIDTH - 8.0, 22.0),
            format!("load {}", units.force(2.0 * n.each)),
            "t load",
            Anchor::End,
        ),
        Mark::text(
            (DRAWING_WIDTH - 8.0, 38.0),
            "half on each plate",
            "t s soft",
            Anchor::End,
        ),
    ];
    let (top, bottom) = place.wall(-1.0);
    let part = (66.0 + place.wall_shift, f64::midpoint(top, bottom));
    marks.line(part, (40.0, 62.0), "thin");
    marks.circle(part, 1.8, "dot");
    marks.text(
        (250.0, place.cheek(1.0).1 + 16.0),
        "side plate",
        "t s soft",
        Anchor::Start,
    );
    marks.text(
        (182.0 + place.wall_shift, MIDDLE + 44.0),
        "tube",
        "t s soft",
        Anchor::Start,
    );
    if place.gap > 0.0 {
        let at = (206.0, place.packing(-1.0).1 - 8.0);
        marks.text(at, "shims", "t s soft", Anchor::Start);
    }
    marks
}

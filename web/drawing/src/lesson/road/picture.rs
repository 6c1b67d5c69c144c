//! The joint from the side with the load and what each bolt gets, and the same taken apart: the load
//! shared alike, and the twist as a pair of forces.

use super::super::DRAWING_WIDTH;
use super::super::model::{Handle, Look, with_strip};
use super::cut::cut;
use super::fittings::{LUG, chain, coupler, hanger};
use super::{DISTANCE, Jolt, Kind, Numbers, largest};
use crate::parts::{
    DimensionLine, ForceScale, StripField, arrow_tip, centre_cross, force_arrow, hex_plan,
};
use crate::pen::Pen;
use crate::scene::{Anchor, Draw, Mark, Placed, Scene, text_width};
use crate::units::Lettering;
use calc_core::catalog::thread;
use calc_core::mechanics::bolt_group::Share;
use calc_core::quantity::{Dimension, InUnits};

/// Drawing units in a millimetre.
pub(super) const PER_MM: f64 = 0.86;
const HEIGHT: f64 = 400.0;
/// Longest arrow.
const ARROW: f64 = 73.0;

/// Where things stand on the sheet.
pub(super) struct Sheet {
    /// Middle of the bolts.
    pub(super) middle: (f64, f64),
    /// Ball, eye of the spring or of the chain.
    pub(super) load: (f64, f64),
    /// From the middle to the outermost bolt, mm.
    pub(super) half_row_mm: f64,
    /// Half the depth of the tube as drawn, and radius of the ball and of the socket round it.
    pub(super) tube: f64,
    pub(super) ball: f64,
    pub(super) socket: f64,
    /// From an outer bolt to the edge of the fitting and to the end of the tube, as drawn.
    pub(super) edge: f64,
    pub(super) end: f64,
    /// Middle of the bolts in the two views that take it apart.
    apart: [(f64, f64); 2],
}

impl Sheet {
    fn new(n: &Numbers) -> Self {
        let lever = n.distance_mm * PER_MM;
        let half_row_mm = n.kind.spacing_mm(n.stock) / 2.0;
        let ball = n.stock.ball / 2.0 * PER_MM;
        let sheet = Self {
            middle: (92.0, 114.0),
            load: (92.0 + lever, 114.0),
            half_row_mm,
            tube: n.stock.tube / 2.0 * PER_MM,
            ball,
            socket: ball + 5.0,
            edge: n.stock.edge * PER_MM,
            end: n.stock.end * PER_MM,
            apart: [(84.0, 267.0), (256.0, 267.0)],
        };
        if n.kind == Kind::Hanger {
            // It hangs down, so the two views stand beside it.
            let middle = (92.0, 98.0);
            return Self {
                middle,
                load: (middle.0, middle.1 + lever),
                apart: [(264.0, 84.0), (264.0, 224.0)],
                ..sheet
            };
        }
        sheet
    }
}

pub(super) fn drawing(n: &Numbers, look: &Look<'_>) -> (Scene, Handle) {
    let sheet = Sheet::new(n);
    let scale = ForceScale::fitting(n.stock.most_force, ARROW, look.units);
    let mut marks = match n.kind {
        Kind::Hanger => hanger(&sheet),
        Kind::Chain => chain(&sheet, n.loaded().then_some((n.along, n.up))),
        _ => coupler(&sheet, n.jolt != Jolt::Off),
    };
    for place in &n.places {
        let at = (sheet.middle.0 + place.x * 1e3 * PER_MM, sheet.middle.1);
        marks.group(Placed::at(at.0, at.1), "p-bolt", bolt(n));
    }
    marks.all(lever(n, &sheet, look));
    marks.group(Placed::default(), "p-load", load(n, &sheet, scale, look));
    marks.circle(sheet.load, 13.0, "grip");
    marks.group(
        Placed::default(),
        "p-bolt",
        on_bolts(n, &sheet, scale, look),
    );
    let words = happens(n);
    let (x, anchor) = if n.kind == Kind::Hanger {
        (8.0, Anchor::Start)
    } else {
        (DRAWING_WIDTH - 8.0, Anchor::End)
    };
    marks.text((x, 20.0), words, "t halo", anchor);
    marks.all(taken_apart(n, &sheet, scale, look));
    let strip = vec![
        StripField::new("from the side", format!("{}, made up", thing(n.kind))),
        StripField::scale(scale),
    ];
    let scene = with_strip(look, HEIGHT, marks, strip);
    let step = PER_MM * look.one(Dimension::Length) * 1e3;
    let along = if n.kind == Kind::Hanger {
        (0.0, step)
    } else {
        (step, 0.0)
    };
    let handle = Handle {
        control: DISTANCE,
        at: sheet.load,
        along,
    };
    (scene, handle)
}

/// Head and washer of the bolt, seen along it.
fn bolt(n: &Numbers) -> Vec<Mark> {
    // It is in the table; without it there would be no joint either.
    let flats = thread(n.stock.bolt).map_or(0.0, |t| t.width_across_flats().si() * 1e3);
    let washer = flats * 1.3 / 2.0 * PER_MM;
    let mut marks = vec![Mark::circle((0.0, 0.0), washer, "thin part")];
    // So small a head keeps its corners only without the circle of its chamfer.
    marks.extend(hex_plan(flats * PER_MM).into_iter().take(1));
    marks.all(centre_cross((0.0, 0.0), washer + 4.0));
    marks
}

/// The distance from the middle of the bolts to the load.
fn lever(n: &Numbers, sheet: &Sheet, look: &Look<'_>) -> Vec<Mark> {
    let text = look.units.stock(n.distance_mm);
    let (middle, load) = (sheet.middle, sheet.load);
    if n.kind == Kind::Hanger {
        let dimension = DimensionLine {
            from: (170.0, middle.1),
            to: (load.0 + LUG, load.1),
            line: 184.0,
            text,
        };
        return dimension.upright();
    }
    let dimension = DimensionLine {
        from: (middle.0, middle.1 + sheet.tube + 4.0),
        to: (load.0, load.1 + sheet.tube + 14.0),
        line: middle.1 + 72.0,
        text,
    };
    dimension.level()
}

/// Arrow and number of each part of the load.
fn load(n: &Numbers, sheet: &Sheet, scale: ForceScale, look: &Look<'_>) -> Vec<Mark> {
    let (x, y) = sheet.load;
    let mut marks = Vec::new();
    if !n.loaded() {
        return marks;
    }
    let class = "t load halo";
    if n.kind == Kind::Chain {
        // Under the chain, along it.
        let size = n.along.hypot(n.up);
        let (ux, uy) = (n.along / size, -n.up / size);
        let from = (x + 8.0 * ux - 15.0 * uy, y + 8.0 * uy + 15.0 * ux);
        let length = scale.length(size);
        let tip = (from.0 + length * ux, from.1 + length * uy);
        marks.all(force_arrow(from, tip, "load"));
        let text = look.units.force(size);
        let left = (x + 24.0).min(DRAWING_WIDTH - 2.0 - text_width(&text, class));
        marks.text((left, y + 25.0), text, class, Anchor::Start);
        return marks;
    }
    let up = scale.length(n.up);
    let along = scale.length(n.along);
    let (under, beside) = if n.kind == Kind::Hanger {
        (LUG + 3.0, LUG + 3.0)
    } else {
        (sheet.ball + 3.0, sheet.socket + 3.0)
    };
    marks.all(force_arrow((x, y + under + up), (x, y + under), "load"));
    let low = if n.kind == Kind::Hanger { 50.0 } else { 44.0 };
    let text = look.units.force(n.up);
    let base = y + (under + up + 2.0).max(low);
    // On the other side of the arrow where the sheet ends.
    if x + 16.0 + text_width(&text, class) > DRAWING_WIDTH {
        marks.text((x - 9.0, base), text, class, Anchor::End);
    } else {
        marks.text((x + 9.0, base), text, class, Anchor::Start);
    }
    if along < 0.5 {
        return marks;
    }
    let text = look.units.force(n.along.abs());
    if n.kind == Kind::Hanger {
        let tip = (x - beside - along, y);
        marks.all(force_arrow((x - beside, y), tip, "load"));
        marks.text((tip.0 - 5.0, y + 4.6), text, class, Anchor::End);
    } else {
        let tip = (x + beside, y);
        marks.all(force_arrow((tip.0 + along, y), tip, "load"));
        let half = text_width(&text, class) / 2.0;
        let over = (tip.0 + along / 2.0).min(DRAWING_WIDTH - half - 2.0);
        let at = (over, y - sheet.socket - 8.0);
        marks.text(at, text, class, Anchor::Middle);
    }
    marks
}

/// An arrow from a bolt.
fn arrow(from: (f64, f64), share: &Share, scale: ForceScale) -> ((f64, f64), Vec<Mark>) {
    let newtons = share.in_plane().max(1e-9);
    let length = scale.length(newtons);
    let tip = (
        from.0 + share.along / newtons * length,
        from.1 - share.across / newtons * length,
    );
    (tip, force_arrow(from, tip, "clamp"))
}

/// What each bolt gets, the two outer ones lettered clear of the tube.
fn on_bolts(n: &Numbers, sheet: &Sheet, scale: ForceScale, look: &Look<'_>) -> Vec<Mark> {
    let mut marks = Vec::new();
    let mut letters = Vec::new();
    let (mid, y) = sheet.middle;
    for (i, (place, share)) in n.places.iter().zip(&n.all).enumerate() {
        let (tip, drawn) = arrow((mid + place.x * 1e3 * PER_MM, y), share, scale);
        marks.all(drawn);
        let inner = i > 0 && i + 1 < n.places.len();
        if inner || share.in_plane() < 1.0 {
            continue;
        }
        let text = look.units.force(share.in_plane());
        let half = text_width(&text, "t") / 2.0;
        let at = if n.kind == Kind::Hanger {
            // Both above, because the hanger is below.
            let outwards = 12.0 * place.x.signum();
            (tip.0 + outwards, (tip.1 - 7.0).min(y - sheet.tube - 8.0))
        } else if share.across >= 0.0 {
            (
                tip.0.max(half + 4.0),
                (tip.1 - 7.0).min(y - sheet.tube - 8.0),
            )
        } else {
            // Left of the line from which the distance is measured.
            let right = if tip.0 < mid { mid - 4.0 - half } else { tip.0 };
            let below = (tip.1 + 16.0).max(y + sheet.tube + 17.0);
            (tip.0.min(right).max(half + 4.0), below)
        };
        letters.text(at, text, "t clamp halo", Anchor::Middle);
    }
    marks.all(letters);
    marks
}

/// The load shared alike, and the twist as a pair.
fn taken_apart(n: &Numbers, sheet: &Sheet, scale: ForceScale, look: &Look<'_>) -> Vec<Mark> {
    let [alike, pair] = sheet.apart;
    let beside = n.kind == Kind::Hanger;
    let mut marks = Vec::new();
    let (plus, title) = if beside {
        marks.line((194.0, 0.0), (194.0, 362.0), "hair");
        ((alike.0, 166.0), (202.0, 20.0))
    } else {
        marks.line((0.0, 199.0), (DRAWING_WIDTH, 199.0), "hair");
        (
            (f64::midpoint(alike.0, pair.0), alike.1 + 6.0),
            (8.0, 216.0),
        )
    };
    let named = |text: &str| Mark::text(title, text, "t s soft", Anchor::Start);
    if !n.loaded() {
        // Nothing to take apart: what is there is the squeeze.
        let (at, half) = if beside {
            ((238.0, 190.0), 34.0)
        } else {
            ((150.0, 281.0), 62.0)
        };
        marks.push(named("one bolt, cut"));
        marks.extend(cut(n, at, half).unwrap_or_default());
        return marks;
    }
    marks.push(named("made up of"));
    marks.text(plus, "+", "t", Anchor::Middle);
    let force = |newtons: f64| look.units.force(newtons);
    let share = largest(&n.alike);
    let each = largest(&n.pair);
    let words = [
        (
            alike,
            String::from("the load, split evenly:"),
            format!("{} each", force(share)),
        ),
        (
            pair,
            String::from("the twist, as a pair:"),
            if each < 1.0 {
                String::from("no twist")
            } else {
                format!("{} each way", force(each))
            },
        ),
    ];
    let drop = if beside { 44.0 } else { 75.0 };
    for (i, (at, what, how_much)) in words.into_iter().enumerate() {
        let low = at.1 + if i == 0 || !beside { drop } else { 62.0 };
        marks.text((at.0, low), what, "t s halo", Anchor::Middle);
        marks.text((at.0, low + 15.0), how_much, "t clamp halo", Anchor::Middle);
    }
    for (at, shares) in [(alike, &n.alike), (pair, &n.pair)] {
        marks.all(row(n, at, shares, scale));
    }
    marks.all(turning(pair, n.twist));
    marks
}

/// The bolts alone, with their arrows.
fn row(n: &Numbers, (x, y): (f64, f64), shares: &[Share], scale: ForceScale) -> Vec<Mark> {
    let reach = n.kind.spacing_mm(n.stock) / 2.0 * PER_MM + 12.0;
    let mut marks = vec![Mark::line((x - reach, y), (x + reach, y), "centre")];
    let mut arrows = Vec::new();
    for (place, share) in n.places.iter().zip(shares) {
        let at = (x + place.x * 1e3 * PER_MM, y);
        marks.circle(at, 3.2, "turned part");
        arrows.all(arrow(at, share, scale).1);
    }
    marks.group(Placed::default(), "p-bolt", arrows);
    marks
}

/// Which way the load twists: an arrow round the middle of the bolts.
fn turning((x, y): (f64, f64), twist: f64) -> Vec<Mark> {
    if twist.abs() < 0.1 {
        return Vec::new();
    }
    let r = 13.0;
    // Front up is against the clock.
    let way = -twist.signum();
    let d = Pen::at(x - way * 0.5 * r, y + 0.87 * r)
        .arc(r, way > 0.0, x - way * 0.5 * r, y - 0.87 * r)
        .arc(r, way > 0.0, x + way * r, y)
        .d();
    vec![
        Mark::path(d, "turned"),
        arrow_tip((x + way * r, y + 4.0), (0.0, 1.0), 9.0, "tip"),
    ]
}

const fn thing(kind: Kind) -> &'static str {
    match kind {
        Kind::Hanger => "spring hanger",
        Kind::Chain => "chain bracket",
        _ => "coupler",
    }
}

/// What happens, on the drawing.
const fn happens(n: &Numbers) -> &'static str {
    match (n.kind, n.jolt) {
        (Kind::Chain, Jolt::Worst) => "the coupler is off",
        (Kind::Chain, _) => "the chain hangs slack",
        (_, Jolt::Off) => "lifted clear",
        (_, Jolt::Still) => "standing still",
        (_, Jolt::Bump) => "over a bump",
        (_, Jolt::Worst) => "braking over a bump",
    }
}

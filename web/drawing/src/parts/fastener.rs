//! Bolt heads, nuts, washers, threads and the wrench, from their real dimensions.
//!
//! Hexagons: across corners = across flats / cos 30°. Threads as in ISO 6410-1: crests thick, roots
//! thin, three quarters of a thin circle in the end view.

use crate::pen::{Pen, polyline};
use crate::scene::{Anchor, CutMetal, Draw, Hatch, Lean, Mark};

/// Across corners of a hexagon 1 wide across flats.
const CORNERS: f64 = 1.154_700_538;
/// How far a 30° chamfer reaches down at the corners of a hexagon 1 wide across flats.
const CHAMFER: f64 = (CORNERS / 2.0 - 0.5) * 0.577_350_269;
/// Root diameter of a thread as drawn, as a share of the outside diameter.
const ROOT: f64 = 0.84;

/// Hexagon seen across its corners, standing on `base`; `up` is -1 when it grows upwards on the sheet.
/// `both` chamfers the bearing side too, as nuts have it.
fn hexagon(x: f64, base: f64, flats: f64, height: f64, up: f64, both: bool) -> Vec<Mark> {
    let half = flats * CORNERS / 2.0;
    let c = (CHAMFER * flats).min(height / 3.0);
    let top = base + up * height;
    let inner = top - up * c;
    let (f, foot) = (flats / 2.0, if both { base + up * c } else { base });
    let outline = Pen::at(x - if both { f } else { half }, base)
        .to(x - half, foot)
        .to(x - half, inner)
        .to(x - f, top)
        .to(x + f, top)
        .to(x + half, inner)
        .to(x + half, foot)
        .to(x + if both { f } else { half }, base)
        .close()
        .d();
    let curves = |edge: f64, way: f64| {
        let low = edge - way * c;
        let high = edge + way * c;
        Pen::at(x - half, low)
            .bow((x - 0.75 * half, high), (x - 0.5 * half, low))
            .bow((x, high), (x + 0.5 * half, low))
            .bow((x + 0.75 * half, high), (x + half, low))
            .d()
    };
    let mut marks = vec![
        Mark::path(outline, "edge part"),
        Mark::line((x - half / 2.0, foot), (x - half / 2.0, inner), "thin"),
        Mark::line((x + half / 2.0, foot), (x + half / 2.0, inner), "thin"),
        Mark::path(curves(top, up), "thin none"),
    ];
    if both {
        marks.path(curves(base, -up), "thin none");
    }
    marks
}

/// A bolt head on its bearing face at height `base`, growing downwards on the sheet (or upwards).
#[must_use]
pub fn bolt_head(x: f64, base: f64, flats: f64, height: f64, upwards: bool) -> Vec<Mark> {
    hexagon(
        x,
        base,
        flats,
        height,
        if upwards { -1.0 } else { 1.0 },
        false,
    )
}

/// A nut on its bearing face at height `base`.
#[must_use]
pub fn nut(x: f64, base: f64, flats: f64, height: f64, upwards: bool) -> Vec<Mark> {
    hexagon(
        x,
        base,
        flats,
        height,
        if upwards { -1.0 } else { 1.0 },
        true,
    )
}

/// The bolt's body from the head at `foot` up to its point at `end`, threaded from the point over
/// `thread`.
#[must_use]
pub fn threaded_shank(x: f64, d: f64, foot: f64, end: f64, thread: f64) -> Vec<Mark> {
    let (r, root) = (d / 2.0, d * ROOT / 2.0);
    let chamfer = r - root;
    let runs_to = (end + thread).min(foot);
    let body = Pen::at(x - r, foot)
        .to(x - r, end + chamfer)
        .to(x - root, end)
        .to(x + root, end)
        .to(x + r, end + chamfer)
        .to(x + r, foot)
        .close()
        .d();
    let mut marks = vec![
        Mark::path(body, "edge part"),
        Mark::line((x - r, end + chamfer), (x + r, end + chamfer), "thin"),
        Mark::line((x - root, end + chamfer), (x - root, runs_to), "thin"),
        Mark::line((x + root, end + chamfer), (x + root, runs_to), "thin"),
    ];
    if runs_to < foot - 1.0 {
        marks.line((x - r, runs_to), (x + r, runs_to), "edge");
    }
    marks
}

/// A washer cut through its hole, lying between heights `top` and `bottom`.
#[must_use]
pub fn washer_cut(x: f64, outer: f64, hole: f64, top: f64, bottom: f64, lean: Lean) -> Vec<Mark> {
    let hatch = Some(Hatch::new(CutMetal::Steel, lean));
    [-1.0, 1.0]
        .into_iter()
        .map(|side| {
            Mark::rect(
                (x + side * hole / 2.0, top),
                (x + side * outer / 2.0, bottom),
                "edge",
                hatch,
            )
        })
        .collect()
}

/// Corners of a hexagon about the origin; the first points right.
fn corners(flats: f64) -> impl Iterator<Item = (f64, f64)> {
    let r = flats * CORNERS / 2.0;
    (0..6_u8).map(move |i| {
        let (sin, cos) = (f64::from(i) * 60.0).to_radians().sin_cos();
        (r * cos, r * sin)
    })
}

/// A hexagon from above about the origin, with its chamfer circle.
#[must_use]
pub fn hex_plan(flats: f64) -> Vec<Mark> {
    let outline = polyline(corners(flats)) + "Z";
    vec![
        Mark::path(outline, "edge part"),
        Mark::circle((0.0, 0.0), flats * 0.475, "thin none"),
    ]
}

/// Strength marks on a bolt head.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HeadMarks {
    /// Evenly spread radial lines.
    Lines(u8),
    /// Raised figures.
    Figures(&'static str),
}

impl HeadMarks {
    /// The marks on a head `flats` wide about the origin.
    #[must_use]
    pub fn marks(self, flats: f64) -> Vec<Mark> {
        match self {
            Self::Lines(n) => (0..n)
                .map(|i| {
                    let turn = 360.0 * f64::from(i) / f64::from(n) - 90.0;
                    let (sin, cos) = turn.to_radians().sin_cos();
                    let at = |share: f64| (flats * share * cos, flats * share * sin);
                    Mark::line(at(0.2), at(0.4), "stamp")
                })
                .collect(),
            Self::Figures(text) => vec![Mark::text((0.0, 4.6), text, "t stamped", Anchor::Middle)],
        }
    }
}

/// End view of an outside thread about the origin: thick circle, three quarters of a thin one.
#[must_use]
pub fn thread_end_view(d: f64) -> Vec<Mark> {
    let root = d * ROOT / 2.0;
    let quarters = Pen::at(0.0, -root)
        .arc(root, false, -root, 0.0)
        .arc(root, false, 0.0, root)
        .arc(root, false, root, 0.0);
    vec![
        Mark::circle((0.0, 0.0), d / 2.0, "edge part"),
        Mark::path(quarters.d(), "thin none"),
    ]
}

/// A ring wrench from above about the origin, handle upwards to `reach`, broken off there.
#[must_use]
pub fn wrench(flats: f64, reach: f64) -> Vec<Mark> {
    let ring = flats * 0.82;
    let half = flats * 0.27;
    let neck = -(ring * ring - half * half).max(0.0).sqrt();
    let tip = -reach.max(ring + 6.0);
    let w = half / 2.0;
    let outline = Pen::at(half, neck)
        .to(half, tip)
        .curve((w, tip - 4.0), (w * 0.6, tip + 1.0), (0.0, tip))
        .curve((-w * 0.6, tip - 1.0), (-w, tip + 4.0), (-half, tip))
        .to(-half, neck)
        // Two arcs, because one arc of more than half a circle needs the large-arc flag.
        .arc(ring, false, 0.0, ring)
        .arc(ring, false, half, neck)
        .close()
        .d();
    let mut marks = vec![Mark::path(outline, "edge tool")];
    marks.all(hex_plan(flats));
    marks
}

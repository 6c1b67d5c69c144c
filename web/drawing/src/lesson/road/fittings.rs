//! What is bolted on, seen from the side: coupler, spring hanger, chain bracket. Of no make; the bolts, the
//! tube and the distance to the load are in true proportion.

use super::picture::{PER_MM, Sheet};
use crate::parts::{break_line, centre_cross};
use crate::pen::{Pen, polyline};
use crate::scene::{Draw, Mark, Placed};

/// Half the depth of the cheek that lies on it.
const CHEEK: f64 = 24.0;
/// Radius of a lug round an eye, and of the pin in it.
pub(super) const LUG: f64 = 14.0;
const PIN: f64 = 6.0;
/// Where the tube is broken off.
const LEFT: f64 = 10.0;

/// Tube from its break to its end or its other break.
fn tube(sheet: &Sheet, right: f64, goes_on: bool) -> Vec<Mark> {
    let y = sheet.middle.1;
    let (top, bottom) = (y - sheet.tube, y + sheet.tube);
    let mut outline = Pen::at(LEFT, top).to(right, top);
    outline = if goes_on {
        outline.go(right, bottom)
    } else {
        outline.to(right, bottom)
    };
    let mut marks = vec![
        Mark::path(outline.to(LEFT, bottom).d(), "edge none"),
        break_line((LEFT, top), bottom - top),
        Mark::line((LEFT - 6.0, y), (right + 6.0, y), "centre"),
    ];
    if goes_on {
        marks.push(break_line((right, top), bottom - top));
    }
    marks
}

/// From the middle of the bolts to the edge of the fitting.
fn edge(sheet: &Sheet) -> f64 {
    sheet.half_row_mm * PER_MM + sheet.edge
}

/// Coupler over the end of the tongue; the ball is in it while it is hitched.
pub(super) fn coupler(sheet: &Sheet, hitched: bool) -> Vec<Mark> {
    let ((x, y), (ball, _)) = (sheet.middle, sheet.load);
    let end = x + sheet.half_row_mm * PER_MM + sheet.end;
    let (socket, radius) = (sheet.socket, sheet.ball);
    let (rear, top, bottom) = (x - edge(sheet), y - CHEEK, y + CHEEK);
    let lip = y + 11.0;
    // The neck from the tube's end to the socket, which may be short.
    let (begins, ends) = (end + 0.4 * (ball - socket - end), ball - socket);
    let outline = Pen::at(rear, top + 7.0)
        .bow((rear, top), (rear + 7.0, top))
        .to(end, top)
        .curve((begins, top), (ends, y - socket), (ball, y - socket))
        .arc(socket, true, ball + socket, y)
        .to(ball + socket, lip)
        .to(ball - socket, lip)
        .curve(
            (f64::midpoint(begins, ends), lip),
            (begins, bottom),
            (end, bottom),
        )
        .to(rear + 7.0, bottom)
        .bow((rear, bottom), (rear, bottom - 7.0))
        .close()
        .d();
    // The lever of the latch, closed.
    let latch = Pen::at(ball - 22.0, y - socket + 2.5)
        .to(ball - 27.0, y - socket - 5.0)
        .to(ball + 7.0, y - socket - 5.0)
        .to(ball + 7.0, y - socket)
        .d();
    let mut marks = tube(sheet, end, false);
    if hitched {
        marks.circle((ball, y), radius, "edge part");
    }
    marks.path(latch, "edge part");
    marks.path(outline, "edge glass");
    marks.line((end, top), (end, bottom), "hidden");
    if hitched {
        marks.all(centre_cross((ball, y), radius + 4.0));
    } else {
        marks.circle((ball, y), radius, "hidden none");
        marks.all(centre_cross((ball, y), radius + 4.0));
    }
    marks
}

/// Lug with an eye and a pin in it.
fn eye((x, y): (f64, f64)) -> Vec<Mark> {
    let mut marks = vec![
        Mark::circle((x, y), PIN + 3.0, "edge part"),
        Mark::circle((x, y), PIN, "edge part"),
    ];
    marks.all(centre_cross((x, y), LUG + 4.0));
    marks
}

/// Hanger on the sides of a rail, the spring's rear eye below it.
pub(super) fn hanger(sheet: &Sheet) -> Vec<Mark> {
    let ((x, y), at) = (sheet.middle, sheet.load);
    let wide = edge(sheet);
    let (top, bottom) = (y - CHEEK, y + CHEEK);
    let outline = Pen::at(x - wide, top)
        .to(x + wide, top)
        .to(x + wide, bottom)
        .to(at.0 + LUG, at.1)
        .arc(LUG, true, at.0 - LUG, at.1)
        .to(x - wide, bottom)
        .close()
        .d();
    // Main leaf from the eye forwards and down, as thick as two leaves.
    let end = 168.0;
    let leaf = |lower: f64| {
        (
            (at.0 + 3.0, at.1 - 9.0 + lower),
            (at.0 + 34.0, at.1 - 6.0 + lower),
            (end, at.1 + 14.0 + lower),
        )
    };
    let (upper, under) = (leaf(0.0), leaf(7.0));
    let spring = Pen::at(upper.0.0, upper.0.1)
        .bow(upper.1, upper.2)
        .to(under.2.0, under.2.1)
        .bow(under.1, under.0)
        .d();
    let mut marks = tube(sheet, 170.0, true);
    marks.path(spring, "edge part");
    marks.path(outline, "edge glass");
    marks.all(eye(at));
    marks
}

/// Bracket on the side of the tongue, with the chain slack or pulling.
pub(super) fn chain(sheet: &Sheet, pull: Option<(f64, f64)>) -> Vec<Mark> {
    let ((x, y), at) = (sheet.middle, sheet.load);
    let wide = edge(sheet);
    let (top, bottom) = (y - CHEEK, y + CHEEK);
    let outline = Pen::at(x - wide, top)
        .to(x + wide, top)
        .to(at.0, at.1 - LUG)
        .arc(LUG, true, at.0, at.1 + LUG)
        .to(x + wide, bottom)
        .to(x - wide, bottom)
        .close()
        .d();
    let mut marks = tube(sheet, 330.0, true);
    marks.path(outline, "edge glass");
    marks.all(eye(at));
    marks.all(links(at, pull));
    marks
}

/// Length of a link along the chain, and its width.
const LINK: f64 = 13.0;
const LINK_WIDE: f64 = 9.0;

/// Links from the eye to the edge of the sheet: hanging, or along the pull.
fn links(eye: (f64, f64), pull: Option<(f64, f64)>) -> Vec<Mark> {
    let right = 328.0;
    let path = |s: f64| -> (f64, f64) {
        let x = eye.0 + s * (right - eye.0);
        let y = pull.map_or_else(
            // Hanging freely from the eye to somewhere on the vehicle.
            || eye.1 + 30.0 * s + 120.0 * s * (1.0 - s),
            |(along, up)| eye.1 - (x - eye.0) * up / along,
        );
        (x, y)
    };
    let mut marks = Vec::new();
    let (mut s, mut from, mut flat) = (0.0, eye, true);
    while s < 1.0 && marks.len() < 40 {
        s += 0.004;
        let to = path(s);
        let (dx, dy) = (to.0 - from.0, to.1 - from.1);
        if dx.hypot(dy) < LINK {
            continue;
        }
        let middle = (f64::midpoint(from.0, to.0), f64::midpoint(from.1, to.1));
        let half = LINK / 2.0 + 2.5;
        let link = if flat {
            let (w, r) = (half, LINK_WIDE / 2.0);
            Mark::path(
                Pen::at(-w + r, -r)
                    .to(w - r, -r)
                    .arc(r, true, w - r, r)
                    .to(-w + r, r)
                    .arc(r, true, -w + r, -r)
                    .close()
                    .d(),
                "turned",
            )
        } else {
            Mark::path(polyline([(-half, 0.0), (half, 0.0)]), "stamp")
        };
        marks.group(
            Placed {
                x: middle.0,
                y: middle.1,
                degrees: dy.atan2(dx).to_degrees(),
            },
            "",
            vec![link],
        );
        (from, flat) = (to, !flat);
    }
    marks
}

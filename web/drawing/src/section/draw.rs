//! Draws the section.

use super::layout::{Sheet, stand_out};
use super::plan::{plan, turned};
use super::shape::{Sag, drawn};
use super::state::{SectionState, Support};
use crate::parts::{
    DimensionLine, bolt_head, force_arrow, leader, nut, scale_bar, short_across, threaded_shank,
    washer_cut,
};
use crate::pen::Pen;
use crate::scene::{Anchor, Draw, Hatch, Lean, Mark, Placed, Scene, text_width};
use crate::units::Lettering;

/// The opening figure.
#[must_use]
pub fn section(state: &SectionState) -> Scene {
    let sheet = Sheet::new(state);
    let drawing = Drawing {
        state,
        sheet: &sheet,
    };
    let mut marks = drawing.parts();
    marks.all(drawing.forces());
    marks.all(drawing.sizes());
    if state.labels {
        marks.all(drawing.names());
    }
    marks.all(plan(state, &sheet));
    if state.strip {
        marks.all(sheet.strip.marks(sheet.width, sheet.strip_top));
    } else {
        marks.all(scale_bar(
            sheet.width - 8.0,
            sheet.strip_top - 8.0,
            sheet.force,
        ));
    }
    Scene {
        id: state.id.clone(),
        width: sheet.width,
        height: sheet.height,
        title: String::from("Tube in section through the bolt"),
        description: describe(state),
        marks,
    }
}

fn describe(state: &SectionState) -> String {
    let units = state.units;
    let tube = &state.tube;
    let inside = match state.support {
        Support::Bare => "nothing in it",
        Support::Spreader(_) => "spreader plates on its faces",
        Support::LooseSleeve { .. } => "a loose sleeve around the bolt",
        Support::ThroughSleeve { .. } => "a sleeve through both faces",
        Support::SolidInsert { .. } => "a solid insert",
        Support::Solid => "solid",
    };
    let dent = if state.dent_each_mm > 0.005 {
        format!(
            "each face is bent in by {}",
            units.length(state.dent_each_mm)
        )
    } else {
        String::from("the faces are flat")
    };
    format!(
        "Tube {} wide and {} deep along the bolt, wall {}, {inside}. Nut turned {}: clamp load {}, {dent}.",
        units.length(tube.width_mm),
        units.length(tube.depth_mm),
        units.length(tube.wall_mm),
        turned(state.turn_deg),
        units.force(state.clamp_n),
    )
}

struct Drawing<'a> {
    state: &'a SectionState,
    sheet: &'a Sheet,
}

impl Drawing<'_> {
    fn x(&self, mm: f64) -> f64 {
        self.sheet.axis + mm * self.sheet.scale
    }

    fn y(&self, mm: f64) -> f64 {
        self.sheet.face + mm * self.sheet.scale
    }

    /// Half of the tube's width, its depth, wall, radii outside and inside, in mm.
    fn tube(&self) -> (f64, f64, f64, f64, f64) {
        let t = &self.state.tube;
        let (half, depth) = (t.width_mm / 2.0, t.depth_mm);
        let wall = t.wall_mm.min(0.45 * half.min(depth / 2.0) * 2.0);
        let outer = t.corner_radius_mm.clamp(0.0, 0.8 * half.min(depth / 2.0));
        (half, depth, wall, outer, (outer - wall).max(0.0))
    }

    /// Half of the hole in the faces.
    fn hole(&self) -> f64 {
        let hole = match self.state.support {
            Support::ThroughSleeve { outer_mm, .. } => outer_mm,
            _ => self.state.bolt.hole_mm,
        };
        (hole / 2.0).max(self.state.bolt.diameter_mm / 2.0)
    }

    /// Sag of the outside of a face.
    fn sag(&self) -> Sag {
        let (half, _, _, outer, _) = self.tube();
        Sag::new(
            (self.state.washer.outer_mm / 2.0).max(self.hole()),
            half - outer,
            self.sheet.dent,
        )
    }

    fn parts(&self) -> Vec<Mark> {
        let (state, sheet) = (self.state, self.sheet);
        let bolt = &state.bolt;
        let hole = bolt.hole_mm.max(bolt.diameter_mm) * sheet.scale;
        let here = Placed::default();
        let mut marks = vec![Mark::group(here, "p-face", self.tube_marks())];
        marks.group(here, "p-plate", self.support_marks());
        for nut_side in [true, false] {
            marks.all(self.ply_marks(nut_side));
        }
        let (upper, lower) = self.washer_planes();
        let thick = state.washer.thickness_mm * sheet.scale;
        let outer = state.washer.outer_mm * sheet.scale;
        marks.all(washer_cut(
            sheet.axis,
            outer,
            hole,
            upper - thick,
            upper,
            Lean::Left,
        ));
        marks.all(washer_cut(
            sheet.axis,
            outer,
            hole,
            lower,
            lower + thick,
            Lean::Left,
        ));
        let head = lower + thick;
        let end = head - self.bolt_length() * sheet.scale;
        let mut shank = threaded_shank(
            sheet.axis,
            bolt.diameter_mm * sheet.scale,
            head,
            end,
            bolt.thread_mm * sheet.scale,
        );
        shank.all(bolt_head(
            sheet.axis,
            head,
            bolt.flats_mm * sheet.scale,
            bolt.head_mm * sheet.scale,
            false,
        ));
        shank.all(nut(
            sheet.axis,
            upper - thick,
            bolt.flats_mm * sheet.scale,
            bolt.nut_mm * sheet.scale,
            true,
        ));
        marks.group(here, "p-bolt", shank);
        marks.line(
            (sheet.axis, end - 7.0),
            (sheet.axis, head + bolt.head_mm * sheet.scale + 7.0),
            "centre",
        );
        marks
    }

    /// Heights of the nut washer's and the head washer's bearing planes.
    fn washer_planes(&self) -> (f64, f64) {
        let dent = self.sheet.dent;
        (
            self.y(dent - self.state.plies_mm(true)),
            self.y(self.state.tube.depth_mm - dent + self.state.plies_mm(false)),
        )
    }

    /// Length under the head: it does not change, so a dented tube shows more thread beyond the nut.
    fn bolt_length(&self) -> f64 {
        let s = self.state;
        s.plies_mm(true)
            + s.plies_mm(false)
            + s.tube.depth_mm
            + 2.0 * s.washer.thickness_mm
            + s.bolt.nut_mm
            + stand_out(s)
    }

    fn tube_marks(&self) -> Vec<Mark> {
        let hatch = Hatch::new(self.state.tube.material, Lean::Right);
        let (half, depth, ..) = self.tube();
        if self.state.support == Support::Solid {
            return [-1.0, 1.0]
                .into_iter()
                .map(|side| {
                    let (near, far) = (self.x(side * self.hole()), self.x(side * half));
                    Mark::rect(
                        (near, self.y(0.0)),
                        (far, self.y(depth)),
                        "edge",
                        Some(hatch),
                    )
                })
                .collect();
        }
        let mut marks = Vec::new();
        if self.sheet.dent * self.sheet.scale > 1.0 {
            // Where the faces were: ISO 128 draws another position with a double-dotted chain line.
            for level in [0.0, depth] {
                marks.line(
                    (self.x(-half * 0.82), self.y(level)),
                    (self.x(half * 0.82), self.y(level)),
                    "phantom",
                );
            }
        }
        marks.extend([-1.0, 1.0].map(|side| Mark::cut(self.half_tube(side), hatch)));
        marks
    }

    /// Outline of the cut half on one side: from the hole round the corner and back inside.
    fn half_tube(&self, side: f64) -> String {
        let (half, depth, wall, outer, inner) = self.tube();
        let (hole, sag, s) = (self.hole(), self.sag(), self.sheet.scale);
        let dent = self.sheet.dent;
        // The side walls give a little outwards; how much is not computed, so it stays a hint.
        let bulge = 0.1 * dent;
        let turn = side > 0.0;
        let to = |x: f64, y: f64| (self.x(side * x), self.y(y));
        let inside = half - wall;
        let wall_line = |pen: Pen, x: f64, from: f64, until: f64| {
            let (quarter, middle) = ((until - from) / 4.0, f64::midpoint(from, until));
            pen.curve(
                to(x, from + quarter),
                to(x + bulge, middle - quarter),
                to(x + bulge, middle),
            )
            .curve(
                to(x + bulge, middle + quarter),
                to(x, until - quarter),
                to(x, until),
            )
        };
        let arc = |pen: Pen, r: f64, clockwise: bool, x: f64, y: f64| {
            let (x, y) = to(x, y);
            if r > 0.0 {
                pen.arc(r * s, clockwise == turn, x, y)
            } else {
                pen.to(x, y)
            }
        };
        let start = to(hole, dent);
        let mut pen = sag.trace(Pen::at(start.0, start.1), half - outer, true, |x, y| {
            to(x, y)
        });
        pen = arc(pen, outer, true, half, outer);
        pen = wall_line(pen, half, outer, depth - outer);
        pen = arc(pen, outer, true, half - outer, depth);
        pen = sag.trace(pen, half - outer, false, |x, y| to(x, depth - y));
        let (x, y) = to(hole, depth - dent);
        pen = pen.to(x, y);
        let (x, y) = to(hole, depth - wall - dent);
        pen = pen.to(x, y);
        pen = sag.trace(pen, inside - inner, true, |x, y| to(x, depth - wall - y));
        pen = arc(pen, inner, false, inside, depth - wall - inner);
        pen = wall_line(pen, inside, depth - wall - inner, wall + inner);
        pen = arc(pen, inner, false, inside - inner, wall);
        pen = sag.trace(pen, inside - inner, false, |x, y| to(x, wall + y));
        let (x, y) = to(hole, wall + dent);
        pen.to(x, y).close().d()
    }

    /// Free height between support and upper face as drawn, in mm: the shortfall less what both faces
    /// have come in.
    fn gap(&self) -> f64 {
        let short = self.state.short_mm().unwrap_or(0.0) - 2.0 * self.state.dent_each_mm;
        drawn(short, self.sheet.times, self.state.tube.depth_mm)
    }

    fn support_marks(&self) -> Vec<Mark> {
        let (half, depth, wall, ..) = self.tube();
        let dent = self.sheet.dent;
        let bore = self.state.bolt.hole_mm.max(self.state.bolt.diameter_mm) / 2.0;
        let (near, far, top, bottom, material) = match self.state.support {
            Support::Bare | Support::Spreader(_) | Support::Solid => return Vec::new(),
            Support::LooseSleeve {
                outer_mm,
                wall_mm,
                material,
                ..
            } => {
                let far = outer_mm / 2.0;
                (
                    far - wall_mm,
                    far,
                    wall + dent + self.gap(),
                    depth - wall - dent,
                    material,
                )
            }
            Support::ThroughSleeve {
                outer_mm,
                wall_mm,
                material,
            } => {
                let far = outer_mm / 2.0;
                (far - wall_mm, far, dent, depth - dent, material)
            }
            Support::SolidInsert { material, .. } => (
                bore,
                half - wall - 0.4,
                wall + dent + self.gap(),
                depth - wall - dent,
                material,
            ),
        };
        let hatch = Some(Hatch::new(material, Lean::Left));
        let mut marks: Vec<Mark> = [-1.0, 1.0]
            .into_iter()
            .map(|side| {
                let (a, b) = (self.x(side * near.max(0.0)), self.x(side * far));
                Mark::rect(
                    (a, self.y(top)),
                    (b, self.y(bottom.max(top))),
                    "edge",
                    hatch,
                )
            })
            .collect();
        // The edges of the bore behind the bolt.
        for level in [top, bottom] {
            marks.line(
                (self.x(-near), self.y(level)),
                (self.x(near), self.y(level)),
                "thin",
            );
        }
        marks
    }

    fn ply_marks(&self, nut_side: bool) -> Vec<Mark> {
        let depth = self.state.tube.depth_mm;
        let hole = self.state.bolt.hole_mm.max(self.state.bolt.diameter_mm) / 2.0;
        let sag = self.sag();
        let mut marks = Vec::new();
        let mut off = 0.0;
        for (i, (ply, _)) in self.state.plies(nut_side).into_iter().rev().enumerate() {
            let lean = if i % 2 == 0 { Lean::Left } else { Lean::Right };
            let reach = ply.width_mm / 2.0;
            for side in [-1.0, 1.0] {
                let at = |share: f64, away: f64| {
                    let x = hole + (reach - hole) * share;
                    let y = sag.at(x) - away;
                    (
                        self.x(side * x),
                        self.y(if nut_side { y } else { depth - y }),
                    )
                };
                let near = (0..=16_u8).map(|i| at(f64::from(i) / 16.0, off));
                let back = (0..=16_u8)
                    .rev()
                    .map(|i| at(f64::from(i) / 16.0, off + ply.thickness_mm));
                let d = crate::pen::polyline(near.chain(back)) + "Z";
                marks.cut(d, Hatch::new(ply.material, lean));
            }
            off += ply.thickness_mm;
        }
        marks
    }

    fn forces(&self) -> Vec<Mark> {
        let sheet = self.sheet;
        let thick = self.state.washer.thickness_mm * sheet.scale;
        let (_, lower) = self.washer_planes();
        let head = lower + thick + self.state.bolt.head_mm * sheet.scale;
        let end = lower + thick - self.bolt_length() * sheet.scale;
        let length = sheet.force.length(self.state.clamp_n);
        let mut marks = Vec::new();
        if let Some(wanted) = self.state.clamp_wanted_n {
            let (x, y) = (sheet.axis - 11.0, end - 4.0 - sheet.force.length(wanted));
            marks.line((x, y), (sheet.axis + 11.0, y), "thin");
            marks.line((sheet.axis, end - 8.0), (sheet.axis, y), "phantom");
            let text = format!("target {}", self.state.units.force(wanted));
            let x = (x - 4.0).max(text_width(&text, "t s") + 4.0);
            marks.text((x, y + 4.5), text, "t s soft", Anchor::End);
        }
        marks.all(force_arrow(
            (sheet.axis, end - 4.0 - length),
            (sheet.axis, end - 4.0),
            "clamp",
        ));
        marks.all(force_arrow(
            (sheet.axis, head + 4.0 + length),
            (sheet.axis, head + 4.0),
            "clamp",
        ));
        let text = if length < 0.5 {
            String::from("no clamp yet")
        } else {
            format!("clamp {}", self.state.units.force(self.state.clamp_n))
        };
        // Beside the tail; at the left, because the plan of the wrench stands at the right.
        let x = (sheet.axis - 11.0).max(text_width(&text, "t") + 4.0);
        marks.text((x, (end - 14.0).max(16.0)), text, "t clamp", Anchor::End);
        marks
    }

    fn sizes(&self) -> Vec<Mark> {
        let (state, sheet) = (self.state, self.sheet);
        let (half, depth, wall, ..) = self.tube();
        let solid = state.support == Support::Solid;
        let (left, right) = (self.x(-half), self.x(half));
        let mut marks = DimensionLine {
            from: (left, self.y(0.0)),
            to: (left, self.y(depth)),
            line: left - 32.0 - text_width(&state.units.size(state.tube.wall_mm), "t"),
            text: state.units.size(depth),
        }
        .upright();
        marks.all(
            DimensionLine {
                from: (left, self.y(depth)),
                to: (right, self.y(depth)),
                line: sheet.width_line,
                text: state.units.size(state.tube.width_mm),
            }
            .level(),
        );
        if !solid {
            let bulge = 0.1 * sheet.dent;
            marks.all(short_across(
                self.x(-half - bulge),
                self.x(-half + wall - bulge),
                self.y(depth * 0.5),
                &state.units.size(state.tube.wall_mm),
            ));
        }
        if sheet.dent * sheet.scale >= 1.5 {
            let line = right + 18.0;
            let (flat, bent) = (self.y(depth), self.y(depth - sheet.dent));
            // The dented plane's extension starts at the washer's edge, inside the outline, so it is
            // drawn from where the face leaves it.
            let edge = self.x(state.washer.outer_mm / 2.0);
            marks.line((edge + 2.0, bent), (line + 4.0, bent), "thin");
            marks.line(
                (right - 0.25 * (right - edge), flat),
                (line + 4.0, flat),
                "thin",
            );
            marks.all(dent_arrows(line, bent, flat));
            let x = line + 8.0;
            let middle = f64::midpoint(bent, flat);
            let text = format!("dent {}", state.units.length(state.dent_each_mm));
            marks.text((x, middle + 1.0), text, "t", Anchor::Start);
            if let Some(left) = state.dent_left_mm.filter(|d| *d > 0.005) {
                let text = format!("{} stays", state.units.length(left));
                marks.text((x, middle + 16.0), text, "t s soft", Anchor::Start);
            }
        }
        marks
    }

    fn names(&self) -> Vec<Mark> {
        let (state, sheet) = (self.state, self.sheet);
        let (half, depth, wall, ..) = self.tube();
        let right = self.x(half);
        let mut marks = Vec::new();
        let inside = match state.support {
            Support::LooseSleeve {
                outer_mm, wall_mm, ..
            } => Some(((outer_mm - wall_mm) / 2.0, "loose sleeve")),
            Support::ThroughSleeve {
                outer_mm, wall_mm, ..
            } => Some(((outer_mm - wall_mm) / 2.0, "sleeve")),
            Support::SolidInsert { .. } => Some((half * 0.5, "solid insert")),
            Support::Bare | Support::Spreader(_) | Support::Solid => None,
        };
        let room = |text: &str| right + 14.0 + text_width(text, "t s") <= sheet.width;
        let y = self.y(depth * 0.56);
        if let Some((x, text)) = inside
            && room(text)
        {
            marks.all(leader((self.x(x), y), (right + 12.0, y + 4.0), text, "t s"));
            if let Some(short) = state.short_mm().filter(|s| *s > 0.005) {
                let text = format!("short by {}", state.units.stock(short));
                marks.text((right + 12.0, y + 19.0), text, "t s soft", Anchor::Start);
            }
        } else if room("side wall") && !matches!(state.support, Support::Solid) {
            marks.all(leader(
                (self.x(half - wall / 2.0), y),
                (right + 12.0, y + 4.0),
                "side wall",
                "t s",
            ));
        }
        // The outermost ply on each side is named over or under it, left of the washer; a spreader plate
        // that lies under a fitting is named at the other end of the bolt, where both are in reach.
        let upper = state.plies(true);
        let first = upper.first().map(|(_, text)| *text);
        let lower = state
            .plies(false)
            .into_iter()
            .rev()
            .find(|(_, text)| Some(*text) != first);
        if let Some((ply, text)) = upper.first() {
            marks.all(self.ply_name(true, ply.thickness_mm, ply.width_mm, text));
        }
        if let Some((ply, text)) = lower {
            marks.all(self.ply_name(false, ply.thickness_mm, ply.width_mm, text));
        }
        marks
    }

    /// Name of a ply: of the outermost one above, of the one on the face below.
    fn ply_name(&self, nut_side: bool, thickness: f64, width: f64, text: &str) -> Vec<Mark> {
        let depth = self.state.tube.depth_mm;
        let total = self.state.plies_mm(nut_side);
        let inside = if nut_side {
            total - thickness / 2.0
        } else {
            thickness / 2.0
        };
        let washer = self.x(-self.state.washer.outer_mm / 2.0);
        let dot = (washer - 8.0).max(self.x(-width / 2.0) + 4.0);
        let right = (dot + 4.0).max(text_width(text, "t s") + 3.0);
        let (y, foot, base) = if nut_side {
            (self.y(-inside), self.y(-total) - 9.0, self.y(-total) - 12.0)
        } else {
            (
                self.y(depth + inside),
                self.y(depth + total) + 7.0,
                self.y(depth + total) + 19.0,
            )
        };
        vec![
            Mark::line((dot, y), (dot, foot), "thin"),
            Mark::circle((dot, y), 1.8, "dot"),
            Mark::text((right, base), text, "t s halo", Anchor::End),
        ]
    }
}

/// Arrows of the dent's dimension: from outside, so that they never hide how small it is.
fn dent_arrows(x: f64, bent: f64, flat: f64) -> Vec<Mark> {
    use crate::parts::arrow_tip;
    vec![
        Mark::line((x, bent - 18.0), (x, bent - 8.0), "thin"),
        arrow_tip((x, bent), (0.0, 1.0), 9.0, "tip"),
        Mark::line((x, bent), (x, flat), "thin"),
        Mark::line((x, flat + 18.0), (x, flat + 8.0), "thin"),
        arrow_tip((x, flat), (0.0, -1.0), 9.0, "tip"),
    ]
}

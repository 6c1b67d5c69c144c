//! Draws the section.

use super::{MemberState, Shape};
use crate::parts::{
    DimensionLine, Strip, StripField, bolt_head, leader, nut, threaded_shank, washer_cut,
};
use crate::pen::polyline;
use crate::scene::{Anchor, CutMetal, Draw, Hatch, Lean, Mark, Scene, text_width};
use crate::units::Lettering;
use calc_core::quantity::UnitSystem;

const WIDTH: f64 = 340.0;
/// Height of the drawing without the title strip.
const HEIGHT: f64 = 330.0;
/// Room at the left for the depth, at the right for names, above, below for two dimensions.
const ROOM: [f64; 4] = [44.0, 96.0, 26.0, 56.0];
/// Least thickness of a tapered washer or saddle as drawn, mm.
const THIN: f64 = 2.0;

/// The member in section through the bolt.
#[must_use]
pub fn member_section(state: &MemberState) -> Scene {
    let drawing = Drawing::new(state);
    let mut marks = drawing.metal();
    marks.all(drawing.fastener());
    marks.all(drawing.sizes());
    marks.all(drawing.names());
    marks.all(drawing.load());
    let strip = strip(state);
    let height = HEIGHT + strip.height(WIDTH);
    marks.all(strip.marks(WIDTH, HEIGHT));
    Scene {
        id: state.id.clone(),
        width: WIDTH,
        height,
        title: String::from("Member in section through the bolt"),
        description: describe(state),
        marks,
    }
}

fn strip(state: &MemberState) -> Strip {
    let sizes = match state.units {
        UnitSystem::Metric => "mm",
        UnitSystem::Us => "inches",
    };
    Strip {
        fields: vec![
            StripField::new("drawing", state.name.clone()),
            StripField::new("sizes", sizes),
            StripField::new("joint", if state.example { "made up" } else { "yours" }),
        ],
    }
}

/// Line of the load as far above the face as it can be drawn beside the member.
fn load_line(state: &MemberState) -> Option<f64> {
    let room = state.profile.width_mm + state.profile.depth_mm;
    state
        .offset_mm
        .filter(|offset| (0.0..=room).contains(offset))
}

fn describe(state: &MemberState) -> String {
    let beside = state.offset_mm.map_or_else(String::new, |offset| {
        let offset = state.units.length(offset);
        format!(" The load acts {offset} beside the face that the bracket lies on.")
    });
    describe_member(state) + &beside
}

fn describe_member(state: &MemberState) -> String {
    let (units, p) = (state.units, &state.profile);
    let size = |mm: f64| units.length(mm);
    match p.shape {
        Shape::Round => format!(
            "Round tube {} across, wall {}, {}.",
            size(p.width_mm),
            size(p.wall_mm),
            match state.core {
                Some((.., true)) => "a sleeve through both walls",
                Some(_) => "something solid in it",
                None => "nothing in it",
            }
        ),
        Shape::ChannelWeb => format!(
            "Channel with the bolt through its web, {} wide and {} thick.",
            size(p.width_mm),
            size(p.wall_mm)
        ),
        Shape::ChannelFlange | Shape::Angle => format!(
            "{}, {} wide and {} thick at the bolt, which is {} from the back of the upright part{}.",
            if p.shape == Shape::Angle {
                "Angle with the bolt through one leg"
            } else {
                "Channel with the bolt through a flange"
            },
            size(p.width_mm),
            size(p.wall_mm),
            size(p.gauge_mm),
            match (p.slope > 0.0, state.shaped_washer) {
                (false, _) => "",
                (true, true) => "; the inside slopes and a tapered washer evens it out",
                (true, false) => "; the inside slopes and the washer lies on an edge",
            }
        ),
    }
}

struct Drawing<'a> {
    state: &'a MemberState,
    scale: f64,
    /// Where the bolt and the outer face are on the sheet.
    origin: (f64, f64),
    /// Bearing planes of the washers under nut and head, mm below the outer face.
    upper: f64,
    lower: f64,
}

/// A number that a drawing can live with.
fn sound(value: f64, least: f64, most: f64) -> f64 {
    if value.is_finite() {
        value.clamp(least, most)
    } else {
        least
    }
}

impl<'a> Drawing<'a> {
    fn new(state: &'a MemberState) -> Self {
        let p = &state.profile;
        let fitting = state.fitting.map_or(0.0, |(t, _)| t);
        let half = state.washer.outer_mm / 2.0;
        let through = matches!(state.core, Some((.., true)));
        let saddle = p.shape == Shape::Round && state.shaped_washer && !through;
        let off = if saddle { THIN } else { 0.0 };
        let upper = -fitting - off;
        let lower = match p.shape {
            Shape::Round => p.depth_mm + off + if state.both_sides { fitting } else { 0.0 },
            _ => {
                let plate = state.plate.map_or(0.0, |(t, _)| t);
                // The thick side of the slope is what a flat washer meets first.
                let seat = p.thickness(-half.min(p.gauge_mm - p.upright_mm));
                let wedge = if p.slope > 0.0 && state.shaped_washer {
                    THIN
                } else {
                    0.0
                };
                seat + plate + wedge
            }
        };
        let over = (-upper + state.washer.thickness_mm + 1.5 * state.bolt.nut_mm)
            .max(load_line(state).unwrap_or(0.0));
        let under = (lower + state.washer.thickness_mm + state.bolt.head_mm).max(p.depth_mm);
        let (left, right) = p.edges();
        let (left, right) = (left.min(-half), right.max(half));
        let [l, r, t, b] = ROOM;
        let scale = sound(
            ((WIDTH - l - r) / (right - left)).min((HEIGHT - t - b) / (over + under)),
            1e-3,
            40.0,
        );
        let free = (WIDTH - l - r - (right - left) * scale).max(0.0) / 2.0;
        let down = (HEIGHT - t - b - (over + under) * scale).max(0.0) / 2.0;
        Self {
            state,
            scale,
            origin: (l + free - left * scale, t + down + over * scale),
            upper,
            lower,
        }
    }

    fn at(&self, x: f64, y: f64) -> (f64, f64) {
        (
            self.origin.0 + x * self.scale,
            self.origin.1 + y * self.scale,
        )
    }

    fn bore(&self) -> f64 {
        self.state.bolt.hole_mm.max(self.state.bolt.diameter_mm) / 2.0
    }

    /// Two rectangles beside the hole.
    fn ply(&self, (left, right): (f64, f64), (top, bottom): (f64, f64), hatch: Hatch) -> Vec<Mark> {
        let bore = self.bore();
        [(left, -bore), (bore, right)]
            .into_iter()
            .filter(|(a, b)| b > a)
            .map(|(a, b)| Mark::rect(self.at(a, top), self.at(b, bottom), "edge", Some(hatch)))
            .collect()
    }

    fn metal(&self) -> Vec<Mark> {
        let s = self.state;
        let p = &s.profile;
        let map = |x: f64, y: f64| self.at(x, y);
        let hatch = Hatch::new(s.material, Lean::Right);
        let through = s.core.filter(|(.., through)| *through);
        let hole = through.map_or_else(|| self.bore(), |(outer, ..)| outer / 2.0);
        let mut marks: Vec<Mark> = p
            .paths(hole, &map)
            .into_iter()
            .map(|d| Mark::cut(d, hatch))
            .collect();
        if let Some((outer, inner, material, through)) = s.core {
            marks.all(self.core(outer / 2.0, inner / 2.0, material, through));
        }
        let (left, right) = p.edges();
        if let Some((thick, material)) = s.fitting {
            let hatch = Hatch::new(material, Lean::Left);
            let top = self.upper;
            marks.all(self.ply((left, right), (top, top + thick), hatch));
            if s.both_sides {
                marks.all(self.ply((left, right), (self.lower - thick, self.lower), hatch));
            }
        }
        if let Some((thick, material)) = s.plate {
            let hatch = Hatch::new(material, Lean::Left);
            marks.all(self.ply(
                (left + p.upright_mm, right),
                (self.lower - thick, self.lower),
                hatch,
            ));
        }
        marks.all(self.shaped());
        marks
    }

    fn core(&self, outer: f64, inner: f64, material: CutMetal, through: bool) -> Vec<Mark> {
        let p = &self.state.profile;
        let hatch = Hatch::new(material, Lean::Left);
        let wall = if through { 0.0 } else { p.wall_mm };
        let (top, bottom) = (wall, p.depth_mm - wall);
        let fills = outer >= p.width_mm / 2.0 - 1.1 * p.wall_mm;
        [-1.0, 1.0]
            .into_iter()
            .map(|side| {
                if fills {
                    // A plug is as round as the tube that it fills.
                    let (r, middle) = (outer.max(inner + 0.1), p.depth_mm / 2.0);
                    let end = (1.0 - (inner / r).powi(2)).max(0.0).sqrt().atan2(inner / r);
                    let arc = (0..=24_u8).map(|i| {
                        let turn = end * (1.0 - f64::from(i) / 12.0);
                        let (sin, cos) = turn.sin_cos();
                        self.at(side * r * cos, middle - r * sin)
                    });
                    Mark::cut(polyline(arc) + "Z", hatch)
                } else {
                    Mark::rect(
                        self.at(side * inner, top),
                        self.at(side * outer, bottom),
                        "edge",
                        Some(hatch),
                    )
                }
            })
            .collect()
    }

    /// Tapered washer or saddles.
    fn shaped(&self) -> Vec<Mark> {
        let s = self.state;
        let p = &s.profile;
        let through = matches!(s.core, Some((.., true)));
        if !s.shaped_washer || through {
            return Vec::new();
        }
        let (bore, half) = (self.bore(), s.washer.outer_mm / 2.0);
        let hatch = Hatch::new(s.material, Lean::Left);
        let piece = |face: &dyn Fn(f64) -> f64, flat: f64, from: f64, to: f64| {
            let along = (0..=12_u8).map(|i| {
                let x = from + (to - from) * f64::from(i) / 12.0;
                self.at(x, face(x))
            });
            let d = polyline(along.chain([self.at(to, flat), self.at(from, flat)])) + "Z";
            Mark::cut(d, hatch)
        };
        match p.shape {
            Shape::Round => {
                let half = half.min(p.width_mm / 2.0);
                let upper = |x: f64| p.drop(x);
                let lower = |x: f64| p.depth_mm - p.drop(x);
                [(-half, -bore), (bore, half)]
                    .into_iter()
                    .flat_map(|(a, b)| {
                        [
                            piece(&upper, -THIN, a, b),
                            piece(&lower, p.depth_mm + THIN, a, b),
                        ]
                    })
                    .collect()
            }
            Shape::ChannelFlange if p.slope > 0.0 => {
                let face = |x: f64| p.thickness(x);
                let flat = self.lower - s.plate.map_or(0.0, |(t, _)| t);
                let inside = half.min(p.gauge_mm - p.upright_mm);
                [(-inside, -bore), (bore, half)]
                    .into_iter()
                    .map(|(a, b)| piece(&face, flat, a, b))
                    .collect()
            }
            _ => Vec::new(),
        }
    }

    fn fastener(&self) -> Vec<Mark> {
        let s = self.state;
        let (b, scale) = (&s.bolt, self.scale);
        let x = self.origin.0;
        let thick = s.washer.thickness_mm;
        let y = |mm: f64| self.at(0.0, mm).1;
        let washer = |top: f64| {
            washer_cut(
                x,
                s.washer.outer_mm * scale,
                2.0 * self.bore() * scale,
                y(top),
                y(top + thick),
                Lean::Left,
            )
        };
        let mut marks = washer(self.upper - thick);
        marks.all(washer(self.lower));
        let (head, end) = (
            self.lower + thick,
            self.upper - thick - b.nut_mm - 0.35 * b.diameter_mm,
        );
        marks.all(threaded_shank(
            x,
            b.diameter_mm * scale,
            y(head),
            y(end),
            b.thread_mm.min(head - end) * scale,
        ));
        marks.all(bolt_head(
            x,
            y(head),
            b.flats_mm * scale,
            b.head_mm * scale,
            false,
        ));
        marks.all(nut(
            x,
            y(self.upper - thick),
            b.flats_mm * scale,
            b.nut_mm * scale,
            true,
        ));
        marks.line((x, y(end) - 7.0), (x, y(head + b.head_mm) + 7.0), "centre");
        marks
    }

    fn sizes(&self) -> Vec<Mark> {
        let p = &self.state.profile;
        let units = self.state.units;
        let (left, right) = p.edges();
        let foot = self
            .at(0.0, p.depth_mm)
            .1
            .max(self.at(0.0, self.head_end()).1 - 16.0);
        let bottom = foot.min(HEIGHT - 48.0);
        let mut marks = DimensionLine {
            from: self.at(left, p.depth_mm),
            to: self.at(
                right,
                if p.shape == Shape::Angle {
                    p.wall_mm
                } else {
                    p.depth_mm
                },
            ),
            line: bottom + 40.0,
            text: units.size(p.width_mm),
        }
        .level();
        if p.shape != Shape::Round {
            marks.all(
                DimensionLine {
                    from: self.at(left, 0.0),
                    to: self.at(left, p.depth_mm),
                    line: self.at(left, 0.0).0 - 20.0,
                    text: units.size(p.depth_mm),
                }
                .upright(),
            );
        }
        if matches!(p.shape, Shape::ChannelFlange | Shape::Angle) {
            marks.all(
                DimensionLine {
                    from: self.at(left, p.depth_mm),
                    to: (self.origin.0, foot),
                    line: bottom + 20.0,
                    text: units.size(p.gauge_mm),
                }
                .level(),
            );
        }
        marks
    }

    /// The line that the load acts in, beside the face of the fitting.
    fn load(&self) -> Vec<Mark> {
        let Some(offset) = load_line(self.state) else {
            return Vec::new();
        };
        let (left, right) = self.state.profile.edges();
        let ((from, y), (to, _)) = (self.at(left, -offset), self.at(right, -offset));
        let mut marks = vec![Mark::line((from, y), (to, y), "centre")];
        // Too close to the face for a dimension beside it, the line says it all.
        if offset * self.scale > 14.0 {
            marks.all(
                DimensionLine {
                    from: self.at(left, -offset),
                    to: self.at(left, 0.0),
                    line: from - 20.0,
                    text: self.state.units.size(offset),
                }
                .upright(),
            );
        }
        marks
    }

    /// Lowest point of the bolt's head, mm.
    const fn head_end(&self) -> f64 {
        self.lower + self.state.washer.thickness_mm + self.state.bolt.head_mm
    }

    fn names(&self) -> Vec<Mark> {
        let s = self.state;
        let p = &s.profile;
        let (_, right) = p.edges();
        let column = WIDTH - ROOM[1] + 14.0;
        let mut named: Vec<((f64, f64), String)> = Vec::new();
        if let Some(offset) = load_line(s) {
            named.push((self.at(right * 0.95, -offset), String::from("load")));
        }
        if let Some((thick, _)) = s.fitting {
            named.push((
                self.at(right * 0.85, self.upper + thick / 2.0),
                String::from("bracket"),
            ));
        }
        let (point, what) = match p.shape {
            Shape::Round => {
                let r = p.width_mm / 2.0;
                ((r - p.wall_mm / 2.0, r), "wall")
            }
            Shape::ChannelWeb => ((right * 0.6, p.wall_mm / 2.0), "web"),
            Shape::ChannelFlange => ((right * 0.8, p.thickness(right) / 2.0), "flange"),
            Shape::Angle => ((right * 0.8, p.wall_mm / 2.0), "leg"),
        };
        named.push((
            self.at(point.0, point.1),
            format!("{what} {}", s.units.size(p.wall_mm)),
        ));
        if let Some((outer, inner, _, through)) = s.core {
            let (x, text) = if through {
                ((outer + inner) / 4.0, "sleeve")
            } else {
                (outer / 4.0 + self.bore() / 2.0, "inside")
            };
            named.push((self.at(x, p.depth_mm * 0.72), String::from(text)));
        }
        let mut marks = Vec::new();
        let mut next = 0.0_f64;
        for (point, text) in named {
            // Names keep clear of each other.
            let y = (point.1 + 4.0).max(next);
            next = y + 18.0;
            let at = (column.min(WIDTH - text_width(&text, "t s") - 4.0), y);
            if at.0 > point.0 + 8.0 {
                marks.all(leader(point, at, &text, "t s"));
            } else {
                marks.text(at, text, "t s halo", Anchor::Start);
            }
        }
        marks
    }
}

//! The face that the washers lie on, seen along the bolts: where every part lies, and which have no room.

use crate::parts::{DimensionLine, Strip, StripField, break_line, centre_cross, hex_plan};
use crate::pen::Pen;
use crate::scene::{Draw, Mark, Scene};
use crate::units::Lettering;
use calc_core::layout::{Face, Place, SOCKET, bolts};
use calc_core::quantity::{InUnits, Length, UnitSystem};
use calc_core::report::{CheckId, Verdict};
use calc_core::{Report, Scenario};

/// A part that can be without room.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// The holes.
    Hole,
    /// The washers.
    Washer,
    /// The sleeves.
    Sleeve,
    /// The spreader plates.
    Plate,
    /// The socket on the nut.
    Wrench,
}

impl Part {
    /// All of them, the largest drawn first, each with the check that asks for its room.
    const ALL: [(Self, CheckId, &'static str); 5] = [
        (Self::Plate, CheckId::PlatePlace, "plates"),
        (Self::Wrench, CheckId::WrenchRoom, "socket"),
        (Self::Washer, CheckId::WasherPlace, "washers"),
        (Self::Sleeve, CheckId::SleevePlace, "sleeves"),
        (Self::Hole, CheckId::HolePlace, "holes"),
    ];
}

/// What the view shows, in mm; `along` from the end of the member, `across` from one edge of the face.
#[derive(Clone, Debug, PartialEq)]
pub struct FaceState {
    /// Prefix of the ids, unique on the page.
    pub id: String,
    /// From edge to edge.
    pub width_mm: f64,
    /// Where the flat begins and ends across.
    pub flat_mm: [f64; 2],
    /// Middles of the bolts: along, across.
    pub bolts: Vec<(f64, f64)>,
    /// How many bolts stand along one row.
    pub along: usize,
    /// Across flats of the nut.
    pub flats_mm: f64,
    /// Outside of a socket.
    pub socket_mm: f64,
    /// Holes in the face.
    pub hole_mm: f64,
    /// Outside of the washers.
    pub washer_mm: f64,
    /// Outside of the sleeves.
    pub sleeve_mm: Option<f64>,
    /// Length along and width across of the plates.
    pub plate_mm: Option<(f64, f64)>,
    /// Where the upright part of the fitting begins, across.
    pub upright_mm: Option<f64>,
    /// What has no room.
    pub clashes: Vec<Part>,
    /// Units of the lettering.
    pub units: UnitSystem,
    /// Whether the joint is an invented example.
    pub example: bool,
}

impl FaceState {
    /// The joint of a report.
    #[must_use]
    pub fn from_core(id: &str, s: &Scenario, report: &Report, units: UnitSystem) -> Self {
        let mm = |length: Length| length.si() * 1e3;
        let face = Face::new(s);
        let sleeved = s.support.has_sleeve();
        let flats = mm(s.bolting.thread.width_across_flats());
        let places: Vec<(f64, f64)> = bolts(s)
            .into_iter()
            .map(|Place { along, across }| (mm(along), mm(across)))
            .collect();
        let last = places.last().map_or(0.0, |(_, across)| *across);
        Self {
            id: id.into(),
            width_mm: mm(s.tube.width),
            flat_mm: face.flat.map(mm),
            bolts: places,
            along: s.bolting.along,
            flats_mm: flats,
            socket_mm: flats * SOCKET,
            hole_mm: mm(s.bolting.hole),
            washer_mm: mm(s.bolting.washer.outer),
            sleeve_mm: sleeved.then(|| mm(s.sleeve.outer)),
            plate_mm: (s.support.has_plates())
                .then(|| (mm(s.spreader.length), mm(s.spreader.width))),
            upright_mm: s.fitting.flange_arm.map(|arm| last + mm(arm)),
            clashes: Part::ALL
                .iter()
                .filter(|(_, id, _)| {
                    let check = report.check(*id);
                    check.is_some_and(|c| c.verdict == Verdict::DoesNotHold)
                })
                .map(|(part, ..)| *part)
                .collect(),
            units,
            example: true,
        }
    }
}

const WIDTH: f64 = 340.0;
/// Height of the drawing without the title strip at most.
const MOST: f64 = 250.0;
/// Room for the dimensions at the left and below, and for what is broken off at the right.
const ROOM: [f64; 4] = [48.0, 14.0, 42.0, 14.0];
/// Bolts of a row that are drawn; after them the member is broken off.
const DRAWN: usize = 3;

/// The view along the bolts.
#[must_use]
pub fn face_view(state: &FaceState) -> Scene {
    let [left, right, below, above] = ROOM;
    let near = state
        .bolts
        .chunks(state.along.max(1))
        .flat_map(|row| row.iter().take(DRAWN).copied());
    let bolts: Vec<(f64, f64)> = near
        .filter(|(x, y)| x.is_finite() && y.is_finite())
        .collect();
    let reach = [
        Some(state.washer_mm),
        Some(state.socket_mm),
        state.sleeve_mm,
        state.plate_mm.map(|(length, _)| length),
    ];
    let reach = reach.into_iter().flatten().fold(0.0, f64::max) / 2.0;
    let tall = reach.min(
        state
            .plate_mm
            .map_or(reach, |(_, width)| width / 2.0)
            .max(state.socket_mm / 2.0),
    );
    let extent = |pick: fn(&(f64, f64)) -> f64, around: f64, least: [f64; 2]| {
        bolts.iter().map(pick).fold(least, |[low, high], at| {
            [low.min(at - around), high.max(at + around)]
        })
    };
    let [x0, x1] = extent(|b| b.0, reach, [0.0, 0.0]);
    let [y0, y1] = extent(|b| b.1, tall, [0.0, state.width_mm]);
    let y1 = y1.max(state.upright_mm.unwrap_or(0.0));
    let x1 = x1 + 0.15 * (x1 - x0);
    let scale = ((WIDTH - left - right) / (x1 - x0).max(1.0))
        .min((MOST - above - below) / (y1 - y0).max(1.0));
    let at = |along: f64, across: f64| (left + (along - x0) * scale, above + (across - y0) * scale);

    let mut marks = member(state, (at(0.0, 0.0), at(x1, state.width_mm)), &at);
    for (part, ..) in Part::ALL {
        let clash = state.clashes.contains(&part);
        for &(along, across) in &bolts {
            marks.all(outline(state, part, clash, at(along, across), scale));
        }
    }
    for &(along, across) in &bolts {
        marks.all(centre_cross(
            at(along, across),
            state.washer_mm / 2.0 * scale + 4.0,
        ));
    }
    let bottom = above + (y1 - y0) * scale;
    marks.all(sizes(state, &bolts, bottom, &at));
    let names: Vec<&str> = Part::ALL
        .iter()
        .filter(|(part, ..)| state.clashes.contains(part))
        .map(|(.., name)| *name)
        .collect();
    let no_room = if names.is_empty() {
        String::from("nothing")
    } else {
        names.join(", ")
    };
    let strip = Strip {
        fields: vec![
            StripField::new("drawing", "face, along the bolts"),
            StripField::new("without room", no_room.clone()),
            StripField::new("joint", if state.example { "made up" } else { "yours" }),
        ],
    };
    let drawing = bottom + below;
    marks.all(strip.marks(WIDTH, drawing));
    Scene {
        id: state.id.clone(),
        width: WIDTH,
        height: drawing + strip.height(WIDTH),
        title: String::from("The face seen along the bolts"),
        description: format!(
            "{} bolts on a face {} wide; without room: {no_room}.",
            state.bolts.len(),
            state.units.length(state.width_mm),
        ),
        marks,
    }
}

/// The member from its end to where it is broken off, with the lines where its flat ends.
fn member(
    state: &FaceState,
    ((left, top), (right, bottom)): ((f64, f64), (f64, f64)),
    at: &impl Fn(f64, f64) -> (f64, f64),
) -> Vec<Mark> {
    let outline = Pen::at(right, top)
        .to(left, top)
        .to(left, bottom)
        .to(right, bottom)
        .d();
    let mut marks = vec![
        Mark::path(outline, "edge none"),
        break_line((right, top), bottom - top),
    ];
    for flat in state.flat_mm {
        if flat > 0.0 && flat < state.width_mm {
            let (_, y) = at(0.0, flat);
            marks.line((left, y), (right, y), "thin");
        }
    }
    if let Some(upright) = state.upright_mm {
        let (_, y) = at(0.0, upright);
        marks.line((left, y), (right, y), "phantom");
    }
    marks
}

/// One part at its place; what has no room is tinted and heavier.
fn outline(
    state: &FaceState,
    part: Part,
    clash: bool,
    (x, y): (f64, f64),
    scale: f64,
) -> Vec<Mark> {
    let class = |usual| if clash { "clash" } else { usual };
    let circle =
        |diameter: f64, usual| vec![Mark::circle((x, y), diameter / 2.0 * scale, class(usual))];
    match part {
        Part::Plate => state.plate_mm.map_or_else(Vec::new, |(length, width)| {
            let (h, v) = (length / 2.0 * scale, width / 2.0 * scale);
            let corners = ((x - h, y - v), (x + h, y + v));
            vec![Mark::rect(corners.0, corners.1, class("edge part"), None)]
        }),
        // A socket is drawn where it strikes something.
        Part::Wrench if clash => circle(state.socket_mm, "phantom"),
        Part::Wrench => Vec::new(),
        Part::Washer => {
            let mut marks = circle(state.washer_mm, "edge part");
            let nut = hex_plan(state.flats_mm * scale);
            marks.group(crate::scene::Placed::at(x, y), "", nut);
            marks
        }
        Part::Sleeve => state
            .sleeve_mm
            .map_or_else(Vec::new, |d| circle(d, "hidden none")),
        Part::Hole => circle(state.hole_mm, "hidden none"),
    }
}

/// End distance and pitch below; width and the distance of the rows at the left.
fn sizes(
    state: &FaceState,
    bolts: &[(f64, f64)],
    bottom: f64,
    at: &impl Fn(f64, f64) -> (f64, f64),
) -> Vec<Mark> {
    let mut marks = Vec::new();
    let length = |mm: f64| state.units.length(mm);
    let line = bottom + 26.0;
    let level = |from: f64, to: f64, across: f64| {
        DimensionLine {
            from: at(from, across),
            to: at(to, across),
            line,
            text: length(to - from),
        }
        .level()
    };
    let mut row = bolts
        .iter()
        .filter(|b| Some(b.1) == bolts.first().map(|f| f.1));
    if let Some(first) = row.next() {
        marks.all(level(0.0, first.0, state.width_mm));
        if let Some(second) = row.next() {
            marks.all(level(first.0, second.0, state.width_mm));
        }
    }
    let upright = DimensionLine {
        from: at(0.0, 0.0),
        to: at(0.0, state.width_mm),
        line: 16.0,
        text: length(state.width_mm),
    };
    marks.all(upright.upright());
    let other = bolts
        .iter()
        .find(|b| Some(b.1) != bolts.first().map(|f| f.1));
    if let (Some(first), Some(other)) = (bolts.first(), other) {
        let rows = DimensionLine {
            from: at(0.0, first.1),
            to: at(0.0, other.1),
            line: 36.0,
            text: length(other.1 - first.1),
        };
        marks.all(rows.upright());
    }
    marks
}

#[cfg(test)]
mod tests {
    use super::*;
    use calc_core::{Input, evaluate};

    fn of(change: impl Fn(&mut Input)) -> FaceState {
        let mut input = Input::default();
        change(&mut input);
        let s = Scenario::new(&input).unwrap();
        FaceState::from_core("f", &s, &evaluate(&s), UnitSystem::Metric)
    }

    fn clashing(scene: &Scene) -> usize {
        let marked = |m: &&Mark| {
            matches!(
                m,
                Mark::Circle { class: "clash", .. } | Mark::Rect { class: "clash", .. }
            )
        };
        scene.marks.iter().filter(marked).count()
    }

    #[test]
    fn what_has_room_is_not_marked() {
        let state = of(|_| {});
        assert_eq!(state.clashes, []);
        assert_eq!(clashing(&face_view(&state)), 0);
    }

    #[test]
    fn washers_over_each_other_are_marked_and_named() {
        let state = of(|input| input.spacing_along_mm = 20.0);
        assert!(state.clashes.contains(&Part::Washer), "{:?}", state.clashes);
        let scene = face_view(&state);
        assert_eq!(clashing(&scene), state.clashes.len() * state.bolts.len());
        assert!(
            scene.description.contains("washers"),
            "{}",
            scene.description
        );
    }

    #[test]
    fn a_plate_past_the_end_reaches_past_the_end_of_the_member() {
        let state = of(|input| {
            input.support = "spreader".into();
            input.spreader_length_mm = 150.0;
            input.end_distance_mm = 40.0;
        });
        assert!(state.clashes.contains(&Part::Plate));
        let scene = face_view(&state);
        let plate = scene.marks.iter().find_map(|m| match m {
            Mark::Rect {
                x, class: "clash", ..
            } => Some(*x),
            _ => None,
        });
        // The left edge of the member is to the right of the plate's.
        let member = scene.marks.iter().find_map(|m| match m {
            Mark::Line {
                from,
                class: "thin",
                ..
            } => Some(from.0),
            _ => None,
        });
        assert!(plate.unwrap() < member.unwrap());
    }

    #[test]
    fn nothing_leaves_the_sheet_however_large() {
        for (width, pitch, rows, along) in [(20.0, 10.0, 1.0, 1.0), (400.0, 400.0, 2.0, 6.0)] {
            let scene = face_view(&of(|input| {
                input.tube_width_mm = width;
                input.spacing_along_mm = pitch;
                input.bolt_rows = rows;
                input.bolts_along = along;
            }));
            for mark in &scene.marks {
                if let Mark::Circle {
                    centre: (x, y), r, ..
                } = mark
                {
                    assert!(x - r >= -1.0 && x + r <= scene.width + 1.0, "{mark:?}");
                    assert!(y - r >= -1.0 && y + r <= scene.height + 1.0, "{mark:?}");
                }
            }
        }
    }
}

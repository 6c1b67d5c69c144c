//! Where to measure a member that is no rectangular tube.

use super::{Profile, Shape};
use crate::measure::Measure;
use crate::parts::{DimensionLine, bolt_head, nut, short_across, threaded_shank, washer_cut};
use crate::scene::{Anchor, CutMetal, Draw, Hatch, Lean, Mark, Scene};

const WIDTH: f64 = 160.0;
const HEIGHT: f64 = 128.0;
/// Where the bolt stands and the outer face lies.
const ORIGIN: (f64, f64) = (66.0, 34.0);
const WALL: f64 = 6.0;

/// The figure of a measure, on the member of a shape; of the bolt it is the same for all.
#[must_use]
pub fn measure_scene(measure: Measure, shape: Option<Shape>, id: &str) -> Scene {
    let Some(shape) = shape else {
        return measure.scene(id);
    };
    let p = profile(shape);
    let (title, words, marks) = match measure {
        Measure::Width => (
            "Width of the part with the bolt",
            match shape {
                Shape::Round => "End of the round tube: measure across, outside to outside.",
                Shape::ChannelWeb => {
                    "End of the channel with the bolt upright: measure the web across the bolt, outside to outside."
                }
                Shape::ChannelFlange => {
                    "End of the channel with the bolt upright: measure the flange across the bolt, from the back of the web to its edge."
                }
                Shape::Angle => {
                    "End of the angle with the bolt upright: measure the leg with the bolt, from the back of the other leg to its edge."
                }
            },
            width(&p),
        ),
        Measure::Depth => (
            "Depth along the bolt",
            "End of the member with the bolt upright: measure along the bolt, outside to outside.",
            depth(&p),
        ),
        Measure::Wall => (
            "Thickness at the bolt",
            "End of the member: measure the part that the bolt goes through, beside the bolt.",
            thickness(&p),
        ),
        Measure::Bolt | Measure::Head => return measure.scene(id),
    };
    Scene {
        id: id.into(),
        width: WIDTH,
        height: HEIGHT,
        title: title.into(),
        description: words.into(),
        marks,
    }
}

/// A member as large as the tube of the other figures.
const fn profile(shape: Shape) -> Profile {
    let (depth, gauge) = match shape {
        Shape::Round => (64.0, 32.0),
        Shape::ChannelWeb => (36.0, 32.0),
        Shape::ChannelFlange | Shape::Angle => (62.0, 36.0),
    };
    Profile {
        shape,
        width_mm: 64.0,
        depth_mm: depth,
        wall_mm: WALL,
        upright_mm: WALL,
        gauge_mm: gauge,
        slope: match shape {
            Shape::ChannelFlange => 0.1,
            _ => 0.0,
        },
    }
}

fn at(x: f64, y: f64) -> (f64, f64) {
    (ORIGIN.0 + x, ORIGIN.1 + y)
}

fn end_view(p: &Profile) -> Vec<Mark> {
    let hatch = Hatch::new(CutMetal::Aluminium, Lean::Right);
    let mut marks: Vec<Mark> = p
        .paths(5.5, &at)
        .into_iter()
        .map(|d| Mark::cut(d, hatch))
        .collect();
    let (x, top) = ORIGIN;
    let seat = top
        + if p.shape == Shape::Round {
            p.depth_mm
        } else {
            p.thickness(-13.0)
        };
    marks.all(threaded_shank(x, 10.0, seat + 3.0, top - 17.0, 30.0));
    marks.all(washer_cut(x, 26.0, 10.0, top - 3.0, top, Lean::Left));
    marks.all(washer_cut(x, 26.0, 10.0, seat, seat + 3.0, Lean::Left));
    marks.all(nut(x, top - 3.0, 17.0, 9.0, true));
    marks.all(bolt_head(x, seat + 3.0, 17.0, 7.0, false));
    marks.line((x, top - 21.0), (x, seat + 14.0), "centre");
    marks
}

fn width(p: &Profile) -> Vec<Mark> {
    let mut marks = end_view(p);
    let (left, right) = p.edges();
    let foot = if p.shape == Shape::Angle {
        p.wall_mm
    } else {
        p.depth_mm * 0.5
    };
    let name = if p.shape == Shape::Round {
        "across"
    } else {
        "width"
    };
    marks.all(
        DimensionLine {
            from: at(left, p.depth_mm * 0.5),
            to: at(right, foot),
            line: ORIGIN.1 + 88.0,
            text: String::new(),
        }
        .level(),
    );
    marks.text((104.0, 126.0), name, "t", Anchor::Start);
    marks
}

fn depth(p: &Profile) -> Vec<Mark> {
    let mut marks = end_view(p);
    let (left, right) = p.edges();
    // The upright part stands at the left of a flange or leg; its foot is measured from there.
    let from = if p.shape == Shape::Angle { left } else { right };
    marks.all(
        DimensionLine {
            from: at(right, 0.0),
            to: at(from, p.depth_mm),
            line: ORIGIN.0 + right + 16.0,
            text: String::new(),
        }
        .upright(),
    );
    marks.text((ORIGIN.0 + right + 21.0, 69.0), "depth", "t", Anchor::Start);
    marks
}

fn thickness(p: &Profile) -> Vec<Mark> {
    let mut marks = end_view(p);
    let (_, right) = p.edges();
    if p.shape == Shape::Round {
        let y = ORIGIN.1 + p.depth_mm * 0.5;
        let (outer, inner) = (ORIGIN.0 + right, ORIGIN.0 + right - WALL);
        marks.all(short_across(inner, outer, y, ""));
        marks.text((outer + 20.0, y + 4.6), "wall", "t", Anchor::Start);
        return marks;
    }
    let x = right - 5.0;
    marks.all(
        DimensionLine {
            from: at(x, 0.0),
            to: at(x, p.thickness(x)),
            line: ORIGIN.0 + right + 12.0,
            text: String::new(),
        }
        .upright(),
    );
    marks.text(
        (ORIGIN.0 + right + 19.0, ORIGIN.1 + 8.0),
        "thick",
        "t",
        Anchor::Start,
    );
    marks
}

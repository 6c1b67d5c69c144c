//! What to measure on the trailer, one small drawing each.

use crate::parts::{
    DimensionLine, HeadMarks, bolt_head, centre_cross, hex_plan, nut, threaded_shank, washer_cut,
};
use crate::pen::Pen;
use crate::scene::{Anchor, CutMetal, Draw, Hatch, Lean, Mark, Placed, Scene};

const WIDTH: f64 = 160.0;
const HEIGHT: f64 = 128.0;

/// The five drawings, in the order in which one measures.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Measure {
    /// Outside width of the face under the washer.
    Width,
    /// Outside depth along the bolt.
    Depth,
    /// Wall at the open end, with a caliper.
    Wall,
    /// Outside diameter of the thread.
    Bolt,
    /// Strength marks on the head.
    Head,
}

impl Measure {
    /// All five, in order.
    pub const ALL: [Self; 5] = [Self::Width, Self::Depth, Self::Wall, Self::Bolt, Self::Head];

    /// The figure.
    #[must_use]
    pub fn scene(self, id: &str) -> Scene {
        let (title, description, marks) = match self {
            Self::Width => (
                "Width of the face under the washer",
                "End of the tube with the bolt upright: measure across the bolt, outside to outside of the face that the washer presses on.",
                width(),
            ),
            Self::Depth => (
                "Depth along the bolt",
                "End of the tube with the bolt upright: measure along the bolt, outside to outside, away from any dent.",
                depth(),
            ),
            Self::Wall => (
                "Wall at the open end",
                "Caliper at the open end of the tube: one jaw inside, one outside, away from the corner and from any weld bead.",
                wall(),
            ),
            Self::Bolt => (
                "Bolt size",
                "Caliper across the thread of the bolt: the outside diameter of the thread.",
                bolt(),
            ),
            Self::Head => (
                "Marks on the bolt head",
                "Four bolt heads from above: without marks, with three radial lines, with six radial lines, with the figures 8.8.",
                heads(),
            ),
        };
        Scene {
            id: id.into(),
            width: WIDTH,
            height: HEIGHT,
            title: title.into(),
            description: description.into(),
            marks,
        }
    }
}

/// A tube end with its bolt.
fn tube_end() -> Vec<Mark> {
    let (l, t, r, b, ro, wall) = (34.0, 34.0, 98.0, 96.0, 8.0, 5.0);
    let ring = |l: f64, t: f64, r: f64, b: f64, ro: f64| {
        Pen::at(l + ro, t)
            .to(r - ro, t)
            .arc(ro, true, r, t + ro)
            .to(r, b - ro)
            .arc(ro, true, r - ro, b)
            .to(l + ro, b)
            .arc(ro, true, l, b - ro)
            .to(l, t + ro)
            .arc(ro, true, l + ro, t)
            .close()
            .d()
    };
    let x = f64::midpoint(l, r);
    let d = ring(l, t, r, b, ro) + &ring(l + wall, t + wall, r - wall, b - wall, ro - wall);
    let mut marks = vec![Mark::Path {
        d,
        class: "edge evenodd",
        hatch: Some(Hatch::new(CutMetal::Aluminium, Lean::Right)),
    }];
    marks.all(threaded_shank(x, 10.0, b + 3.0, t - 17.0, 30.0));
    marks.all(washer_cut(x, 26.0, 10.0, t - 3.0, t, Lean::Left));
    marks.all(washer_cut(x, 26.0, 10.0, b, b + 3.0, Lean::Left));
    marks.all(nut(x, t - 3.0, 17.0, 9.0, true));
    marks.all(bolt_head(x, b + 3.0, 17.0, 7.0, false));
    marks.line((x, t - 21.0), (x, b + 14.0), "centre");
    marks
}

fn width() -> Vec<Mark> {
    let mut marks = tube_end();
    marks.all(
        DimensionLine {
            from: (34.0, 40.0),
            to: (98.0, 40.0),
            line: 122.0,
            text: String::new(),
        }
        .level(),
    );
    marks.text((104.0, 126.0), "width", "t", Anchor::Start);
    marks
}

fn depth() -> Vec<Mark> {
    let mut marks = tube_end();
    marks.all(
        DimensionLine {
            from: (92.0, 34.0),
            to: (92.0, 96.0),
            line: 114.0,
            text: String::new(),
        }
        .upright(),
    );
    marks.text((119.0, 69.0), "depth", "t", Anchor::Start);
    marks
}

/// A caliper with its beam level at the origin and both jaws down; the gap `opening` begins at x = 0.
pub(crate) fn caliper(opening: f64, jaw: f64, beam: f64) -> Vec<Mark> {
    let fixed = Pen::at(-18.0, -7.0)
        .to(beam, -7.0)
        .to(beam, 6.0)
        .to(-6.0, 6.0)
        .to(0.0, 12.0)
        .to(0.0, jaw)
        .to(-5.0, jaw)
        .to(-18.0, 8.0)
        .close();
    let o = opening;
    let slide = Pen::at(o - 1.0, -11.0)
        .to(o + 40.0, -11.0)
        .to(o + 40.0, 10.0)
        .to(o + 14.0, 10.0)
        .to(o + 5.0, jaw)
        .to(o, jaw)
        .to(o, 10.0)
        .to(o - 1.0, 10.0)
        .close();
    let mut marks = vec![
        Mark::path(fixed.d(), "edge tool"),
        Mark::path(slide.d(), "edge tool"),
    ];
    for i in 0..=8_u8 {
        let x = o + 4.0 + 4.0 * f64::from(i);
        marks.line((x, 10.0), (x, if i % 4 == 0 { 3.0 } else { 6.0 }), "thin");
    }
    let mut x = o + 46.0;
    while x < beam - 2.0 {
        marks.line((x, 6.0), (x, 1.0), "thin");
        x += 5.0;
    }
    marks
}

fn wall() -> Vec<Mark> {
    let hatch = Some(Hatch::new(CutMetal::Aluminium, Lean::Right));
    let mut marks = Vec::new();
    // The tube cut lengthwise, open at the top, broken off below.
    for left in [34.0, 120.0] {
        let (right, top, bottom) = (left + 8.0, 48.0, 112.0);
        marks.rect((left, top), (right, bottom), "none", hatch);
        marks.path(
            Pen::at(left, bottom)
                .to(left, top)
                .to(right, top)
                .to(right, bottom)
                .d(),
            "edge none",
        );
    }
    marks.line((42.0, 48.0), (120.0, 48.0), "thin");
    let wave = Pen::at(26.0, 112.0).curve((60.0, 106.0), (90.0, 120.0), (136.0, 111.0));
    marks.path(wave.d(), "thin none");
    marks.group(Placed::at(34.0, 18.0), "", caliper(8.0, 58.0, 112.0));
    marks.text((66.0, 92.0), "wall", "t", Anchor::Start);
    marks.line((62.0, 88.0), (39.0, 88.0), "thin");
    marks.circle((38.0, 88.0), 1.8, "dot");
    marks
}

fn bolt() -> Vec<Mark> {
    // Drawn upright about the axis, then laid down: head at the left, thread at the right.
    let mut upright = threaded_shank(0.0, 20.0, 0.0, -78.0, 44.0);
    upright.all(bolt_head(0.0, 0.0, 30.0, 13.0, false));
    upright.line((0.0, 20.0), (0.0, -84.0), "centre");
    let mut marks = vec![Mark::group(
        Placed {
            x: 26.0,
            y: 54.0,
            degrees: 90.0,
        },
        "",
        upright,
    )];
    // The beam stands upright at the right; jaws reach over the thread from there.
    marks.group(
        Placed {
            x: 128.0,
            y: 44.0,
            degrees: 90.0,
        },
        "",
        caliper(20.0, 52.0, 66.0),
    );
    marks.text((10.0, 104.0), "across the thread", "t", Anchor::Start);
    marks
}

fn heads() -> Vec<Mark> {
    let all = [
        (HeadMarks::Lines(0), "no marks"),
        (HeadMarks::Lines(3), "3 lines"),
        (HeadMarks::Lines(6), "6 lines"),
        (HeadMarks::Figures("8.8"), "8.8"),
    ];
    let mut marks = Vec::new();
    for (place, (marked, words)) in [(40.0, 26.0), (120.0, 26.0), (40.0, 90.0), (120.0, 90.0)]
        .into_iter()
        .zip(all)
    {
        let mut head = hex_plan(36.0);
        if marked == HeadMarks::Lines(0) {
            head.all(centre_cross((0.0, 0.0), 5.0));
        }
        head.all(marked.marks(36.0));
        marks.group(Placed::at(place.0, place.1), "", head);
        marks.text((place.0, place.1 + 34.0), words, "t", Anchor::Middle);
    }
    marks
}

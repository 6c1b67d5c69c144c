//! The pictures of the problems: plates or a tube in section, drawn to the sizes that the problem gives.

use calc_core::catalog::{Thread, WasherSeries, washer};
use calc_core::quantity::InUnits;
use drawing::parts::{
    DimensionLine, bolt_head, force_arrow, leader, nut, threaded_shank, washer_cut,
};
use drawing::pen::Pen;
use drawing::scene::{Anchor, CutMetal, Draw, Hatch, Lean, Mark, Scene, text_width};

/// Size of a picture in drawing units.
pub const WIDTH: f64 = 310.0;
/// Likewise.
pub const HEIGHT: f64 = 190.0;

/// A force in a picture.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Arrow {
    /// Clamp load.
    Clamp,
    /// Load along the plates.
    Load,
    /// Pull along the bolt.
    Pull,
}

/// What a picture shows: sizes in SI, and what is lettered.
#[derive(Clone, Debug, Default)]
pub struct Shape {
    thread: Option<&'static Thread>,
    /// Between head and nut, of solid plates.
    grip: f64,
    plies: u32,
    /// Length of thread, from the nut on.
    threaded: Option<f64>,
    /// Width, depth, wall.
    tube: Option<[f64; 3]>,
    sleeve: Option<f64>,
    diameter: String,
    length: String,
    wall: String,
    inside: String,
    arrows: Vec<(Arrow, String)>,
}

impl Shape {
    /// Two plates with a bolt through them.
    #[must_use]
    pub fn stack(thread: &'static Thread, grip: f64) -> Self {
        Self {
            thread: Some(thread),
            grip,
            plies: 2,
            ..Self::default()
        }
    }

    /// A tube with a bolt through it: width, depth along the bolt, wall.
    #[must_use]
    pub fn tube(thread: &'static Thread, sizes: [f64; 3]) -> Self {
        Self {
            thread: Some(thread),
            grip: sizes[1],
            tube: Some(sizes),
            ..Self::default()
        }
    }

    pub(crate) const fn with_plies(mut self, plies: u32) -> Self {
        self.plies = plies;
        self
    }

    pub(crate) const fn with_thread(mut self, length: f64) -> Self {
        self.threaded = Some(length);
        self
    }

    /// A sleeve of a length between the walls.
    #[must_use]
    pub const fn with_sleeve(mut self, length: f64) -> Self {
        self.sleeve = Some(length);
        self
    }

    pub(crate) fn with_diameter(mut self, text: String) -> Self {
        self.diameter = format!("d = {text}");
        self
    }

    pub(crate) fn with_grip(mut self, text: String) -> Self {
        self.length = text;
        self
    }

    /// The depth of a tube.
    #[must_use]
    pub fn with_depth(mut self, text: String) -> Self {
        self.length = text;
        self
    }

    pub(crate) fn with_wall(mut self, text: String) -> Self {
        self.wall = text;
        self
    }

    pub(crate) fn with_inside(mut self, text: impl Into<String>) -> Self {
        self.inside = text.into();
        self
    }

    /// A force with its lettering.
    #[must_use]
    pub fn with(mut self, arrow: Arrow, text: impl Into<String>) -> Self {
        self.arrows.push((arrow, text.into()));
        self
    }

    /// The picture. `title` and `description` tell it to who cannot see it.
    #[must_use]
    pub fn scene(&self, id: &str, title: &str, description: &str) -> Scene {
        Scene {
            id: id.into(),
            width: WIDTH,
            height: HEIGHT,
            title: title.into(),
            description: description.into(),
            marks: self
                .thread
                .map_or_else(Vec::new, |thread| self.sheet(thread).marks()),
        }
    }

    fn sheet(&self, thread: &'static Thread) -> Sheet<'_> {
        let flats = thread.width_across_flats().si();
        let high = self.grip + thread.head_height().si() + 1.4 * thread.nut_height().si();
        let wide = self.tube.map_or(2.2 * flats, |[width, ..]| width);
        Sheet {
            shape: self,
            thread,
            // Room for what is lettered above, below and beside.
            scale: (112.0 / wide).min(126.0 / high),
        }
    }
}

/// Middle of the bolt.
const X: f64 = 150.0;

/// Room for lettering above and below.
const ABOVE: f64 = 26.0;
const BELOW: f64 = 16.0;

/// Half the width of plates, which go on beyond what is drawn.
const PLATE: f64 = 46.0;

struct Sheet<'a> {
    shape: &'a Shape,
    thread: &'static Thread,
    scale: f64,
}

impl Sheet<'_> {
    fn of(&self, si: f64) -> f64 {
        si * self.scale
    }

    /// Upper and lower side of what is clamped.
    fn ends(&self) -> (f64, f64) {
        let above = self.of(1.4 * self.thread.nut_height().si()) + self.washer().1;
        let below = self.of(self.thread.head_height().si()) + self.washer().1;
        let grip = self.of(self.shape.grip);
        let top = ABOVE + above + (HEIGHT - ABOVE - BELOW - above - grip - below) / 2.0;
        (top, top + grip)
    }

    /// Diameter and thickness of a washer.
    fn washer(&self) -> (f64, f64) {
        washer(self.thread, WasherSeries::Narrow).map_or((0.0, 0.0), |washer| {
            (
                self.of(washer.outer().si()),
                self.of(washer.thickness_nominal().si()),
            )
        })
    }

    fn marks(&self) -> Vec<Mark> {
        let (top, bottom) = self.ends();
        let (outer, thick) = self.washer();
        let thread = self.thread;
        let d = self.of(thread.major().si());
        let hole = d * 1.08;
        let flats = self.of(thread.width_across_flats().si());
        let nut_high = self.of(thread.nut_height().si());
        let head_high = self.of(thread.head_height().si());
        let point = top - thick - 1.35 * nut_high;
        let mut marks = Vec::new();
        let side = match self.shape.tube {
            Some(sizes) => self.tube(&mut marks, sizes, (top, bottom), hole),
            None => self.plates(&mut marks, (top, bottom), hole),
        };
        marks.all(washer_cut(X, outer, hole, top - thick, top, Lean::Left));
        marks.all(washer_cut(
            X,
            outer,
            hole,
            bottom,
            bottom + thick,
            Lean::Left,
        ));
        let threaded = self.shape.threaded.unwrap_or(self.shape.grip);
        let length = top - point + self.of(threaded);
        marks.all(threaded_shank(X, d, bottom + thick, point, length));
        marks.all(nut(X, top - thick, flats, nut_high, true));
        marks.all(bolt_head(X, bottom + thick, flats, head_high, false));
        self.lettered(&mut marks, (top, bottom), (d, point), side);
        for (arrow, text) in &self.shape.arrows {
            self.arrow(&mut marks, *arrow, text, (top, bottom), (outer, side));
        }
        marks
    }

    /// Draws the plates; back comes how far they reach.
    fn plates(&self, marks: &mut Vec<Mark>, (top, bottom): (f64, f64), hole: f64) -> f64 {
        let plies = self.shape.plies.max(1);
        let each = (bottom - top) / f64::from(plies);
        for ply in 0..plies {
            let lean = if ply % 2 == 0 {
                Lean::Right
            } else {
                Lean::Left
            };
            let hatch = Some(Hatch::new(CutMetal::Steel, lean));
            let from = top + each * f64::from(ply);
            for (a, b) in [(X - PLATE, X - hole / 2.0), (X + hole / 2.0, X + PLATE)] {
                marks.rect((a, from), (b, from + each), "edge", hatch);
            }
        }
        PLATE
    }

    /// Draws the tube and its sleeve; back comes half its width.
    fn tube(
        &self,
        marks: &mut Vec<Mark>,
        [width, _, wall]: [f64; 3],
        (top, bottom): (f64, f64),
        hole: f64,
    ) -> f64 {
        let (half, t) = (self.of(width) / 2.0, self.of(wall));
        let (outer, inner) = (2.0 * t, t);
        for way in [-1.0, 1.0] {
            let (rim, out, inside) = (X + way * hole / 2.0, X + way * half, X + way * (half - t));
            let clockwise = way > 0.0;
            let outline = Pen::at(rim, top)
                .to(out - way * outer, top)
                .arc(outer, clockwise, out, top + outer)
                .to(out, bottom - outer)
                .arc(outer, clockwise, out - way * outer, bottom)
                .to(rim, bottom)
                .to(rim, bottom - t)
                .to(inside - way * inner, bottom - t)
                .arc(inner, !clockwise, inside, bottom - t - inner)
                .to(inside, top + t + inner)
                .arc(inner, !clockwise, inside - way * inner, top + t)
                .to(rim, top + t)
                .close()
                .d();
            marks.cut(outline, Hatch::new(CutMetal::Steel, Lean::Right));
            if let Some(length) = self.shape.sleeve {
                let (from, to) = (bottom - t - self.of(length), bottom - t);
                let hatch = Some(Hatch::new(CutMetal::Steel, Lean::Left));
                marks.rect(
                    (X + way * hole * 0.56, from),
                    (X + way * hole * 0.86, to),
                    "edge",
                    hatch,
                );
            }
        }
        half
    }

    fn lettered(
        &self,
        marks: &mut Vec<Mark>,
        (top, bottom): (f64, f64),
        (d, point): (f64, f64),
        side: f64,
    ) {
        let shape = self.shape;
        if !shape.diameter.is_empty() {
            let line = DimensionLine {
                from: (X - d / 2.0, point),
                to: (X + d / 2.0, point),
                line: point - 10.0,
                text: shape.diameter.clone(),
            };
            marks.all(line.level());
        }
        if !shape.length.is_empty() {
            let line = DimensionLine {
                from: (X + side, top),
                to: (X + side, bottom),
                line: X + side + 24.0,
                text: shape.length.clone(),
            };
            marks.all(line.upright());
        }
        if let Some([width, _, wall]) = shape.tube {
            let t = self.of(wall);
            if !shape.wall.is_empty() {
                let at = (
                    X + self.of(width / 2.0 - wall / 2.0),
                    bottom - 0.2 * (bottom - top),
                );
                marks.all(leader(
                    at,
                    (X + side + 40.0, HEIGHT - 4.0),
                    &shape.wall,
                    "t",
                ));
            }
            if !shape.inside.is_empty() {
                let line = DimensionLine {
                    from: (X - side + t, top + t),
                    to: (X - side + t, bottom - t),
                    line: X - side - 14.0,
                    text: shape.inside.clone(),
                };
                marks.all(line.upright());
            }
        }
    }

    fn arrow(
        &self,
        marks: &mut Vec<Mark>,
        arrow: Arrow,
        text: &str,
        (top, bottom): (f64, f64),
        (washer, side): (f64, f64),
    ) {
        match arrow {
            Arrow::Clamp => {
                let x = X - washer / 2.0 - 9.0;
                marks.all(force_arrow((x, top - 36.0), (x, top - 2.0), "clamp"));
                marks.all(force_arrow((x, bottom + 36.0), (x, bottom + 2.0), "clamp"));
                let room = x - 9.0;
                let class = if text_width(text, "t") > room {
                    "t s clamp"
                } else {
                    "t clamp"
                };
                let end = (x - 7.0).max(text_width(text, class));
                marks.text((end, top - 18.0), text, class, Anchor::End);
            }
            Arrow::Pull => {
                marks.all(force_arrow(
                    (X + 40.0, top - 3.0),
                    (X + 40.0, top - 38.0),
                    "load",
                ));
                marks.all(force_arrow(
                    (X + 40.0, bottom + 3.0),
                    (X + 40.0, bottom + 38.0),
                    "load",
                ));
                marks.text((X + 47.0, top - 18.0), text, "t load", Anchor::Start);
            }
            Arrow::Load => self.pulled_apart(marks, text, (top, bottom), side),
        }
    }

    /// One plate to the right, the other or both others to the left.
    fn pulled_apart(
        &self,
        marks: &mut Vec<Mark>,
        text: &str,
        (top, bottom): (f64, f64),
        side: f64,
    ) {
        let plies = self.shape.plies.max(1);
        let each = (bottom - top) / f64::from(plies);
        let middle = |ply: u32| top + each * (f64::from(ply) + 0.5);
        let pulled = u32::from(plies == 3);
        for ply in 0..plies {
            let y = middle(ply);
            if ply == pulled {
                marks.all(force_arrow(
                    (X + side + 3.0, y),
                    (X + side + 42.0, y),
                    "load",
                ));
                let end = X + side + 4.0 + text_width(text, "t");
                marks.text(
                    (end.min(WIDTH - 2.0), top - 9.0),
                    text,
                    "t load",
                    Anchor::End,
                );
            } else {
                let long = if plies == 3 { 24.0 } else { 42.0 };
                marks.all(force_arrow(
                    (X - side - 3.0, y),
                    (X - side - long, y),
                    "load",
                ));
            }
        }
    }
}

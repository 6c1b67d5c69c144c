//! What a figure is made of: marks with classes, no style.
//!
//! Styling stands in `web/style/` alone, because the page's content security policy refuses style
//! attributes, and because dark, print and forced colours are then the style sheets' business.

/// Size of ordinary lettering in drawing units. The style sheet says the same; a test compares them.
pub const LETTER: f64 = 13.5;
/// Size of small lettering in drawing units. Never less than 11 px on a 360 px screen.
pub const LETTER_SMALL: f64 = 12.0;
/// Width that a letter takes on average, as a share of its size, in the widest of the usual system fonts.
pub const LETTER_WIDTH: f64 = 0.6;

/// Where a text hangs on its point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anchor {
    /// Begins there.
    Start,
    /// Is centred there.
    Middle,
    /// Ends there.
    End,
}

/// What a cut part is made of; gives the hatching (ISO 128-50 leaves the choice of lines to the
/// drawing, US practice draws steel with double lines).
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum CutMetal {
    /// Double lines.
    Steel,
    /// Single lines.
    Aluminium,
}

/// Which way the hatching leans; neighbouring parts lean differently.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Lean {
    /// Rising to the right.
    Right,
    /// Rising to the left.
    Left,
}

/// A section hatching.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Hatch {
    /// Of which material.
    pub material: CutMetal,
    /// Leaning which way.
    pub lean: Lean,
}

impl Hatch {
    /// All there are, in their order.
    pub const ALL: [Self; 4] = [
        Self::new(CutMetal::Steel, Lean::Right),
        Self::new(CutMetal::Steel, Lean::Left),
        Self::new(CutMetal::Aluminium, Lean::Right),
        Self::new(CutMetal::Aluminium, Lean::Left),
    ];

    /// Hatching of a material.
    #[must_use]
    pub const fn new(material: CutMetal, lean: Lean) -> Self {
        Self { material, lean }
    }

    /// The part of the pattern's id after the figure's own prefix.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match (self.material, self.lean) {
            (CutMetal::Steel, Lean::Right) => "steel-r",
            (CutMetal::Steel, Lean::Left) => "steel-l",
            (CutMetal::Aluminium, Lean::Right) => "aluminium-r",
            (CutMetal::Aluminium, Lean::Left) => "aluminium-l",
        }
    }

    /// Side of the square tile.
    #[must_use]
    pub const fn tile(self) -> f64 {
        match self.material {
            CutMetal::Steel => 8.0,
            CutMetal::Aluminium => 6.5,
        }
    }

    /// Path of the lines in the tile, before it is turned.
    #[must_use]
    pub const fn lines(self) -> &'static str {
        match self.material {
            CutMetal::Steel => "M1 0V8M3.6 0V8",
            CutMetal::Aluminium => "M1 0V6.5",
        }
    }

    /// Turn of the tile in degrees.
    #[must_use]
    pub const fn turn(self) -> f64 {
        match self.lean {
            Lean::Right => 45.0,
            Lean::Left => -45.0,
        }
    }
}

/// Moves a group: turned about its own origin first, then shifted.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Placed {
    /// Shift to the right.
    pub x: f64,
    /// Shift downwards.
    pub y: f64,
    /// Turn, clockwise on the sheet.
    pub degrees: f64,
}

impl Placed {
    /// Shifted only.
    #[must_use]
    pub const fn at(x: f64, y: f64) -> Self {
        Self { x, y, degrees: 0.0 }
    }

    /// The value of the `transform` attribute; empty where nothing is moved.
    #[must_use]
    pub fn attribute(self) -> String {
        use crate::pen::coordinate as c;
        if self == Self::default() {
            String::new()
        } else if self.degrees == 0.0 {
            format!("translate({} {})", c(self.x), c(self.y))
        } else {
            format!(
                "translate({} {})rotate({})",
                c(self.x),
                c(self.y),
                c(self.degrees)
            )
        }
    }

    /// Where a point of the group lands.
    #[must_use]
    pub fn apply(self, (x, y): (f64, f64)) -> (f64, f64) {
        let (sin, cos) = self.degrees.to_radians().sin_cos();
        (self.x + x * cos - y * sin, self.y + x * sin + y * cos)
    }
}

/// One mark on the sheet.
#[derive(Clone, Debug, PartialEq)]
pub enum Mark {
    /// A path.
    Path {
        /// Path data.
        d: String,
        /// Classes.
        class: &'static str,
        /// Hatching that fills it.
        hatch: Option<Hatch>,
    },
    /// A straight line.
    Line {
        /// From.
        from: (f64, f64),
        /// To.
        to: (f64, f64),
        /// Classes.
        class: &'static str,
    },
    /// An upright rectangle.
    Rect {
        /// Left edge.
        x: f64,
        /// Top edge.
        y: f64,
        /// Width.
        width: f64,
        /// Height.
        height: f64,
        /// Classes.
        class: &'static str,
        /// Hatching that fills it.
        hatch: Option<Hatch>,
    },
    /// A circle.
    Circle {
        /// Centre.
        centre: (f64, f64),
        /// Radius.
        r: f64,
        /// Classes.
        class: &'static str,
    },
    /// A line of lettering.
    Text {
        /// Point it hangs on, on the base line.
        at: (f64, f64),
        /// The words.
        text: String,
        /// Classes; the word `s` in it means small lettering.
        class: &'static str,
        /// How it hangs.
        anchor: Anchor,
        /// Turn about its point in degrees.
        turn: f64,
    },
    /// Marks that are moved together.
    Group {
        /// Where to.
        placed: Placed,
        /// Classes.
        class: &'static str,
        /// The marks.
        marks: Vec<Self>,
    },
}

impl Mark {
    /// A path with a class.
    #[must_use]
    #[inline(never)]
    pub fn path(d: String, class: &'static str) -> Self {
        Self::Path {
            d,
            class,
            hatch: None,
        }
    }

    /// A thick outline filled with hatching.
    #[must_use]
    #[inline(never)]
    pub fn cut(d: String, hatch: Hatch) -> Self {
        Self::Path {
            d,
            class: "edge",
            hatch: Some(hatch),
        }
    }

    /// A line with a class.
    #[must_use]
    #[inline(never)]
    pub fn line(from: (f64, f64), to: (f64, f64), class: &'static str) -> Self {
        Self::Line { from, to, class }
    }

    /// A circle with a class.
    #[must_use]
    #[inline(never)]
    pub fn circle(centre: (f64, f64), r: f64, class: &'static str) -> Self {
        Self::Circle { centre, r, class }
    }

    /// A rectangle from its corners, whichever way round.
    #[must_use]
    pub fn rect(a: (f64, f64), b: (f64, f64), class: &'static str, hatch: Option<Hatch>) -> Self {
        Self::Rect {
            x: a.0.min(b.0),
            y: a.1.min(b.1),
            width: (b.0 - a.0).abs(),
            height: (b.1 - a.1).abs(),
            class,
            hatch,
        }
    }

    /// Level lettering.
    #[must_use]
    pub fn text(
        at: (f64, f64),
        text: impl Into<String>,
        class: &'static str,
        anchor: Anchor,
    ) -> Self {
        Self::Text {
            at,
            text: text.into(),
            class,
            anchor,
            turn: 0.0,
        }
    }

    /// A group shifted to a point.
    #[must_use]
    #[inline(never)]
    pub fn group(placed: Placed, class: &'static str, marks: Vec<Self>) -> Self {
        Self::Group {
            placed,
            class,
            marks,
        }
    }

    /// Size of the lettering that a text class gives.
    #[must_use]
    pub fn letter_size(class: &str) -> f64 {
        if class.split(' ').any(|word| word == "s") {
            LETTER_SMALL
        } else {
            LETTER
        }
    }
}

/// Puts marks on a sheet. Each is one call that is never inlined: drawings are long lists of marks, and
/// building and moving every mark where it is drawn would be most of their code.
pub trait Draw {
    /// [`Mark::path`].
    fn path(&mut self, d: String, class: &'static str);
    /// [`Mark::cut`].
    fn cut(&mut self, d: String, hatch: Hatch);
    /// [`Mark::line`].
    fn line(&mut self, from: (f64, f64), to: (f64, f64), class: &'static str);
    /// [`Mark::circle`].
    fn circle(&mut self, centre: (f64, f64), r: f64, class: &'static str);
    /// [`Mark::rect`].
    fn rect(&mut self, a: (f64, f64), b: (f64, f64), class: &'static str, hatch: Option<Hatch>);
    /// [`Mark::text`].
    fn text(
        &mut self,
        at: (f64, f64),
        text: impl Into<String>,
        class: &'static str,
        anchor: Anchor,
    );
    /// [`Mark::group`].
    fn group(&mut self, placed: Placed, class: &'static str, marks: Vec<Mark>);
    /// Marks of another list, in their order.
    fn all(&mut self, marks: Vec<Mark>);
}

impl Draw for Vec<Mark> {
    #[inline(never)]
    fn path(&mut self, d: String, class: &'static str) {
        self.push(Mark::path(d, class));
    }

    #[inline(never)]
    fn cut(&mut self, d: String, hatch: Hatch) {
        self.push(Mark::cut(d, hatch));
    }

    #[inline(never)]
    fn line(&mut self, from: (f64, f64), to: (f64, f64), class: &'static str) {
        self.push(Mark::line(from, to, class));
    }

    #[inline(never)]
    fn circle(&mut self, centre: (f64, f64), r: f64, class: &'static str) {
        self.push(Mark::circle(centre, r, class));
    }

    #[inline(never)]
    fn rect(&mut self, a: (f64, f64), b: (f64, f64), class: &'static str, hatch: Option<Hatch>) {
        self.push(Mark::rect(a, b, class, hatch));
    }

    #[inline(never)]
    fn text(
        &mut self,
        at: (f64, f64),
        text: impl Into<String>,
        class: &'static str,
        anchor: Anchor,
    ) {
        self.push(Mark::text(at, text, class, anchor));
    }

    #[inline(never)]
    fn group(&mut self, placed: Placed, class: &'static str, marks: Vec<Mark>) {
        self.push(Mark::group(placed, class, marks));
    }

    #[inline(never)]
    fn all(&mut self, mut marks: Vec<Mark>) {
        self.append(&mut marks);
    }
}

/// Width that a text takes at most.
#[must_use]
pub fn text_width(text: &str, class: &str) -> f64 {
    // A text of 2^52 letters is not a text.
    #[allow(clippy::cast_precision_loss, reason = "texts are short")]
    let letters = text.chars().count() as f64;
    letters * LETTER_WIDTH * Mark::letter_size(class)
}

/// Left, top, right and bottom that a level text takes at most.
#[must_use]
pub fn text_bounds(
    at: (f64, f64),
    text: &str,
    class: &str,
    anchor: Anchor,
) -> (f64, f64, f64, f64) {
    let wide = text_width(text, class);
    let left = match anchor {
        Anchor::Start => at.0,
        Anchor::Middle => at.0 - wide / 2.0,
        Anchor::End => at.0 - wide,
    };
    (left, at.1 - 11.0, left + wide, at.1 + 3.5)
}

/// A figure.
#[derive(Clone, Debug, PartialEq)]
pub struct Scene {
    /// Prefix of every id in the figure: unique on the page.
    pub id: String,
    /// Width of the view box.
    pub width: f64,
    /// Height of the view box.
    pub height: f64,
    /// Name of the figure, read out first.
    pub title: String,
    /// What the figure shows now, in a sentence.
    pub description: String,
    /// The marks, first drawn first.
    pub marks: Vec<Mark>,
}

impl Scene {
    /// The same lying on its side where that is wanted: what stood upright is level then, and the words say so.
    #[must_use]
    pub fn turned(self, wanted: bool) -> Self {
        if !wanted {
            return self;
        }
        let turn = Placed {
            x: 0.0,
            y: self.width,
            degrees: -90.0,
        };
        Self {
            width: self.height,
            height: self.width,
            description: self.description.replace("upright", "level"),
            marks: vec![Mark::Group {
                placed: turn,
                class: "",
                marks: self.marks,
            }],
            ..self
        }
    }

    /// The hatchings that the marks use, each once.
    #[must_use]
    pub fn hatches(&self) -> Vec<Hatch> {
        fn has(marks: &[Mark], hatch: Hatch) -> bool {
            marks.iter().any(|mark| match mark {
                Mark::Path { hatch: h, .. } | Mark::Rect { hatch: h, .. } => *h == Some(hatch),
                Mark::Group { marks, .. } => has(marks, hatch),
                _ => false,
            })
        }
        let all = Hatch::ALL.into_iter();
        all.filter(|hatch| has(&self.marks, *hatch)).collect()
    }

    /// The id of a hatching's pattern in this figure.
    #[must_use]
    pub fn hatch_id(&self, hatch: Hatch) -> String {
        format!("{}-{}", self.id, hatch.key())
    }

    /// The value of the view box attribute.
    #[must_use]
    pub fn view_box(&self) -> String {
        use crate::pen::coordinate as c;
        format!("0 0 {} {}", c(self.width), c(self.height))
    }
}

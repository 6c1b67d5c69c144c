//! The bolt shares less than you think: what of an outside pull a clamped bolt feels.

use super::both::Both;
use super::chart::{Axis, Chart, Curve, CurveKind, KeyPoint};
use super::control::{Choice, Control, Range};
use super::model::{Handle, Look, Model, Outcome, Picture, named, with_strip};
use super::sprung::Sprung;
use super::state::State;
use crate::parts::{
    ForceScale, StripField, bolt_head, force_arrow, nut, threaded_shank, washer_cut,
};
use crate::pen::Pen;
use crate::scene::{Anchor, CutMetal, Draw, Hatch, Lean, Mark, Placed, Scene};
use crate::units::Lettering;
use calc_core::Input;
use calc_core::catalog::{nut_factor, thread};
use calc_core::mechanics::opening::{bolt_pull, clamp_left, gap, separation_load};
use calc_core::mechanics::stiffness::load_factor;
use calc_core::mechanics::tightening::torque_for;
use calc_core::quantity::{Dimension, InUnits, Length, mm, newton};
use calc_core::scenario::Field;

/// The lesson.
pub(super) struct Share;

const PULL: usize = 0;
const CLAMP: usize = 1;
const ON: usize = 2;

const STANDS: &[Choice] = &[
    Choice::new("solid", "solid bar"),
    Choice::new("tube", "bare tube"),
];

/// Pull of the figure; its highest is the end of the plot's axis.
const PULLS: Both<Range> = Both {
    us: Range::new([0.0, 4000.0], 100.0, 0.0),
    metric: Range::new([0.0, 24.0], 0.5, 0.0),
};

const CONTROLS: &[Control] = &[
    Control::number("pull", "outside load", Dimension::Force, PULLS),
    Control::number(
        "clamp",
        "clamp load before that",
        Dimension::Force,
        // What the tube of the figure can stand; a test asks the calculator.
        Both {
            us: Range::new([0.0, 3200.0], 100.0, 2400.0),
            metric: Range::new([0.0, 16.0], 0.5, 12.0),
        },
    ),
    Control::choices("on", "What is between the plates?", STANDS, 0),
];

/// What the figure is made of, mm.
struct Stock {
    bolt: &'static str,
    grade: &'static str,
    /// Side and wall of bar and tube, and their metal; thickness of a strap.
    side: f64,
    wall: f64,
    metal: &'static str,
    strap: f64,
    /// Force that the balance is scaled for, and end of the plot's upright axis, N.
    most_force: f64,
    most_tension: f64,
}

static STOCK: Both<Stock> = Both {
    us: Stock {
        bolt: "unc-1.2",
        grade: "sae-5",
        // 2 x 2 x 3/16 in, 5/16 in; 4400 and 7000 lbf.
        side: 50.8,
        wall: 4.7625,
        metal: "a500-b",
        strap: 7.9375,
        most_force: 19_572.2,
        most_tension: 31_137.6,
    },
    metric: Stock {
        bolt: "m12",
        grade: "iso-8.8",
        side: 50.0,
        wall: 5.0,
        metal: "s235",
        strap: 8.0,
        most_force: 26e3,
        most_tension: 38e3,
    },
};

/// Two straps with a bar or a tube between them, bolted through, pulled apart along the bolts.
fn input(stock: &Stock, clamp: f64, pull: f64, tube: bool) -> Option<Input> {
    let lubrication = "zinc";
    let torque = torque_for(
        nut_factor(lubrication)?.typical(),
        thread(stock.bolt)?.major(),
        newton(clamp),
    );
    Some(Input::with(
        &[
            (Field::TubeWidth, stock.side),
            (Field::TubeDepth, stock.side),
            (Field::TubeWall, stock.wall),
            (Field::FittingThickness, stock.strap),
            (Field::Torque, torque.si().max(0.5)),
            (Field::EndDistance, 200.0),
            // Two bolts share it.
            (Field::FreeSide, 2.0 * pull),
            (Field::BallAhead, 0.0),
            (Field::BallBelow, 0.0),
        ],
        &[
            (Field::Mount, "through-sides"),
            (Field::Support, if tube { "bare" } else { "solid" }),
            (Field::TubeMaterial, stock.metal),
            (Field::Bolt, stock.bolt),
            (Field::Grade, stock.grade),
            (Field::Lubrication, lubrication),
            (Field::Joint, "free"),
        ],
    ))
}

struct Numbers {
    stock: &'static Stock,
    joint: Input,
    sprung: Sprung,
    tube: bool,
    clamp: f64,
    pull: f64,
    /// Share of the pull that the bolt feels, on this and on the other of the two.
    share: f64,
    other_share: f64,
    bolt: f64,
    faces: f64,
    parts: f64,
    gap: f64,
}

fn numbers(state: &State) -> Option<Numbers> {
    let stock = STOCK.of(state.units());
    let force = |control| state.si(control, Dimension::Force);
    let (clamp, pull) = (force(CLAMP), force(PULL));
    let tube = state.choice(ON) == 1;
    let joint = input(stock, clamp, pull, tube)?;
    let sprung = Sprung::new(&joint)?;
    let other = Sprung::new(&input(stock, clamp, pull, !tube)?)?;
    let share = load_factor(sprung.bolt, sprung.members);
    let (f, n) = (newton(clamp), newton(pull));
    let parts = separation_load(f, share);
    Some(Numbers {
        stock,
        tube,
        clamp,
        pull,
        share,
        other_share: load_factor(other.bolt, other.members),
        bolt: bolt_pull(f, share, n).si(),
        faces: clamp_left(f, share, n).si(),
        parts: parts.si(),
        gap: gap(n, parts, sprung.bolt).si(),
        joint,
        sprung,
    })
}

impl Model for Share {
    fn id(&self) -> &'static str {
        "share"
    }

    fn controls(&self) -> &'static [Control] {
        CONTROLS
    }

    fn outcome(&self, state: &State) -> Option<Outcome> {
        use Dimension::{Force, Length, Share, Stiffness};
        let n = numbers(state)?;
        let said = if n.pull == 0.0 && n.clamp == 0.0 {
            "start-loose"
        } else if n.pull == 0.0 {
            "start"
        } else if n.clamp == 0.0 {
            "loose"
        } else if n.pull > n.parts {
            "parted"
        } else if n.tube {
            "soft"
        } else if n.faces < 0.25 * n.clamp {
            "nearly"
        } else {
            "shared"
        };
        let with = |share| bolt_pull(newton(n.clamp), share, newton(n.pull)).si();
        Some(Outcome {
            said,
            seen: [
                if n.tube { "seen-tube" } else { "seen-bar" },
                "seen",
                if n.pull > n.parts {
                    "seen-apart"
                } else {
                    "seen-shut"
                },
            ],
            end: None,
            values: named![
                ("share", n.share, Share),
                ("other-share", n.other_share, Share),
                ("bolt-stiffness", n.sprung.bolt.si(), Stiffness),
                ("parts-stiffness", n.sprung.members.si(), Stiffness),
                ("bolt", n.bolt, Force),
                ("added", n.bolt - n.clamp, Force),
                ("faces", n.faces, Force),
                ("relieved", n.clamp - n.faces, Force),
                ("part-at", n.parts, Force),
                ("gap", n.gap, Length),
                ("other-added", with(n.other_share) - n.clamp, Force),
                // The wrong idea that the load comes on top of the clamp.
                ("on-top", with(1.0), Force),
            ],
            joint: n.joint,
        })
    }

    fn picture(&self, state: &State, look: &Look<'_>) -> Option<Picture> {
        let n = numbers(state)?;
        let scale = scale(look);
        let sheet = Sheet::new(&n);
        Some(Picture {
            drawing: drawing(&n, &sheet, scale, look),
            plot: Some(plot(&n, look)),
            handles: vec![Handle {
                control: PULL,
                at: sheet.tip(&n, scale),
                // Half of the pull is drawn on each side.
                along: (0.0, -scale.length(look.one(Dimension::Force) / 2.0)),
            }],
        })
    }
}

/// Drawing units in a millimetre; the gap is drawn larger.
const PER_MM: f64 = 2.2;
const TIMES: f64 = 100.0;
const AXIS: f64 = 112.0;
/// Half of the straps' length, and where the pull takes hold of them.
const HALF: f64 = 92.0;
const HOLD: f64 = 76.0;
/// Lower side of the bar or tube.
const FLOOR: f64 = 210.0;
/// The balance: its middle, the foot of its arrows.
const BALANCE: f64 = 268.0;
const FOOT: f64 = 252.0;
const HEIGHT: f64 = 338.0;

fn scale(look: &Look<'_>) -> ForceScale {
    ForceScale::fitting(STOCK.of(look.units).most_force, 111.0, look.units)
}

fn units(length: Length) -> f64 {
    length.si() * 1e3 * PER_MM
}

/// Heights of the planes.
struct Sheet {
    /// Lower side of the upper strap, and upper side of what it lies on.
    strap: f64,
    top: f64,
}

impl Sheet {
    fn new(n: &Numbers) -> Self {
        let top = FLOOR - n.stock.side * PER_MM;
        Self {
            strap: top - n.gap * 1e3 * TIMES * PER_MM,
            top,
        }
    }

    /// Tip of the pull's arrow at the upper right.
    fn tip(&self, n: &Numbers, scale: ForceScale) -> (f64, f64) {
        let from = self.strap - n.stock.strap * PER_MM;
        (AXIS + HOLD, from - scale.length(n.pull / 2.0))
    }
}

fn drawing(n: &Numbers, sheet: &Sheet, scale: ForceScale, look: &Look<'_>) -> Scene {
    let force = |amount| look.units.force(amount);
    let thick = n.stock.strap * PER_MM;
    let bore = units(n.sprung.scenario.bolting.hole) / 2.0;
    let mut marks = vec![Mark::group(
        Placed::default(),
        "p-face",
        between(n, sheet, bore),
    )];
    let mut straps = Vec::new();
    for (upper, lean) in [(sheet.strap - thick, Lean::Left), (FLOOR, Lean::Left)] {
        for side in [-1.0, 1.0] {
            straps.rect(
                (AXIS + side * bore, upper),
                (AXIS + side * HALF, upper + thick),
                "edge",
                Some(Hatch::new(CutMetal::Steel, lean)),
            );
        }
    }
    marks.group(Placed::default(), "p-plate", straps);
    marks.group(Placed::default(), "p-bolt", bolt(n, sheet));
    // The pull, half on each side, up and down.
    let half = scale.length(n.pull / 2.0);
    let mut pulls = Vec::new();
    for x in [AXIS - HOLD, AXIS + HOLD] {
        let (up, down) = (sheet.strap - thick, FLOOR + thick);
        pulls.all(force_arrow((x, up), (x, up - half), "load"));
        pulls.all(force_arrow((x, down), (x, down + half), "load"));
    }
    if half > 14.0 {
        let y = sheet.strap - thick - half / 2.0 + 4.0;
        let at = (AXIS - HOLD + 8.0, y);
        pulls.text(at, "half", "t s load", Anchor::Start);
        // On the right the hand's ring is in the way of a short arrow's lettering.
        if half > 32.0 {
            let at = (AXIS + HOLD - 8.0, y + 8.0);
            pulls.text(at, "half", "t s load", Anchor::End);
        }
    }
    pulls.circle(sheet.tip(n, scale), 11.0, "grip");
    marks.group(Placed::default(), "p-load", pulls);
    let words = if n.pull > 0.0 {
        format!("load {}", force(n.pull))
    } else {
        String::from("no load yet")
    };
    marks.text((8.0, 18.0), words, "t load halo", Anchor::Start);
    marks.all(balance(n, scale, look));
    let strip = vec![
        StripField::new("drawing", "two plates, cut"),
        StripField::new("gap", format!("×\u{a0}{TIMES}")),
        StripField::scale(scale),
    ];
    with_strip(look, HEIGHT, marks, strip)
}

/// The bar or the tube between the straps.
fn between(n: &Numbers, sheet: &Sheet, bore: f64) -> Vec<Mark> {
    let hatch = Hatch::new(CutMetal::Steel, Lean::Right);
    let half = n.stock.side / 2.0 * PER_MM;
    let mut marks = Vec::new();
    for side in [-1.0, 1.0] {
        if n.tube {
            let at = |x: f64, y: f64| (AXIS + side * x, y);
            let wall = n.stock.wall * PER_MM;
            let outer = 2.0 * wall;
            let inner = outer - wall;
            let turn = side > 0.0;
            let corner = |pen: Pen, r: f64, clockwise: bool, to: (f64, f64)| {
                pen.arc(r, clockwise == turn, to.0, to.1)
            };
            let to = |pen: Pen, p: (f64, f64)| pen.to(p.0, p.1);
            let (top, floor) = (sheet.top, FLOOR);
            let start = at(bore, top);
            let mut pen = to(Pen::at(start.0, start.1), at(half - outer, top));
            pen = corner(pen, outer, true, at(half, top + outer));
            pen = to(pen, at(half, floor - outer));
            pen = corner(pen, outer, true, at(half - outer, floor));
            pen = to(pen, at(bore, floor));
            pen = to(pen, at(bore, floor - wall));
            pen = to(pen, at(half - outer, floor - wall));
            pen = corner(pen, inner, false, at(half - wall, floor - outer));
            pen = to(pen, at(half - wall, top + outer));
            pen = corner(pen, inner, false, at(half - outer, top + wall));
            pen = to(pen, at(bore, top + wall));
            marks.cut(pen.close().d(), hatch);
        } else {
            marks.rect(
                (AXIS + side * bore, sheet.top),
                (AXIS + side * half, FLOOR),
                "edge",
                Some(hatch),
            );
        }
    }
    marks
}

fn bolt(n: &Numbers, sheet: &Sheet) -> Vec<Mark> {
    let bolting = &n.sprung.scenario.bolting;
    let thread = n.sprung.thread();
    let (d, flats) = (units(thread.major()), units(thread.width_across_flats()));
    let (outer, thick) = (units(bolting.washer.outer), units(bolting.washer.thickness));
    let bore = units(bolting.hole);
    let strap = n.stock.strap * PER_MM;
    let seat = sheet.strap - strap;
    let head = FLOOR + strap + thick;
    let nut_height = units(thread.nut_height());
    let end = seat - thick - nut_height - 2.0 * units(thread.pitch());
    let length = mm((head - end) / PER_MM);
    let mut marks = washer_cut(AXIS, outer, bore, seat - thick, seat, Lean::Right);
    marks.all(washer_cut(
        AXIS,
        outer,
        bore,
        head - thick,
        head,
        Lean::Right,
    ));
    let threaded = units(thread.thread_length(length));
    marks.all(threaded_shank(AXIS, d, head, end, threaded));
    marks.all(bolt_head(
        AXIS,
        head,
        flats,
        units(thread.head_height()),
        false,
    ));
    marks.all(nut(AXIS, seat - thick, flats, nut_height, true));
    let foot = head + units(thread.head_height());
    marks.line((AXIS, end - 7.0), (AXIS, foot + 7.0), "centre");
    marks
}

/// What acts on the upper strap, to scale: the bolt down; up against it the faces and the pull. The sum
/// stands above it, where no arrow reaches.
fn balance(n: &Numbers, scale: ForceScale, look: &Look<'_>) -> Vec<Mark> {
    let force = |amount| look.units.force(amount);
    let (bolt, faces) = (scale.length(n.bolt), scale.length(n.faces));
    let (left, right) = (BALANCE - 13.0, BALANCE + 13.0);
    let (top, seam) = (FOOT - bolt, FOOT - faces);
    let x = 218.0;
    let words = |at, text: String, class, anchor| Mark::text(at, text, class, anchor);
    let part = |name, inside| Mark::group(Placed::default(), name, inside);
    let mut pull = force_arrow((left, top), (left, FOOT), "clamp");
    pull.push(words(
        (x, 44.0),
        format!("bolt {}", force(n.bolt)),
        "t clamp",
        Anchor::Start,
    ));
    let mut press = force_arrow((right, FOOT), (right, seam), "clamp");
    let faces_are = if n.faces > 0.0 {
        format!("= faces {}", force(n.faces))
    } else {
        String::from("= faces 0: apart")
    };
    press.push(words((x, 62.0), faces_are, "t s clamp", Anchor::Start));
    let mut load = force_arrow((right, seam), (right, top), "load");
    load.push(words(
        (x, 79.0),
        format!("+ load {}", force(n.pull)),
        "t s load",
        Anchor::Start,
    ));
    // Names beside the arrows, where an arrow is long enough to have one.
    let named = |from: f64, to: f64| (from - to > 15.0).then(|| f64::midpoint(from, to) + 4.0);
    if let Some(y) = named(FOOT, top) {
        pull.push(words(
            (left - 9.0, y),
            "bolt".into(),
            "t s clamp",
            Anchor::End,
        ));
    }
    if let Some(y) = named(FOOT, seam) {
        press.push(words(
            (right + 9.0, y),
            "faces".into(),
            "t s clamp",
            Anchor::Start,
        ));
    }
    if let Some(y) = named(seam, top) {
        load.push(words(
            (right + 9.0, y),
            "load".into(),
            "t s load",
            Anchor::Start,
        ));
    }
    let mut marks = vec![
        Mark::line((left - 14.0, FOOT), (right + 14.0, FOOT), "thin"),
        words(
            (x, FOOT + 17.0),
            "on the upper plate".into(),
            "t s soft",
            Anchor::Start,
        ),
    ];
    if bolt > 0.0 {
        marks.line((left - 8.0, top), (right + 8.0, top), "thin");
    }
    marks.extend([
        part("p-bolt", pull),
        part("p-face", press),
        part("p-load", load),
    ]);
    marks
}

/// Pull in the bolt against the outside pull: flat while the faces take it over, 45° once they part.
fn plot(n: &Numbers, look: &Look<'_>) -> Chart {
    let most = PULLS.of(look.units).max * look.one(Dimension::Force);
    let line = |share: f64| {
        let parts = separation_load(newton(n.clamp), share).si();
        let mut points = vec![(0.0, n.clamp)];
        if parts < most {
            points.push((parts, parts));
        }
        let end = bolt_pull(newton(n.clamp), share, newton(most)).si();
        points.push((most, end));
        points
    };
    let mut curves = Vec::new();
    let mut points = vec![KeyPoint {
        name: String::from("now"),
        x: n.pull,
        y: n.bolt,
        here: true,
    }];
    // Before the first pull the plot gives nothing away.
    if n.pull > 0.0 {
        let there = if n.tube { "on the bar" } else { "on the tube" };
        if n.clamp > 0.0 {
            curves.push(Curve {
                points: line(n.other_share),
                kind: CurveKind::Beside,
                name: String::from(there),
                part: "",
            });
        }
        curves.push(Curve {
            points: vec![(0.0, 0.0), (most / 2.0, most / 2.0), (most, most)],
            kind: CurveKind::Beside,
            name: String::from("loose bolt"),
            part: "p-load",
        });
        curves.push(Curve {
            points: line(n.share),
            kind: CurveKind::This,
            name: String::new(),
            part: "p-bolt",
        });
        if n.clamp > 0.0 && n.parts < most && n.pull < 0.9 * n.parts {
            points.push(KeyPoint {
                name: String::from("faces separate"),
                x: n.parts,
                y: n.parts,
                here: false,
            });
        }
    }
    Chart {
        title: String::from("Tension in the bolt against the outside load"),
        x: Axis {
            name: "outside load",
            dimension: Dimension::Force,
            from: 0.0,
            to: most,
        },
        y: Axis {
            name: "tension in the bolt",
            dimension: Dimension::Force,
            from: 0.0,
            to: n.stock.most_tension,
        },
        band: None,
        curves,
        levels: Vec::new(),
        points,
        units: look.units,
    }
}

#[cfg(test)]
mod tests;

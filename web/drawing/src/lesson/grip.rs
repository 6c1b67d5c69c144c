//! Friction carries the load: two plates, a bolt that squeezes them, a load that wants to part them.

use super::DRAWING_WIDTH;
use super::both::Both;
use super::chart::{Axis, Chart, Curve, CurveKind, KeyPoint};
use super::control::{Choice, Control, Range};
use super::model::{Handle, Look, Model, Outcome, Picture, named, with_strip};
use super::state::State;
use crate::parts::{
    ForceScale, StripField, arrow_tip, bolt_head, force_arrow, nut, threaded_shank, washer_cut,
};
use crate::scene::{Anchor, CutMetal, Draw, Hatch, Lean, Mark, Placed, Scene, text_width};
use crate::units::Lettering;
use calc_core::Input;
use calc_core::catalog::{bolt_grade, slip_surface, thread};
use calc_core::mechanics::slip::resistance;
use calc_core::quantity::{Dimension, InUnits, mm, newton};
use calc_core::scenario::Field;

/// The lesson.
pub(super) struct Grip;

const CLAMP: usize = 0;
const LOAD: usize = 1;
const SURFACE: usize = 2;

const SURFACES: &[Choice] = &[
    Choice::new("bare-clean", "bare, clean steel"),
    Choice::new("painted", "painted"),
];

const CONTROLS: &[Control] = &[
    Control::number(
        "clamp",
        "clamp load of the bolt",
        Dimension::Force,
        Both {
            us: Range::new([0.0, 8000.0], 100.0, 6000.0),
            metric: Range::new([0.0, 40.0], 0.5, 30.0),
        },
    ),
    Control::number("load", "load along the plates", Dimension::Force, LOADS),
    Control::choices("surface", "What is between the plates?", SURFACES, 0),
];

/// Load that the figure goes to; its highest is the end of the plot's axis.
const LOADS: Both<Range> = Both {
    us: Range::new([0.0, 2400.0], 20.0, 0.0),
    metric: Range::new([0.0, 12.0], 0.1, 0.0),
};

/// What the figure is made of, mm.
struct Stock {
    bolt: &'static str,
    grade: &'static str,
    /// The bolt on the drawing.
    called: &'static str,
    /// Its normal clearance hole.
    hole: f64,
    /// Thickness of a plate where the lesson's joint is checked, and its metal.
    plate: f64,
    metal: &'static str,
    /// Largest clamp, N: for the scale of the arrows.
    most_clamp: f64,
}

static STOCK: Both<Stock> = Both {
    us: Stock {
        bolt: "unc-1.2",
        grade: "sae-5",
        called: "1/2 in",
        // 9/16 in and 5/8 in.
        hole: 14.2875,
        plate: 15.875,
        metal: "a36",
        // 8000 lbf.
        most_clamp: 35_586.0,
    },
    metric: Stock {
        bolt: "m12",
        grade: "iso-8.8",
        called: "M12",
        hole: 13.5,
        plate: 16.0,
        metal: "s235",
        most_clamp: 40e3,
    },
};

struct Numbers {
    stock: &'static Stock,
    /// Diameter of the bolt, m.
    d: f64,
    clamp: f64,
    load: f64,
    mu: f64,
    grips: f64,
    friction: f64,
    on_bolt: f64,
    play: f64,
    slides: bool,
}

/// What friction holds of a clamp, N.
fn held(mu: f64, clamp: f64) -> f64 {
    resistance(1.0, mu, newton(clamp), newton(0.0), 0.0).si()
}

/// The clamp whose friction just holds a load, N: what is held grows in proportion to the clamp.
fn needed(load: f64, mu: f64) -> f64 {
    load / held(mu, 1.0)
}

fn numbers(state: &State) -> Option<Numbers> {
    let surface = slip_surface(SURFACES.get(state.choice(SURFACE))?.key)?;
    let stock = STOCK.of(state.units());
    let d = thread(stock.bolt)?.major().si();
    let force = |control| state.si(control, Dimension::Force);
    let (clamp, load) = (force(CLAMP), force(LOAD));
    let mu = surface.mu();
    let grips = held(mu, clamp);
    let slides = load > grips;
    Some(Numbers {
        stock,
        d,
        clamp,
        load,
        mu,
        grips,
        // Once it slides friction still pulls back with what it has; the bolt takes the rest.
        friction: load.min(grips),
        on_bolt: (load - grips).max(0.0),
        play: stock.hole * 1e-3 - d,
        slides,
    })
}

/// A plate on a bar of steel, held by the one bolt.
fn joint(n: &Numbers, surface: &str) -> Input {
    let Stock {
        bolt,
        grade,
        plate,
        metal,
        ..
    } = *n.stock;
    let proof = thread(bolt).and_then(|thread| {
        let proof = bolt_grade(grade)?
            .strength(thread, mm(4.0 * plate))?
            .proof?;
        Some(thread.stress_area().si() * proof.si())
    });
    Input::with(
        &[
            (Field::TubeDepth, plate),
            (Field::FittingThickness, plate),
            (Field::BoltsAlong, 1.0),
            // As far as a bolt can be set: the figure also shows a loose one.
            (
                Field::PreloadShare,
                (n.clamp / proof.unwrap_or(f64::INFINITY)).clamp(0.05, 1.0),
            ),
            (Field::FreeAlong, n.load),
        ],
        &[
            (Field::TubeMaterial, metal),
            (Field::Support, "solid"),
            (Field::Mount, "from-top"),
            (Field::Bolt, bolt),
            (Field::Grade, grade),
            (Field::Surface, surface),
            (Field::Joint, "free"),
        ],
    )
}

impl Model for Grip {
    fn id(&self) -> &'static str {
        "grip"
    }

    fn controls(&self) -> &'static [Control] {
        CONTROLS
    }

    fn sizes(&self) -> &'static [&'static str] {
        &["play"]
    }

    fn outcome(&self, state: &State) -> Option<Outcome> {
        use Dimension::{Force, Length, Ratio};
        let n = numbers(state)?;
        let said = if n.load == 0.0 && n.clamp == 0.0 {
            "start-loose"
        } else if n.load == 0.0 {
            "start"
        } else if n.clamp == 0.0 {
            "loose"
        } else if n.slides {
            "slides"
        } else if n.load > 0.8 * n.grips {
            "nearly"
        } else {
            "grips"
        };
        let bare = slip_surface(SURFACES.first()?.key)?.mu();
        Some(Outcome {
            said,
            seen: [
                "seen",
                if n.slides { "seen-slid" } else { "seen-still" },
                "",
            ],
            end: None,
            values: named![
                ("mu", n.mu, Ratio),
                ("grips", n.grips, Force),
                ("friction", n.friction, Force),
                ("bolt-load", n.on_bolt, Force),
                ("play", n.play, Length),
                // The wrong ideas that an answer may come from.
                ("all-of-it", n.clamp, Force),
                ("needed-clamp", needed(n.load, n.mu), Force),
                ("needed-bare", needed(n.load, bare), Force),
                ("times-mu", held(n.mu, n.load), Force),
            ],
            joint: joint(&n, SURFACES.get(state.choice(SURFACE))?.key),
        })
    }

    fn picture(&self, state: &State, look: &Look<'_>) -> Option<Picture> {
        let n = numbers(state)?;
        let scale = scale(look);
        Some(Picture {
            drawing: drawing(&n, look),
            plot: Some(plot(&n, look)),
            handles: vec![
                Handle {
                    control: LOAD,
                    at: load_tip(&n, scale),
                    along: (scale.length(look.one(Dimension::Force)), 0.0),
                },
                Handle {
                    control: CLAMP,
                    at: clamp_tail(&n, scale),
                    along: (0.0, -scale.length(look.one(Dimension::Force) / 2.0)),
                },
            ],
        })
    }
}

/// Middle of the bolt, the plane between the plates, thickness of a plate as drawn, units.
const BOLT_X: f64 = 156.0;
const PLANE: f64 = 160.0;
const PLATE: f64 = 40.0;
const TOP: f64 = PLANE - PLATE;
const BOTTOM: f64 = PLANE + PLATE;
/// Ends of the plates: the upper one is broken off at the right, the lower one at the left.
const UPPER_ENDS: (f64, f64) = (80.0, 264.0);
const LOWER_ENDS: (f64, f64) = (62.0, 232.0);
/// How far beside the bolt the arrows of the clamp stand, just outside its washers.
const BESIDE: f64 = 54.0;
/// How far from the plane friction is drawn, and the push of a plate on the bolt.
const NEAR_PLANE: f64 = 8.5;
const IN_PLATE: f64 = 26.0;
/// Drawing units in a millimetre: the bolt and its hole are in true proportion.
const PER_MM: f64 = 3.4;
const HEIGHT: f64 = 338.0;

/// One scale for all forces. The clamp is drawn in halves, one on each side of the bolt: so the loads,
/// which friction makes a fifth of it at most, are long enough to be read.
fn scale(look: &Look<'_>) -> ForceScale {
    ForceScale::fitting(STOCK.of(look.units).most_clamp / 2.0, 97.0, look.units)
}

/// How far each plate has moved past the bolt.
fn slid(n: &Numbers) -> f64 {
    if n.slides {
        n.play * 1e3 * PER_MM / 2.0
    } else {
        0.0
    }
}

fn load_tip(n: &Numbers, scale: ForceScale) -> (f64, f64) {
    let end = UPPER_ENDS.1 + slid(n);
    (end + scale.length(n.load), PLANE - PLATE / 2.0)
}

fn clamp_tail(n: &Numbers, scale: ForceScale) -> (f64, f64) {
    (BOLT_X + BESIDE, TOP - scale.length(n.clamp / 2.0))
}

fn drawing(n: &Numbers, look: &Look<'_>) -> Scene {
    let scale = scale(look);
    let slid = slid(n);
    let mut marks = plates(n, slid);
    marks.group(Placed::default(), "p-bolt", bolt(n));
    marks.line(
        (LOWER_ENDS.0 - slid, PLANE),
        (UPPER_ENDS.1 + slid, PLANE),
        "cutting",
    );
    marks.group(Placed::default(), "p-clamp", squeeze(n, scale, look));
    marks.group(Placed::default(), "p-load", pulls(n, scale, look));
    marks.group(Placed::default(), "p-clamp", friction(n, scale, look));
    marks.group(Placed::default(), "p-bolt", pushes(n, scale, look));
    if n.slides {
        marks.all(travel(n, slid, look));
    }
    let strip = vec![
        StripField::new("drawing", format!("two plates, {} bolt", n.stock.called)),
        StripField::scale(scale),
    ];
    with_strip(look, HEIGHT, marks, strip)
}

/// The two plates; each has gone its way by `slid`, away from where the bolt stands in mid-hole.
fn plates(n: &Numbers, slid: f64) -> Vec<Mark> {
    let hole = n.stock.hole * PER_MM / 2.0;
    let mut marks = Vec::new();
    for ((left, right), top, by, lean) in [
        (UPPER_ENDS, TOP, slid, Lean::Right),
        (LOWER_ENDS, PLANE, -slid, Lean::Left),
    ] {
        let hatch = Some(Hatch::new(CutMetal::Steel, lean));
        let bottom = top + PLATE;
        for (a, b) in [(left, BOLT_X - hole), (BOLT_X + hole, right)] {
            marks.rect((a + by, top), (b + by, bottom), "edge", hatch);
        }
    }
    marks
}

fn bolt(n: &Numbers) -> Vec<Mark> {
    // Washer, nut and head in proportion to the bolt, as they are for M12 and 1/2 in alike.
    let d = n.d * 1e3 * PER_MM;
    let thick = 0.21 * d;
    let (top, foot) = (TOP - thick, BOTTOM + thick);
    let mut marks = threaded_shank(BOLT_X, d, foot, top - 46.0, 60.0);
    for (a, b, lean) in [(top, TOP, Lean::Left), (BOTTOM, foot, Lean::Right)] {
        marks.all(washer_cut(BOLT_X, 2.0 * d, d, a, b, lean));
    }
    marks.all(nut(BOLT_X, top, 1.5 * d, 0.9 * d, true));
    marks.all(bolt_head(BOLT_X, foot, 1.5 * d, 0.63 * d, false));
    marks.line((BOLT_X, top - 54.0), (BOLT_X, foot + 34.0), "centre");
    marks
}

/// The clamp presses the plates together, half of it on each side of the bolt.
fn squeeze(n: &Numbers, scale: ForceScale, look: &Look<'_>) -> Vec<Mark> {
    let half = scale.length(n.clamp / 2.0);
    let mut marks = Vec::new();
    for x in [BOLT_X - BESIDE, BOLT_X + BESIDE] {
        marks.all(force_arrow((x, TOP - half), (x, TOP), "clamp"));
        marks.all(force_arrow((x, BOTTOM + half), (x, BOTTOM), "clamp"));
    }
    marks.circle(clamp_tail(n, scale), 12.0, "grip");
    let words = format!("clamp {}", look.units.force(n.clamp));
    let beside = 8.0 + text_width(&words, "t clamp") * 1.05 + 8.0;
    marks.text((8.0, 16.0), words, "t clamp", Anchor::Start);
    marks.text(
        (beside, 16.0),
        "half on each side",
        "t s soft",
        Anchor::Start,
    );
    marks
}

fn pulls(n: &Numbers, scale: ForceScale, look: &Look<'_>) -> Vec<Mark> {
    let tip = load_tip(n, scale);
    let mut marks = force_arrow((tip.0 - scale.length(n.load), tip.1), tip, "load");
    let (x, y) = (LOWER_ENDS.0 - slid(n), PLANE + PLATE / 2.0);
    marks.all(force_arrow((x, y), (x - scale.length(n.load), y), "load"));
    marks.circle(tip, 12.0, "grip");
    marks.text(
        (DRAWING_WIDTH - 8.0, TOP - 11.0),
        format!("load {}", look.units.force(n.load)),
        "t load halo",
        Anchor::End,
    );
    marks
}

/// Friction as it holds each plate back, along the plane, and what it has.
fn friction(n: &Numbers, scale: ForceScale, look: &Look<'_>) -> Vec<Mark> {
    let long = scale.length(n.friction);
    let (left, right) = (BOLT_X + 38.0, BOLT_X + 38.0 + long);
    let (above, below) = (PLANE - NEAR_PLANE, PLANE + NEAR_PLANE);
    let mut marks = ground(n.friction, (left, right), (above, below));
    marks.all(force_arrow((right, above), (left, above), "clamp"));
    marks.all(force_arrow((left, below), (right, below), "clamp"));
    let (x, y) = (LOWER_ENDS.1 + 12.0, PLANE + 20.0);
    let has = format!("of {}", look.units.force(n.grips));
    marks.text((x, y), "friction", "t clamp", Anchor::Start);
    marks.text(
        (x, y + 17.0),
        look.units.force(n.friction),
        "t clamp",
        Anchor::Start,
    );
    marks.text((x, y + 33.0), has, "t s soft", Anchor::Start);
    marks
}

/// What the two plates do to the bolt, and it to them.
fn pushes(n: &Numbers, scale: ForceScale, look: &Look<'_>) -> Vec<Mark> {
    let long = scale.length(n.on_bolt);
    let r = n.d * 1e3 / 2.0 * PER_MM;
    let (above, below) = (PLANE - IN_PLATE, PLANE + IN_PLATE);
    let (left, right) = (BOLT_X - r, BOLT_X + r);
    let mut marks = ground(n.on_bolt, (left - long, left), (above, above));
    marks.all(ground(n.on_bolt, (right, right + long), (below, below)));
    marks.all(force_arrow((left - long, above), (left, above), "load"));
    marks.all(force_arrow((right + long, below), (right, below), "load"));
    for (text, y) in [
        (String::from("on bolt"), 0.0),
        (look.units.force(n.on_bolt), 17.0),
    ] {
        let class = if n.slides { "t load" } else { "t" };
        marks.text((4.0, TOP + 15.0 + y), text, class, Anchor::Start);
    }
    marks
}

/// A bare strip under an arrow, so that it does not lie in the hatching.
fn ground(force: f64, (left, right): (f64, f64), (top, bottom): (f64, f64)) -> Vec<Mark> {
    if force <= 0.0 {
        return Vec::new();
    }
    let (a, b) = ((left - 2.0, top - 7.0), (right + 2.0, bottom + 7.0));
    vec![Mark::rect(a, b, "part", None)]
}

/// How far the plates have slid past each other.
fn travel(n: &Numbers, slid: f64, look: &Look<'_>) -> Vec<Mark> {
    let (was, is) = (UPPER_ENDS.0 - slid, UPPER_ENDS.0 + slid);
    let y = TOP - 11.0;
    let mut marks = vec![
        Mark::line((was, TOP + 10.0), (was, y - 4.0), "thin"),
        Mark::line((is, TOP - 2.0), (is, y - 4.0), "thin"),
    ];
    for (end, way) in [(was, 1.0), (is, -1.0)] {
        marks.line((end - 15.0 * way, y), (end - 8.0 * way, y), "thin");
        marks.push(arrow_tip((end, y), (way, 0.0), 9.0, "tip"));
    }
    let how_far = look.units.stock(n.play * 1e3);
    marks.text((4.0, y - 23.0), "slid", "t s", Anchor::Start);
    marks.text((4.0, y - 8.0), how_far, "t s", Anchor::Start);
    marks
}

/// What friction holds and what is left for the bolt, against the load.
fn plot(n: &Numbers, look: &Look<'_>) -> Chart {
    let end = look.one(Dimension::Force) * LOADS.of(look.units).max;
    let rest = (end - n.grips).max(0.0);
    let between = (f64::midpoint(n.grips, end), rest / 2.0);
    let axis = |name| Axis {
        name,
        dimension: Dimension::Force,
        from: 0.0,
        to: end,
    };
    Chart {
        title: String::from("What friction holds and what reaches the bolt"),
        x: axis("load along the plates"),
        y: axis("carried"),
        band: None,
        curves: vec![
            Curve {
                points: vec![(0.0, 0.0), (n.grips, n.grips), (end, n.grips)],
                kind: CurveKind::Beside,
                name: String::from("friction"),
                part: "p-clamp",
            },
            Curve {
                points: vec![(0.0, 0.0), (n.grips, 0.0), between, (end, rest)],
                kind: CurveKind::This,
                name: String::from("on the bolt"),
                part: "p-bolt",
            },
        ],
        levels: Vec::new(),
        points: vec![
            KeyPoint {
                name: String::from("here it slips"),
                x: n.grips,
                y: n.grips,
                here: false,
            },
            KeyPoint {
                name: String::from("the bolt now"),
                x: n.load,
                y: n.on_bolt,
                here: true,
            },
        ],
        units: look.units,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    use calc_core::quantity::UnitSystem::{self, Metric, Us};

    fn amounts(text: &str) -> (Outcome, impl Fn(&str) -> f64 + use<>) {
        amounts_in(text, Metric)
    }

    fn amounts_in(text: &str, units: UnitSystem) -> (Outcome, impl Fn(&str) -> f64 + use<>) {
        let state = State::parse(CONTROLS, text, units).unwrap();
        let outcome = Grip.outcome(&state).unwrap();
        let values = outcome.values.clone();
        let of = move |name: &str| values.iter().find(|v| v.0 == name).unwrap().1.si;
        (outcome, of)
    }

    #[test]
    fn the_bolt_feels_nothing_until_the_plates_slide() {
        for load in ["0", "2", "5.9", "6"] {
            let (outcome, of) = amounts(&format!("clamp=30 load={load}"));
            assert_ne!(outcome.said, "slides");
            assert!(of("bolt-load").abs() < 1e-9, "{load}");
            assert!((of("friction") - load.parse::<f64>().unwrap() * 1e3).abs() < 1e-9);
        }
        let (outcome, of) = amounts("clamp=30 load=9");
        assert_eq!(outcome.said, "slides");
        assert!((of("bolt-load") + of("friction") - 9e3).abs() < 1e-9);
    }

    /// NASA-STD-5020B: 0.2 for bare, clean metal, 0.1 for everything else; 30 kN × 0.2 = 6 kN.
    #[test]
    fn what_is_gripped_is_a_share_of_the_clamp() {
        assert!((amounts("clamp=30").1("grips") - 6e3).abs() < 1e-9);
        assert!((amounts("clamp=30 surface=painted").1("grips") - 3e3).abs() < 1e-9);
        // Backwards, as the last problem asks: 4 kN / 0.1 = 40 kN.
        let (_, of) = amounts("clamp=30 load=4 surface=painted");
        assert!((of("needed-clamp") - 40e3).abs() < 1e-6);
        assert!((of("needed-bare") - 20e3).abs() < 1e-6);
        // 6000 lbf × 0.2 = 1200 lbf; 800 lbf / 0.1 = 8000 lbf.
        let (_, of) = amounts_in("clamp=6000 load=800 surface=painted", Us);
        assert!((of("needed-clamp") / 4.448_222 - 8000.0).abs() < 0.01);
        let (_, of) = amounts_in("clamp=6000", Us);
        assert!((of("grips") / 4.448_222 - 1200.0).abs() < 0.01);
    }

    #[test]
    fn both_plates_together_slide_by_the_play_of_one_hole() {
        // M12 in its normal clearance hole, ISO 273: 13.5 mm.
        assert!((amounts("load=12").1("play") - 1.5e-3).abs() < 1e-9);
        // 1/2 in in a hole of 9/16 in.
        assert!((amounts_in("load=2400", Us).1("play") - 0.0254 / 16.0).abs() < 1e-9);
    }

    #[test]
    fn the_arrow_of_the_load_moves_as_its_handle_says() {
        for (units, low, high) in [(Metric, 1.0, 4.0), (Us, 200.0, 800.0)] {
            let tip = |load: f64| {
                let state = State::start(CONTROLS, units).with(CONTROLS, LOAD, load);
                Grip.picture(&state, &state.look("x")).unwrap().handles[0]
            };
            let (a, b) = (tip(low), tip(high));
            assert!((b.at.0 - a.at.0 - (high - low) * a.along.0).abs() < 1e-9);
        }
    }
}

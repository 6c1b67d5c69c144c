//! Torque is mostly friction: where the work at the wrench goes, and what clamp a torque leaves open.

use super::DRAWING_WIDTH;
use super::chart::{Axis, Band, Chart, Curve, CurveKind, KeyPoint, Level};
use super::control::{Choice, Control, ControlKind, State};
use super::model::{Look, Model, Outcome, Picture, value};
use crate::parts::{
    ForceScale, Strip, StripField, arrow_tip, bolt_head, force_arrow, thread_end_view,
    threaded_shank, washer_cut, wrench,
};
use crate::pen::{Pen, polyline};
use crate::scene::{Anchor, Draw, Hatch, Lean, Mark, Material, Placed, Scene};
use crate::units::Lettering;
use calc_core::catalog::{Thread, nut_factor};
use calc_core::mechanics::tightening::{clamp_from, scattered, torque_for};
use calc_core::quantity::{
    Dimension, InUnits, Length, Unit, newton, newton_metre, write, write_parts,
};
use calc_core::report::TighteningReport;
use calc_core::scenario::Field;
use calc_core::{Input, Scenario, evaluate, torque_turn};

/// The lesson.
pub(super) struct Torque;

const TORQUE: usize = 0;
const THREADS: usize = 1;
const METHOD: usize = 2;

const STATES: &[Choice] = &[
    Choice {
        key: "dry",
        name: "bare steel, dry",
    },
    Choice {
        key: "zinc",
        name: "zinc plated, dry",
    },
    Choice {
        key: "oiled",
        name: "oiled",
    },
    Choice {
        key: "waxed",
        name: "zinc plated and waxed (value from memory)",
    },
];

const METHODS: &[Choice] = &[
    Choice {
        key: "feel",
        name: "by feel",
    },
    Choice {
        key: "wrench",
        name: "torque wrench",
    },
    Choice {
        key: "turn",
        name: "counted turn of the nut",
    },
];

/// Largest torque of the figure, N·m: the end of the plot's axis.
const MOST: f64 = 140.0;

const CONTROLS: &[Control] = &[
    Control {
        key: "torque",
        label: "torque on the wrench",
        kind: ControlKind::Number {
            dimension: Dimension::Torque,
            unit: Unit::NewtonMetre,
            min: 0.0,
            max: MOST,
            step: 1.0,
            start: 0.0,
        },
    },
    Control {
        key: "threads",
        label: "How are the threads?",
        kind: ControlKind::Choices {
            of: STATES,
            start: 0,
        },
    },
    Control {
        key: "method",
        label: "How is it tightened?",
        kind: ControlKind::Choices {
            of: METHODS,
            start: 1,
        },
    },
];

/// The row of nut factors that a state of the threads stands for, and its short name on the plot.
fn lubrication(choice: usize) -> (&'static str, &'static str) {
    match choice {
        0 => ("dry", "dry"),
        1 => ("zinc", "dry"),
        2 => ("oiled", "oiled"),
        _ => ("waxed-zinc", "waxed"),
    }
}

/// Nut factor of a state of the threads.
fn factor(choice: usize) -> Option<f64> {
    Some(nut_factor(lubrication(choice).0)?.typical())
}

/// What is bolted: a plate on a solid bar of steel.
fn input(torque_nm: f64, state: &State) -> Input {
    let mut input = Input::with(
        &[
            (Field::TubeDepth, 40.0),
            (Field::TubeWall, 6.0),
            (Field::FittingThickness, 10.0),
        ],
        &[
            (Field::Mount, "from-top"),
            (Field::Support, "solid"),
            (Field::TubeMaterial, "a36"),
            (Field::Bolt, "m12"),
            (Field::Grade, "iso-8.8"),
            (Field::Lubrication, lubrication(state.choice(THREADS)).0),
            (
                Field::Method,
                METHODS
                    .get(state.choice(METHOD))
                    .map_or("wrench", |c| c.key),
            ),
        ],
    );
    // Nobody pulls yet: then the joint is tightened as it should be.
    input.set_number(Field::Torque, (torque_nm >= 0.5).then_some(torque_nm));
    input
}

struct Numbers {
    scenario: Scenario,
    report: TighteningReport,
    torque: f64,
    k: f64,
    /// Clamp that is aimed at, and the ends of its scatter; none beyond where the bolt yields, N.
    clamp: f64,
    low: f64,
    high: f64,
    /// The same torque on dry threads.
    dry: f64,
    turn_deg: f64,
}

fn numbers(state: &State) -> Option<Numbers> {
    let torque = state.number(TORQUE);
    let scenario = Scenario::new(&input(torque, state)).ok()?;
    let report = evaluate(&scenario).tightening;
    let curve = torque_turn(&scenario);
    let k = factor(state.choice(THREADS))?;
    let d = scenario.bolting.thread.major();
    let nominal = clamp_from(k, d, newton_metre(torque));
    let (low, high) = scattered(nominal, report.scatter_share);
    let yields = report.yield_load_n;
    Some(Numbers {
        torque,
        k,
        clamp: nominal.si().min(yields),
        low: low.si().min(yields),
        high: high.si().min(yields),
        dry: clamp_from(factor(0)?, d, newton_metre(torque))
            .si()
            .min(yields),
        turn_deg: if torque > 0.0 {
            let last = curve.points.last()?;
            curve.at_wanted.as_ref().unwrap_or(last).turn_deg
        } else {
            0.0
        },
        scenario,
        report,
    })
}

impl Numbers {
    fn thread(&self) -> &'static Thread {
        self.scenario.bolting.thread
    }

    fn yields(&self) -> bool {
        self.clamp >= self.report.yield_load_n
    }
}

impl Model for Torque {
    fn id(&self) -> &'static str {
        "torque"
    }

    fn words(&self) -> &'static str {
        include_str!("../../../../content/20-torque.toml")
    }

    fn controls(&self) -> &'static [Control] {
        CONTROLS
    }

    fn outcome(&self, state: &State) -> Option<Outcome> {
        let n = numbers(state)?;
        let r = &n.report;
        let said = if n.torque == 0.0 {
            "start"
        } else if n.yields() {
            "yields"
        } else if n.high > r.proof_load_n {
            "may-pass"
        } else if n.k < factor(0)? {
            "slick"
        } else if n.clamp < 0.25 * r.proof_load_n {
            "little"
        } else {
            "dry"
        };
        let (force, torque, share) = (Dimension::Force, Dimension::Torque, Dimension::Share);
        let d = n.thread().major();
        let applied = newton_metre(n.torque);
        let dry = factor(0)?;
        Some(Outcome {
            said,
            values: vec![
                value("k", n.k, Dimension::Ratio),
                value("dry-k", dry, Dimension::Ratio),
                value("d", d.si(), Dimension::Length),
                value("pitch", n.thread().pitch().si(), Dimension::Length),
                value("clamp", n.clamp, force),
                value("low", n.low, force),
                value("high", n.high, force),
                value("scatter", r.scatter_share, share),
                value("dry-clamp", n.dry, force),
                value("proof", r.proof_load_n, force),
                value("yield", r.yield_load_n, force),
                value("to-stretch", n.torque * r.share_stretch, torque),
                value("to-thread", n.torque * r.share_thread_friction, torque),
                value("to-face", n.torque * r.share_face_friction, torque),
                value("share-stretch", r.share_stretch, share),
                value("share-thread", r.share_thread_friction, share),
                value("share-face", r.share_face_friction, share),
                value(
                    "full",
                    torque_for(n.k, d, newton(r.yield_load_n)).si(),
                    torque,
                ),
                // The wrong idea that slippery threads clamp less: the nut factor the wrong way round.
                value("less", clamp_from(dry * dry / n.k, d, applied).si(), force),
            ],
            joint: input(n.torque, state),
        })
    }

    fn picture(&self, state: &State, look: &Look<'_>) -> Option<Picture> {
        let n = numbers(state)?;
        Some(Picture {
            drawing: drawing(&n, look),
            plot: Some(plot(&n, state, look)?),
            handles: Vec::new(),
        })
    }
}

/// Middle of the bolt, drawing units in a millimetre, heights of the section's planes.
const AXIS: f64 = 88.0;
const PER_MM: f64 = 2.9;
const SEAT: f64 = 92.0;
const PLIES: f64 = 26.0;
const HALF: f64 = 58.0;
/// The bar that shows where the torque goes.
const BAR: (f64, f64) = (188.0, 209.0);
const BAR_TOP: f64 = 34.0;
const BAR_FOOT: f64 = 188.0;
/// The wrench from above: middle, reach, where it starts in degrees from upright.
const PLAN: (f64, f64) = (88.0, 284.0);
const REACH: f64 = 66.0;
const FROM: f64 = -52.0;
const STRIP_TOP: f64 = 322.0;
const HEIGHT: f64 = 360.0;

fn drawing(n: &Numbers, look: &Look<'_>) -> Scene {
    let units = look.units;
    let scale = ForceScale::fitting(n.report.yield_load_n, 52.0, units);
    let mut marks = section(n);
    marks.all(clamp_arrows(n, scale, look));
    marks.all(bar(n, look));
    marks.all(plan(n));
    let torque = write(n.torque, Dimension::Torque, units);
    let on_wrench = if n.torque > 0.0 {
        format!("torque {torque}")
    } else {
        String::from("no torque yet")
    };
    let x = PLAN.0 + 64.0;
    marks.text((x, 238.0), on_wrench, "t load", Anchor::Start);
    if n.torque > 0.0 {
        let low = write_parts(n.low, Dimension::Force, units).0;
        let lines = if n.yields() {
            [
                String::from("the bolt yields:"),
                String::from("no click, no more clamp"),
            ]
        } else {
            [
                String::from("the clamp may be"),
                format!("{low} to {}", units.force(n.high)),
            ]
        };
        for (y, text) in [260.0, 279.0].into_iter().zip(lines) {
            marks.text((x, y), text, "t clamp", Anchor::Start);
        }
    }
    let strip = Strip {
        fields: vec![
            StripField::new("drawing", "M12 bolt and its nut, cut"),
            StripField::scale(scale.text()),
        ],
    };
    marks.all(strip.marks(DRAWING_WIDTH, STRIP_TOP));
    Scene {
        id: look.id.into(),
        width: DRAWING_WIDTH,
        height: HEIGHT,
        title: String::from("Where the torque goes"),
        description: if n.torque > 0.0 {
            format!(
                "{torque} on the wrench: {} rubs under the nut, {} rubs in the thread, {} stretches the bolt. \
                 Clamp {}, between {} and {}.",
                write(
                    n.torque * n.report.share_face_friction,
                    Dimension::Torque,
                    units
                ),
                write(
                    n.torque * n.report.share_thread_friction,
                    Dimension::Torque,
                    units
                ),
                write(n.torque * n.report.share_stretch, Dimension::Torque, units),
                units.force(n.clamp),
                units.force(n.low),
                units.force(n.high),
            )
        } else {
            String::from(
                "An M12 bolt through two plates, its nut cut open; no torque on the wrench yet.",
            )
        },
        marks,
    }
}

fn units(length: Length) -> f64 {
    length.si() * 1e3 * PER_MM
}

/// Two plates, the bolt, its nut cut open, and where it rubs.
fn section(n: &Numbers) -> Vec<Mark> {
    let bolting = &n.scenario.bolting;
    let thread = n.thread();
    let (d, flats) = (units(thread.major()), units(thread.width_across_flats()));
    let (outer, thick, bore) = (
        units(bolting.washer.outer),
        units(bolting.washer.thickness),
        units(bolting.hole),
    );
    let (top, seam, bottom) = (
        SEAT + thick,
        SEAT + thick + PLIES,
        SEAT + thick + 2.0 * PLIES,
    );
    let mut stack = Vec::new();
    for (upper, lower, lean) in [(top, seam, Lean::Left), (seam, bottom, Lean::Right)] {
        for side in [-1.0, 1.0] {
            stack.rect(
                (AXIS + side * bore / 2.0, upper),
                (AXIS + side * HALF, lower),
                "edge",
                Some(Hatch::new(Material::Steel, lean)),
            );
        }
    }
    let mut marks = vec![Mark::group(Placed::default(), "p-plate", stack)];
    let nut = units(thread.nut_height());
    let end = SEAT - nut - 2.0 * units(thread.pitch());
    let head = bottom + thick;
    let mut bolt = washer_cut(AXIS, outer, bore, SEAT, top, Lean::Right);
    bolt.all(washer_cut(AXIS, outer, bore, bottom, head, Lean::Left));
    bolt.all(threaded_shank(AXIS, d, head, end, SEAT + 30.0 - end));
    bolt.all(bolt_head(
        AXIS,
        head,
        flats,
        units(thread.head_height()),
        false,
    ));
    // The nut cut open, so that the thread inside is seen; bevelled like the whole one.
    let (near, far, bevel) = (d / 2.0, flats * 0.577, flats * 0.045);
    for side in [-1.0, 1.0] {
        let at = |x: f64, y: f64| (AXIS + side * x, y);
        let corner = far - 2.0 * bevel;
        let outline = [
            at(near, SEAT),
            at(corner, SEAT),
            at(far, SEAT - bevel),
            at(far, SEAT - nut + bevel),
            at(corner, SEAT - nut),
            at(near, SEAT - nut),
        ];
        bolt.cut(
            polyline(outline) + "Z",
            Hatch::new(
                Material::Steel,
                if side > 0.0 { Lean::Left } else { Lean::Right },
            ),
        );
        if n.torque > 0.0 {
            // Rubbing: zigzag along the thread, a bar under the face.
            bolt.path(flanks(AXIS + side * near, nut), "force load");
            bolt.line(at(near + 2.0, SEAT), at(corner, SEAT), "force load");
        }
    }
    marks.group(Placed::default(), "p-bolt", bolt);
    let foot = head + units(thread.head_height());
    marks.line((AXIS, end - 7.0), (AXIS, foot + 7.0), "centre");
    marks
}

/// The thread inside the nut as a zigzag.
fn flanks(x: f64, nut: f64) -> String {
    let mut pen = Pen::at(x, SEAT - 1.0);
    for i in 1..=8_u8 {
        let way = if i % 2 == 0 { -1.5 } else { 1.5 };
        pen = pen.to(x + way, SEAT - 1.0 - (nut - 2.0) * f64::from(i) / 8.0);
    }
    pen.d()
}

/// What comes out: the squeeze, with its scatter as a thin line across the arrow's tail.
fn clamp_arrows(n: &Numbers, scale: ForceScale, look: &Look<'_>) -> Vec<Mark> {
    let x = AXIS - 46.0;
    let bolting = &n.scenario.bolting;
    let thick = units(bolting.washer.thickness);
    let (top, bottom) = (SEAT + thick, SEAT + thick + 2.0 * PLIES);
    let length = scale.length(n.clamp);
    let mut marks = force_arrow((x, top - length), (x, top), "clamp");
    marks.all(force_arrow((x, bottom + length), (x, bottom), "clamp"));
    if n.clamp > 0.0 {
        let (low, high) = (scale.length(n.low), scale.length(n.high));
        let beside = x - 11.0;
        for end in [low, high] {
            marks.line((beside - 5.0, top - end), (x + 5.0, top - end), "thin");
        }
        marks.line((beside, top - low), (beside, top - high), "thin");
        marks.text(
            (8.0, 24.0),
            format!("clamp {}", look.units.force(n.clamp)),
            "t clamp halo",
            Anchor::Start,
        );
    }
    vec![Mark::group(Placed::default(), "p-clamp", marks)]
}

/// The torque as a bar, cut where it goes; leaders to the places.
fn bar(n: &Numbers, look: &Look<'_>) -> Vec<Mark> {
    let (left, right) = BAR;
    let mut marks = Vec::new();
    if n.torque <= 0.0 {
        marks.rect((left, BAR_TOP), (right, BAR_FOOT), "edge", None);
        let x = right + 10.0;
        let middle = f64::midpoint(BAR_TOP, BAR_FOOT);
        for (y, text) in [
            (-4.0, "the torque:"),
            (14.0, "where does it"),
            (32.0, "go?"),
        ] {
            marks.text((x, middle + y), text, "t", Anchor::Start);
        }
        return marks;
    }
    let r = &n.report;
    let high = BAR_FOOT - BAR_TOP;
    let thread = BAR_TOP + high * r.share_thread_friction;
    let face = thread + high * r.share_face_friction;
    let nut = units(n.thread().nut_height());
    let d = units(n.thread().major());
    let steel = |lean| Some(Hatch::new(Material::Aluminium, lean));
    let shown = [
        (
            (BAR_TOP, thread),
            "in the thread",
            r.share_thread_friction,
            (AXIS + d / 2.0, SEAT - nut * 0.6),
        ),
        (
            (thread, face),
            "under the nut",
            r.share_face_friction,
            (AXIS + d * 0.65, SEAT),
        ),
        (
            (face, BAR_FOOT),
            "into stretch",
            r.share_stretch,
            (AXIS + d * 0.25, SEAT + PLIES * 1.75),
        ),
    ];
    for (i, ((from, to), name, share, place)) in shown.into_iter().enumerate() {
        let middle = f64::midpoint(from, to);
        marks.line(place, (left, middle), "thin");
        marks.circle(place, 2.4, "dot");
        let (class, hatch) = match i {
            0 => ("edge", steel(Lean::Left)),
            1 => ("edge", steel(Lean::Right)),
            _ => ("force-tip clamp", None),
        };
        marks.rect((left, from), (right, to), class, hatch);
        let text = if i == 2 { "t clamp" } else { "t" };
        // The small piece at the foot has its two lines about it, the others about their middle.
        let y = if i == 2 { to - 12.0 } else { middle - 2.0 };
        marks.text((right + 8.0, y), name, text, Anchor::Start);
        let amount = format!(
            "{}, {}",
            write(n.torque * share, Dimension::Torque, look.units),
            write(rounded(share), Dimension::Share, look.units)
        );
        marks.text((right + 8.0, y + 15.0), amount, "t s", Anchor::Start);
    }
    marks.rect((left, BAR_TOP), (right, BAR_FOOT), "edge", None);
    marks.text(
        (left, BAR_TOP - 8.0),
        "where it goes",
        "t s soft",
        Anchor::Start,
    );
    marks
}

/// Whole percent: more digits than the friction is known to would only be noise.
fn rounded(share: f64) -> f64 {
    (share * 100.0).round() / 100.0
}

/// The wrench from above, turned as far as this torque takes the nut.
fn plan(n: &Numbers) -> Vec<Mark> {
    let flats = 27.0;
    let d = flats * n.thread().major().si() / n.thread().width_across_flats().si();
    let ends = |degrees: f64, r: f64| {
        let (sin, cos) = (degrees + FROM).to_radians().sin_cos();
        (r * sin, -r * cos)
    };
    let turn = n.turn_deg;
    let mut inside = vec![Mark::line(
        ends(0.0, flats),
        ends(0.0, REACH + 4.0),
        "phantom",
    )];
    inside.group(
        Placed {
            x: 0.0,
            y: 0.0,
            degrees: turn + FROM,
        },
        "",
        wrench(flats, REACH),
    );
    inside.all(thread_end_view(d));
    if turn >= 6.0 {
        let arc = (0..=24_u8).map(|i| ends((turn - 5.0) * f64::from(i) / 24.0, REACH + 4.0));
        inside.path(polyline(arc), "turned");
        let (sin, cos) = (turn + FROM).to_radians().sin_cos();
        inside.push(arrow_tip(ends(turn, REACH + 4.0), (cos, sin), 9.0, "tip"));
    }
    vec![Mark::group(Placed::at(PLAN.0, PLAN.1), "plan", inside)]
}

/// Clamp against torque: the aim, its scatter, and the same bolt with other threads.
fn plot(n: &Numbers, state: &State, look: &Look<'_>) -> Option<Chart> {
    let d = n.thread().major();
    let yields = n.report.yield_load_n;
    let line = |k: f64, share: f64| {
        let full = torque_for(k, d, newton(yields)).si() / share;
        vec![(0.0, 0.0), (full, yields), (full.max(MOST), yields)]
    };
    let mut curves = Vec::new();
    if n.torque > 0.0 {
        for choice in [0, 2, 3] {
            let k = factor(choice)?;
            if (k - n.k).abs() > 1e-9 {
                curves.push(Curve {
                    // Up to the yield: beyond it all are one.
                    points: line(k, 1.0).into_iter().take(2).collect(),
                    kind: CurveKind::Beside,
                    name: lubrication(choice).1.into(),
                    part: "",
                });
            }
        }
    }
    curves.push(Curve {
        points: line(n.k, 1.0),
        kind: CurveKind::This,
        name: String::new(),
        part: "p-clamp",
    });
    let scatter = n.report.scatter_share;
    let mut points = vec![KeyPoint {
        name: lubrication(state.choice(THREADS)).1.into(),
        x: n.torque,
        y: n.clamp,
        here: true,
    }];
    if n.high < yields && n.high - n.low > 7e3 {
        for (name, y) in [("least", n.low), ("most", n.high)] {
            points.push(KeyPoint {
                name: name.into(),
                x: n.torque,
                y,
                here: false,
            });
        }
    }
    Some(Chart {
        title: String::from("Clamp against torque"),
        x: Axis {
            name: "torque",
            dimension: Dimension::Torque,
            from: 0.0,
            to: MOST,
        },
        y: Axis {
            name: "clamp",
            dimension: Dimension::Force,
            from: 0.0,
            to: 70e3,
        },
        band: Some(Band {
            lower: line(n.k, 1.0 - scatter),
            upper: line(n.k, 1.0 + scatter),
            name: String::new(),
        }),
        curves,
        levels: vec![Level {
            y: n.report.proof_load_n,
            name: String::from("proof load"),
        }],
        points,
        units: look.units,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(text: &str) -> Numbers {
        numbers(&State::parse(CONTROLS, text).unwrap()).unwrap()
    }

    /// By hand: 60 N·m on M12 with K = 0.20 aims at 60/(0.2·0.012) = 25 kN; ± 25 % of it is 18.75 to
    /// 31.25 kN. What stretches the bolt is P/(2π·K·d) = 1.75/(2π·2.4) = 11.6 %, whatever the face.
    #[test]
    fn aim_scatter_and_shares_are_those_worked_by_hand() {
        let n = at("torque=60");
        for (value, by_hand) in [
            (n.clamp, 25e3),
            (n.low, 18.75e3),
            (n.high, 31.25e3),
            (n.report.share_stretch * 1e5, 0.116_05 * 1e5),
        ] {
            assert!((value / by_hand - 1.0).abs() < 1e-3, "{value} {by_hand}");
        }
        let r = &n.report;
        let all = r.share_stretch + r.share_thread_friction + r.share_face_friction;
        assert!((all - 1.0).abs() < 1e-9);
    }

    #[test]
    fn slippery_threads_clamp_more_at_the_same_torque() {
        let (dry, oiled, waxed) = (
            at("torque=60"),
            at("torque=60 threads=oiled"),
            at("torque=60 threads=waxed"),
        );
        assert!(dry.clamp < oiled.clamp && oiled.clamp < waxed.clamp);
        // "By a lot": 0.20/0.12.
        assert!((waxed.clamp / dry.clamp - 5.0 / 3.0).abs() < 1e-6);
        assert!((waxed.dry - dry.clamp).abs() < 1e-6);
        assert!(waxed.report.share_stretch > 1.5 * dry.report.share_stretch);
    }

    #[test]
    fn more_torque_is_not_always_more_clamp() {
        let (a, b) = (
            at("torque=100 threads=waxed"),
            at("torque=120 threads=waxed"),
        );
        assert!(a.yields() && b.yields());
        assert!((a.clamp - b.clamp).abs() < 1e-9);
        assert!(!at("torque=120 threads=dry").yields());
    }

    /// What is drawn and said is what the calculator says of the lesson's joint.
    #[test]
    fn the_aim_is_the_calculators() {
        let n = at("torque=70 threads=oiled method=feel");
        let r = &n.report;
        assert!((n.clamp / r.clamp_nominal_n - 1.0).abs() < 1e-9);
        assert!((n.low / r.clamp_min_n - 1.0).abs() < 1e-9);
        assert!((n.k - r.nut_factor).abs() < 1e-12);
    }
}

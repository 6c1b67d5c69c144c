//! Torque is mostly friction: where the work at the wrench goes, and what clamp a torque leaves open.

mod drawing;

use super::both::Both;
use super::chart::{Axis, Band, Chart, Curve, CurveKind, KeyPoint, Level};
use super::control::{Choice, Control, Range};
use super::model::{Look, Model, Outcome, Picture, named};
use super::state::State;
use calc_core::catalog::{Thread, nut_factor};
use calc_core::evaluate::basis;
use calc_core::evaluate::known_torque_turn;
use calc_core::mechanics::tightening::{clamp_from, scattered, torque_for};
use calc_core::quantity::{Dimension, InUnits, newton, newton_metre};
use calc_core::report::TighteningReport;
use calc_core::scenario::Field;
use calc_core::{Input, Scenario};

/// The lesson.
pub(super) struct Torque;

const TORQUE: usize = 0;
const THREADS: usize = 1;
const METHOD: usize = 2;

const STATES: &[Choice] = &[
    Choice::new("dry", "bare steel, dry"),
    Choice::new("zinc", "zinc plated, dry"),
    Choice::new("oiled", "oiled"),
    Choice::new("waxed", "zinc plated and waxed (value from memory)"),
];

const METHODS: &[Choice] = &[
    Choice::new("feel", "by feel"),
    Choice::new("wrench", "torque wrench"),
    Choice::new("turn", "counted turn of the nut"),
];

/// Torque of the figure; its highest is the end of the plot's axis.
const TORQUES: Both<Range> = Both {
    us: Range::new([0.0, 110.0], 1.0, 0.0),
    metric: Range::new([0.0, 140.0], 1.0, 0.0),
};

const CONTROLS: &[Control] = &[
    Control::number("torque", "torque on the wrench", Dimension::Torque, TORQUES),
    Control::choices("threads", "What is on the threads?", STATES, 0),
    Control::choices("method", "How is it tightened?", METHODS, 1),
];

/// What the figure is made of.
struct Stock {
    bolt: &'static str,
    grade: &'static str,
    /// The bolt on the drawing.
    called: &'static str,
    /// The bar and the plate on it, mm; their metal.
    bar: f64,
    plate: f64,
    metal: &'static str,
    /// Clamp up to which the plot goes, N.
    most_clamp: f64,
}

static STOCK: Both<Stock> = Both {
    us: Stock {
        bolt: "unc-1.2",
        grade: "sae-5",
        called: "1/2 in",
        // 1-1/2 in and 3/8 in.
        bar: 38.1,
        plate: 9.525,
        metal: "a36",
        // 16,000 lbf.
        most_clamp: 71_171.5,
    },
    metric: Stock {
        bolt: "m12",
        grade: "iso-8.8",
        called: "M12",
        bar: 40.0,
        plate: 10.0,
        metal: "s235",
        most_clamp: 70e3,
    },
};

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
    let stock = STOCK.of(state.units());
    let mut input = Input::with(
        &[
            (Field::TubeDepth, stock.bar),
            (Field::TubeWall, 6.0),
            (Field::FittingThickness, stock.plate),
        ],
        &[
            (Field::Mount, "from-top"),
            (Field::Support, "solid"),
            (Field::TubeMaterial, stock.metal),
            (Field::Bolt, stock.bolt),
            (Field::Grade, stock.grade),
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
    /// How far the nut goes for a newton metre, as long as the bolt is a spring.
    deg_per_nm: f64,
}

fn numbers(state: &State) -> Option<Numbers> {
    let torque = state.si(TORQUE, Dimension::Torque);
    let scenario = Scenario::new(&input(torque, state)).ok()?;
    let report = basis(&scenario).tightening;
    let curve = known_torque_turn(&scenario);
    let k = factor(state.choice(THREADS))?;
    let d = scenario.bolting.thread.major();
    let nominal = clamp_from(k, d, newton_metre(torque));
    let (low, high) = scattered(nominal, report.scatter_share);
    let yields = report.yield_load_n;
    let last = curve.points.last()?;
    let reached = curve.at_wanted.as_ref().unwrap_or(last);
    Some(Numbers {
        torque,
        k,
        clamp: nominal.si().min(yields),
        low: low.si().min(yields),
        high: high.si().min(yields),
        dry: clamp_from(factor(0)?, d, newton_metre(torque))
            .si()
            .min(yields),
        turn_deg: if torque > 0.0 { reached.turn_deg } else { 0.0 },
        deg_per_nm: reached.turn_deg / reached.torque_nm.max(1.0),
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

    fn controls(&self) -> &'static [Control] {
        CONTROLS
    }

    fn sizes(&self) -> &'static [&'static str] {
        &["d"]
    }

    fn outcome(&self, state: &State) -> Option<Outcome> {
        use Dimension::{Force, Length, Ratio, Share, Torque};
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
        let d = n.thread().major();
        let applied = newton_metre(n.torque);
        let dry = factor(0)?;
        Some(Outcome {
            said,
            seen: [if n.torque > 0.0 { "seen" } else { "seen-none" }, "", ""],
            end: None,
            values: named![
                ("k", n.k, Ratio),
                ("dry-k", dry, Ratio),
                ("d", d.si(), Length),
                ("pitch", n.thread().pitch().si(), Length),
                ("clamp", n.clamp, Force),
                ("low", n.low, Force),
                ("high", n.high, Force),
                ("scatter", r.scatter_share, Share),
                ("dry-clamp", n.dry, Force),
                ("proof", r.proof_load_n, Force),
                ("yield", r.yield_load_n, Force),
                ("to-stretch", n.torque * r.share_stretch, Torque),
                ("to-thread", n.torque * r.share_thread_friction, Torque),
                ("to-face", n.torque * r.share_face_friction, Torque),
                ("share-stretch", r.share_stretch, Share),
                ("share-thread", r.share_thread_friction, Share),
                ("share-face", r.share_face_friction, Share),
                (
                    "full",
                    torque_for(n.k, d, newton(r.yield_load_n)).si(),
                    Torque
                ),
                // The wrong idea that slippery threads clamp less: the nut factor the wrong way round.
                ("less", clamp_from(dry * dry / n.k, d, applied).si(), Force),
            ],
            joint: input(n.torque, state),
        })
    }

    fn picture(&self, state: &State, look: &Look<'_>) -> Option<Picture> {
        let n = numbers(state)?;
        Some(Picture {
            drawing: drawing::drawing(&n, look),
            plot: Some(plot(&n, state, look)?),
            handles: vec![drawing::handle(&n, look)],
        })
    }
}

/// Clamp against torque: the aim, its scatter, and the same bolt with other threads.
fn plot(n: &Numbers, state: &State, look: &Look<'_>) -> Option<Chart> {
    let d = n.thread().major();
    let yields = n.report.yield_load_n;
    let most = CONTROLS.first()?.most(look.units);
    let line = |k: f64, share: f64| {
        let full = torque_for(k, d, newton(yields)).si() / share;
        vec![(0.0, 0.0), (full, yields), (full.max(most), yields)]
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
        title: String::from("Clamp load against torque"),
        x: Axis {
            name: "torque",
            dimension: Dimension::Torque,
            from: 0.0,
            to: most,
        },
        y: Axis {
            name: "clamp load",
            dimension: Dimension::Force,
            from: 0.0,
            to: STOCK.of(look.units).most_clamp,
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
mod tests;

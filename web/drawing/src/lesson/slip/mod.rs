//! Once it slips: the bolt rests on the edges of its holes and is bent like an axle.

mod drawing;

use super::both::Both;
use super::chart::{Axis, Chart, Curve, CurveKind, KeyPoint, Level};
use super::control::{Choice, Control, Range};
use super::model::{Look, Model, Outcome, Picture, named};
use super::state::State;
use calc_core::Input;
use calc_core::catalog::{
    BoltGrade, HoleFit, Material, Thread, bolt_grade, clearance_hole, material, thread,
};
use calc_core::mechanics::{pin, shear};
use calc_core::quantity::{Dimension, InUnits, Length, Stress, mm, newton};
use calc_core::scenario::Field;

/// The lesson.
pub(super) struct Slip;

const LOAD: usize = 0;
const WALL: usize = 1;
const STATE: usize = 2;

const STATES: &[Choice] = &[
    Choice::new("new", "holes as drilled, side plates against the walls"),
    Choice::new("oval", "holes worn oval"),
    Choice::new("packed", "shims between side plates and walls"),
];
const OVAL: usize = 1;
const PACKED: usize = 2;

/// Load; its highest is the end of the plot's axis.
const LOADS: Both<Range> = Both {
    us: Range::new([-4000.0, 4000.0], 50.0, 0.0),
    metric: Range::new([-16.0, 16.0], 0.2, 0.0),
};

const CONTROLS: &[Control] = &[
    Control::number(
        "load",
        "load along the tube (negative = push)",
        Dimension::Force,
        LOADS,
    ),
    Control::number(
        "wall",
        "wall of the tube",
        Dimension::Length,
        Both {
            us: Range::new([0.0625, 0.1875], 0.015_625, 0.078_125),
            metric: Range::new([1.5, 5.0], 0.1, 2.0),
        },
    ),
    Control::choices("joint", "What state is the joint in?", STATES, 0),
];

/// The joint of the lesson: a bolt through both walls of a steel tube, a side plate on each side; mm.
struct Stock {
    bolt: &'static str,
    grade: &'static str,
    /// The next grade up.
    stronger: &'static str,
    /// The bolt on the drawing.
    called: &'static str,
    /// Metal of the tube; its size along the bolt and across it.
    metal: &'static str,
    tube: f64,
    tube_other: f64,
    cheek: f64,
    /// Thickness of the shims.
    packing: f64,
    /// Length of a hole that has worn oval.
    oval: f64,
}

static STOCK: Both<Stock> = Both {
    us: Stock {
        bolt: "unc-1.2",
        grade: "sae-5",
        stronger: "sae-8",
        called: "1/2 in",
        metal: "a500-b",
        // 1-1/2 x 3 in, 3/16 in, 5/16 in, 11/16 in.
        tube: 38.1,
        tube_other: 76.2,
        cheek: 4.7625,
        packing: 7.9375,
        oval: 17.4625,
    },
    metric: Stock {
        bolt: "m12",
        grade: "iso-8.8",
        stronger: "iso-10.9",
        called: "M12",
        metal: "s355",
        tube: 40.0,
        tube_other: 80.0,
        cheek: 5.0,
        packing: 8.0,
        oval: 17.0,
    },
};

/// About as long as the bolts are, mm.
const BOLT_MM: f64 = 110.0;

struct Numbers {
    stock: &'static Stock,
    thread: &'static Thread,
    /// Load with its sign, N.
    load: f64,
    /// Its amount on one wall, and on one cheek, N.
    each: f64,
    wall: Length,
    d: Length,
    /// Hole in the walls, the long way, and in the cheeks.
    hole: Length,
    cheek_hole: Length,
    gap: Length,
    lever: Length,
    /// Between the middles of the walls.
    span: Length,
    modulus: Stress,
    tube_yield: f64,
    /// Pressure of the bolt on the rim and what the rim may carry, Pa.
    pressure: f64,
    pressure_allowed: f64,
    /// Bending of the bolt and what it may carry, N·m.
    moment: f64,
    moment_allowed: f64,
    /// Load that walls, bolt in shear, and a stronger bolt in shear may carry, N.
    wall_allowed: f64,
    shear_allowed: f64,
    stronger_allowed: f64,
}

/// Load that the bolt may carry across both planes; threads may reach them.
fn sheared(thread: &Thread, grade: &BoltGrade) -> Option<f64> {
    let tensile = grade.strength(thread, mm(BOLT_MM))?.tensile;
    Some(shear::bolt(tensile, thread.shank_area(), 2.0, true).si() / shear::OMEGA)
}

fn numbers(state: &State) -> Option<Numbers> {
    let stock = STOCK.of(state.units());
    let (thread, grade) = (thread(stock.bolt)?, bolt_grade(stock.grade)?);
    let tube: &Material = material(stock.metal)?;
    let d = thread.major();
    let load = state.si(LOAD, Dimension::Force);
    let wall = mm(state.mm(WALL));
    let each = load.abs() / 2.0;
    let is = state.choice(STATE);
    let gap = mm(if is == PACKED { stock.packing } else { 0.0 });
    let cheek_hole = clearance_hole(thread, HoleFit::Normal)?.diameter;
    let lever = pin::lever(mm(stock.cheek), gap, wall);
    let tube_yield = tube.least().yield_strength();
    let bolt_yield = grade.strength(thread, mm(BOLT_MM))?.yield_?;
    // The nut's thread reaches past the wall: the weakest section bends.
    let bends = thread.minor_diameter();
    let wall_strength = shear::wall_bearing(tube_yield, d, wall, 2.0);
    Some(Numbers {
        stock,
        thread,
        load,
        each,
        wall,
        d,
        hole: if is == OVAL {
            mm(stock.oval)
        } else {
            cheek_hole
        },
        cheek_hole,
        gap,
        lever,
        span: mm(stock.tube) - wall,
        modulus: grade.modulus(),
        tube_yield: tube_yield.si(),
        pressure: pin::pressure(newton(each), d, wall).si(),
        pressure_allowed: pin::pressure(wall_strength * (0.5 / shear::OMEGA), d, wall).si(),
        moment: pin::moment(newton(each), lever).si(),
        moment_allowed: pin::strength(bolt_yield, bends).si() / pin::OMEGA,
        wall_allowed: wall_strength.si() / shear::OMEGA,
        shear_allowed: sheared(thread, grade)?,
        stronger_allowed: sheared(thread, bolt_grade(stock.stronger)?)?,
    })
}

impl Numbers {
    fn wall_share(&self) -> f64 {
        self.pressure / self.pressure_allowed
    }

    fn bending_share(&self) -> f64 {
        self.moment / self.moment_allowed
    }

    fn shear_share(&self) -> f64 {
        2.0 * self.each / self.shear_allowed
    }

    fn said(&self) -> &'static str {
        match (self.wall_share() > 1.0, self.bending_share() > 1.0) {
            _ if self.load == 0.0 && self.hole > self.cheek_hole => "start-oval",
            _ if self.load == 0.0 && self.gap.si() > 0.0 => "start-packed",
            _ if self.load == 0.0 => "start",
            (true, true) => "both",
            (true, false) => "wall",
            (false, true) => "bends",
            (false, false) if self.hole > self.cheek_hole => "oval",
            (false, false) if self.gap.si() > 0.0 => "packed",
            (false, false) => "rests",
        }
    }
}

impl Model for Slip {
    fn id(&self) -> &'static str {
        "slip"
    }

    fn controls(&self) -> &'static [Control] {
        CONTROLS
    }

    fn sizes(&self) -> &'static [&'static str] {
        &["bolt", "hole", "travel"]
    }

    fn outcome(&self, state: &State) -> Option<Outcome> {
        use Dimension::{Force, Length, Moment, Share, Stress};
        let n = numbers(state)?;
        let area = n.thread.shank_area().si();
        let one_wall = pin::pressure(newton(2.0 * n.each), n.d, n.wall).si();
        let travel = pin::slip_travel(n.d, n.hole, n.cheek_hole).si();
        Some(Outcome {
            said: n.said(),
            seen: match n.load {
                0.0 => ["seen-none", "", ""],
                load if load > 0.0 => ["seen-pulls", "seen-bolt", ""],
                _ => ["seen-pushes", "seen-bolt", ""],
            },
            end: None,
            values: named![
                ("pull", 2.0 * n.each, Force),
                ("per-wall", n.each, Force),
                ("bolt", n.d.si(), Length),
                ("pressure", n.pressure, Stress),
                ("pressure-allowed", n.pressure_allowed, Stress),
                ("tube-yield", n.tube_yield, Stress),
                ("wall-share", n.wall_share(), Share),
                ("wall-allowed", n.wall_allowed, Force),
                ("wall-needed", n.wall.si() * n.wall_share(), Length),
                ("lever", n.lever.si(), Length),
                ("moment", n.moment, Moment),
                ("moment-allowed", n.moment_allowed, Moment),
                ("bending-share", n.bending_share(), Share),
                ("shear-allowed", n.shear_allowed, Force),
                ("shear-stronger", n.stronger_allowed, Force),
                ("hole", n.hole.si(), Length),
                ("travel", travel, Length),
                // The wrong ideas that an answer may come from: one wall has it all; the bolt's own
                // section; the wall used up to its strength; one wall alone.
                ("one-wall", one_wall, Stress),
                ("bolt-section", n.each / area, Stress),
                (
                    "wall-unsafe",
                    n.wall.si() * n.wall_share() / shear::OMEGA,
                    Length
                ),
                ("wall-one", n.wall.si() * n.wall_share() * 2.0, Length),
            ],
            joint: joint(&n),
        })
    }

    fn picture(&self, state: &State, look: &Look<'_>) -> Option<Picture> {
        let n = numbers(state)?;
        let most = numbers(&state.with(CONTROLS, LOAD, LOADS.of(look.units).max))?;
        Some(Picture {
            drawing: drawing::drawing(&n, look),
            plot: Some(plot(&n, &most, look)),
            handles: vec![drawing::handle(&n, look)],
        })
    }
}

fn joint(n: &Numbers) -> Input {
    let stock = n.stock;
    let worn = n.hole > n.cheek_hole;
    let mut input = Input::with(
        &[
            (Field::TubeWidth, stock.tube_other),
            (Field::TubeDepth, stock.tube),
            (Field::TubeWall, n.wall.si() * 1e3),
            (Field::FittingThickness, stock.cheek),
            (Field::FittingGap, n.gap.si() * 1e3),
            (Field::FittingHole, n.cheek_hole.si() * 1e3),
            (Field::BoltsAlong, 1.0),
            (Field::FreeAlong, n.load),
        ],
        &[
            (Field::TubeMaterial, stock.metal),
            (Field::Bolt, stock.bolt),
            (Field::Grade, stock.grade),
            (Field::Joint, "free"),
        ],
    );
    input.set_number(Field::Hole, worn.then_some(n.hole.si() * 1e3));
    input
}

/// What wall, bending and shear are asked for, each as a share of what it may carry.
fn plot(n: &Numbers, most: &Numbers, look: &Look<'_>) -> Chart {
    let end = most.load;
    let line = |name: &str, share: f64, kind, part| Curve {
        points: [0.0, 0.25, 0.5, 0.75, 1.0]
            .map(|s| (s * end, s * share))
            .to_vec(),
        kind,
        name: name.into(),
        part,
    };
    let (wall, bends) = (most.wall_share(), most.bending_share());
    let (name, here) = if n.wall_share() >= n.bending_share() {
        ("the wall now", n.wall_share())
    } else {
        ("the bolt's bending now", n.bending_share())
    };
    Chart {
        title: String::from("How much of each is used up"),
        x: Axis {
            name: "load",
            dimension: Dimension::Force,
            from: 0.0,
            to: end,
        },
        y: Axis {
            name: "share of its limit",
            dimension: Dimension::Share,
            from: 0.0,
            to: 2.0,
        },
        band: None,
        curves: vec![
            line("wall pressed", wall, CurveKind::This, "p-wall"),
            line("bolt bent", bends, CurveKind::Beside, "p-bolt"),
            line("bolt sheared", most.shear_share(), CurveKind::Beside, ""),
        ],
        levels: vec![Level {
            y: 1.0,
            name: String::from("the limit"),
        }],
        points: vec![KeyPoint {
            name: String::from(name),
            x: 2.0 * n.each,
            y: here,
            here: true,
        }],
        units: look.units,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    use calc_core::quantity::UnitSystem::{self, Metric, Us};

    fn is(text: &str, units: UnitSystem) -> (&'static str, impl Fn(&str) -> f64 + use<>) {
        let state = State::parse(CONTROLS, text, units).unwrap();
        let Outcome { said, values, .. } = Slip.outcome(&state).unwrap();
        let of = move |name: &str| values.iter().find(|v| v.0 == name).unwrap().1.si;
        (said, of)
    }

    fn of(text: &str, name: &str) -> f64 {
        is(text, Metric).1(name)
    }

    fn said(text: &str) -> &'static str {
        is(text, Metric).0
    }

    /// By hand: half of 12 kN on 12 mm × 2 mm; 1.8·f_y/2.00 of AISC 360-22 J3.11b and J7 with 355 MPa.
    #[test]
    fn pressure_is_force_over_bolt_times_wall() {
        assert!((of("load=12 wall=2", "pressure") - 250e6).abs() < 1.0);
        let allowed = of("load=12", "pressure-allowed");
        assert!((allowed - 0.9 * 355e6).abs() < 1e4, "{allowed}");
        // 1000 lbf on 1/2 in × 1/16 in is 32 ksi; 0.9 · 46 ksi.
        let (_, us) = is("load=2000 wall=1/16in", Us);
        assert!((us("pressure") / 6.894_757e6 - 32.0).abs() < 1e-3);
        assert!((us("pressure-allowed") / 6.894_757e6 - 41.4).abs() < 1e-3);
    }

    #[test]
    fn the_wall_gives_way_long_before_the_bolt_is_sheared() {
        for (units, load, walls) in [
            (Metric, 16, ["1.5", "3", "5"]),
            (Us, 4000, ["1/16", "1/8", "3/16"]),
        ] {
            for wall in walls {
                let (_, of) = is(&format!("load={load} wall={wall}"), units);
                assert!(of("wall-allowed") < 0.95 * of("shear-allowed"), "{wall}");
            }
            // A stronger bolt changes nothing about the wall.
            let (_, of) = is("", units);
            assert!(of("shear-stronger") > 1.2 * of("shear-allowed"));
        }
    }

    #[test]
    fn pulling_and_pushing_press_alike() {
        for name in ["pressure", "moment", "pull"] {
            assert!(
                (of("load=9", name) - of("load=-9", name)).abs() < 1e-6,
                "{name}"
            );
        }
    }

    #[test]
    fn an_oval_hole_lets_the_joint_run_further_and_presses_no_harder() {
        // (13.5 − 12) + (13.5 − 12) and (17 − 12) + (13.5 − 12), mm.
        assert!((of("load=9", "travel") - 3e-3).abs() < 1e-9);
        assert!((of("load=9 joint=oval", "travel") - 6.5e-3).abs() < 1e-9);
        // 1/16 in + 1/16 in and 3/16 in + 1/16 in.
        assert!((is("load=900", Us).1("travel") - 0.0254 / 8.0).abs() < 1e-9);
        assert!((is("load=900 joint=oval", Us).1("travel") - 0.0254 / 4.0).abs() < 1e-9);
        assert!((of("load=9", "pressure") - of("load=9 joint=oval", "pressure")).abs() < 1e-6);
    }

    #[test]
    fn words_follow_what_gives_way_first() {
        assert_eq!(said("load=8"), "rests");
        assert_eq!(said("load=15 wall=1.5"), "wall");
        assert_eq!(said("load=12 wall=4 joint=packed"), "bends");
        assert_eq!(said("load=16 wall=1.5 joint=packed"), "both");
        assert_eq!(said("load=-4 joint=oval"), "oval");
        for (state, words) in [
            ("load=1500 wall=1/8in", "rests"),
            ("load=3600 wall=5/64in", "wall"),
            ("load=2800 wall=3/16in joint=packed", "bends"),
            ("load=4000 wall=1/16in joint=packed", "both"),
            ("load=-900 joint=oval", "oval"),
        ] {
            assert_eq!(is(state, Us).0, words, "{state}");
        }
    }

    #[test]
    fn the_wall_that_is_needed_carries_the_load_exactly() {
        let needed = of("load=16 wall=2", "wall-needed") * 1e3;
        let state = format!("load=16 wall={needed}");
        assert!((of(&state, "wall-share") - 1.0).abs() < 1e-9);
    }
}

//! Once it slips: the bolt rests on the edges of its holes and is bent like an axle.

mod drawing;

use super::chart::{Axis, Chart, Curve, CurveKind, KeyPoint, Level};
use super::control::{Choice, Control, ControlKind, State};
use super::model::{Look, Model, Outcome, Picture, named};
use calc_core::Input;
use calc_core::catalog::{
    BoltGrade, HoleFit, Material, bolt_grade, clearance_hole, material, thread,
};
use calc_core::mechanics::{pin, shear};
use calc_core::quantity::{Dimension, InUnits, Length, Stress, Unit, mm, newton};
use calc_core::scenario::Field;

/// The lesson.
pub(super) struct Slip;

const LOAD: usize = 0;
const WALL: usize = 1;
const STATE: usize = 2;

const STATES: &[Choice] = &[
    Choice {
        key: "new",
        name: "holes as drilled, side plates against the walls",
    },
    Choice {
        key: "oval",
        name: "holes worn oval",
    },
    Choice {
        key: "packed",
        name: "shims between side plates and walls",
    },
];
const OVAL: usize = 1;
const PACKED: usize = 2;

/// Largest load, kN: the end of the plot's axis.
const MOST_LOAD: f64 = 16.0;

const CONTROLS: &[Control] = &[
    Control {
        key: "load",
        label: "load along the tube (negative = push)",
        kind: ControlKind::Number {
            dimension: Dimension::Force,
            unit: Unit::Kilonewton,
            min: -MOST_LOAD,
            max: MOST_LOAD,
            step: 0.2,
            start: 0.0,
        },
    },
    Control {
        key: "wall",
        label: "wall of the tube",
        kind: ControlKind::Number {
            dimension: Dimension::Length,
            unit: Unit::Millimetre,
            min: 1.5,
            max: 5.0,
            step: 0.1,
            start: 2.0,
        },
    },
    Control {
        key: "joint",
        label: "What state is the joint in?",
        kind: ControlKind::Choices {
            of: STATES,
            start: 0,
        },
    },
];

/// The joint of the lesson: M12 through both walls of a steel tube, a cheek on each side; mm.
const BOLT: &str = "m12";
const GRADE: &str = "iso-8.8";
const STRONGER: &str = "iso-10.9";
const TUBE: &str = "a500-b";
const TUBE_MM: f64 = 40.0;
const TUBE_OTHER_MM: f64 = 80.0;
const CHEEK_MM: f64 = 5.0;
/// About as long as the bolts are.
const BOLT_MM: f64 = 110.0;
const PACKING_MM: f64 = 8.0;
/// Length of a hole that has worn oval.
const OVAL_MM: f64 = 17.0;

struct Numbers {
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
fn sheared(grade: &BoltGrade) -> Option<f64> {
    let thread = thread(BOLT)?;
    let tensile = grade.strength(thread, mm(BOLT_MM))?.tensile;
    Some(shear::bolt(tensile, thread.shank_area(), 2.0, true).si() / shear::OMEGA)
}

fn numbers(state: &State) -> Option<Numbers> {
    let (thread, grade, tube): (_, _, &Material) =
        (thread(BOLT)?, bolt_grade(GRADE)?, material(TUBE)?);
    let d = thread.major();
    let load = state.number(LOAD) * 1e3;
    let wall = mm(state.number(WALL));
    let each = load.abs() / 2.0;
    let is = state.choice(STATE);
    let gap = mm(if is == PACKED { PACKING_MM } else { 0.0 });
    let cheek_hole = clearance_hole(thread, HoleFit::Normal)?.diameter;
    let lever = pin::lever(mm(CHEEK_MM), gap, wall);
    let tube_yield = tube.least().yield_strength();
    let bolt_yield = grade.strength(thread, mm(BOLT_MM))?.yield_?;
    // The nut's thread reaches past the wall: the weakest section bends.
    let bends = thread.minor_diameter();
    let wall_strength = shear::wall_bearing(tube_yield, d, wall, 2.0);
    Some(Numbers {
        load,
        each,
        wall,
        d,
        hole: if is == OVAL { mm(OVAL_MM) } else { cheek_hole },
        cheek_hole,
        gap,
        lever,
        span: mm(TUBE_MM) - wall,
        modulus: grade.modulus(),
        tube_yield: tube_yield.si(),
        pressure: pin::pressure(newton(each), d, wall).si(),
        pressure_allowed: pin::pressure(wall_strength * (0.5 / shear::OMEGA), d, wall).si(),
        moment: pin::moment(newton(each), lever).si(),
        moment_allowed: pin::strength(bolt_yield, bends).si() / pin::OMEGA,
        wall_allowed: wall_strength.si() / shear::OMEGA,
        shear_allowed: sheared(grade)?,
        stronger_allowed: sheared(bolt_grade(STRONGER)?)?,
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

    fn outcome(&self, state: &State) -> Option<Outcome> {
        use Dimension::{Force, Length, Moment, Share, Stress};
        let n = numbers(state)?;
        let area = thread(BOLT)?.shank_area().si();
        let one_wall = pin::pressure(newton(2.0 * n.each), n.d, n.wall).si();
        let travel = pin::slip_travel(n.d, n.hole, n.cheek_hole).si();
        Some(Outcome {
            said: n.said(),
            seen: match n.load {
                0.0 => ["seen-none", "", ""],
                load if load > 0.0 => ["seen-pulls", "seen-bolt", ""],
                _ => ["seen-pushes", "seen-bolt", ""],
            },
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
        let most = numbers(&state.with(CONTROLS, LOAD, MOST_LOAD))?;
        Some(Picture {
            drawing: drawing::drawing(&n, look),
            plot: Some(plot(&n, &most, look)),
            handles: vec![drawing::handle(&n, look)],
        })
    }
}

fn joint(n: &Numbers) -> Input {
    let worn = n.hole > n.cheek_hole;
    let mut input = Input::with(
        &[
            (Field::TubeWidth, TUBE_OTHER_MM),
            (Field::TubeDepth, TUBE_MM),
            (Field::TubeWall, n.wall.si() * 1e3),
            (Field::FittingThickness, CHEEK_MM),
            (Field::FittingGap, n.gap.si() * 1e3),
            (Field::FittingHole, n.cheek_hole.si() * 1e3),
            (Field::BoltsAlong, 1.0),
            (Field::FreeAlong, n.load),
        ],
        &[
            (Field::TubeMaterial, TUBE),
            (Field::Bolt, BOLT),
            (Field::Grade, GRADE),
            (Field::Joint, "free"),
        ],
    );
    input.set_number(Field::Hole, worn.then_some(n.hole.si() * 1e3));
    input
}

/// What wall, bending and shear are asked for, each as a share of what it may carry.
fn plot(n: &Numbers, most: &Numbers, look: &Look<'_>) -> Chart {
    let line = |name: &str, share: f64, kind, part| Curve {
        points: [0.0, 0.25, 0.5, 0.75, 1.0]
            .map(|s| (s * MOST_LOAD * 1e3, s * share))
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
            to: MOST_LOAD * 1e3,
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

    fn of(text: &str, name: &str) -> f64 {
        let state = State::parse(CONTROLS, text).unwrap();
        let outcome = Slip.outcome(&state).unwrap();
        outcome.values.iter().find(|v| v.0 == name).unwrap().1.si
    }

    fn said(text: &str) -> &'static str {
        let state = State::parse(CONTROLS, text).unwrap();
        Slip.outcome(&state).unwrap().said
    }

    /// By hand: half of 12 kN on 12 mm × 2 mm; 1.8·f_y/2.00 of AISC 360-22 J3.11b and J7 with 46 ksi.
    #[test]
    fn pressure_is_force_over_bolt_times_wall() {
        assert!((of("load=12 wall=2", "pressure") - 250e6).abs() < 1.0);
        let allowed = of("load=12", "pressure-allowed");
        assert!(
            (allowed - 0.9 * 46.0 * 6.894_757e6).abs() < 1e4,
            "{allowed}"
        );
    }

    #[test]
    fn the_wall_gives_way_long_before_the_bolt_is_sheared() {
        for wall in ["1.5", "3", "5"] {
            let state = format!("load=16 wall={wall}");
            assert!(
                of(&state, "wall-allowed") < 0.9 * of(&state, "shear-allowed"),
                "{wall}"
            );
        }
        // A stronger bolt changes nothing about the wall.
        assert!(of("", "shear-stronger") > 1.25 * of("", "shear-allowed"));
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
        assert!((of("load=9", "pressure") - of("load=9 joint=oval", "pressure")).abs() < 1e-6);
    }

    #[test]
    fn words_follow_what_gives_way_first() {
        assert_eq!(said("load=8"), "rests");
        assert_eq!(said("load=15 wall=2"), "wall");
        assert_eq!(said("load=12 wall=4 joint=packed"), "bends");
        assert_eq!(said("load=16 wall=1.5 joint=packed"), "both");
        assert_eq!(said("load=-4 joint=oval"), "oval");
    }

    #[test]
    fn the_wall_that_is_needed_carries_the_load_exactly() {
        let needed = of("load=16 wall=2", "wall-needed") * 1e3;
        let state = format!("load=16 wall={needed}");
        assert!((of(&state, "wall-share") - 1.0).abs() < 1e-9);
    }
}

//! Something to stand on: one bolt and one wrench on a washer, a plate, two sleeves and an insert, each
//! made right and made with its usual mistake.

use super::both::Both;
use super::chart::{Axis, Chart, Curve, CurveKind, KeyPoint, Level};
use super::control::{Choice, Control};
use super::model::{Look, Model, Outcome, Picture, named};
use super::state::State;
use super::tube::{self, Joint};
use crate::scene::{Anchor, Draw};
use crate::words::message_at;
use calc_core::Input;
use calc_core::catalog::{material, sleeve};
use calc_core::evaluate::TurnPoint;
use calc_core::evaluate::basis;
use calc_core::mechanics::sleeve::{area, strength};
use calc_core::quantity::{Dimension, InUnits, Length, Unit, mm};
use calc_core::report::Verdict;
use calc_core::scenario::Field;

/// The lesson.
pub(super) struct Stand;

const STAND: usize = 0;
const MADE: usize = 1;
const TURN: usize = 2;

const STANDS: &[Choice] = &[
    Choice::new("washer", "big washer"),
    Choice::new("plate", "spreader plate"),
    Choice::new("loose", "loose sleeve"),
    Choice::new("through", "sleeve through"),
    Choice::new("insert", "solid insert"),
];

const MADES: &[Choice] = &[
    Choice::new("right", "done right"),
    Choice::new("wrong", "with its usual mistake"),
];

/// What is made right and wrong about each stand, for the drawing.
const WORDS: [[&str; 2]; 5] = [
    ["thick washer", "thin washer"],
    ["thick, long", "thin, short"],
    ["cut to fit", "cut too short"],
    ["drawn steel", "welded pipe"],
    ["cut to fit", "cut too short"],
];

/// Where the last curve ends, degrees.
const MOST_TURN: f64 = 540.0;

const CONTROLS: &[Control] = &[
    Control::choices("stand", "What backs up the faces?", STANDS, 0),
    Control::choices("made", "How is it made?", MADES, 0),
    tube::turn(MOST_TURN),
];

/// Largest dent that comes up, mm: all of that turn in two faces.
const MOST_DENT: f64 = 1.2;

/// Round tube or pipe for a sleeve: its row in the table of stock, or, where it has none, its size in mm; and its metal.
struct Piece {
    row: &'static str,
    outer: f64,
    wall: f64,
    metal: &'static str,
}

impl Piece {
    fn put_into(&self, input: &mut Input) {
        if self.row.is_empty() {
            input.set_number(Field::SleeveOuter, Some(self.outer));
            input.set_number(Field::SleeveWall, Some(self.wall));
        } else {
            input.set_choice(Field::Sleeve, self.row);
        }
        input.set_choice(Field::SleeveMaterial, self.metal);
    }

    /// Outside and inside diameter.
    fn diameters(&self) -> Option<(Length, Length)> {
        if self.row.is_empty() {
            return Some((mm(self.outer), mm(self.outer - 2.0 * self.wall)));
        }
        let row = sleeve(self.row)?;
        Some((row.outer_diameter(), row.inner_diameter()))
    }
}

/// What the figure is made of, mm.
struct Stock {
    bolt: &'static str,
    grade: &'static str,
    /// Width and depth of the tube, and its wall.
    size: f64,
    wall: f64,
    /// Thickness of the washers on sleeves and insert: a thin one bends into a bore, and on soft metal it
    /// spreads little.
    washer: f64,
    /// Width and thickness of the big washer.
    big: (f64, f64),
    /// Thickness and length of the spreader, made right and wrong.
    spreader: [(f64, f64); 2],
    /// Shortfall of a sleeve or insert that was cut to fit, and of one cut too short. Invented.
    short: [f64; 2],
    /// Sleeve that lies loose, the one through the tube, and the aluminium pipe that is welded in.
    loose: Piece,
    through: Piece,
    pipe: Piece,
    /// What the stand is pulled with, N.
    pull: f64,
    /// End of the torque axis, N·m.
    most_torque: f64,
}

const fn row(row: &'static str, metal: &'static str) -> Piece {
    Piece {
        row,
        outer: 0.0,
        wall: 0.0,
        metal,
    }
}

const fn piece(outer: f64, wall: f64, metal: &'static str) -> Piece {
    Piece {
        row: "",
        outer,
        wall,
        metal,
    }
}

static STOCK: Both<Stock> = Both {
    us: Stock {
        bolt: "unc-3.8",
        grade: "sae-5",
        // 2-1/2 x 2-1/2 x 1/8 in; 3/16 in; 1-1/2 in wide, 1/4 in thick; 3/8 in thick and one and a half widths
        // long, or 3/16 in and one width; 4 thousandths and 5/64 in; 270 lbf; 40 lb-ft.
        size: 63.5,
        wall: 3.175,
        washer: 4.7625,
        big: (38.1, 6.35),
        spreader: [(9.525, 95.25), (4.7625, 63.5)],
        short: [0.1016, 1.984_375],
        loose: row("rt-0.875x0.188", "a513-1020"),
        through: row("rt-0.750x0.156", "a513-1020"),
        pipe: row("nps-3.8-80", "6061-t6"),
        pull: 1201.02,
        most_torque: 54.232_7,
    },
    metric: Stock {
        bolt: "m10",
        grade: "iso-8.8",
        size: 60.0,
        wall: 3.0,
        washer: 5.0,
        big: (40.0, 6.0),
        spreader: [(10.0, 90.0), (5.0, 60.0)],
        short: [0.1, 2.0],
        loose: piece(22.0, 5.0, "a513-1020"),
        through: piece(20.0, 4.0, "a513-1020"),
        pipe: piece(18.0, 3.5, "6061-t6"),
        pull: 1200.0,
        most_torque: 70.0,
    },
};

/// The bow post of a small boat trailer on an aluminium tube, far from its ends. The post is left out.
/// Invented.
fn input(stock: &Stock, stand: usize, made: usize) -> Input {
    let mut input = Input::with(
        &[
            (Field::TubeWidth, stock.size),
            (Field::TubeDepth, stock.size),
            (Field::TubeWall, stock.wall),
            (Field::FittingThickness, 0.0),
            (Field::EndDistance, 400.0),
            // Far enough from each other that every bolt has the face to itself.
            (Field::SpacingAlong, 250.0),
            (Field::FreeAlong, stock.pull),
            (
                Field::SleeveShort,
                stock.short.get(made).copied().unwrap_or_default(),
            ),
        ],
        &[
            (Field::Joint, "free"),
            (Field::Mount, "from-top"),
            (Field::TubeMaterial, "6063-t6"),
            (Field::Bolt, stock.bolt),
            (Field::Grade, stock.grade),
        ],
    );
    let right = made == 0;
    if right && stand > 1 {
        input.set_number(Field::WasherThickness, Some(stock.washer));
    }
    let support = match stand {
        0 => {
            if right {
                input.set_number(Field::WasherOuter, Some(stock.big.0));
                input.set_number(Field::WasherThickness, Some(stock.big.1));
            } else {
                input.set_choice(Field::Washer, "wide");
            }
            "bare"
        }
        1 => {
            let (thick, long) = stock.spreader.get(made).copied().unwrap_or_default();
            input.spreader_thickness_mm = thick;
            input.spreader_length_mm = long;
            "spreader"
        }
        2 => {
            stock.loose.put_into(&mut input);
            "loose-sleeve"
        }
        3 => {
            let piece = if right { &stock.through } else { &stock.pipe };
            piece.put_into(&mut input);
            input.set_choice(Field::SleeveWelded, if right { "no" } else { "yes" });
            "through-sleeve"
        }
        _ => "solid-insert",
    };
    input.set_choice(Field::Support, support);
    input
}

struct Numbers {
    stock: &'static Stock,
    stand: usize,
    made: usize,
    joint: Joint,
    now: TurnPoint,
}

fn numbers(state: &State) -> Option<Numbers> {
    let (stand, made) = (state.choice(STAND), state.choice(MADE));
    let stock = STOCK.of(state.units());
    let joint = Joint::new(&input(stock, stand, made))?;
    Some(Numbers {
        stock,
        stand,
        made,
        now: joint.after(state.number(TURN))?,
        joint,
    })
}

impl Numbers {
    /// Sentences: while it rises, once it has given way, at the click.
    fn said(&self) -> &'static str {
        let now = &self.now;
        let short = self.stock.short.get(self.made).copied().unwrap_or_default();
        let cut = matches!(self.stand, 2 | 4);
        // A bare face counts as given way at 1 % of its width, anything else at the knee of its curve.
        let gave_way = if self.stand == 0 {
            now.dent_mm > 0.01 * self.stock.size
        } else {
            let knee = self.joint.curve.knee;
            knee.is_some_and(|k| now.turn_deg > k.turn_deg)
        };
        let clicked = (self.joint.curve.at_wanted).is_some_and(|p| now.turn_deg >= p.turn_deg);
        match (self.stand, self.made) {
            _ if now.turn_deg <= 0.0 => "start",
            _ if cut && 2.0 * now.dent_mm < 0.99 * short => "not-reached",
            (2 | 4, 1) if clicked => "short-click",
            (2, _) if clicked => "loose-click",
            (4, _) if clicked => "insert-click",
            (2 | 4, _) => "cut-rising",
            (0, 0) if gave_way => "washer-gives",
            (0, _) if gave_way => "washer-dishes",
            (0, _) => "washer-rising",
            (1, _) if clicked => "plate-click",
            (1, _) if gave_way => "plate-bends",
            (1, _) => "plate-rising",
            (_, 1) if gave_way => "pipe-gives",
            (_, _) if clicked => "through-click",
            (_, _) => "through-rising",
        }
    }
}

impl Model for Stand {
    fn id(&self) -> &'static str {
        "stand"
    }

    fn controls(&self) -> &'static [Control] {
        CONTROLS
    }

    fn sizes(&self) -> &'static [&'static str] {
        &["short", "each-face", "pitch"]
    }

    fn outcome(&self, state: &State) -> Option<Outcome> {
        use Dimension::{Angle, Area, Force, Length, Stress, Torque};
        let n = numbers(state)?;
        let pipe = &n.stock.pipe;
        let alloy = material(pipe.metal)?;
        let (outer, inner) = pipe.diameters()?;
        let size = mm(n.stock.size);
        let takes = |metal| strength(metal, alloy.modulus(), outer, inner, size).si();
        let welded = alloy.welded()?.least.compressive_yield_strength();
        let whole = alloy.least().compressive_yield_strength();
        let (now, wanted) = (&n.now, n.joint.wanted_n());
        let short = n.stock.short.get(n.made).copied()?;
        Some(Outcome {
            said: n.said(),
            seen: [""; 3],
            end: n.joint.curve.at_wanted.map(|click| (TURN, click.turn_deg)),
            values: named![
                ("clamp", now.clamp_n, Force),
                ("torque", now.torque_nm, Torque),
                ("turned", Unit::Degree.to_si(now.turn_deg), Angle),
                ("dent", now.dent_mm * 1e-3, Length),
                ("stays", now.dent_left_mm * 1e-3, Length),
                ("stretch", now.stretch_mm * 1e-3, Length),
                ("wanted", wanted, Force),
                ("torque-wanted", n.joint.curve.wanted_torque_nm, Torque),
                ("short", short * 1e-3, Length),
                ("each-face", (short / 2.0) * 1e-3, Length),
                ("pitch", n.joint.travel_mm(360.0) * 1e-3, Length),
                (
                    "lost",
                    Unit::Degree.to_si(360.0 * short / n.joint.travel_mm(360.0)),
                    Angle
                ),
                (
                    "half-lost",
                    Unit::Degree.to_si(180.0 * short / n.joint.travel_mm(360.0)),
                    Angle
                ),
                ("pipe-area", area(outer, inner).si(), Area),
                ("pipe-yields", welded.si(), Stress),
                ("pipe-takes", takes(welded), Force),
                ("pipe-unwelded", takes(whole), Force),
            ],
            joint: input(n.stock, n.stand, n.made),
        })
    }

    fn picture(&self, state: &State, look: &Look<'_>) -> Option<Picture> {
        let n = numbers(state)?;
        let (mut drawing, wrench) = n.joint.section(&n.now, MOST_DENT, look, TURN);
        let words = WORDS.get(n.stand)?.get(n.made)?;
        let mut letter = |y, text: &str, class| {
            let at = (drawing.width - 8.0, y);
            drawing.marks.text(at, text, class, Anchor::End);
        };
        letter(302.0, words, "t s");
        if n.now.turn_deg > 0.0 {
            let verdict = basis(&n.joint.scenario).clamp.verdict;
            letter(324.0, "clamp check:", "t s soft");
            letter(341.0, verdict_words(verdict), "t");
            drawing.description += &format!(" Clamp check: {}.", verdict_words(verdict));
        }
        Some(Picture {
            plot: Some(plot(&n, look)),
            drawing,
            handles: vec![wrench],
        })
    }
}

/// A verdict in the page's words.
pub(super) fn verdict_words(verdict: Verdict) -> &'static str {
    message_at(&["verdict", verdict.key()]).unwrap_or_default()
}

/// Names of the curves, short.
const NAMES: [[&str; 2]; 5] = [
    ["big washer", "thin washer"],
    ["spreader plate", "thin plate"],
    ["loose sleeve", "short sleeve"],
    ["through sleeve", "welded pipe"],
    ["insert", "short insert"],
];

/// Name of a dashed curve. Curves that run together have one name, and none beside the thick one.
fn curve_name(stand: usize, chosen: usize, made: usize) -> &'static str {
    let together: &[usize] = if made == 0 { &[2, 3, 4] } else { &[2, 4] };
    if !together.contains(&stand) {
        named(stand, made)
    } else if together.contains(&chosen) || stand != 4 {
        ""
    } else if made == 0 {
        "sleeves, insert"
    } else {
        "short sleeve, insert"
    }
}

fn named(stand: usize, made: usize) -> &'static str {
    NAMES.get(stand).and_then(|n| n.get(made)).unwrap_or(&"")
}

/// Torque against turn on all five, as far as the wrench goes.
fn plot(n: &Numbers, look: &Look<'_>) -> Chart {
    let points = |joint: &Joint| {
        let click = joint.curve.at_wanted;
        let before = |p: &&TurnPoint| click.is_none_or(|c| p.turn_deg < c.turn_deg);
        let rising = joint.curve.points.iter().filter(before).chain(&click);
        rising
            .map(|p| (Unit::Degree.to_si(p.turn_deg), p.torque_nm))
            .collect()
    };
    let mut curves: Vec<Curve> = STANDS
        .iter()
        .enumerate()
        .filter(|(i, _)| *i != n.stand)
        .filter_map(|(i, _)| {
            Some(Curve {
                points: points(&Joint::new(&input(n.stock, i, n.made))?),
                kind: CurveKind::Beside,
                name: curve_name(i, n.stand, n.made).into(),
                part: "",
            })
        })
        .collect();
    curves.push(Curve {
        points: points(&n.joint),
        kind: CurveKind::This,
        // Made right, the steep curves leave no room for a name; the drawing has it.
        name: if n.made == 0 {
            String::new()
        } else {
            named(n.stand, n.made).into()
        },
        part: "p-bolt",
    });
    let wanted = n.joint.curve.wanted_torque_nm;
    Chart {
        title: String::from("Torque against turn with five kinds of backing"),
        x: Axis {
            name: "turn of the nut",
            dimension: Dimension::Angle,
            from: 0.0,
            to: Unit::Degree.to_si(MOST_TURN),
        },
        y: Axis {
            name: "torque",
            dimension: Dimension::Torque,
            from: 0.0,
            to: n.stock.most_torque,
        },
        band: None,
        curves,
        levels: vec![Level {
            y: wanted,
            name: String::from("click"),
        }],
        points: vec![KeyPoint {
            name: String::from("now"),
            x: Unit::Degree.to_si(n.now.turn_deg),
            y: n.now.torque_nm,
            here: true,
        }],
        units: look.units,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    use calc_core::quantity::UnitSystem::{self, Metric, Us};

    fn of(text: &str, units: UnitSystem) -> Outcome {
        let state = State::parse(CONTROLS, text, units).unwrap();
        Stand.outcome(&state).unwrap()
    }

    fn get(outcome: &Outcome, name: &str) -> f64 {
        let found = outcome.values.iter().find(|(n, _)| *n == name);
        found.unwrap_or_else(|| panic!("{name}")).1.si
    }

    fn verdict(stock: &Stock, stand: usize, made: usize) -> Verdict {
        let joint = Joint::new(&input(stock, stand, made)).unwrap();
        let checks = calc_core::evaluate(&joint.scenario).checks;
        let clamp = checks
            .iter()
            .find(|c| c.id == calc_core::report::CheckId::Clamp);
        clamp.unwrap().verdict
    }

    #[test]
    fn made_right_all_but_the_washer_hold_or_come_close_and_with_its_mistake_none_does() {
        for (stock, stand) in [&STOCK.us, &STOCK.metric]
            .iter()
            .flat_map(|s| (0..5).map(move |i| (s, i)))
        {
            let right = verdict(stock, stand, 0);
            assert_eq!(
                right <= Verdict::Close,
                stand != 0,
                "{} {stand}: {right:?}",
                stock.bolt
            );
            assert_eq!(
                verdict(stock, stand, 1),
                Verdict::DoesNotHold,
                "{} {stand}",
                stock.bolt
            );
        }
    }

    #[test]
    fn every_stand_says_what_its_curve_does() {
        for units in [Us, Metric] {
            for (state, said) in [
                ("stand=washer", "washer-gives"),
                ("stand=washer made=wrong", "washer-dishes"),
                ("stand=plate", "plate-click"),
                ("stand=plate made=wrong", "plate-bends"),
                ("stand=loose", "loose-click"),
                ("stand=loose made=wrong", "short-click"),
                ("stand=through", "through-click"),
                ("stand=through made=wrong", "pipe-gives"),
                ("stand=insert", "insert-click"),
                ("stand=insert made=wrong", "short-click"),
            ] {
                let outcome = of(&format!("{state} turn={MOST_TURN}"), units);
                assert_eq!(outcome.said, said, "{state} {units:?}");
            }
            assert_eq!(
                of("stand=loose made=wrong turn=300", units).said,
                "not-reached"
            );
            assert_eq!(of("stand=loose turn=30", units).said, "cut-rising");
        }
    }

    #[test]
    fn numbers_are_those_of_tables_and_of_hand_calculation() {
        let o = of("made=wrong", Us);
        // SAE J429: proof load of 3/8-16 grade 5 is 6600 lbf; 1 lbf = 4.448 N.
        assert!((get(&o, "wanted") / (0.75 * 6600.0 * 4.448_222) - 1.0).abs() < 3e-3);
        // ASME B36.10M: NPS 3/8 schedule 80 has 0.217 in² of metal; 15 ksi beside a weld: 3260 lbf.
        assert!((get(&o, "pipe-area") / (0.217 * 645.16e-6) - 1.0).abs() < 3e-3);
        assert!((get(&o, "pipe-takes") / (3260.0 * 4.448_222) - 1.0).abs() < 3e-3);
        // 5/64 in short on 16 threads an inch: 1 1/4 turns before anything carries.
        let degrees = get(&o, "lost").to_degrees();
        assert!((degrees - 450.0).abs() < 1e-6, "{degrees}");
        // M10 class 8.8, ISO 898-1: 33.7 kN; a ring of 18 x 3.5 mm has 159.4 mm², at 15 ksi 16.5 kN; 2 mm short on a
        // pitch of 1.5 mm.
        let o = of("made=wrong", Metric);
        assert!((get(&o, "wanted") / (0.75 * 33.7e3) - 1.0).abs() < 5e-3);
        assert!((get(&o, "pipe-area") / 159.4e-6 - 1.0).abs() < 1e-3);
        assert!((get(&o, "pipe-takes") / 16.5e3 - 1.0).abs() < 3e-3);
        assert!((get(&o, "lost").to_degrees() - 480.0).abs() < 1e-6);
        for units in [Us, Metric] {
            let o = of("made=wrong", units);
            assert!(get(&o, "pipe-takes") < get(&o, "wanted"));
            assert!(get(&o, "pipe-unwelded") > get(&o, "wanted"));
            let click = of(&format!("stand=loose made=wrong turn={MOST_TURN}"), units);
            assert!(get(&click, "turned") > get(&o, "lost"));
        }
    }

    #[test]
    fn a_sleeve_through_the_tube_leaves_the_faces_alone() {
        for units in [Us, Metric] {
            let o = of(&format!("stand=through turn={MOST_TURN}"), units);
            assert!(get(&o, "dent") < 5e-6, "{}", get(&o, "dent"));
        }
    }
}

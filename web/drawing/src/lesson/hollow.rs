//! A hollow tube cannot be clamped: the face under the washer bends in before the bolt is tight.

use super::both::Both;
use super::chart::{Axis, Chart, Curve, CurveKind, KeyPoint, Level};
use super::control::{Choice, Control, Range};
use super::model::{Look, Model, Outcome, Picture, named};
use super::state::State;
use super::tube::{self, Joint};
use calc_core::Input;
use calc_core::evaluate::TurnPoint;
use calc_core::quantity::{Dimension, Unit};
use calc_core::report::Part;
use calc_core::scenario::Field;

/// The lesson.
pub(super) struct Hollow;

const TURN: usize = 0;
const WALL: usize = 1;
const WASHER: usize = 2;

const WASHERS: &[Choice] = &[
    Choice::new("ordinary", "ordinary"),
    Choice::new("wide", "wide, thin"),
    Choice::new("disc", "wide, thick"),
];

/// Where the last curve ends, degrees.
const MOST_TURN: f64 = 540.0;

const CONTROLS: &[Control] = &[
    tube::turn(MOST_TURN),
    Control::number(
        "wall",
        "wall of the tube",
        Dimension::Length,
        Both {
            us: Range::new([0.0625, 0.25], 0.015_625, 0.125),
            metric: Range::new([2.0, 6.0], 0.25, 3.0),
        },
    ),
    Control::choices("washer", "Which washers?", WASHERS, 0),
];

/// What the figure is made of, mm.
struct Stock {
    bolt: &'static str,
    grade: &'static str,
    /// Width of the square tube and its metal.
    width: f64,
    metal: &'static str,
    /// Width and thickness of the wide, thick washer.
    disc: (f64, f64),
    /// Pull of the ring, N.
    pull: f64,
    /// Dent and clamp up to which the plot goes, mm and N.
    most_dent: f64,
    most_clamp: f64,
}

static STOCK: Both<Stock> = Both {
    us: Stock {
        bolt: "unc-1.2",
        grade: "sae-5",
        // 3 in; 1-1/2 in wide, 3/8 in thick; 1100 lbf; 0.06 in and 11,000 lbf.
        width: 76.2,
        metal: "a36",
        disc: (38.1, 9.525),
        pull: 4893.04,
        most_dent: 1.524,
        most_clamp: 48_930.4,
    },
    metric: Stock {
        bolt: "m12",
        grade: "iso-8.8",
        width: 70.0,
        metal: "s235",
        disc: (40.0, 10.0),
        pull: 5000.0,
        most_dent: 1.4,
        most_clamp: 45e3,
    },
};

/// Share of the width at which the page takes a face to have given way.
const GIVEN_WAY: f64 = 0.01;

/// A tie-down ring through the hollow cross-member of a flatbed, far from its ends. Nothing lies
/// between washers and tube. Invented.
fn input(state: &State) -> Input {
    let stock = STOCK.of(state.units());
    let mut input = Input::with(
        &[
            (Field::TubeWidth, stock.width),
            (Field::TubeDepth, stock.width),
            (Field::TubeWall, state.mm(WALL)),
            (Field::FittingThickness, 0.0),
            (Field::BoltsAlong, 1.0),
            (Field::EndDistance, 400.0),
            (Field::FreeUp, stock.pull),
        ],
        &[
            (Field::Joint, "free"),
            (Field::Mount, "from-top"),
            (Field::TubeMaterial, stock.metal),
            (Field::Bolt, stock.bolt),
            (Field::Grade, stock.grade),
        ],
    );
    match state.choice(WASHER) {
        0 => {}
        1 => input.set_choice(Field::Washer, "wide"),
        _ => {
            input.set_number(Field::WasherOuter, Some(stock.disc.0));
            input.set_number(Field::WasherThickness, Some(stock.disc.1));
        }
    }
    input
}

struct Numbers {
    stock: &'static Stock,
    joint: Joint,
    now: TurnPoint,
    wanted: f64,
    /// Where each face is in by 1 % of the width.
    given_way: TurnPoint,
}

fn numbers(state: &State) -> Option<Numbers> {
    let stock = STOCK.of(state.units());
    let joint = Joint::new(&input(state))?;
    Some(Numbers {
        stock,
        now: joint.after(state.number(TURN))?,
        wanted: joint.wanted_n(),
        given_way: joint.at_dent(GIVEN_WAY * stock.width)?,
        joint,
    })
}

impl Numbers {
    fn said(&self) -> &'static str {
        let now = &self.now;
        let dishes = self
            .joint
            .curve
            .knee
            .is_some_and(|knee| knee.part == Part::Washer);
        if now.turn_deg <= 0.0 {
            "start"
        } else if now.clamp_n >= 0.9999 * self.wanted {
            if now.dent_mm > self.given_way.dent_mm {
                "clicks-late"
            } else {
                "clicks"
            }
        } else if now.dent_mm < self.given_way.dent_mm {
            "rising"
        } else if now.clamp_n >= 0.95 * self.wanted {
            "late"
        } else if dishes {
            "dishes"
        } else {
            "bends"
        }
    }
}

impl Model for Hollow {
    fn id(&self) -> &'static str {
        "hollow"
    }

    fn controls(&self) -> &'static [Control] {
        CONTROLS
    }

    fn outcome(&self, state: &State) -> Option<Outcome> {
        use Dimension::{Angle, Force, Length, Share, Torque};
        let n = numbers(state)?;
        let joint = input(state);
        // The same bolt and wrench on a bar without a hollow.
        let mut on_bar = joint.clone();
        on_bar.set_choice(Field::Support, "solid");
        let bar = Joint::new(&on_bar)?.curve.at_wanted?;
        let (now, weak) = (&n.now, &n.given_way);
        let wanted_torque = n.joint.curve.wanted_torque_nm;
        Some(Outcome {
            said: n.said(),
            seen: [""; 3],
            end: n.joint.curve.at_wanted.map(|click| (TURN, click.turn_deg)),
            values: named![
                ("clamp", now.clamp_n, Force),
                ("torque", now.torque_nm, Torque),
                ("dent", now.dent_mm * 1e-3, Length),
                ("dents", (2.0 * now.dent_mm) * 1e-3, Length),
                ("stays", now.dent_left_mm * 1e-3, Length),
                ("stretch", now.stretch_mm * 1e-3, Length),
                ("pitch", n.joint.travel_mm(360.0) * 1e-3, Length),
                ("travel", n.joint.travel_mm(now.turn_deg) * 1e-3, Length),
                ("wanted", n.wanted, Force),
                ("torque-wanted", wanted_torque, Torque),
                ("stretch-wanted", bar.stretch_mm * 1e-3, Length),
                ("solid-turn", Unit::Degree.to_si(bar.turn_deg), Angle),
                ("one-percent", (GIVEN_WAY * n.stock.width) * 1e-3, Length),
                ("takes", weak.clamp_n, Force),
                ("torque-takes", weak.torque_nm, Torque),
                ("share", weak.clamp_n / n.wanted, Share),
                // The wrong ideas that an answer may come from.
                (
                    "without-one-face",
                    (n.joint.travel_mm(now.turn_deg) - now.dent_mm) * 1e-3,
                    Length
                ),
                (
                    "turned-round",
                    wanted_torque * n.wanted / weak.clamp_n,
                    Torque
                ),
            ],
            joint,
        })
    }

    fn picture(&self, state: &State, look: &Look<'_>) -> Option<Picture> {
        let n = numbers(state)?;
        let (drawing, wrench) = n.joint.section(&n.now, n.stock.most_dent, look, TURN);
        Some(Picture {
            drawing,
            plot: Some(plot(&n, state, look)),
            handles: vec![wrench],
        })
    }
}

/// Clamp against the dent of each face, with the other washers beside it.
fn plot(n: &Numbers, state: &State, look: &Look<'_>) -> Chart {
    let points = |joint: &Joint| {
        let curve = joint.curve.points.iter();
        curve.map(|p| (p.dent_mm * 1e-3, p.clamp_n)).collect()
    };
    let mut curves: Vec<Curve> = WASHERS
        .iter()
        .enumerate()
        .filter(|(i, _)| *i != state.choice(WASHER))
        .filter_map(|(i, washer)| {
            #[allow(clippy::cast_precision_loss, reason = "one of three")]
            let joint = Joint::new(&input(&state.with(CONTROLS, WASHER, i as f64)))?;
            Some(Curve {
                points: points(&joint),
                kind: CurveKind::Beside,
                name: (*washer.name.of(look.units)).into(),
                part: "",
            })
        })
        .collect();
    curves.push(Curve {
        points: points(&n.joint),
        kind: CurveKind::This,
        name: String::new(),
        part: "p-face",
    });
    curves.push(Curve {
        points: vec![
            (n.given_way.dent_mm * 1e-3, 0.0),
            (n.given_way.dent_mm * 1e-3, n.stock.most_clamp),
        ],
        kind: CurveKind::Beside,
        name: String::from("1\u{a0}% of the width"),
        part: "",
    });
    let key = |name: &str, at: &TurnPoint, here| KeyPoint {
        name: name.into(),
        x: at.dent_mm * 1e-3,
        y: at.clamp_n,
        here,
    };
    let mut points = vec![key("now", &n.now, true)];
    if n.given_way.clamp_n <= n.stock.most_clamp {
        points.push(key("gives way", &n.given_way, false));
    }
    Chart {
        title: String::from("Clamp load against the dent of each face"),
        x: Axis {
            name: "dent of each face",
            dimension: Dimension::Length,
            from: 0.0,
            to: n.stock.most_dent * 1e-3,
        },
        y: Axis {
            name: "clamp load",
            dimension: Dimension::Force,
            from: 0.0,
            to: n.stock.most_clamp,
        },
        band: None,
        curves,
        levels: vec![Level {
            y: n.wanted,
            name: String::from("the bolt needs this"),
        }],
        points,
        units: look.units,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use calc_core::{Scenario, evaluate};

    use calc_core::quantity::UnitSystem::{self, Metric, Us};

    fn of_in(text: &str, units: UnitSystem) -> (State, Outcome) {
        let state = State::parse(CONTROLS, text, units).unwrap();
        (state, Hollow.outcome(&state).unwrap())
    }

    fn of(text: &str) -> (State, Outcome) {
        of_in(text, Metric)
    }

    fn get(outcome: &Outcome, name: &str) -> f64 {
        let found = outcome.values.iter().find(|(n, _)| *n == name);
        found.unwrap_or_else(|| panic!("{name}")).1.si
    }

    #[test]
    fn the_bolt_wants_three_quarters_of_its_proof_load() {
        // ISO 898-1 Table 5: proof load of M12 class 8.8 is 48.9 kN (84.3 mm² × 580 MPa).
        let (_, outcome) = of("");
        let wanted = get(&outcome, "wanted");
        assert!((wanted / (0.75 * 48.9e3) - 1.0).abs() < 2e-3, "{wanted}");
        // T = K·d·F with K = 0.20 for zinc plated threads and d = 12 mm.
        assert!((get(&outcome, "torque-wanted") / (0.20 * 0.012 * wanted) - 1.0).abs() < 1e-6);
        // SAE J429: proof load of 1/2-13 grade 5 is 12,100 lbf (0.1419 in² × 85 ksi); 75 lb-ft.
        let (_, outcome) = of_in("", Us);
        let wanted = get(&outcome, "wanted") / 4.448_222;
        assert!((wanted / (0.75 * 12_060.0) - 1.0).abs() < 3e-3, "{wanted}");
        let torque = get(&outcome, "torque-wanted") / 1.355_818;
        assert!(
            (torque - 0.20 * 0.5 * wanted / 12.0).abs() < 1e-3,
            "{torque}"
        );
    }

    #[test]
    fn what_gives_way_is_what_the_report_says() {
        for (text, units) in [
            ("", Metric),
            ("wall=5 washer=wide", Metric),
            ("wall=6 washer=disc", Metric),
            ("", Us),
            ("wall=3/16in washer=wide", Us),
            ("wall=1/4in washer=disc", Us),
        ] {
            let (state, outcome) = of_in(text, units);
            let report = evaluate(&Scenario::new(&input(&state)).unwrap());
            let exact = report.support.likely.load_at_1pct_of_width_n;
            let read = get(&outcome, "takes");
            assert!((read / exact - 1.0).abs() < 3e-3, "{text}: {read} {exact}");
        }
    }

    #[test]
    fn the_turn_is_shared_out_between_faces_and_bolt_without_a_rest() {
        for text in ["turn=90", "turn=300 washer=wide", "turn=400 wall=5"] {
            let (_, outcome) = of(text);
            let of = |name| get(&outcome, name);
            let rest = of("travel") - of("dents") - of("stretch");
            // The washers are squeezed a little too.
            assert!(rest >= 0.0 && rest < 0.01 * of("travel"), "{text}: {rest}");
        }
    }

    #[test]
    fn only_a_thick_wall_under_a_thick_washer_lets_the_wrench_click() {
        for (units, walls, thick) in [
            (Metric, ["2", "3", "4.5"], "wall=6"),
            (Us, ["1/16", "1/8", "3/16"], "wall=1/4"),
        ] {
            for (washer, wall) in ["ordinary", "wide"]
                .iter()
                .flat_map(|w| walls.map(|t| (w, t)))
            {
                let (_, outcome) = of_in(&format!("turn=500 wall={wall} washer={washer}"), units);
                assert!(
                    matches!(outcome.said, "bends" | "dishes"),
                    "{wall} {washer}"
                );
            }
            let (_, outcome) = of_in(&format!("turn=500 {thick} washer=disc"), units);
            assert_eq!(outcome.said, "clicks");
        }
        // What the text says: twice the wall, about four times the clamp; a big washer alone less than
        // twice.
        for (units, thin, thick) in [(Metric, "3", "6"), (Us, "1/8", "1/4")] {
            let takes = |text: &str| get(&of_in(text, units).1, "takes");
            for washer in ["ordinary", "wide", "disc"] {
                let times = takes(&format!("wall={thick} washer={washer}"))
                    / takes(&format!("wall={thin} washer={washer}"));
                assert!((3.5..5.0).contains(&times), "{washer}: {times}");
            }
            assert!(takes("washer=disc") < 2.0 * takes("washer=ordinary"));
            assert!(takes("washer=wide") < 0.8 * takes("washer=disc"));
            assert!(takes("washer=disc") < 0.4 * get(&of_in("", units).1, "wanted"));
        }
    }
}

//! The road shakes it: a load beside the bolts, and what each bolt gets of it.

mod cut;
mod fittings;
mod picture;
mod plot;

#[cfg(test)]
mod tests;

use super::both::Both;
use super::control::{Choice, Control, Range};
use super::model::{Look, Model, Outcome, Picture, named};
use super::state::State;
use calc_core::catalog::{CaseName, Size, Trailer};
use calc_core::evaluate::basis;
use calc_core::mechanics::bolt_group::{GroupLoad, Place, Share, elastic};
use calc_core::quantity::{Dimension, kilogram};
use calc_core::report::CaseReport;
use calc_core::scenario::Field;
use calc_core::{Input, Scenario};

/// The lesson.
pub(super) struct Road;

const JOINT: usize = 0;
const ROAD: usize = 1;
const DISTANCE: usize = 2;

const JOINTS: &[Choice] = &[
    Choice::new("close", "coupler, two bolts close together"),
    Choice::new("third", "coupler, a third bolt between them"),
    Choice::new("apart", "coupler, two bolts twice as far apart"),
    Choice::new("hanger", "spring hanger"),
    Choice::new("chain", "safety chain bracket"),
];

const ROADS: &[Choice] = &[
    Choice::new("off", "nothing: lifted clear"),
    Choice::new("still", "nothing: standing still"),
    Choice::new("bump", "a bump"),
    Choice::new("worst", "the worst it must take"),
];

const CONTROLS: &[Control] = &[
    Control::choices("joint", "What is bolted on?", JOINTS, 0),
    Control::choices("road", "What does the road do?", ROADS, 0),
    Control::number(
        "distance",
        "from the middle of the bolts to the load",
        Dimension::Length,
        DISTANCES,
    ),
];

/// Nearer, and the ball would sit in the tube's end.
const DISTANCES: Both<Range> = Both {
    us: Range::new([5.0, 8.0], 0.25, 6.0),
    metric: Range::new([120.0, 200.0], 5.0, 150.0),
};

/// What the figure is made of, mm.
struct Stock {
    bolt: &'static str,
    grade: &'static str,
    /// Height of the tube as it is seen from the side, its other size, wall and metal.
    tube: f64,
    tube_other: f64,
    wall: f64,
    metal: &'static str,
    /// From an outer bolt to the edge of the fitting, and to the end of the tube.
    edge: f64,
    end: f64,
    /// From one bolt to the next: two close together, hanger, chain bracket. A third bolt halves it, two apart
    /// double it.
    pitch: [f64; 3],
    /// Diameter of the ball.
    ball: f64,
    /// Sleeve through the tube: its row in the table of stock, or its outside diameter and wall.
    sleeve: (&'static str, f64, f64),
    /// The trailer, kg.
    mass: f64,
    /// Longest arrow and end of the plot's axis: above every state, N.
    most_force: f64,
    most_on_plot: f64,
}

static STOCK: Both<Stock> = Both {
    us: Stock {
        bolt: "unc-3.8",
        grade: "sae-5",
        // 3 x 2 x 1/8 in; 7/8 and 1-1/8 in; 2-1/2, 3 and 3-1/2 in; a ball of 2 in; 1000 lb; 1500 lbf.
        tube: 76.2,
        tube_other: 50.8,
        wall: 3.175,
        metal: "a500-b",
        edge: 22.225,
        end: 28.575,
        pitch: [63.5, 76.2, 88.9],
        ball: 50.8,
        sleeve: ("rt-0.750x0.156", 0.0, 0.0),
        mass: 453.592_37,
        most_force: 6.6e3,
        most_on_plot: 6_672.33,
    },
    metric: Stock {
        bolt: "m10",
        grade: "iso-8.8",
        tube: 70.0,
        tube_other: 50.0,
        wall: 3.0,
        metal: "s235",
        edge: 22.0,
        end: 28.0,
        pitch: [60.0, 80.0, 90.0],
        ball: 50.0,
        sleeve: ("", 20.0, 4.0),
        mass: 550.0,
        most_force: 7.8e3,
        most_on_plot: 8e3,
    },
};

/// The trailer of the figure: a small invented one.
const TONGUE_SHARE: f64 = 0.12;
const BUMP: f64 = 3.0;
const BRAKING_G: f64 = 0.5;

/// What is bolted on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Kind {
    Close,
    Third,
    Apart,
    Hanger,
    Chain,
}

impl Kind {
    const fn of(choice: usize) -> Self {
        match choice {
            0 => Self::Close,
            1 => Self::Third,
            2 => Self::Apart,
            3 => Self::Hanger,
            _ => Self::Chain,
        }
    }

    /// Name on the plot.
    const fn name(self) -> &'static str {
        match self {
            Self::Close => "two close",
            Self::Third => "a third between",
            Self::Apart => "two apart",
            Self::Hanger => "spring hanger",
            Self::Chain => "chain bracket",
        }
    }

    /// Key of the sentence that names what is drawn.
    const fn seen(self) -> &'static str {
        match self {
            Self::Hanger => "seen-hanger",
            Self::Chain => "seen-chain",
            _ => "seen-coupler",
        }
    }

    const fn coupler(self) -> bool {
        matches!(self, Self::Close | Self::Third | Self::Apart)
    }

    /// Number of bolts and the distance from one to the next, mm.
    const fn row(self, stock: &Stock) -> (f64, f64) {
        let [close, hanger, chain] = stock.pitch;
        match self {
            Self::Close => (2.0, close),
            Self::Third => (3.0, close / 2.0),
            Self::Apart => (2.0, 2.0 * close),
            Self::Hanger => (2.0, hanger),
            Self::Chain => (2.0, chain),
        }
    }

    /// Between the outermost bolts, mm.
    fn spacing_mm(self, stock: &Stock) -> f64 {
        let (bolts, pitch) = self.row(stock);
        (bolts - 1.0) * pitch
    }
}

/// What the road does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Jolt {
    Off,
    Still,
    Bump,
    Worst,
}

impl Jolt {
    const fn of(choice: usize) -> Self {
        match choice {
            0 => Self::Off,
            1 => Self::Still,
            2 => Self::Bump,
            _ => Self::Worst,
        }
    }
}

/// The lesson's joint as the calculation takes it, with the road as hard as asked.
fn input(stock: &Stock, kind: Kind, jolt: Jolt, distance_mm: f64) -> Input {
    let (bolts_along, spacing_along_mm) = kind.row(stock);
    let mut input = Input::with(
        &[
            (Field::TubeWidth, stock.tube),
            (Field::TubeDepth, stock.tube_other),
            (Field::TubeWall, stock.wall),
            (Field::FittingEdge, stock.edge),
            (Field::EndDistance, stock.end),
            (Field::BoltsAlong, bolts_along),
            (Field::SpacingAlong, spacing_along_mm),
            (Field::BallAhead, distance_mm),
            (Field::BallBelow, 0.0),
            (Field::HangerHeight, distance_mm),
            (Field::TrailerMass, stock.mass),
            (Field::TongueShare, TONGUE_SHARE),
            (
                Field::VerticalFactor,
                if jolt == Jolt::Still { 1.0 } else { BUMP },
            ),
            (
                Field::Braking,
                if jolt == Jolt::Worst { BRAKING_G } else { 0.0 },
            ),
        ],
        &[
            (Field::TubeMaterial, stock.metal),
            (Field::Bolt, stock.bolt),
            (Field::Grade, stock.grade),
            (Field::Support, "through-sleeve"),
            (Field::SleeveWelded, "yes"),
            (
                Field::Joint,
                match kind {
                    Kind::Hanger => "spring-hanger",
                    Kind::Chain => "chain-bracket",
                    _ => "coupler",
                },
            ),
        ],
    );
    match stock.sleeve {
        ("", outer, wall) => {
            input.set_number(Field::SleeveOuter, Some(outer));
            input.set_number(Field::SleeveWall, Some(wall));
        }
        (row, ..) => input.set_choice(Field::Sleeve, row),
    }
    input
}

/// What calc-core says of a joint under a load, apart and together.
struct Numbers {
    stock: &'static Stock,
    kind: Kind,
    jolt: Jolt,
    distance_mm: f64,
    /// Force at the ball, eye or chain: forward and upward, N.
    along: f64,
    up: f64,
    /// Twist about the middle of the bolts, turning forward towards up, N·m.
    twist: f64,
    places: Vec<Place>,
    /// On each bolt: all of it, the load shared alike, the twist.
    all: Vec<Share>,
    alike: Vec<Share>,
    pair: Vec<Share>,
}

/// The load case that the figure shows, bolt by bolt.
fn case(stock: &Stock, kind: Kind, jolt: Jolt, distance_mm: f64) -> Option<CaseReport> {
    let name = match (kind, jolt) {
        (Kind::Hanger, Jolt::Worst) => CaseName::BrakingRearEye,
        (Kind::Hanger, _) => CaseName::WheelOverABump,
        (Kind::Chain, _) => CaseName::ChainPullsUp,
        _ => CaseName::BrakingOverABump,
    };
    let scenario = Scenario::new(&input(stock, kind, jolt, distance_mm)).ok()?;
    let mut cases = basis(&scenario).loads.cases.into_iter();
    cases.find(|c| c.case == name)
}

fn numbers(stock: &'static Stock, kind: Kind, jolt: Jolt, distance_mm: f64) -> Option<Numbers> {
    let case = case(stock, kind, jolt, distance_mm)?;
    let places: Vec<Place> = case
        .bolts
        .iter()
        .map(|b| Place {
            x: b.along_mm * 1e-3,
            y: b.across_mm * 1e-3,
        })
        .collect();
    // Lifted clear nothing loads the joint, and a chain hangs slack as long as the coupler holds.
    let loaded = jolt != Jolt::Off && (kind != Kind::Chain || jolt == Jolt::Worst);
    let of = |force: f64| if loaded { force } else { 0.0 };
    let (along, up) = (of(case.longitudinal_n), of(case.vertical_n));
    let twist = of(case.twist_nm);
    let shared = GroupLoad {
        along,
        across: up,
        ..GroupLoad::default()
    };
    let twisted = GroupLoad {
        twist,
        ..GroupLoad::default()
    };
    Some(Numbers {
        stock,
        kind,
        jolt,
        distance_mm,
        along,
        up,
        twist,
        all: case
            .bolts
            .iter()
            .map(|b| Share {
                along: of(b.force_along_n),
                across: of(b.force_across_n),
                pull: of(b.pull_n),
            })
            .collect(),
        alike: elastic(&places, &shared).0,
        pair: elastic(&places, &twisted).0,
        places,
    })
}

/// Largest force in the plane on any bolt, N.
fn largest(shares: &[Share]) -> f64 {
    shares.iter().map(Share::in_plane).fold(0.0, f64::max)
}

impl Numbers {
    fn loaded(&self) -> bool {
        self.along != 0.0 || self.up != 0.0
    }

    /// The hardest loaded bolt.
    fn hardest(&self) -> f64 {
        largest(&self.all)
    }

    /// The outer bolt that gets less.
    fn other(&self) -> f64 {
        let ends = self.all.first().into_iter().chain(self.all.last());
        ends.map(Share::in_plane).fold(f64::INFINITY, f64::min)
    }

    fn said(&self) -> &'static str {
        match (self.kind, self.jolt) {
            (Kind::Hanger, Jolt::Off) => "off-hanger",
            (Kind::Hanger, Jolt::Worst) => "hanger-brakes",
            (Kind::Hanger, _) => "hanger-straight",
            (Kind::Chain, Jolt::Worst) => "chain-pulls",
            (Kind::Chain, _) => "chain-slack",
            (_, Jolt::Off) => "off",
            (Kind::Third, _) => "third",
            (Kind::Apart, _) => "apart",
            (_, Jolt::Still) => "still",
            (_, Jolt::Bump) => "bump",
            (_, Jolt::Worst) => "brakes",
        }
    }
}

impl Model for Road {
    fn id(&self) -> &'static str {
        "road"
    }

    fn controls(&self) -> &'static [Control] {
        CONTROLS
    }

    fn sizes(&self) -> &'static [&'static str] {
        &["spacing"]
    }

    fn outcome(&self, state: &State) -> Option<Outcome> {
        use Dimension::{Count, Force, Length, Moment, Ratio};
        let seen = read(state)?;
        let said = seen.said();
        let (stock, kind) = (seen.stock, seen.kind);
        let (distance, loaded) = (seen.distance_mm, seen.loaded());
        // While nothing loads the figure, the worked example is that of the load to come.
        let n = match kind {
            _ if loaded => seen,
            Kind::Chain => numbers(stock, kind, Jolt::Worst, distance)?,
            _ => numbers(stock, kind, Jolt::Bump, distance)?,
        };
        let jolt = n.jolt;
        // With which others a reader compares it; the same as it is where there is nothing to compare.
        let hardest_of =
            |kind: Kind, jolt: Jolt| numbers(stock, kind, jolt, distance).map(|n| n.hardest());
        let close = match kind {
            Kind::Third | Kind::Apart => hardest_of(Kind::Close, jolt)?,
            _ => n.hardest(),
        };
        let without_bump = if kind.coupler() && jolt == Jolt::Bump {
            hardest_of(kind, Jolt::Still)?
        } else {
            n.hardest()
        };
        let trailer = Trailer {
            mass: kilogram(stock.mass),
            towing: kilogram(Input::default().towing_mass_kg),
            tongue_share: TONGUE_SHARE,
            // These two count for heavy trailers only.
            bed_over_arm: 1.0,
            tow_on_air: false,
        };
        let alike = n.alike.first().copied()?;
        Some(Outcome {
            said,
            seen: [
                kind.seen(),
                if loaded { "seen-bolts" } else { "seen-off" },
                "",
            ],
            end: None,
            values: named![
                ("bolts", kind.row(stock).0, Count),
                ("spacing", kind.spacing_mm(stock) * 1e-3, Length),
                ("tongue", trailer.force(Size::Tongue(1.0)), Force),
                (
                    "factor",
                    input(stock, kind, jolt, distance).vertical_factor,
                    Ratio
                ),
                ("load", n.along.hypot(n.up), Force),
                ("load-up", n.up, Force),
                ("load-along", n.along.abs(), Force),
                // The part of the load that has the distance for a lever.
                ("across", n.across_lever(), Force),
                ("twist", n.twist.abs(), Moment),
                ("pair", largest(&n.pair), Force),
                ("share", alike.in_plane(), Force),
                ("share-up", alike.across, Force),
                ("share-along", alike.along.abs(), Force),
                ("hardest", n.hardest(), Force),
                ("other", n.other(), Force),
                ("with-two-close", close, Force),
                // Wrong ideas: no factor for the bump; one bolt alone against the twist.
                ("without-bump", without_bump, Force),
                ("pair-double", 2.0 * largest(&n.pair), Force),
            ],
            joint: input(stock, kind, Jolt::Worst, distance),
        })
    }

    fn picture(&self, state: &State, look: &Look<'_>) -> Option<Picture> {
        let n = read(state)?;
        let (drawing, handle) = picture::drawing(&n, look);
        Some(Picture {
            drawing,
            plot: Some(plot::plot(&n, look)?),
            handles: vec![handle],
        })
    }
}

impl Numbers {
    /// The part of the load that points across the line from the bolts to it, N.
    fn across_lever(&self) -> f64 {
        if self.kind == Kind::Hanger {
            self.along.abs()
        } else {
            self.up.abs()
        }
    }
}

fn read(state: &State) -> Option<Numbers> {
    numbers(
        STOCK.of(state.units()),
        Kind::of(state.choice(JOINT)),
        Jolt::of(state.choice(ROAD)),
        state.mm(DISTANCE),
    )
}

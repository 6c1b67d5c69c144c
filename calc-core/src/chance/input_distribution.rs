//! How far each input may lie from what was entered, and where that comes from.

use crate::cite::{Cite, Flag, Source};
use crate::inspection::CALIPER_OFF;
use crate::quantity::{Dimension, InUnits};
use crate::report::{Amount, Label};
use crate::scenario::{Field, Scenario, WallBasis};
use crate::support::{self, part_strengths};
use serde::Serialize;

/// How many standard deviations a bell curve is followed to either side.
pub const CUT: f64 = 3.0;

/// An input that scatters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Variable {
    /// Nut factor of the finish: which of the published values this lot of bolts has.
    Finish,
    /// Clamp from bolt to bolt at one torque.
    Tightening,
    /// Friction between the clamped faces.
    SlipFriction,
    /// Wall of the tube.
    Wall,
    /// Yield strength of the tube.
    Yield,
    /// Load of the hardest bump against the entered one.
    Load,
    /// Yield strength of the bolt.
    Bolt,
    /// Yield strength of the plate, sleeve or block that was put in.
    #[serde(rename = "put-in")]
    AddedPart,
    /// How much shorter a sleeve or block comes out than its place.
    Fit,
}

impl Variable {
    /// All, in the order in which they are drawn.
    pub const ALL: [Self; Self::COUNT] = [
        Self::Finish,
        Self::Tightening,
        Self::SlipFriction,
        Self::Wall,
        Self::Yield,
        Self::Load,
        Self::Bolt,
        Self::AddedPart,
        Self::Fit,
    ];

    /// How many there are.
    pub const COUNT: usize = 9;

    /// Key of its name in `content/messages.toml`.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Finish => "chance.finish",
            Self::Tightening => "chance.tightening",
            Self::SlipFriction => "chance.slip-friction",
            Self::Wall => "chance.wall",
            Self::Yield => "chance.yield",
            Self::Load => "chance.load",
            Self::Bolt => "chance.bolt",
            Self::AddedPart => "chance.put-in",
            Self::Fit => "chance.fit",
        }
    }
}

/// DistributionKind of a spread. Numbers in SI.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case", tag = "form")]
pub enum DistributionKind {
    /// Does not scatter.
    Fixed,
    /// Bell curve on the number itself, cut at [`CUT`] standard deviations.
    Normal {
        /// Standard deviation.
        sigma: f64,
    },
    /// Bell curve on the logarithm, cut at [`CUT`] standard deviations.
    LogNormal {
        /// Standard deviation of the natural logarithm.
        sigma: f64,
    },
    /// Straight up from the lowest to the likeliest value and straight down to the highest.
    Triangular {
        /// Lowest.
        low: f64,
        /// Highest.
        high: f64,
    },
}

/// How one input is distributed: a row of the table.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct InputDistribution {
    /// Which input.
    pub variable: Variable,
    /// Median of a bell curve, likeliest value of a triangle.
    pub middle: Amount,
    /// DistributionKind.
    pub form: DistributionKind,
    /// Where the spread comes from.
    #[serde(flatten)]
    pub cite: Cite,
    /// What the row rests on, by key.
    pub because: Label,
}

impl InputDistribution {
    /// Lowest and highest value that can be drawn.
    #[must_use]
    pub fn limits(&self) -> (f64, f64) {
        let m = self.middle.si;
        match self.form {
            DistributionKind::Fixed => (m, m),
            DistributionKind::Normal { sigma } => (m - CUT * sigma, m + CUT * sigma),
            DistributionKind::LogNormal { sigma } => {
                (m * (-CUT * sigma).exp(), m * (CUT * sigma).exp())
            }
            DistributionKind::Triangular { low, high } => (low, high),
        }
    }
}

const fn assumed(place: &'static str) -> Cite {
    Cite::new(Source::OwnAssumption, place, Flag::Assumption)
}

/// How the inputs of a scenario are distributed, one row a variable, in the order of [`Variable::ALL`].
///
/// # Sources
/// Each row carries its own.
#[must_use]
pub fn input_distributions(s: &Scenario) -> [InputDistribution; Variable::COUNT] {
    [
        finish(s),
        tightening(s),
        slip_friction(s),
        wall(s),
        yield_strength(s),
        load(),
        bolt(s),
        added_part(s),
        fit(s),
    ]
}

fn row(
    variable: Variable,
    middle: (f64, Dimension),
    form: DistributionKind,
    cite: Cite,
    because: Label,
) -> InputDistribution {
    InputDistribution {
        variable,
        middle: Amount::new(middle.0, middle.1),
        form,
        cite,
        because,
    }
}

fn finish(s: &Scenario) -> InputDistribution {
    let k = s.tightening.nut_factor;
    let middle = (k, Dimension::Ratio);
    let own = row(
        Variable::Finish,
        middle,
        DistributionKind::Fixed,
        assumed("own nut factor taken as known"),
        Label::SpreadFinishOwn,
    );
    // Where the clamp is controlled by turn, washer or stretch, the nut factor has no say.
    let finish = s.tightening.lubrication;
    let [low, high] = if s.is_given(Field::NutFactor) {
        s.tightening.nut_factor_band
    } else {
        [finish.low(), finish.high()]
    };
    if low >= high || !s.tightening.method.by_torque() {
        return own;
    }
    row(
        Variable::Finish,
        middle,
        DistributionKind::Triangular { low, high },
        finish.cite_range(),
        Label::SpreadFinishRange,
    )
}

fn tightening(s: &Scenario) -> InputDistribution {
    let gamma = s.tightening.scatter;
    let cite = if s.is_given(Field::Scatter) {
        assumed("own scatter read as 19 bolts of 20")
    } else {
        s.tightening.method.cite()
    };
    row(
        Variable::Tightening,
        (1.0, Dimension::Ratio),
        DistributionKind::LogNormal { sigma: gamma / 2.0 },
        cite,
        Label::SpreadTightening,
    )
}

/// The only figures at hand for the spread of a slip coefficient are those of clean mill scale on
/// structural steel, mean 0.33 and standard deviation 0.07.
fn slip_friction(s: &Scenario) -> InputDistribution {
    row(
        Variable::SlipFriction,
        (s.tightening.faying_friction, Dimension::Ratio),
        DistributionKind::LogNormal { sigma: 0.21 },
        Cite::new(
            Source::HandbookRecalled,
            "slip coefficients of clean mill scale, 0.33 ± 0.07",
            Flag::Memory,
        ),
        Label::SpreadSlipFriction,
    )
}

fn wall(s: &Scenario) -> InputDistribution {
    if !support::of(s).is_hollow() {
        return row(
            Variable::Wall,
            (s.tube.depth.si(), Dimension::Length),
            DistributionKind::Fixed,
            assumed("no wall"),
            Label::SpreadWallNone,
        );
    }
    let wall = s.tube.wall.si();
    if s.tube.wall_basis == WallBasis::Measured {
        return row(
            Variable::Wall,
            (wall, Dimension::Length),
            DistributionKind::Normal {
                sigma: (CALIPER_OFF / 2.0).min(0.02 * wall),
            },
            assumed("caliper reading"),
            Label::SpreadWallMeasured,
        );
    }
    row(
        Variable::Wall,
        (s.tube.design_wall.si(), Dimension::Length),
        DistributionKind::Triangular {
            low: 0.90 * wall,
            high: 1.10 * wall,
        },
        Cite::new(Source::AstmA500, "wall tolerance ±10 %", Flag::Memory),
        Label::SpreadWallNominal,
    )
}

/// The specified minimum is what all but a few pieces exceed, so it is set two standard deviations
/// below the likely strength.
fn yield_strength(s: &Scenario) -> InputDistribution {
    let (least, likely) = (s.tube.yield_least.si(), s.tube.yield_likely.si());
    let own = s.is_given(Field::TubeYield);
    let welded = s.tube.material.welded().filter(|_| s.tube.weld_near);
    if let Some(welded) = welded
        && likely <= welded.likely.yield_strength().si() * (1.0 + 1e-9)
    {
        return softened(Variable::Yield, [least, likely]);
    }
    let sigma = if own {
        0.05
    } else {
        ((likely / least).ln() / 2.0).clamp(0.03, 0.15)
    };
    row(
        Variable::Yield,
        (likely, Dimension::Stress),
        DistributionKind::LogNormal { sigma },
        assumed("specified minimum two deviations below the likely strength"),
        if own {
            Label::SpreadYieldOwn
        } else {
            Label::SpreadYieldRows
        },
    )
}

/// Strengths of softened metal that were published, against its least and its usual one: 11 to 22 ksi of 6061-T6, whose
/// least is 15 and whose usual is 20.
const SOFTENED: [f64; 2] = [11.0 / 15.0, 22.0 / 20.0];

/// Metal beside a weld. Other alloys are taken to spread as 6061-T6 does.
///
/// # Sources
/// As-welded yield strengths of 6061-T6 in handbooks, tests and a filler maker's guide, most of them second-hand: 18 and
/// 19 ksi in thin plate, 20 and 22 in others, 14 in thick plate, 11 the least of any code.
fn softened(variable: Variable, [least, likely]: [f64; 2]) -> InputDistribution {
    let [low, high] = SOFTENED;
    row(
        variable,
        (likely, Dimension::Stress),
        DistributionKind::Triangular {
            low: low * least,
            high: high * likely,
        },
        Cite::new(
            Source::HandbookRecalled,
            "6061-T6 as welded, yield strengths from 11 to 22 ksi",
            Flag::ReadSecondHand,
        ),
        Label::SpreadSoftened,
    )
}

fn load() -> InputDistribution {
    row(
        Variable::Load,
        (1.0, Dimension::Ratio),
        DistributionKind::LogNormal { sigma: 0.15 },
        assumed("hardest bump of a season within ±30 %, 19 seasons of 20"),
        Label::SpreadLoad,
    )
}

/// Likely yield strength of a bolt over its specified minimum.
const BOLT_LIKELY: f64 = 1.10;

/// As for the tube: the minimum two standard deviations below what is likely.
fn bolt(s: &Scenario) -> InputDistribution {
    row(
        Variable::Bolt,
        (
            s.bolting.yield_strength().si() * BOLT_LIKELY,
            Dimension::Stress,
        ),
        DistributionKind::LogNormal {
            sigma: BOLT_LIKELY.ln() / 2.0,
        },
        assumed("likely yield a tenth above the specified minimum, two deviations"),
        Label::SpreadBolt,
    )
}

fn added_part(s: &Scenario) -> InputDistribution {
    let Some([least, likely]) = part_strengths(s) else {
        return row(
            Variable::AddedPart,
            (s.tube.yield_likely.si(), Dimension::Stress),
            DistributionKind::Fixed,
            assumed("nothing was put in"),
            Label::SpreadPutInNothing,
        );
    };
    if support::of(s)
        .metal(s)
        .is_some_and(|metal| metal.welded && metal.material.welded().is_some())
    {
        return softened(Variable::AddedPart, [least, likely]);
    }
    row(
        Variable::AddedPart,
        (likely, Dimension::Stress),
        DistributionKind::LogNormal {
            sigma: ((likely / least).ln() / 2.0).clamp(0.03, 0.15),
        },
        assumed("specified minimum two deviations below the likely strength"),
        Label::SpreadPutIn,
    )
}

/// How far a file and a caliper miss the wanted shortness, m, either way. An assumption: half of what a filed piece may
/// be short in a repair.
const FILED: f64 = 0.15e-3;

/// Where a piece between the walls carries, how short it comes out. A piece that is too long is taken as it is.
fn fit(s: &Scenario) -> InputDistribution {
    let between = s.support.may_be_short() && !s.member.is_open();
    let short = if between { s.sleeve_short.si() } else { 0.0 };
    let drawn = short > 0.0;
    let (form, because) = if drawn {
        let form = DistributionKind::Triangular {
            low: (short - FILED).max(0.0),
            high: short + FILED,
        };
        (form, Label::SpreadFit)
    } else {
        (DistributionKind::Fixed, Label::SpreadFitNone)
    };
    row(
        Variable::Fit,
        (short, Dimension::Length),
        form,
        assumed("filed to its place, 0.15 mm either way"),
        because,
    )
}

//! Measure, look, decide: a caliper across the tube at the bolt and away from it, a hole measured both
//! ways, and what follows.

mod picture;

use super::both::Both;
use super::control::{Control, Range};
use super::model::{Look, Model, Outcome, Picture, named};
use super::state::State;
use calc_core::evaluate::{Basis, basis};
use calc_core::inspection::{DentReading, OvalReading, Tells, dent, oval};
use calc_core::quantity::{Dimension, InUnits, mm};
use calc_core::report::Verdict;
use calc_core::scenario::Field;
use calc_core::{Input, Scenario};
use picture::{drawing, hole_grip, plot};

/// The lesson.
pub(super) struct Measure;

const DENT: usize = 0;
const WALL: usize = 1;
const OVAL: usize = 2;

const CONTROLS: &[Control] = &[
    Control::number(
        "dent",
        "dent of both faces together",
        Dimension::Length,
        DENTS,
    ),
    Control::number(
        "wall",
        "wall at the open end",
        Dimension::Length,
        Both {
            us: Range::new([0.0625, 0.3125], 0.015_625, 0.125),
            metric: Range::new([2.0, 6.0], 0.25, 3.0),
        },
    ),
    Control::number(
        "oval",
        "hole longer than wide by",
        Dimension::Length,
        Both {
            us: Range::new([0.0, 0.16], 0.004, 0.0),
            metric: Range::new([0.0, 4.0], 0.1, 0.0),
        },
    ),
];

/// The highest is the end of the plot's axis.
const DENTS: Both<Range> = Both {
    us: Range::new([0.0, 0.2], 0.004, 0.0),
    metric: Range::new([0.0, 5.0], 0.1, 0.0),
};

/// What the figure is made of, mm.
struct Stock {
    bolt: &'static str,
    grade: &'static str,
    /// Width and depth of the tube, and its metal.
    width: f64,
    depth: f64,
    metal: &'static str,
    /// Flat part of a dent, as wide as the washer that pressed it.
    pressed: f64,
    /// From the end of the tube.
    end: f64,
    /// The trailer, kg.
    mass: f64,
    /// Ends that the plot's axis may have, N.
    tops: [f64; 3],
}

static STOCK: Both<Stock> = Both {
    us: Stock {
        bolt: "unc-3.8",
        grade: "sae-5",
        // 2-1/2 x 3 in; 13/16 in; 2-1/2 in; 650 lb; 3000, 4500 and 8000 lbf.
        width: 63.5,
        depth: 76.2,
        metal: "a500-b",
        pressed: 20.6375,
        end: 63.5,
        mass: 294.835,
        tops: [13_344.7, 20_017.0, 35_585.8],
    },
    metric: Stock {
        bolt: "m10",
        grade: "iso-5.8",
        width: 60.0,
        depth: 80.0,
        metal: "s235",
        pressed: 20.0,
        end: 60.0,
        mass: 300.0,
        tops: [13e3, 20e3, 36e3],
    },
};

/// The coupler of a small stock trailer on a steel tube, two bolts; coupler and bolts are off for
/// the measurement. Invented.
fn input(state: &State) -> Input {
    let stock = STOCK.of(state.units());
    Input::with(
        &[
            (Field::TubeWidth, stock.width),
            (Field::TubeDepth, stock.depth),
            (Field::TubeWall, state.mm(WALL)),
            (Field::PreloadShare, 0.5),
            (Field::TrailerMass, stock.mass),
            (Field::EndDistance, stock.end),
        ],
        &[
            (Field::TubeMaterial, stock.metal),
            (Field::Bolt, stock.bolt),
            (Field::Grade, stock.grade),
        ],
    )
}

struct Numbers {
    stock: &'static Stock,
    scenario: Scenario,
    report: Basis,
    narrower: f64,
    dent: DentReading,
    hole: OvalReading,
    short: f64,
    long: f64,
}

fn numbers(state: &State) -> Option<Numbers> {
    let scenario = Scenario::new(&input(state)).ok()?;
    let narrower = state.mm(DENT);
    let short = scenario.bolting.hole.si() * 1e3;
    let long = short + state.mm(OVAL);
    Some(Numbers {
        stock: STOCK.of(state.units()),
        report: basis(&scenario),
        dent: dent(&scenario, mm(narrower)),
        hole: oval(&scenario, mm(long), mm(short)),
        scenario,
        narrower,
        short,
        long,
    })
}

impl Numbers {
    /// Height of one of the joint's nuts, mm.
    fn nut(&self) -> f64 {
        self.scenario.bolting.thread.nut_height().si() * 1e3
    }

    /// What the caliper reads over the tube and a nut on each face, away from the bolt, mm.
    fn away(&self) -> f64 {
        self.stock.depth + 2.0 * self.nut()
    }

    fn slipped(&self) -> bool {
        self.hole.slipped
    }

    /// Whether the dent is smaller than a caliper sees.
    fn too_small_to_see(&self) -> bool {
        matches!(self.dent.tells, Tells::AtMost(_))
    }

    /// Whether measurement and calculation cannot both be right, or nobody checked this far.
    fn doubtful(&self) -> bool {
        // No bolt left a dent that takes more than it yields at.
        let yields = self.report.tightening.yield_load_n;
        self.dent.doubtful || (!self.too_small_to_see() && self.clamp()[1] > yields)
    }

    /// Lowest, likely and highest clamp that the dent stands for, N. Where it says only "at most" or
    /// "at least", that end stands for all three; a bolt that has not stretched never had more than it yields at.
    fn clamp(&self) -> [f64; 3] {
        match (self.dent.clamp, self.dent.tells) {
            (Some(band), _) => [band.low.si, band.likely.si, band.high.si],
            (None, Tells::AtMost(end)) => [end.si.min(self.report.tightening.yield_load_n); 3],
            (None, Tells::AtLeast(end)) => [end.si; 3],
            (None, _) => [0.0; 3],
        }
    }

    fn clamp_check(&self) -> Verdict {
        self.report.clamp.verdict
    }

    /// What to decide: a joint that has slipped, or whose face is dented under a washer, does not hold, whatever a
    /// calculation says. No dent shows how much the clamp never was, and not how much there is.
    fn verdict(&self) -> Verdict {
        let weak = self.clamp_check() == Verdict::DoesNotHold;
        if self.slipped() || !self.too_small_to_see() || weak {
            Verdict::DoesNotHold
        } else {
            Verdict::NotChecked
        }
    }

    fn said(&self) -> &'static str {
        let shows = !self.too_small_to_see();
        let weak = self.clamp_check() == Verdict::DoesNotHold;
        if self.slipped() {
            return if shows && !self.doubtful() {
                "slipped-dented"
            } else {
                "slipped"
            };
        }
        match (shows, self.doubtful()) {
            (true, true) if matches!(self.dent.tells, Tells::AtLeast(_)) => "beyond",
            (true, true) => "does-not-fit",
            (true, _) if self.clamp()[1] < self.report.tightening.clamp_nominal_n => "dented-weak",
            (true, _) if weak => "dented-over",
            (true, _) => "dented-stiff",
            (false, _) if weak => "no-dent-weak",
            (false, _) => "no-dent-stiff",
        }
    }
}

impl Numbers {
    /// Keys of the sentences that tell the drawing: clamp, hole, verdict.
    fn seen(&self) -> [&'static str; 3] {
        [
            match self.dent.clamp {
                Some(_) if self.doubtful() => "seen-unfit",
                Some(_) => "seen-about",
                None if self.too_small_to_see() => "seen-most",
                None => "seen-least",
            },
            if self.slipped() {
                "seen-slipped"
            } else {
                "seen-round"
            },
            match self.verdict() {
                Verdict::Holds => "seen-holds",
                Verdict::Close => "seen-close",
                Verdict::NotChecked => "seen-open",
                Verdict::DoesNotHold => "seen-fails",
            },
        ]
    }
}

impl Model for Measure {
    fn id(&self) -> &'static str {
        "look"
    }

    fn controls(&self) -> &'static [Control] {
        CONTROLS
    }

    fn outcome(&self, state: &State) -> Option<Outcome> {
        use Dimension::{Force, Length, Share, Torque};
        let n = numbers(state)?;
        let [low, likely, high] = n.clamp();
        let tight = &n.report.tightening;
        Some(Outcome {
            said: n.said(),
            seen: n.seen(),
            end: None,
            values: named![
                ("away", n.away() * 1e-3, Length),
                ("at-bolt", (n.away() - n.narrower) * 1e-3, Length),
                ("clamp", likely, Force),
                ("low", low, Force),
                ("high", high, Force),
                ("wanted", tight.clamp_nominal_n, Force),
                ("yields", tight.yield_load_n, Force),
                ("torque", tight.torque_nm, Torque),
                ("share", likely / tight.clamp_nominal_n, Share),
                ("hole-short", n.short * 1e-3, Length),
                ("hole-long", n.long * 1e-3, Length),
                (
                    "bolt",
                    (n.scenario.bolting.thread.major().si() * 1e3) * 1e-3,
                    Length
                ),
                ("play", (n.hole.play.si * 1e3) * 1e-3, Length),
                // The wrong ideas that an answer may come from.
                ("half-dent", (n.narrower / 2.0) * 1e-3, Length),
                (
                    "play-new",
                    (n.short - n.scenario.bolting.thread.major().si() * 1e3) * 1e-3,
                    Length
                ),
            ],
            joint: input(state),
        })
    }

    fn picture(&self, state: &State, look: &Look<'_>) -> Option<Picture> {
        let n = numbers(state)?;
        Some(Picture {
            drawing: drawing(&n, look),
            plot: Some(plot(&n, look)),
            handles: vec![hole_grip(&n, look)],
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    use calc_core::quantity::UnitSystem::{self, Metric, Us};

    fn is(text: &str, units: UnitSystem) -> Numbers {
        numbers(&State::parse(CONTROLS, text, units).unwrap()).unwrap()
    }

    fn at(text: &str) -> Numbers {
        is(text, Metric)
    }

    fn get(text: &str, name: &str, units: UnitSystem) -> f64 {
        let state = State::parse(CONTROLS, text, units).unwrap();
        let outcome = Measure.outcome(&state).unwrap();
        let found = outcome.values.iter().find(|(n, _)| *n == name);
        found.unwrap_or_else(|| panic!("{name}")).1.si
    }

    #[test]
    fn an_oval_hole_decides_alone() {
        for text in ["oval=0.2", "oval=3 wall=6", "oval=1 dent=5 wall=2"] {
            assert_eq!(at(text).verdict(), Verdict::DoesNotHold, "{text}");
            assert!(at(text).said().starts_with("slipped"), "{text}");
        }
    }

    #[test]
    fn no_state_holds_and_each_says_its_own() {
        for (text, verdict, said) in [
            ("", Verdict::DoesNotHold, "no-dent-weak"),
            ("wall=6", Verdict::NotChecked, "no-dent-stiff"),
            ("wall=5", Verdict::NotChecked, "no-dent-stiff"),
            ("dent=1.2", Verdict::DoesNotHold, "dented-weak"),
            ("dent=1 wall=4", Verdict::DoesNotHold, "dented-over"),
            ("dent=0.5 wall=6", Verdict::DoesNotHold, "dented-stiff"),
            ("dent=0.3 wall=6", Verdict::NotChecked, "no-dent-stiff"),
            ("dent=5 wall=6", Verdict::DoesNotHold, "does-not-fit"),
            ("dent=5 wall=2", Verdict::DoesNotHold, "beyond"),
        ] {
            let n = at(text);
            assert_eq!((n.verdict(), n.said()), (verdict, said), "{text}");
        }
    }

    /// What the words say of the weak wall: even its highest clamp is below the one that is wanted.
    #[test]
    fn on_the_weak_wall_no_dent_stands_for_enough_clamp() {
        for tenths in 0..=50 {
            let tenths = f64::from(tenths);
            for (dent, units) in [(tenths / 10.0, Metric), (tenths / 250.0, Us)] {
                let n = is(&format!("dent={dent}"), units);
                let [low, likely, _] = n.clamp();
                let wanted = n.report.tightening.clamp_nominal_n;
                assert!(
                    low <= likely && likely < wanted,
                    "{dent}: {likely} {wanted}"
                );
            }
        }
    }

    #[test]
    fn readings_and_play_are_what_a_hand_calculation_gives() {
        let metric = |text, name| get(text, name, Metric);
        // ISO 4032: nut M10 is 8.4 mm high. 80 + 2 · 8.4 over both nuts; 1.2 less over the dent.
        assert!((metric("dent=1.2", "away") - 96.8e-3).abs() < 1e-9);
        assert!((metric("dent=1.2", "at-bolt") - 95.6e-3).abs() < 1e-9);
        // ISO 273 medium: 11 mm for M10, so 1 mm of play when new; 2.2 mm longer: 3.2 mm.
        assert!((metric("oval=2.2", "play-new") - 1.0e-3).abs() < 1e-9);
        assert!((metric("oval=2.2", "play") - 3.2e-3).abs() < 1e-9);
        // ISO 898-1 Table 5: proof load of M10 class 5.8 is 22.0 kN; half of it is wanted.
        assert!((metric("", "wanted") / 11.0e3 - 1.0).abs() < 5e-3);
        let inch = |text, name| get(text, name, Us) / 0.0254;
        // ASME B18.2.2: nut 3/8 in is 21/64 in high.
        assert!((inch("dent=0.048", "away") - (3.0 + 42.0 / 64.0)).abs() < 1e-3);
        assert!((inch("dent=0.048", "at-bolt") - (3.0 + 42.0 / 64.0 - 0.048)).abs() < 1e-3);
        // ASME B18.2.8 normal: 13/32 in for 3/8 in.
        assert!((inch("oval=0.088", "play") - (1.0 / 32.0 + 0.088)).abs() < 1e-6);
        // SAE J429: proof load of 3/8-16 grade 5 is 6600 lbf.
        assert!((get("", "wanted", Us) / 4.448_222 / 3300.0 - 1.0).abs() < 5e-3);
    }
}

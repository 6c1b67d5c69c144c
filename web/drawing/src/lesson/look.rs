//! Measure, look, decide: a caliper across the tube at the bolt and away from it, a hole measured both
//! ways, and what follows.

use super::DRAWING_WIDTH;
use super::chart::{Axis, Band, Chart, Curve, CurveKind, KeyPoint, Level};
use super::control::{Control, ControlKind, State};
use super::model::{Handle, Look, Model, Outcome, Picture, value};
use super::stand::verdict_words;
use crate::measure::caliper;
use crate::parts::{Dimension as Measured, Strip, StripField, centre_cross, nut};
use crate::pen::{Pen, polyline};
use crate::scene::{Anchor, Hatch, Lean, Mark, Material, Placed, Scene};
use crate::section::Sag;
use crate::units::Lettering;
use calc_core::caliper::{DentReading, OvalReading, dent, oval};
use calc_core::quantity::{Dimension, InUnits, Unit, mm};
use calc_core::report::{CheckId, Report, Verdict};
use calc_core::{Input, Scenario, evaluate};

/// The lesson.
pub(super) struct Measure;

const DENT: usize = 0;
const WALL: usize = 1;
const OVAL: usize = 2;

const CONTROLS: &[Control] = &[
    length(
        "dent",
        "dent of both faces together",
        [0.0, MOST_DENT],
        0.1,
        0.0,
    ),
    length("wall", "wall at the open end", [2.0, 6.0], 0.25, 3.0),
    length("oval", "hole longer than wide by", [0.0, 4.0], 0.1, 0.0),
];

const fn length(
    key: &'static str,
    label: &'static str,
    range: [f64; 2],
    step: f64,
    start: f64,
) -> Control {
    Control {
        key,
        label,
        kind: ControlKind::Number {
            dimension: Dimension::Length,
            unit: Unit::Millimetre,
            min: range[0],
            max: range[1],
            step,
            start,
        },
    }
}

/// Dent up to which slider and plot go, mm.
const MOST_DENT: f64 = 5.0;
/// Tube, mm.
const WIDTH_MM: f64 = 60.0;
const DEPTH_MM: f64 = 80.0;
/// Flat part of a dent, as wide as the washer that pressed it, mm.
const PRESSED_MM: f64 = 20.0;

/// The coupler of a small stock trailer on a steel tube, two M10 bolts; coupler and bolts are off for
/// the measurement. Invented.
fn input(state: &State) -> Input {
    Input {
        tube_width_mm: WIDTH_MM,
        tube_depth_mm: DEPTH_MM,
        tube_wall_mm: state.number(WALL),
        tube_material: String::from("s235"),
        bolt: String::from("m10"),
        bolt_grade: String::from("iso-5.8"),
        preload_share: 0.5,
        trailer_mass_kg: 300.0,
        end_distance_mm: 60.0,
        ..Input::default()
    }
}

struct Numbers {
    scenario: Scenario,
    report: Report,
    narrower: f64,
    dent: DentReading,
    hole: OvalReading,
    short: f64,
    long: f64,
}

fn numbers(state: &State) -> Option<Numbers> {
    let scenario = Scenario::new(&input(state)).ok()?;
    let narrower = state.number(DENT);
    let short = scenario.bolting.hole.si() * 1e3;
    let long = short + state.number(OVAL);
    Some(Numbers {
        report: evaluate(&scenario),
        dent: dent(&scenario, mm(narrower)),
        hole: oval(&scenario, mm(long), mm(short)),
        scenario,
        narrower,
        short,
        long,
    })
}

/// Whether a reading says a sentence.
fn says(said: &[calc_core::report::Said], code: &str) -> bool {
    said.iter().any(|s| s.code == code)
}

impl Numbers {
    /// Height of one of the joint's nuts, mm.
    fn nut(&self) -> f64 {
        self.scenario.bolting.thread.nut_height().si() * 1e3
    }

    /// What the caliper reads over the tube and a nut on each face, away from the bolt, mm.
    fn away(&self) -> f64 {
        DEPTH_MM + 2.0 * self.nut()
    }

    fn slipped(&self) -> bool {
        says(&self.hole.said, "oval-slipped")
    }

    /// Whether measurement and calculation cannot both be right, or nobody checked this far.
    fn doubtful(&self) -> bool {
        ["dent-beyond", "outside-checked", "more-than-bolt"]
            .iter()
            .any(|code| says(&self.dent.said, &format!("caliper-{code}")))
    }

    /// Lowest, likely and highest clamp that the dent stands for, N. Where it says only "at most" or
    /// "at least", that end stands for all three.
    fn clamp(&self) -> [f64; 3] {
        self.dent.clamp.map_or_else(
            || {
                let said = self.dent.said.first().and_then(|s| s.amounts.last());
                [said.map_or(0.0, |a| a.si); 3]
            },
            |band| [band.low.si, band.likely.si, band.high.si],
        )
    }

    fn clamp_check(&self) -> Verdict {
        let mut checks = self.report.checks.iter();
        let clamp = checks.find(|c| c.id == CheckId::Clamp);
        clamp.map_or(Verdict::NotChecked, |c| c.verdict)
    }

    /// What to decide: a joint that has slipped does not hold, whatever a calculation says.
    fn verdict(&self) -> Verdict {
        if self.slipped() {
            Verdict::DoesNotHold
        } else if self.doubtful() {
            Verdict::NotChecked
        } else {
            self.clamp_check()
        }
    }

    fn said(&self) -> &'static str {
        let shows = !says(&self.dent.said, "caliper-dent-below");
        let weak = self.clamp_check() == Verdict::DoesNotHold;
        if self.slipped() {
            return if shows && !self.doubtful() {
                "slipped-dented"
            } else {
                "slipped"
            };
        }
        match (shows, self.verdict()) {
            (true, Verdict::NotChecked) if says(&self.dent.said, "caliper-dent-beyond") => "beyond",
            (true, Verdict::NotChecked) => "does-not-fit",
            (true, _) if self.clamp()[1] < self.report.tightening.clamp_nominal_n => "dented-weak",
            (true, _) if weak => "dented-over",
            (true, _) => "dented-stiff",
            (false, _) if weak => "no-dent-weak",
            (false, _) => "no-dent-stiff",
        }
    }
}

impl Model for Measure {
    fn id(&self) -> &'static str {
        "look"
    }

    fn words(&self) -> &'static str {
        include_str!("../../../../content/76-look.toml")
    }

    fn controls(&self) -> &'static [Control] {
        CONTROLS
    }

    fn outcome(&self, state: &State) -> Option<Outcome> {
        let n = numbers(state)?;
        let [low, likely, high] = n.clamp();
        let tight = &n.report.tightening;
        let length = |name, mm: f64| value(name, mm * 1e-3, Dimension::Length);
        let force = |name, n| value(name, n, Dimension::Force);
        Some(Outcome {
            said: n.said(),
            values: vec![
                length("away", n.away()),
                length("at-bolt", n.away() - n.narrower),
                force("clamp", likely),
                force("low", low),
                force("high", high),
                force("wanted", tight.clamp_nominal_n),
                force("yields", tight.yield_load_n),
                value("torque", tight.torque_nm, Dimension::Torque),
                value("share", likely / tight.clamp_nominal_n, Dimension::Share),
                length("hole-short", n.short),
                length("hole-long", n.long),
                length("bolt", n.scenario.bolting.thread.major().si() * 1e3),
                length("play", n.hole.play.si * 1e3),
                // The wrong ideas that an answer may come from.
                length("half-dent", n.narrower / 2.0),
                length(
                    "play-new",
                    n.short - n.scenario.bolting.thread.major().si() * 1e3,
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
            handles: vec![Handle {
                control: OVAL,
                at: (
                    HOLE.0 + (n.long - n.short / 2.0) * HOLE_SCALE + GRIP,
                    HOLE.1,
                ),
                along: (HOLE_SCALE, 0.0),
            }],
        })
    }
}

/// Drawing units in a millimetre of the tube, and how much larger the dent is drawn.
const SCALE: f64 = 1.22;
const TIMES: f64 = 3.0;
/// Middle height of both tubes; middles of the two.
const MIDDLE: f64 = 112.0;
const AT: f64 = 88.0;
const BESIDE: f64 = 258.0;
/// Middle of the hole as drilled, and its scale.
const HOLE: (f64, f64) = (60.0, 288.0);
const HOLE_SCALE: f64 = 3.2;
/// How far beside the hole's edge the grip lies.
const GRIP: f64 = 15.0;
const BOTTOM: f64 = 356.0;

fn drawing(n: &Numbers, look: &Look<'_>) -> Scene {
    let units = look.units;
    let mut marks = Vec::new();
    for (x, name, dent) in [
        (AT, "at the bolt", n.narrower),
        (BESIDE, "a hand away", 0.0),
    ] {
        marks.push(Mark::text((x, 16.0), name, "t", Anchor::Middle));
        marks.extend(measured(n, x, dent, &units.length(n.away() - dent)));
    }
    marks.push(Mark::line((0.0, 226.0), (DRAWING_WIDTH, 226.0), "hair"));
    marks.extend(hole(n, look));
    let [low, likely, high] = n.clamp();
    let below = says(&n.dent.said, "caliper-dent-below");
    let fits = !n.doubtful();
    let words = match n.dent.clamp {
        Some(_) if !fits => String::from("does not fit"),
        Some(_) => units.force(likely),
        None if below => format!("at most {}", units.force(likely)),
        None => format!("at least {}", units.force(likely)),
    };
    let verdict = verdict_words(n.verdict());
    let mut letter = |y, text: String, class| {
        marks.push(Mark::text((332.0, y), text, class, Anchor::End));
    };
    letter(247.0, "clamp that was reached".into(), "t s soft");
    letter(265.0, words.clone(), "t clamp");
    if fits && n.dent.clamp.is_some() {
        let text = format!("{} to {}", units.force(low), units.force(high));
        letter(282.0, text, "t s");
    }
    let hole = if n.slipped() {
        format!("slipped by {}", units.length(n.long - n.short))
    } else {
        "hole still round".into()
    };
    letter(306.0, hole.clone(), "t s");
    letter(328.0, "verdict".into(), "t s soft");
    letter(345.0, verdict.into(), "t stamped");
    let strip = Strip {
        fields: vec![
            StripField::new("tube, cut", "a nut on each face"),
            StripField::new("dent", format!("drawn ×\u{a0}{TIMES}")),
            StripField::new("joint", "invented"),
        ],
    };
    marks.extend(strip.marks(DRAWING_WIDTH, BOTTOM));
    Scene {
        id: look.id.into(),
        width: DRAWING_WIDTH,
        height: BOTTOM + strip.height(DRAWING_WIDTH),
        title: String::from("Caliper over the tube at the bolt and away from it, and the hole"),
        description: format!(
            "Dent {}, both faces together: clamp that was reached {words}. Hole: {hole}. Verdict: {verdict}.",
            units.length(n.narrower)
        ),
        marks,
    }
}

/// The tube in section with a washer on each face and a caliper over both. `dent` is that of both
/// faces, mm.
fn measured(n: &Numbers, x: f64, dent: f64, reads: &str) -> Vec<Mark> {
    let drawn = dent / 2.0 * TIMES;
    let half = DEPTH_MM / 2.0 * SCALE;
    let (top, bottom) = (MIDDLE - half, MIDDLE + half);
    let mut marks = Vec::new();
    if dent > 0.0 {
        for y in [top, bottom] {
            let reach = WIDTH_MM / 2.0 * SCALE - 6.0;
            marks.push(Mark::line((x - reach, y), (x + reach, y), "phantom"));
        }
    }
    let tube = [-1.0, 1.0].map(|side| {
        Mark::cut(
            half_tube(n, x, side, drawn),
            Hatch::new(Material::Steel, Lean::Right),
        )
    });
    marks.push(Mark::group(Placed::default(), "p-face", tube.to_vec()));
    // Bare jaws would rest on the corners; a nut on each face lifts them clear.
    let (tall, flats) = (
        n.nut() * SCALE,
        n.scenario.bolting.thread.width_across_flats().si() * 1e3 * SCALE,
    );
    let (upper, lower) = (top + drawn * SCALE, bottom - drawn * SCALE);
    marks.extend(nut(x, upper, flats, tall, true));
    marks.extend(nut(x, lower, flats, tall, false));
    let (from, to) = (upper - tall, lower + tall);
    marks.push(Mark::group(
        Placed {
            x: x + 54.0,
            y: from,
            degrees: 90.0,
        },
        "",
        caliper(to - from, 66.0, to - from + 43.0),
    ));
    let left = x - WIDTH_MM / 2.0 * SCALE;
    marks.extend(
        Measured {
            from: (left, from),
            to: (left, to),
            line: left - 18.0,
            text: reads.into(),
        }
        .upright(),
    );
    marks
}

/// One half of the cut tube, its faces in by `drawn` mm beside the hole.
fn half_tube(n: &Numbers, x: f64, side: f64, drawn: f64) -> String {
    let tube = &n.scenario.tube;
    let (wall, radius) = (tube.wall.si() * 1e3, tube.corner_radius.si() * 1e3);
    let (half, deep, hole) = (WIDTH_MM / 2.0, DEPTH_MM / 2.0, n.short / 2.0);
    let inner = (radius - wall).max(0.0);
    let sag = Sag::new(PRESSED_MM / 2.0, half - radius, drawn);
    let at = |mm: f64, up: f64| (x + side * mm * SCALE, MIDDLE - up * SCALE);
    // From the hole along a face to its corner; `level` is the height of the flat face.
    let face = |level: f64, sign: f64, end: f64| {
        (0..=14_u8).map(move |i| {
            let mm = hole + (end - hole) * f64::from(i) / 14.0;
            (mm, sign * (level - sag.at(mm)))
        })
    };
    let back = |level, sign, end| face(level, sign, end).collect::<Vec<_>>().into_iter().rev();
    let mut outline = Vec::new();
    outline.extend(face(deep, 1.0, half - radius));
    outline.extend(corner(half - radius, deep - radius, radius, 1.0, false));
    outline.extend(corner(half - radius, deep - radius, radius, -1.0, true));
    outline.extend(back(deep, -1.0, half - radius));
    outline.extend(face(deep - wall, -1.0, half - radius));
    outline.extend(corner(
        half - radius,
        deep - radius,
        inner.max(radius - wall),
        -1.0,
        false,
    ));
    outline.extend(corner(
        half - radius,
        deep - radius,
        inner.max(radius - wall),
        1.0,
        true,
    ));
    outline.extend(back(deep - wall, 1.0, half - radius));
    polyline(outline.into_iter().map(|(mm, up)| at(mm, up))) + "Z"
}

/// Points round a corner about its centre, from the face to the side wall, or back.
fn corner(x: f64, y: f64, r: f64, sign: f64, back: bool) -> impl Iterator<Item = (f64, f64)> {
    (0..=4_u8).map(move |i| {
        let share = f64::from(if back { 4 - i } else { i }) / 4.0;
        let (sin, cos) = (share * std::f64::consts::FRAC_PI_2).sin_cos();
        (x + r * sin, sign * (y + r * cos))
    })
}

/// The hole from outside: as drilled on the left, worn to the right.
fn hole(n: &Numbers, look: &Look<'_>) -> Vec<Mark> {
    let (x, y) = HOLE;
    let r = n.short / 2.0 * HOLE_SCALE;
    let far = x + (n.long - n.short) * HOLE_SCALE;
    let outline = Pen::at(x, y - r)
        .to(far, y - r)
        .arc(r, true, far, y + r)
        .to(x, y + r)
        .arc(r, true, x, y - r)
        .close();
    let bolt = n.scenario.bolting.thread.major().si() * 1e3 / 2.0 * HOLE_SCALE;
    let mut marks = vec![
        Mark::text(
            (10.0, 247.0),
            "hole, with the bolt",
            "t s soft",
            Anchor::Start,
        ),
        Mark::path(outline.d(), "edge none"),
        Mark::circle((x, y), bolt, "hidden none"),
    ];
    marks.extend(centre_cross((x, y), r + 6.0));
    let dimension = |from, to, line, mm| Measured {
        from,
        to,
        line,
        text: look.units.length(mm),
    };
    marks.extend(dimension((x - r, y), (far + r, y), y + r + 26.0, n.long).level());
    marks.extend(dimension((far, y - r), (far, y + r), far + r + 36.0, n.short).upright());
    marks.push(Mark::circle((far + r + GRIP, y), 13.0, "grip"));
    marks
}

/// Clamp that a dent stands for, with its band.
fn plot(n: &Numbers, look: &Look<'_>) -> Chart {
    let readings: Vec<_> = (0..=16_u8)
        .filter_map(|i| {
            let share = f64::from(i) / 16.0;
            let at = 0.1 + (MOST_DENT - 0.1) * share * share;
            Some((at * 1e-3, dent(&n.scenario, mm(at)).clamp?))
        })
        .collect();
    let points = |of: fn(&calc_core::caliper::Band) -> f64| -> Vec<_> {
        readings.iter().map(|(x, band)| (*x, of(band))).collect()
    };
    let [_, likely, _] = n.clamp();
    let name = match n.dent.clamp {
        Some(_) => "about",
        None if says(&n.dent.said, "caliper-dent-below") => "at most",
        None => "at least",
    };
    let tight = &n.report.tightening;
    let most = readings.iter().map(|(_, b)| b.high.si);
    let most = most.fold(1.1 * tight.clamp_nominal_n, f64::max);
    let top = [13e3, 20e3, 36e3].into_iter().find(|t| *t >= most);
    let top = top.unwrap_or(most);
    Chart {
        title: String::from("Clamp that was reached against the dent that stayed"),
        x: Axis {
            name: "dent of both faces",
            dimension: Dimension::Length,
            from: 0.0,
            to: MOST_DENT * 1e-3,
        },
        y: Axis {
            name: "clamp that was reached",
            dimension: Dimension::Force,
            from: 0.0,
            to: top,
        },
        band: Some(Band {
            lower: points(|b| b.low.si),
            upper: points(|b| b.high.si),
            name: String::new(),
        }),
        curves: vec![Curve {
            points: points(|b| b.likely.si),
            kind: CurveKind::This,
            name: String::new(),
            part: "p-face",
        }],
        levels: vec![
            Level {
                y: tight.clamp_nominal_n,
                name: String::from("the bolt wants this"),
            },
            Level {
                y: tight.yield_load_n,
                name: String::from("the bolt yields"),
            },
        ],
        points: vec![KeyPoint {
            name: name.into(),
            x: n.narrower * 1e-3,
            y: likely,
            here: true,
        }],
        units: look.units,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(text: &str) -> Numbers {
        numbers(&State::parse(CONTROLS, text).unwrap()).unwrap()
    }

    fn get(text: &str, name: &str) -> f64 {
        let state = State::parse(CONTROLS, text).unwrap();
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
    fn all_four_verdicts_come_up_and_each_state_says_its_own() {
        for (text, verdict, said) in [
            ("", Verdict::DoesNotHold, "no-dent-weak"),
            ("wall=6", Verdict::Holds, "no-dent-stiff"),
            ("wall=5", Verdict::Close, "no-dent-stiff"),
            ("dent=1.2", Verdict::DoesNotHold, "dented-weak"),
            ("dent=1 wall=4", Verdict::DoesNotHold, "dented-over"),
            ("dent=0.3 wall=6", Verdict::Holds, "dented-stiff"),
            ("dent=4 wall=6", Verdict::NotChecked, "does-not-fit"),
            ("dent=5 wall=2", Verdict::NotChecked, "beyond"),
        ] {
            let n = at(text);
            assert_eq!((n.verdict(), n.said()), (verdict, said), "{text}");
        }
    }

    /// What the words say of the weak wall: even its highest clamp is below the one that is wanted.
    #[test]
    fn on_the_weak_wall_no_dent_stands_for_enough_clamp() {
        for tenths in 0..=50 {
            let n = at(&format!("dent={}", f64::from(tenths) / 10.0));
            let [low, likely, _] = n.clamp();
            let wanted = n.report.tightening.clamp_nominal_n;
            assert!(
                low <= likely && likely < wanted,
                "{tenths}: {likely} {wanted}"
            );
        }
    }

    #[test]
    fn readings_and_play_are_what_a_hand_calculation_gives() {
        // ISO 4032: nut M10 is 8.4 mm high. 80 + 2 · 8.4 over both nuts; 1.2 less over the dent.
        assert!((get("dent=1.2", "away") - 96.8e-3).abs() < 1e-9);
        assert!((get("dent=1.2", "at-bolt") - 95.6e-3).abs() < 1e-9);
        // ISO 273 medium: 11 mm for M10, so 1 mm of play when new; 2.2 mm longer: 3.2 mm.
        assert!((get("oval=2.2", "play-new") - 1.0e-3).abs() < 1e-9);
        assert!((get("oval=2.2", "play") - 3.2e-3).abs() < 1e-9);
        // ISO 898-1 Table 5: proof load of M10 class 5.8 is 22.0 kN; half of it is wanted.
        assert!((get("", "wanted") / 11.0e3 - 1.0).abs() < 5e-3);
    }
}

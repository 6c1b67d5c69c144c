//! The ways in which a bolted joint ends, and the checks that stop it on each: a table for a person to read.
//!
//! For every member, support, mount and direction of load a joint is evaluated and asked which checks it has. Which
//! ways a direction can end in is stated here; a way without a check is a fault, unless a reason stands here.

use std::fmt::Write as _;

use calc_core::report::{CheckId, Report};
use calc_core::scenario::{FittingSides, MemberKind, Mount, SupportKind};
use calc_core::{Input, Scenario, evaluate};

/// Where the table stands, beside the tests.
pub const FILE: &str = "WAYS.md";

/// A way to end.
#[derive(Debug)]
pub struct Way {
    /// In words.
    pub name: &'static str,
    /// Checks of which at least one has to be there.
    pub checks: &'static [CheckId],
    /// Directions of load that can end in it.
    directions: &'static [Direction],
}

/// Direction of a load on the fitting.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Direction {
    /// Along the member, in the plane of the faces.
    Along,
    /// Across it, in the plane of the faces.
    Across,
    /// Along the bolts, off the member.
    Pull,
}

use Direction::{Across, Along, Pull};

/// All of them.
pub const WAYS: [Way; 11] = [
    way(
        "clamp is not reached",
        &[CheckId::Clamp],
        &[Along, Across, Pull],
    ),
    way(
        "bolt yields at the wrench",
        &[CheckId::BoltTightening],
        &[Along, Across, Pull],
    ),
    way("slips", &[CheckId::Slip], &[Along, Across]),
    way("comes open", &[CheckId::Opening], &[Pull]),
    way(
        "shakes loose",
        &[CheckId::LeastClamp, CheckId::Loosening],
        &[Along, Across, Pull],
    ),
    way(
        "bolt breaks",
        &[CheckId::BoltShear, CheckId::BoltCombined],
        &[Along, Across, Pull],
    ),
    way(
        "bolt breaks by repetition",
        &[CheckId::BoltFatigue],
        &[Pull],
    ),
    way(
        "member gives at the hole",
        &[CheckId::WallBearing, CheckId::TubeTearOut],
        &[Along, Across],
    ),
    way(
        "fitting gives at the hole",
        &[CheckId::FittingBearing, CheckId::FittingTearOut],
        &[Along, Across],
    ),
    way(
        "member is pulled off",
        &[
            CheckId::FacePull,
            CheckId::PullThrough,
            CheckId::MemberFlange,
            CheckId::SleeveWeld,
        ],
        &[Pull],
    ),
    way("fitting bends off", &[CheckId::FittingFlange], &[Pull]),
];

const fn way(
    name: &'static str,
    checks: &'static [CheckId],
    directions: &'static [Direction],
) -> Way {
    Way {
        name,
        checks,
        directions,
    }
}

/// One joint of the table.
#[derive(Debug)]
pub struct Row {
    /// Member, support, mount and direction.
    pub situation: (MemberKind, SupportKind, Mount, Direction),
    /// Whether a cheek of the fitting lies on each side of the member.
    pub two_cheeks: bool,
    /// For each way the checks that are there; `None` where the direction does not end in it.
    pub cells: Vec<Option<Vec<CheckId>>>,
}

/// Why a way needs no check in a situation; `None` where it does.
#[must_use]
pub fn reason(row: &Row, way: &Way) -> Option<&'static str> {
    (row.two_cheeks && way.checks == [CheckId::FittingFlange])
        .then_some("two cheeks: what pulls one off presses the other on")
}

fn load(direction: Direction, mount: Mount, input: &mut Input) {
    const SIZE: f64 = 900.0;
    match (direction, mount) {
        (Along, _) => input.free_along_n = SIZE,
        (Across, Mount::ThroughSides) | (Pull, Mount::FromTop) => input.free_up_n = SIZE,
        (Across, Mount::FromTop) | (Pull, Mount::ThroughSides) => input.free_side_n = SIZE,
    }
}

fn joint(member: MemberKind, support: SupportKind, mount: Mount, direction: Direction) -> Input {
    let mut input = Input {
        joint: "free".into(),
        tube_material: "a500-b".into(),
        tube_width_mm: 101.6,
        tube_depth_mm: 101.6,
        tube_wall_mm: 6.35,
        end_distance_mm: 250.0,
        ball_ahead_mm: 0.0,
        ball_below_mm: 0.0,
        sleeve_welded: if support == SupportKind::ThroughSleeve {
            "yes"
        } else {
            "no"
        }
        .into(),
        flange_arm_mm: Some(30.0),
        load_offset_mm: Some(0.0),
        ..Input::default()
    };
    input.choose(member);
    input.choose(support);
    input.choose(mount);
    load(direction, mount, &mut input);
    input
}

fn there(report: &Report, way: &Way) -> Vec<CheckId> {
    let has = |id: &CheckId| report.check(*id).is_some();
    way.checks.iter().copied().filter(has).collect()
}

/// The table: every situation that is not refused.
#[must_use]
pub fn rows() -> Vec<Row> {
    rows_of(|_| {})
}

/// The same with something else about every joint.
pub fn rows_of(change: impl Fn(&mut Input)) -> Vec<Row> {
    let mut rows = Vec::new();
    for &member in MemberKind::NAMES {
        for &support in SupportKind::NAMES {
            let on_one_side = (Mount::ThroughSides.name(), FittingSides::One);
            let mounts = Mount::NAMES
                .iter()
                .map(|&mount| (mount, FittingSides::Both));
            for (mount, sides) in mounts.chain([on_one_side]) {
                for direction in [Along, Across, Pull] {
                    let named = MemberKind::by_name(member)
                        .zip(SupportKind::by_name(support))
                        .zip(Mount::by_name(mount));
                    let Some(((member, support), mount)) = named else {
                        continue;
                    };
                    let mut input = joint(member, support, mount, direction);
                    input.choose(sides);
                    change(&mut input);
                    let Ok(scenario) = Scenario::new(&input) else {
                        continue;
                    };
                    // A web or a leg has its fitting on one side whatever is said.
                    if sides == FittingSides::One && scenario.member.is_open() {
                        continue;
                    }
                    // A bar is solid whatever is said to stand in it.
                    if scenario.support != support {
                        continue;
                    }
                    let report = evaluate(&scenario);
                    let cell = |way: &Way| {
                        way.directions
                            .contains(&direction)
                            .then(|| there(&report, way))
                    };
                    rows.push(Row {
                        situation: (member, support, mount, direction),
                        two_cheeks: scenario.bolting.two_cheeks,
                        cells: WAYS.iter().map(cell).collect(),
                    });
                }
            }
        }
    }
    rows
}

/// The table as it stands in [`FILE`].
#[must_use]
pub fn markdown() -> String {
    let mut text = String::from(
        "# Every way out of the joint has a check\n\n\
         Written by `cargo run -p outside-checks --bin ways > tests/WAYS.md`; a test holds it to the code. For each member,\n\
         support, mount and direction of load: the checks that are asked for each way in which such a joint ends. A dash: the\n\
         direction does not end that way. `none`: no check, for the reason given in `tests/src/ways.rs`.\n\n| member | support | mount | load |",
    );
    for way in &WAYS {
        let _ = write!(text, " {} |", way.name);
    }
    text.push_str("\n|");
    text.push_str(&" --- |".repeat(4 + WAYS.len()));
    text.push('\n');
    for row in rows() {
        let (member, support, mount, direction) = row.situation;
        let _ = write!(
            text,
            "| {} | {} | {} | {} |",
            member.name(),
            support.name(),
            match (mount, row.two_cheeks) {
                (Mount::ThroughSides, true) => "through-sides, two cheeks",
                _ => mount.name(),
            },
            format!("{direction:?}").to_lowercase()
        );
        for cell in &row.cells {
            let words = match cell {
                None => String::from("–"),
                Some(ids) if ids.is_empty() => String::from("none"),
                Some(ids) => ids.iter().map(|id| id.key()).collect::<Vec<_>>().join(", "),
            };
            let _ = write!(text, " {words} |");
        }
        text.push('\n');
    }
    text
}

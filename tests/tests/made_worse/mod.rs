//! Laws: what makes a joint worse never makes it look better, whatever joint it is done to.
//!
//! Each law changes a random joint for the worse and compares check by check: none that was judged may be used
//! less, stand better or go missing. Where mechanics itself says otherwise a law names the checks that it leaves
//! out, and why. What was not judged before is passed over: nothing was known of it. Ten thousand joints a law;
//! `PROPTEST_CASES` sets another number.

mod loads;
mod parts;

use crate::drawn::{inputs, scenario};
use calc_core::catalog::CaseName;
use calc_core::quantity::InUnits;
use calc_core::report::{Check, CheckId, Factor, Report, Verdict};
use calc_core::scenario::unknown::is_unknown;
use calc_core::scenario::{Field, Input, SupportKind};
use calc_core::{Scenario, evaluate};
use outside_checks::joints::{Move, moved, sleeved, sound};
use proptest::prelude::*;
use proptest::test_runner::TestRunner;

/// Relative slack for what the solvers of clamp and bearing leave over.
const NOISE: f64 = 1e-3;

/// The same for the clamp on a sleeve or an insert: the diameter at which a washer dishes is found once and taken for
/// the whole curve; a stronger tube makes it smaller, and with it the little that the face carries beside the core.
const BESIDE_A_CORE: f64 = 0.01;

/// Share used from which nothing is left that could carry: no number to compare.
const NOTHING_LEFT: f64 = 1e6;

/// A softer stack loses less of its clamp to the flattening of rough faces and to heat and cold, and the heat pulls
/// less on the bolt: both losses are a length times the stiffness. What makes it softer is worse elsewhere.
const LESS_IS_LOST: [CheckId; 5] = [
    CheckId::LeastClamp,
    CheckId::Slip,
    CheckId::Opening,
    CheckId::Loosening,
    CheckId::BoltService,
];

/// Joints with up to fifteen fields moved away from the default joint or from one of two that hold.
pub(crate) fn joints() -> impl Strategy<Value = Input> {
    let share = prop_oneof![3 => 0.0..=1.0_f64, 1 => Just(0.0), 1 => Just(1.0)];
    let fields = Field::ALL.len() as u64;
    let one = (0..fields, share, any::<u64>()).prop_map(|(at, share, lot)| Move { at, share, lot });
    let moves = prop::collection::vec(one, 0..16);
    let sleeved = moves.clone().prop_map(|moves| moved(sleeved(), &moves));
    let solid = moves.prop_map(|moves| moved(sound(), &moves));
    prop_oneof![inputs(), sleeved, solid]
}

pub(crate) fn runner() -> TestRunner {
    crate::runner::runner(100)
}

/// Where threads end in the grip: with the shortest bolt that reaches, another grip may bring threads into the plane
/// of shear or out of it.
const WHERE_THREADS_END: [CheckId; 3] = [
    CheckId::BoltShear,
    CheckId::BoltBending,
    CheckId::BoltCombined,
];

/// What was moved away from the default joint, for a person to try again.
pub(crate) fn moves(input: &Input) -> String {
    let one = |field: Field| match (input.number(field), input.choice(field)) {
        (Some(number), _) => format!("\"{}\": {number}", field.name()),
        (None, choice) => format!("\"{}\": \"{}\"", field.name(), choice.unwrap_or("–")),
    };
    let all: Vec<_> = input.changed().map(one).collect();
    format!("{{{}}}", all.join(", "))
}

/// Whether a verdict is better: what was not judged is as far from holding as what does not.
pub(crate) fn better(now: Verdict, then: Verdict) -> bool {
    let rank = |verdict| match verdict {
        Verdict::Holds => 0,
        Verdict::Close => 1,
        Verdict::NotChecked | Verdict::DoesNotHold => 2,
    };
    rank(now) < rank(then)
}

/// Share used, where it can be compared; of the seat of the clamp, where asked, without the heat of its
/// report. Past its endurance limit a bolt is judged by the road: two shares that
/// say different things.
fn used(check: &Check, heat: Option<&Report>) -> Option<f64> {
    let judged = check.verdict != Verdict::NotChecked && check.id != CheckId::BoltFatigue;
    let used = check
        .utilisation
        .filter(|used| judged && *used < NOTHING_LEFT)?;
    let Some(report) = heat else {
        return Some(used);
    };
    // A strength is asked of the clamp, a limit of use of the largest of its scatter.
    let hot = match check.factor_is {
        Factor::Scatter => check.demand.si * check.factor,
        _ => check.demand.si,
    };
    Some(used * (1.0 - report.losses.temperature_n / hot))
}

/// Whether a seat stands better for less heat on it, as on a softer stack.
fn for_less_heat(then: &Check, [before, after]: [&Report; 2]) -> bool {
    let less = after.losses.temperature_n < before.losses.temperature_n;
    then.id == CheckId::Clamp && less
}

pub(crate) fn never_better(
    before: &Report,
    after: &Report,
    except: &[CheckId],
) -> Result<(), String> {
    for then in &before.checks {
        if except.contains(&then.id) || then.verdict == Verdict::NotChecked {
            continue;
        }
        let id = then.id.key();
        let Some(now) = after.check(then.id) else {
            // What heat and pull leave alone is asked while tightening.
            if then.verdict == Verdict::Holds || then.id == CheckId::BoltService {
                continue;
            }
            return Err(format!("{id}: {} → gone", then.verdict.key()));
        };
        if better(now.verdict, then.verdict) && !for_less_heat(then, [before, after]) {
            let (was, is) = (then.verdict.key(), now.verdict.key());
            return Err(format!("{id}: {was} → {is}"));
        }
        let cooler = for_less_heat(then, [before, after]);
        let share = |check, report| used(check, cooler.then_some(report));
        let slack = if then.id == CheckId::Clamp {
            BESIDE_A_CORE
        } else {
            NOISE
        };
        if let (Some(was), Some(is)) = (share(then, before), share(now, after))
            && is < was * (1.0 - slack)
        {
            return Err(format!("{id}: {was} → {is} of it used"));
        }
    }
    Ok(())
}

/// Whether all holes are in the member: what stands beside it a change may bring in.
fn inside(s: &Scenario) -> bool {
    let rows = s.bolting.spacing_across * (s.bolting.rows as f64 - 1.0);
    let hole = if s.support == SupportKind::ThroughSleeve {
        s.bolting.hole.max(s.sleeve.outer)
    } else {
        s.bolting.hole
    };
    rows + hole < s.tube.width
}

/// On a flange, leg or web that bends: what is weaker pries less, as what it adds to the pull is what it can bend
/// with.
fn open_section(s: &Scenario) -> bool {
    s.member.is_open()
}

/// A joint that something is made of first, before and after a change for the worse.
fn law(
    make: impl Fn(&mut Input),
    worse: impl Fn(&mut Input, &Scenario, f64) -> bool,
    holds: impl Fn(&Report, &Report) -> Result<(), String>,
) {
    let outcome = runner().run(&(joints(), 1.01..2.0_f64), |(mut input, times)| {
        make(&mut input);
        let mut before = scenario(&input)?;
        // What is not known is settled: of several joints one may go unjudged, and the share used is that of another.
        let first = before.members().next();
        if let Some(settled) = first {
            input = settled.input;
            before = scenario(&input)?;
        }
        if !inside(&before) {
            return Err(TestCaseError::reject("outside the member"));
        }
        let mut changed = input.clone();
        if !worse(&mut changed, &before, times) {
            return Err(TestCaseError::reject("does not apply"));
        }
        let Ok(after) = Scenario::new(&changed) else {
            return Err(TestCaseError::reject("refused"));
        };
        holds(&evaluate(&before), &evaluate(&after)).map_err(|what| {
            let text = format!("{what}\n{}\n{}", moves(&input), moves(&changed));
            TestCaseError::fail(text)
        })
    });
    if let Err(error) = outcome {
        panic!("{error}");
    }
}

fn nothing(_: &mut Input) {}

/// A fitting too stiff to pry: one that is weaker pries less, as what it adds to the pull is what it can bend with.
/// Its own flange is left out with it: the arm that nobody gave is as long as there is room.
fn stiff_fitting(input: &mut Input) {
    input.flange_arm_mm = None;
    input.fitting_thickness_mm = 40.0;
}

fn millimetres(length: calc_core::quantity::Length) -> f64 {
    length.si() * 1e3
}

/// What may be better beside a thinner wall: what a softer stack loses less of; the bolt, which is bent between nearer
/// walls and whose threads end elsewhere; what it takes to push a sleeve in that is too long; the room between the
/// walls.
fn beside_a_thinner_wall() -> Vec<CheckId> {
    let room = [
        CheckId::WasherSeat,
        CheckId::HolePlace,
        CheckId::WasherPlace,
        CheckId::SleevePlace,
        CheckId::SleeveLength,
    ];
    [&room[..], &LESS_IS_LOST, &WHERE_THREADS_END].concat()
}

/// Whether the walls are those of a tube and not of a bored bar, and its holes narrow: the section cuts out flat
/// strips, more than is there where they reach past the bore or round the curve, and thicker than an eighth of the width
/// the face curve was not checked, so that nothing of such a face is counted beside a sleeve.
fn walls_of_a_tube(s: &Scenario) -> bool {
    let least = s.tube.width.min(s.tube.depth);
    !open_section(s) && s.tube.wall * 8.0 <= least && s.bolting.hole * 3.0 < least
}

/// With a wall that somebody has measured.
fn measured(input: &mut Input) {
    if is_unknown(&input.wall_basis) {
        input.wall_basis = "measured".into();
    }
}

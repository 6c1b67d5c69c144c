//! Everything that calc-core answers for thousands of joints, as text and as a digest: the guard of
//! changes that may move no number.
//!
//! `scripts/answers` runs it; the digest stands in `reference/answers.csv`. Joints are told apart in blocks
//! of [`BLOCK`], so that a digest also says where to look.

use calc_core::chance::Sampler;
use calc_core::inspection::{dent, oval, torque_stop};
use calc_core::link::{Sheet, encode};
use calc_core::quantity::{UnitSystem, mm, newton_metre};
use calc_core::repair::{Rates, repairs, sheet::work_sheet};
use calc_core::report::{CheckId, Report, Verdict};
use calc_core::scenario::{Field, options};
use calc_core::{Input, Scenario, evaluate, torque_turn};
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};

use crate::joints::Joints;

/// Joints of one line of the digest.
pub const BLOCK: usize = 100;

/// Blocks of the whole digest.
pub const BLOCKS: usize = 24;

/// Joints drawn by lot for each answer of [`Sampler`].
const DRAWN: usize = 100;

/// Choices that go round, so that every one of them meets every other.
const ROUND: [Field; 5] = [
    Field::Member,
    Field::Support,
    Field::Mount,
    Field::Joint,
    Field::LoadRule,
];

/// Tries before a combination of choices is given up: a channel has no room for a sleeve.
const TRIES: usize = 40;

/// Joints over all members, supports, mounts, joints and rules; always the same ones.
#[must_use]
pub fn joints(count: usize) -> Vec<Scenario> {
    let mut drawn = Joints::new(20_270);
    let mut found = Vec::with_capacity(count);
    let mut turn = 0_usize;
    while found.len() < count {
        let mut place = turn;
        let mut names = Vec::with_capacity(ROUND.len());
        for field in ROUND {
            let all = options(field);
            names.push((field, all.get(place % all.len()).copied().unwrap_or("")));
            place /= all.len();
        }
        // Each round of the wheel begins one tooth farther, so that the last choices turn too.
        turn = turn.wrapping_add(7919);
        found.extend((0..TRIES).find_map(|_| {
            let mut input = drawn.input();
            for (field, name) in &names {
                input.set_choice(*field, name);
            }
            Scenario::new(&input).ok()
        }));
    }
    found
}

/// Answers of one joint.
#[derive(Debug)]
pub struct Answers {
    /// Report, curve, joints by lot, readings, link; JSON.
    pub quick: String,
    /// Repairs and the work sheet of the cheapest, where they were asked for; JSON.
    pub slow: Option<String>,
    /// Verdict of the joint and of each check, which a last digit rounded otherwise hardly ever moves; JSON.
    pub verdicts: String,
}

fn verdicts(report: &Report) -> (Verdict, Vec<(CheckId, Verdict)>) {
    let mut checks: Vec<_> = report
        .checks
        .iter()
        .map(|check| (check.id, check.verdict))
        .collect();
    // Two that are used alike may change places with the last bit.
    checks.sort_by_key(|(id, _)| json(id));
    (report.verdict, checks)
}

fn link(input: &Input) -> (String, usize) {
    let (sheet, refused) = Sheet::from_input(input, UnitSystem::Us);
    (encode(&sheet), refused.len())
}

/// As text; what cannot be written would be a fault of its own, and shows.
fn json(value: &impl Serialize) -> String {
    serde_json::to_string(value).unwrap_or_else(|error| error.to_string())
}

/// An object of texts that are JSON already: a tree in between would put its keys in another order.
fn object(parts: &[(&str, String)]) -> String {
    let parts: Vec<String> = parts
        .iter()
        .map(|(name, value)| format!("{}:{value}", json(name)))
        .collect();
    format!("{{{}}}", parts.join(","))
}

/// Asks everything of a joint.
#[must_use]
pub fn ask(scenario: &Scenario, slow: bool) -> Answers {
    let report = evaluate(scenario);
    let mut sampler = Sampler::new(scenario, 11, DRAWN);
    sampler.step(DRAWN);
    let hole = scenario.bolting.hole;
    let verdicts = json(&verdicts(&report));
    let quick = object(&[
        ("report", json(&report)),
        ("torque_turn", json(&torque_turn(scenario))),
        ("chance", json(&sampler.result())),
        ("dent", json(&dent(scenario, mm(0.4)))),
        ("oval", json(&oval(scenario, hole + mm(1.5), hole))),
        ("stop", json(&torque_stop(scenario, newton_metre(40.0)))),
        ("link", json(&link(&scenario.input))),
    ]);
    let slow = slow.then(|| {
        let rates = Rates::default();
        let found = repairs(scenario, &rates);
        let work_sheet = found
            .cheapest
            .and_then(|index| found.list.get(index))
            .and_then(|cheapest| Scenario::new(&cheapest.input).ok())
            .map(|repaired| work_sheet(scenario, &repaired, &rates));
        object(&[("repairs", json(&found)), ("work_sheet", json(&work_sheet))])
    });
    Answers {
        quick,
        slow,
        verdicts,
    }
}

/// One line of the digest.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Line {
    /// Which hundred joints; `libm` for the functions that the platform brings.
    pub block: String,
    /// Of all verdicts.
    pub verdicts: String,
    /// Of [`Answers::quick`].
    pub quick: String,
    /// Of [`Answers::slow`].
    pub slow: String,
}

/// A digest that grows with every text.
#[derive(Default)]
struct Sum(Sha256);

impl Sum {
    fn add(&mut self, text: &str) {
        self.0.update(text.as_bytes());
        self.0.update(b"\n");
    }

    /// Half of it is plenty: nobody forges it.
    fn hex(self) -> String {
        self.0
            .finalize()
            .iter()
            .take(16)
            .map(|byte| format!("{byte:02x}"))
            .collect()
    }
}

/// Digest of some joints, with the answers handed on as they come.
pub fn digest(
    block: &str,
    joints: &[Scenario],
    slow: bool,
    mut each: impl FnMut(&Answers),
) -> Line {
    let (mut verdicts, mut quick, mut late) = (Sum::default(), Sum::default(), Sum::default());
    for joint in joints {
        let answers = ask(joint, slow);
        verdicts.add(&answers.verdicts);
        quick.add(&answers.quick);
        if let Some(answer) = &answers.slow {
            late.add(answer);
        }
        each(&answers);
    }
    Line {
        block: String::from(block),
        verdicts: verdicts.hex(),
        quick: quick.hex(),
        slow: late.hex(),
    }
}

/// What the platform's own functions give: logarithms and powers come from a library that is not the same
/// on every machine, and differ in the last bit. Where this line differs, only verdicts can be compared.
#[must_use]
pub fn platform() -> Line {
    let mut sum = Sum::default();
    for i in 1..2000_u32 {
        let x = f64::from(i) * 0.013_7;
        for value in [
            x.ln(),
            x.powf(0.37),
            (-x).exp(),
            x.sin(),
            x.tan(),
            x.atan(),
            x.cbrt(),
            x.hypot(1.1),
        ] {
            sum.add(&format!("{:016x}", value.to_bits()));
        }
    }
    Line {
        block: String::from("libm"),
        verdicts: String::new(),
        quick: sum.hex(),
        slow: String::new(),
    }
}

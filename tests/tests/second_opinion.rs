//! The second opinion: quantities of some hundred joints from an independent script
//! (`reference/second/`), beside what the report says of the same joints.

use calc_core::catalog::LoadKind;
use calc_core::report::{CaseReport, Check, CheckId, Message, Report};
use calc_core::{Input, Scenario, evaluate};
use serde::Deserialize;
use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write as _;
use std::path::PathBuf;

/// Differences up to this need no explanation.
const TOLERANCE: f64 = 0.03;
/// A share used beyond this is not worth telling apart from it.
const FAR_OVER: f64 = 3.0;
/// Fewest joints that the program must not refuse.
const JOINTS: usize = 200;

/// Which way a larger value lies.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Larger {
    /// Demand, share used, loss: the larger value is the safer.
    Safer,
    /// Capacity: the smaller value is the safer.
    Riskier,
    /// Neither: both must be the same.
    Neither,
}

/// What is compared: name in the table, `*` for a load case; which way is safe; fewest comparisons; where the
/// report has it.
struct Quantity {
    name: &'static str,
    larger: Larger,
    at_least: usize,
    find: fn(&Report, &str) -> Option<f64>,
}

const QUANTITIES: &[Quantity] = &[
    same("stress_area", 200, |r, _| {
        Some(r.tightening.stress_area_mm2)
    }),
    same("proof_load", 200, |r, _| Some(r.tightening.proof_load_n)),
    same("torque", 200, |r, _| Some(r.tightening.torque_nm)),
    same("clamp_nominal", 200, |r, _| {
        Some(r.tightening.clamp_nominal_n)
    }),
    same("clamp_min", 200, |r, _| Some(r.tightening.clamp_min_n)),
    same("clamp_max", 200, |r, _| Some(r.tightening.clamp_max_n)),
    same("bolt_stiffness", 100, |r, _| {
        put_in(r, &[CheckId::Slip, CheckId::Opening], "k_b").map(|k| k / 1e3)
    }),
    same("case.*.longitudinal", 600, |r, case| {
        Some(of(r, case)?.longitudinal_n)
    }),
    same("case.*.transverse", 600, |r, case| {
        Some(of(r, case)?.transverse_n)
    }),
    same("case.*.vertical", 600, |r, case| {
        Some(of(r, case)?.vertical_n)
    }),
    demand("case.*.bolt_shear", 600, |r, case| {
        largest(of(r, case)?, |force| force[0].hypot(force[1]))
    }),
    demand("case.*.bolt_pull", 600, |r, case| {
        largest(of(r, case)?, |force| force[2])
    }),
    demand("case.*.bolt_pull_at_least", 600, |r, case| {
        largest(of(r, case)?, |force| force[2])
    }),
    same("face_stiffness", 60, |r, _| {
        Some(r.support.faces.first()?.least.stiffness_n_per_mm)
    }),
    capacity("face_1pct", 60, |r, _| {
        Some(r.support.faces.first()?.least.load_at_1pct_of_width_n)
    }),
    capacity("face_3pct", 60, |r, _| {
        Some(r.support.faces.first()?.least.load_at_3pct_of_width_n)
    }),
    capacity("end_factor", 60, |r, _| {
        Some(r.support.faces.first()?.end_factor)
    }),
    same("sleeve_area", 30, |r, _| {
        line(r, CheckId::Clamp, "A").map(|area| area * 1e6)
    }),
    capacity("sleeve_squash", 15, |r, _| {
        // Where something else than the sleeve governs the line has that.
        let clamp = r.check(CheckId::Clamp)?;
        (clamp.reason.code == Message::LimitSleeveSquashes)
            .then(|| step(clamp, "R"))
            .flatten()
    }),
    capacity("sleeve_weld", 8, |r, _| {
        Some(r.check(CheckId::SleeveWeld)?.capacity.si)
    }),
    demand("use.sleeve-weld.*", 5, |r, kind| {
        used(r, CheckId::SleeveWeld, kind)
    }),
    demand("clamp_lost", 60, |r, _| {
        let lost = &r.losses;
        Some(lost.relaxation_n + lost.embedding_n + lost.temperature_n)
    }),
    demand("bolt_share", 30, |r, _| {
        line(r, CheckId::BoltService, "C_b")
    }),
    demand("bolt_service", 25, |r, _| {
        let check = r.check(CheckId::BoltService)?;
        (check.case?.kind == LoadKind::Service).then_some(check.demand.si)
    }),
    demand("use.slip.*", 12, |r, kind| used(r, CheckId::Slip, kind)),
    demand("use.opening.*", 12, |r, kind| {
        used(r, CheckId::Opening, kind)
    }),
    capacity("bolt_shear_aisc", 150, |r, _| {
        line(r, CheckId::BoltShear, "R")
    }),
    capacity("bolt_shear_en", 150, |r, _| {
        line(r, CheckId::BoltShear, "F_v,Rd")
    }),
    demand("use.bolt-shear.*", 50, |r, kind| {
        used(r, CheckId::BoltShear, kind)
    }),
    capacity("wall_bearing", 100, |r, _| bearing(r, CheckId::WallBearing)),
    demand("use.wall-bearing.*", 30, |r, kind| {
        used(r, CheckId::WallBearing, kind)
    }),
    capacity("fitting_bearing", 100, |r, _| {
        bearing(r, CheckId::FittingBearing)
    }),
    demand("use.fitting-bearing.*", 45, |r, kind| {
        used(r, CheckId::FittingBearing, kind)
    }),
    capacity("tube_tear_out", 70, |r, _| {
        line(r, CheckId::TubeTearOut, "R")
    }),
    demand("use.tube-tear-out.*", 35, |r, kind| {
        used(r, CheckId::TubeTearOut, kind)
    }),
    capacity("fitting_tear_out", 150, |r, _| {
        line(r, CheckId::FittingTearOut, "R")
    }),
    demand("use.fitting-tear-out.*", 70, |r, kind| {
        used(r, CheckId::FittingTearOut, kind)
    }),
    demand("section_gross.*", 50, |r, case| section(r, case, "σ_g")),
    demand("section_net.*", 50, |r, case| section(r, case, "σ_n")),
];

type Find = fn(&Report, &str) -> Option<f64>;

const fn quantity(name: &'static str, larger: Larger, at_least: usize, find: Find) -> Quantity {
    Quantity {
        name,
        larger,
        at_least,
        find,
    }
}

const fn same(name: &'static str, at_least: usize, find: Find) -> Quantity {
    quantity(name, Larger::Neither, at_least, find)
}

const fn demand(name: &'static str, at_least: usize, find: Find) -> Quantity {
    quantity(name, Larger::Safer, at_least, find)
}

const fn capacity(name: &'static str, at_least: usize, find: Find) -> Quantity {
    quantity(name, Larger::Riskier, at_least, find)
}

fn of<'a>(report: &'a Report, case: &str) -> Option<&'a CaseReport> {
    report.loads.cases.iter().find(|c| c.case.key() == case)
}

/// Largest over the bolts of a case, nothing being none: `[along, across, pull]` of each goes in.
fn largest(case: &CaseReport, of: fn([f64; 3]) -> f64) -> Option<f64> {
    let forces = case
        .bolts
        .iter()
        .map(|b| of([b.force_along_n, b.force_across_n, b.pull_n]));
    (!case.bolts.is_empty()).then(|| forces.fold(0.0, f64::max))
}

fn step(check: &Check, symbol: &str) -> Option<f64> {
    let found = check.steps.iter().find(|s| s.symbol == symbol);
    found.map(|s| s.result.si)
}

/// A line of working by its symbol.
fn line(report: &Report, id: CheckId, symbol: &str) -> Option<f64> {
    step(report.check(id)?, symbol)
}

/// Nominal bearing strength: for aluminium the lesser of two.
fn bearing(report: &Report, id: CheckId) -> Option<f64> {
    let any = line(report, id, "R")?;
    Some(line(report, id, "R_a").map_or(any, |aluminium| any.min(aluminium)))
}

/// A number that was put into a line of working of the first of the checks that shows it.
fn put_in(report: &Report, ids: &[CheckId], symbol: &str) -> Option<f64> {
    ids.iter()
        .filter_map(|id| report.check(*id))
        .flat_map(|check| &check.steps)
        .flat_map(|step| step.inputs.iter())
        .find(|term| term.symbol == symbol)
        .map(|term| term.amount.si)
}

/// Share used where a case of this kind decides.
fn used(report: &Report, id: CheckId, kind: &str) -> Option<f64> {
    let check = report.check(id)?;
    (check.case?.kind.name() == kind)
        .then_some(check.utilisation)
        .flatten()
        .map(|share| share.min(FAR_OVER))
}

/// Stress of the section in MPa; the report has that of the deciding case alone.
fn section(report: &Report, case: &str, symbol: &str) -> Option<f64> {
    let check = report.check(CheckId::NetSection)?;
    (check.case?.case.key() == case)
        .then(|| step(check, symbol))
        .flatten()
        .map(|stress| stress / 1e6)
}

/// A name in the table taken apart: the quantity with `*` for its case or kind of load, and that.
fn split(name: &str) -> (String, &str) {
    if let Some((what, kind)) = name.strip_prefix("use.").and_then(|s| s.split_once('.')) {
        return (format!("use.{what}.*"), kind);
    }
    if let Some((case, what)) = name.strip_prefix("case.").and_then(|s| s.split_once('.')) {
        return (format!("case.*.{what}"), case);
    }
    match name.split_once('.') {
        Some((what, case)) => (format!("{what}.*"), case),
        None => (name.to_owned(), ""),
    }
}

#[derive(Deserialize)]
struct Drawn {
    joint: String,
    input: serde_json::Value,
}

#[derive(Deserialize)]
struct Row {
    joint: String,
    quantity: String,
    value: f64,
}

/// Why the two differ.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Explanation {
    quantity: String,
    #[serde(default, rename = "where")]
    only: BTreeMap<String, Vec<String>>,
    ratio: [f64; 2],
    safer: Side,
    standing: Standing,
    reason: String,
}

#[derive(Clone, Copy, Debug, PartialEq, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum Side {
    Program,
    Script,
}

#[derive(Clone, Copy, Debug, PartialEq, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum Standing {
    /// The program may stay as it is.
    Accepted,
    /// The program should change.
    Open,
}

#[derive(Deserialize)]
struct Explained {
    #[serde(default)]
    difference: Vec<Explanation>,
}

/// A value of the program beside one of the script, too far from it.
struct Difference<'a> {
    joint: &'a Drawn,
    name: &'a str,
    larger: Larger,
    program: f64,
    script: f64,
}

impl Difference<'_> {
    fn ratio(&self) -> f64 {
        self.program / self.script
    }

    fn safer(&self) -> Option<Side> {
        match (self.larger, self.program > self.script) {
            (Larger::Neither, _) => None,
            (Larger::Safer, true) | (Larger::Riskier, false) => Some(Side::Program),
            (Larger::Safer, false) | (Larger::Riskier, true) => Some(Side::Script),
        }
    }
}

impl Explanation {
    fn explains(&self, d: &Difference<'_>) -> bool {
        let named = match self.quantity.strip_suffix('*') {
            Some(begin) => d.name.starts_with(begin),
            None => d.name == self.quantity,
        };
        let meant = self.only.iter().all(|(field, names)| {
            let given = &d.joint.input[field.as_str()];
            let given = given
                .as_str()
                .map_or_else(|| given.to_string(), ToOwned::to_owned);
            names.contains(&given)
        });
        named
            && meant
            && (self.ratio[0]..=self.ratio[1]).contains(&d.ratio())
            && d.safer().is_none_or(|side| side == self.safer)
    }
}

fn path(name: &str) -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
        .join("reference/second")
        .join(name)
}

fn joints() -> Vec<Drawn> {
    std::fs::read_to_string(path("joints.jsonl"))
        .unwrap()
        .lines()
        .map(|line| serde_json::from_str(line).unwrap())
        .collect()
}

fn rows() -> Vec<Row> {
    csv::Reader::from_path(path("opinion.csv"))
        .unwrap()
        .deserialize()
        .map(Result::unwrap)
        .collect()
}

/// Whether two values are as good as the same. Forces below a newton and shares below a millionth are nothing.
fn agree(name: &str, program: f64, script: f64) -> bool {
    let share = name.starts_with("use.");
    let nothing = if share { 1e-6 } else { 1.0 };
    let small = share || name.starts_with("case.");
    let slack = TOLERANCE * program.abs().max(script.abs());
    // Rigid statics are a floor: the program may ask for more.
    if name.ends_with("_at_least") && program >= script {
        return true;
    }
    (program - script).abs() <= if small { slack.max(nothing) } else { slack }
}

#[test]
fn the_report_agrees_with_the_second_opinion_or_the_difference_is_explained() {
    let explained: Explained =
        toml::from_str(&std::fs::read_to_string(path("explained.toml")).unwrap()).unwrap();
    let joints = joints();
    let mut table: BTreeMap<String, Vec<Row>> = BTreeMap::new();
    for row in rows() {
        table.entry(row.joint.clone()).or_default().push(row);
    }
    let mut compared: BTreeMap<&str, usize> = BTreeMap::new();
    let mut explains = vec![0_usize; explained.difference.len()];
    let mut unexplained = String::new();
    let (mut taken, mut refused) = (0, String::new());
    for joint in &joints {
        let input: Input = serde_json::from_value(joint.input.clone()).unwrap();
        let report = match Scenario::new(&input) {
            Ok(scenario) => evaluate(&scenario),
            Err(errors) => {
                writeln!(refused, "{}: {}", joint.joint, errors[0]).unwrap();
                continue;
            }
        };
        taken += 1;
        for row in &table[&joint.joint] {
            let (kind, case) = split(&row.quantity);
            let quantity = QUANTITIES
                .iter()
                .find(|q| q.name == kind)
                .unwrap_or_else(|| panic!("{}: nothing is known of it", row.quantity));
            let Some(program) = (quantity.find)(&report, case) else {
                continue;
            };
            assert!(program.is_finite(), "{} {}", joint.joint, row.quantity);
            *compared.entry(quantity.name).or_default() += 1;
            let script = if kind.starts_with("use.") {
                row.value.min(FAR_OVER)
            } else {
                row.value
            };
            if agree(&row.quantity, program, script) {
                continue;
            }
            let difference = Difference {
                joint,
                name: &row.quantity,
                larger: quantity.larger,
                program,
                script,
            };
            match explained
                .difference
                .iter()
                .position(|e| e.explains(&difference))
            {
                Some(which) => explains[which] += 1,
                None => writeln!(
                    unexplained,
                    "{} {}: program {program:.5}, script {script:.5}, ratio {:.3}",
                    joint.joint,
                    row.quantity,
                    difference.ratio()
                )
                .unwrap(),
            }
        }
    }
    println!("{compared:#?}");
    for (explanation, times) in explained.difference.iter().zip(&explains) {
        println!(
            "{times} × {} ({:?}, safer: {:?}): {}",
            explanation.quantity, explanation.standing, explanation.safer, explanation.reason
        );
    }
    assert!(
        unexplained.is_empty(),
        "more than 3 % apart and not explained:\n{unexplained}"
    );
    for (explanation, times) in explained.difference.iter().zip(&explains) {
        assert!(
            *times > 0,
            "{} {:?} explains nothing any more: take it out of explained.toml",
            explanation.quantity,
            explanation.ratio
        );
    }
    assert!(
        taken >= JOINTS,
        "only {taken} joints are taken, refused are:\n{refused}"
    );
    for quantity in QUANTITIES {
        let times = compared.get(quantity.name).copied().unwrap_or(0);
        assert!(
            times >= quantity.at_least,
            "{}: compared {times} times, at least {} are meant",
            quantity.name,
            quantity.at_least
        );
    }
}

#[test]
fn every_joint_has_its_rows_and_they_go_over_everything() {
    let joints = joints();
    let drawn: BTreeSet<_> = joints.iter().map(|j| j.joint.clone()).collect();
    let judged: BTreeSet<_> = rows().into_iter().map(|row| row.joint).collect();
    assert_eq!(drawn, judged, "opinion.csv belongs to other joints");
    assert_eq!(drawn.len(), joints.len(), "two joints of one name");
    for (field, names) in [
        (
            "member",
            &[
                "rectangular-tube",
                "round-tube",
                "channel",
                "angle",
                "solid-bar",
            ][..],
        ),
        (
            "support",
            &[
                "bare",
                "spreader",
                "loose-sleeve",
                "through-sleeve",
                "solid-insert",
                "solid",
            ],
        ),
        ("mount", &["through-sides", "from-top"]),
        (
            "joint",
            &["coupler", "spring-hanger", "chain-bracket", "free"],
        ),
        (
            "load_rule",
            &[
                "road-service",
                "us-tow-bar",
                "coupler-classes",
                "hitch-test",
                "adr-62",
                "un-r55",
            ],
        ),
    ] {
        for name in names {
            let times = joints.iter().filter(|j| j.input[field] == *name).count();
            assert!(times >= 8, "{field} {name}: only {times} joints");
        }
    }
}

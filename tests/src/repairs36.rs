//! Joints to be repaired, `reference/repairs36.toml`: three of each kind at three masses.

use calc_core::repair::{Rates, Repair, Repairs, repairs};
use calc_core::report::Verdict;
use calc_core::{Input, Scenario};
use serde::Deserialize;
use std::fmt::Write as _;

use crate::reference::read;

/// File of the joints, in [`folder`](crate::reference::folder).
pub const FILE: &str = "repairs36.toml";

/// Masses of the loaded trailer, kg.
pub const MASSES: [f64; 3] = [900.0, 1800.0, 3175.0];

/// One joint.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Joint {
    /// Name, unique in the file.
    pub id: String,
    /// What is bolted on, and how.
    pub kind: String,
    /// In words.
    pub what: String,
    /// JSON, what differs from the default joint.
    pub input: String,
    /// What comes out at each of [`MASSES`].
    pub out: [String; 3],
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    joint: Vec<Joint>,
}

/// All joints.
///
/// # Panics
///
/// If the file cannot be read or is not of this form.
#[must_use]
pub fn joints() -> Vec<Joint> {
    read::<File>(FILE).joint
}

impl Joint {
    /// The input at a mass.
    ///
    /// # Panics
    ///
    /// If it is not JSON of an input: an unknown name among them.
    #[must_use]
    pub fn at(&self, mass: f64) -> Input {
        let mut input: Input = serde_json::from_str(&self.input)
            .unwrap_or_else(|error| panic!("{}: {error}", self.id));
        input.trailer_mass_kg = mass;
        input
    }
}

/// The repairs of a joint.
///
/// # Panics
///
/// If the joint is refused.
#[must_use]
pub fn found(input: &Input) -> Repairs {
    let s = Scenario::new(input).unwrap_or_else(|errors| panic!("{errors:?}"));
    repairs(&s, &Rates::default())
}

/// The repair that is told first: the cheapest that holds, or the cheapest that is close.
#[must_use]
pub fn best(found: &Repairs) -> Option<&Repair> {
    found.cheapest.and_then(|place| found.list.get(place))
}

/// What comes out, as in the file.
#[must_use]
pub fn out(found: &Repairs) -> String {
    match (best(found), &found.nearest) {
        (Some(repair), _) => String::from(repair.verdict.key()),
        (None, Some(near)) => format!("none {}", near.check.key()),
        (None, None) => String::from("nothing was tried"),
    }
}

/// A repair in short: kind, bolts, what is put in, torque.
fn in_short(input: &Input, kind: &str, torque_nm: f64) -> String {
    let bolts = format!(
        "{}x{} {} {}",
        input.bolts_along, input.bolt_rows, input.bolt, input.bolt_grade
    );
    let part = match input.support.as_str() {
        "bare" => String::new(),
        "spreader" => format!(
            ", {} plate {:.1} x {:.0} mm",
            input.spreader_material, input.spreader_thickness_mm, input.spreader_length_mm
        ),
        "solid-insert" => format!(", {} block", input.insert_material),
        _ => format!(", {} {}", input.sleeve, input.sleeve_material),
    };
    format!(
        "{kind}: {bolts}{part}, {torque_nm:.0} N·m, faces {}",
        input.faying_surface
    )
}

/// The table as Markdown, a line for each joint and mass.
#[must_use]
pub fn table() -> String {
    let mut text = String::from(
        "| joint | kg | out | cheapest that holds, or the nearest |\n| --- | ---: | --- | --- |\n",
    );
    for joint in joints() {
        for mass in MASSES {
            let found = found(&joint.at(mass));
            let told = match (best(&found), &found.nearest) {
                (Some(r), _) => {
                    let short = in_short(&r.input, r.kind.key(), r.torque_nm);
                    let mut kinds: Vec<&str> = found
                        .list
                        .iter()
                        .filter(|r| r.verdict == Verdict::Holds)
                        .map(|r| r.kind.key())
                        .collect();
                    kinds.dedup();
                    let kinds = kinds.join(", ");
                    format!("{short}; ${:.0}; kinds that hold: {kinds}", r.work.cost)
                }
                (None, Some(near)) => format!(
                    "{}; {} used {:.2}",
                    in_short(&near.input, near.kind.key(), near.torque_nm),
                    near.check.key(),
                    near.utilisation.unwrap_or(f64::NAN)
                ),
                (None, None) => String::from("-"),
            };
            let _ = writeln!(text, "| {} | {mass} | {} | {told} |", joint.id, out(&found));
        }
    }
    text
}

//! TypeScript declarations that follow from tables: of a joint, from that of its fields, and of every name by which
//! an answer says something.

use std::fmt::Write as _;

use calc_core::catalog::{self, CaseName};
use calc_core::chance::Variable;
use calc_core::cite::Source;
use calc_core::mechanics::range::CheckedRatio;
use calc_core::outlook::Metal;
use calc_core::quantity::{Dimension, Unit, UnitSystem};
use calc_core::repair::{Fit, Need, RepairKind};
use calc_core::report::{CheckId, EnduranceView, Factor, Label, Message, Part, Verdict};
use calc_core::scenario::{Field, Kind, options};
use serde::Serialize;

/// Longest line.
const WIDE: usize = 116;

/// Names of a choice as a union, on as many lines as they need.
fn union(names: &[&str], indent: &str) -> String {
    let mut lines = vec![String::new()];
    for name in names {
        let part = format!(" | \"{name}\"");
        let full = lines
            .last()
            .is_some_and(|line| indent.len() + line.len() + part.len() > WIDE);
        if full {
            lines.push(String::new());
        }
        if let Some(line) = lines.last_mut() {
            line.push_str(&part);
        }
    }
    let text: Vec<String> = lines
        .iter()
        .map(|line| format!("{indent}{}", line.trim_start()))
        .collect();
    text.join("\n")
}

/// Text of `web/src/api/joint.d.ts`.
#[must_use]
pub fn joint() -> String {
    let mut out = String::from(
        "// What goes in: every field may be left out and then takes its default. Written by\n\
         // `cargo run -p outside-checks --bin joint-declarations`.\n\n\
         /** Numbers, each in the unit that its name says. */\nexport interface JointNumbers {\n",
    );
    for field in Field::ALL {
        if let Kind::Number {
            min, max, default, ..
        } = field.kind()
        {
            let usual = default.map_or_else(
                || String::from("derived when left out"),
                |default| format!("{default} when left out"),
            );
            // Writing to a string cannot fail.
            let _ = writeln!(
                out,
                "  /** {min} to {max}; {usual}. */\n  {}: number;",
                field.name()
            );
        }
    }
    out.push_str("}\n/** Choices by name. */\nexport interface JointChoices {\n");
    for field in Field::ALL {
        if let Kind::Choice { default } = field.kind() {
            let names = union(&options(*field), "    ");
            let _ = writeln!(
                out,
                "  /** \"{default}\" when left out. */\n  {}:\n{names};",
                field.name()
            );
        }
    }
    out.push_str(
        "}\n/** What a joint is made of. */\n\
         export type JointInput = { version?: number } & Partial<JointNumbers> & Partial<JointChoices>;\n",
    );
    out
}

/// The name that a value has in JSON.
fn name<T: Serialize>(value: &T) -> String {
    match serde_json::to_value(value) {
        Ok(serde_json::Value::String(name)) => name,
        _ => String::new(),
    }
}

/// Text of `web/src/api/names.d.ts`.
#[must_use]
pub fn names() -> String {
    let mut out = String::from(
        "// Every name by which an answer says something. Written by\n\
         // `cargo run -p outside-checks --bin joint-declarations names`.\n\n",
    );
    let mut declare = |about: &str, name: &str, names: Vec<String>| {
        let names: Vec<&str> = names.iter().map(String::as_str).collect();
        // Writing to a string cannot fail.
        let _ = writeln!(
            out,
            "/** {about} */\nexport type {name} =\n{};",
            union(&names, "  ")
        );
    };
    /// The keys of a table.
    macro_rules! keys {
        ($table:ty) => {
            <$table>::ALL
                .iter()
                .map(|key| String::from(key.key()))
                .collect()
        };
    }
    let mut si: Vec<String> = Vec::new();
    for dimension in Dimension::ALL {
        let unit = String::from(dimension.si_unit());
        if !si.contains(&unit) {
            si.push(unit);
        }
    }
    let systems = [UnitSystem::Us, UnitSystem::Metric];
    declare(
        "A coherent SI unit; empty for a plain number, a share and a count.",
        "SiUnit",
        si,
    );
    declare(
        "A unit that can be typed.",
        "Unit",
        Unit::ALL.iter().map(name).collect(),
    );
    declare(
        "What a number measures.",
        "Dimension",
        Dimension::ALL.iter().map(name).collect(),
    );
    declare(
        "Units that results are shown in.",
        "UnitSystem",
        systems.iter().map(name).collect(),
    );
    declare(
        "How a check, or the joint, stands.",
        "Verdict",
        keys!(Verdict),
    );
    declare("The question a check answers.", "CheckId", keys!(CheckId));
    declare("What gives way.", "Part", keys!(Part));
    declare("What a factor on a demand is.", "FactorKey", keys!(Factor));
    declare("A load case.", "CaseName", keys!(CaseName));
    declare(
        "A ratio that a formula was checked for.",
        "CheckedRatio",
        keys!(CheckedRatio),
    );
    declare(
        "A published view of what a bolt endures.",
        "EnduranceView",
        keys!(EnduranceView),
    );
    declare("Whose strength decides.", "Metal", keys!(Metal));
    declare("What a repair changes.", "RepairKind", keys!(RepairKind));
    declare(
        "What a repair needs that not everybody has: to filter by.",
        "Need",
        keys!(Need),
    );
    declare("How a piece is brought to its length.", "Fit", keys!(Fit));
    let variables = Variable::ALL.iter().map(name).collect();
    declare("An input that scatters.", "Variable", variables);
    let fillers = catalog::fillers();
    declare(
        "A filler metal.",
        "FillerId",
        fillers.iter().map(|f| f.id().into()).collect(),
    );
    declare(
        "A source, as the page of sources lists it.",
        "SourceId",
        keys!(Source),
    );
    declare(
        "A thing in a list; its words stand in content/messages.toml.",
        "LabelKey",
        keys!(Label),
    );
    declare(
        "A sentence; its words stand in content/messages.toml.",
        "MessageKey",
        keys!(Message),
    );
    out
}

#[cfg(test)]
mod tests {
    #[test]
    fn the_declared_names_are_those_of_the_tables() {
        let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../web/src/api/names.d.ts");
        let kept = std::fs::read_to_string(path).unwrap();
        assert!(
            kept == super::names(),
            "web/src/api/names.d.ts is stale: cargo run -p outside-checks --bin joint-declarations names > web/src/api/names.d.ts"
        );
    }

    #[test]
    fn the_declared_joint_is_the_one_that_is_read() {
        let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../web/src/api/joint.d.ts");
        let kept = std::fs::read_to_string(path).unwrap();
        assert!(
            kept == super::joint(),
            "web/src/api/joint.d.ts is stale: cargo run -p outside-checks --bin joint-declarations > web/src/api/joint.d.ts"
        );
    }
}

//! The TypeScript declaration of a joint, from the one table of fields.

use std::fmt::Write as _;

use calc_core::scenario::{Field, Kind, options};

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

#[cfg(test)]
mod tests {
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

//! Puts tables of `content/` into the program: titles of sources, and the invented examples. They are
//! read here so that the page need not carry a reader for their format.

#![allow(
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a build that cannot go on says why and stops"
)]

use serde::Deserialize;
use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::path::Path;
use std::{env, fs};

#[derive(Deserialize)]
struct Sources {
    source: Vec<Source>,
}

#[derive(Deserialize)]
struct Source {
    id: String,
    title: String,
}

#[derive(Deserialize)]
struct Examples {
    #[serde(default)]
    example: Vec<Example>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Example {
    name: String,
    story: String,
    units: String,
    joint: BTreeMap<String, toml::Value>,
}

fn main() {
    let sources: Sources = read("sources");
    let examples: Examples = read("examples");
    let mut out = String::from(
        "/// Id and title of every source.\npub(crate) static SOURCES: &[(&str, &str)] = &[\n",
    );
    for source in sources.source {
        // Writing to a string cannot fail; hence the ignored results.
        let _ = writeln!(out, "    ({:?}, {:?}),", source.id, source.title);
    }
    out.push_str("];\n\n/// The invented examples.\npub static EXAMPLES: &[Example] = &[\n");
    for example in examples.example {
        let _ = writeln!(
            out,
            "    Example {{ name: {:?}, story: {:?}, metric: {}, joint: &[",
            example.name,
            example.story,
            example.units == "metric"
        );
        for (field, value) in example.joint {
            let text = match value {
                toml::Value::String(text) => text,
                other => other.to_string(),
            };
            let _ = writeln!(out, "        ({field:?}, {text:?}),");
        }
        out.push_str("    ] },\n");
    }
    out.push_str("];\n");
    let folder = env::var_os("OUT_DIR").expect("cargo sets OUT_DIR");
    fs::write(Path::new(&folder).join("content.rs"), out).expect("OUT_DIR takes files");
}

fn read<T: for<'de> Deserialize<'de>>(name: &str) -> T {
    let file = format!("{}/../content/{name}.toml", env!("CARGO_MANIFEST_DIR"));
    println!("cargo:rerun-if-changed={file}");
    let text = fs::read_to_string(&file).unwrap_or_else(|error| panic!("{file}: {error}"));
    toml::from_str(&text).unwrap_or_else(|error| panic!("{file}: {error}"))
}

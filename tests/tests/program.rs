//! The `evaluate` example as a program: JSON in, JSON out, exit code.

use serde_json::Value;
use std::io::Write;
use std::process::{Command, Stdio};
use std::sync::OnceLock;

/// The example, built once by the cargo that runs these tests, in the same target directory.
fn program() -> Command {
    static BUILT: OnceLock<escargot::CargoRun> = OnceLock::new();
    BUILT
        .get_or_init(|| {
            escargot::CargoBuild::new()
                .manifest_path(concat!(
                    env!("CARGO_MANIFEST_DIR"),
                    "/../calc-core/Cargo.toml"
                ))
                // With the features of the whole workspace: what its tests have built serves again.
                .arg("--workspace")
                .example("evaluate")
                .run()
                .expect("the example builds")
        })
        .command()
}

fn run(input: &str) -> (Option<i32>, Value) {
    let mut child = program()
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    child
        .stdin
        .take()
        .unwrap()
        .write_all(input.as_bytes())
        .unwrap();
    let output = child.wait_with_output().unwrap();
    let json = serde_json::from_slice(&output.stdout).expect("standard output is JSON");
    (output.status.code(), json)
}

/// The names of all numbers in plain JSON fields; an amount carries its unit beside it instead.
fn number_names(value: &Value, names: &mut Vec<String>) {
    match value {
        Value::Object(map) if map.contains_key("value") && map.contains_key("unit") => {
            assert!(map["unit"].is_string());
        }
        Value::Object(map) => {
            for (name, value) in map {
                if value.is_number() {
                    names.push(name.clone());
                }
                number_names(value, names);
            }
        }
        Value::Array(items) => items.iter().for_each(|item| number_names(item, names)),
        _ => {}
    }
}

#[test]
fn an_empty_object_is_the_default_joint() {
    let (code, out) = run("{}");
    assert_eq!(code, Some(0));
    let input = serde_json::to_value(calc_core::Input::default()).unwrap();
    assert_eq!(out["report"]["input"], input);
    assert!(out["report"]["verdict"].is_string());
    assert!(out["torque_turn"]["points"].as_array().unwrap().len() > 10);
    assert!(out["repairs"]["tried"].as_u64().unwrap() >= 2000);
    let cheapest = out["repairs"]["cheapest"].as_u64().unwrap();
    let cheapest = &out["repairs"]["list"][usize::try_from(cheapest).unwrap()];
    let sheet = &out["work_sheet"];
    assert_eq!(sheet["work"], cheapest["work"]);
    assert_eq!(sheet["input"], cheapest["input"]);
    assert!(sheet["tightening"]["torque"]["unit"] == "N·m");
}

#[test]
fn numbers_say_their_unit_in_their_name() {
    let (_, out) = run("{}");
    let mut names = Vec::new();
    number_names(&out, &mut names);
    names.sort();
    names.dedup();
    let units = [
        "mm", "mm2", "kg", "n", "nm", "mpa", "gpa", "deg", "k", "g", "share", "factor", "mm_per_n",
        "per_mm", "miles", "per_mile",
    ];
    // Plain numbers: counts, indices, ratios, money and minutes.
    let plain = [
        "version",
        "bolts_along",
        "bolt_rows",
        "axles",
        "utilisation",
        "implied_friction",
        "tried",
        "held",
        "undecided",
        "most_used",
        "cheapest",
        "strongest",
        "without_welding",
        "holes",
        "cuts",
        "welds",
        "surfaces",
        "count",
        "number",
        "minutes",
        "cost",
        "share_stretch",
        "share_thread_friction",
        "share_face_friction",
        "tube_poisson",
        "faying_friction",
    ];
    assert!(names.len() > 30, "{names:?}");
    for name in names {
        let unit = units
            .iter()
            .any(|u| name.ends_with(&format!("_{u}")) || name == *u);
        assert!(unit || plain.contains(&name.as_str()), "{name} has no unit");
    }
}

#[test]
fn bad_input_names_its_field() {
    for (input, code, field) in [
        (
            r#"{"tube_wall_mm": -1}"#,
            "out-of-range",
            Some("tube_wall_mm"),
        ),
        (
            r#"{"bolts_along": 1.5}"#,
            "contradiction",
            Some("bolts_along"),
        ),
        (r#"{"bolt": "m99"}"#, "unknown-choice", Some("bolt")),
        (r#"{"hole_mm": 6}"#, "contradiction", Some("hole_mm")),
        (
            r#"{"tube_wall_mm": "thin"}"#,
            "not-a-scenario",
            Some("tube_wall_mm"),
        ),
        (
            r#"{"tube_wall_mm": null}"#,
            "not-a-scenario",
            Some("tube_wall_mm"),
        ),
        (r#"{"bolt": 12}"#, "not-a-scenario", Some("bolt")),
        (r#"{"wall": 3}"#, "not-a-scenario", Some("wall")),
        (r#"{"version": 2}"#, "version", None),
        ("", "not-a-scenario", None),
        ("{", "not-a-scenario", None),
        ("[]", "not-a-scenario", None),
        (" [1, 40.0]", "not-a-scenario", None),
        ("7", "not-a-scenario", None),
    ] {
        let (exit, out) = run(input);
        assert_eq!(exit, Some(2), "{input}");
        let error = &out["errors"][0];
        assert_eq!(error["code"], code, "{input}: {out}");
        assert_eq!(error["field"].as_str(), field, "{input}: {out}");
        assert!(!error["message"].as_str().unwrap().is_empty());
    }
}

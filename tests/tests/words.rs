//! Every code that the calculation can give has its words.

use calc_core::catalog::LoadKind;
use calc_core::report::Verdict;
use calc_core::scenario::{Field, Kind};
use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..")
}

/// Keys of `content/messages.toml`.
fn known() -> BTreeSet<String> {
    let text = std::fs::read_to_string(root().join("content/messages.toml")).unwrap();
    text.lines()
        .filter(|line| !line.starts_with('#'))
        .filter_map(|line| line.split_once(" = "))
        .map(|(key, _)| key.to_owned())
        .collect()
}

/// The sources of the calculation, without their tests.
fn sources() -> Vec<String> {
    fn walk(folder: &Path, found: &mut Vec<String>) {
        for entry in std::fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                walk(&path, found);
            } else if path.extension().is_some_and(|e| e == "rs") {
                let text = std::fs::read_to_string(&path).unwrap();
                let tests = text.find("#[cfg(test)]").unwrap_or(text.len());
                found.push(text[..tests].to_owned());
            }
        }
    }
    let mut found = Vec::new();
    for part in ["evaluate", "inspection", "chance", "repair"] {
        walk(&root().join("calc-core/src").join(part), &mut found);
    }
    found
}

/// What stands between quotation marks and looks like a code.
fn codes(text: &str) -> impl Iterator<Item = &str> {
    text.split('"').skip(1).step_by(2).filter(|piece| {
        piece.contains('-')
            && piece.starts_with(|c: char| c.is_ascii_lowercase())
            && piece
                .chars()
                .all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-')
    })
}

/// Beginnings of codes that are said, by topic.
const SAID: [&str; 48] = [
    "bearing-",
    "bending-",
    "block-",
    "bolt-",
    "caliper-",
    "caution-",
    "chance-",
    "clamp-",
    "combined-",
    "cut-",
    "distance-",
    "drill-",
    "end-",
    "factor-",
    "fatigue-",
    "fitting-",
    "flange-",
    "grade-",
    "hole-",
    "life-",
    "limit-",
    "loosening-",
    "member-",
    "note-",
    "opening-",
    "oval-",
    "piece-",
    "place-",
    "pull-",
    "range-",
    "seat-",
    "section-",
    "shear-",
    "sleeve-",
    "slip-",
    "spacing-",
    "spread-",
    "stop-",
    "tear-",
    "threads-",
    "tighten-",
    "tightening-",
    "torque-",
    "washer-",
    "weld-",
    "work-",
    "wrench-",
    "wall-",
];

#[test]
fn every_code_has_its_sentence() {
    let known = known();
    let mut found = BTreeSet::new();
    for text in sources() {
        let of_topics = |code: &&str| SAID.iter().any(|begin| code.starts_with(begin));
        found.extend(codes(&text).filter(of_topics).map(str::to_owned));
        // Whatever the topic, what is handed over as a code is one.
        for call in ["said(", "say(", "code: "] {
            for (at, _) in text.match_indices(call) {
                let rest = text[at + call.len()..].trim_start();
                let code = rest.strip_prefix('"').and_then(|r| r.split('"').next());
                found.extend(code.filter(|c| c.contains('-')).map(str::to_owned));
            }
        }
    }
    assert!(
        found.len() > 150,
        "looked in the wrong place: {}",
        found.len()
    );
    let missing: Vec<_> = found
        .iter()
        .filter(|code| !known.contains(code.as_str()))
        .collect();
    assert!(missing.is_empty(), "{missing:?}");
}

/// Names of an enum's variants in `report.rs`, in the manner of JSON.
fn variants(name: &str) -> Vec<String> {
    let text = std::fs::read_to_string(root().join("calc-core/src/report.rs")).unwrap();
    let (_, body) = text.split_once(&format!("pub enum {name} {{")).unwrap();
    let (body, _) = body.split_once("\n}").unwrap();
    let lines = body.lines().map(str::trim);
    lines
        .filter_map(|line| line.strip_suffix(','))
        .filter(|line| line.chars().all(char::is_alphanumeric))
        .map(|variant| {
            let mut kebab = String::new();
            for c in variant.chars() {
                if c.is_uppercase() && !kebab.is_empty() {
                    kebab.push('-');
                }
                kebab.extend(c.to_lowercase());
            }
            kebab
        })
        .collect()
}

#[test]
fn every_question_field_and_case_has_its_words() {
    let known = known();
    let mut wanted = BTreeSet::new();
    let questions = variants("CheckId");
    assert!(questions.len() > 20, "{questions:?}");
    assert!(variants("Verdict").contains(&"not-checked".to_owned()));
    assert_eq!(
        serde_json::to_value(Verdict::NotChecked).unwrap(),
        "not-checked"
    );
    wanted.extend(questions.iter().map(|id| format!("check.{id}")));
    for field in Field::ALL {
        wanted.insert(format!("field.{}", field.name()));
        wanted.insert(format!("help.{}", field.name()));
        if let Kind::Number { default: None, .. } = field.kind() {
            wanted.insert(format!("empty.{}", field.name()));
        }
    }
    for kind in [LoadKind::Service, LoadKind::Proof, LoadKind::Ultimate] {
        wanted.insert(format!("kind.{}", kind.name()));
    }
    // Cases are named where they are made: by the joint and by the rules.
    let mut cases = 0;
    let loads = root().join("calc-core/src/evaluate/loads");
    let mut files = vec![root().join("calc-core/src/catalog/load_rules/published.rs")];
    files.extend(
        std::fs::read_dir(loads)
            .unwrap()
            .map(|entry| entry.unwrap().path()),
    );
    for file in files {
        let text = std::fs::read_to_string(file).unwrap();
        for call in [
            "at(",
            "road(",
            "alone(",
            "with_rest(",
            "together(",
            "LoadCase::at(",
        ] {
            for (at, _) in text.match_indices(call) {
                let rest = text[at + call.len()..].trim_start();
                if let Some(name) = rest.strip_prefix('"').and_then(|r| r.split('"').next()) {
                    wanted.insert(format!("case.{name}"));
                    cases += 1;
                }
            }
        }
    }
    assert!(cases > 25, "{cases}");
    let missing: Vec<_> = wanted.iter().filter(|key| !known.contains(*key)).collect();
    assert!(missing.is_empty(), "{missing:?}");
}

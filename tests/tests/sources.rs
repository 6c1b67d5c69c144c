//! The register of sources: every citation has an entry, every entry is cited.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use calc_core::cite::Source;
use regex::Regex;
use serde::Deserialize;
use walkdir::{DirEntry, WalkDir};

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Entry {
    id: String,
    title: String,
    #[serde(default)]
    edition: String,
    kind: String,
    held: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Register {
    source: Vec<Entry>,
}

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR")).parent().unwrap()
}

fn register() -> Vec<Entry> {
    let text = std::fs::read_to_string(root().join("content/sources.toml")).unwrap();
    toml::from_str::<Register>(&text).unwrap().source
}

/// Files of data that cite: reference rows, lessons.
fn is_ours(entry: &DirEntry) -> bool {
    let name = entry.file_name().to_string_lossy();
    let produced = ["node_modules", "dist", "target", "pkg"];
    !name.starts_with('.') && !produced.contains(&name.as_ref())
}

/// Ids that data cites, each with the files that cite it: in rows and lessons `source = "id"`.
fn cited_by_data() -> BTreeMap<String, BTreeSet<String>> {
    let data = Regex::new(r#"(?m)\bsource\s*=\s*"([^"]+)""#).unwrap();
    let mut cited = BTreeMap::<_, BTreeSet<_>>::new();
    for folder in ["web", "content", "tests/reference"] {
        for entry in WalkDir::new(root().join(folder))
            .into_iter()
            .filter_entry(is_ours)
        {
            let entry = entry.unwrap();
            let path = entry.path().strip_prefix(root()).unwrap();
            let is_data = path.extension().is_some_and(|e| e == "toml" || e == "md");
            if !is_data || path.ends_with("Cargo.toml") || path.ends_with("content/sources.toml") {
                continue;
            }
            let text = std::fs::read_to_string(entry.path()).unwrap();
            for found in data.captures_iter(&text) {
                cited
                    .entry(found[1].to_owned())
                    .or_default()
                    .insert(path.display().to_string());
            }
        }
    }
    cited
}

#[test]
fn every_citation_is_registered() {
    let known: BTreeSet<_> = register().into_iter().map(|source| source.id).collect();
    let unregistered: Vec<_> = Source::ALL
        .iter()
        .filter(|source| !known.contains(source.key()))
        .collect();
    assert!(
        unregistered.is_empty(),
        "typed but not in content/sources.toml: {unregistered:?}"
    );
    let cited = cited_by_data();
    assert!(
        cited.len() > 20,
        "only {} ids found: is the pattern right?",
        cited.len()
    );
    let dangling: Vec<_> = cited
        .iter()
        .filter(|(id, _)| !known.contains(*id))
        .collect();
    assert!(
        dangling.is_empty(),
        "cited but not in content/sources.toml: {dangling:#?}"
    );
}

#[test]
fn every_entry_is_cited() {
    let typed: BTreeSet<_> = Source::ALL.iter().map(|source| source.key()).collect();
    let cited = cited_by_data();
    let unused: Vec<_> = register()
        .into_iter()
        .map(|source| source.id)
        .filter(|id| !typed.contains(id.as_str()) && !cited.contains_key(id))
        .collect();
    assert!(
        unused.is_empty(),
        "in content/sources.toml but cited nowhere: {unused:?}"
    );
}

#[test]
fn entries_are_complete_unique_and_in_order() {
    let register = register();
    let form = Regex::new("^[a-z0-9]+(-[a-z0-9]+)*$").unwrap();
    for source in &register {
        assert!(form.is_match(&source.id), "{}", source.id);
        for (what, text) in [
            ("title", &source.title),
            ("kind", &source.kind),
            ("held", &source.held),
        ] {
            assert!(!text.trim().is_empty(), "{}: no {what}", source.id);
        }
        assert_eq!(source.edition, source.edition.trim(), "{}", source.id);
    }
    for pair in register.windows(2) {
        assert!(
            pair[0].id < pair[1].id,
            "{} before {}",
            pair[0].id,
            pair[1].id
        );
    }
}

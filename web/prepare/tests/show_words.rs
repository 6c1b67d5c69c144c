//! The scripts for a class say what `content/show.toml` has, and nothing there is left over.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

type Words = BTreeMap<String, BTreeMap<String, String>>;

fn root() -> std::path::PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

/// All text of a script.
fn script(name: &str) -> String {
    let folder = root().join("web").join(name);
    std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|end| end == "js"))
        .map(|path| std::fs::read_to_string(path).unwrap())
        .collect()
}

/// The words that a script asks for by name.
fn asked(text: &str) -> BTreeSet<String> {
    text.split("WORDS.")
        .skip(1)
        .map(|rest| {
            rest.chars()
                .take_while(|c| c.is_ascii_alphanumeric())
                .collect()
        })
        .collect()
}

#[test]
fn every_word_that_a_script_asks_for_is_there_and_none_is_left_over() {
    let text = std::fs::read_to_string(root().join("content/show.toml")).unwrap();
    let words: Words = toml::from_str(&text).unwrap();
    for name in ["show", "speaker", "plan"] {
        let known: BTreeSet<String> = words[name].keys().cloned().collect();
        assert_eq!(asked(&script(name)), known, "{name}");
    }
}

//! The scripts for a class say what `content/show.toml` has, and nothing there is left over.

#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    reason = "a test may fail by a panic, and so may what it calls"
)]

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use prepare::readability::sentences;
use prepare::register::Register;

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

/// Notes are read while one speaks, so they are at least as easy as the pages.
#[test]
fn the_notes_read_easily() {
    let register = Register::read(&root()).unwrap();
    let mut lessons = 0;
    for entry in std::fs::read_dir(root().join("content/speaker")).unwrap() {
        let path = entry.unwrap().path();
        let text = std::fs::read_to_string(&path).unwrap();
        // Minutes are not read out.
        let said: Vec<&str> = text.lines().filter(|l| l.contains(" = \"")).collect();
        let counts = sentences(&said.join("\n"), &register);
        lessons += 1;
        let at = path.display();
        assert!(counts.words > 200, "{at}: {} words", counts.words);
        let (by_syllables, by_letters) = (
            counts.flesch_kincaid_grade(),
            counts.automated_readability_index(),
        );
        assert!(
            by_syllables <= 8.0 && by_letters <= 8.0,
            "{at}: {by_syllables:.1}, {by_letters:.1}"
        );
        assert!(
            counts.longest <= 45,
            "{at}: a sentence of {}",
            counts.longest
        );
    }
    assert_eq!(lessons, 10);
}

//! Everything that the calculation can say has its words, and the words leave room for exactly that.

use calc_core::catalog::{CaseName, HoleFit, LoadKind};
use calc_core::repair::{Need, RepairKind};
use calc_core::report::{CheckId, Factor, Label, Message, Part, Verdict};
use calc_core::scenario::{Field, Kind};
use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

/// Keys and texts of `content/messages.toml`.
fn known() -> BTreeMap<String, String> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../content/messages.toml");
    let text = std::fs::read_to_string(path).unwrap();
    text.lines()
        .filter(|line| !line.starts_with('#'))
        .filter_map(|line| line.split_once(" = "))
        .map(|(key, text)| (key.to_owned(), text.trim_matches('"').to_owned()))
        .collect()
}

/// Numbers of the places in a text.
fn places(text: &str) -> BTreeSet<usize> {
    text.split('{')
        .skip(1)
        .filter_map(|rest| rest.split('}').next()?.parse().ok())
        .collect()
}

/// Keys without a topic that only the page says.
const OF_THE_PAGE: [&str; 5] = [
    "knee",
    "trace-dent",
    "trace-long",
    "trace-short",
    "trace-stop",
];

#[test]
fn every_sentence_has_its_words_and_no_words_are_left_over() {
    let known = known();
    let mut wanted: BTreeMap<&str, usize> = BTreeMap::new();
    for message in Message::ALL {
        wanted.insert(message.key(), message.amounts());
    }
    for label in Label::ALL {
        wanted.insert(label.key(), 0);
    }
    for factor in Factor::ALL {
        wanted.insert(factor.key(), 0);
    }
    let total = Message::ALL.len() + Label::ALL.len() + Factor::ALL.len();
    assert_eq!(wanted.len(), total, "a key stands in two tables");
    for (key, amounts) in &wanted {
        let text = known
            .get(*key)
            .unwrap_or_else(|| panic!("{key} has no words"));
        let asked = places(text);
        assert!(
            asked.iter().all(|place| place < amounts),
            "{key} asks for more than {amounts}: {text}"
        );
    }
    let flat = known.keys().filter(|key| !key.contains('.'));
    let over: Vec<_> = flat
        .filter(|key| !wanted.contains_key(key.as_str()) && !OF_THE_PAGE.contains(&key.as_str()))
        .collect();
    assert!(over.is_empty(), "nothing says {over:?}");
}

/// Sentences that leave out some of what they are given, on purpose: the number stands in the check itself.
#[test]
fn few_sentences_leave_out_what_they_are_given() {
    let known = known();
    let silent: Vec<_> = Message::ALL
        .iter()
        .filter(|message| places(&known[message.key()]).len() < message.amounts())
        .map(|message| message.key())
        .collect();
    assert_eq!(silent, LEFT_OUT);
}

/// In the order of the table.
const LEFT_OUT: [&str; 16] = [
    "limit-round-wall",
    "bolt-below-proof",
    "bolt-over-proof",
    "bolt-over-yield",
    "bolt-service-below-proof",
    "bolt-service-over-yield",
    "bolt-fatigue-clamp-lost",
    "bolt-fatigue-clamp-unknown",
    "slip-grips",
    "slip-slides",
    "hole-normal",
    "hole-too-large",
    "sleeve-fit-tight",
    "sleeve-fit-loose",
    "cut-end-closed",
    "hole-welded-sleeve",
];

/// Keys under a topic: those of the calculation have all of them and no other.
#[test]
fn every_name_of_the_calculation_has_its_words_and_no_words_are_left_over_under_its_topic() {
    let known = known();
    let under = |topic: &str| -> BTreeSet<String> {
        known
            .keys()
            .filter_map(|key| key.strip_prefix(topic)?.strip_prefix('.'))
            .map(str::to_owned)
            .collect()
    };
    let all =
        |names: Vec<&str>| -> BTreeSet<String> { names.into_iter().map(str::to_owned).collect() };
    let keys = [
        (
            "check",
            all(CheckId::ALL.iter().map(|id| id.key()).collect()),
        ),
        (
            "verdict",
            all(Verdict::ALL.iter().map(|v| v.key()).collect()),
        ),
        (
            "part",
            all(Part::ALL.iter().map(|part| part.key()).collect()),
        ),
        (
            "case",
            all(CaseName::ALL.iter().map(|case| case.key()).collect()),
        ),
        (
            "kind",
            all([LoadKind::Service, LoadKind::Proof, LoadKind::Ultimate]
                .map(LoadKind::name)
                .to_vec()),
        ),
        (
            "hole-fit",
            all([
                HoleFit::Close,
                HoleFit::Normal,
                HoleFit::Loose,
                HoleFit::Structural,
            ]
            .map(HoleFit::id)
            .to_vec()),
        ),
        (
            "need",
            all(Need::ALL.iter().map(|need| need.key()).collect()),
        ),
        (
            "field",
            all(Field::ALL.iter().map(|field| field.name()).collect()),
        ),
        (
            "help",
            all(Field::ALL.iter().map(|field| field.name()).collect()),
        ),
        (
            "empty",
            all(Field::ALL
                .iter()
                .filter(|field| matches!(field.kind(), Kind::Number { default: None, .. }))
                .map(|field| field.name())
                .collect()),
        ),
    ];
    for (topic, names) in keys {
        assert_eq!(under(topic), names, "{topic}");
    }
    let repairs = under("repair");
    for kind in RepairKind::ALL {
        assert!(repairs.contains(kind.key()), "{kind:?}");
    }
}

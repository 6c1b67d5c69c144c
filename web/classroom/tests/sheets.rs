//! Sheets follow from the class word alone, the same for ever, and no two of a class are alike.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "tests stop where something is wrong"
)]

use calc_core::quantity::UnitSystem;
use classroom::{Class, Kind, Level, MOST_STUDENTS, answers};
use fnv::FnvHasher;
use std::fmt::Write as _;
use std::hash::Hasher;

const WORDS: [&str; 3] = ["blue7", "shop-2031", "Träger"];

fn classes() -> Vec<Class> {
    let mut all = Vec::new();
    for word in WORDS {
        for level in Level::ALL {
            for units in [UnitSystem::Us, UnitSystem::Metric] {
                all.push(Class::new(word, *level, units).unwrap());
            }
        }
    }
    all
}

fn told(class: &Class, student: usize) -> String {
    let sheet: Vec<String> = class.sheet(student).iter().map(|p| p.told()).collect();
    sheet.join("\n")
}

fn digest(text: &str) -> u64 {
    let mut hasher = FnvHasher::default();
    hasher.write(text.as_bytes());
    hasher.finish()
}

#[test]
fn no_two_sheets_of_a_class_share_a_problem() {
    for class in classes() {
        let mut seen = Vec::new();
        for student in 1..=MOST_STUDENTS {
            let sheet = class.sheet(student);
            assert_eq!(sheet.len(), 6, "{} {student}", class.word);
            seen.extend(sheet.iter().map(|p| p.told()));
        }
        let all = seen.len();
        seen.sort();
        seen.dedup();
        assert_eq!(seen.len(), all, "{}", class.word);
    }
}

#[test]
fn a_sheet_has_two_problems_of_each_part_of_the_lessons() {
    for class in classes() {
        let kinds: Vec<Kind> = class.sheet(1).iter().map(|p| p.kind).collect();
        for part in Kind::ALL.chunks(3) {
            assert_eq!(kinds.iter().filter(|kind| part.contains(kind)).count(), 2);
        }
    }
}

#[test]
fn other_words_levels_and_units_give_other_sheets() {
    let mut all: Vec<String> = classes().iter().map(|class| told(class, 5)).collect();
    let count = all.len();
    all.sort();
    all.dedup();
    assert_eq!(all.len(), count);
}

/// Digests of whole classes: what a word gave once it gives for ever.
#[test]
fn old_words_give_their_old_sheets() {
    let mut now = String::from("# word level units: digest of all sheets, of three quizzes\n");
    for class in classes() {
        let sheets: Vec<String> = (1..=MOST_STUDENTS).map(|s| told(&class, s)).collect();
        let quizzes: Vec<String> = [1, 2, MOST_STUDENTS]
            .into_iter()
            .flat_map(|s| class.quiz(s))
            .map(|q| {
                let choices: Vec<String> = q
                    .choices
                    .iter()
                    .map(|(si, _)| q.problem.written(*si))
                    .collect();
                format!("{} {}", q.problem.told(), choices.join(";"))
            })
            .collect();
        let units = if class.units == UnitSystem::Us {
            "us"
        } else {
            "metric"
        };
        let _ = writeln!(
            now,
            "{} {} {units}: {:016x} {:016x}",
            class.word,
            class.level.key(),
            digest(&sheets.join("\n")),
            digest(&quizzes.join("\n")),
        );
    }
    let file = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/golden.txt");
    if std::env::var_os("UPDATE_GOLDEN").is_some() {
        std::fs::write(file, &now).unwrap();
    }
    assert_eq!(
        std::fs::read_to_string(file).unwrap(),
        now,
        "see DEVELOPERS.md, For a class"
    );
}

#[test]
fn a_quiz_asks_every_kind_once_in_another_order_for_each_student() {
    for class in classes() {
        let order =
            |student| -> Vec<Kind> { class.quiz(student).iter().map(|q| q.problem.kind).collect() };
        let mut sorted: Vec<usize> = order(1).iter().map(|kind| *kind as usize).collect();
        sorted.sort_unstable();
        assert_eq!(sorted, (0..Kind::ALL.len()).collect::<Vec<_>>());
        assert!((2..9).any(|student| order(student) != order(1)));
        for question in class.quiz(3) {
            assert_eq!(
                question.choices.iter().filter(|(_, w)| w.is_none()).count(),
                1
            );
            let mut shown: Vec<String> = question
                .choices
                .iter()
                .map(|(si, _)| question.problem.written(*si))
                .collect();
            let count = shown.len();
            shown.sort();
            shown.dedup();
            assert_eq!(shown.len(), count, "{}", question.problem.told());
        }
    }
}

#[test]
fn the_table_of_answers_has_a_line_for_every_problem() {
    let class = Class::new("blue7", Level::Hard, UnitSystem::Us).unwrap();
    let text = answers::csv(&class, 7);
    let mut lines = 0;
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    assert_eq!(reader.headers().unwrap().len(), 10);
    for record in reader.records() {
        let record = record.unwrap();
        let student: usize = record[2].parse().unwrap();
        let problem: usize = record[3].parse().unwrap();
        let of_sheet = class.sheet(student)[problem - 1];
        assert_eq!(&record[6], of_sheet.answered());
        assert!(record[9].contains(": "));
        lines += 1;
    }
    assert_eq!(lines, 7 * 6);
}

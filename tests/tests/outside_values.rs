//! Every value from outside, within the tolerance that its source allows.

use std::collections::BTreeSet;

use outside_checks::check::Record;
use outside_checks::reference::Origin;
use outside_checks::table::{Table, tables};

fn misfits(tables: &[Table]) -> Vec<String> {
    let every = tables
        .iter()
        .flat_map(|table| table.records.iter().map(move |record| (table.id, record)));
    every
        .filter(|(_, record)| !record.agrees())
        .map(|(topic, record)| {
            format!(
                "{topic}, {}: published {}, ours {}, allowed {:?} ({:+.3} %)",
                record.value,
                record.published,
                record.ours,
                record.allowed,
                100.0 * record.difference(),
            )
        })
        .collect()
}

#[test]
fn every_value_agrees_with_its_source() {
    let tables = tables();
    let misfits = misfits(&tables);
    assert!(misfits.is_empty(), "{}", misfits.join("\n"));
    for table in &tables {
        assert!(!table.records.is_empty(), "{}: nothing compared", table.id);
        let names: BTreeSet<_> = table.records.iter().map(|r| &r.value).collect();
        assert_eq!(
            names.len(),
            table.records.len(),
            "{}: one name twice",
            table.id
        );
    }
    let topics: BTreeSet<_> = tables.iter().map(|table| table.id).collect();
    assert_eq!(topics.len(), tables.len(), "one topic twice");
    let records = || tables.iter().flat_map(|table| &table.records);
    let printed = records().filter(|r| r.origin == Origin::Published).count();
    // What is there must not be lost unnoticed.
    assert!(records().count() >= 350, "{}", records().count());
    assert!(printed >= 200, "{printed}");
}

/// The page is made of the same numbers as the tests, so they have to come out the same.
#[test]
fn comparing_twice_gives_the_same() {
    assert_eq!(tables(), tables());
}

/// A comparison that could not fail would be none.
#[test]
fn a_value_that_is_off_is_found() {
    let mut tables = tables();
    let broken: usize = tables
        .iter_mut()
        .flat_map(|table| &mut table.records)
        .map(|record: &mut Record| {
            let [below, above] = record.allowed;
            record.ours = record.published + 2.0 * above.max(below) + 1e-9;
        })
        .count();
    assert_eq!(misfits(&tables).len(), broken);
}

//! No way out of the joint is left without a check.

use outside_checks::ways::{FILE, WAYS, markdown, reason, rows};

#[test]
fn every_way_has_a_check() {
    let rows = rows();
    assert!(rows.len() >= 100, "{}", rows.len());
    let mut faults = Vec::new();
    for row in &rows {
        for (way, cell) in WAYS.iter().zip(&row.cells) {
            let empty = cell.as_ref().is_some_and(Vec::is_empty);
            if empty && reason(row, way).is_none() {
                faults.push(format!("{:?}: {}", row.situation, way.name));
            }
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn the_table_is_the_one_that_is_read() {
    let path = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join(FILE);
    let written = std::fs::read_to_string(&path).unwrap();
    assert!(
        written == markdown(),
        "stale: cargo run -p outside-checks --bin ways > tests/{FILE}"
    );
}

//! No way out of the joint is left without a check.

use outside_checks::ways::{FILE, WAYS, markdown, reason, rows, rows_of};

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

/// What is not known takes no check away.
#[test]
fn every_way_has_its_checks_where_nothing_is_known() {
    let unknown = rows_of(|input| {
        input.tube_material = "unknown-steel".into();
        input.fitting_material = "unknown".into();
        input.bolt_grade = "unknown".into();
        input.faying_surface = "unknown".into();
        input.wall_basis = "unknown".into();
    });
    let known = rows();
    assert_eq!(known.len(), unknown.len());
    for (known, unknown) in known.iter().zip(&unknown) {
        assert_eq!(known.situation, unknown.situation);
        for (way, (known, unknown)) in WAYS.iter().zip(known.cells.iter().zip(&unknown.cells)) {
            let known = known.iter().flatten();
            let gone: Vec<_> = known
                .filter(|id| !unknown.iter().flatten().any(|other| other == *id))
                .collect();
            // A check that would have to be there anyway may give way to another of the same way out.
            let none = unknown.as_ref().is_some_and(Vec::is_empty);
            assert!(gone.is_empty() || !none, "{}: {gone:?}", way.name);
        }
    }
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

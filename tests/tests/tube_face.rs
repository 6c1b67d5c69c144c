//! The face curve and the plate against finite elements, and the published yield-line load against
//! its hand values.

use std::collections::BTreeMap;
use std::path::Path;

use calc_core::mechanics::face::{FaceCurve, FaceTube, LOWER_BOUND, out_of_range};
use calc_core::mechanics::plate::{Plate, PlateCurve};
use calc_core::mechanics::yield_line::{Patch, chord_face};
use calc_core::quantity::{InUnits, Length, mm, mpa};
use outside_checks::check::Check;
use outside_checks::reference::{folder, rows};

/// Largest difference of one run at 1 % and 3 % of the width, as a share.
const EACH: f64 = 0.12;
/// Largest difference of the mean over the runs that the fit saw.
const MEAN: f64 = 0.04;

type CsvRow = BTreeMap<String, String>;

fn table(name: &str) -> Vec<CsvRow> {
    let mut reader = csv::Reader::from_path(folder().join("fe").join(name)).unwrap();
    reader.deserialize().map(Result::unwrap).collect()
}

fn number(row: &CsvRow, name: &str) -> f64 {
    row[name]
        .parse()
        .unwrap_or_else(|_| panic!("{row:?}: no number {name}"))
}

/// A run: its case and its result.
struct Run {
    name: String,
    case: CsvRow,
    result: CsvRow,
}

fn runs(cases: &str, results: &str, load: &str) -> Vec<Run> {
    let cases: BTreeMap<String, CsvRow> = table(cases)
        .into_iter()
        .map(|row| (row["id"].clone(), row))
        .collect();
    let found: Vec<Run> = table(results)
        .into_iter()
        // Refined meshes and other options are checks of the runs themselves.
        .filter(|row| row["load"] == load && row.get("opts").is_none_or(String::is_empty))
        .map(|result| Run {
            name: result["name"].clone(),
            case: cases[&result["base"]].clone(),
            result,
        })
        .collect();
    assert!(!found.is_empty(), "{results}: no {load} run");
    found
}

fn tube(case: &CsvRow) -> FaceTube {
    FaceTube {
        width: mm(number(case, "b")),
        depth: mm(number(case, "h")),
        wall: mm(number(case, "t")),
        corner_radius: mm(number(case, "ro")),
        modulus: mpa(number(case, "E")),
        poisson: number(case, "nu"),
        yield_strength: mpa(number(case, "fy")),
    }
}

fn washer(case: &CsvRow) -> Length {
    mm(number(case, "dw"))
}

/// Run / formula at 1 % and at 3 % of the width.
fn face_ratios(runs: &[Run]) -> Vec<(String, [f64; 2])> {
    runs.iter()
        .map(|run| {
            let tube = tube(&run.case);
            assert!(
                out_of_range(&tube, washer(&run.case)).is_empty(),
                "{}: out of range",
                run.name
            );
            let curve = FaceCurve::new(&tube, washer(&run.case), 1.0);
            let ratio = |share: f64, name: &str| {
                number(&run.result, name) / curve.force_at_share(share).si()
            };
            (
                run.name.clone(),
                [ratio(0.01, "F_1pct"), ratio(0.03, "F_3pct")],
            )
        })
        .collect()
}

#[test]
fn face_follows_the_runs_it_was_fitted_to() {
    let ratios = face_ratios(&runs("cases.csv", "variants.csv", "ring"));
    assert_eq!(ratios.len(), 14, "fitted ring runs");
    for (name, pair) in &ratios {
        for ratio in pair {
            assert!(
                (ratio - 1.0).abs() <= EACH,
                "{name}: run / formula {pair:.3?}"
            );
        }
    }
    for (i, share) in ["1 %", "3 %"].iter().enumerate() {
        let mean = ratios.iter().map(|(_, pair)| pair[i]).sum::<f64>() / ratios.len() as f64;
        assert!((mean - 1.0).abs() <= MEAN, "mean at {share}: {mean:.3}");
    }
}

#[test]
fn face_follows_runs_made_after_the_fit() {
    for (name, pair) in face_ratios(&runs("cases_blind.csv", "blind.csv", "ring")) {
        for ratio in pair {
            assert!(
                (ratio - 1.0).abs() <= EACH,
                "{name}: run / formula {pair:.3?}"
            );
        }
    }
}

#[test]
fn lower_bound_lies_below_every_run() {
    for (cases, results) in [
        ("cases.csv", "variants.csv"),
        ("cases_blind.csv", "blind.csv"),
    ] {
        for (name, pair) in face_ratios(&runs(cases, results, "ring")) {
            for ratio in pair {
                assert!(ratio >= LOWER_BOUND, "{name}: run / formula {pair:.3?}");
            }
        }
    }
}

#[test]
fn plates_lie_on_the_safe_side_of_every_run() {
    let mut compared = 0;
    for (cases, results, load) in [
        ("cases.csv", "variants.csv", "tie"),
        ("cases_blind.csv", "blind.csv", "tie"),
        ("cases_blind.csv", "blind.csv", "contact"),
    ] {
        for run in runs(cases, results, load) {
            let plate = Plate {
                thickness: mm(number(&run.case, "tp")),
                length: mm(number(&run.case, "lp")),
                width: mm(number(&run.case, "b")),
                modulus: mpa(number(&run.case, "Ep")),
                yield_strength: mpa(number(&run.case, "fyp")),
            };
            let curve = PlateCurve::new(&tube(&run.case), &plate, washer(&run.case), LOWER_BOUND);
            for (share, name) in [(0.01, "F_1pct"), (0.03, "F_3pct")] {
                if run.result[name].is_empty() {
                    continue;
                }
                let ours = curve.force(mm(share * number(&run.case, "b"))).si();
                let theirs = number(&run.result, name);
                assert!(
                    ours <= theirs,
                    "{} at {share}: ours {ours:.0}, run {theirs:.0}",
                    run.name
                );
                // Safe, but not so safe that every plate would be refused.
                assert!(
                    ours >= 0.4 * theirs,
                    "{} at {share}: ours {ours:.0}, run {theirs:.0}",
                    run.name
                );
                compared += 1;
            }
        }
    }
    assert!(compared >= 14, "compared {compared}");
}

#[test]
fn yield_line_hand_values() {
    let mut check = Check::new("yield-line");
    for row in rows("yield_line.toml") {
        let load = chord_face(
            mpa(row.number("fy_mpa")),
            mm(row.number("wall_mm")),
            mm(row.number("width_mm")),
            mm(row.number("washer_mm")),
            Patch::Circular,
        );
        check.row(&row, &[("load_n", load.si())]);
    }
    check.finish();
}

#[test]
fn runs_can_be_made_again() {
    let fe = folder().join("fe");
    for name in ["run_case.py", "README.md"] {
        assert!(Path::new(&fe.join(name)).exists(), "{name}");
    }
}

//! What the finite-element runs say about the face as a whole.

use calc_core::mechanics::face::LOWER_BOUND;
use outside_checks::check::Record;
use outside_checks::compare::{TOPICS, Topic};
use outside_checks::reference::folder;

/// Largest difference of the mean over the runs that the fit saw.
const MEAN: f64 = 0.04;

fn face() -> Vec<Record> {
    let topic: &Topic = TOPICS.iter().find(|t| t.id == "tube-face").unwrap();
    let all = topic.checks.iter().flat_map(|check| check().records());
    let ring = |r: &Record| r.value.contains("-ring F_");
    all.filter(ring).collect()
}

#[test]
fn the_curve_is_right_in_the_mean_of_the_runs_it_was_fitted_to() {
    for share in ["F_1pct_n", "F_3pct_n"] {
        let ratios: Vec<f64> = face()
            .iter()
            .filter(|r| r.value.starts_with('c') && r.value.ends_with(share))
            .map(|r| r.published / r.ours)
            .collect();
        assert_eq!(ratios.len(), 14, "fitted ring runs");
        let mean = ratios.iter().sum::<f64>() / ratios.len() as f64;
        assert!((mean - 1.0).abs() <= MEAN, "mean at {share}: {mean:.3}");
    }
}

#[test]
fn lower_bound_lies_below_every_run() {
    let records = face();
    assert!(records.len() >= 50, "{}", records.len());
    for r in records {
        assert!(r.published >= LOWER_BOUND * r.ours, "{r:?}");
    }
}

#[test]
fn runs_can_be_made_again() {
    for name in ["run_case.py", "neighbours.py", "README.md"] {
        assert!(folder().join("fe").join(name).exists(), "{name}");
    }
}

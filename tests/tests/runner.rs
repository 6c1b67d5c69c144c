//! How many joints a law is tried with, and which.
//!
//! The same ones in every run (`PROPTEST_RNG_SEED` in `.cargo/config.toml`), so that a change is judged by what it
//! changed; `scripts/explore` tries new ones.

use proptest::test_runner::{Config, TestRunner};

/// Ten thousand joints by default, `PROPTEST_CASES` of them otherwise; for each of them so many may be passed over.
pub(crate) fn runner(passed_over: u32) -> TestRunner {
    let cases = std::env::var("PROPTEST_CASES")
        .ok()
        .and_then(|n| n.parse().ok())
        .unwrap_or(10_000);
    TestRunner::new(Config {
        cases,
        max_global_rejects: cases.saturating_mul(passed_over).max(10_000),
        failure_persistence: None,
        ..Config::default()
    })
}

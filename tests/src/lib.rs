//! Checks of calc-core against values that it did not produce.
//!
//! [`mod@reference`] reads the rows of `reference/*.toml`; [`mod@compare`] puts calc-core's values beside
//! them; [`mod@table`] groups them by topic, for the tests to judge and for the page to show.
//! [`mod@gauntlet`] holds joints with the verdicts that they may have; [`mod@joints`] asks of any joint what
//! must hold for all.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "the rows that it reads are this repository's own: a wrong one stops the tests"
)]

pub mod answers;
pub mod check;
pub mod compare;
pub mod declarations;
pub mod gauntlet;
pub mod joints;
pub mod moved;
pub mod reference;
pub mod repairs36;
pub mod table;
pub mod tolerance;
pub mod ways;

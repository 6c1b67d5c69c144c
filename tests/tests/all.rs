//! One program of tests, so that the calculation is linked once and both cores stay busy to the end.
//!
//! `cargo test -p outside-checks made_worse` runs one file of it.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::print_stdout,
    clippy::indexing_slicing,
    reason = "a test may fail by a panic, and so may what it calls"
)]

mod answers;
mod any_joint;
mod catalog;
mod damaged;
mod drawn;
mod gauntlet;
mod law;
mod links;
mod load_path;
mod loads;
mod made_worse;
mod members;
mod never_better;
mod not_knowing;
mod not_known;
mod not_silent;
mod outside_values;
mod program;
mod properties;
mod repairs;
mod repairs36;
mod runner;
mod second_opinion;
mod sheets;
mod shop;
mod slipped;
mod sources;
mod trade_practice;
mod tube_face;
mod ways;
mod what_counts;
mod words;

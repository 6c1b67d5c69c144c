//! Turns the readable content into one HTML page.
//!
//! `content/*.md` → [`lesson`] → [`page`]; [`register`] holds the sources and terms that the text
//! may point to, `blocks` what a lesson is made of, [`figures`] the still drawings, [`checks`] the
//! calculation beside other values, `gauntlet` the joints judged by hand, [`gate`] what the finished page must never hold.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "runs before the build and stops it where it cannot go on"
)]

mod blocks;
pub mod checks;
pub mod figures;
pub mod gate;
mod gauntlet;
pub mod lesson;
pub mod page;
pub mod problem;
pub mod readability;
pub mod register;
mod slots;

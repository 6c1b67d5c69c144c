//! Turns the readable content into the pages of the site.
//!
//! `content/*.md` → [`lesson`] → [`site`] → [`page`]; [`register`] holds the sources and terms that the text
//! may point to, `blocks` what a lesson is made of, [`figures`] the still drawings, [`checks`] the
//! calculation beside other values, `gauntlet` the joints judged by hand, `doors` the ways from the front page,
//! [`links`] which page holds which place, [`gate`] what a finished page must never hold, [`assemble`] the folder
//! that is published.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "runs before the build and stops it where it cannot go on"
)]

pub mod assemble;
mod blocks;
pub mod checks;
mod doors;
pub mod figures;
pub mod gate;
mod gauntlet;
pub mod lesson;
pub mod links;
pub mod page;
pub mod problem;
pub mod readability;
pub mod register;
pub mod site;
mod slots;

//! Turns the readable content into the pages of the site.
//!
//! `content/*.md` → [`lesson`] → [`site`] → [`page`]; [`register`] holds the sources and terms that the text
//! may point to, `blocks` what a lesson is made of, [`figures`] the still drawings, [`checks`] the
//! calculation beside other values, `gauntlet` the joints judged by hand, `doors` the ways from the front page,
//! [`links`] which page holds which place, `embed` the figures that other pages show, `teach` what a
//! class needs, [`gate`] what a finished page must
//! never hold, `offline` what a device keeps, [`assemble`] the folder that is published.

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
mod embed;
pub mod figures;
pub mod gate;
mod gauntlet;
pub mod lesson;
pub mod links;
mod offline;
pub mod page;
pub mod problem;
pub mod readability;
pub mod register;
pub mod site;
mod slots;
mod teach;

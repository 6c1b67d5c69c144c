//! Turns the readable content into one HTML page.
//!
//! `content/*.md` → [`lesson`] → [`page`]; [`register`] holds the sources and terms that the text
//! may point to, [`figures`] the still drawings, [`checks`] the calculation beside other values, [`gate`]
//! what the finished page must never hold.

pub mod checks;
pub mod figures;
pub mod gate;
pub mod lesson;
pub mod page;
pub mod problem;
pub mod register;

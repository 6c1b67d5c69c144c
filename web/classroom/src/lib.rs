//! What a class gets: sheets of problems that follow from a class word, a quiz from the same word, and the fit of
//! what was read on the bench.
//!
//! Numbers come from calc-core, words from `content/class.toml`, pictures are scenes of `drawing`.

pub mod answers;
pub mod bench;
pub mod draw;
pub mod picture;
pub mod problem;
pub mod sheet;
pub mod words;

pub use draw::{LONGEST_WORD, cleaned};
pub use problem::{Kind, Level, Problem, TOLERANCE, Value, Wrong};
pub use sheet::{Class, MOST_STUDENTS, Question};

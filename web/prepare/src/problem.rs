//! Something wrong in the content, and where.

use std::fmt;

/// A fault in a content file; shown as `file:line: what`, which editors turn into a link.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Problem {
    /// File, relative to the repository.
    pub file: String,
    /// Line, counted from 1.
    pub line: usize,
    /// What is wrong, in words.
    pub what: String,
}

impl Problem {
    /// A fault at a known place.
    pub fn new(file: impl Into<String>, line: usize, what: impl Into<String>) -> Self {
        Self {
            file: file.into(),
            line,
            what: what.into(),
        }
    }
}

impl fmt::Display for Problem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}:{}: {}", self.file, self.line, self.what)
    }
}

/// The line, counted from 1, that a byte offset falls on.
#[must_use]
pub fn line_of(text: &str, offset: usize) -> usize {
    let before = text.as_bytes().get(..offset).unwrap_or(text.as_bytes());
    1 + before.iter().filter(|&&byte| byte == b'\n').count()
}

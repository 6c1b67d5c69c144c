//! Checks of calc-core against values that it did not produce.
//!
//! [`mod@reference`] reads the rows of `reference/*.toml`; [`check::Check`] compares them with calc-core,
//! writes down published value, our value and difference for the page, and fails the test on a misfit.

pub mod check;
pub mod reference;
pub mod tolerance;

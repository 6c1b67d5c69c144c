//! Checks of calc-core against values that it did not produce.

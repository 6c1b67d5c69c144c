//! Tolerances that more than one check uses. A row of the reference files may carry its own.

/// What a decimal value may lose on its way through binary arithmetic and unit factors, relative.
pub const ROUND_OFF: f64 = 1e-9;

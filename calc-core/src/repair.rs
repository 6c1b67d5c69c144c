//! Repairs.

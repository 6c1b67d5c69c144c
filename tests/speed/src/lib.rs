//! Benches of the calculation, apart from its tests, which need not wait for what only benches build.

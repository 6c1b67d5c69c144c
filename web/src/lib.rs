//! The page: Leptos views over calc-core, compiled to WebAssembly.

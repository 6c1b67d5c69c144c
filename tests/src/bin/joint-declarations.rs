//! Writes the TypeScript declaration of a joint from the table of fields:
//! `cargo run -p outside-checks --bin joint-declarations > web/src/api/joint.d.ts`. A test holds the file to it.

use std::io::Write as _;

fn main() -> std::io::Result<()> {
    write!(
        std::io::stdout(),
        "{}",
        outside_checks::declarations::joint()
    )
}

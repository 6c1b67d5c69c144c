//! Writes the TypeScript declaration of a joint from the table of fields:
//! `cargo run -p outside-checks --bin joint-declarations > web/src/api/joint.d.ts`; with `names` behind it that of the
//! names in answers, `names.d.ts`. Tests hold the files to it.

use std::io::Write as _;

fn main() -> std::io::Result<()> {
    let text = match std::env::args().nth(1).as_deref() {
        Some("names") => outside_checks::declarations::names(),
        _ => outside_checks::declarations::joint(),
    };
    write!(std::io::stdout(), "{text}")
}

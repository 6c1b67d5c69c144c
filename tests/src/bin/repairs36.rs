//! Writes the table of the joints in `reference/repairs36.toml` with their repairs.

#![allow(clippy::print_stdout, reason = "a program that prints")]

fn main() {
    print!("{}", outside_checks::repairs36::table());
}

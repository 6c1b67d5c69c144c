//! Writes the table of the ways out of a joint and the checks on them.

#![allow(clippy::print_stdout, reason = "a program that prints")]

fn main() {
    print!("{}", outside_checks::ways::markdown());
}

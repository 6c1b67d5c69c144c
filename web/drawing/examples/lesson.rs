//! Draws a lesson's figure into an HTML file, to look at while it is made.
//!
//! ```text
//! cargo run -p drawing --example lesson -- grip "load=9 surface=painted" metric > grip.html
//! ```

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a tool of the workshop: it stops where it cannot go on"
)]
#![allow(clippy::print_stdout, reason = "an example for the command line")]

use calc_core::quantity::UnitSystem;
use drawing::lesson::{LESSONS, State, lesson, read_words};

fn main() {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let argument = |i: usize| arguments.get(i).map_or("", String::as_str);
    match html(argument(0), argument(1), argument(2)) {
        Ok(html) => println!("{html}"),
        Err(fault) => {
            eprintln!("{fault}");
            std::process::exit(1);
        }
    }
}

fn html(id: &str, state: &str, units: &str) -> Result<String, String> {
    let model = lesson(id).ok_or_else(|| {
        let ids: Vec<_> = LESSONS.iter().map(|l| l.id()).collect();
        format!("no lesson `{id}`; there are: {}", ids.join(", "))
    })?;
    let units = if units == "metric" {
        UnitSystem::Metric
    } else {
        UnitSystem::Us
    };
    let state = State::parse(model.controls(), state, units).map_err(|fault| fault.to_string())?;
    let outcome = model.outcome(&state).ok_or("the joint is refused")?;
    let words = read_words(id).map_err(|e| e.to_string())?;
    let picture = model
        .told(&words, &state, &outcome, &state.look("drawing"))
        .ok_or("no picture")?;
    let plot = picture
        .plot
        .map_or_else(String::new, |plot| plot.scene("plot").to_svg());
    let style = ["10-tokens", "20-sheet", "30-page", "36-lessons"]
        .map(|name| {
            let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../style");
            std::fs::read_to_string(format!("{folder}/{name}.css")).unwrap_or_default()
        })
        .join("\n");
    let values: Vec<_> = model
        .values(&state, &outcome)
        .into_iter()
        .map(|value| format!("{} = {}", value.name, value.written(units)))
        .collect();
    Ok(format!(
        "<!DOCTYPE html><meta charset=utf-8><style>{style}</style><body class=page><figure class=sheet>\
         <div class=pair><div>{}</div><div>{plot}</div></div><p class=said>{}</p></figure><p class=small>{}",
        picture.drawing.to_svg(),
        model.sentence(&words, &state, &outcome),
        values.join(" · ")
    ))
}

//! The table of readings. A line is made once; what is typed goes into the notes when the field is left.

use calc_core::quantity::{Dimension, UnitSystem, read, unit_for};
use classroom::bench::{Column, Row, SetUp, Threads, past_stop};
use classroom::words::{filled, message};
use leptos::prelude::*;

use super::bench::Desk;
use super::{button, heads};
use crate::el::{El, classed, el, value_of};

/// A number alone gets the unit that it was meant in, so that it stays the same amount whatever is chosen later.
pub(super) fn with_unit(text: &str, dimension: Dimension, units: UnitSystem) -> String {
    let text = text.trim();
    let bare = unit_for(dimension, units);
    let alone = !text
        .chars()
        .any(|c| c.is_alphabetic() || "\"'°%".contains(c));
    if alone && read(text, dimension, bare).is_ok() {
        let gap = if bare.symbol() == "°" { "" } else { " " };
        format!("{text}{gap}{}", bare.symbol())
    } else {
        String::from(text)
    }
}

pub(super) fn table(desk: Desk) -> El {
    let lines = move || {
        desk.opened.track();
        (0..desk.lines.get())
            .map(|index| line(desk, index))
            .collect()
    };
    let help = move || {
        let system = desk.notes.read().units;
        let units = Column::ALL
            .iter()
            .map(|column| unit_for(column.dimension(), system).symbol());
        let units = units.collect::<Vec<_>>().join(", ");
        filled("bench.readings-help", &[("units", &units)])
    };
    el("div")
        .child(el("p").live_text(help))
        .child(
            classed("table", "restack readings")
                .child(classed("caption", "visually-hidden").text(message("bench.readings")))
                .child(heads(&[
                    "column.set-up",
                    "column.threads",
                    "column.turn",
                    "column.torque",
                    "column.dent",
                    "column.slip",
                    "column.line",
                ]))
                .child(el("tbody").live_children(lines)),
        )
        .child(
            el("div")
                .attr("role", "status")
                .child(classed("ul", "refused").live_children(move || refusals(desk))),
        )
        .child(
            classed("p", "actions screen-only").child(button("bench.add").on("click", move |_| {
                desk.notes.update(|notes| {
                    // The next line is mostly of the same test.
                    let last = notes.rows.last();
                    let (set_up, threads) =
                        last.map_or((SetUp::Bare, Threads::Dry), |row| (row.set_up, row.threads));
                    notes.rows.push(Row::empty(set_up, threads));
                });
            })),
        )
}

/// What was typed and is no such amount, line by line.
fn refusals(desk: Desk) -> Vec<El> {
    let notes = desk.notes.read();
    let mut all = Vec::new();
    for (index, row) in notes.rows.iter().enumerate() {
        for column in Column::ALL {
            if let Err(why) = row.reading(*column, notes.units) {
                let name = message(&format!("column.{}", column.key()));
                all.push(el("li").text(filled(
                    "bench.row-refused",
                    &[
                        ("n", &(index + 1).to_string()),
                        ("column", name),
                        ("why", &why),
                    ],
                )));
            }
        }
    }
    all.extend(past_stop(&notes).into_iter().map(|index| {
        let number = (index + 1).to_string();
        el("li").text(filled("bench.past-stop", &[("n", &number)]))
    }));
    all
}

fn line(desk: Desk, index: usize) -> El {
    let number = (index + 1).to_string();
    let named = |key: &str| {
        format!(
            "{}, {}",
            message(key),
            filled("bench.row", &[("n", &number)])
        )
    };
    let row = move || desk.notes.read().rows.get(index).cloned();
    let set_up = picked(
        SetUp::ALL.iter().map(|set_up| (set_up.key(), "setup")),
        &named("column.set-up"),
        move || row().map_or("", |row| row.set_up.key()),
        move |key| {
            change(desk, index, |row| {
                row.set_up = SetUp::of(&key).unwrap_or(row.set_up);
            });
        },
    );
    let threads = picked(
        Threads::ALL
            .iter()
            .map(|threads| (threads.key(), "threads")),
        &named("column.threads"),
        move || row().map_or("", |row| row.threads.key()),
        move |key| {
            change(desk, index, |row| {
                row.threads = Threads::of(&key).unwrap_or(row.threads);
            });
        },
    );
    let cells = Column::ALL.iter().map(|column| {
        let key = format!("column.{}", column.key());
        let input = el("input")
            .attr("type", "text")
            .attr("autocomplete", "off")
            .attr("aria-label", &named(&key))
            .live_attr("aria-invalid", move || {
                let notes = desk.notes.read();
                let row = notes.rows.get(index)?;
                let bad = row.reading(*column, notes.units).is_err();
                bad.then(|| String::from("true"))
            })
            .prop("value", move || {
                let row = row();
                row.as_ref().map_or("", |row| row.typed(*column)).into()
            })
            .on("change", move |event| {
                let typed = value_of(&event);
                let units = desk.notes.read_untracked().units;
                let typed = with_unit(&typed, column.dimension(), units);
                change(desk, index, |row| {
                    if let Some(place) = row.cells.get_mut(*column as usize) {
                        *place = typed;
                    }
                });
            });
        el("td").attr("data-name", message(&key)).child(input)
    });
    let cells: Vec<El> = cells.collect();
    let out = filled("bench.remove", &[("n", &number)]);
    let remove = el("button")
        .attr("type", "button")
        .attr("class", "screen-only")
        .attr("aria-label", &out)
        .text("×")
        .on("click", move |_| {
            let mut notes = desk.notes.get_untracked();
            if index < notes.rows.len() {
                notes.rows.remove(index);
                desk.replace(notes);
            }
        });
    el("tr")
        .child(
            el("td")
                .attr("data-name", message("column.set-up"))
                .child(set_up),
        )
        .child(
            el("td")
                .attr("data-name", message("column.threads"))
                .child(threads),
        )
        .children(cells)
        .child(
            el("td")
                .attr("data-name", message("column.line"))
                .child(el("span").text(number.as_str()))
                .child(remove),
        )
}

fn change(desk: Desk, index: usize, of: impl FnOnce(&mut Row)) {
    desk.notes.update(|notes| {
        if let Some(row) = notes.rows.get_mut(index) {
            of(row);
        }
    });
}

fn picked(
    options: impl Iterator<Item = (&'static str, &'static str)>,
    label: &str,
    chosen: impl Fn() -> &'static str + Send + Clone + 'static,
    choose: impl Fn(String) + 'static,
) -> El {
    let options: Vec<El> = options
        .map(|(key, topic)| {
            let chosen = chosen.clone();
            el("option")
                .attr("value", key)
                .prop("selected", move || (chosen() == key).into())
                .text(message(&format!("{topic}.{key}")))
        })
        .collect();
    el("select")
        .attr("aria-label", label)
        .on("change", move |event| choose(value_of(&event)))
        .children(options)
}

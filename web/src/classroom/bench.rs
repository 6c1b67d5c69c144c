//! The page of bench day: the pieces, the readings, what they come to; kept on the device, saved, opened, printed.

use calc_core::catalog::{SleeveForm, System, bolt_grades, materials, sleeves, threads};
use calc_core::quantity::UnitSystem;
use classroom::bench::{
    Choice, Notes, Piece, SLEEVE_METAL, SetUp, csv, read_csv, scenario, stop_torques,
};
use classroom::words::{filled, message};
use leptos::prelude::*;
use leptos::wasm_bindgen::JsCast;
use leptos::web_sys::{self, HtmlInputElement};
use wasm_bindgen_futures::JsFuture;

use super::form::select;
use super::{button, print, readings, results};
use crate::el::{El, classed, el, follow, value_of};
use crate::kept::Kept;
use crate::paper::download;

/// Invented readings, to show what the page does.
const DEMO: &str = include_str!("../../../content/bench-demo.csv");

/// The readings with what was here before they were cleared or replaced.
#[derive(Clone, Copy)]
pub(super) struct Desk {
    pub(super) notes: RwSignal<Notes>,
    before: RwSignal<Option<Notes>>,
    /// Changes when lines come and go, not while one is typed into.
    pub(super) lines: Memo<usize>,
    /// Counts whole new readings, so that fields are made anew.
    pub(super) opened: RwSignal<u32>,
}

impl Desk {
    /// Puts other readings in place of these, which can be put back.
    pub(super) fn replace(self, notes: Notes) {
        let old = self.notes.get_untracked();
        self.before.set(Some(old));
        self.put(notes);
    }

    fn put(self, notes: Notes) {
        self.notes.set(notes);
        self.opened.update(|count| *count += 1);
    }
}

/// Table, plots, and what the readings come to.
#[must_use]
pub fn bench(units: RwSignal<UnitSystem>) -> El {
    let kept = Kept::Bench.read().map(|text| read_csv(&text));
    let start = match kept {
        Some(Ok(notes)) => notes,
        _ => Notes::fresh(units.get_untracked()),
    };
    let notes = RwSignal::new(start);
    let desk = Desk {
        notes,
        before: RwSignal::new(None),
        lines: Memo::new(move |_| notes.read().rows.len()),
        opened: RwSignal::new(0),
    };
    let keeps = RwSignal::new(true);
    let first = StoredValue::new(true);
    follow(move || {
        let text = csv(&notes.read());
        // What is kept and not understood stays until something is typed.
        if !first.get_value() {
            keeps.set(Kept::Bench.write(&text));
        }
        first.set_value(false);
    });
    let refused = RwSignal::new(String::new());
    let not_kept = move || {
        let words = if keeps.get() {
            ""
        } else {
            message("bench.not-kept")
        };
        String::from(words)
    };
    let demo = move || {
        let demo = notes.read().demo;
        String::from(if demo { message("bench.demo-mark") } else { "" })
    };
    el("div")
        .child(classed("p", "invented").live_text(demo))
        .child(pieces(desk))
        .child(
            classed("p", "stop")
                .attr("role", "status")
                .live_text(move || stop(&notes.read())),
        )
        .child(el("h2").text(message("bench.readings")))
        .child(readings::table(desk))
        .child(el("p").attr("role", "status").live_text(not_kept))
        .child(results::results(desk))
        .child(actions(desk, refused))
        .child(opening(desk, refused))
}

/// The torques to stop at, or what of the pieces cannot be.
fn stop(notes: &Notes) -> String {
    match scenario(notes, SetUp::Bare) {
        Ok(joint) => {
            let [dry, waxed] = stop_torques(&joint).map(|torque| {
                calc_core::quantity::write(
                    torque,
                    calc_core::quantity::Dimension::Torque,
                    notes.units,
                )
            });
            let mut said = filled("bench.stop", &[("dry", &dry), ("waxed", &waxed)]);
            if !classroom::bench::judged(&joint) {
                said.push(' ');
                said += message("bench.not-judged");
            }
            said
        }
        Err(why) => why,
    }
}

fn pieces(desk: Desk) -> El {
    let fields = Piece::ALL.iter().map(move |piece| {
        let id = format!("piece-{}", piece.key());
        el("p")
            .child(
                el("label")
                    .attr("for", &id)
                    .text(message(&format!("piece.{}", piece.key()))),
            )
            .child(
                el("input")
                    .attr("id", &id)
                    .attr("type", "text")
                    .attr("autocomplete", "off")
                    .prop("value", move || desk.notes.read().piece(*piece).into())
                    .on("change", move |event| {
                        let typed = value_of(&event);
                        desk.notes.update(|notes| {
                            let typed = readings::with_unit(
                                &typed,
                                calc_core::quantity::Dimension::Length,
                                notes.units,
                            );
                            if let Some(place) = notes.pieces.get_mut(*piece as usize) {
                                *place = typed;
                            }
                        });
                    }),
            )
    });
    let choices = Choice::ALL.iter().map(move |choice| {
        let key = choice.key();
        select(
            &format!("choice-{key}"),
            message(&format!("choice.{key}")),
            options(*choice),
            move || String::from(desk.notes.read().choice(*choice)),
            move |chosen| {
                desk.notes.update(|notes| {
                    if let Some(place) = notes.choices.get_mut(*choice as usize) {
                        *place = chosen;
                    }
                });
            },
        )
    });
    let units = select(
        "bench-units",
        message("form.units"),
        ["us", "metric"]
            .map(|key| (key.into(), message(&format!("form.units-{key}")).into()))
            .into(),
        move || {
            let us = desk.notes.read().units == UnitSystem::Us;
            String::from(if us { "us" } else { "metric" })
        },
        move |key| {
            let units = if key == "us" {
                UnitSystem::Us
            } else {
                UnitSystem::Metric
            };
            desk.notes.update(|notes| notes.units = units);
            crate::units::choose(units);
        },
    );
    el("section")
        .child(el("h2").text(message("bench.pieces")))
        .child(
            classed("div", "fields")
                .child(units)
                .children(fields)
                .children(choices),
        )
}

/// What can be chosen, with its names; of the catalog what a shop has.
fn options(choice: Choice) -> Vec<(String, String)> {
    let pair = |id: &str, label: &str| (String::from(id), String::from(label));
    match choice {
        Choice::Bolt => threads()
            .iter()
            .filter(|thread| !thread.fine() || thread.system() == System::Metric)
            .map(|thread| pair(thread.id(), thread.label()))
            .collect(),
        Choice::Grade => bolt_grades()
            .iter()
            .map(|grade| pair(grade.id(), grade.label()))
            .collect(),
        Choice::Metal => materials()
            .iter()
            .map(|metal| pair(metal.id(), metal.label()))
            .collect(),
        Choice::Sleeve => sleeves()
            .iter()
            .filter(|stock| stock.form() != SleeveForm::BoredBar)
            .filter(|stock| stock.materials().contains(&SLEEVE_METAL))
            .map(|stock| pair(stock.id(), stock.label()))
            .collect(),
        Choice::Planes => ["1", "2"]
            .map(|key| pair(key, message(&format!("planes.{key}"))))
            .into(),
    }
}

fn actions(desk: Desk, refused: RwSignal<String>) -> El {
    let none = move || desk.before.read().is_none();
    classed("p", "actions screen-only")
        .child(button("bench.print").on("click", |_| print()))
        .child(button("bench.save").on("click", move |_| {
            download("bench.csv", "text/csv", &csv(&desk.notes.read_untracked()));
        }))
        .child(button("bench.demo").on("click", move |_| {
            if let Ok(notes) = read_csv(DEMO) {
                desk.replace(notes);
            }
        }))
        .child(button("bench.clear").on("click", move |_| {
            let units = desk.notes.read_untracked().units;
            desk.replace(Notes::fresh(units));
            refused.set(String::new());
        }))
        .child(
            button("bench.undo")
                .flag("hidden", none)
                .on("click", move |_| {
                    if let Some(notes) = desk.before.get_untracked() {
                        desk.before.set(None);
                        desk.put(notes);
                    }
                }),
        )
}

/// Where a file is opened, and why one was not.
fn opening(desk: Desk, refused: RwSignal<String>) -> El {
    let picked = move |event: web_sys::Event| {
        let input = event
            .target()
            .and_then(|target| target.dyn_into::<HtmlInputElement>().ok());
        let Some(file) = input.and_then(|input| input.files()?.get(0)) else {
            return;
        };
        leptos::task::spawn_local(async move {
            let text = JsFuture::from(file.text()).await;
            let text = text.ok().and_then(|text| text.as_string());
            match read_csv(&text.unwrap_or_default()) {
                Ok(notes) => {
                    refused.set(String::new());
                    desk.replace(notes);
                }
                Err(why) => refused.set(filled("bench.file-refused", &[("why", &why.said())])),
            }
        });
    };
    classed("div", "opening-file screen-only")
        .child(
            el("label").text(message("bench.open")).child(
                el("input")
                    .attr("type", "file")
                    .attr("accept", ".csv,text/csv")
                    .on("change", picked),
            ),
        )
        .child(
            el("p")
                .attr("role", "alert")
                .live_text(move || refused.get()),
        )
}

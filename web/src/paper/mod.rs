//! What a joint leaves on paper and as a file: the work sheet, the page for the owner, the record, the picture.
//! One of them is shown at a time, and what is shown is what prints.

mod code;
mod dates;
mod file;
mod handed;
mod image;
mod owner;
mod record;
mod tables;
mod work;

use calc_core::quantity::UnitSystem;
use calc_core::report::Report;
use calc_core::scenario::{Input, Scenario};
use calc_core::{evaluate, link::encode};
use drawing::words::key;
use leptos::ev::hashchange;
use leptos::prelude::*;
use leptos::web_sys;

pub(crate) use file::download;
pub(crate) use handed::address;

use crate::el::{El, classed, el, follow};
use crate::trailer::words::message;
use handed::{Handed, Pair};
use record::Record;

/// The papers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Paper {
    Work,
    Owner,
    Record,
    Picture,
}

impl Paper {
    const ALL: [Self; 4] = [Self::Work, Self::Owner, Self::Record, Self::Picture];

    const fn key(self) -> &'static str {
        match self {
            Self::Work => "work",
            Self::Owner => "owner",
            Self::Record => "record",
            Self::Picture => "picture",
        }
    }

    fn name(self) -> &'static str {
        message(match self {
            Self::Work => key::PAPER_WORK,
            Self::Owner => key::PAPER_OWNER,
            Self::Record => key::PAPER_RECORD,
            Self::Picture => key::PAPER_PICTURE,
        })
    }
}

/// A joint with its answer.
struct Judged {
    scenario: Scenario,
    report: Report,
}

impl Judged {
    fn of(input: &Input) -> Option<Self> {
        let scenario = Scenario::new(input).ok()?;
        let report = evaluate(&scenario);
        Some(Self { scenario, report })
    }
}

/// What every paper is made from.
struct Case {
    pair: Pair,
    before: Judged,
    /// The joint as it is to be used.
    after: Judged,
    units: UnitSystem,
    /// The address that opens the joint as it is to be used.
    link: String,
}

impl Case {
    fn of(pair: &Pair, units: UnitSystem) -> Option<Self> {
        Some(Self {
            before: Judged::of(&pair.before.input())?,
            after: Judged::of(&pair.last().input())?,
            units,
            link: beside("joint.html", &encode(pair.last())),
            pair: pair.clone(),
        })
    }
}

/// The address of another page beside this one.
pub(crate) fn beside(page: &str, hash: &str) -> String {
    let location = web_sys::window().map(|window| window.location());
    let here = location.map_or_else(String::new, |location| {
        let folder = location.pathname().unwrap_or_default();
        let folder = folder.rsplit_once('/').map_or("", |(folder, _)| folder);
        format!("{}{folder}/", location.origin().unwrap_or_default())
    });
    format!("{here}{page}#{hash}")
}

fn handed() -> Handed {
    let hash = web_sys::window().and_then(|window| window.location().hash().ok());
    Handed::read(&hash.unwrap_or_default())
}

/// Hands another joint to this page; Back leads to the one before.
fn hand(pair: &Pair) {
    if let Some(window) = web_sys::window() {
        window.location().set_hash(&pair.hash()).ok();
    }
}

/// All papers of the joint in the address.
#[must_use]
pub fn papers(units: RwSignal<UnitSystem>) -> El {
    let held = RwSignal::new(handed());
    let listening = window_event_listener(hashchange, move |_| held.set(handed()));
    on_cleanup(move || listening.remove());
    let record = Record::kept();
    follow(move || {
        if let Handed::Joint(pair) = &*held.read() {
            units.set(pair.before.units);
            record.of(pair.hash());
        }
    });
    let shown = RwSignal::new(Paper::Work);
    let case = Memo::new_owning(move |_| {
        let case = match &*held.read() {
            Handed::Joint(pair) => Case::of(pair, units.get()),
            _ => None,
        };
        (case, true)
    });
    let body = move || {
        let case = case.read();
        let Some(case) = &*case else {
            return vec![el("p").attr("role", "status").text(message(
                if *held.read() == Handed::Nothing {
                    key::PAPER_NOTHING
                } else {
                    key::PAPER_DAMAGED
                },
            ))];
        };
        match shown.get() {
            Paper::Work => work::sheet(case),
            Paper::Owner => owner::page(case, record),
            Paper::Record => record::page(case, record),
            Paper::Picture => image::page(case),
        }
    };
    let none = move || case.read().is_none();
    el("div")
        .child(file::opening(record))
        .child(choice(shown).flag("hidden", none))
        .child(
            classed("p", "actions screen-only")
                .flag("hidden", none)
                .child(
                    el("button")
                        .attr("type", "button")
                        .text(message(key::PAPER_PRINT))
                        .on("click", |_| {
                            if let Some(window) = web_sys::window() {
                                window.print().ok();
                            }
                        }),
                )
                .child(file::saving(held, record))
                .child(
                    el("a")
                        .live_attr("href", move || match &*held.read() {
                            Handed::Joint(pair) => {
                                Some(format!("joint.html#{}", encode(pair.last())))
                            }
                            _ => None,
                        })
                        .text(message(key::PAPER_BACK)),
                ),
        )
        .child(
            classed("article", "paper")
                .live_attr("data-paper", move || Some(String::from(shown.get().key())))
                .live_children(body),
        )
}

/// Which paper is shown.
fn choice(shown: RwSignal<Paper>) -> El {
    let options = Paper::ALL.map(|paper| {
        el("label")
            .child(
                el("input")
                    .attr("type", "radio")
                    .attr("name", "paper")
                    .attr("value", paper.key())
                    .prop("checked", move || (shown.get() == paper).into())
                    .on("change", move |_| shown.set(paper)),
            )
            .child(el("span").text(paper.name()))
    });
    classed("fieldset", "kinds papers screen-only")
        .child(el("legend").text(message(key::PAPER_WHICH)))
        .children(options)
}

/// The head of a paper: what it is, of which joint, how that stands.
fn head(case: &Case, title: &str) -> [El; 3] {
    use crate::trailer::words::Words;
    let summary = |judged: &Judged| {
        crate::trailer::summary(&judged.scenario.input, &judged.report, case.units)
    };
    let now = if case.pair.after.is_some() {
        message(key::PAPER_REPAIRED).with(&[&summary(&case.after)])
    } else {
        String::new()
    };
    [
        el("h2").text(title),
        el("p").text(summary(&case.before)),
        el("p").text(now),
    ]
}

/// The link in clear and as a code.
fn way_back(case: &Case) -> Vec<El> {
    let named = message(key::PAPER_CODE);
    let mut all: Vec<El> = code::image(&case.link, named).into_iter().collect();
    all.push(
        el("p")
            .text(message(key::PAPER_AGAIN))
            .child(classed("span", "clear-link").text(case.link.as_str())),
    );
    all
}

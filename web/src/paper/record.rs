//! The record of a repair: what was reached, by whom, when; and the looks that follow. Typed or written by hand.

use drawing::words::key;
use std::collections::BTreeMap;

use calc_core::repair::sheet::work_sheet;
use leptos::prelude::*;

use super::dates::Day;
use super::{Case, head};
use crate::el::{El, classed, el, value_of};
use crate::kept::Kept;
use crate::trailer::kept_rates;
use crate::trailer::words::{self, Words, message};

/// Looks that a year has.
const LOOKS: u32 = 12;

/// What is asked once.
const ONCE: [(&str, &str, &str); 4] = [
    ("date", "date", key::PAPER_DATE),
    ("by", "text", key::PAPER_BY),
    ("tool", "text", key::PAPER_TOOL),
    ("note", "text", key::PAPER_NOTE),
];

/// What is asked of each bolt.
const EACH: [(&str, &str); 3] = [
    ("torque", key::PAPER_REACHED),
    ("head", key::PAPER_DENT_HEAD),
    ("nut", key::PAPER_DENT_NUT),
];

/// What was typed into the records of joints, each by the address of its joint: a sheet never shows another one's.
#[derive(Clone, Copy)]
pub(super) struct Record {
    /// By joint and place.
    all: RwSignal<BTreeMap<(String, String), String>>,
    /// The joint whose record is shown.
    joint: RwSignal<String>,
}

impl Record {
    /// As they were left on this device.
    pub(super) fn kept() -> Self {
        let lines = Kept::Record.read().unwrap_or_default();
        let split = |line: &str| {
            let mut parts = line.splitn(3, '\t').map(String::from);
            Some(((parts.next()?, parts.next()?), parts.next()?))
        };
        Self {
            all: RwSignal::new(lines.lines().filter_map(split).collect()),
            joint: RwSignal::new(String::new()),
        }
    }

    /// Shows the record of a joint.
    pub(super) fn of(self, joint: String) {
        self.joint.set(joint);
    }

    pub(super) fn get(self, place: &str) -> String {
        let key = (self.joint.get(), String::from(place));
        self.all.read().get(&key).cloned().unwrap_or_default()
    }

    pub(super) fn put(self, place: &str, text: &str) {
        let text = text.replace(['\n', '\t'], " ");
        let key = (self.joint.get_untracked(), String::from(place));
        self.all.update(|all| {
            all.insert(key, text);
        });
        self.keep();
    }

    /// Forgets that of the joint that is shown.
    pub(super) fn clear(self) {
        let joint = self.joint.get_untracked();
        self.all.update(|all| all.retain(|(of, _), _| *of != joint));
        self.keep();
    }

    fn keep(self) {
        let all = self.all.read_untracked();
        let lines = all
            .iter()
            .map(|((joint, place), text)| format!("{joint}\t{place}\t{text}\n"));
        Kept::Record.write(&lines.collect::<String>());
    }

    /// All that was typed of the joint that is shown, in the order of places.
    pub(super) fn entries(self) -> Vec<(String, String)> {
        let joint = self.joint.get_untracked();
        let all = self.all.read_untracked();
        let of_it = all
            .iter()
            .filter(|((of, _), text)| *of == joint && !text.is_empty());
        of_it
            .map(|((_, place), text)| (place.clone(), text.clone()))
            .collect()
    }

    /// When and by whom, in a line; empty while neither is known.
    pub(super) fn said(self) -> String {
        let [date, by] = ["date", "by"].map(|place| self.get(place));
        match (date.is_empty(), by.is_empty()) {
            (true, true) => String::new(),
            (true, false) => message(key::PAPER_DONE_BY).with(&[&by]),
            (false, true) => message(key::PAPER_DONE_ON).with(&[&date]),
            (false, false) => message(key::PAPER_DONE_ON_BY).with(&[&date, &by]),
        }
    }

    fn field(self, place: String, kind: &'static str, name: &str) -> El {
        let at = place.clone();
        el("input")
            .attr("type", kind)
            .attr("id", &format!("record-{place}"))
            .attr("aria-label", name)
            .attr("autocomplete", "off")
            .prop("value", move || self.get(&at).into())
            .on("change", move |event| {
                self.put(&place, &value_of(&event));
            })
    }
}

pub(super) fn page(case: &Case, record: Record) -> Vec<El> {
    let plan = work_sheet(&case.before.scenario, &case.after.scenario, &kept_rates()).tightening;
    let mut all: Vec<El> = head(case, message(key::PAPER_RECORD)).into_iter().collect();
    all.push(
        el("p").text(message(key::PAPER_ASKED).with(&[&words::amount(
            plan.torque.si,
            plan.torque.dimension,
            case.units,
        )])),
    );
    let once = ONCE.map(|(place, kind, key)| {
        classed("p", "recorded")
            .child(el("span").text(message(key)))
            .child(record.field(String::from(place), kind, message(key)))
    });
    all.push(el("div").children(once));
    let heads = std::iter::once(message(key::PAPER_BOLT)).chain(EACH.map(|(_, key)| message(key)));
    let rows = plan.bolts.iter().map(|bolt| {
        let cells = EACH.map(|(what, key)| {
            let name = format!(
                "{}, {} {}",
                message(key),
                message(key::PAPER_BOLT),
                bolt.number
            );
            el("td").attr("data-name", message(key)).child(record.field(
                format!("{what}-{}", bolt.number),
                "text",
                &name,
            ))
        });
        el("tr")
            .child(el("th").attr("scope", "row").text(bolt.number.to_string()))
            .children(cells)
    });
    all.push(table(message(key::PAPER_BOLTS), heads, rows));
    let looks = (1..=LOOKS).map(|months| {
        // Follows the date by itself: a field that is typed into is not made anew.
        let due = move || {
            let day = Day::read(&record.get("date"));
            let due = day.map(|day| day.months_later(months).written());
            due.unwrap_or_else(|| message(key::PAPER_MONTH).with(&[&months.to_string()]))
        };
        let blank = [key::PAPER_TIGHT, key::PAPER_DENT, key::PAPER_BY]
            .map(|key| el("td").attr("data-name", message(key)));
        el("tr")
            .child(el("th").attr("scope", "row").live_text(due))
            .children(blank)
    });
    let heads = [
        key::PAPER_DUE,
        key::PAPER_TIGHT,
        key::PAPER_DENT,
        key::PAPER_BY,
    ]
    .map(message);
    // What is done at the first look depends on the bolts: the work sheet says the same.
    let first = plan.look_again.first();
    all.extend(first.map(|said| el("p").text(words::said(said, case.units))));
    all.push(el("p").text(message(key::PAPER_LOOKS)));
    all.push(table(message(key::PAPER_LOOKS_TITLE), heads, looks));
    all.push(
        classed("p", "screen-only").child(
            el("button")
                .attr("type", "button")
                .text(message(key::PAPER_CLEAR))
                .on("click", move |_| record.clear()),
        ),
    );
    all
}

fn table(
    caption: &str,
    heads: impl IntoIterator<Item = &'static str>,
    rows: impl IntoIterator<Item = El>,
) -> El {
    let heads = heads
        .into_iter()
        .map(|head| el("th").attr("scope", "col").text(head));
    classed("table", "restack")
        .child(el("caption").text(caption))
        .child(el("thead").child(el("tr").children(heads)))
        .child(el("tbody").children(rows))
}

//! Repairs side by side.

use calc_core::quantity::{Dimension, UnitSystem, parse_number};
use calc_core::repair::{Rates, Repair, Repairs};
use calc_core::report::Verdict;
use calc_core::scenario::{Field, Input, Scenario, SupportKind};
use leptos::prelude::*;
use leptos::wasm_bindgen::JsValue;

use super::desk::Desk;
use super::state::value_of;
use super::verdict::verdict_word;
use super::words::{self, Words};
use super::worksheet;
use crate::el::{El, classed, el, value_of as typed_in};
use crate::kept::Kept;

/// Name, shown unit and place of a rate.
type Rate = (&'static str, fn(&mut Rates) -> &mut f64);

const RATES: [Rate; 15] = [
    ("an hour of work", |r| &mut r.hour),
    ("a kilogram of steel", |r| &mut r.steel_kg),
    ("a kilogram of aluminum", |r| &mut r.aluminium_kg),
    ("a kilogram of stainless steel", |r| &mut r.stainless_kg),
    ("a bolt with nut and washers", |r| &mut r.bolt),
    ("a tapered washer", |r| &mut r.tapered_washer),
    ("minutes to lay out a bolt", |r| &mut r.minutes_layout),
    ("minutes for a hole", |r| &mut r.minutes_hole),
    ("minutes for a cut", |r| &mut r.minutes_cut),
    ("minutes to measure a place and file a piece to it", |r| {
        &mut r.minutes_file
    }),
    ("minutes to set up and machine a face", |r| {
        &mut r.minutes_machine
    }),
    ("minutes to hollow a saddle", |r| &mut r.minutes_saddle),
    ("minutes for a weld around a sleeve end", |r| {
        &mut r.minutes_weld
    }),
    ("minutes to loosen and tighten a bolt", |r| {
        &mut r.minutes_bolt
    }),
    ("minutes to clean one contact face", |r| {
        &mut r.minutes_surface
    }),
];

/// The table, the rates and the way back.
pub(super) fn repairs_table(desk: Desk) -> El {
    let body = move || {
        let units = desk.units();
        let solid = desk
            .shown
            .read()
            .answer
            .as_ref()
            .is_some_and(|(s, _)| s.support == SupportKind::Solid);
        match &*desk.repairs.read() {
            None => vec![classed("p", "soft").text("Repairs follow when all entries can be read.")],
            Some(_) if solid => vec![el("p").text(words::message("repair.solid"))],
            Some(found) => table(desk, found, units),
        }
    };
    classed("section", "repairs")
        .attr("aria-labelledby", "repairs-title")
        .flag("data-stale", move || desk.repairs_late.get())
        .child(
            el("h2")
                .attr("id", "repairs-title")
                .text("Repairs side by side"),
        )
        .child(
            classed("p", "actions screen-only")
                .flag("hidden", move || desk.before.read().is_none())
                .child(
                    el("button")
                        .attr("type", "button")
                        .text("Undo: back to the joint as it was")
                        .on("click", move |_| desk.undo()),
                ),
        )
        .child(el("div").live_children(move || added_part(desk)))
        .child(el("div").live_children(body))
        .child(rates(desk))
}

/// The work sheet of the repair that was put into the form, as long as it stands there.
fn added_part(desk: Desk) -> Vec<El> {
    let form = desk.form.read();
    let before = form.repaired().and_then(|input| Scenario::new(input).ok());
    before.map_or_else(Vec::new, |before| {
        let sheet = worksheet::disclosed(desk, before, form.input().clone(), true);
        vec![el("h3").text("The repair that you put in"), sheet]
    })
}

fn table(desk: Desk, found: &Repairs, units: UnitSystem) -> Vec<El> {
    let joint = desk.shown.read().answer.as_ref().map(|(s, _)| s.clone());
    let counts = [found.tried, found.held, found.undecided].map(|n| n.to_string());
    let [tried, held, undecided] = &counts;
    let waiting = (found.undecided > 0)
        .then(|| el("p").text(words::message("repair.undecided").with(&[undecided])));
    if found.list.is_empty() {
        let none = el("p").child(el("b").text(words::message("repair.none").with(&[tried])));
        let help = el("p").text(words::message("repair.none-help"));
        return [Some(none), waiting, nearest(found, units), Some(help)]
            .into_iter()
            .flatten()
            .collect();
    }
    let any_holds = found.list.iter().any(|r| r.verdict == Verdict::Holds);
    let intro = if any_holds {
        "repair.found"
    } else {
        "repair.closest"
    };
    let mut all = vec![el("p").text(words::message(intro).with(&[tried, held]))];
    all.extend(waiting);
    all.extend(nearest(found, units));
    if !any_holds {
        all.push(el("p").text(words::message("repair.none-help")));
    }
    let named = [found.cheapest, found.without_welding, found.strongest];
    let mut order: Vec<usize> = Vec::new();
    for index in named.into_iter().flatten().chain(0..found.list.len()) {
        if !order.contains(&index) {
            order.push(index);
        }
    }
    let rows = order.into_iter().flat_map(|index| {
        let Some((repair, joint)) = found.list.get(index).zip(joint.as_ref()) else {
            return Vec::new();
        };
        let names: Vec<&'static str> = [
            (found.cheapest, "cheapest"),
            (found.without_welding, "cheapest without a weld"),
            (found.strongest, "most to spare"),
        ]
        .into_iter()
        .filter_map(|(which, name)| (which == Some(index)).then_some(name))
        .collect();
        // The joint as it is comes through the same sieve; it is no repair.
        if repair.changed.is_empty() {
            return Vec::new();
        }
        row(desk, (joint, repair), &names.join(", "), units).into()
    });
    let head = |text: &str| el("th").attr("scope", "col").text(text);
    let heads = [
        "change",
        "then the joint",
        "torque",
        "work, all bolts",
        "adds",
        "cost",
    ]
    .map(head);
    if !found.money.currency.is_empty() {
        let money = [&*found.money.currency, &*found.money.prices_of];
        all.push(classed("p", "soft").text(words::message("repair.money").with(&money)));
    }
    all.push(
        classed("table", "restack repair-table")
            .child(
                el("thead").child(
                    el("tr")
                        .children(heads)
                        .child(head("").child(classed("span", "visually-hidden").text("try it"))),
                ),
            )
            .child(el("tbody").children(rows)),
    );
    all
}

/// Where none holds: what comes nearest, and what still stands against it.
fn nearest(found: &Repairs, units: UnitSystem) -> Option<El> {
    found.nearest.as_ref().map(|near| {
        let used = words::share(near.utilisation).unwrap_or_default();
        el("p").text(
            words::message("repair.nearest").with(&[
                words::label(near.kind),
                &changes(&near.input, &near.changed, units)
                    .map(|(name, value)| format!("{name}: {value}"))
                    .collect::<Vec<_>>()
                    .join("; "),
                words::label(near.check),
                &used,
                &words::said(&near.reason, units),
            ]),
        )
    })
}

/// What differs from the joint as it is: name and value of each field that counts.
fn changes(
    input: &Input,
    changed: &[Field],
    units: UnitSystem,
) -> impl Iterator<Item = (&'static str, String)> {
    changed
        .iter()
        .filter(move |field| field.applies(input))
        .map(move |&field| (words::label_in(input, field), value_of(input, field, units)))
}

fn row(
    desk: Desk,
    (joint, repair): (&Scenario, &Repair),
    names: &str,
    units: UnitSystem,
) -> [El; 2] {
    let changes = changes(&repair.input, &repair.changed, units).map(|(name, value)| {
        el("li")
            .text(format!("{name}: "))
            .child(el("b").text(value))
    });
    let needs = worksheet::needs(repair.needs).map(|text| el("li").text(text));
    let work = &repair.work;
    let count = |n: u32, one: &str, many: &str| {
        (n > 0).then(|| format!("{n}\u{a0}{}", if n == 1 { one } else { many }))
    };
    let jobs: Vec<String> = [
        count(work.holes, "hole", "holes"),
        count(work.cuts, "cut", "cuts"),
        count(work.welds, "weld", "welds"),
        count(work.surfaces, "face to clean", "faces to clean"),
        Some(format!("{:.0}\u{a0}min", work.minutes)),
    ]
    .into_iter()
    .flatten()
    .collect();
    let name = words::label(repair.kind);
    let input = repair.input.clone();
    let sheet = el("tr").child(
        classed("td", "whole")
            .attr("colspan", "7")
            // Between two joints the row still belongs to the one before.
            .flag("hidden", move || desk.repairs_late.get())
            .child(worksheet::disclosed(
                desk,
                joint.clone(),
                repair.input.clone(),
                false,
            )),
    );
    let cell = |class: &str, name: &str, text: String| {
        classed("td", class).attr("data-name", name).text(text)
    };
    let mut title = classed("th", "whole").attr("scope", "row");
    if !names.is_empty() {
        title = title.child(classed("span", "named").text(names));
    }
    let button = el("button")
        .attr("type", "button")
        .attr("aria-label", &format!("Try this repair: {name}"))
        .text("try this repair")
        // Between two joints the row still belongs to the one before.
        .flag("disabled", move || desk.repairs_late.get())
        .on("click", move |_| desk.put_repair(input.clone()));
    let figures = el("tr")
        .child(
            title
                .text(name)
                .child(classed("ul", "changes").children(changes.chain(needs))),
        )
        .child(
            cell("", "then the joint", String::new())
                .child(verdict_word(repair.verdict))
                .text(" ")
                .text(words::share(repair.utilisation).unwrap_or_default()),
        )
        .child(cell(
            "n",
            "torque",
            words::amount(repair.torque_nm, Dimension::Torque, units),
        ))
        .child(cell("", "work", jobs.join(", ")))
        .child(cell(
            "n",
            "adds",
            words::amount(work.mass_kg, Dimension::Mass, units),
        ))
        .child(cell("n", "cost", format!("{:.0}", work.cost)))
        .child(classed("td", "whole screen-only").child(button));
    [figures, sheet]
}

fn rates(desk: Desk) -> El {
    classed("details", "rates screen-only")
        .child(el("summary").text("Your own rates"))
        .child(
            classed("p", "soft")
                .text("Costs are in your own money. The figures to start with are assumptions."),
        )
        .child(el("div").live_children(move || {
            desk.again.track();
            desk.rates.set(kept_rates());
            RATES
                .into_iter()
                .enumerate()
                .map(|(index, rate)| rate_field(desk, index, rate))
                .collect()
        }))
}

/// The reader's rates as they were left: a number each, in the order of the fields.
fn kept_rates() -> Rates {
    let mut rates = Rates::default();
    let kept = Kept::Rates.read().unwrap_or_default();
    for ((_, place), number) in RATES.into_iter().zip(kept.split(' ')) {
        let number = parse_number(number).filter(|number| (0.0..=1e6).contains(number));
        if let Some(number) = number {
            *place(&mut rates) = number;
        }
    }
    rates
}

fn keep_rates(mut rates: Rates) {
    let numbers = RATES.map(|(_, place)| place(&mut rates).to_string());
    Kept::Rates.write(&numbers.join(" "));
}

fn rate_field(desk: Desk, index: usize, (name, place): Rate) -> El {
    let id = format!("rate-{index}");
    let error_id = format!("{id}-error");
    let start = place(&mut desk.rates.get_untracked()).to_string();
    let wrong = RwSignal::new(false);
    let input = el("input")
        .attr("id", &id)
        .attr("type", "text")
        .attr("inputmode", "decimal")
        .attr("autocomplete", "off")
        .attr("aria-describedby", &error_id)
        .live_attr("aria-invalid", move || Some(wrong.get().to_string()))
        .prop("value", move || JsValue::from_str(&start))
        .on("input", move |event| {
            let typed = parse_number(&typed_in(&event).trim().replace(',', "."));
            let value = typed.filter(|value| (0.0..=1e6).contains(value));
            wrong.set(value.is_none());
            if let Some(value) = value {
                desk.rates.update(|rates| {
                    *place(rates) = value;
                    // Whose money it is now, only the reader knows.
                    if !name.starts_with("minutes") {
                        rates.currency.clear();
                    }
                });
                keep_rates(desk.rates.get_untracked());
            }
        });
    classed("div", "field")
        .child(el("label").attr("for", &id).text(name))
        .child(input)
        .child(
            classed("p", "error")
                .attr("id", &error_id)
                .flag("hidden", move || !wrong.get())
                .text(format!("{name}: write a number from 0 to 1,000,000. The last one that could be read still counts.")),
        )
}

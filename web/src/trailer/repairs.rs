//! Repairs side by side.

use calc_core::link::Sheet;
use calc_core::quantity::{Dimension, UnitSystem};
use calc_core::repair::{Money, Repair, Repairs, Work};
use calc_core::report::{CLOSE_FROM, Label, Verdict};
use calc_core::scenario::{FOUND, Field, Input, JointKind, Scenario, Seen, SupportKind};
use drawing::words::key;
use leptos::prelude::*;
use leptos::wasm_bindgen::JsValue;

use super::compare::compared;
use super::desk::Desk;
use super::rates::rates;
use super::state::value_of;
use super::steps;
use super::verdict::verdict_word;
use super::words::{self, Words, message};
use crate::el::{El, classed, el, follow};
use crate::kept::Kept;

/// Repairs shown before somebody asks for all.
const FIRST: usize = 3;

/// What the reader does with the list.
#[derive(Clone, Copy)]
struct Picks {
    /// Keys of needs and sleeves that are not to be had.
    lacks: RwSignal<Vec<String>>,
    /// Places in the list of what is compared, at most two.
    compared: RwSignal<Vec<String>>,
    all: RwSignal<bool>,
}

/// The list, what is there to do it with, two side by side, and the rates.
pub(super) fn repairs_table(desk: Desk) -> El {
    let picks = Picks {
        lacks: RwSignal::new(kept_lacks()),
        compared: RwSignal::new(Vec::new()),
        all: RwSignal::new(false),
    };
    // Another joint has other repairs.
    follow(move || {
        desk.repairs.track();
        picks.compared.set(Vec::new());
    });
    let solid = move || {
        let shown = desk.shown.read();
        let answer = shown.answer.as_ref();
        answer.is_some_and(|(s, _)| s.support == SupportKind::Solid)
    };
    let body = move || {
        let units = desk.units();
        match &*desk.repairs.read() {
            None => vec![classed("p", "soft").text(message(key::REPAIR_WAIT))],
            Some(_) if solid() => vec![el("p").text(message(key::REPAIR_SOLID))],
            Some(_) if no_load(desk) => vec![el("p").text(message("slip-no-load"))],
            Some(found) => table(desk, picks, found, units),
        }
    };
    let two = move || {
        let units = desk.units();
        desk.repairs.read().as_ref().map_or_else(Vec::new, |found| {
            compared(found, &picks.compared.read(), units)
        })
    };
    classed("div", "repairs")
        .flag("data-stale", move || desk.repairs_late.get())
        .child(el("div").live_children(move || first(desk)))
        .child(el("div").attr("aria-live", "polite").live_children(two))
        .child(el("div").live_children(body))
        // Below the list, so that it does not push away what was just pressed.
        .child(el("div").live_children(move || added_part(desk)))
        .child(rates(desk).flag("hidden", move || desk.repairs.read().is_none()))
}

/// Whether the load is the reader's own and none is given yet.
pub(super) fn no_load(desk: Desk) -> bool {
    let form = desk.form.read();
    let input = form.input();
    let given = [
        Field::FreeAlong,
        Field::FreeUp,
        Field::FreeSide,
        Field::FreeAboutAlong,
        Field::FreeAboutSide,
        Field::FreeAboutUp,
    ];
    input.joint == JointKind::Free.name()
        && given.iter().all(|field| input.number(*field) == Some(0.0))
}

/// What has to be mended before any repair of the list is of use.
fn first(desk: Desk) -> Vec<El> {
    let form = desk.form.read();
    let cracked = form.choice(Field::FoundCrack) == Seen::Yes.name();
    let oval = form.choice(Field::FoundOval) == Seen::Yes.name();
    let told = [
        cracked.then_some(key::REPAIR_CRACK_FIRST),
        (oval && form.input().hole_mm.is_none()).then_some(key::REPAIR_MEASURE_OVAL),
    ];
    let line = |key| classed("p", "remark").text(message(key));
    told.into_iter().flatten().map(line).collect()
}

/// The way to the papers of the repair that was put into the form, as long as it stands there.
fn added_part(desk: Desk) -> Vec<El> {
    let form = desk.form.read();
    // Nothing is built from a joint that cannot be computed.
    let ready = form.repaired().filter(|_| form.checked().is_ok());
    ready.map_or_else(Vec::new, |before| {
        let door = papers(before, form.input(), form.units());
        vec![
            el("h3").text(message(key::REPAIR_PUT_IN)),
            classed("p", "actions").child(door),
        ]
    })
}

/// The way to the work sheet of a repair, and to the page for the owner, the record and the file.
fn papers(before: &Input, after: &Input, units: UnitSystem) -> El {
    let [before, after] = [before, after].map(|input| Sheet::from_input(input, units).0);
    let hash = crate::paper::address(&before, Some(&after));
    classed("a", "button sheet-of")
        .attr("href", &format!("paper.html#{hash}"))
        .text(message(key::PAPER_WORK))
}

/// The keys of what a repair asks for: its needs, and the sleeve that is cut for it.
fn keys(repair: &Repair) -> Vec<(String, String)> {
    let needs = repair
        .needs
        .iter()
        .map(|need| (String::from(need.key()), words::label(need).into()));
    let input = &repair.input;
    let sleeve = (repair.changed.contains(&Field::Sleeve)
        || repair.changed.contains(&Field::Support))
        && Field::Sleeve.applies(input);
    let stock = sleeve.then(|| {
        (
            input.sleeve.clone(),
            words::choice(Field::Sleeve, &input.sleeve),
        )
    });
    needs.chain(stock).collect()
}

/// What of tools, access and stock the repairs ask for, each to be taken away.
fn chips(picks: Picks, found: &Repairs) -> Option<El> {
    let mut all: Vec<(String, String)> = Vec::new();
    for pair in found.list.iter().flat_map(keys) {
        if !all.contains(&pair) {
            all.push(pair);
        }
    }
    let chip = |(key, name): (String, String)| {
        let (asked, told) = (key.clone(), key);
        let input = el("input")
            .attr("type", "checkbox")
            .prop("checked", move || {
                JsValue::from_bool(!picks.lacks.read().contains(&asked))
            })
            .on("change", move |_| {
                picks.lacks.update(|lacks| {
                    if lacks.contains(&told) {
                        lacks.retain(|key| *key != told);
                    } else {
                        lacks.push(told.clone());
                    }
                });
                keep_lacks(&picks.lacks.read_untracked());
            });
        el("label").child(input).text(name)
    };
    (!all.is_empty()).then(|| {
        classed("details", "fold shop screen-only")
            .attr("id", "shop")
            .child(el("summary").text(message(key::REPAIR_SHOP)))
            .child(
                classed("fieldset", "chips")
                    .child(classed("legend", "visually-hidden").text(message(key::REPAIR_SHOP)))
                    .child(classed("div", "kinds").children(all.into_iter().map(chip))),
            )
    })
}

fn kept_lacks() -> Vec<String> {
    let kept = Kept::Shop.read().unwrap_or_default();
    kept.split_whitespace().map(String::from).collect()
}

fn keep_lacks(lacks: &[String]) {
    if lacks.is_empty() {
        Kept::Shop.forget();
    } else {
        Kept::Shop.write(&lacks.join(" "));
    }
}

fn table(desk: Desk, picks: Picks, found: &Repairs, units: UnitSystem) -> Vec<El> {
    let joint = desk.shown.read().answer.as_ref().map(|(s, _)| s.clone());
    let counts = [found.tried, found.held, found.undecided].map(|n| n.to_string());
    let [tried, held, undecided] = &counts;
    let waiting = (found.undecided > 0)
        .then(|| el("p").text(message(key::REPAIR_UNDECIDED).with(&[undecided])));
    // A crack, or a hole that was not measured: what stands above says so.
    if found.tried == 0 {
        return Vec::new();
    }
    // One value is missing and nothing else stands against the nearest: that is no "none".
    if let Some(near) = found.nearest.as_ref().filter(|near| near.wants.is_some())
        && found.list.is_empty()
    {
        return vec![
            el("p").child(el("b").text(message(key::REPAIR_WANTS).with(&[tried]))),
            el("p").text(words::said(&near.reason, units)),
        ];
    }
    if found.list.is_empty() {
        let none = el("p").child(el("b").text(message(key::REPAIR_NONE).with(&[tried])));
        let help = el("p").text(message(key::REPAIR_NONE_HELP));
        return [Some(none), waiting, nearest(found, units), Some(help)]
            .into_iter()
            .flatten()
            .collect();
    }
    let any_holds = found.list.iter().any(|r| r.verdict == Verdict::Holds);
    let intro = if any_holds {
        key::REPAIR_FOUND
    } else {
        key::REPAIR_CLOSEST
    };
    let mut all = Vec::new();
    all.extend(nearest(found, units));
    if !any_holds {
        all.push(el("p").child(el("b").text(message(intro).with(&[tried, held]))));
    }
    all.extend(chips(picks, found));
    let named = [found.cheapest, found.without_welding, found.strongest];
    let mut order: Vec<usize> = Vec::new();
    for index in named.into_iter().flatten().chain(0..found.list.len()) {
        if !order.contains(&index) {
            order.push(index);
        }
    }
    // The joint as it is comes through the same sieve; it is no repair.
    let is_one = |index: &usize| {
        found
            .list
            .get(*index)
            .is_some_and(|r| !r.changed.is_empty())
    };
    let can = |index: &usize| {
        let lacks = picks.lacks.read();
        let asked = found.list.get(*index).map(keys).unwrap_or_default();
        !asked.iter().any(|(key, _)| lacks.contains(key))
    };
    order.retain(is_one);
    let every = order.len();
    order.retain(can);
    let fit = order.len();
    if fit < every {
        let counts = [fit.to_string(), every.to_string()];
        let [fit, every] = &counts;
        all.push(
            el("p")
                .attr("role", "status")
                .text(message(key::REPAIR_FILTERED).with(&[fit, every])),
        );
    }
    if !picks.all.get() {
        order.truncate(FIRST);
    }
    let rows = order.into_iter().flat_map(|index| {
        let Some((repair, joint)) = found.list.get(index).zip(joint.as_ref()) else {
            return Vec::new();
        };
        let names: Vec<&'static str> = [
            (found.cheapest, key::REPAIR_CHEAPEST),
            (found.without_welding, key::REPAIR_NO_WELD),
            (found.strongest, key::REPAIR_RESERVE),
        ]
        .into_iter()
        .filter(|&(which, _)| which == Some(index))
        .map(|(_, name)| message(name))
        .collect();
        vec![row(
            desk,
            picks,
            index,
            (joint, repair),
            (&names.join(", "), cost(repair, &found.money)),
            units,
        )]
    });
    let head = |text: &str| el("th").attr("scope", "col").text(text);
    let heads = [
        message(key::COMPARE_CHANGE),
        message(key::COMPARE_THEN),
        message(key::COMPARE_TORQUE),
        message(key::PAGE_WORK_ALL_BOLTS),
        message(key::COMPARE_ADDS),
        message(key::COMPARE_COST),
    ]
    .map(head);
    all.push(
        classed("table", "restack repair-table")
            .child(el("thead").child(el("tr").children(heads).child(
                head("").child(classed("span", "visually-hidden").text(message(key::PAGE_TRY_IT))),
            )))
            .child(el("tbody").children(rows)),
    );
    if fit > FIRST {
        let text = move || {
            let key = if picks.all.get() {
                key::REPAIR_FEWER
            } else {
                key::REPAIR_ALL
            };
            message(key).with(&[&fit.to_string()])
        };
        all.push(
            classed("p", "actions screen-only").child(
                el("button")
                    .attr("type", "button")
                    .live_text(text)
                    .on("click", move |_| picks.all.update(|all| *all = !*all)),
            ),
        );
    }
    let mut small = vec![el("p").text(message(intro).with(&[tried, held]))];
    if !any_holds {
        small.push(el("p").text(message(key::REPAIR_NONE_HELP)));
    }
    small.extend(waiting);
    if !found.money.currency.is_empty() {
        let money = [&*found.money.currency, &*found.money.prices_of];
        small.push(el("p").text(message(key::REPAIR_MONEY).with(&money)));
    }
    small.extend(
        [key::REPAIR_COSTS_HAVE, key::REPAIR_COSTS_LACK].map(|key| el("p").text(message(key))),
    );
    all.push(
        classed("details", "fold")
            .child(el("summary").text(message(key::REPAIR_TRIED)))
            .children(small),
    );
    all
}

/// Where none holds: what comes nearest, and what still stands against it.
fn nearest(found: &Repairs, units: UnitSystem) -> Option<El> {
    found.nearest.as_ref().map(|near| {
        let used = words::share(near.utilisation).unwrap_or_default();
        el("p").text(message(key::REPAIR_NEAREST).with(&[
            words::label(near.kind),
            &changes(&near.input, &near.changed, units).join("; "),
            words::label(near.check),
            &used,
            &words::said(&near.reason, units),
        ]))
    })
}

/// What a repair changes, new bolts throughout with it.
pub(super) fn all_changes(repair: &Repair, units: UnitSystem) -> Vec<String> {
    let renewed = repair
        .steps
        .iter()
        .any(|step| step.what == Label::WorkNewBolts);
    let new_bolts = renewed.then(|| String::from(message(key::REPAIR_ALL_NEW)));
    let changed = changes(&repair.input, &repair.changed, units);
    changed.into_iter().chain(new_bolts).collect()
}

/// What a repair changes; where the load then acts is no work and stands apart.
pub(super) fn changes(input: &Input, changed: &[Field], units: UnitSystem) -> Vec<String> {
    told(input, changed, units, |field| !is_effect(field))
}

const fn is_effect(field: Field) -> bool {
    matches!(
        field,
        Field::BallAhead | Field::BallBelow | Field::HangerOffset | Field::HangerHeight
    )
}

fn told(
    input: &Input,
    changed: &[Field],
    units: UnitSystem,
    keep: impl Fn(Field) -> bool,
) -> Vec<String> {
    changed
        .iter()
        .copied()
        .filter(|field| keep(*field) && field.applies(input) && !FOUND.contains(field))
        .map(|field| {
            let name = words::label_in(input, field);
            message(key::PAGE_FIELD_AND_VALUE).with(&[name, &value_of(input, field, units)])
        })
        .collect()
}

/// What is used of it. Tightening is chosen, and says nothing of how much is in hand where the repair holds.
pub(super) fn used(repair: &Repair) -> String {
    let used = match repair.verdict {
        Verdict::Holds => Some(repair.most_used),
        _ => repair.utilisation,
    };
    words::share(used).unwrap_or_default()
}

/// What tells a repair from others of its kind, in few words.
fn gist(repair: &Repair, units: UnitSystem) -> String {
    let telling = [
        Field::Sleeve,
        Field::InsertMaterial,
        Field::SpreaderThickness,
        Field::WasherOuter,
        Field::Bolt,
    ];
    let told: Vec<String> = telling
        .into_iter()
        .filter(|field| repair.changed.contains(field) && field.applies(&repair.input))
        .map(|field| value_of(&repair.input, field, units))
        .collect();
    let more = repair.input.bolts_along * repair.input.bolt_rows;
    let bolts = (repair.changed.contains(&Field::BoltsAlong)
        || repair.changed.contains(&Field::BoltRows))
    .then(|| message(key::REPAIR_BOLTS).with(&[&more.to_string()]));
    let told: Vec<String> = told.into_iter().chain(bolts).collect();
    match told.is_empty() {
        true => message(key::REPAIR_CHANGES).into(),
        false => told.join(" · "),
    }
}

/// What is to be done, counted.
pub(super) fn jobs(work: &Work) -> String {
    let count = |n: u32, one: &'static str, many: &'static str| {
        let which = if n == 1 { one } else { many };
        (n > 0).then(|| message(which).with(&[&n.to_string()]))
    };
    let minutes = format!("{:.0}", work.minutes);
    let jobs: Vec<String> = [
        count(work.holes, key::JOB_HOLE, key::JOB_HOLES),
        count(work.cuts, key::JOB_CUT, key::JOB_CUTS),
        count(work.welds, key::JOB_WELD, key::JOB_WELDS),
        count(work.surfaces, key::JOB_FACE, key::JOB_FACES),
        Some(message(key::JOB_MINUTES).with(&[&minutes])),
    ]
    .into_iter()
    .flatten()
    .collect();
    jobs.join(", ")
}

/// The cost with its currency; without one it is the reader's own money.
pub(super) fn cost(repair: &Repair, money: &Money) -> String {
    String::from(format!("{:.0}\u{a0}{}", repair.work.cost, money.currency).trim_end())
}

fn row(
    desk: Desk,
    picks: Picks,
    index: usize,
    (joint, repair): (&Scenario, &Repair),
    (names, cost): (&str, String),
    units: UnitSystem,
) -> El {
    let effects = told(&repair.input, &repair.changed, units, is_effect).join("; ");
    let effects = (!effects.is_empty()).then(|| message(key::REPAIR_EFFECT).with(&[&effects]));
    // What holds with little left stands beside what is close with less.
    let full = repair.verdict == Verdict::Holds && repair.most_used > CLOSE_FROM;
    let gist = gist(repair, units);
    let changes = all_changes(repair, units)
        .into_iter()
        .chain(effects)
        .chain(words::needs(repair.needs))
        .map(|text| el("li").text(text));
    let work = &repair.work;
    let name = words::label(repair.kind);
    let input = repair.input.clone();
    let door = papers(&joint.input, &repair.input, units)
        .attr("aria-label", &message(key::PAPER_WORK_OF).with(&[name]))
        // Between two joints the row still belongs to the one before.
        .flag("hidden", move || desk.repairs_late.get());
    let cell = |class: &str, name: &str, text: String| {
        classed("td", class).attr("data-name", name).text(text)
    };
    let mut title = classed("th", "whole").attr("scope", "row");
    if !names.is_empty() {
        title = title.child(classed("span", "named").text(names));
    }
    let button = el("button")
        .attr("type", "button")
        .attr("aria-label", &message(key::REPAIR_TRY).with(&[name]))
        .text(message(key::PAGE_TRY_THIS_REPAIR))
        // Between two joints the row still belongs to the one before.
        .flag("disabled", move || desk.repairs_late.get())
        .on("click", move |_| steps::took(desk, input.clone()));
    let (place, asked) = (index.to_string(), index.to_string());
    let is_picked = move || picks.compared.read().contains(&asked);
    let compare = el("button")
        .attr("type", "button")
        .attr("aria-label", &message(key::COMPARE_THIS).with(&[name]))
        .live_attr("aria-pressed", move || Some(is_picked().to_string()))
        .text(message(key::COMPARE_BUTTON))
        .on("click", move |_| {
            picks.compared.update(|two| {
                if two.contains(&place) {
                    two.retain(|picked| *picked != place);
                } else {
                    // The third takes the place of the first.
                    if two.len() == 2 {
                        two.remove(0);
                    }
                    two.push(place.clone());
                }
            });
        });
    el("tr")
        .child(
            title.text(name).child(
                classed("details", "changes")
                    .child(el("summary").text(gist))
                    .child(el("ul").children(changes)),
            ),
        )
        .child(
            cell("", message(key::COMPARE_THEN), String::new())
                .child(verdict_word(repair.verdict))
                .text(" ")
                .text(used(repair))
                .children(
                    full.then(|| classed("span", "soft full").text(message(key::REPAIR_FULL))),
                ),
        )
        .child(cell(
            "n",
            message(key::COMPARE_TORQUE),
            words::amount(repair.torque_nm, Dimension::Torque, units),
        ))
        .child(cell("", message(key::COMPARE_WORK), jobs(work)))
        .child(cell(
            "n",
            message(key::COMPARE_ADDS),
            words::amount(work.mass_kg, Dimension::Mass, units),
        ))
        .child(cell("n", message(key::COMPARE_COST), cost))
        .child(
            classed("td", "whole screen-only")
                .child(classed("div", "actions").children([button, compare, door])),
        )
}

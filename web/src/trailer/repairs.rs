//! Repairs side by side.

use calc_core::quantity::{Dimension, UnitSystem};
use calc_core::repair::{Rates, Repair, Repairs};
use calc_core::report::Verdict;
use calc_core::scenario::SupportKind;
use leptos::prelude::*;

use super::desk::Desk;
use super::state::{used, value_of};
use super::words::{self, Words};

/// Name, shown unit and place of a rate.
type Rate = (&'static str, fn(&mut Rates) -> &mut f64);

const RATES: [Rate; 9] = [
    ("an hour of work", |r| &mut r.hour),
    ("a kilogram of steel", |r| &mut r.steel_kg),
    ("a kilogram of aluminium", |r| &mut r.aluminium_kg),
    ("a kilogram of stainless steel", |r| &mut r.stainless_kg),
    ("a bolt with nut and washers", |r| &mut r.bolt),
    ("minutes for a hole", |r| &mut r.minutes_hole),
    ("minutes for a cut", |r| &mut r.minutes_cut),
    ("minutes for a weld round a sleeve end", |r| &mut r.minutes_weld),
    ("minutes to loosen and tighten a bolt", |r| &mut r.minutes_bolt),
];

/// The table, the rates and the way back.
pub(super) fn repairs_table(desk: Desk) -> AnyView {
    let body = move || {
        let units = desk.units();
        let solid = desk
            .shown
            .read()
            .answer
            .as_ref()
            .is_some_and(|(s, _)| s.support == SupportKind::Solid);
        match &*desk.repairs.read() {
            None => view! { <p class="soft">"Repairs follow when all entries can be read."</p> }.into_any(),
            Some(_) if solid => view! { <p>{words::message("repair.solid")}</p> }.into_any(),
            Some(found) => table(desk, found, units),
        }
    };
    view! {
        <section class="repairs" aria-labelledby="repairs-title"
            data-stale=move || (!desk.shown.read().current).to_string()>
            <h3 id="repairs-title">"Repairs side by side"</h3>
            <p class="actions screen-only" hidden=move || desk.before.read().is_none()>
                <button type="button" on:click=move |_| desk.undo()>"Undo: back to the joint as it was"</button>
            </p>
            {body}
            {rates(desk)}
        </section>
    }
    .into_any()
}

fn table(desk: Desk, found: &Repairs, units: UnitSystem) -> AnyView {
    let tried = found.tried.to_string();
    if found.list.is_empty() {
        return view! {
            <p><b>{words::message("repair.none").with(&[&tried])}</b></p>
            <p>{words::message("repair.none-help")}</p>
        }
        .into_any();
    }
    let any_holds = found.list.iter().any(|r| r.verdict == Verdict::Holds);
    let intro = if any_holds { "repair.found" } else { "repair.closest" };
    let help = (!any_holds).then(|| view! { <p>{words::message("repair.none-help")}</p> });
    let named = [found.cheapest, found.without_welding, found.strongest];
    let mut order: Vec<usize> = Vec::new();
    for index in named.into_iter().flatten().chain(0..found.list.len()) {
        if !order.contains(&index) {
            order.push(index);
        }
    }
    let rows = order
        .into_iter()
        .filter_map(|index| {
            let repair = found.list.get(index)?;
            let names: Vec<&'static str> = [
                (found.cheapest, "cheapest"),
                (found.without_welding, "cheapest without welding"),
                (found.strongest, "most in hand"),
            ]
            .into_iter()
            .filter_map(|(which, name)| (which == Some(index)).then_some(name))
            .collect();
            // The joint as it is comes through the same sieve; it is no repair.
            (!repair.changed.is_empty()).then(|| row(desk, repair, names.join(" · "), units))
        })
        .collect_view();
    view! {
        <p>{words::message(intro).with(&[&tried])}</p>
        {help}
        <table class="restack repair-table">
            <thead><tr>
                <th scope="col">"change"</th><th scope="col">"then it"</th><th scope="col">"torque"</th>
                <th scope="col">"work for all bolts"</th><th scope="col" class="n">"adds"</th>
                <th scope="col" class="n">"cost"</th><th scope="col"><span class="visually-hidden">"put it in"</span></th>
            </tr></thead>
            <tbody>{rows}</tbody>
        </table>
    }
    .into_any()
}

fn row(desk: Desk, repair: &Repair, names: String, units: UnitSystem) -> AnyView {
    let changes = repair
        .changed
        .iter()
        .filter(|&&field| used(&repair.input, field))
        .map(|&field| {
            view! { <li>{words::label(field)}": "<b>{value_of(&repair.input, field, units)}</b></li> }
        })
        .collect_view();
    let work = &repair.work;
    let count = |n: u32, one: &str, many: &str| {
        (n > 0).then(|| format!("{n}\u{a0}{}", if n == 1 { one } else { many }))
    };
    let jobs: Vec<String> = [
        count(work.holes, "hole", "holes"),
        count(work.cuts, "cut", "cuts"),
        count(work.welds, "weld", "welds"),
        Some(format!("{:.0}\u{a0}min", work.minutes)),
    ]
    .into_iter()
    .flatten()
    .collect();
    let name = words::repair(repair.kind);
    let input = repair.input.clone();
    view! {
        <tr>
            <th scope="row" class="whole"><span class="soft small named">{names}</span>{name}<ul class="changes">{changes}</ul></th>
            <td data-name="then it"><span class="verdict" data-verdict=words::verdict_key(repair.verdict)>{words::verdict(repair.verdict)}</span>" "{words::share(repair.utilisation)}</td>
            <td class="n" data-name="torque">{words::amount(repair.torque_nm, Dimension::Torque, units)}</td>
            <td data-name="work" class="whole">{jobs.join(", ")}</td>
            <td class="n" data-name="adds">{words::amount(work.mass_kg, Dimension::Mass, units)}</td>
            <td class="n" data-name="cost">{format!("{:.0}", work.cost)}</td>
            <td class="whole screen-only"><button type="button" aria-label=format!("Try this repair: {name}")
                on:click=move |_| desk.put(input.clone())>"try this repair"</button></td>
        </tr>
    }
    .into_any()
}

fn rates(desk: Desk) -> AnyView {
    let fields = RATES
        .into_iter()
        .enumerate()
        .map(|(index, (name, place))| {
            let id = format!("rate-{index}");
            let start = format!("{}", *place(&mut desk.rates.get_untracked()));
            let wrong = RwSignal::new(false);
            view! {
                <div class="field">
                    <label for=id.clone()>{name}</label>
                    <input id=id.clone() type="text" inputmode="decimal" autocomplete="off" prop:value=start
                        aria-invalid=move || wrong.get().to_string() aria-describedby=format!("{id}-error")
                        on:input:target=move |event| {
                            let typed = event.target().value().trim().replace(',', ".").parse::<f64>();
                            match typed {
                                Ok(value) if (0.0..=1e6).contains(&value) => {
                                    wrong.set(false);
                                    desk.rates.update(|rates| *place(rates) = value);
                                }
                                _ => wrong.set(true),
                            }
                        } />
                    <span class="unit"></span>
                    <p class="error" id=format!("{id}-error") hidden=move || !wrong.get()>
                        {name}": write a number from 0 to 1 000 000. The last one that could be read still counts."</p>
                </div>
            }
        })
        .collect_view();
    view! {
        <details class="rates screen-only">
            <summary>"Your own rates"</summary>
            <p class="soft">"Costs are in your own money. The figures to start with are assumptions."</p>
            {fields}
        </details>
    }
    .into_any()
}

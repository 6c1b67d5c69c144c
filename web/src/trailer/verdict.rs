//! The verdict, and every check as a row with its working.

use std::collections::BTreeSet;

use calc_core::quantity::UnitSystem;
use calc_core::report::{Check, Report, Step};
use drawing::parts::marked_rule;
use leptos::prelude::*;

use super::controls::go_to;
use super::desk::Desk;
use super::examples::source_title;
use super::words::{self, Words};
use crate::paint::Drawing;

/// The sheet with the verdict and the checks.
pub(super) fn verdict(desk: Desk) -> AnyView {
    let report = Memo::new(move |_| desk.shown.read().answer.as_ref().map(|(_, r)| r.clone()));
    let open = RwSignal::new(BTreeSet::<&'static str>::new());
    let headline = move || {
        let report = report.read();
        report.as_ref().map(|report| headline(report, desk.units()))
    };
    let checks = move || {
        let units = desk.units();
        let report = report.read();
        report.as_ref().map(|report| {
            report
                .checks
                .iter()
                .map(|check| row(check, units, open))
                .collect_view()
        })
    };
    let notes = move || {
        let units = desk.units();
        let report = report.read();
        report.as_ref().map(|report| {
            report
                .notes
                .iter()
                .map(|note| view! { <li>{words::said(note, units)}</li> })
                .collect_view()
        })
    };
    view! {
        <section class="result" aria-labelledby="verdict-title" data-stale=move || (!desk.shown.read().current).to_string()>
            <h3 id="verdict-title">"Does it hold?"</h3>
            {faults(desk)}
            <div class="sheet answer">{headline}</div>
            <p class="visually-hidden" role="status">{spoken(desk)}</p>
            <h4 id="checks-title">"Weakest first"</h4>
            <ol class="checks" aria-labelledby="checks-title">{checks}</ol>
            <ul class="notes">{notes}</ul>
        </section>
    }
    .into_any()
}

/// What must be put right before the answer is that of the form.
fn faults(desk: Desk) -> AnyView {
    let list = move || {
        desk.faults
            .get()
            .into_iter()
            .map(|fault| match fault.field {
                Some(field) => view! {
                    <li>{fault.sentence}" "
                        <button type="button" class="small" on:click=move |_| go_to(field)>"go there"</button></li>
                }
                .into_any(),
                None => view! { <li>{fault.sentence}</li> }.into_any(),
            })
            .collect_view()
    };
    view! {
        <div class="remark stale" hidden=move || desk.faults.read().is_empty()>
            <p>"What is below still answers the last numbers that could be read:"</p>
            <ul>{list}</ul>
        </div>
    }
    .into_any()
}

fn headline(report: &Report, units: UnitSystem) -> AnyView {
    let weakest = report.checks.first();
    let used = weakest
        .and_then(|check| words::share(check.utilisation))
        .map(|used| {
            view! { <span class="used">{"{0} of what it has".with(&[&used])}</span> }
        });
    let reason = weakest.map(|check| words::said(&check.reason, units));
    view! {
        <p class="words">
            <span class="verdict" data-verdict=words::verdict_key(report.verdict)>{words::verdict(report.verdict)}</span>
            {used}
        </p>
        <p class="said"><b>{words::question(report.weakest)}</b>" "{reason}</p>
    }
    .into_any()
}

/// The answer in one sentence for a reader's software, said when the form rests.
fn spoken(desk: Desk) -> Memo<String> {
    Memo::new(move |last: Option<&String>| {
        // The repairs are computed when the form rests; their arrival is the sign that it does.
        if desk.repairs.read().is_none() {
            return last.cloned().unwrap_or_default();
        }
        let shown = desk.shown.read_untracked();
        shown.answer.as_ref().map_or_else(String::new, |(_, report)| {
            let used = report.checks.first().and_then(|c| words::share(c.utilisation));
            "The joint {0}. {1} {2}".with(&[
                words::verdict(report.verdict),
                words::question(report.weakest),
                &used.unwrap_or_default(),
            ])
        })
    })
}

fn row(check: &Check, units: UnitSystem, open: RwSignal<BTreeSet<&'static str>>) -> AnyView {
    let key = words::check_key(check.id);
    let number = |a: calc_core::report::Amount| words::amount(a.si, a.dimension, units);
    let (needs, has) = (number(check.demand), number(check.capacity));
    let factor = format!("{}", (check.factor * 100.0).round() / 100.0);
    let needs = if (check.factor - 1.0).abs() < 1e-9 {
        needs
    } else {
        "{0} × {1}".with(&[&needs, &factor])
    };
    let scene = marked_rule(
        &format!("share-{key}"),
        check.utilisation,
        check.verdict,
    );
    let used = words::share(check.utilisation);
    let steps = check.steps.iter().map(|s| step(s, units)).collect_view();
    let place = NodeRef::<leptos::html::Details>::new();
    view! {
        <li class="check" data-check=key>
            <p class="question">{words::question(check.id)}</p>
            <p class="needs"><span class="soft">"needs "</span>{needs}" → "<span class="soft">"has "</span>{has}</p>
            <div class="ruled"><Drawing scene=Signal::stored(scene) /></div>
            <p class="outcome"><span class="verdict" data-verdict=words::verdict_key(check.verdict)>{words::verdict(check.verdict)}</span>" "{used}</p>
            <p class="why">{words::said(&check.reason, units)}</p>
            <details node_ref=place prop:open=move || open.read().contains(key)
                on:toggle=move |_| {
                    let Some(details) = place.get_untracked() else { return };
                    if details.open() != open.read_untracked().contains(key) {
                        open.update(|set| { if !set.remove(key) { set.insert(key); } });
                    }
                }>
                <summary>"Working"</summary>
                <dl class="working">{steps}</dl>
                <p class="cite">{"Factor {0}: {1}.".with(&[&factor, words::message(check.factor_is)])}</p>
            </details>
        </li>
    }
    .into_any()
}

fn step(step: &Step, units: UnitSystem) -> AnyView {
    let put_in: Vec<String> = step
        .inputs
        .iter()
        .map(|term| {
            "{0} = {1}".with(&[
                term.symbol,
                &words::amount(term.amount.si, term.amount.dimension, units),
            ])
        })
        .collect();
    let result = words::amount(step.result.si, step.result.dimension, units);
    view! {
        <dt>{step.what}</dt>
        <dd>
            <span class="formula"><var>{step.symbol}</var>" = "{step.formula}</span>
            <span class="put-in">{put_in.join(", ")}</span>
            <span class="came-out"><var>{step.symbol}</var>" = "<b>{result}</b></span>
            <span class="cite"><a href=format!("#source-{}", step.cite.source)>{source_title(step.cite.source)}</a>
                ", "{step.cite.place}" ("{step.cite.flag.words()}")"</span>
        </dd>
    }
    .into_any()
}

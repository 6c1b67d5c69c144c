//! Every check as a row with its working, in four groups by the question that they answer.

use drawing::words::key;
use std::collections::HashSet;

use calc_core::cite::Cite;
use calc_core::quantity::UnitSystem;
use calc_core::report::{Amount, CLOSE_FROM, Check, CheckId, Report, Step, Verdict};
use drawing::parts::marked_rule;
use leptos::prelude::*;
use leptos::wasm_bindgen::JsValue;

use super::controls::is_open;
use super::desk::Desk;
use super::examples::source_title;
use super::verdict::verdict_word;
use super::words::{self, Words, message, message_at};
use crate::el::{El, classed, el};
use crate::paint::drawing;

/// The checks whose working is open.
type Open = RwSignal<HashSet<CheckId>>;

/// The groups of checks, by the question that each answers.
const GROUPS: [&str; 4] = ["clamp", "grip", "slip", "last"];

/// The group of a check.
const fn group_of(id: CheckId) -> usize {
    use CheckId as C;
    match id {
        C::Slip
        | C::Opening
        | C::Turning
        | C::LoadOffset
        | C::FacePull
        | C::FittingFlange
        | C::MemberFlange
        | C::SleeveWeld => 1,
        C::BoltShear
        | C::WallBearing
        | C::FittingBearing
        | C::BoltBending
        | C::BoltCombined
        | C::TubeTearOut
        | C::FittingTearOut
        | C::BlockShear
        | C::NetSection
        | C::PullThrough
        | C::EndDistance
        | C::FittingEdge
        | C::MemberEdge
        | C::Spacing
        | C::HoleSize => 2,
        C::BoltFatigue | C::BoltService | C::LeastClamp | C::Loosening => 3,
        _ => 0,
    }
}

/// The groups of the joint's checks; the one that decides is open.
pub(super) fn questions(desk: Desk) -> El {
    let open = Open::new(HashSet::new());
    // A bit for each group that the reader opened or closed.
    let moved = RwSignal::new(0);
    let checks = move || {
        let units = desk.units();
        let shown = desk.shown.read();
        let Some((_, report)) = &shown.answer else {
            return Vec::new();
        };
        (0..GROUPS.len())
            .filter_map(|index| group(report, index, units, open, moved))
            .collect()
    };
    classed("div", "check-groups").live_children(checks)
}

/// Whether a check holds with room to spare.
fn spares(check: &Check) -> bool {
    check.verdict == Verdict::Holds && check.utilisation.is_none_or(|used| used <= CLOSE_FROM)
}

/// A question that a group of checks answers, with the worst of its verdicts; the worst group is open.
fn group(
    report: &Report,
    index: usize,
    units: UnitSystem,
    open: Open,
    moved: RwSignal<u32>,
) -> Option<El> {
    let of = |check: &&Check| group_of(check.id) == index;
    let worst = report.checks.iter().find(of)?;
    let deciding = report
        .checks
        .first()
        .is_some_and(|first| group_of(first.id) == index);
    let bit = 1 << index;
    let shown = move |moved: u32| deciding != (moved & bit != 0);
    let title = message_at(&["checks", GROUPS.get(index)?]);
    // What holds with room to spare waits until somebody asks, unless nothing else is there.
    let all: Vec<&Check> = report.checks.iter().filter(of).collect();
    let (mut held, mut rest): (Vec<&Check>, Vec<&Check>) =
        all.into_iter().partition(|check| spares(check));
    if rest.is_empty() {
        std::mem::swap(&mut held, &mut rest);
    }
    let list = |checks: &[&Check]| {
        classed("ol", "checks")
            .attr("aria-label", title)
            .children(checks.iter().map(|check| row(check, units, open)))
    };
    Some(
        classed("details", "check-group")
            .prop("open", move || JsValue::from_bool(shown(moved.get())))
            .on("toggle", move |event| {
                if is_open(&event) != shown(moved.get_untracked()) {
                    moved.update(|moved| *moved ^= bit);
                }
            })
            .child(
                el("summary")
                    .child(classed("span", "group-name").text(title))
                    .child(verdict_word(worst.verdict))
                    .child(
                        classed("span", "soft")
                            .text(words::share(worst.utilisation).unwrap_or_default()),
                    ),
            )
            .child(list(&rest))
            .children((!held.is_empty()).then(|| {
                let count = held.len().to_string();
                classed("details", "fold")
                    .child(el("summary").text(message(key::CHECKS_HELD).with(&[&count])))
                    .child(list(&held))
            })),
    )
}

fn row(check: &Check, units: UnitSystem, open: Open) -> El {
    let id = check.id;
    let key = id.key();
    let number = |a: Amount| words::amount(a.si, a.dimension, units);
    let factor = ((check.factor * 100.0).round() / 100.0).to_string();
    let mut needs = number(check.demand);
    if (check.factor - 1.0).abs() > 1e-9 {
        needs = "{0} × {1}".with(&[&needs, &factor]);
    }
    // What was not checked has no number to be held against.
    let unchecked = check.verdict == Verdict::NotChecked;
    let held = spares(check);
    let scene = marked_rule(&format!("share-{key}"), check.utilisation, check.verdict);
    // What holds needs no explanation unless somebody asks; the page is long enough.
    let why = classed("p", "why").text(words::said(&check.reason, units));
    let (told, inside) = match check.verdict {
        Verdict::Holds if !held => (
            Some(
                el("div")
                    .child(why)
                    .child(classed("p", "why").text(message(key::CHECKS_FULL))),
            ),
            None,
        ),
        Verdict::Holds => (None, Some(why)),
        _ => (Some(why), None),
    };
    let soft = |text: &'static str| classed("span", "soft").text(text);
    let working = el("details")
        .prop("open", move || {
            JsValue::from_bool(open.read().contains(&id))
        })
        .on("toggle", move |event| {
            if is_open(&event) != open.read_untracked().contains(&id) {
                open.update(|set| {
                    if !set.remove(&id) {
                        set.insert(id);
                    }
                });
            }
        })
        .child(el("summary").text(message(key::PAGE_WORKING)))
        .children(inside)
        .child(classed("dl", "working").children(check.steps.iter().flat_map(|s| step(s, units))))
        .child(
            classed("p", "cite")
                .text(message(key::PAGE_FACTOR).with(&[&factor, words::label(check.factor_is)])),
        );
    classed("li", "check")
        .attr("data-check", key)
        .flag("data-holds", move || held)
        .child(classed("p", "question").text(words::label(check.id)))
        .child(
            classed("p", "needs")
                .flag("hidden", move || unchecked)
                .child(soft(message(key::PAGE_NEEDS)))
                .text(needs)
                .text(" → ")
                .child(soft(message(key::PAGE_HAS)))
                .text(number(check.capacity)),
        )
        .child(classed("div", "ruled").child(drawing(Signal::stored(scene))))
        .child(
            classed("p", "outcome")
                .child(verdict_word(check.verdict))
                .text(" ")
                .text(words::share(check.utilisation).unwrap_or_default()),
        )
        .children(told)
        .child(working)
}

/// A source by its title, with the place in it and how it is held.
pub(super) fn cited(cite: &Cite) -> El {
    classed("span", "cite")
        .child(
            el("a")
                .attr(
                    "href",
                    &format!("sources.html#source-{}", cite.source.key()),
                )
                .text(source_title(cite.source.key())),
        )
        .text(format!(", {} ({})", cite.place, cite.flag.words()))
}

fn step(step: &Step, units: UnitSystem) -> [El; 2] {
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
    let told = el("dd")
        .child(
            classed("span", "formula")
                .child(el("var").text(step.symbol))
                .text(format!(" = {}", step.formula)),
        )
        .child(classed("span", "put-in").text(put_in.join(", ")))
        .child(
            classed("span", "came-out")
                .child(el("var").text(step.symbol))
                .text(" = ")
                .child(el("b").text(result)),
        )
        .child(cited(&step.cite));
    [el("dt").text(step.what), told]
}

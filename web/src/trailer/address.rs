//! The joint in the address: read when the page opens or the address changes, written when the form
//! rests.

use drawing::words::key;
use std::time::Duration;

use calc_core::link::{Decoded, Notice, Reading, decode, describe, encode};
use leptos::ev::{click, hashchange, popstate};
use leptos::prelude::*;
use leptos::wasm_bindgen::{JsCast, JsValue};
use leptos::web_sys::{self, Element};

use super::desk::Desk;
use super::keeping;
use super::state::{Form, is_start};
use super::steps::{self, ANSWER, STEPS};
use super::words::{self, Words, message};
use crate::el::{El, classed, el};
use crate::figures::frames::later;

/// Browsers refuse to have the address written more often than a hundred times in half a minute.
const REST: Duration = Duration::from_millis(500);

/// What the browser's history remembers of an address that this page wrote itself: this word, the step, how many
/// repairs were taken, and whose joint it is: 0 the reader's own and still being measured, 1 whole, 2 lent by a link.
const OWN: &str = "own";

/// What the browser's history remembers of an entry.
struct Remembered {
    step: u32,
    taken: u32,
    whole: bool,
    lent: bool,
}

/// What is remembered of the entry that is shown now, if this page wrote it.
fn remembered() -> Option<Remembered> {
    let state = web_sys::window()?
        .history()
        .ok()?
        .state()
        .ok()?
        .as_string()?;
    let mut words = state.split(' ');
    let own = words.next()? == OWN;
    let mut number = || words.next().and_then(|word| word.parse::<u32>().ok());
    let (step, taken, whole) = (number(), number(), number());
    own.then(|| Remembered {
        step: step.unwrap_or(1).clamp(1, STEPS),
        taken: taken.unwrap_or(0),
        whole: whole != Some(0),
        lent: whole == Some(2),
    })
}

/// Puts in the joint of the address or else the one that was kept, and keeps form and address together from
/// now on.
pub(super) fn follow(desk: Desk) {
    begin(desk);
    let listening = window_event_listener(hashchange, move |_| read(desk));
    on_cleanup(move || listening.remove());
    let going = window_event_listener(popstate, move |_| gone_to(desk));
    on_cleanup(move || going.remove());
    stay_here(desk);
    let link = Memo::new(move |_| {
        let readable = desk.faults.read().is_empty();
        readable.then(|| encode(&desk.form.read().sheet()))
    });
    let waiting = StoredValue::new(None::<TimeoutHandle>);
    // Who leaves at once, leaves with the last change in the address.
    let leaving = window_event_listener_untyped("pagehide", move |_| {
        if let Some(Some(timer)) = waiting.try_update_value(Option::take) {
            timer.clear();
            write(desk);
        }
    });
    on_cleanup(move || leaving.remove());
    Effect::new(move |before: Option<Option<String>>| {
        let link = link.get();
        // The first run only sees what is there; nothing was changed yet.
        if let (Some(before), Some(link)) = (before, link.clone())
            && before.as_ref() != Some(&link)
        {
            if let Some(Some(timer)) = waiting.try_get_value() {
                timer.clear();
            }
            let wrote = move || {
                write(desk);
                waiting.try_set_value(None);
            };
            waiting.set_value(later(REST, wrote));
        }
        link
    });
}

fn in_address() -> Decoded {
    let location = web_sys::window().map(|window| window.location());
    decode(&location.map_or_else(String::new, |location| {
        format!(
            "{}{}",
            location.search().unwrap_or_default(),
            location.hash().unwrap_or_default()
        )
    }))
}

/// When the page opens. A link wins over what was kept; but an address that this page wrote is no link that
/// somebody sent, and one that holds the kept joint brings back every word of it.
fn begin(desk: Desk) {
    let own = keeping::own();
    let written = remembered();
    if let Some(entry) = &written {
        desk.step.set(entry.step);
        desk.taken.set(entry.taken);
    }
    match (in_address(), own) {
        (Decoded::Intact(reading), Some(own))
            if written.as_ref().is_some_and(|entry| !entry.lent)
                || reading.notices.is_empty() && own.sheet().input() == reading.sheet.input() =>
        {
            desk.form.set(own);
        }
        (Decoded::Intact(reading), _) => {
            load(desk, &reading);
            match &written {
                Some(entry) if !entry.whole => desk.form.update(Form::in_parts),
                Some(_) => {}
                // Who follows a link wants the answer.
                None => {
                    desk.step.set(ANSWER);
                    desk.opened.set(Some(Decoded::Intact(reading)));
                }
            }
        }
        (other, own) => {
            if let Some(own) = own {
                // What is wrong with a link is still to be read after a reload.
                let place = other == Decoded::NotALink;
                desk.form.set(own);
                if place {
                    write(desk);
                }
            }
            desk.opened.set(Some(other));
        }
    }
}

/// When the address changes under the page: a link was put into it.
fn read(desk: Desk) {
    // Back and Forward are followed by `gone_to`.
    if remembered().is_some() {
        return;
    }
    match in_address() {
        Decoded::NotALink => desk.opened.set(None),
        Decoded::Intact(reading) => {
            load(desk, &reading);
            desk.step.set(ANSWER);
            desk.opened.set(Some(Decoded::Intact(reading)));
        }
        other => desk.opened.set(Some(other)),
    }
}

/// When the reader goes back or forward to what this page wrote: the step changes, and the joint only where a repair
/// lies between. What was typed since stays.
fn gone_to(desk: Desk) {
    let Some(entry) = remembered() else { return };
    desk.just_taken.set(false);
    if entry.taken != desk.taken.get_untracked() {
        let before = desk.before.get_untracked();
        match in_address() {
            Decoded::Intact(reading) => {
                let same = |form: &Form| form.sheet() == reading.sheet;
                match before.filter(same) {
                    Some(_) => desk.undo(),
                    // Whole: who takes a repair has had an answer.
                    None => desk.form.update(|form| form.load_sheet(&reading.sheet)),
                }
            }
            _ => desk.undo(),
        }
        desk.taken.set(entry.taken);
    }
    desk.step.set(entry.step);
    write(desk);
}

fn load(desk: Desk, reading: &Reading) {
    let mut form = desk.form.get_untracked();
    if form.sheet() != reading.sheet {
        form.load_sheet(&reading.sheet);
    }
    desk.linked.set(Some(form.clone()));
    desk.form.set(form);
}

/// A way to another place of this page leads there and leaves the joint in the address.
fn stay_here(desk: Desk) {
    let listening = window_event_listener(click, move |event| {
        let target = event.target().and_then(|t| t.dyn_into::<Element>().ok());
        let link = target.and_then(|t| t.closest("a[href^='#']").ok().flatten());
        let place = link
            .and_then(|link| link.get_attribute("href"))
            .and_then(|href| document().get_element_by_id(href.trim_start_matches('#')));
        let Some(place) = place else { return };
        event.prevent_default();
        steps::show(desk, &place);
    });
    on_cleanup(move || listening.remove());
}

fn state(desk: Desk) -> JsValue {
    JsValue::from_str(&format!(
        "{OWN} {} {} {}",
        desk.step.get_untracked(),
        desk.taken.get_untracked(),
        match (
            keeping::is_lent(desk),
            desk.form.read_untracked().is_whole()
        ) {
            (true, _) => 2,
            (false, whole) => u8::from(whole),
        },
    ))
}

/// The joint as an address; none while something in it cannot be read.
fn address(desk: Desk) -> Option<String> {
    let form = desk.form.read_untracked();
    (!form.untouched() && form.checked().is_ok()).then(|| format!("#{}", encode(&form.sheet())))
}

/// Writes the joint into the entry of the history that is shown.
pub(super) fn write(desk: Desk) {
    if let Some(history) = web_sys::window().and_then(|window| window.history().ok()) {
        // A browser that refuses costs the reader nothing: the link can still be copied.
        history
            .replace_state_with_url(&state(desk), "", address(desk).as_deref())
            .ok();
    }
}

/// Adds an entry to the history, so that Back comes here again.
pub(super) fn push(desk: Desk) {
    if let Some(history) = web_sys::window().and_then(|window| window.history().ok()) {
        history
            .push_state_with_url(&state(desk), "", address(desk).as_deref())
            .ok();
    }
}

/// Goes back to the entry before.
pub(super) fn back() {
    if let Some(history) = web_sys::window().and_then(|window| window.history().ok()) {
        history.back().ok();
    }
}

/// The address of a link on this page.
pub(super) fn full(link: &str) -> String {
    let location = web_sys::window().map(|window| window.location());
    let here = location.map_or_else(String::new, |location| {
        format!(
            "{}{}",
            location.origin().unwrap_or_default(),
            location.pathname().unwrap_or_default()
        )
    });
    format!("{here}#{link}")
}

/// What is to be said about the link that was opened.
pub(super) fn opened(desk: Desk) -> El {
    classed("div", "opened")
        .attr("aria-live", "polite")
        .live_children(move || {
            desk.opened
                .get()
                .and_then(|link| notice(desk, link))
                .into_iter()
                .collect()
        })
}

fn button(label: &str, then: impl Fn() + 'static) -> El {
    el("button")
        .attr("type", "button")
        .text(label)
        .on("click", move |_| then())
}

fn notice(desk: Desk, link: Decoded) -> Option<El> {
    let aside = |label| button(label, move || desk.opened.set(None));
    let told = |kind: &str, sentence: &str| {
        classed("div", "remark")
            .attr("data-link", kind)
            .child(el("p").text(sentence))
    };
    let actions = || classed("p", "actions");
    let close = || actions().child(aside(message(key::PAGE_CLOSE_THIS_NOTE)));
    Some(match link {
        Decoded::NotALink => return None,
        Decoded::TooLong => told("too-long", words::message(key::LINK_LONG)).child(close()),
        Decoded::Foreign { kind } => {
            let key = if kind.starts_with("v1/") || !versioned(&kind) {
                key::LINK_FOREIGN
            } else {
                key::LINK_OTHER_VERSION
            };
            told("foreign", &words::message(key).with(&[&kind])).child(close())
        }
        Decoded::Intact(reading) => {
            let same = reading.sheet.filled().next().is_none();
            let key = if same {
                key::LINK_SAME
            } else {
                key::LINK_WHOLE
            };
            let back = keeping::own().map(|own| {
                button(message(key::PAGE_BACK_TO_MY_OWN_JOINT), move || {
                    desk.form.set(own.clone());
                    desk.opened.set(None);
                })
            });
            told("whole", words::message(key))
                .children(settings(desk, &reading))
                .child(
                    actions()
                        .children(back)
                        .child(aside(message(key::PAGE_CLOSE_THIS_NOTE))),
                )
        }
        Decoded::Damaged(reading) => {
            let empty = reading.sheet.filled().next().is_none();
            let key = if empty {
                key::LINK_DAMAGED_EMPTY
            } else {
                key::LINK_DAMAGED
            };
            let said = told("damaged", words::message(key)).children(settings(desk, &reading));
            let take = (!empty).then(|| {
                button(message(key::PAGE_USE_WHAT_COULD_BE_READ), move || {
                    desk.remember();
                    desk.form.update(|form| form.load_sheet(&reading.sheet));
                    desk.opened.set(None);
                })
            });
            said.child(
                actions()
                    .children(take)
                    .child(aside(message(key::PAGE_LEAVE_IT))),
            )
        }
    })
}

/// Whether the head of a link names a version: `v2/…`.
fn versioned(kind: &str) -> bool {
    kind.strip_prefix('v')
        .is_some_and(|rest| rest.starts_with(|c: char| c.is_ascii_digit()))
}

/// The settings of a link in words, then what is to be said about single ones.
fn settings(desk: Desk, reading: &Reading) -> [El; 2] {
    let input = reading.sheet.input();
    let list = describe(&reading.sheet, desk.form.read_untracked().units())
        .into_iter()
        // US sizes to start with are nothing that somebody changed.
        .filter(|(field, _)| !is_start(&input, *field))
        .map(|(field, value)| {
            let chosen = reading.sheet.chosen(field);
            let value = chosen.map_or(value, |name| words::choice(field, name));
            el("li")
                .text(format!("{}: ", words::label_in(&input, field)))
                .child(el("b").text(value))
        });
    let notices = reading
        .notices
        .iter()
        .map(|notice| el("li").text(sentence(notice)));
    [
        classed("ul", "settings").children(list),
        classed("ul", "notes").children(notices),
    ]
}

fn sentence(notice: &Notice) -> String {
    let field = notice.field().map_or("", words::label);
    let (what, got) = match notice {
        Notice::UnknownKey { setting } => (setting.as_str(), ""),
        Notice::UnknownUnits { got } => (got.as_str(), ""),
        Notice::UnknownChoice { got, .. } | Notice::NotANumber { got, .. } => (field, got.as_str()),
        Notice::WrongUnit { unit, .. } => (field, unit.as_str()),
        _ => (field, ""),
    };
    words::message_at(&["notice", notice.code()]).with(&[what, got])
}

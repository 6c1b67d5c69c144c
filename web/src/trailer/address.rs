//! The joint in the address: read when the page opens or the address changes, written when the form
//! rests.

use std::time::Duration;

use calc_core::link::{Decoded, Notice, Reading, decode, describe, encode};
use leptos::ev::hashchange;
use leptos::prelude::*;
use leptos::wasm_bindgen::JsValue;
use leptos::web_sys;

use super::desk::Desk;
use super::words::{self, Words};
use crate::el::{El, classed, el};
use crate::figures::frames::later;

/// Browsers refuse to have the address written more often than a hundred times in half a minute.
const REST: Duration = Duration::from_millis(500);

/// The section that a link leads to.
const SECTION: &str = "your-trailer";

/// Keeps form and address together from now on.
pub(super) fn follow(desk: Desk) {
    read(desk);
    let listening = window_event_listener(hashchange, move |_| read(desk));
    on_cleanup(move || listening.remove());
    let link = Memo::new(move |_| {
        let current = desk.shown.read().current;
        current.then(|| encode(&desk.form.read().sheet()))
    });
    let waiting = StoredValue::new(None::<TimeoutHandle>);
    Effect::new(move |before: Option<Option<String>>| {
        let link = link.get();
        // The first run only sees what is there; nothing was changed yet.
        if let (Some(before), Some(link)) = (before, link.clone())
            && before.as_ref() != Some(&link)
        {
            if let Some(Some(timer)) = waiting.try_get_value() {
                timer.clear();
            }
            waiting.set_value(later(REST, move || write(&link)));
        }
        link
    });
}

fn read(desk: Desk) {
    let Some(location) = web_sys::window().map(|window| window.location()) else {
        return;
    };
    let text = format!(
        "{}{}",
        location.search().unwrap_or_default(),
        location.hash().unwrap_or_default()
    );
    match decode(&text) {
        Decoded::NotALink => desk.opened.set(None),
        Decoded::Intact(reading) => {
            let here = desk.form.read_untracked().sheet();
            if here != reading.sheet {
                desk.form.update(|form| form.load_sheet(&reading.sheet));
            }
            desk.opened.set(Some(Decoded::Intact(reading)));
            show_section();
        }
        other => {
            desk.opened.set(Some(other));
            show_section();
        }
    }
}

fn show_section() {
    // After the views are in place, else the section has no height yet.
    later(Duration::ZERO, || {
        if let Some(section) = document().get_element_by_id(SECTION) {
            section.scroll_into_view();
        }
    });
}

fn write(link: &str) {
    let Some(history) = web_sys::window().and_then(|window| window.history().ok()) else {
        return;
    };
    // A browser that refuses costs the reader nothing: the link can still be copied.
    history
        .replace_state_with_url(&JsValue::NULL, "", Some(&format!("#{link}")))
        .ok();
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
    let close = || actions().child(aside("Close this note"));
    Some(match link {
        Decoded::NotALink => return None,
        Decoded::TooLong => told("too-long", words::message("link.long")).child(close()),
        Decoded::Foreign { kind } => {
            let key = if kind.starts_with("v1/") || !versioned(&kind) {
                "link.foreign"
            } else {
                "link.other-version"
            };
            told("foreign", &words::message(key).with(&[&kind])).child(close())
        }
        Decoded::Intact(reading) => {
            let same = reading.sheet.filled().next().is_none();
            let key = if same { "link.same" } else { "link.whole" };
            told("whole", words::message(key))
                .children(settings(desk, &reading))
                .child(close())
        }
        Decoded::Damaged(reading) => {
            let empty = reading.sheet.filled().next().is_none();
            let key = if empty {
                "link.damaged-empty"
            } else {
                "link.damaged"
            };
            let said = told("damaged", words::message(key)).children(settings(desk, &reading));
            let take = (!empty).then(|| {
                button("Use what could be read", move || {
                    desk.remember();
                    desk.form.update(|form| form.load_sheet(&reading.sheet));
                    desk.opened.set(None);
                })
            });
            said.child(actions().children(take).child(aside("Leave it")))
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

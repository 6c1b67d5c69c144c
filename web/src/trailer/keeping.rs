//! The reader's own joint, kept on the device: nothing typed is lost by leaving the page.
//!
//! A joint that a link brought, or an invented example, is not the reader's own before something in it was
//! changed; until then it takes the place of nothing.

use drawing::words::key;
use leptos::prelude::*;

use super::desk::Desk;
use super::state::Form;
use super::words::message;
use crate::el::{El, classed, el, follow as watch};
use crate::kept::{self, Kept};

/// All that is typed on the page of the joint.
const ALL: [Kept; 3] = [Kept::Joint, Kept::Traces, Kept::Rates];

/// The reader's own joint as it was left, in the units that were chosen last.
pub(super) fn own() -> Option<Form> {
    let mut form = Form::restored(&Kept::Joint.read()?)?;
    if Kept::Units.read().is_some() {
        form.set_units(crate::units::chosen());
    }
    Some(form)
}

/// Puts the reader's own joint in, if there is one.
pub(super) fn restore(desk: Desk) {
    if let Some(form) = own() {
        desk.form.set(form);
    }
}

/// Whether the joint is a link's or an example's and nobody has changed it: no joint of the reader's own.
pub(super) fn is_lent(desk: Desk) -> bool {
    let (form, linked) = (desk.form.read(), desk.linked.read());
    form.example().is_some()
        || linked
            .as_ref()
            .is_some_and(|linked| linked.same_joint(&form))
}

/// Keeps the joint from now on, whenever the reader changes it.
pub(super) fn follow(desk: Desk) {
    let kept = Memo::new(move |_| {
        let lent = is_lent(desk);
        let form = desk.form.read();
        (!lent).then(|| (!form.untouched()).then(|| form.kept()))
    });
    Effect::new(move |before: Option<()>| {
        let kept = kept.get();
        // The first run only sees what is there; nothing was changed yet.
        if before.is_some() {
            match kept {
                Some(Some(text)) => {
                    desk.keeps.set(Kept::Joint.write(&text));
                }
                Some(None) => Kept::Joint.forget(),
                None => {}
            }
        }
    });
}

/// Tells that another tab has changed what is kept; the reader says which one counts.
pub(super) fn other_tab(desk: Desk) -> El {
    let told = RwSignal::new(false);
    let listening = window_event_listener_untyped("storage", move |event| {
        let key = js_sys::Reflect::get(&event, &"key".into()).ok();
        let ours = key.and_then(|key| key.as_string());
        let other = own().is_none_or(|own| !own.same_joint(&desk.form.read_untracked()));
        if ours.is_some_and(|key| Kept::Joint.is(&key)) && other {
            told.set(true);
        }
    });
    on_cleanup(move || listening.remove());
    let button = move |label: &'static str, then: fn(Desk)| {
        el("button")
            .attr("type", "button")
            .text(label)
            .on("click", move |_| {
                then(desk);
                told.set(false);
            })
    };
    classed("div", "remark screen-only")
        .attr("role", "status")
        .attr("data-tab", "other")
        .flag("hidden", move || !told.get())
        .child(el("p").text(message(key::KEEP_OTHER_TAB)))
        .child(
            classed("p", "actions")
                .child(button(message(key::KEEP_TAKE), |desk| {
                    restore(desk);
                    desk.again.notify();
                }))
                .child(button(message(key::KEEP_MINE), |desk| {
                    Kept::Joint.write(&desk.form.read_untracked().kept());
                })),
        )
}

/// Where what is typed is kept, and the way to be rid of it.
pub(super) fn note(desk: Desk) -> El {
    desk.keeps.set(kept::works());
    let before = RwSignal::new(None::<[Option<String>; 3]>);
    let clear = move |_| {
        before.set(Some(ALL.map(Kept::read)));
        for what in ALL {
            what.forget();
        }
        desk.opened.set(None);
        desk.form.update(|form| *form = Form::new(form.units()));
        desk.again.notify();
    };
    let back = move |_| {
        let texts = before.get_untracked().unwrap_or_default();
        for (what, text) in ALL.into_iter().zip(texts) {
            if let Some(text) = text {
                what.write(&text);
            }
        }
        before.set(None);
        restore(desk);
        desk.again.notify();
    };
    let button = |label| el("button").attr("type", "button").text(label);
    let said = move || {
        let line = if !desk.keeps.get() {
            el("span").text(message(key::PAGE_THIS_BROWSER_KEEPS_NOTHING_FOR_THIS))
        } else if before.read().is_some() {
            el("span")
                .text(message(key::PAGE_FORGOTTEN))
                .child(button(message(key::PAGE_BRING_IT_BACK)).on("click", back))
        } else {
            el("span")
                .text(message(key::PAGE_WHAT_YOU_ENTER_IS_KEPT_ON))
                .child(button(message(key::PAGE_FORGET_IT_AND_START_OVER)).on("click", clear))
        };
        vec![line]
    };
    // Bringing back is offered until something new is entered.
    watch(move || {
        if !desk.form.read().untouched() && before.read_untracked().is_some() {
            before.set(None);
        }
    });
    classed("p", "keeping screen-only")
        .attr("role", "status")
        .live_children(said)
}

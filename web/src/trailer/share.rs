//! The joint as a link, for mail, notes and forums, and on paper.

use calc_core::link::{CopyForms, Sheet, copy_forms, encode};
use calc_core::quantity::UnitSystem;
use calc_core::report::Report;
use calc_core::scenario::{Field, Input};
use drawing::words::key;
use leptos::prelude::*;
use leptos::wasm_bindgen::{JsCast, JsValue};
use leptos::web_sys::{self, HtmlTextAreaElement};
use wasm_bindgen_futures::JsFuture;

use super::address::full;
use super::desk::Desk;
use super::state::value_of;
use super::words::{self, Words, message};
use crate::el::{El, classed, el};

/// Id of the field with the text in clear.
const TEXT: &str = "share-text";

/// One line that says which joint it is and how it stands.
pub(crate) fn summary(input: &Input, report: &Report, units: UnitSystem) -> String {
    let value = |field| value_of(input, field, units);
    let used = report
        .checks
        .first()
        .and_then(|c| words::share(c.utilisation));
    let verdict = match used {
        Some(used) => message(key::PAGE_OF_ITS_CAPACITY_IS_USED).with(&[
            words::label(report.verdict),
            &used,
            words::label(report.weakest),
        ]),
        None => "{0} ({1})".with(&[words::label(report.verdict), words::label(report.weakest)]),
    };
    let damage: Vec<&str> = input.found().map(words::label).collect();
    let verdict = if damage.is_empty() {
        verdict
    } else {
        words::message(key::SHARE_FOUND).with(&[&damage.join("; "), &verdict])
    };
    words::message(key::SHARE_JOINT).with(&[
        &value(Field::TubeWidth),
        &value(Field::TubeDepth),
        &value(Field::TubeWall),
        &value(Field::TubeMaterial),
        &value(Field::Bolt),
        &value(Field::Grade),
        &value(Field::Support),
        &verdict,
        &value(Field::Joint),
        &value(Field::Member),
    ])
}

/// What was asked to be copied.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum LinkForm {
    Plain,
    Markdown,
    BbCode,
}

fn in_form(forms: &CopyForms, form: LinkForm) -> String {
    match form {
        LinkForm::Plain => forms.plain.clone(),
        LinkForm::Markdown => forms.markdown.clone(),
        LinkForm::BbCode => forms.bbcode.clone(),
    }
}

/// Buttons to copy and to print, and the text in clear.
pub(super) fn share(desk: Desk) -> El {
    let forms = Memo::new(move |_| {
        let shown = desk.shown.read();
        let form = desk.form.read();
        shown.answer.as_ref().map(|(scenario, report)| {
            copy_forms(
                &full(&encode(&form.sheet())),
                &summary(&scenario.input, report, form.units()),
            )
        })
    });
    let form = RwSignal::new(LinkForm::Plain);
    let outcome = RwSignal::new("");
    let text = move || {
        let forms = forms.read();
        forms
            .as_ref()
            .map_or_else(String::new, |forms| in_form(forms, form.get()))
    };
    let button = move |which: LinkForm, label: &str| {
        el("button")
            .attr("type", "button")
            .flag("disabled", move || !desk.shown.read().current)
            .text(label)
            .on("click", move |_| {
                form.set(which);
                let wanted = forms
                    .read_untracked()
                    .as_ref()
                    .map(|forms| in_form(forms, which));
                if let Some(wanted) = wanted {
                    leptos::task::spawn_local(hand_over(wanted, outcome));
                }
            })
    };
    let buttons = [
        button(LinkForm::Plain, message(key::PAGE_COPY_LINK)),
        button(LinkForm::Markdown, message(key::PAGE_COPY_AS_MARKDOWN)),
        button(LinkForm::BbCode, message(key::PAGE_COPY_FOR_A_FORUM_BBCODE)),
        el("button")
            .attr("type", "button")
            .text(message(key::PAGE_PRINT))
            .on("click", |_| print()),
    ];
    classed("section", "share screen-only")
        .attr("aria-labelledby", "share-title")
        .flag("hidden", move || desk.shown.read().answer.is_none())
        .child(
            el("h3")
                .attr("id", "share-title")
                .text(message(key::PAGE_TAKE_IT_WITH_YOU)),
        )
        .child(el("p").text(message(key::PAGE_THE_LINK_HOLDS_THE_WHOLE_JOINT)))
        .child(
            classed("p", "actions")
                .children(buttons)
                .child(on_paper(desk)),
        )
        .child(
            el("p")
                .attr("role", "status")
                .live_text(move || String::from(outcome.get())),
        )
        .child(
            el("label")
                .attr("for", TEXT)
                .text(message(key::PAGE_THE_TEXT_TO_COPY)),
        )
        .child(
            el("textarea")
                .attr("id", TEXT)
                .attr("readonly", "")
                .attr("rows", "3")
                .prop("value", move || text().into()),
        )
}

/// The way to record, picture and file; with the repair that was put in, to its sheet as well.
fn on_paper(desk: Desk) -> El {
    let href = move || {
        let form = desk.form.read();
        desk.shown.read().answer.as_ref()?;
        let now = form.sheet();
        let before = form
            .repaired()
            .map(|input| Sheet::from_input(input, form.units()).0);
        let hash = match &before {
            Some(before) => crate::paper::address(before, Some(&now)),
            None => crate::paper::address(&now, None),
        };
        Some(format!("paper.html#{hash}"))
    };
    el("a")
        .live_attr("href", href)
        .text(words::message(key::PAPER_DOOR))
}

/// Copies, and where that is refused selects the text for copying by hand.
async fn hand_over(text: String, outcome: RwSignal<&'static str>) {
    let copied = copy(&text).await;
    outcome.set(if copied {
        message(key::PAGE_COPIED)
    } else {
        message(key::PAGE_THE_BROWSER_DID_NOT_LET_THIS)
    });
    let field = document()
        .get_element_by_id(TEXT)
        .and_then(|element| element.dyn_into::<HtmlTextAreaElement>().ok());
    if let (false, Some(field)) = (copied, field) {
        field.focus().ok();
        field.select();
    }
}

/// Hands text to the clipboard; false where the browser has none or refuses.
async fn copy(text: &str) -> bool {
    let Some(window) = web_sys::window() else {
        return false;
    };
    // Outside a secure context the property is missing, whatever its type says.
    let navigator = window.navigator();
    let has = js_sys::Reflect::get(&navigator, &JsValue::from_str("clipboard"));
    if !has.is_ok_and(|clipboard| clipboard.is_object()) {
        return false;
    }
    JsFuture::from(navigator.clipboard().write_text(text))
        .await
        .is_ok()
}

/// Prints the reader's joint alone: the style sheet leaves the other sections out while the mark stands.
fn print() {
    let Some(window) = web_sys::window() else {
        return;
    };
    let root = document().document_element();
    if let Some(root) = &root {
        root.set_attribute("data-print", "joint").ok();
    }
    window.print().ok();
    if let Some(root) = &root {
        root.remove_attribute("data-print").ok();
    }
}

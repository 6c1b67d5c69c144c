//! A joint, its repair and its record as a file to keep, and such a file opened again.

use calc_core::link::encode;
use drawing::words::key;
use leptos::prelude::*;
use leptos::wasm_bindgen::{JsCast, JsValue};
use leptos::web_sys::{self, DragEvent, File, HtmlAnchorElement, HtmlInputElement};
use wasm_bindgen_futures::JsFuture;

use super::hand;
use super::handed::{Handed, Pair};
use super::record::Record;
use crate::el::{El, classed, el};
use crate::trailer::words::{Words, message};

/// What such a file says of itself.
const MARK: &str = "clampwright";
const VERSION: f64 = 1.0;

/// No joint is longer, in bytes.
const LARGEST: f64 = 65_536.0;

/// Offers data under a name.
pub(crate) fn download(name: &str, kind: &str, data: &str) {
    let link = document()
        .create_element("a")
        .ok()
        .and_then(|a| a.dyn_into::<HtmlAnchorElement>().ok());
    if let Some(link) = link {
        link.set_href(&if data.starts_with("data:") {
            String::from(data)
        } else {
            format!(
                "data:{kind};charset=utf-8,{}",
                js_sys::encode_uri_component(data)
            )
        });
        link.set_download(name);
        link.click();
    }
}

fn set(object: &js_sys::Object, key: &str, value: &JsValue) {
    js_sys::Reflect::set(object, &key.into(), value).ok();
}

/// The file's text.
fn written(pair: &Pair, record: Record) -> String {
    let object = js_sys::Object::new();
    set(&object, MARK, &VERSION.into());
    set(&object, "joint", &encode(&pair.before).into());
    if let Some(after) = &pair.after {
        set(&object, "repaired", &encode(after).into());
    }
    let typed = js_sys::Object::new();
    for (place, text) in record.entries() {
        set(&typed, &place, &text.into());
    }
    set(&object, "record", &typed);
    js_sys::JSON::stringify_with_replacer_and_space(&object, &JsValue::NULL, &2.0.into())
        .map_or_else(|_| String::new(), String::from)
}

/// The button that saves.
pub(super) fn saving(held: RwSignal<Handed>, record: Record) -> El {
    el("button")
        .attr("type", "button")
        .text(message(key::PAPER_SAVE))
        .on("click", move |_| {
            if let Handed::Joint(pair) = &*held.read_untracked() {
                download("joint.json", "application/json", &written(pair, record));
            }
        })
}

/// What was typed into a record: place and text.
type Typed = Vec<(String, String)>;

/// Joint, repair and record of a file's text; or the key of why there are none.
fn taken(text: &str) -> Result<(Pair, Typed), &'static str> {
    let object = js_sys::JSON::parse(text).map_err(|_| key::PAPER_NOT_JSON)?;
    let get = |key: &str| js_sys::Reflect::get(&object, &key.into()).unwrap_or(JsValue::UNDEFINED);
    let version = get(MARK).as_f64().ok_or(key::PAPER_NOT_OURS)?;
    if version > VERSION {
        return Err(key::PAPER_NEWER);
    }
    let mut hash = get("joint").as_string().ok_or(key::PAPER_NOT_OURS)?;
    if let Some(repaired) = get("repaired").as_string() {
        hash = format!("{hash}+{repaired}");
    }
    let Handed::Joint(pair) = Handed::read(&hash) else {
        return Err(key::PAPER_FILE_DAMAGED);
    };
    let typed = get("record");
    let entries = typed
        .dyn_ref::<js_sys::Object>()
        .map(js_sys::Object::entries);
    let record = entries
        .iter()
        .flat_map(js_sys::Array::iter)
        .filter_map(|entry| {
            let entry: js_sys::Array = entry.dyn_into().ok()?;
            Some((entry.get(0).as_string()?, entry.get(1).as_string()?))
        });
    Ok((*pair, record.collect()))
}

/// Where a file is picked or dropped, and why one was refused.
pub(super) fn opening(record: Record) -> El {
    let refused = RwSignal::new(None::<&'static str>);
    let open = move |file: Option<File>| {
        let Some(file) = file else { return };
        if file.size() > LARGEST {
            refused.set(Some(key::PAPER_TOO_LARGE));
            return;
        }
        leptos::task::spawn_local(async move {
            let text = JsFuture::from(file.text())
                .await
                .ok()
                .and_then(|t| t.as_string());
            match taken(&text.unwrap_or_default()) {
                Ok((pair, typed)) => {
                    refused.set(None);
                    record.of(pair.hash());
                    record.clear();
                    for (place, text) in typed {
                        record.put(&place, &text);
                    }
                    hand(&pair);
                }
                Err(why) => refused.set(Some(why)),
            }
        });
    };
    let picked = move |event: web_sys::Event| {
        let input = event
            .target()
            .and_then(|target| target.dyn_into::<HtmlInputElement>().ok());
        open(input.and_then(|input| input.files()?.get(0)));
    };
    let dropped = move |event: web_sys::Event| {
        event.prevent_default();
        let event: Option<DragEvent> = event.dyn_into().ok();
        open(event.and_then(|event| event.data_transfer()?.files()?.get(0)));
    };
    classed("div", "opening-file screen-only")
        .on("dragover", |event| event.prevent_default())
        .on("drop", dropped)
        .child(
            el("label").text(message(key::PAPER_OPEN)).child(
                el("input")
                    .attr("type", "file")
                    .attr("accept", ".json,application/json")
                    .on("change", picked),
            ),
        )
        .child(el("p").attr("role", "alert").live_text(move || {
            refused.get().map_or_else(String::new, |why| {
                message(key::PAPER_REFUSED).with(&[message(why)])
            })
        }))
}

//! What a figure has to know of the screen: width, pixel ratio, inks.

use drawing::plot::Inks;
use leptos::prelude::*;
use leptos::wasm_bindgen::JsCast;
use leptos::wasm_bindgen::closure::Closure;
use leptos::web_sys::{
    self, Element, MediaQueryList, MutationObserver, MutationObserverInit, ResizeObserver,
};

/// Where a drawing in half of the page's width has room for its layout for desks: below, its lettering
/// would be smaller than 11 px.
pub const WIDE: &str = "(min-width: 66rem)";

/// Whether a media query holds, kept up to date.
#[must_use]
pub fn matches(query: &str) -> ReadSignal<bool> {
    let list = media(query);
    let (holds, set) = signal(list.as_ref().is_some_and(MediaQueryList::matches));
    if let Some(list) = list {
        let asked = list.clone();
        on_change(&list, move || {
            set.try_set(asked.matches());
        });
    }
    holds
}

fn media(query: &str) -> Option<MediaQueryList> {
    web_sys::window()?.match_media(query).ok().flatten()
}

/// Calls back whenever a media query changes, until the owner goes.
fn on_change<F: FnMut() + 'static>(list: &MediaQueryList, call: F) {
    let closure = Closure::<dyn FnMut()>::new(call);
    list.set_onchange(Some(closure.as_ref().unchecked_ref()));
    let kept = StoredValue::new_local((list.clone(), closure));
    on_cleanup(move || {
        kept.try_with_value(|(list, _)| list.set_onchange(None));
    });
}

/// Calls back now and whenever an element's size, the pixel ratio or the inks may have changed.
pub fn on_change_of_look<F: Fn() + Copy + 'static>(element: &Element, call: F) {
    let closure = Closure::<dyn FnMut()>::new(call);
    let function = closure.as_ref().unchecked_ref();
    let (sizes, themes) = (
        ResizeObserver::new(function),
        MutationObserver::new(function),
    );
    if let Ok(sizes) = &sizes {
        sizes.observe(element);
    }
    if let (Ok(themes), Some(root)) = (&themes, document().document_element()) {
        let what = MutationObserverInit::new();
        what.set_attributes(true);
        what.set_attribute_filter(&js_sys::Array::of1(&"data-theme".into()));
        themes.observe_with_options(&root, &what).ok();
    }
    for query in ["(prefers-color-scheme: dark)", "(forced-colors: active)"] {
        if let Some(list) = media(query) {
            on_change(&list, call);
        }
    }
    // A change of the ratio alone, between two screens, changes no size in CSS pixels.
    let ratio = window_event_listener(leptos::ev::resize, move |_| call());
    let kept = StoredValue::new_local((sizes, themes, closure));
    on_cleanup(move || {
        ratio.remove();
        kept.try_with_value(|(sizes, themes, _)| {
            if let Ok(sizes) = sizes {
                sizes.disconnect();
            }
            if let Ok(themes) = themes {
                themes.disconnect();
            }
        });
    });
}

/// Canvas pixels per CSS pixel: those of the device, but two at least, because lines between whole
/// pixels would show steps.
#[must_use]
pub fn pixel_ratio() -> f64 {
    let ratio = web_sys::window().map_or(1.0, |window| window.device_pixel_ratio());
    if ratio.is_finite() {
        ratio.clamp(2.0, 4.0)
    } else {
        2.0
    }
}

/// The inks of a canvas. The style sheet gives them to it as colours of things that a canvas does not
/// have, because a custom property is not resolved where the system's colours are forced.
#[must_use]
pub fn inks(canvas: &Element) -> Inks {
    let usual = Inks::default();
    let Some(style) =
        web_sys::window().and_then(|window| window.get_computed_style(canvas).ok().flatten())
    else {
        return usual;
    };
    let ink = |name: &str, usual| {
        let text = style.get_property_value(name).unwrap_or_default();
        rgb(&text).unwrap_or(usual)
    };
    Inks {
        ink: ink("color", usual.ink),
        soft: ink("text-decoration-color", usual.soft),
        hair: ink("column-rule-color", usual.hair),
        field: ink("caret-color", usual.field),
    }
}

/// `rgb(1, 2, 3)` and `rgba(1, 2, 3, 0.5)`, the form of computed colours.
fn rgb(text: &str) -> Option<(u8, u8, u8)> {
    let inner = text.trim().strip_prefix("rgb")?.trim_start_matches('a');
    let inner = inner.strip_prefix('(')?.strip_suffix(')')?;
    let mut parts = inner.split(',').map(|part| part.trim().parse().ok());
    Some((parts.next()??, parts.next()??, parts.next()??))
}

#[cfg(test)]
mod tests {
    use super::*;
    use wasm_bindgen_test::wasm_bindgen_test;

    #[wasm_bindgen_test(unsupported = test)]
    fn computed_colours_are_read() {
        assert_eq!(rgb("rgb(28, 30, 32)"), Some((28, 30, 32)));
        assert_eq!(rgb("rgba(255, 0, 7, 0.5)"), Some((255, 0, 7)));
        for text in ["", "#fff", "rgb(1, 2)", "rgb(1, 2, 300)", "canvas"] {
            assert_eq!(rgb(text), None, "{text}");
        }
    }
}

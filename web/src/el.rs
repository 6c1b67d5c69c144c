//! Elements whose type does not depend on what is in them: the one way in which the page makes them.
//!
//! Leptos gives every element of `view!` a type of its own, and the compiler builds each type's code
//! anew. The form has hundreds of elements; written this way they share one type, and so do all values,
//! handlers and children that follow signals, because they are boxed. With 164 of its 288
//! elements in `view!` the page's program was 391.5 kB to load instead of 353.7 (Brotli, quality 11), and with
//! Leptos' own type erasure (`erase_components`) 381.6.
//!
//! Methods are named as Leptos names its own: `child`, `children`, `attr`, `prop`, `on`, `node_ref`,
//! `into_any`. What follows signals and has no name there begins with `live_` and says what it takes;
//! `flag` is an attribute without a value, `text` are words.

use leptos::attr::any_attribute::{AnyAttribute, IntoAnyAttribute};
use leptos::attr::custom::custom_attribute;
use leptos::ev;
use leptos::prelude::*;
use leptos::tachys::html::element::ElementType;
use leptos::tachys::html::event::on;
use leptos::tachys::html::node_ref::node_ref;
use leptos::tachys::html::property::prop;
use leptos::wasm_bindgen::{JsCast, JsValue};
use leptos::web_sys::{Event, HtmlInputElement, HtmlSelectElement};

type Live<T> = Box<dyn FnMut() -> T + Send>;

/// An element with its attributes, handlers and children.
pub struct El {
    tag: &'static str,
    attributes: Vec<AnyAttribute>,
    children: Vec<AnyView>,
}

/// An element.
#[must_use]
pub fn el(tag: &'static str) -> El {
    El {
        tag,
        attributes: Vec::new(),
        children: Vec::new(),
    }
}

/// An element with classes.
#[must_use]
pub fn classed(tag: &'static str, class: &str) -> El {
    el(tag).attr("class", class)
}

impl El {
    /// An attribute that stays.
    #[must_use]
    pub fn attr(mut self, name: &'static str, value: &str) -> Self {
        self.attributes
            .push(custom_attribute(name, String::from(value)).into_any_attr());
        self
    }

    /// An attribute that follows a signal; gone while there is none.
    #[must_use]
    pub fn live_attr(
        self,
        name: &'static str,
        value: impl Fn() -> Option<String> + Send + 'static,
    ) -> Self {
        self.boxed_attr(name, Box::new(value))
    }

    fn boxed_attr(mut self, name: &'static str, value: Live<Option<String>>) -> Self {
        self.attributes
            .push(custom_attribute(name, value).into_any_attr());
        self
    }

    /// An attribute without a value that is there while `on` says so.
    #[must_use]
    pub fn flag(self, name: &'static str, on: impl Fn() -> bool + Send + 'static) -> Self {
        self.boxed_attr(name, Box::new(move || on().then(String::new)))
    }

    /// A property of the element that follows a signal.
    #[must_use]
    pub fn prop(self, name: &'static str, value: impl Fn() -> JsValue + Send + 'static) -> Self {
        self.boxed_prop(name, Box::new(value))
    }

    fn boxed_prop(mut self, name: &'static str, value: Live<JsValue>) -> Self {
        self.attributes.push(prop(name, value).into_any_attr());
        self
    }

    /// What happens on an event.
    #[must_use]
    pub fn on(self, event: &'static str, then: impl FnMut(Event) + 'static) -> Self {
        self.boxed_on(event, Box::new(then))
    }

    fn boxed_on(mut self, event: &'static str, then: Box<dyn FnMut(Event)>) -> Self {
        self.attributes
            .push(on(ev::Custom::<Event>::new(event), then).into_any_attr());
        self
    }

    /// Words.
    #[must_use]
    pub fn text(mut self, text: impl Into<String>) -> Self {
        let text: String = text.into();
        self.children.push(text.into_any());
        self
    }

    /// Words that follow a signal.
    #[must_use]
    pub fn live_text(self, text: impl Fn() -> String + Send + 'static) -> Self {
        self.boxed_text(Box::new(text))
    }

    fn boxed_text(mut self, text: Live<String>) -> Self {
        self.children.push(text.into_any());
        self
    }

    /// A child.
    #[must_use]
    pub fn child(mut self, child: Self) -> Self {
        self.children.push(child.into_any());
        self
    }

    /// Children.
    #[must_use]
    pub fn children(mut self, children: impl IntoIterator<Item = Self>) -> Self {
        self.children
            .extend(children.into_iter().map(Self::into_any));
        self
    }

    /// Children that follow signals.
    #[must_use]
    pub fn live_children(self, children: impl Fn() -> Vec<Self> + Send + 'static) -> Self {
        self.boxed_children(Box::new(move || fragment(children())))
    }

    fn boxed_children(mut self, children: Live<Vec<AnyView>>) -> Self {
        self.children.push(children.into_any());
        self
    }

    /// Keeps the element in a reference once it is there.
    #[must_use]
    pub fn node_ref<E>(mut self, place: NodeRef<E>) -> Self
    where
        E: ElementType + Send + 'static,
        E::Output: JsCast + 'static,
    {
        self.attributes
            .push(node_ref::<E, _>(place).into_any_attr());
        self
    }

    /// The view.
    #[must_use]
    pub fn into_any(self) -> AnyView {
        leptos::html::custom(self.tag)
            .add_any_attr(self.attributes)
            .child(self.children)
            .into_any()
    }
}

/// Elements side by side, in an element that is there already.
#[must_use]
pub fn fragment(elements: Vec<El>) -> Vec<AnyView> {
    elements.into_iter().map(El::into_any).collect()
}

/// Runs again whenever a signal changes that it read; boxed, so that all share one type.
pub fn follow(run: impl FnMut() + 'static) {
    fn boxed(run: Box<dyn FnMut()>) {
        Effect::new(run);
    }
    boxed(Box::new(run));
}

/// What stands in the field or choice that an event came from.
#[must_use]
pub fn value_of(event: &Event) -> String {
    let target = event.target();
    let input = target
        .as_ref()
        .and_then(|t| t.dyn_ref::<HtmlInputElement>());
    let select = target
        .as_ref()
        .and_then(|t| t.dyn_ref::<HtmlSelectElement>());
    input.map_or_else(
        || select.map_or_else(String::new, HtmlSelectElement::value),
        HtmlInputElement::value,
    )
}

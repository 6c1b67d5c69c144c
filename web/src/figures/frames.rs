//! One update per picture, however fast the events come.

use std::time::Duration;

use leptos::prelude::*;

/// Collects values and hands on the last one when the browser draws its next picture.
pub fn per_frame<T, F>(apply: F) -> impl Fn(T) + Copy + 'static
where
    T: Send + Sync + 'static,
    F: Fn(T) + Copy + 'static,
{
    let waiting = StoredValue::new(None::<T>);
    move |value| {
        let scheduled = waiting.try_update_value(|slot| slot.replace(value).is_some());
        if scheduled == Some(false) {
            request_animation_frame(move || {
                if let Some(Some(value)) = waiting.try_update_value(Option::take) {
                    apply(value);
                }
            });
        }
    }
}

/// Does something once, after a while; boxed, so that all share one type. `None` where the browser
/// refuses.
pub fn later(rest: Duration, then: impl FnOnce() + 'static) -> Option<TimeoutHandle> {
    fn boxed(rest: Duration, then: Box<dyn FnOnce()>) -> Option<TimeoutHandle> {
        set_timeout_with_handle(then, rest).ok()
    }
    boxed(rest, Box::new(then))
}

/// Follows a text once it has rested for a while; the first text does not count as a change.
#[must_use]
pub fn settled(text: Memo<String>, rest: Duration) -> ReadSignal<String> {
    let (said, say) = signal(String::new());
    let waiting = StoredValue::new(None::<TimeoutHandle>);
    Effect::new(move |before: Option<String>| {
        let now = text.get();
        if before.is_some_and(|before| before != now) {
            if let Some(Some(timer)) = waiting.try_get_value() {
                timer.clear();
            }
            let words = now.clone();
            let timer = later(rest, move || {
                say.try_set(words);
            });
            waiting.set_value(timer);
        }
        now
    });
    said
}

//! Slots in a lesson's text: amounts that calc-core computes for a state, and fields for answers.

use std::cell::RefCell;

use drawing::lesson::{Model, Slot, State, Value, slots};

use crate::register::escape;

/// What the slots of a piece of text are filled with.
pub(crate) struct Slots<'a> {
    state: State,
    values: Vec<Value>,
    /// Id of the answer's field; `None` where there may be none.
    answer_id: Option<&'a str>,
    asked: RefCell<Vec<String>>,
}

impl<'a> Slots<'a> {
    /// The values of a lesson in a state.
    pub(crate) fn new(model: &'static dyn Model, state: State, answer_id: Option<&'a str>) -> Self {
        let values = model
            .outcome(&state)
            .map(|outcome| model.values(&state, &outcome))
            .unwrap_or_default();
        Self {
            state,
            values,
            answer_id,
            asked: RefCell::default(),
        }
    }

    /// The amount of a name as the page starts.
    pub(crate) fn text(&self, name: &str) -> Option<String> {
        let value = self.values.iter().find(|value| value.name == name)?;
        Some(value.written(self.state.units()))
    }

    /// A slot that the page keeps up to date.
    pub(crate) fn span(&self, name: &str) -> String {
        let text = self.text(name).unwrap_or_default();
        format!("<span data-v=\"{name}\">{}</span>", escape(&text))
    }

    /// The only amount that is asked for.
    pub(crate) fn asked(&self) -> Option<String> {
        match self.asked.borrow().as_slice() {
            [one] => Some(one.clone()),
            _ => None,
        }
    }

    /// A text as HTML with its slots filled; `Err` names a slot that names nothing.
    pub(crate) fn html(&self, text: &str) -> Result<String, String> {
        let mut out = String::new();
        for slot in slots(text) {
            match slot {
                Slot::Words(words) => out.push_str(&escape(words)),
                Slot::Value(name) if self.text(name).is_some() => out.push_str(&self.span(name)),
                Slot::Answer(name) if self.text(name).is_some() => {
                    let Some(id) = self.answer_id else {
                        return Err(format!("there is no answer to `{name}` here"));
                    };
                    self.asked.borrow_mut().push(name.into());
                    out.push_str(&format!(
                        "<input class=\"answer\" type=\"text\" id=\"{id}-answer\" data-answer=\"{name}\" aria-label=\"your answer, with its unit\" \
                         placeholder=\"?\" autocomplete=\"off\" spellcheck=\"false\" disabled>"
                    ));
                }
                Slot::Value(name) | Slot::Answer(name) => {
                    return Err(format!("no value is called `{name}`"));
                }
            }
        }
        Ok(out)
    }
}

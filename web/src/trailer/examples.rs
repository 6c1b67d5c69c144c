//! The invented joints, and titles of sources, from `content/`.

use calc_core::quantity::parse_number;
use calc_core::scenario::{Field, Input, Kind};

/// A joint that was made up.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Example {
    /// What it is called.
    pub name: &'static str,
    /// What it is about.
    pub story: &'static str,
    /// Whether it is measured in millimetres.
    pub metric: bool,
    /// What differs from the starting joint, by field name.
    joint: &'static [(&'static str, &'static str)],
}

include!(concat!(env!("OUT_DIR"), "/content.rs"));

/// The joint of an example; `None` when it names a field or a number that is none.
#[must_use]
pub fn joint(example: &Example) -> Option<Input> {
    let mut input = Input::default();
    for (name, value) in example.joint {
        let field = Field::by_name(name)?;
        match field.kind() {
            Kind::Number { .. } => input.set_number(field, Some(parse_number(value)?)),
            Kind::Choice { .. } => input.set_choice(field, value),
        }
    }
    Some(input)
}

/// The title of a source.
#[must_use]
pub(crate) fn source_title(id: &str) -> &'static str {
    SOURCES
        .iter()
        .find(|(known, _)| *known == id)
        .map_or("source not registered", |(_, title)| title)
}

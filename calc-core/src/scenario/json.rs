//! [`Input`] as JSON and as a JavaScript object, field by field from the table.
//!
//! Derived, the same code would stand once for each of some ninety fields: 20 kB of the page's program
//! for what a loop over [`Field::ALL`] says.

use super::fields::{Field, Input, Kind};
use serde::de::{Error, MapAccess, Visitor};
use serde::ser::SerializeStruct;
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use std::fmt;

const VERSION: &str = "version";

/// The name of one entry; `None` is the version.
struct Key(Option<Field>);

impl<'de> Deserialize<'de> for Key {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_identifier(KeyVisitor)
    }
}

struct KeyVisitor;

impl Visitor<'_> for KeyVisitor {
    type Value = Key;

    fn expecting(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str("the name of a field")
    }

    fn visit_str<E: Error>(self, name: &str) -> Result<Key, E> {
        if name == VERSION {
            return Ok(Key(None));
        }
        let field = Field::by_name(name);
        field
            .map(|field| Key(Some(field)))
            .ok_or_else(|| E::unknown_field(name, Input::NAMES))
    }
}

struct InputVisitor;

impl<'de> Visitor<'de> for InputVisitor {
    type Value = Input;

    fn expecting(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str("struct Input")
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Input, A::Error> {
        let mut input = Input::default();
        let mut seen = Vec::new();
        while let Some(Key(key)) = map.next_key()? {
            if seen.contains(&key) {
                return Err(A::Error::duplicate_field(key.map_or(VERSION, Field::name)));
            }
            seen.push(key);
            let Some(field) = key else {
                input.version = map.next_value()?;
                continue;
            };
            match field.kind() {
                // Only what is derived may be there without a value.
                Kind::Number { default: None, .. } => {
                    input.set_number(field, map.next_value::<Option<f64>>()?);
                }
                Kind::Number { .. } => input.set_number(field, Some(map.next_value::<f64>()?)),
                Kind::Choice { .. } => input.set_choice(field, &map.next_value::<String>()?),
            }
        }
        Ok(input)
    }
}

impl<'de> Deserialize<'de> for Input {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_struct("Input", Self::NAMES, InputVisitor)
    }
}

impl Serialize for Input {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut out = serializer.serialize_struct("Input", Self::NAMES.len())?;
        out.serialize_field(VERSION, &self.version)?;
        for field in Field::ALL {
            if let Some(number) = self.number(*field) {
                out.serialize_field(field.name(), &number)?;
            } else if let Some(choice) = self.choice(*field) {
                out.serialize_field(field.name(), choice)?;
            } else {
                out.skip_field(field.name())?;
            }
        }
        out.end()
    }
}

//! What the form holds: every field as typed, what it was read as, and the joint that follows.
//!
//! Plain data with methods, so that it is tested without a browser; the views are functions of it.

use calc_core::InputError;
use calc_core::link::{self, Decoded, Sheet, decode, encode};
use calc_core::quantity::{Dimension, ReadError, Typed, Unit, UnitSystem, read, unit_for, write};
use calc_core::scenario::unknown::UNKNOWN;
use calc_core::scenario::{ByField, Field, Input, Kind, MemberKind, Scenario, offered};
use drawing::words::key;

use super::words::{self, Words};

mod gauge;
mod start;

pub(super) use start::{FIVE, is_start};

/// A text that the reader typed, and what it was read as. `Ok(None)`: left empty, the default counts.
#[derive(Clone, Debug, PartialEq)]
struct Entry {
    text: String,
    /// What a number without a unit meant when it was typed.
    bare: Unit,
    read: Result<Option<Typed>, ReadError>,
}

/// One thing that keeps the joint from being computed.
#[derive(Clone, Debug, PartialEq)]
pub struct Fault {
    /// Where to correct it; `None` where it belongs to no field.
    pub field: Option<Field>,
    /// Field, value, range and what to do, in the reader's units.
    pub sentence: String,
}

/// The form.
#[derive(Clone, Debug, PartialEq)]
pub struct Form {
    input: Input,
    typed: ByField<Entry>,
    units: UnitSystem,
    /// Name of the example that was opened, until something is changed.
    example: Option<&'static str>,
    /// Choices that the reader made, be they those that stood there before.
    chosen: Vec<Field>,
    /// Whether the joint came as a whole: from a link, an example, a repair.
    whole: bool,
    /// The joint that a repair was put in for, until something else is changed.
    repaired: Option<Box<Input>>,
}

impl Form {
    /// The starting joint in a system of units.
    #[must_use]
    pub fn new(units: UnitSystem) -> Self {
        Self {
            input: start::joint(units),
            typed: ByField::default(),
            units,
            example: None,
            chosen: Vec::new(),
            whole: false,
            repaired: None,
        }
    }

    /// The joint as last read. Fields whose text could not be read keep their last value.
    #[must_use]
    pub const fn input(&self) -> &Input {
        &self.input
    }

    /// The reader's units.
    #[must_use]
    pub const fn units(&self) -> UnitSystem {
        self.units
    }

    /// Shows numbers in another system; no stored value changes, but the sizes that a joint starts with.
    pub fn set_units(&mut self, units: UnitSystem) {
        if self.untouched() {
            self.input = start::joint(units);
        }
        self.units = units;
    }

    /// Whether the reader said what a field holds.
    #[must_use]
    pub fn given(&self, field: Field) -> bool {
        let typed = self.typed.get(field);
        typed.is_some_and(|entry| entry.read != Ok(None))
            || self.chosen.contains(&field)
            || typed.is_none() && !self.at_start(field)
    }

    /// Whether what a joint starts with stands in a field.
    fn at_start(&self, field: Field) -> bool {
        self.input.is_default(field) || start::is_start(&self.input, field)
    }

    /// Which of the five measurements nobody has given yet. None of a joint that came as a whole.
    #[must_use]
    pub fn missing(&self) -> Vec<Field> {
        let missing = |field: &Field| field.applies(&self.input) && !self.given(*field);
        FIVE.into_iter()
            .filter(|_| !self.whole)
            .filter(missing)
            .collect()
    }

    /// Whether a field is one of the five and nobody has filled it: what would stand there is no measurement.
    #[must_use]
    pub fn is_blank(&self, field: Field) -> bool {
        FIVE.contains(&field) && !self.whole && !self.given(field)
    }

    /// Whether the joint is one of the reader's, of a link or of an example, and not what the page starts with.
    #[must_use]
    pub const fn is_whole(&self) -> bool {
        self.whole
    }

    /// Says of a joint out of the address that it was still being measured.
    pub(super) fn in_parts(&mut self) {
        self.whole = false;
    }

    /// Whether the form shows an invented example that nobody has changed yet.
    #[must_use]
    pub const fn example(&self) -> Option<&'static str> {
        self.example
    }

    /// Whether the form still stands at its starting values.
    #[must_use]
    pub fn untouched(&self) -> bool {
        self.typed.is_empty()
            && self.chosen.is_empty()
            && !self.whole
            && self.input == start::joint(self.units)
    }

    /// Puts a whole joint in place of what is there.
    pub fn load(&mut self, input: Input) {
        self.input = input;
        self.typed.clear();
        self.chosen.clear();
        self.whole = true;
        self.example = None;
        self.repaired = None;
    }

    /// Puts a repair of the joint in.
    pub fn load_repair(&mut self, input: Input) {
        let before = Box::new(self.input.clone());
        self.load(input);
        self.repaired = Some(before);
    }

    /// The joint that the repair in the form was made for, while nobody has changed anything else.
    #[must_use]
    pub fn repaired(&self) -> Option<&Input> {
        self.repaired.as_deref()
    }

    /// Puts an invented example in.
    pub fn load_example(&mut self, name: &'static str, input: Input) {
        self.load(input);
        self.example = Some(name);
    }

    /// Puts in exactly the joint of a link, numbers and units as they were typed.
    pub fn load_sheet(&mut self, sheet: &Sheet) {
        self.load(sheet.input());
        self.units = sheet.units;
        for field in sheet.filled() {
            let Some(entry) = sheet.entry(field) else {
                continue;
            };
            // Nobody typed what a joint starts with.
            if let Some(typed) = Typed::set(entry.number, entry.unit)
                && !is_start(&self.input, field)
            {
                let entry = Entry {
                    text: entry.number.to_string(),
                    bare: entry.unit,
                    read: Ok(Some(typed)),
                };
                self.typed.insert(field, entry);
            }
        }
    }

    /// The joint for a link: numbers and units as typed.
    #[must_use]
    pub fn sheet(&self) -> Sheet {
        // Errors name fields that no link can hold; those are refused by the form as well.
        let (mut sheet, _) = Sheet::from_input(&self.input, self.units);
        start::write(&self.input, self.units, &mut sheet);
        for (field, entry) in self.typed.iter() {
            if let Ok(Some(typed)) = &entry.read {
                sheet.set_typed(field, typed).ok();
            }
        }
        sheet
    }

    /// Everything that was typed, to the letter, as text: the joint's link, then a line for each field with
    /// its name, the unit that a number alone had in it, and what stands there.
    #[must_use]
    pub fn kept(&self) -> String {
        let mut text = encode(&self.sheet());
        for (field, entry) in self.typed.iter() {
            let typed = entry.text.replace(['\n', '\t'], " ");
            text.push_str(&format!(
                "\n{}\t{}\t{typed}",
                field.name(),
                entry.bare.symbol()
            ));
        }
        for field in &self.chosen {
            text.push_str(&format!("\n{}\t{CHOSEN}\t", field.name()));
        }
        if self.whole {
            text.push_str(&format!("\n{WHOLE}\t{CHOSEN}\t"));
        }
        if let Some(before) = &self.repaired {
            let (before, _) = Sheet::from_input(before, self.units);
            text.push_str(&format!("\n{REPAIRED}\t{CHOSEN}\t{}", encode(&before)));
        }
        text
    }

    /// The form that [`kept`](Self::kept) wrote; `None` where the text is not one of its texts.
    #[must_use]
    pub fn restored(text: &str) -> Option<Self> {
        let mut lines = text.lines();
        let Decoded::Intact(reading) = decode(lines.next()?) else {
            return None;
        };
        let mut form = Self::new(reading.sheet.units);
        form.load_sheet(&reading.sheet);
        form.whole = false;
        start::fill(&mut form.input, form.units);
        for line in lines {
            let mut parts = line.splitn(3, '\t');
            let (Some(name), Some(symbol), Some(typed)) =
                (parts.next(), parts.next(), parts.next())
            else {
                continue;
            };
            if symbol == CHOSEN {
                form.whole |= name == WHOLE;
                form.chosen.extend(Field::by_name(name));
                if let (REPAIRED, Decoded::Intact(before)) = (name, decode(typed)) {
                    form.repaired = Some(Box::new(before.sheet.input()));
                }
            } else if let Some(field) = Field::by_name(name)
                && let Kind::Number { dimension, .. } = field.kind()
            {
                let unit = Unit::of(dimension).find(|unit| unit.symbol() == symbol);
                form.type_as(field, typed, unit.unwrap_or_else(|| form.bare_unit(field)));
            }
        }
        Some(form)
    }

    /// Whether two forms hold the same joint, typed alike, in whatever units they show it.
    #[must_use]
    pub fn same_joint(&self, other: &Self) -> bool {
        self.input == other.input && self.typed == other.typed
    }

    /// Takes what a reader types into a number field. Who writes a wall down knows it.
    pub fn type_in(&mut self, field: Field, text: &str) {
        let bare = self.bare_unit(field);
        self.type_as(field, text, bare);
        let unknown = self.choice(Field::WallBasis) == UNKNOWN;
        if field == Field::TubeWall && unknown && !text.trim().is_empty() {
            self.choose(Field::WallBasis, "measured");
        }
    }

    /// The same with the unit that a number alone has.
    pub(super) fn type_as(&mut self, field: Field, text: &str, bare: Unit) {
        let Kind::Number { dimension, .. } = field.kind() else {
            return;
        };
        self.example = None;
        self.repaired = None;
        let sheet = gauge::read(text, dimension, self.metal_of(field));
        let read = match sheet.map_or_else(|| read(text, dimension, bare), Ok) {
            Ok(typed) => {
                self.input.set_number(field, Some(as_linked(field, &typed)));
                Ok(Some(typed))
            }
            Err(ReadError::Empty) => {
                self.input
                    .set_number(field, start::joint(self.units).number(field));
                Ok(None)
            }
            Err(error) => Err(error),
        };
        let text = text.to_owned();
        self.typed.insert(field, Entry { text, bare, read });
    }

    /// The metal that a gauge number of a field counts in.
    fn metal_of(&self, field: Field) -> &str {
        self.choice(match field {
            Field::FittingThickness => Field::FittingMaterial,
            Field::SpreaderThickness => Field::SpreaderMaterial,
            Field::SleeveWall => Field::SleeveMaterial,
            _ => Field::TubeMaterial,
        })
    }

    /// Takes a choice.
    pub fn choose(&mut self, field: Field, name: &str) {
        self.example = None;
        self.repaired = None;
        self.input.set_choice(field, name);
        if !self.chosen.contains(&field) {
            self.chosen.push(field);
        }
        if name_of_metal(field) {
            // A gauge number is another thickness in another metal.
            let gauges: Vec<(Field, Entry)> = self
                .typed
                .iter()
                .filter(|(_, entry)| gauge::is_one(&entry.text))
                .map(|(field, entry)| (field, entry.clone()))
                .collect();
            for (field, entry) in gauges {
                self.type_as(field, &entry.text, entry.bare);
            }
        }
        if field == Field::Member {
            // What the new member has no room for goes back to its default.
            if !offered(Field::Support, &self.input).contains(&self.choice(Field::Support)) {
                self.reset(Field::Support);
            }
            if name == MemberKind::RoundTube.name() {
                self.reset(Field::BoltRows);
            }
        }
    }

    /// Puts a field back to its default.
    pub fn reset(&mut self, field: Field) {
        self.typed.remove(field);
        self.chosen.retain(|chosen| *chosen != field);
        self.input.reset(field);
    }

    /// The chosen name of a choice.
    #[must_use]
    pub fn choice(&self, field: Field) -> &str {
        self.input.choice(field).unwrap_or_default()
    }

    /// What stands in the field: the text exactly as typed, or the value in the reader's units. A
    /// number typed without a unit gets its unit written behind it once the reader's units change,
    /// so that it still says the same.
    #[must_use]
    pub fn text(&self, field: Field) -> String {
        let bare = self.bare_unit(field);
        if let Some(entry) = self.typed.get(field) {
            let said_nothing = entry.bare != bare && self.without_unit(field, entry);
            return if said_nothing {
                format!("{} {}", entry.text.trim(), entry.bare.symbol())
            } else {
                entry.text.clone()
            };
        }
        if self.is_blank(field) {
            return String::new();
        }
        self.input.number(field).map_or_else(String::new, |value| {
            in_unit(field.unit().to_si(value), bare)
        })
    }

    /// Whether a text would be read otherwise if a bare number meant something else.
    fn without_unit(&self, field: Field, entry: &Entry) -> bool {
        let Kind::Number { dimension, .. } = field.kind() else {
            return false;
        };
        let now = read(&entry.text, dimension, self.bare_unit(field));
        matches!((&entry.read, now), (Ok(Some(was)), Ok(now)) if was.unit == entry.bare && now.unit != was.unit)
    }

    /// The unit of a number typed without one.
    #[must_use]
    pub fn bare_unit(&self, field: Field) -> Unit {
        let Kind::Number {
            dimension, unit, ..
        } = field.kind()
        else {
            return Unit::One;
        };
        match (self.units, dimension) {
            // The modulus is spoken of in GPa, strengths in MPa: the field's own unit says which.
            (UnitSystem::Metric, Dimension::Stress) => unit,
            (system, dimension) => unit_for(dimension, system),
        }
    }

    /// The value in the reader's units, where the text says it in others.
    #[must_use]
    pub fn in_other_words(&self, field: Field) -> Option<String> {
        let entry = self.typed.get(field)?;
        let typed = entry.read.as_ref().ok()?.as_ref()?;
        let Kind::Number { dimension, .. } = field.kind() else {
            return None;
        };
        let other = typed.unit != self.bare_unit(field) || gauge::is_one(&entry.text);
        let value = other.then(|| write(typed.si, dimension, self.units))?;
        Some(match gauge::is_one(&entry.text) {
            true => words::message(key::GAUGE_IS)
                .with(&[&value, words::message(gauge::name(self.metal_of(field)))]),
            false => value,
        })
    }

    /// A number of a field in the reader's units.
    #[must_use]
    pub fn written(&self, field: Field, value: f64) -> String {
        match field.kind() {
            Kind::Number {
                dimension, unit, ..
            } => words::amount(unit.to_si(value), dimension, self.units),
            Kind::Choice { .. } => String::new(),
        }
    }

    /// What counts in a number field while nobody fills it.
    #[must_use]
    pub fn started(&self, field: Field) -> String {
        let start = start::joint(self.units).number(field);
        start.map_or_else(
            || String::from(words::left_out(field)),
            |value| self.written(field, value),
        )
    }

    /// The range that a number field takes, in the reader's units.
    #[must_use]
    pub fn range(&self, field: Field) -> Option<(String, String)> {
        let (min, max) = field.range()?;
        Some((self.written(field, min), self.written(field, max)))
    }

    /// The value of a field in words: the amount, or the label of the choice.
    #[must_use]
    pub fn value(&self, field: Field) -> String {
        value_of(&self.input, field, self.units)
    }

    /// The fields that differ from their defaults and that count in this joint.
    #[must_use]
    pub fn changed(&self) -> Vec<Field> {
        self.input
            .changed()
            .filter(|field| field.applies(&self.input) && !self.at_start(*field))
            .collect()
    }

    /// The checked joint, or everything that stands in its way.
    ///
    /// # Errors
    /// One fault per text that could not be read and per value that the joint cannot take.
    pub fn checked(&self) -> Result<Scenario, Vec<Fault>> {
        let mut faults: Vec<Fault> = self
            .typed
            .iter()
            .filter_map(|(field, entry)| {
                let error = entry.read.as_ref().err()?;
                Some(Fault {
                    field: Some(field),
                    sentence: self.not_read(field, error),
                })
            })
            .collect();
        match Scenario::new(&self.input) {
            Ok(scenario) if faults.is_empty() => Ok(scenario),
            Ok(_) => Err(faults),
            Err(errors) => {
                let known: Vec<Option<Field>> = faults.iter().map(|f| f.field).collect();
                faults.extend(
                    errors
                        .iter()
                        .filter(|e| e.field().is_none() || !known.contains(&e.field()))
                        .map(|error| self.refused(error)),
                );
                Err(faults)
            }
        }
    }

    fn not_read(&self, field: Field, error: &ReadError) -> String {
        let label = words::label_in(&self.input, field);
        let (min, max) = self.range(field).unwrap_or_default();
        words::message(key::PAGE_IT_CAN_BE_TO).with(&[label, &error.to_string(), &min, &max])
    }

    fn refused(&self, error: &InputError) -> Fault {
        let field = error.field();
        let label = field.map_or("", |field| words::label_in(&self.input, field));
        let sentence = match error {
            InputError::OutOfRange { field, got, .. } => {
                let (min, max) = self.range(*field).unwrap_or_default();
                let got = self.written(*field, *got);
                words::message(key::FAULT_OUT_OF_RANGE).with(&[label, &got, &min, &max])
            }
            InputError::Contradiction { why, .. } => {
                words::message(key::FAULT_CONTRADICTION).with(&[label, why])
            }
            InputError::UnknownChoice { got, .. } => {
                words::message(key::FAULT_UNKNOWN_CHOICE).with(&[label, got])
            }
            InputError::Version { .. } => words::message(key::FAULT_VERSION).to_owned(),
            _ => words::message(key::FAULT_NOT_FINITE).with(&[label]),
        };
        Fault { field, sentence }
    }
}

/// Marks a line of what is kept that says no text: a choice that was made, or a joint that came as a whole.
const CHOSEN: &str = "=";
const WHOLE: &str = "whole";
const REPAIRED: &str = "repaired";

/// Whether a field names a metal.
const fn name_of_metal(field: Field) -> bool {
    matches!(
        field,
        Field::TubeMaterial
            | Field::FittingMaterial
            | Field::SpreaderMaterial
            | Field::SleeveMaterial
    )
}

/// A number in a unit, as a reader would type it: inches as a fraction where they are one.
fn in_unit(si: f64, unit: Unit) -> String {
    let fraction = (unit == Unit::Inch)
        .then(|| calc_core::quantity::as_fraction_inches(si))
        .flatten();
    let text = fraction.unwrap_or_else(|| calc_core::quantity::write_in(si, unit, 5));
    let number = text.strip_suffix(unit.symbol()).unwrap_or(&text);
    number
        .trim()
        .replace(['\u{a0}', '\u{202f}'], " ")
        .replace('−', "-")
}

/// The value in the field's unit, to the last bit the one that a link gives back.
fn as_linked(field: Field, typed: &Typed) -> f64 {
    let entry = link::Entry {
        number: typed.value,
        unit: typed.unit,
    };
    entry.in_unit_of(field)
}

/// The value of a field in words: the amount, or the label of the choice.
#[must_use]
pub(crate) fn value_of(input: &Input, field: Field, units: UnitSystem) -> String {
    match field.kind() {
        Kind::Choice { .. } => input
            .choice(field)
            .map(|name| words::choice(field, name))
            .unwrap_or_default(),
        Kind::Number {
            dimension, unit, ..
        } => input.number(field).map_or_else(
            || words::left_out(field).to_owned(),
            |value| words::amount(unit.to_si(value), dimension, units),
        ),
    }
}

#[cfg(test)]
mod tests;

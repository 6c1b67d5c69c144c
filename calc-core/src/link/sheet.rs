//! What a reader filled in, as filled in: numbers keep the unit they were typed with.

use crate::quantity::{Dimension, Typed, Unit, UnitSystem, link_number};
use crate::scenario::{ByField, Field, Input, Kind, options};

/// Longest number, in characters of a link. Seventeen digits are all that an `f64` holds.
pub(super) const LONGEST_NUMBER: usize = 28;

/// A number with the unit that it was typed with.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Entry {
    /// The number.
    pub number: f64,
    /// Its unit.
    pub unit: Unit,
}

impl Entry {
    /// The number in the unit of a field's name. In that unit already, it stays as it is to the last
    /// bit; otherwise it goes through SI.
    #[must_use]
    pub fn in_unit_of(self, field: Field) -> f64 {
        if self.unit == field.unit() {
            self.number
        } else {
            field.unit().from_si(self.unit.to_si(self.number))
        }
    }
}

/// Why a sheet does not take something.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum SheetError {
    /// Not finite, or with more digits or zeros than any size of a joint has.
    NotANumber {
        /// The field.
        field: Field,
    },
    /// A unit that does not measure what the field takes.
    WrongUnit {
        /// The field.
        field: Field,
        /// What the field takes; `None`: it takes no number.
        wanted: Option<Dimension>,
    },
    /// A name that is not in the list of the field.
    UnknownChoice {
        /// The field.
        field: Field,
        /// The name.
        got: String,
    },
}

/// What a reader filled in and which units results are shown in.
///
/// A field at its default in the unit of its name holds nothing. The default typed in another unit
/// (2 in for 50.8 mm) is kept as typed. Values outside the range of a field are kept too:
/// [`Scenario::new`](crate::Scenario::new) refuses them and names the field.
///
/// ```
/// use calc_core::link::Sheet;
/// use calc_core::quantity::Unit;
/// use calc_core::scenario::Field;
///
/// let mut sheet = Sheet::default();
/// sheet.set(Field::TubeWidth, 2.5, Unit::Inch).unwrap();
/// assert_eq!(sheet.input().tube_width_mm, 63.5);
/// ```
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Sheet {
    /// Units of results.
    pub units: UnitSystem,
    numbers: ByField<Entry>,
    choices: ByField<String>,
}

impl Sheet {
    /// A sheet with nothing filled in.
    #[must_use]
    pub fn new(units: UnitSystem) -> Self {
        Self {
            units,
            ..Self::default()
        }
    }

    /// A sheet that gives exactly this input, in the units of its names; the errors name the fields
    /// that a sheet cannot hold, which stand at their defaults.
    #[must_use]
    pub fn from_input(input: &Input, units: UnitSystem) -> (Self, Vec<SheetError>) {
        let mut sheet = Self::new(units);
        let errors = sheet.update(input);
        (sheet, errors)
    }

    /// Takes over what differs in `input`, such as a repair; all else stays as typed.
    pub fn update(&mut self, input: &Input) -> Vec<SheetError> {
        let now = self.input();
        let mut errors = Vec::new();
        for &field in Field::ALL {
            let taken = match (input.number(field), input.choice(field)) {
                (Some(number), _) if Some(number) != now.number(field) => {
                    self.set(field, number, field.unit())
                }
                (_, Some(name)) if Some(name) != now.choice(field) => self.choose(field, name),
                (None, None) => {
                    self.clear(field);
                    Ok(())
                }
                _ => Ok(()),
            };
            errors.extend(taken.err());
        }
        errors
    }

    /// Fills in a number.
    ///
    /// # Errors
    /// When it is not finite, when the unit measures something else, when the field is a choice. The
    /// field then keeps what it had.
    pub fn set(&mut self, field: Field, number: f64, unit: Unit) -> Result<(), SheetError> {
        let Kind::Number {
            dimension, default, ..
        } = field.kind()
        else {
            return Err(SheetError::WrongUnit {
                field,
                wanted: None,
            });
        };
        if !unit.fits(dimension) {
            return Err(SheetError::WrongUnit {
                field,
                wanted: Some(dimension),
            });
        }
        // Minus zero has no form of its own in a link.
        let number = if number == 0.0 { 0.0 } else { number };
        let entry = Entry { number, unit };
        // In the unit of the field's name it has to be one that could be typed, too: with that unit a sheet is made
        // from an input, and a tiny number in a small unit grows zeros in a large one.
        let fits = |number: f64| number.is_finite() && link_number(number).len() <= LONGEST_NUMBER;
        let kept = fits(number) && fits(entry.in_unit_of(field));
        if !kept {
            return Err(SheetError::NotANumber { field });
        }
        if unit == field.unit() && default == Some(number) {
            self.numbers.remove(field);
        } else {
            self.numbers.insert(field, entry);
        }
        Ok(())
    }

    /// Fills in a number as it was read from typed text.
    ///
    /// # Errors
    /// As [`set`](Self::set).
    pub fn set_typed(&mut self, field: Field, typed: &Typed) -> Result<(), SheetError> {
        self.set(field, typed.value, typed.unit)
    }

    /// Fills in a choice.
    ///
    /// # Errors
    /// When the name is not one of [`options`]. The field then keeps what it had.
    pub fn choose(&mut self, field: Field, name: &str) -> Result<(), SheetError> {
        if !options(field).contains(&name) {
            return Err(SheetError::UnknownChoice {
                field,
                got: String::from(name),
            });
        }
        if matches!(field.kind(), Kind::Choice { default } if default == name) {
            self.choices.remove(field);
        } else {
            self.choices.insert(field, String::from(name));
        }
        Ok(())
    }

    /// Puts a field back to its default.
    pub fn clear(&mut self, field: Field) {
        self.numbers.remove(field);
        self.choices.remove(field);
    }

    /// The number filled in; `None` where the default stands or is derived.
    #[must_use]
    pub fn entry(&self, field: Field) -> Option<Entry> {
        self.numbers.get(field).copied()
    }

    /// The name chosen; `None` where the default stands.
    #[must_use]
    pub fn chosen(&self, field: Field) -> Option<&str> {
        self.choices.get(field).map(String::as_str)
    }

    /// Whether something is filled in.
    #[must_use]
    pub fn is_filled(&self, field: Field) -> bool {
        self.numbers.get(field).is_some() || self.choices.get(field).is_some()
    }

    /// The fields filled in, in list order.
    pub fn filled(&self) -> impl Iterator<Item = Field> + '_ {
        Field::ALL.iter().copied().filter(|f| self.is_filled(*f))
    }

    /// The plain input, for [`Scenario::new`](crate::Scenario::new).
    #[must_use]
    pub fn input(&self) -> Input {
        let mut input = Input::default();
        for (field, entry) in self.numbers.iter() {
            input.set_number(field, Some(entry.in_unit_of(field)));
        }
        for (field, name) in self.choices.iter() {
            input.set_choice(field, name);
        }
        input
    }
}

impl SheetError {
    /// The field.
    #[must_use]
    pub const fn field(&self) -> Field {
        match self {
            Self::NotANumber { field }
            | Self::WrongUnit { field, .. }
            | Self::UnknownChoice { field, .. } => *field,
        }
    }
}

//! What a reader can move, and where it stands.

use calc_core::quantity::{Dimension, Unit, UnitSystem, parse_number, unit_for, write};
use calc_core::report::Amount;

/// Most controls that a lesson's figure may have: more would have to be learned first.
pub const MOST_CONTROLS: usize = 3;

/// One of a list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Choice {
    /// Short name for states in the text and for ids.
    pub key: &'static str,
    /// What the reader sees.
    pub name: &'static str,
}

/// How a control is moved.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ControlKind {
    /// A slider with an exact field. Numbers in `unit`.
    Number {
        /// What it measures.
        dimension: Dimension,
        /// Unit in which it is kept.
        unit: Unit,
        /// Lowest value.
        min: f64,
        /// Highest value.
        max: f64,
        /// Step of the slider; the exact field takes anything between the ends.
        step: f64,
        /// Where it stands first.
        start: f64,
    },
    /// One of a few.
    Choices {
        /// What there is, two to five.
        of: &'static [Choice],
        /// Index of the one that is taken first.
        start: usize,
    },
}

/// A control.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Control {
    /// Short name: lower-case letters and hyphens. A number's value fills the slot of that name.
    pub key: &'static str,
    /// What the reader sees.
    pub label: &'static str,
    /// How it is moved.
    pub kind: ControlKind,
}

impl Control {
    /// Where it stands first.
    #[must_use]
    #[allow(clippy::cast_precision_loss, reason = "a handful of choices")]
    pub const fn start(&self) -> f64 {
        match self.kind {
            ControlKind::Number { start, .. } => start,
            ControlKind::Choices { start, .. } => start as f64,
        }
    }

    /// The nearest value that it can take; its start for what is not a number.
    #[must_use]
    #[allow(clippy::cast_precision_loss, reason = "a handful of choices")]
    pub fn within(&self, value: f64) -> f64 {
        if !value.is_finite() {
            return self.start();
        }
        match self.kind {
            ControlKind::Number { min, max, .. } => value.clamp(min, max),
            ControlKind::Choices { of, .. } => {
                value.round().clamp(0.0, of.len().saturating_sub(1) as f64)
            }
        }
    }

    /// A number with what it measures; `None` for choices.
    #[must_use]
    pub fn amount(&self, value: f64) -> Option<Amount> {
        match self.kind {
            ControlKind::Number {
                dimension, unit, ..
            } => Some(Amount::new(unit.to_si(value), dimension)),
            ControlKind::Choices { .. } => None,
        }
    }

    /// A value as the reader sees it.
    #[must_use]
    pub fn shown(&self, value: f64, units: UnitSystem) -> String {
        match (self.amount(value), self.kind) {
            (Some(amount), _) => write(amount.si, amount.dimension, units),
            (None, ControlKind::Choices { of, .. }) => index(value)
                .and_then(|i| of.get(i))
                .map_or_else(String::new, |c| c.name.into()),
            (None, ControlKind::Number { .. }) => String::new(),
        }
    }

    /// Reads what a reader typed into the exact field.
    ///
    /// # Errors
    /// What to say beside the field: what was not understood, or the range that it goes to.
    pub fn read(&self, text: &str, units: UnitSystem) -> Result<f64, String> {
        let ControlKind::Number {
            dimension,
            unit,
            min,
            max,
            ..
        } = self.kind
        else {
            return Err(String::from("Choose one of the list."));
        };
        let bare = unit_for(dimension, units);
        let typed =
            calc_core::quantity::read(text, dimension, bare).map_err(|error| error.to_string())?;
        // An end of the range as it is shown, rounded to three digits, may lie a little beyond it.
        let value = unit.from_si(typed.si);
        let close = 0.005 * (max - min);
        if value < min - close || value > max + close {
            return Err(format!(
                "{} goes from {} to {} here.",
                capital(self.label),
                self.shown(min, units),
                self.shown(max, units)
            ));
        }
        Ok(value.clamp(min, max))
    }
}

/// A text of our own with a capital. Those begin with plain letters; all others would bring 20 kB of
/// tables with them.
pub(super) fn capital(text: &str) -> String {
    let mut text = String::from(text);
    if let Some(first) = text.get_mut(..1) {
        first.make_ascii_uppercase();
    }
    text
}

/// A choice's place in its list.
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "checked to be a small whole number"
)]
fn index(value: f64) -> Option<usize> {
    (value.fract() == 0.0 && (0.0..64.0).contains(&value)).then_some(value as usize)
}

/// Where a lesson's controls stand, in their order: numbers in the control's unit, choices as the place
/// in their list.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct State(pub [f64; MOST_CONTROLS]);

impl State {
    /// Everything at its start.
    #[must_use]
    pub fn start(controls: &[Control]) -> Self {
        let mut state = Self([0.0; MOST_CONTROLS]);
        for (place, control) in state.0.iter_mut().zip(controls) {
            *place = control.start();
        }
        state
    }

    /// A number.
    #[must_use]
    pub fn number(&self, control: usize) -> f64 {
        self.0.get(control).copied().unwrap_or(0.0)
    }

    /// Place of a choice in its list.
    #[must_use]
    pub fn choice(&self, control: usize) -> usize {
        index(self.number(control)).unwrap_or(0)
    }

    /// The same with one control moved to the nearest value that it can take.
    #[must_use]
    pub fn with(mut self, controls: &[Control], control: usize, value: f64) -> Self {
        if let (Some(place), Some(control)) = (self.0.get_mut(control), controls.get(control)) {
            *place = control.within(value);
        }
        self
    }

    /// Reads `torque=60 surface=oiled`: numbers in the control's own unit; what is not named stands at
    /// its start.
    ///
    /// # Errors
    /// What is not understood or out of range.
    pub fn parse(controls: &[Control], text: &str) -> Result<Self, String> {
        let mut state = Self::start(controls);
        for part in text.split_whitespace() {
            let (key, value) = part
                .split_once('=')
                .ok_or_else(|| format!("`{part}` is not of the form key=value"))?;
            let (place, control) = controls
                .iter()
                .enumerate()
                .find(|(_, control)| control.key == key)
                .ok_or_else(|| format!("no control is called `{key}`"))?;
            let value = match control.kind {
                ControlKind::Number { .. } => parse_number(value),
                #[allow(clippy::cast_precision_loss, reason = "a handful of choices")]
                ControlKind::Choices { of, .. } => {
                    of.iter().position(|c| c.key == value).map(|i| i as f64)
                }
            };
            let value = value.filter(|v| control.within(*v) == *v);
            let value = value.ok_or_else(|| format!("`{part}` is out of range"))?;
            state = state.with(controls, place, value);
        }
        Ok(state)
    }

    /// [`State::parse`] backwards, every control named.
    #[must_use]
    pub fn written(&self, controls: &[Control]) -> String {
        let mut parts = Vec::new();
        for (i, control) in controls.iter().enumerate() {
            let value = match control.kind {
                ControlKind::Number { .. } => self.number(i).to_string(),
                ControlKind::Choices { of, .. } => of
                    .get(self.choice(i))
                    .map_or_else(String::new, |c| c.key.into()),
            };
            parts.push(format!("{}={value}", control.key));
        }
        parts.join(" ")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const TWO: &[Control] = &[
        Control {
            key: "torque",
            label: "torque on the wrench",
            kind: ControlKind::Number {
                dimension: Dimension::Torque,
                unit: Unit::NewtonMetre,
                min: 0.0,
                max: 120.0,
                step: 1.0,
                start: 60.0,
            },
        },
        Control {
            key: "surface",
            label: "surface",
            kind: ControlKind::Choices {
                of: &[
                    Choice {
                        key: "dry",
                        name: "dry",
                    },
                    Choice {
                        key: "oiled",
                        name: "oiled",
                    },
                ],
                start: 0,
            },
        },
    ];

    #[test]
    fn states_are_read_and_written() {
        let state = State::parse(TWO, "surface=oiled torque=45.5").unwrap();
        assert_eq!(state, State([45.5, 1.0, 0.0]));
        assert_eq!(State::parse(TWO, &state.written(TWO)), Ok(state));
        assert_eq!(State::parse(TWO, ""), Ok(State::start(TWO)));
        for text in ["torque", "turn=3", "torque=121", "torque=x", "surface=wet"] {
            assert!(State::parse(TWO, text).is_err(), "{text}");
        }
    }

    #[test]
    fn what_is_typed_is_read_in_any_unit_and_refused_in_words() {
        let torque = &TWO[0];
        assert_eq!(torque.read("60", UnitSystem::Metric), Ok(60.0));
        let us = torque.read("20 lbf ft", UnitSystem::Us).unwrap();
        assert!((us - 27.116).abs() < 1e-3);
        // 120 N·m is 88.5 lb-ft and a little.
        let most = torque.shown(120.0, UnitSystem::Us);
        assert_eq!(torque.read(&most, UnitSystem::Us).unwrap().round(), 120.0);
        for text in ["", "tight", "12 mm", "500 N·m", "-1"] {
            assert!(
                torque.read(text, UnitSystem::Metric).unwrap_err().len() > 10,
                "{text}"
            );
        }
        let error = torque.read("500", UnitSystem::Metric).unwrap_err();
        assert!(
            error.contains("120") && error.starts_with("Torque"),
            "{error}"
        );
    }

    #[test]
    fn nothing_leaves_its_range() {
        for value in [f64::NAN, f64::INFINITY, -1e9, 1e9] {
            for (i, control) in TWO.iter().enumerate() {
                let state = State::start(TWO).with(TWO, i, value);
                assert_eq!(control.within(state.number(i)), state.number(i));
            }
        }
    }
}

//! Where a lesson's controls stand, and in which system of units.

use super::both::Both;
use super::control::{Control, ControlKind, MOST_CONTROLS, index};
use super::model::Look;
use calc_core::quantity::{Dimension, Unit, UnitSystem, unit_for};
use std::fmt;

/// Where a lesson's controls stand, in their order: numbers in the unit that a reader of the system sees,
/// choices as the place in their list. The system also says which stock the figure is made of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct State {
    at: [f64; MOST_CONTROLS],
    units: UnitSystem,
}

impl State {
    /// From numbers as they are.
    #[must_use]
    pub const fn new(at: [f64; MOST_CONTROLS], units: UnitSystem) -> Self {
        Self { at, units }
    }

    /// Everything at its start.
    #[must_use]
    pub fn start(controls: &[Control], units: UnitSystem) -> Self {
        let mut state = Self::new([0.0; MOST_CONTROLS], units);
        for (place, control) in state.at.iter_mut().zip(controls) {
            *place = control.start(units);
        }
        state
    }

    /// The system of units.
    #[must_use]
    pub const fn units(&self) -> UnitSystem {
        self.units
    }

    /// How a picture of it is lettered; `id` is the prefix of the picture's ids.
    #[must_use]
    pub const fn look<'a>(&self, id: &'a str) -> Look<'a> {
        Look {
            id,
            units: self.units,
        }
    }

    /// A number, in the reader's unit.
    #[must_use]
    pub fn number(&self, control: usize) -> f64 {
        self.at.get(control).copied().unwrap_or(0.0)
    }

    /// A length in mm.
    #[must_use]
    pub fn mm(&self, control: usize) -> f64 {
        let number = self.number(control);
        match self.units {
            UnitSystem::Metric => number,
            // To the millionth, without the noise of the last bits.
            UnitSystem::Us => (Unit::Inch.to_si(number) * 1e9).round() / 1e6,
        }
    }

    /// An amount in SI.
    #[must_use]
    pub fn si(&self, control: usize, dimension: Dimension) -> f64 {
        unit_for(dimension, self.units).to_si(self.number(control))
    }

    /// Place of a choice in its list.
    #[must_use]
    pub fn choice(&self, control: usize) -> usize {
        index(self.number(control)).unwrap_or(0)
    }

    /// The same with one control moved to the nearest value that it can take.
    #[must_use]
    pub fn with(mut self, controls: &[Control], control: usize, value: f64) -> Self {
        if let (Some(place), Some(control)) = (self.at.get_mut(control), controls.get(control)) {
            *place = control.within(value, self.units);
        }
        self
    }

    /// The state of another system that answers to this one: the same steps, the same choices.
    #[must_use]
    pub fn answering(&self, controls: &[Control], units: UnitSystem) -> Self {
        let mut other = Self { units, ..*self };
        for (place, control) in other.at.iter_mut().zip(controls) {
            *place = control.answering(*place, self.units, units);
        }
        other
    }

    /// Reads `torque=60 surface=oiled`: numbers with or without their unit; what is not named stands at its
    /// start. Of two numbers, `torque=45lb-ft,60N·m`, the first is that of US customary units.
    ///
    /// # Errors
    /// What is not understood or out of range.
    pub fn parse<'a>(
        controls: &[Control],
        text: &'a str,
        units: UnitSystem,
    ) -> Result<Self, StateFault<'a>> {
        let mut state = Self::start(controls, units);
        for part in text.split_whitespace() {
            let (place, control, value) = named(controls, part)?;
            let value = match (value.split_once(','), units) {
                (Some((us, _)), UnitSystem::Us) => us,
                (Some((_, metric)), UnitSystem::Metric) => metric,
                (None, _) => value,
            };
            let value = match control.kind {
                ControlKind::Number { .. } => control.read(value, units).ok(),
                #[allow(clippy::cast_precision_loss, reason = "a handful of choices")]
                ControlKind::Choices { of, .. } => {
                    of.iter().position(|c| c.key == value).map(|i| i as f64)
                }
            };
            let value = value.ok_or(StateFault::Range(part))?;
            state = state.with(controls, place, value);
        }
        Ok(state)
    }

    /// [`State::parse`] for both systems, as the text of a lesson gives it: what a shop of either has in stock,
    /// so a number that is measured differently there has to be given twice.
    ///
    /// # Errors
    /// What is not understood, out of range or given for one system only.
    pub fn both<'a>(controls: &[Control], text: &'a str) -> Result<Both<Self>, StateFault<'a>> {
        for part in text.split_whitespace() {
            let (_, control, value) = named(controls, part)?;
            if let ControlKind::Number { dimension, .. } = control.kind {
                let unit = |units| unit_for(dimension, units);
                let alike = unit(UnitSystem::Us) == unit(UnitSystem::Metric);
                if !alike && !value.contains(',') {
                    return Err(StateFault::OneSystem(part));
                }
            }
        }
        Ok(Both {
            us: Self::parse(controls, text, UnitSystem::Us)?,
            metric: Self::parse(controls, text, UnitSystem::Metric)?,
        })
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

/// What is wrong with the text of a state.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StateFault<'a> {
    /// Not of the form `key=value`.
    Form(&'a str),
    /// No control has this key.
    Unknown(&'a str),
    /// Not understood or out of range.
    Range(&'a str),
    /// Given for one system of units only.
    OneSystem(&'a str),
}

impl fmt::Display for StateFault<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Form(part) => write!(f, "`{part}` is not of the form key=value"),
            Self::Unknown(key) => write!(f, "no control is called `{key}`"),
            Self::Range(part) => write!(f, "`{part}` is out of range"),
            Self::OneSystem(part) => {
                write!(f, "`{part}` needs a number for either system of units")
            }
        }
    }
}

/// Place, control and value of `key=value`.
fn named<'c, 'a>(
    controls: &'c [Control],
    part: &'a str,
) -> Result<(usize, &'c Control, &'a str), StateFault<'a>> {
    let (key, value) = part.split_once('=').ok_or(StateFault::Form(part))?;
    let mut controls = controls.iter().enumerate();
    let (place, control) = controls
        .find(|(_, control)| control.key == key)
        .ok_or(StateFault::Unknown(key))?;
    Ok((place, control, value))
}

#[cfg(test)]
mod tests {
    use super::super::control::tests::TWO;
    use super::*;
    use UnitSystem::{Metric, Us};

    #[test]
    fn states_are_read_and_written() {
        let state = State::parse(TWO, "surface=oiled torque=45.5", Metric).unwrap();
        assert_eq!(state, State::new([45.5, 1.0, 0.0], Metric));
        assert_eq!(State::parse(TWO, &state.written(TWO), Metric), Ok(state));
        assert_eq!(State::parse(TWO, "", Us), Ok(State::start(TWO, Us)));
        for text in ["torque", "turn=3", "torque=130", "torque=x", "surface=wet"] {
            assert!(State::parse(TWO, text, Metric).is_err(), "{text}");
        }
    }

    #[test]
    fn a_text_gives_a_number_for_either_system() {
        let both = State::both(TWO, "torque=45lb-ft,60N·m surface=oiled").unwrap();
        assert_eq!(both.us, State::new([45.0, 1.0, 0.0], Us));
        assert_eq!(both.metric, State::new([60.0, 1.0, 0.0], Metric));
        assert_eq!(
            State::both(TWO, "torque=60"),
            Err(StateFault::OneSystem("torque=60"))
        );
        assert!(State::both(TWO, "torque=45,500").is_err());
    }

    #[test]
    fn the_other_system_stands_at_the_same_steps() {
        let state = State::parse(TWO, "torque=45 surface=oiled", Us).unwrap();
        let other = state.answering(TWO, Metric);
        assert_eq!(other, State::new([60.0, 1.0, 0.0], Metric));
        assert_eq!(other.answering(TWO, Us), state);
        assert_eq!(state.answering(TWO, Us), state);
    }
}

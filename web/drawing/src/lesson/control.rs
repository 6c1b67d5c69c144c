//! What a reader can move.

use super::both::Both;
use crate::units::Lettering;
use calc_core::quantity::{Dimension, UnitSystem, read, unit_for, write};
use calc_core::report::Amount;

/// Most controls that a lesson's figure may have: more would have to be learned first.
pub const MOST_CONTROLS: usize = 3;

/// One of a list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Choice {
    /// Short name for states in the text and for ids.
    pub key: &'static str,
    /// What the reader sees.
    pub name: Both<&'static str>,
}

impl Choice {
    /// A choice that is called alike in both systems.
    #[must_use]
    pub const fn new(key: &'static str, name: &'static str) -> Self {
        Self {
            key,
            name: Both::alike(name),
        }
    }
}

/// How far a number goes, in the unit in which its reader sees it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Range {
    /// Lowest value.
    pub min: f64,
    /// Highest value.
    pub max: f64,
    /// Step of the slider; the exact field takes anything between the ends.
    pub step: f64,
    /// Where it stands first.
    pub start: f64,
}

impl Range {
    /// From an end to the other, step, start.
    #[must_use]
    pub const fn new([min, max]: [f64; 2], step: f64, start: f64) -> Self {
        Self {
            min,
            max,
            step,
            start,
        }
    }

    /// The nearest of the slider's steps.
    #[must_use]
    pub fn nearest(&self, value: f64) -> f64 {
        let steps = ((value - self.min) / self.step).round();
        // Without the noise of the last bits, so that 0.3 is lettered as 0.3.
        let at = ((self.min + steps * self.step) * 1e9).round() / 1e9;
        at.clamp(self.min, self.max)
    }

    /// The step that lies as far between the ends as a value of another range; a start answers to the start.
    fn at_same_step(&self, value: f64, of: &Self) -> f64 {
        if self == of {
            value
        } else if value == of.start {
            self.start
        } else {
            let share = (value - of.min) / (of.max - of.min);
            self.nearest(self.min + share * (self.max - self.min))
        }
    }

    /// Whether a shop counts it in fractions of an inch: then its steps are such.
    fn in_fractions(&self) -> bool {
        (self.step * 64.0).fract() == 0.0
    }
}

/// How a control is moved.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ControlKind {
    /// A slider with an exact field.
    Number {
        /// What it measures; with the system of units it gives the unit.
        dimension: Dimension,
        /// How far it goes.
        range: Both<Range>,
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
    /// A slider.
    #[must_use]
    pub const fn number(
        key: &'static str,
        label: &'static str,
        dimension: Dimension,
        range: Both<Range>,
    ) -> Self {
        Self {
            key,
            label,
            kind: ControlKind::Number { dimension, range },
        }
    }

    /// A list.
    #[must_use]
    pub const fn choices(
        key: &'static str,
        label: &'static str,
        of: &'static [Choice],
        start: usize,
    ) -> Self {
        Self {
            key,
            label,
            kind: ControlKind::Choices { of, start },
        }
    }

    /// How far a number goes; `None` for choices.
    #[must_use]
    pub const fn range(&self, units: UnitSystem) -> Option<&Range> {
        match &self.kind {
            ControlKind::Number { range, .. } => Some(range.of(units)),
            ControlKind::Choices { .. } => None,
        }
    }

    /// The highest value of a number in SI; 0 for choices.
    #[must_use]
    pub fn most(&self, units: UnitSystem) -> f64 {
        let range = self.range(units);
        range
            .and_then(|range| self.amount(range.max, units))
            .map_or(0.0, |most| most.si)
    }

    /// Where it stands first.
    #[must_use]
    #[allow(clippy::cast_precision_loss, reason = "a handful of choices")]
    pub const fn start(&self, units: UnitSystem) -> f64 {
        match &self.kind {
            ControlKind::Number { range, .. } => range.of(units).start,
            ControlKind::Choices { start, .. } => *start as f64,
        }
    }

    /// The nearest value that it can take; its start for what is not a number.
    #[must_use]
    #[allow(clippy::cast_precision_loss, reason = "a handful of choices")]
    pub fn within(&self, value: f64, units: UnitSystem) -> f64 {
        if !value.is_finite() {
            return self.start(units);
        }
        match &self.kind {
            ControlKind::Number { range, .. } => {
                let Range { min, max, .. } = *range.of(units);
                value.clamp(min, max)
            }
            ControlKind::Choices { of, .. } => {
                value.round().clamp(0.0, of.len().saturating_sub(1) as f64)
            }
        }
    }

    /// The value in one system that answers to a value in the other: the same step of the slider, the same
    /// choice.
    #[must_use]
    pub fn answering(&self, value: f64, from: UnitSystem, to: UnitSystem) -> f64 {
        match &self.kind {
            ControlKind::Number { range, .. } => range.of(to).at_same_step(value, range.of(from)),
            ControlKind::Choices { .. } => value,
        }
    }

    /// A number with what it measures; `None` for choices.
    #[must_use]
    pub fn amount(&self, value: f64, units: UnitSystem) -> Option<Amount> {
        match self.kind {
            ControlKind::Number { dimension, .. } => Some(Amount::new(
                unit_for(dimension, units).to_si(value),
                dimension,
            )),
            ControlKind::Choices { .. } => None,
        }
    }

    /// Whether it is a size as stock has it or a tape shows it: a US shop writes that as a fraction.
    #[must_use]
    pub fn is_size(&self) -> bool {
        match &self.kind {
            ControlKind::Number { dimension, range } => {
                *dimension == Dimension::Length && range.us.in_fractions()
            }
            ControlKind::Choices { .. } => false,
        }
    }

    /// A value as the reader sees it.
    #[must_use]
    pub fn shown(&self, value: f64, units: UnitSystem) -> String {
        match (self.amount(value, units), self.kind) {
            (Some(amount), _) if self.is_size() => units.stock(amount.si * 1e3),
            (Some(amount), _) => write(amount.si, amount.dimension, units),
            (None, ControlKind::Choices { of, .. }) => index(value)
                .and_then(|i| of.get(i))
                .map_or_else(String::new, |c| (*c.name.of(units)).into()),
            (None, ControlKind::Number { .. }) => String::new(),
        }
    }

    /// Reads what a reader typed into the exact field.
    ///
    /// # Errors
    /// What to say beside the field: what was not understood, or the range that it goes to.
    pub fn read(&self, text: &str, units: UnitSystem) -> Result<f64, String> {
        let ControlKind::Number { dimension, range } = &self.kind else {
            return Err(String::from("Choose one of the list."));
        };
        let unit = unit_for(*dimension, units);
        let typed = read(text, *dimension, unit).map_err(|error| error.to_string())?;
        let value = if typed.unit == unit {
            typed.value
        } else {
            unit.from_si(typed.si)
        };
        let Range { min, max, .. } = *range.of(units);
        // An end of the range as it is shown, rounded to three digits, may lie a little beyond it.
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
pub(super) fn index(value: f64) -> Option<usize> {
    (value.fract() == 0.0 && (0.0..64.0).contains(&value)).then_some(value as usize)
}

#[cfg(test)]
pub(super) mod tests {
    use super::*;

    pub(in super::super) const TWO: &[Control] = &[
        Control::number(
            "torque",
            "torque on the wrench",
            Dimension::Torque,
            Both {
                us: Range::new([0.0, 90.0], 1.0, 45.0),
                metric: Range::new([0.0, 120.0], 1.0, 60.0),
            },
        ),
        Control::choices(
            "surface",
            "surface",
            &[Choice::new("dry", "dry"), Choice::new("oiled", "oiled")],
            0,
        ),
    ];

    const WALL: Control = Control::number(
        "wall",
        "wall",
        Dimension::Length,
        Both {
            us: Range::new([0.0625, 0.3125], 0.015_625, 0.125),
            metric: Range::new([2.0, 6.0], 0.25, 3.0),
        },
    );

    #[test]
    fn what_is_typed_is_read_in_any_unit_and_refused_in_words() {
        let torque = &TWO[0];
        assert_eq!(torque.read("60", UnitSystem::Metric), Ok(60.0));
        let metric = torque.read("20 lbf ft", UnitSystem::Metric).unwrap();
        assert!((metric - 27.116).abs() < 1e-3);
        assert_eq!(torque.read("20 lbf ft", UnitSystem::Us), Ok(20.0));
        for units in [UnitSystem::Us, UnitSystem::Metric] {
            let range = torque.range(units).unwrap();
            let most = torque.shown(range.max, units);
            assert_eq!(torque.read(&most, units), Ok(range.max));
        }
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
    fn a_comma_sets_thousands_apart_where_its_reader_writes_it_so() {
        let load = Control::number(
            "load",
            "load",
            Dimension::Force,
            Both {
                us: Range::new([0.0, 9000.0], 10.0, 0.0),
                metric: Range::new([0.0, 40.0], 1.0, 0.0),
            },
        );
        for text in ["5,630", "5630", "5,630 lbf"] {
            assert_eq!(load.read(text, UnitSystem::Us), Ok(5630.0), "{text}");
        }
        assert!(load.read("5,630", UnitSystem::Metric).is_err());
        assert_eq!(load.read("5,6", UnitSystem::Metric), Ok(5.6));
    }

    #[test]
    fn sizes_are_fractions_of_an_inch_and_read_back() {
        for (value, text) in [
            (0.125, "1/8\u{a0}in"),
            (0.109_375, "7/64\u{a0}in"),
            (0.13, "0.13\u{a0}in"),
        ] {
            assert_eq!(WALL.shown(value, UnitSystem::Us), text);
            assert_eq!(WALL.read(text, UnitSystem::Us), Ok(value));
        }
        assert_eq!(WALL.shown(3.0, UnitSystem::Metric), "3\u{a0}mm");
    }

    #[test]
    fn a_step_of_one_system_answers_to_the_step_of_the_other() {
        use UnitSystem::{Metric, Us};
        for (us, metric) in [(0.0625, 2.0), (0.125, 3.0), (0.1875, 4.0), (0.3125, 6.0)] {
            assert_eq!(WALL.answering(us, Us, Metric), metric);
            assert_eq!(WALL.answering(metric, Metric, Us), us);
        }
        // Between two steps: the nearest.
        assert_eq!(WALL.answering(3.3, Metric, Us), 0.140_625);
    }

    #[test]
    fn nothing_leaves_its_range() {
        for value in [f64::NAN, f64::INFINITY, -1e9, 1e9] {
            for control in TWO {
                for units in [UnitSystem::Us, UnitSystem::Metric] {
                    let is = control.within(value, units);
                    assert_eq!(control.within(is, units), is);
                }
            }
        }
    }
}

//! What a lesson is.

use super::DRAWING_WIDTH;
use super::chart::Chart;
use super::control::{Control, Range};
use super::state::State;
use super::words::fill_named;
use crate::parts::{Strip, StripField};
use crate::scene::{Draw, Mark, Scene};
use crate::units::Lettering;
use crate::words::find;
use calc_core::Input;
use calc_core::quantity::{Dimension, UnitSystem, unit_for, write};
use calc_core::report::Amount;

/// What comes out of a state: computed by calc-core, nothing else.
#[derive(Clone, Debug, PartialEq)]
pub struct Outcome {
    /// Key of the sentence that says what happened and why, in the lesson's words.
    pub said: &'static str,
    /// Keys of the sentences that tell the drawing to who cannot see it. All empty where the drawing is
    /// one that brings its own.
    pub seen: [&'static str; 3],
    /// A control that ends here before its range does, and at which value: a torque wrench goes no further than
    /// its click.
    pub end: Option<(usize, f64)>,
    /// Amounts by name: what sentences, worked examples and problems are filled with. The numbers of
    /// the controls are added to these by `values`.
    pub values: Named,
    /// The lesson's joint, for the check of the reader's own.
    pub joint: Input,
}

impl Outcome {
    /// Where a number of the state really is: not beyond the end that it has there.
    #[must_use]
    pub fn reached(&self, state: &State, control: usize) -> f64 {
        let at = state.number(control);
        match self.end {
            Some((ends, end)) if ends == control => at.min(end),
            _ => at,
        }
    }

    /// How far a slider goes: to the step at which it reaches its end.
    #[must_use]
    pub fn farthest(&self, range: &Range, control: usize) -> f64 {
        match self.end {
            Some((ends, end)) if ends == control => {
                let steps = ((end - range.min) / range.step).ceil();
                (range.min + range.step * steps).min(range.max)
            }
            _ => range.max,
        }
    }
}

/// Amounts by name. Names and dimensions stand in the program, the numbers alone are kept.
#[derive(Clone, Debug, PartialEq)]
pub struct Named {
    names: &'static [(&'static str, Dimension)],
    si: Vec<f64>,
}

impl Named {
    /// As many numbers in SI as names; [`named!`] writes the two from one list.
    #[must_use]
    pub(super) fn new<const N: usize>(
        names: &'static [(&'static str, Dimension); N],
        si: [f64; N],
    ) -> Self {
        Self {
            names,
            si: si.into(),
        }
    }

    /// One after the other.
    pub fn iter(&self) -> impl Iterator<Item = (&'static str, Amount)> {
        self.names
            .iter()
            .zip(&self.si)
            .map(|(&(name, dimension), &si)| (name, Amount::new(si, dimension)))
    }
}

/// An amount with its name.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Value {
    /// Its name.
    pub name: &'static str,
    /// The amount.
    pub amount: Amount,
    /// Whether it is a size as stock has it: a US shop writes that as a fraction.
    pub size: bool,
}

impl Value {
    /// The amount as a reader writes it.
    #[must_use]
    pub fn written(&self, units: UnitSystem) -> String {
        if self.size {
            units.stock(self.amount.si * 1e3)
        } else {
            write(self.amount.si, self.amount.dimension, units)
        }
    }
}

/// [`Named`] from `(name, number in SI, dimension)`, name and dimension constant.
macro_rules! named {
    ($(($name:expr, $si:expr, $dimension:expr $(,)?)),* $(,)?) => {
        $crate::lesson::model::Named::new(&[$(($name, $dimension)),*], [$($si),*])
    };
}
pub(super) use named;

/// A drawing at a lesson's width with the strip at its foot, still without title and description.
#[must_use]
pub(super) fn with_strip(
    look: &Look<'_>,
    height: f64,
    mut marks: Vec<Mark>,
    fields: Vec<StripField>,
) -> Scene {
    let strip = Strip { fields };
    marks.all(strip.marks(DRAWING_WIDTH, height - strip.height(DRAWING_WIDTH)));
    Scene {
        id: look.id.into(),
        width: DRAWING_WIDTH,
        height,
        title: String::new(),
        description: String::new(),
        marks,
    }
}

/// How a picture is lettered; a state knows it, [`State::look`].
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Look<'a> {
    /// Prefix of the picture's ids.
    pub id: &'a str,
    /// Units of the lettering.
    pub units: UnitSystem,
}

impl Look<'_> {
    /// One unit, as a reader sees it, of what is measured, in SI.
    pub(super) fn one(&self, dimension: Dimension) -> f64 {
        unit_for(dimension, self.units).to_si(1.0)
    }
}

/// A place on the drawing that can be dragged.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Handle {
    /// Which control it moves.
    pub control: usize,
    /// Where it is. A circle with class `grip` marks it there.
    pub at: (f64, f64),
    /// How far it goes on the drawing for one unit of the control.
    pub along: (f64, f64),
}

/// A drawing of an outcome, and a plot where the shape of a curve is the point.
#[derive(Clone, Debug, PartialEq)]
pub struct Picture {
    /// The drawing, 340 wide. Marks that belong to a part of the joint also carry a class `p-NAME`; the
    /// plot's curves and points of the same name light up with them.
    pub drawing: Scene,
    /// The plot.
    pub plot: Option<Chart>,
    /// What can be dragged.
    pub handles: Vec<Handle>,
}

/// A lesson's figure.
pub trait Model: Sync {
    /// Id of the lesson: of its section, its content file and its words.
    fn id(&self) -> &'static str;

    /// What can be moved, three at most.
    fn controls(&self) -> &'static [Control];

    /// Names of the amounts that are sizes as stock has them. The numbers of controls need not be named here.
    fn sizes(&self) -> &'static [&'static str] {
        &[]
    }

    /// What comes out of a state. `None` only if calc-core refused the joint, which no state within
    /// the controls' ranges may lead to; a test walks through them.
    fn outcome(&self, state: &State) -> Option<Outcome>;

    /// The picture of a state, without title and description; see [`told`](#method.told).
    fn picture(&self, state: &State, look: &Look<'_>) -> Option<Picture>;
}

impl dyn Model {
    /// All amounts by name: those of the outcome and those of the controls.
    #[must_use]
    pub fn values(&self, state: &State, outcome: &Outcome) -> Vec<Value> {
        let sizes = self.sizes();
        let come_out = outcome.values.iter().map(|(name, amount)| Value {
            name,
            amount,
            size: sizes.contains(&name),
        });
        let controls = self.controls().iter().enumerate();
        let own = controls.filter_map(|(i, control)| {
            Some(Value {
                name: control.key,
                amount: control.amount(outcome.reached(state, i), state.units())?,
                size: control.is_size(),
            })
        });
        come_out.chain(own).collect()
    }

    /// A sentence of the lesson's words with the amounts of a state; empty where there is no such key.
    #[must_use]
    fn filled(&self, words: &str, key: &str, (state, outcome): (&State, &Outcome)) -> String {
        let text = find(words, key).unwrap_or_default();
        fill_named(text, &self.values(state, outcome), state.units()).unwrap_or_default()
    }

    /// What happened and why, in at most three sentences. `words` are the lesson's `key = "text"` lines.
    #[must_use]
    pub fn sentence(&self, words: &str, state: &State, outcome: &Outcome) -> String {
        self.filled(words, outcome.said, (state, outcome))
    }

    /// The picture of a state with the words that tell it to who cannot see it.
    #[must_use]
    pub fn told(
        &self,
        words: &str,
        state: &State,
        outcome: &Outcome,
        look: &Look<'_>,
    ) -> Option<Picture> {
        let mut picture = self.picture(state, look)?;
        let drawing = &mut picture.drawing;
        if let Some(title) = find(words, "title") {
            drawing.title = title.into();
        }
        for key in outcome.seen.iter().filter(|key| !key.is_empty()) {
            if !drawing.description.is_empty() {
                drawing.description += " ";
            }
            drawing.description += &self.filled(words, key, (state, outcome));
        }
        Some(picture)
    }
}

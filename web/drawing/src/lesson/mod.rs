//! The figures of the lessons: what a reader can move, what comes out of it, how it is drawn.
//!
//! A lesson is a [`Model`]: at most three controls, an [`Outcome`] that calc-core computes from them,
//! and a [`Picture`] of that outcome. Each is made of inch stock for a reader of US customary units and of
//! metric stock for all others ([`Both`]): the same story with the sizes that a shop has. The build draws each model at its start for the still page, the
//! page draws it again whenever a control moves; worked examples and problems take their numbers from
//! the same outcome. All words stand in `content/`.

mod both;
mod chart;
mod control;
mod grip;
mod hollow;
mod leak;
mod link;
mod look;
mod model;
mod ply;
mod road;
mod share;
mod slip;
mod spring;
mod sprung;
mod stand;
mod state;
mod torque;
mod tube;
mod words;

#[cfg(test)]
mod claims;
#[cfg(test)]
mod every;
#[cfg(test)]
mod said;

pub use both::Both;
pub use chart::{Axis, Band, Chart, Curve, CurveKind, KeyPoint, Level, PLOT_HEIGHT, PLOT_WIDTH};
pub use control::{Choice, Control, ControlKind, MOST_CONTROLS, Range};
pub use link::link;
pub use model::{Handle, Look, Model, Named, Outcome, Picture, Value};
pub use state::{State, StateFault};
#[cfg(not(target_arch = "wasm32"))]
pub use words::read_words;
pub use words::{Slot, SlotFault, fill_named, slots};

/// Width of a lesson's drawing in drawing units: a phone's width, so that lettering stays readable.
pub const DRAWING_WIDTH: f64 = 340.0;

/// All lessons, in the order in which they are read.
pub static LESSONS: &[&dyn Model] = &[
    &spring::Spring, // 1
    &torque::Torque, // 2
    &grip::Grip,     // 3
    &slip::Slip,     // 4
    &share::Share,   // 5
    &hollow::Hollow, // 6
    &stand::Stand,   // 7
    &road::Road,     // 8
    &leak::Leak,     // 9
    &look::Measure,  // 10
];

/// Those whose figures stand on the front page too. Named by themselves, so that its program holds no others.
pub static FRONT: &[&dyn Model] = &[&spring::Spring, &slip::Slip];

/// The lesson with an id.
#[must_use]
pub fn lesson(id: &str) -> Option<&'static dyn Model> {
    LESSONS.iter().copied().find(|lesson| lesson.id() == id)
}

//! Damage that somebody sees who looks at the joint: it decides, whatever the numbers say.

use super::choices::Seen;
use super::fields::{Field, Input};

/// What is looked for, the gravest first.
pub const FOUND: [Field; 5] = [
    Field::FoundCrack,
    Field::FoundOval,
    Field::FoundSpin,
    Field::FoundHollow,
    Field::FoundTrails,
];

impl Input {
    /// The damage that was found, the gravest first.
    pub fn found(&self) -> impl Iterator<Item = Field> + '_ {
        FOUND
            .into_iter()
            .filter(|field| self.choice(*field) == Some(Seen::Yes.name()))
    }

    /// The joint as it was before the damage: without it, and its hole as drilled where the oval one was measured.
    #[must_use]
    pub fn undamaged(&self) -> Self {
        let mut sound = self.clone();
        if self.found_oval == Seen::Yes.name() {
            sound.hole_mm = None;
        }
        sound.without_found();
        sound
    }

    /// Takes back what was found; the measures stay.
    pub(crate) fn without_found(&mut self) {
        for field in FOUND {
            self.reset(field);
        }
    }
}

//! Parts of a page that are made one after the other: between two of them the browser draws and answers the reader.

use leptos::prelude::*;

use crate::el::El;

/// The queue of a page's parts. A part takes its place when what holds it is made, so parts of parts come last.
#[derive(Clone, Copy)]
pub struct Turns {
    /// How many have come.
    come: RwSignal<u32>,
    /// How many places were taken.
    taken: StoredValue<u32>,
}

impl Turns {
    /// A queue in which each part waits for [`go_on`](Self::go_on).
    #[must_use]
    pub fn one_by_one() -> Self {
        Self {
            come: RwSignal::new(0),
            taken: StoredValue::new(0),
        }
    }

    /// No waiting: each part is made with what holds it.
    #[must_use]
    pub fn at_once() -> Self {
        Self {
            come: RwSignal::new(u32::MAX),
            taken: StoredValue::new(0),
        }
    }

    /// Lets the next part be made; false once none waits.
    pub fn go_on(self) -> bool {
        let waits = self.come.get_untracked() < self.taken.get_value();
        if waits {
            self.come.update(|come| *come += 1);
        }
        waits
    }

    /// Takes a place; what comes back tells whether its turn has come.
    fn place(self) -> Memo<bool> {
        let place = self.taken.get_value();
        self.taken.set_value(place.saturating_add(1));
        Memo::new(move |_| self.come.get() > place)
    }
}

impl El {
    /// Children that are made in their turn, once and for all: the signals that they read while they are made do not
    /// make them again.
    #[must_use]
    pub fn in_turn(self, turns: Turns, make: impl Fn() -> Vec<Self> + Send + 'static) -> Self {
        let come = turns.place();
        self.live_children(move || {
            if come.get() {
                untrack(&make)
            } else {
                Vec::new()
            }
        })
    }
}

//! What the pages keep on the reader's device, so that nothing typed is lost on the way from one to the
//! next. A browser that refuses costs no more than that, and the page says so.

use leptos::web_sys::{self, Storage};

/// What is kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kept {
    /// The reader's own joint: [`Form::kept`](crate::trailer::Form::kept).
    Joint,
    /// What was measured on the joint as it was found.
    Traces,
    /// The reader's rates.
    Rates,
    /// What a shop does not have, among what repairs need.
    Shop,
    /// Records of repairs, each with the address of its joint.
    Record,
    /// The class word and what was asked with it.
    Class,
    /// What students answered, each by its sheet.
    Answers,
    /// Readings from the bench.
    Bench,
    /// The chosen units.
    Units,
}

impl Kept {
    /// Its name among what other pages of the same host keep.
    const fn key(self) -> &'static str {
        match self {
            Self::Joint => "clampwright-joint",
            Self::Traces => "clampwright-traces",
            Self::Rates => "clampwright-rates",
            Self::Shop => "clampwright-shop",
            Self::Record => "clampwright-record",
            Self::Class => "clampwright-class",
            Self::Answers => "clampwright-answers",
            Self::Bench => "clampwright-bench",
            Self::Units => "clampwright-units",
        }
    }

    /// Whether a key is its own.
    #[must_use]
    pub fn is(self, key: &str) -> bool {
        self.key() == key
    }

    /// What was kept, if anything.
    #[must_use]
    pub fn read(self) -> Option<String> {
        storage()?.get_item(self.key()).ok().flatten()
    }

    /// Keeps a text in place of what was there; `false` where the browser refuses.
    pub fn write(self, text: &str) -> bool {
        storage().is_some_and(|storage| storage.set_item(self.key(), text).is_ok())
    }

    /// Forgets it.
    pub fn forget(self) {
        if let Some(storage) = storage() {
            storage.remove_item(self.key()).ok();
        }
    }
}

/// Whether the browser keeps anything: asked by keeping and forgetting.
#[must_use]
pub fn works() -> bool {
    storage().is_some_and(|storage| {
        let probe = "clampwright-probe";
        storage.set_item(probe, "1").is_ok() && storage.remove_item(probe).is_ok()
    })
}

fn storage() -> Option<Storage> {
    web_sys::window()?.local_storage().ok().flatten()
}

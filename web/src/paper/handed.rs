//! What the address hands to this page: a joint, and what it becomes by a repair.

use calc_core::Scenario;
use calc_core::link::{Decoded, Sheet, decode, encode};

/// Between the joint and its repair. No link has it in itself.
const TO: char = '+';

/// A joint, and the same joint repaired.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Pair {
    pub(super) before: Sheet,
    pub(super) after: Option<Sheet>,
}

/// What an address holds.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Handed {
    /// No joint.
    Nothing,
    /// Something that is not wholly a joint: nothing may be built from it.
    Damaged,
    /// A joint that can be calculated.
    Joint(Box<Pair>),
}

/// The joint that a link holds, whole and within its ranges.
fn whole(link: &str) -> Option<Sheet> {
    let Decoded::Intact(reading) = decode(link) else {
        return None;
    };
    let sound = reading.notices.is_empty() && Scenario::new(&reading.sheet.input()).is_ok();
    sound.then_some(reading.sheet)
}

impl Handed {
    /// Reads what stands behind `#`.
    pub(super) fn read(hash: &str) -> Self {
        let text = hash.trim_start_matches('#');
        if text.is_empty() {
            return Self::Nothing;
        }
        let (before, after) = match text.split_once(TO) {
            Some((before, after)) => (before, Some(after)),
            None => (text, None),
        };
        let after = match after.map(whole) {
            Some(None) => return Self::Damaged,
            Some(after) => after,
            None => None,
        };
        whole(before).map_or(Self::Damaged, |before| {
            Self::Joint(Box::new(Pair { before, after }))
        })
    }
}

impl Pair {
    /// The address behind `#`.
    pub(super) fn hash(&self) -> String {
        address(&self.before, self.after.as_ref())
    }

    /// The joint as it is to be used: repaired, if there is a repair.
    pub(super) fn last(&self) -> &Sheet {
        self.after.as_ref().unwrap_or(&self.before)
    }
}

/// The address behind `#` for a joint and its repair.
pub(crate) fn address(before: &Sheet, after: Option<&Sheet>) -> String {
    let mut text = encode(before);
    if let Some(after) = after {
        text.push(TO);
        text.push_str(&encode(after));
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;
    use calc_core::quantity::UnitSystem;
    use calc_core::scenario::Input;
    use wasm_bindgen_test::wasm_bindgen_test;

    fn sheet(change: impl FnOnce(&mut Input)) -> Sheet {
        let mut input = Input::default();
        change(&mut input);
        Sheet::from_input(&input, UnitSystem::Us).0
    }

    #[wasm_bindgen_test(unsupported = test)]
    fn what_is_written_is_read_again() {
        let before = sheet(|i| i.tube_wall_mm = 3.0);
        let after = sheet(|i| i.support = "solid-insert".into());
        for after in [None, Some(after)] {
            let pair = Pair {
                before: before.clone(),
                after,
            };
            let Handed::Joint(read) = Handed::read(&format!("#{}", pair.hash())) else {
                panic!("{}", pair.hash());
            };
            assert_eq!(*read, pair);
        }
    }

    #[wasm_bindgen_test(unsupported = test)]
    fn nothing_is_built_from_a_part_of_a_link() {
        let link = encode(&sheet(|i| i.tube_wall_mm = 3.0));
        assert_eq!(Handed::read(""), Handed::Nothing);
        for text in [
            &link[..link.len() - 1],
            &link.replace("t-", "t-1"),
            &format!("{link}+"),
            &format!("{link}+v1/coupler"),
            "term-face",
        ] {
            assert_eq!(Handed::read(text), Handed::Damaged, "{text}");
        }
    }
}

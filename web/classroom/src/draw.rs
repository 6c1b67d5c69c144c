//! The seed: how a class word becomes an order of problems, the same for ever.
//!
//! The recipe, so that anybody can follow it without this program:
//!
//! 1. Of the word only what is not punctuation counts: of ASCII the letters, made lower case, and the digits; of
//!    everything else the characters as they are. At most [`LONGEST_WORD`] of them.
//! 2. The text `1/<word>/<units>/<level>/<what>` in UTF-8 (`1/blue7/us/easy/torque`) gives 64 bits by FNV-1a.
//! 3. They are the state of a PCG XSH RR 64/32 on stream 0 ([`Pcg32::new`]).
//! 4. A number below `n` is the upper half of the product of the next 32 bits and `n`.
//! 5. A list is put in order from its end: the last entry changes places with one drawn among all, the one before with
//!    one drawn among those up to it, and so on (Fisher and Yates).
//!
//! Student `k` gets entry `k` of each list: no two of a class have one problem in common.

use fnv::FnvHasher;
use rand_pcg::Pcg32;
use rand_pcg::rand_core::RngCore;
use std::hash::Hasher;

/// Characters of a class word that count.
pub const LONGEST_WORD: usize = 24;

/// What of a class word counts; `None` where nothing is left.
#[must_use]
pub fn cleaned(word: &str) -> Option<String> {
    let kept: String = word
        .chars()
        .filter(|c| c.is_ascii_alphanumeric() || !(c.is_ascii() || c.is_whitespace()))
        .map(|c| c.to_ascii_lowercase())
        .take(LONGEST_WORD)
        .collect();
    (!kept.is_empty()).then_some(kept)
}

/// 64 bits of a text.
pub(crate) fn hash(text: &str) -> u64 {
    let mut hasher = FnvHasher::default();
    hasher.write(text.as_bytes());
    hasher.finish()
}

/// Draws for one purpose.
pub(crate) struct Lot(Pcg32);

impl Lot {
    /// For what a text names.
    pub(crate) fn of(text: &str) -> Self {
        Self(Pcg32::new(hash(text), 0))
    }

    /// A number below `n`, 0 if that is 0.
    pub(crate) fn below(&mut self, n: usize) -> usize {
        let product = u64::from(self.0.next_u32()) * u64::try_from(n).unwrap_or(0);
        usize::try_from(product >> 32).unwrap_or(0)
    }

    /// Puts a list in an order drawn by lot.
    pub(crate) fn order<T>(&mut self, list: &mut [T]) {
        for last in (1..list.len()).rev() {
            let other = self.below(last + 1);
            list.swap(last, other);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn punctuation_and_case_of_a_word_do_not_count() {
        assert_eq!(cleaned(" Blue-Jeep 7! ").as_deref(), Some("bluejeep7"));
        assert_eq!(cleaned("Müller").as_deref(), Some("müller"));
        assert_eq!(cleaned(" -.- "), None);
        assert_eq!(
            cleaned(&"x".repeat(90)).map(|word| word.len()),
            Some(LONGEST_WORD)
        );
    }

    /// The recipe followed by hand: FNV-1a and PCG XSH RR as published, written out once more.
    #[test]
    fn the_recipe_is_what_it_says() {
        let text = "1/blue7/us/easy/torque";
        let mut fnv: u64 = 0xcbf2_9ce4_8422_2325;
        for byte in text.bytes() {
            fnv = (fnv ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3);
        }
        assert_eq!(hash(text), fnv);
        const TIMES: u64 = 6_364_136_223_846_793_005;
        let mut state = fnv.wrapping_add(1).wrapping_mul(TIMES).wrapping_add(1);
        let mut lot = Lot::of(text);
        for n in [2, 7, 40, 999] {
            let mixed = (((state >> 18) ^ state) >> 27) & 0xffff_ffff;
            let drawn = u32::try_from(mixed)
                .unwrap()
                .rotate_right(u32::try_from(state >> 59).unwrap());
            state = state.wrapping_mul(TIMES).wrapping_add(1);
            let expected = (u64::from(drawn) * n) >> 32;
            assert_eq!(
                lot.below(usize::try_from(n).unwrap()),
                usize::try_from(expected).unwrap()
            );
        }
    }
}

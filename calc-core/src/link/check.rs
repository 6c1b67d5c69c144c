//! Four characters that betray a cut or mistyped link.
//!
//! A cyclic redundancy check of 20 bits, most significant bit first, started with ones, over the bytes
//! of the text. The generator is (x + 1)(x¹⁹ + x⁵ + x² + x + 1) = x²⁰ + x¹⁹ + x⁶ + x⁵ + x³ + 1: the second
//! factor is primitive, so that up to 2¹⁹ − 1 bits (far beyond the longest link) any one, two or three
//! wrong bits and any run of at most 20 bits are caught. One wrong character is a run of 8, two
//! neighbours in the wrong order one of 16. Whatever else goes wrong passes once in 2²⁰.
//!
//! Frozen: a link that was once written must stay readable.

/// Generator without its leading term.
const GENERATOR: u32 = 0x8_0069;

const ALL_BITS: u32 = 0xF_FFFF;

/// Digits and letters without 0, 1, l and o, which are taken for each other.
const LETTERS: [char; 32] = [
    '2', '3', '4', '5', '6', '7', '8', '9', 'a', 'b', 'c', 'd', 'e', 'f', 'g', 'h', 'i', 'j', 'k',
    'm', 'n', 'p', 'q', 'r', 's', 't', 'u', 'v', 'w', 'x', 'y', 'z',
];

/// Characters of a check.
const LENGTH: usize = 4;

/// The check of a text.
pub(super) fn check(text: &str) -> String {
    let bits = text.bytes().fold(ALL_BITS, |state, byte| {
        (0..8).rev().fold(state, |state, place| {
            let out = (state >> 19 ^ u32::from(byte) >> place) & 1;
            (state << 1 & ALL_BITS) ^ (out * GENERATOR)
        })
    });
    (0..LENGTH)
        .rev()
        .filter_map(|place| LETTERS.get((bits >> (5 * place) & 31) as usize))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Computed apart from this program; they must never change.
    #[test]
    fn frozen() {
        for (text, expected) in [
            ("", "zzzz"),
            ("v1/coupler/u-us", "b4ye"),
            ("v1/coupler/u-si/b-2in/tq-90lbfft", "sj6a"),
        ] {
            assert_eq!(check(text), expected, "{text}");
        }
    }

    /// x to the power 2¹⁹ − 1, a prime, is 1 modulo the generator: no shorter period, so no two wrong
    /// bits closer than that cancel.
    #[test]
    fn period_is_the_longest() {
        let mut state = 1_u32;
        let mut first = None;
        for step in 1..=(1_u32 << 19) {
            state = (state << 1 & ALL_BITS) ^ ((state >> 19 & 1) * GENERATOR);
            if state == 1 {
                first = Some(step);
                break;
            }
        }
        assert_eq!(first, Some((1 << 19) - 1));
    }
}

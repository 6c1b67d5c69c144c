//! How easy a content file reads, by two published formulas.
//!
//! What is counted is the running text: titles, questions, options and replies, hints, near misses, answers and
//! the sentences of a lesson's figure. Formulas, the line of sources and references to sources are left out. A slot
//! counts as one word of one syllable and three characters, as a number with its unit is read in one go. A sentence
//! ends at a point, a question mark, an exclamation mark or the end of its paragraph; colons and semicolons do not
//! end one.

use std::ops::AddAssign;

use crate::register::Register;

/// What the formulas count.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Counts {
    /// Sentences.
    pub sentences: u32,
    /// Words.
    pub words: u32,
    /// Syllables of the words.
    pub syllables: u32,
    /// Letters and digits of the words.
    pub characters: u32,
    /// Words of the longest sentence.
    pub longest: u32,
}

impl AddAssign for Counts {
    fn add_assign(&mut self, other: Self) {
        self.sentences += other.sentences;
        self.words += other.words;
        self.syllables += other.syllables;
        self.characters += other.characters;
        self.longest = self.longest.max(other.longest);
    }
}

impl Counts {
    fn ratio(of: u32, to: u32) -> f64 {
        f64::from(of) / f64::from(to.max(1))
    }

    /// Grade of a United States school at which a text is read with ease, by syllables.
    ///
    /// `0.39·words/sentences + 11.8·syllables/words − 15.59`
    ///
    /// Made from texts of grades 5 to 16 read by adults.
    ///
    /// # Sources
    /// J. P. Kincaid, R. P. Fishburne, R. L. Rogers, B. S. Chissom, *Derivation of New Readability Formulas for Navy
    /// Enlisted Personnel*, Research Branch Report 8-75, 1975; the formula from memory.
    #[must_use]
    pub fn flesch_kincaid_grade(&self) -> f64 {
        0.39 * Self::ratio(self.words, self.sentences)
            + 11.8 * Self::ratio(self.syllables, self.words)
            - 15.59
    }

    /// The same by the length of words, so that no syllable has to be counted.
    ///
    /// `4.71·characters/words + 0.5·words/sentences − 21.43`
    ///
    /// # Sources
    /// E. A. Smith, R. J. Senter, *Automated Readability Index*, AMRL-TR-66-220, 1967; the formula from memory.
    #[must_use]
    pub fn automated_readability_index(&self) -> f64 {
        4.71 * Self::ratio(self.characters, self.words)
            + 0.5 * Self::ratio(self.words, self.sentences)
            - 21.43
    }
}

/// Counts a paragraph without marks of any kind but those of its sentences.
#[must_use]
pub fn plain(paragraph: &str) -> Counts {
    let mut counts = Counts::default();
    let mut open = 0;
    for word in paragraph.split_whitespace() {
        let parts = || word.split(|c: char| !c.is_alphanumeric() && !matches!(c, '\'' | '’' | '.'));
        let characters = word.chars().filter(|c| c.is_alphanumeric()).count();
        if characters > 0 {
            counts.words += 1;
            counts.characters += u32::try_from(characters).unwrap_or(0);
            counts.syllables += parts().map(syllables).sum::<u32>().max(1);
            open += 1;
            counts.longest = counts.longest.max(open);
        }
        let end = word.trim_end_matches(|c: char| "\"'”’)*_".contains(c));
        if open > 0 && end.ends_with(['.', '?', '!']) {
            counts.sentences += 1;
            open = 0;
        }
    }
    counts.sentences += u32::from(open > 0);
    counts
}

/// Syllables of a word as it is spoken, by its spelling: groups of vowels, and two vowels that are spoken one after
/// the other, less an e that is silent.
///
/// A number counts as one. Right for about nineteen words of twenty of this text; where it is not, it is one off.
#[must_use]
pub fn syllables(word: &str) -> u32 {
    let word = word
        .trim_matches(|c: char| !c.is_alphanumeric())
        .to_ascii_lowercase();
    let word = word.trim_end_matches("'s").trim_end_matches("’s");
    if word.is_empty() {
        return 0;
    }
    let letters = word.as_bytes();
    let vowel = |i: usize| letters.get(i).is_some_and(|c| b"aeiouy".contains(c));
    let groups = (0..letters.len())
        .filter(|i| vowel(*i) && (*i == 0 || !vowel(i - 1)))
        .count();
    // "being", "material", "usual", "radius", "aluminum" has none of them.
    let apart = [
        "eing", "eria", "eate", "ual", "ius", "ium", "area", "idea", "quie",
    ]
    .iter()
    .filter(|pair| word.contains(**pair))
    .count();
    // The e of "bolted" is spoken, that of "squeezed" is not; so with "faces" and "holes", "little" and "hole".
    let from_end = |n: usize| letters.len().checked_sub(n).and_then(|i| letters.get(i));
    let is = |n: usize, set: &[u8]| from_end(n).is_some_and(|c| set.contains(c));
    const VOWELS: &[u8] = b"aeiouy";
    let silent = if word.ends_with("le") || word.ends_with("les") {
        is(if word.ends_with('s') { 4 } else { 3 }, VOWELS)
    } else if word.ends_with("ed") {
        !is(3, b"tdaeiouy") && (!is(3, b"l") || is(4, b"aeiouylwr"))
    } else if word.ends_with("es") {
        !(is(3, b"sxzcgaeiouy") || is(3, b"h") && is(4, b"cs"))
    } else {
        word.ends_with('e') && !is(2, VOWELS)
    };
    // A silent e inside a word made of two.
    let inside = ["sidew", "someth", "someb", "careful"]
        .iter()
        .any(|part| word.contains(part));
    let count = (groups + apart).saturating_sub(usize::from(silent) + usize::from(inside));
    u32::try_from(count).unwrap_or(1).max(1)
}

/// Counts a content file in Markdown, `NN-name.md`.
#[must_use]
pub fn markdown(text: &str, register: &Register) -> Counts {
    let mut counts = Counts::default();
    let mut paragraph = String::new();
    let mut marks = 0;
    for line in text.lines() {
        if line.trim() == "---" && marks < 2 {
            marks += 1;
            continue;
        }
        if marks < 2 {
            if let Some(title) = line.strip_prefix("title:") {
                counts += plain(&prose(title, register));
            }
            continue;
        }
        let begins = line.starts_with("::")
            || line.trim().is_empty()
            || ["- ", "* ", "#", "hint:", "near:", "answer:", "From:"]
                .iter()
                .any(|b| line.starts_with(b))
            || line
                .split_once(". ")
                .is_some_and(|(n, _)| n.parse::<u32>().is_ok());
        if begins {
            counts += plain(&prose(&paragraph, register));
            paragraph.clear();
        }
        for piece in pieces(line) {
            paragraph.push_str(piece);
            // What is said to an option, and to a near miss, is a sentence of its own.
            if begins && line.contains("::") {
                counts += plain(&prose(&paragraph, register));
                paragraph.clear();
            } else {
                paragraph.push(' ');
            }
        }
    }
    counts += plain(&prose(&paragraph, register));
    counts
}

/// Counts the sentences of a lesson's figure, `key = "text"`.
#[must_use]
pub fn sentences(text: &str, register: &Register) -> Counts {
    let mut counts = Counts::default();
    for line in text.lines().filter(|line| !line.starts_with('#')) {
        if let Some((_, said)) = line.split_once(" = ") {
            counts += plain(&prose(said.trim_matches('"'), register));
        }
    }
    counts
}

/// What of a line is read.
fn pieces(line: &str) -> Vec<&str> {
    let after = |rest: &'static str| line.strip_prefix(rest).map(str::trim);
    if line.starts_with("From:") || line.starts_with("::end") {
        return Vec::new();
    }
    if let Some(question) = after("::predict").or_else(|| after("::trailer")) {
        return vec![question];
    }
    for block in ["::worked", "::faded", "::solo"] {
        if let Some(head) = after(block) {
            return vec![head.split_once('|').map_or(head, |(_, title)| title)];
        }
    }
    if let Some(rest) = ["::figure", "::live", "::checks"]
        .iter()
        .find_map(|b| line.strip_prefix(b))
    {
        return rest
            .trim()
            .split_once(' ')
            .map(|(_, words)| words)
            .into_iter()
            .collect();
    }
    if let Some(near) = after("near:") {
        return near
            .split_once("::")
            .map(|(_, words)| words)
            .into_iter()
            .collect();
    }
    if let Some(rest) = after("hint:").or_else(|| after("answer:")) {
        return vec![rest];
    }
    let line = line.trim_start_matches('#').trim_start();
    let line = line
        .strip_prefix("- ")
        .or_else(|| line.strip_prefix("* "))
        .unwrap_or(line);
    let line = match line.split_once(". ") {
        Some((number, rest)) if number.parse::<u32>().is_ok() => rest,
        _ => line,
    };
    line.split("::").collect()
}

/// A paragraph without formulas, slots, emphasis and references.
fn prose(text: &str, register: &Register) -> String {
    let mut out = String::new();
    for (i, part) in text.split('$').enumerate() {
        if i % 2 == 0 {
            out.push_str(part);
        }
    }
    let mut text = out;
    while let Some((before, rest)) = text.split_once('{') {
        let Some((_, after)) = rest.split_once('}') else {
            break;
        };
        text = format!("{before}8lb{after}");
    }
    let mut out = String::new();
    let mut rest = text.as_str();
    while let Some((before, inner)) = rest.split_once('[') {
        out.push_str(before);
        let Some((name, after)) = inner.split_once(']') else {
            break;
        };
        let source = register.sources.iter().any(|source| source.id == name);
        if source {
            out.truncate(out.trim_end().len());
        } else {
            out.push_str(name);
        }
        rest = after;
        if let Some(after) = rest.strip_prefix('(').and_then(|link| link.split_once(')')) {
            rest = after.1;
        }
    }
    out.push_str(rest);
    out.replace(['*', '_'], "")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn syllables_are_counted_as_they_are_spoken() {
        for (count, words) in [
            (0, "– '"),
            (
                1,
                "bolt nut the squeezed stretched holes hole clamp edge load eye plate bent gauge 12 bolt's cooled",
            ),
            (
                2,
                "little table faces washer tighten being started sideways bracket tension something friction handles \
                 bolted trailer's washes able",
            ),
            (3, "radius another decided area usual calculate"),
            (4, "aluminum material"),
        ] {
            for word in words.split(' ').filter(|w| !w.is_empty()) {
                assert_eq!(syllables(word), count, "{word}");
            }
        }
    }

    #[test]
    fn a_paragraph_is_counted() {
        let counts = plain("The bolt is a spring. It stretches, and so it holds");
        let wanted = Counts {
            sentences: 2,
            words: 11,
            syllables: 12,
            characters: 39,
            longest: 6,
        };
        assert_eq!(counts, wanted);
        assert_eq!(plain("  "), Counts::default());
    }

    /// A text of one hundred words, ten sentences, 140 syllables and 430 letters.
    #[test]
    fn the_formulas_give_what_they_give_by_hand() {
        let counts = Counts {
            sentences: 10,
            words: 100,
            syllables: 140,
            characters: 430,
            longest: 14,
        };
        assert!((counts.flesch_kincaid_grade() - (3.9 + 16.52 - 15.59)).abs() < 1e-9);
        assert!((counts.automated_readability_index() - (20.253 + 5.0 - 21.43)).abs() < 1e-9);
    }

    #[test]
    fn only_what_is_read_is_counted() {
        let text = "---\ntitle: The bolt\nid: x\n---\nOne two.\n\n::worked turn=1 | A title\nIt is $F = 2$ {clamp} now.\n::end\n\
                    near: clamp :: That was it.\nFrom: nothing.\n";
        let counts = markdown(text, &Register::default());
        assert_eq!((counts.sentences, counts.words), (5, 2 + 2 + 2 + 4 + 3));
    }
}

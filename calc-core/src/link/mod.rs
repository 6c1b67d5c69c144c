//! A joint as a link that can be read by eye, retyped from a wall, and told from a damaged one.
//!
//! ```text
//! v1/coupler/u-us/b-2.5in/tq-90lbfft/cl-sae-8/k-7f3q
//! ```
//!
//! `v1` is the meaning of all keys and all defaults, frozen for ever; `coupler` the calculation; then
//! `key-value`, first the units of results (`u-us`, `u-si`), then the fields that are filled in, in
//! the order of [`Field::ALL`]; last `k-` and the check of all that stands before it. A value is
//! a number as typed (`m` for minus) with the token of its unit, or the short name of a choice. The alphabet
//! is a–z, 0–9, `/`, `.` and `-`, and the end is a letter or a digit: such text survives mail, chat and
//! text messages.
//!
//! What is written is canonical: the same [`Sheet`] always gives the same text, and reading it gives that
//! sheet back exactly. Reading takes any text whatever.

mod check;
mod notice;
mod sheet;
mod words;

pub use notice::Notice;
pub use sheet::{Entry, Sheet, SheetError};
pub use words::{CopyForms, choice_in_words, copy_forms, describe};

use crate::quantity::{Unit, UnitSystem, link_number, read_link_number};
use crate::scenario::{Field, Kind};

/// Longest text that is read, in bytes. The longest link that can be written is shorter.
pub const LONGEST: usize = 4096;

/// Version and calculation: how every link begins.
const HEAD: &str = "v1/coupler";
const VERSION: &str = "v1";
const PLACE: &str = "coupler";

/// Key of the units of results.
const UNITS_KEY: &str = "u";
/// Key of the check.
const CHECK_KEY: &str = "k";

/// What a text turned out to be.
#[derive(Clone, Debug, PartialEq)]
pub enum Decoded {
    /// No link with settings: empty, or the name of a place on the page.
    NotALink,
    /// More text than any link has.
    TooLong,
    /// A link of another version or for another calculation; nothing was read.
    Foreign {
        /// What stands in place of version and calculation.
        kind: String,
    },
    /// The check is missing or does not fit: cut off or mistyped. Show what was read, do not apply it
    /// unasked.
    Damaged(Reading),
    /// Whole.
    Intact(Reading),
}

/// What was read from a link.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Reading {
    /// The settings.
    pub sheet: Sheet,
    /// What is to be said about them.
    pub notices: Vec<Notice>,
}

/// Writes a sheet as the text of a link, without `#`.
///
/// ```
/// use calc_core::link::{Decoded, Sheet, decode, encode};
/// let text = encode(&Sheet::default());
/// assert_eq!(text, "v1/coupler/u-us/k-b4ye");
/// assert!(matches!(decode(&text), Decoded::Intact(_)));
/// ```
#[must_use]
pub fn encode(sheet: &Sheet) -> String {
    let units = match sheet.units {
        UnitSystem::Us => "us",
        UnitSystem::Metric => "si",
    };
    let mut text = format!("{HEAD}/{UNITS_KEY}-{units}");
    for field in sheet.filled() {
        let value = match (sheet.entry(field), sheet.chosen(field)) {
            (Some(entry), _) => format!("{}{}", link_number(entry.number), entry.unit.token()),
            (None, name) => String::from(name.unwrap_or_default()),
        };
        text.push_str(&format!("/{}-{value}", field.key()));
    }
    let check = check::check(&text);
    format!("{text}/{CHECK_KEY}-{check}")
}

/// Reads the text of a link: the fragment with or without `#`, a query with `s=` in place of it, or
/// the whole address. Percent-encoded characters and capitals are read as what they stand for; what
/// does not belong to the alphabet ends the link.
///
/// Total: there is no text for which this function panics.
#[must_use]
pub fn decode(text: &str) -> Decoded {
    if text.len() > LONGEST {
        return Decoded::TooLong;
    }
    let plain = unescaped(text.trim()).to_ascii_lowercase();
    let (link, cut) = within_alphabet(payload(&plain));
    let Some((version, rest)) = link.split_once('/') else {
        return Decoded::NotALink;
    };
    let mut segments: Vec<&str> = rest.split('/').collect();
    let place = segments.remove(0);
    // A check cut short is no setting either.
    let stated = segments.pop_if(|last| last.starts_with("k-"));
    let body = stated.and_then(|stated| link.strip_suffix(stated)?.strip_suffix('/'));
    let whole = body
        .zip(stated)
        .is_some_and(|(body, stated)| stated == format!("{CHECK_KEY}-{}", check::check(body)));
    if version != VERSION || (whole && place != PLACE) {
        return Decoded::Foreign {
            kind: format!("{version}/{place}"),
        };
    }
    let mut reading = Reading::default();
    if cut {
        reading.notices.push(Notice::Cut);
    }
    reading.take_all(&segments);
    if whole {
        Decoded::Intact(reading)
    } else {
        Decoded::Damaged(reading)
    }
}

impl Reading {
    fn take_all(&mut self, segments: &[&str]) {
        let mut seen = Vec::new();
        for segment in segments {
            match segment.split_once('-') {
                Some((UNITS_KEY, "us")) => self.sheet.units = UnitSystem::Us,
                Some((UNITS_KEY, "si")) => self.sheet.units = UnitSystem::Metric,
                Some((UNITS_KEY, got)) => self.notices.push(Notice::UnknownUnits {
                    got: String::from(got),
                }),
                Some((key, value)) => match Field::by_key(key) {
                    Some(field) if seen.contains(&field) => {
                        self.notices.push(Notice::Repeated { field });
                    }
                    Some(field) => {
                        seen.push(field);
                        self.take(field, value);
                    }
                    None => self.unknown(segment),
                },
                None => self.unknown(segment),
            }
        }
    }

    fn unknown(&mut self, segment: &str) {
        self.notices.push(Notice::UnknownKey {
            setting: String::from(segment),
        });
    }

    fn take(&mut self, field: Field, value: &str) {
        let (number, unit) = number_and_token(value);
        let taken = match field.kind() {
            Kind::Choice { .. } => self.sheet.choose(field, value),
            Kind::Number { dimension, .. } => match read_link_number(number) {
                None => Err(SheetError::NotANumber { field }),
                Some(number) => match Unit::from_token(unit, dimension) {
                    Some(unit) => self.sheet.set(field, number, unit),
                    None => Err(SheetError::WrongUnit {
                        field,
                        wanted: Some(dimension),
                    }),
                },
            },
        };
        if let Err(error) = taken {
            self.notices.push(Notice::refused(error, value, unit));
        } else if let (Some(entry), Some((min, max))) = (self.sheet.entry(field), field.range()) {
            let got = entry.in_unit_of(field);
            if !(min..=max).contains(&got) {
                self.notices.push(Notice::OutOfRange {
                    field,
                    got,
                    min,
                    max,
                });
            }
        }
    }
}

/// `m20mm` → `m20` and `mm`.
fn number_and_token(value: &str) -> (&str, &str) {
    let unsigned = value.strip_prefix('m').unwrap_or(value);
    let token = unsigned.trim_start_matches(|c: char| c.is_ascii_digit() || c == '.');
    value
        .split_at_checked(value.len() - token.len())
        .unwrap_or((value, ""))
}

/// The link in a fragment, a query or a whole address.
fn payload(text: &str) -> &str {
    let fragment = text.split_once('#').map(|(_, fragment)| fragment);
    if let Some(fragment) = fragment.filter(|f| f.contains('/')) {
        return fragment;
    }
    let query = ["?s=", "&s="]
        .iter()
        .find_map(|mark| text.split_once(mark))
        .and_then(|(_, value)| value.split(['&', '#']).next());
    match (query, fragment) {
        (Some(query), _) => query,
        // An address with the name of a place, or just that name.
        (None, Some(place)) if !text.starts_with(VERSION) => place,
        (None, _) => text,
    }
}

/// The part before the first character that no link has, without punctuation at its end; and whether
/// something was cut off.
fn within_alphabet(text: &str) -> (&str, bool) {
    let foreign = |c: char| !matches!(c, 'a'..='z' | '0'..='9' | '/' | '.' | '-');
    let link = text.split(foreign).next().unwrap_or_default();
    let link = link.trim_end_matches(['/', '.', '-']);
    (link, link.len() < text.len())
}

/// Undoes percent-encoding of ASCII, also where it was done two or three times over. What is not
/// such a code stays.
fn unescaped(text: &str) -> String {
    let mut text = String::from(text);
    for _ in 0..3 {
        if !text.contains('%') {
            break;
        }
        text = unescaped_once(&text);
    }
    text
}

fn unescaped_once(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut rest = text;
    while let Some((before, after)) = rest.split_once('%') {
        out.push_str(before);
        let code = after
            .get(..2)
            .filter(|code| code.bytes().all(|b| b.is_ascii_hexdigit()))
            .and_then(|code| u8::from_str_radix(code, 16).ok())
            .filter(u8::is_ascii);
        match code {
            Some(byte) => {
                out.push(char::from(byte));
                rest = after.get(2..).unwrap_or_default();
            }
            None => {
                out.push('%');
                rest = after;
            }
        }
    }
    out.push_str(rest);
    out
}

#[cfg(test)]
mod tests;

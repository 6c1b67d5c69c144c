//! A sheet in words, and a link in the forms that mail, notes and forums take.

use super::sheet::{Entry, Sheet};
use crate::catalog;
use crate::quantity::{Unit, UnitSystem, unit_for, write, write_in};
use crate::scenario::{Field, Kind};

/// Digits of a number as typed: all that a reader types, none of the noise of 1/3.
const DIGITS_TYPED: usize = 7;

/// What is filled in, in list order, each value in words: `90 lb-ft (122 N·m)`. The number stands as
/// typed, then in the unit of `system` where that is another one.
#[must_use]
pub fn describe(sheet: &Sheet, system: UnitSystem) -> Vec<(Field, String)> {
    sheet
        .filled()
        .map(|field| {
            let value = match (field.kind(), sheet.entry(field)) {
                (Kind::Number { dimension, .. }, Some(Entry { number, unit })) => {
                    let si = unit.to_si(number);
                    let typed = write_in(si, unit, DIGITS_TYPED);
                    let shown = unit_for(dimension, system);
                    if shown == unit || unit == Unit::One || shown == Unit::One {
                        typed
                    } else {
                        format!("{typed} ({})", write(si, dimension, system))
                    }
                }
                _ => choice_in_words(field, sheet.chosen(field).unwrap_or_default()),
            };
            (field, value)
        })
        .collect()
}

/// A choice as the catalogue calls it; the short name with blanks where no catalogue lists it.
#[must_use]
pub fn choice_in_words(field: Field, name: &str) -> String {
    let label = match field {
        Field::TubeMaterial
        | Field::FittingMaterial
        | Field::SpreaderMaterial
        | Field::SleeveMaterial
        | Field::InsertMaterial => catalog::material(name).map(|m| m.label()),
        Field::Bolt => catalog::thread(name).map(|t| t.label()),
        Field::Grade => catalog::bolt_grade(name).map(|g| g.label()),
        Field::Lubrication => catalog::nut_factor(name).map(|k| k.label()),
        Field::Method => catalog::tightening_method(name).map(|m| m.label()),
        Field::Surface => catalog::slip_surface(name).map(|s| s.label()),
        Field::Sleeve => catalog::sleeve(name).map(|s| s.label()),
        Field::LoadRule => catalog::load_rule(name).map(|r| r.label()),
        _ => None,
    };
    label.map_or_else(|| name.replace('-', " "), String::from)
}

/// A link with its summary, ready to be pasted.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CopyForms {
    /// Summary, then the address on its own line.
    pub plain: String,
    /// `[summary](address)`.
    pub markdown: String,
    /// `[url=address]summary[/url]`.
    pub bbcode: String,
}

/// The three forms of a link. What would end a form early is escaped or replaced.
#[must_use]
pub fn copy_forms(url: &str, summary: &str) -> CopyForms {
    let line = summary.split_whitespace().collect::<Vec<_>>().join(" ");
    let url = ["(", ")", "[", "]", "<", ">", "\"", " "].iter().fold(
        String::from(url.trim()),
        |url, mark| {
            let code: String = mark.bytes().map(|b| format!("%{b:02X}")).collect();
            url.replace(mark, &code)
        },
    );
    let mut escaped = String::with_capacity(line.len());
    for c in line.chars() {
        if matches!(c, '\\' | '[' | ']' | '*' | '_' | '`' | '<' | '>') {
            escaped.push('\\');
        }
        escaped.push(c);
    }
    let round = line.replace('[', "(").replace(']', ")");
    CopyForms {
        plain: format!("{line}\n{url}"),
        markdown: format!("[{escaped}]({url})"),
        bbcode: format!("[url={url}]{round}[/url]"),
    }
}

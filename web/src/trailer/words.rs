//! The words for what the calculation says: sentences and labels by key from `content/messages.toml`.

use calc_core::catalog;
use calc_core::quantity::{Dimension, UnitSystem, as_fraction_inches, write};
use calc_core::repair::RepairKind;
use calc_core::report::{CheckId, Part, Said, Verdict};
use calc_core::scenario::{Field, Input};

/// A sentence with places `{0}`, `{1}` … to be filled.
pub(crate) trait Words {
    /// The sentence with its places filled; a place without a text stays as it is.
    fn with(&self, texts: &[&str]) -> String;
}

impl Words for str {
    fn with(&self, texts: &[&str]) -> String {
        let mut out = String::with_capacity(self.len() + 24);
        let mut rest = self;
        while let Some((before, after)) = rest.split_once('{') {
            out.push_str(before);
            let filled = after
                .split_once('}')
                .and_then(|(place, tail)| Some((texts.get(place.parse::<usize>().ok()?)?, tail)));
            match filled {
                Some((text, tail)) => {
                    out.push_str(text);
                    rest = tail;
                }
                None => {
                    out.push('{');
                    rest = after;
                }
            }
        }
        out.push_str(rest);
        out
    }
}

/// The text of a key; a key without a text stands for itself, and a test finds it.
#[must_use]
pub(crate) fn message(key: &str) -> &'static str {
    drawing::words::message(key).unwrap_or("?")
}

/// A sentence of the report in the reader's units.
#[must_use]
pub(crate) fn said(said: &Said, units: UnitSystem) -> String {
    let texts: Vec<String> = said
        .amounts
        .iter()
        .map(|a| amount(a.si, a.dimension, units))
        .collect();
    let texts: Vec<&str> = texts.iter().map(String::as_str).collect();
    message(said.code).with(&texts)
}

/// An amount in the reader's units; inches as a fraction where they are one of a ruler's.
#[must_use]
pub(crate) fn amount(si: f64, dimension: Dimension, units: UnitSystem) -> String {
    let ruler = match (dimension, units) {
        (Dimension::Length, UnitSystem::Us) => as_fraction_inches(si).filter(|_| on_a_ruler(si)),
        _ => None,
    };
    ruler.unwrap_or_else(|| write(si, dimension, units))
}

/// Whether a length is a whole number of sixteenths, to a thousandth: what a tape shows.
fn on_a_ruler(si: f64) -> bool {
    let sixteenths = si / 0.0254 * 16.0;
    sixteenths.abs() >= 1.0 && (sixteenths - sixteenths.round()).abs() < 0.016
}

/// The label of a field.
#[must_use]
pub(crate) fn label(field: Field) -> &'static str {
    keyed("field.", field.name())
}

/// The label of a field on the member that the joint has.
#[must_use]
pub(crate) fn label_in(input: &Input, field: Field) -> &'static str {
    let key = format!("label.{}.{}", input.member, field.name());
    drawing::words::message(&key).unwrap_or_else(|| label(field))
}

/// What to know when filling a field.
#[must_use]
pub(crate) fn help(field: Field) -> &'static str {
    keyed("help.", field.name())
}

/// What counts where an optional field is left empty.
#[must_use]
pub(crate) fn left_out(field: Field) -> &'static str {
    keyed("empty.", field.name())
}

fn keyed(kind: &str, name: &str) -> &'static str {
    message(&format!("{kind}{name}"))
}

/// The label of a choice: from the catalogue where it is a row of it.
#[must_use]
pub(crate) fn choice(field: Field, name: &str) -> String {
    let listed = match field {
        Field::TubeMaterial
        | Field::FittingMaterial
        | Field::SpreaderMaterial
        | Field::SleeveMaterial
        | Field::InsertMaterial => catalog::material(name).map(|m| m.label()),
        Field::Bolt => catalog::thread(name).map(|t| t.label()),
        Field::Grade => {
            return catalog::bolt_grade(name).map_or_else(String::new, |g| {
                format!("{} · {}", g.head_mark(), g.label())
            });
        }
        Field::Lubrication => catalog::nut_factor(name).map(|k| k.label()),
        Field::Method => catalog::tightening_method(name).map(|m| m.label()),
        Field::Surface => catalog::slip_surface(name).map(|s| s.label()),
        Field::Sleeve => catalog::sleeve(name).map(|s| s.label()),
        _ => drawing::words::message(&format!("choice.{}.{name}", field.name())),
    };
    String::from(listed.unwrap_or(name))
}

/// The key of a verdict: data attribute, message key, never reworded.
#[must_use]
pub(crate) const fn verdict_key(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Holds => "holds",
        Verdict::Close => "close",
        Verdict::NotChecked => "not-checked",
        Verdict::DoesNotHold => "does-not-hold",
    }
}

/// The words of a verdict.
#[must_use]
pub(crate) fn verdict(verdict: Verdict) -> &'static str {
    keyed("verdict.", verdict_key(verdict))
}

/// The key of a check, as in JSON: its name in lower case, words joined by hyphens.
#[must_use]
pub(crate) fn check_key(id: CheckId) -> String {
    hyphened(&format!("{id:?}"))
}

/// `BoltShear` → `bolt-shear`.
fn hyphened(name: &str) -> String {
    let mut out = String::with_capacity(name.len() + 4);
    for letter in name.chars() {
        if letter.is_ascii_uppercase() && !out.is_empty() {
            out.push('-');
        }
        out.push(letter.to_ascii_lowercase());
    }
    out
}

/// The question that a check answers.
#[must_use]
pub(crate) fn question(id: CheckId) -> &'static str {
    keyed("check.", &check_key(id))
}

/// The name of a part that gives way.
#[must_use]
pub(crate) fn part(part: Part) -> &'static str {
    keyed("part.", &hyphened(&format!("{part:?}")))
}

/// The name of a kind of repair.
#[must_use]
pub(crate) fn repair(kind: RepairKind) -> &'static str {
    keyed("repair.", &hyphened(&format!("{kind:?}")))
}

/// A share used, in percent; nothing where it was not checked.
#[must_use]
pub(crate) fn share(utilisation: Option<f64>) -> Option<String> {
    utilisation.map(|u| write(u, Dimension::Share, UnitSystem::Metric))
}

#[cfg(test)]
#[path = "words_tests.rs"]
mod tests;

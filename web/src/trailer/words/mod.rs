//! The words for what the calculation says: sentences and labels by key from `content/messages.toml`.

use calc_core::catalog;
use calc_core::quantity::{Dimension, UnitSystem, as_fraction_inches, write};
use calc_core::repair::Needs;
use calc_core::report::{Report, Said};
use calc_core::scenario::{Field, Input};
use drawing::words::Worded;
use drawing::words::key;

/// A sentence with places `{0}`, `{1}` … to be filled.
pub(crate) trait Words {
    /// The sentence with its places filled; a place without a text stays as it is.
    fn with(&self, texts: &[&str]) -> String;
}

impl Words for str {
    fn with(&self, texts: &[&str]) -> String {
        drawing::words::filled(self, texts)
    }
}

/// The text of a key; a key without a text stands for itself, and a test finds it.
#[must_use]
pub(crate) fn message(key: &str) -> &'static str {
    drawing::words::all::message(key).unwrap_or("?")
}

/// The words for whatever the calculation names: a question, a verdict, a field, a piece to cut.
#[must_use]
pub(crate) fn label<W: Worded>(of: W) -> &'static str {
    drawing::words::all::label(of).unwrap_or("?")
}

/// The text of a key of several parts.
#[must_use]
pub(crate) fn message_at(path: &[&str]) -> &'static str {
    drawing::words::all::message_at(path).unwrap_or("?")
}

/// A sentence of the report in the reader's units.
#[must_use]
pub(crate) fn said(said: &Said, units: UnitSystem) -> String {
    let texts: Vec<String> = said
        .amounts
        .iter()
        .map(|a| amount(a.si, a.dimension, units))
        .collect();
    drawing::words::filled(label(said.code), &texts)
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

/// The label of a field on the member that the joint has.
#[must_use]
pub(crate) fn label_in(input: &Input, field: Field) -> &'static str {
    let own = |of: &str| drawing::words::all::message_at(&["label", of, field.name()]);
    own(&input.member)
        .or_else(|| own(&input.joint))
        .unwrap_or_else(|| label(field))
}

/// Key of the group that a name stands in within a long list.
#[must_use]
pub(crate) fn group_of(field: Field, name: &str) -> Option<&'static str> {
    match field {
        Field::Bolt => catalog::thread(name).map(|t| match (t.system(), t.fine()) {
            (catalog::System::Metric, _) => "metric",
            (_, false) => "coarse",
            (_, true) => "fine",
        }),
        Field::Sleeve => Some(if name.starts_with("nps") {
            "pipe"
        } else {
            "tube"
        }),
        Field::TubeMaterial
        | Field::FittingMaterial
        | Field::SpreaderMaterial
        | Field::SleeveMaterial
        | Field::InsertMaterial => catalog::material(name).map(|m| match m.family() {
            catalog::Family::Aluminium => "aluminum",
            _ => "steel",
        }),
        _ => None,
    }
}

/// What to know when filling a field.
#[must_use]
pub(crate) fn help(field: Field) -> &'static str {
    message_at(&["help", field.name()])
}

/// What counts where an optional field is left empty.
#[must_use]
pub(crate) fn left_out(field: Field) -> &'static str {
    message_at(&["empty", field.name()])
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
            if let Some(g) = catalog::bolt_grade(name) {
                return format!("{} · {}", g.head_mark(), g.label());
            }
            None
        }
        Field::Lubrication => catalog::nut_factor(name).map(|k| k.label()),
        Field::Method => catalog::tightening_method(name).map(|m| m.label()),
        Field::Surface => catalog::slip_surface(name).map(|s| s.label()),
        Field::Sleeve => catalog::sleeve(name).map(|s| s.label()),
        _ => None,
    };
    // What is no row of the catalogue, or is not known.
    let listed =
        listed.or_else(|| drawing::words::all::message_at(&["choice", field.name(), name]));
    String::from(listed.unwrap_or(name))
}

/// A share used, in percent; nothing where it was not checked.
#[must_use]
pub(crate) fn share(utilisation: Option<f64>) -> Option<String> {
    utilisation.map(|u| write(u, Dimension::Share, UnitSystem::Metric))
}

/// What the check that decides uses of what it has, in percent.
#[must_use]
pub(crate) fn used(report: &Report) -> Option<String> {
    share(report.checks.first().and_then(|check| check.utilisation))
}

/// What a repair needs, in a sentence.
pub(crate) fn needs(needs: Needs) -> Option<String> {
    let named: Vec<&str> = needs.iter().map(label).collect();
    (!named.is_empty()).then(|| message(key::PAGE_NEEDS_2).with(&[&named.join(", ")]))
}

#[cfg(test)]
mod tests;

//! The pictures that stand in the page before any script runs.

use crate::measure::Measure;

/// A static figure by name: `"measure-1"` … `"measure-5"`. `None` for names that are not known.
///
/// The id prefix is the name, so a picture may stand once on a page.
#[must_use]
pub fn static_figure(name: &str) -> Option<String> {
    let number: usize = name.strip_prefix("measure-")?.parse().ok()?;
    let measure = Measure::ALL.get(number.checked_sub(1)?)?;
    Some(measure.scene(name).to_svg())
}

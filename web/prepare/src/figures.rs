//! The still drawing of each figure, which stays when the live one does not start.

/// The still drawing of a figure, or `None` for a name that is no figure.
#[must_use]
pub fn statics(name: &str) -> Option<String> {
    drawing::static_figure(name)
}

//! The still drawing of each figure, which stays when the live one does not start.

/// The still drawing of a figure, or `None` for a name that is no figure. A figure that has a plot
/// stands beside it, in the box that the live figure takes over.
#[must_use]
pub fn statics(name: &str) -> Option<String> {
    let drawing = drawing::static_figure(name)?;
    Some(match drawing::static_figure(&format!("{name}-plot")) {
        Some(plot) => {
            format!("<div class=\"stage\"><div class=\"pair\">{drawing}{plot}</div></div>")
        }
        None => drawing,
    })
}

//! The still drawing of each figure, which stays when the live one does not start.

/// Figures that only make sense in motion: their place is kept, with a sentence instead of a
/// drawing.
const LIVE_ONLY: &[&str] = &["opening"];

/// What stands in a figure before the page's program runs, or `None` for a name that is no figure.
#[must_use]
pub fn statics(name: &str) -> Option<String> {
    drawing::static_figure(name).or_else(|| {
        LIVE_ONLY.contains(&name).then(|| {
            String::from("<p class=\"reserved\">This drawing needs the page's program to run.</p>")
        })
    })
}

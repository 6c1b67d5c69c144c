//! The still drawing of each figure, which stays when the live one does not start.

/// Figures that the text may name and that have no still drawing yet.
const RESERVED: &[&str] = &["opening"];

/// The still drawing of a figure, or `None` for a name that is no figure.
#[must_use]
pub fn statics(name: &str) -> Option<String> {
    RESERVED.contains(&name).then(|| {
        String::from("<p class=\"reserved\">This drawing needs the page's program to run.</p>")
    })
}

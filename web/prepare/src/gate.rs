//! What the finished page must not hold.
//!
//! The page's content policy refuses inline scripts, inline styles and handlers in attributes; a
//! browser drops them silently, so they are found here instead.

use std::collections::BTreeSet;

use crate::problem::Problem;

/// What the content policy would refuse in a piece of HTML, if anything.
#[must_use]
pub fn refused(html: &str) -> Option<String> {
    let lower = html.to_ascii_lowercase();
    if lower.contains("<style") {
        return Some(String::from(
            "inline <style> is refused by the content policy",
        ));
    }
    if lower
        .replace("<script type=\"module\" src=", "")
        .replace("<script src=", "")
        .contains("<script")
    {
        return Some(String::from(
            "inline <script> is refused by the content policy",
        ));
    }
    attributes(&lower).find_map(|name| {
        (name == "style" || name.starts_with("on")).then(|| {
            format!("the attribute `{name}` is refused by the content policy: use a class")
        })
    })
}

/// Faults of the finished page: see [`refused`], an id that is given twice, a placeholder that was
/// not filled.
#[must_use]
pub fn page(file: &str, html: &str) -> Vec<Problem> {
    let mut problems = Vec::new();
    let mut ids = BTreeSet::new();
    for (index, line) in html.lines().enumerate() {
        let mut fault = |what: String| problems.push(Problem::new(file, index + 1, what));
        if let Some(what) = refused(line) {
            fault(what);
        }
        if line.contains("{{") {
            fault(String::from("a placeholder of the template is not filled"));
        }
        for part in line.split(" id=\"").skip(1) {
            let id = part.split('"').next().unwrap_or_default();
            if !ids.insert(id.to_owned()) {
                fault(format!("the id `{id}` is given twice"));
            }
        }
    }
    problems
}

/// Names in the tags of a piece of HTML, outside quoted values.
fn attributes(html: &str) -> impl Iterator<Item = &str> {
    html.split('<')
        .skip(1)
        .filter_map(|tag| tag.split('>').next())
        .flat_map(|tag| tag.split('"').step_by(2))
        .flat_map(str::split_whitespace)
        .filter_map(|word| word.split('=').next())
}

//! The whole page: the template `web/page.html` with everything put in.

use std::fmt::Write as _;
use std::path::Path;

use crate::checks;
use crate::gate;
use crate::lesson::{self, Lesson};
use crate::problem::Problem;
use crate::register::{Register, escape};

const TEMPLATE: &str = "web/page.html";

/// Files that are written into `web/`, with their names.
///
/// # Errors
/// As [`build`].
pub fn files(root: &Path) -> Result<[(&'static str, String); 2], Vec<Problem>> {
    let index = build(root)?;
    let checks = checks::page(&Register::read(root)?);
    let problems = gate::page(checks::FILE, &checks);
    if problems.is_empty() {
        Ok([("index.html", index), (checks::FILE, checks)])
    } else {
        Err(problems)
    }
}

/// Builds the page from a repository.
///
/// # Errors
/// Every fault of every content file, so that one run shows them all.
pub fn build(root: &Path) -> Result<String, Vec<Problem>> {
    let mut problems = Vec::new();
    let register = Register::read(root).unwrap_or_else(|mut found| {
        problems.append(&mut found);
        Register::default()
    });
    let mut lessons = Vec::new();
    for name in names(root, "content", "md") {
        let file = format!("content/{name}");
        match read(root, &file).and_then(|text| lesson::read(&file, &text, &register)) {
            Ok(lesson) => lessons.push(lesson),
            Err(mut found) => problems.append(&mut found),
        }
    }
    if lessons.is_empty() && problems.is_empty() {
        problems.push(Problem::new("content", 1, "no content"));
    }
    if !problems.is_empty() {
        return Err(problems);
    }
    lessons.sort_by(|a, b| (a.order, &a.id).cmp(&(b.order, &b.id)));
    let html = read(root, TEMPLATE)?
        .replace("{{styles}}", &styles(root))
        .replace("{{contents}}", &contents(&lessons))
        .replace(
            "{{sections}}",
            &lessons
                .iter()
                .map(|lesson| lesson.html.as_str())
                .collect::<String>(),
        )
        .replace("{{glossary}}", &register.glossary_html())
        .replace("{{sources}}", &register.sources_html());
    let problems = gate::page("web/index.html", &html);
    if problems.is_empty() {
        Ok(html)
    } else {
        Err(problems)
    }
}

/// Every style sheet in `web/style`, in the order of the names.
fn styles(root: &Path) -> String {
    let links = names(root, "web/style", "css").into_iter().map(|name| {
        format!("<link data-trunk rel=\"css\" href=\"style/{name}\" data-integrity=\"none\">")
    });
    links.collect::<Vec<_>>().join("\n")
}

fn contents(lessons: &[Lesson]) -> String {
    let mut html = String::new();
    for lesson in lessons.iter().filter(|lesson| lesson.part != "opening") {
        let _ = writeln!(
            html,
            "<a href=\"#{}\">{}</a>",
            lesson.id,
            escape(&lesson.nav)
        );
    }
    html
}

/// Names of the files with an ending in a folder, sorted; none when there is no such folder.
fn names(root: &Path, folder: &str, ending: &str) -> Vec<String> {
    let Ok(entries) = std::fs::read_dir(root.join(folder)) else {
        return Vec::new();
    };
    let mut names: Vec<String> = entries
        .filter_map(|entry| entry.ok()?.file_name().into_string().ok())
        .filter(|name| name.rsplit_once('.').is_some_and(|(_, end)| end == ending))
        .collect();
    names.sort();
    names
}

fn read(root: &Path, file: &str) -> Result<String, Vec<Problem>> {
    std::fs::read_to_string(root.join(file))
        .map_err(|error| vec![Problem::new(file, 1, error.to_string())])
}

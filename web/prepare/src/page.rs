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
        .replace("{{sections}}", &sections(&lessons))
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

/// The page's parts; the lessons have a list of their own.
fn contents(lessons: &[Lesson]) -> String {
    let mut html = String::new();
    if lessons.iter().any(is_lesson) {
        html.push_str("<a href=\"#lessons\">Lessons</a>\n");
    }
    for lesson in lessons
        .iter()
        .filter(|lesson| lesson.part != "opening" && !is_lesson(lesson))
    {
        let _ = writeln!(
            html,
            "<a href=\"#{}\">{}</a>",
            lesson.id,
            escape(&lesson.nav)
        );
    }
    html
}

const fn is_lesson(lesson: &Lesson) -> bool {
    lesson.number.is_some()
}

/// The sections in order, with the list of lessons before the first of them.
fn sections(lessons: &[Lesson]) -> String {
    let mut html = String::new();
    let mut listed = false;
    for lesson in lessons {
        if is_lesson(lesson) && !listed {
            html.push_str(&lesson_list(lessons));
            listed = true;
        }
        html.push_str(&lesson.html);
    }
    html
}

fn lesson_list(lessons: &[Lesson]) -> String {
    let mut html = String::from(
        "<nav id=\"lessons\" class=\"lesson-list\" aria-labelledby=\"lessons-heading\">\n\
         <h2 id=\"lessons-heading\">Lessons</h2>\n\
         <p>Guess first, then move the drawing: what you guessed wrong you will remember. Each takes about four minutes.</p>\n<ol>\n",
    );
    for lesson in lessons.iter().filter(|lesson| is_lesson(lesson)) {
        let _ = writeln!(
            html,
            "<li value=\"{}\"><a href=\"#{}\">{}</a></li>",
            lesson.number.unwrap_or_default(),
            lesson.id,
            escape(&lesson.title)
        );
    }
    html.push_str(
        "</ol>\n<p class=\"actions\"><button type=\"button\" data-act=\"units-us\" aria-pressed=\"true\" disabled>US units</button>\
         <button type=\"button\" data-act=\"units-metric\" aria-pressed=\"false\" disabled>metric units</button>\
         <button type=\"button\" data-act=\"present\" disabled>Show on a projector, step by step</button></p>\n</nav>\n\
         <div class=\"present-bar\" hidden><button type=\"button\" data-act=\"back\" disabled>back</button>\
         <span class=\"place\"></span><button type=\"button\" data-act=\"next\" disabled>next</button>\
         <button type=\"button\" data-act=\"leave\" disabled>whole page (Esc)</button></div>\n",
    );
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

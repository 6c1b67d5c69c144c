//! The figures of the lessons alone, for frames on other pages.

use crate::lesson::Lesson;
use crate::page::Page;
use crate::register::escape;
use crate::site::{EMBED, EMBEDDED, UNITS, path_of};

/// A page for each figure, and the one that leads to them by `?figure=…`.
pub(crate) fn pages(lessons: &[&Lesson]) -> Vec<Page> {
    let mut pages: Vec<Page> = lessons.iter().filter_map(|lesson| figure(lesson)).collect();
    let list: String = lessons
        .iter()
        .map(|lesson| {
            let (id, title) = (&lesson.id, escape(&lesson.title));
            format!("<li><a href=\"{EMBED}{id}.html\" data-figure=\"{id}\">{title}</a></li>\n")
        })
        .collect();
    pages.push(Page {
        path: "embed.html".into(),
        kind: EMBEDDED,
        title: "Figures to show on another page – Clampwright".into(),
        description: "Opens one figure of these lessons alone, named in the address.".into(),
        under: "",
        program: None,
        script: None,
        main: format!(
            "<h1>Which figure?</h1>\n<p id=\"no-figure\" hidden>The address names no figure that there is.</p>\n<ul>\n{list}</ul>\n"
        ),
    });
    pages
}

/// The figure of a lesson without its text.
fn figure(lesson: &Lesson) -> Option<Page> {
    let begins = lesson.html.find("<figure class=\"sheet live-figure")?;
    let (figure, _) = lesson.html.get(begins..)?.split_once("</figure>")?;
    let (id, title) = (&lesson.id, escape(&lesson.title));
    Some(Page {
        path: format!("{EMBED}{id}.html"),
        kind: EMBEDDED,
        title: format!("{}, the figure – Clampwright", lesson.title),
        description: format!("The figure of a lesson alone. {}", lesson.description),
        under: "",
        program: Some("lesson"),
        script: None,
        main: format!(
            "<section id=\"{id}\" data-part=\"lesson\" data-lesson=\"{id}\" aria-labelledby=\"fig-title\">\n\
             <h1 id=\"fig-title\">{title}</h1>\n<p class=\"where\">{UNITS}</p>\n{figure}</figure>\n</section>\n\
             <p class=\"from\"><a href=\"{{{{root}}}}{}\" target=\"_blank\" rel=\"noopener\">The whole lesson</a></p>\n",
            path_of(lesson)
        ),
    })
}

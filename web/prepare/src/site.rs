//! All pages, out of the content.

use std::fmt::Write as _;
use std::path::Path;

use crate::checks;
use crate::embed;
use crate::gate;
use crate::lesson::{self, FRONT as FRONT_PART, Lesson, list_mark};
use crate::links::{JOINT, Places};
use crate::page::{Assets, FRONT, Page};
use crate::problem::Problem;
use crate::register::{Register, escape};
use crate::teach::Teaching;

const TEMPLATE: &str = "web/page.html";

/// The frame of a figure that other pages show.
const EMBED_TEMPLATE: &str = "web/embed.html";

/// The kind of such a page.
pub(crate) const EMBEDDED: &str = "embed";

/// Where such pages stand.
pub(crate) const EMBED: &str = "embed/";

/// What other pages load stands here.
pub(crate) const API: &str = "api/";

/// The list of lessons.
const LESSONS: &str = "lessons/index.html";

/// Every page with its path from the folder of the front page.
///
/// # Errors
/// Every fault of every content file, so that one run shows them all.
pub fn files(root: &Path, assets: &Assets) -> Result<Vec<(String, String)>, Vec<Problem>> {
    let template = read(root, TEMPLATE)?;
    let embed_template = read(root, EMBED_TEMPLATE)?;
    let pages = pages(root)?;
    let places = Places::of(&pages);
    let mut problems = Vec::new();
    let mut files = Vec::new();
    for mut page in pages {
        match places.resolve(&page) {
            Ok(main) => {
                page.main = main;
                let template = if page.kind == EMBEDDED {
                    &embed_template
                } else {
                    &template
                };
                let html = page.html(template, assets);
                problems.append(&mut gate::page(&page.path, &html));
                files.push((page.path, html));
            }
            Err(mut found) => problems.append(&mut found),
        }
    }
    if problems.is_empty() {
        Ok(files)
    } else {
        Err(problems)
    }
}

/// Places of headings that were worded anew, each with its old one: links to that were given out.
const REWORDED: [[&str; 2]; 1] = [["care-welding-on-aluminum", "care-welding-on-aluminium"]];

/// Puts the old place of a heading beside its new one.
fn keep_old_places(main: &mut String) {
    for [now, was] in REWORDED {
        let now = format!("id=\"{now}\">");
        if main.contains(&now) {
            *main = main.replacen(&now, &format!("{now}<span id=\"{was}\"></span>"), 1);
        }
    }
}

/// Every page before its links are resolved.
///
/// # Errors
/// As [`files`].
pub fn pages(root: &Path) -> Result<Vec<Page>, Vec<Problem>> {
    let (register, sections) = read_all(root)?;
    let teaching = Teaching::read(root, &sections)?;
    let lists = Lists {
        register: &register,
        sections: &sections,
        teaching: &teaching,
    };
    let of_part = |part: &'static str| sections.iter().filter(move |section| section.part == part);
    let mut pages = Vec::new();
    if let Some(opening) = of_part("opening").next() {
        let rest = of_part(FRONT_PART).map(|section| section.html.as_str());
        let main: String = std::iter::once(opening.html.as_str()).chain(rest).collect();
        pages.push(Page {
            path: FRONT.into(),
            kind: "front",
            title: "Clampwright: will your trailer joint hold?".into(),
            description: opening.description.clone(),
            under: FRONT,
            program: Some("front"),
            script: None,
            main: lists.put_into(&main),
        });
    }
    for (part, path, under, program) in [
        ("trailer", JOINT, JOINT, Some("joint")),
        ("paper", "paper.html", JOINT, Some("paper")),
        ("lessons", LESSONS, LESSONS, None),
        ("class", "class.html", "class.html", None),
        ("handout", "handout.html", "class.html", Some("handout")),
        ("bench", "bench.html", "class.html", Some("handout")),
        ("speaker", "speaker.html", "class.html", None),
        ("method", "method.html", "method.html", None),
        ("words", "words.html", "method.html", None),
        ("sources", "sources.html", "method.html", None),
        ("care", "care.html", "care.html", None),
        ("api", "api.html", "method.html", None),
    ] {
        pages.extend(of_part(part).map(|section| Page {
            path: path.into(),
            kind: if part == "trailer" { "joint" } else { part },
            title: titled(&section.title),
            description: section.description.clone(),
            under,
            program,
            script: match part {
                "class" => Some("plan"),
                "speaker" => Some("speaker"),
                _ => None,
            },
            main: lists.put_into(&section.html),
        }));
    }
    let lessons: Vec<&Lesson> = of_part("lesson").collect();
    pages.extend(lessons.iter().enumerate().map(|(index, lesson)| Page {
        path: path_of(lesson),
        kind: "lesson",
        title: titled(&lesson.title),
        description: lesson.description.clone(),
        under: LESSONS,
        program: Some("lesson"),
        script: None,
        main: lesson_page(&lessons, index),
    }));
    pages.extend(embed::pages(&lessons));
    pages.push(Page {
        path: checks::FILE.into(),
        kind: "checks",
        title: titled(checks::TITLE),
        description: "Every value that this calculation was compared with: published tables, worked examples, other \
                      programs and finite elements, each beside ours, with the difference and the source."
            .into(),
        under: "method.html",
        program: None,
        script: None,
        main: checks::page(&register),
    });
    let bare: Vec<Problem> = pages
        .iter()
        .filter(|page| page.description.is_empty())
        .map(|page| {
            Problem::new(
                &page.path,
                1,
                "a page needs a `description` in the front matter",
            )
        })
        .collect();
    for page in &mut pages {
        keep_old_places(&mut page.main);
        // What is wider than a phone is moved by keys, too.
        page.main = page.main.replace("<pre>", "<pre tabindex=\"0\">");
    }
    if bare.is_empty() {
        Ok(pages)
    } else {
        Err(bare)
    }
}

fn titled(title: &str) -> String {
    format!("{title} – Clampwright")
}

pub(crate) fn path_of(lesson: &Lesson) -> String {
    format!("lessons/{}.html", lesson.id)
}

/// The choice of units beside a lesson's figure.
pub(crate) const UNITS: &str = "<button type=\"button\" data-act=\"units-us\" aria-pressed=\"true\" disabled>US units</button>\
     <button type=\"button\" data-act=\"units-metric\" aria-pressed=\"false\" disabled>metric</button>";

/// A lesson with its place among the others, the units, and the ways on.
fn lesson_page(lessons: &[&Lesson], index: usize) -> String {
    let Some(lesson) = lessons.get(index) else {
        return String::new();
    };
    let way = |which: &str, words: &str, to: Option<&&Lesson>| {
        to.map_or_else(String::new, |to| {
            format!(
                "<a rel=\"{which}\" href=\"{{{{root}}}}{}\"><span class=\"soft\">{words}</span> {}</a>\n",
                path_of(to),
                escape(&to.title)
            )
        })
    };
    let before = index.checked_sub(1).and_then(|before| lessons.get(before));
    let (title, text) = lesson
        .html
        .split_once("</h1>\n")
        .unwrap_or(("", &lesson.html));
    // What shows a lesson is loaded only when it is asked for.
    let text = text.replace(
        "data-act=\"present\"",
        "data-act=\"present\" data-script=\"{{root}}{{show}}\"",
    );
    format!(
        "{title}</h1>\n\
         <p class=\"where\"><a href=\"{{{{root}}}}{LESSONS}\">Lesson {} of {}</a>{UNITS}</p>\n{text}\
         <nav class=\"ways\" aria-label=\"Lessons\">\n{}{}</nav>\n",
        index + 1,
        lessons.len(),
        way("prev", "Before:", before),
        way("next", "Next:", lessons.get(index + 1)),
    )
}

/// What lists are made of.
struct Lists<'a> {
    register: &'a Register,
    sections: &'a [Lesson],
    teaching: &'a Teaching,
}

impl Lists<'_> {
    /// A section with its lists in their places.
    fn put_into(&self, html: &str) -> String {
        html.replace(&list_mark("::lessons", ""), &self.lessons(""))
            .replace(
                &list_mark("::lessons", "projector"),
                &self.lessons("#present"),
            )
            .replace(&list_mark("::signs", ""), &self.signs())
            .replace(&list_mark("::words", ""), &self.register.glossary_html())
            .replace(&list_mark("::sources", ""), &self.register.sources_html())
            .replace(
                &list_mark("::speaker", ""),
                &self.teaching.speaker(self.sections),
            )
            .replace(&list_mark("::plan", ""), &self.teaching.plan(self.sections))
            .replace(
                &list_mark("::skills", ""),
                &self.teaching.skills(self.sections),
            )
    }

    /// The lessons, each with its description; opened at a place of their pages, with the whole page beside it.
    fn lessons(&self, at: &str) -> String {
        let mut html = String::from("<ol class=\"lesson-list\">\n");
        for lesson in self
            .sections
            .iter()
            .filter(|section| section.part == "lesson")
        {
            let (path, title) = (path_of(lesson), escape(&lesson.title));
            let more = if at.is_empty() {
                format!("<span>{}</span>", escape(&lesson.description))
            } else {
                format!(
                    "<span><a href=\"{{{{root}}}}{path}\">read it, print it<span class=\"visually-hidden\">: {title}</span></a></span>"
                )
            };
            let _ = writeln!(
                html,
                "<li value=\"{}\"><a href=\"{{{{root}}}}{path}{at}\">{title}</a>{more}</li>",
                lesson.number.unwrap_or_default(),
            );
        }
        html.push_str("</ol>\n");
        html
    }

    /// When to stop, as the page of limits and care has it.
    fn signs(&self) -> String {
        let care = self.sections.iter().find(|section| section.part == "care");
        let list = care.and_then(|care| {
            let (_, rest) = care.html.split_once("<ul>")?;
            rest.split_once("</ul>")
        });
        list.map_or_else(String::new, |(list, _)| {
            format!("<ul class=\"signs\">{list}</ul>")
        })
    }
}

fn read_all(root: &Path) -> Result<(Register, Vec<Lesson>), Vec<Problem>> {
    let mut problems = Vec::new();
    let register = Register::read(root).unwrap_or_else(|mut found| {
        problems.append(&mut found);
        Register::default()
    });
    let mut sections = Vec::new();
    for name in names(root, "content", "md") {
        let file = format!("content/{name}");
        match read(root, &file).and_then(|text| lesson::read(&file, &text, &register)) {
            Ok(section) => sections.push(section),
            Err(mut found) => problems.append(&mut found),
        }
    }
    if sections.is_empty() && problems.is_empty() {
        problems.push(Problem::new("content", 1, "no content"));
    }
    sections.sort_by(|a, b| (a.order, &a.id).cmp(&(b.order, &b.id)));
    if problems.is_empty() {
        Ok((register, sections))
    } else {
        Err(problems)
    }
}

/// Names of the files with an ending in a folder, sorted; none when there is no such folder.
pub(crate) fn names(root: &Path, folder: &str, ending: &str) -> Vec<String> {
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

pub(crate) fn read(root: &Path, file: &str) -> Result<String, Vec<Problem>> {
    std::fs::read_to_string(root.join(file))
        .map_err(|error| vec![Problem::new(file, 1, error.to_string())])
}

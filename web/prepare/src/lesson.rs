//! One content file: front matter, then Markdown.
//!
//! ```text
//! ---
//! title: The bolt is a spring       required; the heading of the section
//! id: spring                        optional; else the file name without number and ending
//! order: 20                         optional; else the number the file name starts with
//! part: lesson                      optional; becomes data-part, `opening` takes the page's h1
//! nav: bolt as a spring             optional; shorter words for the contents
//! ---
//! Text with a source [asme-b1-1] and a term [preload].
//!
//! ::figure tighten What the figure shows, in one sentence.
//! ::live calculator What stands here while the page's program is not running.
//! ::checks outside What the calculation is compared with; the overview opens below these words.
//! ```
//!
//! A reference in square brackets that is neither a source, a term nor a link is a fault; a bracket
//! that is meant as one is written `\[`.

use std::cell::RefCell;
use std::fmt::Write as _;

use pulldown_cmark::{
    BrokenLink, CowStr, Event, HeadingLevel, LinkType, Options, Parser, Tag, TagEnd, html,
};

use crate::checks;
use crate::figures::statics;
use crate::gate;
use crate::problem::{Problem, line_of};
use crate::register::{Register, escape, slug};

/// A section of the page.
#[derive(Debug)]
pub struct Lesson {
    /// Id of the section, the target of links.
    pub id: String,
    /// Heading.
    pub title: String,
    /// Words in the contents list.
    pub nav: String,
    /// Place in the page.
    pub order: u32,
    /// Kind of section.
    pub part: String,
    /// The section as HTML.
    pub html: String,
}

/// Reads one content file.
///
/// # Errors
/// Every fault found, with its line: missing title, unknown key, figure, source or term, a heading
/// that skips the section's own, HTML that the page's content policy would refuse.
pub fn read(file: &str, text: &str, register: &Register) -> Result<Lesson, Vec<Problem>> {
    let mut problems = Vec::new();
    let front = Front::read(file, text, &mut problems);
    let stem = file.rsplit('/').next().unwrap_or(file);
    let stem = stem.strip_suffix(".md").unwrap_or(stem);
    let (number, name) = match stem.split_once('-') {
        Some((number, name)) if number.parse::<u32>().is_ok() => (number.parse().ok(), name),
        _ => (None, stem),
    };
    let id = front.id.unwrap_or_else(|| slug(name));
    let part = front.part.unwrap_or_else(|| String::from("lesson"));
    let body = Body {
        file,
        text,
        id: &id,
        register,
    };
    let inner = body.html(front.end, &mut problems);
    if !problems.is_empty() {
        return Err(problems);
    }
    let title = front.title.unwrap_or_default();
    let level = if part == "opening" { "h1" } else { "h2" };
    let html = format!(
        "<section id=\"{id}\" data-part=\"{part}\" aria-labelledby=\"{id}-heading\">\n\
         <{level} id=\"{id}-heading\">{}</{level}>\n{inner}</section>\n",
        escape(&title)
    );
    Ok(Lesson {
        nav: front.nav.unwrap_or_else(|| title.clone()),
        order: front.order.or(number).unwrap_or(u32::MAX),
        id,
        title,
        part,
        html,
    })
}

#[derive(Default)]
struct Front {
    title: Option<String>,
    id: Option<String>,
    nav: Option<String>,
    part: Option<String>,
    order: Option<u32>,
    /// Byte at which the Markdown begins.
    end: usize,
}

impl Front {
    fn read(file: &str, text: &str, problems: &mut Vec<Problem>) -> Self {
        let mut front = Self::default();
        let mut closed = false;
        let mut offset = 0;
        for (index, line) in text.split_inclusive('\n').enumerate() {
            offset += line.len();
            let line_number = index + 1;
            let line = line.trim();
            match (index, line) {
                (0, "---") => continue,
                (0, _) => break,
                (_, "---") => {
                    closed = true;
                    break;
                }
                (_, "") => continue,
                _ => {}
            }
            let (key, value) = match line.split_once(':') {
                Some((key, value)) => (key.trim(), value.trim().trim_matches('"')),
                None => (line, ""),
            };
            let value_text = Some(value.to_owned()).filter(|value| !value.is_empty());
            match key {
                "title" => front.title = value_text,
                "id" if slug(value) == value => front.id = value_text,
                "nav" => front.nav = value_text,
                "part" if slug(value) == value => front.part = value_text,
                "order" if value.parse::<u32>().is_ok() => front.order = value.parse().ok(),
                _ => problems.push(Problem::new(
                    file,
                    line_number,
                    format!("front matter `{line}` is not understood"),
                )),
            }
        }
        if !closed {
            problems.push(Problem::new(
                file,
                1,
                "no front matter between two lines `---`",
            ));
        } else if front.title.is_none() {
            problems.push(Problem::new(file, 1, "front matter has no title"));
        }
        front.end = offset;
        front
    }
}

struct Body<'a> {
    file: &'a str,
    text: &'a str,
    id: &'a str,
    register: &'a Register,
}

impl Body<'_> {
    /// Directives are whole lines, so the Markdown between two of them is rendered by itself.
    fn html(&self, start: usize, problems: &mut Vec<Problem>) -> String {
        let mut out = String::new();
        let (mut from, mut at) = (start, start);
        let mut fenced = false;
        for line in self
            .text
            .get(start..)
            .unwrap_or_default()
            .split_inclusive('\n')
        {
            if line.starts_with("```") {
                fenced = !fenced;
            }
            if !fenced && line.starts_with("::") {
                self.markdown(from, at, &mut out, problems);
                self.directive(line.trim(), at, &mut out, problems);
                from = at + line.len();
            }
            at += line.len();
        }
        self.markdown(from, at, &mut out, problems);
        out
    }

    fn directive(&self, line: &str, at: usize, out: &mut String, problems: &mut Vec<Problem>) {
        let mut words = line.splitn(3, char::is_whitespace);
        let kind = words.next().unwrap_or_default();
        let name = words.next().unwrap_or_default();
        let caption = words.next().unwrap_or_default().trim();
        let mut fault = |what: String| problems.push(Problem::new(self.file, self.line(at), what));
        if caption.is_empty() {
            fault(format!("`{kind} {name}` has no words after it"));
            return;
        }
        match kind {
            "::figure" => {
                let Some(drawing) = statics(name) else {
                    fault(format!("unknown figure `{name}`"));
                    return;
                };
                let caption_at = at + line.find(caption).unwrap_or_default();
                let caption = self.inline(caption_at, caption_at + caption.len(), problems);
                let _ = writeln!(
                    out,
                    "<figure class=\"sheet\" data-figure=\"{name}\" id=\"fig-{name}\">{drawing}\
                     <figcaption>{caption}</figcaption></figure>"
                );
            }
            "::checks" if name == "outside" => out.push_str(&checks::overview(caption)),
            "::live" if !name.is_empty() && slug(name) == name => {
                let _ = writeln!(
                    out,
                    "<div class=\"live\" id=\"{name}\"><p>{}</p></div>",
                    escape(caption)
                );
            }
            _ => fault(format!("`{kind} {name}` is not understood")),
        }
    }

    /// Markdown of one line without the paragraph around it.
    fn inline(&self, from: usize, to: usize, problems: &mut Vec<Problem>) -> String {
        let mut out = String::new();
        self.markdown(from, to, &mut out, problems);
        let out = out.trim();
        let out = out.strip_prefix("<p>").unwrap_or(out);
        out.strip_suffix("</p>").unwrap_or(out).to_owned()
    }

    fn markdown(&self, from: usize, to: usize, out: &mut String, problems: &mut Vec<Problem>) {
        let Some(chunk) = self.text.get(from..to) else {
            return;
        };
        let unknown = RefCell::new(Vec::new());
        let mut resolve = |link: BrokenLink<'_>| {
            let target = self.register.target(&link.reference);
            if target.is_none() {
                unknown.borrow_mut().push(Problem::new(
                    self.file,
                    self.line(from + link.span.start),
                    format!("unknown source or term `{}`", link.reference),
                ));
            }
            target.map(|target| (target.href.into(), target.title.into()))
        };
        let options =
            Options::ENABLE_TABLES | Options::ENABLE_SUBSCRIPT | Options::ENABLE_SUPERSCRIPT;
        let parser = Parser::new_with_broken_link_callback(chunk, options, Some(&mut resolve));
        let mut events = Vec::new();
        let mut number = None;
        for (mut event, span) in parser.into_offset_iter() {
            let line = self.line(from + span.start);
            match &mut event {
                Event::Start(Tag::Link {
                    link_type: LinkType::ShortcutUnknown,
                    id,
                    ..
                }) => number = self.register.target(id).and_then(|target| target.text),
                Event::Text(text) => {
                    if let Some(number) = number.take() {
                        *text = number.into();
                    }
                }
                Event::Start(Tag::Heading {
                    level: HeadingLevel::H1,
                    ..
                }) => problems.push(Problem::new(
                    self.file,
                    line,
                    "`#` is the section's own title; use `##`",
                )),
                Event::Html(raw) | Event::InlineHtml(raw) => problems
                    .extend(gate::refused(raw).map(|what| Problem::new(self.file, line, what))),
                _ => {}
            }
            events.push(event);
        }
        problems.append(&mut unknown.borrow_mut());
        html::push_html(out, self.under_section(events).into_iter());
    }

    /// One level down, because the section's title takes the level above; ids from the words.
    fn under_section<'e>(&self, mut events: Vec<Event<'e>>) -> Vec<Event<'e>> {
        let mut words: Option<String> = None;
        let mut ids = Vec::new();
        for event in &events {
            match event {
                Event::Start(Tag::Heading { .. }) => words = Some(String::new()),
                Event::Text(text) | Event::Code(text) => {
                    if let Some(words) = &mut words {
                        words.push_str(text);
                    }
                }
                Event::End(TagEnd::Heading(_)) => ids.extend(words.take().map(|w| slug(&w))),
                _ => {}
            }
        }
        let mut ids = ids.into_iter();
        for event in &mut events {
            match event {
                Event::Start(Tag::Heading { level, id, .. }) => {
                    *level = lower(*level);
                    *id = ids
                        .next()
                        .map(|slug| CowStr::from(format!("{}-{slug}", self.id)));
                }
                Event::End(TagEnd::Heading(level)) => *level = lower(*level),
                _ => {}
            }
        }
        events
    }

    fn line(&self, offset: usize) -> usize {
        line_of(self.text, offset)
    }
}

const fn lower(level: HeadingLevel) -> HeadingLevel {
    match level {
        HeadingLevel::H1 => HeadingLevel::H2,
        HeadingLevel::H2 => HeadingLevel::H3,
        HeadingLevel::H3 => HeadingLevel::H4,
        HeadingLevel::H4 => HeadingLevel::H5,
        HeadingLevel::H5 | HeadingLevel::H6 => HeadingLevel::H6,
    }
}

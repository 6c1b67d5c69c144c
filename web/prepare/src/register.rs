//! What the text may point to: published sources and terms of the trade.

use std::collections::BTreeSet;
use std::fmt::Write as _;
use std::path::Path;

use serde::Deserialize;

use crate::problem::{Problem, line_of};

/// A published source, as `[[source]]` in `content/sources.toml`.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Source {
    /// Id used in the text as `[S03]`.
    pub id: String,
    /// Title as printed.
    pub title: String,
    /// Publishing body or authors.
    #[serde(default)]
    pub by: Option<String>,
    /// Edition or revision.
    #[serde(default)]
    pub edition: Option<String>,
    /// Year of that edition.
    #[serde(default)]
    pub year: Option<u16>,
    /// Clause, table or page that is used.
    #[serde(default)]
    pub place: Option<String>,
    /// Where it can be read, if it is open.
    #[serde(default)]
    pub url: Option<String>,
    /// How the value reached this project: read in the text, in a reprint, from memory.
    #[serde(default)]
    pub held: Option<String>,
}

/// A term of the trade, as `[[term]]` in `content/glossary.toml`.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Term {
    /// The term; the text points to it as `[preload]`.
    pub term: String,
    /// What it means, one or two plain sentences.
    pub meaning: String,
}

/// Sources and terms together; either file may be missing.
#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Register {
    /// Sources in the order of the file.
    #[serde(default, rename = "source")]
    pub sources: Vec<Source>,
    /// Terms in the order of the file.
    #[serde(default, rename = "term")]
    pub terms: Vec<Term>,
}

impl Register {
    /// Reads `content/sources.toml` and `content/glossary.toml`.
    ///
    /// # Errors
    /// A file that cannot be read as the tables above, or an id that is given twice.
    pub fn read(root: &Path) -> Result<Self, Vec<Problem>> {
        let mut problems = Vec::new();
        let sources = read_one(root, "content/sources.toml", &mut problems);
        let terms = read_one(root, "content/glossary.toml", &mut problems);
        let register = Self {
            sources: sources.sources,
            terms: terms.terms,
        };
        let mut seen = BTreeSet::new();
        for anchor in register
            .sources
            .iter()
            .map(|source| source_anchor(&source.id))
            .chain(register.terms.iter().map(|term| term_anchor(&term.term)))
        {
            if !seen.insert(anchor.clone()) {
                problems.push(Problem::new(
                    "content",
                    1,
                    format!("`{anchor}` is given twice"),
                ));
            }
        }
        if problems.is_empty() {
            Ok(register)
        } else {
            Err(problems)
        }
    }

    /// Where a reference in the text leads, or `None` when it names nothing.
    #[must_use]
    pub fn anchor(&self, reference: &str) -> Option<String> {
        if self.sources.iter().any(|source| source.id == reference) {
            return Some(format!("#{}", source_anchor(reference)));
        }
        self.terms
            .iter()
            .find(|term| term.term.eq_ignore_ascii_case(reference))
            .map(|term| format!("#{}", term_anchor(&term.term)))
    }

    /// The list of sources as HTML, empty when there are none.
    #[must_use]
    pub fn sources_html(&self) -> String {
        if self.sources.is_empty() {
            return String::new();
        }
        let mut html = String::from(
            "<section id=\"source-list\" aria-labelledby=\"source-list-title\">\n\
             <h2 id=\"source-list-title\">Sources</h2>\n<ol class=\"sources\">\n",
        );
        for source in &self.sources {
            let parts = [
                source.by.clone(),
                source.edition.clone(),
                source.year.map(|year| year.to_string()),
                source.place.clone(),
                source.held.clone(),
            ];
            let detail: Vec<String> = parts.iter().flatten().map(|part| escape(part)).collect();
            let title = match &source.url {
                Some(url) => format!("<a href=\"{}\">{}</a>", escape(url), escape(&source.title)),
                None => format!("<cite>{}</cite>", escape(&source.title)),
            };
            let separator = if detail.is_empty() { "" } else { " · " };
            let _ = writeln!(
                html,
                "<li id=\"{}\"><b>{}</b> {title}{separator}{}</li>",
                source_anchor(&source.id),
                escape(&source.id),
                detail.join(" · ")
            );
        }
        html.push_str("</ol>\n</section>\n");
        html
    }

    /// The glossary as HTML, empty when there is none.
    #[must_use]
    pub fn glossary_html(&self) -> String {
        if self.terms.is_empty() {
            return String::new();
        }
        let mut html = String::from(
            "<section id=\"glossary\" aria-labelledby=\"glossary-title\">\n\
             <h2 id=\"glossary-title\">Words</h2>\n<dl class=\"glossary\">\n",
        );
        for term in &self.terms {
            let _ = writeln!(
                html,
                "<dt id=\"{}\">{}</dt><dd>{}</dd>",
                term_anchor(&term.term),
                escape(&term.term),
                escape(&term.meaning)
            );
        }
        html.push_str("</dl>\n</section>\n");
        html
    }
}

fn read_one(root: &Path, file: &str, problems: &mut Vec<Problem>) -> Register {
    let Ok(text) = std::fs::read_to_string(root.join(file)) else {
        return Register::default();
    };
    match toml::from_str(&text) {
        Ok(register) => register,
        Err(error) => {
            let line = error.span().map_or(1, |span| line_of(&text, span.start));
            problems.push(Problem::new(file, line, error.message()));
            Register::default()
        }
    }
}

fn source_anchor(id: &str) -> String {
    format!("source-{id}")
}

fn term_anchor(term: &str) -> String {
    format!("term-{}", slug(term))
}

/// Lower-case words joined by hyphens, for ids.
#[must_use]
pub fn slug(text: &str) -> String {
    let words: Vec<String> = text
        .split(|c: char| !c.is_ascii_alphanumeric())
        .filter(|word| !word.is_empty())
        .map(str::to_ascii_lowercase)
        .collect();
    words.join("-")
}

/// Text made safe for HTML content and for double-quoted attributes.
#[must_use]
pub fn escape(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            other => out.push(other),
        }
    }
    out
}

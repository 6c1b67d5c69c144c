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
    /// Id used in the text, as `[asme-b1-1]`; the reader sees the number in the list.
    pub id: String,
    /// Title as printed.
    pub title: String,
    /// Edition or revision, where it matters.
    #[serde(default)]
    pub edition: Option<String>,
    /// Standard, code, book, from memory and so on.
    pub kind: String,
    /// How it is held: what was seen, in what kind of copy, what is from memory.
    pub held: String,
}

/// A term of the trade, as `[[term]]` in `content/glossary.toml`.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Term {
    /// The term; the text points to it as `[preload]`.
    pub term: String,
    /// What it means, one or two plain sentences.
    pub meaning: String,
    /// What it was called once: links that were given out under that name lead here.
    #[serde(default)]
    pub was: Option<String>,
}

/// Where a reference leads and how it reads.
#[derive(Debug)]
pub struct Target {
    /// Address within the page.
    pub href: String,
    /// What the reader is told before following it.
    pub title: String,
    /// What stands in the text instead of the reference, if not the reference itself.
    pub text: Option<String>,
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
    pub fn target(&self, reference: &str) -> Option<Target> {
        let source = |(index, source): (usize, &Source)| Target {
            href: format!("#{}", source_anchor(&source.id)),
            title: source.title.clone(),
            text: Some(format!("[{}]", index + 1)),
        };
        let term = |term: &Term| Target {
            href: format!("#{}", term_anchor(&term.term)),
            title: String::new(),
            text: None,
        };
        let mut sources = self.sources.iter().enumerate();
        sources
            .find(|(_, source)| source.id == reference)
            .map(source)
            .or_else(|| {
                let mut terms = self.terms.iter();
                terms
                    .find(|term| term.term.eq_ignore_ascii_case(reference))
                    .map(term)
            })
    }

    /// The list of sources as HTML, folded by kind. The number of a source is its place in the file, as in the text.
    #[must_use]
    pub fn sources_html(&self) -> String {
        let mut html = String::new();
        for (id, name, kinds) in GROUPS {
            let of_group = |source: &&Source| group_of(&source.kind) == *id;
            let list: Vec<(usize, &Source)> = (1..)
                .zip(&self.sources)
                .filter(|(_, source)| of_group(source))
                .collect();
            if list.is_empty() {
                continue;
            }
            let _ = write!(
                html,
                "<details class=\"fold\" id=\"sources-{id}\"><summary><span><b>{name}</b> <span class=\"told\">{}{kinds}</span></span></summary>\n<ol class=\"sources\">\n",
                list.len()
            );
            for (number, source) in list {
                let edition = source
                    .edition
                    .iter()
                    .map(|edition| format!(", {}", escape(edition)));
                let _ = writeln!(
                    html,
                    "<li value=\"{number}\" id=\"{}\"><cite>{}</cite>{} ({}). {}</li>",
                    source_anchor(&source.id),
                    escape(&source.title),
                    edition.collect::<String>(),
                    escape(&source.kind),
                    escape(&source.held)
                );
            }
            html.push_str("</ol></details>\n");
        }
        html
    }

    /// The glossary as HTML, folded by letter; what is in a fold stands on it.
    #[must_use]
    pub fn glossary_html(&self) -> String {
        let letter = |term: &Term| term.term.chars().next().map(|c| c.to_ascii_uppercase());
        let mut html = String::new();
        for fold in self.terms.chunk_by(|a, b| letter(a) == letter(b)) {
            let Some(letter) = fold.first().and_then(letter) else {
                continue;
            };
            let names: Vec<String> = fold.iter().map(|term| escape(&term.term)).collect();
            let _ = write!(
                html,
                "<details class=\"fold\" id=\"words-{}\"><summary><span><b>{letter}</b> <span class=\"told\">{}</span></span></summary>\n<dl class=\"glossary\">\n",
                letter.to_ascii_lowercase(),
                names.join(" · ")
            );
            for term in fold {
                let _ = writeln!(
                    html,
                    "<dt id=\"{}\">{}{}</dt><dd>{}</dd>",
                    term_anchor(&term.term),
                    term.was.as_deref().map_or_else(String::new, |was| format!(
                        "<span id=\"{}\"></span>",
                        term_anchor(was)
                    )),
                    escape(&term.term),
                    escape(&term.meaning)
                );
            }
            html.push_str("</dl></details>\n");
        }
        html
    }
}

/// The folds of the list of sources: id, name, and what it says after the number of its sources.
const GROUPS: &[(&str, &str, &str)] = &[
    ("standards", "Standards and codes", ""),
    ("laws", "Laws and rules of the road", ""),
    ("books", "Books, handbooks and papers", ""),
    ("trade", "The trade", ": guides, pages, practice"),
    (
        "own",
        "Computed, assumed or remembered",
        ", for want of a printed source",
    ),
];

/// The fold in which a kind of source stands.
fn group_of(kind: &str) -> &'static str {
    let is = |words: &[&str]| words.iter().any(|word| kind.contains(word));
    if is(&["law"]) {
        "laws"
    } else if is(&["trade", "practice"]) {
        "trade"
    } else if is(&["standard", "code", "guideline"]) {
        "standards"
    } else if is(&[
        "own computation",
        "assumption",
        "memory",
        "derivation",
        "software",
    ]) {
        "own"
    } else {
        "books"
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

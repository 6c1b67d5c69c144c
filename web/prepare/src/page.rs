//! One page: the template `web/page.html` with everything put in.

use std::fmt::Write as _;

use crate::register::escape;

/// What is the same on every page.
#[derive(Clone, Debug)]
pub struct Assets {
    /// Name of the style sheet.
    pub style: String,
    /// Name of the icon.
    pub icon: String,
    /// The programs that were built, by name.
    pub programs: Vec<Program>,
    /// The scripts, by name.
    pub scripts: Vec<Script>,
}

/// A script of the pages.
#[derive(Clone, Debug)]
pub struct Script {
    /// `boot`, `page` …
    pub name: String,
    /// The name of its file.
    pub file: String,
}

/// The two files of a program.
#[derive(Clone, Debug)]
pub struct Program {
    /// `front`, `lesson`, `joint` or `api`.
    pub name: String,
    /// Its loader.
    pub js: String,
    /// Its code.
    pub wasm: String,
}

impl Assets {
    /// Names as they would be, for looking at pages before anything is built.
    #[must_use]
    pub fn unbuilt() -> Self {
        let program = |name: &str| Program {
            name: name.into(),
            js: format!("{name}.js"),
            wasm: format!("{name}_bg.wasm"),
        };
        Self {
            style: "style.css".into(),
            icon: "icon.svg".into(),
            programs: ["front", "lesson", "joint", "paper", "handout", "api"]
                .map(program)
                .into(),
            scripts: [
                "boot", "page", "old", "foot", "embed", "show", "speaker", "plan",
            ]
            .map(|name| Script {
                name: name.into(),
                file: format!("{name}.js"),
            })
            .into(),
        }
    }

    /// A text with the names of programs and scripts in it, `{{api.wasm}}`, `{{boot}}`, put in.
    #[must_use]
    pub fn named(&self, text: &str) -> String {
        let mut text = String::from(text);
        for Program { name, js, wasm } in &self.programs {
            text = text
                .replace(&format!("{{{{{name}.js}}}}"), js)
                .replace(&format!("{{{{{name}.wasm}}}}"), wasm);
        }
        for Script { name, file } in &self.scripts {
            text = text.replace(&format!("{{{{{name}}}}}"), file);
        }
        text
    }
}

/// A page before it is put into the template.
#[derive(Clone, Debug)]
pub struct Page {
    /// Where it stands, from the folder of the front page.
    pub path: String,
    /// Its kind, for the style sheet: `front`, `lesson`, `joint`, `words` …
    pub kind: &'static str,
    /// Its title in the browser and in searches.
    pub title: String,
    /// What a search shows below the title.
    pub description: String,
    /// The page of the contents that it belongs to.
    pub under: &'static str,
    /// The program that it loads, if any.
    pub program: Option<&'static str>,
    /// A script of its own, beside those of every page.
    pub script: Option<&'static str>,
    /// What it holds.
    pub main: String,
}

/// The pages that every page leads to, with their words.
const CONTENTS: &[(&str, &str)] = &[
    ("joint.html", "Your joint"),
    ("lessons/index.html", "Lessons"),
    ("class.html", "For a class"),
    ("method.html", "Method"),
    ("care.html", "Care"),
];
const REFERENCE: &[(&str, &str)] = &[
    ("method.html", "How it is calculated"),
    ("checks.html", "Checked against"),
    ("words.html", "Words"),
    ("sources.html", "Sources"),
    ("care.html", "Limits and care"),
    ("api.html", "For your own page"),
];

/// The front page.
pub const FRONT: &str = "index.html";

impl Page {
    /// The way from this page to the folder of the front page.
    #[must_use]
    pub fn root(&self) -> String {
        "../".repeat(self.path.matches('/').count())
    }

    /// The page in its template.
    #[must_use]
    pub fn html(&self, template: &str, assets: &Assets) -> String {
        let root = self.root();
        let named = |name: &str| assets.programs.iter().find(|program| program.name == name);
        let program = self.program.and_then(named);
        let front = self.path == FRONT;
        let own = self.script.map_or_else(String::new, |name| {
            format!("<script src=\"{{{{root}}}}{{{{{name}}}}}\" defer></script>\n")
        });
        let html = template
            .replace("{{kind}}", self.kind)
            .replace("{{title}}", &escape(&self.title))
            .replace("{{description}}", &escape(&self.description))
            .replace("{{first}}", if front { self.script() } else { "" })
            .replace("{{scripts}}", if front { "" } else { self.script() })
            .replace("{{own}}", &own)
            .replace("{{program}}", &program.map_or_else(String::new, loaded))
            .replace(
                "{{name}}",
                &self.link(FRONT, "Clampwright", " class=\"name\""),
            )
            .replace("{{contents}}", &self.links(CONTENTS))
            .replace("{{reference}}", &self.links(REFERENCE))
            .replace("{{main}}", &self.main)
            .replace("{{style}}", &assets.style)
            .replace("{{icon}}", &assets.icon);
        assets
            .named(&html)
            // Scripts take a name without a folder for a package.
            .replace("{{dot}}", if root.is_empty() { "./" } else { &root })
            .replace("{{root}}", &root)
    }

    /// What runs before the page is painted: on the front page with the addresses of the first versions in it, and
    /// ahead of all else, as who only passes through need not load the rest.
    fn script(&self) -> &'static str {
        if self.path == FRONT {
            "<script src=\"{{root}}{{old}}\"></script>\n"
        } else {
            "<script src=\"{{root}}{{page}}\"></script>\n"
        }
    }

    fn links(&self, pages: &[(&str, &str)]) -> String {
        pages.iter().fold(String::new(), |mut html, (page, words)| {
            let _ = writeln!(html, "{}", self.link(page, words, ""));
            html
        })
    }

    /// A link that tells where the reader is: on the page itself, or on one that belongs to it.
    fn link(&self, to: &str, words: &str, more: &str) -> String {
        let current = if self.path == to {
            " aria-current=\"page\""
        } else if self.under == to {
            " aria-current=\"true\""
        } else {
            ""
        };
        format!("<a href=\"{{{{root}}}}{to}\"{more}{current}>{words}</a>")
    }
}

/// The program ahead of `boot.js`, but only where scripts run: elsewhere nobody would use it. A browser that does
/// not know the question loads both when boot.js asks.
fn loaded(program: &Program) -> String {
    let Program { js, wasm, .. } = program;
    format!(
        "<link rel=\"modulepreload\" media=\"(scripting: enabled)\" href=\"{{{{root}}}}{js}\">\
         <link rel=\"preload\" media=\"(scripting: enabled)\" as=\"fetch\" type=\"application/wasm\" crossorigin href=\"{{{{root}}}}{wasm}\">\n\
         <script type=\"module\" src=\"{{{{root}}}}{{{{boot}}}}\" data-js=\"{{{{dot}}}}{js}\" data-wasm=\"{{{{dot}}}}{wasm}\"></script>\n"
    )
}

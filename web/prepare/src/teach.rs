//! What a class needs beside the lessons: notes for whoever shows them, the plan of a class, and which skills each lesson
//! serves. Notes stand in `content/speaker/<lesson>.toml`, skills in `content/skills.toml`, the words of the scripts in
//! `content/show.toml`.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::path::Path;

use serde::Deserialize;

use crate::lesson::Lesson;
use crate::problem::Problem;
use crate::register::escape;
use crate::site::{names, path_of, read};

const NOTES: &str = "content/speaker";
const SKILLS: &str = "content/skills.toml";
const WORDS: &str = "content/show.toml";

/// The steps of a lesson that notes can be for, in order, each with the part of its minutes that it is in.
const STEPS: [(&str, &str); 11] = [
    ("hook", "hook"),
    ("guess", "guess"),
    ("drawing", "figure"),
    ("plot", "figure"),
    ("told", "figure"),
    ("why", "why"),
    ("worked", SUMS),
    ("faded", SUMS),
    ("solo", SUMS),
    ("also", "why"),
    ("own", "own"),
];

/// The part of a lesson that a class without sums leaves out.
const SUMS: &str = "sums";

/// The tables of words that a script is given.
const GIVEN: [(&str, &[&str]); 3] = [
    ("show", &["show"]),
    ("speaker", &["speaker", "steps"]),
    ("plan", &["plan"]),
];

/// Notes for one lesson.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Notes {
    /// What the class can say or do after it.
    aim: String,
    /// Minutes of each part.
    minutes: BTreeMap<String, u32>,
    /// Minutes toward each skill.
    serves: BTreeMap<String, u32>,
    /// What to have at hand.
    tools: String,
    /// What nobody may do, or has to wear.
    safety: String,
    /// What to say or ask at each step.
    say: BTreeMap<String, String>,
    /// What somebody thinks who gives a wrong answer, by its number.
    means: BTreeMap<String, String>,
    /// What is often held against it.
    objection: Vec<Objection>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Objection {
    says: String,
    answer: String,
}

impl Notes {
    fn minutes(&self) -> u32 {
        self.minutes.values().sum()
    }

    fn sums(&self) -> u32 {
        self.minutes.get(SUMS).copied().unwrap_or_default()
    }
}

/// Something that a shop wants its people to be able to do.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Skill {
    id: String,
    can: String,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Skills {
    skill: Vec<Skill>,
}

type Words = BTreeMap<String, BTreeMap<String, String>>;

/// All of it.
pub(crate) struct Teaching {
    notes: BTreeMap<String, Notes>,
    skills: Vec<Skill>,
    words: Words,
}

fn parse<T: serde::de::DeserializeOwned>(root: &Path, file: &str) -> Result<T, Vec<Problem>> {
    toml::from_str(&read(root, file)?)
        .map_err(|error| vec![Problem::new(file, 1, error.to_string())])
}

impl Teaching {
    /// Reads and checks it against the lessons.
    ///
    /// # Errors
    /// A lesson without notes, notes for a step, an answer or a skill that there is not, more minutes toward skills than
    /// the lesson has, a skill that no lesson serves.
    pub(crate) fn read(root: &Path, sections: &[Lesson]) -> Result<Self, Vec<Problem>> {
        let mut teaching = Self {
            notes: BTreeMap::new(),
            skills: parse::<Skills>(root, SKILLS)?.skill,
            words: parse(root, WORDS)?,
        };
        let mut problems = Vec::new();
        for lesson in lessons(sections) {
            let file = format!("{NOTES}/{}.toml", lesson.id);
            match parse::<Notes>(root, &file) {
                Ok(notes) => {
                    let faults = teaching.faults(&notes, lesson);
                    problems.extend(faults.into_iter().map(|what| Problem::new(&file, 1, what)));
                    teaching.notes.insert(lesson.id.clone(), notes);
                }
                Err(mut found) => problems.append(&mut found),
            }
        }
        for skill in &teaching.skills {
            if !teaching
                .notes
                .values()
                .any(|notes| notes.serves.contains_key(&skill.id))
            {
                let what = format!("no lesson serves `{}`", skill.id);
                problems.push(Problem::new(SKILLS, 1, what));
            }
        }
        if problems.is_empty() {
            Ok(teaching)
        } else {
            Err(problems)
        }
    }

    fn faults(&self, notes: &Notes, lesson: &Lesson) -> Vec<String> {
        let mut faults = Vec::new();
        for part in notes.minutes.keys() {
            if !STEPS.iter().any(|(_, known)| known == part) {
                faults.push(format!("a lesson has no part `{part}`"));
            }
        }
        for (step, part) in STEPS {
            if !notes.minutes.contains_key(part) {
                faults.push(format!("no minutes for `{part}`"));
            }
            // What each answer means is shown again once the figure was seen.
            let there = step == "told" || lesson.html.contains(&format!("data-step=\"{step}\""));
            if there != notes.say.contains_key(step) {
                faults.push(format!(
                    "`say.{step}` is missing, or the lesson has no such step"
                ));
            }
        }
        for step in notes.say.keys() {
            if !STEPS.iter().any(|(known, _)| known == step) {
                faults.push(format!("no step is called `{step}`"));
            }
        }
        let wrong: Vec<String> = (1..)
            .zip(answers(lesson))
            .filter(|(_, answer)| !answer.right)
            .map(|(number, _)| number.to_string())
            .collect();
        if notes.means.keys().ne(&wrong) {
            faults.push(format!(
                "`means` has to tell of the wrong answers {}",
                wrong.join(", ")
            ));
        }
        for skill in notes.serves.keys() {
            if !self.skills.iter().any(|known| known.id == *skill) {
                faults.push(format!("no skill is called `{skill}`"));
            }
        }
        if notes.serves.values().sum::<u32>() > notes.minutes() {
            faults.push("more minutes toward skills than the lesson has".into());
        }
        if notes.objection.is_empty() {
            faults.push("no objection".into());
        }
        faults
    }

    fn word(&self, table: &str, key: &str) -> String {
        let word = self.words.get(table).and_then(|table| table.get(key));
        escape(word.map_or(key, String::as_str))
    }

    fn of<'a>(
        &'a self,
        sections: &'a [Lesson],
    ) -> impl Iterator<Item = (&'a Lesson, &'a Notes)> + 'a {
        lessons(sections).filter_map(|lesson| Some((lesson, self.notes.get(&lesson.id)?)))
    }

    /// The notes for every lesson, step by step.
    pub(crate) fn speaker(&self, sections: &[Lesson]) -> String {
        let mut html = String::from("<div id=\"speaker-notes\">\n");
        for (lesson, notes) in self.of(sections) {
            let _ = write!(
                html,
                "<section class=\"lesson-notes\" data-lesson=\"{}\" data-minutes=\"{}\" data-sums=\"{}\">\n<h2>{}</h2>\n<p>{}</p>\n",
                lesson.id,
                notes.minutes(),
                notes.sums(),
                titled(lesson),
                escape(&notes.aim),
            );
            for (step, _) in STEPS {
                let Some(said) = notes.say.get(step) else {
                    continue;
                };
                let _ = write!(
                    html,
                    "<div data-for=\"{step}\"><h3>{}</h3>\n<p>{}</p>\n",
                    self.word("steps", step),
                    escape(said)
                );
                if step == "guess" {
                    html.push_str(&answers_html(lesson, notes));
                }
                if step == "told" {
                    html.push_str("<dl>\n");
                    for Objection { says, answer } in &notes.objection {
                        let _ = writeln!(
                            html,
                            "<dt>“{}”</dt><dd>{}</dd>",
                            escape(says),
                            escape(answer)
                        );
                    }
                    html.push_str("</dl>\n");
                }
                html.push_str("</div>\n");
            }
            html.push_str("</section>\n");
        }
        html.push_str("</div>\n");
        html
    }

    /// All lessons with what a plan says of each; the script lets the reader choose among them.
    pub(crate) fn plan(&self, sections: &[Lesson]) -> String {
        let head = |key: &str| self.word("heads", key);
        let mut html = format!(
            "<div id=\"plan\"><div class=\"live\"></div>\n<details class=\"fold\"><summary><h3>{}</h3></summary>\n\
             <table class=\"restack\"><caption></caption><thead><tr><th>{}</th><th class=\"n\">{}</th><th>{}</th><th>{}</th><th>{}</th></tr></thead>\n<tbody>\n",
            head("page"),
            head("lesson"),
            head("minutes"),
            head("aim"),
            head("tools"),
            head("safety"),
        );
        for (lesson, notes) in self.of(sections) {
            let _ = writeln!(
                html,
                "<tr data-lesson=\"{}\" data-minutes=\"{}\" data-sums=\"{}\"><th scope=\"row\">{}</th><td class=\"n\" data-name=\"{}\">{}</td>\
                 <td class=\"whole\">{}</td><td class=\"whole\" data-name=\"{}\">{}</td><td class=\"whole\" data-name=\"{}\">{}</td></tr>",
                lesson.id,
                notes.minutes(),
                notes.sums(),
                titled(lesson),
                head("minutes"),
                notes.minutes(),
                escape(&notes.aim),
                head("tools"),
                escape(&notes.tools),
                head("safety"),
                escape(&notes.safety),
            );
        }
        html.push_str("</tbody></table></details></div>\n");
        html
    }

    /// What each lesson does toward each skill, in minutes.
    pub(crate) fn skills(&self, sections: &[Lesson]) -> String {
        let head = |key: &str| self.word("heads", key);
        let mut html = format!(
            "<details class=\"fold\" id=\"skills\"><summary><h3>{}</h3></summary>\n<table class=\"restack\"><thead><tr><th>{}</th><th>{}</th><th class=\"n\">{}</th></tr></thead>\n<tbody>\n",
            head("skills"),
            head("can"),
            head("served"),
            head("minutes"),
        );
        for skill in &self.skills {
            let serving: Vec<(&Lesson, u32)> = self
                .of(sections)
                .filter_map(|(lesson, notes)| Some((lesson, *notes.serves.get(&skill.id)?)))
                .collect();
            let list: Vec<String> = serving
                .iter()
                .map(|(lesson, minutes)| {
                    format!(
                        "<a href=\"{{{{root}}}}{}\">{}</a> ({minutes})",
                        path_of(lesson),
                        escape(&lesson.nav)
                    )
                })
                .collect();
            let sum: u32 = serving.iter().map(|(_, minutes)| minutes).sum();
            let _ = writeln!(
                html,
                "<tr><th scope=\"row\">{}</th><td class=\"whole\">{}</td><td class=\"n\" data-name=\"{}\">{sum}</td></tr>",
                escape(&skill.can),
                list.join(", "),
                head("minutes"),
            );
        }
        html.push_str("</tbody></table></details>\n");
        html
    }
}

fn lessons(sections: &[Lesson]) -> impl Iterator<Item = &Lesson> {
    sections.iter().filter(|section| section.part == "lesson")
}

fn titled(lesson: &Lesson) -> String {
    let number = lesson.number.unwrap_or_default();
    format!("{number} {}", escape(&lesson.title))
}

/// An answer to the guess of a lesson, as its page has it.
struct Answer<'a> {
    right: bool,
    says: &'a str,
    reply: &'a str,
}

fn answers(lesson: &Lesson) -> impl Iterator<Item = Answer<'_>> {
    let between = |text: &'static str, end: &'static str| {
        move |html: &'_ str| -> Option<(usize, usize)> {
            let from = html.find(text)? + text.len();
            Some((from, from + html.get(from..)?.find(end)?))
        }
    };
    let says = between("<span>", "</span></label>");
    let reply = between("<p class=\"reply\">", "</p></div>");
    lesson
        .html
        .split("<div class=\"option\"")
        .skip(1)
        .filter_map(move |html| {
            let part = |(from, to)| html.get(from..to);
            Some(Answer {
                right: html.starts_with(" data-right"),
                says: part(says(html)?)?,
                reply: part(reply(html)?)?,
            })
        })
}

fn answers_html(lesson: &Lesson, notes: &Notes) -> String {
    let mut html = String::from("<ol class=\"answers\">\n");
    for (number, answer) in (1..).zip(answers(lesson)) {
        let mark = if answer.right { " data-right" } else { "" };
        let means = notes.means.get(&number.to_string());
        let means = means.map_or_else(String::new, |means| {
            format!("<p><i>{}</i></p>", escape(means))
        });
        let _ = writeln!(
            html,
            "<li{mark}><b>{}</b><p>{}</p>{means}</li>",
            answer.says, answer.reply
        );
    }
    html.push_str("</ol>\n");
    html
}

/// A text as JavaScript has it between quotes.
fn quoted(text: &str) -> String {
    let mut out = String::from("\"");
    for c in text.chars() {
        match c {
            '"' | '\\' => out.extend(['\\', c]),
            c if c.is_control() => {
                let _ = write!(out, "\\u{:04x}", u32::from(c));
            }
            c => out.push(c),
        }
    }
    out.push('"');
    out
}

/// A script of these pages with its words, and with the names of all lessons; nothing of it can be seen by other scripts.
///
/// # Errors
/// Words that cannot be read.
pub(crate) fn script(root: &Path, name: &str, text: &str) -> Result<String, Vec<Problem>> {
    let words: Words = parse(root, WORDS)?;
    let tables = GIVEN.iter().find(|(script, _)| *script == name);
    let given: Vec<String> = tables
        .map_or(&[][..], |(_, tables)| tables)
        .iter()
        .filter_map(|table| words.get(*table))
        .flatten()
        .map(|(key, text)| format!("  {}: {},\n", quoted(key), quoted(text)))
        .collect();
    let lessons: Vec<String> = names(root, NOTES, "toml")
        .iter()
        .filter_map(|name| Some(quoted(name.strip_suffix(".toml")?)))
        .collect();
    Ok(format!(
        "'use strict';\n(() => {{\nconst WORDS = {{\n{}}};\nconst LESSONS = [{}];\n\n{text}}})();\n",
        given.concat(),
        lessons.join(", ")
    ))
}

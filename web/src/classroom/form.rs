//! The form of the page of hand-outs: the class word, how many, how hard, what of it.

use calc_core::quantity::UnitSystem;
use classroom::words::{filled, message};
use classroom::{Class, Level, MOST_STUDENTS, answers as table};
use leptos::ev::hashchange;
use leptos::prelude::*;
use leptos::web_sys;

use super::typed::Typed;
use super::{answers, button, check, print, quiz, sheets};
use crate::el::{El, classed, el, follow, value_of};
use crate::kept::Kept;
use crate::paper::download;
use crate::units;

/// What of a class is shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum What {
    Sheets,
    Answers,
    Check,
    Quiz,
}

impl What {
    const ALL: [Self; 4] = [Self::Sheets, Self::Answers, Self::Check, Self::Quiz];

    const fn key(self) -> &'static str {
        match self {
            Self::Sheets => "sheets",
            Self::Answers => "answers",
            Self::Check => "check",
            Self::Quiz => "quiz",
        }
    }

    const fn name(self) -> &'static str {
        match self {
            Self::Sheets => "form.sheets",
            Self::Answers => "form.answers",
            Self::Check => "form.check",
            Self::Quiz => "form.quiz",
        }
    }

    /// Whether it is for all students, not for one.
    const fn of_all(self) -> bool {
        matches!(self, Self::Sheets | Self::Answers)
    }
}

/// What stands in the form.
#[derive(Clone, Copy)]
struct Form {
    what: RwSignal<What>,
    word: RwSignal<String>,
    students: RwSignal<String>,
    number: RwSignal<String>,
    level: RwSignal<Level>,
    units: RwSignal<UnitSystem>,
}

/// What tells a sheet from every other: word, number, level, units.
pub(super) fn place(class: &Class, number: usize) -> String {
    let (level, units) = (class.level.key(), units_key(class.units));
    format!("{}/{number}/{level}/{units}", class.word)
}

pub(super) const fn units_key(units: UnitSystem) -> &'static str {
    match units {
        UnitSystem::Us => "us",
        UnitSystem::Metric => "metric",
    }
}

fn units_of(key: &str) -> Option<UnitSystem> {
    [UnitSystem::Us, UnitSystem::Metric]
        .into_iter()
        .find(|units| units_key(*units) == key)
}

impl Form {
    fn new(units: RwSignal<UnitSystem>) -> Self {
        let form = Self {
            what: RwSignal::new(What::Sheets),
            word: RwSignal::new(String::new()),
            students: RwSignal::new(String::from("24")),
            number: RwSignal::new(String::from("1")),
            level: RwSignal::new(Level::Easy),
            units,
        };
        if let Some(kept) = Kept::Class.read() {
            form.take(&kept, '\n');
        }
        form.take_address();
        form
    }

    /// What of the form is kept or stands in an address: what, word, number, level, units, students.
    fn take(self, text: &str, between: char) {
        let mut parts = text.split(between);
        let mut next = || parts.next().unwrap_or_default();
        let what = next();
        if let Some(what) = What::ALL.into_iter().find(|w| w.key() == what) {
            self.what.set(what);
        }
        let set = |signal: RwSignal<String>, text: &str| {
            if !text.is_empty() {
                signal.set(String::from(text));
            }
        };
        set(self.word, next());
        set(self.number, next());
        if let Some(level) = Level::of(next()) {
            self.level.set(level);
        }
        if let Some(units) = units_of(next()) {
            self.units.set(units);
        }
        set(self.students, next());
    }

    /// `#check/blue7/12/easy/us`: what a sheet leads to.
    fn take_address(self) {
        let hash = web_sys::window().and_then(|window| window.location().hash().ok());
        let hash = hash.unwrap_or_default();
        let hash = hash.trim_start_matches('#');
        if hash.contains('/') {
            let plain = js_sys::decode_uri(hash).map(String::from);
            self.take(&plain.unwrap_or_default(), '/');
        }
    }

    fn keep(self) {
        let text = format!(
            "{}\n{}\n{}\n{}\n{}\n{}",
            self.what.get().key(),
            self.word.get().replace('\n', " "),
            self.number.get(),
            self.level.get().key(),
            units_key(self.units.get()),
            self.students.get(),
        );
        Kept::Class.write(&text);
    }

    /// A number of 1 to 40, or why it is none.
    fn count(self, all: bool) -> Result<usize, String> {
        let (typed, what, example) = if all {
            (self.students.get(), "form.students", "24")
        } else {
            (self.number.get(), "form.student", "7")
        };
        let number = typed.trim().parse::<usize>().ok();
        number
            .filter(|number| (1..=MOST_STUDENTS).contains(number))
            .ok_or_else(|| {
                let most = MOST_STUDENTS.to_string();
                filled(
                    "form.no-number",
                    &[
                        ("what", message(what)),
                        ("typed", typed.trim()),
                        ("most", &most),
                        ("example", example),
                    ],
                )
            })
    }
}

/// Hand-outs, answers, checking and quiz.
#[must_use]
pub fn handouts(units: RwSignal<UnitSystem>) -> El {
    let form = Form::new(units);
    let listening = window_event_listener(hashchange, move |_| form.take_address());
    on_cleanup(move || listening.remove());
    follow(move || form.keep());
    let class = Memo::new_owning(move |_| {
        let class = Class::new(&form.word.get(), form.level.get(), form.units.get());
        (class, true)
    });
    let typed = Typed::kept();
    let trouble = move || {
        if class.read().is_none() {
            return String::from(message("form.no-word"));
        }
        form.count(form.what.get().of_all())
            .err()
            .unwrap_or_default()
    };
    let body = move || {
        let class = class.read();
        let what = form.what.get();
        let (Some(class), Ok(count)) = (&*class, form.count(what.of_all())) else {
            return Vec::new();
        };
        match what {
            What::Sheets => sheets::all(class, count),
            What::Answers => answers::all(class, count),
            What::Check => vec![check::page(class, count, typed)],
            What::Quiz => vec![quiz::page(class, count, typed)],
        }
    };
    let nothing = move || !trouble().is_empty();
    let of_one = move || !form.what.get().of_all();
    el("div")
        .child(choice(form))
        .child(fields(form))
        .child(el("p").attr("role", "status").live_text(trouble))
        .child(
            classed("p", "actions screen-only")
                .flag("hidden", move || nothing() || of_one())
                .child(button("form.print").on("click", |_| print()))
                .child(button("form.csv").on("click", move |_| {
                    let class = class.read_untracked();
                    if let (Some(class), Ok(count)) = (&*class, untrack(|| form.count(true))) {
                        let name = format!("answers-{}.csv", class.level.key());
                        download(&name, "text/csv", &table::csv(class, count));
                    }
                })),
        )
        .child(classed("div", "handed").live_children(body))
}

/// What is wanted.
fn choice(form: Form) -> El {
    let options = What::ALL.map(|what| {
        el("label")
            .child(
                el("input")
                    .attr("type", "radio")
                    .attr("name", "what")
                    .attr("value", what.key())
                    .prop("checked", move || (form.what.get() == what).into())
                    .on("change", move |_| form.what.set(what)),
            )
            .child(el("span").text(message(what.name())))
    });
    classed("fieldset", "kinds screen-only")
        .child(el("legend").text(message("form.what")))
        .children(options)
}

fn text_field(id: &'static str, key: &str, value: RwSignal<String>, number: bool) -> El {
    let input = el("input")
        .attr("id", id)
        .attr("type", "text")
        .attr("autocomplete", "off")
        .attr("inputmode", if number { "numeric" } else { "text" })
        .prop("value", move || value.get().into())
        .on("input", move |event| value.set(value_of(&event)));
    el("p")
        .child(el("label").attr("for", id).text(message(key)))
        .child(input)
}

/// A choice by keys with their names.
pub(super) fn select(
    id: &str,
    label: &str,
    options: Vec<(String, String)>,
    chosen: impl Fn() -> String + Send + Clone + 'static,
    choose: impl Fn(String) + 'static,
) -> El {
    let options = options.into_iter().map(|(key, name)| {
        let (chosen, own) = (chosen.clone(), key.clone());
        el("option")
            .attr("value", &key)
            .prop("selected", move || (chosen() == own).into())
            .text(name)
    });
    el("p")
        .child(el("label").attr("for", id).text(label))
        .child(
            el("select")
                .attr("id", id)
                .on("change", move |event| choose(value_of(&event)))
                .children(options),
        )
}

fn fields(form: Form) -> El {
    let levels = Level::ALL.iter().map(|level| {
        let key = level.key();
        (key.into(), message(&format!("level.{key}")).into())
    });
    let systems = [UnitSystem::Us, UnitSystem::Metric].map(|units| {
        let key = units_key(units);
        (key.into(), message(&format!("form.units-{key}")).into())
    });
    let of_one = move || !form.what.get().of_all();
    classed("div", "fields screen-only")
        .child(text_field("class-word", "form.word", form.word, false))
        .child(
            text_field("class-students", "form.students", form.students, true)
                .flag("hidden", of_one),
        )
        .child(
            text_field("class-number", "form.student", form.number, true)
                .flag("hidden", move || !of_one()),
        )
        .child(select(
            "class-level",
            message("form.level"),
            levels.collect(),
            move || form.level.get().key().into(),
            move |key| form.level.set(Level::of(&key).unwrap_or(Level::Easy)),
        ))
        .child(select(
            "class-units",
            message("form.units"),
            systems.into(),
            move || units_key(form.units.get()).into(),
            move |key| {
                let chosen = units_of(&key).unwrap_or(UnitSystem::Us);
                form.units.set(chosen);
                units::choose(chosen);
            },
        ))
        .child(classed("p", "whole").text(message("form.word-help")))
}

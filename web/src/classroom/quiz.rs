//! The quiz: problems of all kinds in mixed order, answers to choose from, marked here. What counts is the first try.

use classroom::words::{filled, message};
use classroom::{Class, Question};
use leptos::prelude::*;

use super::button;
use super::form::place;
use super::sheets::{picture, table};
use super::typed::Typed;
use crate::el::{El, classed, el};

/// What was picked of a question: first and now.
type Picked = Option<(usize, usize)>;

/// What was picked, by question.
#[derive(Clone, Copy)]
struct Picks {
    all: RwSignal<Vec<Picked>>,
    kept: Typed,
    at: StoredValue<String>,
}

impl Picks {
    /// As they were left on this device: for each question the first pick and the last, `2.0 - 1.1`.
    fn kept(kept: Typed, at: String, of: usize) -> Self {
        let text = kept.get(&at);
        let mut all: Vec<Picked> = text
            .split(' ')
            .map(|picked| {
                let (first, now) = picked.split_once('.')?;
                Some((first.parse().ok()?, now.parse().ok()?))
            })
            .collect();
        all.resize(of, None);
        Self {
            all: RwSignal::new(all),
            kept,
            at: StoredValue::new(at),
        }
    }

    fn of(self, question: usize) -> Picked {
        self.all.read().get(question).copied().flatten()
    }

    fn pick(self, question: usize, choice: usize) {
        self.all.update(|all| {
            if let Some(picked) = all.get_mut(question) {
                let first = picked.map_or(choice, |(first, _)| first);
                *picked = Some((first, choice));
            }
        });
        let written = |picked: &Picked| {
            picked.map_or_else(
                || String::from("-"),
                |(first, now)| format!("{first}.{now}"),
            )
        };
        let all: Vec<String> = self.all.read_untracked().iter().map(written).collect();
        self.kept.put(&self.at.get_value(), &all.join(" "));
    }

    fn clear(self) {
        self.all
            .update(|all| all.iter_mut().for_each(|picked| *picked = None));
        self.kept.put(&self.at.get_value(), "");
    }
}

pub(super) fn page(class: &Class, number: usize, kept: Typed) -> El {
    let questions = class.quiz(number);
    let of = questions.len();
    let picks = Picks::kept(kept, format!("quiz/{}", place(class, number)), of);
    let right: Vec<Option<usize>> = questions
        .iter()
        .map(|question| {
            question
                .choices
                .iter()
                .position(|(_, wrong)| wrong.is_none())
        })
        .collect();
    let score = move || {
        let picked = picks.all.read();
        let done = picked.iter().flatten().count();
        let hit = picked
            .iter()
            .zip(&right)
            .filter(|(picked, right)| picked.is_some_and(|(first, _)| Some(first) == **right));
        let [hit, done_, of_, left] = [hit.count(), done, of, of - done].map(|n| n.to_string());
        let key = if done == of { "quiz.all" } else { "quiz.score" };
        filled(
            key,
            &[
                ("right", &hit),
                ("done", &done_),
                ("of", &of_),
                ("left", &left),
            ],
        )
    };
    let cards: Vec<El> = questions
        .iter()
        .enumerate()
        .map(|(index, question)| card(question, index, of, picks))
        .collect();
    el("div")
        .child(el("p").text(message("quiz.intro")))
        .children(cards)
        .child(
            classed("p", "score")
                .attr("role", "status")
                .live_text(score),
        )
        .child(
            classed("p", "actions").child(button("quiz.again").on("click", move |_| picks.clear())),
        )
}

fn card(question: &Question, index: usize, of: usize, picks: Picks) -> El {
    let problem = &question.problem;
    let title = filled(
        "quiz.question",
        &[("n", &(index + 1).to_string()), ("of", &of.to_string())],
    );
    let kind = message(&format!("kind.{}", problem.kind.key()));
    let choices = question.choices.iter().enumerate().map(|(at, (si, _))| {
        el("label")
            .child(
                el("input")
                    .attr("type", "radio")
                    .attr("name", &format!("question-{index}"))
                    .attr("value", &at.to_string())
                    .prop("checked", move || {
                        picks.of(index).is_some_and(|(_, now)| now == at).into()
                    })
                    .on("change", move |_| picks.pick(index, at)),
            )
            .child(el("span").text(problem.written(*si)))
    });
    let why: Vec<Option<&str>> = question
        .choices
        .iter()
        .map(|(_, wrong)| wrong.map(|wrong| message(&format!("wrong.{}", wrong.key()))))
        .collect();
    let reply = move || match picks.of(index).map(|(_, now)| why.get(now)) {
        Some(Some(Some(why))) => filled("quiz.wrong", &[("why", why)]),
        Some(Some(None)) => String::from(message("quiz.right")),
        _ => String::new(),
    };
    classed("section", "question")
        .child(el("h2").text(format!("{title}: {kind}")))
        .child(el("p").text(problem.asked()))
        .children(table(problem))
        .child(picture(problem, &format!("q{index}")))
        .child(
            classed("fieldset", "kinds")
                .child(classed("legend", "visually-hidden").text(title))
                .children(choices),
        )
        .child(
            classed("p", "reply")
                .attr("role", "status")
                .live_text(reply),
        )
}

//! Which problems stand on whose sheet, and the questions of the quiz.

use calc_core::quantity::UnitSystem;

use crate::draw::{Lot, cleaned};
use crate::problem::{Kind, Level, Problem, Wrong};

/// Students that a class has at most.
pub const MOST_STUDENTS: usize = 40;

/// Kinds of problems that belong together; a sheet has two of each.
const GROUPS: [[Kind; 3]; 3] = [
    [Kind::Torque, Kind::Stretch, Kind::Wax],
    [Kind::Slip, Kind::Bolts, Kind::Share],
    [Kind::Crush, Kind::Sleeve, Kind::Loss],
];

/// Answers that a question offers at most.
const OFFERED: usize = 4;

const fn units_key(units: UnitSystem) -> &'static str {
    match units {
        UnitSystem::Us => "us",
        UnitSystem::Metric => "metric",
    }
}

/// A class: its word, how hard its problems are, and all of them in the order of its students.
#[derive(Clone, Debug)]
pub struct Class {
    /// What of its word counts.
    pub word: String,
    /// How hard.
    pub level: Level,
    /// Stock and numbers.
    pub units: UnitSystem,
    sheets: Vec<Vec<Problem>>,
}

impl Class {
    /// The class of a word; `None` where nothing of the word counts.
    #[must_use]
    pub fn new(word: &str, level: Level, units: UnitSystem) -> Option<Self> {
        let mut class = Self {
            word: cleaned(word)?,
            level,
            units,
            sheets: Vec::new(),
        };
        for (index, group) in GROUPS.iter().enumerate() {
            let left_out = class.lot(&format!("group-{index}")).below(group.len());
            let kept = group.iter().enumerate().filter(|(i, _)| *i != left_out);
            let lists: Vec<_> = kept
                .map(|(_, kind)| class.list(kind.key(), *kind))
                .collect();
            class.sheets.extend(lists);
        }
        Some(class)
    }

    /// Draws for one purpose: the second step of the seed's recipe.
    fn lot(&self, what: &str) -> Lot {
        let (units, level) = (units_key(self.units), self.level.key());
        Lot::of(&format!("1/{}/{units}/{level}/{what}", self.word))
    }

    /// The problems of a kind, one for each student.
    fn list(&self, what: &str, kind: Kind) -> Vec<Problem> {
        let mut list = Problem::all(kind, self.level, self.units);
        self.lot(what).order(&mut list);
        list.truncate(MOST_STUDENTS);
        list
    }

    /// The problems of a student, counted from 1.
    #[must_use]
    pub fn sheet(&self, student: usize) -> Vec<&Problem> {
        of_student(&self.sheets, student)
    }

    /// The questions of a student's quiz, in an order of their own.
    #[must_use]
    pub fn quiz(&self, student: usize) -> Vec<Question> {
        let lists = Kind::ALL
            .iter()
            .map(|kind| self.list(&format!("quiz-{}", kind.key()), *kind));
        let lists: Vec<_> = lists.collect();
        let mut problems = of_student(&lists, student);
        self.lot(&format!("quiz-order-{student}"))
            .order(&mut problems);
        let mut lot = self.lot(&format!("quiz-answers-{student}"));
        problems
            .into_iter()
            .map(|problem| Question::new(problem.clone(), &mut lot))
            .collect()
    }
}

fn of_student(lists: &[Vec<Problem>], student: usize) -> Vec<&Problem> {
    let index = student.saturating_sub(1);
    lists.iter().filter_map(|list| list.get(index)).collect()
}

/// A problem with answers to choose from.
#[derive(Clone, Debug)]
pub struct Question {
    /// The problem.
    pub problem: Problem,
    /// Answers in SI, each with the mistake that it comes from; the right one has none.
    pub choices: Vec<(f64, Option<Wrong>)>,
}

impl Question {
    fn new(problem: Problem, lot: &mut Lot) -> Self {
        let mut choices = vec![(problem.answer.si, None)];
        let wrong = problem.wrong.iter().take(OFFERED - 1);
        choices.extend(wrong.map(|(wrong, si)| (*si, Some(*wrong))));
        lot.order(&mut choices);
        Self { problem, choices }
    }
}

//! The signals that the parts of the form share.

use std::time::Duration;

use calc_core::chance::{Chance, Sampler};
use calc_core::evaluate;
use calc_core::link::Decoded;
use calc_core::outlook::{Outlook, outlook};
use calc_core::quantity::UnitSystem;
use calc_core::repair::{Rates, Repairs, repairs};
use calc_core::report::Report;
use calc_core::scenario::{Field, Input, Scenario};
use leptos::prelude::*;

use super::address;
use super::state::{Fault, Form};
use crate::el::follow;
use crate::figures::frames::later;
use crate::turns::Turns;

/// How long the form must rest before the slow part is computed.
const REST: Duration = Duration::from_millis(350);

/// Joints drawn by lot, how many at a time, and the seed: the same joint says the same to everybody.
const DRAWN: usize = 20_000;
const SLICE: usize = 2_000;
const SEED: u64 = 1;

/// The last joint that could be computed.
#[derive(Clone, Debug, Default)]
pub struct Shown {
    /// The joint and its report; none before anything could be computed.
    pub answer: Option<(Scenario, Report)>,
    /// Whether it is the joint that the form says now.
    pub current: bool,
}

impl Shown {
    fn joint(&self) -> Option<&Scenario> {
        self.answer.as_ref().map(|(joint, _)| joint)
    }
}

impl PartialEq for Shown {
    /// The report follows from the joint.
    fn eq(&self, other: &Self) -> bool {
        self.current == other.current && self.joint() == other.joint()
    }
}

/// The signals.
#[derive(Clone, Copy)]
pub struct Desk {
    /// The order in which the parts of the form are made.
    pub turns: Turns,
    /// The form.
    pub form: RwSignal<Form>,
    /// The form before the last joint was put in as a whole: what "undo" goes back to.
    pub before: RwSignal<Option<Form>>,
    /// The link that was opened and not yet put aside.
    pub opened: RwSignal<Option<Decoded>>,
    /// The joint as the link gave it: until it is changed it is not the reader's own.
    pub linked: RwSignal<Option<Form>>,
    /// Whether the browser keeps what is typed.
    pub keeps: RwSignal<bool>,
    /// Told when what is kept was put in place of what the page shows.
    pub again: Trigger,
    /// The step that is shown where there is room for one, 1 to 5.
    pub step: RwSignal<u32>,
    /// How many repairs were taken, one on the other, on the way to this joint: counted in the browser's history.
    pub taken: RwSignal<u32>,
    /// Whether the entry of the history that is shown is that of the repair that was taken last.
    pub just_taken: RwSignal<bool>,
    /// The reader's rates.
    pub rates: RwSignal<Rates>,
    /// What stands in the way of computing.
    pub faults: Memo<Vec<Fault>>,
    /// The last answer.
    pub shown: Memo<Shown>,
    /// Another torque, and the strength usually found, for the joint that last rested.
    pub outlook: RwSignal<Option<Outlook>>,
    /// The repairs of the joint that last rested; none where no joint could be computed.
    pub repairs: RwSignal<Option<Repairs>>,
    /// Whether those are the repairs of another joint than the form holds now.
    pub repairs_late: RwSignal<bool>,
    /// What came out of many joints like the one that last rested.
    pub chance: RwSignal<Option<Chance>>,
    /// Whether that is of another joint than the form holds now.
    pub chance_late: RwSignal<bool>,
}

impl Desk {
    /// A desk with the starting joint, its repairs and its chances.
    #[must_use]
    pub fn new(turns: Turns) -> Self {
        let desk = Self {
            turns,
            ..Self::quick()
        };
        desk.find_slowly();
        desk
    }

    /// A desk with the starting joint that answers no more than whether it holds: a program that has no other
    /// leaves the rest of the calculation out.
    #[must_use]
    pub fn quick() -> Self {
        let form = RwSignal::new(Form::new(crate::units::chosen()));
        let faults = Memo::new(move |_| form.read().checked().err().unwrap_or_default());
        let shown = Memo::new(move |last: Option<&Shown>| match form.read().checked() {
            // An answer to what nobody has measured would be that of another joint.
            _ if !form.read().missing().is_empty() => Shown::default(),
            Ok(scenario) => {
                let report = evaluate(&scenario);
                Shown {
                    answer: Some((scenario, report)),
                    current: true,
                }
            }
            Err(_) => Shown {
                current: false,
                ..last.cloned().unwrap_or_default()
            },
        });
        Self {
            turns: Turns::at_once(),
            form,
            before: RwSignal::new(None),
            opened: RwSignal::new(None),
            linked: RwSignal::new(None),
            keeps: RwSignal::new(true),
            again: Trigger::new(),
            step: RwSignal::new(1),
            taken: RwSignal::new(0),
            just_taken: RwSignal::new(false),
            rates: RwSignal::new(Rates::default()),
            faults,
            shown,
            outlook: RwSignal::new(None),
            repairs: RwSignal::new(None),
            repairs_late: RwSignal::new(true),
            chance: RwSignal::new(None),
            chance_late: RwSignal::new(true),
        }
    }

    /// The reader's units.
    #[must_use]
    pub fn units(self) -> UnitSystem {
        self.form.read().units()
    }

    /// Takes typed text.
    pub fn type_in(self, field: Field, text: &str) {
        self.form.update(|form| form.type_in(field, text));
    }

    /// Puts a repaired joint in; what was there can be brought back, by Back too.
    pub fn put_repair(self, input: Input) {
        self.remember();
        address::write(self);
        self.taken.update(|taken| *taken += 1);
        self.form.update(|form| form.load_repair(input));
        address::push(self);
        self.just_taken.set(true);
    }

    /// Makes a choice.
    pub fn choose(self, field: Field, name: &str) {
        self.form.update(|form| form.choose(field, name));
    }

    /// Keeps the form as it is for [`undo`](Self::undo).
    pub fn remember(self) {
        self.before.set(Some(self.form.get_untracked()));
    }

    /// Brings back what the last whole joint replaced; after a new visit the joint that the repair was made for.
    pub fn undo(self) {
        let units = self.form.read_untracked().units();
        let before = self.before.get_untracked().or_else(|| {
            let mut form = self.form.get_untracked();
            let before = form.repaired().cloned()?;
            form.load(before);
            Some(form)
        });
        if let Some(before) = before {
            self.form.set(before);
            self.form.update(|form| form.set_units(units));
            self.before.set(None);
        }
    }

    /// Computes the slow parts once the form rests: repairs take tens of milliseconds, and then thousands
    /// of joints are drawn in slices between which the page lives.
    fn find_slowly(self) {
        let waiting = StoredValue::new(None::<TimeoutHandle>);
        let joint = Memo::new(move |_| {
            let shown = self.shown.read();
            shown
                .current
                .then(|| shown.answer.as_ref().map(|(scenario, _)| scenario.clone()))
                .flatten()
        });
        follow(move || {
            let (joint, rates) = (joint.get(), self.rates.get());
            if let Some(Some(timer)) = waiting.try_get_value() {
                timer.clear();
            }
            self.repairs_late.set(true);
            self.chance_late.set(true);
            // What was said of another joint must not stand beside this one's verdict.
            self.outlook.set(None);
            // One answer after the other: between two of them the browser draws, and a change of the joint ends the rest.
            let draw = {
                let joint = joint.clone();
                move || match &joint {
                    Some(scenario) => {
                        self.draw_joints(waiting, Sampler::new(scenario, SEED, DRAWN))
                    }
                    None => self.show_chance(None),
                }
            };
            let mend = {
                let joint = joint.clone();
                move || {
                    self.repairs
                        .set(joint.as_ref().map(|scenario| repairs(scenario, &rates)));
                    self.repairs_late.set(false);
                    waiting.set_value(later(Duration::ZERO, draw));
                }
            };
            let find = move || {
                self.outlook.set(joint.as_ref().map(outlook));
                waiting.set_value(later(Duration::ZERO, mend));
            };
            waiting.set_value(later(REST, find));
        });
    }

    /// Draws a slice, and the next one after the browser has had its turn.
    fn draw_joints(self, waiting: StoredValue<Option<TimeoutHandle>>, mut sampler: Sampler) {
        let slice = move || {
            if sampler.step(SLICE).finished() {
                self.show_chance(Some(sampler.result()));
            } else {
                self.draw_joints(waiting, sampler);
            }
        };
        waiting.set_value(later(Duration::ZERO, slice));
    }

    fn show_chance(self, chance: Option<Chance>) {
        self.chance.set(chance);
        self.chance_late.set(false);
    }
}

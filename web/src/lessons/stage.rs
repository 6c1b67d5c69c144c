//! One lesson on the page: where its controls stand, and everything that follows them.

use std::cell::{Cell, RefCell};
use std::time::Duration;

use calc_core::link::encode;
use calc_core::quantity::{UnitSystem, parse_number, spoken, unit_for};
use drawing::Scene;
use drawing::lesson::{Chart, ControlKind, Handle, Model, Outcome, State, Value, link};
use leptos::prelude::TimeoutHandle;
use leptos::wasm_bindgen::JsCast;
use leptos::web_sys::{Document, Element, HtmlTemplateElement};

use super::drag::Drag;
use super::page::{all, attribute, closest, field, first, show, write_into};
use crate::figures::frames::later;
use crate::paint::{paint, repaint};

/// How long a figure must rest before its sentence is read out.
const REST: Duration = Duration::from_millis(500);

/// An element that shows an amount.
struct Slot {
    element: Element,
    name: String,
    /// The state of the problem that it stands in, as the page gives it; `None` where it follows the figure.
    fixed: Option<String>,
}

/// A lesson on the page.
pub(super) struct Stage {
    model: &'static dyn Model,
    /// Its sentences, as the page brings them.
    words: String,
    section: Element,
    slots: Vec<Slot>,
    state: Cell<State>,
    /// The last state in the other system of units, and what answered to it in this one: who goes back without
    /// having moved anything finds exactly what was left.
    left: Cell<Option<(State, State)>>,
    drawn: RefCell<[Option<Scene>; 2]>,
    handles: RefCell<Vec<Handle>>,
    drag: Cell<Option<Drag>>,
    resting: RefCell<Option<TimeoutHandle>>,
}

impl Stage {
    /// The lesson of a model, if the page holds it.
    pub(super) fn find(model: &'static dyn Model, document: &Document) -> Option<Self> {
        let selector = format!("section[data-lesson={}]", model.id());
        let section = document.query_selector(&selector).ok().flatten()?;
        let slots = all(&section, "[data-v]")
            .into_iter()
            .map(|element| Slot {
                name: attribute(&element, "data-v"),
                fixed: held(&element),
                element,
            })
            .collect();
        // The still page is written in these units.
        let state = State::start(model.controls(), UnitSystem::Us);
        let stage = Self {
            model,
            words: first(&section, "[data-at=words]")?
                .dyn_into::<HtmlTemplateElement>()
                .ok()?
                .content()
                .text_content()?,
            section,
            slots,
            state: Cell::new(state),
            left: Cell::new(None),
            drawn: RefCell::default(),
            handles: RefCell::default(),
            drag: Cell::new(None),
            resting: RefCell::new(None),
        };
        let picture = model.picture(&state, &state.look(""))?;
        stage.handles.replace(picture.handles);
        Some(stage)
    }

    pub(super) fn id(&self) -> &'static str {
        self.model.id()
    }

    pub(super) const fn model(&self) -> &'static dyn Model {
        self.model
    }

    pub(super) const fn section(&self) -> &Element {
        &self.section
    }

    pub(super) fn units(&self) -> UnitSystem {
        self.state.get().units()
    }

    pub(super) fn number(&self, control: usize) -> f64 {
        let state = self.state.get();
        let outcome = self.model.outcome(&state);
        outcome.map_or(state.number(control), |o| o.reached(&state, control))
    }

    pub(super) fn handles(&self) -> Vec<Handle> {
        self.handles.borrow().clone()
    }

    pub(super) fn drag(&self) -> Option<Drag> {
        self.drag.get()
    }

    pub(super) fn set_drag(&self, drag: Option<Drag>) {
        self.drag.set(drag);
    }

    /// Which control an element moves.
    pub(super) fn control(&self, element: &Element, name: &str) -> Option<usize> {
        let key = attribute(element, name);
        self.model.controls().iter().position(|c| c.key == key)
    }

    /// The amounts of the problem around an element.
    pub(super) fn values_of(&self, element: &Element) -> Vec<Value> {
        self.values(&held(element))
    }

    /// The amounts of the state that the page gives; without one those of the figure.
    fn values(&self, fixed: &Option<String>) -> Vec<Value> {
        let now = self.state.get();
        let state = fixed
            .as_ref()
            .and_then(|text| State::parse(self.model.controls(), text, now.units()).ok())
            .unwrap_or(now);
        self.model
            .outcome(&state)
            .map(|outcome| self.model.values(&state, &outcome))
            .unwrap_or_default()
    }

    /// Shows everything in other units, made of the other stock: the controls stand at the same steps.
    pub(super) fn set_units(&self, units: UnitSystem) {
        let before = self.state.get();
        if before.units() == units {
            return;
        }
        let now = match self.left.get() {
            Some((left, answered)) if answered == before => left,
            _ => before.answering(self.model.controls(), units),
        };
        self.left.set(Some((before, now)));
        self.state.set(now);
        for slot in &self.slots {
            if slot.fixed.is_some() {
                self.fill(slot, &self.values(&slot.fixed));
            }
        }
        self.doubt_answers();
        self.refresh(None);
    }

    /// Moves a control.
    pub(super) fn move_to(&self, control: usize, value: f64) {
        self.say_fault(control, None);
        self.set(control, value, None);
    }

    fn set(&self, control: usize, value: f64, typing: Option<usize>) {
        let state = self.state.get().with(self.model.controls(), control, value);
        if state != self.state.replace(state) || typing.is_none() {
            self.refresh(typing);
        }
        self.rest();
    }

    /// Takes what is typed into an exact field; `finished` when the reader leaves it.
    pub(super) fn typed(&self, control: usize, text: &str, finished: bool) {
        let Some(what) = self.model.controls().get(control) else {
            return;
        };
        match what.read(text, self.units()) {
            Ok(value) => {
                self.say_fault(control, None);
                self.set(control, value, (!finished).then_some(control));
            }
            Err(error) if finished => self.say_fault(control, Some(&error)),
            Err(_) => {}
        }
    }

    /// Takes a setting from outside, as settings always were: a number is one of metric units, whatever units the
    /// page shows; anything else is read as if it were typed.
    pub(super) fn given(&self, control: usize, text: &str) {
        let units = self.units();
        let Some(what) = self.model.controls().get(control) else {
            return;
        };
        let value = match (parse_number(text), what.kind) {
            (Some(number), ControlKind::Number { dimension, .. }) => {
                let si = unit_for(dimension, UnitSystem::Metric).to_si(number);
                Some(unit_for(dimension, units).from_si(si))
            }
            _ => what.read(text, units).ok(),
        };
        if let Some(value) = value {
            self.move_to(control, value);
        }
    }

    fn say_fault(&self, control: usize, fault: Option<&str>) {
        let (Some(place), Some(exact)) = (
            self.of_control(control, "-fault"),
            self.of_control(control, "-exact"),
        ) else {
            return;
        };
        if fault.is_none() && place.has_attribute("hidden") {
            return;
        }
        write_into(&place, fault.unwrap_or_default());
        show(&place, fault.is_some());
        if fault.is_some() {
            exact.set_attribute("aria-invalid", "true").ok();
            exact.set_attribute("aria-describedby", &place.id()).ok();
        } else {
            exact.remove_attribute("aria-invalid").ok();
            exact.remove_attribute("aria-describedby").ok();
        }
    }

    fn of_control(&self, control: usize, suffix: &str) -> Option<Element> {
        let key = self.model.controls().get(control)?.key;
        first(&self.section, &format!("#{}-{key}{suffix}", self.id()))
    }

    /// Everything back to its start.
    pub(super) fn reset(&self) {
        for control in 0..self.model.controls().len() {
            self.say_fault(control, None);
        }
        let start = State::start(self.model.controls(), self.units());
        self.state.set(start);
        self.refresh(None);
        self.rest();
    }

    /// Brings the page in step with the state; leaves the field alone that is being typed into.
    fn refresh(&self, typing: Option<usize>) {
        let state = self.state.get();
        let units = state.units();
        let Some(outcome) = self.model.outcome(&state) else {
            return;
        };
        let values = self.model.values(&state, &outcome);
        for slot in self.slots.iter().filter(|slot| slot.fixed.is_none()) {
            self.fill(slot, &values);
        }
        if let Some(said) = self.at("said") {
            write_into(&said, &self.model.sentence(&self.words, &state, &outcome));
        }
        if let Some(way) = self.at("joint") {
            let sheet = link(&outcome.joint, units);
            // The page says where the calculator is, the figure which joint it is to show.
            let there = attribute(&way, "href");
            let page = there.split('#').next().unwrap_or_default();
            way.set_attribute("href", &format!("{page}#{}", encode(&sheet)))
                .ok();
        }
        self.draw(&state, &outcome);
        self.show_controls(&state, &outcome, typing);
    }

    fn at(&self, what: &str) -> Option<Element> {
        first(&self.section, &format!("[data-at={what}]"))
    }

    fn fill(&self, slot: &Slot, values: &[Value]) {
        if let Some(value) = values.iter().find(|value| value.name == slot.name) {
            write_into(&slot.element, &value.written(self.units()));
        }
    }

    fn draw(&self, state: &State, outcome: &Outcome) {
        let id = format!("{}-drawing", self.id());
        let look = state.look(&id);
        let Some(picture) = self.model.told(&self.words, state, outcome, &look) else {
            return;
        };
        self.handles.replace(picture.handles);
        self.put(0, "drawing", picture.drawing);
        if let Some(chart) = picture.plot {
            self.put(1, "plot", chart.scene(&format!("{}-plot", self.id())));
            self.points(&chart);
        }
    }

    fn put(&self, which: usize, at: &str, scene: Scene) {
        let Some(place) = self.at(at) else {
            return;
        };
        let mut drawn = self.drawn.borrow_mut();
        let Some(before) = drawn.get_mut(which) else {
            return;
        };
        match before {
            Some(before) => repaint(&place, before, &scene),
            None => paint(&place, &scene),
        }
        *before = Some(scene);
    }

    /// The table of key points: its rows are written anew only when their number changes.
    fn points(&self, chart: &Chart) {
        let Some(body) = self.at("points") else {
            return;
        };
        let Some(document) = body.owner_document() else {
            return;
        };
        while usize::try_from(body.child_element_count()).is_ok_and(|n| n > chart.points.len()) {
            if let Some(last) = body.last_element_child() {
                last.remove();
            }
        }
        let mut row = body.first_element_child();
        for point in &chart.points {
            let [x, y] = chart.amounts(point);
            let now = match row.take() {
                Some(row) => row,
                None => {
                    let Some(new) = new_row(&document) else {
                        return;
                    };
                    body.append_child(&new).ok();
                    new
                }
            };
            let mut cell = now.first_element_child();
            for text in [&point.name, &x, &y] {
                if let Some(now) = cell {
                    write_into(&now, text);
                    cell = now.next_element_sibling();
                } else {
                    break;
                }
            }
            row = now.next_element_sibling();
        }
    }

    fn show_controls(&self, state: &State, outcome: &Outcome, typing: Option<usize>) {
        let units = state.units();
        for (i, control) in self.model.controls().iter().enumerate() {
            let value = outcome.reached(state, i);
            if let Some(amount) = control.amount(value, units) {
                if let Some(slider) = self.of_control(i, "") {
                    let says = spoken(amount.si, amount.dimension, units);
                    slider.set_attribute("aria-valuetext", &says).ok();
                    let Some(range) = control.range(units) else {
                        continue;
                    };
                    let far = outcome.farthest(range, i);
                    for (name, end) in [("min", range.min), ("max", far), ("step", range.step)] {
                        slider.set_attribute(name, &end.to_string()).ok();
                    }
                    if let Some(input) = field(&slider) {
                        input.set_value(&state.number(i).min(far).to_string());
                    }
                }
                if typing != Some(i)
                    && let Some(exact) = self.of_control(i, "-exact")
                    && let Some(input) = field(&exact)
                {
                    if !exact.has_attribute("aria-invalid") {
                        input.set_value(&control.shown(value, units));
                    } else if let Err(fault) = control.read(&input.value(), units) {
                        // What could not be read stays, with its fault in the units of now.
                        self.say_fault(i, Some(&fault));
                    }
                }
            } else if let ControlKind::Choices { of, .. } = control.kind {
                let name = format!("input[name={}-{}]", self.id(), control.key);
                let options = all(&self.section, &name);
                for (place, (option, choice)) in options.iter().zip(of).enumerate() {
                    // What is called alike in both systems has no name of its own.
                    if let Some(name) = option.next_element_sibling() {
                        write_into(&name, choice.name.of(units));
                    }
                    if let Some(input) = field(option) {
                        input.set_checked(place == state.choice(i));
                    }
                }
            }
        }
    }

    /// Once the figure rests: the sentence is read out, and the first time the guess comes beside it.
    fn rest(&self) {
        if let Some(waiting) = self.resting.take() {
            waiting.clear();
        }
        let section = self.section.clone();
        self.reveal();
        let told = move || {
            let said = first(&section, "[data-at=said]").and_then(|e| e.text_content());
            if let (Some(told), Some(said)) = (first(&section, "[data-at=told]"), said) {
                write_into(&told, &said);
            }
        };
        self.resting.replace(later(REST, told));
    }
}

/// The state of the problem around an element, as the page gives it.
fn held(element: &Element) -> Option<String> {
    closest(element, "[data-state]").map(|problem| attribute(&problem, "data-state"))
}

fn new_row(document: &Document) -> Option<Element> {
    let row = document.create_element("tr").ok()?;
    let head = document.create_element("th").ok()?;
    head.set_attribute("scope", "row").ok()?;
    row.append_child(&head).ok()?;
    for _ in 0..2 {
        let cell = document.create_element("td").ok()?;
        cell.set_attribute("class", "n").ok()?;
        row.append_child(&cell).ok()?;
    }
    Some(row)
}

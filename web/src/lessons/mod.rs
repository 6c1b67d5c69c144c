//! The lessons come alive: everything they show is in the page already, this only makes it follow what
//! the reader does.
//!
//! One set of listeners on the page's main part serves all lessons. A lesson's numbers, sentences and
//! drawings all come from its [`drawing::lesson::Model`].

mod answer;
mod drag;
mod guess;
mod page;
mod stage;

use std::rc::Rc;

use calc_core::quantity::{UnitSystem, parse_number};
use drawing::lesson::Model;
use leptos::prelude::*;
use leptos::wasm_bindgen::JsCast;
use leptos::wasm_bindgen::closure::Closure;
use leptos::web_sys::{Element, Event, KeyboardEvent, PointerEvent};

use self::page::{attribute, closest, unlock};
use self::stage::Stage;
use crate::el::{follow, value_of};
use crate::figures::frames::per_frame;

/// All lessons that the page holds.
struct School {
    stages: Vec<Stage>,
    units: RwSignal<UnitSystem>,
}

/// Takes over those lessons that the page holds; does nothing on a page without any.
pub fn upgrade(models: &[&'static dyn Model], units: RwSignal<UnitSystem>) {
    let document = document();
    let Some(main) = document.get_element_by_id("main") else {
        return;
    };
    let stages: Vec<Stage> = models
        .iter()
        .filter_map(|model| Stage::find(*model, &document))
        .collect();
    if stages.is_empty() {
        return;
    }
    let school = Rc::new(School { stages, units });
    listen(&school, &main);
    for stage in &school.stages {
        unlock(stage.section());
        stage.offer();
    }
    unlock(&main);
    let watched = school.clone();
    follow(move || {
        let units = watched.units.get();
        for stage in &watched.stages {
            stage.set_units(units);
        }
        page::mark_units(units);
    });
}

fn listen(school: &Rc<School>, main: &Element) {
    let move_to = {
        let school = StoredValue::new_local(school.clone());
        per_frame(move |(stage, control, value): (usize, usize, f64)| {
            school.with_value(|school| {
                if let Some(stage) = school.stages.get(stage) {
                    stage.move_to(control, value);
                }
            });
        })
    };
    on(main, school, "input", move |school, event| {
        let Some((index, stage, target)) = school.at(event) else {
            return;
        };
        let text = value_of(event);
        if let Some(control) = stage.control(&target, "data-control") {
            let given = attribute(&target, "data-given");
            if !given.is_empty() {
                target.remove_attribute("data-given").ok();
                stage.given(control, &given);
            } else if let Some(value) = parse_number(&text) {
                move_to((index, control, value));
            }
        } else if let Some(control) = stage.control(&target, "data-exact") {
            stage.typed(control, &text, false);
        }
    });
    on(main, school, "change", |school, event| {
        if let Some((_, stage, target)) = school.at(event)
            && let Some(control) = stage.control(&target, "data-exact")
        {
            stage.typed(control, &value_of(event), true);
        }
    });
    on(main, school, "click", |school, event| {
        if let Some(button) = target(event).and_then(|t| closest(&t, "[data-act]")) {
            school.act(event, &button);
        }
    });
    on(main, school, "keydown", |school, event| {
        if let Some(event) = event.dyn_ref::<KeyboardEvent>() {
            school.key(event);
        }
    });
    on(main, school, "submit", |_, event| event.prevent_default());
    on(main, school, "pointerdown", |school, event| {
        if let (Some((_, stage, _)), Some(event)) = (school.at(event), event.dyn_ref()) {
            stage.grab(event);
        }
    });
    on(main, school, "pointermove", move |school, event| {
        if let (Some((index, stage, _)), Some(event)) =
            (school.at(event), event.dyn_ref::<PointerEvent>())
            && let Some((control, value)) = stage.dragged(event)
        {
            move_to((index, control, value));
        }
    });
    for end in ["pointerup", "pointercancel"] {
        on(main, school, end, |school, _| {
            for stage in &school.stages {
                stage.let_go();
            }
        });
    }
    on(main, school, "pointerover", |school, event| {
        if let Some((_, stage, target)) = school.at(event) {
            stage.point_at(&target);
        }
    });
}

/// Calls back with every event of a kind for as long as the page lives.
fn on(main: &Element, school: &Rc<School>, kind: &str, then: impl Fn(&School, &Event) + 'static) {
    let school = school.clone();
    let closure = Closure::<dyn Fn(Event)>::new(move |event: Event| then(&school, &event));
    main.add_event_listener_with_callback(kind, closure.as_ref().unchecked_ref())
        .ok();
    closure.forget();
}

fn target(event: &Event) -> Option<Element> {
    event.target().and_then(|target| target.dyn_into().ok())
}

impl School {
    /// The lesson in which something happened, and to what.
    fn at(&self, event: &Event) -> Option<(usize, &Stage, Element)> {
        let target = target(event)?;
        let section = closest(&target, "section[data-lesson]")?;
        let id = attribute(&section, "data-lesson");
        let (index, stage) = self.stages.iter().enumerate().find(|(_, s)| s.id() == id)?;
        Some((index, stage, target))
    }

    fn choose(&self, units: UnitSystem) {
        crate::units::choose(units);
        self.units.set(units);
    }

    fn act(&self, event: &Event, button: &Element) {
        let what = attribute(button, "data-act");
        match what.as_str() {
            "units-us" => return self.choose(UnitSystem::Us),
            "units-metric" => return self.choose(UnitSystem::Metric),
            _ => {}
        }
        let Some((_, stage, _)) = self.at(event) else {
            return;
        };
        match what.as_str() {
            "commit" => stage.commit(),
            "skip" => stage.skip(),
            "reset" => stage.reset(),
            "check" => stage.check(button),
            "print-lesson" => page::print(stage.section()),
            _ => {}
        }
    }

    fn key(&self, event: &KeyboardEvent) {
        let key = event.key();
        let Some((_, stage, target)) = self.at(event) else {
            return;
        };
        match key.as_str() {
            "Escape" if closest(&target, "form.predict").is_some() => stage.skip(),
            "Enter" if !attribute(&target, "data-answer").is_empty() => stage.check(&target),
            // Enter in the line for the reason commits, as it would send a form.
            "Enter"
                if closest(&target, "form.predict").is_some() && target.tag_name() == "INPUT" =>
            {
                event.prevent_default();
                stage.commit();
            }
            _ => {}
        }
    }
}

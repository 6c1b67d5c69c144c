//! The five measurements, each beside the drawing that shows where to measure.

use calc_core::catalog;
use calc_core::quantity::{Length, UnitSystem};
use calc_core::scenario::unknown::UNKNOWN;
use calc_core::scenario::{Field, MemberKind, Mount};
use drawing::measure::Measure;
use drawing::member::{Shape, measure_scene};
use drawing::words::key;
use leptos::prelude::*;

use super::address;
use super::controls::{control, counts, groups, radio, where_it_counts};
use super::desk::Desk;
use super::examples::{EXAMPLES, Example, joint};
use super::state::Form;
use super::steps;
use super::words::{self, Words, message, message_at};
use crate::el::{El, classed, el};
use crate::paint::drawing;

const FIVE: [(Measure, Field); 5] = [
    (Measure::Width, Field::TubeWidth),
    (Measure::Depth, Field::TubeDepth),
    (Measure::Wall, Field::TubeWall),
    (Measure::Bolt, Field::Bolt),
    (Measure::Head, Field::Grade),
];

/// What only some members have.
const OF_MEMBER: [Field; 4] = [
    Field::OutstandingWall,
    Field::BoltGauge,
    Field::FlangeSlope,
    Field::ShapedWasher,
];

/// Step 3: the five measurements, the metal, what else the member has, and everything that counts until somebody says
/// otherwise.
pub(super) fn measures(desk: Desk) -> El {
    steps::step(desk, 3)
        .child(
            el("p")
                .text(message(key::PAGE_WRITE_THEM_AS_YOU_READ_THEM))
                .text(" ")
                .text(message(key::ASK_HOW)),
        )
        .in_turn(desk.turns, move || vec![five(desk)])
        .child(
            classed("div", "metal")
                .child(control(desk, Field::TubeMaterial))
                .children(OF_MEMBER.map(|field| where_it_counts(desk, field)))
                .child(control(desk, Field::EndDistance))
                .child(control(desk, Field::FittingEdge)),
        )
        .child(classed("p", "taken").live_text(move || taken(&desk.form.read())))
        .child(groups(desk))
}

/// What decides most of what nobody may have said.
const TAKEN: [Field; 8] = [
    Field::TubeMaterial,
    Field::Support,
    Field::BoltsAlong,
    Field::SpacingAlong,
    Field::EndDistance,
    Field::TrailerMass,
    Field::FittingThickness,
    Field::Surface,
];

/// In one sentence what counts until somebody says otherwise.
pub(super) fn taken(form: &Form) -> String {
    let assumed: Vec<String> = TAKEN
        .into_iter()
        .filter(|field| !form.is_whole() && field.applies(form.input()) && !form.given(*field))
        .map(|field| message_at(&["taken", field.name()]).with(&[&form.value(field)]))
        .collect();
    if assumed.is_empty() {
        return String::new();
    }
    message(key::STEP_TAKEN).with(&[&assumed.join(", ")])
}

/// The five, each beside its drawing.
pub(super) fn five(desk: Desk) -> El {
    let five = FIVE
        .into_iter()
        .enumerate()
        .map(|(index, (measure, field))| {
            let shape = Memo::new(move |_| {
                let form = desk.form.read();
                let kind = MemberKind::by_name(form.choice(Field::Member))?;
                let mount = Mount::by_name(form.choice(Field::Mount))?;
                Shape::of(kind, mount)
            });
            let id = format!("measured-{}", index + 1);
            let unknown = move || {
                field == Field::TubeWall && desk.form.read().choice(Field::WallBasis) == UNKNOWN
            };
            el("li")
                .flag("hidden", move || !counts(desk, field) && !unknown())
                .flag("data-given", move || desk.form.read().given(field))
                .child(drawing(Signal::derive(move || {
                    let level = desk.form.read().choice(Field::Mount) != "from-top";
                    measure_scene(measure, shape.get(), &id).turned(level && index < 3)
                })))
                .child(
                    control(desk, field)
                        .children((field == Field::Grade).then(|| marks(desk)))
                        .children((field != Field::Grade).then(|| do_not_know(desk, field))),
                )
        });
    classed("ol", "guide five").children(five)
}

/// The marks that most bolts have, to be touched.
const MARKS: [&str; 6] = ["sae-2", "sae-5", "sae-8", "iso-8.8", "iso-10.9", UNKNOWN];

fn marks(desk: Desk) -> El {
    let one = |name: &'static str| {
        let grade = catalog::bolt_grade(name);
        let label = grade.map_or_else(
            || words::choice(Field::Grade, name),
            |grade| String::from(grade.head_mark()),
        );
        let is_made = move || {
            let thread = catalog::thread(desk.form.read().choice(Field::Bolt));
            let both = thread.zip(grade);
            both.is_none_or(|(t, grade)| grade.strength(t, Length::default()).is_some())
        };
        let is_it = move || {
            let form = desk.form.read();
            form.given(Field::Grade) && form.choice(Field::Grade) == name
        };
        radio("marks", &label, is_it, move || {
            desk.choose(Field::Grade, name)
        })
        .flag("hidden", move || !is_made())
    };
    classed("div", "kinds marks").children(MARKS.map(one))
}

/// "I do not know": of a wall the worst counts that such tubes are sold with; what a tape shows has to be measured, and
/// is told how.
fn do_not_know(desk: Desk, field: Field) -> El {
    let asked = RwSignal::new(false);
    let pressed = move || match field {
        Field::TubeWall => desk.form.read().choice(Field::WallBasis) == UNKNOWN,
        _ => asked.get(),
    };
    classed("div", "ask")
        .child(
            el("button")
                .attr("type", "button")
                .attr(
                    "aria-label",
                    &format!("{}: {}", words::label(field), message(key::ASK_UNKNOWN)),
                )
                .live_attr("aria-pressed", move || Some(pressed().to_string()))
                .text("?")
                .on("click", move |_| match field {
                    Field::TubeWall => {
                        let was = desk.form.read_untracked().choice(Field::WallBasis) == UNKNOWN;
                        desk.choose(Field::WallBasis, if was { "measured" } else { UNKNOWN });
                    }
                    _ => asked.update(|asked| *asked = !*asked),
                }),
        )
        .child(
            classed("p", "remark")
                .attr("role", "status")
                .flag("hidden", move || !pressed())
                .text(words::help(field))
                .text(" ")
                .text(message_at(&["ask", field.name()])),
        )
}

/// Joints that were made up.
pub(super) fn examples(desk: Desk) -> El {
    let list = EXAMPLES.iter().map(|example| {
        el("li")
            .child(
                el("button")
                    .attr("type", "button")
                    .text(example.name)
                    .on("click", move |_| open(desk, example)),
            )
            .child(el("span").text(message(key::PAGE_MADE_UP).with(&[example.story])))
    });
    classed("details", "examples screen-only")
        .child(el("summary").text(message(key::PAGE_LOOK_AT_A_MADE_UP_JOINT)))
        .child(classed("ul", "cases").children(list))
}

fn open(desk: Desk, example: &Example) {
    let Some(input) = joint(example) else { return };
    address::write(desk);
    desk.remember();
    desk.form.update(|form| {
        form.load_example(example.name, input);
        form.set_units(if example.metric {
            UnitSystem::Metric
        } else {
            UnitSystem::Us
        });
    });
    steps::go(desk, steps::ANSWER);
}

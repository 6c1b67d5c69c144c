//! The five measurements, each beside the drawing that shows where to measure.

use calc_core::quantity::UnitSystem;
use calc_core::scenario::{Field, MemberKind, Mount};
use drawing::measure::Measure;
use drawing::member::{Shape, measure_scene};
use leptos::prelude::*;

use super::controls::{control, counts, where_it_counts};
use super::desk::Desk;
use super::examples::{EXAMPLES, Example, joint};
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

/// The five measurements, the metal, and the two distances that decide whether the bolt tears out.
pub(super) fn measures(desk: Desk) -> El {
    classed("section", "measure")
        .attr("aria-labelledby", "measure-title")
        .child(
            el("h2")
                .attr("id", "measure-title")
                .text("Measure five things"),
        )
        .child(el("p").text(HOW))
        .child(
            classed("p", "remark")
                .flag("hidden", move || !desk.form.read().untouched())
                .text("These are starting values, not your trailer. Put yours in."),
        )
        .child(
            classed("p", "remark")
                .flag("hidden", move || desk.form.read().example().is_none())
                .live_text(move || {
                    let form = desk.form.read();
                    let name = form.example().unwrap_or_default();
                    format!("{name}: a made-up joint, nobody's trailer.")
                }),
        )
        .child(
            classed("div", "metal")
                .child(control(desk, Field::Member))
                .child(control(desk, Field::Mount))
                .child(where_it_counts(desk, Field::FittingSides)),
        )
        .child(five(desk))
        .child(
            classed("div", "metal")
                .child(control(desk, Field::TubeMaterial))
                .child(control(desk, Field::EndDistance))
                .child(control(desk, Field::FittingEdge))
                .children(OF_MEMBER.map(|field| where_it_counts(desk, field))),
        )
}

/// How numbers may be written.
pub(super) const HOW: &str = "Write them as you read them: 2 1/2, 3/16, 0.12 in, 60 mm. A number alone counts in the unit shown beside it.";

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
            el("li")
                .flag("hidden", move || !counts(desk, field))
                .child(drawing(Signal::derive(move || {
                    measure_scene(measure, shape.get(), &id)
                })))
                .child(control(desk, field))
        });
    classed("ol", "guide five").children(five)
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
            .child(el("span").text(format!("Made up. {}", example.story)))
    });
    classed("details", "examples screen-only")
        .child(el("summary").text("Look at a made-up joint first"))
        .child(classed("ul", "cases").children(list))
}

fn open(desk: Desk, example: &Example) {
    let Some(input) = joint(example) else { return };
    desk.remember();
    desk.form.update(|form| {
        form.load_example(example.name, input);
        form.set_units(if example.metric {
            UnitSystem::Metric
        } else {
            UnitSystem::Us
        });
    });
}

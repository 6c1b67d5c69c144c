//! Step 1: what is bolted on, to what, and which way the bolts run, by touching the drawing that looks like it.

use calc_core::scenario::{Field, MemberKind, options};
use drawing::choice::choice_scene;
use leptos::prelude::*;
use leptos::wasm_bindgen::JsValue;

use super::controls::where_it_counts;
use super::desk::Desk;
use super::measures;
use super::steps;
use super::words;
use crate::el::{El, classed, el};
use crate::paint::drawing;

/// The step.
pub(super) fn what(desk: Desk) -> El {
    steps::step(desk, 1)
        .children([Field::Joint, Field::Member, Field::Mount].map(|field| pictures(desk, field)))
        .child(where_it_counts(desk, Field::FittingSides))
        .child(measures::examples(desk))
}

/// A choice whose names are drawn. The drawing of a joint turns with the way that its bolts run.
fn pictures(desk: Desk, field: Field) -> El {
    let label = field.name();
    let one = |name: &'static str| {
        let scene = Signal::derive(move || {
            let form = desk.form.read();
            let member = MemberKind::by_name(form.choice(Field::Member));
            let upright = form.choice(Field::Mount) == "from-top";
            choice_scene(
                field,
                name,
                member,
                upright,
                &format!("{label}-{name}-drawn"),
            )
        });
        let input = el("input")
            .attr("type", "radio")
            .attr("name", label)
            .attr("value", name)
            .prop("checked", move || {
                JsValue::from_bool(desk.form.read().choice(field) == name)
            })
            .on("change", move |_| desk.choose(field, name));
        el("label")
            .child(
                classed("span", "picture")
                    .attr("aria-hidden", "true")
                    .child(drawing(scene)),
            )
            .child(
                el("span")
                    .child(input)
                    .child(el("span").text(words::choice(field, name))),
            )
    };
    classed("fieldset", "pictures")
        .attr("id", label)
        .attr("data-field", label)
        .child(
            // The step's heading asks it already.
            classed(
                "legend",
                if field == Field::Joint {
                    "visually-hidden"
                } else {
                    ""
                },
            )
            .text(words::label(field)),
        )
        .child(classed("div", "grid").children(options(field).into_iter().map(one)))
}

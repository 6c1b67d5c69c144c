//! Fields, and the groups they stand in.

use calc_core::quantity::UnitSystem;
use calc_core::scenario::{Field, Kind};
use leptos::prelude::*;
use leptos::wasm_bindgen::{JsCast, JsValue};
use leptos::web_sys::{Event, HtmlDetailsElement, HtmlElement};

use super::desk::Desk;
use super::state::{offered, used};
use super::words::{self, Words};
use crate::el::{El, classed, el, follow, value_of};

/// The fields that stand before "the rest".
pub(super) const MEASURED: [Field; 14] = [
    Field::Member,
    Field::Mount,
    Field::TubeWidth,
    Field::TubeDepth,
    Field::TubeWall,
    Field::Bolt,
    Field::Grade,
    Field::TubeMaterial,
    Field::EndDistance,
    Field::FittingEdge,
    Field::OutstandingWall,
    Field::BoltGauge,
    Field::FlangeSlope,
    Field::ShapedWasher,
];

/// Fields of "the rest", by group. What is measured stands before them.
const GROUPS: [(&str, &[Field]); 7] = [
    (
        "support",
        &[
            Field::Support,
            Field::SpreaderThickness,
            Field::SpreaderLength,
            Field::SpreaderWidth,
            Field::SpreaderMaterial,
            Field::Sleeve,
            Field::SleeveMaterial,
            Field::SleeveWelded,
            Field::InsertMaterial,
            Field::SleeveShort,
            Field::SleeveOuter,
            Field::SleeveWall,
        ],
    ),
    (
        "joint",
        &[
            Field::BoltsAlong,
            Field::SpacingAlong,
            Field::BoltRows,
            Field::SpacingAcross,
            Field::Hole,
            Field::Washer,
            Field::WasherOuter,
            Field::WasherThickness,
            Field::FittingThickness,
            Field::FittingMaterial,
            Field::FittingSpreads,
            Field::FittingHole,
            Field::FittingGap,
            Field::BoltFinish,
        ],
    ),
    (
        "tightening",
        &[
            Field::Torque,
            Field::PreloadShare,
            Field::Lubrication,
            Field::NutFactor,
            Field::Method,
            Field::Scatter,
        ],
    ),
    ("surface", &[Field::Surface, Field::FayingFriction]),
    (
        "trailer",
        &[
            Field::TrailerMass,
            Field::TongueShare,
            Field::VerticalFactor,
            Field::Braking,
            Field::Side,
            Field::BallAhead,
            Field::BallBelow,
            Field::TemperatureSwing,
            Field::Exposure,
        ],
    ),
    (
        "road",
        &[
            Field::RoadFull,
            Field::RoadHard,
            Field::RoadHardShare,
            Field::RoadMiddle,
            Field::RoadMiddleShare,
            Field::RoadLight,
            Field::RoadLightShare,
            Field::RoadMiles,
        ],
    ),
    (
        "tube",
        &[
            Field::WallBasis,
            Field::WeldNear,
            Field::TubeEnd,
            Field::CornerRadius,
            Field::TubeYield,
            Field::TubeModulus,
            Field::TubePoisson,
        ],
    ),
];

/// One of several joined choices.
fn radio(
    name: &str,
    label: &str,
    checked: impl Fn() -> bool + Send + 'static,
    then: impl Fn() + 'static,
) -> El {
    let input = el("input")
        .attr("type", "radio")
        .attr("name", name)
        .prop("checked", move || JsValue::from_bool(checked()))
        .on("change", move |_| then());
    el("label").kid(input).text(label)
}

fn switch(legend: &str, radios: impl IntoIterator<Item = El>) -> El {
    classed("fieldset", "switch")
        .kid(el("legend").text(legend))
        .kid(classed("div", "kinds").kids(radios))
}

/// The units and the look of the page.
pub(super) fn bench(desk: Desk) -> El {
    let units = [
        (UnitSystem::Us, "US: in, lbf"),
        (UnitSystem::Metric, "metric: mm, kN"),
    ]
    .map(|(system, label)| {
        radio(
            "units",
            label,
            move || desk.units() == system,
            move || desk.form.update(|form| form.set_units(system)),
        )
    });
    let theme = RwSignal::new("");
    let looks =
        [("", "as the device"), ("light", "light"), ("dark", "dark")].map(|(name, label)| {
            radio(
                "look",
                label,
                move || theme.get() == name,
                move || {
                    theme.set(name);
                    set_theme(name);
                },
            )
        });
    classed("div", "bench")
        .kid(switch("Units", units))
        .kid(switch("Light or dark", looks))
}

fn set_theme(name: &str) {
    if let Some(root) = document().document_element() {
        if name.is_empty() {
            root.remove_attribute("data-theme").ok();
        } else {
            root.set_attribute("data-theme", name).ok();
        }
    }
}

/// The closed groups of everything that has a default.
pub(super) fn groups(desk: Desk) -> El {
    classed("section", "rest")
        .attr("aria-labelledby", "rest-title")
        .kid(el("h3").attr("id", "rest-title").text("The rest"))
        .kid(
            classed("p", "soft")
                .text("Everything here stands at a stated default. Open what you know better."),
        )
        .kids(
            GROUPS
                .iter()
                .map(|&(name, fields)| group(desk, name, fields.to_vec())),
        )
        .kids(
            Some(elsewhere())
                .filter(|rest| !rest.is_empty())
                .map(|rest| group(desk, "other", rest)),
        )
}

/// Fields that stand in no group: none may be left out of the form.
fn elsewhere() -> Vec<Field> {
    Field::ALL
        .iter()
        .copied()
        .filter(|field| {
            !GROUPS.iter().any(|(_, fields)| fields.contains(field))
                && !MEASURED.contains(field)
                // Read for completeness of the material; nothing is computed from it.
                && *field != Field::TubeUltimate
        })
        .collect()
}

fn group(desk: Desk, name: &'static str, fields: Vec<Field>) -> El {
    let (told_of, watched) = (fields.clone(), fields.clone());
    // A closed group tells what in it is not at its default, and opens where something is wrong.
    let told = move || {
        let form = desk.form.read();
        let changed: Vec<String> = form
            .changed()
            .into_iter()
            .filter(|field| told_of.contains(field))
            .map(|field| form.value(field))
            .collect();
        if changed.is_empty() {
            String::from("defaults")
        } else {
            changed.join(" · ")
        }
    };
    let open = RwSignal::new(false);
    follow(move || {
        let wrong = desk
            .faults
            .read()
            .iter()
            .any(|fault| fault.field.is_some_and(|field| watched.contains(&field)));
        if wrong {
            open.set(true);
        }
    });
    let summary = el("summary")
        .kid(classed("span", "group-name").text(words::message_at(&["group", name])))
        .kid(classed("span", "told").live_text(told));
    classed("details", "group")
        .attr("id", &format!("group-{name}"))
        .prop("open", move || JsValue::from_bool(open.get()))
        .on("toggle", move |event| open.set(is_open(&event)))
        .kid(summary)
        .kids(fields.into_iter().map(|field| {
            control(desk, field).flag("hidden", move || !used(desk.form.read().input(), field))
        }))
}

/// Whether the details that an event came from are open now.
pub(super) fn is_open(event: &Event) -> bool {
    event
        .target()
        .and_then(|target| target.dyn_into::<HtmlDetailsElement>().ok())
        .is_some_and(|details| details.open())
}

/// A field with its label, help and errors.
pub(super) fn control(desk: Desk, field: Field) -> El {
    let (entry, unit) = match field.kind() {
        Kind::Number { .. } => (number(desk, field), true),
        Kind::Choice { .. } => (choice(desk, field), false),
    };
    let name = field.name();
    let wrong = fault(desk, field);
    let (hint_id, error_id) = (format!("{name}-hint"), format!("{name}-error"));
    let entry = entry
        .attr("id", name)
        .attr("aria-describedby", &format!("{hint_id} {error_id}"))
        .live_attr("aria-invalid", move || {
            Some(wrong.read().is_some().to_string())
        });
    let mut line = classed("div", "field")
        .attr("data-field", name)
        .kid(
            el("label")
                .attr("for", name)
                .live_text(move || words::label_in(desk.form.read().input(), field).to_owned()),
        )
        .kid(entry);
    if unit {
        line = line.kid(
            classed("span", "unit")
                .live_text(move || desk.form.read().bare_unit(field).symbol().into()),
        );
    }
    // The error line is always there, so that software that was told of it finds it.
    line.kid(
        classed("p", "hint")
            .attr("id", &hint_id)
            .live_text(move || hint(desk, field)),
    )
    .kid(
        classed("p", "error")
            .attr("id", &error_id)
            .flag("hidden", move || wrong.read().is_none())
            .live_text(move || wrong.get().unwrap_or_default()),
    )
}

fn fault(desk: Desk, field: Field) -> Memo<Option<String>> {
    Memo::new(move |_| {
        desk.faults
            .read()
            .iter()
            .find(|fault| fault.field == Some(field))
            .map(|fault| fault.sentence.clone())
    })
}

/// What to know, what counts when nothing is said, and the range.
fn hint(desk: Desk, field: Field) -> String {
    let form = desk.form.read();
    let help = words::help(field);
    match field.kind() {
        Kind::Choice { default } => {
            "{0} Default: {1}.".with(&[help, &words::choice(field, default)])
        }
        Kind::Number { default, .. } => {
            let (min, max) = form.range(field).unwrap_or_default();
            let start = default.map_or_else(
                || String::from(words::left_out(field)),
                |value| form.written(field, value),
            );
            let other = form
                .in_other_words(field)
                .map_or_else(String::new, |value| format!("= {value}. "));
            "{0}{1} Default: {2}. Takes {3} to {4}.".with(&[&other, help, &start, &min, &max])
        }
    }
}

fn number(desk: Desk, field: Field) -> El {
    // Where nothing is filled in, the field shows what was derived in its place.
    let placeholder = move || {
        let shown = desk.shown.read();
        let (_, report) = shown.answer.as_ref()?;
        let (_, value) = report.derived.iter().find(|(f, _)| *f == field)?;
        Some(desk.form.read().written(field, *value))
    };
    el("input")
        .attr("type", "text")
        .attr("inputmode", "decimal")
        .attr("autocomplete", "off")
        .attr("spellcheck", "false")
        .live_attr("placeholder", placeholder)
        .prop("value", move || desk.form.read().text(field).into())
        .on("input", move |event| desk.type_in(field, &value_of(&event)))
}

fn choice(desk: Desk, field: Field) -> El {
    // The list changes with the bolt for grades only; the others are made once.
    let names = Memo::new(move |_| offered(desk.form.read().input(), field));
    let options = move || {
        let foreign = el("option")
            .attr("value", "")
            .text("choose")
            .flag("hidden", move || {
                names.read().contains(&desk.form.read().choice(field))
            });
        let listed = names.get().into_iter().map(move |name| {
            el("option")
                .attr("value", name)
                .prop("selected", move || {
                    JsValue::from_bool(desk.form.read().choice(field) == name)
                })
                .text(words::choice(field, name))
        });
        std::iter::once(foreign).chain(listed).collect()
    };
    classed("select", "wide")
        .live(options)
        .on("change", move |event| {
            let name = value_of(&event);
            if !name.is_empty() {
                desk.form.update(|form| form.choose(field, &name));
            }
        })
}

/// Puts the cursor into a field, opening the group it stands in.
pub(super) fn go_to(field: Field) {
    let Some(element) = document().get_element_by_id(field.name()) else {
        return;
    };
    if let Ok(Some(group)) = element.closest("details") {
        group.set_attribute("open", "").ok();
    }
    if let Ok(element) = element.dyn_into::<HtmlElement>() {
        element.focus().ok();
    }
}

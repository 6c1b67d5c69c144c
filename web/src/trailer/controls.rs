//! Fields, and the groups they stand in.

use calc_core::quantity::UnitSystem;
use calc_core::scenario::{Field, Kind, offered};
use leptos::prelude::*;
use leptos::wasm_bindgen::{JsCast, JsValue};
use leptos::web_sys::{Event, HtmlDetailsElement, HtmlElement};

use super::desk::Desk;
use super::state::Fault;
use super::words::{self, Words};
use crate::el::{El, classed, el, follow, value_of};
use crate::kept::Kept;

/// The fields that stand before "the rest".
pub(super) const MEASURED: [Field; 15] = [
    Field::Member,
    Field::Mount,
    Field::FittingSides,
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
            Field::GapFilling,
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
            Field::LoadOffset,
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
            Field::TubeUltimate,
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
    el("label").child(input).text(label)
}

fn switch(legend: &str, radios: impl IntoIterator<Item = El>) -> El {
    classed("fieldset", "switch")
        .child(el("legend").text(legend))
        .child(classed("div", "kinds").children(radios))
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
            move || {
                crate::units::choose(system);
                desk.form.update(|form| form.set_units(system));
            },
        )
    });
    let kept = Kept::Theme.read().unwrap_or_default();
    let theme = RwSignal::new(kept);
    let looks =
        [("", "as the device"), ("light", "light"), ("dark", "dark")].map(|(name, label)| {
            radio(
                "look",
                label,
                move || *theme.read() == name,
                move || {
                    theme.set(name.into());
                    set_theme(name);
                },
            )
        });
    classed("div", "bench")
        .child(switch("Units", units))
        .child(switch("Light or dark", looks))
}

fn set_theme(name: &str) {
    if name.is_empty() {
        Kept::Theme.forget();
    } else {
        Kept::Theme.write(name);
    }
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
        .child(el("h2").attr("id", "rest-title").text("The rest"))
        .child(
            classed("p", "soft")
                .text("Everything here starts from a stated default. Open what you know better."),
        )
        .children(
            GROUPS
                .iter()
                .map(|&(name, fields)| group(desk, name, fields.to_vec())),
        )
        .children(
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
            !GROUPS.iter().any(|(_, fields)| fields.contains(field)) && !MEASURED.contains(field)
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
        .child(classed("span", "group-name").text(words::message_at(&["group", name])))
        .child(classed("span", "told").live_text(told));
    classed("details", "group")
        .attr("id", &format!("group-{name}"))
        .prop("open", move || JsValue::from_bool(open.get()))
        .on("toggle", move |event| open.set(is_open(&event)))
        .child(summary)
        .children(fields.into_iter().map(|field| where_it_counts(desk, field)))
}

/// A field that is shown where it counts, or where something is wrong with what it holds.
pub(super) fn where_it_counts(desk: Desk, field: Field) -> El {
    control(desk, field).flag("hidden", move || !counts(desk, field))
}

/// Whether a field has to be seen.
pub(super) fn counts(desk: Desk, field: Field) -> bool {
    let wrong = |fault: &Fault| fault.field == Some(field);
    field.applies(desk.form.read().input()) || desk.faults.read().iter().any(wrong)
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
        .child(
            el("label")
                .attr("for", name)
                .live_text(move || words::label_in(desk.form.read().input(), field).to_owned()),
        )
        .child(entry);
    if unit {
        line = line.child(
            classed("span", "unit")
                .live_text(move || desk.form.read().bare_unit(field).symbol().into()),
        );
    }
    // The error line is always there, so that software that was told of it finds it.
    line.child(
        classed("p", "hint")
            .attr("id", &hint_id)
            .live_text(move || hint(desk, field)),
    )
    .child(
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
    // Made anew only where the list changes.
    let names = Memo::new(move |_| offered(field, desk.form.read().input()));
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
        .live_children(options)
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_field_stands_in_one_place_of_the_form() {
        let placed: Vec<Field> = GROUPS
            .iter()
            .flat_map(|(_, fields)| fields.iter().copied())
            .chain(MEASURED)
            .chain(elsewhere())
            .collect();
        for field in Field::ALL {
            let places = placed.iter().filter(|f| *f == field).count();
            assert_eq!(places, 1, "{}", field.name());
        }
    }
}

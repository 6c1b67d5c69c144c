//! Fields, and the groups they stand in.

use calc_core::quantity::UnitSystem;
use calc_core::scenario::{Field, Kind, offered};
use drawing::words::key;
use leptos::prelude::*;
use leptos::wasm_bindgen::{JsCast, JsValue};
use leptos::web_sys::{Event, HtmlDetailsElement, HtmlElement, KeyboardEvent};

use super::desk::Desk;
use super::state::{FIVE, Fault};
use super::steps;
use super::words::{self, Words, message, message_at};
use crate::el::{El, classed, el, follow, value_of};

/// The fields that stand before "the rest".
pub(super) const MEASURED: [Field; 21] = [
    Field::Joint,
    Field::Member,
    Field::Mount,
    Field::FittingSides,
    Field::FoundCrack,
    Field::FoundOval,
    Field::FoundSpin,
    Field::FoundTrails,
    Field::FoundHollow,
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
pub(super) fn radio(
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

/// The units of the page.
pub(super) fn bench(desk: Desk) -> El {
    let units = [
        (UnitSystem::Us, message(key::PAGE_US_IN_LBF)),
        (UnitSystem::Metric, message(key::PAGE_METRIC_MM_KN)),
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
    classed("div", "bench").child(switch(message(key::PAGE_UNITS), units))
}

/// The closed groups of everything that has a default.
pub(super) fn groups(desk: Desk) -> El {
    let section = classed("section", "rest")
        .attr("aria-labelledby", "rest-title")
        .child(
            el("h3")
                .attr("id", "rest-title")
                .text(message(key::REST_TITLE)),
        )
        .children(
            GROUPS
                .iter()
                .map(|&(name, fields)| group(desk, name, fields.to_vec())),
        );
    match elsewhere() {
        rest if rest.is_empty() => section,
        rest => section.child(group(desk, "other", rest)),
    }
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
            String::new()
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
        .child(classed("span", "group-name").text(message_at(&["group", name])))
        .child(classed("span", "told").live_text(told));
    classed("details", "group")
        .attr("id", &format!("group-{name}"))
        .prop("open", move || JsValue::from_bool(open.get()))
        .on("toggle", move |event| open.set(is_open(&event)))
        .child(summary)
        .in_turn(desk.turns, move || {
            let fields = fields.iter();
            fields.map(|&field| where_it_counts(desk, field)).collect()
        })
}

/// A field that is shown where it counts, or where something is wrong with what it holds.
pub(super) fn where_it_counts(desk: Desk, field: Field) -> El {
    control(desk, field).flag("hidden", move || !counts(desk, field))
}

/// Whether a field has to be seen.
pub(super) fn counts(desk: Desk, field: Field) -> bool {
    let wrong = |fault: &Fault| fault.field == Some(field);
    let form = desk.form.read();
    // Published loads are those of what tows, and of chains.
    let told = field != Field::LoadRule
        || form.changed().contains(&field)
        || matches!(form.choice(Field::Joint), "coupler" | "chain-bracket");
    told && field.applies(form.input()) || desk.faults.read().iter().any(wrong)
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
    let (finder, entry, unit) = match field.kind() {
        Kind::Number { .. } => (None, number(desk, field), true),
        Kind::Choice { .. } => {
            let (finder, select) = choice(desk, field);
            (finder, select, false)
        }
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
        .children(finder)
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

/// What to know, and what counts when nothing is said; what is out of range is told its range. Of the five measurements only what to know.
fn hint(desk: Desk, field: Field) -> String {
    let form = desk.form.read();
    let help = words::help(field);
    let other = form
        .in_other_words(field)
        .map_or_else(String::new, |value| format!("= {value}. "));
    if FIVE.contains(&field) {
        return other;
    }
    match field.kind() {
        Kind::Choice { default } => {
            message(key::PAGE_DEFAULT).with(&[help, &words::choice(field, default)])
        }
        Kind::Number { .. } => {
            let start = form.started(field);
            message(key::PAGE_DEFAULT_2).with(&[&other, help, &start])
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
        // A pad of digits has no stroke, no blank and no letters.
        .attr("inputmode", "text")
        .attr("enterkeyhint", "next")
        .attr("autocapitalize", "off")
        .attr("autocomplete", "off")
        .attr("spellcheck", "false")
        .on("keydown", on_to_the_next)
        .live_attr("placeholder", placeholder)
        .prop("value", move || desk.form.read().text(field).into())
        .on("input", move |event| desk.type_in(field, &value_of(&event)))
}

/// Lists so long that they are searched, not scrolled.
const LONG: [Field; 2] = [Field::Bolt, Field::Sleeve];

fn choice(desk: Desk, field: Field) -> (Option<El>, El) {
    // Made anew only where the list changes.
    let wanted = RwSignal::new(String::new());
    let names = Memo::new(move |_| {
        let all = offered(field, desk.form.read().input());
        let wanted = wanted.read();
        let chosen = String::from(desk.form.read().choice(field));
        let fits = |name: &&str| is_wanted(&words::choice(field, name), &wanted);
        let found: Vec<&'static str> = all
            .iter()
            .copied()
            .filter(|name| fits(name) || *name == chosen)
            .collect();
        if all.iter().any(fits) { found } else { all }
    });
    // Nothing, while nobody has measured it.
    let stands = move |name: &str| {
        let form = desk.form.read();
        !form.is_blank(field) && form.choice(field) == name
    };
    let option = move |name: &'static str| {
        el("option")
            .attr("value", name)
            .prop("selected", move || JsValue::from_bool(stands(name)))
            .text(words::choice(field, name))
    };
    let options = move || {
        let foreign = el("option")
            .attr("value", "")
            .text(message(key::PAGE_CHOOSE))
            .prop("selected", move || {
                JsValue::from_bool(!names.read().iter().any(|name| stands(name)))
            })
            .flag("hidden", move || {
                names.read().iter().any(|name| stands(name))
            });
        let names = names.get();
        let mut all = vec![foreign];
        let mut of: Option<(&'static str, El)> = None;
        for name in names {
            let group = words::group_of(field, name);
            match group {
                None => all.push(option(name)),
                Some(key) => {
                    let same = of.take_if(|(last, _)| *last == key);
                    all.extend(of.take().map(|(_, group)| group));
                    let group = same.map_or_else(
                        || el("optgroup").attr("label", message_at(&["list", key])),
                        |(_, group)| group,
                    );
                    of = Some((key, group.child(option(name))));
                }
            }
        }
        all.extend(of.map(|(_, group)| group));
        all
    };
    let select = classed("select", "wide")
        .live_children(options)
        .on("change", move |event| {
            let name = value_of(&event);
            if !name.is_empty() {
                desk.choose(field, &name);
            }
        });
    let long = LONG.contains(&field);
    (long.then(|| finder(desk, field, wanted)), select)
}

/// A line to search a long list by: what fits first is chosen.
fn finder(desk: Desk, field: Field, wanted: RwSignal<String>) -> El {
    el("input")
        .attr("type", "search")
        .attr("id", &format!("{}-find", field.name()))
        .attr("class", "wide find")
        .attr("enterkeyhint", "next")
        .attr("autocomplete", "off")
        .attr("spellcheck", "false")
        .attr(
            "aria-label",
            &message(key::LIST_FIND).with(&[words::label(field)]),
        )
        .attr(
            "placeholder",
            message_at(&["list", "example", field.name()]),
        )
        .on("keydown", on_to_the_next)
        .on("input", move |event| {
            let text = value_of(&event);
            let all = offered(field, desk.form.read_untracked().input());
            let best = |fits: fn(&str, &str) -> bool| {
                let text = plain(&text);
                all.iter()
                    .copied()
                    .find(|name| fits(&plain(&words::choice(field, name)), &text))
            };
            let found = best(|label, text| label.starts_with(text))
                .or_else(|| best(|label, text| label.contains(text)));
            if let Some(name) = found.filter(|_| !text.trim().is_empty()) {
                desk.choose(field, name);
            }
            wanted.set(text);
        })
}

/// A text without what does not tell names apart.
fn plain(text: &str) -> String {
    text.chars()
        .filter(|c| !c.is_whitespace())
        .map(|c| {
            if c == '×' {
                'x'
            } else {
                c.to_ascii_lowercase()
            }
        })
        .collect()
}

fn is_wanted(label: &str, wanted: &str) -> bool {
    plain(label).contains(&plain(wanted))
}

/// Enter goes on to the next field of the step, as the key of a phone's keyboard says.
fn on_to_the_next(event: Event) {
    let Some(event) = event
        .dyn_ref::<KeyboardEvent>()
        .filter(|e| e.key() == "Enter")
    else {
        return;
    };
    let Some(here) = event
        .target()
        .and_then(|t| t.dyn_into::<HtmlElement>().ok())
    else {
        return;
    };
    event.prevent_default();
    let Some(step) = here.closest(".step").ok().flatten() else {
        return;
    };
    let Ok(all) = step.query_selector_all("input:not([type=radio]), select") else {
        return;
    };
    let fields = (0..all.length()).filter_map(|i| all.get(i)?.dyn_into::<HtmlElement>().ok());
    let next = fields
        .skip_while(|field| *field != here)
        .skip(1)
        .find(|field| field.offset_parent().is_some());
    if let Some(next) = next {
        next.focus().ok();
    }
}

/// Puts the cursor into a field, in its step and with the group open that it stands in.
pub(super) fn go_to(desk: Desk, field: Field) {
    let Some(mut element) = document().get_element_by_id(field.name()) else {
        return;
    };
    if let Ok(Some(group)) = element.closest("details") {
        group.set_attribute("open", "").ok();
    }
    if let Ok(Some(picked)) = element.query_selector("input:checked") {
        element = picked;
    }
    steps::show(desk, &element);
}

#[cfg(test)]
mod tests {
    use super::*;
    use wasm_bindgen_test::wasm_bindgen_test;

    #[wasm_bindgen_test(unsupported = test)]
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

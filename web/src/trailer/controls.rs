//! Fields, and the groups they stand in.

use calc_core::quantity::UnitSystem;
use calc_core::scenario::{Field, Kind};
use leptos::prelude::*;
use leptos::web_sys;

use super::desk::Desk;
use super::examples::{EXAMPLES, joint};
use super::state::{offered, used};
use super::words::{self, Words};

/// Fields of "the rest", by group. The five measurements and the metal stand before them.
const GROUPS: [(&str, &[Field]); 6] = [
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
            Field::SleeveShort,
            Field::SleeveOuter,
            Field::SleeveWall,
            Field::InsertMaterial,
        ],
    ),
    (
        "joint",
        &[
            Field::Mount,
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
        ],
    ),
    (
        "tube",
        &[
            Field::WallBasis,
            Field::WeldNear,
            Field::EndDistance,
            Field::TubeEnd,
            Field::CornerRadius,
            Field::TubeYield,
            Field::TubeModulus,
            Field::TubePoisson,
        ],
    ),
];

/// Units, look, examples, print.
pub(super) fn bench(desk: Desk) -> AnyView {
    let unit = move |system: UnitSystem, label: &'static str| {
        view! {
            <label>
                <input type="radio" name="units" prop:checked=move || desk.units() == system
                    on:change=move |_| desk.form.update(|form| form.set_units(system)) />
                {label}
            </label>
        }
    };
    let theme = RwSignal::new("");
    let look = move |name: &'static str, label: &'static str| {
        view! {
            <label>
                <input type="radio" name="look" prop:checked=move || theme.get() == name
                    on:change=move |_| { theme.set(name); set_theme(name); } />
                {label}
            </label>
        }
    };
    let examples = EXAMPLES
        .iter()
        .map(|example| {
            view! {
                <li>
                    <button type="button" on:click=move |_| {
                        if let Some(input) = joint(example) {
                            desk.remember();
                            desk.form.update(|form| {
                                form.load_example(example.name, input);
                                form.set_units(if example.metric { UnitSystem::Metric } else { UnitSystem::Us });
                            });
                        }
                    }>{example.name}</button>
                    <span>{example.story}</span>
                </li>
            }
        })
        .collect_view();
    view! {
        <div class="bench">
            <fieldset class="switch"><legend>"Units"</legend><div class="kinds">
                {unit(UnitSystem::Us, "US: in, lbf")}{unit(UnitSystem::Metric, "metric: mm, kN")}
            </div></fieldset>
            <fieldset class="switch"><legend>"Page"</legend><div class="kinds">
                {look("", "as the device")}{look("light", "light")}{look("dark", "dark")}
            </div></fieldset>
        </div>
        <details class="examples screen-only">
            <summary>"See three invented joints first"</summary>
            <ul class="cases">{examples}</ul>
        </details>
    }
    .into_any()
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
pub(super) fn groups(desk: Desk) -> AnyView {
    let groups = GROUPS
        .iter()
        .map(|&(name, fields)| group(desk, name, fields))
        .collect_view();
    view! {
        <section class="rest" aria-labelledby="rest-title">
            <h3 id="rest-title">"The rest"</h3>
            <p class="soft">"Each line stands at a stated default. Open what you know better."</p>
            {groups}
        </section>
    }
    .into_any()
}

fn group(desk: Desk, name: &'static str, fields: &'static [Field]) -> AnyView {
    // A closed group tells what in it is not at its default, and opens where something is wrong.
    let told = move || {
        let form = desk.form.read();
        let changed: Vec<String> = form
            .changed()
            .into_iter()
            .filter(|field| fields.contains(field))
            .map(|field| form.value(field))
            .collect();
        if changed.is_empty() {
            String::from("at the defaults")
        } else {
            changed.join(" · ")
        }
    };
    let wrong = Memo::new(move |_| {
        desk.faults
            .read()
            .iter()
            .any(|fault| fault.field.is_some_and(|field| fields.contains(&field)))
    });
    let open = RwSignal::new(false);
    Effect::new(move || {
        if wrong.get() {
            open.set(true);
        }
    });
    let place = NodeRef::<leptos::html::Details>::new();
    let controls = fields
        .iter()
        .map(|&field| {
            let hidden = move || !used(desk.form.read().input(), field);
            view! { <div class="line" hidden=hidden>{control(desk, field)}</div> }
        })
        .collect_view();
    view! {
        <details class="group" id=format!("group-{name}") node_ref=place prop:open=move || open.get()
            on:toggle=move |_| {
                if let Some(details) = place.get_untracked() {
                    open.set(details.open());
                }
            }>
            <summary><span class="group-name">{words::message(&format!("group.{name}"))}</span>
                <span class="soft told">{told}</span></summary>
            {controls}
        </details>
    }
    .into_any()
}

/// A field with its label, help and errors.
pub(super) fn control(desk: Desk, field: Field) -> AnyView {
    match field.kind() {
        Kind::Number { .. } => number(desk, field),
        Kind::Choice { .. } => choice(desk, field),
    }
}

fn hint_id(field: Field) -> String {
    format!("{}-hint", field.name())
}

fn error_id(field: Field) -> String {
    format!("{}-error", field.name())
}

fn fault(desk: Desk, field: Field) -> Signal<Option<String>> {
    Signal::derive(move || {
        desk.faults
            .read()
            .iter()
            .find(|fault| fault.field == Some(field))
            .map(|fault| fault.sentence.clone())
    })
}

/// The two lines under a field. The error line is always there, so that a reader's software that
/// was told of it finds it.
fn notes(desk: Desk, field: Field, hint: impl Fn() -> String + Send + 'static) -> AnyView {
    let wrong = fault(desk, field);
    view! {
        <p class="hint" id=hint_id(field)>{hint}</p>
        <p class="error" id=error_id(field) hidden=move || wrong.read().is_none()>
            {move || wrong.get().unwrap_or_default()}
        </p>
    }
    .into_any()
}

fn described(field: Field) -> String {
    format!("{} {}", hint_id(field), error_id(field))
}

fn number(desk: Desk, field: Field) -> AnyView {
    let wrong = fault(desk, field);
    let Kind::Number { default, .. } = field.kind() else {
        return ().into_any();
    };
    let placeholder = move || {
        let shown = desk.shown.read();
        let derived = shown.answer.as_ref().and_then(|(_, report)| {
            let known = report.derived.iter().find(|(f, _)| *f == field);
            known.map(|(_, value)| *value)
        });
        derived.map_or_else(
            || String::from(if default.is_none() { "–" } else { "" }),
            |value| desk.form.read().written(field, value),
        )
    };
    let hint = move || {
        let form = desk.form.read();
        let (min, max) = form.range(field).unwrap_or_default();
        let start = default.map_or_else(
            || words::left_out(field).to_owned(),
            |value| form.written(field, value),
        );
        let other = form.in_other_words(field).map_or_else(String::new, |v| format!("= {v}. "));
        "{0}{1} Left empty: {2}. From {3} to {4}.".with(&[
            &other,
            words::help(field),
            &start,
            &min,
            &max,
        ])
    };
    view! {
        <div class="field">
            <label for=field.name()>{words::label(field)}</label>
            <input id=field.name() type="text" inputmode="decimal" autocomplete="off" spellcheck="false"
                prop:value=move || desk.form.read().text(field)
                placeholder=placeholder
                aria-describedby=described(field)
                aria-invalid=move || wrong.read().is_some().to_string()
                on:input:target=move |event| desk.type_in(field, &event.target().value()) />
            <span class="unit">{move || desk.form.read().bare_unit(field).symbol()}</span>
            {notes(desk, field, hint)}
        </div>
    }
    .into_any()
}

fn choice(desk: Desk, field: Field) -> AnyView {
    let wrong = fault(desk, field);
    let Kind::Choice { default } = field.kind() else {
        return ().into_any();
    };
    // The list changes with the bolt for grades only; the others are made once.
    let names = Memo::new(move |_| offered(desk.form.read().input(), field));
    let options = move || {
        let chosen = desk.form.read_untracked().choice(field).to_owned();
        let foreign = (!names.read().contains(&chosen.as_str()))
            .then(|| view! { <option value="" selected=true>"choose"</option> });
        let listed = names
            .read()
            .iter()
            .map(|&name| {
                view! {
                    <option value=name prop:selected=move || desk.form.read().choice(field) == name>
                        {words::choice(field, name)}
                    </option>
                }
            })
            .collect_view();
        view! { {foreign}{listed} }
    };
    let hint = move || {
        "{0} Starts at: {1}.".with(&[words::help(field), &words::choice(field, default)])
    };
    view! {
        <div class="field">
            <label for=field.name()>{words::label(field)}</label>
            <select class="wide" id=field.name() aria-describedby=described(field)
                aria-invalid=move || wrong.read().is_some().to_string()
                on:change:target=move |event| {
                    let name = event.target().value();
                    if !name.is_empty() {
                        desk.form.update(|form| form.choose(field, &name));
                    }
                }>{options}</select>
            {notes(desk, field, hint)}
        </div>
    }
    .into_any()
}

/// Puts the cursor into a field, opening the group it stands in.
pub(super) fn go_to(field: Field) {
    use leptos::wasm_bindgen::JsCast;
    let Some(element) = document().get_element_by_id(field.name()) else {
        return;
    };
    if let Ok(Some(group)) = element.closest("details") {
        group.set_attribute("open", "").ok();
    }
    if let Ok(element) = element.dyn_into::<web_sys::HtmlElement>() {
        element.focus().ok();
    }
}

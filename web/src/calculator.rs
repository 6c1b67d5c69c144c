//! The reader's own joint.

use calc_core::quantity::{InUnits, newton_metre, pound_force_foot};
use leptos::prelude::*;

/// The reader's tightening torque, shown in both customary and SI units.
#[component]
pub fn Calculator() -> impl IntoView {
    let typed = RwSignal::new(String::from("75"));
    let shown = Memo::new(move |_| match typed.read().trim().parse::<f64>() {
        Ok(value) if value.is_finite() => format!(
            "{value} lbf·ft is {:.1} N·m",
            pound_force_foot(value).si() / newton_metre(1.0).si()
        ),
        _ => String::from("not a number"),
    });
    view! {
        <div class="row">
            <label for="torque">"torque in lbf·ft"</label>
            <input id="torque" type="text" inputmode="decimal" autocomplete="off"
                prop:value=move || typed.get()
                on:input:target=move |event| typed.set(event.target().value()) />
            <output for="torque">{move || shown.get()}</output>
        </div>
    }
}

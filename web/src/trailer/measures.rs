//! The five measurements, each beside the drawing that shows where to measure.

use calc_core::scenario::Field;
use drawing::measure::Measure;
use leptos::prelude::*;

use super::controls::control;
use super::desk::Desk;
use crate::paint::Drawing;

const FIVE: [(Measure, Field); 5] = [
    (Measure::Width, Field::TubeWidth),
    (Measure::Depth, Field::TubeDepth),
    (Measure::Wall, Field::TubeWall),
    (Measure::Bolt, Field::Bolt),
    (Measure::Head, Field::Grade),
];

/// The five measurements and the metal.
pub(super) fn measures(desk: Desk) -> AnyView {
    let five = FIVE
        .into_iter()
        .enumerate()
        .map(|(index, (measure, field))| {
            let scene = measure.scene(&format!("measured-{}", index + 1));
            view! {
                <li>
                    <Drawing scene=Signal::stored(scene) />
                    {control(desk, field)}
                </li>
            }
        })
        .collect_view();
    view! {
        <h3 id="measure-title">"Measure five things"</h3>
        <p>"Write them as you read them: 2 1/2, 3/16, 0.12 in, 60 mm. A number alone counts in the unit shown beside it."</p>
        <p class="remark" hidden=move || !desk.form.read().untouched()>
            "These are starting values, not your trailer. Put yours in."
        </p>
        <p class="remark" hidden=move || desk.form.read().example().is_none()>
            {move || desk.form.read().example().unwrap_or_default()}": an invented joint, nobody's trailer."
        </p>
        <ol class="guide five">{five}</ol>
        <div class="metal">{control(desk, Field::TubeMaterial)}</div>
    }
    .into_any()
}

//! The opening figure: turn the nut, watch what the clamp stands on.

mod control;
mod facts;

use std::time::Duration;

use calc_core::quantity::{Dimension, Unit, UnitSystem, spoken};
use drawing::Scene;
use drawing::opening::{Bench, OPENING_TURN, Stand};
use drawing::section::{Layout, section, strip_fields};
use leptos::html::Div;
use leptos::prelude::*;

use self::control::{control, stands};
use self::facts::key_points;
use super::frames::settled;
use super::plot::Plot;
use super::screen::{WIDE, matches};
use crate::paint::{paint, repaint};

/// How long the wrench must rest before the sentence is read out.
const REST: Duration = Duration::from_millis(500);

/// Where the figure stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Setting {
    /// What the clamp stands on.
    pub stand: Stand,
    /// Turn of the nut in degrees.
    pub turn: f64,
}

impl Default for Setting {
    fn default() -> Self {
        Self {
            stand: Stand::Bare,
            turn: OPENING_TURN,
        }
    }
}

/// What the parts of the figure share.
#[derive(Clone, Copy)]
pub(crate) struct Shared {
    /// The three curves, computed once.
    pub bench: StoredValue<Bench>,
    /// Where it stands.
    pub setting: RwSignal<Setting>,
    /// The reader's units.
    pub units: Signal<UnitSystem>,
}

impl Shared {
    /// Turn and torque as they are spoken.
    fn spoken(self) -> String {
        let Setting { stand, turn } = self.setting.get();
        let torque = self
            .bench
            .with_value(|bench| bench.case(stand).curve.at_turn(turn))
            .map_or(0.0, |point| point.torque_nm);
        let units = self.units.get();
        format!(
            "{}, {}",
            spoken(Unit::Degree.to_si(turn), Dimension::Angle, units),
            spoken(torque, Dimension::Torque, units)
        )
    }
}

/// One bolt, one wrench, three things to stand on.
#[component]
pub fn Opening(
    /// The reader's units.
    #[prop(into)]
    units: Signal<UnitSystem>,
) -> impl IntoView {
    // The default joint is always a joint; a test says so. Without it the figure stays empty.
    Bench::new().map(|bench| {
        let shared = Shared {
            bench: StoredValue::new(bench),
            setting: RwSignal::new(Setting::default()),
            units,
        };
        figure(shared)
    })
}

fn figure(shared: Shared) -> impl IntoView {
    let Shared {
        bench,
        setting,
        units,
    } = shared;
    let wide = matches(WIDE);
    let state = Memo::new(move |_| {
        let Setting { stand, turn } = setting.get();
        let layout = if wide.get() {
            Layout::Wide
        } else {
            Layout::Narrow
        };
        let mut state = bench
            .with_value(|bench| bench.section("opening-live", stand, turn, units.get(), layout));
        state.strip = false;
        state
    });
    let drawn = NodeRef::<Div>::new();
    Effect::new(move |before: Option<Option<Scene>>| {
        let place = drawn.get()?;
        let scene = state.with(section);
        match before.flatten() {
            Some(before) => repaint(&place, &before, &scene),
            None => paint(&place, &scene),
        }
        Some(scene)
    });
    let strip = Memo::new(move |_| {
        state.with(|state| {
            strip_fields(state)
                .into_iter()
                .map(|field| (field.name, field.text))
                .collect::<Vec<_>>()
        })
    });
    let plot = Memo::new(move |_| {
        let Setting { stand, turn } = setting.get();
        bench.with_value(|bench| bench.plot(stand, turn, units.get()))
    });
    let sentence = Memo::new(move |_| {
        let Setting { stand, turn } = setting.get();
        bench.with_value(|bench| bench.case(stand).sentence(turn, units.get()))
    });
    let said = settled(sentence, REST);
    let name =
        Signal::derive(move || format!("Torque against turn of the nut. Now {}.", shared.spoken()));

    view! {
        <div class="pair">
            <div class="drawn" node_ref=drawn></div>
            <Plot plot=plot name=name id="opening-paper" />
        </div>
        {control(shared)}
        <p class="said result">{move || sentence.get()}</p>
        <p class="visually-hidden" role="status">{move || said.get()}</p>
        {stands(shared)}
        {key_points(shared)}
        <dl class="block">
            {move || {
                strip
                    .get()
                    .into_iter()
                    .map(|(name, text)| view! { <div><dt>{name}</dt><dd>{text}</dd></div> })
                    .collect_view()
            }}
        </dl>
    }
}

//! The opening figure: turn the nut, watch what the clamp stands on.

mod control;
mod facts;

use std::time::Duration;

use calc_core::quantity::{Dimension, Unit, UnitSystem, spoken};
use drawing::opening::{Bench, OPENING_TURN, Stand};
use drawing::section::{Layout, section, strip_fields};
use leptos::prelude::*;

use self::control::{control, stands};
use self::facts::key_points;
use super::frames::settled;
use super::plot::plot as plot_of;
use super::screen::{WIDE, matches};
use crate::el::{El, classed, el};
use crate::paint::drawing;

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

/// One bolt, one wrench, three things to stand on. The parts stand side by side in the figure's box.
#[must_use]
pub fn opening(bench: Bench, units: Signal<UnitSystem>) -> Vec<El> {
    figure(Shared {
        bench: StoredValue::new(bench),
        setting: RwSignal::new(Setting::default()),
        units,
    })
}

fn figure(shared: Shared) -> Vec<El> {
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

    let fields = move || {
        strip
            .get()
            .into_iter()
            .map(|(name, text)| {
                el("div")
                    .child(el("dt").text(name))
                    .child(el("dd").text(text))
            })
            .collect()
    };
    vec![
        classed("div", "pair")
            .child(drawing(Signal::derive(move || state.with(section))))
            .children(plot_of(plot.into(), name, "opening-paper")),
        control(shared),
        classed("p", "said result").live_text(move || sentence.get()),
        classed("p", "visually-hidden")
            .attr("role", "status")
            .live_text(move || said.get()),
        stands(shared),
        key_points(shared),
        classed("dl", "block").live_children(fields),
    ]
}

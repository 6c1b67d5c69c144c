//! The key points of the curve as a table.

use calc_core::evaluate::TurnPoint;
use calc_core::quantity::{Dimension, Unit, UnitSystem, write};
use drawing::opening::{Case, FARTHEST};
use drawing::units::Lettering;
use drawing::words::key;
use drawing::words::message;
use leptos::prelude::*;

use super::{Setting, Shared};
use crate::el::{El, classed, el};

/// What a row tells, in the order of its cells.
const HEADS: [&str; 4] = ["turn", "torque", "clamp load", "dent of each face"];

/// A row: where, and turn, torque, clamp and dent there; `None` where the wrench does not get.
type Row = (&'static str, Option<[String; 4]>);

fn cells(point: &TurnPoint, units: UnitSystem) -> [String; 4] {
    [
        write(
            Unit::Degree.to_si(point.turn_deg.round()),
            Dimension::Angle,
            units,
        ),
        units.torque(point.torque_nm),
        units.force(point.clamp_n),
        units.length(point.dent_mm),
    ]
}

fn rows(case: &Case, turn: f64, units: UnitSystem) -> Vec<Row> {
    let curve = &case.curve;
    let at = |turn| curve.at_turn(turn).map(|point| cells(&point, units));
    let mut rows = vec![(key::FACTS_NOW, at(turn))];
    if let Some(knee) = curve.knee {
        rows.push((key::FACTS_KNEE, at(knee.turn_deg)));
    }
    rows.push((
        key::FACTS_WANTED,
        curve.at_wanted.map(|point| cells(&point, units)),
    ));
    rows.push((key::FACTS_END, at(FARTHEST)));
    rows
}

/// Turn, torque, clamp and dent now, where the curve bends, at the wanted torque and at its end.
pub(super) fn key_points(shared: Shared) -> El {
    let table = move || {
        let Setting { stand, turn } = shared.setting.get();
        let units = shared.units.get();
        shared
            .bench
            .with_value(|bench| rows(bench.case(stand), turn, units))
            .into_iter()
            .map(|(key, cells)| {
                let name = message(key).unwrap_or_default();
                let row = el("tr").child(el("th").attr("scope", "row").text(name));
                match cells {
                    Some(cells) => {
                        row.children(HEADS.into_iter().zip(cells).map(|(head, cell)| {
                            classed("td", "n").attr("data-name", head).text(cell)
                        }))
                    }
                    None => row.child(
                        classed("td", "whole")
                            .attr("colspan", "4")
                            .text(message(key::FACTS_NEVER).unwrap_or_default()),
                    ),
                }
            })
            .collect()
    };
    let heads = HEADS.map(|head| classed("th", "n").attr("scope", "col").text(head));
    classed("details", "facts")
        .child(el("summary").text("Key points as a table"))
        .child(
            classed("table", "restack")
                .child(el("caption").live_text(move || shared.setting.read().stand.name().into()))
                .child(el("thead").child(el("tr").child(el("td")).children(heads)))
                .child(el("tbody").live_children(table)),
        )
}

#[cfg(test)]
mod tests {
    use super::*;
    use drawing::opening::{Bench, Stand};
    use wasm_bindgen_test::wasm_bindgen_test;

    #[wasm_bindgen_test(unsupported = test)]
    fn the_bare_tube_never_gets_to_the_wanted_torque_and_the_sleeve_does() {
        let bench = Bench::new().unwrap();
        for (stand, reached) in [(Stand::Bare, false), (Stand::Sleeve, true)] {
            let rows = rows(bench.case(stand), 30.0, UnitSystem::Us);
            assert_eq!(rows.len(), 4);
            for (key, cells) in rows {
                assert!(message(key).is_some_and(|words| !words.is_empty()), "{key}");
                assert_eq!(cells.is_some(), key != "facts.wanted" || reached, "{key}");
            }
        }
        assert!(message("facts.never").is_some());
    }
}

//! The key points of the curve as a table.

use calc_core::evaluate::TurnPoint;
use calc_core::quantity::{Dimension, Unit, UnitSystem, write};
use drawing::opening::{Case, FARTHEST};
use drawing::units::Lettering;
use drawing::words::message;
use leptos::prelude::*;

use super::{Setting, Shared};

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
    let mut rows = vec![("facts.now", at(turn))];
    if let Some(knee) = curve.knee {
        rows.push(("facts.knee", at(knee.turn_deg)));
    }
    rows.push((
        "facts.wanted",
        curve.at_wanted.map(|point| cells(&point, units)),
    ));
    rows.push(("facts.end", at(FARTHEST)));
    rows
}

/// Turn, torque, clamp and dent now, where the curve bends, at the wanted torque and at its end.
pub(super) fn key_points(shared: Shared) -> impl IntoView {
    let table = move || {
        let Setting { stand, turn } = shared.setting.get();
        let units = shared.units.get();
        shared
            .bench
            .with_value(|bench| rows(bench.case(stand), turn, units))
            .into_iter()
            .map(|(key, cells)| {
                let name = message(key).unwrap_or_default();
                let cells = match cells {
                    Some([turn, torque, clamp, dent]) => view! {
                        <td class="n" data-name="turn">{turn}</td>
                        <td class="n" data-name="torque">{torque}</td>
                        <td class="n" data-name="clamp">{clamp}</td>
                        <td class="n" data-name="dent of each face">{dent}</td>
                    }
                    .into_any(),
                    None => view! {
                        <td class="whole" colspan="4">{message("facts.never").unwrap_or_default()}</td>
                    }
                    .into_any(),
                };
                view! { <tr><th scope="row">{name}</th>{cells}</tr> }
            })
            .collect_view()
    };
    view! {
        <details class="facts">
            <summary>"Key points as a table"</summary>
            <table class="restack">
                <caption>{move || shared.setting.read().stand.name()}</caption>
                <thead>
                    <tr>
                        <td></td>
                        <th scope="col" class="n">"turn"</th>
                        <th scope="col" class="n">"torque"</th>
                        <th scope="col" class="n">"clamp"</th>
                        <th scope="col" class="n">"dent of each face"</th>
                    </tr>
                </thead>
                <tbody>{table}</tbody>
            </table>
        </details>
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use drawing::opening::{Bench, Stand};

    #[test]
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

//! A plot from computed torque–turn curves.

use super::{Curve, CurveKind, TorqueTurnPlot};
use crate::words::key;
use crate::words::message;
use calc_core::evaluate::TorqueTurn;
use calc_core::quantity::UnitSystem;
use calc_core::report::Part;

fn points(curve: &TorqueTurn) -> Vec<(f64, f64)> {
    curve
        .points
        .iter()
        .map(|p| (p.turn_deg, p.torque_nm))
        .collect()
}

/// Key of the words at the knee, by what gives way there.
const fn lets_go(part: Part) -> &'static str {
    match part {
        Part::Face => key::KNEE_FACE,
        Part::Washer => key::KNEE_WASHER,
        Part::Plate => key::KNEE_PLATE,
        Part::Corner => key::KNEE_CORNER,
        Part::SideWall => key::KNEE_SIDE_WALL,
        Part::Sleeve => key::KNEE_SLEEVE,
        Part::Insert => key::KNEE_INSERT,
        Part::Stack => key::KNEE_STACK,
        Part::Bolt => key::KNEE_BOLT,
        _ => "knee",
    }
}

impl TorqueTurnPlot {
    /// This joint's curve with the wrench at a turn, other joints beside it with their names.
    #[must_use]
    pub fn from_core(
        this: &TorqueTurn,
        turn_deg: f64,
        beside: &[(&TorqueTurn, &str)],
        units: UnitSystem,
    ) -> Self {
        let mut curves = vec![Curve {
            points: points(this),
            kind: CurveKind::This,
            label: String::new(),
        }];
        curves.extend(beside.iter().map(|(curve, name)| Curve {
            points: points(curve),
            kind: CurveKind::Comparison,
            label: (*name).to_owned(),
        }));
        let here = this.at_turn(turn_deg).map(|p| (p.turn_deg, p.torque_nm));
        Self {
            curves,
            knee: this.knee.map(|k| (k.turn_deg, k.torque_nm)),
            knee_label: this
                .knee
                .and_then(|k| message(lets_go(k.part)))
                .unwrap_or_default()
                .to_owned(),
            here,
            wanted_nm: Some(this.wanted_torque_nm),
            click: this
                .at_wanted
                .map(|p| (p.turn_deg, p.torque_nm))
                .filter(|click| here.is_some_and(|here| here.0 >= click.0)),
            reach: None,
            units,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_part_that_can_give_way_has_words() {
        for part in [
            Part::Face,
            Part::Washer,
            Part::Plate,
            Part::Corner,
            Part::SideWall,
            Part::Sleeve,
            Part::Insert,
            Part::Stack,
            Part::Bolt,
        ] {
            assert!(message(lets_go(part)).is_some(), "{part:?}");
        }
    }
}

//! What a joint starts with: the defaults, and for a reader in US units sizes that a US shop knows.

use calc_core::link::{Entry, Sheet};
use calc_core::quantity::{Unit, UnitSystem};
use calc_core::scenario::{Field, Input};

/// The five measurements.
pub(in crate::trailer) const FIVE: [Field; 5] = [
    Field::TubeWidth,
    Field::TubeDepth,
    Field::TubeWall,
    Field::Bolt,
    Field::Grade,
];

/// US sizes beside defaults that are metric ones, the nearest that a tape or a scale shows. Links name them, because what a link leaves out keeps its meaning.
const US: [(Field, f64, Unit); 12] = [
    (Field::FittingThickness, 0.1875, Unit::Inch),
    (Field::SpacingAlong, 3.5, Unit::Inch),
    (Field::SpacingAcross, 1.5, Unit::Inch),
    (Field::SleeveShort, 0.01, Unit::Inch),
    (Field::TrailerMass, 1650.0, Unit::Pound),
    (Field::TowingMass, 4400.0, Unit::Pound),
    (Field::BallAhead, 5.125, Unit::Inch),
    (Field::BallBelow, 1.25, Unit::Inch),
    (Field::TyreRadius, 13.0, Unit::Inch),
    (Field::HangerHeight, 4.0, Unit::Inch),
    (Field::FittingEdge, 1.0, Unit::Inch),
    (Field::EndDistance, 2.375, Unit::Inch),
];

fn value(field: Field, number: f64, unit: Unit) -> f64 {
    Entry { number, unit }.in_unit_of(field)
}

/// The joint that a form starts with.
pub(super) fn joint(units: UnitSystem) -> Input {
    let mut input = Input::default();
    if units == UnitSystem::Us {
        for (field, number, unit) in US {
            input.set_number(field, Some(value(field, number, unit)));
        }
    }
    input
}

/// Names them in a link in their own units, where they count; elsewhere they only make it longer.
pub(super) fn write(input: &Input, units: UnitSystem, sheet: &mut Sheet) {
    if units != UnitSystem::Us {
        return;
    }
    for (field, number, unit) in US {
        if input.number(field) != Some(value(field, number, unit)) {
            continue;
        }
        if field.applies(input) {
            sheet.set(field, number, unit).ok();
        } else {
            sheet.clear(field);
        }
    }
}

/// Puts back those that a link left out, because they did not count.
pub(super) fn fill(input: &mut Input, units: UnitSystem) {
    if units == UnitSystem::Us {
        for (field, number, unit) in US {
            if input.is_default(field) && !field.applies(input) {
                input.set_number(field, Some(value(field, number, unit)));
            }
        }
    }
}

/// Whether a field holds what such a joint starts with.
pub(in crate::trailer) fn is_start(input: &Input, field: Field) -> bool {
    US.iter().any(|(f, number, unit)| {
        *f == field && input.number(field) == Some(value(field, *number, *unit))
    })
}

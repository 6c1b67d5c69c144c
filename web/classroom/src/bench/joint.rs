//! The joints on the bench, as the calculation takes them.

use calc_core::catalog::{NutFactor, nut_factor};
use calc_core::evaluate::known_torque_turn;
use calc_core::inspection::{stop_torque, with_wall};
use calc_core::quantity::{Dimension, InUnits, Stress};
use calc_core::scenario::Field;
use calc_core::{Input, Scenario};

use super::{Choice, Column, Notes, Piece, SetUp, Threads, amount};
use crate::words::{filled, message};

/// The offcut on the bench is clamped with its bolt so far from the ends, mm.
const TO_THE_END: f64 = 150.0;

/// The row of the catalog for threads.
#[must_use]
pub(super) fn factor(threads: Threads) -> Option<&'static NutFactor> {
    nut_factor(match threads {
        Threads::Dry => "dry",
        Threads::Waxed => "waxed-zinc",
    })
}

/// What sleeves are made of.
pub const SLEEVE_METAL: &str = "a513-1020";

/// The joint of a set-up.
///
/// # Errors
/// What was typed of a piece and cannot be: the piece's name and why.
pub fn scenario(notes: &Notes, set_up: SetUp) -> Result<Scenario, String> {
    let mut input = Input::with(
        &[
            (Field::FittingThickness, 0.0),
            (Field::BoltsAlong, 1.0),
            (Field::EndDistance, TO_THE_END),
            (Field::SpreaderLength, 100.0),
            (Field::SleeveShort, 0.0),
            (Field::FreeUp, 1000.0),
        ],
        &[
            (Field::Joint, "free"),
            (Field::Mount, "from-top"),
            (Field::Lubrication, "dry"),
            (Field::SleeveMaterial, SLEEVE_METAL),
        ],
    );
    let wanted = [
        (Piece::Width, Field::TubeWidth, true),
        (Piece::Depth, Field::TubeDepth, true),
        (Piece::Wall, Field::TubeWall, true),
        (
            Piece::Plate,
            Field::SpreaderThickness,
            set_up == SetUp::Plates,
        ),
        (Piece::Short, Field::SleeveShort, set_up == SetUp::Short),
    ];
    for (piece, field, counts) in wanted {
        if counts {
            let typed = amount(notes.piece(piece), Dimension::Length, notes.units);
            let typed = typed.map_err(|error| about(piece, &error.to_string()))?;
            input.set_number(field, Some(typed.si * 1e3));
        }
    }
    for (choice, field) in [
        (Choice::Bolt, Field::Bolt),
        (Choice::Grade, Field::Grade),
        (Choice::Metal, Field::TubeMaterial),
        (Choice::Sleeve, Field::Sleeve),
    ] {
        input.set_choice(field, notes.choice(choice));
    }
    input.set_choice(
        Field::Support,
        match set_up {
            SetUp::Bare => "bare",
            SetUp::Plates => "spreader",
            SetUp::Sleeve | SetUp::Short => "loose-sleeve",
            SetUp::Strap => "solid",
        },
    );
    Scenario::new(&input).map_err(|errors| {
        let first = errors.first();
        let piece = first
            .and_then(calc_core::InputError::field)
            .and_then(|field| {
                let of = wanted.iter().find(|(_, own, _)| *own == field);
                of.map(|(piece, ..)| *piece)
            });
        match (piece, first) {
            (Some(piece), Some(calc_core::InputError::OutOfRange { min, max, .. })) => {
                let limits = [*min, *max].map(|mm| {
                    calc_core::quantity::write(mm * 1e-3, Dimension::Length, notes.units)
                });
                let [min, max] = &limits;
                about(
                    piece,
                    &filled("bench.out-of-range", &[("min", min), ("max", max)]),
                )
            }
            (Some(piece), _) => about(piece, message("bench.does-not-fit")),
            (_, Some(error)) if error.field() == Some(Field::Sleeve) => {
                String::from(message("bench.sleeve"))
            }
            _ => String::from(message("bench.no-joint")),
        }
    })
}

fn about(piece: Piece, why: &str) -> String {
    let name = message(&format!("piece.{}", piece.key()));
    format!("{name}: {why}")
}

/// Whether the face of the tube lies in the range that the curve was checked in.
#[must_use]
pub fn judged(s: &Scenario) -> bool {
    use calc_core::mechanics::face::out_of_range;
    use calc_core::scenario::Strength;
    out_of_range(&s.tube.face(Strength::Likely), s.bolting.washer.outer).is_empty()
}

/// Torques at which to stop, dry and waxed: with the lowest nut factor published for either.
#[must_use]
pub fn stop_torques(s: &Scenario) -> [f64; 2] {
    [Threads::Dry, Threads::Waxed]
        .map(|threads| factor(threads).map_or(0.0, |row| stop_torque(s, row.low()).si()))
}

/// Lines with a torque past the one to stop at.
#[must_use]
pub fn past_stop(notes: &Notes) -> Vec<usize> {
    let Ok(joint) = scenario(notes, SetUp::Strap) else {
        return Vec::new();
    };
    let stops = stop_torques(&joint);
    let rows = notes.rows.iter().enumerate();
    let past = rows.filter(|(_, row)| {
        let torque = row.reading(Column::Torque, notes.units).ok().flatten();
        let stop = stops.get(row.threads as usize);
        matches!((torque, stop), (Some(torque), Some(stop)) if torque > *stop)
    });
    past.map(|(index, _)| index).collect()
}

/// A line in degrees or mm, and N·m.
pub type Line = Vec<(f64, f64)>;

/// Torque over turn, or over dent, as expected before anything was read: the lowest, the likely and the highest.
///
/// Lowest with the lowest nut factor and the least strength of the wall, highest with the highest and as much above the
/// likely strength as the least is below it (own assumption).
#[must_use]
pub fn curve_band(s: &Scenario, threads: Threads, dents: bool) -> Option<[Line; 3]> {
    let row = factor(threads)?;
    use calc_core::scenario::Strength;
    let of = |strength| s.tube.yield_strength(strength).si();
    let least = of(Strength::Least);
    let likely = of(Strength::Likely).max(least);
    let of = |k: f64, wall: f64| line(s, k, Stress::of_si(wall), dents);
    Some([
        of(row.low(), least),
        of(row.typical(), likely),
        of(row.high(), 2.0 * likely - least),
    ])
}

/// Torque over turn or dent with what was fitted; the likely strength of the wall where that was not.
#[must_use]
pub fn fitted_line(s: &Scenario, nut_factor: f64, wall: Option<Stress>, dents: bool) -> Line {
    use calc_core::scenario::Strength;
    let wall = wall.unwrap_or_else(|| s.tube.yield_strength(Strength::Likely));
    line(s, nut_factor, wall, dents)
}

/// Torque over turn or dent at a nut factor and a strength of the wall.
fn line(s: &Scenario, nut_factor: f64, wall: Stress, dents: bool) -> Line {
    let mut trial = with_wall(s, wall);
    trial.tightening.nut_factor = nut_factor;
    let curve = known_torque_turn(&trial);
    let points = curve.points.iter();
    points
        .map(|p| {
            let x = if dents {
                p.dent_mm * 1e-3
            } else {
                p.turn_deg.to_radians()
            };
            (x, p.torque_nm)
        })
        .collect()
}

//! What is bolted on, and whether it touches the member.

use super::check::Reader;
use super::checked::{Bolting, Fitting, Tube};
use super::choices::GapFilling;
use super::fields::Field;
use crate::catalog;
use crate::quantity::{InUnits, Length, mm};

/// Gap that is no gap, mm: less than anyone measures between a side plate and a tube, and drawn shut by little of the
/// clamp. A plate 8 mm thick and 90 mm wide that is free over 60 mm bends by 0.1 mm under 1.1 kN (`3·E·I·δ/L³`), within
/// the scatter of any wrench; a thicker one is allowed less, by the cube of its thickness. Own assumption.
const FIT_UP: f64 = 0.1;
const FIT_UP_UNTIL: f64 = 8.0;

fn fit_up(thickness_mm: f64) -> Length {
    let stiffer = FIT_UP_UNTIL / thickness_mm.max(FIT_UP_UNTIL);
    mm(FIT_UP * stiffer.powi(3))
}

pub(super) fn fitting(
    r: &mut Reader<'_>,
    tube: &Tube,
    bolting: &Bolting,
    between: Length,
) -> Option<Fitting> {
    let material = r.row(Field::FittingMaterial, catalog::material)?;
    let strength = material.least_beside(tube.weld_near);
    let hole = Length::of_si(r.or_derived(Field::FittingHole, bolting.hole.si()));
    r.refuse_if(
        hole < bolting.thread.major(),
        Field::FittingHole,
        "the bolt does not pass this hole: give the hole's diameter, at least the bolt's",
    );
    // Nobody says on which side of a plate on a tube the fitting lies: between is the worse.
    let gap = Length::of_si(r.or_derived(Field::FittingGap, between.si()));
    let packed = r.row(Field::GapFilling, GapFilling::by_name)? == GapFilling::Packing;
    let apart = gap > between + fit_up(r.length(Field::FittingThickness).si() * 1e3);
    Some(Fitting {
        thickness: r.length(Field::FittingThickness),
        material,
        spreads: r.yes(Field::FittingSpreads)?,
        yield_least: strength.yield_strength(),
        ultimate_least: strength.ultimate_strength(),
        edge: r.length(Field::FittingEdge),
        flange_arm: r.given(Field::FlangeArm).map(Length::of_si),
        hole,
        gap,
        packing: (gap - between).max(Length::default()),
        apart,
        touches: packed || !apart,
    })
}

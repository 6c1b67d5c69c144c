//! How the nut is tightened, and which of what was typed counts.

use super::check::Reader;
use super::checked::{Bolting, Tightening};
use super::choices::BoltFinish;
use super::fields::Field;
use crate::catalog::{self, Family};
use crate::quantity::{InUnits, Length, newton_metre};

pub(super) fn tightening(
    r: &mut Reader<'_>,
    bolting: &Bolting,
    metals: [Family; 3],
    joint: Length,
) -> Option<Tightening> {
    let stainless = bolting.grade.stainless();
    let lubrication = r.row(Field::Lubrication, |id| {
        catalog::nut_factor_on(id, stainless)
    })?;
    let method = r.row(Field::Method, catalog::tightening_method)?;
    let surface = r.row(Field::Surface, |id| {
        catalog::slip_surface_of(id, &metals, joint.si() * 1e3)
    })?;
    let own = r.input.number(Field::NutFactor).is_some();
    let nut_factor = r.or_derived(Field::NutFactor, lubrication.typical());
    let published = [lubrication.low(), lubrication.high()];
    let nut_factor_band = if !method.by_torque() && r.input.torque_nm.is_none() {
        [nut_factor; 2]
    } else if own && !(published[0]..=published[1]).contains(&nut_factor) {
        let usual = lubrication.typical();
        [nut_factor.min(usual), nut_factor.max(usual)]
    } else if lubrication.id() == "unknown" {
        // Whoever knows the factor knows the threads: a number beside threads that nobody has seen is a guess.
        [nut_factor.min(published[0]), nut_factor.max(published[1])]
    } else if own {
        [nut_factor; 2]
    } else if lubrication.id() == "zinc" && bolting.finish == BoltFinish::Plain {
        // Somebody is wrong: what grips may be as rough as a black bolt.
        let black = catalog::nut_factor("black").map_or(nut_factor, |row| row.typical());
        [nut_factor, black.max(nut_factor)]
    } else {
        [nut_factor; 2]
    };
    // A torque on the wrench is no turn and no stretch.
    let by = match catalog::tightening_method("wrench") {
        Some(wrench) if !method.by_torque() && r.input.torque_nm.is_some() => wrench,
        _ => method,
    };
    let scatter = r
        .or_derived(Field::Scatter, by.plus_minus().max(method.plus_minus()))
        .max(by.least());
    // A test of other faces is no test of these: more than is published for what lies here never counts.
    let faying_friction = r
        .or_derived(Field::FayingFriction, surface.mu())
        .min(surface.mu());
    Some(Tightening {
        nut_factor,
        nut_factor_band,
        scatter,
        torque: r.given(Field::Torque).map(newton_metre),
        preload_share: r.number(Field::PreloadShare),
        faying_friction,
        lubrication,
        method,
        surface,
        metals,
    })
}

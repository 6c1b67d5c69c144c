//! Lengths, forces, stresses, torques, masses, angles and temperatures that the compiler keeps apart.
//!
//! The types are those of [`uom`]; the customary units whose factors `uom` rounds (pound-force, kip,
//! pound-force foot, psi, ksi) follow in [`exact`] from the exact definitions of inch, pound and
//! standard gravity.
//!
//! Public functions take and give these types. Inside a formula plain `f64` in SI is fine once its
//! name says what it is; [`si`](InUnits::si) gives it.
//!
//! What people type is read by [`read()`] and results are written by [`write()`]; both know the units of
//! [`Unit`] and keep apart what [`Dimension`] keeps apart.

mod dimension;
pub mod exact;
mod link_number;
mod measured;
mod number;
mod parse;
mod read;
mod read_error;
mod unit;
mod write;

pub use dimension::{Dimension, UnitSystem};
pub use link_number::{link_number, read_link_number};
pub use measured::{Count, Measured, Measures, Moment, Ratio, Share, TemperatureStep};
pub use parse::parse_number;
pub use read::{Note, Typed, read};
pub use read_error::ReadError;
pub use unit::Unit;
pub use write::{NOT_DEFINED, as_fraction_inches, spoken, unit_for, write, write_in, write_parts};

pub use uom::si::f64::{
    Acceleration, Angle, Area, Force, Length, Mass, TemperatureInterval, ThermodynamicTemperature,
    Torque, Volume,
};

use std::marker::PhantomData;

/// Force per area: stress, pressure, strength, modulus of elasticity.
pub type Stress = uom::si::f64::Pressure;

/// Force per length of travel: spring stiffness. `uom` knows this dimension as surface tension.
pub type Stiffness = uom::si::f64::SurfaceTension;

/// Standard gravity, m/s² (exact by definition).
pub const STANDARD_GRAVITY: f64 = exact::GRAVITY.value();

/// A length from millimetres.
#[must_use]
pub fn mm(value: f64) -> Length {
    Length::new::<uom::si::length::meter>(Unit::Millimetre.to_si(value))
}

/// A length from inches (25.4 mm exactly).
#[must_use]
pub fn inch(value: f64) -> Length {
    Length::new::<uom::si::length::meter>(Unit::Inch.to_si(value))
}

/// A force from newtons.
#[must_use]
pub fn newton(value: f64) -> Force {
    Force::new::<uom::si::force::newton>(value)
}

/// A force from exact pounds-force.
#[must_use]
pub fn pound_force(value: f64) -> Force {
    newton(Unit::PoundForce.to_si(value))
}

/// A stress from megapascals.
#[must_use]
pub fn mpa(value: f64) -> Stress {
    Stress::new::<uom::si::pressure::pascal>(Unit::Megapascal.to_si(value))
}

/// A stress from exact kilopounds per square inch.
#[must_use]
pub fn ksi(value: f64) -> Stress {
    Stress::new::<uom::si::pressure::pascal>(Unit::Ksi.to_si(value))
}

/// A torque from newton metres.
#[must_use]
pub fn newton_metre(value: f64) -> Torque {
    Torque::new::<uom::si::torque::newton_meter>(value)
}

/// A torque from exact pound-force feet.
#[must_use]
pub fn pound_force_foot(value: f64) -> Torque {
    newton_metre(Unit::PoundForceFoot.to_si(value))
}

/// A mass from kilograms.
#[must_use]
pub fn kilogram(value: f64) -> Mass {
    Mass::new::<uom::si::mass::kilogram>(value)
}

/// An area from square millimetres.
#[must_use]
pub fn mm2(value: f64) -> Area {
    Area::new::<uom::si::area::square_meter>(Unit::SquareMillimetre.to_si(value))
}

/// A stiffness from newtons per millimetre.
#[must_use]
pub fn newton_per_mm(value: f64) -> Stiffness {
    Stiffness::new::<uom::si::surface_tension::newton_per_meter>(
        Unit::NewtonPerMillimetre.to_si(value),
    )
}

/// The plain number behind a typed quantity, in the coherent SI unit.
pub trait InUnits {
    /// Value in the coherent SI unit: m, N, Pa, N·m, kg, m², N/m, rad.
    fn si(self) -> f64;

    /// The quantity of a number that is in the coherent SI unit already.
    fn of_si(value: f64) -> Self;
}

macro_rules! in_units {
    ($($quantity:ty),+) => { $(impl InUnits for $quantity {
        fn si(self) -> f64 {
            self.value
        }

        fn of_si(value: f64) -> Self {
            Self { dimension: PhantomData, units: PhantomData, value }
        }
    })+ };
}
in_units!(
    Length,
    Force,
    Stress,
    Torque,
    Mass,
    Area,
    Volume,
    Stiffness,
    Angle,
    Acceleration,
    TemperatureInterval
);

#[cfg(test)]
mod tests {
    use super::*;

    /// A default set in code and the same value typed must be the same to the last bit.
    #[test]
    fn set_and_typed_values_are_identical() {
        for n in [0.125, 0.3, 1.1, 7.0, 75.0, 1234.5] {
            for (set, unit, dimension) in [
                (mm(n).si(), "mm", Dimension::Length),
                (inch(n).si(), "in", Dimension::Length),
                (mm2(n).si(), "mm²", Dimension::Area),
                (newton(n).si(), "N", Dimension::Force),
                (pound_force(n).si(), "lbf", Dimension::Force),
                (mpa(n).si(), "MPa", Dimension::Stress),
                (ksi(n).si(), "ksi", Dimension::Stress),
                (newton_metre(n).si(), "N·m", Dimension::Torque),
                (pound_force_foot(n).si(), "ft lb", Dimension::Torque),
                (kilogram(n).si(), "kg", Dimension::Mass),
                (newton_per_mm(n).si(), "N/mm", Dimension::Stiffness),
            ] {
                let typed = read(&format!("{n} {unit}"), dimension, Unit::One).unwrap();
                assert_eq!(set, typed.si, "{n} {unit}");
            }
        }
    }
}

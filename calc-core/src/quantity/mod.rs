//! Lengths, forces, stresses, torques, masses, angles and temperatures that the compiler keeps apart.
//!
//! The types are those of [`uom`]; the customary units whose factors `uom` rounds (pound-force, kip,
//! pound-force foot, psi, ksi) are defined here from the exact definitions: inch = 25.4 mm,
//! pound = 0.453 592 37 kg, standard gravity = 9.806 65 m/s².
//!
//! Public functions take and give these types. Inside a formula plain `f64` in SI is fine once its
//! name says what it is; [`si`](InUnits::si) gives it.

pub mod exact;

pub use uom::si::f64::{
    Acceleration, Angle, Area, Force, Length, Mass, TemperatureInterval, ThermodynamicTemperature,
    Torque, Volume,
};

/// Force per area: stress, pressure, strength, modulus of elasticity.
pub type Stress = uom::si::f64::Pressure;

/// Force per length of travel: spring stiffness. `uom` knows this dimension as surface tension.
pub type Stiffness = uom::si::f64::SurfaceTension;

/// Standard gravity, m/s² (exact by definition).
pub const STANDARD_GRAVITY: f64 = 9.806_65;

/// A length from millimetres.
#[must_use]
pub fn mm(value: f64) -> Length {
    Length::new::<uom::si::length::millimeter>(value)
}

/// A length from inches (25.4 mm exactly).
#[must_use]
pub fn inch(value: f64) -> Length {
    mm(value * 25.4)
}

/// A force from newtons.
#[must_use]
pub fn newton(value: f64) -> Force {
    Force::new::<uom::si::force::newton>(value)
}

/// A force from exact pounds-force.
#[must_use]
pub fn pound_force(value: f64) -> Force {
    Force::new::<exact::force::pound_force>(value)
}

/// A stress from megapascals.
#[must_use]
pub fn mpa(value: f64) -> Stress {
    Stress::new::<uom::si::pressure::megapascal>(value)
}

/// A stress from exact kilopounds per square inch.
#[must_use]
pub fn ksi(value: f64) -> Stress {
    Stress::new::<exact::pressure::ksi>(value)
}

/// A torque from newton metres.
#[must_use]
pub fn newton_metre(value: f64) -> Torque {
    Torque::new::<uom::si::torque::newton_meter>(value)
}

/// A torque from exact pound-force feet.
#[must_use]
pub fn pound_force_foot(value: f64) -> Torque {
    Torque::new::<exact::torque::pound_force_foot>(value)
}

/// A mass from kilograms.
#[must_use]
pub fn kilogram(value: f64) -> Mass {
    Mass::new::<uom::si::mass::kilogram>(value)
}

/// An area from square millimetres.
#[must_use]
pub fn mm2(value: f64) -> Area {
    Area::new::<uom::si::area::square_millimeter>(value)
}

/// A stiffness from newtons per millimetre.
#[must_use]
pub fn newton_per_mm(value: f64) -> Stiffness {
    Stiffness::new::<uom::si::surface_tension::newton_per_meter>(value * 1e3)
}

/// The plain number behind a typed quantity, in the coherent SI unit.
pub trait InUnits {
    /// Value in the coherent SI unit: m, N, Pa, N·m, kg, m², N/m, rad.
    fn si(self) -> f64;
}

macro_rules! in_units {
    ($($quantity:ty),+) => { $(impl InUnits for $quantity {
        fn si(self) -> f64 {
            self.value
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
    Acceleration
);

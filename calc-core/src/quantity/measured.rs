//! What a typed number measures, known to the compiler.

use super::{
    Acceleration, Angle, Area, Dimension, Force, InUnits, Length, Mass, Stiffness, Stress, Torque,
};

/// A quantity that carries its [`Dimension`] in its type, so that nobody has to say it a second time beside
/// the number.
pub trait Measured: InUnits {
    /// What it measures.
    const DIMENSION: Dimension;
}

macro_rules! measured {
    ($($quantity:ident),+) => { $(impl Measured for $quantity {
        const DIMENSION: Dimension = Dimension::$quantity;
    })+ };
}
measured!(
    Length,
    Area,
    Force,
    Stress,
    Torque,
    Mass,
    Angle,
    Stiffness,
    Acceleration,
    Moment,
    TemperatureStep,
    Ratio,
    Share,
    Count
);

/// Quantities whose kind `uom` does not tell apart, as numbers that say what they are.
macro_rules! wrapped {
    ($($(#[$doc:meta])* $name:ident;)+) => { $(
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq)]
        pub struct $name(pub f64);

        impl InUnits for $name {
            fn si(self) -> f64 {
                self.0
            }

            fn of_si(value: f64) -> Self {
                Self(value)
            }
        }
    )+ };
}
wrapped! {
    /// Moment of a load, N·m; `uom`'s torque is the one at a wrench.
    Moment;
    /// Difference of two temperatures, K.
    TemperatureStep;
    /// Plain number.
    Ratio;
    /// Part of a whole; 1 is the whole.
    Share;
    /// Whole number of things.
    Count;
}

/// Up to seven quantities side by side, each of its own kind.
pub trait Measures<const N: usize> {
    /// What each measures.
    const DIMENSIONS: &'static [Dimension; N];

    /// Each in the coherent SI unit.
    fn numbers(self) -> [f64; N];
}

macro_rules! measures {
    ($($count:literal: $($quantity:ident $value:ident),*;)+) => { $(
        impl<$($quantity: Measured),*> Measures<$count> for ($($quantity,)*) {
            const DIMENSIONS: &'static [Dimension; $count] = &[$($quantity::DIMENSION),*];

            #[inline]
            fn numbers(self) -> [f64; $count] {
                let ($($value,)*) = self;
                [$($value.si()),*]
            }
        }
    )+ };
}
measures! {
    0: ;
    1: A a;
    2: A a, B b;
    3: A a, B b, C c;
    4: A a, B b, C c, D d;
    5: A a, B b, C c, D d, E e;
    6: A a, B b, C c, D d, E e, F f;
    7: A a, B b, C c, D d, E e, F f, G g;
}

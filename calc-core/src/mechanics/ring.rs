//! A round tube squeezed across: a strip of it as a ring under two opposite loads.

use crate::quantity::{Force, InUnits, Length, Stiffness, Stress, newton, newton_per_mm};
use std::f64::consts::{FRAC_2_PI, FRAC_PI_4, PI};

/// A strip cut out of a round tube.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ring {
    /// Outside diameter of the tube.
    pub diameter: Length,
    /// Wall.
    pub wall: Length,
    /// Length of the strip along the tube.
    pub length: Length,
}

impl Ring {
    /// Radius of the middle of the wall.
    fn radius(&self) -> f64 {
        (0.5 * (self.diameter - self.wall).si()).max(1e-9)
    }

    /// Load for each unit that the ring closes between the two loads.
    ///
    /// ```text
    /// k = E·I/[(π/4 − 2/π)·R³],   I = l·t³/12
    /// ```
    ///
    /// | symbol | meaning | unit |
    /// |---|---|---|
    /// | `R` | radius of the middle of the wall | m |
    /// | `l`, `t` | length of the strip, wall | m |
    ///
    /// Thin ring, bending only. A strip cut free is softer than the same length of a tube, and has no
    /// hole.
    ///
    /// # Sources
    /// Roark, circular rings, two opposite loads (0.1488·W·R³/(E·I)), from memory.
    #[must_use]
    pub fn stiffness(&self, modulus: Stress) -> Stiffness {
        let second = self.length.si() * self.wall.si().powi(3) / 12.0;
        let closing = FRAC_PI_4 - FRAC_2_PI;
        newton_per_mm(modulus.si() * second / (closing * self.radius().powi(3)) * 1e-3)
    }

    /// Load at which the wall begins to yield under the loads.
    ///
    /// ```text
    /// W = π·Z·f_y/R,   Z = l·t²/6
    /// ```
    ///
    /// From `M = W·R/π` under each load, where no hoop force acts.
    ///
    /// # Sources
    /// Roark, circular rings, two opposite loads (0.3183·W·R), from memory.
    #[must_use]
    pub fn first_yield(&self, fy: Stress) -> Force {
        let modulus = self.length.si() * self.wall.si().powi(2) / 6.0;
        newton(PI * modulus * fy.si() / self.radius())
    }
}

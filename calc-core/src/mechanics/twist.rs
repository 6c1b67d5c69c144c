//! Shear stress of a section that is twisted about the member's own axis, and where that axis is in a channel.

use crate::quantity::{InUnits, Length, Moment, Stress};
use std::f64::consts::PI;

/// A section that takes a twist.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum TwistedSection {
    /// A closed tube with flat walls: height and width outside, wall.
    Closed {
        /// Height outside.
        height: Length,
        /// Width outside.
        width: Length,
        /// Wall.
        wall: Length,
    },
    /// A round tube; solid where the wall is half the diameter.
    Round {
        /// Diameter outside.
        diameter: Length,
        /// Wall.
        wall: Length,
    },
    /// A solid bar.
    Bar {
        /// Height.
        height: Length,
        /// Width.
        width: Length,
    },
    /// Flat parts that do not enclose anything, each with its length and thickness.
    Open {
        /// The sum of `b·t³/3`, m⁴.
        constant_m4: f64,
        /// The thickest part.
        thickest: Length,
    },
}

impl TwistedSection {
    /// Largest shear stress under a twisting moment, where the section is free to warp.
    ///
    /// ```text
    /// closed  τ = T/(2·A_m·t),  A_m = (h − t)·(b − t)
    /// round   τ = T·D/(2·J),    J = π/32·(D⁴ − d⁴)
    /// bar     τ = 3·T/(8·a·c²)·(1 + 0.6095·κ + 0.8865·κ² − 1.8023·κ³ + 0.91·κ⁴),  κ = c/a
    /// open    τ = T·t_max/Σ(b·t³/3)
    /// ```
    ///
    /// | symbol | meaning | unit |
    /// |---|---|---|
    /// | `T` | twisting moment | N·m |
    /// | `A_m`, `t` | area inside the middle line of the wall, wall | m², m |
    /// | `D`, `d` | diameters outside and inside | m |
    /// | `a`, `c` | half of the longer and of the shorter side of a bar | m |
    ///
    /// A weld or a wall that keeps an open section from warping takes some of it off; that is not counted.
    ///
    /// # Sources
    /// Closed: Bredt; round: Saint-Venant; bar: Roark, Table 10.7, from memory, in agreement with Timoshenko's
    /// coefficients 0.208 (square) to 1/3 (flat); open: sum of thin rectangles.
    #[must_use]
    pub fn shear_stress(&self, twist: Moment) -> Stress {
        let per_moment = match *self {
            Self::Closed {
                height,
                width,
                wall,
            } => {
                let enclosed = (height - wall).si() * (width - wall).si();
                1.0 / (2.0 * enclosed * wall.si())
            }
            Self::Round { diameter, wall } => {
                let [outer, inner] = [diameter, diameter - wall * 2.0].map(InUnits::si);
                16.0 * outer / (PI * (outer.powi(4) - inner.max(0.0).powi(4)))
            }
            Self::Bar { height, width } => {
                let long = 0.5 * height.max(width).si();
                let short = 0.5 * height.min(width).si();
                let k = short / long;
                let series = 1.0 + k * (0.6095 + k * (0.8865 + k * (-1.8023 + k * 0.91)));
                3.0 * series / (8.0 * long * short * short)
            }
            Self::Open {
                constant_m4,
                thickest,
            } => thickest.si() / constant_m4,
        };
        Stress::of_si(twist.0.abs() * per_moment)
    }
}

/// From the middle of a channel's web to its shear center, behind the web.
///
/// ```text
/// e_0 = 3·b²·t_f/(h·t_w + 6·b·t_f)
/// ```
///
/// | symbol | meaning | unit |
/// |---|---|---|
/// | `b`, `t_f` | flange along its middle line, thickness | m |
/// | `h`, `t_w` | web along its middle line, thickness | m |
///
/// Thin parts of even thickness.
///
/// # Sources
/// Thin-walled sections, from memory; rolled channels in the manual come out the same (`tests/reference/members.toml`).
#[must_use]
pub fn channel_shear_center(flange: [Length; 2], web: [Length; 2]) -> Length {
    let [[b, t_f], [h, t_w]] = [flange, web].map(|part| part.map(InUnits::si));
    Length::of_si(3.0 * b * b * t_f / (h * t_w + 6.0 * b * t_f))
}

//! Force arrows and the one scale of a drawing.

use super::lines::arrow_tip;
use crate::scene::Mark;
use crate::units::{Lettering, step_up};
use calc_core::quantity::UnitSystem;

/// How much force a piece of arrow stands for, 10 mm or half an inch; one per drawing, printed in its title
/// strip.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ForceScale {
    newton_per_bar: f64,
    units: UnitSystem,
}

impl ForceScale {
    /// The finest 1-2-5 step at which the largest force still fits into `room` drawing units.
    #[must_use]
    pub fn fitting(largest_n: f64, room: f64, units: UnitSystem) -> Self {
        let step = units.force_scale().0;
        let needed = largest_n.abs() * units.paper().0 / room.max(1.0) / step;
        Self {
            newton_per_bar: step_up(needed) * step,
            units,
        }
    }

    /// Length of the arrow of a force.
    #[must_use]
    pub fn length(self, n: f64) -> f64 {
        if n.is_finite() {
            n.abs() / self.newton_per_bar * self.bar()
        } else {
            0.0
        }
    }

    /// Length of the piece, in drawing units.
    #[must_use]
    pub fn bar(self) -> f64 {
        self.units.paper().0
    }

    /// What the title strip prints.
    #[must_use]
    pub fn text(self) -> String {
        let force = self.units.force(self.newton_per_bar);
        format!("{} = {force}", self.units.paper().1)
    }
}

/// A force arrow from tail to tip. `class` is `"clamp"` or `"load"`.
#[must_use]
pub fn force_arrow(tail: (f64, f64), tip: (f64, f64), class: &'static str) -> Vec<Mark> {
    let (dx, dy) = (tip.0 - tail.0, tip.1 - tail.1);
    let length = dx.hypot(dy);
    if length.is_nan() || length < 0.5 {
        return Vec::new();
    }
    let head = (0.7 * length).min(13.0);
    let neck = (
        tip.0 - dx / length * (head - 1.0),
        tip.1 - dy / length * (head - 1.0),
    );
    let (shaft, point) = match class {
        "clamp" => ("force clamp", "force-tip clamp"),
        _ => ("force load", "force-tip load"),
    };
    vec![
        Mark::line(tail, neck, shaft),
        arrow_tip(tip, (dx, dy), head, point),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_printed_scale_is_the_scale_of_the_arrows() {
        let scale = ForceScale::fitting(11_400.0, 60.0, UnitSystem::Metric);
        assert_eq!(scale.text(), "10\u{a0}mm = 10\u{a0}kN");
        assert!((scale.bar() - 10.0 * 96.0 / 25.4).abs() < 1e-9);
        assert!((scale.length(10_000.0) - scale.bar()).abs() < 1e-9);
        assert!((scale.length(5_000.0) - scale.bar() / 2.0).abs() < 1e-9);
        let scale = ForceScale::fitting(11_400.0, 60.0, UnitSystem::Us);
        assert_eq!(scale.text(), "1/2\u{a0}in = 5000\u{a0}lbf");
        assert!((scale.bar() - 48.0).abs() < 1e-9);
    }

    #[test]
    fn the_largest_force_fits_its_room() {
        for largest in [1.0, 99.0, 2_000.0, 2_001.0, 48_900.0, 1e7] {
            for units in [UnitSystem::Metric, UnitSystem::Us] {
                let length = ForceScale::fitting(largest, 52.0, units).length(largest);
                assert!(
                    length <= 52.0 + 1e-6 && length > 52.0 / 2.6,
                    "{largest}: {length}"
                );
            }
        }
    }
}

//! Drills that are made: fractions of an inch and millimetres.

use super::threads::System;
use crate::cite::{Cite, Flag, Source};
use crate::quantity::{Length, inch, mm};

/// A drill of a listed size.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Drill {
    /// Diameter.
    pub diameter: Length,
    /// Source of the list that it stands in.
    pub cite: Cite,
}

const JOBBER: Cite = Cite::new(
    Source::AsmeB94_11m,
    "straight shank, 1/64 to 1 in",
    Flag::ReadSecondHand,
);
const TAPER: Cite = Cite::new(
    Source::AsmeB94_11m,
    "taper shank, to 3-1/2 in",
    Flag::ReadSecondHand,
);
const METRIC: Cite = Cite::new(Source::Bs328, "sizes 3 to 25 mm", Flag::ReadSecondHand);
const METRIC_LARGE: Cite = Cite::new(Source::Iso235, "sizes above 25 mm, by halves", Flag::Memory);

/// Part of a list: up to this size in these steps, both in the list's unit.
type Steps = (f64, f64, Cite);

/// Inches: by 1/64 up to 1-3/4, then coarser.
const INCH: [Steps; 4] = [
    (1.0, 1.0 / 64.0, JOBBER),
    (1.75, 1.0 / 64.0, TAPER),
    (2.25, 1.0 / 32.0, TAPER),
    (3.0, 1.0 / 16.0, TAPER),
];

/// Millimetres.
const MILLIMETRE: [Steps; 3] = [
    (13.9, 0.1, METRIC),
    (25.0, 0.25, METRIC),
    (50.0, 0.5, METRIC_LARGE),
];

/// The smallest listed drill that is no smaller than wanted; `None` below 3 mm or 1/8 in and beyond the
/// lists (3 in, 50 mm).
///
/// # Examples
/// ```
/// use calc_core::catalog::{System, drill_for};
/// use calc_core::quantity::inch;
/// let hole = drill_for(inch(0.84), System::Inch).unwrap();
/// assert_eq!(hole.diameter, inch(27.0 / 32.0));
/// ```
#[must_use]
pub fn drill_for(wanted: Length, system: System) -> Option<Drill> {
    let (unit, steps, least): (fn(f64) -> Length, &[Steps], f64) = match system {
        System::Inch => (inch, &INCH, 0.125),
        System::Metric => (mm, &MILLIMETRE, 3.0),
    };
    // Sizes that a calculation misses by its rounding are met.
    let wanted = (wanted / unit(1.0)).value - 1e-6;
    if wanted < least - 1e-3 {
        return None;
    }
    steps.iter().find_map(|&(upto, step, cite)| {
        let size = (wanted / step).ceil() * step;
        (size <= upto + 1e-9).then(|| Drill {
            diameter: unit(size),
            cite,
        })
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::InUnits;

    #[test]
    fn the_next_drill_is_never_smaller_and_never_far_off() {
        let mut wanted = 3.2;
        while wanted < 50.0 {
            for system in [System::Inch, System::Metric] {
                let drill = drill_for(mm(wanted), system).unwrap();
                let more = drill.diameter.si() * 1e3 - wanted;
                assert!((-1e-4..0.8).contains(&more), "{wanted} {system:?}: {more}");
            }
            wanted += 0.037;
        }
        assert_eq!(drill_for(mm(50.1), System::Metric), None);
        assert_eq!(drill_for(mm(1.0), System::Metric), None);
    }

    #[test]
    fn fourteen_follows_thirteen_point_nine() {
        let drill = drill_for(mm(13.95), System::Metric).unwrap();
        assert_eq!(drill.diameter, mm(14.0));
    }
}

//! A published way to a strength, with what each kind of load may use of it.

use super::Working;
use super::demand::Demand;
use crate::evaluate::analysis::Analysis;
use crate::mechanics::bearing::GAMMA_Q;
use crate::quantity::Force;
use crate::report::{Check, CheckId, Factor, Sentence};

/// One published way to a strength, with the factor that goes with it.
///
/// A load that comes again and again may use `capacity/factor`; one that comes once and must do no lasting
/// harm, up to `yields`, and never more than the strength; one that must not break it, the whole strength.
/// A design resistance keeps its partial factor on strength against all three.
///
/// What counts as the onset of yield, per question; where it is not clear, the lower:
///
/// | question | yields at |
/// |---|---|
/// | bolt in shear | `f_y/√3` on the area that is sheared |
/// | bolt in tension | the proof load |
/// | bolt in bending | its first fibre |
/// | bearing of a ply | mean pressure `f_y` on `d·t` |
/// | tear-out, block, punching | the strength times `f_y/F_u` |
/// | tube behind the bolts | stress `f_y`, also on what the holes leave |
#[derive(Clone, Copy, Debug)]
pub(super) struct Resistance {
    /// Strength in the unit of the check.
    pub(super) capacity: f64,
    pub(super) factor: f64,
    pub(super) factor_is: Factor,
    /// Where the part begins to yield, in the same unit.
    pub(super) yields: f64,
}

impl Resistance {
    /// Allowable strength: a factor of safety on a nominal strength.
    pub(super) const fn allowable(capacity: f64, omega: f64, yields: f64) -> Self {
        Self {
            capacity,
            factor: omega,
            factor_is: Factor::Strength,
            yields,
        }
    }

    /// Design resistance: a factor on the service load.
    pub(super) const fn design(capacity: f64, yields: f64) -> Self {
        Self {
            capacity,
            factor: GAMMA_Q,
            factor_is: Factor::Load,
            yields,
        }
    }

    /// Strength against onset of yield.
    pub(super) fn to_yield(self) -> f64 {
        self.capacity / self.yields.max(1e-9)
    }
}

impl Analysis<'_> {
    /// The check of a resistance, with the usual words: one for too much and one for enough.
    pub(super) fn of_resistance(
        id: CheckId,
        (resistance, demand): (&Resistance, &Demand<'_>),
        words: [Sentence<2>; 2],
        w: Working,
    ) -> Check {
        demand
            .against::<Force>(id, resistance.capacity)
            .says(words)
            .working(w)
    }
}

//! What kind of quantity a field or a result is, and which unit system it is shown in.

use serde::{Deserialize, Serialize};

/// Kind of quantity. Kinds that share an SI unit but not a meaning are kept apart.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
#[non_exhaustive]
pub enum Dimension {
    /// Length, m.
    Length,
    /// Area, m².
    Area,
    /// Force, N.
    Force,
    /// Stress, pressure, strength or modulus, Pa.
    Stress,
    /// Torque at a wrench, N·m.
    Torque,
    /// Mass, kg.
    Mass,
    /// Angle, rad.
    Angle,
    /// Temperature on a scale with an origin, K.
    Temperature,
    /// Difference of two temperatures, K.
    TemperatureStep,
    /// Force per travel, N/m.
    Stiffness,
    /// Moment of a load, N·m.
    Moment,
    /// Acceleration, typed in g, m/s².
    Acceleration,
    /// Time, s.
    Time,
    /// Work or energy, J.
    Energy,
    /// Plain number.
    Ratio,
    /// Part of a whole, shown in %; 1 is the whole.
    Share,
    /// Whole number of things.
    Count,
}

impl Dimension {
    /// Every dimension, in the order of declaration.
    pub const ALL: [Self; 17] = [
        Self::Length,
        Self::Area,
        Self::Force,
        Self::Stress,
        Self::Torque,
        Self::Mass,
        Self::Angle,
        Self::Temperature,
        Self::TemperatureStep,
        Self::Stiffness,
        Self::Moment,
        Self::Acceleration,
        Self::Time,
        Self::Energy,
        Self::Ratio,
        Self::Share,
        Self::Count,
    ];

    /// Symbol of the coherent SI unit; empty for a plain number, a share and a count.
    #[must_use]
    pub const fn si_unit(self) -> &'static str {
        match self {
            Self::Length => "m",
            Self::Area => "m²",
            Self::Force => "N",
            Self::Stress => "Pa",
            Self::Torque | Self::Moment => "N·m",
            Self::Mass => "kg",
            Self::Angle => "rad",
            Self::Temperature | Self::TemperatureStep => "K",
            Self::Stiffness => "N/m",
            Self::Acceleration => "m/s²",
            Self::Time => "s",
            Self::Energy => "J",
            Self::Ratio | Self::Share | Self::Count => "",
        }
    }

    /// The dimension in words, without an article.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Length => "length",
            Self::Area => "area",
            Self::Force => "force",
            Self::Stress => "stress",
            Self::Torque => "torque",
            Self::Mass => "mass",
            Self::Angle => "angle",
            Self::Temperature => "temperature",
            Self::TemperatureStep => "temperature difference",
            Self::Stiffness => "stiffness",
            Self::Moment => "moment",
            Self::Acceleration => "acceleration",
            Self::Time => "time",
            Self::Energy => "energy",
            Self::Ratio => "plain number",
            Self::Share => "share",
            Self::Count => "count",
        }
    }
}

/// Which units results are shown in. What was typed stays as typed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum UnitSystem {
    /// US customary: in, lbf, lb-ft, ksi, lb, °F.
    #[default]
    Us,
    /// Metric: mm, kN, N·m, MPa, kg, °C.
    Metric,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn serde_writes_kebab_case() {
        let json = |dimension| serde_json::to_string(&dimension).unwrap();
        assert_eq!(json(Dimension::TemperatureStep), r#""temperature-step""#);
        assert_eq!(
            serde_json::from_str::<UnitSystem>(r#""metric""#).unwrap(),
            UnitSystem::Metric
        );
    }

    #[test]
    fn all_lists_each_dimension_once() {
        let distinct: std::collections::HashSet<_> = Dimension::ALL.into_iter().collect();
        assert_eq!(distinct.len(), Dimension::ALL.len());
    }
}

//! How far the preload may lie from its aim, by tightening method.

use crate::cite::{Cite, Flag, Source};

/// A way of tightening and the scatter of the preload that it gives.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TighteningMethod {
    id: &'static str,
    label: &'static str,
    plus_minus: f64,
    least: f64,
    by_torque: bool,
    cite: Cite,
    note: &'static str,
}

impl TighteningMethod {
    /// Id: `wrench`, `turn`, `nasa-dry`.
    #[must_use]
    pub const fn id(&self) -> &'static str {
        self.id
    }

    /// Name for people.
    #[must_use]
    pub const fn label(&self) -> &'static str {
        self.label
    }

    /// Scatter `Γ` as a share of the aim: 0.25 means from 75 % to 125 % of it.
    #[must_use]
    pub const fn plus_minus(&self) -> f64 {
        self.plus_minus
    }

    /// Least scatter that was published for it, by anybody: nobody's own figure counts for less.
    ///
    /// # Sources
    /// Torque wrench: a maker's page, ±17 to 23 % with the torque of the very joint measured, ±23 to 28 % with estimated
    /// friction (VDI 2230, second-hand). Stretch: 3 to 5 % in older tables. The others: as counted.
    #[must_use]
    pub const fn least(&self) -> f64 {
        self.least
    }

    /// Whether the torque tells how far the nut is tightened. Where turn, washer or stretch tells it, the
    /// nut factor has no say in the clamp.
    #[must_use]
    pub const fn by_torque(&self) -> bool {
        self.by_torque
    }

    /// Source.
    #[must_use]
    pub const fn cite(&self) -> Cite {
        self.cite
    }

    /// What to know about the figure; empty if nothing.
    #[must_use]
    pub const fn note(&self) -> &'static str {
        self.note
    }
}

const HANDBOOK: Cite = Cite::new(
    Source::Machinery31e,
    "accuracy of bolt preload",
    Flag::ReadSecondHand,
);
const NASA: Cite = Cite::new(
    Source::NasaStd5020b,
    "TFSR 6, Table 2",
    Flag::ReadSecondHand,
);

const fn method(
    id: &'static str,
    label: &'static str,
    [plus_minus, least]: [f64; 2],
    cite: Cite,
    note: &'static str,
) -> TighteningMethod {
    TighteningMethod {
        id,
        label,
        plus_minus,
        least,
        by_torque: true,
        cite,
        note,
    }
}

impl TighteningMethod {
    const fn without_torque(mut self) -> Self {
        self.by_torque = false;
        self
    }
}

static METHODS: [TighteningMethod; 7] = [
    method("feel", "By feel", [0.35, 0.35], HANDBOOK, ""),
    method(
        "wrench",
        "Torque wrench",
        [0.25, 0.17],
        HANDBOOK,
        "NASA-STD-5020B gives 35 % to bolts as they come and 25 % only when lubricated at assembly.",
    ),
    method("turn", "Turn of the nut", [0.15, 0.15], HANDBOOK, "").without_torque(),
    method(
        "indicating-washer",
        "Preload-indicating washer (DTI)",
        [0.10, 0.10],
        HANDBOOK,
        "",
    )
    .without_torque(),
    method(
        "elongation",
        "Measured stretch of the bolt",
        [0.10, 0.03],
        NASA,
        "Older tables say 3 to 5 %; the wider figure stands here.",
    )
    .without_torque(),
    method(
        "nasa-dry",
        "Torque wrench, bolt as it comes",
        [0.35, 0.23],
        NASA,
        "",
    ),
    method(
        "nasa-oiled",
        "Torque wrench, lubricated at assembly",
        [0.25, 0.17],
        NASA,
        "",
    ),
];

/// All tightening methods.
#[must_use]
pub fn tightening_methods() -> &'static [TighteningMethod] {
    &METHODS
}

/// The tightening method with this id.
#[must_use]
pub fn tightening_method(id: &str) -> Option<&'static TighteningMethod> {
    METHODS.iter().find(|method| method.id == id)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_counted_is_never_less_than_the_least() {
        for method in tightening_methods() {
            assert!(method.least() > 0.0, "{}", method.id());
            assert!(method.plus_minus() >= method.least(), "{}", method.id());
        }
    }
}

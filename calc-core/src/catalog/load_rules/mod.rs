//! Published loads of couplings and chains, as data.
//!
//! Each case says what kind it is; kinds are never mixed. Forces act at the ball. A rule that gives
//! several directions is taken one direction at a time, unless its text puts them together.

mod published;

pub(crate) use published::CHAIN_OF_WEIGHT;

use crate::catalog::CaseName;
use crate::cite::Cite;
use crate::quantity::{InUnits, Mass, STANDARD_GRAVITY, pound_force};

/// What a load case asks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, serde::Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum LoadKind {
    /// Comes again and again: the joint must not slip or open, with the usual factors.
    Service,
    /// Once, without lasting harm: no slip, no opening, no yield; factor 1 on those.
    Proof,
    /// Once, without breaking: strength without friction; factor 1 on the breaking strength.
    Ultimate,
}

impl LoadKind {
    /// The short name.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Service => "service",
            Self::Proof => "proof",
            Self::Ultimate => "ultimate",
        }
    }
}

/// Size and sign of one component of a case.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Size {
    /// None.
    Nought,
    /// Times the weight of the loaded trailer.
    Weight(f64),
    /// Pounds-force as printed.
    Pounds(f64),
    /// Times the D-value.
    Reference(f64),
    /// Times the D-value of a centre-axle trailer.
    ReferenceCentreAxle(f64),
    /// Times the weight that is counted to rest on the coupler.
    Tongue(f64),
    /// Times the weight of the loaded trailer, and pounds-force on top.
    WeightAndPounds(f64, f64),
    /// The weight that rests on the coupler as typed, as it may ease the other, and times the vertical value on top.
    TongueAndVertical(f64),
}

/// Least share of the loaded trailer's weight that is counted to rest on the coupler, whatever was typed.
///
/// A trailer at rest can be balanced until nothing rests on the ball. Once it brakes, what it carries above the ball tips
/// forward: `m·a·h/L` is 6 % of its weight at 0.5 g with its middle 0.5 m above the ball and 4 m behind it, on top of
/// 4 % at rest.
///
/// # Sources
/// 10 % is the lower end of what owner manuals of towing vehicles ask for (10 to 15 %). 4 % and 25 kg at rest: European
/// rule for center-axle trailers, from memory. That 10 % counts where less was typed, and the measures above: own
/// assumptions.
pub const LEAST_TONGUE: f64 = 0.10;

/// What a size is counted from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Trailer {
    /// Mass of the loaded trailer.
    pub mass: Mass,
    /// Mass of the towing vehicle.
    pub towing: Mass,
    /// Share of the trailer's weight on the coupler.
    pub tongue_share: f64,
    /// Length of the load bed over the distance from the coupling to the axles' middle; counted as no less
    /// than 1.
    pub bed_over_arm: f64,
    /// Whether the towing vehicle rides on air springs or what is as soft.
    pub tow_on_air: bool,
}

impl Trailer {
    /// Weight of the loaded trailer, N.
    #[must_use]
    pub fn weight(&self) -> f64 {
        self.mass.si() * STANDARD_GRAVITY
    }

    /// What is counted to rest on the coupler, N.
    #[must_use]
    pub fn on_coupler(&self) -> f64 {
        self.weight() * self.tongue_share.max(LEAST_TONGUE)
    }

    /// Reference force between the two masses, N.
    ///
    /// ```text
    /// D = g·T·R/(T + R)
    /// ```
    ///
    /// with the masses of towing vehicle `T` and trailer `R`.
    ///
    /// # Sources
    /// UN Regulation 55 and Directive 94/20/EC, as makers of couplings quote them.
    #[must_use]
    pub fn reference_force(&self) -> f64 {
        between(self.towing.si(), self.mass.si())
    }

    /// The same for a centre-axle trailer, with what its axles carry in place of its mass, N.
    ///
    /// ```text
    /// D_c = g·T·C/(T + C)
    /// ```
    ///
    /// Never above [`reference_force`](Self::reference_force), which the cases use.
    ///
    /// # Sources
    /// As there.
    #[must_use]
    pub fn reference_force_centre_axle(&self) -> f64 {
        between(self.towing.si(), self.mass.si() * (1.0 - self.tongue_share))
    }

    /// Vertical value of a centre-axle trailer above 3.5 t, N.
    ///
    /// ```text
    /// V = a·(X²/L²)·C,   X²/L² ≥ 1,   a = 1.8 m/s² behind air springs, 2.4 m/s² otherwise
    /// ```
    ///
    /// | symbol | meaning | unit |
    /// |---|---|---|
    /// | `X` | length of the load bed | m |
    /// | `L` | from the coupling to the middle of the axles | m |
    /// | `C` | mass that the axles carry | kg |
    ///
    /// # Sources
    /// UN Regulation 55 and Directive 94/20/EC, as makers of couplings quote them; that the lengths are
    /// squared and count as no less than 1 is from memory.
    #[must_use]
    pub fn vertical_value(&self) -> f64 {
        let on_axles = self.mass.si() * (1.0 - self.tongue_share);
        let bounce = if self.tow_on_air { 1.8 } else { 2.4 };
        bounce * self.bed_over_arm.max(1.0).powi(2) * on_axles
    }

    /// A size in newtons.
    #[must_use]
    pub fn force(&self, size: Size) -> f64 {
        match size {
            Size::Nought => 0.0,
            Size::Weight(times) => times * self.weight(),
            Size::Pounds(pounds) => pound_force(pounds).si(),
            Size::Reference(times) => times * self.reference_force(),
            Size::ReferenceCentreAxle(times) => times * self.reference_force_centre_axle(),
            Size::Tongue(times) => times * self.on_coupler(),
            Size::WeightAndPounds(times, pounds) => {
                times * self.weight() + pound_force(pounds).si()
            }
            Size::TongueAndVertical(times) => {
                self.weight() * self.tongue_share + times * self.vertical_value()
            }
        }
    }
}

fn between(towing: f64, towed: f64) -> f64 {
    STANDARD_GRAVITY * towing * towed / (towing + towed).max(f64::MIN_POSITIVE)
}

/// One load case of a rule, at the ball.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RuleCase {
    /// Key of its name.
    pub case: CaseName,
    /// What it asks for.
    pub kind: LoadKind,
    /// Along the tube, forward positive.
    pub along: Size,
    /// Sideways.
    pub side: Size,
    /// Upward.
    pub up: Size,
    /// What another reading of the rule gives for the largest component, where they conflict; the case
    /// itself has the safer one.
    pub other_reading: Option<Size>,
    /// Where from.
    pub cite: Cite,
}

/// What a rule asks of a safety chain and what it is fixed by.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Chain {
    /// Strength.
    pub size: Size,
    /// Force upright, down and up, where the rule asks for directions of the tube by themselves; `None`: the
    /// strength of the chain in whatever direction it pulls.
    pub upright: Option<Size>,
    /// What the rule asks for.
    pub kind: LoadKind,
    /// Whether each chain must have it, or all chains together.
    pub by: ChainShares,
    /// Where from.
    pub cite: Cite,
}

/// Which chain has to have the strength that a rule asks of chains.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ChainShares {
    /// Each by itself.
    Each,
    /// All together.
    Together,
    /// Texts are in conflict: each is taken, together is shown as the other reading.
    EachOrTogether,
}

/// Weights that share their loads.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RuleClass {
    /// Heaviest loaded trailer of the class in pounds; infinite for the last.
    pub up_to_lb: f64,
    /// Whether the limit itself belongs to the class.
    pub limit_included: bool,
    /// Cases.
    pub cases: &'static [RuleCase],
    /// Chain.
    pub chain: Chain,
}

/// A set of published loads.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LoadRule {
    id: &'static str,
    label: &'static str,
    note: &'static str,
    heaviest_kg: Option<f64>,
    classes: &'static [RuleClass],
}

impl LoadRule {
    /// Id: `road-service`, `us-tow-bar`.
    #[must_use]
    pub const fn id(&self) -> &'static str {
        self.id
    }

    /// Name, for people.
    #[must_use]
    pub const fn label(&self) -> &'static str {
        self.label
    }

    /// What to know about it.
    #[must_use]
    pub const fn note(&self) -> &'static str {
        self.note
    }

    /// Whether it asks anything of a coupler on top of the road's loads.
    #[must_use]
    pub fn has_cases(&self) -> bool {
        self.classes.iter().any(|class| !class.cases.is_empty())
    }

    fn sizes(&self) -> impl Iterator<Item = Size> {
        let cases = self.classes.iter().flat_map(|class| class.cases);
        cases.flat_map(|case| {
            [
                case.along,
                case.side,
                case.up,
                case.other_reading.unwrap_or(Size::Nought),
            ]
        })
    }

    /// Whether chains may share what it asks of them, by one reading at least.
    #[must_use]
    pub fn chains_share(&self) -> bool {
        let share = |class: &RuleClass| class.chain.by != ChainShares::Each;
        self.classes.iter().any(share)
    }

    /// Whether its cases are counted from the mass of the towing vehicle.
    #[must_use]
    pub fn compares_masses(&self) -> bool {
        self.sizes()
            .any(|size| matches!(size, Size::Reference(_) | Size::ReferenceCentreAxle(_)))
    }

    /// Whether its cases are counted from the load bed and from what the towing vehicle rides on.
    #[must_use]
    pub fn has_vertical_value(&self) -> bool {
        self.sizes()
            .any(|size| matches!(size, Size::TongueAndVertical(_)))
    }

    /// Whether the rule is made for a trailer as heavy as this; its loads are counted all the same.
    #[must_use]
    pub fn covers(&self, trailer: &Trailer) -> bool {
        self.heaviest_kg.is_none_or(|kg| trailer.mass.si() <= kg)
    }

    /// The class that a trailer falls in; the last one for anything heavier.
    #[must_use]
    pub fn class(&self, trailer: &Trailer) -> Option<&'static RuleClass> {
        let pounds = trailer.weight() / pound_force(1.0).si();
        self.classes
            .iter()
            .find(|c| pounds < c.up_to_lb || (c.limit_included && pounds <= c.up_to_lb))
            .or_else(|| self.classes.last())
    }

    /// All classes, lightest first.
    #[must_use]
    pub const fn classes(&self) -> &'static [RuleClass] {
        self.classes
    }
}

/// All rules.
#[must_use]
pub const fn load_rules() -> &'static [LoadRule] {
    published::RULES
}

/// The rule with this id.
#[must_use]
pub fn load_rule(id: &str) -> Option<&'static LoadRule> {
    published::RULES.iter().find(|rule| rule.id == id)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::kilogram;

    fn trailer(pounds: f64) -> Trailer {
        Trailer {
            mass: kilogram(pounds * 0.453_592_37),
            towing: kilogram(2000.0),
            tongue_share: 0.1,
            bed_over_arm: 1.0,
            tow_on_air: false,
        }
    }

    #[test]
    fn every_weight_has_a_class_and_limits_fall_where_the_rule_says() {
        let largest = |rule: &str, pounds: f64| {
            let t = trailer(pounds);
            load_rule(rule)
                .unwrap()
                .class(&t)
                .unwrap()
                .cases
                .iter()
                .map(|c| t.force(c.along))
                .fold(0.0, f64::max)
                / pound_force(1.0).si()
        };
        for (rule, pounds, want) in [
            ("us-tow-bar", 4999.0, 6500.0),
            ("us-tow-bar", 5000.1, 6500.13),
            ("coupler-classes", 1999.0, 6000.0),
            ("coupler-classes", 2001.0, 10_500.0),
            ("coupler-classes", 4999.0, 15_000.0),
            ("coupler-classes", 5001.0, 15_003.0),
            ("coupler-classes", 12_000.0, 36_000.0),
        ] {
            let got = largest(rule, pounds);
            assert!((got / want - 1.0).abs() < 1e-9, "{rule} {pounds}: {got}");
        }
    }

    #[test]
    fn the_safer_reading_stands_in_the_case() {
        let t = trailer(7000.0);
        for rule in load_rules() {
            for case in rule.classes().iter().flat_map(|c| c.cases) {
                let Some(other) = case.other_reading else {
                    continue;
                };
                let taken = [case.along, case.side, case.up].map(|s| t.force(s).abs());
                assert!(taken.into_iter().fold(0.0, f64::max) >= t.force(other).abs());
            }
        }
    }
}

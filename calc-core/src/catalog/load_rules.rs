//! Published loads of couplings and chains, as data.
//!
//! Each case says what kind it is; kinds are never mixed. Forces act at the ball. A rule that gives
//! several directions is taken one direction at a time, unless its text puts them together.

use crate::cite::{Cite, Flag};
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
    /// Times the weight that rests on the coupler.
    Tongue(f64),
}

/// What a size is counted from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Trailer {
    /// Mass of the loaded trailer.
    pub mass: Mass,
    /// Mass of the towing vehicle.
    pub towing: Mass,
    /// Share of the trailer's weight on the coupler.
    pub tongue_share: f64,
}

impl Trailer {
    /// Weight of the loaded trailer, N.
    #[must_use]
    pub fn weight(&self) -> f64 {
        self.mass.si() * STANDARD_GRAVITY
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

    /// A size in newtons.
    #[must_use]
    pub fn force(&self, size: Size) -> f64 {
        match size {
            Size::Nought => 0.0,
            Size::Weight(times) => times * self.weight(),
            Size::Pounds(pounds) => pound_force(pounds).si(),
            Size::Reference(times) => times * self.reference_force(),
            Size::ReferenceCentreAxle(times) => times * self.reference_force_centre_axle(),
            Size::Tongue(times) => times * self.weight() * self.tongue_share,
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
    pub case: &'static str,
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

/// What a rule asks of a safety chain and what it is fixed by: breaking strength.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Chain {
    /// Strength.
    pub size: Size,
    /// Whether each chain must have it; otherwise all chains together.
    pub each: bool,
    /// Where from.
    pub cite: Cite,
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
    RULES
}

/// The rule with this id.
#[must_use]
pub fn load_rule(id: &str) -> Option<&'static LoadRule> {
    RULES.iter().find(|rule| rule.id == id)
}

/// Size of the part of a case that is not nought, with its direction.
#[derive(Clone, Copy)]
enum Toward {
    Along(Size),
    Side(Size),
    Up(Size),
}

const fn alone(case: &'static str, kind: LoadKind, toward: Toward, cite: Cite) -> RuleCase {
    let (along, side, up) = match toward {
        Toward::Along(size) => (size, Size::Nought, Size::Nought),
        Toward::Side(size) => (Size::Nought, size, Size::Nought),
        Toward::Up(size) => (Size::Nought, Size::Nought, size),
    };
    RuleCase {
        case,
        kind,
        along,
        side,
        up,
        other_reading: None,
        cite,
    }
}

const CFR: Cite = Cite::new("cfr-49-393", "393.71(h)(1), tow-bars", Flag::Read);
const CFR_CHAIN: Cite = Cite::new("cfr-49-393", "393.71(h)(10)", Flag::Read);
const CFR_GUIDE: Cite = Cite::new("cfr-49-393", "393.70(d), guidance", Flag::Read);
const COMAR: Cite = Cite::new("comar-11-13-08-10", "classes 1 to 4", Flag::Read);
const COMAR_CHAIN: Cite = Cite::new(
    "comar-11-13-08-10",
    "safety chains by class, as SAE J684",
    Flag::Memory,
);
const ADR: Cite = Cite::new("adr-62-02", "12.3.2.1", Flag::ReadSecondHand);
const ADR_CHAIN: Cite = Cite::new(
    "adr-62-02",
    "13.4.2; that it is about chains is inferred",
    Flag::Read,
);
const R55: Cite = Cite::new("un-r55", "D-value", Flag::ReadSecondHand);
const R55_TEST: Cite = Cite::new("un-r55", "annex 6, ±0.6 D", Flag::Memory);

const CHAIN_OF_WEIGHT: Chain = Chain {
    size: Size::Weight(1.0),
    each: false,
    cite: CFR_GUIDE,
};

/// Cases of the tow-bar rule. The bending figure is for tow-bars loaded in bending, which a coupler
/// ahead of its bolts is; its direction is not said, so all are taken.
const fn tow_bar(longitudinal: (Size, Size), beam: (Size, Size)) -> [RuleCase; 5] {
    use LoadKind::Proof;
    [
        alone("tow-bar-pulled", Proof, Toward::Along(longitudinal.0), CFR),
        alone("tow-bar-pushed", Proof, Toward::Along(longitudinal.1), CFR),
        alone("tow-bar-bent-up", Proof, Toward::Up(beam.0), CFR),
        alone("tow-bar-bent-down", Proof, Toward::Up(beam.1), CFR),
        alone("tow-bar-bent-aside", Proof, Toward::Side(beam.0), CFR),
    ]
}

const TOW_BAR_LIGHT: [RuleCase; 5] = tow_bar(
    (Size::Pounds(6500.0), Size::Pounds(-6500.0)),
    (Size::Pounds(3000.0), Size::Pounds(-3000.0)),
);
const TOW_BAR_HEAVY: [RuleCase; 5] = tow_bar(
    (Size::Weight(1.3), Size::Weight(-1.3)),
    (Size::Weight(0.6), Size::Weight(-0.6)),
);

/// Cases of one coupler class: tension and compression along, sideways, up and down.
const fn class(along: (Size, Size), side: Size, up: (Size, Size)) -> [RuleCase; 5] {
    use LoadKind::Ultimate;
    [
        alone("class-pulled", Ultimate, Toward::Along(along.0), COMAR),
        alone("class-pushed", Ultimate, Toward::Along(along.1), COMAR),
        alone("class-aside", Ultimate, Toward::Side(side), COMAR),
        alone("class-pressed-up", Ultimate, Toward::Up(up.0), COMAR),
        alone("class-pulled-down", Ultimate, Toward::Up(up.1), COMAR),
    ]
}

const fn class_in_pounds(along: f64, side: f64, up: f64) -> [RuleCase; 5] {
    class(
        (Size::Pounds(along), Size::Pounds(-along)),
        Size::Pounds(side),
        (Size::Pounds(up), Size::Pounds(-up)),
    )
}

const CLASS_1: [RuleCase; 5] = class_in_pounds(6000.0, 2000.0, 2500.0);
const CLASS_2: [RuleCase; 5] = class_in_pounds(10_500.0, 3000.0, 4500.0);
const CLASS_3: [RuleCase; 5] = class_in_pounds(15_000.0, 4000.0, 7000.0);
/// The law prints 1.3 times the weight for vertical tension and 1.4 for compression; one of them looks
/// like a slip of the pen (1.3 for both in SAE J684, from memory). 1.4 is taken for both, and 1.3 shown.
const CLASS_4: [RuleCase; 5] = {
    let [pulled, pushed, aside, mut up, mut down] = class(
        (Size::Weight(3.0), Size::Weight(-3.0)),
        Size::Weight(1.0),
        (Size::Weight(1.4), Size::Weight(-1.4)),
    );
    up.other_reading = Some(Size::Weight(1.3));
    down.other_reading = Some(Size::Weight(-1.3));
    [pulled, pushed, aside, up, down]
};

const ADR_CASES: [RuleCase; 5] = {
    use LoadKind::Proof;
    [
        alone("adr-pulled", Proof, Toward::Along(Size::Weight(1.5)), ADR),
        alone("adr-pushed", Proof, Toward::Along(Size::Weight(-1.5)), ADR),
        alone("adr-aside", Proof, Toward::Side(Size::Weight(0.5)), ADR),
        alone("adr-up", Proof, Toward::Up(Size::Weight(0.5)), ADR),
        alone("adr-down", Proof, Toward::Up(Size::Weight(-0.5)), ADR),
    ]
};

const fn with_rest(case: &'static str, kind: LoadKind, times: f64, cite: Cite) -> RuleCase {
    RuleCase {
        case,
        kind,
        along: Size::Reference(times),
        side: Size::Nought,
        up: Size::Tongue(1.0),
        other_reading: Some(Size::ReferenceCentreAxle(times)),
        cite,
    }
}

const R55_CASES: [RuleCase; 4] = [
    with_rest("d-value-pulled", LoadKind::Proof, 1.0, R55),
    with_rest("d-value-pushed", LoadKind::Proof, -1.0, R55),
    with_rest("d-test-pulled", LoadKind::Service, 0.6, R55_TEST),
    with_rest("d-test-pushed", LoadKind::Service, -0.6, R55_TEST),
];

const fn one(cases: &'static [RuleCase], chain: Chain) -> RuleClass {
    up_to(f64::INFINITY, true, cases, chain)
}

const fn up_to(
    up_to_lb: f64,
    limit_included: bool,
    cases: &'static [RuleCase],
    chain: Chain,
) -> RuleClass {
    RuleClass {
        up_to_lb,
        limit_included,
        cases,
        chain,
    }
}

const fn chain(size: Size, each: bool, cite: Cite) -> Chain {
    Chain { size, each, cite }
}

/// 10 000 lb in kilograms.
const TEN_THOUSAND_LB: f64 = 4_535.923_7;

static RULES: &[LoadRule] = &[
    LoadRule {
        id: "road-service",
        label: "Road service, your own figures",
        note: "Tongue weight times a bump factor, with braking, pulling or cornering. Every other rule is checked on top of these.",
        heaviest_kg: None,
        classes: &[one(&[], CHAIN_OF_WEIGHT)],
    },
    LoadRule {
        id: "us-tow-bar",
        label: "49 CFR 393.71, tow-bars",
        note: "For commercial driveaway-towaway; a benchmark here, no rule for private utility trailers. It says strength and not whether lasting harm is allowed: the stricter reading, none, is taken.",
        heaviest_kg: None,
        classes: &[
            up_to(
                5000.0,
                false,
                &TOW_BAR_LIGHT,
                chain(Size::Pounds(6500.0), false, CFR_CHAIN),
            ),
            one(&TOW_BAR_HEAVY, chain(Size::Weight(1.3), false, CFR_CHAIN)),
        ],
    },
    LoadRule {
        id: "coupler-classes",
        label: "COMAR 11.13.08.10, coupler classes 1 to 4",
        note: "Breaking strengths by weight of the trailer, the same classes as SAE J684. For class 4 the law prints 1.3 and 1.4 times the weight for the two vertical directions; 1.4 is taken for both.",
        heaviest_kg: Some(TEN_THOUSAND_LB),
        classes: &[
            up_to(
                2000.0,
                true,
                &CLASS_1,
                chain(Size::Pounds(2000.0), true, COMAR_CHAIN),
            ),
            up_to(
                3500.0,
                true,
                &CLASS_2,
                chain(Size::Pounds(3500.0), true, COMAR_CHAIN),
            ),
            up_to(
                5000.0,
                true,
                &CLASS_3,
                chain(Size::Pounds(5000.0), true, COMAR_CHAIN),
            ),
            one(&CLASS_4, chain(Size::Weight(1.0), true, COMAR_CHAIN)),
        ],
    },
    LoadRule {
        id: "adr-62",
        label: "ADR 62/02, to 3.5 t",
        note: "Held 10 s without cracks or harmful set. One direction at a time is our reading. The endurance alternative (±12 kN) is not used.",
        heaviest_kg: Some(3500.0),
        classes: &[one(&ADR_CASES, chain(Size::Weight(1.0), false, ADR_CHAIN))],
    },
    LoadRule {
        id: "un-r55",
        label: "UN Regulation 55, D-value",
        note: "D compares the two masses; it is no proof load in the rule. Taking it as one, with the tongue weight at rest, is our reading; the endurance test is ±0.6 D, from memory. The value for a centre-axle trailer, Dc, is smaller; D is taken and Dc shown. Above 3.5 t the rule also asks for a vertical value V, which is not computed here.",
        heaviest_kg: Some(3500.0),
        classes: &[one(&R55_CASES, CHAIN_OF_WEIGHT)],
    },
];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::kilogram;

    fn trailer(pounds: f64) -> Trailer {
        Trailer {
            mass: kilogram(pounds * 0.453_592_37),
            towing: kilogram(2000.0),
            tongue_share: 0.1,
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

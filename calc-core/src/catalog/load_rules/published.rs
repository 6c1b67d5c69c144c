//! The rules themselves: what each text prints, and how it was read.

use super::{Chain, ChainShares, LoadKind, LoadRule, RuleCase, RuleClass, Size};
use crate::catalog::CaseName;
use crate::cite::{Cite, Flag, Source};

/// Size of the part of a case that is not zero, with its direction.
#[derive(Clone, Copy)]
enum Toward {
    Along(Size),
    Side(Size),
    Up(Size),
}

const fn alone(case: CaseName, kind: LoadKind, toward: Toward, cite: Cite) -> RuleCase {
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

const CFR: Cite = Cite::new(Source::Cfr49_393, "393.71(h)(1), tow-bars", Flag::Read);
const CFR_CHAIN: Cite = Cite::new(
    Source::Cfr49_393,
    "393.71(h)(10): the combined strength of the chains",
    Flag::Read,
);
const CFR_GUIDE: Cite = Cite::new(
    Source::Cfr49_393,
    "393.70(d)(3), the device and its attachment, as quoted; guidance, question 2: both chains together",
    Flag::ReadSecondHand,
);
const COMAR: Cite = Cite::new(Source::Comar11_13_08_10, "classes 1 to 4", Flag::Read);
const COMAR_CHAIN: Cite = Cite::new(
    Source::Comar11_13_08_10,
    "safety chains by class, as SAE J684",
    Flag::Memory,
);
const ADR: Cite = Cite::new(Source::Adr62_02, "12.3.2.1", Flag::ReadSecondHand);
const ADR_CHAIN: Cite = Cite::new(
    Source::Adr62_02,
    "13.4.2 (tow-bars; amendment 1 of 2010), each attachment, no residual deformation; 14.4 (drawbars) the same, as quoted",
    Flag::ReadSecondHand,
);
const HITCH: Cite = Cite::new(
    Source::Comar11_13_08_10,
    "hitch test, weight-carrying",
    Flag::Read,
);
const R55_V: Cite = Cite::new(Source::UnR55, "vertical value above 3.5 t", Flag::Memory);
const R55: Cite = Cite::new(Source::UnR55, "D-value", Flag::ReadSecondHand);
const R55_LINE: Cite = Cite::new(
    Source::UnR55,
    "(EU) 2014/44 annex V division 6: along a line 15° down to the rear; ±0.6 D from memory",
    Flag::Memory,
);
const R55_TEST: Cite = Cite::new(Source::UnR55, "annex 6, ±0.6 D", Flag::Memory);

/// The rule asks it of the device and of what fixes it, its guidance lets two chains have it together, and
/// states ask it of each (New Hampshire RSA 266:63): each is taken, and the share of one shown.
pub(crate) const CHAIN_OF_WEIGHT: Chain =
    chain(Size::Weight(1.0), ChainShares::EachOrTogether, CFR_GUIDE);

/// Each attachment takes the whole, along and upright by themselves, without lasting harm. Up to 2.5 t one
/// chain may be there, so that asking it of each is no more than the rule does.
const CHAIN_ADR: Chain = Chain {
    size: Size::Weight(1.0),
    upright: Some(Size::Weight(0.5)),
    kind: LoadKind::Proof,
    by: ChainShares::Each,
    cite: ADR_CHAIN,
};

/// Cases of the tow-bar rule. The bending figure is for tow-bars loaded in bending, which a coupler
/// ahead of its bolts is; its direction is not said, so all are taken.
const fn tow_bar(longitudinal: (Size, Size), beam: (Size, Size)) -> [RuleCase; 5] {
    use LoadKind::Proof;
    [
        alone(
            CaseName::TowBarPulled,
            Proof,
            Toward::Along(longitudinal.0),
            CFR,
        ),
        alone(
            CaseName::TowBarPushed,
            Proof,
            Toward::Along(longitudinal.1),
            CFR,
        ),
        alone(CaseName::TowBarBentUp, Proof, Toward::Up(beam.0), CFR),
        alone(CaseName::TowBarBentDown, Proof, Toward::Up(beam.1), CFR),
        alone(CaseName::TowBarBentAside, Proof, Toward::Side(beam.0), CFR),
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
        alone(
            CaseName::ClassPulled,
            Ultimate,
            Toward::Along(along.0),
            COMAR,
        ),
        alone(
            CaseName::ClassPushed,
            Ultimate,
            Toward::Along(along.1),
            COMAR,
        ),
        alone(CaseName::ClassAside, Ultimate, Toward::Side(side), COMAR),
        alone(CaseName::ClassPressedUp, Ultimate, Toward::Up(up.0), COMAR),
        alone(CaseName::ClassPulledDown, Ultimate, Toward::Up(up.1), COMAR),
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
        alone(
            CaseName::AdrPulled,
            Proof,
            Toward::Along(Size::Weight(1.5)),
            ADR,
        ),
        alone(
            CaseName::AdrPushed,
            Proof,
            Toward::Along(Size::Weight(-1.5)),
            ADR,
        ),
        alone(
            CaseName::AdrAside,
            Proof,
            Toward::Side(Size::Weight(0.5)),
            ADR,
        ),
        alone(CaseName::AdrUp, Proof, Toward::Up(Size::Weight(0.5)), ADR),
        alone(
            CaseName::AdrDown,
            Proof,
            Toward::Up(Size::Weight(-0.5)),
            ADR,
        ),
    ]
};

const fn with_rest(case: CaseName, kind: LoadKind, times: f64, cite: Cite) -> RuleCase {
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

/// Cosine and sine of 15°, the slope of the line of force in the endurance test of a coupling head, times
/// 0.6.
const LINE: (f64, f64) = (0.579_555, 0.155_291);

const R55_CASES: [RuleCase; 6] = [
    with_rest(CaseName::DValuePulled, LoadKind::Proof, 1.0, R55),
    with_rest(CaseName::DValuePushed, LoadKind::Proof, -1.0, R55),
    with_rest(CaseName::DTestPulled, LoadKind::Service, 0.6, R55_TEST),
    with_rest(CaseName::DTestPushed, LoadKind::Service, -0.6, R55_TEST),
    together(
        CaseName::DLinePulled,
        LoadKind::Service,
        (Size::Reference(LINE.0), Size::Reference(LINE.1)),
        R55_LINE,
    ),
    together(
        CaseName::DLinePushed,
        LoadKind::Service,
        (Size::Reference(-LINE.0), Size::Reference(-LINE.1)),
        R55_LINE,
    ),
];

/// Two components at once.
const fn together(
    case: CaseName,
    kind: LoadKind,
    (along, up): (Size, Size),
    cite: Cite,
) -> RuleCase {
    RuleCase {
        case,
        kind,
        along,
        side: Size::Nought,
        up,
        other_reading: None,
        cite,
    }
}

/// D along and the vertical value up or down at once.
const fn with_vertical(
    case: CaseName,
    kind: LoadKind,
    (along, up): (f64, f64),
    cite: Cite,
) -> RuleCase {
    RuleCase {
        other_reading: Some(Size::ReferenceCentreAxle(along)),
        ..together(
            case,
            kind,
            (Size::Reference(along), Size::TongueAndVertical(up)),
            cite,
        )
    }
}

/// Above 3.5 t the vertical value comes on top and at the same time, whichever way both point: how they go
/// together in time is not said in what was seen.
const R55_HEAVY: [RuleCase; 14] = {
    let [
        pulled,
        pushed,
        test_pulled,
        test_pushed,
        line_pulled,
        line_pushed,
    ] = R55_CASES;
    [
        pulled,
        pushed,
        test_pulled,
        test_pushed,
        line_pulled,
        line_pushed,
        with_vertical(
            CaseName::VValuePressedUp,
            LoadKind::Proof,
            (1.0, 1.0),
            R55_V,
        ),
        with_vertical(
            CaseName::VValuePulledDown,
            LoadKind::Proof,
            (1.0, -1.0),
            R55_V,
        ),
        with_vertical(
            CaseName::VValuePressedUpPushed,
            LoadKind::Proof,
            (-1.0, 1.0),
            R55_V,
        ),
        with_vertical(
            CaseName::VValuePulledDownPushed,
            LoadKind::Proof,
            (-1.0, -1.0),
            R55_V,
        ),
        with_vertical(
            CaseName::VTestPressedUp,
            LoadKind::Service,
            (0.6, 0.6),
            R55_TEST,
        ),
        with_vertical(
            CaseName::VTestPulledDown,
            LoadKind::Service,
            (0.6, -0.6),
            R55_TEST,
        ),
        with_vertical(
            CaseName::VTestPressedUpPushed,
            LoadKind::Service,
            (-0.6, 0.6),
            R55_TEST,
        ),
        with_vertical(
            CaseName::VTestPulledDownPushed,
            LoadKind::Service,
            (-0.6, -0.6),
            R55_TEST,
        ),
    ]
};

/// What the test presses on the hitch comes on the coupler the other way round.
const HITCH_CASES: [RuleCase; 4] = {
    use LoadKind::Proof;
    const LARGE: (f64, f64) = (0.47, 480.0);
    const ALONG: (f64, f64) = (0.23, 1530.0);
    [
        together(
            CaseName::HitchTestPressed,
            Proof,
            (
                Size::WeightAndPounds(-LARGE.0, -LARGE.1),
                Size::WeightAndPounds(LARGE.0, LARGE.1),
            ),
            HITCH,
        ),
        together(
            CaseName::HitchTestPulled,
            Proof,
            (Size::WeightAndPounds(ALONG.0, ALONG.1), Size::Weight(0.15)),
            HITCH,
        ),
        together(
            CaseName::HitchTestPushed,
            Proof,
            (
                Size::WeightAndPounds(-ALONG.0, -ALONG.1),
                Size::Weight(0.15),
            ),
            HITCH,
        ),
        alone(
            CaseName::HitchTestAside,
            Proof,
            Toward::Side(Size::WeightAndPounds(0.20, 500.0)),
            HITCH,
        ),
    ]
};

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

/// Breaking strength of a chain, in whatever direction it pulls.
const fn chain(size: Size, by: ChainShares, cite: Cite) -> Chain {
    Chain {
        size,
        upright: None,
        kind: LoadKind::Ultimate,
        by,
        cite,
    }
}

/// 3.5 t in pounds.
const THREE_AND_A_HALF_TONNES_LB: f64 = 3500.0 / 0.453_592_37;

/// 10 000 lb in kilograms.
const TEN_THOUSAND_LB: f64 = 4_535.923_7;

pub(super) static RULES: &[LoadRule] = &[
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
                chain(Size::Pounds(6500.0), ChainShares::Together, CFR_CHAIN),
            ),
            one(
                &TOW_BAR_HEAVY,
                chain(Size::Weight(1.3), ChainShares::Together, CFR_CHAIN),
            ),
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
                chain(Size::Pounds(2000.0), ChainShares::Each, COMAR_CHAIN),
            ),
            up_to(
                3500.0,
                true,
                &CLASS_2,
                chain(Size::Pounds(3500.0), ChainShares::Each, COMAR_CHAIN),
            ),
            up_to(
                5000.0,
                true,
                &CLASS_3,
                chain(Size::Pounds(5000.0), ChainShares::Each, COMAR_CHAIN),
            ),
            one(
                &CLASS_4,
                chain(Size::Weight(1.0), ChainShares::Each, COMAR_CHAIN),
            ),
        ],
    },
    LoadRule {
        id: "hitch-test",
        label: "COMAR 11.13.08.10, hitch test",
        note: "Forces of the test for weight-carrying hitches, put on the coupler the other way around: our reading. The text says forces and not whether lasting harm is allowed: the stricter reading, none, is taken.",
        heaviest_kg: Some(TEN_THOUSAND_LB),
        classes: &[one(&HITCH_CASES, CHAIN_OF_WEIGHT)],
    },
    LoadRule {
        id: "adr-62",
        label: "ADR 62/02, to 3.5 t",
        note: "Held 10 s without cracks or harmful set. One direction at a time is our reading. The endurance alternative (±12 kN) is not used. Each chain's attachment takes the weight along and half of it upright, one at a time, without lasting harm; above 2.5 t there are two chains, each for the whole.",
        heaviest_kg: Some(3500.0),
        classes: &[one(&ADR_CASES, CHAIN_ADR)],
    },
    LoadRule {
        id: "un-r55",
        label: "UN Regulation 55, D-value",
        note: "D compares the two masses; it is no proof load in the rule. Taking it as one, with the tongue weight at rest, is our reading; the endurance test is ±0.6 D, from memory. The value for a center-axle trailer, Dc, is smaller; D is taken and Dc shown. The endurance test along a line 15° down to the rear is among the loads. Above 3.5 t a vertical value V comes on top at the same time, from the length of the bed and the distance to the axles. The test that lifts a head off its ball is one of the head, not of its bolts, and is not put on them.",
        heaviest_kg: None,
        classes: &[
            up_to(
                THREE_AND_A_HALF_TONNES_LB,
                true,
                &R55_CASES,
                CHAIN_OF_WEIGHT,
            ),
            one(&R55_HEAVY, CHAIN_OF_WEIGHT),
        ],
    },
];

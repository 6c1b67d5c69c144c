//! What the calculation says: the table of its sentences, each with the number of amounts that it is given.

use super::Amount;
use crate::keys::keys;
use crate::quantity::Measures;
use serde::Serialize;

/// A sentence that is given `N` amounts: one with another number of them does not compile.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Sentence<const N: usize>(Message);

impl<const N: usize> Sentence<N> {
    /// The sentence without its amounts.
    pub(crate) const fn message(self) -> Message {
        self.0
    }
}

/// A sentence by key, with the amounts that fill it. The words stand in `content/messages.toml`.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Said {
    /// Key of the sentence.
    pub code: Message,
    /// What fills `{0}`, `{1}` … in it.
    pub amounts: Vec<Amount>,
}

impl Said {
    /// A sentence with as many quantities as it has places for.
    #[must_use]
    pub(crate) fn new<Q: Measures<N>, const N: usize>(
        sentence: Sentence<N>,
        quantities: Q,
    ) -> Self {
        Self {
            code: sentence.0,
            amounts: Amount::each(quantities),
        }
    }

    /// The same for amounts whose dimension is not known to the compiler.
    #[must_use]
    pub(crate) fn of<const N: usize>(sentence: Sentence<N>, amounts: [Amount; N]) -> Self {
        Self {
            code: sentence.0,
            amounts: amounts.to_vec(),
        }
    }
}

/// The table: key as in `content/messages.toml` and how many amounts it is given.
macro_rules! messages {
    ($($name:ident = $key:literal ($amounts:literal),)+) => {
        keys! {
            /// A sentence by key.
            pub enum Message {
                $(#[doc = concat!("`", $key, "`")] $name = $key,)+
            }
        }

        impl Message {
            /// How many amounts it is given.
            #[must_use]
            pub const fn amounts(self) -> usize {
                match self {
                    $(Self::$name => $amounts,)+
                }
            }
        }

        /// The sentences with the number of their amounts in the type.
        #[allow(non_upper_case_globals, reason = "a sentence has the name of its key")]
        pub(crate) mod say {
            use super::{Message, Sentence};

            $(pub(crate) const $name: Sentence<$amounts> = Sentence(Message::$name);)+
        }
    };
}

messages! {
    // What limits the clamp.
    LimitFace1pct = "limit-face-1pct" (2),
    LimitWasherDishes = "limit-washer-dishes" (2),
    LimitPlate1pct = "limit-plate-1pct" (2),
    LimitPlateBends = "limit-plate-bends" (2),
    LimitCornerFolds = "limit-corner-folds" (2),
    LimitWallYields = "limit-wall-yields" (2),
    LimitWallCripples = "limit-wall-cripples" (2),
    LimitWallBuckles = "limit-wall-buckles" (2),
    LimitSleeve1pct = "limit-sleeve-1pct" (2),
    LimitSleeveEnd = "limit-sleeve-end" (2),
    LimitSleeveBites = "limit-sleeve-bites" (2),
    LimitOverBore = "limit-over-bore" (2),
    LimitSleeveSquashes = "limit-sleeve-squashes" (2),
    LimitInsert1pct = "limit-insert-1pct" (2),
    LimitInsertPressed = "limit-insert-pressed" (2),
    LimitWasherBridges = "limit-washer-bridges" (2),
    LimitStackPressed = "limit-stack-pressed" (2),
    LimitRoundWall = "limit-round-wall" (2),
    // Outside what was checked.
    RangeBT = "range-b-t" (2),
    RangeHB = "range-h-b" (2),
    RangeDwB = "range-dw-b" (2),
    RangeDwFlat = "range-dw-flat" (2),
    RangeFyE = "range-fy-e" (2),
    // Why nobody knows the clamp.
    ClampOnAnEdge = "clamp-on-an-edge" (0),
    ClampOnALine = "clamp-on-a-line" (0),
    ClampRoundWall = "clamp-round-wall" (0),
    // The bolt.
    BoltBelowProof = "bolt-below-proof" (3),
    BoltStretchedOnce = "bolt-stretched-once" (2),
    BoltOverProof = "bolt-over-proof" (3),
    BoltOverYield = "bolt-over-yield" (3),
    FoundCrack = "found-crack" (0),
    FoundOval = "found-oval" (0),
    FoundSpin = "found-spin" (0),
    FoundHollow = "found-hollow" (0),
    FoundTrails = "found-trails" (0),
    GradeNotForClamping = "grade-not-for-clamping" (0),
    GradeNeverZinc = "grade-never-zinc" (0),
    GradeZincBaked = "grade-zinc-baked" (0),
    BoltServiceBelowProof = "bolt-service-below-proof" (3),
    BoltServiceOverProof = "bolt-service-over-proof" (3),
    BoltServiceOverYield = "bolt-service-over-yield" (3),
    BoltFatigueBelow = "bolt-fatigue-below" (2),
    BoltFatigueRoad = "bolt-fatigue-road" (2),
    BoltFatigueOver = "bolt-fatigue-over" (2),
    BoltFatigueNoRoad = "bolt-fatigue-no-road" (2),
    BoltFatigueClampLost = "bolt-fatigue-clamp-lost" (2),
    BoltFatigueClampUnknown = "bolt-fatigue-clamp-unknown" (2),
    // Grip.
    SlipGrips = "slip-grips" (3),
    SlipSlides = "slip-slides" (3),
    SlipNoLever = "slip-no-lever" (1),
    SlipClampUnknown = "slip-clamp-unknown" (0),
    SlipLevelRoad = "slip-level-road" (0),
    SlipFewBumps = "slip-few-bumps" (2),
    SlipHardlyBrakes = "slip-hardly-brakes" (2),
    SlipHardlyTurns = "slip-hardly-turns" (2),
    SlipNoLoad = "slip-no-load" (0),
    SlipSleeveNotWelded = "slip-sleeve-not-welded" (0),
    SlipSleeveTooLong = "slip-sleeve-too-long" (0),
    // Faces and nut.
    OpeningShut = "opening-shut" (2),
    OpeningParts = "opening-parts" (2),
    LooseningSlides = "loosening-slides" (2),
    LooseningStays = "loosening-stays" (2),
    LooseningClampUnknown = "loosening-clamp-unknown" (0),
    OpeningClampUnknown = "opening-clamp-unknown" (0),
    // Once it has slipped.
    ShearThreads = "shear-threads" (2),
    ShearShank = "shear-shank" (2),
    BearingFine = "bearing-fine" (2),
    BearingOval = "bearing-oval" (2),
    BendingBends = "bending-bends" (3),
    BendingStaysStraight = "bending-stays-straight" (3),
    CombinedTooMuch = "combined-too-much" (2),
    CombinedFine = "combined-fine" (2),
    // The weld of a through sleeve.
    SleeveWeldTears = "sleeve-weld-tears" (2),
    SleeveWeldHolds = "sleeve-weld-holds" (2),
    SleeveWeldUnknown = "sleeve-weld-unknown" (0),
    // Pull at one face.
    CheekPushGives = "cheek-push-gives" (2),
    CheekPushHolds = "cheek-push-holds" (2),
    FacePullGives = "face-pull-gives" (2),
    FacePullHolds = "face-pull-holds" (2),
    FacePressedGives = "face-pressed-gives" (2),
    FacePressedHolds = "face-pressed-holds" (2),
    FacePullNothingHolds = "face-pull-nothing-holds" (0),
    FacePullRoundWall = "face-pull-round-wall" (0),
    FacePullOutside = "face-pull-outside" (0),
    OffsetUnknown = "offset-unknown" (1),
    LeastClampLoose = "least-clamp-loose" (2),
    LeastClampTight = "least-clamp-tight" (2),
    LeastClampUnknown = "least-clamp-unknown" (0),
    TurningTurns = "turning-turns" (2),
    TurningByFriction = "turning-by-friction" (2),
    TurningSwings = "turning-swings" (0),
    TurningMaySwing = "turning-may-swing" (0),
    TurningFree = "turning-free" (0),
    // Plies.
    FlangeHolds = "flange-holds" (2),
    FlangeBends = "flange-bends" (2),
    FlangeStiff = "flange-stiff" (2),
    FlangeArmMissing = "flange-arm-missing" (3),
    FittingIsSheet = "fitting-is-sheet" (1),
    FittingTooThin = "fitting-too-thin" (2),
    FittingBearingOval = "fitting-bearing-oval" (2),
    FittingBearingFine = "fitting-bearing-fine" (2),
    TearOutTears = "tear-out-tears" (2),
    TearOutFine = "tear-out-fine" (2),
    FittingTearOutTears = "fitting-tear-out-tears" (2),
    FittingTearOutFine = "fitting-tear-out-fine" (2),
    BlockTears = "block-tears" (2),
    BlockFine = "block-fine" (2),
    PullThroughPulls = "pull-through-pulls" (2),
    PullThroughFine = "pull-through-fine" (2),
    EdgeByTearOut = "edge-by-tear-out" (2),
    BoltTwistedOverYield = "bolt-twisted-over-yield" (2),
    FittingEdgeTooNear = "fitting-edge-too-near" (2),
    FittingEdgeFarEnough = "fitting-edge-far-enough" (2),
    MemberEdgeTooNear = "member-edge-too-near" (2),
    MemberEdgeFarEnough = "member-edge-far-enough" (2),
    MemberFlangeBends = "member-flange-bends" (2),
    MemberFlangeHolds = "member-flange-holds" (2),
    MemberTearOutTears = "member-tear-out-tears" (2),
    MemberTearOutFine = "member-tear-out-fine" (2),
    // Sections.
    SectionTooWeak = "section-too-weak" (2),
    SectionFine = "section-fine" (2),
    SectionUsedUp = "section-used-up" (1),
    SectionTwistsAlone = "section-twists-alone" (2),
    RailTooWeak = "rail-too-weak" (2),
    RailFineSoFar = "rail-fine-so-far" (2),
    // Distances, holes, seats.
    EndFarEnough = "end-far-enough" (2),
    EndTooNear = "end-too-near" (2),
    SpacingTooClose = "spacing-too-close" (2),
    SpacingFarEnough = "spacing-far-enough" (2),
    HoleNormal = "hole-normal" (3),
    HoleOversize = "hole-oversize" (3),
    HoleTooLarge = "hole-too-large" (3),
    WasherCoversTooLittle = "washer-covers-too-little" (2),
    WasherCovers = "washer-covers" (2),
    WasherTooThin = "washer-too-thin" (2),
    SleeveFitTight = "sleeve-fit-tight" (3),
    SleeveFitGood = "sleeve-fit-good" (3),
    SleeveFitLoose = "sleeve-fit-loose" (3),
    SleeveFitTips = "sleeve-fit-tips" (2),
    SleeveLengthTooLong = "sleeve-length-too-long" (2),
    SleeveLengthFits = "sleeve-length-fits" (2),
    SleeveLengthTooShort = "sleeve-length-too-short" (2),
    SleeveLengthShort = "sleeve-length-short" (2),
    SeatSlopes = "seat-slopes" (2),
    SeatRound = "seat-round" (2),
    SeatLine = "seat-line" (2),
    SeatMadeToFit = "seat-made-to-fit" (2),
    SeatFlat = "seat-flat" (2),
    SeatNoRoom = "seat-no-room" (2),
    SeatRoom = "seat-room" (2),
    SeatFillet = "seat-fillet" (2),
    // Where parts lie.
    HoleCutsCorner = "hole-cuts-corner" (2),
    HoleInFlat = "hole-in-flat" (2),
    WashersOverlap = "washers-overlap" (2),
    WasherInCorner = "washer-in-corner" (2),
    WasherPastEdge = "washer-past-edge" (2),
    WasherPastEnd = "washer-past-end" (2),
    WasherAtFittingUpright = "washer-at-fitting-upright" (2),
    WasherLiesFlat = "washer-lies-flat" (2),
    SleevesOverlap = "sleeves-overlap" (2),
    SleeveInCorner = "sleeve-in-corner" (2),
    SleevePastEnd = "sleeve-past-end" (2),
    SleeveHasRoom = "sleeve-has-room" (2),
    PlatePastEnd = "plate-past-end" (2),
    PlateTooWide = "plate-too-wide" (2),
    PlateOnFillet = "plate-on-fillet" (2),
    WasherOffPlate = "washer-off-plate" (2),
    PlateLiesOn = "plate-lies-on" (2),
    SocketHitsNextHead = "socket-hits-next-head" (2),
    SocketHitsUpright = "socket-hits-upright" (2),
    SocketGoesOn = "socket-goes-on" (2),
    // Notes.
    NoteSleeveHole = "note-sleeve-hole" (2),
    NoteSleeveShort = "note-sleeve-short" (1),
    NoteSleeveLong = "note-sleeve-long" (1),
    NoteEndDistanceAssumed = "note-end-distance-assumed" (1),
    NoteBoltMaySet = "note-bolt-may-set" (0),
    NotePaintInJoint = "note-paint-in-joint" (0),
    NoteRuleNotForThisJoint = "note-rule-not-for-this-joint" (0),
    NoteTooHeavyForRule = "note-too-heavy-for-rule" (0),
    NoteTubeBendingNotAsked = "note-tube-bending-not-asked" (0),
    NoteChainOwnBolts = "note-chain-own-bolts" (0),
    NoteWeldNear = "note-weld-near" (0),
    NoteChainBearsOnlyThen = "note-chain-bears-only-then" (0),
    NoteSlipTravel = "note-slip-travel" (1),
    SlipAirGap = "slip-air-gap" (1),
    LooseningAirGap = "loosening-air-gap" (0),
    NoteProtrusion = "note-protrusion" (1),
    NoteOwnYieldSoftened = "note-own-yield-softened" (1),
    NoteStainlessThreads = "note-stainless-threads" (2),
    NoteThreadsUnknown = "note-threads-unknown" (2),
    NoteNutFactorOutside = "note-nut-factor-outside" (4),
    NoteThreadsNotZinc = "note-threads-not-zinc" (2),
    NoteTorqueSetsClamp = "note-torque-sets-clamp" (1),
    NoteLongStainless = "note-long-stainless" (2),
    NoteScatterLeast = "note-scatter-least" (2),
    NoteLongBoltWeaker = "note-long-bolt-weaker" (1),
    NoteMatchingNut = "note-matching-nut" (0),
    NoteHardBoltZinc = "note-hard-bolt-zinc" (0),
    NotePackingFaces = "note-packing-faces" (0),
    NoteNotKnown = "note-not-known" (1),
    NoteFrictionOfAluminum = "note-friction-of-aluminum" (1),
    NoteFrictionOther = "note-friction-other" (1),
    NoteOwnStrength = "note-own-strength" (2),
    NoteLightRoad = "note-light-road" (3),
    NoteHeatOnSeat = "note-heat-on-seat" (1),
    NoteLightTongue = "note-light-tongue" (2),
    NoteFrictionTyped = "note-friction-typed" (2),
    NoteModulusTyped = "note-modulus-typed" (2),
    NoteCornerTyped = "note-corner-typed" (2),
    NoteFrictionOfStainless = "note-friction-of-stainless" (1),
    NoteGalvanicZincSparesAluminium = "note-galvanic-zinc-spares-aluminium" (0),
    NoteGalvanicZincSparesSteel = "note-galvanic-zinc-spares-steel" (0),
    NoteGalvanicZincByStainless = "note-galvanic-zinc-by-stainless" (0),
    NoteGalvanicSteelEatsAluminium = "note-galvanic-steel-eats-aluminium" (0),
    NoteGalvanicStainlessEatsAluminium = "note-galvanic-stainless-eats-aluminium" (0),
    NoteGalvanicStainlessEatsSteel = "note-galvanic-stainless-eats-steel" (0),
    NoteGalvanicIsolate = "note-galvanic-isolate" (0),
    NoteGalvanicDrain = "note-galvanic-drain" (0),
    NoteOpenSectionTwist = "note-open-section-twist" (0),
    NoteCheeksNotAsked = "note-cheeks-not-asked" (0),
    NoteOneSidedFitting = "note-one-sided-fitting" (0),
    NoteLoadInLine = "note-load-in-line" (0),
    NoteEndDistanceTaken = "note-end-distance-taken" (1),
    NoteFlangeSlopeAssumed = "note-flange-slope-assumed" (0),
    NoteGaugeAssumed = "note-gauge-assumed" (0),
    // Fatigue.
    FatigueNoLife = "fatigue-no-life" (0),
    FatigueNothingRepeats = "fatigue-nothing-repeats" (0),
    FatigueTubeBendingUnknown = "fatigue-tube-bending-unknown" (0),
    FatigueRoadAssumed = "fatigue-road-assumed" (0),
    FatigueAluminiumByPractice = "fatigue-aluminium-by-practice" (0),
    FatigueNominalOnly = "fatigue-nominal-only" (0),
    LifeBelowAHundredMiles = "life-below-a-hundred-miles" (0),
    LifeHundredsOfMiles = "life-hundreds-of-miles" (0),
    LifeThousandsOfMiles = "life-thousands-of-miles" (0),
    LifeTensOfThousandsOfMiles = "life-tens-of-thousands-of-miles" (0),
    LifeHundredsOfThousandsOfMiles = "life-hundreds-of-thousands-of-miles" (0),
    LifeAMillionMilesOrMore = "life-a-million-miles-or-more" (0),
    FatigueClampUnknown = "fatigue-clamp-unknown" (0),
    // Readings.
    CaliperNoFace = "caliper-no-face" (0),
    CaliperDentBelow = "caliper-dent-below" (2),
    CaliperDentClamp = "caliper-dent-clamp" (4),
    CaliperDentBeyond = "caliper-dent-beyond" (3),
    CaliperOutsideChecked = "caliper-outside-checked" (0),
    CaliperMoreThanBolt = "caliper-more-than-bolt" (2),
    OvalRound = "oval-round" (1),
    OvalSlipped = "oval-slipped" (2),
    OvalWornRound = "oval-worn-round" (1),
    OvalSmallerThanBolt = "oval-smaller-than-bolt" (2),
    OvalEdgeLeft = "oval-edge-left" (2),
    OvalEdgeTooNear = "oval-edge-too-near" (2),
    StopNotBeforeClick = "stop-not-before-click" (2),
    StopWeakerThanComputed = "stop-weaker-than-computed" (2),
    StopStrongerThanComputed = "stop-stronger-than-computed" (2),
    StopBoltYields = "stop-bolt-yields" (2),
    StopBoltMayYield = "stop-bolt-may-yield" (2),
    StopSupportGives = "stop-support-gives" (3),
    StopImpliesNutFactor = "stop-implies-nut-factor" (3),
    CaliperRoundWall = "caliper-round-wall" (0),
    StopSupportUnknown = "stop-support-unknown" (0),
    // Joints by lot.
    ChanceReaches = "chance-reaches" (1),
    ChanceDents = "chance-dents" (1),
    ChanceSlips = "chance-slips" (1),
    ChanceOwner = "chance-owner" (1),
    ChanceOwnerHardly = "chance-owner-hardly" (1),
    ChanceOwnerNearlyAll = "chance-owner-nearly-all" (1),
    ChanceOwnerNot = "chance-owner-not" (0),
    ChanceOutsideChecked = "chance-outside-checked" (0),
    ChanceNotKnown = "chance-not-known" (1),
    // Work sheet: pieces.
    CutFlush = "cut-flush" (2),
    CutDeburr = "cut-deburr" (0),
    CutMeasureInside = "cut-measure-inside" (2),
    CutInByEnd = "cut-in-by-end" (1),
    CutSeam = "cut-seam" (0),
    CutEndClosed = "cut-end-closed" (1),
    CutPlateJoined = "cut-plate-joined" (1),
    CutEdges = "cut-edges" (0),
    CutPlateOverhang = "cut-plate-overhang" (1),
    CutPlateFillet = "cut-plate-fillet" (1),
    CutWasher = "cut-washer" (0),
    CutBlockFit = "cut-block-fit" (2),
    CutBlockCorners = "cut-block-corners" (1),
    CutBlockRound = "cut-block-round" (1),
    CutSaddle = "cut-saddle" (2),
    // Beside the answer: another torque, and the strength usually found.
    TorqueThatHolds = "torque-that-holds" (3),
    TorqueComesClose = "torque-comes-close" (3),
    TorqueTooNarrow = "torque-too-narrow" (1),
    TorqueNewBolts = "torque-new-bolts" (0),
    TorqueNone = "torque-none" (2),
    TorqueNoOther = "torque-no-other" (0),
    UsualSoftened = "usual-softened" (3),
    UsualHolds = "usual-holds" (2),
    UsualClose = "usual-close" (2),
    DecidesMember = "decides-member" (0),
    DecidesSoftenedMember = "decides-softened-member" (0),
    DecidesAddedPart = "decides-added-part" (0),
    DecidesSoftenedPart = "decides-softened-part" (0),
    DecidesFitting = "decides-fitting" (0),
    DecidesTogether = "decides-together" (0),
    // Work sheet: how a piece is fitted to its place.
    FitNumbered = "fit-numbered" (1),
    FitFiled = "fit-filed" (1),
    CutBored = "cut-bored" (1),
    FitFaced = "fit-faced" (1),
    FitFlush = "fit-flush" (1),
    FitMilled = "fit-milled" (2),
    FitTurned = "fit-turned" (1),
    FitInside = "fit-inside" (0),
    // Work sheet: holes.
    HoleRound = "hole-round" (0),
    HoleDeep = "hole-deep" (1),
    HoleLongDrill = "hole-long-drill" (1),
    HoleSleeveFit = "hole-sleeve-fit" (2),
    HoleWeldedSleeve = "hole-welded-sleeve" (2),
    HoleInLine = "hole-in-line" (0),
    HoleOpenGuided = "hole-open-guided" (0),
    HoleOpenThick = "hole-open-thick" (0),
    HoleOval = "hole-oval" (1),
    HoleDeburr = "hole-deburr" (0),
    HoleThroughTube = "hole-through-tube" (0),
    HoleReamIfTight = "hole-ream-if-tight" (1),
    // Work sheet: welds.
    WeldWhyGroove = "weld-why-groove" (0),
    WeldBevelHole = "weld-bevel-hole" (1),
    WeldBevelCorner = "weld-bevel-corner" (1),
    WeldAssumption = "weld-assumption" (0),
    WeldThinWall = "weld-thin-wall" (2),
    WeldCleanSteel = "weld-clean-steel" (0),
    WeldCleanAluminium = "weld-clean-aluminium" (0),
    WeldHeatSoftens = "weld-heat-softens" (1),
    WeldStainlessToCarbon = "weld-stainless-to-carbon" (0),
    WeldSequence = "weld-sequence" (0),
    WeldGrindFlush = "weld-grind-flush" (0),
    WeldReamAfter = "weld-ream-after" (1),
    WeldFilletProud = "weld-fillet-proud" (1),
    WeldRound = "weld-round" (1),
    WeldRoundBevel = "weld-round-bevel" (1),
    WeldRoundDress = "weld-round-dress" (0),
    // Work sheet: tightening.
    TightenClean = "tighten-clean" (0),
    TightenSmooth = "tighten-smooth" (0),
    TightenEased = "tighten-eased" (1),
    TightenMeasureFaces = "tighten-measure-faces" (1),
    TightenNut = "tighten-nut" (0),
    TightenMark = "tighten-mark" (0),
    TightenLookOnly = "tighten-look-only" (0),
    TightenFirstLook = "tighten-first-look" (0),
    TightenEachSeason = "tighten-each-season" (0),
    TightenFoundLoose = "tighten-found-loose" (0),
    // Work sheet: what changes beside the repair itself.
    EffectBallAhead = "effect-ball-ahead" (2),
    EffectHangerOffset = "effect-hanger-offset" (2),
    EffectNewBolts = "effect-new-bolts" (1),
    EffectSpunBolts = "effect-spun-bolts" (1),
    EffectStretchedBolts = "effect-stretched-bolts" (1),
    EffectWornBolts = "effect-worn-bolts" (1),
    EffectKnownThreads = "effect-known-threads" (1),
    EffectFittingHoleTaken = "effect-fitting-hole-taken" (1),
    EffectPlateUnderNut = "effect-plate-under-nut" (1),
    EffectSleevesOut = "effect-sleeves-out" (0),
    EffectFaceFlat = "effect-face-flat" (1),
    EffectFretted = "effect-fretted" (0),
    EffectFittingHole = "effect-fitting-hole" (2),
    EffectCheeksApart = "effect-cheeks-apart" (1),
    EffectFittingOut = "effect-fitting-out" (1),
    EffectHangerPacking = "effect-hanger-packing" (1),
    EffectSaddlesOut = "effect-saddles-out" (1),
    // Work sheet: cautions.
    CautionSupportTrailer = "caution-support-trailer" (0),
    CautionSpringLoad = "caution-spring-load" (0),
    CautionQualifiedWelder = "caution-qualified-welder" (0),
    CautionZincFumes = "caution-zinc-fumes" (0),
    CautionFire = "caution-fire" (0),
    CautionBattery = "caution-battery" (0),
    CautionAluminiumWeld = "caution-aluminium-weld" (0),
    CautionBareFaces = "caution-bare-faces" (0),
    CautionBlasting = "caution-blasting" (0),
    CautionDust = "caution-dust" (0),
    CautionBoltMarks = "caution-bolt-marks" (0),
    CautionFittingReaches = "caution-fitting-reaches" (1),
    CautionFittingWide = "caution-fitting-wide" (1),
    CautionTwoMetals = "caution-two-metals" (0),
    CautionSteelOnAluminum = "caution-steel-on-aluminum" (0),
    CautionPaintAgain = "caution-paint-again" (0),
    CautionHangerLine = "caution-hanger-line" (0),
    CautionHangerFace = "caution-hanger-face" (0),
    CautionDrain = "caution-drain" (0),
    CautionEyes = "caution-eyes" (0),
    CautionCracks = "caution-cracks" (0),
    CautionLocalCodes = "caution-local-codes" (0),
    CautionFittedWasher = "caution-fitted-washer" (0),
    CautionNotKnown = "caution-not-known" (0),
}

//! Names of things in lists: pieces, places, tools, kinds of work, what a spread rests on.

use crate::keys::keys;

/// The table: keys as in `content/messages.toml`.
macro_rules! labels {
    ($($name:ident = $key:literal,)+) => {
        keys! {
            /// Name of a thing by key; it is given no amounts.
            pub enum Label {
                $(#[doc = concat!("`", $key, "`")] $name = $key,)+
            }
        }
    };
}

labels! {
    SpreadFinishOwn = "spread-finish-own",
    SpreadFinishRange = "spread-finish-range",
    SpreadTightening = "spread-tightening",
    SpreadSlipFriction = "spread-slip-friction",
    SpreadWallMeasured = "spread-wall-measured",
    SpreadWallNominal = "spread-wall-nominal",
    SpreadWallNone = "spread-wall-none",
    SpreadYieldOwn = "spread-yield-own",
    SpreadYieldRows = "spread-yield-rows",
    SpreadBolt = "spread-bolt",
    SpreadPutIn = "spread-put-in",
    SpreadPutInNothing = "spread-put-in-nothing",
    SpreadLoad = "spread-load",
    SpreadSoftened = "spread-softened",
    SpreadFit = "spread-fit",
    SpreadFitNone = "spread-fit-none",
    PieceSleeve = "piece-sleeve",
    PiecePlate = "piece-plate",
    PieceWasher = "piece-washer",
    PieceBlock = "piece-block",
    PieceBolt = "piece-bolt",
    PieceBoltNut = "piece-bolt-nut",
    PlaceTubeWall = "place-tube-wall",
    PlaceFitting = "place-fitting",
    PlacePlate = "place-plate",
    PlaceWasher = "place-washer",
    PlaceBlock = "place-block",
    PlaceSleeveBore = "place-sleeve-bore",
    DrillTwist = "drill-twist",
    DrillStep = "drill-step",
    DrillHoleCutter = "drill-hole-cutter",
    DrillAnnular = "drill-annular",
    DrillInPress = "drill-in-press",
    DrillReamer = "drill-reamer",
    DistanceEnd = "distance-end",
    DistanceNext = "distance-next",
    DistanceEdge = "distance-edge",
    DistanceCorner = "distance-corner",
    WeldBevelGroove = "weld-bevel-groove",
    TightenSnug = "tighten-snug",
    TightenRound = "tighten-round",
    TightenUntilStill = "tighten-until-still",
    WorkHoles = "work-holes",
    WorkCuts = "work-cuts",
    WorkWelds = "work-welds",
    WorkSurfaces = "work-surfaces",
    WorkBolts = "work-bolts",
    WorkNewBolts = "work-new-bolts",
    WorkRemoveSleeves = "work-remove-sleeves",
    WorkFlatten = "work-flatten",
    WorkFretted = "work-fretted",
    WorkReam = "work-ream",
    WorkLayout = "work-layout",
    WorkMachine = "work-machine",
    WorkSaddles = "work-saddles",
    WorkDeepHoles = "work-deep-holes",
    WorkFit = "work-fit",
    PieceSaddle = "piece-saddle",
    PieceTapered = "piece-tapered",
    PieceBracket = "piece-bracket",
    PlaceSaddle = "place-saddle",
    WeldRoundGroove = "weld-round-groove",
    PlaceOnePly = "place-one-ply",
    PlaceBar = "place-bar",
    DistanceFreeEdge = "distance-free-edge",
    FindOutMetal = "find-out-metal",
    FindOutAlloy = "find-out-alloy",
    FindOutSteel = "find-out-steel",
    FindOutWall = "find-out-wall",
    FindOutMarks = "find-out-marks",
    FindOutFaces = "find-out-faces",
    FindOutThreads = "find-out-threads",
}

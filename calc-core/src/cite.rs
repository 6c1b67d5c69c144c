//! Where a value or a formula comes from, and how it is held.
//!
//! Every row of [`crate::catalog`] and every formula carries a [`Cite`]; its source is described once, in
//! `content/sources.toml`.

use crate::keys::keys;

/// How a value is held.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Flag {
    /// Seen in the named document or in a copy of it.
    Read,
    /// Seen in a text that reproduces or quotes the named document.
    ReadSecondHand,
    /// Worked out from values that carry their own flag.
    Computed,
    /// Recalled; not found in anything that was read.
    Memory,
    /// Common practice that no document was found for.
    Practice,
    /// Chosen here, because a value was needed and none was found.
    Assumption,
}

impl Flag {
    /// The flag in words that a reader can be shown next to the value.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Read => "seen in a copy",
            Self::ReadSecondHand => "quoted by another text",
            Self::Computed => "computed from other values",
            Self::Memory => "from memory",
            Self::Practice => "common practice, no source",
            Self::Assumption => "assumption",
        }
    }
}

keys! {
    /// A source by its id in `content/sources.toml`.
    pub enum Source {
        /// FAA Advisory Circular 43.13-1B, Acceptable Methods, Techniques, and Practices: Aircraft Inspection and Repair.
        Ac43_13_1b = "ac-43-13-1b",
        /// Aluminum Design Manual, Specification for Aluminum Structures.
        Adm2020 = "adm-2020",
        /// Australian Design Rule 62/02, Mechanical Connections Between Vehicles.
        Adr62_02 = "adr-62-02",
        /// ANSI/AISC 360-22, Specification for Structural Steel Buildings.
        Aisc360_22 = "aisc-360-22",
        /// AISC Steel Construction Manual, Parts 1, 7 and 9.
        AiscManual = "aisc-manual",
        /// AISI S100, North American Specification for the Design of Cold-Formed Steel Structural Members.
        AisiS100 = "aisi-s100",
        /// A guide to anodic-index limits for dissimilar metals.
        AnodicIndex = "anodic-index",
        /// ASME B1.1, Unified Inch Screw Threads.
        AsmeB1_1 = "asme-b1-1",
        /// ASME B18.2.1, Square, Hex, Heavy Hex, and Askew Head Bolts and Screws.
        AsmeB18_2_1 = "asme-b18-2-1",
        /// ASME B18.2.2, Nuts for General Applications.
        AsmeB18_2_2 = "asme-b18-2-2",
        /// ASME B18.2.8, Clearance Holes for Bolts, Screws, and Studs.
        AsmeB18_2_8 = "asme-b18-2-8",
        /// ASME B18.21.1, Washers: Helical Spring-Lock, Tooth Lock, and Plain Washers.
        AsmeB18_21_1 = "asme-b18-21-1",
        /// ASME B36.10M, Welded and Seamless Wrought Steel Pipe.
        AsmeB36_10m = "asme-b36-10m",
        /// ANSI/ASME B94.11M, Twist Drills.
        AsmeB94_11m = "asme-b94-11m",
        /// ASTM A240, stainless plate, sheet and strip.
        AstmA240 = "astm-a240",
        /// ASTM A307, carbon steel bolts, 60 000 psi.
        AstmA307 = "astm-a307",
        /// ASTM A36, carbon structural steel.
        AstmA36 = "astm-a36",
        /// ASTM A500, cold-formed structural tubing.
        AstmA500 = "astm-a500",
        /// ASTM A513, electric-resistance-welded mechanical tubing.
        AstmA513 = "astm-a513",
        /// ASTM A53, pipe.
        AstmA53 = "astm-a53",
        /// ASTM B221, aluminium extrusions.
        AstmB221 = "astm-b221",
        /// ASTM F3125, high-strength structural bolts (A325, A490).
        AstmF3125 = "astm-f3125",
        /// ASTM F593, stainless bolts.
        AstmF593 = "astm-f593",
        /// AWS A5.9 and A5.4, Stainless steel filler metals and electrodes.
        AwsA5_9 = "aws-a5-9",
        /// A handbook of bolts and bolted joints, ch. 2, Table 1.
        BoltHandbook = "bolt-handbook",
        /// BS 328, Twist drills.
        Bs328 = "bs-328",
        /// 49 CFR 393, Parts and Accessories Necessary for Safe Operation, 393.70 and 393.71.
        Cfr49_393 = "cfr-49-393",
        /// Maryland COMAR 11.13.08.10, trailer couplings and safety chains.
        Comar11_13_08_10 = "comar-11-13-08-10",
        /// Elementary statics and strength of materials.
        Elementary = "elementary",
        /// EN 1090-2, Execution of steel structures, technical requirements.
        En1090_2 = "en-1090-2",
        /// EN 1990, Basis of structural design.
        En1990 = "en-1990",
        /// EN 1993-1-1, Design of steel structures, general rules.
        En1993_1_1 = "en-1993-1-1",
        /// EN 1993-1-8, Eurocode 3: Design of steel structures, Design of joints.
        En1993_1_8 = "en-1993-1-8",
        /// EN 1999-1-1, Design of aluminium structures, general rules.
        En1999_1_1 = "en-1999-1-1",
        /// A fastener manufacturer's engineering page on nut factors.
        FastenerMakerPage = "fastener-maker-page",
        /// Own finite-element runs of a tube face under a washer, tests/reference/fe.
        FeTubeFace = "fe-tube-face",
        /// A filler-metal supplier's guide to aluminium welding, p. 9.
        FillerGuide = "filler-guide",
        /// Friction tables of handbooks, and a national laboratory's page about them.
        FrictionTables = "friction-tables",
        /// Two galvanic series of metals in seawater.
        GalvanicSeries = "galvanic-series",
        /// Handbook values recalled.
        HandbookRecalled = "handbook-recalled",
        /// FITNET fitness-for-service procedure, fatigue categories after the recommendations of the International Institute of Welding.
        IiwFitnet = "iiw-fitnet",
        /// ISO 235, Parallel shank jobber and stub series drills and Morse taper shank drills.
        Iso235 = "iso-235",
        /// ISO 273, Fasteners: clearance holes for bolts and screws.
        Iso273 = "iso-273",
        /// ISO 3506-1, Mechanical properties of corrosion-resistant stainless steel fasteners: bolts.
        Iso3506_1 = "iso-3506-1",
        /// ISO 4014, Hexagon head bolts.
        Iso4014 = "iso-4014",
        /// ISO 4032, Hexagon regular nuts.
        Iso4032 = "iso-4032",
        /// ISO 4042, Fasteners: electroplated coating systems.
        Iso4042 = "iso-4042",
        /// ISO 7089, Plain washers, normal series.
        Iso7089 = "iso-7089",
        /// ISO 7093, Plain washers, large series.
        Iso7093 = "iso-7093",
        /// EN ISO 898-1, Mechanical properties of fasteners: bolts.
        Iso898_1 = "iso-898-1",
        /// Junker, criterion for self-loosening of fasteners under transverse load.
        Junker = "junker",
        /// Machinery's Handbook.
        Machinery31e = "machinery-31e",
        /// MIL-STD-889, Dissimilar Metals.
        MilStd889 = "mil-std-889",
        /// MMPDS-01, Metallic Materials Properties Development and Standardization.
        Mmpds01 = "mmpds-01",
        /// NASA-STD-5020B, Requirements for Threaded Fastening Systems in Spaceflight Hardware.
        NasaStd5020b = "nasa-std-5020b",
        /// Chosen for this project.
        OwnAssumption = "own-assumption",
        /// Derived for this project.
        OwnDerivation = "own-derivation",
        /// RCSC, Specification for Structural Joints Using High-Strength Bolts, commentary.
        Rcsc = "rcsc",
        /// SAE J429, Mechanical and Material Requirements for Externally Threaded Fasteners.
        SaeJ429 = "sae-j429",
        /// Budynas and Nisbett, Shigley's Mechanical Engineering Design.
        Shigley9e = "shigley-9e",
        /// Common practice of the trade.
        TradePractice = "trade-practice",
        /// UN Regulation 55 and Directive 94/20/EC, Mechanical coupling components.
        UnR55 = "un-r55",
        /// VDI 2230, Systematic calculation of highly stressed bolted joints.
        Vdi2230 = "vdi-2230",
    }
}

/// Where a value or a formula comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, serde::Serialize)]
pub struct Cite {
    /// The source.
    pub source: Source,
    /// Table, equation, clause or page in that source.
    pub place: &'static str,
    /// How the value is held.
    pub flag: Flag,
}

impl Cite {
    /// A place in a source, and how the value is held.
    #[must_use]
    pub const fn new(source: Source, place: &'static str, flag: Flag) -> Self {
        Self {
            source,
            place,
            flag,
        }
    }
}

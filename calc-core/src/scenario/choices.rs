//! The short names that choices take, and what they mean.

use super::fields::Field;
use super::found::FOUND;
use super::unknown::{METALS, UNKNOWN};
use crate::catalog::{self, WasherSeries};
use serde::Serialize;

macro_rules! named {
    ($(#[$doc:meta])* $Name:ident { $($(#[$vd:meta])* $Variant:ident = $text:literal,)* }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize)]
        pub enum $Name { $($(#[$vd])* #[serde(rename = $text)] $Variant,)* }

        impl $Name {
            /// All names, in the order shown.
            pub const NAMES: &'static [&'static str] = &[$($text,)*];

            /// The short name.
            #[must_use]
            pub const fn name(self) -> &'static str {
                match self { $(Self::$Variant => $text,)* }
            }

            /// The one with this short name.
            #[must_use]
            pub fn by_name(name: &str) -> Option<Self> {
                match name { $($text => Some(Self::$Variant),)* _ => None }
            }
        }
    };
}

named! {
    /// What the bolts go through.
    MemberKind {
        /// A rectangular tube: two flat faces with a hollow between them.
        RectangularTube = "rectangular-tube",
        /// A round tube: two curved walls with a hollow between them.
        RoundTube = "round-tube",
        /// A channel: one ply under the bolt, a flange beside the web or the web between two flanges.
        Channel = "channel",
        /// An angle: one ply under the bolt, a leg beside the other one.
        Angle = "angle",
        /// A bar, or a stack of plates as thick as it is deep: no hollow.
        SolidBar = "solid-bar",
    }
}

named! {
    /// Which way the bolts run.
    Mount {
        /// Horizontally, through both side walls of a tube, with a cheek of the fitting on each side: two
        /// slip planes; one where [`FittingSides`] says so. Through the web of a channel or the upright leg of
        /// an angle: one.
        ThroughSides = "through-sides",
        /// Vertically from the top; the fitting lies on the top face or flange: one slip plane.
        FromTop = "from-top",
    }
}

named! {
    /// On which sides of a tube or a bar a fitting lies whose bolts run through its sides. A web or a leg has it on
    /// one side whatever is said.
    FittingSides {
        /// A cheek on each side: two slip planes, and a load between them.
        Both = "both",
        /// One fitting on one side wall, the nut on the other: one slip plane, and a load beside it.
        One = "one",
    }
}

named! {
    /// What the wall thickness given is.
    WallBasis {
        /// Measured with a caliper.
        Measured = "measured",
        /// Nominal of the size ordered: the design wall of its standard counts for verdicts.
        Nominal = "nominal",
        /// Not known: any that such a tube is sold with.
        Unknown = "unknown",
    }
}

named! {
    /// The answer to a question.
    YesNo {
        /// No, or not known.
        No = "no",
        /// Yes.
        Yes = "yes",
    }
}

named! {
    /// What somebody saw who looked for damage.
    Seen {
        /// Nobody has looked.
        NotLooked = "not-looked",
        /// It is not there.
        No = "no",
        /// It is there.
        Yes = "yes",
    }
}

named! {
    /// The tube end nearest the bolt.
    TubeEnd {
        /// Open: near it a face has half the strength.
        Open = "open",
        /// Closed by a welded cap.
        Capped = "capped",
    }
}

named! {
    /// What lies between head and nut.
    SupportKind {
        /// The two faces of the tube, nothing else.
        Bare = "bare",
        /// Plates on the faces that carry the load to the side walls.
        Spreader = "spreader",
        /// A sleeve round the bolt between the inside faces, cut with a length error.
        LooseSleeve = "loose-sleeve",
        /// A sleeve through both faces, ends flush with the outside.
        ThroughSleeve = "through-sleeve",
        /// A block or plug that fills the tube round the bolt.
        SolidInsert = "solid-insert",
        /// No hollow: a bar or a stack of plates as thick as the tube is deep.
        Solid = "solid",
    }
}

named! {
    /// What is bolted to the tube.
    JointKind {
        /// Coupler at the end of the tongue.
        Coupler = "coupler",
        /// Hanger of a leaf spring, under the tube or round its sides.
        SpringHanger = "spring-hanger",
        /// Bracket of a safety chain.
        ChainBracket = "chain-bracket",
        /// Anything: six components at a point.
        Free = "free",
    }
}

named! {
    /// What a steel bolt is coated with.
    BoltFinish {
        /// Zinc plated or galvanized.
        Zinc = "zinc",
        /// Plain or black: oiled at best.
        Plain = "plain",
        /// Stainless.
        Stainless = "stainless",
    }
}

named! {
    /// What a free load asks for; see [`LoadKind`](crate::catalog::LoadKind).
    FreeKind {
        /// Comes again and again.
        Service = "service",
        /// Once, without lasting harm.
        Proof = "proof",
        /// Once, without breaking.
        Ultimate = "ultimate",
    }
}

named! {
    /// What fills a gap between fitting and member.
    GapFilling {
        /// Air, or not known: fitting and member do not touch.
        Air = "air",
        /// Plates or packing as hard as the members, their faces in the state that is said of the faying faces.
        Packing = "packing",
    }
}

named! {
    /// How wet and how salty a joint lives.
    Exposure {
        /// Dry: kept and used under a roof.
        Dry = "dry",
        /// Rain and washing, no salt.
        Wet = "wet",
        /// Winter roads, a boat ramp, the coast.
        RoadSalt = "road-salt",
    }
}

named! {
    /// What the towing vehicle rides on.
    TowSprings {
        /// Steel springs, or not known.
        Steel = "steel",
        /// Air springs, or what the rule takes for as soft.
        Air = "air",
    }
}

/// The names that a field takes, in the order shown; empty for numbers.
#[must_use]
pub fn options(field: Field) -> Vec<&'static str> {
    fn ids<T>(rows: &'static [T], id: fn(&'static T) -> &'static str) -> Vec<&'static str> {
        rows.iter().map(id).collect()
    }
    fn or_not_known(mut ids: Vec<&'static str>, names: &[&'static str]) -> Vec<&'static str> {
        ids.extend_from_slice(names);
        ids
    }
    match field {
        Field::Member => MemberKind::NAMES.to_vec(),
        Field::Mount => Mount::NAMES.to_vec(),
        Field::FittingSides => FittingSides::NAMES.to_vec(),
        Field::WallBasis => WallBasis::NAMES.to_vec(),
        Field::WeldNear | Field::SleeveWelded | Field::ShapedWasher | Field::FittingSpreads => {
            YesNo::NAMES.to_vec()
        }
        Field::TubeEnd => TubeEnd::NAMES.to_vec(),
        field if FOUND.contains(&field) => Seen::NAMES.to_vec(),
        Field::Support => SupportKind::NAMES.to_vec(),
        Field::BoltFinish => BoltFinish::NAMES.to_vec(),
        Field::GapFilling => GapFilling::NAMES.to_vec(),
        Field::Exposure => Exposure::NAMES.to_vec(),
        Field::TubeMaterial | Field::FittingMaterial => {
            or_not_known(ids(catalog::materials(), |m| m.id()), &METALS)
        }
        Field::SpreaderMaterial | Field::SleeveMaterial | Field::InsertMaterial => {
            ids(catalog::materials(), |m| m.id())
        }
        Field::Bolt => ids(catalog::threads(), |t| t.id()),
        Field::Grade => or_not_known(ids(catalog::bolt_grades(), |g| g.id()), &[UNKNOWN]),
        Field::Washer => WasherSeries::ALL.map(WasherSeries::id).to_vec(),
        Field::Lubrication => ids(catalog::nut_factors(), |k| k.id()),
        Field::Method => ids(catalog::tightening_methods(), |m| m.id()),
        Field::Surface => or_not_known(ids(catalog::slip_surfaces(), |s| s.id()), &[UNKNOWN]),
        Field::Sleeve => ids(catalog::sleeves(), |s| s.id()),
        Field::Joint => JointKind::NAMES.to_vec(),
        Field::FreeKind => FreeKind::NAMES.to_vec(),
        Field::TowSprings => TowSprings::NAMES.to_vec(),
        Field::LoadRule => ids(catalog::load_rules(), |r| r.id()),
        _ => Vec::new(),
    }
}

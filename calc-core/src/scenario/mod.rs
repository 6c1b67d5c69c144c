//! What the reader set, checked once on the way in.
//!
//! [`Input`] is the plain form (JSON, link, page); [`Scenario`] is the checked one that
//! [`evaluate`](crate::evaluate()) takes. After that no formula can meet a value it was not made for
//! without saying so.

mod applies;
mod by_field;
mod check;
mod checked;
mod choice;
mod choices;
mod error;
mod fields;
mod fitting;
mod found;
mod json;
mod loads;
mod member;
mod strength;
mod supports;
mod tightening;
pub mod unknown;

pub use applies::offered;
pub use by_field::ByField;
pub use checked::{Bolting, Fitting, Member, Scenario, Sleeve, Spreader, Tightening, Tube, Washer};
pub use choice::{
    Choice, FittingMaterial, FittingSpreads, FoundCrack, FoundHollow, FoundOval, FoundSpin,
    FoundTrails, InsertMaterial, ShapedWasher, SleeveMaterial, SleeveWelded, SpreaderMaterial,
    TubeMaterial, WeldNear,
};
pub use choices::{
    BoltFinish, Exposure, FittingSides, FreeKind, GapFilling, JointKind, MemberKind, Mount, Seen,
    SupportKind, TowSprings, TubeEnd, WallBasis, YesNo, options,
};
pub use error::InputError;
pub use fields::{Field, Input, Kind};
pub use found::FOUND;
pub use loads::{ChainLoad, FreeLoad, HangerLoad, Loads, Road};
pub use strength::Strength;

/// Version of the meaning of all fields and of all defaults; frozen once links exist.
pub const VERSION: u32 = 1;

//! What kind of change leads from one joint to another.

use super::{AddedPart, of, washer};
use crate::scenario::Scenario;
use serde::Serialize;

/// What kind of change a repair is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum RepairKind {
    /// Nothing new under the bolt: another torque, other bolts, other faying faces.
    Tightening,
    /// A thicker, larger washer.
    ThickWasher,
    /// Plates on both faces.
    Spreader,
    /// Sleeve between the inside faces.
    LooseSleeve,
    /// Sleeve through both faces, not welded.
    ThroughSleeve,
    /// Sleeve through both faces, welded at both ends.
    WeldedSleeve,
    /// Block in the tube.
    SolidInsert,
}

impl RepairKind {
    /// What kind of change leads from one joint to another.
    #[must_use]
    pub fn between(before: &Scenario, after: &Scenario) -> Self {
        put_in(before, after).map_or(Self::Tightening, |part| part.kind(after))
    }
}

/// The part that is put in on the way from one joint to another; none where only bolts, torque or faying
/// faces change.
pub(crate) fn put_in(before: &Scenario, after: &Scenario) -> Option<&'static dyn AddedPart> {
    let washer: &dyn AddedPart = &washer::ThickWasher;
    of(after)
        .part()
        .filter(|part| before.support != after.support || part.differs(before, after))
        .or_else(|| washer.differs(before, after).then_some(washer))
}

//! What kind of change leads from one joint to another.

use super::{AddedPart, of, washer};
use crate::keys::keys;
use crate::scenario::Scenario;

keys! {
    /// What kind of change a repair is.
    pub enum RepairKind {
        /// Nothing new under the bolt: another torque, other bolts, other faying faces.
        Tightening = "tightening",
        /// A thicker, larger washer.
        ThickWasher = "thick-washer",
        /// Plates on both faces.
        Spreader = "spreader",
        /// Sleeve between the inside faces.
        LooseSleeve = "loose-sleeve",
        /// Sleeve through both faces, not welded.
        ThroughSleeve = "through-sleeve",
        /// Sleeve through both faces, welded at both ends.
        WeldedSleeve = "welded-sleeve",
        /// Block in the tube.
        SolidInsert = "solid-insert",
    }
}

impl RepairKind {
    /// What kind of change leads from one joint to another.
    #[must_use]
    pub fn between(before: &Scenario, after: &Scenario) -> Self {
        added_part(before, after).map_or(Self::Tightening, |part| part.kind(after))
    }
}

/// The part that is put in on the way from one joint to another; none where only bolts, torque or faying
/// faces change.
pub(crate) fn added_part(before: &Scenario, after: &Scenario) -> Option<&'static dyn AddedPart> {
    let washer: &dyn AddedPart = &washer::ThickWasher;
    of(after)
        .part()
        .filter(|part| before.support != after.support || part.differs(before, after))
        .or_else(|| washer.differs(before, after).then_some(washer))
}

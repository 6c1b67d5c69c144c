//! What a repair needs that not every shop has.

use super::fit::Fit;
use super::work::{Jobs, is_outgrown, is_pushed_apart};
use crate::catalog::{Family, Treatment};
use crate::keys::keys;
use crate::quantity::{InUnits, Torque};
use crate::scenario::Scenario;
use crate::support::parts::Shape;
use serde::Serialize;
use serde::ser::SerializeSeq;

keys! {
    /// Something that a repair needs and that not everybody has.
    pub enum Need {
        /// A lathe.
        Lathe = "lathe",
        /// A milling machine.
        Mill = "mill",
        /// A drill press, for holes that are long for their width.
        DrillPress = "drill-press",
        /// A drill longer than those of the usual set.
        LongDrill = "long-drill",
        /// An end of the tube that is open and within reach.
        OpenEnd = "open-end",
        /// Somebody qualified to weld steel.
        SteelWelder = "steel-welder",
        /// Somebody qualified to weld aluminium.
        AluminiumWelder = "aluminum-welder",
        /// Something to blast the faying faces with.
        Blaster = "blaster",
        /// A fitting that reaches to the bolts that are added.
        LongerFitting = "longer-fitting",
        /// A new fitting, or a wider one: plates or saddles lie between its side plates and the tube.
        NewBracket = "new-bracket",
        /// Saddles hollowed to a round tube.
        Saddles = "saddles",
        /// A wrench that shows more torque than the usual one.
        LargeWrench = "large-wrench",
    }
}

/// A set of needs; in JSON the list of their keys.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Needs(u16);

impl Needs {
    fn add(&mut self, need: Need, wanted: bool) {
        if wanted {
            self.0 |= 1 << need as u16;
        }
    }

    /// Whether this is among them.
    #[must_use]
    pub const fn contains(self, need: Need) -> bool {
        self.0 & (1 << need as u16) != 0
    }

    /// Whether all of them are among others: who can do those can do this.
    #[must_use]
    pub const fn within(self, others: Self) -> bool {
        self.0 & !others.0 == 0
    }

    /// One after the other, in the order of the table.
    pub fn iter(self) -> impl Iterator<Item = Need> {
        let all = Need::ALL.iter().copied();
        all.filter(move |need| self.contains(*need))
    }
}

impl Serialize for Needs {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut list = serializer.serialize_seq(None)?;
        for need in self.iter() {
            list.serialize_element(&need)?;
        }
        list.end()
    }
}

/// How deep a drill of the usual set reaches, m: seven and a half diameters up to 14 mm, 76 mm (3 in) above, as on
/// drills with a reduced shank. From memory: a little less than the flutes of jobber drills (DIN 338, ASME B94.11M).
pub(super) fn drill_reaches(diameter: f64) -> f64 {
    if diameter <= 14e-3 {
        7.5 * diameter
    } else {
        76.2e-3
    }
}

/// Most torque of the usual torque wrench, N·m (250 lbf·ft). Common practice, no source.
const USUAL_WRENCH: f64 = 339.0;

/// What the way from one joint to another needs.
pub(super) fn needs(before: &Scenario, after: &Scenario, jobs: &Jobs, torque: Torque) -> Needs {
    let mut needs = Needs::default();
    if let Some(pieces) = &jobs.pieces {
        let block = matches!(pieces.shape, Shape::Block { .. });
        let inside = block || matches!(jobs.fit, Some(Fit::Sawn | Fit::Filed | Fit::Faced));
        needs.add(
            Need::Lathe,
            matches!(jobs.fit, Some(Fit::Faced | Fit::Turned)) || pieces.bored(),
        );
        needs.add(Need::Mill, jobs.fit == Some(Fit::Milled));
        needs.add(Need::OpenEnd, inside);
    }
    let saddles = jobs.seats.as_ref().is_some_and(|seats| !seats.is_bought());
    needs.add(Need::Mill, saddles);
    needs.add(Need::Saddles, saddles);
    let apart = is_pushed_apart(before, after, jobs.seats.as_ref());
    needs.add(
        Need::NewBracket,
        apart && after.fitting.thickness.si() > 0.0,
    );
    let aluminium = after.tube.material.family() == Family::Aluminium;
    needs.add(Need::AluminiumWelder, jobs.welds > 0 && aluminium);
    needs.add(Need::SteelWelder, jobs.welds > 0 && !aluminium);
    needs.add(
        Need::Blaster,
        jobs.surfaces > 0 && after.tightening.surface.treatment() == Treatment::Blasted,
    );
    needs.add(Need::LargeWrench, torque.si() > USUAL_WRENCH);
    // A dished face is pressed out from the inside.
    needs.add(Need::OpenEnd, jobs.dished > 0 && !after.member.is_open());
    needs.add(Need::LongerFitting, is_outgrown(before, after));
    if jobs.deep_holes > 0 {
        needs.add(Need::DrillPress, true);
        // Through the near wall, the block and the far wall.
        let reach = drill_reaches(after.bolting.hole.si());
        needs.add(Need::LongDrill, after.tube.depth.si() > reach);
    }
    needs
}

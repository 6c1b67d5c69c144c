//! The work sheet of a repair: what to cut, drill, weld and tighten, with amounts and codes; the words
//! for the codes stand in `content/messages.toml`.

mod cautions;
mod cuts;
mod effects;
mod holes;
mod tighten;
mod welds;

pub use cuts::Cut;
pub use holes::{Class, Distance, DrillSize, Hole};
pub use tighten::{BoltPlace, Pass, TighteningPlan};
pub use welds::{FillerLine, FilletEnd, WeldPlan};

pub use super::Operation;
use super::mends::Damage;
use super::{Money, Needs, Rates, RepairKind, Work, needs, work};
use crate::evaluate::{Analysis, checks_of};
use crate::quantity::Dimension;
use crate::report::{Amount, Label, Said};
use crate::scenario::{Field, Input, Scenario};
use crate::support::added_part;
use crate::support::parts::said;
use serde::Serialize;

/// Material to buy.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct MaterialLine {
    /// Piece, by code.
    pub what: Label,
    /// Id of the stock: sleeve row, bolt size; empty for plate and bar.
    pub stock: &'static str,
    /// Id of the material or of the bolt grade.
    pub material: &'static str,
    /// How many.
    pub count: u32,
    /// Length to buy it in: of one bolt, under its head; of all pieces together with their saw cuts. None for what is
    /// bought by the piece.
    pub length: Option<Amount>,
    /// Mass of all; zero for bolts, which replace others, and for what is bought by the piece.
    pub mass: Amount,
    /// Cost by the rates.
    pub cost: f64,
}

/// The work sheet.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct WorkSheet {
    /// Kind of repair.
    pub kind: RepairKind,
    /// The joint as repaired.
    pub input: Input,
    /// Pieces to cut.
    pub cuts: Vec<Cut>,
    /// Holes to drill or to open up.
    pub holes: Vec<Hole>,
    /// Welds of the sleeves.
    pub weld: Option<WeldPlan>,
    /// Torque, order and when to look again.
    pub tightening: TighteningPlan,
    /// Material to buy.
    pub materials: Vec<MaterialLine>,
    /// Work by kind; minutes and cost add up to those of `work`.
    pub operations: Vec<Operation>,
    /// The sums, as in the list of repairs.
    pub work: Work,
    /// What costs are counted in.
    pub money: Money,
    /// What it needs that not everybody has.
    pub needs: Needs,
    /// What changes beside the repair itself.
    pub effects: Vec<Said>,
    /// What to take care of; never empty.
    pub cautions: Vec<Said>,
}

/// The work sheet that leads from a joint to its repair.
///
/// # Examples
/// ```
/// use calc_core::repair::{Rates, repairs, sheet::work_sheet};
/// use calc_core::{Input, Scenario};
/// let joint = Scenario::new(&Input::default()).unwrap();
/// let rates = Rates::default();
/// let found = repairs(&joint, &rates);
/// let best = &found.list[found.cheapest.unwrap()];
/// let sheet = work_sheet(&joint, &Scenario::new(&best.input).unwrap(), &rates);
/// assert_eq!(sheet.kind, best.kind);
/// assert_eq!(sheet.work, best.work);
/// ```
#[must_use]
pub fn work_sheet(before: &Scenario, after: &Scenario, rates: &Rates) -> WorkSheet {
    let found = Damage::of(before);
    let takes_fitting_hole = found.has(Field::FoundOval) && before.input.fitting_hole_mm.is_none();
    let (sound, _) = super::as_found(before);
    let before = &*sound;
    let damage = found.with_stretched(before);
    let part = added_part(before, after);
    let jobs = work::jobs(before, after, part, damage);
    let analysis = Analysis::without_working(after);
    let checks = checks_of(&analysis, |_| false);
    let weld = (jobs.welds > 0)
        .then(|| welds::plan(&analysis, jobs.welds))
        .flatten();
    let tightening = tighten::plan(&analysis, &jobs);
    WorkSheet {
        kind: part.map_or(RepairKind::Tightening, |part| part.kind(after)),
        input: after.input.clone(),
        cuts: cuts::list(after, &jobs),
        holes: holes::list(before, after, &jobs, &checks),
        materials: cuts::materials(after, &jobs, &tightening, rates),
        operations: jobs.steps(rates),
        work: jobs.work(rates),
        money: rates.money(),
        needs: needs::needs(before, after, &jobs, analysis.preload.torque),
        effects: effects::list(before, after, &jobs, &tightening, takes_fitting_hole),
        cautions: cautions::list(before, after, &jobs),
        tightening,
        weld,
    }
}

/// A length.
const fn length(si: f64) -> Amount {
    Amount::new(si, Dimension::Length)
}

#[cfg(test)]
mod tests;

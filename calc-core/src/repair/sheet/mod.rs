//! The work sheet of a repair: what to cut, drill, weld and tighten, with amounts and codes; the words
//! for the codes stand in `content/messages.toml`.

mod cautions;
mod cuts;
mod holes;
mod tighten;
mod welds;

pub use cuts::Cut;
pub use holes::{Class, Distance, DrillSize, Hole};
pub use tighten::{BoltPlace, Pass, TighteningPlan};
pub use welds::{FillerLine, FilletEnd, WeldPlan};

use super::{Rates, RepairKind, Work, work};
use crate::evaluate::{Analysis, checks_of};
use crate::quantity::Dimension;
use crate::report::{Amount, Label, Said};
use crate::scenario::{Input, Scenario};
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
    /// Mass of all; zero for bolts, which replace others.
    pub mass: Amount,
    /// Cost by the rates.
    pub cost: f64,
}

/// Work of one kind.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Operation {
    /// Which, by code.
    pub what: Label,
    /// How often.
    pub count: u32,
    /// Minutes by the rates.
    pub minutes: f64,
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
    let part = added_part(before, after);
    let jobs = work::jobs(before, after, part);
    let analysis = Analysis::without_working(after);
    let checks = checks_of(&analysis, |_| false);
    let weld = (jobs.welds > 0)
        .then(|| welds::plan(&analysis, jobs.welds))
        .flatten();
    WorkSheet {
        kind: part.map_or(RepairKind::Tightening, |part| part.kind(after)),
        input: after.input.clone(),
        cuts: cuts::list(after, &jobs),
        holes: holes::list(before, after, &jobs, &checks),
        tightening: tighten::plan(&analysis),
        materials: cuts::materials(after, &jobs, rates),
        operations: operations(&jobs, rates),
        work: jobs.work(rates),
        cautions: cautions::list(before, after, &jobs),
        weld,
    }
}

fn operations(jobs: &work::Jobs, rates: &Rates) -> Vec<Operation> {
    let done = jobs.work(rates);
    [
        (Label::WorkHoles, done.holes, rates.minutes_hole),
        (Label::WorkCuts, done.cuts, rates.minutes_cut),
        (Label::WorkWelds, done.welds, rates.minutes_weld),
        (
            Label::WorkSurfaces,
            done.surfaces,
            jobs.minutes_surface(rates),
        ),
        (Label::WorkBolts, jobs.bolts, rates.minutes_bolt),
    ]
    .into_iter()
    .filter(|(_, count, _)| *count > 0)
    .map(|(what, count, each)| {
        let minutes = f64::from(count) * each;
        Operation {
            what,
            count,
            minutes,
            cost: minutes / 60.0 * rates.hour,
        }
    })
    .collect()
}

/// A length.
const fn length(si: f64) -> Amount {
    Amount::new(si, Dimension::Length)
}

#[cfg(test)]
mod tests;

//! The welds of a sleeve: preparation, throat, filler, strength.

use super::{length, said};
use crate::catalog::{Family, Filler};
use crate::cite::Cite;
use crate::evaluate::Analysis;
use crate::evaluate::sleeve_weld::{GROOVE_DEG, SleeveWeld, other_filler};
use crate::mechanics::weld;
use crate::quantity::Dimension::{Angle, Force, Stress};
use crate::quantity::InUnits;
use crate::report::working::Working;
use crate::report::{Amount, Governing, Label, Said, Step, Verdict, say};
use crate::scenario::{Mount, Scenario};
use serde::Serialize;

/// A filler metal with what it bears.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FillerLine {
    /// Id.
    pub id: &'static str,
    /// Name for people.
    pub label: &'static str,
    /// Shear strength of the weld metal.
    pub shear_strength: Amount,
    /// Source.
    #[serde(flatten)]
    pub cite: Cite,
}

impl FillerLine {
    fn of(row: &Filler) -> Self {
        Self {
            id: row.id(),
            label: row.label(),
            shear_strength: Amount::new(row.shear_strength().si(), Stress),
            cite: row.cite(),
        }
    }
}

/// Where nothing but the washer lies on the end of the sleeve, it may stand proud and be welded round
/// with a fillet instead.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FilletEnd {
    /// Least leg for these thicknesses.
    pub least_leg: Amount,
    /// Largest leg along the edge of the sleeve.
    pub largest_leg: Amount,
    /// How far the sleeve stands proud, and how much longer it is cut: one leg.
    pub proud: Amount,
    /// Throat that it then has.
    pub throat: Amount,
    /// How to lay it.
    pub notes: Vec<Said>,
}

/// Welds that hold the sleeves, one at each end.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct WeldPlan {
    /// Kind of joint, by code.
    pub joint: Label,
    /// How many, two to a sleeve.
    pub count: u32,
    /// Length of one, round the sleeve.
    pub length: Amount,
    /// Angle between the bevelled edge of the hole and the sleeve.
    pub groove_angle: Amount,
    /// Depth of the bevel.
    pub depth: Amount,
    /// Square part left at the root.
    pub root_face: Amount,
    /// Gap at the root.
    pub root_gap: Amount,
    /// Throat that the groove gives.
    pub throat: Amount,
    /// Least throat for this thickness, or the wall itself where it is thinner.
    pub least_throat: Amount,
    /// Throat that the load needs.
    pub throat_needed: Amount,
    /// Filler metal.
    pub filler: FillerLine,
    /// Another that suits.
    pub other_filler: Option<FillerLine>,
    /// Load on one weld.
    pub demand: Amount,
    /// Strength of one weld.
    pub capacity: Amount,
    /// Factor on the load.
    pub factor: f64,
    /// factor × demand / capacity.
    pub utilisation: f64,
    /// Whether the weld holds.
    pub verdict: Verdict,
    /// Load case that decides; none where nothing pulls.
    pub case: Option<Governing>,
    /// A fillet on the other end; none where a fitting lies on both.
    pub fillet: Option<FilletEnd>,
    /// The working.
    pub steps: Vec<Step>,
    /// What is assumed and how to lay it.
    pub notes: Vec<Said>,
}

/// `None` where tube and sleeve cannot be welded to each other; no scenario has such a weld.
pub(super) fn plan(joint: &Analysis<'_>, count: u32) -> Option<WeldPlan> {
    let s = joint.s;
    let w = SleeveWeld::new(s)?;
    let demand = w.demand(joint);
    let (force, factor) = demand.map_or((0.0, w.omega), |a| (a.force(), a.factor));
    let needed = demand.map_or(0.0, |a| w.throat_needed(&a));
    let utilisation = demand.map_or(0.0, |a| w.used(&a));
    let mut steps = Working::new(true);
    w.lines(&mut steps, s, demand.as_ref());
    let thinner = s.tube.wall.min((s.sleeve.outer - s.sleeve.inner) / 2.0);
    let least = weld::least_groove_throat(thinner);
    let aluminium = s.tube.material.family() == Family::Aluminium;
    Some(WeldPlan {
        joint: if s.member.is_round() {
            Label::WeldRoundGroove
        } else {
            Label::WeldBevelGroove
        },
        count,
        length: length(round_length(s).unwrap_or_else(|| w.length.si())),
        groove_angle: Amount::new(GROOVE_DEG.to_radians(), Angle),
        depth: length(w.depth.si()),
        root_face: length(0.0),
        root_gap: length(0.0),
        throat: length(w.throat.si()),
        least_throat: length(least.min(s.tube.wall).si()),
        throat_needed: length(needed),
        filler: FillerLine::of(w.filler),
        other_filler: other_filler(s).map(FillerLine::of),
        demand: Amount::new(force, Force),
        capacity: Amount::new(w.strength(), Force),
        factor,
        utilisation,
        verdict: Verdict::of(utilisation),
        case: demand.map(|a| Governing {
            case: a.loads.case.case,
            kind: a.loads.case.kind,
        }),
        // On a round wall the sides are fillets anyway.
        fillet: (s.bolting.mount == Mount::FromTop && !s.member.is_round()).then(|| fillet(s)),
        steps: steps.finish(),
        notes: notes(s, &w, (least, thinner), aluminium),
    })
}

/// Length of the line in which a sleeve goes through a round wall, m: up and down with the wall. `None` on a flat one.
fn round_length(s: &Scenario) -> Option<f64> {
    let [tube, sleeve] = [s.tube.depth, s.sleeve.outer].map(|d| d.si() / 2.0);
    (s.member.is_round() && sleeve < tube).then(|| {
        let steps = 90_u32;
        let quarter = std::f64::consts::FRAC_PI_2;
        let sum: f64 = (0..steps)
            .map(|i| {
                let (sin, cos) = ((f64::from(i) + 0.5) / f64::from(steps) * quarter).sin_cos();
                let down = sleeve * sin * cos / (tube * tube - (sleeve * sin).powi(2)).sqrt();
                (1.0 + down * down).sqrt()
            })
            .sum();
        4.0 * sleeve * quarter * sum / f64::from(steps)
    })
}

/// How far a round wall falls away from its crown beside the sleeve, m.
fn falls(s: &Scenario) -> f64 {
    let [tube, sleeve] = [s.tube.depth, s.sleeve.outer].map(|d| d.si() / 2.0);
    tube - (tube * tube - sleeve * sleeve).max(0.0).sqrt()
}

fn fillet(s: &Scenario) -> FilletEnd {
    let sleeve_wall = (s.sleeve.outer - s.sleeve.inner) / 2.0;
    let least = weld::least_fillet(s.tube.wall.min(sleeve_wall));
    let largest = weld::largest_fillet(s.tube.wall.min(sleeve_wall));
    let leg = least.min(largest);
    FilletEnd {
        least_leg: length(least.si()),
        largest_leg: length(largest.si()),
        proud: length(leg.si()),
        throat: length(weld::fillet_throat(leg).si()),
        notes: vec![said(say::WeldFilletProud, [leg.si()])],
    }
}

fn notes(
    s: &Scenario,
    w: &SleeveWeld,
    (least, thinner): (crate::quantity::Length, crate::quantity::Length),
    aluminium: bool,
) -> Vec<Said> {
    let round = s.member.is_round();
    let mut notes = if round {
        vec![
            said(say::WeldRound, [falls(s)]),
            said(say::WeldRoundBevel, [w.depth.si()]),
        ]
    } else {
        vec![
            said(say::WeldWhyGroove, []),
            said(say::WeldBevelHole, [w.depth.si()]),
        ]
    };
    notes.push(said(say::WeldAssumption, []));
    let flat = s.tube.width.si() / 2.0 - s.tube.corner_radius.si();
    let bevelled = s.sleeve.outer.si() / 2.0 + w.depth.si() * GROOVE_DEG.to_radians().tan();
    if bevelled > flat && !round {
        notes.push(said(say::WeldBevelCorner, [bevelled - flat]));
    }
    if thinner < least {
        notes.push(said(say::WeldThinWall, [thinner.si(), least.si()]));
    }
    notes.push(said(
        if aluminium {
            say::WeldCleanAluminium
        } else {
            say::WeldCleanSteel
        },
        [],
    ));
    if aluminium {
        // Within 25 mm (1 in) of a weld.
        notes.push(said(say::WeldHeatSoftens, [0.0254]));
    }
    if s.tube.material.family() != s.sleeve.material.family() {
        notes.push(said(say::WeldStainlessToCarbon, []));
    }
    notes.push(said(say::WeldSequence, []));
    notes.push(said(
        if round {
            say::WeldRoundDress
        } else {
            say::WeldGrindFlush
        },
        [],
    ));
    notes.push(said(
        say::WeldReamAfter,
        [(s.sleeve.inner - s.bolting.thread.major()).si()],
    ));
    notes
}

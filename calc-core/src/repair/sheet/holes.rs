//! Holes to drill or to open up.

use super::{length, said};
use crate::catalog::{Drill, HoleFit, System, clearance_hole, drill_for};
use crate::cite::Cite;
use crate::quantity::{InUnits, Length};
use crate::repair::needs::drill_reaches;
use crate::repair::work::{Drilled, Jobs, REAM_BELOW, play_in_sleeve};
use crate::report::{Amount, Check, CheckId, Label, Said, Verdict, say};
use crate::scenario::{Field, MemberKind, Scenario};
use crate::support::parts::Shape;
use crate::support::{self, ClampSupport};
use serde::Serialize;

/// Largest hole that a twist drill makes round in a thin wall, m (1/2 in). Common practice, no source.
const TWIST_UP_TO: f64 = 12.7e-3;

/// Thickness above which a step drill does not cut a hole through, m. Common practice, no source.
const STEP_UP_TO: f64 = 6.0e-3;

/// A drill from a list.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct DrillSize {
    /// Diameter.
    pub diameter: Amount,
    /// List that it stands in.
    #[serde(flatten)]
    pub cite: Cite,
}

impl DrillSize {
    fn of(drill: Drill) -> Self {
        Self {
            diameter: length(drill.diameter.si()),
            cite: drill.cite,
        }
    }
}

/// Which listed clearance hole a hole is.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Class {
    /// Fit.
    pub fit: HoleFit,
    /// Its table.
    #[serde(flatten)]
    pub cite: Cite,
}

/// Metal left beside a hole.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Distance {
    /// Where to, by code.
    pub what: Label,
    /// The least.
    pub needed: Amount,
    /// What is there.
    pub given: Amount,
    /// Whether that is enough.
    pub verdict: Verdict,
}

/// Holes of one kind.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Hole {
    /// Where, by code.
    pub place: Label,
    /// How many.
    pub count: u32,
    /// Diameter that is there; none: to be drilled anew.
    pub from: Option<Amount>,
    /// Diameter wanted.
    pub to: Amount,
    /// Smallest drill in fractions of an inch that is no smaller.
    pub drill_inch: Option<DrillSize>,
    /// Smallest drill in millimetres that is no smaller.
    pub drill_metric: Option<DrillSize>,
    /// What to drill with, by code.
    pub tool: Label,
    /// Drill to begin with.
    pub pilot: Option<Amount>,
    /// How deep it is, where that is more than a wall or a plate.
    pub deep: Option<Amount>,
    /// The clearance hole of the tables that it is.
    pub class: Option<Class>,
    /// Metal left beside it.
    pub distances: Vec<Distance>,
    /// How to finish it.
    pub notes: Vec<Said>,
}

pub(super) fn list(
    before: &Scenario,
    after: &Scenario,
    jobs: &Jobs,
    checks: &[Check],
) -> Vec<Hole> {
    let mut holes = Vec::new();
    let support = support::of(after);
    let from = support::of(before).hole_in_wall(before).si();
    let to = support.hole_in_wall(after).si();
    let solid = after.support.is_solid();
    let place = if after.member.is_open() {
        Label::PlaceOnePly
    } else if solid {
        Label::PlaceBar
    } else {
        Label::PlaceTubeWall
    };
    for mut hole in both(after, place, jobs.in_tube, from, to) {
        hole.distances = in_the_tube(after, support, checks, to);
        if let Some(fit) = support.hole_fit(after) {
            hole.class = None;
            hole.notes.insert(0, fit);
        }
        cut_through(&mut hole, after.tube.wall.si(), false);
        if jobs.damage.has(Field::FoundOval) && hole.from.is_some() {
            hole.notes.insert(0, said(say::HoleOval, [to]));
        }
        if !after.member.is_open() && !solid {
            hole.notes.push(said(say::HoleInLine, []));
        }
        if after.member.is_round() {
            hole.notes.push(said(say::HoleRound, []));
        }
        if after.support.is_solid() {
            deepen(&mut hole, after, after.tube.depth.si());
        }
        holes.push(hole);
    }
    let (from, to) = (before.fitting.hole.si(), after.fitting.hole.si());
    for mut hole in both(after, Label::PlaceFitting, jobs.in_fitting, from, to) {
        hole.distances = of(checks, CheckId::FittingEdge, Label::DistanceEdge);
        cut_through(&mut hole, after.fitting.thickness.si(), true);
        holes.push(hole);
    }
    if let Some(pieces) = &jobs.pieces
        && pieces.shape.holes() > 0
    {
        let place = match pieces.shape {
            Shape::Washer { .. } => Label::PlaceWasher,
            Shape::Block { .. } => Label::PlaceBlock,
            _ => Label::PlacePlate,
        };
        let count = pieces.count * pieces.shape.holes();
        let mut hole = drilled(after, place, count, None, after.bolting.hole.si());
        cut_through(&mut hole, pieces.shape.hole_depth(), true);
        if matches!(pieces.shape, Shape::Block { .. }) {
            hole.notes.push(said(say::HoleThroughTube, []));
            deepen(&mut hole, after, pieces.shape.hole_depth());
        }
        holes.push(hole);
    }
    if jobs.through_block > 0 {
        let hole = after.bolting.hole.si();
        let from = (jobs.in_tube.opened > 0).then_some(before.bolting.hole.si());
        let mut hole = drilled(after, Label::PlaceBlock, jobs.through_block, from, hole);
        deepen(
            &mut hole,
            after,
            after.tube.depth.si() - 2.0 * after.tube.wall.si(),
        );
        holes.push(hole);
    }
    if let Some(seats) = jobs.seats.as_ref().filter(|seats| !seats.is_bought()) {
        let mut hole = drilled(after, Label::PlaceSaddle, seats.count, None, seats.hole);
        cut_through(&mut hole, seats.blank, true);
        holes.push(hole);
    }
    if jobs.reamed > 0 {
        let to = after.bolting.thread.major().si() + REAM_BELOW;
        let from = Some(after.sleeve.inner.si());
        let mut hole = drilled(after, Label::PlaceSleeveBore, jobs.reamed, from, to);
        hole.tool = Label::DrillReamer;
        hole.notes = vec![said(say::HoleReamIfTight, [play_in_sleeve(after)])];
        holes.push(hole);
    }
    holes
}

/// Holes that are opened, and holes that are new.
fn both(s: &Scenario, place: Label, jobs: Drilled, from: f64, to: f64) -> Vec<Hole> {
    [(jobs.opened, Some(from)), (jobs.new, None)]
        .into_iter()
        .filter(|(count, _)| *count > 0)
        .map(|(count, from)| drilled(s, place, count, from, to))
        .collect()
}

fn drilled(s: &Scenario, place: Label, count: u32, from: Option<f64>, to: f64) -> Hole {
    let thread = s.bolting.thread;
    let drill = |system| drill_for(Length::of_si(to), system).map(DrillSize::of);
    let wide = to > TWIST_UP_TO;
    let pilot = match thread.system() {
        System::Inch => 6.35e-3,
        System::Metric => 6e-3,
    };
    let class = [
        HoleFit::Normal,
        HoleFit::Structural,
        HoleFit::Close,
        HoleFit::Loose,
    ]
    .into_iter()
    .filter_map(|fit| clearance_hole(thread, fit).map(|hole| (fit, hole)))
    .find(|(_, hole)| (hole.diameter.si() - to).abs() < 0.06e-3)
    .map(|(fit, hole)| Class {
        fit,
        cite: hole.cite,
    });
    let mut notes = Vec::new();
    if from.is_some() && wide {
        notes.push(said(say::HoleOpenGuided, []));
    }
    notes.push(said(say::HoleDeburr, []));
    Hole {
        place,
        count,
        from: from.map(length),
        to: length(to),
        drill_inch: drill(System::Inch),
        drill_metric: drill(System::Metric),
        tool: match (wide, from) {
            (true, _) => Label::DrillHoleCutter,
            (false, Some(_)) => Label::DrillStep,
            (false, None) => Label::DrillTwist,
        },
        pilot: (from.is_none() && to > pilot).then(|| length(pilot)),
        deep: None,
        class,
        distances: Vec::new(),
        notes,
    }
}

/// How a hole is cut where a step drill does not reach through: what comes off goes under a press, a wall of the member
/// gets a cutter with a pilot.
fn cut_through(hole: &mut Hole, thick: f64, comes_off: bool) {
    if thick <= STEP_UP_TO {
        return;
    }
    let unguided = said(say::HoleOpenGuided, []);
    hole.tool = if comes_off {
        hole.notes.retain(|note| *note != unguided);
        Label::DrillInPress
    } else if hole.to.si > TWIST_UP_TO {
        for note in hole.notes.iter_mut().filter(|note| **note == unguided) {
            *note = said(say::HoleOpenThick, []);
        }
        Label::DrillAnnular
    } else {
        Label::DrillTwist
    };
}

/// A hole through a block or a bar: by drill, and a long one where the usual does not reach through the tube.
fn deepen(hole: &mut Hole, s: &Scenario, deep: f64) {
    hole.deep = Some(length(deep));
    hole.tool = Label::DrillTwist;
    // The hole in the wall guides it.
    hole.pilot = hole.pilot.filter(|_| s.support.is_solid());
    let (unguided, thick) = (say::HoleOpenGuided, say::HoleOpenThick);
    hole.notes
        .retain(|note| ![unguided.message(), thick.message()].contains(&note.code));
    hole.notes.push(said(say::HoleDeep, [deep]));
    let reach = drill_reaches(hole.to.si);
    if s.tube.depth.si() > reach {
        hole.notes.push(said(say::HoleLongDrill, [reach]));
    }
}

/// A distance that the joint is checked for.
fn of(checks: &[Check], id: CheckId, what: Label) -> Vec<Distance> {
    checks
        .iter()
        .filter(|check| check.id == id)
        .map(|check| Distance {
            what,
            needed: check.demand,
            given: check.capacity,
            verdict: check.verdict,
        })
        .collect()
}

/// To the end, to the next hole, and from what goes through the wall to the rounded corners, where its end
/// cannot be flush.
fn in_the_tube(
    s: &Scenario,
    support: &dyn ClampSupport,
    checks: &[Check],
    hole: f64,
) -> Vec<Distance> {
    let mut distances = of(checks, CheckId::EndDistance, Label::DistanceEnd);
    distances.extend(of(checks, CheckId::Spacing, Label::DistanceNext));
    distances.extend(of(checks, CheckId::MemberEdge, Label::DistanceFreeEdge));
    let has_corners = s.member.kind == MemberKind::RectangularTube;
    if !(has_corners && support.passes_wall()) {
        return distances;
    }
    let b = &s.bolting;
    let outermost = (b.rows.saturating_sub(1)) as f64 / 2.0 * b.spacing_across.si();
    let flat = s.tube.width.si() / 2.0 - s.tube.corner_radius.si();
    let given = flat - outermost - hole / 2.0;
    distances.push(Distance {
        what: Label::DistanceCorner,
        needed: length(0.0),
        given: length(given),
        verdict: if given >= 0.0 {
            Verdict::Holds
        } else {
            Verdict::DoesNotHold
        },
    });
    distances
}

//! Pieces to cut, and what to buy.

use super::{MaterialLine, length, said};
use crate::quantity::{Dimension, InUnits};
use crate::repair::Rates;
use crate::repair::work::{Jobs, Pieces, Shape};
use crate::report::{Amount, Label, Said, say};
use crate::scenario::{Scenario, SupportKind, TubeEnd};
use serde::Serialize;

/// What a saw takes away at each cut, m (1/8 in). Common practice, no source.
const KERF: f64 = 3.175e-3;

/// A through sleeve may be left this much proud, m (0.010 in). Common practice, no source.
const PROUD: f64 = 0.254e-3;

/// Tolerance of a plate's outline, m. Common practice, no source.
const OUTLINE: f64 = 1e-3;

/// A piece to cut.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Cut {
    /// What it is, by code.
    pub what: Label,
    /// Id of the sleeve stock; empty for plate and bar.
    pub stock: &'static str,
    /// Id of the material.
    pub material: &'static str,
    /// How many.
    pub count: u32,
    /// Length to cut; the outside diameter of a round washer.
    pub length: Amount,
    /// How much longer it may be.
    pub plus: Amount,
    /// How much shorter it may be.
    pub minus: Amount,
    /// Width of a plate or block.
    pub width: Option<Amount>,
    /// Thickness of a plate or washer, depth of a block.
    pub thickness: Option<Amount>,
    /// Outside diameter of a sleeve.
    pub outer: Option<Amount>,
    /// Inside diameter of a sleeve.
    pub inner: Option<Amount>,
    /// Stock that all of them use up, with a saw cut for each and one to square the end.
    pub stock_length: Amount,
    /// How to measure and finish it.
    pub notes: Vec<Said>,
}

/// Code of a piece.
const fn name(shape: &Shape) -> Label {
    match shape {
        Shape::Washer { .. } => Label::PieceWasher,
        Shape::Plate { .. } => Label::PiecePlate,
        Shape::Sleeve { .. } => Label::PieceSleeve,
        Shape::Block { .. } => Label::PieceBlock,
    }
}

/// Id of the stock that a piece is cut from.
fn stock(s: &Scenario, shape: &Shape) -> &'static str {
    let own_size = s.input.sleeve_outer_mm.is_some() || s.input.sleeve_wall_mm.is_some();
    match shape {
        Shape::Sleeve { .. } if !own_size => {
            crate::catalog::sleeve(&s.input.sleeve).map_or("", crate::catalog::Sleeve::id)
        }
        _ => "",
    }
}

pub(super) fn list(s: &Scenario, jobs: &Jobs) -> Vec<Cut> {
    jobs.pieces.iter().map(|pieces| cut(s, pieces)).collect()
}

fn cut(s: &Scenario, pieces: &Pieces) -> Cut {
    let shape = &pieces.shape;
    let through = s.support == SupportKind::ThroughSleeve;
    let inside = s.tube.depth.si() - 2.0 * s.tube.wall.si();
    let short = s.sleeve_short.si().max(0.0);
    let figures = [inside, short];
    let (long, width, thickness) = match *shape {
        Shape::Washer { outer, thick, .. } => (outer, None, Some(thick)),
        Shape::Plate {
            length,
            width,
            thick,
            ..
        } => (length, Some(width), Some(thick)),
        Shape::Sleeve { length, .. } => (length, None, None),
        Shape::Block {
            length,
            width,
            depth,
            ..
        } => (length, Some(width), Some(depth)),
    };
    let (outer, inner) = match *shape {
        Shape::Sleeve { outer, inner, .. } => (Some(length(outer)), Some(length(inner))),
        _ => (None, None),
    };
    let (plus, minus) = match shape {
        Shape::Sleeve { .. } if through => (PROUD, 0.0),
        // Anything between as short as was reckoned with and exactly as long as the space.
        Shape::Sleeve { .. } => (short, 0.0),
        _ => (OUTLINE, OUTLINE),
    };
    let mut notes = Vec::new();
    match *shape {
        Shape::Sleeve { length, .. } if through => {
            notes.push(said(say::CutFlush, [length, PROUD]));
            notes.push(said(say::CutDeburr, []));
        }
        Shape::Sleeve { .. } => {
            notes.push(said(say::CutMeasureInside, figures));
            notes.push(said(say::CutDeburr, []));
            notes.push(through_the_end(s));
        }
        Shape::Plate { bolts, .. } => {
            if bolts > 1 && s.bolting.along > 1 {
                notes.push(said(say::CutPlateJoined, [s.bolting.spacing_along.si()]));
            }
            notes.push(said(say::CutEdges, []));
            if long / 2.0 > s.tube.end_distance.si() {
                notes.push(said(say::CutPlateOverhang, [s.tube.end_distance.si()]));
            }
        }
        Shape::Washer { .. } => notes.push(said(say::CutWasher, [])),
        Shape::Block { .. } => {
            notes.push(said(say::CutBlockFit, figures));
            if s.member.is_round() {
                notes.push(said(say::CutBlockRound, [inside]));
            }
            let corner = (s.tube.corner_radius - s.tube.wall).si().max(0.0);
            if corner > 0.0 {
                notes.push(said(say::CutBlockCorners, [corner]));
            }
            notes.push(through_the_end(s));
        }
    }
    Cut {
        what: name(shape),
        stock: stock(s, shape),
        material: pieces.material.id(),
        count: pieces.count,
        length: length(long),
        plus: length(plus),
        minus: length(minus),
        width: width.map(length),
        thickness: thickness.map(length),
        outer,
        inner,
        stock_length: length(f64::from(pieces.count) * (long + KERF) + KERF),
        notes,
    }
}

/// What is wider than its hole goes in from the end of the tube, if that is open.
fn through_the_end(s: &Scenario) -> Said {
    let open = s.input.tube_end == TubeEnd::Open.name();
    said(
        if open {
            say::CutInByEnd
        } else {
            say::CutEndClosed
        },
        [s.tube.end_distance.si()],
    )
}

pub(super) fn materials(s: &Scenario, jobs: &Jobs, rates: &Rates) -> Vec<MaterialLine> {
    let mut lines: Vec<MaterialLine> = jobs
        .pieces
        .iter()
        .map(|pieces| {
            let mass = pieces.mass();
            MaterialLine {
                what: name(&pieces.shape),
                stock: stock(s, &pieces.shape),
                material: pieces.material.id(),
                count: pieces.count,
                mass: Amount::new(mass, Dimension::Mass),
                cost: mass * pieces.per_kg(rates),
            }
        })
        .collect();
    if jobs.new_bolts > 0 {
        lines.push(MaterialLine {
            what: Label::PieceBolt,
            stock: s.bolting.thread.id(),
            material: s.bolting.grade.id(),
            count: jobs.new_bolts,
            mass: Amount::new(0.0, Dimension::Mass),
            cost: f64::from(jobs.new_bolts) * rates.bolt,
        });
    }
    lines
}

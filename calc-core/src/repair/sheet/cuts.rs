//! Pieces to cut, and what to buy.

use super::{MaterialLine, length, said};
use crate::quantity::Dimension;
use crate::quantity::InUnits;
use crate::repair::Rates;
use crate::repair::work::{Jobs, Pieces, Shape};
use crate::report::{Amount, Said};
use crate::scenario::{Field, Scenario, SupportKind};
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
    pub what: &'static str,
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
const fn name(shape: &Shape) -> &'static str {
    match shape {
        Shape::Washer { .. } => "piece-washer",
        Shape::Plate { .. } => "piece-plate",
        Shape::Sleeve { .. } => "piece-sleeve",
        Shape::Block { .. } => "piece-block",
    }
}

/// Id of the stock that a piece is cut from.
fn stock(s: &Scenario, shape: &Shape) -> &'static str {
    let own_size = s.is_given(Field::SleeveOuter) || s.is_given(Field::SleeveWall);
    match shape {
        Shape::Sleeve { .. } if !own_size => s.sleeve_stock.id(),
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
            notes.push(said("cut-flush", &[length, PROUD]));
            notes.push(said("cut-deburr", &[]));
        }
        Shape::Sleeve { .. } => {
            notes.push(said("cut-measure-inside", &figures));
            notes.push(said("cut-deburr", &[]));
            notes.push(through_the_end(s));
        }
        Shape::Plate { bolts, .. } => {
            if bolts > 1 && s.bolting.along > 1 {
                notes.push(said("cut-plate-joined", &[s.bolting.spacing_along.si()]));
            }
            notes.push(said("cut-edges", &[]));
            if long / 2.0 > s.tube.end_distance.si() {
                notes.push(said("cut-plate-overhang", &[s.tube.end_distance.si()]));
            }
        }
        Shape::Washer { .. } => notes.push(said("cut-washer", &[])),
        Shape::Block { .. } => {
            notes.push(said("cut-block-fit", &figures));
            if s.member.is_round() {
                notes.push(said("cut-block-round", &[inside]));
            }
            let corner = (s.tube.corner_radius - s.tube.wall).si().max(0.0);
            if corner > 0.0 {
                notes.push(said("cut-block-corners", &[corner]));
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
    said(
        if s.tube.open_end {
            "cut-in-by-end"
        } else {
            "cut-end-closed"
        },
        &[s.tube.end_distance.si()],
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
            what: "piece-bolt",
            stock: s.bolting.thread.id(),
            material: s.bolting.grade.id(),
            count: jobs.new_bolts,
            mass: Amount::new(0.0, Dimension::Mass),
            cost: f64::from(jobs.new_bolts) * rates.bolt,
        });
    }
    lines
}

//! Pieces to cut, and what to buy.

use super::{MaterialLine, length};
use crate::quantity::Dimension;
use crate::repair::Rates;
use crate::repair::work::Jobs;
use crate::report::{Amount, Label, Said};
use crate::scenario::{Field, Scenario};
use crate::support::parts::{Cutting, Pieces, Shape};
use serde::Serialize;

/// What a saw takes away at each cut, m (1/8 in). Common practice, no source.
const KERF: f64 = 3.175e-3;

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

/// Id of the stock that a piece is cut from.
fn stock(s: &Scenario, shape: &Shape) -> &'static str {
    let own_size = s.is_given(Field::SleeveOuter) || s.is_given(Field::SleeveWall);
    match shape {
        Shape::Sleeve { .. } if !own_size => s.sleeve_stock.id(),
        _ => "",
    }
}

pub(super) fn list(s: &Scenario, jobs: &Jobs) -> Vec<Cut> {
    let parts = jobs.part.zip(jobs.pieces.as_ref());
    parts
        .map(|(part, pieces)| cut(s, pieces, part.cutting(s, pieces)))
        .into_iter()
        .collect()
}

fn cut(s: &Scenario, pieces: &Pieces, cutting: Cutting) -> Cut {
    let shape = &pieces.shape;
    let (width, thickness) = match *shape {
        Shape::Washer { thick, .. } => (None, Some(thick)),
        Shape::Plate { width, thick, .. } => (Some(width), Some(thick)),
        Shape::Sleeve { .. } => (None, None),
        Shape::Block { width, depth, .. } => (Some(width), Some(depth)),
    };
    let (outer, inner) = match *shape {
        Shape::Sleeve { outer, inner, .. } => (Some(length(outer)), Some(length(inner))),
        _ => (None, None),
    };
    Cut {
        what: shape.name(),
        stock: stock(s, shape),
        material: pieces.material.id(),
        count: pieces.count,
        length: length(shape.length()),
        plus: length(cutting.plus),
        minus: length(cutting.minus),
        width: width.map(length),
        thickness: thickness.map(length),
        outer,
        inner,
        stock_length: length(f64::from(pieces.count) * (shape.length() + KERF) + KERF),
        notes: cutting.notes,
    }
}

pub(super) fn materials(s: &Scenario, jobs: &Jobs, rates: &Rates) -> Vec<MaterialLine> {
    let mut lines: Vec<MaterialLine> = jobs
        .pieces
        .iter()
        .map(|pieces| {
            let mass = pieces.mass();
            MaterialLine {
                what: pieces.shape.name(),
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

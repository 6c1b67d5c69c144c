//! Pieces to cut, and what to buy.

use super::{MaterialLine, TighteningPlan, length, said};
use crate::quantity::Dimension;
use crate::repair::Rates;
use crate::repair::fit::{self, Fit};
use crate::repair::seats::Seats;
use crate::repair::work::{Jobs, per_kg};
use crate::report::{Amount, Label, Said, say};
use crate::scenario::{Field, Scenario};
use crate::support::parts::{Cutting, Pieces, Shape};
use serde::Serialize;

/// What a saw takes away at each cut, m (1/8 in). Common practice, no source.
const KERF: f64 = 3.175e-3;

/// Tolerance of a saddle's outline, m. Common practice, no source.
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
    /// How it is brought to that length; none where the saw decides.
    pub fit: Option<Fit>,
    /// How far the place that it goes into may be from the drawing, either way: measure it.
    pub varies: Option<Amount>,
    /// Length to saw it to by the drawing, to have enough at the widest place.
    pub rough: Amount,
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
        .map(|(part, pieces)| cut(s, pieces, part.cutting(s, pieces), jobs.fit))
        .into_iter()
        .chain(made(jobs).map(saddle))
        .collect()
}

/// Saddles, which are made; tapered washers are bought.
fn made(jobs: &Jobs) -> Option<&Seats> {
    jobs.seats.as_ref().filter(|seats| !seats.is_bought())
}

fn saddle(seats: &Seats) -> Cut {
    let hollow = seats.hollow.unwrap_or_default();
    Cut {
        what: Label::PieceSaddle,
        stock: "",
        material: seats.material.id(),
        count: seats.count,
        length: length(seats.side),
        plus: length(OUTLINE),
        minus: length(OUTLINE),
        width: Some(length(seats.side)),
        thickness: Some(length(seats.blank)),
        outer: None,
        inner: None,
        fit: None,
        varies: None,
        rough: length(seats.side),
        stock_length: length(f64::from(seats.count) * (seats.side + KERF) + KERF),
        notes: vec![said(say::CutSaddle, [hollow, seats.middle])],
    }
}

fn cut(s: &Scenario, pieces: &Pieces, cutting: Cutting, fit: Option<Fit>) -> Cut {
    let shape = &pieces.shape;
    let (width, thickness) = match *shape {
        Shape::Washer { thick, .. } => (None, Some(thick)),
        Shape::Plate { width, thick, .. } => (Some(width), Some(thick)),
        Shape::Sleeve { .. } => (None, None),
        Shape::Block { round: true, .. } => (None, None),
        Shape::Block { width, depth, .. } => (Some(width), Some(depth)),
    };
    let (outer, inner) = match *shape {
        Shape::Sleeve { outer, inner, .. } => (Some(length(outer)), Some(length(inner))),
        Shape::Block {
            round: true, depth, ..
        } => (Some(length(depth)), None),
        _ => (None, None),
    };
    let (varies, over) = to_fit(s, fit);
    // Blocks are cut to length by the saw; what is fitted is their depth.
    let rough = match shape {
        Shape::Sleeve { length, .. } => length + cutting.plus + varies + over,
        _ => shape.length(),
    };
    let mut notes = cutting.notes;
    if pieces.bored() {
        let bore = inner.map_or(0.0, |inner| inner.si);
        notes.insert(0, said(say::CutBored, [bore]));
    }
    if let Some(fit) = fit {
        notes.extend(fitting(s, fit, shape, [varies, over]));
    }
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
        fit,
        varies: fit.map(|_| length(varies)),
        rough: length(rough),
        stock_length: length(stock_length(pieces.count, rough)),
        notes,
    }
}

/// Stock for so many pieces, with a saw cut for each and one to square the end, m.
fn stock_length(count: u32, rough: f64) -> f64 {
    f64::from(count) * (rough + KERF) + KERF
}

/// How far the place may be from the drawing, and how much longer than measured a piece is sawn, m.
fn to_fit(s: &Scenario, fit: Option<Fit>) -> (f64, f64) {
    match fit {
        None => (0.0, 0.0),
        Some(Fit::Flush) => (fit::outside_varies(s), fit::SAW),
        Some(Fit::Sawn) => (fit::inside_varies(s), 0.0),
        Some(_) => (fit::inside_varies(s), fit::SAW),
    }
}

/// How to bring a piece to its measured place.
fn fitting(s: &Scenario, fit: Fit, shape: &Shape, [varies, over]: [f64; 2]) -> Vec<Said> {
    // Bar that is thick enough at the widest place.
    let bar = match *shape {
        Shape::Block { width, depth, .. } => [width, depth].map(|thick| thick + varies),
        _ => [0.0; 2],
    };
    let mut notes = vec![said(say::FitNumbered, [varies])];
    match fit {
        Fit::Sawn => {}
        Fit::Filed => notes.push(said(say::FitFiled, [over])),
        Fit::Faced => notes.push(said(say::FitFaced, [over])),
        Fit::Flush => notes.push(said(say::FitFlush, [over])),
        Fit::Milled => notes.push(said(say::FitMilled, bar)),
        Fit::Turned => notes.push(said(say::FitTurned, [bar[1]])),
    }
    if fit != Fit::Flush && !s.member.is_round() {
        notes.push(said(say::FitInside, []));
    }
    notes
}

pub(super) fn materials(
    s: &Scenario,
    jobs: &Jobs,
    tightening: &TighteningPlan,
    rates: &Rates,
) -> Vec<MaterialLine> {
    let mass = |si| Amount::new(si, Dimension::Mass);
    let mut lines: Vec<MaterialLine> = Vec::new();
    if let (Some(pieces), Some(cut)) = (&jobs.pieces, list(s, jobs).first()) {
        lines.push(MaterialLine {
            what: pieces.shape.name(),
            stock: cut.stock,
            material: pieces.material.id(),
            count: pieces.count,
            length: Some(cut.stock_length),
            mass: mass(pieces.mass()),
            cost: pieces.bought() * per_kg(pieces.material, rates),
        });
    }
    if let Some(seats) = &jobs.seats {
        let (what, length) = if seats.is_bought() {
            (Label::PieceTapered, None)
        } else {
            let stock = stock_length(seats.count, seats.side);
            (Label::PieceSaddle, Some(length(stock)))
        };
        lines.push(MaterialLine {
            what,
            stock: "",
            material: seats.material.id(),
            count: seats.count,
            length,
            mass: mass(seats.mass()),
            cost: seats.cost(rates),
        });
    }
    if jobs.brackets > 0 {
        lines.push(MaterialLine {
            what: Label::PieceBracket,
            stock: "",
            material: s.fitting.material.id(),
            count: jobs.brackets,
            length: None,
            mass: mass(0.0),
            cost: f64::from(jobs.brackets) * rates.bracket,
        });
    }
    if jobs.new_bolts > 0 {
        // Those that are cut go in place of the bought ones.
        let washers_there = matches!(
            jobs.pieces.map(|pieces| pieces.shape),
            Some(Shape::Washer { .. })
        );
        lines.push(MaterialLine {
            what: if washers_there {
                Label::PieceBoltNut
            } else {
                Label::PieceBolt
            },
            stock: s.bolting.thread.id(),
            material: s.bolting.grade.id(),
            count: jobs.new_bolts,
            length: Some(tightening.bolt_stock),
            mass: mass(0.0),
            cost: f64::from(jobs.new_bolts) * rates.bolt,
        });
    }
    lines
}

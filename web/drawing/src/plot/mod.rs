//! Torque against turn.
//!
//! One mapping ([`Frame`]) serves three outputs: two stacked canvases in the page (through plotters,
//! lines only), the same calls into an SVG natively, and a [`Scene`](crate::Scene) for the static page
//! and for print. Lettering never goes through plotters: it would measure it by adding nodes to the
//! page.

mod backend;
mod frame;
mod from_core;
mod labels;
mod range;
mod scene;

#[cfg(any(test, feature = "static"))]
pub use backend::svg_picture;
pub use backend::{Inks, draw_ground, draw_moving};
pub use frame::Frame;
pub use labels::{Label, LabelKind};
pub use range::PlotRange;
pub use scene::torque_turn_scene;

use calc_core::quantity::UnitSystem;

/// Which curve it is; told apart by dash as well as by ink.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CurveKind {
    /// This joint: thick and solid.
    This,
    /// Another joint beside it: thinner and dashed.
    Comparison,
}

/// A curve.
#[derive(Clone, Debug, PartialEq)]
pub struct Curve {
    /// Turn of the nut in degrees, torque in N·m; turn rising.
    pub points: Vec<(f64, f64)>,
    /// Which it is.
    pub kind: CurveKind,
    /// Its name, lettered beside it.
    pub label: String,
}

/// What the plot shows.
#[derive(Clone, Debug, PartialEq)]
pub struct TorqueTurnPlot {
    /// The curves.
    pub curves: Vec<Curve>,
    /// Where the support lets go: turn, torque.
    pub knee: Option<(f64, f64)>,
    /// Words at the knee.
    pub knee_label: String,
    /// Where the wrench is now: turn, torque.
    pub here: Option<(f64, f64)>,
    /// Torque that is wanted, in N·m.
    pub wanted_nm: Option<f64>,
    /// Where the wrench clicked, once it has: turn, torque.
    pub click: Option<(f64, f64)>,
    /// Turn and torque that the axes reach at least, so that plots of several joints can be compared.
    pub reach: Option<(f64, f64)>,
    /// Units of the lettering.
    pub units: UnitSystem,
}

impl TorqueTurnPlot {
    /// The knee, if it is a place.
    pub(crate) fn knee_place(&self) -> Option<(f64, f64)> {
        self.knee.filter(|p| p.0.is_finite() && p.1.is_finite())
    }

    /// Where the wrench is, if that is a place.
    pub(crate) fn here_place(&self) -> Option<(f64, f64)> {
        self.here.filter(|p| p.0.is_finite() && p.1.is_finite())
    }

    /// Where the wrench clicked, if that is a place.
    pub(crate) fn click_place(&self) -> Option<(f64, f64)> {
        self.click.filter(|p| p.0.is_finite() && p.1.is_finite())
    }

    /// The wanted torque, if it is a number.
    pub(crate) fn wanted_place(&self) -> Option<f64> {
        self.wanted_nm.filter(|w| w.is_finite())
    }

    /// Ranges that show all of this joint and what is wanted; curves beside it may leave the field.
    #[must_use]
    pub fn ranges(&self) -> (PlotRange, PlotRange) {
        let finite = |c: &&Curve| c.kind == CurveKind::This;
        let of = |pick: fn(&(f64, f64)) -> f64| {
            self.curves
                .iter()
                .filter(finite)
                .flat_map(|c| c.points.iter().map(pick))
                .chain(self.here.iter().chain(&self.knee).map(pick))
                .chain(self.reach.iter().map(pick))
                .filter(|v| v.is_finite())
                .fold(0.0, f64::max)
        };
        let turn = of(|p| p.0);
        let torque = of(|p| p.1).max(self.wanted_place().unwrap_or(0.0));
        (
            PlotRange::from_zero(turn),
            PlotRange::from_zero(torque * 1.12),
        )
    }
}

#[cfg(test)]
mod tests;

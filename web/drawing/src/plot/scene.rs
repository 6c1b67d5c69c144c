//! The plot as a scene: sharp at any zoom, styled by the page's sheet.

use super::backend::click_rays;
use super::frame::Frame;
use super::labels::LabelKind;
use super::{CurveKind, TorqueTurnPlot};
use crate::pen::polyline;
use crate::scene::{Mark, Scene};
use crate::units::Lettering;

/// The plot as a figure of this size.
#[must_use]
pub fn torque_turn_scene(id: &str, plot: &TorqueTurnPlot, width: f64, height: f64) -> Scene {
    let frame = Frame::new(plot, width, height);
    let (left, top, right, bottom) = frame.field();
    let mut marks = Vec::new();
    for tick in frame.turn_ticks() {
        let (x, _) = frame.place((tick, 0.0));
        marks.push(Mark::line((x, top), (x, bottom), "hair"));
    }
    for (nm, _) in frame.torque_ticks(plot) {
        let (_, y) = frame.place((0.0, nm));
        marks.push(Mark::line((left, y), (right, y), "hair"));
    }
    marks.push(Mark::path(
        polyline([(left, top - 4.0), (left, bottom), (right, bottom)]),
        "axis",
    ));
    if let Some(wanted) = plot.wanted_place() {
        let (_, y) = frame.place((0.0, wanted));
        marks.push(Mark::line((left, y), (right, y), "wanted"));
    }
    for curve in &plot.curves {
        let class = match curve.kind {
            CurveKind::This => "curve",
            CurveKind::Comparison => "curve beside",
        };
        marks.push(Mark::path(polyline(frame.trace(&curve.points)), class));
    }
    if let Some(knee) = plot.knee_place() {
        let (from, to) = frame.knee_words(knee).line;
        marks.push(Mark::circle(frame.place(knee), 3.0, "dot"));
        marks.push(Mark::line(from, to, "thin"));
    }
    if let Some(click) = plot.click_place() {
        let (x, y) = frame.place(click);
        for (from, to) in click_rays((x, y)) {
            marks.push(Mark::line(from, to, "cutting"));
        }
    }
    if let Some(here) = plot.here_place() {
        marks.push(Mark::circle(frame.place(here), 6.0, "here"));
    }
    for label in frame.labels(plot) {
        let class = match label.kind {
            LabelKind::Here => "t halo",
            LabelKind::Name | LabelKind::Moving => "t s halo",
            LabelKind::Axis | LabelKind::Tick => "t s soft",
        };
        marks.push(Mark::text(label.at, label.text, class, label.anchor));
    }
    Scene {
        id: id.into(),
        width: frame.width,
        height: frame.height,
        title: String::from("Torque against turn of the nut"),
        description: describe(plot),
        marks,
    }
}

fn describe(plot: &TorqueTurnPlot) -> String {
    let units = plot.units;
    let mut said = String::from("Torque on the wrench over the turn of the nut from snug.");
    if let Some(here) = plot.here_place() {
        said += &format!(" Now {:.0}°: {}.", here.0, units.torque(here.1));
    }
    if let Some(knee) = plot.knee_place() {
        said += &format!(
            " From {:.0}° and {} the curve bends: {}.",
            knee.0,
            units.torque(knee.1),
            plot.knee_label
        );
    }
    if plot.click_place().is_some() {
        said += " The wrench has clicked.";
    }
    if let Some(wanted) = plot.wanted_place() {
        said += &format!(" Wanted: {}.", units.torque(wanted));
    }
    said
}

//! Draws the lines of the plot on any plotters backend.

use super::frame::Frame;
use super::{CurveKind, TorqueTurnPlot};
use plotters::coord::Shift;
use plotters::drawing::{DrawingArea, DrawingAreaErrorKind, IntoDrawingArea};
use plotters::element::{Circle, DashedPathElement, PathElement};
use plotters::style::{RGBColor, ShapeStyle};
use plotters_backend::DrawingBackend;

/// The inks of the plot, read from the style sheet by the page so that dark mode counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Inks {
    /// Axes and this joint's curve.
    pub ink: (u8, u8, u8),
    /// Curves beside it.
    pub soft: (u8, u8, u8),
    /// Grid.
    pub hair: (u8, u8, u8),
    /// Inside of the marker.
    pub field: (u8, u8, u8),
}

impl Default for Inks {
    fn default() -> Self {
        Self {
            ink: (28, 30, 32),
            soft: (91, 96, 102),
            hair: (214, 212, 203),
            field: (255, 255, 255),
        }
    }
}

type Outcome<B> = Result<(), DrawingAreaErrorKind<<B as DrawingBackend>::ErrorType>>;

/// A place in device pixels.
#[allow(
    clippy::cast_possible_truncation,
    reason = "a frame is at most 8192 px wide and its places are finite"
)]
fn pixel((x, y): (f64, f64), ratio: f64) -> (i32, i32) {
    ((x * ratio).round() as i32, (y * ratio).round() as i32)
}

/// A stroke so many CSS px wide.
fn stroke((r, g, b): (u8, u8, u8), width: f64, ratio: f64) -> ShapeStyle {
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "between 1 and 64"
    )]
    let stroke_width = (width * ratio).round().clamp(1.0, 64.0) as u32;
    ShapeStyle {
        color: RGBColor(r, g, b).into(),
        filled: false,
        stroke_width,
    }
}

/// Points far enough apart that whole device pixels do not show as steps.
fn thinned(trace: &[(f64, f64)]) -> Vec<(f64, f64)> {
    let mut kept: Vec<(f64, f64)> = Vec::new();
    for (i, p) in trace.iter().enumerate() {
        let far = kept
            .last()
            .is_none_or(|k| (p.0 - k.0).hypot(p.1 - k.1) >= 5.0);
        if far || i + 1 == trace.len() {
            kept.push(*p);
        }
    }
    kept
}

fn line<B: DrawingBackend>(
    area: &DrawingArea<B, Shift>,
    points: &[(f64, f64)],
    ratio: f64,
    style: ShapeStyle,
) -> Outcome<B> {
    let points: Vec<_> = points.iter().map(|p| pixel(*p, ratio)).collect();
    if points.len() < 2 {
        return Ok(());
    }
    area.draw(&PathElement::new(points, style))
}

fn dashed<B: DrawingBackend>(
    area: &DrawingArea<B, Shift>,
    points: &[(f64, f64)],
    ratio: f64,
    style: ShapeStyle,
    (on, off): (f64, f64),
) -> Outcome<B> {
    let points: Vec<_> = points.iter().map(|p| pixel(*p, ratio)).collect();
    if points.len() < 2 {
        return Ok(());
    }
    let px = |v: f64| stroke((0, 0, 0), v, ratio).stroke_width;
    area.draw(&DashedPathElement::new(points, px(on), px(off), style))
}

/// Grid, axes, wanted torque and curves: drawn again only when the joint or the size changes. `ratio`
/// is device pixels per CSS px; the backend's size is the frame's times that.
///
/// # Errors
///
/// What the backend reports.
pub fn draw_ground<B: DrawingBackend>(
    backend: B,
    plot: &TorqueTurnPlot,
    frame: &Frame,
    ratio: f64,
    inks: &Inks,
) -> Outcome<B> {
    let area = backend.into_drawing_area();
    let (left, top, right, bottom) = frame.field();
    let hair = stroke(inks.hair, 1.0, ratio);
    for tick in frame.turn_ticks() {
        let (x, _) = frame.place((tick, 0.0));
        line(&area, &[(x, top), (x, bottom)], ratio, hair)?;
    }
    for (nm, _) in frame.torque_ticks(plot) {
        let (_, y) = frame.place((0.0, nm));
        line(&area, &[(left, y), (right, y)], ratio, hair)?;
    }
    let axis = stroke(inks.ink, 1.2, ratio);
    line(
        &area,
        &[(left, top - 4.0), (left, bottom), (right, bottom)],
        ratio,
        axis,
    )?;
    if let Some(wanted) = plot.wanted_place() {
        let (_, y) = frame.place((0.0, wanted));
        dashed(&area, &[(left, y), (right, y)], ratio, axis, (2.0, 4.0))?;
    }
    for curve in &plot.curves {
        let trace = thinned(&frame.trace(&curve.points));
        match curve.kind {
            CurveKind::This => line(&area, &trace, ratio, stroke(inks.ink, 2.6, ratio))?,
            CurveKind::Comparison => dashed(
                &area,
                &trace,
                ratio,
                stroke(inks.soft, 1.7, ratio),
                (8.0, 5.0),
            )?,
        }
    }
    if let Some(knee) = plot.knee_place() {
        let (from, to) = frame.knee_words(knee).line;
        let dot = ShapeStyle {
            filled: true,
            ..axis
        };
        let radius = stroke((0, 0, 0), 3.0, ratio).stroke_width;
        area.draw(&Circle::new(pixel(frame.place(knee), ratio), radius, dot))?;
        line(&area, &[from, to], ratio, axis)?;
    }
    area.present()
}

/// Short rays around the place where the wrench clicked.
pub(super) fn click_rays((x, y): (f64, f64)) -> [((f64, f64), (f64, f64)); 4] {
    [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)]
        .map(|(a, b)| ((x + 6.0 * a, y + 6.0 * b), (x + 11.0 * a, y + 11.0 * b)))
}

/// The marker "you are here", and where the wrench clicked.
///
/// # Errors
///
/// What the backend reports.
pub fn draw_moving<B: DrawingBackend>(
    backend: B,
    plot: &TorqueTurnPlot,
    frame: &Frame,
    ratio: f64,
    inks: &Inks,
) -> Outcome<B> {
    let area = backend.into_drawing_area();
    if let Some(click) = plot.click_place() {
        let ray = stroke(inks.ink, 2.4, ratio);
        for (from, to) in click_rays(frame.place(click)) {
            line(&area, &[from, to], ratio, ray)?;
        }
    }
    if let Some(here) = plot.here_place() {
        let centre = pixel(frame.place(here), ratio);
        let (r, g, b) = inks.field;
        let inside = ShapeStyle {
            color: RGBColor(r, g, b).into(),
            filled: true,
            stroke_width: 1,
        };
        let radius = stroke((0, 0, 0), 6.0, ratio).stroke_width;
        area.draw(&Circle::new(centre, radius, inside))?;
        area.draw(&Circle::new(centre, radius, stroke(inks.ink, 2.4, ratio)))?;
    }
    area.present()
}

/// Both layers as one SVG text, through the same calls that the canvases get.
///
/// # Errors
///
/// What the backend reports, as text.
#[cfg(any(test, feature = "static"))]
pub fn svg_picture(plot: &TorqueTurnPlot, frame: &Frame) -> Result<String, String> {
    let mut out = String::new();
    let (w, h) = pixel((frame.width, frame.height), 1.0);
    let size = (w.unsigned_abs(), h.unsigned_abs());
    let inks = Inks::default();
    draw_ground(
        plotters_svg::SVGBackend::with_string(&mut out, size),
        plot,
        frame,
        1.0,
        &inks,
    )
    .map_err(|e| e.to_string())?;
    let mut over = String::new();
    draw_moving(
        plotters_svg::SVGBackend::with_string(&mut over, size),
        plot,
        frame,
        1.0,
        &inks,
    )
    .map_err(|e| e.to_string())?;
    // The upper picture's marks go before the lower one's closing tag.
    let inner = over
        .find('>')
        .and_then(|from| over.get(from + 1..))
        .unwrap_or_default();
    let ground = out.trim_end().strip_suffix("</svg>").unwrap_or(&out);
    Ok(format!("{ground}{inner}"))
}

//! The torque–turn plot on two stacked canvases: the ground is drawn when the curves, the size or the
//! inks change, the marker on every move. Lettering stands over them as SVG text, sharp at any zoom.

use drawing::plot::{
    Frame, Inks, LabelKind, TorqueTurnPlot, draw_ground, draw_moving, torque_turn_scene,
};
use drawing::{Mark, Scene};
use leptos::html::{Canvas, Div};
use leptos::prelude::*;
use leptos::wasm_bindgen::JsCast;
use leptos::web_sys::{CanvasRenderingContext2d, HtmlCanvasElement};
use plotters_canvas::CanvasBackend;

use super::screen::{inks, on_change_of_look, pixel_ratio};
use crate::el::{El, classed, el, follow};
use crate::paint::{draw_over, paint};

/// Size of the plot on paper, where a vector drawing takes the place of the canvases.
const ON_PAPER: (f64, f64) = (340.0, 300.0);

/// How the plot lies on the screen.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Look {
    width: f64,
    height: f64,
    ratio: f64,
    inks: Inks,
}

/// The plot of a torque–turn curve and its place on paper. `name` is what it shows now, for those who do
/// not see it; `id` is the prefix of the ids, unique on the page.
#[must_use]
pub fn plot(plot: Signal<TorqueTurnPlot>, name: Signal<String>, id: &'static str) -> [El; 2] {
    let place = NodeRef::<Div>::new();
    let (lower, upper) = (NodeRef::<Canvas>::new(), NodeRef::<Canvas>::new());
    let paper = NodeRef::<Div>::new();
    let look = RwSignal::new(None::<Look>);

    follow(move || {
        let Some(element) = place.get() else {
            return;
        };
        let measure = move || {
            let (Some(place), Some(canvas)) = (
                place.try_get_untracked().flatten(),
                lower.try_get_untracked().flatten(),
            ) else {
                return;
            };
            let now = Look {
                width: f64::from(place.client_width()),
                height: f64::from(place.client_height()),
                ratio: pixel_ratio(),
                inks: inks(&canvas),
            };
            if now.width > 0.0 && look.try_get_untracked() != Some(Some(now)) {
                look.try_set(Some(now));
            }
        };
        measure();
        on_change_of_look(&element, measure);
    });

    let ground = Memo::new(move |_| still(plot.get()));
    let frame = Memo::new(move |_| {
        let Look { width, height, .. } = look.get()?;
        Some(ground.with(|ground| Frame::new(ground, width, height)))
    });
    // One source for the drawing, so that it is made once however many of its parts changed.
    let below = Memo::new(move |_| Some((look.get()?, frame.get()?, ground.get())));
    let above = Signal::derive(move || Some((look.get()?, frame.get()?, plot.get())));

    follow(move || {
        below.with(|drawn| {
            let (Some(canvas), Some((look, frame, plot))) = (lower.get(), drawn) else {
                return;
            };
            if let Some(backend) = cleared(&canvas, look) {
                draw_ground(backend, plot, frame, look.ratio, &look.inks).ok();
            }
        });
    });
    follow(move || {
        above.with(|drawn| {
            let (Some(canvas), Some((look, frame, plot))) = (upper.get(), drawn) else {
                return;
            };
            if let Some(backend) = cleared(&canvas, look) {
                draw_moving(backend, plot, frame, look.ratio, &look.inks).ok();
            }
        });
    });

    // What did not change stays, so that a move does not touch the lettering of the axes.
    let lettering = Memo::new(move |_| {
        let frame = frame.get()?;
        Some(plot.with(|plot| lettering(plot, &frame)))
    });
    draw_over(place, move || lettering.get());

    let print = window_event_listener(leptos::ev::beforeprint, move |_| {
        if let Some(paper) = paper.get_untracked() {
            let scene =
                plot.with_untracked(|plot| torque_turn_scene(id, plot, ON_PAPER.0, ON_PAPER.1));
            paint(&paper, &scene);
        }
    });
    on_cleanup(move || print.remove());

    [
        classed("div", "plot screen-only")
            .node_ref(place)
            .child(el("canvas").node_ref(lower).attr("aria-hidden", "true"))
            .child(
                el("canvas")
                    .node_ref(upper)
                    .attr("role", "img")
                    .live_attr("aria-label", move || Some(name.get())),
            ),
        classed("div", "print-only").node_ref(paper),
    ]
}

/// The plot without what moves with the wrench.
fn still(plot: TorqueTurnPlot) -> TorqueTurnPlot {
    TorqueTurnPlot {
        here: None,
        click: None,
        ..plot
    }
}

/// Sets a canvas to its size in device pixels, which also clears it.
fn cleared(canvas: &HtmlCanvasElement, look: &Look) -> Option<CanvasBackend> {
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "clamped to what a canvas takes"
    )]
    let device = |css: f64| (css * look.ratio).round().clamp(1.0, 8192.0) as u32;
    let (width, height) = (device(look.width), device(look.height));
    if (canvas.width(), canvas.height()) == (width, height) {
        let context: CanvasRenderingContext2d = canvas.get_context("2d").ok()??.dyn_into().ok()?;
        context.clear_rect(0.0, 0.0, f64::from(width), f64::from(height));
    } else {
        canvas.set_width(width);
        canvas.set_height(height);
    }
    CanvasBackend::with_canvas_object(canvas.clone())
}

/// The lettering alone. It has no title: the canvas below it says what the plot shows.
fn lettering(plot: &TorqueTurnPlot, frame: &Frame) -> Scene {
    let marks = frame.labels(plot).into_iter().map(|label| {
        let class = match label.kind {
            LabelKind::Here => "t halo",
            LabelKind::Name | LabelKind::Moving => "t s halo",
            LabelKind::Axis | LabelKind::Tick => "t s soft",
        };
        Mark::text(label.at, label.text, class, label.anchor)
    });
    Scene {
        id: String::new(),
        width: frame.width,
        height: frame.height,
        title: String::new(),
        description: String::new(),
        marks: marks.collect(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use calc_core::quantity::UnitSystem;
    use drawing::opening::{Bench, Stand};
    use wasm_bindgen_test::wasm_bindgen_test;

    #[wasm_bindgen_test(unsupported = test)]
    fn the_ground_and_its_lettering_hold_still_while_the_wrench_turns() {
        let bench = Bench::new().unwrap();
        let at = |turn| bench.plot(Stand::Bare, turn, UnitSystem::Us);
        assert_eq!(still(at(10.0)), still(at(400.0)));
        let words = |turn| {
            let plot = at(turn);
            lettering(&plot, &Frame::new(&plot, 480.0, 400.0)).marks
        };
        let (before, now) = (words(10.0), words(400.0));
        let fixed = before.iter().zip(&now).filter(|(was, is)| was == is);
        // Only what stands at the wrench is set anew.
        assert_eq!(fixed.count() + 1, before.len());
        assert_eq!(before.len(), now.len());
    }
}

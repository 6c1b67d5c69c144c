//! Moving a control by dragging what it moves on the drawing.

use calc_core::quantity::parse_number;
use drawing::lesson::Handle;
use leptos::wasm_bindgen::JsCast;
use leptos::web_sys::{Element, PointerEvent};

use super::page::{all, closest, first};
use super::stage::Stage;

/// How near a handle a finger has to come, in CSS pixels.
const REACH: f64 = 26.0;

/// A drag under way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Drag {
    handle: Handle,
    /// Where it began, in drawing units.
    from: (f64, f64),
    /// Where the control stood.
    value: f64,
}

impl Drag {
    /// Where the control stands when the pointer is at a place on the drawing.
    fn value_at(&self, to: (f64, f64)) -> f64 {
        let along = self.handle.along;
        let square = along.0 * along.0 + along.1 * along.1;
        let way = (to.0 - self.from.0) * along.0 + (to.1 - self.from.1) * along.1;
        self.value + way / square.max(1e-9)
    }
}

impl Stage {
    /// Begins a drag when the pointer goes down near a handle.
    pub(super) fn grab(&self, event: &PointerEvent) {
        let Some(place) = self.drawn_under(event) else {
            return;
        };
        if first(self.section(), ".controls[disabled]").is_some() {
            return;
        }
        let Some((at, scale)) = on_drawing(&place, event) else {
            return;
        };
        let reach = REACH / scale;
        let nearest = self
            .handles()
            .into_iter()
            .map(|h| (h, (h.at.0 - at.0).hypot(h.at.1 - at.1)))
            .filter(|(_, far)| *far <= reach)
            .min_by(|a, b| a.1.total_cmp(&b.1));
        if let Some((handle, _)) = nearest {
            place.set_pointer_capture(event.pointer_id()).ok();
            event.prevent_default();
            let value = self.number(handle.control);
            self.set_drag(Some(Drag {
                handle,
                from: at,
                value,
            }));
        }
    }

    /// Which control a drag moves, and where to.
    pub(super) fn dragged(&self, event: &PointerEvent) -> Option<(usize, f64)> {
        let drag = self.drag()?;
        let place = self.drawn_under(event)?;
        let (at, _) = on_drawing(&place, event)?;
        // A hand holds what it drags no steadier than the slider's steps.
        let control = drag.handle.control;
        let value = drag.value_at(at);
        let range = self.model().controls().get(control)?.range(self.units());
        Some((control, range.map_or(value, |range| range.nearest(value))))
    }

    /// Ends a drag.
    pub(super) fn let_go(&self) {
        self.set_drag(None);
    }

    fn drawn_under(&self, event: &PointerEvent) -> Option<Element> {
        let target: Element = event.target()?.dyn_into().ok()?;
        closest(&target, "[data-at=drawing]")
    }

    /// Lights up what belongs to the part that is pointed at, on drawing and plot.
    pub(super) fn point_at(&self, target: &Element) {
        let Some(figure) = closest(target, ".live-figure") else {
            return;
        };
        let part = std::iter::successors(Some(target.clone()), |e| e.parent_element())
            .take(4)
            .find_map(|element| {
                let classes = element.get_attribute("class")?;
                classes
                    .split_whitespace()
                    .find(|class| class.starts_with("p-"))
                    .map(String::from)
            });
        for lit in all(&figure, ".hot") {
            lit.class_list().remove_1("hot").ok();
        }
        if let Some(part) = part {
            for same in all(&figure, &format!(".{part}")) {
                same.class_list().add_1("hot").ok();
            }
        }
    }
}

/// Where on a drawing a pointer is, in drawing units, and how many CSS pixels one is.
fn on_drawing(place: &Element, event: &PointerEvent) -> Option<((f64, f64), f64)> {
    let svg = first(place, "svg")?;
    let bounds = svg.get_bounding_client_rect();
    let view_box = svg.get_attribute("viewBox")?;
    let mut sizes = view_box.split(' ').skip(2).map(parse_number);
    let (width, height) = (sizes.next()??, sizes.next()??);
    // A drawing that is held to a height stands in the middle of its box.
    let scale = (bounds.width() / width).min(bounds.height() / height);
    (scale > 0.0).then(|| {
        let left = bounds.left() + (bounds.width() - width * scale) / 2.0;
        let top = bounds.top() + (bounds.height() - height * scale) / 2.0;
        let x = (f64::from(event.client_x()) - left) / scale;
        let y = (f64::from(event.client_y()) - top) / scale;
        ((x, y), scale)
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use wasm_bindgen_test::wasm_bindgen_test;

    #[wasm_bindgen_test(unsupported = test)]
    fn a_drag_moves_its_control_along_its_way_only() {
        let drag = Drag {
            handle: Handle {
                control: 1,
                at: (100.0, 50.0),
                along: (4.0, 0.0),
            },
            from: (100.0, 50.0),
            value: 3.0,
        };
        assert!((drag.value_at((120.0, 90.0)) - 8.0).abs() < 1e-12);
        assert!((drag.value_at((100.0, 0.0)) - 3.0).abs() < 1e-12);
    }
}

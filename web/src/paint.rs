//! Turns a drawing's marks into nodes of the page.
//!
//! The content policy refuses style attributes and the project refuses HTML from text, so every mark
//! becomes an element with a class. Marks are many and plain; they are made by direct document calls,
//! which costs far less code than a view of each kind.

use drawing::pen::coordinate;
use drawing::{Anchor, Hatch, Mark, Scene};
use leptos::html::Div;
use leptos::prelude::*;
use leptos::web_sys::{Document, Element};

use crate::el::{El, classed};

const SVG: &str = "http://www.w3.org/2000/svg";

/// A drawing that follows its scene.
#[must_use]
pub fn drawing(scene: Signal<Scene>) -> El {
    let place = NodeRef::<Div>::new();
    draw_over(place, move || Some(scene.get()));
    classed("div", "drawn").node_ref(place)
}

/// Draws over what an element shows and follows the scene; boxed, so that all share one type.
pub fn draw_over(place: NodeRef<Div>, scene: impl Fn() -> Option<Scene> + 'static) {
    fn boxed(place: NodeRef<Div>, scene: Box<dyn Fn() -> Option<Scene>>) {
        Effect::new(move |before: Option<Option<Scene>>| {
            let (place, now) = (place.get()?, scene()?);
            lay_over(&place, before.flatten().as_ref(), &now);
            Some(now)
        });
    }
    boxed(place, Box::new(scene));
}

/// Puts a drawing into an element in place of what is there.
pub fn paint(place: &Element, scene: &Scene) {
    place.set_text_content(None);
    draw(place, scene);
}

/// Brings a drawing up to date that shows `before`: only marks that differ are made anew, which is
/// what lets a figure follow a finger.
pub fn repaint(place: &Element, before: &Scene, now: &Scene) {
    if refresh(place, before, now).is_none() {
        paint(place, now);
    }
}

/// Leaves everything that stands there but the drawing that it laid over it before.
fn lay_over(place: &Element, before: Option<&Scene>, now: &Scene) {
    if before.is_some_and(|before| refresh(place, before, now).is_some()) {
        return;
    }
    let last = place.last_element_child();
    if let Some(svg) = last.filter(|last| last.tag_name() == "svg") {
        svg.remove();
    }
    draw(place, now);
}

fn draw(place: &Element, scene: &Scene) {
    let svg = place
        .owner_document()
        .and_then(|document| Pen { document, scene }.picture());
    if let Some(svg) = svg {
        place.append_child(&svg).ok();
    }
}

/// `None` where the two differ by more than single marks.
fn refresh(place: &Element, before: &Scene, now: &Scene) -> Option<()> {
    let same = before.id == now.id
        && before.title == now.title
        && before.view_box() == now.view_box()
        && before.hatches() == now.hatches()
        && before.marks.len() == now.marks.len();
    // The last, because it may lie over something else.
    let svg = place.last_element_child().filter(|_| same)?;
    let pen = Pen {
        document: place.owner_document()?,
        scene: now,
    };
    // Marks come last; title, description and patterns stand before them.
    let mut next = svg.last_element_child();
    for (was, is) in before.marks.iter().zip(&now.marks).rev() {
        let old = next?;
        next = old.previous_element_sibling();
        if was != is {
            let new = pen.mark(is)?;
            svg.replace_child(&new, &old).ok()?;
        }
    }
    if before.description != now.description {
        let told = svg.query_selector("desc").ok()??;
        told.set_text_content(Some(&now.description));
    }
    Some(())
}

struct Pen<'a> {
    document: Document,
    scene: &'a Scene,
}

impl Pen<'_> {
    fn element(&self, name: &str, attributes: &[(&str, &str)]) -> Option<Element> {
        let element = self.document.create_element_ns(Some(SVG), name).ok()?;
        for (name, value) in attributes {
            if !value.is_empty() {
                element.set_attribute(name, value).ok()?;
            }
        }
        Some(element)
    }

    fn worded(&self, name: &str, id: &str, words: &str) -> Option<Element> {
        let element = self.element(name, &[("id", id)])?;
        element.set_text_content(Some(words));
        Some(element)
    }

    fn picture(&self) -> Option<Element> {
        let Scene {
            id,
            title,
            description,
            marks,
            ..
        } = self.scene;
        let svg = self.element(
            "svg",
            &[("class", "drawing"), ("viewBox", &self.scene.view_box())],
        )?;
        if title.is_empty() {
            // It letters what is told elsewhere.
            svg.set_attribute("aria-hidden", "true").ok()?;
        } else {
            let (named, told) = (format!("{id}-title"), format!("{id}-desc"));
            svg.set_attribute("role", "img").ok()?;
            svg.set_attribute("aria-labelledby", &format!("{named} {told}"))
                .ok()?;
            for told in [
                self.worded("title", &named, title)?,
                self.worded("desc", &told, description)?,
            ] {
                svg.append_child(&told).ok()?;
            }
        }
        let hatches = self.scene.hatches();
        if !hatches.is_empty() {
            let defs = self.element("defs", &[])?;
            for hatch in hatches {
                let pattern = self.pattern(hatch)?;
                defs.append_child(&pattern).ok()?;
            }
            svg.append_child(&defs).ok()?;
        }
        self.put(marks, &svg);
        Some(svg)
    }

    fn pattern(&self, hatch: Hatch) -> Option<Element> {
        let tile = hatch.tile().to_string();
        let pattern = self.element(
            "pattern",
            &[
                ("id", &self.scene.hatch_id(hatch)),
                ("width", &tile),
                ("height", &tile),
                ("patternUnits", "userSpaceOnUse"),
                ("patternTransform", &format!("rotate({})", hatch.turn())),
            ],
        )?;
        let ground = self.element(
            "rect",
            &[("class", "part"), ("width", &tile), ("height", &tile)],
        )?;
        let lines = self.element("path", &[("class", "hatching"), ("d", hatch.lines())])?;
        pattern.append_child(&ground).ok()?;
        pattern.append_child(&lines).ok()?;
        Some(pattern)
    }

    fn put(&self, marks: &[Mark], into: &Element) {
        for mark in marks {
            if let Some(element) = self.mark(mark) {
                into.append_child(&element).ok();
            }
        }
    }

    fn fill(&self, hatch: Option<Hatch>) -> String {
        hatch.map_or_else(String::new, |h| format!("url(#{})", self.scene.hatch_id(h)))
    }

    fn mark(&self, mark: &Mark) -> Option<Element> {
        let n = coordinate;
        match mark {
            Mark::Path { d, class, hatch } => self.element(
                "path",
                &[("class", class), ("fill", &self.fill(*hatch)), ("d", d)],
            ),
            Mark::Line { from, to, class } => self.element(
                "line",
                &[
                    ("class", class),
                    ("x1", &n(from.0)),
                    ("y1", &n(from.1)),
                    ("x2", &n(to.0)),
                    ("y2", &n(to.1)),
                ],
            ),
            Mark::Rect {
                x,
                y,
                width,
                height,
                class,
                hatch,
            } => self.element(
                "rect",
                &[
                    ("class", class),
                    ("fill", &self.fill(*hatch)),
                    ("x", &n(*x)),
                    ("y", &n(*y)),
                    ("width", &n(*width)),
                    ("height", &n(*height)),
                ],
            ),
            Mark::Circle { centre, r, class } => self.element(
                "circle",
                &[
                    ("class", class),
                    ("cx", &n(centre.0)),
                    ("cy", &n(centre.1)),
                    ("r", &n(*r)),
                ],
            ),
            Mark::Text {
                at,
                text,
                class,
                anchor,
                turn,
            } => {
                let anchor = match anchor {
                    Anchor::Start => "",
                    Anchor::Middle => "middle",
                    Anchor::End => "end",
                };
                let turned = if *turn == 0.0 {
                    String::new()
                } else {
                    format!("rotate({} {} {})", n(*turn), n(at.0), n(at.1))
                };
                let element = self.element(
                    "text",
                    &[
                        ("class", class),
                        ("text-anchor", anchor),
                        ("transform", &turned),
                        ("x", &n(at.0)),
                        ("y", &n(at.1)),
                    ],
                )?;
                element.set_text_content(Some(text));
                Some(element)
            }
            Mark::Group {
                placed,
                class,
                marks,
            } => {
                let group =
                    self.element("g", &[("class", class), ("transform", &placed.attribute())])?;
                self.put(marks, &group);
                Some(group)
            }
        }
    }
}

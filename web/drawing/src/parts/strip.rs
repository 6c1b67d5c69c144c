//! The title strip under a drawing.

use super::force::ForceScale;
use crate::scene::{Anchor, Draw, Mark, text_width};

/// One field of the strip.
#[derive(Clone, Debug, PartialEq)]
pub struct StripField {
    /// What it is.
    pub name: &'static str,
    /// What it says.
    pub text: String,
    /// Length of the bar that stands in it, so that the scale holds at any zoom; 0 for none.
    pub bar: f64,
}

impl StripField {
    /// A field with a text.
    #[must_use]
    pub fn new(name: &'static str, text: impl Into<String>) -> Self {
        Self {
            name,
            text: text.into(),
            bar: 0.0,
        }
    }

    /// The force scale.
    #[must_use]
    pub fn scale(scale: ForceScale) -> Self {
        Self {
            name: "force",
            text: scale.text(),
            bar: scale.bar(),
        }
    }

    fn width(&self) -> f64 {
        // Figures and units are wider than the average letter.
        let (bar, more) = if self.bar > 0.0 {
            (self.bar + 8.0, 8.0)
        } else {
            (0.0, 0.0)
        };
        let text = text_width(&self.text, "t s") + more;
        (text_width(self.name, "t s") + bar).max(text) + 11.0
    }
}

/// Fields in order, the first takes what is left.
#[derive(Clone, Debug, PartialEq)]
pub struct Strip {
    /// The fields.
    pub fields: Vec<StripField>,
}

/// Height of one row.
const ROW: f64 = 38.0;

impl Strip {
    /// Whether all fields fit into one row of a drawing this wide.
    fn one_row(&self, width: f64) -> bool {
        // The first field holds prose, whose letters run narrower than the figures in the others.
        let share = [0.9].into_iter().chain(std::iter::repeat(1.0));
        self.fields
            .iter()
            .zip(share)
            .map(|(f, s)| s * f.width())
            .sum::<f64>()
            <= width
    }

    /// Height that the strip needs in a drawing this wide.
    #[must_use]
    pub fn height(&self, width: f64) -> f64 {
        if self.one_row(width) { ROW } else { 2.0 * ROW }
    }

    /// The marks, from height `top` down.
    #[must_use]
    pub fn marks(&self, width: f64, top: f64) -> Vec<Mark> {
        let mut marks = vec![Mark::line((0.0, top), (width, top), "frame")];
        let Some((first, rest)) = self.fields.split_first() else {
            return marks;
        };
        if self.one_row(width) {
            let mut right = width;
            for field in rest.iter().rev() {
                let left = right - field.width();
                marks.line((left, top), (left, top + ROW), "hair");
                marks.all(cell(field, left, top));
                right = left;
            }
            marks.all(cell(first, 0.0, top));
        } else {
            marks.all(cell(first, 0.0, top));
            marks.line((0.0, top + ROW), (width, top + ROW), "hair");
            let needed: f64 = rest.iter().map(StripField::width).sum();
            // Cells share what is left over, or the lack of it, in proportion.
            let stretch = width / needed.max(1.0);
            let mut left = 0.0;
            for (i, field) in rest.iter().enumerate() {
                if i > 0 {
                    marks.line((left, top + ROW), (left, top + 2.0 * ROW), "hair");
                }
                marks.all(cell(field, left, top + ROW));
                left += field.width() * stretch;
            }
        }
        marks
    }
}

fn cell(field: &StripField, left: f64, top: f64) -> Vec<Mark> {
    let x = left + 6.0;
    let mut marks = vec![
        Mark::text((x, top + 15.0), field.name, "t s soft", Anchor::Start),
        Mark::text((x, top + 31.0), &field.text, "t s", Anchor::Start),
    ];
    if field.bar > 0.0 {
        let from = x + text_width(field.name, "t s") + 4.0;
        marks.extend(bar((from, from + field.bar), top + 11.0));
    }
    marks
}

/// A bar between two ends.
fn bar((from, to): (f64, f64), y: f64) -> [Mark; 3] {
    [(from, from, y), (to, to, y), (from, to, 0.0)].map(|(a, b, tick)| {
        if tick > 0.0 {
            Mark::line((a, y - 3.5), (b, y + 3.5), "thin")
        } else {
            Mark::line((a, y), (b, y), "thin")
        }
    })
}

/// The force scale on the drawing itself: lettering that ends at `right`, its bar over it.
#[must_use]
pub fn scale_bar(right: f64, bottom: f64, scale: ForceScale) -> Vec<Mark> {
    let mut marks = bar((right - scale.bar(), right), bottom - 18.0).to_vec();
    marks.text((right, bottom), scale.text(), "t s", Anchor::End);
    marks
}

//! The title strip under a drawing.

use super::force::UNITS_PER_10_MM;
use crate::scene::{Anchor, Mark, text_width};

/// One field of the strip.
#[derive(Clone, Debug, PartialEq)]
pub struct StripField {
    /// What it is.
    pub name: &'static str,
    /// What it says.
    pub text: String,
    /// Whether a bar of 10 mm stands in it, so that the scale holds at any zoom.
    pub bar: bool,
}

impl StripField {
    /// A field with a text.
    #[must_use]
    pub fn new(name: &'static str, text: impl Into<String>) -> Self {
        Self {
            name,
            text: text.into(),
            bar: false,
        }
    }

    /// The force scale.
    #[must_use]
    pub fn scale(text: impl Into<String>) -> Self {
        Self {
            name: "force",
            text: text.into(),
            bar: true,
        }
    }

    fn width(&self) -> f64 {
        let bar = if self.bar { UNITS_PER_10_MM + 8.0 } else { 0.0 };
        (text_width(self.name, "t s") + bar).max(text_width(&self.text, "t s")) + 16.0
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
        self.fields.iter().map(StripField::width).sum::<f64>() <= width
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
                marks.push(Mark::line((left, top), (left, top + ROW), "hair"));
                marks.extend(cell(field, left, top));
                right = left;
            }
            marks.extend(cell(first, 0.0, top));
        } else {
            marks.extend(cell(first, 0.0, top));
            marks.push(Mark::line((0.0, top + ROW), (width, top + ROW), "hair"));
            let needed: f64 = rest.iter().map(StripField::width).sum();
            // Cells share what is left over, or the lack of it, in proportion.
            let stretch = width / needed.max(1.0);
            let mut left = 0.0;
            for (i, field) in rest.iter().enumerate() {
                if i > 0 {
                    marks.push(Mark::line(
                        (left, top + ROW),
                        (left, top + 2.0 * ROW),
                        "hair",
                    ));
                }
                marks.extend(cell(field, left, top + ROW));
                left += field.width() * stretch;
            }
        }
        marks
    }
}

fn cell(field: &StripField, left: f64, top: f64) -> Vec<Mark> {
    let x = left + 8.0;
    let mut marks = vec![
        Mark::text((x, top + 15.0), field.name, "t s soft", Anchor::Start),
        Mark::text((x, top + 31.0), &field.text, "t s", Anchor::Start),
    ];
    if field.bar {
        let from = x + text_width(field.name, "t s") + 4.0;
        let (to, y) = (from + UNITS_PER_10_MM, top + 11.0);
        marks.push(Mark::line((from, y), (to, y), "thin"));
        marks.push(Mark::line((from, y - 3.5), (from, y + 3.5), "thin"));
        marks.push(Mark::line((to, y - 3.5), (to, y + 3.5), "thin"));
    }
    marks
}

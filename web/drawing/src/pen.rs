//! Writes path data.

use std::fmt::Write as _;

/// Builds the `d` of a path, point by point.
#[derive(Clone, Debug, Default)]
pub struct Pen {
    d: String,
}

/// A coordinate as short text, tenths at most, a quarter of a pixel in a hall; what is not a number becomes 0 so that a bad input
/// can never break a whole path.
#[must_use]
pub fn coordinate(value: f64) -> String {
    let value = if value.is_finite() {
        (value * 10.0).round() / 10.0
    } else {
        0.0
    };
    // Negative zero would print as "-0".
    format!("{}", if value == 0.0 { 0.0 } else { value })
}

impl Pen {
    /// Starts at a point.
    #[must_use]
    pub fn at(x: f64, y: f64) -> Self {
        Self::default().go(x, y)
    }

    fn word(mut self, letter: char, points: &[(f64, f64)]) -> Self {
        self.d.push(letter);
        for (i, (x, y)) in points.iter().enumerate() {
            let gap = if i == 0 { "" } else { " " };
            // Writing to a string cannot fail.
            let _ = write!(self.d, "{gap}{} {}", coordinate(*x), coordinate(*y));
        }
        self
    }

    /// Lifts the pen and goes to a point.
    #[must_use]
    pub fn go(self, x: f64, y: f64) -> Self {
        self.word('M', &[(x, y)])
    }

    /// Straight to a point.
    #[must_use]
    pub fn to(self, x: f64, y: f64) -> Self {
        self.word('L', &[(x, y)])
    }

    /// Cubic curve to `end` with two control points.
    #[must_use]
    pub fn curve(self, a: (f64, f64), b: (f64, f64), end: (f64, f64)) -> Self {
        self.word('C', &[a, b, end])
    }

    /// Quadratic curve to `end` with one control point.
    #[must_use]
    pub fn bow(self, a: (f64, f64), end: (f64, f64)) -> Self {
        self.word('Q', &[a, end])
    }

    /// Circular arc of radius `r` to a point, at most half a circle.
    #[must_use]
    pub fn arc(mut self, r: f64, clockwise: bool, x: f64, y: f64) -> Self {
        let (r, sweep) = (coordinate(r.max(0.0)), u8::from(clockwise));
        let _ = write!(
            self.d,
            "A{r} {r} 0 0 {sweep} {} {}",
            coordinate(x),
            coordinate(y)
        );
        self
    }

    /// Closes the outline.
    #[must_use]
    pub fn close(mut self) -> Self {
        self.d.push('Z');
        self
    }

    /// The path data.
    #[must_use]
    pub fn d(self) -> String {
        self.d
    }
}

/// Path data of a polyline.
#[must_use]
pub fn polyline(points: impl IntoIterator<Item = (f64, f64)>) -> String {
    let mut points = points.into_iter();
    let Some((x, y)) = points.next() else {
        return String::new();
    };
    points.fold(Pen::at(x, y), |pen, (x, y)| pen.to(x, y)).d()
}

//! Outlines of members about the bolt.

use crate::pen::{Pen, polyline};
use calc_core::scenario::{MemberKind, Mount};

/// Which outline.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shape {
    /// The bolt goes through a flange; the web stands at the left, the other flange lies below.
    ChannelFlange,
    /// The bolt goes through the web, which lies level; both flanges stand below.
    ChannelWeb,
    /// The bolt goes through one leg; the other stands at the left.
    Angle,
    /// The bolt goes through the middle of a round tube.
    Round,
}

impl Shape {
    /// The outline of a kind of member that the section of the rectangular tube does not show.
    #[must_use]
    pub const fn of(kind: MemberKind, mount: Mount) -> Option<Self> {
        match (kind, mount) {
            (MemberKind::RectangularTube | MemberKind::SolidBar, _) => None,
            (MemberKind::RoundTube, _) => Some(Self::Round),
            (MemberKind::Angle, _) => Some(Self::Angle),
            (MemberKind::Channel, Mount::FromTop) => Some(Self::ChannelFlange),
            (MemberKind::Channel, Mount::ThroughSides) => Some(Self::ChannelWeb),
        }
    }
}

/// A member in section, in mm; the bolt stands at 0, heights count downwards from its outer face.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Profile {
    /// Which outline.
    pub shape: Shape,
    /// Width of the part with the bolt; the outside diameter of a round tube.
    pub width_mm: f64,
    /// Depth along the bolt.
    pub depth_mm: f64,
    /// Thickness at the bolt.
    pub wall_mm: f64,
    /// Thickness of the part without the bolt.
    pub upright_mm: f64,
    /// Left edge of the part with the bolt to the middle of the bolt.
    pub gauge_mm: f64,
    /// Slope of the inside of a flange.
    pub slope: f64,
}

/// Where a drawing puts a point of the part.
pub(crate) type Map<'a> = &'a dyn Fn(f64, f64) -> (f64, f64);

impl Profile {
    /// Left and right edge of the part with the bolt.
    #[must_use]
    pub fn edges(&self) -> (f64, f64) {
        (-self.gauge_mm, self.width_mm - self.gauge_mm)
    }

    /// Thickness of the part with the bolt at a distance to the right of the bolt: thicker towards the
    /// web where the inside slopes.
    #[must_use]
    pub fn thickness(&self, x: f64) -> f64 {
        (self.wall_mm - self.slope * x).max(0.3 * self.wall_mm)
    }

    /// How far the wall of a round tube has dropped away at a distance from the bolt.
    #[must_use]
    pub fn drop(&self, x: f64) -> f64 {
        let r = self.width_mm / 2.0;
        r - (r * r - x * x).max(0.0).sqrt()
    }

    /// Paths of the cut metal left and right of a hole, its half given.
    pub(crate) fn paths(&self, hole: f64, map: Map<'_>) -> Vec<String> {
        let closed = |points: &[(f64, f64)]| polyline(points.iter().map(|&(x, y)| map(x, y))) + "Z";
        let ((l, r), t, u, h) = (self.edges(), self.wall_mm, self.upright_mm, self.depth_mm);
        match self.shape {
            Shape::Round => [-1.0, 1.0]
                .map(|side| self.half_round(side, hole, map))
                .to_vec(),
            Shape::ChannelFlange => {
                let (root, hole_left) = (self.thickness(l + u), self.thickness(-hole));
                let tip = self.thickness(r);
                vec![
                    closed(&[
                        (l, 0.0),
                        (-hole, 0.0),
                        (-hole, hole_left),
                        (l + u, root),
                        (l + u, h - root),
                        (r, h - tip),
                        (r, h),
                        (l, h),
                    ]),
                    closed(&[
                        (hole, 0.0),
                        (r, 0.0),
                        (r, tip),
                        (hole, self.thickness(hole)),
                    ]),
                ]
            }
            Shape::Angle => vec![
                closed(&[
                    (l, 0.0),
                    (-hole, 0.0),
                    (-hole, t),
                    (l + u, t),
                    (l + u, h),
                    (l, h),
                ]),
                closed(&[(hole, 0.0), (r, 0.0), (r, t), (hole, t)]),
            ],
            Shape::ChannelWeb => vec![
                closed(&[
                    (l, 0.0),
                    (-hole, 0.0),
                    (-hole, t),
                    (l + u, t),
                    (l + u, h),
                    (l, h),
                ]),
                closed(&[
                    (hole, 0.0),
                    (r, 0.0),
                    (r, h),
                    (r - u, h),
                    (r - u, t),
                    (hole, t),
                ]),
            ],
        }
    }

    /// One half of a round tube: outside from the upper hole to the lower one, back inside.
    fn half_round(&self, side: f64, hole: f64, map: Map<'_>) -> String {
        let outer = self.width_mm / 2.0;
        let inner = (outer - self.wall_mm).max(0.1);
        let hole = hole.min(0.9 * inner);
        let up = |r: f64| (r * r - hole * hole).max(0.0).sqrt();
        let at = |x: f64, y: f64| map(side * x, y);
        let (x, y) = at(hole, outer - up(outer));
        let scale = {
            let ((a, _), (b, _)) = (map(0.0, 0.0), map(1.0, 0.0));
            (b - a).abs()
        };
        let turn = side > 0.0;
        let arc = |pen: Pen, r: f64, clockwise: bool, (x, y): (f64, f64)| {
            pen.arc(r * scale, clockwise == turn, x, y)
        };
        let mut pen = Pen::at(x, y);
        pen = arc(pen, outer, true, at(outer, outer));
        pen = arc(pen, outer, true, at(hole, outer + up(outer)));
        let (x, y) = at(hole, outer + up(inner));
        pen = pen.to(x, y);
        pen = arc(pen, inner, false, at(inner, outer));
        pen = arc(pen, inner, false, at(hole, outer - up(inner)));
        pen.close().d()
    }
}

//! One load case: forces and moments at a point beside the bolt group.

use crate::catalog::{CaseName, LoadKind};
use crate::cite::{Cite, Flag, Source};
use crate::mechanics::bolt_group::GroupLoad;
use crate::scenario::Mount;

/// Where the reader's own figures enter.
pub(super) const ROAD: Cite = Cite::new(
    Source::TradePractice,
    "static road loads with a bump factor",
    Flag::Practice,
);

/// Forces at a point, N and N·m: along the tube (forward positive), up, to the left.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct LoadCase {
    pub(crate) case: CaseName,
    pub(crate) kind: LoadKind,
    pub(crate) along: f64,
    pub(crate) up: f64,
    pub(crate) side: f64,
    /// Moments about the tube, the sideways line and the upright line.
    pub(crate) about: [f64; 3],
    /// The point ahead of the group's middle and below it, m.
    pub(crate) ahead: f64,
    pub(crate) below: f64,
    /// Whether an upward force opens the joint where the bolts stand upright: the fitting lies on top.
    pub(crate) on_top: bool,
    /// The largest component by another reading of the rule, N.
    pub(crate) other_reading: Option<f64>,
    pub(crate) cite: Cite,
}

impl LoadCase {
    /// A case without components at a point.
    pub(super) const fn at(case: CaseName, kind: LoadKind, (ahead, below): (f64, f64)) -> Self {
        Self {
            case,
            kind,
            along: 0.0,
            up: 0.0,
            side: 0.0,
            about: [0.0; 3],
            ahead,
            below,
            on_top: true,
            other_reading: None,
            cite: ROAD,
        }
    }

    /// Load on the group about its middle.
    ///
    /// With `x` forward, `y` to the left and `z` up, and the point at `(a, c, −b)`:
    ///
    /// ```text
    /// M_x = c·F_z + b·F_y + m_x,   M_y = −b·F_x − a·F_z + m_y,   M_z = a·F_y − c·F_x + m_z
    /// ```
    ///
    /// `aside` is `c`, m: how far to the left of the faying plane, or from the top of the bolts' middle, the
    /// line of the load lies.
    pub(super) fn on_group(&self, mount: Mount, aside: f64) -> GroupLoad {
        let [mx, my, mz] = self.about;
        let (a, b) = (self.ahead, self.below);
        let about_along = aside * self.up + b * self.side + mx;
        let about_side = my - b * self.along - a * self.up;
        let about_up = a * self.side - aside * self.along + mz;
        match mount {
            Mount::ThroughSides => GroupLoad {
                along: self.along,
                across: self.up,
                twist: -about_side,
                // A side force presses one cheek on and pulls the other off.
                pull: self.side.abs(),
                pitch: about_up,
                roll: -about_along,
            },
            Mount::FromTop => {
                let opens = if self.on_top { 1.0 } else { -1.0 };
                GroupLoad {
                    along: self.along,
                    across: self.side,
                    twist: about_up,
                    pull: opens * self.up,
                    pitch: -opens * about_side,
                    roll: opens * about_along,
                }
            }
        }
    }
}

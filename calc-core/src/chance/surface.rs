//! The support, fast: its curve on a net of walls and yield strengths, straight lines between.

use crate::evaluate::stand::Stand;
use crate::mechanics::sleeve::SleeveCurve;
use crate::mechanics::solve::rising_root;
use crate::quantity::{mm, mpa};
use crate::report::Strength;
use crate::scenario::Scenario;

/// Nodes of the net: walls, yield strengths, approaches.
const WALLS: usize = 5;
const YIELDS: usize = 17;
const STATES: usize = 97;

/// How a support answers a wanted clamp.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Seen {
    /// Clamp that it takes, at most the wanted one, N.
    pub(super) clamp: f64,
    /// Whether it takes the wanted clamp within the checked range.
    pub(super) takes_it: bool,
    /// Approach of the washers, m.
    pub(super) approach: f64,
    /// Dent of the face that gives more, under load, m.
    pub(super) dent: f64,
    /// What stays of it, m.
    pub(super) left: f64,
    /// Clamp that it is trusted with, likely strength, N.
    pub(super) limit: f64,
    /// Stiffness against small changes, N/m.
    pub(super) spring: f64,
}

/// The support of a scenario with another wall and yield strength.
pub(super) fn stand(s: &Scenario, wall: f64, yield_: f64) -> Stand {
    let mut s = s.clone();
    s.tube.wall = mm(wall * 1e3);
    s.tube.design_wall = s.tube.wall;
    s.tube.yield_least = mpa(yield_ * 1e-6);
    s.tube.yield_likely = s.tube.yield_least;
    Stand::new(&s, Strength::Likely)
}

/// The exact answer, for checking the fast one.
#[cfg(test)]
pub(super) fn exact(stand: &Stand, wanted: f64) -> Seen {
    let end = stand.approach_end();
    let approach = stand.approach(wanted);
    let at = approach.unwrap_or(end);
    let [_, _, dent, left] = stand.faces_at(at).unwrap_or_default();
    Seen {
        clamp: stand.force(at).min(wanted),
        takes_it: approach.is_some(),
        approach: at,
        dent,
        left,
        limit: stand.limit(),
        spring: stand.spring_rate(at),
    }
}

/// State of the faces at one approach: force, spring rate, worst dent, worst lasting dent.
type State = [f64; 4];

/// Numbers of a node that do not depend on the approach: limit; stiffness, strength and gap of the
/// core; approach from the touching of the faces to the end of the checked range.
type Node = [f64; 5];

/// The net.
#[derive(Clone, Debug)]
pub(super) struct Surface {
    wall: Axis,
    yield_: Axis,
    states: Vec<[State; STATES]>,
    nodes: Vec<Node>,
    /// Approach at which the faces are first pressed.
    face_gap: f64,
    has_core: bool,
}

/// Evenly spaced nodes from `low` to `high`.
#[derive(Clone, Copy, Debug)]
struct Axis {
    low: f64,
    step: f64,
    nodes: usize,
}

impl Axis {
    fn new((low, high): (f64, f64), nodes: usize) -> Self {
        Self {
            low,
            step: (high - low) / (nodes - 1) as f64,
            nodes,
        }
    }

    fn at(&self, node: usize) -> f64 {
        self.low + self.step * node as f64
    }

    /// Node below a value, and how far towards the next one.
    fn find(&self, value: f64) -> (usize, f64) {
        if self.step <= 0.0 {
            return (0, 0.0);
        }
        let place = ((value - self.low) / self.step).clamp(0.0, (self.nodes - 1) as f64);
        #[allow(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "clamped to the nodes just before"
        )]
        let below = (place as usize).min(self.nodes - 2);
        (below, place - below as f64)
    }
}

/// Place of a state between the touching of the faces and the end of the range: dense at the start, where the curve bends.
fn share(state: usize) -> f64 {
    let x = state as f64 / (STATES - 1) as f64;
    x * x
}

/// The four nodes about a sample, with their weights.
struct Corners([(usize, f64); 4]);

impl Surface {
    /// Computes the net over the drawn range of walls and yield strengths.
    pub(super) fn new(s: &Scenario, walls: (f64, f64), yields: (f64, f64)) -> Self {
        let (wall, yield_) = (Axis::new(walls, WALLS), Axis::new(yields, YIELDS));
        let mut net = Self {
            wall,
            yield_,
            states: Vec::with_capacity(WALLS * YIELDS),
            nodes: Vec::with_capacity(WALLS * YIELDS),
            face_gap: 0.0,
            has_core: false,
        };
        for i in 0..WALLS {
            for j in 0..YIELDS {
                net.add(&stand(s, wall.at(i), yield_.at(j)));
            }
        }
        net
    }

    fn add(&mut self, stand: &Stand) {
        let faces = stand.sides().is_some();
        self.face_gap = stand.face_gap();
        let core = stand.core();
        self.has_core |= core.is_some();
        let reach = if faces {
            stand.approach_end() - self.face_gap
        } else {
            0.0
        };
        let mut states = [[0.0; 4]; STATES];
        if faces {
            for (i, state) in states.iter_mut().enumerate() {
                let x = self.face_gap + reach * share(i);
                *state = stand.faces_at(x).unwrap_or_default();
            }
        }
        self.states.push(states);
        let [stiffness, strength, gap] = core.map_or([0.0; 3], |c| c.parts_si());
        self.nodes
            .push([stand.limit(), stiffness, strength, gap, reach]);
    }

    fn corners(&self, wall: f64, yield_: f64) -> Corners {
        let ((i, u), (j, v)) = (self.wall.find(wall), self.yield_.find(yield_));
        let at = |i: usize, j: usize| i * YIELDS + j;
        Corners([
            (at(i, j), (1.0 - u) * (1.0 - v)),
            (at(i, j + 1), (1.0 - u) * v),
            (at(i + 1, j), u * (1.0 - v)),
            (at(i + 1, j + 1), u * v),
        ])
    }

    fn faces(&self, corners: &Corners, state: usize, which: usize) -> f64 {
        corners
            .0
            .iter()
            .map(|&(node, weight)| {
                self.states
                    .get(node)
                    .and_then(|states| states.get(state))
                    .and_then(|state| state.get(which))
                    .map_or(0.0, |value| weight * value)
            })
            .sum()
    }

    fn node(&self, corners: &Corners) -> Node {
        let mut mean = [0.0; 5];
        for &(node, weight) in &corners.0 {
            for (sum, value) in mean
                .iter_mut()
                .zip(self.nodes.get(node).copied().unwrap_or_default())
            {
                *sum += weight * value;
            }
        }
        mean
    }

    /// How the support with this wall and yield strength answers a wanted clamp.
    pub(super) fn see(&self, wall: f64, yield_: f64, wanted: f64) -> Seen {
        let corners = self.corners(wall, yield_);
        let [limit, stiffness, strength, gap, reach] = self.node(&corners);
        let core = SleeveCurve::of_si(stiffness, strength, gap);
        // Faces that are out of range on one side of a sample are not counted on at all.
        if corners
            .0
            .iter()
            .any(|&(node, _)| self.nodes.get(node).is_none_or(|[.., reach]| *reach <= 0.0))
        {
            let clamp = wanted.min(strength);
            let takes_it = wanted <= strength;
            let at = if takes_it {
                gap + clamp / stiffness
            } else {
                3.0 * core.yields_at_si()
            };
            return Seen {
                clamp,
                takes_it,
                approach: at,
                dent: 0.0,
                left: 0.0,
                limit,
                spring: stiffness.max(1.0),
            };
        }
        let pull = |x: f64| if self.has_core { core.force_si(x) } else { 0.0 };
        let place = |i: usize| self.face_gap + reach * share(i);
        let force = |i: usize| self.faces(&corners, i, 0) + pull(place(i));
        let last = STATES - 1;
        let most = force(last);
        let takes_it = most >= wanted;
        let clamp = wanted.min(most);
        // A sleeve that is too long takes it before the faces are touched.
        if clamp <= pull(self.face_gap) && self.face_gap > 0.0 {
            return Seen {
                clamp,
                takes_it,
                approach: gap + clamp / stiffness,
                dent: 0.0,
                left: 0.0,
                limit,
                spring: self.faces(&corners, 0, 1) + stiffness,
            };
        }
        // First state whose force is not below the clamp.
        let (mut below, mut above) = (0, last);
        while above - below > 1 {
            let middle = usize::midpoint(below, above);
            if force(middle) < clamp {
                below = middle;
            } else {
                above = middle;
            }
        }
        let (x0, x1) = (place(below), place(above));
        let (f0, f1) = (
            self.faces(&corners, below, 0),
            self.faces(&corners, above, 0),
        );
        let slope = (f1 - f0) / (x1 - x0);
        let approach = if self.has_core {
            rising_root(x0, x1, 1e-7, |x| f0 + slope * (x - x0) + pull(x) - clamp)
        } else {
            x0 + (clamp - f0) / slope.max(f64::MIN_POSITIVE)
        };
        let part = (approach - x0) / (x1 - x0);
        let mix = |which| {
            let (a, b) = (
                self.faces(&corners, below, which),
                self.faces(&corners, above, which),
            );
            a + part * (b - a)
        };
        let core_spring = if self.has_core {
            core.spring_rate_si(approach)
        } else {
            0.0
        };
        Seen {
            clamp,
            takes_it,
            approach,
            dent: mix(2),
            left: mix(3),
            limit,
            spring: (mix(1) + core_spring).max(1.0),
        }
    }
}

//! The support, fast: its curve on a net of walls and yield strengths, straight lines between.

use crate::mechanics::sleeve::SleeveCurve;
use crate::mechanics::solve::find_root;
use crate::quantity::{InUnits, Length, Stress};
use crate::report::Strength;
use crate::scenario::Scenario;
use crate::support::{self, SERVICE_SHARE, SupportModel};

/// Nodes of the net: walls, yield strengths of the tube and of what was put in, approaches.
const WALLS: usize = 5;
const YIELDS: usize = 17;
/// A core changes only the few numbers of a node, a plate the whole curve.
const ADDED_PART_CORE: usize = 17;
const ADDED_PART_PLATE: usize = 9;
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

/// The support of a scenario with another wall and yield strength, with another strength of what was put in, as a
/// factor, and with a piece that is so short, where that is drawn.
pub(super) fn support_of(
    s: &Scenario,
    wall: f64,
    yield_: f64,
    added_part: f64,
    short: Option<f64>,
) -> SupportModel {
    let mut s = s.clone();
    if let Some(short) = short {
        s.sleeve_short = Length::of_si(short);
    }
    s.tube.wall = Length::of_si(wall);
    s.tube.design_wall = s.tube.wall;
    s.tube.yield_least = Stress::of_si(yield_);
    s.tube.yield_likely = s.tube.yield_least;
    // What is drawn above the tensile strength takes that along.
    s.tube.ultimate_least = s.tube.ultimate_least.max(s.tube.yield_least);
    SupportModel::with_added_part(&s, Strength::Likely, added_part)
}

/// The exact answer, for checking the fast one.
#[cfg(test)]
pub(super) fn exact(model: &SupportModel, wanted: f64) -> Seen {
    let end = model.approach_end();
    let approach = model.approach(wanted);
    let at = approach.unwrap_or(end);
    let [_, _, dent, left] = model.faces_at(at).unwrap_or_default();
    Seen {
        clamp: model.force(at).min(wanted),
        takes_it: approach.is_some(),
        approach: at,
        dent,
        left,
        limit: model.limit(),
        spring: model.spring_rate(at),
    }
}

/// State of the faces at one approach: force, spring rate, worst dent, worst lasting dent.
type State = [f64; 4];

/// Numbers of a node that do not depend on the approach: limit; stiffness, strength and gap of the
/// core; approach from the touching of the faces to the end of the checked range; approach that is the limit of use.
type Node = [f64; 6];

/// The net.
#[derive(Clone, Debug)]
pub(super) struct Surface {
    wall: Axis,
    yield_: Axis,
    added_part: Axis,
    states: Vec<[State; STATES]>,
    /// Nodes that share the same states: all strengths of a core.
    share_states: usize,
    nodes: Vec<Node>,
    /// Approach at which the faces are first pressed.
    face_gap: f64,
    has_core: bool,
    /// Whether the fit of what stands between the walls is drawn, and whether that is a sleeve, which is squashed.
    fit: Option<bool>,
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
            step: if nodes > 1 {
                (high - low) / (nodes - 1) as f64
            } else {
                0.0
            },
            nodes,
        }
    }

    /// One node where nothing scatters.
    fn of((low, high): (f64, f64), nodes: usize) -> Self {
        Self::new((low, high), if high > low { nodes } else { 1 })
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
        let below = (place as usize).min(self.nodes.saturating_sub(2));
        (below, place - below as f64)
    }
}

/// Place of a state between the touching of the faces and the end of the range: dense at the start, where the curve bends.
fn share(state: usize) -> f64 {
    let x = state as f64 / (STATES - 1) as f64;
    x * x
}

/// The nodes about a sample, with their weights; the second half has none where nothing was put in.
struct Corners([(usize, f64); 8]);

impl Corners {
    fn all(&self) -> impl Iterator<Item = &(usize, f64)> {
        self.0.iter().filter(|(_, weight)| *weight > 0.0)
    }
}

impl Surface {
    /// Computes the net over the drawn ranges of wall, yield strength and strength put in, whose usual value is given.
    /// Where the fit is drawn, it is the net of a piece that fits exactly: a shorter one only comes later.
    pub(super) fn new(
        s: &Scenario,
        [walls, yields, added_part]: [(f64, f64); 3],
        likely: f64,
        fit_is_drawn: bool,
    ) -> Self {
        let (wall, yield_) = (Axis::new(walls, WALLS), Axis::new(yields, YIELDS));
        // A plate changes the whole curve, and so does a weld, which softens sleeve and face alike.
        let plate = support::of(s).bends_with_face() || support::is_welded(s);
        let added_part = Axis::of(
            added_part,
            if plate {
                ADDED_PART_PLATE
            } else {
                ADDED_PART_CORE
            },
        );
        let share_states = if plate { 1 } else { added_part.nodes };
        let nodes = WALLS * YIELDS * added_part.nodes;
        let mut net = Self {
            wall,
            yield_,
            added_part,
            states: Vec::with_capacity(nodes / share_states),
            share_states,
            nodes: Vec::with_capacity(nodes),
            face_gap: 0.0,
            has_core: false,
            fit: fit_is_drawn.then_some(s.support.ends_inside()),
        };
        for i in 0..WALLS {
            for j in 0..YIELDS {
                for k in 0..added_part.nodes {
                    net.add(&support_of(
                        s,
                        wall.at(i),
                        yield_.at(j),
                        added_part.at(k) / likely,
                        fit_is_drawn.then_some(0.0),
                    ));
                }
            }
        }
        net
    }

    fn add(&mut self, model: &SupportModel) {
        let faces = model.sides().is_some();
        self.face_gap = model.face_gap();
        let core = model.core();
        self.has_core |= core.is_some();
        let reach = if faces {
            model.approach_end() - self.face_gap
        } else {
            0.0
        };
        if self.nodes.len().is_multiple_of(self.share_states) {
            let mut states = [[0.0; 4]; STATES];
            if faces {
                for (i, state) in states.iter_mut().enumerate() {
                    let x = self.face_gap + reach * share(i);
                    *state = model.faces_at(x).unwrap_or_default();
                }
            }
            self.states.push(states);
        }
        let [stiffness, strength, gap] = core.map_or([0.0; 3], |c| c.parts_si());
        let limit = if self.fit.is_some() {
            model.limit_whatever_fit()
        } else {
            model.limit()
        };
        let service = model.approach_at_share(SERVICE_SHARE);
        self.nodes
            .push([limit, stiffness, strength, gap, reach, service]);
    }

    fn corners(&self, [wall, yield_, added_part]: [f64; 3]) -> Corners {
        let ((i, u), (j, v)) = (self.wall.find(wall), self.yield_.find(yield_));
        let (k, w) = self.added_part.find(added_part);
        let deep = self.added_part.nodes;
        let at = |i: usize, j: usize, k: usize| (i * YIELDS + j) * deep + k;
        let flat = [
            (i, j, (1.0 - u) * (1.0 - v)),
            (i, j + 1, (1.0 - u) * v),
            (i + 1, j, u * (1.0 - v)),
            (i + 1, j + 1, u * v),
        ];
        let mut corners = [(0, 0.0); 8];
        let (near, far) = corners.split_at_mut(4);
        for ((i, j, weight), (near, far)) in flat.into_iter().zip(near.iter_mut().zip(far)) {
            *near = (at(i, j, k), weight * (1.0 - w));
            *far = (at(i, j, k + 1), weight * w);
        }
        Corners(corners)
    }

    fn faces(&self, corners: &Corners, state: usize, which: usize) -> f64 {
        corners
            .all()
            .map(|&(node, weight)| {
                self.states
                    .get(node / self.share_states)
                    .and_then(|states| states.get(state))
                    .and_then(|state| state.get(which))
                    .map_or(0.0, |value| weight * value)
            })
            .sum()
    }

    fn node(&self, corners: &Corners) -> Node {
        let mut mean = [0.0; 6];
        for &(node, weight) in corners.all() {
            for (sum, value) in mean
                .iter_mut()
                .zip(self.nodes.get(node).copied().unwrap_or_default())
            {
                *sum += weight * value;
            }
        }
        mean
    }

    /// What the faces carry at an approach, between two of the states.
    fn faces_at(&self, corners: &Corners, reach: f64, approach: f64) -> f64 {
        let last = (STATES - 1) as f64;
        let place = ((approach - self.face_gap) / reach).clamp(0.0, 1.0).sqrt() * last;
        #[allow(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "clamped to the states just before"
        )]
        let below = (place as usize).min(STATES - 2);
        let [x0, x1] = [below, below + 1].map(|i| self.face_gap + reach * share(i));
        let [f0, f1] = [below, below + 1].map(|i| self.faces(corners, i, 0));
        f0 + (f1 - f0) * ((approach - x0) / (x1 - x0)).clamp(0.0, 1.0)
    }

    /// How the support with this wall, yield strength, strength put in and shortness answers a wanted clamp.
    pub(super) fn see(&self, place: [f64; 3], short: f64, wanted: f64) -> Seen {
        let corners = self.corners(place);
        let [mut limit, stiffness, strength, mut gap, reach, service] = self.node(&corners);
        if let Some(squashes) = self.fit {
            gap = short;
            let core = SleeveCurve::of_si(stiffness, strength, gap);
            let at = |x: f64| {
                let faces = if reach > 0.0 {
                    self.faces_at(&corners, reach, x)
                } else {
                    0.0
                };
                faces + core.force_si(x)
            };
            if reach > 0.0 {
                limit = limit.min(at(service));
            }
            if squashes {
                limit = limit.min(at(core.yields_at_si().min(self.face_gap + reach)));
            }
        }
        let core = SleeveCurve::of_si(stiffness, strength, gap);
        // Faces that are out of range on one side of a sample are not counted on at all.
        if corners.all().any(|&(node, _)| {
            self.nodes
                .get(node)
                .is_none_or(|[.., reach, _]| *reach <= 0.0)
        }) {
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
            find_root(x0, x1, 1e-7, |x| f0 + slope * (x - x0) + pull(x) - clamp)
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

//! What a load case asks of each bolt.

use super::case::LoadCase;
use crate::mechanics::bolt_group::{GroupLoad, NotTaken, Place, Share, elastic};
use crate::mechanics::edge_tension::about_edge;
use crate::quantity::InUnits;
use crate::scenario::{Mount, Scenario};

/// A load case with the shares of the bolts.
#[derive(Clone, Debug)]
pub(crate) struct BoltLoads {
    pub(crate) case: LoadCase,
    pub(crate) group: GroupLoad,
    /// Added to the force across of each bolt, from two cheeks that resist a moment about the tube, N.
    pub(crate) couple: f64,
    pub(crate) shares: Vec<Share>,
    pub(crate) not_taken: NotTaken,
    /// Largest force in the plane on any bolt, N.
    pub(crate) largest_in_plane: f64,
    /// Largest pull on any bolt, N; zero where all are pressed.
    pub(crate) largest_pull: f64,
}

impl BoltLoads {
    /// In the plane the elastic vector method. Along the bolts, of each bolt the larger of two: linear
    /// about the middle (clamped all over), and about the compression edge of the fitting (come off).
    /// The second one also serves a single row, which has no lever about its middle.
    ///
    /// Two cheeks on a tube do not tip about the tube: they take that moment as opposite forces in their
    /// two planes, which are added to the force across as if both planes had the larger one. A moment
    /// that lifts one cheek in front lifts the other behind, and a bolt goes through both: it has the pull
    /// of the cheek that lifts there. Of one fitting on a web nobody has said on which side of it it lies:
    /// every bolt has the pull of the worse side.
    pub(super) fn new(s: &Scenario, places: &[Place], case: LoadCase) -> Self {
        let mut group = case.on_group(s.bolting.mount);
        let count = places.len().max(1) as f64;
        let mut couple = 0.0;
        if s.bolting.mount == Mount::ThroughSides && !s.bolting.single_ply {
            couple = 2.0 * group.roll.abs() / (s.tube.depth.si() * count);
            group.roll = 0.0;
        }
        let (mut shares, mut not_taken) = elastic(places, &group);
        let edges = Edges::new(s, places);
        let pulls = edges.pulls(places, &group, &mut not_taken);
        // Through the sides nobody has said on which side the fitting lies, and of two cheeks one is on each.
        let mirrored = (s.bolting.mount == Mount::ThroughSides)
            .then(|| edges.pulls(places, &mirrored(&group), &mut not_taken));
        let mean = group.pull / count;
        for (i, share) in shares.iter_mut().enumerate() {
            let about_edges = mean + of(&pulls, i);
            share.pull = match &mirrored {
                Some(other) => share
                    .pull
                    .max(2.0 * mean - share.pull)
                    .max(about_edges)
                    .max(mean + of(other, i)),
                None => share.pull.max(about_edges),
            };
            share.across += couple.copysign(share.across);
        }
        let largest = |f: fn(&Share) -> f64| shares.iter().map(f).fold(0.0, f64::max);
        Self {
            case,
            group,
            couple,
            not_taken,
            largest_in_plane: largest(Share::in_plane),
            largest_pull: largest(|s| s.pull),
            shares,
        }
    }

    /// Share of one bolt.
    pub(crate) fn share(&self, index: usize) -> Share {
        self.shares.get(index).copied().unwrap_or(Share {
            along: 0.0,
            across: 0.0,
            pull: 0.0,
        })
    }
}

/// The same load on a fitting that lies on the other side: its moments pull at the opposite bolts.
fn mirrored(group: &GroupLoad) -> GroupLoad {
    GroupLoad {
        pitch: -group.pitch,
        roll: -group.roll,
        ..*group
    }
}

fn of(pulls: &[f64], index: usize) -> f64 {
    pulls.get(index).copied().unwrap_or(0.0)
}

/// From the middle of the group to the edges of the contact, m.
struct Edges {
    along: f64,
    across: f64,
}

impl Edges {
    /// Past the outermost bolts by the fitting's edge; across, no farther than the face reaches.
    fn new(s: &Scenario, places: &[Place]) -> Self {
        let reach = |f: fn(&Place) -> f64| places.iter().map(f).fold(0.0, f64::max);
        let (along, across) = (reach(|p| p.x.abs()), reach(|p| p.y.abs()));
        let edge = s.fitting.edge.si();
        Self {
            along: along + edge,
            across: (across + edge).min(s.reach_across().si()).max(across),
        }
    }

    /// Pull on each bolt from both moments about the compression edges, N. Where they are found, nothing of
    /// the moment is left untaken.
    fn pulls(&self, places: &[Place], group: &GroupLoad, not_taken: &mut NotTaken) -> Vec<f64> {
        let pitched = opened(places, |p| p.x, group.pitch, self.along);
        let rolled = opened(places, |p| p.y, group.roll, self.across);
        if pitched.is_some() {
            not_taken.pitch = 0.0;
        }
        if rolled.is_some() {
            not_taken.roll = 0.0;
        }
        let part = |pulls: &Option<Vec<f64>>, i| pulls.as_ref().map_or(0.0, |p| of(p, i));
        (0..places.len())
            .map(|i| part(&pitched, i) + part(&rolled, i))
            .collect()
    }
}

/// Pulls about one compression edge; `None` where nothing turns or nothing has a lever.
fn opened(places: &[Place], lever: fn(&Place) -> f64, moment: f64, edge: f64) -> Option<Vec<f64>> {
    if moment == 0.0 {
        return None;
    }
    let places: Vec<f64> = places.iter().map(lever).collect();
    about_edge(&places, moment, edge)
}

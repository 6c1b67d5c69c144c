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
    /// of the cheek that lifts there. Of one fitting on a web or a wall nobody has said on which side of it it lies:
    /// every bolt has the pull of the worse side, and the line of the load lies on that side too. From the
    /// top it may lie on either side of the bolts: each has the larger of both.
    ///
    /// What swings on its one bolt has turned into the line of its load, and nothing twists.
    pub(super) fn new(s: &Scenario, places: &[Place], case: LoadCase) -> Self {
        let (mount, two_cheeks) = (s.bolting.mount, s.bolting.two_cheeks);
        let aside = s.aside();
        let on_group = |aside| {
            let group = case.on_group(mount, aside);
            let twist = if s.swings() { 0.0 } else { group.twist };
            GroupLoad { twist, ..group }
        };
        let mut group = on_group(aside);
        let count = places.len().max(1) as f64;
        let mut couple = 0.0;
        if two_cheeks {
            couple = 2.0 * group.roll.abs() / (s.tube.depth.si() * count);
            group.roll = 0.0;
        }
        // Through the sides nobody has said on which side the fitting lies, and of two cheeks one is on each.
        let other = match mount {
            Mount::ThroughSides if two_cheeks => Some(mirrored(&group)),
            Mount::ThroughSides => Some(mirrored(&on_group(-aside))),
            Mount::FromTop => (aside > 0.0).then(|| on_group(-aside)),
        };
        let edges = Edges::new(s, places);
        let (mut shares, mut not_taken) = edges.shares(places, &group);
        if let Some(other) = other {
            let (others, untaken) = edges.shares(places, &other);
            for (share, other) in shares.iter_mut().zip(others) {
                let pull = share.pull.max(other.pull);
                if other.in_plane() > share.in_plane() {
                    *share = other;
                }
                share.pull = pull;
            }
            not_taken = not_taken.worse(untaken);
        }
        for share in &mut shares {
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
    /// Past the outermost bolts by the fitting's edge, as far as there is member under it and the bolt presses
    /// on it; across, no farther than the face reaches.
    ///
    /// ```text
    /// along:   e = min(e_f, e_1, s/2)    one bolt: min(e_f, e_1, reach across)
    /// ```
    ///
    /// | symbol | meaning | unit |
    /// |---|---|---|
    /// | `e_f` | middle of the bolt to the edge of the fitting | m |
    /// | `e_1` | middle of the bolt to the end of the member | m |
    /// | `s` | spacing of the bolts along | m |
    ///
    /// # Sources
    /// Geometry; that an outer bolt presses no farther out than the half way to its neighbor, as with the
    /// tributary length of a flange, is our assumption.
    fn new(s: &Scenario, places: &[Place]) -> Self {
        let reach = |f: fn(&Place) -> f64| places.iter().map(f).fold(0.0, f64::max);
        let (along, across) = (reach(|p| p.x.abs()), reach(|p| p.y.abs()));
        let edge = s.fitting.edge.si();
        let b = &s.bolting;
        let pressed = if b.along > 1 {
            b.spacing_along * 0.5
        } else {
            s.reach_across()
        };
        Self {
            along: along + edge.min(pressed.min(s.tube.end_distance).si()),
            across: (across + edge).min(s.reach_across().si()).max(across),
        }
    }

    /// Share of each bolt of a load on the group: in the plane by the elastic method, along the bolts the
    /// larger of the two. A moment that the pattern has no lever for about its middle comes about the edge in
    /// both. Where the compression edges are found, nothing of the moment is left untaken.
    fn shares(&self, places: &[Place], group: &GroupLoad) -> (Vec<Share>, NotTaken) {
        let (mut shares, mut not_taken) = elastic(places, group);
        let pitched = opened(places, |p| p.x, group.pitch, self.along);
        let rolled = opened(places, |p| p.y, group.roll, self.across);
        let mean = group.pull / places.len().max(1) as f64;
        let part = |pulls: &Option<Vec<f64>>, i| pulls.as_ref().map_or(0.0, |p| of(p, i));
        for (i, share) in shares.iter_mut().enumerate() {
            let (pitch, roll) = (part(&pitched, i), part(&rolled, i));
            for (missing, pull) in [(not_taken.pitch, pitch), (not_taken.roll, roll)] {
                if missing != 0.0 {
                    share.pull += pull;
                }
            }
            share.pull = share.pull.max(mean + pitch + roll);
        }
        if pitched.is_some() {
            not_taken.pitch = 0.0;
        }
        if rolled.is_some() {
            not_taken.roll = 0.0;
        }
        (shares, not_taken)
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

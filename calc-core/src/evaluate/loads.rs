//! Road loads at the coupler, case by case, and the case that asks most of a bolt.

use super::grip::Grip;
use crate::mechanics::bolt_group::{GroupLoad, NotTaken, Place, Share, elastic, pattern};
use crate::mechanics::slip;
use crate::quantity::{InUnits, STANDARD_GRAVITY, newton};
use crate::report::{BoltShare, LoadsReport};
use crate::scenario::{Mount, Scenario};

/// Forces at the ball, N: along the tube (forward positive), up, sideways.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct AtBall {
    pub(crate) case: &'static str,
    pub(crate) along: f64,
    pub(crate) up: f64,
    pub(crate) side: f64,
}

/// The governing case with its shares.
#[derive(Clone, Debug)]
pub(crate) struct Service {
    pub(crate) ball: AtBall,
    pub(crate) places: Vec<Place>,
    pub(crate) shares: Vec<Share>,
    pub(crate) not_taken: NotTaken,
    /// Index of the bolt that slips first.
    pub(crate) worst: usize,
    /// Its slip resistance, N.
    pub(crate) resistance: f64,
    /// Largest force in the plane on any bolt, N.
    pub(crate) largest_in_plane: f64,
    /// Largest pull on any bolt, N.
    pub(crate) largest_pull: f64,
}

/// The service cases of the road.
pub(crate) fn cases(s: &Scenario) -> [AtBall; 3] {
    let l = &s.loads;
    let weight = l.mass.si() * STANDARD_GRAVITY;
    let up = weight * l.tongue_share * l.vertical_factor;
    let along = l.mass.si() * l.braking.si();
    let side = l.mass.si() * l.tongue_share * l.side.si();
    [
        AtBall {
            case: "braking-over-a-bump",
            along: -along,
            up,
            side: 0.0,
        },
        AtBall {
            case: "pulling-over-a-bump",
            along,
            up,
            side: 0.0,
        },
        AtBall {
            case: "cornering-over-a-bump",
            along: 0.0,
            up,
            side,
        },
    ]
}

/// Load on the group from the forces at the ball.
fn on_group(s: &Scenario, ball: &AtBall) -> GroupLoad {
    let (ahead, below) = (s.loads.ball_ahead.si(), s.loads.ball_below.si());
    let tip = ahead * ball.up + below * ball.along;
    match s.bolting.mount {
        Mount::ThroughSides => GroupLoad {
            along: ball.along,
            across: ball.up,
            twist: tip,
            // The side force presses one cheek on and pulls the other off.
            pull: ball.side,
            pitch: ball.side * ahead,
            roll: 0.0,
        },
        Mount::FromTop => GroupLoad {
            along: ball.along,
            across: ball.side,
            twist: ahead * ball.side,
            pull: ball.up,
            pitch: tip,
            roll: below * ball.side,
        },
    }
}

/// The case whose worst bolt uses most of its slip resistance.
pub(crate) fn governing(s: &Scenario, grip: &Grip) -> Service {
    let b = &s.bolting;
    let places = pattern(b.along, b.rows, b.spacing_along.si(), b.spacing_across.si());
    let resist = |share: &Share| {
        slip::resistance(
            b.slip_planes(),
            s.tightening.faying_friction,
            newton(grip.left_min),
            newton(share.pull),
            grip.bolt_share,
        )
        .si()
    };
    let mut best: Option<(f64, Service)> = None;
    for ball in cases(s) {
        let (shares, not_taken) = elastic(&places, &on_group(s, &ball));
        let used = |share: &Share| share.in_plane() / resist(share).max(1e-9);
        let Some((worst, share)) = shares
            .iter()
            .enumerate()
            .max_by(|a, b| used(a.1).total_cmp(&used(b.1)))
        else {
            continue;
        };
        let use_ = used(share);
        if best.as_ref().is_some_and(|(most, _)| *most >= use_) {
            continue;
        }
        let largest = |f: fn(&Share) -> f64| shares.iter().map(f).fold(0.0, f64::max);
        let service = Service {
            ball,
            places: places.clone(),
            worst,
            resistance: resist(share),
            largest_in_plane: largest(Share::in_plane),
            largest_pull: largest(|s| s.pull),
            not_taken,
            shares,
        };
        best = Some((use_, service));
    }
    best.map_or_else(|| nothing(s), |(_, service)| service)
}

/// No bolt at all: cannot come out of a checked scenario, and asks nothing if it did.
fn nothing(s: &Scenario) -> Service {
    let [ball, ..] = cases(s);
    Service {
        ball,
        places: Vec::new(),
        shares: Vec::new(),
        not_taken: NotTaken::default(),
        worst: 0,
        resistance: 0.0,
        largest_in_plane: 0.0,
        largest_pull: 0.0,
    }
}

impl Service {
    /// Share of the bolt that slips first.
    pub(crate) fn worst_share(&self) -> Share {
        self.shares.get(self.worst).copied().unwrap_or(Share {
            along: 0.0,
            across: 0.0,
            pull: 0.0,
        })
    }

    pub(crate) fn report(&self, _s: &Scenario) -> LoadsReport {
        LoadsReport {
            case: self.ball.case,
            longitudinal_n: self.ball.along,
            vertical_n: self.ball.up,
            transverse_n: self.ball.side,
            bolts: self
                .places
                .iter()
                .zip(&self.shares)
                .map(|(place, share)| BoltShare {
                    along_mm: place.x * 1e3,
                    across_mm: place.y * 1e3,
                    force_along_n: share.along,
                    force_across_n: share.across,
                    pull_n: share.pull,
                })
                .collect(),
        }
    }
}

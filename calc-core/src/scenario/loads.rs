//! What pulls at the joint, checked: the road and the trailer, and what each kind of joint asks for.

use super::choices::JointKind;
use crate::catalog::{LoadKind, LoadRule, Trailer};
use crate::mechanics::fatigue::Block;
use crate::quantity::{Acceleration, Angle, Force, Length, Mass};

/// What the road does.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Loads {
    /// Mass of the loaded trailer.
    pub mass: Mass,
    /// Share on the coupler.
    pub tongue_share: f64,
    /// Factor on it for bumps.
    pub vertical_factor: f64,
    /// Braking and pulling.
    pub braking: Acceleration,
    /// Sideways, on the tongue load.
    pub side: Acceleration,
    /// Ball ahead of the group's middle.
    pub ball_ahead: Length,
    /// Ball below the group's middle.
    pub ball_below: Length,
    /// Line of the load beside the faying plane, or from the top beside the bolts' middle; `None`: not
    /// known, or none.
    pub offset: Option<Length>,
    /// Temperature swing, K.
    pub temperature_swing: f64,
    /// What is bolted on.
    pub joint: JointKind,
    /// Published loads on top of the road's.
    pub rule: &'static LoadRule,
    /// Mass of the towing vehicle.
    pub towing: Mass,
    /// Spring hanger.
    pub hanger: HangerLoad,
    /// Chain bracket.
    pub chain: ChainLoad,
    /// Free load.
    pub free: FreeLoad,
    /// Length of the load bed over the distance from ball to axles; 1 unless both are known.
    pub bed_over_arm: f64,
    /// Whether the towing vehicle rides on air.
    pub tow_on_air: bool,
    /// How often the road brings which part of the full load.
    pub road: Road,
}

/// How rough the road is, and how far it goes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Road {
    /// Cycles by height: the full load, hard, middling and light bumps.
    pub blocks: [Block; 4],
    /// Way that the bolts have to endure, miles.
    pub miles: f64,
}

impl Loads {
    /// What published loads are counted from.
    #[must_use]
    pub const fn trailer(&self) -> Trailer {
        Trailer {
            mass: self.mass,
            towing: self.towing,
            tongue_share: self.tongue_share,
            bed_over_arm: self.bed_over_arm,
            tow_on_air: self.tow_on_air,
        }
    }
}

/// What a spring hanger's load is counted from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HangerLoad {
    /// Axles of the trailer.
    pub axles: usize,
    /// Ground to wheel centre.
    pub tyre_radius: Length,
    /// Spring eye below the group's middle.
    pub height: Length,
    /// Spring eye ahead of the group's middle.
    pub offset: Length,
    /// Share of one spring's load.
    pub share: f64,
    /// Spring from eye to eye.
    pub spring_length: Length,
}

/// What a chain bracket's load is counted from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ChainLoad {
    /// Between chain and tube.
    pub angle: Angle,
    /// Share of the strength required of all chains together.
    pub share: f64,
}

/// Six components at the point that stands in the ball's place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FreeLoad {
    /// Forward.
    pub along: Force,
    /// Upward.
    pub up: Force,
    /// To the left.
    pub side: Force,
    /// About the tube, N·m.
    pub about_along: f64,
    /// About the sideways line, N·m.
    pub about_side: f64,
    /// About the upright line, N·m.
    pub about_up: f64,
    /// What it asks for.
    pub kind: LoadKind,
}

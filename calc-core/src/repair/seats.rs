//! Washers made to fit what head and nut sit on: saddles on a round tube, tapered washers on a sloping flange.

use super::Rates;
use super::work::per_kg;
use crate::catalog::{self, Family, Material};
use crate::quantity::InUnits;
use crate::scenario::{MemberKind, Scenario};
use crate::support::parts::count;

/// Side of a tapered washer, m (1-3/4 in). ASTM F436, square beveled washers for bolts from 1/2 to 1 in, from memory.
const TAPERED_SIDE: f64 = 44.45e-3;

/// The washers that are made to fit, all alike. Lengths in m.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Seats {
    /// How many are new.
    pub(super) count: u32,
    /// Length and width.
    pub(super) side: f64,
    /// Thickness at the bolt, which the grip is longer by.
    pub(super) middle: f64,
    /// Thickness that they are cut from.
    pub(super) blank: f64,
    /// The hole.
    pub(super) hole: f64,
    /// Diameter that they are hollowed to; `None` where they are bought tapered.
    pub(super) hollow: Option<f64>,
    /// What they are of.
    pub(super) material: &'static Material,
}

impl Seats {
    /// The seats of a joint, all new to as many bolts; `None` where head and nut sit flat without.
    pub(super) fn of(s: &Scenario, bolts: u32) -> Option<Self> {
        let (_, middle) = s.shaped_washers();
        if middle.si() <= 0.0 {
            return None;
        }
        let middle = middle.si();
        let hole = s.bolting.hole.si();
        if s.member.kind != MemberKind::RoundTube {
            return Some(Self {
                count: bolts,
                side: TAPERED_SIDE.max(2.0 * hole),
                middle,
                blank: middle,
                hole,
                hollow: None,
                material: catalog::material("a36")?,
            });
        }
        let diameter = s.tube.depth.si();
        let radius = diameter / 2.0;
        let side = s.bolting.washer.outer.si().min(diameter);
        let half = side / 2.0;
        let falls = radius - (radius * radius - half * half).max(0.0).sqrt();
        let metal = match s.tube.material.family() {
            Family::Aluminium => "6061-t6",
            Family::Steel => "a36",
            Family::Stainless => "stainless-304",
        };
        Some(Self {
            count: 2 * bolts,
            side,
            middle,
            blank: middle + falls,
            hole,
            hollow: Some(diameter),
            material: catalog::material(metal)?,
        })
    }

    /// Those that are new on the way from one joint to another.
    pub(super) fn added(before: &Scenario, after: &Scenario) -> Option<Self> {
        let [old, new] = [before, after].map(|s| count(s.bolting.count()));
        // A saddle is made for its bolt and its washer.
        let same = Self::of(before, old)
            .zip(Self::of(after, new))
            .is_some_and(|(was, is)| {
                was.hollow == is.hollow
                    && was.hole + 0.05e-3 >= is.hole
                    && was.side + 1e-6 >= is.side
            });
        let bolts = if same { new.saturating_sub(old) } else { new };
        Self::of(after, bolts).filter(|seats| seats.count > 0)
    }

    /// Whether they are bought as they are.
    pub(super) const fn is_bought(&self) -> bool {
        self.hollow.is_none()
    }

    /// Mass of all, kg, as cut; bought ones are counted by the piece.
    pub(super) fn mass(&self) -> f64 {
        if self.is_bought() {
            return 0.0;
        }
        let area = self.side * self.side - std::f64::consts::FRAC_PI_4 * self.hole * self.hole;
        f64::from(self.count) * area * self.blank * self.material.density().value
    }

    /// What they cost by the rates, without the work.
    pub(super) fn cost(&self, rates: &Rates) -> f64 {
        if self.is_bought() {
            f64::from(self.count) * rates.tapered_washer
        } else {
            self.mass() * per_kg(self.material, rates)
        }
    }
}

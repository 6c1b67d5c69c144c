//! The weld that holds a through sleeve: its groove, and what it has to carry.
//!
//! Head and nut press on the ends of the sleeve, so the weld must end flush with the face: it lies in a
//! groove, bevelled into the edge of the hole, with the sleeve behind it.

use crate::catalog::{Family, Filler, LoadKind, Material, filler_between};
use crate::evaluate::loads::{BoltLoads, Cases};
use crate::mechanics::weld;
use crate::quantity::{InUnits, Length, Stress, mm};
use crate::scenario::Scenario;
use std::f64::consts::PI;

/// Angle between the bevel and the sleeve, degrees: the smallest at which the whole depth counts with
/// every process and in every position.
pub(super) const GROOVE_DEG: f64 = 60.0;

/// Depth of groove beyond which nothing is gained on walls of trailers, mm. An assumption.
const DEEPEST_MM: f64 = 6.35;

/// One end of a welded sleeve.
#[derive(Clone, Copy, Debug)]
pub(super) struct SleeveWeld {
    pub(super) filler: &'static Filler,
    /// Depth of the bevel.
    pub(super) depth: Length,
    /// Throat that counts.
    pub(super) throat: Length,
    /// Round the sleeve.
    pub(super) length: Length,
    /// Strength of the weld metal, N.
    pub(super) metal: f64,
    /// Strength of the weaker metal beside it, N.
    pub(super) beside: f64,
    /// Its tensile strength.
    pub(super) beside_ultimate: Stress,
    /// Thickness that it holds on to there.
    pub(super) beside_thickness: Length,
    /// Factor under a service load.
    pub(super) omega: f64,
    /// Factor under a load that must leave no set.
    to_yield: f64,
}

/// The load case that asks most of a weld.
#[derive(Clone, Copy, Debug)]
pub(super) struct WeldDemand<'a> {
    pub(super) loads: &'a BoltLoads,
    /// In the plane of the face, on the hardest used end, N.
    pub(super) in_plane: f64,
    /// Along the bolt, N.
    pub(super) pull: f64,
    pub(super) factor: f64,
}

impl WeldDemand<'_> {
    pub(super) fn force(&self) -> f64 {
        self.in_plane.hypot(self.pull)
    }
}

/// Yield and tensile strength next to the weld.
fn softened(material: &Material) -> (Stress, Stress) {
    let strength = material
        .welded()
        .map_or_else(|| material.least(), |welded| &welded.least);
    (strength.yield_strength(), strength.ultimate_strength())
}

impl SleeveWeld {
    /// `None` where tube and sleeve cannot be welded to each other.
    pub(super) fn new(s: &Scenario) -> Option<Self> {
        let filler = filler_between(s.tube.material, s.sleeve.material)?;
        // Measured or ordered, the wall at hand is bevelled; the design wall counts for strength.
        let depth = s.tube.wall.min(mm(DEEPEST_MM));
        let counted = s.tube.design_wall.min(mm(DEEPEST_MM));
        let throat = weld::groove_throat(counted, GROOVE_DEG);
        let length = s.sleeve.outer * PI;
        let (tube_yield, tube_ultimate) = softened(s.tube.material);
        let tube_ultimate = tube_ultimate.min(s.tube.ultimate_least);
        let (_, sleeve_ultimate) = softened(s.sleeve.material);
        let sides = [
            (tube_ultimate, s.tube.design_wall),
            (sleeve_ultimate, counted),
        ]
        .map(|(ultimate, thickness)| {
            let strength = weld::beside_weld(ultimate, thickness, length).si();
            (strength, ultimate, thickness)
        });
        let [tube, sleeve] = sides;
        let weaker = if sleeve.0 < tube.0 { sleeve } else { tube };
        let aluminium = s.tube.material.family() == Family::Aluminium;
        Some(Self {
            filler,
            depth,
            throat,
            length,
            metal: weld::throat_strength(filler.shear_strength(), throat, length).si(),
            beside: weaker.0,
            beside_ultimate: weaker.1,
            beside_thickness: weaker.2,
            omega: if aluminium {
                weld::OMEGA_ALUMINIUM
            } else {
                weld::OMEGA_STEEL
            },
            to_yield: (tube_ultimate.si() / tube_yield.min(s.tube.yield_least).si()).max(1.0),
        })
    }

    /// Strength of one end, N.
    pub(super) fn strength(&self) -> f64 {
        self.metal.min(self.beside)
    }

    /// What the hardest case asks of the hardest used end: the whole force of one slip plane, as if the
    /// sleeve did not bear in its hole, and the whole pull along the bolt, as if the other end did not
    /// help. The clamp itself goes from washer to washer through the sleeve and not through the weld.
    pub(super) fn demand<'a>(&self, s: &Scenario, cases: &'a Cases) -> Option<WeldDemand<'a>> {
        let planes = s.bolting.slip_planes();
        let factor = |kind| match kind {
            LoadKind::Service => self.omega,
            LoadKind::Proof => self.to_yield,
            LoadKind::Ultimate => 1.0,
        };
        let mut most: Option<WeldDemand<'a>> = None;
        for loads in &cases.all {
            let factor = factor(loads.case.kind);
            for share in &loads.shares {
                let demand = WeldDemand {
                    loads,
                    in_plane: share.in_plane() / planes,
                    pull: share.pull.max(0.0),
                    factor,
                };
                if most.is_none_or(|m| demand.factor * demand.force() > m.factor * m.force()) {
                    most = Some(demand);
                }
            }
        }
        most
    }

    /// Throat that the load needs, the metal beside the weld left out; m.
    pub(super) fn throat_needed(&self, demand: &WeldDemand<'_>) -> f64 {
        demand.factor * demand.force() / (self.filler.shear_strength().si() * self.length.si())
    }
}

/// Share of the strength of the sleeve welds that is used; above any strength where they cannot be laid.
pub(super) fn used(s: &Scenario, cases: &Cases) -> f64 {
    let Some(weld) = SleeveWeld::new(s) else {
        return f64::INFINITY;
    };
    weld.demand(s, cases)
        .map_or(0.0, |a| a.factor * a.force() / weld.strength().max(1e-9))
}

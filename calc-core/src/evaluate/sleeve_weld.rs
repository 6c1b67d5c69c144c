//! The weld that holds a through sleeve: its groove, and what it has to carry.
//!
//! Head and nut press on the ends of the sleeve, so the weld must end flush with the face: it lies in a
//! groove, bevelled into the edge of the hole, with the sleeve behind it. The clamp goes from washer to
//! washer through the sleeve; what the fitting hands on reaches the tube through the weld alone.

use super::analysis::Analysis;
use super::loads::BoltLoads;
use super::pried::pull_on_bolt;
use crate::catalog::{Family, Filler, LoadKind, Material, filler, filler_between};
use crate::cite::{Cite, Flag, Source};
use crate::mechanics::{pin, weld};
use crate::quantity::{InUnits, Length, Ratio, Stress, mm, newton};
use crate::report::working::{Line, Working};
use crate::report::{Factor, substituted};
use crate::scenario::Scenario;
use std::f64::consts::PI;

/// Angle between the bevel and the sleeve, degrees: the smallest at which the whole depth counts with
/// every process and in every position.
pub(crate) const GROOVE_DEG: f64 = 60.0;

/// Depth of groove beyond which nothing is gained on walls of trailers, mm. An assumption.
const DEEPEST_MM: f64 = 6.35;

/// One end of a welded sleeve.
#[derive(Clone, Copy, Debug)]
pub(crate) struct SleeveWeld {
    pub(crate) filler: &'static Filler,
    /// Depth of the bevel.
    pub(crate) depth: Length,
    /// Throat that counts.
    pub(crate) throat: Length,
    /// Round the sleeve.
    pub(crate) length: Length,
    /// Strength of the weld metal, N.
    metal: f64,
    /// Strength of the weaker metal beside it, N.
    beside: f64,
    /// Its tensile strength.
    beside_ultimate: Stress,
    /// Thickness that it holds on to there.
    beside_thickness: Length,
    /// Factor under a service load.
    pub(crate) omega: f64,
    /// Factor under a load that must leave no set.
    to_yield: f64,
}

/// The load case that asks most of a weld.
#[derive(Clone, Copy, Debug)]
pub(crate) struct WeldDemand<'a> {
    pub(crate) loads: &'a BoltLoads,
    /// In the plane of the face, on the hardest used end, N.
    in_plane: f64,
    /// Along the bolt, N.
    pull: f64,
    pub(crate) factor: f64,
}

impl WeldDemand<'_> {
    pub(crate) fn force(&self) -> f64 {
        self.in_plane.hypot(self.pull)
    }

    /// What the factor is.
    pub(crate) const fn factor_is(&self) -> Factor {
        match self.loads.case.kind {
            LoadKind::Service => Factor::Strength,
            LoadKind::Proof => Factor::Yield,
            LoadKind::Ultimate => Factor::Breaking,
        }
    }
}

/// Yield and tensile strength next to the weld.
fn softened(material: &Material) -> (Stress, Stress) {
    let strength = material.least_beside(true);
    (strength.yield_strength(), strength.ultimate_strength())
}

/// Another filler that suits: easier to lay and less apt to crack in 6xxx alloys, and weaker in shear.
pub(crate) fn other_filler(s: &Scenario) -> Option<&'static Filler> {
    let both = [s.tube.material, s.sleeve.material];
    filler("4043").filter(|_| both.iter().all(|m| m.aluminium_series() == Some(6)))
}

impl SleeveWeld {
    /// With the filler that a work sheet asks for; `None` where tube and sleeve cannot be welded to each
    /// other.
    pub(crate) fn new(s: &Scenario) -> Option<Self> {
        filler_between(s.tube.material, s.sleeve.material).map(|filler| Self::with(s, filler))
    }

    /// Of a sleeve that is in: nobody knows which of the suitable fillers it was welded with, and the
    /// weakest counts.
    pub(crate) fn of_any_filler(s: &Scenario) -> Option<Self> {
        let new = Self::new(s)?;
        Some(match other_filler(s).map(|filler| Self::with(s, filler)) {
            Some(other) if other.strength() < new.strength() => other,
            _ => new,
        })
    }

    fn with(s: &Scenario, filler: &'static Filler) -> Self {
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
        Self {
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
        }
    }

    /// Strength of one end, N.
    pub(crate) fn strength(&self) -> f64 {
        self.metal.min(self.beside)
    }

    /// Of a force on one bolt, what falls on one end, N. With one fitting the near end takes all of it and, as the
    /// sleeve tips, a little more.
    fn on_one_end(&self, s: &Scenario, in_plane: f64) -> f64 {
        let plane = in_plane / s.bolting.slip_planes();
        if s.bolting.two_cheeks {
            return plane;
        }
        let lever = pin::lever(s.fitting.thickness, s.fitting.gap, self.throat);
        pin::near_wall(newton(plane), lever, s.tube.depth - self.throat).si()
    }

    /// What the hardest case asks of the hardest used end: the whole force of one slip plane, as if the
    /// sleeve did not bear in its hole, and the whole pull along the bolt with what a flange adds, as if
    /// the other end did not help. `None` where no case asks for anything.
    pub(crate) fn demand<'a>(&self, joint: &'a Analysis<'_>) -> Option<WeldDemand<'a>> {
        let factor = |kind| match kind {
            LoadKind::Service => self.omega,
            LoadKind::Proof => self.to_yield,
            LoadKind::Ultimate => 1.0,
        };
        let bolt = newton(joint.pull_strength());
        let mut most: Option<WeldDemand<'a>> = None;
        for loads in &joint.cases().all {
            let factor = factor(loads.case.kind);
            for share in &loads.shares {
                let pull = share.pull.max(0.0);
                let demand = WeldDemand {
                    loads,
                    in_plane: self.on_one_end(joint.s, share.in_plane()),
                    pull: if pull > 0.0 {
                        pull_on_bolt(joint.s, pull, bolt)
                    } else {
                        0.0
                    },
                    factor,
                };
                if most.is_none_or(|m| demand.factor * demand.force() > m.factor * m.force()) {
                    most = Some(demand);
                }
            }
        }
        most.filter(|demand| demand.force() > 0.0)
    }

    /// Share of the strength that a demand uses.
    pub(crate) fn used(&self, demand: &WeldDemand<'_>) -> f64 {
        demand.factor * demand.force() / self.strength().max(1e-9)
    }

    /// Throat that the load needs, the metal beside the weld left out; m.
    pub(crate) fn throat_needed(&self, demand: &WeldDemand<'_>) -> f64 {
        demand.factor * demand.force() / (self.filler.shear_strength().si() * self.length.si())
    }

    /// Lines from the groove to the share used.
    pub(crate) fn lines(&self, w: &mut Working, s: &Scenario, demand: Option<&WeldDemand<'_>>) {
        w.line(
            &Line {
                symbol: "E",
                what: "throat of the groove, beveled by 60°",
                formula: "S",
            },
            substituted![("S", self.throat)],
            self.throat,
            Cite::new(Source::Aisc360_22, "Table J2.1", Flag::ReadSecondHand),
        );
        w.line(
            &Line {
                symbol: "L",
                what: "length of one weld",
                formula: "π·D",
            },
            substituted![("D", s.sleeve.outer)],
            self.length,
            Cite::new(Source::Elementary, "circumference", Flag::Computed),
        );
        w.line(
            &Line {
                symbol: "R_w",
                what: "strength of the weld metal in shear",
                formula: "f_w·E·L",
            },
            substituted![
                ("f_w", self.filler.shear_strength()),
                ("E", self.throat),
                ("L", self.length)
            ],
            newton(self.metal),
            self.filler.cite(),
        );
        w.line(
            &Line {
                symbol: "R_b",
                what: "strength in shear of the metal beside it",
                formula: "0.60·f_u·t·L",
            },
            substituted![
                ("f_u", self.beside_ultimate),
                ("t", self.beside_thickness),
                ("L", self.length)
            ],
            newton(self.beside),
            Cite::new(Source::Aisc360_22, "J4.2", Flag::Read),
        );
        let Some(a) = demand else {
            return;
        };
        w.line(
            &Line {
                symbol: "V",
                what: "force of one slip plane and pull along the bolt, together",
                formula: "√(V_p² + N²)",
            },
            substituted![("V_p", newton(a.in_plane)), ("N", newton(a.pull))],
            newton(a.force()),
            Cite::new(
                Source::OwnAssumption,
                "the weld hands on all of it, the hole none",
                Flag::Assumption,
            ),
        );
        w.line(
            &Line {
                symbol: "u",
                what: "share used",
                formula: "Ω·V/min(R_w, R_b)",
            },
            substituted![
                ("Ω", Ratio(a.factor)),
                ("V", newton(a.force())),
                ("R", newton(self.strength()))
            ],
            Ratio(self.used(a)),
            Cite::new(Source::Aisc360_22, "Table J2.5; ADM 1.95", Flag::Read),
        );
    }
}

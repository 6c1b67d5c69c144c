//! What carries the load once the joint has slipped.

use super::demand::Demand;
use super::{Joint, of_forces, said};
use crate::catalog::LoadKind;
use crate::cite::{Cite, Flag};
use crate::mechanics::instantaneous_centre::{InPlane, multiple_of_load};
use crate::mechanics::shear;
use crate::quantity::Dimension::{Area, Count, Force, Length, Ratio, Stress};
use crate::quantity::{InUnits, mm};
use crate::report::{Check, CheckId};
use crate::scenario::SupportKind;

impl Joint<'_> {
    pub(super) fn bolt_shear(&self) -> Option<Check> {
        let (s, g) = (self.s, self.grip);
        let b = &s.bolting;
        // The plane farther from the head, where threads come first.
        let far_plane = b.washer.thickness
            + s.fitting.thickness
            + if b.slip_planes() > 1.5 {
                s.tube.depth
            } else {
                mm(0.0)
            };
        let threads = g.shank < far_plane;
        let capacity = shear::bolt(
            b.strength.tensile,
            b.thread.shank_area(),
            b.slip_planes(),
            threads,
        )
        .si();
        // Down to yield by distortion energy, on the same area.
        let share = if threads { 0.450 } else { 0.563 };
        let to_yield = share * b.strength.tensile.si() / (b.yield_strength().si() / 3f64.sqrt());
        let asked = self.strength((shear::OMEGA, to_yield), |spread| spread.largest_in_plane)?;
        let demand = asked.force;
        let mut w = self.sheet();
        self.case_line(&mut w, &asked);
        w.step(
            ("R", "shear strength of one bolt", "m·c·F_u·A_b"),
            &[
                ("m", b.slip_planes(), Count),
                ("c", share, Ratio),
                ("F_u", b.strength.tensile.si(), Stress),
                ("A_b", b.thread.shank_area().si(), Area),
            ],
            (capacity, Force),
            Cite::new("aisc-360-22", "Table J3.2", Flag::Read),
        );
        if let Some(multiple) = self.instantaneous_centre(&asked, capacity) {
            w.step(
                (
                    "λ",
                    "second opinion: breaking load of the whole group, times this case",
                    "instantaneous centre, R = R_ult·(1 − e^(−10Δ))^0.55",
                ),
                &[
                    ("R_ult", capacity, Force),
                    ("λ by vectors", capacity / demand.max(1e-9), Ratio),
                ],
                (multiple, Ratio),
                Cite::new(
                    "aisc-manual",
                    "Part 7, eccentrically loaded groups",
                    Flag::Memory,
                ),
            );
        }
        let check = of_forces(
            CheckId::BoltShear,
            (demand, capacity),
            (asked.factor, asked.factor_is),
            said(
                if threads {
                    "shear-threads"
                } else {
                    "shear-shank"
                },
                &[(demand, Force), (capacity, Force)],
            ),
            w,
        );
        let untaken = self.untaken(|kind| kind == LoadKind::Ultimate);
        Some(Self::with_lever(asked.name(check), untaken))
    }

    /// Breaking load of the group by its instantaneous centre, as a multiple of an ultimate case. The
    /// verdict keeps to the vectors, the safer of the two.
    fn instantaneous_centre(&self, asked: &Demand<'_>, capacity: f64) -> Option<f64> {
        let spread = asked.spread;
        let wanted = self.working && spread.case.kind == LoadKind::Ultimate && spread.couple == 0.0;
        let load = InPlane {
            along: spread.group.along,
            across: spread.group.across,
            twist: spread.group.twist,
        };
        wanted
            .then(|| multiple_of_load(&self.cases.places, &load, capacity))
            .flatten()
    }

    pub(super) fn wall_bearing(&self) -> Option<Check> {
        let s = self.s;
        if s.support == SupportKind::Solid {
            return None;
        }
        let d = s.bolting.thread.major();
        // Bolts from the top are pushed where the fitting sits: the far wall hardly helps.
        let walls = s.bolting.slip_planes();
        let capacity = shear::wall_bearing(s.tube.yield_least, d, s.tube.design_wall, walls).si();
        // No lasting set: mean bearing pressure at the yield strength.
        let asked = self.strength((shear::OMEGA, 1.8), |spread| spread.largest_in_plane)?;
        let demand = asked.force;
        let mut w = self.sheet();
        w.step(
            (
                "R",
                "bearing of the bolt on the walls that it pushes",
                "n·1.8·f_y·d·t",
            ),
            &[
                ("n", walls, Count),
                ("f_y", s.tube.yield_least.si(), Stress),
                ("d", d.si(), Length),
                ("t", s.tube.design_wall.si(), Length),
            ],
            (capacity, Force),
            Cite::new("aisc-360-22", "J3.11b, J7", Flag::Read),
        );
        Some(asked.name(of_forces(
            CheckId::WallBearing,
            (demand, capacity),
            (asked.factor, asked.factor_is),
            said(
                if asked.factor * demand > capacity {
                    "bearing-oval"
                } else {
                    "bearing-fine"
                },
                &[(demand, Force), (capacity, Force)],
            ),
            w,
        )))
    }
}

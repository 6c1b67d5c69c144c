//! What carries the load once the joint has slipped.

use super::{Joint, of_forces, said};
use crate::cite::{Cite, Flag};
use crate::mechanics::shear;
use crate::quantity::Dimension::{Area, Count, Force, Length, Ratio, Stress};
use crate::quantity::{InUnits, mm};
use crate::report::{Check, CheckId};
use crate::scenario::SupportKind;

impl Joint<'_> {
    pub(super) fn bolt_shear(&self) -> Check {
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
        let demand = self.service.largest_in_plane;
        let mut w = self.sheet();
        w.step(
            ("R", "shear strength of one bolt", "m·c·F_u·A_b"),
            &[
                ("m", b.slip_planes(), Count),
                ("c", if threads { 0.450 } else { 0.563 }, Ratio),
                ("F_u", b.strength.tensile.si(), Stress),
                ("A_b", b.thread.shank_area().si(), Area),
            ],
            (capacity, Force),
            Cite::new("aisc-360-22", "Table J3.2", Flag::Read),
        );
        of_forces(
            CheckId::BoltShear,
            (demand, capacity),
            (shear::OMEGA, "factor-strength"),
            said(
                if threads {
                    "shear-threads"
                } else {
                    "shear-shank"
                },
                &[(demand, Force), (capacity, Force)],
            ),
            w,
        )
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
        let demand = self.service.largest_in_plane;
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
        Some(of_forces(
            CheckId::WallBearing,
            (demand, capacity),
            (shear::OMEGA, "factor-strength"),
            said(
                if shear::OMEGA * demand > capacity {
                    "bearing-oval"
                } else {
                    "bearing-fine"
                },
                &[(demand, Force), (capacity, Force)],
            ),
            w,
        ))
    }
}

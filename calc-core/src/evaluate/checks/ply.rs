//! The plies at the bolt once the joint has slipped: bearing of the fitting, tear-out of tube and fitting.

use super::{Joint, Way};
use crate::catalog::Family;
use crate::cite::{Cite, Flag};
use crate::evaluate::holes::is_oversize;
use crate::mechanics::bearing::{self, HolePlace};
use crate::mechanics::shear;
use crate::quantity::Dimension::{Force, Length, Ratio, Stress};
use crate::quantity::{InUnits, Length as Metres};
use crate::report::{Check, CheckId};
use crate::scenario::{Mount, SupportKind};

impl Joint<'_> {
    /// Whether the plies are pressed together on something that does not give.
    const fn plies_are_firm(&self) -> bool {
        !matches!(self.s.support, SupportKind::Bare | SupportKind::LooseSleeve)
    }

    /// Holes of the group as the European rule sees them, the closer spacing in both directions: the
    /// force may point anywhere.
    fn hole_place(&self, edge: Option<Metres>) -> HolePlace {
        let closest = self.closest_spacing();
        HolePlace {
            end: edge,
            pitch: closest,
            edge,
            gauge: closest.filter(|_| self.s.bolting.rows > 1),
        }
    }

    /// Distance to the nearest neighbour, middle to middle.
    pub(super) fn closest_spacing(&self) -> Option<Metres> {
        let b = &self.s.bolting;
        let along = (b.along > 1).then_some(b.spacing_along);
        let across = (b.rows > 1).then_some(b.spacing_across);
        along.into_iter().chain(across).reduce(Metres::min)
    }

    /// Design bearing resistance of the fitting by the European column.
    fn fitting_en(&self, edge: Option<Metres>) -> f64 {
        let s = self.s;
        let (d, f) = (s.bolting.thread.major(), &s.fitting);
        let whole = bearing::en_ply(
            (f.ultimate_least, s.bolting.strength.tensile),
            (d, f.hole),
            f.thickness,
            &self.hole_place(edge),
        )
        .si();
        let oversize = if is_oversize(s, f.hole) { 0.8 } else { 1.0 };
        // A single lap with one bolt tips: 1.5 stands in place of 2.5.
        let tips = if s.bolting.mount == Mount::FromTop && s.bolting.count() == 1 {
            1.5 * f.ultimate_least.si() * d.si() * f.thickness.si() / bearing::GAMMA_M2
        } else {
            f64::INFINITY
        };
        (whole * oversize).min(tips)
    }

    pub(super) fn fitting_bearing(&self) -> Option<Check> {
        let s = self.s;
        let f = &s.fitting;
        if f.thickness.si() <= 0.0 {
            return None;
        }
        let d = s.bolting.thread.major();
        let firm = self.plies_are_firm();
        let us = if firm {
            bearing::firm_ply(f.ultimate_least, d, f.thickness).si()
        } else {
            shear::wall_bearing(f.yield_least, d, f.thickness, 1.0).si()
        };
        let mut w = self.sheet();
        let (formula, strength) = if firm {
            ("2.4·d·t·F_u", ("F_u", f.ultimate_least.si(), Stress))
        } else {
            ("1.8·f_y·d·t", ("f_y", f.yield_least.si(), Stress))
        };
        let size = [("d", d.si(), Length), ("t", f.thickness.si(), Length)];
        w.step(
            ("R", "bearing of one ply of the fitting", formula),
            &[size[0], size[1], strength],
            (us, Force),
            Cite::new(
                "aisc-360-22",
                if firm { "J3.11a" } else { "J3.11b, J7" },
                Flag::Read,
            ),
        );
        let eu = self.fitting_en(None);
        w.step(
            (
                "F_b,Rd",
                "the same by the European column, for a design load, far from edges",
                "k_1·α_b·f_u·d·t/γ_M2",
            ),
            &[
                ("f_u", f.ultimate_least.si(), Stress),
                ("d_0", f.hole.si(), Length),
                size[0],
                size[1],
            ],
            (eu, Force),
            Cite::new("en-1993-1-8", "Table 3.4", Flag::Read),
        );
        // No lasting set: mean pressure at the yield strength.
        let yields = f.yield_least.si() * d.si() * f.thickness.si();
        let mut ways = [
            Way::allowable(us, shear::OMEGA, yields),
            Way::design(eu, yields),
            Way::allowable(us, shear::OMEGA, yields),
        ];
        if f.material.family() == Family::Aluminium {
            let soft = bearing::aluminium_ply(f.ultimate_least, d, f.thickness, None).si();
            ways[2] = Way::allowable(soft, bearing::OMEGA_ALUMINIUM, yields);
            w.step(
                ("R_a", "bearing of an aluminium ply", "2·d·t·F_tu"),
                &[size[0], size[1], ("F_tu", f.ultimate_least.si(), Stress)],
                (soft, Force),
                Cite::new("adm-2020", "chapter J", Flag::Memory),
            );
        }
        let (way, asked) = self.asked(&ways, |spread| self.per_plane(spread.largest_in_plane))?;
        Some(Self::of_way(
            CheckId::FittingBearing,
            (&way, &asked),
            ["fitting-bearing-oval", "fitting-bearing-fine"],
            w,
        ))
    }

    /// Clear distance for a bolt to tear out: to the edge, or to the next hole.
    fn clear(&self, edge: Metres, hole: Metres) -> Metres {
        let to_edge = bearing::clear_to_edge(edge, hole);
        self.closest_spacing().map_or(to_edge, |spacing| {
            to_edge.min(bearing::clear_between(spacing, hole))
        })
    }

    pub(super) fn tube_tear_out(&self) -> Option<Check> {
        let s = self.s;
        let hole = self.hole_in_tube();
        let thickness = if s.support == SupportKind::Solid {
            s.tube.depth / s.bolting.slip_planes()
        } else {
            s.tube.design_wall
        };
        let clear = self.clear(s.tube.end_distance, hole);
        let (fy, fu) = self.tube_strengths();
        let force = bearing::tear_out(fu, clear, thickness).si();
        let way = Way::allowable(force, shear::OMEGA, force * fy.si() / fu.si());
        let (way, asked) = self.asked(&[way], |spread| self.on_wall(spread.largest_in_plane))?;
        let mut w = self.sheet();
        w.step(
            (
                "R",
                "tear-out of one wall to the end or the next hole",
                "1.2·l_c·t·F_u",
            ),
            &[
                ("l_c", clear.si(), Length),
                ("t", thickness.si(), Length),
                ("F_u", fu.si(), Stress),
            ],
            (force, Force),
            Cite::new("aisc-360-22", "J3.11a, J3.11b", Flag::Read),
        );
        Some(Self::of_way(
            CheckId::TubeTearOut,
            (&way, &asked),
            ["tear-out-tears", "tear-out-fine"],
            w,
        ))
    }

    pub(super) fn fitting_tear_out(&self) -> Option<Check> {
        let s = self.s;
        let f = &s.fitting;
        if f.thickness.si() <= 0.0 {
            return None;
        }
        let clear = self.clear(f.edge, f.hole);
        let d = s.bolting.thread.major();
        let us = bearing::tear_out(f.ultimate_least, clear, f.thickness).si();
        let eu = self.fitting_en(Some(f.edge));
        let yields = us * f.yield_least.si() / f.ultimate_least.si();
        let aluminium = f.material.family() == Family::Aluminium;
        let soft = bearing::aluminium_ply(f.ultimate_least, d, f.thickness, Some(f.edge)).si();
        let ways = [
            Way::allowable(us, shear::OMEGA, yields),
            Way::design(eu, yields),
            Way::allowable(soft, bearing::OMEGA_ALUMINIUM, yields),
        ];
        let ways = if aluminium { &ways[..] } else { &ways[..2] };
        let (way, asked) = self.asked(ways, |spread| self.per_plane(spread.largest_in_plane))?;
        let mut w = self.sheet();
        w.step(
            (
                "R",
                "tear-out of one ply to its edge or the next hole",
                "1.2·l_c·t·F_u",
            ),
            &[
                ("l_c", clear.si(), Length),
                ("t", f.thickness.si(), Length),
                ("F_u", f.ultimate_least.si(), Stress),
            ],
            (us, Force),
            Cite::new("aisc-360-22", "J3.11a", Flag::Read),
        );
        let place = self.hole_place(Some(f.edge));
        let bolt_over_ply = s.bolting.strength.tensile.si() / f.ultimate_least.si();
        w.step(
            (
                "F_b,Rd",
                "the same by the European column, for a design load",
                "k_1·α_b·f_u·d·t/γ_M2",
            ),
            &[
                ("k_1", place.k_1(f.hole), Ratio),
                ("α_b", place.alpha_b(f.hole, bolt_over_ply), Ratio),
                ("f_u", f.ultimate_least.si(), Stress),
                ("γ_M2", bearing::GAMMA_M2, Ratio),
            ],
            (eu, Force),
            Cite::new("en-1993-1-8", "Table 3.4", Flag::Read),
        );
        if aluminium {
            w.step(
                ("R_a", "aluminium ply, edge counted", "min(d_e, 2·d)·t·F_tu"),
                &[("F_tu", f.ultimate_least.si(), Stress)],
                (soft, Force),
                Cite::new("adm-2020", "chapter J", Flag::Memory),
            );
        }
        Some(Self::of_way(
            CheckId::FittingTearOut,
            (&way, &asked),
            ["fitting-tear-out-tears", "fitting-tear-out-fine"],
            w,
        ))
    }
}

//! The plies at the bolt once the joint has slipped: bearing of the fitting, tear-out of tube and fitting.

use super::{Joint, Way, of_forces, said};
use crate::catalog::{Family, HoleFit, clearance_hole};
use crate::cite::{Cite, Flag};
use crate::mechanics::bearing::{self, HolePlace};
use crate::mechanics::shear;
use crate::quantity::Dimension::{Force, Length, Ratio, Stress};
use crate::quantity::{InUnits, Length as Metres, Stress as Stresses, mm};
use crate::report::{CLOSE_FROM, Check, CheckId, Verdict};
use crate::scenario::{Mount, SupportKind};

impl Joint<'_> {
    /// Whether the plies are pressed together on something that does not give.
    const fn plies_are_firm(&self) -> bool {
        !matches!(self.s.support, SupportKind::Bare | SupportKind::LooseSleeve)
    }

    /// Larger than the normal clearance hole, beyond what a caliper reads.
    pub(super) fn is_oversize(&self, hole: Metres) -> bool {
        let thread = self.s.bolting.thread;
        [HoleFit::Normal, HoleFit::Structural]
            .into_iter()
            .filter_map(|fit| clearance_hole(thread, fit))
            .map(|listed| listed.diameter)
            .reduce(Metres::max)
            // A size without a listed hole: one tenth more than the bolt.
            .map_or(1.1 * thread.major().si(), InUnits::si)
            + 0.05e-3
            < hole.si()
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
        let oversize = if self.is_oversize(f.hole) { 0.8 } else { 1.0 };
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
        let demand = self.per_plane();
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
        let mut way = Way::allowable(us, shear::OMEGA).safer(Way::design(eu));
        if f.material.family() == Family::Aluminium {
            let soft = bearing::aluminium_ply(f.ultimate_least, d, f.thickness, None).si();
            w.step(
                ("R_a", "bearing of an aluminium ply", "2·d·t·F_tu"),
                &[size[0], size[1], ("F_tu", f.ultimate_least.si(), Stress)],
                (soft, Force),
                Cite::new("adm-2020", "chapter J", Flag::Memory),
            );
            way = way.safer(Way::allowable(soft, bearing::OMEGA_ALUMINIUM));
        }
        Some(of_forces(
            CheckId::FittingBearing,
            (demand, way.capacity),
            (way.factor, way.factor_is),
            said(
                if way.factor * demand > way.capacity {
                    "fitting-bearing-oval"
                } else {
                    "fitting-bearing-fine"
                },
                &[(demand, Force), (way.capacity, Force)],
            ),
            w,
        ))
    }

    pub(super) fn tube_tear_out(&self) -> Check {
        let s = self.s;
        let hole = self.hole_in_tube();
        let thickness = if s.support == SupportKind::Solid {
            s.tube.depth / s.bolting.slip_planes()
        } else {
            s.tube.design_wall
        };
        let end = s
            .tube
            .end_distance
            .map(|end| bearing::clear_to_edge(end, hole));
        let next = self
            .closest_spacing()
            .map(|spacing| bearing::clear_between(spacing, hole));
        let (_, fu) = self.tube_strengths();
        let mut w = self.sheet();
        let demand = self.on_wall();
        let asked = asked(demand, fu, thickness, hole, s.bolting.thread.major());
        let clear = end.into_iter().chain(next).reduce(Metres::min);
        let capacity = clear.map(|clear| {
            let force = bearing::tear_out(fu, clear, thickness).si();
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
            Way::allowable(force, shear::OMEGA)
        });
        torn(
            CheckId::TubeTearOut,
            demand,
            capacity,
            end.is_none().then_some(asked),
            ["tear-out-tears", "tear-out-fine", "tear-out-end-unknown"],
            w,
        )
    }

    /// Clear distance, and the safer of the published ways to tear-out of one ply of the fitting, at a
    /// distance from the edge. `None`: neither an edge nor a neighbour to tear out to.
    fn fitting_way(&self, edge: Option<Metres>) -> Option<(Metres, [f64; 3], Way)> {
        let f = &self.s.fitting;
        let to_edge = edge.map(|edge| bearing::clear_to_edge(edge, f.hole));
        let next = self
            .closest_spacing()
            .map(|spacing| bearing::clear_between(spacing, f.hole));
        let clear = to_edge.into_iter().chain(next).reduce(Metres::min)?;
        let us = bearing::tear_out(f.ultimate_least, clear, f.thickness).si();
        let eu = self.fitting_en(edge);
        let mut way = Way::allowable(us, shear::OMEGA).safer(Way::design(eu));
        let d = self.s.bolting.thread.major();
        let soft = bearing::aluminium_ply(f.ultimate_least, d, f.thickness, edge).si();
        if f.material.family() == Family::Aluminium {
            way = way.safer(Way::allowable(soft, bearing::OMEGA_ALUMINIUM));
        }
        Some((clear, [us, eu, soft], way))
    }

    pub(super) fn fitting_tear_out(&self) -> Option<Check> {
        let s = self.s;
        let f = &s.fitting;
        if f.thickness.si() <= 0.0 {
            return None;
        }
        let mut w = self.sheet();
        let found = self.fitting_way(f.edge);
        if let Some((clear, [us, eu, soft], _)) = found {
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
            let place = self.hole_place(f.edge);
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
            if f.material.family() == Family::Aluminium {
                w.step(
                    ("R_a", "aluminium ply, edge counted", "min(d_e, 2·d)·t·F_tu"),
                    &[("F_tu", f.ultimate_least.si(), Stress)],
                    (soft, Force),
                    Cite::new("adm-2020", "chapter J", Flag::Memory),
                );
            }
        }
        let missing = f.edge.is_none().then(|| self.fitting_edge_asked());
        Some(torn(
            CheckId::FittingTearOut,
            self.per_plane(),
            found.map(|(_, _, way)| way),
            missing,
            [
                "fitting-tear-out-tears",
                "fitting-tear-out-fine",
                "fitting-tear-out-edge-unknown",
            ],
            w,
        ))
    }

    /// Distance to the edge of the fitting that would do: used up to 80 %, or no worse than far from
    /// any edge.
    fn fitting_edge_asked(&self) -> f64 {
        let f = &self.s.fitting;
        let d = self.s.bolting.thread.major().si();
        let used = |edge: f64| {
            self.fitting_way(Some(mm(edge * 1e3)))
                .map_or(0.0, |(_, _, way)| {
                    way.factor * self.per_plane() / way.capacity.max(1e-9)
                })
        };
        let far = 20.0 * d;
        let enough = used(far).max(CLOSE_FROM) * (1.0 + 1e-9);
        let least = (1.5 * d).max(1.2 * f.hole.si());
        // Five per cent at a time: a rule to measure by, not a dimension to cut to.
        let mut edge = least;
        while edge < far && used(edge) > enough {
            edge *= 1.05;
        }
        half_millimetres(edge)
    }
}

/// Distance from the bolt to an edge that would do: tear-out at the least of its factor used up to 80 %,
/// and no hole nearer than 1.5 d or 1.2 d₀.
fn asked(demand: f64, fu: Stresses, thickness: Metres, hole: Metres, d: Metres) -> f64 {
    let clear = shear::OMEGA * demand / CLOSE_FROM / (1.2 * fu.si() * thickness.si());
    half_millimetres(
        (0.5 * hole.si() + clear)
            .max(1.5 * d.si())
            .max(1.2 * hole.si()),
    )
}

/// Up to the next half millimetre: what a rule reads.
pub(super) fn half_millimetres(metres: f64) -> f64 {
    (metres * 2e3).ceil() / 2e3
}

/// A tear-out check that says so when a distance it needs was not given: `missing` is what would do.
pub(super) fn torn(
    id: CheckId,
    demand: f64,
    way: Option<Way>,
    missing: Option<f64>,
    [tears, fine, unknown]: [&'static str; 3],
    w: super::Working,
) -> Check {
    let known = way.is_some();
    let way = way.unwrap_or(Way::allowable(0.0, shear::OMEGA));
    let too_much = known && way.factor * demand > way.capacity;
    let mut check = of_forces(
        id,
        (demand, way.capacity),
        (way.factor, way.factor_is),
        said(
            if too_much { tears } else { fine },
            &[(demand, Force), (way.capacity, Force)],
        ),
        w,
    );
    if let Some(asked) = missing
        && !too_much
    {
        check.verdict = Verdict::NotChecked;
        check.utilisation = None;
        check.reason = said(unknown, &[(asked, Length)]);
    }
    check
}

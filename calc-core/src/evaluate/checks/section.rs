//! What the holes leave of tube and fitting, and what head and nut are pulled through.

use super::ply::torn;
use super::{Joint, Way, amount, of_forces, said};
use crate::catalog::Family;
use crate::cite::{Cite, Flag};
use crate::mechanics::net_section::{Block, TubeSection, block_shear, counted_hole, omegas};
use crate::mechanics::{en_bolt, shear};
use crate::quantity::Dimension::{Count, Force, Length, Moment, Stress};
use crate::quantity::{InUnits, Length as Metres, Stress as Pascals, newton};
use crate::report::{Check, CheckId, Verdict};
use crate::scenario::{Mount, SupportKind};

/// A ply with a group of holes.
struct Pulled {
    fy: Pascals,
    fu: Pascals,
    hole: Metres,
    thickness: Metres,
    end: Metres,
}

impl Joint<'_> {
    /// The tube without and with the holes of one line of bolts.
    fn tube_sections(&self) -> (TubeSection, TubeSection) {
        let t = &self.s.tube;
        let solid = self.s.support == SupportKind::Solid;
        let upright = self.s.bolting.mount == Mount::ThroughSides;
        let (height, width) = if upright {
            (t.width, t.depth)
        } else {
            (t.depth, t.width)
        };
        let wall = if solid {
            0.5 * height.max(width)
        } else {
            t.design_wall
        };
        let gross = TubeSection::gross(height, width, wall);
        let hole = counted_hole(self.hole_in_tube());
        let rows = self.s.bolting.rows;
        let mut net = gross;
        for row in 0..rows {
            let place = (row as f64 - (rows as f64 - 1.0) / 2.0) * self.s.bolting.spacing_across;
            // Through a solid the hole is one, as deep as the bar; through a tube one in each wall.
            let through = if solid { t.depth } else { wall };
            let off = 0.5 * (t.depth - through);
            let ways: &[f64] = if solid { &[0.0] } else { &[1.0, -1.0] };
            for &way in ways {
                net = if upright {
                    net.without([hole, through], [place, off * way])
                } else {
                    net.without([through, hole], [off * way, place])
                };
            }
        }
        (gross, net)
    }

    /// Pull and bending of the tube behind its last bolt, in the governing case; what counts against
    /// each other is added up.
    fn on_tube(&self) -> (f64, f64, f64) {
        let (s, ball) = (self.s, &self.service.ball);
        let half = 0.5 * (s.bolting.along as f64 - 1.0) * s.bolting.spacing_along.si();
        let ahead = s.loads.ball_ahead.si() + half;
        let below = s.loads.ball_below.si().abs();
        (
            ball.along.abs(),
            ball.up.abs() * ahead + ball.along.abs() * below,
            ball.side.abs() * ahead,
        )
    }

    pub(super) fn net_section(&self) -> Check {
        let s = self.s;
        let (gross, net) = self.tube_sections();
        let (pull, up, side) = self.on_tube();
        let (Some(on_gross), Some(on_net)) = (
            gross.stress(newton(pull), up, side),
            net.stress(newton(pull), up, side),
        ) else {
            return self.section_used_up();
        };
        let (fy, fu) = self.tube_strengths();
        let aluminium = s.tube.material.family() == Family::Aluminium;
        let (omega_yield, omega_rupture) = omegas(aluminium);
        let yields = omega_yield * on_gross.si() / fy.si();
        let breaks = omega_rupture * on_net.si() / fu.si();
        let cite = if aluminium {
            Cite::new("adm-2020", "chapter D", Flag::Read)
        } else {
            Cite::new("aisc-360-22", "D2, B4.3b", Flag::Read)
        };
        let mut w = self.sheet();
        let load = [
            ("N", pull, Force),
            ("M_1", up, Moment),
            ("M_2", side, Moment),
        ];
        w.step(
            (
                "σ_g",
                "stress of the whole section behind the last bolt",
                "N/A + M_1·h/(2·I_1) + M_2·b/(2·I_2)",
            ),
            &load,
            (on_gross.si(), Stress),
            Cite::new("elementary", "bending", Flag::Computed),
        );
        w.step(
            (
                "σ_n",
                "stress of the section with the holes out",
                "the same with the holes out",
            ),
            &[
                load[0],
                load[1],
                load[2],
                ("d_h", counted_hole(self.hole_in_tube()).si(), Length),
            ],
            (on_net.si(), Stress),
            Cite::new("elementary", "bending", Flag::Computed),
        );
        w.step(
            ("f_y/Ω", "allowed on the whole section", "f_y/Ω"),
            &[("f_y", fy.si(), Stress)],
            (fy.si() / omega_yield, Stress),
            cite,
        );
        w.step(
            (
                "F_u/Ω",
                "allowed on the section with the holes out",
                "F_u/Ω",
            ),
            &[("F_u", fu.si(), Stress)],
            (fu.si() / omega_rupture, Stress),
            cite,
        );
        let (demand, capacity, factor, utilisation) = if yields > breaks {
            (on_gross.si(), fy.si(), omega_yield, yields)
        } else {
            (on_net.si(), fu.si(), omega_rupture, breaks)
        };
        Check {
            id: CheckId::NetSection,
            verdict: Verdict::of(utilisation),
            demand: amount(demand, Stress),
            capacity: amount(capacity, Stress),
            factor,
            factor_is: "factor-strength",
            utilisation: Some(utilisation),
            reason: said(
                if utilisation > 1.0 {
                    "section-too-weak"
                } else {
                    "section-fine"
                },
                &[(demand, Stress), (capacity, Stress)],
            ),
            steps: w.finish(),
        }
    }

    /// Holes that leave nothing of the tube.
    fn section_used_up(&self) -> Check {
        let hole = counted_hole(self.hole_in_tube()).si();
        Check {
            id: CheckId::NetSection,
            verdict: Verdict::DoesNotHold,
            demand: amount(hole, Length),
            capacity: amount(0.0, Length),
            factor: 1.0,
            factor_is: "factor-none",
            utilisation: None,
            reason: said("section-used-up", &[(hole, Length)]),
            steps: Vec::new(),
        }
    }

    /// Only with more than one row: a single row tears out bolt by bolt.
    pub(super) fn block_shear(&self) -> Option<Check> {
        let s = self.s;
        let b = &s.bolting;
        if b.rows < 2 {
            return None;
        }
        let (fy, fu) = self.tube_strengths();
        let tube = s.tube.end_distance.map(|end| Pulled {
            fy,
            fu,
            hole: self.hole_in_tube(),
            thickness: if s.support == SupportKind::Solid {
                s.tube.depth / b.slip_planes()
            } else {
                s.tube.design_wall
            },
            end,
        });
        let has_fitting = s.fitting.thickness.si() > 0.0;
        let fitting = s.fitting.edge.filter(|_| has_fitting).map(|end| Pulled {
            fy: s.fitting.yield_least,
            fu: s.fitting.ultimate_least,
            hole: s.fitting.hole,
            thickness: s.fitting.thickness,
            end,
        });
        let known = tube.is_some() && (fitting.is_some() || !has_fitting);
        let asked = super::ply::half_millimetres(1.5 * b.thread.major().si());
        // The forces along the tube, added up without regard to their sign.
        let demand = self
            .service
            .shares
            .iter()
            .map(|x| x.along.abs())
            .sum::<f64>()
            / b.slip_planes();
        let mut w = self.sheet();
        let mut way: Option<Way> = None;
        for (what, ply) in [
            ("block torn out of one wall", tube),
            ("block torn out of one ply of the fitting", fitting),
        ] {
            let Some(ply) = ply else { continue };
            let block = Block::between_rows(
                (b.along, b.rows),
                ply.end,
                (b.spacing_along, b.spacing_across),
                counted_hole(ply.hole),
                ply.thickness,
            );
            let force = block_shear(ply.fy, ply.fu, &block).si();
            w.step(
                ("R", what, "min(0.60·F_u·A_nv, 0.60·f_y·A_gv) + F_u·A_nt"),
                &[
                    ("F_u", ply.fu.si(), Stress),
                    ("f_y", ply.fy.si(), Stress),
                    ("e", ply.end.si(), Length),
                    ("rows", b.rows as f64, Count),
                ],
                (force, Force),
                Cite::new("aisc-360-22", "J4.3", Flag::Read),
            );
            let this = Way::allowable(force, shear::OMEGA);
            way = Some(way.map_or(this, |other| other.safer(this)));
        }
        Some(torn(
            CheckId::BlockShear,
            demand,
            way,
            (!known).then_some(asked),
            ["block-tears", "block-fine", "block-edge-unknown"],
            w,
        ))
    }

    pub(super) fn pull_through(&self) -> Option<Check> {
        let s = self.s;
        let demand = self.service.largest_pull;
        if demand <= 0.0 {
            return None;
        }
        let flats = s
            .bolting
            .thread
            .width_across_flats()
            .min(s.bolting.thread.hex().nut_width_across_flats());
        let width = en_bolt::mean_width(flats);
        let (_, fu) = self.tube_strengths();
        let fitting = (s.fitting.thickness.si() > 0.0).then_some((
            "punching of the fitting under head or nut",
            s.fitting.ultimate_least,
            s.fitting.thickness,
        ));
        // From the top the nut lies on the far face. Between cheeks only the cheeks are pulled.
        let face = (s.bolting.mount == Mount::FromTop && s.support != SupportKind::Solid)
            .then_some(("punching of the face under the nut", fu, s.tube.design_wall));
        let mut w = self.sheet();
        let mut way: Option<Way> = None;
        for (what, fu, thickness) in fitting.into_iter().chain(face) {
            let eu = en_bolt::punching(fu, width, thickness).si();
            w.step(
                ("B_p,Rd", what, "0.6·π·d_m·t_p·f_u/γ_M2"),
                &[
                    ("d_m", width.si(), Length),
                    ("t_p", thickness.si(), Length),
                    ("f_u", fu.si(), Stress),
                ],
                (eu, Force),
                Cite::new("en-1993-1-8", "Table 3.4", Flag::Read),
            );
            let us = eu * crate::mechanics::bearing::GAMMA_M2;
            w.step(
                (
                    "R",
                    "the same as shear rupture round the head",
                    "0.60·F_u·π·d_m·t_p",
                ),
                &[("B_p,Rd", eu, Force)],
                (us, Force),
                Cite::new("aisc-360-22", "J4.2, J3.13", Flag::Read),
            );
            let this = Way::allowable(us, shear::OMEGA).safer(Way::design(eu));
            way = Some(way.map_or(this, |other| other.safer(this)));
        }
        let way = way?;
        Some(of_forces(
            CheckId::PullThrough,
            (demand, way.capacity),
            (way.factor, way.factor_is),
            said(
                if way.factor * demand > way.capacity {
                    "pull-through-pulls"
                } else {
                    "pull-through-fine"
                },
                &[(demand, Force), (way.capacity, Force)],
            ),
            w,
        ))
    }
}

//! The plies at the bolt once the joint has slipped: bearing of the fitting, tear-out of tube and fitting.

use super::section::most_used;
use super::{Resistance, said};
use crate::catalog::Family;
use crate::cite::{Cite, Flag, Source};
use crate::evaluate::analysis::Analysis;
use crate::evaluate::holes::is_oversize;
use crate::evaluate::loads::BoltLoads;
use crate::layout::Face;
use crate::mechanics::bearing::{self, HolePlace};
use crate::mechanics::shear;
use crate::quantity::{InUnits, Length, Ratio, Stress, mm, newton};
use crate::report::working::Line;
use crate::report::{Check, CheckId, Sentence, Verdict, say, substituted};
use crate::support::{self, seat};

/// Thinnest plate by the rules for plates, mm; what is thinner is sheet.
///
/// # Sources
/// EN 1993-1-1, 1.1.2: plates of 3 mm and more. From memory.
const THINNEST_PLATE_MM: f64 = 3.0;

/// Thinnest sheet of a fitting that is judged, mm. The rules for sheet go thinner (AISI S100 from 0.61 mm, EN 1993-1-3
/// from 0.75 mm, both from memory), for parts that are stiffened by folds, as few fittings are: an assumption.
const THINNEST_SHEET_MM: f64 = 1.5;

/// A ply that a bolt presses on.
pub(super) struct Ply {
    /// What its bearing and its tear-out are called in the working.
    bears: &'static str,
    tears: &'static str,
    /// Yield and tensile strength, least.
    strength: (Stress, Stress),
    aluminium: bool,
    sheet: bool,
    pub(super) thickness: Length,
    hole: Length,
    /// Middle of the bolt to the nearest edge.
    edge: Length,
}

/// Whether metal so thick is sheet.
fn is_sheet(thickness: Length) -> bool {
    thickness.si() < mm(THINNEST_PLATE_MM).si() * (1.0 - 1e-9)
}

impl Analysis<'_> {
    /// Whether the plies are pressed together on something that does not give.
    fn plies_are_firm(&self) -> bool {
        let s = self.s;
        if s.member.is_open() {
            return s.fitting.gap.si() <= 0.0;
        }
        s.fitting.touches && support::of(s).is_firm() && !seat::round_wall_carries(s)
    }

    /// Holes of the group as the European rule sees them, the closer spacing in both directions: the
    /// force may point anywhere.
    fn hole_place(&self, edge: Option<Length>) -> HolePlace {
        let closest = self.closest_spacing();
        HolePlace {
            end: edge,
            pitch: closest,
            edge,
            gauge: closest.filter(|_| self.s.bolting.rows > 1),
        }
    }

    /// Distance to the nearest neighbour, middle to middle.
    pub(super) fn closest_spacing(&self) -> Option<Length> {
        let b = &self.s.bolting;
        let along = (b.along > 1).then_some(b.spacing_along);
        let across = (b.rows > 1).then_some(b.spacing_across);
        along.into_iter().chain(across).reduce(Length::min)
    }

    /// One ply of the fitting; `None` where there is none.
    fn fitting_ply(&self) -> Option<Ply> {
        let f = &self.s.fitting;
        (f.thickness.si() > 0.0).then_some(Ply {
            bears: "bearing of one plate of the bracket",
            tears: "tear-out of one plate to its edge or the next hole",
            strength: (f.yield_least, f.ultimate_least),
            aluminium: f.material.family() == Family::Aluminium,
            sheet: is_sheet(f.thickness),
            thickness: f.thickness,
            hole: f.hole,
            edge: f.edge,
        })
    }

    /// What the bolts go through beside one slip plane: the ply of a channel or an angle, or so much of a solid
    /// bar as is counted on. A bolt in a deep hole bends and presses at its mouth: no more than one diameter
    /// counts, and of a bar between two cheeks no more than its half. An assumption.
    pub(super) fn member_ply(&self) -> Ply {
        let s = self.s;
        let t = &s.tube;
        if !s.member.is_open() {
            let half = t.depth / s.bolting.slip_planes();
            return Ply {
                bears: "bearing of the bar beside one slip plane, one diameter deep at most",
                tears: "tear-out of the bar to its end, its edge or the next hole",
                strength: (t.yield_least, t.ultimate_least),
                aluminium: t.material.family() == Family::Aluminium,
                sheet: false,
                thickness: half.min(s.bolting.thread.major()),
                hole: s.bolting.hole,
                edge: t.end_distance,
            };
        }
        let edge = s.free_edge();
        Ply {
            bears: "bearing of the flange, leg or web",
            tears: "tear-out of the flange, leg or web to its end, its edge or the next hole",
            strength: (t.yield_least, t.ultimate_least),
            aluminium: t.material.family() == Family::Aluminium,
            sheet: is_sheet(t.design_wall),
            thickness: t.design_wall,
            hole: self.s.bolting.hole,
            edge: edge.map_or(t.end_distance, |edge| edge.min(t.end_distance)),
        }
    }

    /// Design bearing resistance of a ply by the European column.
    fn en_bearing(&self, ply: &Ply, edge: Option<Length>) -> f64 {
        let s = self.s;
        let (d, fu) = (s.bolting.thread.major(), ply.strength.1);
        let whole = bearing::en_ply(
            (fu, s.bolting.strength.tensile),
            (d, ply.hole),
            ply.thickness,
            &self.hole_place(edge),
        )
        .si();
        let oversize = if is_oversize(s, ply.hole) { 0.8 } else { 1.0 };
        // A single lap with one bolt tips: 1.5 stands in place of 2.5.
        let tips = if s.bolting.slip_planes() < 2.0 && s.bolting.count() == 1 {
            1.5 * fu.si() * d.si() * ply.thickness.si() / bearing::GAMMA_M2
        } else {
            f64::INFINITY
        };
        (whole * oversize).min(tips)
    }

    /// Below 3 mm a fitting is judged as sheet, and is close at best: what it does between bolt and load nobody asked.
    /// Thinner than 1.5 mm it is not judged: it may buckle or curl out of its plane long before it bears.
    pub(super) fn fitting_bearing(&self) -> Option<Check> {
        let (id, thickness) = (CheckId::FittingBearing, self.s.fitting.thickness);
        let thinnest = mm(THINNEST_SHEET_MM);
        let bearing = self.fitting_ply().and_then(|ply| {
            let words = [say::FittingBearingOval, say::FittingBearingFine];
            self.ply_bearing(&ply, id, words)
        });
        if thickness.si() >= thinnest.si() * (1.0 - 1e-9) {
            return bearing.map(|check| match check.verdict {
                Verdict::Holds if is_sheet(thickness) => Check {
                    verdict: Verdict::Close,
                    reason: said(say::FittingIsSheet, (thickness,)),
                    ..check
                },
                _ => check,
            });
        }
        let check = bearing.unwrap_or_else(|| {
            Check::of(id, thinnest, thickness)
                .without_share()
                .says_of_both(say::FittingTooThin)
        });
        if thickness.si() > 0.0 && check.verdict == Verdict::DoesNotHold {
            return Some(check);
        }
        Some(check.undecided(said(say::FittingTooThin, (thickness, thinnest))))
    }

    /// Bearing of the one ply of a channel or an angle, or of a solid bar.
    pub(super) fn member_bearing(&self) -> Option<Check> {
        self.ply_bearing(
            &self.member_ply(),
            CheckId::WallBearing,
            [say::BearingOval, say::BearingFine],
        )
    }

    fn ply_bearing(&self, ply: &Ply, id: CheckId, words: [Sentence<2>; 2]) -> Option<Check> {
        let d = self.s.bolting.thread.major();
        let (fy, fu) = ply.strength;
        let firm = self.plies_are_firm();
        let us = if firm {
            bearing::firm_ply(fu, d, ply.thickness).si()
        } else {
            shear::wall_bearing(fy, d, ply.thickness, 1.0).si()
        };
        let mut w = self.sheet();
        let place = if firm { "J3.11a" } else { "J3.11b, J7" };
        let cite = Cite::new(Source::Aisc360_22, place, Flag::Read);
        if firm {
            w.line(
                &Line {
                    symbol: "R",
                    what: ply.bears,
                    formula: "2.4·d·t·F_u",
                },
                substituted![("d", d), ("t", ply.thickness), ("F_u", fu)],
                newton(us),
                cite,
            );
        } else {
            w.line(
                &Line {
                    symbol: "R",
                    what: ply.bears,
                    formula: "1.8·f_y·d·t",
                },
                substituted![("d", d), ("t", ply.thickness), ("f_y", fy)],
                newton(us),
                cite,
            );
        }
        let eu = self.en_bearing(ply, None);
        w.line(
            &Line {
                symbol: "F_b,Rd",
                what: "the same by the European column, for a design load, far from edges",
                formula: "k_1·α_b·f_u·d·t/γ_M2",
            },
            substituted![
                ("f_u", fu),
                ("d_0", ply.hole),
                ("d", d),
                ("t", ply.thickness)
            ],
            newton(eu),
            Cite::new(Source::En1993_1_8, "Table 3.4", Flag::Read),
        );
        // No lasting set: mean pressure at the yield strength.
        let yields = fy.si() * d.si() * ply.thickness.si();
        let mut resistances = [
            Resistance::allowable(us, shear::OMEGA, yields),
            Resistance::design(eu, yields),
            Resistance::allowable(us, shear::OMEGA, yields),
            Resistance::allowable(us, shear::OMEGA, yields),
        ];
        if ply.sheet {
            let sheet = bearing::sheet_ply(fu, d, ply.thickness).si();
            resistances[3] = Resistance::allowable(sheet, bearing::OMEGA_SHEET, yields);
            w.line(
                &Line {
                    symbol: "R_s",
                    what: "bearing of sheet",
                    formula: "(4.64·t/25.4 mm + 1.53)·d·t·F_u",
                },
                substituted![("d", d), ("t", ply.thickness), ("F_u", fu)],
                newton(sheet),
                Cite::new(Source::AisiS100, "E3.3.2 of 2001", Flag::ReadSecondHand),
            );
        }
        if ply.aluminium {
            let soft = bearing::aluminium_ply(fu, d, ply.thickness, None).si();
            resistances[2] = Resistance::allowable(soft, bearing::OMEGA_ALUMINIUM, yields);
            w.line(
                &Line {
                    symbol: "R_a",
                    what: "bearing of an aluminum part",
                    formula: "2·d·t·F_tu",
                },
                substituted![("d", d), ("t", ply.thickness), ("F_tu", fu)],
                newton(soft),
                Cite::new(Source::Adm2020, "chapter J", Flag::Memory),
            );
        }
        let (resistance, demand) = self.governing_demand(&resistances, &|loads| {
            self.per_plane(loads.largest_in_plane)
        })?;
        Some(Self::of_resistance(id, (&resistance, &demand), words, w))
    }

    /// Clear distance for a bolt to tear out: to the edge, or to the next hole.
    fn clear(&self, edge: Length, hole: Length) -> Length {
        let to_edge = bearing::clear_to_edge(edge, hole);
        self.closest_spacing().map_or(to_edge, |spacing| {
            to_edge.min(bearing::clear_between(spacing, hole))
        })
    }

    /// Tear-out to the end of a tube or a bar and, of a bar, to the edge beside the row: walls of a tube go on round the
    /// corner.
    ///
    /// ```text
    /// to the end    R ≥ V,     R = 1.2·l_c·t·F_u,    l_c = e_1 − d_h/2
    /// to the side   R_2 ≥ V_2, R_2 = 1.2·l_c2·t·F_u, l_c2 = e_2 − d_h/2
    /// ```
    ///
    /// | symbol | meaning | unit |
    /// |---|---|---|
    /// | `V`, `V_2` | force on a bolt; what of it points across the bar | N |
    /// | `e_1`, `e_2` | middle of the bolt to the end, to the edge beside it | m |
    /// | `t` | depth that the bolt presses on | m |
    ///
    /// Each clear distance no more than to the next hole. A force at a slant has farther to the side than straight across.
    ///
    /// # Sources
    /// AISC 360-22 J3.11a, J3.11b.
    pub(super) fn tube_tear_out(&self) -> Option<Check> {
        let s = self.s;
        if s.member.is_open() {
            return self.ply_tear_out(
                &self.member_ply(),
                CheckId::TubeTearOut,
                [say::MemberTearOutTears, say::MemberTearOutFine],
            );
        }
        let hole = self.hole_in_tube();
        // No deeper than it bears: what lies below tears no sooner, and holds nothing.
        let thickness = self.pressed_depth();
        let clear = self.clear(s.tube.end_distance, hole);
        let (fy, fu) = self.tube_strengths();
        let force = bearing::tear_out(fu, clear, thickness).si();
        let resistance = Resistance::allowable(force, shear::OMEGA, force * fy.si() / fu.si());
        let (resistance, demand) =
            self.governing_demand(&[resistance], &|loads| self.on_wall(loads.largest_in_plane))?;
        let side = (!support::of(s).is_hollow()).then(|| Face::new(s).to_edge(s));
        let to_side = side.and_then(|edge| {
            let clear = self.clear(edge, hole);
            let force = bearing::tear_out(fu, clear, thickness).si();
            let resistance = Resistance::allowable(force, shear::OMEGA, force * fy.si() / fu.si());
            let across = |loads: &BoltLoads| {
                let each = loads.shares.iter().map(|share| share.across.abs());
                self.on_wall(each.fold(0.0, f64::max))
            };
            Some((clear, force, self.governing_demand(&[resistance], &across)?))
        });
        let mut found = (resistance, demand);
        if let Some((.., aside)) = to_side {
            found = most_used(found, aside);
        }
        let mut w = self.sheet();
        w.line(
            &Line {
                symbol: "R",
                what: "tear-out of one wall to the end or the next hole",
                formula: "1.2·l_c·t·F_u",
            },
            substituted![("l_c", clear), ("t", thickness), ("F_u", fu)],
            newton(force),
            Cite::new(Source::Aisc360_22, "J3.11a, J3.11b", Flag::Read),
        );
        if let Some((clear, force, _)) = to_side {
            w.line(
                &Line {
                    symbol: "R_2",
                    what: "tear-out of the bar to the edge beside the bolt, for the force across it",
                    formula: "1.2·l_c2·t·F_u",
                },
                substituted![("l_c2", clear), ("t", thickness), ("F_u", fu)],
                newton(force),
                Cite::new(Source::Aisc360_22, "J3.11a", Flag::Read),
            );
        }
        let words = if side.is_some() {
            [say::MemberTearOutTears, say::MemberTearOutFine]
        } else {
            [say::TearOutTears, say::TearOutFine]
        };
        let (resistance, demand) = found;
        Some(Self::of_resistance(
            CheckId::TubeTearOut,
            (&resistance, &demand),
            words,
            w,
        ))
    }

    pub(super) fn fitting_tear_out(&self) -> Option<Check> {
        self.ply_tear_out(
            &self.fitting_ply()?,
            CheckId::FittingTearOut,
            [say::FittingTearOutTears, say::FittingTearOutFine],
        )
    }

    fn ply_tear_out(&self, ply: &Ply, id: CheckId, words: [Sentence<2>; 2]) -> Option<Check> {
        let s = self.s;
        let (fy, fu) = ply.strength;
        let clear = self.clear(ply.edge, ply.hole);
        let d = s.bolting.thread.major();
        let us = bearing::tear_out(fu, clear, ply.thickness).si();
        let eu = self.en_bearing(ply, Some(ply.edge));
        let yields = us * fy.si() / fu.si();
        let soft = bearing::aluminium_ply(fu, d, ply.thickness, Some(ply.edge)).si();
        let omega = if ply.sheet {
            bearing::OMEGA_SHEET
        } else {
            shear::OMEGA
        };
        let resistances = [
            Resistance::allowable(us, omega, yields),
            Resistance::design(eu, yields),
            Resistance::allowable(soft, bearing::OMEGA_ALUMINIUM, yields),
        ];
        let resistances = if ply.aluminium {
            &resistances[..]
        } else {
            &resistances[..2]
        };
        let (resistance, demand) =
            self.governing_demand(resistances, &|loads| self.per_plane(loads.largest_in_plane))?;
        let mut w = self.sheet();
        w.line(
            &Line {
                symbol: "R",
                what: ply.tears,
                formula: "1.2·l_c·t·F_u",
            },
            substituted![("l_c", clear), ("t", ply.thickness), ("F_u", fu)],
            newton(us),
            Cite::new(Source::Aisc360_22, "J3.11a", Flag::Read),
        );
        let place = self.hole_place(Some(ply.edge));
        let bolt_over_ply = s.bolting.strength.tensile.si() / fu.si();
        w.line(
            &Line {
                symbol: "F_b,Rd",
                what: "the same by the European column, for a design load",
                formula: "k_1·α_b·f_u·d·t/γ_M2",
            },
            substituted![
                ("k_1", Ratio(place.k_1(ply.hole))),
                ("α_b", Ratio(place.alpha_b(ply.hole, bolt_over_ply))),
                ("f_u", fu),
                ("γ_M2", Ratio(bearing::GAMMA_M2))
            ],
            newton(eu),
            Cite::new(Source::En1993_1_8, "Table 3.4", Flag::Read),
        );
        if ply.aluminium {
            w.line(
                &Line {
                    symbol: "R_a",
                    what: "aluminum part, edge counted",
                    formula: "min(d_e, 2·d)·t·F_tu",
                },
                substituted![("F_tu", fu)],
                newton(soft),
                Cite::new(Source::Adm2020, "chapter J", Flag::Memory),
            );
        }
        Some(Self::of_resistance(id, (&resistance, &demand), words, w))
    }
}

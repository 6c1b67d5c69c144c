//! What carries the load once the joint has slipped: the bolt in shear, the walls at their holes.

use super::demand::Demand;
use super::{Resistance, Working};
use crate::catalog::{LoadKind, ThreadShear};
use crate::cite::{Cite, Flag, Source};
use crate::evaluate::analysis::Analysis;
use crate::evaluate::loads::BoltLoads;
use crate::mechanics::bearing::{GAMMA_M2, GAMMA_Q};
use crate::mechanics::instantaneous_centre::{InPlane, multiple_of_load};
use crate::mechanics::{en_bolt, pin, shear};
use crate::quantity::{Count, InUnits, Length, Ratio, Stress, mm, newton};
use crate::report::working::Line;
use crate::report::{Check, CheckId, say, substituted};
use crate::support;

impl Analysis<'_> {
    /// Whether threads reach a plane where the bolt is sheared. Where a plate may lie between fitting
    /// and tube it is taken to lie there: threads come sooner.
    pub(super) fn threads_in_plane(&self) -> bool {
        let s = self.s;
        let b = &s.bolting;
        let plates = if s.support.has_plates() && !s.member.is_open() {
            s.spreader.thickness * b.slip_planes()
        } else {
            mm(0.0)
        };
        let through = if b.two_cheeks { s.tube.depth } else { mm(0.0) };
        let mut far = b.washer.thickness + s.fitting.thickness + s.fitting.gap + through + plates;
        if b.single_ply || b.one_sided() {
            // Nobody says on which side the head is: threads on the side where they come sooner.
            let plate = if s.support.has_plates() {
                s.spreader.thickness
            } else {
                mm(0.0)
            };
            let other_way = b.washer.thickness + plate + s.clamped() + s.fitting.gap;
            far = far.max(other_way);
        }
        // A307 has one value, threads in the plane or not.
        b.grade.thread_shear() == ThreadShear::OneValue || self.residual.shank < far
    }

    /// What packing between fitting and member, plates too, leaves of the bolt's shear strength.
    fn beside_packing(&self) -> f64 {
        shear::packed(self.s.bolting.thread.major(), self.s.fitting.gap)
    }

    /// Shear strength of one bolt, all planes, by the two published rules.
    pub(super) fn shear_resistances(&self) -> [Resistance; 2] {
        let b = &self.s.bolting;
        let planes = b.slip_planes() * self.beside_packing();
        let us = shear::bolt(
            b.strength.tensile,
            b.thread.shank_area(),
            planes,
            self.threads_in_plane(),
        )
        .si();
        let eu =
            planes * en_bolt::shear(self.alpha_v(), b.strength.tensile, self.shear_area()).si();
        // Distortion energy, on the area that is there.
        let yields = planes * self.shear_area().si() * b.yield_strength().si() / 3f64.sqrt();
        [
            Resistance::allowable(us, shear::OMEGA, yields),
            Resistance::design(eu, yields),
        ]
    }

    fn alpha_v(&self) -> f64 {
        if self.threads_in_plane() {
            en_bolt::alpha_v_threads(self.s.bolting.grade)
        } else {
            0.6
        }
    }

    fn shear_area(&self) -> crate::quantity::Area {
        let thread = self.s.bolting.thread;
        if self.threads_in_plane() {
            thread.stress_area()
        } else {
            thread.shank_area()
        }
    }

    pub(super) fn bolt_shear(&self) -> Option<Check> {
        let b = &self.s.bolting;
        let threads = self.threads_in_plane();
        let resistances = self.shear_resistances();
        let [us, eu] = resistances.map(|resistance| resistance.capacity);
        let (resistance, demand) =
            self.governing_demand(&resistances, &|loads| loads.largest_in_plane)?;
        let mut w = self.sheet();
        self.case_line(&mut w, &demand);
        let packed = self.beside_packing();
        if packed < 1.0 {
            w.line(
                &Line {
                    symbol: "β_p",
                    what: "what packing or a plate between bracket and member leaves of it",
                    formula: "9·d/(8·d + 3·t_p)",
                },
                substituted![("d", b.thread.major()), ("t_p", self.s.fitting.gap)],
                Ratio(packed),
                Cite::new(Source::En1993_1_8, "3.6.1(12)", Flag::Memory),
            );
        }
        w.line(
            &Line {
                symbol: "R",
                what: "shear strength of one bolt",
                formula: "m·β_p·c·F_u·A_b",
            },
            substituted![
                ("m", Count(b.slip_planes())),
                ("β_p", Ratio(packed)),
                ("c", Ratio(if threads { 0.450 } else { 0.563 })),
                ("F_u", b.strength.tensile),
                ("A_b", b.thread.shank_area())
            ],
            newton(us),
            Cite::new(Source::Aisc360_22, "Table J3.2", Flag::Read),
        );
        w.line(
            &Line {
                symbol: "F_v,Rd",
                what: "the same by the European column, for a design load",
                formula: "m·β_p·α_v·f_ub·A/γ_M2",
            },
            substituted![
                ("m", Count(b.slip_planes())),
                ("β_p", Ratio(packed)),
                ("α_v", Ratio(self.alpha_v())),
                ("f_ub", b.strength.tensile),
                ("A", self.shear_area()),
                ("γ_M2", Ratio(GAMMA_M2))
            ],
            newton(eu),
            Cite::new(Source::En1993_1_8, "Table 3.4", Flag::Read),
        );
        match demand.loads.case.kind {
            LoadKind::Service => w.line(
                &Line {
                    symbol: "R/Ω",
                    what: "the safer of the two, for a service load",
                    formula: "min(R/2.00, F_v,Rd/γ_Q)",
                },
                substituted![
                    ("R", newton(us)),
                    ("F_v,Rd", newton(eu)),
                    ("γ_Q", Ratio(GAMMA_Q))
                ],
                newton(resistance.capacity / resistance.factor),
                Cite::new(Source::En1990, "variable action", Flag::Memory),
            ),
            LoadKind::Proof => w.line(
                &Line {
                    symbol: "V_y",
                    what: "force at which it begins to yield",
                    formula: "m·β_p·A·f_y/√3",
                },
                substituted![
                    ("m", Count(b.slip_planes())),
                    ("β_p", Ratio(packed)),
                    ("A", self.shear_area()),
                    ("f_y", b.yield_strength())
                ],
                newton(resistance.yields),
                Cite::new(Source::Elementary, "distortion energy", Flag::Computed),
            ),
            LoadKind::Ultimate => self.centre_line(&mut w, &demand, resistance.capacity),
        }
        let check = Self::of_resistance(
            CheckId::BoltShear,
            (&resistance, &demand),
            if threads {
                [say::ShearThreads; 2]
            } else {
                [say::ShearShank; 2]
            },
            w,
        );
        let untaken = self.untaken(&|kind| kind == LoadKind::Ultimate);
        Some(Self::with_lever(check, untaken))
    }

    fn centre_line(&self, w: &mut Working, demand: &Demand<'_>, capacity: f64) {
        let Some(multiple) = self.instantaneous_centre(demand, capacity) else {
            return;
        };
        w.line(
            &Line {
                symbol: "λ",
                what: "second opinion: breaking load of the whole group, times this case",
                formula: "instantaneous center, R = R_ult·(1 − e^(−10Δ))^0.55",
            },
            substituted![
                ("R_ult", newton(capacity)),
                ("λ by vectors", Ratio(capacity / demand.force.max(1e-9)))
            ],
            Ratio(multiple),
            Cite::new(
                Source::AiscManual,
                "Part 7, eccentrically loaded groups",
                Flag::Memory,
            ),
        );
    }

    /// Breaking load of the group by its instantaneous centre, as a multiple of an ultimate case. The
    /// verdict keeps to the vectors, the safer of the two.
    fn instantaneous_centre(&self, demand: &Demand<'_>, capacity: f64) -> Option<f64> {
        let loads = demand.loads;
        let wanted = self.working && loads.case.kind == LoadKind::Ultimate && loads.couple == 0.0;
        let load = InPlane {
            along: loads.group.along,
            across: loads.group.across,
            twist: loads.group.twist,
        };
        wanted
            .then(|| multiple_of_load(&self.cases().places, &load, capacity))
            .flatten()
    }

    /// Yield and tensile strength of the tube at the hole; next to the weld of a welded sleeve those of
    /// the weakened metal.
    pub(super) fn tube_strengths(&self) -> (Stress, Stress) {
        let s = self.s;
        let plain = (s.tube.yield_least, s.tube.ultimate_least);
        let welded = support::is_welded(s);
        match s.tube.material.welded() {
            Some(near) if welded => (
                plain.0.min(near.least.yield_strength()),
                plain.1.min(near.least.ultimate_strength()),
            ),
            _ => plain,
        }
    }

    /// Hole in the wall of the tube: that of a through sleeve is as wide as the sleeve.
    pub(super) fn hole_in_tube(&self) -> Length {
        support::of(self.s).hole_in_wall(self.s)
    }

    /// Lever between fitting and wall, with all that there is of each.
    fn lever(&self) -> Length {
        let s = self.s;
        pin::lever(s.fitting.thickness, s.fitting.gap, self.pressed_depth())
    }

    /// Of fitting and wall, no more than bearing needs in a case.
    ///
    /// ```text
    /// t_c = min(t_fitting, n·V/p),  t_w = min(t_wall, n·R/p),  R = V·(1 + a/L),  p = 1.8·f_y·d
    /// ```
    ///
    /// with `n` the factor on bearing of that kind of case. Metal beside the plane may carry all of it: by the lower-bound
    /// theorem what lies farther out cannot make the bolt weaker, and so more thickness is never worse.
    pub(super) fn pressed_plies(&self, loads: &BoltLoads) -> [Length; 2] {
        let s = self.s;
        let plane = self.per_plane(loads.largest_in_plane);
        let factor = match loads.case.kind {
            LoadKind::Service => shear::OMEGA,
            LoadKind::Proof => 1.8,
            LoadKind::Ultimate => 1.0,
        };
        let d = s.bolting.thread.major();
        let needed = |fy: Stress| factor * plane / (1.8 * fy.si() * d.si()).max(1e-9);
        let fitting = s
            .fitting
            .thickness
            .min(Length::of_si(needed(s.fitting.yield_least)));
        // Whatever presses there: sleeve or wall, next to a weld or not.
        let (_, pressed) = support::of(s).pin_in_wall(s);
        let (beside_weld, _) = self.tube_strengths();
        let sleeve = support::part_strengths(s)
            .filter(|_| support::is_welded(s))
            .map_or(beside_weld, |[least, _]| Stress::of_si(least));
        let alone = needed(pressed.min(beside_weld).min(sleeve));
        let wall = if self.tips_in_the_walls() {
            let apart = (s.tube.depth - s.tube.design_wall).si().max(1e-6);
            let beside = 1.0 + (fitting * 0.5 + s.fitting.gap).si() / apart;
            alone * beside / (1.0 - alone * 0.5 / apart).max(1e-3)
        } else {
            alone
        };
        [fitting, self.pressed_depth().min(Length::of_si(wall))]
    }

    /// Whether one fitting pulls at a bolt that both walls hold.
    fn tips_in_the_walls(&self) -> bool {
        let b = &self.s.bolting;
        !b.two_cheeks && !b.single_ply && support::of(self.s).is_hollow()
    }

    /// How deep the bolt is pressed beside a slip plane: the wall, or what counts of a solid bar.
    pub(super) fn pressed_depth(&self) -> Length {
        if support::of(self.s).is_hollow() {
            self.s.tube.design_wall
        } else {
            self.member_ply().thickness
        }
    }

    /// Of a force on one bolt, what falls on one plane.
    pub(super) fn per_plane(&self, in_plane: f64) -> f64 {
        in_plane / self.s.bolting.slip_planes()
    }

    /// Of a force on one bolt, what it presses on one wall. With one fitting the near wall takes all of
    /// it and, as the bolt tips, a little more.
    pub(super) fn on_wall(&self, in_plane: f64) -> f64 {
        let s = self.s;
        let plane = self.per_plane(in_plane);
        if !self.tips_in_the_walls() {
            return plane;
        }
        let apart = s.tube.depth - s.tube.design_wall;
        pin::near_wall(newton(plane), self.lever(), apart).si()
    }

    pub(super) fn wall_bearing(&self) -> Option<Check> {
        let s = self.s;
        if s.member.is_open() || !support::of(s).is_hollow() {
            return self.member_bearing();
        }
        let (d, fy) = support::of(s).pin_in_wall(s);
        // Bolts from the top are pushed where the fitting sits: the far wall hardly helps.
        let walls = s.bolting.slip_planes();
        let mut capacity = shear::wall_bearing(fy, d, s.tube.design_wall, walls).si();
        let mut w = self.sheet();
        w.line(
            &Line {
                symbol: "R",
                what: "bearing on the walls of the bolt, or of a sleeve that it pushes",
                formula: "n·1.8·f_y·d·t",
            },
            substituted![
                ("n", Count(walls)),
                ("f_y", fy),
                ("d", d),
                ("t", s.tube.design_wall)
            ],
            newton(capacity),
            Cite::new(Source::Aisc360_22, "J3.11b, J7", Flag::Read),
        );
        let (softened, _) = self.tube_strengths();
        if softened < s.tube.yield_least {
            // The sleeve has lost as much as the wall, and the bolt presses at the mouth of its bore: one diameter
            // deep, as in a solid bar.
            let of_sleeve =
                support::part_strengths(s).map_or(softened, |[least, _]| Stress::of_si(least));
            let softened = softened.min(of_sleeve);
            let major = s.bolting.thread.major();
            let sleeve = shear::wall_bearing(softened, s.sleeve.outer, s.tube.design_wall, walls);
            let bore = shear::wall_bearing(softened, major, major, walls);
            let at_weld = sleeve.min(bore).si();
            w.line(
                &Line {
                    symbol: "R_w",
                    what: "bearing of the welded sleeve on the weakened walls, of the bolt in its weakened bore",
                    formula: "n·1.8·f_y,w·min(D·t, d²)",
                },
                substituted![
                    ("n", Count(walls)),
                    ("f_y,w", softened),
                    ("D", s.sleeve.outer),
                    ("t", s.tube.design_wall),
                    ("d", major)
                ],
                newton(at_weld),
                Cite::new(Source::Aisc360_22, "J3.11b, J7", Flag::Read),
            );
            capacity = capacity.min(at_weld);
        }
        // No lasting set: mean pressure at the yield strength, not at 1.8 times it.
        let resistance = Resistance::allowable(capacity, shear::OMEGA, capacity / 1.8);
        let (resistance, demand) = self.governing_demand(&[resistance], &|loads| {
            self.on_wall(loads.largest_in_plane) * walls
        })?;
        Some(Self::of_resistance(
            CheckId::WallBearing,
            (&resistance, &demand),
            [say::BearingOval, say::BearingFine],
            w,
        ))
    }
}

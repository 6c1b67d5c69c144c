//! The axle case, and the bolt under everything at once.

use super::{Joint, amount, said};
use crate::cite::{Cite, Flag};
use crate::mechanics::{en_bolt, interaction, pin, shear};
use crate::quantity::Dimension::{Area, Force, Length, Moment, Ratio, Stress};
use crate::quantity::{InUnits, Length as Metres, newton};
use crate::report::{Check, CheckId, Verdict};
use crate::scenario::SupportKind;

impl Joint<'_> {
    /// Whether the bolt crosses a hollow and can bend in it.
    const fn crosses_a_hollow(&self) -> bool {
        !matches!(
            self.s.support,
            SupportKind::Solid | SupportKind::SolidInsert
        )
    }

    /// Diameter that bends: through the threads where they reach that far.
    fn bending_diameter(&self) -> Metres {
        let thread = self.s.bolting.thread;
        if self.threads_in_plane() {
            thread.minor_diameter()
        } else {
            thread.major()
        }
    }

    /// Moment asked for and moment strength, N·m.
    fn bending(&self) -> Option<(f64, f64)> {
        if !self.crosses_a_hollow() {
            return None;
        }
        let moment = pin::moment(newton(self.per_plane()), self.lever()).si();
        let strength = pin::strength(self.s.bolting.yield_strength(), self.bending_diameter()).si();
        Some((moment, strength))
    }

    pub(super) fn bolt_bending(&self) -> Option<Check> {
        let s = self.s;
        let (demand, capacity) = self.bending()?;
        let (fy, d) = (s.bolting.yield_strength(), self.bending_diameter());
        let major = s.bolting.thread.major();
        let plane = self.per_plane();
        let mut w = self.sheet();
        let statics = Cite::new("elementary", "beam", Flag::Computed);
        w.step(
            ("a", "lever between fitting and wall", "t_c/2 + g + t_w/2"),
            &[
                ("t_c", s.fitting.thickness.si(), Length),
                ("g", s.fitting.gap.si(), Length),
                ("t_w", s.tube.design_wall.si(), Length),
            ],
            (self.lever().si(), Length),
            statics,
        );
        w.step(
            ("M", "bending of the bolt as an axle", "V/m·a"),
            &[("V/m", plane, Force), ("a", self.lever().si(), Length)],
            (demand, Moment),
            statics,
        );
        w.step(
            ("M_y", "moment at which it begins to yield", "π·d³/32·f_y"),
            &[("d", d.si(), Length), ("f_y", fy.si(), Stress)],
            (pin::first_yield(fy, d).si(), Moment),
            statics,
        );
        w.step(
            ("M_R", "bending strength counted on", "1.5·M_y"),
            &[("M_y", pin::first_yield(fy, d).si(), Moment)],
            (capacity, Moment),
            Cite::new("en-1993-1-8", "Table 3.10, pins", Flag::Memory),
        );
        for (symbol, what, force, thickness) in [
            (
                "p_w",
                "pressure on the rim of the wall",
                self.on_wall(),
                s.tube.design_wall,
            ),
            (
                "p_c",
                "pressure on the rim of the fitting",
                plane,
                s.fitting.thickness,
            ),
        ] {
            if thickness.si() > 0.0 {
                w.step(
                    (symbol, what, "R/(d·t)"),
                    &[
                        ("R", force, Force),
                        ("d", major.si(), Length),
                        ("t", thickness.si(), Length),
                    ],
                    (pin::pressure(newton(force), major, thickness).si(), Stress),
                    statics,
                );
            }
        }
        let utilisation = pin::OMEGA * demand / capacity.max(1e-9);
        Some(Check {
            id: CheckId::BoltBending,
            verdict: Verdict::of(utilisation),
            demand: amount(demand, Moment),
            capacity: amount(capacity, Moment),
            factor: pin::OMEGA,
            factor_is: "factor-strength",
            utilisation: Some(utilisation),
            reason: said(
                if utilisation > 1.0 {
                    "bending-bends"
                } else {
                    "bending-stays-straight"
                },
                &[
                    (demand, Moment),
                    (capacity, Moment),
                    (self.lever().si(), Length),
                ],
            ),
            steps: w.finish(),
        })
    }

    /// Shear, pull and bending in one bolt. The largest of each is taken together, whichever bolt it
    /// falls on.
    pub(super) fn bolt_combined(&self) -> Option<Check> {
        let b = &self.s.bolting;
        let pull = self.service.largest_pull.max(0.0);
        let bending = self.bending();
        if pull <= 0.0 && bending.is_none() {
            return None;
        }
        let shear_force = self.service.largest_in_plane;
        let (way, [us, eu]) = self.shear_way();
        let tensile = b.strength.tensile;
        let us_tension = 0.75 * tensile.si() * b.thread.shank_area().si();
        let eu_tension = en_bolt::tension(tensile, b.thread.stress_area()).si();
        let gamma = crate::mechanics::bearing::GAMMA_Q;
        let [shear_us, pull_us] = [shear_force / us, pull / us_tension].map(|u| u * shear::OMEGA);
        let [shear_eu, pull_eu] = [shear_force / eu, pull / eu_tension].map(|u| u * gamma);
        let american = interaction::aisc(shear_us, pull_us);
        let european = interaction::european(shear_eu, pull_eu);
        let bent = bending.map_or(0.0, |(moment, strength)| {
            interaction::pin(
                pin::OMEGA * moment / strength,
                way.factor * shear_force / way.capacity,
            )
        });
        let mut w = self.sheet();
        w.step(
            ("R_t", "strength of the bolt in tension", "0.75·F_u·A_b"),
            &[
                ("F_u", tensile.si(), Stress),
                ("A_b", b.thread.shank_area().si(), Area),
            ],
            (us_tension, Force),
            Cite::new("aisc-360-22", "Table J3.2", Flag::Read),
        );
        w.step(
            ("U_1", "shear and pull", "max(u_v, u_t, (u_v + u_t)/1.3)"),
            &[("u_v", shear_us, Ratio), ("u_t", pull_us, Ratio)],
            (american, Ratio),
            Cite::new("aisc-360-22", "J3.8", Flag::Read),
        );
        w.step(
            (
                "F_t,Rd",
                "tension by the European column",
                "0.9·f_ub·A_s/γ_M2",
            ),
            &[
                ("f_ub", tensile.si(), Stress),
                ("A_s", b.thread.stress_area().si(), Area),
            ],
            (eu_tension, Force),
            Cite::new("en-1993-1-8", "Table 3.4", Flag::Read),
        );
        w.step(
            (
                "U_2",
                "shear and pull by the European column",
                "max(u_t, u_v + u_t/1.4)",
            ),
            &[("u_v", shear_eu, Ratio), ("u_t", pull_eu, Ratio)],
            (european, Ratio),
            Cite::new("en-1993-1-8", "Table 3.4", Flag::Read),
        );
        if bending.is_some() {
            w.step(
                ("U_3", "bending and shear as a pin", "√(u_M² + u_v²)"),
                &[("u_v", way.factor * shear_force / way.capacity, Ratio)],
                (bent, Ratio),
                Cite::new("en-1993-1-8", "Table 3.10, pins", Flag::Memory),
            );
        }
        let utilisation = american.max(european).max(bent);
        Some(Check {
            id: CheckId::BoltCombined,
            verdict: Verdict::of(utilisation),
            demand: amount(utilisation, Ratio),
            capacity: amount(1.0, Ratio),
            factor: 1.0,
            factor_is: "factor-inside",
            utilisation: Some(utilisation),
            reason: said(
                if utilisation > 1.0 {
                    "combined-too-much"
                } else {
                    "combined-fine"
                },
                &[(shear_force, Force), (pull, Force)],
            ),
            steps: w.finish(),
        })
    }
}

//! The axle case: the bolt bends between fitting and wall.

use super::{Resistance, amount, said};
use crate::cite::{Cite, Flag};
use crate::evaluate::analysis::Analysis;
use crate::mechanics::pin;
use crate::quantity::Dimension::{Force, Length, Moment, Stress};
use crate::quantity::{InUnits, Length as Metres, newton};
use crate::report::{Check, CheckId, Verdict, substituted};
use crate::scenario::SupportKind;

impl Analysis<'_> {
    /// Whether the bolt crosses a hollow or a gap and can bend in it.
    fn crosses_a_hollow(&self) -> bool {
        let s = self.s;
        if s.member.is_open() {
            // Two plies that lie on each other do not let it bend; apart they do.
            return s.fitting.gap.si() > 0.0;
        }
        !matches!(s.support, SupportKind::Solid | SupportKind::SolidInsert)
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

    /// Moment in the bolt from a force on it, N·m.
    pub(super) fn moment(&self, in_plane: f64) -> f64 {
        pin::moment(newton(self.per_plane(in_plane)), self.lever()).si()
    }

    /// Moment strength, N·m; `None` where the bolt has no room to bend.
    pub(super) fn bending_resistance(&self) -> Option<Resistance> {
        let (fy, d) = (self.s.bolting.yield_strength(), self.bending_diameter());
        self.crosses_a_hollow().then(|| {
            Resistance::allowable(
                pin::strength(fy, d).si(),
                pin::OMEGA,
                pin::first_yield(fy, d).si(),
            )
        })
    }

    pub(super) fn bolt_bending(&self) -> Option<Check> {
        let s = self.s;
        let (resistance, demand) = self
            .governing_demand(&[self.bending_resistance()?], &|loads| {
                self.moment(loads.largest_in_plane)
            })?;
        let (moment, capacity) = (demand.force, resistance.capacity);
        let (fy, d) = (s.bolting.yield_strength(), self.bending_diameter());
        let major = s.bolting.thread.major();
        let in_plane = demand.loads.largest_in_plane;
        let plane = self.per_plane(in_plane);
        let mut w = self.sheet();
        let statics = Cite::new("elementary", "beam", Flag::Computed);
        w.step(
            &("a", "lever between fitting and wall", "t_c/2 + g + t_w/2"),
            substituted![
                ("t_c", s.fitting.thickness.si(), Length),
                ("g", s.fitting.gap.si(), Length),
                ("t_w", s.tube.design_wall.si(), Length),
            ],
            (self.lever().si(), Length),
            statics,
        );
        w.step(
            &("M", "bending of the bolt as an axle", "V/m·a"),
            substituted![("V/m", plane, Force), ("a", self.lever().si(), Length)],
            (moment, Moment),
            statics,
        );
        w.step(
            &("M_y", "moment at which it begins to yield", "π·d³/32·f_y"),
            substituted![("d", d.si(), Length), ("f_y", fy.si(), Stress)],
            (pin::first_yield(fy, d).si(), Moment),
            statics,
        );
        w.step(
            &("M_R", "bending strength counted on", "1.5·M_y"),
            substituted![("M_y", pin::first_yield(fy, d).si(), Moment)],
            (capacity, Moment),
            Cite::new("en-1993-1-8", "Table 3.10, pins", Flag::Memory),
        );
        for (symbol, what, force, thickness) in [
            (
                "p_w",
                "pressure on the rim of the wall",
                self.on_wall(in_plane),
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
                    &(symbol, what, "R/(d·t)"),
                    substituted![
                        ("R", force, Force),
                        ("d", major.si(), Length),
                        ("t", thickness.si(), Length),
                    ],
                    (pin::pressure(newton(force), major, thickness).si(), Stress),
                    statics,
                );
            }
        }
        let utilisation = demand.used(capacity);
        Some(demand.name(Check {
            id: CheckId::BoltBending,
            verdict: Verdict::of(utilisation),
            demand: amount(moment, Moment),
            capacity: amount(capacity, Moment),
            factor: demand.factor,
            factor_is: demand.factor_is,
            utilisation: Some(utilisation),
            case: None,
            reason: said(
                if utilisation > 1.0 {
                    "bending-bends"
                } else {
                    "bending-stays-straight"
                },
                &[
                    (moment, Moment),
                    (capacity, Moment),
                    (self.lever().si(), Length),
                ],
            ),
            steps: w.finish(),
        }))
    }
}

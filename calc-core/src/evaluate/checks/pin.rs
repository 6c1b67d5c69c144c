//! The axle case: the bolt bends between fitting and wall.

use super::{Resistance, said};
use crate::cite::{Cite, Flag, Source};
use crate::evaluate::analysis::Analysis;
use crate::evaluate::loads::BoltLoads;
use crate::mechanics::pin;
use crate::quantity::{InUnits, Length, Moment, newton};
use crate::report::working::Line;
use crate::report::{Check, CheckId, say, substituted};
use crate::support;

impl Analysis<'_> {
    /// Whether the bolt crosses a hollow or a gap and can bend in it.
    fn crosses_a_hollow(&self) -> bool {
        let s = self.s;
        if s.member.is_open() {
            // Two plies that lie on each other do not let it bend; apart they do.
            return s.fitting.gap.si() > 0.0;
        }
        // Beside a bar or a block as beside a hollow: across air or packing nothing holds the bolt straight.
        support::of(s).leaves_gap() || s.fitting.apart
    }

    /// Diameter that bends: through the threads where they reach that far.
    fn bending_diameter(&self) -> Length {
        let thread = self.s.bolting.thread;
        if self.threads_in_plane() {
            thread.minor_diameter()
        } else {
            thread.major()
        }
    }

    /// Lever between fitting and wall in a case.
    fn lever_in(&self, loads: &BoltLoads) -> Length {
        let [fitting, wall] = self.pressed_plies(loads);
        pin::lever(fitting, self.s.fitting.gap, wall)
    }

    /// Moment in the bolt from the largest force on one, N·m.
    pub(super) fn moment(&self, loads: &BoltLoads) -> f64 {
        let plane = self.per_plane(loads.largest_in_plane);
        pin::moment(newton(plane), self.lever_in(loads)).si()
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
        let (resistance, demand) =
            self.governing_demand(&[self.bending_resistance()?], &|loads| self.moment(loads))?;
        let (moment, capacity) = (demand.force, resistance.capacity);
        let (fy, d) = (s.bolting.yield_strength(), self.bending_diameter());
        let major = s.bolting.thread.major();
        let in_plane = demand.loads.largest_in_plane;
        let plane = self.per_plane(in_plane);
        let [fitting, wall] = self.pressed_plies(demand.loads);
        let lever = self.lever_in(demand.loads);
        let mut w = self.sheet();
        let statics = Cite::new(Source::Elementary, "beam", Flag::Computed);
        w.line(
            &Line {
                symbol: "a",
                what: "lever arm between bracket and wall, of each as much as bearing needs",
                formula: "t_c/2 + g + t_w/2",
            },
            substituted![("t_c", fitting), ("g", s.fitting.gap), ("t_w", wall)],
            lever,
            statics,
        );
        w.line(
            &Line {
                symbol: "M",
                what: "bending of the bolt as a loose pin",
                formula: "V/m·a",
            },
            substituted![("V/m", newton(plane)), ("a", lever)],
            Moment(moment),
            statics,
        );
        w.line(
            &Line {
                symbol: "M_y",
                what: "moment at which it begins to yield",
                formula: "π·d³/32·f_y",
            },
            substituted![("d", d), ("f_y", fy)],
            Moment(pin::first_yield(fy, d).si()),
            statics,
        );
        w.line(
            &Line {
                symbol: "M_R",
                what: "bending strength counted on",
                formula: "1.5·M_y",
            },
            substituted![("M_y", Moment(pin::first_yield(fy, d).si()))],
            Moment(capacity),
            Cite::new(Source::En1993_1_8, "Table 3.10, pins", Flag::Memory),
        );
        for (symbol, what, force, thickness) in [
            (
                "p_w",
                "pressure on the edge of the hole in the wall",
                self.on_wall(in_plane),
                self.pressed_depth(),
            ),
            (
                "p_c",
                "pressure on the edge of the hole in the bracket",
                plane,
                s.fitting.thickness,
            ),
        ] {
            if thickness.si() > 0.0 {
                w.line(
                    &Line {
                        symbol,
                        what,
                        formula: "R/(d·t)",
                    },
                    substituted![("R", newton(force)), ("d", major), ("t", thickness)],
                    pin::pressure(newton(force), major, thickness),
                    statics,
                );
            }
        }
        let judged = demand.against::<Moment>(CheckId::BoltBending, capacity);
        let code = if judged.exceeds() {
            say::BendingBends
        } else {
            say::BendingStaysStraight
        };
        let reason = said(code, (Moment(moment), Moment(capacity), lever));
        Some(judged.reason(reason).working(w))
    }
}

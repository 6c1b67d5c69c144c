//! What only a channel, an angle or a round tube is asked: how the washer sits, how far the hole is from
//! the free edge, whether the flange bends under an outside pull.

use super::Working;
use super::pull::bending;
use crate::cite::{Cite, Flag, Source};
use crate::evaluate::analysis::Analysis;
use crate::layout::{Face, root_fillet};
use crate::mechanics::flange::{self, Held, OMEGA, SHAPE, Turning};
use crate::mechanics::net_section::effective_hole;
use crate::mechanics::seat::{STEEPEST, bolt_bending};
use crate::quantity::{Count, Force, InUnits, Length, Share, mm, newton};
use crate::report::working::Line;
use crate::report::{Check, CheckId, Verdict, say, substituted};
use crate::scenario::MemberKind;
use crate::support::seat;

impl Analysis<'_> {
    /// Room for the washer between the nearest row and the face of the upright part; `None` where there
    /// is none to be in the way.
    fn room(&self) -> Option<Length> {
        let (rows, held) = self.s.strip()?;
        let nearest = |row: &Length| match held {
            Held::OnOneSide => *row,
            Held::OnBothSides(span) => row.min(span - *row),
        };
        rows.iter().map(nearest).reduce(Length::min)
    }

    /// Whether head and nut bear flat. A slope decides first, then the room beside the upright part.
    pub(super) fn washer_seat(&self) -> Option<Check> {
        let s = self.s;
        let (slope, room) = (seat::slope(s), self.room());
        if slope.is_none() && room.is_none() {
            return None;
        }
        let needed = s.bolting.washer.outer * 0.5;
        let crowded = room.filter(|room| needed.si() > room.si() * (1.0 + 1e-9));
        // Nobody gives the fillet: within the largest that there may be it is not known.
        let off_fillet = room.map(|room| room - root_fillet(s));
        let on_fillet = off_fillet.filter(|room| needed.si() > room.si() * (1.0 + 1e-9));
        let by_slope = |slope| Check::of(CheckId::WasherSeat, Share(slope), Share(STEEPEST));
        let by_room = |room| Check::of(CheckId::WasherSeat, needed, room);
        let (judged, verdict, code) = match (slope, crowded) {
            // What a flat cheek does on a round wall was not checked; a washer goes wrong for certain.
            (Some(slope), _) if seat::on_line(s) => {
                (by_slope(slope), Verdict::NotChecked, say::SeatLine)
            }
            (Some(slope), _) if seat::on_edge(s) => (
                by_slope(slope),
                Verdict::DoesNotHold,
                if s.member.is_round() {
                    say::SeatRound
                } else {
                    say::SeatSlopes
                },
            ),
            (_, Some(room)) => (by_room(room), Verdict::DoesNotHold, say::SeatNoRoom),
            _ if let Some(room) = on_fillet => {
                (by_room(room), Verdict::NotChecked, say::SeatFillet)
            }
            (Some(slope), None) => (
                by_slope(slope),
                Verdict::Holds,
                if slope > STEEPEST {
                    say::SeatMadeToFit
                } else {
                    say::SeatFlat
                },
            ),
            (None, None) => (
                by_room(room.unwrap_or_default()),
                Verdict::Holds,
                say::SeatRoom,
            ),
        };
        let judged = match verdict {
            Verdict::DoesNotHold => judged,
            _ => judged.without_share(),
        };
        Some(
            judged
                .stands(verdict)
                .says_of_both(code)
                .working(self.explained(|w| self.seat_lines(w, slope, room))),
        )
    }

    fn seat_lines(&self, w: &mut Working, slope: Option<f64>, room: Option<Length>) {
        let s = self.s;
        if let Some(slope) = slope.filter(|slope| *slope > 0.0) {
            let round = s.member.kind == MemberKind::RoundTube;
            let steepest = Cite::new(Source::Rcsc, "6.1.1 (1:20)", Flag::ReadSecondHand);
            let geometry = Cite::new(Source::Elementary, "geometry", Flag::Computed);
            let what = "slope of the surface under head or nut";
            if round {
                w.line(
                    &Line {
                        symbol: "s",
                        what,
                        formula: "d_w/D",
                    },
                    substituted![("d_w", s.bolting.washer.outer), ("D", s.tube.width)],
                    Share(slope),
                    geometry,
                );
            } else {
                w.line(
                    &Line {
                        symbol: "s",
                        what,
                        formula: "as given",
                    },
                    substituted![],
                    Share(slope),
                    geometry,
                );
            }
            w.line(
                &Line {
                    symbol: "s_max",
                    what: "steepest that they may bear on",
                    formula: "1/20",
                },
                substituted![],
                Share(STEEPEST),
                steepest,
            );
            if !round {
                let (e, d) = (s.bolting.grade.modulus(), s.bolting.thread.major());
                w.line(
                    &Line {
                        symbol: "σ_b",
                        what: "bending of the bolt if the nut is pulled down flat on it",
                        formula: "E·d·s/(2·l)",
                    },
                    substituted![
                        ("E", e),
                        ("d", d),
                        ("s", Share(slope)),
                        ("l", self.residual.length)
                    ],
                    bolt_bending(e, d, slope, self.residual.length),
                    Cite::new(Source::Elementary, "bending", Flag::Computed),
                );
            }
        }
        if let Some(room) = room {
            w.line(
                &Line {
                    symbol: "r",
                    what: "half of the washer beside the upright part",
                    formula: "d_w/2",
                },
                substituted![("d_w", s.bolting.washer.outer), ("room", room)],
                s.bolting.washer.outer * 0.5,
                Cite::new(Source::Elementary, "geometry", Flag::Computed),
            );
        }
    }

    /// Only beside a free edge: of a flange, a leg, or a bar.
    pub(super) fn member_edge(&self) -> Option<Check> {
        let s = self.s;
        let solid = s.support.is_solid();
        let given = s
            .free_edge()
            .or_else(|| solid.then(|| Face::new(s).to_edge(s)))?;
        let mut w = self.sheet();
        let needed = self.edge_needed(self.s.bolting.hole, &mut w);
        // Tear-out is worked out to ends and fitting edges; a leg also bends at its free edge: no less than the table.
        Some(self.distance(
            CheckId::MemberEdge,
            (needed, given),
            [say::MemberEdgeTooNear, say::MemberEdgeFarEnough],
            w,
        ))
    }

    /// The clamp itself does not bend a flange that lies on the fitting; an outside pull does.
    /// Pull at which the leg of an angle moves by 1 % of its gauge; infinite for a channel, whose web ends in another
    /// flange: runs of one that turns with its web there are none.
    fn flange_in_service(&self, lever: Length, width: Length) -> Force {
        let s = self.s;
        let leg = s.member.kind == MemberKind::Angle;
        let Some(gauge) = s.farthest_gauge().filter(|_| leg) else {
            return newton(f64::INFINITY);
        };
        flange::at_service_limit(&Turning {
            modulus: s.tube.modulus,
            width,
            thickness: [s.tube.design_wall, s.member.outstanding],
            upright: s.tube.depth - s.tube.design_wall,
            arm: gauge - s.member.outstanding,
            lever,
            gauge,
        })
    }

    pub(super) fn member_flange(&self) -> Option<Check> {
        let s = self.s;
        let (rows, held) = s.strip()?;
        let lever = flange::lever(&rows, held);
        let counted = s.flange_width();
        // A strip held on both sides bends most at the bolt, where the hole is.
        let width = match held {
            Held::OnOneSide => counted,
            Held::OnBothSides(_) => (counted - effective_hole(s.bolting.hole)).max(mm(0.0)),
        };
        let (fy, t) = (s.tube.yield_least, s.tube.design_wall);
        let capacity = flange::strip(fy, t, width, lever).si();
        let limit = self.flange_in_service(lever, width).si();
        let service = OMEGA.max(capacity / limit.max(1e-9));
        let pulled = self.strength((service, SHAPE), &|loads| loads.largest_pull)?;
        let mut w = self.sheet();
        self.case_line(&mut w, &pulled);
        if limit.is_finite() {
            w.line(
                &Line {
                    symbol: "T_1%",
                    what: "pull at which a leg that turns with the other one moves by 1 % of the gauge: the most in service",
                    formula: "0.01·g·E·w/(4·a·c·(a/t³ + H/t_u³))",
                },
                substituted![
                    ("E", s.tube.modulus),
                    ("w", width),
                    ("c", lever),
                    ("t", t),
                    ("t_u", s.member.outstanding),
                    ("H", s.tube.depth),
                ],
                newton(limit),
                Cite::new(Source::OwnDerivation, "elastic strips", Flag::Computed),
            );
        }
        w.line(
            &Line {
                symbol: "c",
                what: "lever of the pull on what holds the strip",
                formula: match held {
                    Held::OnOneSide => "Σ a_i, to the face of the upright part",
                    Held::OnBothSides(_) => "largest moment of a hinged strip, over the pull",
                },
            },
            substituted![("rows", Count(rows.len() as f64))],
            lever,
            Cite::new(Source::Elementary, "statics", Flag::Computed),
        );
        let length = Line {
            symbol: "w",
            what: "length of flange counted with one bolt",
            formula: "45° to either side, to half of the spacing and to the end",
        };
        let source = Cite::new(Source::AiscManual, "Part 9, tributary length", Flag::Memory);
        let end = s.tube.end_distance;
        // Beside no other bolt there is no spacing.
        if s.bolting.along > 1 {
            let pitch = s.bolting.spacing_along;
            w.line(
                &length,
                substituted![("p", pitch), ("e", end)],
                width,
                source,
            );
        } else {
            w.line(&length, substituted![("e", end)], width, source);
        }
        w.line(
            &Line {
                symbol: "T",
                what: "pull at which that strip is plastic",
                formula: "w·t²·f_y/(4·c)",
            },
            substituted![("w", width), ("t", t), ("f_y", fy), ("c", lever)],
            newton(capacity),
            Cite::new(Source::OwnDerivation, "strip of a flange", Flag::Computed),
        );
        let words = [say::MemberFlangeBends, say::MemberFlangeHolds];
        Some(bending(CheckId::MemberFlange, &pulled, capacity, words, w))
    }
}

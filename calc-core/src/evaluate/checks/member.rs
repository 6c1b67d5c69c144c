//! What only a channel, an angle or a round tube is demand: how the washer sits, how far the hole is from
//! the free edge, whether the flange bends under an outside pull.

use super::pull::bending;
use super::{amount, said};
use crate::cite::{Cite, Flag};
use crate::evaluate::analysis::Analysis;
use crate::mechanics::flange::{self, Held, OMEGA, SHAPE};
use crate::mechanics::net_section::effective_hole;
use crate::mechanics::seat::{STEEPEST, bolt_bending};
use crate::quantity::Dimension::{Force, Length, Share, Stress};
use crate::quantity::{InUnits, Length as Metres, mm};
use crate::report::{Check, CheckId, Verdict, substituted};
use crate::scenario::MemberKind;
use crate::support::seat;

impl Analysis<'_> {
    /// Room for the washer between the nearest row and the face of the upright part; `None` where there
    /// is none to be in the resistance.
    fn room(&self) -> Option<Metres> {
        let (rows, held) = self.s.strip()?;
        let nearest = |row: &Metres| match held {
            Held::OnOneSide => *row,
            Held::OnBothSides(span) => row.min(span - *row),
        };
        rows.iter().map(nearest).reduce(Metres::min)
    }

    /// Whether head and nut bear flat. A slope decides first, then the room beside the upright part.
    pub(super) fn washer_seat(&self) -> Option<Check> {
        let s = self.s;
        let (slope, room) = (seat::slope(s), self.room());
        if slope.is_none() && room.is_none() {
            return None;
        }
        let mut w = self.sheet();
        if let Some(slope) = slope.filter(|slope| *slope > 0.0) {
            let round = s.member.kind == MemberKind::RoundTube;
            let steepest = Cite::new("rcsc", "6.1.1 (1:20)", Flag::ReadSecondHand);
            let geometry = Cite::new("elementary", "geometry", Flag::Computed);
            let what = "slope of the surface under head or nut";
            if round {
                w.step(
                    &("s", what, "d_w/D"),
                    substituted![
                        ("d_w", s.bolting.washer.outer.si(), Length),
                        ("D", s.tube.width.si(), Length),
                    ],
                    (slope, Share),
                    geometry,
                );
            } else {
                w.step(
                    &("s", what, "as given"),
                    substituted![],
                    (slope, Share),
                    geometry,
                );
            }
            w.step(
                &("s_max", "steepest that they may bear on", "1/20"),
                substituted![],
                (STEEPEST, Share),
                steepest,
            );
            if !round {
                let (e, d) = (s.bolting.grade.modulus(), s.bolting.thread.major());
                w.step(
                    &(
                        "σ_b",
                        "bending of the bolt if the nut is pulled down flat on it",
                        "E·d·s/(2·l)",
                    ),
                    substituted![
                        ("E", e.si(), Stress),
                        ("d", d.si(), Length),
                        ("s", slope, Share),
                        ("l", self.residual.length.si(), Length),
                    ],
                    (bolt_bending(e, d, slope, self.residual.length).si(), Stress),
                    Cite::new("elementary", "bending", Flag::Computed),
                );
            }
        }
        let needed = s.bolting.washer.outer * 0.5;
        if let Some(room) = room {
            w.step(
                &("r", "half of the washer beside the upright part", "d_w/2"),
                substituted![
                    ("d_w", s.bolting.washer.outer.si(), Length),
                    ("room", room.si(), Length),
                ],
                (needed.si(), Length),
                Cite::new("elementary", "geometry", Flag::Computed),
            );
        }
        let on_edge = seat::on_edge(s);
        let crowded = room.filter(|room| needed.si() > room.si() * (1.0 + 1e-9));
        let (verdict, pair, code) = match (slope, crowded) {
            // What a flat cheek does on a round wall was not checked; a washer goes wrong for certain.
            (Some(slope), _) if seat::on_line(s) => {
                (Verdict::NotChecked, (slope, STEEPEST, Share), "seat-line")
            }
            (Some(slope), _) if on_edge => (
                Verdict::DoesNotHold,
                (slope, STEEPEST, Share),
                if s.member.is_round() {
                    "seat-round"
                } else {
                    "seat-slopes"
                },
            ),
            (_, Some(room)) => (
                Verdict::DoesNotHold,
                (needed.si(), room.si(), Length),
                "seat-no-room",
            ),
            (Some(slope), None) => (
                Verdict::Holds,
                (slope, STEEPEST, Share),
                if slope > STEEPEST {
                    "seat-made-to-fit"
                } else {
                    "seat-flat"
                },
            ),
            (None, None) => (
                Verdict::Holds,
                (needed.si(), room.map_or(0.0, InUnits::si), Length),
                "seat-room",
            ),
        };
        let (demand, capacity, dimension) = pair;
        Some(Check {
            id: CheckId::WasherSeat,
            verdict,
            demand: amount(demand, dimension),
            capacity: amount(capacity, dimension),
            factor: 1.0,
            factor_is: "factor-none",
            // A seat has no share used: it must not stand before checks of strength.
            utilisation: (verdict == Verdict::DoesNotHold).then(|| demand / capacity.max(1e-9)),
            case: None,
            reason: said(code, &[(demand, dimension), (capacity, dimension)]),
            steps: w.finish(),
        })
    }

    /// Only beside a free edge.
    pub(super) fn member_edge(&self) -> Option<Check> {
        let given = self.s.free_edge()?;
        let mut w = self.sheet();
        let needed = self.edge_needed(self.s.bolting.hole, &mut w);
        Some(self.distance(
            CheckId::MemberEdge,
            (needed, given.si()),
            ["member-edge-too-near", "member-edge-far-enough"],
            w,
        ))
    }

    /// The clamp itself does not bend a flange that lies on the fitting; an outside pull does.
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
        let pulled = self.strength((OMEGA, SHAPE), &|loads| loads.largest_pull)?;
        let mut w = self.sheet();
        self.case_line(&mut w, &pulled);
        w.step(
            &(
                "c",
                "lever of the pull on what holds the strip",
                match held {
                    Held::OnOneSide => "Σ a_i, to the face of the upright part",
                    Held::OnBothSides(_) => "largest moment of a hinged strip, over the pull",
                },
            ),
            substituted![("rows", rows.len() as f64, crate::quantity::Dimension::Count)],
            (lever.si(), Length),
            Cite::new("elementary", "statics", Flag::Computed),
        );
        w.step(
            &(
                "w",
                "length of flange counted with one bolt",
                "45° to either side, to half of the spacing and to the end",
            ),
            substituted![
                ("p", s.bolting.spacing_along.si(), Length),
                ("e", s.tube.end_distance.si(), Length),
            ],
            (width.si(), Length),
            Cite::new("aisc-manual", "Part 9, tributary length", Flag::Memory),
        );
        w.step(
            &("T", "pull at which that strip is plastic", "w·t²·f_y/(4·c)"),
            substituted![
                ("w", width.si(), Length),
                ("t", t.si(), Length),
                ("f_y", fy.si(), Stress),
                ("c", lever.si(), Length),
            ],
            (capacity, Force),
            Cite::new("own-derivation", "strip of a flange", Flag::Computed),
        );
        let words = ["member-flange-bends", "member-flange-holds"];
        Some(bending(CheckId::MemberFlange, &pulled, capacity, words, w))
    }
}

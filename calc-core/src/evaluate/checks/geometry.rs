//! Distances, holes and fits.

use super::said;
use crate::catalog::{HoleFit, Washer, WasherSeries, clearance_hole, washer};
use crate::cite::{Cite, Flag, Source};
use crate::evaluate::analysis::Analysis;
use crate::evaluate::holes::{is_oversize, largest_clearance};
use crate::mechanics::face::{FaceCurve, LOWER_BOUND};
use crate::mechanics::sleeve::kern;
use crate::quantity::{InUnits, Length, Ratio, inch, mm, newton};
use crate::report::working::Line;
use crate::report::{Check, CheckId, Sentence, Verdict, say, substituted};
use crate::scenario::{Scenario, Strength};
use crate::support::parts::{PUSH, PUSHED_FRICTION};
use crate::support::{self, SERVICE_SHARE, VISIBLE};

/// Radial play between bolt and sleeve that trade practice asks for: 1/64 to 1/16 in.
const SLEEVE_PLAY_IN: (f64, f64) = (1.0 / 64.0, 1.0 / 16.0);

/// Rim that a washer should reach past the hole on every side, in bolt diameters. An assumption: the
/// narrow washers of the tables reach 0.24 to 0.27 past a normal hole.
const WASHER_RIM: f64 = 0.2;

/// Share of the least listed thickness below which a washer is none. An assumption: washers of the small series reach
/// down to 0.78 of those of the normal one (ISO 7092, from memory).
const THINNEST: f64 = 0.75;

/// Least thickness of the narrow plain washers of a bolt's size, which are the thinner ones. Where none is listed
/// 0.12 bolt diameters: the listed ones of 1/2 in and more have 0.11 to 0.19.
fn least_washer(s: &Scenario) -> Length {
    let thread = s.bolting.thread;
    washer(thread, WasherSeries::Narrow).map_or(thread.major() * 0.12, Washer::thickness_min)
}

impl Analysis<'_> {
    /// A distance is there or it is not: nothing between.
    pub(super) fn distance(
        &self,
        id: CheckId,
        (needed, given): (Length, Length),
        [short, enough]: [Sentence<2>; 2],
        w: super::Working,
    ) -> Check {
        let is_short = needed.si() / given.si().max(1e-9) > 1.0 + 1e-9;
        let (verdict, code) = if is_short {
            (Verdict::DoesNotHold, short)
        } else {
            (Verdict::Holds, enough)
        };
        let judged = Check::of(id, needed, given).stands(verdict);
        // Of nothing, or less, no share is asked.
        let judged = if given.si() > 0.0 {
            judged
        } else {
            judged.without_share()
        };
        judged.says_of_both(code).working(w)
    }

    /// A distance to an edge below the table's value, which calculated tear-out may take the place of: close, where
    /// the bolt stands at least its own diameter from the edge. Tear-out is a check of its own.
    ///
    /// # Sources
    /// AISC 360-16 Table J3.4, note [a].
    pub(super) fn edge_distance(
        &self,
        id: CheckId,
        (needed, given): (Length, Length),
        [short, enough]: [Sentence<2>; 2],
        w: super::Working,
    ) -> Check {
        let check = self.distance(id, (needed, given), [short, enough], w);
        if check.verdict != Verdict::DoesNotHold || given < self.s.bolting.thread.major() {
            return check;
        }
        Check {
            verdict: Verdict::Close,
            reason: said(say::EdgeByTearOut, (needed, given)),
            ..check
        }
    }

    /// Lines on the least distance to an edge, and the distance.
    pub(super) fn edge_needed(&self, hole: Length, w: &mut super::Working) -> Length {
        let d = self.s.bolting.thread.major();
        let (us, eu) = (1.5 * d, 1.2 * hole);
        w.line(
            &Line {
                symbol: "e_min",
                what: "least distance from bolt to edge",
                formula: "1.5·d",
            },
            substituted![("d", d)],
            us,
            Cite::new(Source::Aisc360_22, "Table J3.4 (about 1.5 d)", Flag::Read),
        );
        w.line(
            &Line {
                symbol: "e_1,min",
                what: "the same by the European column",
                formula: "1.2·d_0",
            },
            substituted![("d_0", hole)],
            eu,
            Cite::new(Source::En1993_1_8, "Table 3.3", Flag::Read),
        );
        us.max(eu)
    }

    pub(super) fn end_distance(&self) -> Check {
        let given = self.s.tube.end_distance;
        let mut w = self.sheet();
        let needed = self.edge_needed(self.hole_in_tube(), &mut w);
        self.edge_distance(
            CheckId::EndDistance,
            (needed, given),
            [say::EndTooNear, say::EndFarEnough],
            w,
        )
    }

    /// Only where there is a fitting to have an edge.
    pub(super) fn fitting_edge(&self) -> Option<Check> {
        let f = &self.s.fitting;
        if f.thickness.si() <= 0.0 {
            return None;
        }
        let mut w = self.sheet();
        let needed = self.edge_needed(f.hole, &mut w);
        Some(self.edge_distance(
            CheckId::FittingEdge,
            (needed, f.edge),
            [say::FittingEdgeTooNear, say::FittingEdgeFarEnough],
            w,
        ))
    }

    pub(super) fn spacing(&self) -> Option<Check> {
        let b = &self.s.bolting;
        let d = b.thread.major();
        let hole = self.hole_in_tube().max(self.s.fitting.hole);
        let mut w = self.sheet();
        let mut worst: Option<(Length, Length)> = None;
        for (there, given, of_hole, place) in [
            (b.along > 1, b.spacing_along, 2.2, "p_1 = 2.2·d_0"),
            (b.rows > 1, b.spacing_across, 2.4, "p_2 = 2.4·d_0"),
        ] {
            if !there {
                continue;
            }
            let (us, eu) = (8.0 / 3.0 * d, of_hole * hole);
            w.line(
                &Line {
                    symbol: "s_min",
                    what: "least distance between bolts",
                    formula: "2⅔·d",
                },
                substituted![("d", d)],
                us,
                Cite::new(Source::Aisc360_22, "J3.4", Flag::Read),
            );
            w.line(
                &Line {
                    symbol: "p_min",
                    what: "the same by the European column",
                    formula: place,
                },
                substituted![("d_0", hole)],
                eu,
                Cite::new(Source::En1993_1_8, "Table 3.3", Flag::Read),
            );
            let this = (us.max(eu), given);
            if worst.is_none_or(|(needed, given)| this.0 / this.1 > needed / given) {
                worst = Some(this);
            }
        }
        Some(self.distance(
            CheckId::Spacing,
            worst?,
            [say::SpacingTooClose, say::SpacingFarEnough],
            w,
        ))
    }

    /// The larger of the holes that the bolt passes, against the clearance holes of its size. Up to the
    /// normal hole it holds, up to the loose one it is close, beyond it is no bolt hole any more.
    pub(super) fn hole_size(&self) -> Option<Check> {
        let s = self.s;
        let thread = s.bolting.thread;
        let loose = clearance_hole(thread, HoleFit::Loose)?;
        let normal = clearance_hole(thread, HoleFit::Normal)?;
        let hole = largest_clearance(s);
        let oversize = is_oversize(s, hole);
        let largest = [Some(loose), clearance_hole(thread, HoleFit::Structural)]
            .into_iter()
            .flatten()
            .map(|listed| listed.diameter)
            .fold(Length::default(), Length::max);
        let beyond = hole.si() > largest.si() + 0.05e-3;
        let mut w = self.sheet();
        for (symbol, what, listed) in [
            ("d_n", "normal clearance hole", normal),
            ("d_l", "loose clearance hole", loose),
        ] {
            w.line(
                &Line {
                    symbol,
                    what,
                    formula: "as listed",
                },
                substituted![("d", thread.major())],
                listed.diameter,
                listed.cite,
            );
        }
        let (verdict, code) = if beyond {
            (Verdict::DoesNotHold, say::HoleTooLarge)
        } else if oversize {
            (Verdict::Close, say::HoleOversize)
        } else {
            (Verdict::Holds, say::HoleNormal)
        };
        Some(
            Check::of(CheckId::HoleSize, hole, largest)
                .stands(verdict)
                .without_share()
                .reason(said(code, (hole, normal.diameter, largest)))
                .working(w),
        )
    }

    pub(super) fn washer_cover(&self) -> Check {
        let s = self.s;
        // A through sleeve stands under the washer: what must be covered then is the bore. Where no cheek lies between, the
        // bolt may stand to one side of it.
        let cheeks = s.bolting.two_cheeks && s.fitting.thickness.si() > 0.0;
        let hole = if support::of(s).passes_wall() {
            let aside = if cheeks {
                mm(0.0)
            } else {
                support::off_center(s) * 2.0
            };
            (s.sleeve.inner + aside).max(s.fitting.hole)
        } else {
            largest_clearance(s)
        };
        let rim = 0.5 * (s.bolting.washer.outer - hole);
        let needed = WASHER_RIM * s.bolting.thread.major();
        let mut w = self.sheet();
        w.line(
            &Line {
                symbol: "c",
                what: "rim of the washer past the hole",
                formula: "(D_w − d_0)/2",
            },
            substituted![("D_w", s.bolting.washer.outer), ("d_0", hole)],
            rim,
            Cite::new(Source::Elementary, "geometry", Flag::Computed),
        );
        w.line(
            &Line {
                symbol: "c_min",
                what: "rim asked for",
                formula: "0.2·d",
            },
            substituted![("d", s.bolting.thread.major())],
            needed,
            Cite::new(Source::OwnAssumption, "rim of a washer", Flag::Assumption),
        );
        let (least, thick) = (least_washer(s), s.bolting.washer.thickness_min);
        w.line(
            &Line {
                symbol: "t_min",
                what: "least thickness of plain washers of this size",
                formula: "as listed; 0.12·d where none is",
            },
            substituted![("d", s.bolting.thread.major())],
            least,
            Cite::new(
                Source::AsmeB18_21_1,
                "Type A narrow; ISO 7089",
                Flag::ReadSecondHand,
            ),
        );
        let thin = least.si() / thick.si().max(1e-9);
        if thin > 1.0 + 1e-6 && needed <= rim * thin {
            let judged = Check::of(CheckId::WasherCover, least, thick);
            let verdict = if thin * THINNEST > 1.0 || needed > rim {
                Verdict::DoesNotHold
            } else {
                Verdict::Close
            };
            let judged = judged.stands(verdict);
            return judged.says_of_both(say::WasherTooThin).working(w);
        }
        self.distance(
            CheckId::WasherCover,
            (needed, rim),
            [say::WasherCoversTooLittle, say::WasherCovers],
            w,
        )
    }

    /// A part that is longer than the space between the walls has to be pushed in; the walls have to come in to a
    /// short one. They may do so as far as they spring back: what the clamp does on a wall that has yielded nobody
    /// has run or measured.
    pub(super) fn sleeve_length(&self) -> Option<Check> {
        let s = self.s;
        let longest = support::of(s).longest_over(s)?;
        let over = -s.sleeve_short;
        if over.si() <= 0.0 {
            return self.sleeve_short();
        }
        let mut w = self.sheet();
        w.line(
            &Line {
                symbol: "e",
                what: "how much longer it may be than the space inside",
                formula: "min(0.1 mm, P/(μ·k))",
            },
            substituted![("P", newton(PUSH)), ("μ", Ratio(PUSHED_FRICTION))],
            longest,
            Cite::new(
                Source::OwnAssumption,
                "what a person can push in by hand",
                Flag::Assumption,
            ),
        );
        Some(self.distance(
            CheckId::SleeveLength,
            (over, longest),
            [say::SleeveLengthTooLong, say::SleeveLengthFits],
            w,
        ))
    }

    /// How far the walls come in to a part that is too short, and with it as the clamp shortens it and heat or cold, where
    /// it is not of the metal of the tube. How far they spring
    /// back goes by wall and washer alone: what softens them, neighbours or an end near by, is no help.
    fn sleeve_short(&self) -> Option<Check> {
        let s = self.s;
        let (core, short) = (self.support.least.core()?, s.sleeve_short);
        let shortens = self.preload.slick.si() / core.parts_si()[0];
        // Of another metal than the tube it comes short at one end of the temperatures.
        let length = s.tube.depth - s.tube.wall * 2.0;
        let apart = support::of(s).between(s).expansion().value - s.tube.material.expansion().value;
        let grows = (apart * s.loads.temperature_swing * length.si()).abs();
        // Where one side is stiffer than the other, all of it may come from the softer one.
        let [one, other] = self.support.least.sides()?;
        let share = if one == other { 0.5 } else { 1.0 };
        let comes = share * (short.si() + shortens + grows);
        let face = FaceCurve::new(
            &s.tube.face(Strength::Least),
            s.bolting.washer.outer,
            LOWER_BOUND,
        );
        let springs = face.lasting_at_si(VISIBLE, SERVICE_SHARE * s.tube.width.si());
        let mut w = self.sheet();
        w.line(
            &Line {
                symbol: "δ",
                what: "how far the wall may come in before 0.004 in (0.1 mm) of it stays, at most 1 % of its width",
                formula: "where the face curve has left its first slope by 0.004 in (0.1 mm)",
            },
            substituted![
                ("g", short),
                ("N·l/(E·A)", Length::of_si(shortens)),
                ("Δα·ΔT·l", Length::of_si(grows)),
                ("b", s.tube.width),
            ],
            Length::of_si(springs),
            Cite::new(Source::FeTubeFace, "fitted face curve", Flag::Computed),
        );
        let judged = Check::of(
            CheckId::SleeveLength,
            Length::of_si(comes),
            Length::of_si(springs),
        );
        Some(
            judged
                .says([say::SleeveLengthTooShort, say::SleeveLengthShort])
                .working(w),
        )
    }

    /// Play of the bolt in its sleeve. A tight one is reported but holds; a loose one is close.
    pub(super) fn sleeve_fit(&self) -> Option<Check> {
        let s = self.s;
        if !s.support.has_sleeve() {
            return None;
        }
        let [tight, loose] = [SLEEVE_PLAY_IN.0, SLEEVE_PLAY_IN.1].map(inch);
        let play = support::off_center(s);
        let core = kern(s.sleeve.outer, s.sleeve.inner);
        let (verdict, code) = if play.si() > loose.si() + 1e-5 {
            (Verdict::Close, say::SleeveFitLoose)
        } else if play.si() < tight.si() - 1e-5 {
            (Verdict::Holds, say::SleeveFitTight)
        } else {
            (Verdict::Holds, say::SleeveFitGood)
        };
        let mut w = self.sheet();
        w.line(
            &Line {
                symbol: "s",
                what: "radial play between bolt and sleeve",
                formula: "(d_i − d)/2",
            },
            substituted![("d_i", s.sleeve.inner), ("d", s.bolting.thread.major())],
            play,
            Cite::new(
                Source::TradePractice,
                "1/64 to 1/16 in radial",
                Flag::Practice,
            ),
        );
        if play > core {
            w.line(
                &Line {
                    symbol: "k",
                    what: "play from which one side of the sleeve has nothing to carry",
                    formula: "(d_o² + d_i²)/(8·d_o)",
                },
                substituted![("d_o", s.sleeve.outer), ("d_i", s.sleeve.inner)],
                core,
                Cite::new(Source::Elementary, "core of a ring", Flag::Computed),
            );
            let judged = Check::of(CheckId::SleeveFit, play, core);
            return Some(judged.says_of_both(say::SleeveFitTips).working(w));
        }
        Some(
            Check::of(CheckId::SleeveFit, play, loose)
                .stands(verdict)
                .without_share()
                .reason(said(code, (play, tight, loose)))
                .working(w),
        )
    }
}

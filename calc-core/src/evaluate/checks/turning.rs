//! One bolt alone: what keeps the fitting from turning about it?

use super::said;
use crate::catalog::LoadKind;
use crate::cite::{Cite, Flag, Source};
use crate::evaluate::analysis::Analysis;
use crate::quantity::{Count, InUnits, Length, Moment, Ratio, newton};
use crate::report::working::Line;
use crate::report::{Check, CheckId, Verdict, say, substituted};
use crate::scenario::JointKind;

impl Analysis<'_> {
    /// Never more than not checked. Friction round one bolt is not counted on: it works loose to and fro,
    /// and where the faces press is not known. What it could hold at the very most, all of it at the
    /// fitting's edge, shows where even that is too little:
    ///
    /// ```text
    /// M_f = m·μ·F_left·r,   r = max(e, d_w/2)
    /// ```
    ///
    /// | symbol | meaning | unit |
    /// |---|---|---|
    /// | `m` | slip planes | – |
    /// | `μ` | friction coefficient of the faces | – |
    /// | `F_left` | least clamp left | N |
    /// | `e`, `d_w` | bolt to the edge of the fitting, washer | m |
    ///
    /// The bracket of a chain may swing: then the bolt is a pin, asked for shear, bearing and bending without friction.
    /// Where the chain is shackled at the bolt itself that is close, for the nut's sake, which swinging works loose;
    /// elsewhere nobody has said that it is free to swing.
    ///
    /// A load of its own that goes through the bolt and turns nothing is not asked; ball and spring swing and
    /// are never in line with it.
    pub(super) fn turning(&self) -> Option<Check> {
        let s = self.s;
        if s.bolting.count() > 1 {
            return None;
        }
        let turns = |counts: &dyn Fn(LoadKind) -> bool| {
            let loads = self.cases().all.iter();
            loads
                .filter(|loads| counts(loads.case.kind))
                .map(|loads| loads.not_taken.twist.abs())
                .fold(0.0, f64::max)
        };
        let most = turns(&|_| true);
        if most <= 0.0 && s.loads.joint == JointKind::Free {
            return None;
        }
        if s.swings() {
            let in_line = s.loads.ball_ahead.si() == 0.0 && s.loads.ball_below.si() == 0.0;
            let (verdict, code) = if in_line {
                (Verdict::Close, say::TurningSwings)
            } else {
                (Verdict::NotChecked, say::TurningMaySwing)
            };
            let judged = Check::of(CheckId::Turning, Moment(0.0), Moment(0.0)).without_share();
            return Some(judged.stands(verdict).reason(said(code, ())));
        }
        let radius = s.fitting.edge.max(s.bolting.washer.outer * 0.5);
        let friction = self.most_friction(radius);
        let judged = Check::of(CheckId::Turning, Moment(most), Moment(friction)).without_share();
        // Where nobody knows the clamp, nobody knows that it is too little either.
        let certain = self.clamp_unknown().is_none() && !self.outside_range();
        let (verdict, reason) = if most <= 0.0 {
            (Verdict::NotChecked, said(say::TurningFree, ()))
        } else if certain && turns(&|kind| kind != LoadKind::Ultimate) > friction {
            let both = (Moment(most), Moment(friction));
            (Verdict::DoesNotHold, said(say::TurningTurns, both))
        } else {
            let both = (Moment(most), Moment(friction));
            (Verdict::NotChecked, said(say::TurningByFriction, both))
        };
        let mut w = self.sheet();
        w.line(
            &Line {
                symbol: "M_f",
                what: "most that friction around one bolt could hold",
                formula: "m·μ·F_left·max(e, d_w/2)",
            },
            substituted![
                ("m", Count(s.bolting.slip_planes())),
                ("μ", Ratio(s.tightening.faying_friction)),
                ("F_left", newton(self.residual.left_min)),
                ("e", s.fitting.edge),
                ("d_w", s.bolting.washer.outer)
            ],
            Moment(friction),
            Cite::new(Source::Elementary, "friction of a ring", Flag::Computed),
        );
        Some(judged.stands(verdict).reason(reason).working(w))
    }

    fn most_friction(&self, radius: Length) -> f64 {
        let s = self.s;
        let planes = s.bolting.slip_planes() * s.tightening.faying_friction;
        planes * self.residual.left_min * radius.si()
    }
}

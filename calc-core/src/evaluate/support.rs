//! The support at its two strengths (least and likely) and what is reported of it.

use super::analysis::Analysis;
use super::preload::Preload;
use crate::mechanics::face::{self, CHECKED_TO, FaceCurve, LOWER_BOUND};
use crate::mechanics::range::{CheckedRatio, OutOfRange};
use crate::mechanics::seat::round_slope;
use crate::mechanics::yield_line::{Patch, chord_face};
use crate::quantity::{InUnits, Length};
use crate::report::{
    FaceNumbers, FaceReport, Part, Sentence, Strength, SupportNumbers, SupportReport,
};
use crate::scenario::{MemberKind, Scenario};
use crate::support::{Limit, Side, SupportModel, group_factor, of, seat, washer_end_factor};

/// The model that verdicts use, and what limits it. The likely one is built where it is shown.
pub(crate) struct Support {
    pub(crate) least: SupportModel,
    pub(crate) governs: Limit,
    /// Clamp that can be counted on: the lesser of torque and limit, N.
    pub(crate) reached: f64,
    /// Whether what stands between the walls carries the largest clamp alone, with the factor of a column.
    core_alone: bool,
}

/// Ratio of width to wall down to which the face curve, checked from 8 on, may lie beside a core that carries alone: what
/// is left to it is how far a wall comes in to a part that is short. An assumption.
const BESIDE_A_CORE: f64 = 7.0;

impl Support {
    pub(crate) fn new(s: &Scenario, preload: &Preload) -> Self {
        let least = SupportModel::new(s, Strength::Least);
        let governs = least.governing(s.tightening.scatter);
        let reached = preload.nominal.si().min(least.limit());
        let alone = |strength: f64| strength >= 1.67 * preload.max.si();
        let core_alone = least.core().is_some_and(|core| alone(core.strength_si()));
        Self {
            least,
            governs,
            reached,
            core_alone,
        }
    }

    /// Ratios outside the checked range, where a bare face carries.
    pub(crate) fn out_of_range(&self, s: &Scenario) -> Vec<OutOfRange> {
        if seat::round_wall_carries(s) {
            // The curve of a face is for flat ones.
            let curved = round_slope(s.bolting.washer.outer, s.tube.width);
            return OutOfRange::note(CheckedRatio::RiseToDiameter, curved, 0.0, 0.0)
                .into_iter()
                .collect();
        }
        let bare = self
            .least
            .sides()
            .is_some_and(|sides| sides.iter().any(|side| matches!(side, Side::Washer(_))));
        if bare && of(s).rests_on_face() {
            let mut outside =
                face::out_of_range(&s.tube.face(Strength::Least), s.bolting.washer.outer);
            // What stands between the walls carries the clamp, and is judged as a column. The faces only come in to it:
            // the curve hardly moves any more with the depth, and what it is short by is a check of its own.
            // A wall that is a little thicker than was checked does not decide either, where the core needs no face.
            if self.least.core().is_some() {
                let thick = BESIDE_A_CORE..8.0;
                outside.retain(|o| match o.ratio {
                    CheckedRatio::HeightToWidth => o.value < 1.0,
                    CheckedRatio::WidthToWall => !(self.core_alone && thick.contains(&o.value)),
                    _ => true,
                });
            }
            outside
        } else {
            Vec::new()
        }
    }

    pub(crate) fn report(&self, analysis: &Analysis<'_>) -> SupportReport {
        let (s, preload) = (analysis.s, &analysis.preload);
        let likely = SupportModel::new(s, Strength::Likely);
        let wanted = preload.nominal.si();
        let approach = likely.approach(wanted);
        let mean = |pair: [f64; 2]| 0.5 * (pair[0] + pair[1]);
        let faces = likely.sides();
        let dent = approach
            .filter(|_| faces.is_some())
            .map(|x| mean(likely.split(x)));
        let left = approach.and_then(|x| {
            let split = likely.split(x);
            faces.map(|[a, b]| mean([a.left_after(split[0]), b.left_after(split[1])]))
        });
        let most = likely.force(likely.approach_end());
        let takes_bolt = most >= preload.yields.si();
        SupportReport {
            kind: s.support,
            unknown: seat::clamp_unknown(s).map(Sentence::message),
            faces: face_reports(s),
            least: numbers(&self.least, s, preload),
            likely: numbers(&likely, s, preload),
            approach_at_wanted_clamp_mm: approach.map(|x| x * 1e3),
            dent_at_wanted_clamp_mm: dent.map(|x| x * 1e3),
            dent_left_mm: left.map(|x| x * 1e3),
            clicks_up_to_nm: (!takes_bolt)
                .then(|| s.tightening.nut_factor * s.bolting.thread.major().si() * most),
        }
    }
}

fn numbers(model: &SupportModel, s: &Scenario, preload: &Preload) -> SupportNumbers {
    let limit = model.limit();
    let reached = preload.nominal.si().min(limit);
    let working = model
        .approach(reached)
        .unwrap_or_else(|| model.approach_end());
    SupportNumbers {
        lasting_dent_from_n: model.lasting_from(),
        load_at_1pct_of_width_n: model.force_at_share(0.01),
        load_at_3pct_of_width_n: model.force_at_share(0.03),
        limit_n: limit,
        gives_way: model.governing(s.tightening.scatter).part,
        stiffness_n_per_mm: model.spring_rate(working) * 1e-3,
        clamp_reached_n: reached,
    }
}

/// The bare faces with the washer taken as rigid, whatever else carries: what finite elements and
/// yield lines can be compared with. Empty for a solid.
fn face_reports(s: &Scenario) -> Vec<FaceReport> {
    if !of(s).is_hollow() || s.member.kind != MemberKind::RectangularTube {
        return Vec::new();
    }
    let washer = s.bolting.washer.outer;
    let likely = s.tube.face(Strength::Likely);
    let at = |strength| {
        let bound = match strength {
            Strength::Least => LOWER_BOUND,
            Strength::Likely => 1.0,
        };
        let curve = FaceCurve::new(&s.tube.face(strength), washer, bound);
        FaceNumbers {
            stiffness_n_per_mm: curve.stiffness().si() * 1e-3,
            load_at_1pct_of_width_n: curve.force_at_share(0.01).si(),
            load_at_3pct_of_width_n: curve.force_at_share(0.03).si(),
            load_at_6pct_of_width_n: curve.force_at_share(CHECKED_TO).si(),
            lasting_dent_from_n: curve
                .lasting_from(Length::of_si(crate::support::VISIBLE))
                .si(),
            gives_way: Part::Face,
        }
    };
    let (least, likely_numbers) = (at(Strength::Least), at(Strength::Likely));
    let yield_line = |patch| {
        chord_face(
            likely.yield_strength,
            likely.wall,
            likely.width,
            washer,
            patch,
        )
        .si()
    };
    let fitting = |head: bool| s.fitting.spreads && (head || s.bolting.two_cheeks);
    [("head", true), ("nut", false)]
        .into_iter()
        .map(|(side, head)| FaceReport {
            side,
            bears_by: match of(s).plate() {
                Some(plate) => plate,
                None if fitting(head) => "fitting",
                None => "washer",
            },
            washer_outer_mm: washer.si() * 1e3,
            end_factor: washer_end_factor(s),
            group_factor: group_factor(s, s.tube.design_wall),
            least,
            likely: likely_numbers,
            yield_line_circular_patch_n: yield_line(Patch::Circular),
            yield_line_square_patch_n: yield_line(Patch::Square),
            out_of_range: face::out_of_range(&likely, washer),
        })
        .collect()
}

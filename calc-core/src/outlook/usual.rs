//! The answer with the strength that metals usually have.

use super::{Setting, said};
use crate::catalog::Material;
use crate::evaluate::Analysis;
use crate::keys::keys;
use crate::quantity::newton;
use crate::report::{CheckId, Said, Sentence, Strength, Verdict, say};
use crate::scenario::Scenario;
use crate::support::{self, SupportModel};
use serde::Serialize;

keys! {
    /// A metal whose strength decides between two answers.
    pub enum Metal {
        /// That of the member, away from welds.
        Member = "member",
        /// That of the member beside a weld.
        SoftenedMember = "softened-member",
        /// That of the sleeve, plate or block.
        AddedPart = "added-part",
        /// That of a welded sleeve at its ends.
        SoftenedPart = "softened-part",
        /// That of the fitting.
        Fitting = "fitting",
    }
}

impl Metal {
    /// What is said of it, with what settles it.
    const fn decides(self) -> Sentence<0> {
        match self {
            Self::Member => say::DecidesMember,
            Self::SoftenedMember => say::DecidesSoftenedMember,
            Self::AddedPart => say::DecidesAddedPart,
            Self::SoftenedPart => say::DecidesSoftenedPart,
            Self::Fitting => say::DecidesFitting,
        }
    }
}

/// How a joint stands with the strength that its metals usually have.
///
/// Only strengths of metals change: wall, washers, scatter, loads and factors stay as for the verdict. The bolts keep
/// their specified strength, because grade marks promise no more.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct UsualAnswer {
    /// The verdict, with the least strength.
    pub least: Verdict,
    /// With the strength usually found.
    pub usual: Verdict,
    /// The check that decides then.
    pub weakest: CheckId,
    /// Share used of what that check has.
    pub utilisation: Option<f64>,
    /// Clamp that the support stands, with the least strength.
    pub least_limit_n: f64,
    /// With the strength usually found.
    pub usual_limit_n: f64,
    /// Where a weld softens the metal that the clamp stands on: the most clamp that a bench would reach, with some
    /// yielding, the bolt in the middle and the strength usually found, had the weld taken nothing away. A part that was
    /// welded fast and cool comes near it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub unsoftened_reaches_n: Option<f64>,
    /// The metal whose usual strength lifts what the support stands the most; none where none does.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub limit_decided_by: Option<Metal>,
    /// Metals that make the difference: one where its usual strength alone is enough, more where it takes them
    /// together; none where both verdicts are the same.
    pub decided_by: Vec<Metal>,
}

/// Which metals are taken at their usual strength.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum Taken {
    All,
    Member,
    AddedPart,
    Fitting,
}

/// A joint whose metals have their usual strength.
pub(super) fn with_usual(s: &Scenario, taken: Taken) -> Scenario {
    let mut s = s.clone();
    let is = |one| taken == Taken::All || taken == one;
    if is(Taken::Member) {
        s.tube.material = s.tube.material.usual();
        s.tube.yield_least = s.tube.yield_likely.max(s.tube.yield_least);
        // What the reader typed stands, and a yield strength has been taken for the tensile strength too.
        if s.input.tube_ultimate_mpa.is_none() && s.input.tube_yield_mpa.is_none() {
            let row = s.tube.material.least_beside(s.tube.weld_near);
            s.tube.ultimate_least = row.ultimate_strength();
        }
    }
    if is(Taken::AddedPart) {
        s.sleeve.material = s.sleeve.material.usual();
        s.spreader.material = s.spreader.material.usual();
        s.insert_material = s.insert_material.usual();
    }
    if is(Taken::Fitting) {
        let material = s.fitting.material.usual();
        s.fitting.material = material;
        let row = material.least_beside(s.tube.weld_near);
        s.fitting.yield_least = row.yield_strength();
        s.fitting.ultimate_least = row.ultimate_strength();
    }
    s
}

/// How a joint stands, and the clamp that its support stands.
fn stands(s: &Scenario) -> (Setting, f64) {
    let analysis = Analysis::without_working(s);
    (Setting::of(&analysis), analysis.support.least.limit())
}

pub(super) fn answer(s: &Scenario) -> UsualAnswer {
    let (now, least_limit_n) = stands(s);
    let (then, usual_limit_n) = stands(&with_usual(s, Taken::All));
    let (least, usual) = (now.verdict, then.verdict);
    // Only where welding takes something away; the weld of a sleeve is near the member too.
    let part_welded = support::is_welded(s);
    let softens = |material: &Material, weld: bool| weld && material.welded().is_some();
    let pick = |softened, beside, plain| if softened { beside } else { plain };
    let member = softens(s.tube.material, s.tube.weld_near || part_welded);
    let part = softens(s.sleeve.material, part_welded);
    let candidates = [
        (
            Taken::Member,
            pick(member, Metal::SoftenedMember, Metal::Member),
        ),
        (
            Taken::AddedPart,
            pick(part, Metal::SoftenedPart, Metal::AddedPart),
        ),
        (Taken::Fitting, Metal::Fitting),
    ];
    let alone = candidates.map(|(taken, metal)| (stands(&with_usual(s, taken)), metal));
    let limit_decided_by = alone
        .iter()
        .filter(|((_, limit), _)| *limit > least_limit_n * FELT)
        .max_by(|((_, a), _), ((_, b), _)| a.total_cmp(b))
        .map(|(_, metal)| *metal);
    let unsoftened_reaches_n = (part || member)
        .then(|| SupportModel::new(&unsoftened(s), Strength::Likely))
        .map(|model| model.force(model.approach_end()));
    let decided_by = if usual == least {
        Vec::new()
    } else {
        let alone: Vec<Metal> = alone
            .iter()
            .filter(|((setting, _), _)| setting.verdict == usual)
            .map(|(_, metal)| *metal)
            .take(1)
            .collect();
        if alone.is_empty() {
            candidates.iter().map(|(_, metal)| *metal).collect()
        } else {
            alone
        }
    };
    UsualAnswer {
        least,
        usual,
        weakest: then.weakest,
        utilisation: then.utilisation,
        least_limit_n,
        usual_limit_n,
        unsoftened_reaches_n,
        limit_decided_by,
        decided_by,
    }
}

/// Gain of the clamp limit below which a metal is not named for it. An assumption.
const FELT: f64 = 1.01;

/// A joint whose metals have their usual strength, and where no weld has taken anything away.
fn unsoftened(s: &Scenario) -> Scenario {
    let mut s = with_usual(s, Taken::All);
    for material in [&mut s.tube.material, &mut s.sleeve.material] {
        *material = material.unsoftened();
    }
    s
}

impl UsualAnswer {
    /// Sentences, where the joint stands better than with the least strength and is judged.
    pub(super) fn said(&self) -> Vec<Said> {
        if let Some(told) = self.softened() {
            return told;
        }
        let code = match self.usual {
            better if better >= self.least => return Vec::new(),
            Verdict::Holds => say::UsualHolds,
            Verdict::Close => say::UsualClose,
            _ => return Vec::new(),
        };
        let limits = (newton(self.least_limit_n), newton(self.usual_limit_n));
        let mut told = vec![Said::new(code, limits)];
        let decides = match self.decided_by.as_slice() {
            [metal] => metal.decides(),
            _ => say::DecidesTogether,
        };
        told.push(said(decides, []));
        told
    }

    /// Where the clamp is not reached with either strength, and what a weld has softened is to blame: what the support
    /// would stand had it softened nothing, which is what a shop may have seen.
    fn softened(&self) -> Option<Vec<Said>> {
        let decides = self
            .limit_decided_by
            .filter(|metal| matches!(metal, Metal::SoftenedPart | Metal::SoftenedMember))?;
        let unsoftened = self.unsoftened_reaches_n?;
        let fails = self.usual == Verdict::DoesNotHold && self.weakest == CheckId::Clamp;
        (fails && unsoftened > self.usual_limit_n * FELT).then(|| {
            let limits = (
                newton(self.least_limit_n),
                newton(self.usual_limit_n),
                newton(unsoftened),
            );
            vec![
                Said::new(say::UsualSoftened, limits),
                said(decides.decides(), []),
            ]
        })
    }
}

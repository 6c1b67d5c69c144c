//! The answer with the strength that metals usually have.

use super::said;
use crate::catalog::Material;
use crate::evaluate::{Analysis, checks_in_order, weakest};
use crate::keys::keys;
use crate::quantity::newton;
use crate::report::{CheckId, Said, Verdict, say};
use crate::scenario::Scenario;
use crate::support;
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
        // What the reader typed stands.
        if s.input.tube_ultimate_mpa.is_none() {
            s.tube.ultimate_least =
                ultimate(s.tube.material, s.tube.weld_near).max(s.tube.ultimate_least);
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
        let row = match material.welded() {
            Some(welded) if s.tube.weld_near => &welded.least,
            _ => material.least(),
        };
        s.fitting.yield_least = row.yield_strength();
        s.fitting.ultimate_least = row.ultimate_strength();
    }
    s
}

fn ultimate(material: &Material, weld_near: bool) -> crate::quantity::Stress {
    match material.welded() {
        Some(welded) if weld_near => welded.least.ultimate_strength(),
        _ => material.least().ultimate_strength(),
    }
}

/// Verdict, check that decides, share used, clamp that the support stands.
fn stands(s: &Scenario) -> (Verdict, CheckId, Option<f64>, f64) {
    let analysis = Analysis::without_working(s);
    let checks = checks_in_order(&analysis);
    let (id, verdict) = weakest(&checks);
    let used = checks.first().and_then(|check| check.utilisation);
    (verdict, id, used, analysis.support.least.limit())
}

pub(super) fn answer(s: &Scenario) -> UsualAnswer {
    let (least, .., least_limit_n) = stands(s);
    let (usual, id, utilisation, usual_limit_n) = stands(&with_usual(s, Taken::All));
    let softened = support::is_welded(s);
    let candidates = [
        (
            Taken::Member,
            if s.tube.weld_near {
                Metal::SoftenedMember
            } else {
                Metal::Member
            },
        ),
        (
            Taken::AddedPart,
            if softened {
                Metal::SoftenedPart
            } else {
                Metal::AddedPart
            },
        ),
        (Taken::Fitting, Metal::Fitting),
    ];
    let decided_by = if usual == least {
        Vec::new()
    } else {
        let alone: Vec<Metal> = candidates
            .iter()
            .filter(|(taken, _)| stands(&with_usual(s, *taken)).0 == usual)
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
        weakest: id,
        utilisation,
        least_limit_n,
        usual_limit_n,
        decided_by,
    }
}

impl UsualAnswer {
    /// Sentences, where the joint does not hold with the least strength.
    pub(super) fn said(&self) -> Vec<Said> {
        if self.usual >= self.least {
            return Vec::new();
        }
        let limits = (newton(self.least_limit_n), newton(self.usual_limit_n));
        let code = if self.usual == Verdict::Holds {
            say::UsualHolds
        } else {
            say::UsualClose
        };
        let mut told = vec![Said::new(code, limits)];
        let decides = match self.decided_by.as_slice() {
            [Metal::Member] => say::DecidesMember,
            [Metal::SoftenedMember] => say::DecidesSoftenedMember,
            [Metal::AddedPart] => say::DecidesAddedPart,
            [Metal::SoftenedPart] => say::DecidesSoftenedPart,
            [Metal::Fitting] => say::DecidesFitting,
            _ => say::DecidesTogether,
        };
        told.push(said(decides, []));
        told
    }
}

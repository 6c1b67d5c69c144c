//! Load cases of the joint, what each asks of every bolt, and which case governs a question.
//!
//! Three kinds of case, never mixed in one number:
//!
//! - **service** cases ask that nothing slips or opens, with the usual factors, and that bolts and
//!   walls have their allowable strength;
//! - **proof** cases ask the same once and without lasting harm: no slip, no opening, no yield, factor 1;
//! - **ultimate** cases ask the breaking strength, factor 1, and count on no friction.
//!
//! The road's service cases are always among them: a published rule is checked on top, so that choosing
//! one can only add demands.

mod bolt_loads;
mod case;
mod chain;
mod coupler;
mod free;
mod hanger;
mod report;

pub(crate) use bolt_loads::BoltLoads;
pub(crate) use case::LoadCase;

use super::holes::slip_omega;
use super::residual_clamp::ResidualClamp;
use crate::catalog::LoadKind;
use crate::mechanics::bolt_group::{Place, Share, pattern};
use crate::mechanics::slip;
use crate::quantity::{InUnits, newton};
use crate::report::{Sentence, say};
use crate::scenario::{JointKind, Scenario};
use crate::support;

/// All cases with the shares of the bolts.
#[derive(Clone, Debug)]
pub(crate) struct Cases {
    pub(crate) places: Vec<Place>,
    pub(crate) all: Vec<BoltLoads>,
}

/// The case that slips first, with its shares.
#[derive(Clone, Debug)]
pub(crate) struct Service {
    pub(crate) ball: LoadCase,
    pub(crate) shares: Vec<Share>,
    /// Index of the bolt that slips first.
    pub(crate) worst: usize,
    /// Its slip resistance, N.
    pub(crate) resistance: f64,
    /// Factor on slip in this case.
    pub(crate) factor: f64,
}

/// Cases of the chosen joint.
fn cases(s: &Scenario) -> Vec<LoadCase> {
    match s.loads.joint {
        JointKind::Coupler => coupler::cases(s),
        JointKind::SpringHanger => hanger::cases(s),
        JointKind::ChainBracket => chain::cases(s),
        JointKind::Free => free::cases(s),
    }
}

/// Keys of what is to be said about the loads.
pub(crate) fn notes(s: &Scenario) -> Vec<Sentence<0>> {
    let l = &s.loads;
    let coupling = matches!(l.joint, JointKind::Coupler | JointKind::ChainBracket);
    let mut notes = Vec::new();
    if !coupling && l.rule.id() != "road-service" {
        notes.push(say::NoteRuleNotForThisJoint);
    }
    if coupling && !l.rule.covers(&l.trailer()) {
        notes.push(say::NoteTooHeavyForRule);
    }
    if l.joint == JointKind::ChainBracket {
        let class = l.rule.class(&l.trailer());
        if class.is_none_or(|class| class.chain.kind == LoadKind::Ultimate) {
            notes.push(say::NoteChainBearsOnlyThen);
        }
        notes.push(say::NoteChainOwnBolts);
    }
    if s.tube.weld_near {
        notes.push(say::NoteWeldNear);
    }
    if l.joint == JointKind::SpringHanger {
        notes.push(say::NoteTubeBendingNotAsked);
    }
    if s.bolting.two_cheeks && s.fitting.thickness.si() > 0.0 {
        notes.push(say::NoteCheeksNotAsked);
    }
    notes
}

/// Factor on slip in a case of a kind; `None` where friction is not counted on.
///
/// `service` is the factor on slip under a service load, more in oversize holes.
const fn friction_factor(kind: LoadKind, service: f64) -> Option<f64> {
    match kind {
        LoadKind::Service => Some(service),
        LoadKind::Proof => Some(1.0),
        LoadKind::Ultimate => None,
    }
}

/// Slip resistance of a bolt under its share, N; none where the clamp goes past the wall or across air.
fn resistance(s: &Scenario, residual: &ResidualClamp, share: &Share) -> f64 {
    if support::passes_by(s).is_some() || !s.fitting.touches {
        return 0.0;
    }
    slip::resistance(
        s.bolting.slip_planes(),
        s.tightening.faying_friction,
        newton(residual.left_min),
        newton(share.pull),
        residual.load_factor,
    )
    .si()
}

/// Load along the faces that all bolts together hold by friction while nothing pulls at them, N: with the factor on slip.
pub(crate) fn grip_of_all(s: &Scenario, residual: &ResidualClamp) -> f64 {
    let each = resistance(s, residual, &Share::default());
    #[allow(clippy::cast_precision_loss, reason = "no joint has as many bolts")]
    let bolts = s.bolting.count() as f64;
    each * bolts / slip_omega(s)
}

impl Cases {
    pub(crate) fn new(s: &Scenario) -> Self {
        let b = &s.bolting;
        let places = pattern(b.along, b.rows, b.spacing_along.si(), b.spacing_across.si());
        let all = cases(s)
            .into_iter()
            .map(|case| BoltLoads::new(s, &places, case))
            .collect();
        Self { places, all }
    }

    /// The case with the largest demand by a measure; `None` where the measure counts none.
    pub(crate) fn governing(
        &self,
        measure: &dyn Fn(&BoltLoads) -> Option<f64>,
    ) -> Option<(&BoltLoads, f64)> {
        let mut best: Option<(&BoltLoads, f64)> = None;
        for loads in &self.all {
            let Some(demand) = measure(loads) else {
                continue;
            };
            if best.is_none_or(|(_, most)| demand > most) {
                best = Some((loads, demand));
            }
        }
        best
    }

    /// The case whose worst bolt uses most of its slip resistance; `None` where no case counts on
    /// friction (a chain bracket bears nothing until the coupling fails, and one that swings hangs on a pin).
    pub(crate) fn service(&self, s: &Scenario, residual: &ResidualClamp) -> Option<Service> {
        let use_of = |share: &Share| share.in_plane() / resistance(s, residual, share).max(1e-9);
        if s.swings() {
            return None;
        }
        let worst = |loads: &BoltLoads| {
            loads
                .shares
                .iter()
                .map(use_of)
                .enumerate()
                .fold(
                    (0, 0.0),
                    |best, next| if next.1 > best.1 { next } else { best },
                )
        };
        let omega = slip_omega(s);
        let factor = |loads: &BoltLoads| friction_factor(loads.case.kind, omega);
        let (loads, _) =
            self.governing(&|loads| factor(loads).map(|factor| factor * worst(loads).1))?;
        let (worst, _) = worst(loads);
        let share = loads.share(worst);
        Some(Service {
            ball: loads.case,
            shares: loads.shares.clone(),
            worst,
            resistance: resistance(s, residual, &share),
            factor: factor(loads)?,
        })
    }
}

impl Service {
    /// Share of the bolt that slips first.
    pub(crate) fn worst_share(&self) -> Share {
        self.shares.get(self.worst).copied().unwrap_or(Share {
            along: 0.0,
            across: 0.0,
            pull: 0.0,
        })
    }
}

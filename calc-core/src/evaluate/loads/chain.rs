//! Safety-chain bracket: the strength required of the chain, pulled at its angle.

use super::case::LoadCase;
use crate::catalog::{CaseName, LoadKind};
use crate::quantity::InUnits;
use crate::scenario::Scenario;

/// Ultimate cases: a chain bears nothing until the coupling has failed, and then must not break. The
/// angle is taken upward, downward and sideways. Where the rule names the strength of all chains
/// together, the reader says how much of it this bracket takes; all of it unless told otherwise.
pub(super) fn cases(s: &Scenario) -> Vec<LoadCase> {
    let l = &s.loads;
    let trailer = l.trailer();
    let Some(class) = l.rule.class(&trailer) else {
        return Vec::new();
    };
    let share = if class.chain.each { 1.0 } else { l.chain.share };
    let strength = trailer.force(class.chain.size) * share;
    let (off, along) = l.chain.angle.si().sin_cos();
    let point = (l.ball_ahead.si(), l.ball_below.si());
    let at = |case, up, side| LoadCase {
        along: strength * along,
        up: strength * up,
        side: strength * side,
        cite: class.chain.cite,
        ..LoadCase::at(case, LoadKind::Ultimate, point)
    };
    vec![
        at(CaseName::ChainPullsUp, off, 0.0),
        at(CaseName::ChainPullsDown, -off, 0.0),
        at(CaseName::ChainPullsAside, 0.0, off),
    ]
}

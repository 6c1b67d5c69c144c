//! Safety-chain bracket: the strength required of the chain, as its rule asks for it.

use super::case::LoadCase;
use crate::catalog::{CaseName, ChainShares};
use crate::quantity::InUnits;
use crate::scenario::Scenario;

/// A chain bears nothing until the coupling has failed, and then must not break: mostly ultimate cases.
///
/// - A rule on the strength of chains: that strength at the chain's angle, upward, downward and sideways.
/// - A rule on their attachments: along the tube, up and down, one at a time.
///
/// Where the rule names the strength of all chains together, the reader says how much of it this bracket
/// takes; all of it unless told otherwise. Where texts are in conflict about that, each chain takes all of it
/// and the share is shown as the other reading.
pub(super) fn cases(s: &Scenario) -> Vec<LoadCase> {
    let l = &s.loads;
    let trailer = l.trailer();
    let Some(class) = l.rule.class(&trailer) else {
        return Vec::new();
    };
    let chain = &class.chain;
    let whole = trailer.force(chain.size);
    // A rule can only add to what the road's rule asks of every chain: the weight.
    let weight = trailer.weight();
    let strength = match chain.by {
        ChainShares::Together => whole * l.chain.share,
        ChainShares::Each | ChainShares::EachOrTogether => whole,
    }
    .max(weight);
    let shared = chain.by == ChainShares::EachOrTogether && l.chain.share < 1.0;
    let point = (l.ball_ahead.si(), l.ball_below.si());
    let at = |case, kind, (along, up, side): (f64, f64, f64)| LoadCase {
        along,
        up,
        side,
        other_reading: shared.then(|| along.max(up.abs()).max(side) * l.chain.share),
        cite: chain.cite,
        ..LoadCase::at(case, kind, point)
    };
    if let Some(upright) = chain.upright.map(|size| trailer.force(size)) {
        return vec![
            at(CaseName::ChainPullsAlong, chain.kind, (strength, 0.0, 0.0)),
            at(
                CaseName::ChainPullsStraightUp,
                chain.kind,
                (0.0, upright, 0.0),
            ),
            at(
                CaseName::ChainPullsStraightDown,
                chain.kind,
                (0.0, -upright, 0.0),
            ),
        ];
    }
    let (off, along) = l.chain.angle.si().sin_cos();
    let pulls = |up: f64, side: f64| (strength * along, strength * up, strength * side);
    vec![
        at(CaseName::ChainPullsUp, chain.kind, pulls(off, 0.0)),
        at(CaseName::ChainPullsDown, chain.kind, pulls(-off, 0.0)),
        at(CaseName::ChainPullsAside, chain.kind, pulls(0.0, off)),
    ]
}

//! Safety-chain bracket: the strength required of the chain, as its rule asks for it.

use super::case::LoadCase;
use crate::catalog::{CHAIN_OF_WEIGHT, CaseName, Chain, ChainShares};
use crate::quantity::InUnits;
use crate::scenario::Scenario;

/// A chain bears nothing until the coupling has failed, and then must not break: mostly ultimate cases.
///
/// - A rule on the strength of chains: that strength at the chain's angle, upward, downward and sideways.
/// - A rule on their attachments: along the tube, up and down, one at a time; the road's own rule on chains is asked
///   beside it, as it may ask for less, and of another direction.
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
    let at = |chain: &Chain, case, (along, up, side): (f64, f64, f64)| LoadCase {
        along,
        up,
        side,
        other_reading: shared.then(|| along.max(up.abs()).max(side) * l.chain.share),
        cite: chain.cite,
        ..LoadCase::at(case, chain.kind, point)
    };
    let (off, along) = l.chain.angle.si().sin_cos();
    let pulls =
        |strength: f64, up: f64, side: f64| (strength * along, strength * up, strength * side);
    let in_any_direction = |chain: &Chain, strength: f64| {
        [
            at(chain, CaseName::ChainPullsUp, pulls(strength, off, 0.0)),
            at(chain, CaseName::ChainPullsDown, pulls(strength, -off, 0.0)),
            at(chain, CaseName::ChainPullsAside, pulls(strength, 0.0, off)),
        ]
    };
    let Some(upright) = chain.upright.map(|size| trailer.force(size)) else {
        return in_any_direction(chain, strength).to_vec();
    };
    let mut cases = vec![
        at(chain, CaseName::ChainPullsAlong, (strength, 0.0, 0.0)),
        at(chain, CaseName::ChainPullsStraightUp, (0.0, upright, 0.0)),
        at(
            chain,
            CaseName::ChainPullsStraightDown,
            (0.0, -upright, 0.0),
        ),
    ];
    cases.extend(in_any_direction(&CHAIN_OF_WEIGHT, weight));
    cases
}

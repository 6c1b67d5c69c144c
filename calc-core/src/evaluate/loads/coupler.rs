//! Coupler: forces at the ball, by the road and by the chosen rule.

use super::case::LoadCase;
use crate::catalog::{CaseName, LoadKind};
use crate::quantity::{InUnits, STANDARD_GRAVITY};
use crate::scenario::{Mount, Scenario};

/// The service cases of the road, then those of the rule.
///
/// Of a trailer that hardly rests on its coupler a least share counts, as braking alone presses the ball down.
///
/// The ball presses up with the tongue weight times its factor, and pulls down with as much when the tongue
/// drops after a bump: how much less that is depends on springs and load, and no source was found, so as
/// much is taken. A trailer brakes in a bend too, and is pulled out of one over a bump: both of the reader's figures come
/// at once and in full, an assumption of ours, as no published combination was found. Which way along asks more of the bolts
/// depends on where the ball stands: from the top it turns about the bolts against up or with it. 0.5 g and 0.3 g are 0.58 g together, within
/// what a tire grips on a dry road (about 0.8, from memory); typed higher, the sum is more than tires give, and safe.
/// Through the sides up and down ask the same of every bolt (pulled up is pushed down turned
/// round), from the top they do not: there both are cases.
pub(super) fn cases(s: &Scenario) -> Vec<LoadCase> {
    let l = &s.loads;
    let trailer = l.trailer();
    let point = (l.ball_ahead.si(), l.ball_below.si());
    let tongue = trailer.on_coupler();
    let up = tongue * l.vertical_factor;
    let along = l.mass.si() * l.braking.si();
    let side = tongue / STANDARD_GRAVITY * l.side.si();
    let road = |case, along, side| LoadCase {
        along,
        up,
        side,
        ..LoadCase::at(case, LoadKind::Service, point)
    };
    let mut cases = vec![
        road(CaseName::BrakingOverABump, -along, 0.0),
        road(CaseName::PullingOverABump, along, 0.0),
        road(CaseName::CorneringOverABump, 0.0, side),
        road(CaseName::BrakingInABend, -along, side),
        road(CaseName::PullingInABend, along, side),
    ];
    if s.bolting.mount == Mount::FromTop {
        let down = |case, along, side| LoadCase {
            up: -up,
            ..road(case, along, side)
        };
        cases.extend([
            down(CaseName::BrakingAfterABump, -along, 0.0),
            down(CaseName::PullingAfterABump, along, 0.0),
            down(CaseName::BrakingInABendAfterABump, -along, side),
            down(CaseName::PullingInABendAfterABump, along, side),
        ]);
    }
    let rule = l.rule.class(&trailer).map_or(&[][..], |class| class.cases);
    cases.extend(rule.iter().map(|case| LoadCase {
        along: trailer.force(case.along),
        up: trailer.force(case.up),
        side: trailer.force(case.side),
        other_reading: case.other_reading.map(|size| trailer.force(size)),
        cite: case.cite,
        ..LoadCase::at(case.case, case.kind, point)
    }));
    cases
}

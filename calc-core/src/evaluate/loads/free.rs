//! Free load: six components at a point, as the reader gives them.

use super::case::LoadCase;
use crate::catalog::CaseName;
use crate::cite::{Cite, Flag, Source};
use crate::quantity::InUnits;
use crate::scenario::Scenario;

/// One case of the kind that the reader says, in the directions given.
pub(super) fn cases(s: &Scenario) -> Vec<LoadCase> {
    let (l, f) = (&s.loads, &s.loads.free);
    vec![LoadCase {
        along: f.along.si(),
        up: f.up.si(),
        side: f.side.si(),
        about: [f.about_along, f.about_side, f.about_up],
        cite: Cite::new(
            Source::OwnAssumption,
            "the reader's own load",
            Flag::Assumption,
        ),
        ..LoadCase::at(
            CaseName::FreeLoad,
            f.kind,
            (l.ball_ahead.si(), l.ball_below.si()),
        )
    }]
}
